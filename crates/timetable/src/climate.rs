//! Whether the air is fit for a coat, and whether the times of its label hold: cautions, no numbers.
//!
//! How much longer a coat takes in the cold or the damp is known from no neutral source, so nothing here changes a
//! time; a maker's own experience goes into `Wait::slower`.

/// The air of the workshop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// Degrees Celsius.
    pub celsius: f64,
    /// Relative humidity, per cent.
    pub humidity: f64,
}

/// The air that a material may be put on in, from its label; nothing where it does not say.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct AirLimits {
    /// The least temperature, degrees Celsius.
    pub coldest: Option<f64>,
    /// The highest temperature, degrees Celsius.
    pub warmest: Option<f64>,
    /// The highest relative humidity, per cent.
    pub dampest: Option<f64>,
}

/// The air in which the times on a label were measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LabelAir {
    /// Degrees Celsius.
    pub celsius: f64,
    /// Relative humidity, per cent.
    pub humidity: f64,
}

impl LabelAir {
    /// What labels usually name: 77 °F (25 °C) and 50 %. Common on labels; from memory, not confirmed.
    pub const USUAL: LabelAir = LabelAir {
        celsius: 25.0,
        humidity: 50.0,
    };
}

/// By how many degrees the air of a drying test may be off: 23 ± 2 °C (ASTM D1640, ISO 3270; from memory).
const NEAR_CELSIUS: f64 = 2.0;
/// By how many per cent of humidity: 50 ± 5 % (the same).
const NEAR_HUMIDITY: f64 = 5.0;
/// From this humidity on nothing should be coated, per cent. Below 85 % is what coating of steel asks for (second-hand
/// reading of ISO 8502-4 and ISO 12944-7); used here by analogy.
const CEILING: f64 = 85.0;

/// What to look out for in this air.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AirCaution {
    /// Colder than the material may be put on.
    TooCold,
    /// Warmer than the material may be put on.
    TooWarm,
    /// Damper than the material may be put on.
    TooDamp,
    /// So damp that moisture can settle, whatever the material.
    NearlySaturated,
    /// Colder than the label's times hold for: every wait may be longer.
    SlowCold,
    /// Damper than the label's times hold for: every wait may be longer.
    SlowDamp,
    /// Warmer than the label's times hold for: it sets faster, and there is less time to work it.
    FastWarm,
}

impl AirCaution {
    /// What a person is told.
    pub fn message(self) -> &'static str {
        match self {
            AirCaution::TooCold => "It is too cold for this material. Warm the room, or wait.",
            AirCaution::TooWarm => "It is too warm for this material. Wait for a cooler hour.",
            AirCaution::TooDamp => "The air is too damp for this material. Dry the room, or wait.",
            AirCaution::NearlySaturated => "The air is nearly saturated. Coat nothing before it is drier.",
            AirCaution::SlowCold => {
                "It is colder than the label's times hold for. Allow longer, and try a hidden spot first."
            }
            AirCaution::SlowDamp => {
                "It is damper than the label's times hold for. Allow longer, and try a hidden spot first."
            }
            AirCaution::FastWarm => "It is warmer than the label's times hold for. Work in smaller areas.",
        }
    }

    /// Whether no coat should go on; otherwise the caution is about its times.
    pub fn forbids(self) -> bool {
        matches!(
            self,
            AirCaution::TooCold | AirCaution::TooWarm | AirCaution::TooDamp | AirCaution::NearlySaturated
        )
    }
}

/// What to look out for when a material is put on in this air, the gravest first.
pub fn air_cautions(air: Air, limits: AirLimits, label: LabelAir) -> Vec<AirCaution> {
    let below = |limit: Option<f64>, value: f64| limit.is_some_and(|limit| value < limit);
    let above = |limit: Option<f64>, value: f64| limit.is_some_and(|limit| value > limit);
    let all = [
        (below(limits.coldest, air.celsius), AirCaution::TooCold),
        (above(limits.warmest, air.celsius), AirCaution::TooWarm),
        (above(limits.dampest, air.humidity), AirCaution::TooDamp),
        (air.humidity >= CEILING, AirCaution::NearlySaturated),
        (air.celsius < label.celsius - NEAR_CELSIUS, AirCaution::SlowCold),
        (
            air.humidity > label.humidity + NEAR_HUMIDITY,
            AirCaution::SlowDamp,
        ),
        (air.celsius > label.celsius + NEAR_CELSIUS, AirCaution::FastWarm),
    ];
    all.into_iter()
        .filter_map(|(holds, caution)| holds.then_some(caution))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cautions(celsius: f64, humidity: f64) -> Vec<AirCaution> {
        let limits = AirLimits {
            coldest: Some(10.0),
            warmest: Some(32.0),
            dampest: Some(80.0),
        };
        air_cautions(Air { celsius, humidity }, limits, LabelAir::USUAL)
    }

    #[test]
    fn air_is_held_against_the_limits_and_the_label() {
        assert_eq!(cautions(25.0, 50.0), []);
        assert_eq!(cautions(23.0, 55.0), []);
        assert_eq!(cautions(22.9, 55.1), [AirCaution::SlowCold, AirCaution::SlowDamp]);
        assert_eq!(cautions(9.9, 50.0), [AirCaution::TooCold, AirCaution::SlowCold]);
        assert_eq!(cautions(33.0, 40.0), [AirCaution::TooWarm, AirCaution::FastWarm]);
        let damp = [
            AirCaution::TooDamp,
            AirCaution::NearlySaturated,
            AirCaution::SlowDamp,
        ];
        assert_eq!(cautions(24.0, 85.0), damp);
        assert!(damp[0].forbids() && !damp[2].forbids());
    }

    #[test]
    fn a_label_that_says_nothing_forbids_nothing_below_the_ceiling() {
        let air = Air {
            celsius: 2.0,
            humidity: 84.9,
        };
        let found = air_cautions(air, AirLimits::default(), LabelAir::USUAL);
        assert!(found.iter().all(|caution| !caution.forbids()));
    }
}
