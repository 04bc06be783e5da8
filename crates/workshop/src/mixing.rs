//! Mixing by weight: reading recipes, pouring and topping up batches, and estimating the color drift.

pub mod chalk;
pub mod thin;

use coatings::mix::{Bench, By, Component, Order, Recipe, RecipeError, Scale, Step, Tag, Tare, pour};
use colour::{Drift, Part, Rgb, Weighing, drift, mixed};
use units::{Day, Mass, System};

use crate::book::{Habits, Line, MixRecipe, Record};
use crate::document::Workshop;

/// The maximum number of parts in a recipe.
pub const MOST_PARTS: usize = 6;
/// The field keys of the parts of a recipe: name, weight and dry color.
pub const PARTS: [[&str; 3]; MOST_PARTS] = [
    ["part-1", "weight-1", "colour-1"],
    ["part-2", "weight-2", "colour-2"],
    ["part-3", "weight-3", "colour-3"],
    ["part-4", "weight-4", "colour-4"],
    ["part-5", "weight-5", "colour-5"],
    ["part-6", "weight-6", "colour-6"],
];

/// A scale with a display step below this, in grams, counts as a scale for small doses and gets its accuracy
/// (common practice, no source).
const FINE_STEP: f64 = 0.2;

/// A recipe that can be mixed.
#[derive(Clone, Debug, PartialEq)]
pub struct Shade {
    /// The maker's name for it.
    pub name: String,
    /// The parts by weight.
    pub recipe: Recipe,
    /// The dry color of each part, if known.
    pub colours: Vec<Option<Rgb>>,
    /// The total weight of the recipe as written.
    pub written: Mass,
}

/// The pouring steps for a batch.
#[derive(Clone, Debug, PartialEq)]
pub struct Pouring {
    /// The steps in order. Each has the index of its component.
    pub steps: Vec<Step>,
    /// The mass of the finished batch, including what was left before.
    pub total: Mass,
    /// The color of the mix, if the swatch of every part is known.
    pub colour: Option<Rgb>,
    /// The color drift from weighing errors, if all swatches are known and the batch starts empty.
    pub drift: Option<Drift>,
}

/// Reads a recipe from its line. Parts without a weight are left out.
///
/// # Errors
/// The problem with the recipe, such as that it has no parts.
pub fn shade(line: &Line) -> Result<Shade, RecipeError> {
    let (mut components, mut colours) = (Vec::new(), Vec::new());
    let mut written = Mass::ZERO;
    let mixed = MixRecipe::read(line);
    for (place, (name, weight, colour)) in mixed.parts().into_iter().enumerate() {
        let Some(weight) = weight.filter(|weight| *weight > Mass::ZERO) else {
            continue;
        };
        let name = match name {
            "" => format!("Part {}", place + 1),
            name => name.to_owned(),
        };
        components.push(Component {
            name,
            share: weight.as_kilograms(),
        });
        colours.push(colour.map(|colour| colour.0));
        written += weight;
    }
    Ok(Shade {
        name: mixed.name,
        recipe: Recipe::new(components, By::Weight)?,
        colours,
        written,
    })
}

/// Returns the maker's scale. Its accuracy is typical for the step of its display.
pub fn scale(workshop: &Workshop) -> Scale {
    let own = workshop.books.one::<Habits>().scale_step;
    match own.filter(|step| *step > Mass::ZERO) {
        None => Scale::KITCHEN,
        Some(resolution) => Scale {
            resolution,
            accuracy: if resolution.as_grams() < FINE_STEP {
                Scale::FINE.accuracy
            } else {
                Scale::KITCHEN.accuracy
            },
        },
    }
}

/// Returns what to pour for a batch of `wanted`, on top of the `rest` left from before. The scale is zeroed
/// before each dose, and the largest dose is first.
///
/// # Errors
/// If the rest exceeds the wanted mass, or an amount is zero.
pub fn pouring(shade: &Shade, scale: Scale, wanted: Mass, rest: Mass) -> Result<Pouring, RecipeError> {
    let doses = match rest > Mass::ZERO {
        true => shade.recipe.top_up(rest, wanted)?,
        false => shade.recipe.batch_by_mass(wanted)?,
    };
    let bench = Bench {
        scale,
        tare: Tare::EachDose,
        order: Order::LargestFirst,
        wanted: Scale::WANTED,
    };
    let steps = pour(&doses, &bench)?;
    // The drift depends on the pouring order.
    let part = |step: &Step| {
        let colour = shade.colours.get(step.component).copied().flatten()?;
        Some(Part {
            colour,
            amount: step.exact.as_grams(),
        })
    };
    let parts: Option<Vec<Part>> = steps.iter().map(part).collect();
    let of_step: Vec<f64> = steps.iter().map(|step| step.dose.as_grams()).collect();
    let weighing = Weighing {
        step: scale.resolution.as_grams(),
        accuracy: scale.accuracy,
        tared: true,
    };
    let parts = parts.unwrap_or_default();
    Ok(Pouring {
        total: steps.iter().map(|step| step.dose).sum::<Mass>() + rest,
        colour: mixed(&parts).ok().map(|light| light.rgb()),
        drift: (rest <= Mass::ZERO)
            .then(|| drift(&parts, &of_step, weighing).ok())
            .flatten(),
        steps,
    })
}

