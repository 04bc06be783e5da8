//! Estimates with a standard uncertainty.

use units::Area;

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
