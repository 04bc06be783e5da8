//! Chalk-type paint from latex paint, calcium carbonate and water: reading the maker's recipe, the weights to
//! pour, and the properties of the mix. The rules are in [`coatings::mix`].

use std::fmt;

use coatings::mix::{
    Bench, Binder, By, CALCIUM_CARBONATE, ChalkBatch, ChalkError, ChalkMix, Component, DUST, Jug, Latex,
    Order, Paint, Recipe, RecipeError, SHEENS, Scale, Sheen, Step, Tag, Tare, WATER_DENSITY, jug_limits,
    pour, powder_limits,
};
use coatings::{FilmClass, SourcedRange, Thinner};
use units::{Density, Mass, System, Volume, VolumeUnit};

use super::scale;
use crate::book::{ChalkLine, Line, Record, Share};
use crate::document::{Workshop, material_of};

/// The name of a jar without a name.
pub const NAMELESS: &str = "Chalk-style paint";

/// Names of the parts other than the powder.
const WATER: &str = "Water";
const PAINT: &str = "Paint";
/// Stirring instructions with and without water.
const STIR_WITH_WATER: &str = "Stir powder and water smooth, then add the paint.";
const STIR_DRY: &str =
    "Stir the powder into the paint a little at a time. Too thick? Add water by the spoon.";

/// A batch that can be mixed.
#[derive(Clone, Debug, PartialEq)]
pub struct Chalk {
    /// The maker's name for it.
    pub name: String,
    /// Powder, water and paint by weight.
    pub recipe: Recipe,
    /// The pouring steps, in order.
    pub steps: Vec<Step>,
    /// The recipe index and volume of the paint, if it is measured in a jug and not weighed.
    pub jug: Option<(usize, Volume)>,
    /// The properties of the mix. The uncertainty of its volume comes from measuring.
    pub mix: ChalkMix,
    /// Whether there is enough binder to cover the powder. `None` if the sheen of the paint is unknown.
    pub binder: Option<Binder>,
    /// The dry sheen, if there is enough binder.
    pub dries: Option<&'static Sheen>,
    /// Instructions for combining the powder and the paint.
    pub stir: &'static str,
    /// The smallest and largest mass of the powder, if it is measured in cups and spoons and its packed
    /// density is unknown.
    pub in_cups: Option<(Mass, Mass)>,
}

/// Why a batch cannot be mixed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ChalkFault {
    /// No paint was measured.
    Paint,
    /// The material is not a water-based paint.
    NotLatex,
    /// There is neither a recipe nor a weight for the powder.
    Powder,
    /// An amount or a property is out of range.
    Chalk(ChalkError),
    /// The batch cannot be poured.
    Pour,
}

impl fmt::Display for ChalkFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ChalkFault::Paint => f.write_str("Enter the paint's weight without the can, or its volume."),
            ChalkFault::NotLatex => {
                f.write_str("Choose a water-based paint. Powder and water only go into those.")
            }
            ChalkFault::Powder => f.write_str("Choose a powder recipe, or enter your own weight."),
            ChalkFault::Chalk(error) => error.fmt(f),
            ChalkFault::Pour => f.write_str("Check these weights. They can't be mixed."),
        }
    }
}

impl From<ChalkError> for ChalkFault {
    fn from(error: ChalkError) -> Self {
        ChalkFault::Chalk(error)
    }
}

impl From<RecipeError> for ChalkFault {
    fn from(_: RecipeError) -> Self {
        ChalkFault::Pour
    }
}

