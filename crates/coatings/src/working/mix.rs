//! The workings of mixing: custom colours, doses, chalk-type paint and thinning.

use std::borrow::Cow;

use units::{Length, Mass, Volume};

use super::{Measure, Quantity, Working, estimated, figure, given, per_litre};
use crate::estimate::Estimate;
use crate::figure::Figure;
use crate::mix::{
    ChalkBatch, ChalkError, ChalkMix, Latex, OIL_DENSITY, Paint, Powder, Recipe, RecipeError, Scale,
    ThinError, Thinning, WATER_DENSITY,
};

const BATCH: &str = "total * part / parts";
const TOP_UP: &str = "(wanted - rest) * part / parts";
const ADDITION: &str = "total * part / parts - poured";
const WEIGHED: &str = "total * part / parts * density";
const SMALLEST_BATCH: &str = "dose / share";
const PAINT: &str = "weighed / paint_density";
const YIELD: &str = "paint + powder / powder_density + water";
const MASS: &str = "paint * paint_density + powder + water * water_density";
const DENSITY: &str = "mass / mix";
const SOLIDS: &str = "(paint * solids + powder / powder_density) / mix";
const PVC: &str =
    "(paint * solids * pigment + powder / powder_density) / (paint * solids + powder / powder_density)";
const CPVC: &str = "1 / (1 + absorption * powder_density / (100 * oil_density))";
const SOLIDS_RATIO: &str = "mix_solids / solids";
const RATE: &str = "solids / (1000 * dry)";
const LABEL_RATE: &str = "rate * ratio";
const LIQUID: &str = "paint * (1 + share)";
const THINNER: &str = "paint * share";
const THINNER_MASS: &str = "paint * share * density";
const THINNED_SOLIDS: &str = "solids / (1 + share)";
const THINNED_FILM: &str = "wet * solids / (1 + share)";

const GROWN: &str = "For each component, what the batch comes to when what was poured of it is its share: the largest of these, because nothing can be taken out again.";
const DOSE: &str = "The dose of which twice the standard uncertainty of a weighing is the wanted share: 2 step / sqrt(12 (wanted^2 - 4 accuracy^2 / 3)).";
const WHOLE_COATS: &str = "The unthinned coats times one and the share of thinner, raised to whole coats.";

fn in_grams(mass: Estimate<Mass>) -> Estimate<f64> {
    Estimate {
        value: mass.value.as_grams(),
        standard_uncertainty: mass.standard_uncertainty.as_grams(),
    }
}

fn grams(symbol: &'static str, meaning: &'static str, mass: Mass) -> Quantity {
    given(symbol, meaning, mass.as_grams(), Measure::Grams)
}

fn litres(symbol: &'static str, meaning: &'static str, volume: Volume) -> Quantity {
    given(symbol, meaning, volume.as_litres(), Measure::Litres)
}

fn share(symbol: &'static str, meaning: &'static str, value: f64) -> Quantity {
    given(symbol, meaning, value, Measure::Share)
}

impl Recipe {
    /// How the masses of [`Recipe::batch_by_mass`] come about, one for each component.
    ///
    /// # Errors
    /// As [`Recipe::batch_by_mass`].
    pub fn batch_workings(&self, total: Mass) -> Result<Vec<Working>, RecipeError> {
        let masses = self.batch_by_mass(total)?;
        let total = grams("total", "the whole batch", total);
        Ok(self.each(BATCH, &[total], &in_grams_of(&masses), Measure::Grams))
    }

    /// How the volumes of [`Recipe::batch_by_volume`] come about, one for each component.
    ///
    /// # Errors
    /// As [`Recipe::batch_by_volume`].
    pub fn volume_workings(&self, total: Volume) -> Result<Vec<Working>, RecipeError> {
        let volumes = self.batch_by_volume(total)?;
        let total = litres("total", "the whole batch", total);
        let values: Vec<f64> = volumes.iter().map(|volume| volume.as_litres()).collect();
        Ok(self.each(BATCH, &[total], &values, Measure::Litres))
    }

    /// How the additions of [`Recipe::top_up`] come about, one for each component.
    ///
    /// # Errors
    /// As [`Recipe::top_up`].
    pub fn top_up_workings(&self, rest: Mass, wanted: Mass) -> Result<Vec<Working>, RecipeError> {
        let masses = self.top_up(rest, wanted)?;
        let common = [
            grams("wanted", "the whole batch as wanted", wanted),
            grams("rest", "what is left of the batch", rest),
        ];
        Ok(self.each(TOP_UP, &common, &in_grams_of(&masses), Measure::Grams))
    }

