//! Colours against the published pairs of CIEDE2000 and against other libraries.
//!
//! Outside sources:
//! - Sharma, Wu and Dalal, "The CIEDE2000 Color-Difference Formula: Implementation Notes, Supplementary Test Data, and
//!   Mathematical Observations", Color Research and Application 30 (2005) 21-30, Table 1: all 34 pairs, read out of the
//!   test data of colour-science, and worked out again by scikit-image before they went into the fixture.
//! - colour-science and scikit-image, through `scripts/colour.py`: random pairs on which both agree, swatches turned
//!   into light, tristimulus values and CIELAB, and the drift of mixes from a million random draws.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use std::path::Path;

use colour::{Lab, Linear, Part, Rgb, Weighing, delta_e_2000, drift, mixed};
use serde::Deserialize;

#[derive(Deserialize)]
struct Fixture {
    published: Vec<Pair>,
    random: Vec<Pair>,
    swatches: Vec<Swatch>,
    mixes: Vec<Mix>,
}

#[derive(Debug, Deserialize)]
struct Pair {
    one: [f64; 3],
    other: [f64; 3],
    difference: f64,
}

#[derive(Deserialize)]
struct Swatch {
    rgb: Rgb,
    linear: [f64; 3],
    xyz: [f64; 3],
    lab: [f64; 3],
    xyz_four_decimals: [f64; 3],
}

#[derive(Debug, Deserialize)]
struct Mix {
    colours: Vec<Rgb>,
    amounts: Vec<f64>,
    step: f64,
    accuracy: f64,
    tared: bool,
    intended: [f64; 3],
    median: f64,
    high: f64,
}

fn fixture() -> Fixture {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/colour.json");
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn lab([lightness, a, b]: [f64; 3]) -> Lab {
    Lab { lightness, a, b }
}

fn coordinates(lab: Lab) -> [f64; 3] {
    [lab.lightness, lab.a, lab.b]
}

#[track_caller]
fn near(ours: [f64; 3], theirs: [f64; 3], tolerance: f64) {
    for (a, b) in ours.iter().zip(theirs) {
        assert!((a - b).abs() <= tolerance, "{ours:?} is not {theirs:?}");
    }
}

/// Printed to four decimals.
#[test]
fn all_published_pairs() {
    let published = fixture().published;
    assert_eq!(published.len(), 34);
    for pair in published {
        for (one, other) in [(pair.one, pair.other), (pair.other, pair.one)] {
            let ours = delta_e_2000(lab(one), lab(other));
            assert!((ours - pair.difference).abs() <= 5e-5 + 1e-9, "{ours} {pair:?}");
        }
    }
}

#[test]
fn random_pairs_greys_and_both_sides_of_red() {
    let random = fixture().random;
    assert!(random.len() > 300);
    for pair in random {
        let ours = delta_e_2000(lab(pair.one), lab(pair.other));
        assert!((ours - pair.difference).abs() <= 1e-9, "{ours} {pair:?}");
    }
}

/// The standard prints its matrix to four decimals; three of these add up to 1.5e-4 at most.
#[test]
fn swatches_as_light_and_as_the_eye_has_them() {
    let swatches = fixture().swatches;
    assert!(swatches.len() > 100);
    for swatch in swatches {
        let light = Linear::of(swatch.rgb);
        near(light.0, swatch.linear, 1e-14);
        near(light.xyz().0, swatch.xyz, 1e-14);
        near(light.xyz().0, swatch.xyz_four_decimals, 1.5e-4);
        near(coordinates(Lab::of(swatch.rgb)), swatch.lab, 1e-11);
        assert_eq!(lab(swatch.lab).xyz().linear().rgb(), swatch.rgb);
    }
}

/// Quantiles of 4,096 even points against those of a million random draws.
#[test]
fn the_drift_of_mixes() {
    let mixes = fixture().mixes;
    assert!(mixes.len() > 10);
    for mix in mixes {
        let parts = mix.colours.iter().zip(&mix.amounts);
        let parts: Vec<Part> = parts.map(|(&colour, &amount)| Part { colour, amount }).collect();
        near(mixed(&parts).unwrap().0, mix.intended, 1e-13);
        let weighing = Weighing {
            step: mix.step,
            accuracy: mix.accuracy,
            tared: mix.tared,
        };
        let ours = drift(&parts, &mix.amounts, weighing).unwrap();
        println!(
            "{} parts: median {:+.2} %, high {:+.2} % of {:.3}",
            parts.len(),
            100.0 * (ours.median / mix.median - 1.0),
            100.0 * (ours.high / mix.high - 1.0),
            mix.high,
        );
        assert!((ours.median / mix.median - 1.0).abs() < 0.03, "{ours:?} {mix:?}");
        assert!((ours.high / mix.high - 1.0).abs() < 0.03, "{ours:?} {mix:?}");
    }
}