/// Reads a batch from its line. Recipes in cups are converted to weights with the density of the paint and of
/// the powder as it packs in a cup. The maker's own weights take precedence, and a weight of the paint takes
/// precedence over its volume.
///
/// # Errors
/// If a value is missing or out of range. The error says which.
#[expect(clippy::too_many_lines, reason = "to be divided into reading and mixing")]
pub fn chalk(workshop: &Workshop, line: &Line) -> Result<Chalk, ChalkFault> {
    let mix = ChalkLine::read(line);
    let density = |figure: SourcedRange<coatings::unit::KilogramsPerLitre>| {
        Density::kilograms_per_litre(figure.middle())
    };
    let by_weight = mix.paint.filter(|mass| *mass > Mass::ZERO).map(Paint::Mass);
    let by_volume = mix
        .volume
        .filter(|volume| *volume > Volume::ZERO)
        .map(Paint::Volume);
    let paint = by_weight.or(by_volume).ok_or(ChalkFault::Paint)?;
    let latex = latex(workshop, &mix)?;

    let cup = mix.cup.filter(|mass| *mass > Mass::ZERO);
    let cup = cup.map(|mass| mass / VolumeUnit::UsCup.of(1.0));
    let bulk = cup.unwrap_or(density(CALCIUM_CARBONATE.bulk));
    let by_cups = mix.recipe.map(|recipe| {
        let volume = match paint {
            Paint::Volume(volume) => volume,
            Paint::Mass(mass) => mass / density(latex.density),
        };
        recipe.batch(volume, bulk)
    });
    let powder = mix.powder;
    let water = mix.water.map(|mass| mass / density(WATER_DENSITY));
    let mut batch = ChalkBatch {
        paint,
        powder: powder
            .or(by_cups.map(|batch| batch.powder))
            .ok_or(ChalkFault::Powder)?,
        water: water.or(by_cups.map(|batch| batch.water)).unwrap_or(Volume::ZERO),
    };
    if let Some(wanted) = mix.wanted.filter(|volume| *volume > Volume::ZERO) {
        batch = batch.for_volume(wanted, &latex, &CALCIUM_CARBONATE)?;
    }
    let mut mixed = batch.mix(&latex, &CALCIUM_CARBONATE)?;

    let (paint, jug) = match batch.paint {
        Paint::Mass(mass) => (mass, None),
        Paint::Volume(volume) => (volume * density(latex.density), Some(volume)),
    };
    let water = batch.water * density(WATER_DENSITY);
    let (powder_part, water_part, paint_part) = (
        ("Calcium carbonate", batch.powder),
        (WATER, water),
        (PAINT, paint),
    );
    // Stir the powder with the water first so that it leaves no lumps in the paint (several hobby sites
    // agree). Without water, the powder goes into the paint.
    let (parts, stir) = match water > Mass::ZERO {
        true => ([powder_part, water_part, paint_part], STIR_WITH_WATER),
        false => ([paint_part, powder_part, water_part], STIR_DRY),
    };
    let parts = parts.into_iter().filter(|(_, mass)| *mass > Mass::ZERO);
    let (components, doses): (Vec<_>, Vec<_>) = parts
        .map(|(name, mass)| {
            let component = Component {
                name: name.into(),
                share: mass.as_kilograms(),
            };
            (component, mass)
        })
        .unzip();
    let scale = scale(workshop);
    let bench = Bench {
        scale,
        tare: Tare::EachDose,
        order: Order::AsWritten,
        wanted: Scale::WANTED,
    };
    let weighed = match jug {
        Some(_) => batch.powder + water,
        None => batch.powder + water + paint,
    };
    let measuring = scale.difference(weighed, Mass::ZERO) / mixed.density.value;
    mixed.volume.standard_uncertainty = together([mixed.volume.standard_uncertainty, measuring, of_jug(jug)]);
    let place = |name: &str| components.iter().position(|part| part.name == name);
    let (paint_place, water_place) = (place(PAINT), place(WATER));
    let mut steps = pour(&doses, &bench)?;
    // A little more or less water only thins the mix. Recipes leave a margin of half as much again.
    let of_water = |step: &&mut Step| Some(step.component) == water_place;
    steps
        .iter_mut()
        .filter(of_water)
        .for_each(|step| step.warning = None);
    let binder = mix.sheen.is_some().then_some(mixed.binder);
    Ok(Chalk {
        name: match mix.name.as_str() {
            "" => NAMELESS.to_owned(),
            name => name.to_owned(),
        },
        jug: paint_place.zip(jug),
        recipe: Recipe::new(components, By::Weight)?,
        steps,
        binder,
        dries: (binder == Some(Binder::Covers)).then(|| Sheen::of(mixed.pvc.value)),
        stir,
        in_cups: (powder.is_none() && cup.is_none())
            .then(|| powder_limits(batch.powder / bulk, CALCIUM_CARBONATE.bulk_any_grade)),
        mix: mixed,
    })
}

