//! Chalk-type paint as the maker wrote it down: latex paint, calcium carbonate and water, what to weigh of them, and what
//! that comes to. The rules are those of [`coatings::mix`].

use std::fmt;

use coatings::mix::{
    Bench, Binder, By, CALCIUM_CARBONATE, ChalkBatch, ChalkError, ChalkMix, Component, DUST, Jug, Latex,
    Order, Paint, Recipe, RecipeError, SHEENS, Scale, Sheen, Step, Tag, Tare, WATER_DENSITY, jug_limits,
    pour, powder_limits,
};
use coatings::{FilmClass, SourcedRange, Thinner};
use units::{Day, Density, Mass, System, Volume, VolumeUnit};

use super::scale;
use crate::book::{ChalkLine, Line, Record, Share};
use crate::document::{Workshop, material_of};

/// What a jar is called that nobody gave a name.
pub const NAMELESS: &str = "Chalk-type paint";

/// What goes in besides the powder.
const WATER: &str = "Water";
const PAINT: &str = "Paint";
/// How it is stirred with water, and without.
const STIR_WITH_WATER: &str = "Stir powder and water smooth before the paint goes in.";
const STIR_DRY: &str =
    "Stir the powder into the paint a little at a time. Too thick? Add water by the spoon.";

/// A batch that can be mixed.
#[derive(Clone, Debug, PartialEq)]
pub struct Chalk {
    /// What the maker calls it.
    pub name: String,
    /// Powder, water and paint by weight.
    pub recipe: Recipe,
    /// What is poured, in that order.
    pub steps: Vec<Step>,
    /// The paint, where it is measured in a jug and not weighed: its part of the recipe, and how much.
    pub jug: Option<(usize, Volume)>,
    /// What it comes to; its volume with what measuring leaves open.
    pub mix: ChalkMix,
    /// Whether the binder still covers the powder; nothing while the sheen of the paint is not said.
    pub binder: Option<Binder>,
    /// How it dries, where the binder covers the powder.
    pub dries: Option<&'static Sheen>,
    /// How powder and paint come together.
    pub stir: &'static str,
    /// The least and the most that the powder can weigh if it is measured in cups and spoons, as the recipe has it and
    /// nobody knows how it lies in them.
    pub in_cups: Option<(Mass, Mass)>,
}

/// Why it cannot be mixed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ChalkFault {
    /// No paint was measured.
    Paint,
    /// The material is not a paint that water thins.
    NotLatex,
    /// Neither a recipe nor the weight of the powder is there.
    Powder,
    /// An amount or a figure cannot be so.
    Chalk(ChalkError),
    /// The batch cannot be poured so.
    Pour,
}

impl fmt::Display for ChalkFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ChalkFault::Paint => f.write_str("Weigh the paint without its can, or write its volume."),
            ChalkFault::NotLatex => {
                f.write_str("Powder and water go into a paint that water thins. Choose one.")
            }
            ChalkFault::Powder => f.write_str("Choose how much powder, or weigh your own."),
            ChalkFault::Chalk(error) => error.fmt(f),
            ChalkFault::Pour => f.write_str("These weights cannot be poured. Look at them again."),
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

/// A batch from its line: a recipe of the hobby in cups becomes weights, by the density of the paint and of the powder as it
/// lies in a cup; the maker's own weights go before, and so does the weight of the paint before its volume.
///
/// # Errors
/// What is lacking, or cannot be so.
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
    // Powder and water first: stirred smooth they leave no lumps in the paint (hobby pages agree on that). Without water the
    // powder goes into the paint.
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
    // A little more or less water only thins it; recipes themselves leave half as much again open.
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

/// How unsure a jug leaves its volume. Above a litre no limits are known, and a whole can is likely.
fn of_jug(jug: Option<Volume>) -> Volume {
    let limits = jug.and_then(|volume| jug_limits(Jug::Line, volume));
    limits.map_or(Volume::ZERO, |limits| {
        Volume::litres(limits.distribution().standard_uncertainty())
    })
}

/// The standard uncertainty of what hangs on several that are independent (JCGM 100, 5.1.2).
fn together(parts: [Volume; 3]) -> Volume {
    let squares = parts.map(|part| part.as_litres() * part.as_litres());
    Volume::litres(squares.iter().sum::<f64>().sqrt())
}

/// The paint: its pigment by its sheen, or anything that a paint can have where that is not said; density and solids as its
/// label has them, or else as is usual for the material, or for latex.
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

