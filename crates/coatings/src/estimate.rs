//! Estimates with a standard uncertainty.

use std::ops::Mul;

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

/// The coverage factor of every range that is shown: about 95 % coverage (JCGM 100, 6.3.3).
pub(crate) const COVERAGE_FACTOR: f64 = 2.0;

impl<T: Copy + Mul<f64, Output = T>> Estimate<T> {
    /// The expanded uncertainty: half the width of the range that is shown, about 95 % coverage (JCGM 100, 6.2.1).
    pub fn expanded_uncertainty(&self) -> T {
        self.standard_uncertainty * COVERAGE_FACTOR
    }
}

impl Estimate<Area> {
    /// The expanded uncertainty as a fraction of the area; zero where there is no area.
    pub fn give_or_take(&self) -> f64 {
        if self.value > Area::ZERO {
            self.expanded_uncertainty() / self.value
        } else {
            0.0
        }
    }
}
