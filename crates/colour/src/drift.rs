//! Color drift from weighing errors.
//!
//! A reading of the display is off by up to half a step either way, every value as likely (JCGM 100, F.2.2.1). With the
//! total running on, a dose lies between two readings and shares each with its neighbor: what the white got too much,
//! the green lacks. Tared before each dose, the zero is rounded anew, so each dose has two roundings of its own. On top,
//! each dose is off by up to the scale's accuracy times its mass, each for itself. That is the careful side: a scale
//! that is off by one share throughout keeps the ratio; to take it for such a one, give an accuracy of 0.
//!
//! The corners of the error box would give the worst case in `2^n` evaluations, but nothing about its
//! likelihood. So a quasi-random sequence fills the box evenly: multiples of the square roots of primes
//! (Richtmyer; from memory). It gives quantiles, and the same digits every time.

use crate::delta_e_2000::delta_e_2000;
use crate::error::MixError;
use crate::lab::Lab;
use crate::mix::{Part, blend, can_be_mixed, checked};
use crate::srgb::Linear;

/// How many sets of errors are tried. Quantiles are then within 3 % of those of a million random draws, measured on the
/// mixes of the fixture `colour.json`.
pub const DRAWS: usize = 4096;

/// How the parts are weighed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighing {
    /// The step of the display, in the unit of the amounts.
    pub step: f64,
    /// How far a dose may be off at most besides, as a fraction of it.
    pub accuracy: f64,
    /// Whether the scale is set to zero before each dose.
    pub tared: bool,
}

/// How far a shade drifts.
#[derive(Clone, Debug, PartialEq)]
pub struct Drift {
    /// The estimate of the mix as it is meant.
    pub intended: Linear,
    /// The median CIEDE2000 difference from it.
    pub median: f64,
    /// The difference that 95 % of all batches stay below.
    pub high: f64,
    /// How much of the drift each part alone would cause, as shares that add up to 1: squares of the difference that one
    /// standard uncertainty of its dose makes. All 0 where nothing drifts.
    pub shares: Vec<f64>,
}

impl Drift {
    /// The part, counted from 0, whose dose moves the shade most; `None` where nothing drifts.
    pub fn dominant(&self) -> Option<usize> {
        let mut found: Option<usize> = None;
        for (place, share) in self.shares.iter().enumerate() {
            if *share > found.map_or(0.0, |found| self.shares[found]) {
                found = Some(place);
            }
        }
        found
    }
}

/// Points that fill a box of any number of dimensions evenly.
struct Even {
    /// The current coordinate of each dimension, from 0 to 1.
    at: Vec<f64>,
    /// The step of each dimension per point.
    by: Vec<f64>,
}

impl Even {
    fn new(dimensions: usize) -> Self {
        let mut primes: Vec<u32> = Vec::new();
        let mut next = 2;
        while primes.len() < dimensions {
            if primes.iter().all(|prime| !u32::is_multiple_of(next, *prime)) {
                primes.push(next);
            }
            next += 1;
        }
        Even {
            at: vec![0.5; dimensions],
            by: primes
                .iter()
                .map(|prime| f64::from(*prime).sqrt().fract())
                .collect(),
        }
    }

    /// Advances to the next point.
    fn step(&mut self) {
        for (at, by) in self.at.iter_mut().zip(&self.by) {
            *at = (*at + by).fract();
        }
    }

    /// A coordinate of the point, from -1 to 1.
    fn error(&self, dimension: usize) -> f64 {
        2.0 * self.at[dimension] - 1.0
    }
}

impl Weighing {
    fn check(&self) -> Result<(), MixError> {
        if !(self.step >= 0.0 && self.step.is_finite()) {
            return Err(MixError::Step);
        }
        if !(0.0..=1.0).contains(&self.accuracy) {
            return Err(MixError::Accuracy);
        }
        Ok(())
    }

    /// The standard uncertainty of a dose: two roundings and the scale.
    fn of_dose(&self, amount: f64) -> f64 {
        let off = self.accuracy * amount;
        (self.step * self.step / 6.0 + off * off / 3.0).sqrt()
    }

    /// What a dose really was. Dimensions of a point: the reading before and the reading after each dose, then what the
    /// scale is off; with the total running on, the reading before a dose is that after the last.
    fn poured(&self, place: usize, last: Option<usize>, amount: f64, point: &Even) -> f64 {
        let before = match last {
            Some(last) if !self.tared => 3 * last + 1,
            _ => 3 * place,
        };
        let rounding = point.error(3 * place + 1) - point.error(before);
        let off = self.accuracy * amount * point.error(3 * place + 2);
        (amount + self.step / 2.0 * rounding + off).max(0.0)
    }
}

