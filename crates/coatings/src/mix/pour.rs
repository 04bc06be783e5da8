//! Pouring a batch step by step: each dose to the step of the scale, what the display says, when to tare.

use std::fmt;

use units::Mass;

use super::recipe::amount;
use crate::mix::{RecipeError, Scale};

/// The most steps of a display. A finer step is a typing error.
const MOST_STEPS: f64 = 1e9;

/// When the scale is set to zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tare {
    /// Once, with the empty vessel on it; then the display runs on.
    Once,
    /// Before each dose, so the display says the dose. Two readings are rounded for each dose, see
    /// [`Scale::difference`].
    EachDose,
}

/// Which component is poured first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Order {
    /// As the recipe is written.
    AsWritten,
    /// The largest dose first, so that a tint falls into paint and not onto the wall of the vessel (common practice, no
    /// source).
    LargestFirst,
    /// The smallest dose first. If a dose goes over, only a larger batch is needed, because the rest is not
    /// poured yet.
    SmallestFirst,
}

/// How a batch is poured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bench {
    /// The scale.
    pub scale: Scale,
    /// When it is set to zero.
    pub tare: Tare,
    /// Which component comes first.
    pub order: Order,
    /// How sure each dose is wanted, as a fraction of it (k = 2); usually [`Scale::WANTED`].
    pub wanted: f64,
}

/// One dose to pour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// Which component of the recipe, counted from 0.
    pub component: usize,
    /// Whether to set the scale to zero before it.
    pub tare: bool,
    /// What the recipe asks for.
    pub exact: Mass,
    /// What to pour, in whole steps of the scale.
    pub dose: Mass,
    /// What the display says when it is in.
    pub display: Mass,
    /// What to tell the maker where the scale is too coarse for it.
    pub warning: Option<TooSmall>,
}

/// A dose that the scale cannot weigh as truly as wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TooSmall {
    /// How far it may be off, as a fraction of it (k = 2); `None` where it is rounded to nothing.
    pub off: Option<f64>,
    /// How true it is wanted.
    pub wanted: f64,
    /// The batch in which it is large enough; `None` where the scale is never as true as that.
    pub batch: Option<Mass>,
}

impl fmt::Display for TooSmall {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.off {
            Some(off) => write!(
                f,
                "On this scale the dose could be off by {:.0}%. You want {:.0}%.",
                off * 100.0,
                self.wanted * 100.0
            )?,
            None => f.write_str("This scale can't show such a small dose.")?,
        }
        match self.batch {
            // Rounded up, so that the stated batch is large enough.
            Some(batch) => write!(
                f,
                " Use a finer scale, or mix at least {:.0} g.",
                batch.as_grams().ceil()
            ),
            None => f.write_str(" Use a finer scale."),
        }
    }
}

/// The steps to pour these doses, in grams by the step of the scale: whole steps that add up to the rounded total, the
/// remainder to the doses whose own remainder is largest. No dose is further than one step from what the recipe asks
/// for, nor below zero. A dose of nothing is left out.
///
/// The doses are those of a whole batch or of a top-up.
///
/// # Errors
/// [`RecipeError::Amount`] for a dose that is no amount, [`RecipeError::Scale`].
///
/// # Example
/// ```
/// use coatings::mix::{Bench, Order, Scale, Tare, pour};
/// use units::Mass;
/// let bench = Bench { scale: Scale::KITCHEN, tare: Tare::Once, order: Order::AsWritten, wanted: Scale::WANTED };
/// let steps = pour(&[333.4, 111.3, 55.3].map(Mass::grams), &bench)?;
/// let shown: Vec<String> = steps.iter().map(|step| bench.scale.show(step.display)).collect();
/// assert_eq!(shown, ["334 g", "445 g", "500 g"]);
/// # Ok::<(), coatings::mix::RecipeError>(())
/// ```
pub fn pour(doses: &[Mass], bench: &Bench) -> Result<Vec<Step>, RecipeError> {
    let Bench { scale, tare, .. } = *bench;
    scale.check()?;
    let whole = whole_steps(doses, scale.resolution)?;
    let total: Mass = doses.iter().copied().sum();
    let smallest = scale.smallest_difference(bench.wanted);

    let mut order: Vec<usize> = (0..doses.len())
        .filter(|&place| doses[place] > Mass::ZERO)
        .collect();
    units::sort_few(&mut order, |a, b| match bench.order {
        Order::AsWritten => false,
        Order::LargestFirst => doses[*a] > doses[*b],
        Order::SmallestFirst => doses[*a] < doses[*b],
    });
    let mut run = 0.0;
    let steps = order.into_iter().enumerate().map(|(turn, component)| {
        let (exact, dose) = (doses[component], scale.resolution * whole[component]);
        run += whole[component];
        let off = (whole[component] > 0.0).then(|| 2.0 * (scale.difference(dose, Mass::ZERO) / dose));
        let is_true = off.is_some_and(|off| off <= bench.wanted);
        Step {
            component,
            tare: turn == 0 || tare == Tare::EachDose,
            exact,
            dose,
            display: match tare {
                Tare::Once => scale.resolution * run,
                Tare::EachDose => dose,
            },
            warning: (!is_true).then_some(TooSmall {
                off,
                wanted: bench.wanted,
                batch: smallest.map(|smallest| total * (smallest / exact)),
            }),
        }
    });
    Ok(steps.collect())
}

