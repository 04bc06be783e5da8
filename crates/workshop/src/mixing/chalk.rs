//! Chalk-type paint as the maker wrote it down: latex paint, calcium carbonate and water by weight, and what that comes to.
//! The rules are those of [`coatings::mix`].

use std::fmt;

use coatings::Figure;
use coatings::mix::{
    Bench, By, CALCIUM_CARBONATE, ChalkBatch, ChalkError, ChalkMix, Component, DUST, Latex, Order, Paint,
    Recipe, RecipeError, SHEENS, Scale, Step, Tag, Tare, WATER_DENSITY, chalk_recipe, pour,
};
use units::{Day, Density, Mass, System, Volume};

use crate::book::Line;

/// A batch that can be mixed.
#[derive(Clone, Debug, PartialEq)]
pub struct Chalk {
    /// What the maker calls it.
    pub name: String,
    /// Paint, powder and water by weight.
    pub recipe: Recipe,
    /// What is poured, in that order.
    pub steps: Vec<Step>,
    /// What it comes to.
    pub mix: ChalkMix,
}

/// Why it cannot be mixed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ChalkFault {
    /// No paint was weighed.
    Paint,
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
            ChalkFault::Paint => f.write_str("Weigh the paint, without its can."),
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

/// A batch from its line: a recipe of the hobby in cups becomes weights, by the density of the paint and the powder as it
/// lies in a cup; the maker's own weights go before.
///
/// # Errors
/// What is lacking, or cannot be so.
pub fn chalk(line: &Line, scale: Scale) -> Result<Chalk, ChalkFault> {
    let mass = |key: &str| line.number("chalk", key).map(Mass::kilograms);
    let paint = mass("paint")
        .filter(|paint| *paint > Mass::ZERO)
        .ok_or(ChalkFault::Paint)?;
    let latex = latex(line);
    let by_cups = chalk_recipe(line.text("recipe")).map(|recipe| {
        let volume = Volume::litres(paint.as_kilograms() / latex.density.middle());
        recipe.batch(
            volume,
            Density::kilograms_per_litre(CALCIUM_CARBONATE.bulk.middle()),
        )
    });
    let powder = mass("powder").or(by_cups.map(|batch| batch.powder));
    let water = mass("water").map(|water| Volume::litres(water.as_kilograms() / WATER_DENSITY.middle()));
    let mut batch = ChalkBatch {
        paint: Paint::Mass(paint),
        powder: powder.ok_or(ChalkFault::Powder)?,
        water: water.or(by_cups.map(|batch| batch.water)).unwrap_or(Volume::ZERO),
    };
    if let Some(wanted) = line.number("chalk", "wanted").map(Volume::litres) {
        batch = batch.for_volume(wanted, &latex, &CALCIUM_CARBONATE)?;
    }
    let mix = batch.mix(&latex, &CALCIUM_CARBONATE)?;
    let paint = match batch.paint {
        Paint::Mass(mass) => mass,
        Paint::Volume(volume) => volume * Density::kilograms_per_litre(latex.density.middle()),
    };
    let water = batch.water * Density::kilograms_per_litre(WATER_DENSITY.middle());
    let parts = [
        ("Paint", paint),
        ("Calcium carbonate", batch.powder),
        ("Water", water),
    ];
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
    let bench = Bench {
        scale,
        tare: Tare::EachDose,
        // Powder into paint, then the water that it asks for.
        order: Order::AsWritten,
        wanted: Scale::WANTED,
    };
    Ok(Chalk {
        name: line.text("name").to_owned(),
        recipe: Recipe::new(components, By::Weight)?,
        steps: pour(&doses, &bench)?,
        mix,
    })
}

