//! Mixing by weight: reading recipes, pouring and topping up batches, and estimating the color drift.

pub mod cans;
pub mod chalk;
pub mod thin;

use std::fmt;

use coatings::mix::{
    Bench, By, Component, Latex, Order, Recipe, RecipeError, Scale, Step, Tag, Tare, Wanted, pour,
};
use coatings::unit::KilogramsPerLitre;
use coatings::{Estimate, SourcedRange};
use colour::{Drift, Part, Rgb, Weighing, drift, mixed};
use units::{Density, Mass, System, Volume};

use crate::book::{Amount, CanPart, Habits, Line, MixRecipe, PartsBy, Record, system_of_amount};
use crate::document::{Workshop, material_of};

/// The maximum number of parts in a recipe.
pub const MOST_PARTS: usize = 6;
/// The field keys of the parts of a recipe: name, amount, dry color, material and density.
pub const PARTS: [[&str; 5]; MOST_PARTS] = [
    ["part-1", "weight-1", "colour-1", "material-1", "density-1"],
    ["part-2", "weight-2", "colour-2", "material-2", "density-2"],
    ["part-3", "weight-3", "colour-3", "material-3", "density-3"],
    ["part-4", "weight-4", "colour-4", "material-4", "density-4"],
    ["part-5", "weight-5", "colour-5", "material-5", "density-5"],
    ["part-6", "weight-6", "colour-6", "material-6", "density-6"],
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
    /// The place of each part among the parts of the line.
    pub places: Vec<usize>,
    /// The dry color of each part, if known.
    pub colours: Vec<Option<Rgb>>,
    /// The density of each part, if the weights depend on it.
    pub densities: Vec<Option<SourcedRange<KilogramsPerLitre>>>,
    /// The weight of the finished batch. It is unsure if the batch was given as a volume.
    pub wanted: Estimate<Mass>,
    /// The weight left in the jar from an earlier batch.
    pub rest: Mass,
    /// The part that was poured wrong, and how much of it is really in.
    pub poured: Option<(usize, Mass)>,
    /// The units of the batch as entered.
    pub system: System,
}

impl Shade {
    /// Returns the weight of the batch after too much of one part was poured, so that the ratio is right
    /// again. Returns `None` if no part is over.
    pub fn grown(&self) -> Option<Mass> {
        let (part, really) = self.poured?;
        let share = self.recipe.shares().nth(part)?;
        let total = self.rest + really * (1.0 / share);
        (total > self.wanted.value).then_some(total)
    }
}

/// Why a recipe cannot be mixed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MixFault {
    /// There are no amounts.
    Empty,
    /// Some amounts are parts and others have a unit.
    Units,
    /// The amounts are parts, and there is no batch size.
    Size,
    /// An amount is out of range.
    Recipe(RecipeError),
}

impl fmt::Display for MixFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            MixFault::Empty => f.write_str("Enter how much of each can, like 2 and 1."),
            MixFault::Units => f.write_str("Use parts for every can, or a unit for every can."),
            MixFault::Size => f.write_str("Enter a batch size, like 24 fl oz or 500 g."),
            MixFault::Recipe(error) => error.fmt(f),
        }
    }
}

impl From<RecipeError> for MixFault {
    fn from(error: RecipeError) -> Self {
        MixFault::Recipe(error)
    }
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
    /// The color drift from weighing errors, if all swatches are known.
    pub drift: Option<Drift>,
}

/// Returns the density of a part: that of its label, or of its material, or of usual paint.
pub fn density_of(workshop: &Workshop, part: &CanPart) -> SourcedRange<KilogramsPerLitre> {
    let own = part.density.map(Density::as_kilograms_per_litre);
    if let Some(own) = own.filter(|own| *own > 0.0) {
        return SourcedRange::own(own, own);
    }
    material_of(&workshop.materials, part.material).map_or(Latex::DENSITY, |material| material.density)
}

/// A part of a recipe that has an amount.
struct Used<'a> {
    place: usize,
    part: CanPart<'a>,
    amount: Amount,
    density: SourcedRange<KilogramsPerLitre>,
}

