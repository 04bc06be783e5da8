//! Whether the air allows a coat, and how much longer the coat takes to dry than its label says.
//!
//! [`drying_percent`] is a rule of thumb, because no neutral source was found.

use crate::air::Air;
use crate::dew::dew_check;

/// The air that a material may be put on in, from its label; `None` where it does not say.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct AirLimits {
    /// The least temperature, degrees Celsius.
    pub coldest: Option<f64>,
    /// The highest temperature, degrees Celsius.
    pub warmest: Option<f64>,
    /// The highest relative humidity, percent.
    pub dampest: Option<f64>,
}

/// The air in which the times on a label were measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LabelAir {
    /// Degrees Celsius.
    pub celsius: f64,
    /// Relative humidity, percent.
    pub humidity: f64,
}

impl LabelAir {
    /// What labels usually name: 77 °F (25 °C) and 50 %. Common on labels; from memory, not confirmed.
    pub const USUAL: LabelAir = LabelAir {
        celsius: 25.0,
        humidity: 50.0,
    };
}

/// The temperature tolerance of a drying test: 23 ± 2 °C (ASTM D1640, ISO 3270; from memory).
const NEAR_CELSIUS: f64 = 2.0;
/// The humidity tolerance of the same test: 50 ± 5 %.
const NEAR_HUMIDITY: f64 = 5.0;
/// The humidity at which no coat should be applied, percent. The limit of 85 % is for coating steel
/// (second-hand reading of ISO 8502-4 and ISO 12944-7); used here by analogy.
const CEILING: f64 = 85.0;

/// The number of degrees below the air of the label that doubles the drying time (common practice, no
/// source; the rule of thumb for reaction rates in chemistry).
const TWICE_FOR: f64 = 10.0;
/// The rule ends at the freezing point of water, degrees Celsius.
const FREEZING: f64 = 0.0;

/// The drying time in this air as a percentage of the time on the label. It is 100 in the air of the label
/// and in warmer, drier air.
///
/// It doubles for each 10 °C below, and grows as damp air takes up less water. Both are common practice, no
/// source. [`air_cautions`] says when not to apply a coat at all.
///
/// # Example
/// ```
/// use timetable::{Air, LabelAir, drying_percent};
/// let cold = Air { celsius: 13.0, humidity: 50.0 };
/// assert_eq!(drying_percent(cold, LabelAir::USUAL), 200);
/// ```
pub fn drying_percent(air: Air, label: LabelAir) -> u32 {
    let colder = (label.celsius - NEAR_CELSIUS - air.celsius.max(FREEZING)).max(0.0);
    let least_damp = label.humidity + NEAR_HUMIDITY;
    let damp = air.humidity.clamp(least_damp, CEILING.max(least_damp));
    let times = libm::exp2(colder / TWICE_FOR) * (100.0 - least_damp) / (100.0 - damp);
    (times * 100.0).round() as u32
}

/// A caution about the air.
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
    /// The surface is at the dew point or too near to it.
    Dew,
    /// Colder than the label's times hold for: every wait may be longer.
    SlowCold,
    /// Damper than the label's times hold for: every wait may be longer.
    SlowDamp,
    /// Warmer than the label's times hold for: it sets faster, and there is less time to work it.
    FastWarm,
}

impl AirCaution {
    /// The message on screen.
    pub fn message(self) -> &'static str {
        match self {
            AirCaution::TooCold => "Too cold for this coat. Warm the room.",
            AirCaution::TooWarm => "Too warm for this coat. Wait until it cools down.",
            AirCaution::TooDamp => "Too damp for this coat. Dry the room.",
            AirCaution::NearlySaturated => "The air is too damp for any coat. Dry the room.",
            AirCaution::Dew => "Moisture could settle on the piece. Warm it or dry the air.",
            AirCaution::SlowCold => "Colder than the label assumes. Drying takes longer.",
            AirCaution::SlowDamp => "Damper than the label assumes. Drying takes longer.",
            AirCaution::FastWarm => "Warmer than the label assumes. Work in smaller areas.",
        }
    }

    /// Whether no coat should go on; otherwise the caution is about its times.
    pub fn forbids(self) -> bool {
        matches!(
            self,
            AirCaution::TooCold
                | AirCaution::TooWarm
                | AirCaution::TooDamp
                | AirCaution::NearlySaturated
                | AirCaution::Dew
        )
    }
}

/// Why no coat with these limits goes onto a surface of a temperature in degrees Celsius; `None` where it may.
pub fn forbidden(air: Air, surface: f64, limits: AirLimits) -> Option<AirCaution> {
    let is_wet = dew_check(air, surface).is_some_and(|dew| !dew.condensation.allows());
    // A coat is as cold as the piece, even in a warm room.
    if limits.coldest.is_some_and(|coldest| surface < coldest) {
        return Some(AirCaution::TooCold);
    }
    let mut cautions = air_cautions(air, limits, LabelAir::USUAL).into_iter();
    let gravest = cautions.find(|caution| caution.forbids());
    gravest.or(is_wet.then_some(AirCaution::Dew))
}

/// The cautions for a material in this air, the most serious first.
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

    /// By hand: 3 C are 20 below the label's 23, so twice two; 77.5 % leave half of the 45 % that 55 % leave.
    #[test]
    fn cold_and_damp_air_dry_slower() {
        let of = |celsius, humidity| drying_percent(Air { celsius, humidity }, LabelAir::USUAL);
        assert_eq!([of(25.0, 50.0), of(23.0, 55.0), of(35.0, 20.0)], [100; 3]);
        assert_eq!([of(13.0, 40.0), of(3.0, 40.0), of(25.0, 77.5)], [200, 400, 200]);
        assert_eq!(of(13.0, 77.5), 400);
        // Frozen and saturated air give finite values.
        assert_eq!(
            (of(-40.0, 50.0), of(25.0, 100.0)),
            (of(0.0, 50.0), of(25.0, 85.0))
        );
    }

    #[test]
    fn what_forbids_a_coat_is_named() {
        let of = |celsius, humidity, surface, coldest| {
            let limits = AirLimits {
                coldest,
                ..AirLimits::default()
            };
            forbidden(Air { celsius, humidity }, surface, limits)
        };
        // 35 F and 20 F at 40 %, far above the dew point.
        assert_eq!(of(1.67, 40.0, 1.67, Some(10.0)), Some(AirCaution::TooCold));
        assert_eq!(of(-6.67, 40.0, -6.67, Some(4.0)), Some(AirCaution::TooCold));
        assert_eq!(of(5.0, 40.0, 5.0, Some(4.0)), None);
        // A piece that comes in from the cold, far above the dew point of a dry room.
        assert_eq!(of(20.0, 20.0, 6.0, Some(10.0)), Some(AirCaution::TooCold));
        assert_eq!(of(25.0, 60.0, 18.0, None), Some(AirCaution::Dew));
        assert_eq!(of(25.0, 90.0, 25.0, None), Some(AirCaution::NearlySaturated));
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