    /// How [`Recipe::mend`] comes about: first what the batch grows to, then the addition of each component.
    ///
    /// # Errors
    /// As [`Recipe::mend`].
    pub fn mend_workings(&self, poured: &[Mass]) -> Result<Vec<Working>, RecipeError> {
        let mend = self.mend(poured)?;
        let total = grams("total", "what the batch grows to", mend.total);
        let mut additions = self.each(
            ADDITION,
            std::slice::from_ref(&total),
            &in_grams_of(&mend.additions),
            Measure::Grams,
        );
        let mut all = Vec::with_capacity(poured.len());
        for (working, mass) in additions.iter_mut().zip(poured) {
            let poured = grams("poured", "what was poured of it", *mass);
            all.push(poured.clone());
            working.terms.push(poured);
        }
        let mut workings = vec![Working::found(GROWN, all, total)];
        workings.append(&mut additions);
        Ok(workings)
    }

    /// How the masses of [`Recipe::weigh_volume`] come about, one for each component.
    ///
    /// # Errors
    /// As [`Recipe::weigh_volume`].
    pub fn weigh_volume_workings(
        &self,
        total: Volume,
        densities: &[Figure],
    ) -> Result<Vec<Working>, RecipeError> {
        let masses = self.weigh_volume(total, densities)?;
        let values: Vec<f64> = masses.iter().map(|mass| mass.value.as_grams()).collect();
        let total = litres("total", "the whole batch", total);
        let mut workings = self.each(WEIGHED, &[total], &values, Measure::Grams);
        for (working, (density, mass)) in workings.iter_mut().zip(densities.iter().zip(&masses)) {
            working.terms.push(per_litre("density", "its density", *density));
            working.result.standard_uncertainty = mass.standard_uncertainty.as_grams();
        }
        Ok(workings)
    }

    /// A working for each component: common terms, its parts of all parts, and what comes out.
    fn each(
        &self,
        formula: &'static str,
        common: &[Quantity],
        results: &[f64],
        measure: Measure,
    ) -> Vec<Working> {
        let parts: f64 = self.components().iter().map(|component| component.share).sum();
        let of = |(component, result): (&crate::mix::Component, &f64)| {
            let mut terms = common.to_vec();
            terms.push(given("part", "parts of it", component.share, Measure::Count));
            terms.push(given("parts", "parts of all", parts, Measure::Count));
            let result = Quantity {
                meaning: Cow::Owned(component.name.clone()),
                ..given("amount", "amount of a component", *result, measure)
            };
            Working::by(formula, terms, result)
        };
        self.components().iter().zip(results).map(of).collect()
    }
}

fn in_grams_of(masses: &[Mass]) -> Vec<f64> {
    masses.iter().map(|mass| mass.as_grams()).collect()
}

impl Scale {
    /// How the smallest dose and, from it, the smallest batch come about; nothing where there is none. Step and accuracy
    /// are those of the scale.
    pub fn smallest_batch_workings(&self, smallest_share: f64, wanted: f64) -> Option<[Working; 2]> {
        let (dose, batch) = (
            self.smallest_dose(wanted)?,
            self.smallest_batch(smallest_share, wanted)?,
        );
        let dose = grams("dose", "the smallest dose", dose);
        let terms = vec![
            grams("step", "step of the display", self.resolution),
            share("accuracy", "how far the scale may be off", self.accuracy),
            share("wanted", "expanded uncertainty (k = 2) of a dose", wanted),
        ];
        let of_batch = vec![
            dose.clone(),
            share(
                "share",
                "share of the component there is least of",
                smallest_share,
            ),
        ];
        Some([
            Working::found(DOSE, terms, dose),
            Working::by(
                SMALLEST_BATCH,
                of_batch,
                grams("batch", "the smallest batch", batch),
            ),
        ])
    }
}

