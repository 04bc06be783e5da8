//! Propagation of distributions through a model: Monte Carlo (JCGM 101) and the linear law of JCGM 100.
//!
//! A model takes a column of values for each input and gives a column of results. Both ways go through the same
//! model, with other columns.

use rand_core::Rng;
use rand_pcg::Pcg32;

use crate::distribution::Distribution;
use crate::estimate::Estimate;

/// An input of a model.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// Its name. Inputs with the same name have the same draws in all zones, pieces and comparisons, so a
    /// shared error is not averaged away.
    pub name: String,
    /// What is known about it.
    pub distribution: Distribution,
}

/// This many values of an input; the same name always gives the same values.
///
/// # Example
/// ```
/// use coatings::{Distribution, Input, draw};
/// let rate = Input { name: "rate".into(), distribution: Distribution::between(8.0, 12.0) };
/// assert_eq!(draw(&rate, 3), draw(&rate, 5)[..3]);
/// ```
pub fn draw(input: &Input, trials: usize) -> Vec<f64> {
    if let Distribution::Exact(value) = input.distribution {
        return vec![value; trials];
    }
    let hash = hash(&input.name);
    let mut random = Pcg32::new(scattered(hash), scattered(!hash));
    // The middle of one of 2^32 steps, so that 0 and 1 are never reached.
    let share = |_| (f64::from(random.next_u32()) + 0.5) / 4_294_967_296.0;
    let mut column: Vec<f64> = (0..trials).map(share).collect();
    input.distribution.quantiles(&mut column);
    column
}

/// FNV-1a, 64 bits.
fn hash(name: &str) -> u64 {
    name.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

/// The finalizer of SplitMix64: it mixes all bits, so that similar names start far apart.
fn scattered(mut bits: u64) -> u64 {
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    bits ^ (bits >> 31)
}

/// The result of each trial: every input drawn once, and the model (JCGM 101, clause 7).
pub fn monte_carlo(inputs: &[Input], trials: usize, model: impl Fn(&[Vec<f64>]) -> Vec<f64>) -> Vec<f64> {
    let columns: Vec<Vec<f64>> = inputs.iter().map(|input| draw(input, trials)).collect();
    model(&columns)
}

/// The result by the law of propagation of uncertainty (JCGM 100, 5.1.2), for inputs that do not depend on each other.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Linear {
    /// The best estimate: the model at the means of the inputs.
    pub value: f64,
    /// The signed contribution of each input to the standard uncertainty, in the order of the inputs.
    pub contributions: Vec<f64>,
}

impl Linear {
    /// The combined standard uncertainty.
    pub fn standard_uncertainty(&self) -> f64 {
        self.contributions.iter().map(|c| c * c).sum::<f64>().sqrt()
    }

    /// The best estimate with its combined standard uncertainty.
    pub fn estimate(&self) -> Estimate<f64> {
        Estimate {
            value: self.value,
            standard_uncertainty: self.standard_uncertainty(),
        }
    }
}

/// Columns for the linear law: first all means, then for each input the means but that it is once a standard
/// uncertainty larger and once smaller.
pub(crate) fn steps(inputs: &[Distribution]) -> Vec<Vec<f64>> {
    let rows = 1 + 2 * inputs.len();
    let column = |(place, input): (usize, &Distribution)| {
        let (mean, step) = (input.mean(), input.standard_uncertainty());
        let mut column = vec![mean; rows];
        column[1 + 2 * place] += step;
        column[2 + 2 * place] -= step;
        column
    };
    inputs.iter().enumerate().map(column).collect()
}

/// The linear law from the results of a model at [`steps`]: each sensitivity as a difference, JCGM 100, 5.1.3 note 2.
pub(crate) fn of_steps(results: &[f64]) -> Linear {
    let Some((value, around)) = results.split_first() else {
        return Linear::default();
    };
    Linear {
        value: *value,
        contributions: around.chunks_exact(2).map(|c| (c[0] - c[1]) / 2.0).collect(),
    }
}

