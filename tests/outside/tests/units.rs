//! Units against their legal definitions.
//!
//! Outside sources, with how sure each is:
//! - 16 CFR 500.19 (US labelling rules), read: the inch, the foot, the mil, the square foot and the square inch
//!   are exact there; the US gallon is printed to six figures.
//! - NIST Handbook 44, Appendix C, from memory: the US gallon is 231 cubic inches. What follows from that is
//!   worked out here by hand in exact decimals.
//! - UK Units of Measurement Regulations 1995, from memory: the imperial gallon is 4.54609 L.
//! - NIST Handbook 44, section 10.3, read in a report that quotes it: ties are rounded to the even figure.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use units::{Area, Length, LengthUnit, System, Volume, VolumeUnit, read_length, show_length};

/// Compares to the last digits of an `f64`: the definitions are exact, only binary fractions are not.
#[track_caller]
fn exactly(ours: f64, definition: f64) {
    let difference = (ours - definition).abs();
    assert!(
        difference <= 4.0 * f64::EPSILON * definition.abs(),
        "{ours} is not {definition}"
    );
}

/// 16 CFR 500.19, read; starred there as exact.
#[test]
fn the_inch_the_foot_and_the_mil() {
    exactly(LengthUnit::Inch.of(1.0).as_millimetres(), 25.4);
    exactly(LengthUnit::Foot.of(1.0).as_millimetres(), 304.8);
    exactly(Length::inches(0.001).as_millimetres(), 0.0254);
    exactly(
        read_length("1'", LengthUnit::Millimetre)
            .unwrap()
            .as_millimetres(),
        304.8,
    );
    exactly(read_length("1", LengthUnit::Inch).unwrap().as_millimetres(), 25.4);
}

/// Metric prefixes of the International System.
#[test]
fn the_metric_lengths() {
    exactly(LengthUnit::Millimetre.of(1.0).as_metres(), 0.001);
    exactly(LengthUnit::Centimetre.of(1.0).as_metres(), 0.01);
    exactly(LengthUnit::Metre.of(1.0).as_metres(), 1.0);
    exactly(VolumeUnit::Millilitre.of(1.0).as_litres(), 0.001);
    exactly(VolumeUnit::Litre.of(1.0).as_millilitres(), 1000.0);
}

/// 16 CFR 500.19, read: 929.0304 cm2 and 6.4516 cm2, exact.
#[test]
fn the_square_foot_and_the_square_inch() {
    const PER_CM2: f64 = 1e4;
    exactly(Area::square_feet(1.0).as_square_metres() * PER_CM2, 929.0304);
    let inch = Length::inches(1.0);
    exactly((inch * inch).as_square_metres() * PER_CM2, 6.4516);
    exactly(Area::square_metres(0.092_903_04).as_square_feet(), 1.0);
}

/// 231 cubic inches (from memory, NIST Handbook 44) of 16.387064 mL (from 25.4 mm) are 3.785411784 L; 16 CFR
/// 500.19 prints 3.78541 (read).
#[test]
fn the_us_gallon() {
    let litres = VolumeUnit::UsGallon.of(1.0).as_litres();
    exactly(litres, 3.785_411_784);
    assert!((litres - 3.78541).abs() < 0.000_005, "{litres}");
}

/// Halves of 231 cubic inches, worked out by hand.
#[test]
fn the_parts_of_the_us_gallon() {
    let millilitres = |unit: VolumeUnit| unit.of(1.0).as_millilitres();
    exactly(millilitres(VolumeUnit::UsQuart), 946.352_946);
    exactly(millilitres(VolumeUnit::UsPint), 473.176_473);
    exactly(millilitres(VolumeUnit::UsCup), 236.588_236_5);
    exactly(millilitres(VolumeUnit::UsFluidOunce), 29.573_529_562_5);
    // A tablespoon is half a fluid ounce.
    exactly(
        VolumeUnit::UsFluidOunce.of(0.5).as_millilitres(),
        14.786_764_781_25,
    );
}

/// 16 CFR 500.19 prints the pint as 473.177 mL (read). The definition rounds to 473.176, and it is what counts.
#[test]
fn the_pint_is_not_the_misprint() {
    let pint = VolumeUnit::UsPint.of(1.0).as_millilitres();
    assert_eq!(format!("{pint:.3}"), "473.176");
}

/// UK Units of Measurement Regulations 1995, from memory: 4.54609 L; the pint and the fluid ounce follow.
#[test]
fn the_imperial_gallon_and_its_parts() {
    exactly(VolumeUnit::ImperialGallon.of(1.0).as_litres(), 4.546_09);
    exactly(VolumeUnit::ImperialPint.of(1.0).as_millilitres(), 568.261_25);
    exactly(
        VolumeUnit::ImperialFluidOunce.of(1.0).as_millilitres(),
        28.413_062_5,
    );
}

/// What is counted back is what was given.
#[test]
fn counting_is_the_way_back() {
    for unit in [
        VolumeUnit::UsGallon,
        VolumeUnit::UsFluidOunce,
        VolumeUnit::ImperialPint,
    ] {
        exactly(unit.count(unit.of(7.25)), 7.25);
    }
    exactly(
        VolumeUnit::UsFluidOunce.count(Volume::litres(3.785_411_784)),
        128.0,
    );
}

/// The cans of the US trade by the definitions above.
#[test]
fn the_cans_hold_what_their_labels_say() {
    let millilitres = |key: &str| coatings::can(key).unwrap().volume().as_millilitres();
    exactly(millilitres("us-8-fl-oz"), 236.588_236_5);
    exactly(millilitres("us-pint"), 473.176_473);
    exactly(millilitres("us-quart"), 946.352_946);
    exactly(millilitres("us-gallon"), 3_785.411_784);
    exactly(millilitres("metric-750-ml"), 750.0);
    exactly(millilitres("metric-2500-ml"), 2500.0);
}

/// NIST Handbook 44, section 10.3 (read in a report that quotes it): ties go to the even figure.
#[test]
fn ties_go_to_the_even_figure() {
    let shown = |millimetres: f64| show_length(Length::millimetres(millimetres), System::Metric);
    assert_eq!([shown(18.5), shown(19.5)], ["18 mm", "20 mm"]);
    // 1/32 in is a tie of sixteenths: 5/32 lies between 2/16 and 3/16, 7/32 between 3/16 and 4/16.
    let shown = |inches: f64| show_length(Length::inches(inches), System::UsCustomary);
    assert_eq!([shown(5.0 / 32.0), shown(7.0 / 32.0)], ["1/8 in", "1/4 in"]);
}