/// Returns the standard uncertainty of a volume measured in a jug. Above a liter it is zero, because no
/// limits are known and a full can is likely.
fn of_jug(jug: Option<Volume>) -> Volume {
    let limits = jug.and_then(|volume| jug_limits(Jug::Line, volume));
    limits.map_or(Volume::ZERO, |limits| {
        Volume::litres(limits.distribution().standard_uncertainty())
    })
}

/// Combines independent standard uncertainties (JCGM 100, 5.1.2).
fn together(parts: [Volume; 3]) -> Volume {
    let squares = parts.map(|part| part.as_litres() * part.as_litres());
    Volume::litres(squares.iter().sum::<f64>().sqrt())
}

/// Returns the properties of the paint. The pigment depends on the sheen, or covers the whole range if the
/// sheen is unknown. Density and solids come from the label, or else from the material, or else from typical
/// latex.
fn latex(workshop: &Workshop, mix: &ChalkLine) -> Result<Latex, ChalkFault> {
    let [glossiest, .., flattest] = &SHEENS;
    let mut latex = Latex::usual(mix.sheen.unwrap_or(glossiest));
    if mix.sheen.is_none() {
        latex.pvc.high = flattest.pvc.high;
    }
    if let Some(material) = material_of(&workshop.materials, &mix.material) {
        if material.thinner != Thinner::Water || material.body != FilmClass::Paint {
            return Err(ChalkFault::NotLatex);
        }
        latex.density = material.density;
        latex.volume_solids = material.volume_solids;
    }
    let above = |own: &f64| *own > 0.0;
    if let Some(own) = mix.density.map(Density::as_kilograms_per_litre).filter(above) {
        latex.density = SourcedRange::own(own, own);
    }
    if let Some(own) = mix.solids.map(|Share(solids)| solids).filter(above) {
        latex.volume_solids = SourcedRange::own(own, own);
    }
    Ok(latex)
}