/// How many steps of the scale each dose is, by largest remainders: their sum is the total, rounded.
fn whole_steps(doses: &[Mass], step: Mass) -> Result<Vec<f64>, RecipeError> {
    let mut whole = Vec::with_capacity(doses.len());
    let mut remainders: Vec<(usize, f64)> = Vec::with_capacity(doses.len());
    for (place, dose) in doses.iter().enumerate() {
        let steps = *dose / step;
        amount(steps)?;
        if steps > MOST_STEPS {
            return Err(RecipeError::Scale);
        }
        whole.push(steps.floor());
        remainders.push((place, steps - steps.floor()));
    }
    let over = remainders.iter().map(|(_, rest)| rest).sum::<f64>().round();
    units::sort_few(&mut remainders, |(_, a), (_, b)| a > b);
    // Each remainder is below one, so there are at least as many as steps to give away.
    for (place, _) in remainders.iter().take(over as usize) {
        whole[*place] += 1.0;
    }
    Ok(whole)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mix::{By, Component, Recipe};
    use proptest::prelude::*;

    const BENCH: Bench = Bench {
        scale: Scale::KITCHEN,
        tare: Tare::Once,
        order: Order::AsWritten,
        wanted: Scale::WANTED,
    };

    fn poured(doses: &[f64], bench: &Bench) -> Vec<Step> {
        let doses: Vec<Mass> = doses.iter().copied().map(Mass::grams).collect();
        pour(&doses, bench).unwrap()
    }

    fn grams(steps: &[Step], of: fn(&Step) -> Mass) -> Vec<f64> {
        steps.iter().map(|step| of(step).as_grams().round()).collect()
    }

    /// By hand: 3.4 + 3.4 + 3.2 are 10; each is 3, and the step that is left goes to the first of the largest.
    #[test]
    fn the_total_stays_right() {
        let steps = poured(&[3.4, 3.4, 3.2], &BENCH);
        assert_eq!(grams(&steps, |step| step.dose), [4.0, 3.0, 3.0]);
        assert_eq!(grams(&steps, |step| step.display), [4.0, 7.0, 10.0]);
        assert_eq!(
            steps.iter().map(|step| step.tare).collect::<Vec<_>>(),
            [true, false, false]
        );
    }

    #[test]
    fn tared_before_each_dose_the_display_says_the_dose() {
        let bench = Bench {
            tare: Tare::EachDose,
            ..BENCH
        };
        let steps = poured(&[350.0, 100.0, 50.0], &bench);
        assert_eq!(grams(&steps, |step| step.display), [350.0, 100.0, 50.0]);
        assert!(steps.iter().all(|step| step.tare));
    }

    #[test]
    fn the_order_of_pouring() {
        let order = |order| {
            let steps = poured(&[20.0, 300.0, 0.0, 20.0], &Bench { order, ..BENCH });
            steps.iter().map(|step| step.component).collect::<Vec<_>>()
        };
        assert_eq!(order(Order::AsWritten), [0, 1, 3]);
        assert_eq!(order(Order::LargestFirst), [1, 0, 3]);
        assert_eq!(order(Order::SmallestFirst), [0, 3, 1]);
    }

    /// By hand: 4 g by two readings of 1 g and 1 %: u = sqrt(2 / 12 + 0.0016 / 3) = 0.4089 g, 20 % at k = 2. The least
    /// dose is 2 sqrt(2 / (12 (0.0004 - 0.000133))) = 50 g, so 504 g become 6,300 g.
    #[test]
    fn a_dose_too_small_is_told_with_the_batch_that_would_do() {
        let steps = poured(&[500.0, 4.0], &BENCH);
        assert_eq!(steps[0].warning, None);
        assert_eq!(
            steps[1].warning.unwrap().to_string(),
            "On this scale the dose could be off by 20%. You want 2%. Use a finer scale, or mix at least 6300 g."
        );
        let nothing = poured(&[500.0, 0.2], &BENCH)[1];
        assert_eq!(nothing.dose, Mass::ZERO);
        let words = nothing.warning.unwrap().to_string();
        assert!(
            words.starts_with("This scale can't show such a small dose."),
            "{words}"
        );
        let never = Bench {
            wanted: 0.01,
            ..BENCH
        };
        let words = poured(&[500.0], &never)[0].warning.unwrap().to_string();
        assert!(words.ends_with(" Use a finer scale."), "{words}");
    }

    #[test]
    fn what_cannot_be_poured_is_refused() {
        let with = |resolution, accuracy| Bench {
            scale: Scale { resolution, accuracy },
            ..BENCH
        };
        let gram = Mass::grams(1.0);
        for bench in [with(Mass::ZERO, 0.0), with(gram * f64::NAN, 0.0), with(gram, 2.0)] {
            assert_eq!(pour(&[gram], &bench), Err(RecipeError::Scale));
        }
        assert_eq!(
            pour(&[Mass::kilograms(1e9)], &with(Mass::grams(1e-3), 0.0)),
            Err(RecipeError::Scale)
        );
        for dose in [-1.0, f64::NAN] {
            assert_eq!(pour(&[gram, gram * dose], &BENCH), Err(RecipeError::Amount));
        }
        assert_eq!(pour(&[], &BENCH), Ok(Vec::new()));
    }

    proptest! {
        #[test]
        fn totals_are_right_and_doses_within_a_step(
            doses in prop::collection::vec(0.0..3000.0_f64, 1..12),
            step in prop::sample::select(vec![0.01, 0.1, 0.5, 1.0, 2.0, 5.0]), each in any::<bool>(),
        ) {
            let tare = if each { Tare::EachDose } else { Tare::Once };
            let scale = Scale { resolution: Mass::grams(step), ..Scale::KITCHEN };
            let steps = poured(&doses, &Bench { scale, tare, ..BENCH });
            let total: f64 = doses.iter().sum();
            let sum: f64 = steps.iter().map(|step| step.dose.as_grams()).sum();
            prop_assert!((sum - total).abs() <= step / 2.0 + 1e-6, "{sum} {total}");
            for one in &steps {
                prop_assert!(one.dose >= Mass::ZERO);
                prop_assert!((one.dose - one.exact).as_grams().abs() < step + 1e-6);
                let whole = one.dose.as_grams() / step;
                prop_assert!((whole - whole.round()).abs() < 1e-6);
            }
            if !each {
                prop_assert!((steps.last().unwrap().display.as_grams() - sum).abs() < 1e-6);
            }
        }

        /// Pour, use some, top up: the ratio is kept to the steps that were rounded.
        #[test]
        fn the_ratio_outlasts_topping_up(
            shares in prop::collection::vec(1.0..100.0_f64, 2..8), first in 50.0..2000.0_f64,
            used in 0.0..1.0_f64, more in 0.0..2000.0_f64,
        ) {
            let part = |share: &f64| Component { name: String::new(), share: *share };
            let recipe = Recipe::new(shares.iter().map(part).collect(), By::Weight).unwrap();
            let add = |vessel: &mut Vec<Mass>, doses: &[Mass]| {
                for step in pour(doses, &BENCH).unwrap() {
                    vessel[step.component] += step.dose;
                }
            };
            let off = |vessel: &[Mass]| {
                let total: Mass = vessel.iter().copied().sum();
                let shares = recipe.shares().zip(vessel);
                shares.map(|(share, mass)| (total * share - *mass).as_grams().abs()).fold(0.0, f64::max)
            };
            let mut vessel = vec![Mass::ZERO; shares.len()];
            add(&mut vessel, &recipe.batch_by_mass(Mass::grams(first)).unwrap());
            // A step of each dose, and half a step of the total.
            prop_assert!(off(&vessel) < 1.5);
            let poured: Mass = vessel.iter().copied().sum();
            vessel.iter_mut().for_each(|mass| *mass = *mass * (1.0 - used));
            let rest = poured * (1.0 - used);
            add(&mut vessel, &recipe.top_up(rest, rest + Mass::grams(more)).unwrap());
            prop_assert!(off(&vessel) < 3.0);
        }
    }
}
