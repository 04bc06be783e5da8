//! The dew point, and whether moisture could settle on a surface while it is coated.

use crate::air::Air;

/// Magnus form of Alduchov and Eskridge, "Improved Magnus form approximation of saturation vapor pressure", Journal of
/// Applied Meteorology 35 (1996) 601-609: vapor pressure over water is in proportion to exp(A T / (B + T)).
const A: f64 = 17.625;
/// Degrees Celsius; see [`A`].
const B: f64 = 243.04;
/// Air temperatures for which the form was fitted, degrees Celsius.
const FITTED: (f64, f64) = (-40.0, 50.0);

/// How far above the dew point a surface has to be, kelvin: at least 3 °C (ISO 8502-4, written for steel and used here
/// by analogy; read second-hand). The rule of 5 °F (2.8 °C; UFC 3-190-06 s. 9.6.6) is a little less strict.
pub const LEAST_MARGIN: f64 = 3.0;

/// Whether moisture could settle on a surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Condensation {
    /// The surface is far enough above the dew point.
    Clear,
    /// Above the dew point, but by less than [`LEAST_MARGIN`].
    TooNear,
    /// At the dew point or below: moisture settles on it.
    Settles,
}

/// The dew point and what it means for a surface.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DewCheck {
    /// Degrees Celsius.
    pub dew_point: f64,
    /// How far the surface is above it, kelvin; with a minus if below.
    pub margin: f64,
    /// What that means.
    pub condensation: Condensation,
}

impl Condensation {
    /// Whether a coat may go on.
    pub fn allows(self) -> bool {
        self == Condensation::Clear
    }

    /// The message on screen.
    pub fn message(self) -> &'static str {
        match self {
            Condensation::Clear => {
                "OK to coat: the surface is well above the dew point. Measure again if it gets colder."
            }
            Condensation::TooNear => {
                "Don't coat yet: the surface is too close to the dew point. Warm the piece or dry the air."
            }
            Condensation::Settles => {
                "Don't coat: moisture is settling on the surface. Warm the piece, let it dry, and measure again."
            }
        }
    }
}

/// The dew point over water in degrees Celsius; `None` outside -40 to 50 °C, where the form was not fitted, or for a
/// humidity that is not above 0 and up to 100 %.
pub fn dew_point(air: Air) -> Option<f64> {
    let fits = (FITTED.0..=FITTED.1).contains(&air.celsius) && air.humidity > 0.0 && air.humidity <= 100.0;
    let exponent = libm::log(air.humidity / 100.0) + A * air.celsius / (B + air.celsius);
    fits.then_some(B * exponent / (A - exponent))
}

/// Whether moisture could settle on a surface of a temperature in degrees Celsius; `None` where there is no dew point
/// or the temperature is not a number.
pub fn dew_check(air: Air, surface: f64) -> Option<DewCheck> {
    let dew_point = dew_point(air).filter(|_| surface.is_finite())?;
    let margin = surface - dew_point;
    let condensation = if margin <= 0.0 {
        Condensation::Settles
    } else if margin < LEAST_MARGIN {
        Condensation::TooNear
    } else {
        Condensation::Clear
    };
    Some(DewCheck {
        dew_point,
        margin,
        condensation,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn air(celsius: f64, humidity: f64) -> Air {
        Air { celsius, humidity }
    }

    /// Calculated by hand with the same form: 9.261 °C at 20 °C and 50 %; usually printed as 9.3.
    #[test]
    fn known_dew_points() {
        let cases = [
            (20.0, 50.0, 9.261),
            (25.0, 60.0, 16.698),
            (15.0, 70.0, 9.572),
            (30.0, 70.0, 23.930),
            (20.0, 85.0, 17.401),
        ];
        for (celsius, humidity, expected) in cases {
            let found = dew_point(air(celsius, humidity)).unwrap();
            assert!((found - expected).abs() < 1e-3, "{celsius} {humidity}: {found}");
        }
        for (celsius, humidity) in [
            (51.0, 50.0),
            (-41.0, 50.0),
            (20.0, 0.0),
            (20.0, 100.1),
            (f64::NAN, 50.0),
            (20.0, f64::NAN),
        ] {
            assert_eq!(dew_point(air(celsius, humidity)), None);
        }
    }

    #[test]
    fn the_margin_decides() {
        let of = |surface| dew_check(air(20.0, 50.0), surface).unwrap().condensation;
        assert_eq!(of(12.3), Condensation::Clear);
        assert_eq!(of(12.0), Condensation::TooNear);
        assert_eq!(of(9.2), Condensation::Settles);
        assert!(of(12.3).allows() && !of(12.0).allows());
        assert_eq!(dew_check(air(20.0, 50.0), f64::INFINITY), None);
        // Saturated air: a surface as warm as the air is at the dew point.
        let saturated = dew_check(air(18.0, 100.0), 21.5).unwrap();
        assert!((saturated.margin - 3.5).abs() < 1e-9);
    }

    proptest! {
        /// Never above the air, higher in damper air, and the same vapor pressure comes back.
        #[test]
        fn damper_air_has_a_higher_dew_point(celsius in -40.0..50.0_f64, humidity in 1.0..100.0_f64, more in 0.01..20.0_f64) {
            let here = dew_point(air(celsius, humidity)).unwrap();
            let damper = dew_point(air(celsius, (humidity + more).min(100.0))).unwrap();
            prop_assert!(here <= celsius + 1e-9 && here <= damper);
            let pressure = |at: f64| A * at / (B + at);
            let back = 100.0 * libm::exp(pressure(here) - pressure(celsius));
            prop_assert!((back - humidity).abs() < 1e-9);
        }
    }
}