impl ChalkBatch {
    /// How [`ChalkBatch::mix`] comes about: the volume of the paint if it was weighed, then volume, mass, density, volume
    /// solids, pigment volume concentration, the critical one of the powder, and the ratio of the solids.
    ///
    /// # Errors
    /// As [`ChalkBatch::mix`].
    #[expect(
        clippy::too_many_lines,
        reason = "one formula after the other, as they are shown"
    )]
    pub fn workings(&self, latex: &Latex, powder: &Powder) -> Result<Vec<Working>, ChalkError> {
        let mix = self.mix(latex, powder)?;
        let paint_density = per_litre("paint_density", "density of the paint", latex.density);
        let powder_density = per_litre(
            "powder_density",
            "density of the grains of the powder",
            powder.density,
        );
        let solids = figure(
            "solids",
            "volume solids of the paint",
            latex.volume_solids,
            Measure::Share,
        );
        let pigment = figure(
            "pigment",
            "pigment volume concentration of the paint",
            latex.pvc,
            Measure::Share,
        );
        let grains = grams("powder", "the powder", self.powder);
        let water = litres("water", "the water", self.water);
        let mut workings = Vec::with_capacity(8);
        let paint = match self.paint {
            Paint::Volume(volume) => litres("paint", "the paint", volume),
            Paint::Mass(mass) => {
                let value = mass.as_grams() / paint_density.value;
                let mut paint = given("paint", "the paint", value, Measure::Litres);
                // The linear law as in the mix: half of what one uncertainty more and less of the density make.
                let at = |density: f64| mass.as_grams() / density;
                let (mean, u) = (paint_density.value, paint_density.standard_uncertainty);
                paint.standard_uncertainty = (at(mean - u) - at(mean + u)) / 2.0;
                let terms = vec![
                    grams("weighed", "the paint as weighed", mass),
                    paint_density.clone(),
                ];
                workings.push(Working::by(PAINT, terms, paint.clone()));
                paint
            }
        };
        let volume = Estimate {
            value: mix.volume.value.as_litres(),
            standard_uncertainty: mix.volume.standard_uncertainty.as_litres(),
        };
        let volume = estimated("mix", "volume of the mix", volume, Measure::Litres);
        let mass = estimated("mass", "mass of the mix", in_grams(mix.mass), Measure::Grams);
        let density = Estimate {
            value: mix.density.value.as_kilograms_per_litre() * 1000.0,
            standard_uncertainty: mix.density.standard_uncertainty.as_kilograms_per_litre() * 1000.0,
        };
        let mix_solids = estimated(
            "mix_solids",
            "volume solids of the mix",
            mix.volume_solids,
            Measure::Share,
        );
        workings.extend([
            Working::by(
                YIELD,
                vec![
                    paint.clone(),
                    grains.clone(),
                    powder_density.clone(),
                    water.clone(),
                ],
                volume.clone(),
            ),
            Working::by(
                MASS,
                vec![
                    paint.clone(),
                    paint_density,
                    grains.clone(),
                    water,
                    per_litre("water_density", "density of water", WATER_DENSITY),
                ],
                mass.clone(),
            ),
            Working::by(
                DENSITY,
                vec![mass, volume.clone()],
                estimated("density", "density of the mix", density, Measure::GramsPerLitre),
            ),
            Working::by(
                SOLIDS,
                vec![
                    paint.clone(),
                    solids.clone(),
                    grains.clone(),
                    powder_density.clone(),
                    volume,
                ],
                mix_solids.clone(),
            ),
            Working::by(
                PVC,
                vec![paint, solids.clone(), pigment, grains, powder_density.clone()],
                estimated(
                    "mix_pigment",
                    "pigment volume concentration of the mix",
                    mix.pvc,
                    Measure::Share,
                ),
            ),
            Working::by(
                CPVC,
                vec![
                    figure(
                        "absorption",
                        "oil absorption of the powder",
                        powder.oil_absorption,
                        Measure::GramsToHundred,
                    ),
                    powder_density,
                    per_litre("oil_density", "density of linseed oil", OIL_DENSITY),
                ],
                estimated(
                    "critical",
                    "critical pigment volume concentration of the powder alone",
                    mix.cpvc_of_powder,
                    Measure::Share,
                ),
            ),
            Working::by(
                SOLIDS_RATIO,
                vec![mix_solids, solids],
                estimated(
                    "ratio",
                    "volume solids of the mix over those of the paint",
                    mix.solids_ratio,
                    Measure::Share,
                ),
            ),
        ]);
        Ok(workings)
    }
}

