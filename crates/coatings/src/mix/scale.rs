//! The kitchen scale: the uncertainty of a weighing, and the smallest dose that it can weigh accurately.

use units::Mass;

use super::recipe_error::RecipeError;

/// A scale as its maker describes it. No standard for kitchen scales was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// The step of its display.
    pub resolution: Mass,
    /// How far it may be off at most, as a fraction of the reading, either way.
    pub accuracy: f64,
}

impl Scale {
    /// A common kitchen scale: 1 g, and 1 % of the reading (common practice, no source; 0.5 to 1 %).
    pub const KITCHEN: Scale = Scale {
        resolution: Mass::grams(1.0),
        accuracy: 0.01,
    };

    /// A small scale for doses: 0.1 g, and 0.5 % of the reading (common practice, no source; 0.5 to 1 %).
    pub const FINE: Scale = Scale {
        resolution: Mass::grams(0.1),
        accuracy: 0.005,
    };

    /// How sure a dose is wanted: an expanded uncertainty (k = 2) of 2 % of it (common practice, no source).
    pub const WANTED: f64 = 0.02;

    /// The standard uncertainty of a reading: `u^2 = d^2 / 12 + (a m)^2 / 3`, with the step `d` and the
    /// accuracy `a`, both rectangular (JCGM 100, 4.3.7 and F.2.2.1).
    pub fn weighing(&self, reading: Mass) -> Mass {
        self.uncertainty(1.0, reading)
    }

    /// The standard uncertainty of the difference of two readings on this scale:
    /// `u^2 = 2 d^2 / 12 + (a (gross - tare))^2 / 3`. Both readings are rounded, but the scale is off by the
    /// same share in both.
    pub fn difference(&self, gross: Mass, tare: Mass) -> Mass {
        self.uncertainty(2.0, gross - tare)
    }

    fn uncertainty(&self, roundings: f64, mass: Mass) -> Mass {
        let (step, off) = (
            self.resolution.as_kilograms(),
            self.accuracy * mass.as_kilograms(),
        );
        Mass::kilograms((roundings * step * step / 12.0 + off * off / 3.0).sqrt())
    }

    /// The least dose, as the difference of two readings, whose expanded uncertainty (k = 2) is within a wanted share of it:
    /// `m = 2 d sqrt(2) / sqrt(12 (w^2 - 4 a^2 / 3))`. Nothing where the scale is never as true as that.
    ///
    /// # Example
    /// ```
    /// use coatings::mix::Scale;
    /// let least = Scale::KITCHEN.smallest_difference(Scale::WANTED).unwrap();
    /// assert!((least.as_grams() - 50.0).abs() < 0.01);
    /// ```
    pub fn smallest_difference(&self, wanted: f64) -> Option<Mass> {
        let rest = wanted * wanted - 4.0 * self.accuracy * self.accuracy / 3.0;
        let dose = self.resolution * (2.0 * (2.0 / (12.0 * rest)).sqrt());
        (wanted > 0.0 && rest > 0.0 && dose.as_kilograms().is_finite()).then_some(dose)
    }

    /// A mass in grams as the display has it, with as many decimals as the step.
    ///
    /// # Example
    /// ```
    /// use coatings::mix::Scale;
    /// use units::Mass;
    /// assert_eq!(Scale::KITCHEN.show(Mass::grams(35.42)), "35 g");
    /// assert_eq!(Scale::FINE.show(Mass::grams(35.42)), "35.4 g");
    /// ```
    pub fn show(&self, mass: Mass) -> String {
        let step = self.resolution.as_grams();
        let whole = |power: f64| ((step * power).round() - step * power).abs() < 1e-6 * step * power;
        let decimals = [1.0, 10.0, 100.0, 1000.0]
            .into_iter()
            .position(whole)
            .unwrap_or(3);
        format!("{:.decimals$} g", mass.as_grams())
    }

    /// Whether a display can have this step, and a scale this accuracy.
    pub(super) fn check(&self) -> Result<(), RecipeError> {
        let step = self.resolution.as_kilograms();
        if step > 0.0 && step.is_finite() && (0.0..=1.0).contains(&self.accuracy) {
            Ok(())
        } else {
            Err(RecipeError::Scale)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 1 / sqrt(12) = 0.28868 g of rounding, 500 g x 0.01 / sqrt(3) = 2.88675 g of the scale.
    #[test]
    fn a_weighing_and_a_difference() {
        let u = Scale::KITCHEN.weighing(Mass::grams(500.0)).as_grams();
        assert!((u - libm::hypot(0.288_675, 2.886_751)).abs() < 1e-5, "{u}");
        let nothing = Scale::KITCHEN.weighing(Mass::ZERO).as_grams();
        assert!((nothing - 0.288_675).abs() < 1e-6);
        // Two roundings, but the error of the scale only on what lies between the readings.
        let u = Scale::KITCHEN
            .difference(Mass::grams(600.0), Mass::grams(100.0))
            .as_grams();
        assert!((u - libm::hypot(0.408_248, 2.886_751)).abs() < 1e-5, "{u}");
    }

    #[test]
    fn the_display_has_the_decimals_of_its_step() {
        for (step, shown) in [
            (5.0, "12 g"),
            (0.5, "12.3 g"),
            (0.05, "12.34 g"),
            (0.001, "12.340 g"),
            (0.0, "12.340 g"),
        ] {
            let scale = Scale {
                resolution: Mass::grams(step),
                ..Scale::FINE
            };
            assert_eq!(scale.show(Mass::grams(12.34)), shown, "{step}");
        }
    }

    #[test]
    fn a_scale_may_never_be_true_enough() {
        // 1 % at most either way is an expanded 1.15 %.
        assert_eq!(Scale::KITCHEN.smallest_difference(0.0115), None);
        assert!(Scale::KITCHEN.smallest_difference(0.0116).is_some());
        assert_eq!(Scale::KITCHEN.smallest_difference(f64::NAN), None);
        assert_eq!(Scale::KITCHEN.smallest_difference(-0.02), None);
    }
}
