//! What a unit is in another stands in `crates/units` and nowhere else.

use anyhow::{Result, ensure};

use super::code::Code;
use super::{CRATES, shrinking};
use crate::repository::Repository;

/// What one unit is in another. 1.8, which is more often a plain figure, counts only where something is multiplied with or
/// divided by it.
const CONSTANTS: [f64; 37] = [
    // Inch, foot and yard in millimeters, centimeters and meters, and the other way.
    25.4,
    2.54,
    0.0254,
    304.8,
    30.48,
    0.3048,
    0.9144,
    39.3701,
    3.280_84,
    0.039_370_1,
    0.393_701,
    // Square inch and square foot.
    645.16,
    6.4516,
    929.0304,
    0.092_903_04,
    10.7639,
    // Gallon, quart, pint, cup and fluid ounce of both kinds in liters and milliliters, and the other way.
    3.785_411_784,
    0.946_352_946,
    0.473_176_473,
    236.588_236_5,
    29.573_529_562_5,
    4.546_09,
    28.413_062_5,
    0.568_261_25,
    0.264_172,
    33.814,
    16.387_064,
    // Pound and ounce in grams and kilograms, and the other way.
    453.592_37,
    0.453_592_37,
    28.349_523_125,
    0.028_349_523_125,
    2.204_62,
    0.035_274,
    // Pounds per gallon, square feet per gallon.
    119.826_4,
    0.119_826_4,
    24.5424,
    40.7458,
];
const FAHRENHEIT: f64 = 1.8;

/// How near a number is to one of them that is taken for it: makers of tables round to four digits.
const NEAR: f64 = 2e-4;

/// Conversions that are still to be moved.
const KNOWN: &str = include_str!("constants.txt");

/// Checks every crate but `units`.
pub(super) fn check(repository: &Repository) -> Result<()> {
    let mut lines = Vec::new();
    for (folder, _) in CRATES {
        let name = folder.split('/').nth(1).unwrap_or_default();
        // The list above is no conversion.
        if name == "units" || name == "xtask" {
            continue;
        }
        for (file, code) in Code::of_crate(repository, name)? {
            let found = found(&code);
            if !found.is_empty() {
                lines.push(format!("{file}: {}", found.join(", ")));
            }
        }
    }
    let faults = shrinking::faults(
        &lines,
        KNOWN,
        "Use or add a function in crates/units. These numbers convert units",
        "crates/xtask/src/invariants/constants.txt",
    );
    ensure!(faults.is_empty(), "{faults}");
    println!(
        "No new conversions of units outside crates/units; {} files with known ones.",
        lines.len()
    );
    Ok(())
}

fn found(code: &Code) -> Vec<&str> {
    let is_near = |text: &str, constant: f64| {
        text.parse::<f64>()
            .is_ok_and(|number| (number / constant - 1.0).abs() < NEAR)
    };
    let numbers = code
        .numbers
        .iter()
        .filter(|text| CONSTANTS.iter().any(|constant| is_near(text, *constant)));
    let factors = code.factors.iter().filter(|text| is_near(text, FAHRENHEIT));
    numbers.chain(factors).map(String::as_str).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn conversions_are_found_outside_tests() {
        for (text, expected) in [
            ("const INCH: f64 = 25.4;", vec!["25.4"]),
            (
                "fn f(x: f64) -> f64 { x / 0.453_592 + 28.35 }",
                vec!["0.453592", "28.35"],
            ),
            ("fn f(x: f64) -> f64 { x * 1.8 + 1.8 }", vec!["1.8"]),
            (
                "fn f(x: f64) -> String { format!(\"{}\", x * 29.57) }",
                vec!["29.57"],
            ),
            (
                "const A: f64 = 25.0;\n#[cfg(test)]\nmod tests { const B: f64 = 0.3048; }",
                vec![],
            ),
        ] {
            assert_eq!(found(&Code::of(text).unwrap()), expected, "{text}");
        }
    }
}