impl ChalkMix {
    /// How [`ChalkMix::theoretical_rate`] comes about.
    pub fn theoretical_rate_working(&self, dry_film: Length) -> Working {
        let terms = vec![
            estimated(
                "solids",
                "volume solids of the mix",
                self.volume_solids,
                Measure::Share,
            ),
            given("dry", "the dry film", dry_film.as_metres(), Measure::Film),
        ];
        let rate = self.theoretical_rate(dry_film);
        Working::by(
            RATE,
            terms,
            estimated("rate", "rate of the mix, with no loss", rate, Measure::Rate),
        )
    }

    /// How [`ChalkMix::label_rate`] comes about.
    pub fn label_rate_working(&self, of_paint: Figure) -> Working {
        let terms = vec![
            figure("rate", "rate of the paint", of_paint, Measure::Rate),
            estimated(
                "ratio",
                "volume solids of the mix over those of the paint",
                self.solids_ratio,
                Measure::Share,
            ),
        ];
        let rate = self.label_rate(of_paint);
        Working::by(
            LABEL_RATE,
            terms,
            estimated("mix_rate", "rate of the mix", rate, Measure::Rate),
        )
    }
}

impl Thinning {
    /// How [`Thinning::thinned`] comes about: the thinned paint, the thinner, its mass, the volume solids.
    ///
    /// # Errors
    /// As [`Thinning::thinned`].
    pub fn workings(&self) -> Result<[Working; 4], ThinError> {
        let thinned = self.thinned()?;
        let paint = litres("paint", "the paint", self.paint);
        let share = self.share_term();
        let density = per_litre("density", "density of the thinner", self.thinner.density);
        let mass = in_grams(thinned.thinner_mass);
        Ok([
            Working::by(
                LIQUID,
                vec![paint.clone(), share.clone()],
                litres("liquid", "what there is to spray", thinned.liquid),
            ),
            Working::by(
                THINNER,
                vec![paint.clone(), share.clone()],
                litres("thinner", "the thinner", thinned.thinner),
            ),
            Working::by(
                THINNER_MASS,
                vec![paint, share.clone(), density],
                estimated("mass", "mass of the thinner", mass, Measure::Grams),
            ),
            Working::by(
                THINNED_SOLIDS,
                vec![self.solids_term(), share],
                estimated(
                    "thinned_solids",
                    "volume solids of what is sprayed",
                    thinned.volume_solids,
                    Measure::Share,
                ),
            ),
        ])
    }

    /// How [`Thinning::dry_film`] comes about.
    pub fn dry_film_working(&self, wet_film: Length) -> Working {
        let film = self.dry_film(wet_film);
        let film = Estimate {
            value: film.value.as_metres(),
            standard_uncertainty: film.standard_uncertainty.as_metres(),
        };
        let wet = given("wet", "the wet film", wet_film.as_metres(), Measure::Film);
        Working::by(
            THINNED_FILM,
            vec![wet, self.solids_term(), self.share_term()],
            estimated("dry", "the dry film", film, Measure::Film),
        )
    }

    /// How [`Thinning::coats`] comes about.
    pub fn coats_working(&self, unthinned: u32) -> Working {
        let before = given(
            "unthinned",
            "coats without thinner",
            f64::from(unthinned),
            Measure::Count,
        );
        let coats = f64::from(self.coats(unthinned));
        Working::found(
            WHOLE_COATS,
            vec![before, self.share_term()],
            given("coats", "coats with thinner", coats, Measure::Count),
        )
    }

    fn share_term(&self) -> Quantity {
        share("share", "thinner, as a share of the paint", self.share)
    }