impl Used<'_> {
    /// Returns its share, in kilograms or in liters unless it is a number of parts.
    fn component(&self, by: By) -> Component {
        Component {
            name: match self.part.name {
                "" => format!("Can {}", self.place + 1),
                name => name.to_owned(),
            },
            share: match (self.amount, by) {
                (Amount::Parts(parts), _) => parts,
                (Amount::Mass(mass), _) => mass.as_kilograms(),
                (Amount::Volume(volume), By::Volume) => volume.as_litres(),
                (Amount::Volume(volume), By::Weight) => volume.as_litres() * self.density.middle(),
            },
        }
    }
}

/// Reads a recipe from its line. Parts without an amount are left out. Volumes become weights by the
/// densities of the parts.
///
/// # Errors
/// The problem with the recipe, such as that it has no parts.
pub fn shade(workshop: &Workshop, line: &Line) -> Result<Shade, MixFault> {
    let mix = MixRecipe::read(line);
    let used = mix.parts().into_iter().enumerate().filter_map(|(place, part)| {
        Some(Used {
            place,
            part,
            amount: part.amount.filter(|amount| amount.is_some())?,
            density: density_of(workshop, &part),
        })
    });
    let used: Vec<Used> = used.collect();
    let by = by(&mix, &used)?;
    let as_written = Recipe::new(used.iter().map(|used| used.component(by)).collect(), by)?;
    let wanted = wanted(&mix, &used, &as_written)?;
    // A batch by weight of weights needs no densities.
    let needs_all = by == By::Volume
        || matches!(wanted, Wanted::Volume(_))
        || matches!(mix.rest, Some(Amount::Volume(_)));
    let known = used.iter().map(|used| needs_all.then_some(used.density));
    let batch = as_written.batch(wanted, &known.collect::<Vec<_>>())?;
    let density = batch
        .density
        .map(|density| density.value.as_kilograms_per_litre());
    let rest = mix
        .rest
        .and_then(|rest| weight(rest, density.unwrap_or_default()));
    let poured = mix.over.and_then(|number| {
        let part = used.iter().position(|used| used.place + 1 == number as usize)?;
        let really = weight(mix.poured?, used.get(part)?.density.middle())?;
        (really > Mass::ZERO).then_some((part, really))
    });
    Ok(Shade {
        recipe: match by {
            By::Weight => as_written,
            By::Volume => by_weight(&as_written, batch.masses())?,
        },
        places: used.iter().map(|used| used.place).collect(),
        colours: used
            .iter()
            .map(|used| used.part.colour.map(|colour| colour.0))
            .collect(),
        densities: used
            .iter()
            .map(|used| (needs_all || matches!(used.amount, Amount::Volume(_))).then_some(used.density))
            .collect(),
        wanted: batch.mass,
        rest: rest.unwrap_or(Mass::ZERO),
        poured,
        system: system_of_amount(line.text("wanted")).unwrap_or(workshop.units),
        name: mix.name.clone(),
    })
}

/// Returns the batch size, or the sum of the parts if there is none.
fn wanted(mix: &MixRecipe, used: &[Used], recipe: &Recipe) -> Result<Wanted, MixFault> {
    let written = || recipe.components().iter().map(|component| component.share).sum();
    match mix.wanted.filter(|wanted| wanted.is_some()) {
        Some(Amount::Volume(volume)) => Ok(Wanted::Volume(volume)),
        Some(Amount::Mass(mass)) => Ok(Wanted::Mass(mass)),
        _ if used.iter().any(|used| matches!(used.amount, Amount::Parts(_))) => Err(MixFault::Size),
        _ if recipe.by() == By::Volume => Ok(Wanted::Volume(Volume::litres(written()))),
        _ => Ok(Wanted::Mass(Mass::kilograms(written()))),
    }
}

/// Returns a recipe with the same components, by these weights.
fn by_weight(recipe: &Recipe, masses: Vec<Mass>) -> Result<Recipe, RecipeError> {
    let components = recipe.components().iter().zip(masses);
    let by_weight = components.map(|(component, mass)| Component {
        name: component.name.clone(),
        share: mass.as_kilograms(),
    });
    Recipe::new(by_weight.collect(), By::Weight)
}

