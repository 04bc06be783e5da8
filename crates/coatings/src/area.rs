//! Areas with correlated errors.

use units::Area;

use crate::estimate::Estimate;

/// An area with one finish, and its sensitivity to measuring errors.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Patch {
    /// The best estimate of its area.
    pub area: Area,
    /// Whether it is of narrow parts, where much of a sprayer's fan goes by.
    pub narrow: bool,
    /// The change of the area for one standard uncertainty of each measuring error. All patches of a job
    /// list the same errors in the same order, so an error of the tape is shared.
    pub steps: Vec<Area>,
}

impl Patch {
    /// The area of several patches together, with its standard uncertainty (JCGM 100, 5.2.2: steps of one cause add up
    /// with their signs, different causes in squares).
    pub fn together<'a>(patches: impl Iterator<Item = &'a Patch>) -> Estimate<Area> {
        let mut area = Area::ZERO;
        let mut sums: Vec<f64> = Vec::new();
        for patch in patches {
            area += patch.area;
            sums.resize(sums.len().max(patch.steps.len()), 0.0);
            for (sum, step) in sums.iter_mut().zip(&patch.steps) {
                *sum += step.as_square_metres();
            }
        }
        let squares: f64 = sums.iter().map(|sum| sum * sum).sum();
        Estimate {
            value: area,
            standard_uncertainty: Area::square_metres(squares.sqrt()),
        }
    }
}

/// The Cholesky factor of the covariance of the areas, square meters: for each patch its coefficients of
/// independent standard normal variables.
///
/// A piece has some thirty measurements and a handful of patches. Drawing one number for each patch instead of one for
/// each measurement gives the same joint distribution.
pub(crate) fn loadings(patches: &[&Patch]) -> Vec<Vec<f64>> {
    let covariance = |a: &Patch, b: &Patch| -> f64 {
        let products = a.steps.iter().zip(&b.steps);
        products
            .map(|(a, b)| a.as_square_metres() * b.as_square_metres())
            .sum()
    };
    let mut rows: Vec<Vec<f64>> = Vec::with_capacity(patches.len());
    for (place, patch) in patches.iter().enumerate() {
        let own = covariance(patch, patch);
        let mut row: Vec<f64> = Vec::with_capacity(place + 1);
        for (other, earlier) in rows.iter().enumerate() {
            let common: f64 = row.iter().zip(earlier).map(|(a, b)| a * b).sum();
            let diagonal = earlier[other];
            // An earlier patch without variance of its own contributes nothing.
            row.push(if diagonal > 0.0 {
                (covariance(patch, patches[other]) - common) / diagonal
            } else {
                0.0
            });
        }
        let rest = own - row.iter().map(|a| a * a).sum::<f64>();
        // For an area that depends on others completely, the remainder is rounding noise.
        row.push(if rest > own * 1e-9 { rest.sqrt() } else { 0.0 });
        rows.push(row);
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn patch(steps: &[f64]) -> Patch {
        Patch {
            area: Area::square_metres(1.0),
            narrow: false,
            steps: steps.iter().map(|step| Area::square_metres(*step)).collect(),
        }
    }

    #[test]
    fn no_area_is_no_more_or_less() {
        assert_eq!(Patch::together([].iter()).give_or_take(), 0.0);
    }

    #[test]
    fn an_error_in_common_adds_up() {
        let estimate = Patch::together([patch(&[0.1, 0.0]), patch(&[0.2, 0.4])].iter());
        assert!((estimate.standard_uncertainty.as_square_metres() - 0.5).abs() < 1e-12);
        assert!((estimate.give_or_take() - 0.5).abs() < 1e-12);
    }

    proptest! {
        /// The product of the loadings is the covariance, also where areas depend on each other completely.
        #[test]
        fn loadings_keep_every_covariance(
            steps in prop::collection::vec(prop::collection::vec(-1.0..1.0f64, 3), 1..7),
        ) {
            let patches: Vec<Patch> = steps.iter().map(|steps| patch(steps)).collect();
            let rows = loadings(&patches.iter().collect::<Vec<_>>());
            for (i, a) in steps.iter().enumerate() {
                for (j, b) in steps.iter().enumerate().take(i + 1) {
                    let wanted: f64 = a.iter().zip(b).map(|(a, b)| a * b).sum();
                    let got: f64 = rows[i].iter().zip(&rows[j]).map(|(a, b)| a * b).sum();
                    prop_assert!((wanted - got).abs() < 1e-3, "{} {}: {} {}", i, j, wanted, got);
                }
            }
        }
    }
}