/// Returns the lines for a jar label.
pub fn label(shade: &Shade, scale: &Scale, mass: Mass, day: Day, system: System) -> Vec<String> {
    let doses = shade.recipe.batch_by_mass(mass).unwrap_or_default();
    let tag = Tag {
        name: &shade.name,
        recipe: &shade.recipe,
        doses: &doses,
        day,
        mass,
        density: None,
        made_for: "",
        cautions: &[],
    };
    tag.lines(scale, system)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BookEdit, Edit};

    fn line(values: &[(&'static str, &str)]) -> Workshop {
        let values = crate::samples::values(values);
        let add = BookEdit::Add("recipes", "r1".into(), values);
        Workshop::default().apply(Edit::Book(add)).unwrap()
    }

    fn sage() -> Workshop {
        line(&[
            ("name", "Sage"),
            ("part-1", "white"),
            ("weight-1", "70 g"),
            ("colour-1", "#f4f2ec"),
            ("part-2", "green"),
            ("weight-2", "20 g"),
            ("colour-2", "#3d6b4f"),
            ("weight-4", "10 g"),
            ("colour-4", "#5a4a3a"),
        ])
    }

    fn of(workshop: &Workshop) -> Shade {
        shade(&workshop.books.lines("recipes")[0]).unwrap()
    }

    /// By hand: 7 : 2 : 1 of half a kilogram. The largest dose is first, and the scale is zeroed before each.
    #[test]
    fn a_batch_is_poured_dose_by_dose() {
        let shade = of(&sage());
        assert_eq!(shade.recipe.components()[2].name, "Part 4");
        let pouring = pouring(&shade, Scale::KITCHEN, Mass::grams(500.0), Mass::ZERO).unwrap();
        let doses: Vec<f64> = pouring
            .steps
            .iter()
            .map(|step| step.dose.as_grams().round())
            .collect();
        assert_eq!(doses, [350.0, 100.0, 50.0]);
        assert!(
            pouring
                .steps
                .iter()
                .all(|step| step.tare && step.dose == step.display)
        );
        assert!((pouring.total.as_grams() - 500.0).abs() < 1e-9);
        assert!(pouring.colour.is_some() && pouring.drift.is_some());
    }

    #[test]
    fn what_is_left_is_topped_up() {
        let shade = of(&sage());
        let pouring = pouring(&shade, Scale::KITCHEN, Mass::grams(500.0), Mass::grams(200.0)).unwrap();
        let poured: f64 = pouring.steps.iter().map(|step| step.dose.as_grams()).sum();
        assert!((poured - 300.0).abs() < 1e-9 && pouring.drift.is_none());
        assert!(super::pouring(&shade, Scale::KITCHEN, Mass::grams(100.0), Mass::grams(200.0)).is_err());
    }

    /// A larger batch of the same shade drifts less. If a part has no swatch, the drift is unknown.
    #[test]
    fn a_larger_batch_is_more_alike() {
        let shade = of(&sage());
        let high = |grams: f64| {
            let pouring = pouring(&shade, Scale::KITCHEN, Mass::grams(grams), Mass::ZERO).unwrap();
            pouring.drift.unwrap().high
        };
        assert!(high(1000.0) < high(60.0), "{} {}", high(1000.0), high(60.0));
        let mut without = shade.clone();
        without.colours[1] = None;
        let pouring = pouring(&without, Scale::KITCHEN, Mass::grams(500.0), Mass::ZERO).unwrap();
        assert_eq!((pouring.colour, pouring.drift), (None, None));
    }

    #[test]
    fn the_scale_is_that_of_the_maker() {
        let with = |step: &str| {
            let write = BookEdit::Write("habits", "only".into(), "scale-step".into(), step.into());
            scale(&Workshop::default().apply(Edit::Book(write)).unwrap())
        };
        assert_eq!(scale(&Workshop::default()), Scale::KITCHEN);
        assert_eq!(with("0.1 g").accuracy, Scale::FINE.accuracy);
        assert!((with("2 g").resolution.as_grams() - 2.0).abs() < 1e-12);
    }

    #[test]
    fn an_empty_recipe_says_so_and_a_label_has_its_shares() {
        let empty = line(&[("name", "Nothing")]);
        assert_eq!(shade(&empty.books.lines("recipes")[0]), Err(RecipeError::Empty));
        let lines = label(
            &of(&sage()),
            &Scale::KITCHEN,
            Mass::grams(500.0),
            Day::since_1970(20_000),
            System::Metric,
        );
        assert_eq!(lines[0], "Sage");
        assert!(lines.contains(&"white 70%, 350 g".to_owned()), "{lines:?}");
    }
}