/// Returns what the amounts are shares of. Volumes beside weights count by weight.
fn by(mix: &MixRecipe, used: &[Used]) -> Result<By, MixFault> {
    let (mut parts, mut masses, mut volumes) = (false, false, false);
    for used in used {
        match used.amount {
            Amount::Parts(_) => parts = true,
            Amount::Mass(_) => masses = true,
            Amount::Volume(_) => volumes = true,
        }
    }
    match (parts, masses, volumes) {
        (false, false, false) => Err(MixFault::Empty),
        (true, false, false) if mix.by == Some(PartsBy::Volume) => Ok(By::Volume),
        (true, false, false) | (false, true, _) => Ok(By::Weight),
        (false, false, true) => Ok(By::Volume),
        (true, ..) => Err(MixFault::Units),
    }
}

/// Returns the weight of an amount with this density in kg/L.
fn weight(amount: Amount, density: f64) -> Option<Mass> {
    match amount {
        Amount::Mass(mass) => Some(mass),
        Amount::Volume(volume) => Some(volume * Density::kilograms_per_litre(density)),
        Amount::Parts(_) => None,
    }
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

/// Returns what to pour for a batch of `wanted`, on top of what is left in the jar. The scale is zeroed once
/// and shows the running total. The largest dose is first.
///
/// # Errors
/// If what is left exceeds the wanted mass, or an amount is zero.
pub fn pouring(shade: &Shade, scale: Scale, wanted: Mass) -> Result<Pouring, RecipeError> {
    let rest = shade.rest;
    let doses = match rest > Mass::ZERO {
        true => shade.recipe.top_up(rest, wanted)?,
        false => shade.recipe.batch_by_mass(wanted)?,
    };
    let bench = Bench {
        scale,
        tare: Tare::Once,
        order: Order::LargestFirst,
        wanted: Scale::WANTED,
    };
    let steps = pour(&doses, &bench)?;
    let shares: Vec<f64> = shade.recipe.shares().collect();
    // What is left counts as mixed by the same ratio on the same scale, so each part was rounded twice.
    let before = |step: &Step| rest * shares.get(step.component).copied().unwrap_or_default();
    // The drift depends on the pouring order.
    let part = |step: &Step| {
        let colour = shade.colours.get(step.component).copied().flatten()?;
        Some(Part {
            colour,
            amount: (step.exact + before(step)).as_grams(),
        })
    };
    let parts: Option<Vec<Part>> = steps.iter().map(part).collect();
    let in_jar: Vec<f64> = steps
        .iter()
        .map(|step| (step.dose + before(step)).as_grams())
        .collect();
    let roundings = if rest > Mass::ZERO { 2.0 } else { 1.0 };
    let weighing = Weighing {
        step: scale.resolution.as_grams() * roundings,
        accuracy: scale.accuracy,
        tared: false,
    };
    let parts = parts.unwrap_or_default();
    Ok(Pouring {
        total: steps.iter().map(|step| step.dose).sum::<Mass>() + rest,
        colour: mixed(&parts).ok().map(|light| light.rgb()),
        drift: drift(&parts, &in_jar, weighing).ok(),
        steps,
    })
}

/// Returns the lines for a jar label, with weights as `weight` writes them.
pub fn label(
    shade: &Shade,
    weight: &dyn Fn(Mass) -> String,
    mass: Mass,
    day: &str,
    system: System,
) -> Vec<String> {
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
    tag.lines(weight, system)
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

    const SAGE: [(&str, &str); 9] = [
        ("name", "Sage"),
        ("part-1", "white"),
        ("weight-1", "70 g"),
        ("colour-1", "#f4f2ec"),
        ("part-2", "green"),
        ("weight-2", "20 g"),
        ("colour-2", "#3d6b4f"),
        ("weight-4", "10 g"),
        ("colour-4", "#5a4a3a"),
    ];

    fn sage(more: &[(&'static str, &str)]) -> Shade {
        of(&[&SAGE, more].concat()).unwrap()
    }

    fn of(values: &[(&'static str, &str)]) -> Result<Shade, MixFault> {
        let workshop = line(values);
        shade(&workshop, &workshop.books.lines("recipes")[0])
    }

    fn doses(shade: &Shade) -> Vec<f64> {
        let pouring = pouring(shade, Scale::KITCHEN, shade.wanted.value).unwrap();
        let doses = pouring.steps.iter().map(|step| step.dose.as_grams().round());
        doses.collect()
    }

    /// By hand: 7 : 2 : 1 of half a kilogram. The largest dose is first, and the display shows the running
    /// total.
    #[test]
    fn a_batch_is_poured_to_a_running_total() {
        let shade = sage(&[("wanted", "500 g")]);
        assert_eq!(shade.recipe.components()[2].name, "Can 4");
        assert_eq!(
            (shade.places.as_slice(), &shade.densities),
            (&[0, 1, 3][..], &vec![None; 3])
        );
        assert_eq!(shade.wanted.standard_uncertainty, Mass::ZERO);
        assert_eq!(doses(&shade), [350.0, 100.0, 50.0]);
        let pouring = pouring(&shade, Scale::KITCHEN, shade.wanted.value).unwrap();
        let shown = pouring.steps.iter().map(|step| Scale::KITCHEN.show(step.display));
        assert_eq!(shown.collect::<Vec<_>>(), ["350 g", "450 g", "500 g"]);
        let is_zeroed: Vec<bool> = pouring.steps.iter().map(|step| step.tare).collect();
        assert_eq!(is_zeroed, [true, false, false]);
        assert!((pouring.total.as_grams() - 500.0).abs() < 1e-9);
        assert!(pouring.colour.is_some() && pouring.drift.is_some());
        // Without a batch size, the weights are those of the recipe.
        assert_eq!(doses(&sage(&[])), [70.0, 20.0, 10.0]);
    }

    #[test]
    fn parts_are_of_the_weight_or_the_volume() {
        let ratio = [
            ("weight-1", "2"),
            ("weight-2", "1"),
            ("density-1", "1.5 kg/l"),
            ("density-2", "1.2 kg/l"),
        ];
        assert_eq!(of(&ratio), Err(MixFault::Size));
        let with = |more: &[(&'static str, &str)]| of(&[&ratio, more].concat()).unwrap();
        let by_weight = with(&[("wanted", "500 g")]);
        assert_eq!(doses(&by_weight), [333.0, 167.0]);
        assert_eq!(by_weight.densities, [None, None]);
        // By hand: 2 L of 1.5 kg/L and 1 L of 1.2 kg/L weigh 3.0 and 1.2 kg: 357.14 and 142.86 g of 500.
        let by_volume = with(&[("wanted", "500 g"), ("by", "volume")]);
        assert_eq!(doses(&by_volume), [357.0, 143.0]);
        // By hand: 300 mL of these are 200 and 100 mL, 300 and 120 g.
        assert_eq!(
            doses(&with(&[("wanted", "300 mL"), ("by", "volume")])),
            [300.0, 120.0]
        );
        let mixed = of(&[("weight-1", "2"), ("weight-2", "20 g"), ("wanted", "1 kg")]);
        assert_eq!(mixed, Err(MixFault::Units));
        assert_eq!(of(&[("name", "Nothing")]), Err(MixFault::Empty));
    }

    /// By hand: 24 fl oz are 709.76 mL. Two parts and one of paint of 1.2 to 1.4 kg/L weigh 922.7 g at 1.3 kg/L. The
    /// density of each part is off by 0.1 / sqrt(3) = 0.0577 kg/L, or 4.44 %. By weight they make up two thirds and one
    /// third of the volume: hypot(2/3, 1/3) x 4.44 % = 3.31 %, 30.5 g.
    #[test]
    fn a_volume_becomes_a_weight_by_the_usual_density_with_its_doubt() {
        let shade = of(&[("weight-1", "2"), ("weight-2", "1"), ("wanted", "24 fl oz")]).unwrap();
        let (value, doubt) = (
            shade.wanted.value.as_grams(),
            shade.wanted.standard_uncertainty.as_grams(),
        );
        assert!(
            (value - 922.69).abs() < 0.01 && (doubt - 30.5).abs() < 0.1,
            "{value} {doubt}"
        );
        assert_eq!(doses(&shade), [615.0, 308.0]);
        assert_eq!(shade.densities, [Some(Latex::DENSITY); 2]);
        assert_eq!(shade.system, System::UsCustomary);
        // With both labels entered, the weight is sure.
        let sure = [("density-1", "10 lb/gal"), ("density-2", "10 lb/gal")];
        let values = [("weight-1", "2"), ("weight-2", "1"), ("wanted", "1 gal")];
        let shade = of(&[&values[..], &sure].concat()).unwrap();
        assert!((shade.wanted.value.as_kilograms() - 4.535_923_7).abs() < 1e-9);
        assert!(shade.wanted.standard_uncertainty < Mass::grams(1e-6));
    }

    /// By hand: 200 mL of a paint of 1.3 kg/L weigh 260 g.
    #[test]
    fn a_volume_beside_a_weight_is_weighed() {
        let shade = of(&[("weight-1", "200 mL"), ("weight-2", "40 g"), ("wanted", "150 g")]).unwrap();
        assert_eq!(doses(&shade), [130.0, 20.0]);
        assert_eq!(shade.densities, [Some(Latex::DENSITY), None]);
        // A material of its own says how heavy it is.
        let own = [
            ("material-1", "water-polyurethane"),
            ("weight-1", "1 L"),
            ("weight-2", "1 g"),
        ];
        let light = of(&own).unwrap();
        assert!(light.densities[0].unwrap().high < Latex::DENSITY.low);
    }

    #[test]
    fn what_is_left_is_topped_up() {
        let shade = sage(&[("wanted", "500 g"), ("rest", "200 g")]);
        assert_eq!(doses(&shade), [210.0, 60.0, 30.0]);
        // A top-up may drift further than a batch from nothing.
        let high = |shade: &Shade| {
            let pouring = pouring(shade, Scale::KITCHEN, shade.wanted.value).unwrap();
            pouring.drift.unwrap().high
        };
        let (topped, fresh) = (high(&shade), high(&sage(&[("wanted", "500 g")])));
        assert!(topped > fresh, "{topped} {fresh}");
        assert!(pouring(&shade, Scale::KITCHEN, Mass::grams(100.0)).is_err());
        // By hand: 100 mL of a mix of 1.3 kg/L are 130 g.
        let by_volume = sage(&[("wanted", "500 g"), ("rest", "100 mL")]);
        assert!((by_volume.rest.as_grams() - 130.0).abs() < 1e-9);
    }

    /// By hand: 420 g of white are 70 % of 600 g.
    #[test]
    fn too_much_of_one_part_makes_a_larger_batch() {
        let poured = |grams: &str, rest: &str| {
            sage(&[
                ("wanted", "500 g"),
                ("over", "1"),
                ("poured", grams),
                ("rest", rest),
            ])
            .grown()
        };
        let near = |found: Option<Mass>, grams: f64| (found.unwrap().as_grams() - grams).abs() < 1e-9;
        assert!(near(poured("420 g", ""), 600.0));
        assert!(near(poured("420 g", "200 g"), 800.0));
        assert_eq!(poured("350 g", ""), None);
        assert_eq!(poured("300 g", ""), None);
        let other = sage(&[("wanted", "500 g"), ("over", "3"), ("poured", "420 g")]);
        assert_eq!(other.poured, None, "can 3 is empty");
        let last = sage(&[("wanted", "500 g"), ("over", "4"), ("poured", "60 g")]);
        assert_eq!(last.poured.map(|(part, _)| part), Some(2));
    }

    /// A larger batch of the same shade drifts less. If a part has no swatch, the drift is unknown.
    #[test]
    fn a_larger_batch_is_more_alike() {
        let shade = sage(&[]);
        let high = |grams: f64| {
            let pouring = pouring(&shade, Scale::KITCHEN, Mass::grams(grams)).unwrap();
            pouring.drift.unwrap().high
        };
        assert!(high(1000.0) < high(60.0), "{} {}", high(1000.0), high(60.0));
        let mut without = shade.clone();
        without.colours[1] = None;
        let pouring = pouring(&without, Scale::KITCHEN, Mass::grams(500.0)).unwrap();
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
    fn a_label_has_its_shares() {
        let weight = |mass: Mass| Scale::KITCHEN.show(mass);
        let lines = label(
            &sage(&[]),
            &weight,
            Mass::grams(500.0),
            "Dec 1, 2026",
            System::Metric,
        );
        assert_eq!(lines[..2], ["Sage", "Mixed Dec 1, 2026"]);
        assert!(lines.contains(&"white 70%, 350 g".to_owned()), "{lines:?}");
    }
}
