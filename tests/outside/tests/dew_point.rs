//! Dew points against another formula.
//!
//! Outside source: PsychroLib, which solves the saturation pressure of Hyland and Wexler (ASHRAE Handbook Fundamentals
//! 2017, ch. 1), through `scripts/dew_point.py`. The crate uses the Magnus form of Alduchov and Eskridge (Journal of
//! Applied Meteorology 35, 1996, 601-609), whose vapour pressures are given as right within 0.4 % from -40 to 50 °C
//! (that figure from memory).

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use serde::Deserialize;
use timetable::{Air, dew_point};

#[derive(Deserialize)]
struct Fixture {
    cases: Vec<Case>,
}

/// Degrees Celsius and per cent.
#[derive(Deserialize)]
struct Case {
    celsius: f64,
    humidity: f64,
    dew_point: f64,
}

/// How far a vapour pressure may be off, as a share of it.
const OFF: f64 = 0.004;
/// How far PsychroLib may be off its own formula: it stops at a step of 0.001 °C, and four places are kept.
const ITS_OWN: f64 = 0.001_1;

/// The pressure is off where the air is and, the other way round, where the dew point is: twice the share, and as many
/// degrees as the slope of its logarithm there makes of it, from 0.11 °C at 0 °C to 0.16 °C at 50 °C.
fn tolerance(dew_point: f64) -> f64 {
    let from_zero = 243.04 + dew_point;
    let slope = 17.625 * 243.04 / (from_zero * from_zero);
    2.0 * OFF / slope + ITS_OWN
}

#[test]
fn dew_points_agree_within_the_accuracy_of_the_form() {
    let text = include_str!("../fixtures/dew-point.json");
    let fixture: Fixture = serde_json::from_str(text).unwrap();
    assert!(fixture.cases.len() > 700);
    let mut worst: f64 = 0.0;
    for case in &fixture.cases {
        let (celsius, humidity) = (case.celsius, case.humidity);
        let found = dew_point(Air { celsius, humidity }).unwrap();
        let off = (found - case.dew_point).abs();
        assert!(
            off <= tolerance(case.dew_point),
            "{celsius} °C, {humidity} %: {found}, not {}",
            case.dew_point
        );
        worst = worst.max(off);
    }
    println!("furthest apart: {worst:.4} °C in {} cases", fixture.cases.len());
    // Far less than what a hand-held meter shows, and than the 0.22 °C between the two rules of the trade.
    assert!(worst < WORST);
}

/// Furthest apart, degrees Celsius: 0.0543 when it was measured.
const WORST: f64 = 0.055;