/// The paint by its sheen, with what its label says of density and solids; a flat one where nothing is said.
fn latex(line: &Line) -> Latex {
    let sheen = SHEENS.iter().find(|sheen| sheen.key == line.text("sheen"));
    let mut latex = Latex::usual(sheen.unwrap_or(&SHEENS[SHEENS.len() - 1]));
    let own = |key: &str| {
        line.number("chalk", key)
            .filter(|own| *own > 0.0)
            .map(|own| Figure::own(own, own))
    };
    latex.density = own("density").unwrap_or(latex.density);
    latex.volume_solids = own("solids").unwrap_or(latex.volume_solids);
    latex
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
    use crate::{BookEdit, Edit, Workshop};

    fn of(values: &[(&'static str, &str)]) -> Result<Chalk, ChalkFault> {
        let values = values
            .iter()
            .map(|(key, text)| (*key, (*text).to_owned()))
            .collect();
        let add = BookEdit::Add("chalk", "c".into(), values);
        let workshop = Workshop::default().apply(Edit::Book(add)).unwrap();
        chalk(&workshop.books.lines("chalk")[0], Scale::KITCHEN)
    }

    const PAINT: [(&str, &str); 4] = [
        ("paint", "650 g"),
        ("density", "1.3 kg/l"),
        ("solids", "36 %"),
        ("sheen", "satin"),
    ];

    /// By hand: 650 g at 1.3 kg/L are half a litre. Own weights of 100 g powder and 60 g water: 0.5 + 0.1 / 2.71 +
    /// 0.06 / 0.998 is 0.5970 L; solids (0.18 + 0.0369) / 0.5970 are 0.3633.
    #[test]
    fn own_weights_come_to_their_true_volume() {
        let found = of(&[&PAINT[..], &[("powder", "100"), ("water", "60")]].concat()).unwrap();
        assert!(
            (found.mix.volume.value.as_litres() - 0.597_02).abs() < 1e-4,
            "{:?}",
            found.mix
        );
        assert!((found.mix.volume_solids.value - 0.3633).abs() < 1e-4);
        let doses: Vec<f64> = found
            .steps
            .iter()
            .map(|step| step.dose.as_grams().round())
            .collect();
        assert_eq!(doses, [650.0, 100.0, 60.0]);
    }

    /// A third of a cup to a cup, by hand: 0.5 / 3 L at the loose powder's middle density of 1.0 kg/L are 167 g; water
    /// between 1/8 and 3/16 of half a litre, 78 g.
    #[test]
    fn cups_become_weights() {
        let found = of(&[&PAINT[..], &[("recipe", "chalk-third")]].concat()).unwrap();
        let powder = 500.0 / 3.0 * CALCIUM_CARBONATE.bulk.middle();
        let dose = |place: usize| found.steps[place].dose.as_grams();
        assert!(
            (dose(1) - powder).abs() <= 1.0 && (dose(2) - 78.0).abs() <= 1.0,
            "{:?}",
            found.steps
        );
        // A quart of it at the same ratio.
        let quart = of(&[
            &PAINT[..],
            &[("recipe", "chalk-third"), ("wanted", "946.352946 ml")],
        ]
        .concat())
        .unwrap();
        assert!((quart.mix.volume.value.as_litres() - 0.946_352_946).abs() < 1e-9);
        let ratio = quart.steps[0].exact / found.steps[0].exact;
        assert!((ratio - 0.946_352_946 / found.mix.volume.value.as_litres()).abs() < 1e-9);
    }

    #[test]
    fn what_is_lacking_is_asked_for() {
        assert_eq!(of(&[("name", "Chalk")]), Err(ChalkFault::Paint));
        assert_eq!(of(&PAINT), Err(ChalkFault::Powder));
        let absurd = [&PAINT[..1], &[("powder", "10"), ("density", "50 kg/l")]].concat();
        assert!(matches!(
            of(&absurd),
            Err(ChalkFault::Chalk(ChalkError::Figure(_)))
        ));
    }

    #[test]
    fn the_label_of_the_jar_minds_the_dust() {
        let found = of(&[&PAINT[..], &[("name", "Linen"), ("powder", "100")]].concat()).unwrap();
        let lines = label(&found, &Scale::KITCHEN, Day::since_1970(20_000), System::Metric);
        assert_eq!(lines[0], "Linen");
        assert!(lines.contains(&DUST.to_owned()), "{lines:?}");
    }
}
