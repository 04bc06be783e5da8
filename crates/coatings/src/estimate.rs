//! Estimates with a standard uncertainty, by the linear law of propagation.

use units::Area;

use crate::distribution::Distribution;
use crate::propagate::{of_steps, steps};

/// A best estimate and its standard uncertainty (JCGM 100), both in the same unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate<T> {
    /// The best estimate.
    pub value: T,
    /// Its standard uncertainty.
    pub standard_uncertainty: T,
}

impl Estimate<f64> {
    /// The same estimate as a quantity.
    pub(crate) fn with<T>(self, unit: fn(f64) -> T) -> Estimate<T> {
        Estimate {
            value: unit(self.value),
            standard_uncertainty: unit(self.standard_uncertainty),
        }
    }
}

impl Estimate<Area> {
    /// Half the width of the interval of two standard uncertainties to either side, as a share of the area
    /// (about 95 % coverage, JCGM 100, 6.3.3); zero where there is no area.
    pub fn give_or_take(&self) -> f64 {
        if self.value > Area::ZERO {
            2.0 * (self.standard_uncertainty / self.value)
        } else {
            0.0
        }
    }
}

/// Propagates independent inputs through a model by the linear law, row by row.
pub(crate) fn linear(inputs: &[Distribution], model: &dyn Fn(&[f64]) -> f64) -> Estimate<f64> {
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

    /// Of a product, the relative variances add (JCGM 100, 5.1.6).
    #[test]
    fn relative_variances_of_a_product_add() {
        let normal = |mean: f64, standard_uncertainty: f64| Distribution::Normal {
            mean,
            standard_uncertainty,
        };
        let product = linear(&[normal(4.0, 0.12), normal(5.0, 0.2)], &|x| x[0] * x[1]);
        assert_eq!(product.value, 20.0);
        assert!((product.standard_uncertainty / 20.0 - 0.05).abs() < 1e-12);
    }

    #[test]
    fn what_is_exact_adds_nothing() {
        let sum = linear(
            &[Distribution::Exact(2.0), Distribution::between(1.0, 1.0)],
            &|x| x[0] + x[1],
        );
        assert_eq!((sum.value, sum.standard_uncertainty), (3.0, 0.0));
    }
}