/// How far the shade drifts from that of these parts when these doses are weighed so, in the order in which they stand.
///
/// The doses are what the display is to say for each part, in the unit of the step; rounded to that, they are a little off
/// the ratio already, which counts. A dose of nothing is not weighed. As [`mixed`](crate::mixed) it rests on swatches:
/// good for saying which dose matters and about how much, not for a color match.
///
/// # Errors
/// [`MixError`]; [`MixError::Amount`] and [`MixError::Empty`] are of the parts or of the doses.
///
/// # Example
/// Two grams of black in a pound of white on a kitchen scale: the black decides.
/// ```
/// use colour::{Part, Perceptibility, Weighing, drift};
/// let parts = [Part { colour: [245; 3], amount: 450.0 }, Part { colour: [30; 3], amount: 2.0 }];
/// let kitchen = Weighing { step: 1.0, accuracy: 0.0, tared: false };
/// let drifts = drift(&parts, &[450.0, 2.0], kitchen)?;
/// assert_eq!(drifts.dominant(), Some(1));
/// assert_eq!(Perceptibility::of(drifts.median), Perceptibility::Hardly);
/// let fine = drift(&parts, &[450.0, 2.0], Weighing { step: 0.1, ..kitchen })?;
/// assert!(drifts.high > 9.0 * fine.high);
/// # Ok::<(), colour::MixError>(())
/// ```
pub fn drift(parts: &[Part], doses: &[f64], weighing: Weighing) -> Result<Drift, MixError> {
    weighing.check()?;
    let (strengths, amounts) = checked(parts)?;
    if parts.len() != doses.len() {
        return Err(MixError::Count {
            parts: parts.len(),
            doses: doses.len(),
        });
    }
    can_be_mixed(doses)?;
    let intended = blend(&strengths, &amounts);
    let away = |from: Lab, doses: &[f64]| -> f64 {
        // All doses may be so small that none of them is poured.
        if doses.iter().any(|dose| *dose > 0.0) {
            delta_e_2000(from, lab(blend(&strengths, doses)))
        } else {
            0.0
        }
    };

    let mut point = Even::new(3 * parts.len());
    let mut poured = doses.to_vec();
    let mut drifts: Vec<f64> = Vec::with_capacity(DRAWS);
    let aim = lab(intended);
    for _ in 0..DRAWS {
        let mut last = None;
        for (place, dose) in doses.iter().enumerate() {
            if *dose > 0.0 {
                poured[place] = weighing.poured(place, last, *dose, &point);
                last = Some(place);
            }
        }
        drifts.push(away(aim, &poured));
        point.step();
    }
    drifts.sort_by(f64::total_cmp);

    let rounded = lab(blend(&strengths, doses));
    let mut shares = Vec::with_capacity(parts.len());
    let mut alone = doses.to_vec();
    for (place, &dose) in doses.iter().enumerate() {
        let step = if dose > 0.0 { weighing.of_dose(dose) } else { 0.0 };
        let mut of = |dose: f64| {
            alone[place] = dose.max(0.0);
            away(rounded, &alone)
        };
        let moved = (of(dose + step) + of(dose - step)) / 2.0;
        alone[place] = dose;
        shares.push(moved * moved);
    }
    let all: f64 = shares.iter().sum();
    if all > 0.0 {
        shares.iter_mut().for_each(|share| *share /= all);
    }
    Ok(Drift {
        intended,
        median: drifts[DRAWS / 2],
        high: drifts[DRAWS * 95 / 100],
        shares,
    })
}