/// The linear law for a model.
///
/// # Example
/// Two lengths laid end to end: the uncertainties add in squares.
/// ```
/// use coatings::{Distribution, Input, linear};
/// let length = |name: &str, mean, standard_uncertainty| Input {
///     name: name.into(),
///     distribution: Distribution::Normal { mean, standard_uncertainty },
/// };
/// let inputs = [length("a", 2.0, 0.3), length("b", 1.0, 0.4)];
/// let sum = linear(&inputs, |x| x[0].iter().zip(&x[1]).map(|(a, b)| a + b).collect());
/// assert_eq!(sum.value, 3.0);
/// assert!((sum.standard_uncertainty() - 0.5).abs() < 1e-12);
/// ```
pub fn linear(inputs: &[Input], model: impl Fn(&[Vec<f64>]) -> Vec<f64>) -> Linear {
    let distributions: Vec<Distribution> = inputs.iter().map(|input| input.distribution).collect();
    of_steps(&model(&steps(&distributions)))
}

/// Propagates independent inputs through a model by the linear law, row by row.
pub(crate) fn linear_estimate(inputs: &[Distribution], model: &dyn Fn(&[f64]) -> f64) -> Estimate<f64> {
    let columns = steps(inputs);
    let mut row = vec![0.0; inputs.len()];
    let results: Vec<f64> = (0..1 + 2 * inputs.len())
        .map(|place| {
            for (value, column) in row.iter_mut().zip(&columns) {
                *value = column[place];
            }
            model(&row)
        })
        .collect();
    of_steps(&results).estimate()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::samples::Samples;

    fn rectangle(name: &str) -> Input {
        Input {
            name: name.into(),
            distribution: Distribution::between(1.0, 3.0),
        }
    }

    #[test]
    fn one_name_is_one_draw_and_two_names_are_two() {
        assert_eq!(draw(&rectangle("a"), 100), draw(&rectangle("a"), 100));
        assert_ne!(draw(&rectangle("a"), 100), draw(&rectangle("b"), 100));
    }

    #[test]
    fn a_rectangle_keeps_its_mean_width_and_limits() {
        let samples = Samples::of(&draw(&rectangle("a"), 50_000));
        assert!((samples.mean() - 2.0).abs() < 0.01);
        assert!((samples.standard_uncertainty() - 1.0 / 3f64.sqrt()).abs() < 0.01);
        assert!((samples.quantile(0.25) - 1.5).abs() < 0.02);
        assert!((samples.share_up_to(2.5) - 0.75).abs() < 0.01);
        assert_eq!((samples.share_up_to(0.9), samples.share_up_to(3.1)), (0.0, 1.0));
    }

    /// Similar names have uncorrelated draws: over 300 pairs the largest correlation of 10,000 draws is
    /// within chance (its standard deviation is 0.01).
    #[test]
    fn draws_of_different_names_are_independent() {
        let columns: Vec<Vec<f64>> = (0..25)
            .map(|n| draw(&rectangle(&format!("film/{n}")), 10_000))
            .collect();
        let mut worst: f64 = 0.0;
        for (i, a) in columns.iter().enumerate() {
            for b in &columns[..i] {
                let products = a.iter().zip(b).map(|(a, b)| (a - 2.0) * (b - 2.0));
                worst = worst.max((products.sum::<f64>() / 10_000.0 * 3.0).abs());
            }
        }
        assert!(worst < 0.045, "{worst}");
    }

    #[test]
    fn the_linear_law_of_a_product_adds_relative_variances() {
        let inputs = [rectangle("a"), rectangle("b")];
        let product = linear(&inputs, |x| x[0].iter().zip(&x[1]).map(|(a, b)| a * b).collect());
        let each = 2.0 * (1.0 / 3f64.sqrt());
        assert_eq!(product.value, 4.0);
        assert!(
            product
                .contributions
                .iter()
                .all(|c| (c.abs() - each).abs() < 1e-12)
        );
    }

    /// Of a product, the relative variances add (JCGM 100, 5.1.6).
    #[test]
    fn relative_variances_of_a_product_add() {
        let normal = |mean: f64, standard_uncertainty: f64| Distribution::Normal {
            mean,
            standard_uncertainty,
        };
        let product = linear_estimate(&[normal(4.0, 0.12), normal(5.0, 0.2)], &|x| x[0] * x[1]);
        assert_eq!(product.value, 20.0);
        assert!((product.standard_uncertainty / 20.0 - 0.05).abs() < 1e-12);
    }

    #[test]
    fn what_is_exact_adds_nothing() {
        let sum = linear_estimate(
            &[Distribution::Exact(2.0), Distribution::between(1.0, 1.0)],
            &|x| x[0] + x[1],
        );
        assert_eq!((sum.value, sum.standard_uncertainty), (3.0, 0.0));
    }
}