/// Returns the lines for the jar label, with weights as `weight` writes them.
pub fn label(of: &Chalk, weight: &dyn Fn(Mass) -> String, day: &str, system: System) -> Vec<String> {
    let doses: Vec<Mass> = of.steps.iter().map(|step| step.dose).collect();
    let tag = Tag {
        name: &of.name,
        recipe: &of.recipe,
        doses: &doses,
        day,
        mass: doses.iter().copied().sum(),
        density: Some(of.mix.density.value),
        made_for: "",
        cautions: &[DUST],
    };
    tag.lines(weight, system)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BookEdit, Edit};

    fn of(values: &[(&'static str, &str)]) -> Result<Chalk, ChalkFault> {
        let values = crate::samples::values(values);
        let add = BookEdit::Add("chalk", "c".into(), values);
        let workshop = Workshop::default().apply(Edit::Book(add)).unwrap();
        chalk(&workshop, &workshop.books.lines("chalk")[0])
    }

    fn doses(of: &Chalk) -> Vec<f64> {
        of.steps.iter().map(|step| step.dose.as_grams().round()).collect()
    }

    const SATIN: [(&str, &str); 4] = [
        ("paint", "650 g"),
        ("density", "1.3 kg/l"),
        ("solids", "36 %"),
        ("sheen", "satin"),
    ];

    /// By hand: 650 g at 1.3 kg/L is 0.5 L. With 100 g of powder and 60 g of water, 0.5 + 0.1 / 2.71 + 0.06 /
    /// 0.998 is 0.5970 L. Solids are (0.18 + 0.0369) / 0.5970 = 0.3633. In satin paint, 35% of the solids are
    /// pigment, so the pigment share is (0.063 + 0.0369) / (0.18 + 0.0369) = 0.4606.
    #[test]
    fn own_weights_come_to_their_true_volume() {
        let found = of(&[&SATIN[..], &[("powder", "100"), ("water", "60")]].concat()).unwrap();
        let mix = &found.mix;
        assert!((mix.volume.value.as_litres() - 0.597_02).abs() < 1e-4, "{mix:?}");
        assert!((mix.volume_solids.value - 0.3633).abs() < 1e-4);
        assert!((mix.pvc.value - 0.4606).abs() < 1e-4);
        assert_eq!(found.binder, Some(Binder::Near));
        assert_eq!(doses(&found), [100.0, 60.0, 650.0]);
        assert_eq!((found.jug, found.in_cups), (None, None));
        // 810 g on a scale with a maximum error of 1%: sqrt(2 / 12 + 8.1^2 / 3) = 4.694 g. At 810 / 597.02 =
        // 1.3567 g/mL, that is 3.460 mL. Nothing else is uncertain here.
        let unsure = mix.volume.standard_uncertainty.as_millilitres();
        assert!((unsure - 3.460).abs() < 1e-3, "{unsure}");
    }

    /// By hand, for a third of a cup per cup: 0.5 / 3 L at the middle density of loose powder, 1.0 kg/L, is
    /// 167 g. At 0.4 to 1.2 kg/L, it is 67 to 200 g. Water is 1/8 to 3/16 of half a liter, 78 g.
    #[test]
    fn cups_become_weights() {
        let third = [&SATIN[..], &[("recipe", "chalk-third")]].concat();
        let found = of(&third).unwrap();
        assert_eq!(doses(&found), [167.0, 78.0, 650.0]);
        let (least, most) = found.in_cups.unwrap();
        assert!((least.as_grams() - 66.667).abs() < 1e-3 && (most.as_grams() - 200.0).abs() < 1e-9);
        // If a cup of powder was weighed, 189.27 g in 236.59 mL is 0.8 kg/L. That makes 133 g, and it is no
        // longer a guess.
        let weighed = of(&[&third[..], &[("cup", "189.27 g")]].concat()).unwrap();
        assert_eq!((doses(&weighed)[0], weighed.in_cups), (133.0, None));
        // A quart at the same ratio.
        let quart = of(&[&third[..], &[("wanted", "1 qt")]].concat()).unwrap();
        assert!((quart.mix.volume.value.as_litres() - 0.946_352_946).abs() < 1e-9);
        let ratio = quart.steps[0].exact / found.steps[0].exact;
        assert!((ratio - 0.946_352_946 / found.mix.volume.value.as_litres()).abs() < 1e-9);
    }

    /// Published values for recipe A: a cup of paint with 36% solids, 35% of which is pigment, and 4
    /// tablespoons of powder at 0.8 kg/L give 47.3 g of powder, 283.6 mL of mix, 36.2% solids and 46%
    /// pigment. By hand: 2 tablespoons of water are 29.57 mL, 29.5 g. A 250 mL jug may be off by 10 mL, so
    /// its uncertainty is 5.774 mL. Weighing 76.8 g has an uncertainty of sqrt(2 / 12 + 0.768^2 / 3) = 0.603
    /// g, or 0.445 mL at 1.3553 g/mL. Together that is 5.791 mL.
    #[test]
    fn a_cup_by_the_jug() {
        let cup = [
            ("volume", "8 fl oz"),
            ("density", "1.3 kg/l"),
            ("solids", "36 %"),
            ("sheen", "satin"),
            ("recipe", "chalk-quarter"),
            // This is 0.8 kg/L.
            ("cup", "189.27 g"),
        ];
        let found = of(&cup).unwrap();
        assert!((found.mix.volume.value.as_millilitres() - 283.62).abs() < 0.01);
        assert!((found.mix.volume_solids.value - 0.362).abs() < 5e-4);
        assert!((found.mix.pvc.value - 0.461).abs() < 5e-4);
        assert!((found.steps[0].exact.as_grams() - 47.32).abs() < 0.01);
        assert!((found.steps[1].exact.as_grams() - 29.51).abs() < 0.01);
        let (part, jug) = found.jug.unwrap();
        assert_eq!(found.recipe.components()[part].name, "Paint");
        assert!((jug.as_millilitres() - 236.588).abs() < 1e-3);
        let unsure = found.mix.volume.standard_uncertainty.as_millilitres();
        assert!((unsure - 5.791).abs() < 2e-3, "{unsure}");
        // The scale is coarse for 47 g of powder. It is also coarse for 30 g of water, but that does not
        // matter.
        let is_warned: Vec<bool> = found.steps.iter().map(|step| step.warning.is_some()).collect();
        assert_eq!(is_warned, [true, false, false]);
        // A weight takes precedence over a volume.
        let both = of(&[&cup[..], &[("paint", "650 g")]].concat()).unwrap();
        assert_eq!((both.jug, doses(&both)[2]), (None, 650.0));
    }

    #[test]
    fn the_paint_is_as_its_material_or_as_its_label() {
        let values = [
            ("paint", "650 g"),
            ("powder", "100 g"),
            ("material", "trim-enamel"),
        ];
        let found = of(&values).unwrap();
        // 35% to 45% of half a liter, plus the powder.
        let solids = (0.5 * 0.4 + 0.1 / 2.71) / (0.5 + 0.1 / 2.71);
        assert!((found.mix.volume_solids.value - solids).abs() < 1e-4);
        // Without a sheen, nobody knows whether the binder is enough.
        assert_eq!(found.binder, None);
        let other = |material| of(&[values[0], values[1], ("material", material)]);
        for not in ["alkyd-enamel", "water-polyurethane", "degreaser"] {
            assert_eq!(other(not), Err(ChalkFault::NotLatex), "{not}");
        }
    }

    /// Two parts paint, one part powder and no water: the powder goes into the paint.
    #[test]
    fn a_recipe_without_water_has_none_to_stir() {
        let cup = [
            ("volume", "8 fl oz"),
            ("density", "1.3 kg/l"),
            ("cup", "189.27 g"),
        ];
        let dry = of(&[&cup[..], &[("recipe", "chalk-half")]].concat()).unwrap();
        assert!(!dry.stir.contains("powder and water"));
        let names: Vec<_> = dry.recipe.components().iter().map(|part| &*part.name).collect();
        assert_eq!(names, ["Paint", "Calcium carbonate"]);
        assert_eq!(dry.jug.unwrap().0, 0);
        let wet = of(&[&cup[..], &[("recipe", "chalk-third")]].concat()).unwrap();
        assert!(wet.stir.contains("powder and water"));
        assert_eq!(wet.jug.unwrap().0, 2);
    }

    /// By hand: half a liter of gloss paint has 180 mL of solids, 7.5% of them pigment. With 50 g of powder,
    /// 18.45 mL, the pigment share is (13.5 + 18.45) / 198.45 = 16.1%. That is semi-gloss, not flat.
    #[test]
    fn little_powder_makes_no_matt_film() {
        let gloss = [
            SATIN[0],
            SATIN[1],
            SATIN[2],
            ("sheen", "gloss"),
            ("powder", "50 g"),
        ];
        let found = of(&gloss).unwrap();
        assert!((found.mix.pvc.value - 0.161).abs() < 5e-4, "{:?}", found.mix.pvc);
        assert_eq!(found.binder, Some(Binder::Covers));
        assert_eq!(found.dries.unwrap().key, "semi-gloss");
        let chalky = of(&[&SATIN[..], &[("powder", "100")]].concat()).unwrap();
        assert_eq!((chalky.binder, chalky.dries), (Some(Binder::Near), None));
    }

    #[test]
    fn what_is_lacking_is_asked_for() {
        assert_eq!(of(&[("name", "Chalk")]), Err(ChalkFault::Paint));
        assert_eq!(of(&SATIN), Err(ChalkFault::Powder));
        let absurd = [&SATIN[..1], &[("powder", "10"), ("density", "50 kg/l")]].concat();
        assert!(matches!(
            of(&absurd),
            Err(ChalkFault::Chalk(ChalkError::Figure(_)))
        ));
    }

    #[test]
    fn the_label_of_the_jar_minds_the_dust() {
        let lines = |name| {
            let found = of(&[&SATIN[..], &[("name", name), ("powder", "100")]].concat()).unwrap();
            label(
                &found,
                &|mass| Scale::KITCHEN.show(mass),
                "Oct 4, 2024",
                System::Metric,
            )
        };
        // 750 g, and 500 + 36.9 mL.
        let linen = lines("Linen");
        assert_eq!(
            (&*linen[0], &*linen[2]),
            ("Linen", "750 g, 537 mL at 1.40 kg/L"),
            "{linen:?}"
        );
        assert!(linen.contains(&DUST.to_owned()), "{linen:?}");
        assert_eq!(lines("")[0], NAMELESS);
    }
}