/// The lines for the label of its jar.
pub fn label(of: &Chalk, scale: &Scale, day: Day, system: System) -> Vec<String> {
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
    tag.lines(scale, system)
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

    /// By hand: 650 g at 1.3 kg/L are half a litre. Own weights of 100 g powder and 60 g water: 0.5 + 0.1 / 2.71 +
    /// 0.06 / 0.998 is 0.5970 L; solids (0.18 + 0.0369) / 0.5970 are 0.3633; pigment, from 35 % of the solids of a satin
    /// paint, (0.063 + 0.0369) / (0.18 + 0.0369) = 0.4606.
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
        // 810 g by a scale that is 1 % off at most: sqrt(2 / 12 + 8.1^2 / 3) = 4.694 g, at 810 / 597.02 = 1.3567 g/mL
        // 3.460 mL. Nothing else is unsure here.
        let unsure = mix.volume.standard_uncertainty.as_millilitres();
        assert!((unsure - 3.460).abs() < 1e-3, "{unsure}");
    }

    /// A third of a cup to a cup, by hand: 0.5 / 3 L at the loose powder's middle density of 1.0 kg/L are 167 g, and between
    /// 0.4 and 1.2 kg/L they are 67 to 200 g; water between 1/8 and 3/16 of half a litre, 78 g.
    #[test]
    fn cups_become_weights() {
        let third = [&SATIN[..], &[("recipe", "chalk-third")]].concat();
        let found = of(&third).unwrap();
        assert_eq!(doses(&found), [167.0, 78.0, 650.0]);
        let (least, most) = found.in_cups.unwrap();
        assert!((least.as_grams() - 66.667).abs() < 1e-3 && (most.as_grams() - 200.0).abs() < 1e-9);
        // A cup of it that was weighed once: 189.27 g in 236.59 mL are 0.8 kg/L, so 133 g, and no guess any more.
        let weighed = of(&[&third[..], &[("cup", "189.27 g")]].concat()).unwrap();
        assert_eq!((doses(&weighed)[0], weighed.in_cups), (133.0, None));
        // A quart of it at the same ratio.
        let quart = of(&[&third[..], &[("wanted", "1 qt")]].concat()).unwrap();
        assert!((quart.mix.volume.value.as_litres() - 0.946_352_946).abs() < 1e-9);
        let ratio = quart.steps[0].exact / found.steps[0].exact;
        assert!((ratio - 0.946_352_946 / found.mix.volume.value.as_litres()).abs() < 1e-9);
    }

    /// The facts of the trade for recipe A, calculated: a cup of paint with solids of 36 % and 35 % of pigment, and 4
    /// tablespoons of powder at 0.8 kg/L: 47.3 g, 283.6 mL, solids of 36.2 %, pigment of 46 %. By hand: 2 tablespoons of
    /// water are 29.57 mL, 29.5 g. A jug of 250 mL may be 10 mL off, so 5.774 mL; 76.8 g on the scale leave
    /// sqrt(2 / 12 + 0.768^2 / 3) = 0.603 g, at 1.3553 g/mL 0.445 mL: together 5.791 mL.
    #[test]
    fn a_cup_by_the_jug() {
        let cup = [
            ("volume", "8 fl oz"),
            ("density", "1.3 kg/l"),
            ("solids", "36 %"),
            ("sheen", "satin"),
            ("recipe", "chalk-quarter"),
            // 0.8 kg/L.
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
        // The scale is coarse for 47 g of powder, and for 30 g of water, where it does not matter.
        let is_warned: Vec<bool> = found.steps.iter().map(|step| step.warning.is_some()).collect();
        assert_eq!(is_warned, [true, false, false]);
        // Weighed goes before measured.
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
        // 0.35 to 0.45 of half a litre, and the powder.
        let solids = (0.5 * 0.4 + 0.1 / 2.71) / (0.5 + 0.1 / 2.71);
        assert!((found.mix.volume_solids.value - solids).abs() < 1e-4);
        // Nobody said how it shines: so nobody knows whether its binder covers the powder.
        assert_eq!(found.binder, None);
        let other = |material| of(&[values[0], values[1], ("material", material)]);
        for not in ["alkyd-enamel", "water-polyurethane", "degreaser"] {
            assert_eq!(other(not), Err(ChalkFault::NotLatex), "{not}");
        }
    }

    /// Two parts of paint to one of powder, and no water: the powder goes into the paint.
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

    /// By hand, of a half litre of gloss paint with 7.5 % of its 180 mL solids pigment: 50 g of powder, 18.45 mL, make
    /// (13.5 + 18.45) / 198.45 = 16.1 %, which is semi-gloss and no matt film.
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
            label(&found, &Scale::KITCHEN, Day::since_1970(20_000), System::Metric)
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