    fn solids_term(&self) -> Quantity {
        figure(
            "solids",
            "volume solids of the paint",
            self.volume_solids,
            Measure::Share,
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mix::{By, CALCIUM_CARBONATE, Component, SHEENS, thinner};
    use crate::working::holds;

    fn recipe(by: By) -> Recipe {
        let part = |name: &str, share| Component {
            name: name.into(),
            share,
        };
        Recipe::new(
            vec![part("white", 7.0), part("green", 2.5), part("umber", 0.5)],
            by,
        )
        .unwrap()
    }

    #[test]
    fn recipes_are_those_of_their_formulas() {
        let (weight, volume) = (recipe(By::Weight), recipe(By::Volume));
        let batch = weight.batch_workings(Mass::grams(500.0)).unwrap();
        let poured = volume.volume_workings(Volume::litres(0.7)).unwrap();
        let top_up = weight
            .top_up_workings(Mass::grams(120.0), Mass::grams(900.0))
            .unwrap();
        let densities = [
            Figure::own(1.2, 1.4),
            Figure::own(1.1, 1.1),
            Figure::own(1.5, 1.6),
        ];
        let weighed = volume
            .weigh_volume_workings(Volume::litres(0.7), &densities)
            .unwrap();
        for working in batch.iter().chain(&poured).chain(&top_up).chain(&weighed) {
            holds(working);
        }
        assert_eq!(batch[1].result.meaning, "green");
        assert!((batch[2].result.value - 25.0).abs() < 1e-9);
        assert!((top_up[2].result.value - 39.0).abs() < 1e-9);
        assert!(weighed[0].result.standard_uncertainty > 0.0);
        assert!(weight.volume_workings(Volume::litres(1.0)).is_err());
    }

    #[test]
    fn a_mended_batch_is_that_of_its_formulas() {
        let poured = [350.0, 125.0, 30.0].map(Mass::grams);
        let workings = recipe(By::Weight).mend_workings(&poured).unwrap();
        assert_eq!((workings.len(), workings[0].found), (4, Some(GROWN)));
        // 30 g at a twentieth.
        assert!((workings[0].result.value - 600.0).abs() < 1e-9);
        for working in &workings[1..3] {
            holds(working);
        }
        assert!(workings[3].result.value.abs() < 1e-9);
    }

    /// The power of a half is the square root.
    #[test]
    fn the_smallest_batch_is_that_of_its_formula() {
        let [dose, batch] = Scale::KITCHEN
            .smallest_batch_workings(0.05, Scale::WANTED)
            .unwrap();
        let mut value = |name: &str, _: Vec<f64>| {
            let term = dose.terms.iter().find(|term| term.symbol == name);
            term.map(|term| term.value)
        };
        let formula = "2 * step / (12 * (wanted * wanted - 4 * accuracy * accuracy / 3)) ^ 0.5";
        let wanted = fasteval::ez_eval(formula, &mut value).unwrap();
        assert!((dose.result.value / wanted - 1.0).abs() < 1e-12);
        holds(&batch);
        assert_eq!(Scale::KITCHEN.smallest_batch_workings(0.0, Scale::WANTED), None);
    }

    #[test]
    fn chalk_type_paint_is_that_of_its_formulas() {
        let latex = Latex::usual(&SHEENS[3]);
        let batch = ChalkBatch {
            paint: Paint::Volume(Volume::litres(0.5)),
            powder: Mass::grams(130.0),
            water: Volume::millilitres(60.0),
        };
        let weighed = ChalkBatch {
            paint: Paint::Mass(Mass::grams(650.0)),
            ..batch
        };
        for (batch, count) in [(batch, 7), (weighed, 8)] {
            let mix = batch.mix(&latex, &CALCIUM_CARBONATE).unwrap();
            let workings = batch.workings(&latex, &CALCIUM_CARBONATE).unwrap();
            assert_eq!(workings.len(), count);
            workings.iter().for_each(holds);
            let result = |symbol| {
                let found = workings.iter().find(|working| working.result.symbol == symbol);
                found.unwrap().result.value
            };
            assert_eq!(result("mix"), mix.volume.value.as_litres());
            assert_eq!(result("mix_pigment"), mix.pvc.value);
            holds(&mix.theoretical_rate_working(Length::millimetres(0.038)));
            holds(&mix.label_rate_working(Figure::own(9.0, 11.0)));
        }
        // By a weighed paint the volume is as unsure as the paint's density makes it.
        let workings = weighed.workings(&latex, &CALCIUM_CARBONATE).unwrap();
        let (paint, mix) = (&workings[0].result, &workings[1].result);
        assert!((paint.standard_uncertainty / mix.standard_uncertainty - 1.0).abs() < 1e-9);
    }

    #[test]
    fn thinned_paint_is_that_of_its_formulas() {
        let thinning = Thinning {
            paint: Volume::litres(2.0),
            volume_solids: Figure::own(0.33, 0.37),
            share: 0.1,
            most: None,
            thinner: thinner("mineral-spirits").unwrap(),
        };
        thinning.workings().unwrap().iter().for_each(holds);
        holds(&thinning.dry_film_working(Length::millimetres(0.1)));
        let coats = thinning.coats_working(2);
        assert_eq!((coats.result.value, coats.found), (3.0, Some(WHOLE_COATS)));
    }
}