fn lab(light: Linear) -> Lab {
    light.xyz().lab()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mix::mixed;
    use proptest::prelude::*;

    fn part(colour: [u8; 3], amount: f64) -> Part {
        Part { colour, amount }
    }

    /// The drift when each part is weighed as it is meant.
    fn of(parts: &[Part], weighing: Weighing) -> Result<Drift, MixError> {
        let doses: Vec<f64> = parts.iter().map(|part| part.amount).collect();
        drift(parts, &doses, weighing)
    }

    const KITCHEN: Weighing = Weighing {
        step: 1.0,
        accuracy: 0.01,
        tared: false,
    };

    const EXACT: Weighing = Weighing {
        step: 0.0,
        accuracy: 0.0,
        tared: true,
    };

    #[test]
    fn a_scale_without_error_lets_nothing_drift() {
        let parts = [part([240; 3], 70.0), part([40, 90, 60], 30.0)];
        let none = of(&parts, EXACT).unwrap();
        assert_eq!((none.median, none.high, none.dominant()), (0.0, 0.0, None));
        assert_eq!(none.shares, [0.0, 0.0]);
    }

    /// What the doses are rounded by is there without any error of the scale.
    #[test]
    fn rounded_doses_are_off_already() {
        let parts = [part([240; 3], 70.4), part([40, 90, 60], 29.6)];
        let rounded = drift(&parts, &[70.0, 30.0], EXACT).unwrap();
        let meant = mixed(&[part([240; 3], 70.0), part([40, 90, 60], 30.0)]).unwrap();
        let off = delta_e_2000(rounded.intended.xyz().lab(), meant.xyz().lab());
        assert!(off > 0.05 && (rounded.median - off).abs() < 1e-9 && rounded.median == rounded.high);
        assert_eq!(
            drift(&parts, &[70.0], EXACT),
            Err(MixError::Count { parts: 2, doses: 1 })
        );
        assert_eq!(drift(&parts, &[70.0, -1.0], EXACT), Err(MixError::Amount(1)));
        assert_eq!(drift(&parts, &[0.0, 0.0], EXACT), Err(MixError::Empty));
    }

    #[test]
    fn one_part_cannot_drift() {
        let alone = of(&[part([10, 200, 30], 5.0)], KITCHEN).unwrap();
        assert!(alone.high < 1e-9 && alone.intended.rgb() == [10, 200, 30]);
    }

    /// Two doses of a size that share a reading: their difference has `e0 + e2 - 2 e1` in place of four roundings of
    /// their own, a standard deviation `sqrt(6 / 4)` times as large. The tails of the two sums are not the same, so
    /// the quantiles are further apart than that in the middle and less so at the end.
    #[test]
    fn a_shared_reading_moves_two_doses_apart() {
        let parts = [part([200; 3], 50.0), part([190; 3], 50.0)];
        let weighing = |tared| Weighing {
            accuracy: 0.0,
            tared,
            ..KITCHEN
        };
        let [shared, own] = [false, true].map(|tared| of(&parts, weighing(tared)).unwrap());
        for ratio in [shared.median / own.median, shared.high / own.high] {
            assert!((ratio - 1.5_f64.sqrt()).abs() < 0.12, "{ratio}");
        }
    }

    /// Ten times the batch on the same scale is a tenth of the drift, if the scale is off by its step alone.
    #[test]
    fn a_larger_batch_drifts_less() {
        let weighing = Weighing {
            accuracy: 0.0,
            ..KITCHEN
        };
        let high = |factor: f64| {
            let parts = [
                part([250, 245, 230], 400.0 * factor),
                part([60, 40, 20], 40.0 * factor),
            ];
            of(&parts, weighing).unwrap().high
        };
        assert!((high(1.0) / high(10.0) - 10.0).abs() < 0.3);
    }

    #[test]
    fn scales_that_cannot_be_are_refused() {
        let parts = [part([1; 3], 1.0)];
        let step = |step| Weighing { step, ..KITCHEN };
        let accuracy = |accuracy| Weighing { accuracy, ..KITCHEN };
        assert_eq!(of(&parts, step(-1.0)), Err(MixError::Step));
        assert_eq!(of(&parts, step(f64::NAN)), Err(MixError::Step));
        assert_eq!(of(&parts, accuracy(1.1)), Err(MixError::Accuracy));
        assert_eq!(of(&[], KITCHEN), Err(MixError::Empty));
    }

    #[test]
    fn the_points_fill_the_box() {
        let mut point = Even::new(12);
        let mut sums = [0.0; 12];
        for _ in 0..DRAWS {
            for (dimension, sum) in sums.iter_mut().enumerate() {
                *sum += point.error(dimension);
            }
            point.step();
        }
        for sum in sums {
            assert!((sum / DRAWS as f64).abs() < 2e-3, "{sums:?}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(24))]
        #[test]
        fn shares_add_up_and_quantiles_are_in_order(
            parts in prop::collection::vec((any::<[u8; 3]>(), 0.0..500.0_f64), 1..9), tared in any::<bool>(),
        ) {
            let parts: Vec<Part> = parts.iter().map(|&(colour, amount)| part(colour, amount)).collect();
            prop_assume!(parts.iter().any(|part| part.amount > 0.0));
            let drifts = of(&parts, Weighing { tared, ..KITCHEN }).unwrap();
            prop_assert!(0.0 <= drifts.median && drifts.median <= drifts.high && drifts.high.is_finite());
            let sum: f64 = drifts.shares.iter().sum();
            prop_assert!(sum == 0.0 || (sum - 1.0).abs() < 1e-9);
        }
    }
}
