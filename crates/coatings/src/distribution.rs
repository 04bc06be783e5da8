//! The distribution of an input.

use crate::normal;

/// The distribution of an input.
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
    /// A rectangular distribution between two limits, or an exact value if they are equal.
    pub const fn between(low: f64, high: f64) -> Self {
        if low == high {
            Distribution::Exact(low)
        } else {
            Distribution::Rectangular { low, high }
        }
    }

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

    /// Replaces each probability, above 0 and below 1, by its quantile.
    pub(crate) fn quantiles(self, shares: &mut [f64]) {
        match self {
            Distribution::Exact(value) => shares.fill(value),
            Distribution::Rectangular { low, high } => {
                for share in shares {
                    *share = low + (high - low) * *share;
                }
            }
            Distribution::Normal {
                mean,
                standard_uncertainty,
            } => {
                normal::quantiles(shares);
                for share in shares {
                    *share = mean + standard_uncertainty * *share;
                }
            }
        }
    }
}
