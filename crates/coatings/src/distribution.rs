//! Distributions and their propagation: JCGM 101 (Monte Carlo) with the linear law of JCGM 100 beside it.

use rand_core::Rng;
use rand_pcg::Pcg32;

/// What is known about an input.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Distribution {
    /// Known without doubt.
    Exact(f64),
    /// Between two limits, every value as likely.
    Rectangular {
        /// The lower limit.
        low: f64,
        /// The upper limit.
        high: f64,
    },
    /// An estimate with a standard uncertainty.
    Normal {
        /// The estimate.
        mean: f64,
        /// Its standard uncertainty.
        standard_uncertainty: f64,
    },
}

impl Distribution {
    /// The best estimate: the mean.
    pub fn mean(self) -> f64 {
        match self {
            Distribution::Exact(value) => value,
            Distribution::Rectangular { low, high } => (low + high) / 2.0,
            Distribution::Normal { mean, .. } => mean,
        }
    }

    /// The standard uncertainty; of a rectangle the half width over the root of 3 (JCGM 100, 4.3.7).
    pub fn standard_uncertainty(self) -> f64 {
        match self {
            Distribution::Exact(_) => 0.0,
            Distribution::Rectangular { low, high } => (high - low) / 12f64.sqrt(),
            Distribution::Normal {
                standard_uncertainty, ..
            } => standard_uncertainty,
        }
    }

    fn draw(self, random: &mut Pcg32) -> f64 {
        match self {
            Distribution::Exact(value) => value,
            Distribution::Rectangular { low, high } => low + (high - low) * unit(random),
            Distribution::Normal {
                mean,
                standard_uncertainty,
            } => {
                // Box and Muller; 1 - u keeps the logarithm away from zero.
                let radius = (-2.0 * libm::log(1.0 - unit(random))).sqrt();
                mean + standard_uncertainty * radius * libm::cos(std::f64::consts::TAU * unit(random))
            }
        }
    }
}

/// A number from 0 up to but not 1, from 32 random bits: finer than any figure of the trade.
fn unit(random: &mut Pcg32) -> f64 {
    f64::from(random.next_u32()) / 4_294_967_296.0
}

/// The spread of a result: equally likely values, from the smallest to the largest.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread {
    sorted: Vec<f64>,
}

impl Spread {
    /// The value below which this share of the results lies; between values it is interpolated.
    ///
    /// # Example
    /// ```
    /// use coatings::{Distribution, propagate};
    /// let spread = propagate(&[Distribution::Exact(2.0)], 10, 1, |x| x[0] * 3.0);
    /// assert_eq!(spread.quantile(0.5), 6.0);
    /// ```
    pub fn quantile(&self, share: f64) -> f64 {
        let last = self.sorted.len().saturating_sub(1);
        let place = share.clamp(0.0, 1.0) * last as f64;
        let below = place.floor() as usize;
        match (self.sorted.get(below), self.sorted.get(below + 1)) {
            (Some(low), Some(high)) => low + (high - low) * (place - below as f64),
            (Some(only), None) => *only,
            (None, _) => 0.0,
        }
    }

    /// The share of the results that are not above a value.
    pub fn share_up_to(&self, value: f64) -> f64 {
        self.sorted.partition_point(|result| *result <= value) as f64 / self.sorted.len().max(1) as f64
    }

    /// The mean of the results.
    pub fn mean(&self) -> f64 {
        self.sorted.iter().sum::<f64>() / self.sorted.len().max(1) as f64
    }

    /// The standard deviation of the results.
    pub fn standard_uncertainty(&self) -> f64 {
        let mean = self.mean();
        let squares: f64 = self
            .sorted
            .iter()
            .map(|value| (value - mean) * (value - mean))
            .sum();
        (squares / (self.sorted.len().max(2) - 1) as f64).sqrt()
    }
}

/// Propagates the distributions of inputs through a model by Monte Carlo (JCGM 101, clause 7).
///
/// Each trial draws every input once, so whatever shares an input shares its error. The seed makes the answer
/// the same for the same inputs on every machine.
pub fn propagate(
    inputs: &[Distribution],
    trials: usize,
    seed: u64,
    mut model: impl FnMut(&[f64]) -> f64,
) -> Spread {
    // The stream number is that of the generator's authors; any odd one would do.
    let mut random = Pcg32::new(seed, 0x0a02_bdbf_7bb3_c0a7);
    let mut drawn = vec![0.0; inputs.len()];
    let mut results: Vec<i64> = (0..trials)
        .map(|_| {
            for (value, input) in drawn.iter_mut().zip(inputs) {
                *value = input.draw(&mut random);
            }
            in_order(model(&drawn).to_bits() as i64)
        })
        .collect();
    // Whole numbers sort several times faster than floats, and sorting is most of the work of an answer.
    results.sort_unstable();
    let sorted = results
        .into_iter()
        .map(|bits| f64::from_bits(in_order(bits) as u64))
        .collect();
    Spread { sorted }
}

/// The bits of a float as a whole number that sorts as the float does, and back (IEEE 754 total order).
fn in_order(bits: i64) -> i64 {
    bits ^ (((bits >> 63) as u64) >> 1) as i64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_seed_gives_the_same_answer() {
        let inputs = [Distribution::Rectangular { low: 1.0, high: 2.0 }];
        let run = |seed| propagate(&inputs, 1000, seed, |x| x[0]);
        assert_eq!(run(7), run(7));
        assert_ne!(run(7), run(8));
    }

    #[test]
    fn results_are_sorted_on_both_sides_of_zero() {
        let spread = propagate(
            &[Distribution::Rectangular { low: -1.0, high: 1.0 }],
            1000,
            3,
            |x| x[0],
        );
        assert!(spread.sorted.is_sorted() && spread.sorted[0] < -0.9 && spread.sorted[999] > 0.9);
    }

    #[test]
    fn a_rectangle_keeps_its_mean_width_and_limits() {
        let input = Distribution::Rectangular { low: 1.0, high: 3.0 };
        let spread = propagate(&[input], 50_000, 1, |x| x[0]);
        assert!((spread.mean() - 2.0).abs() < 0.01);
        assert!((spread.standard_uncertainty() - input.standard_uncertainty()).abs() < 0.01);
        assert!((spread.quantile(0.25) - 1.5).abs() < 0.02);
        assert!((spread.share_up_to(2.5) - 0.75).abs() < 0.01);
        assert_eq!((spread.share_up_to(0.9), spread.share_up_to(3.1)), (0.0, 1.0));
    }
}
