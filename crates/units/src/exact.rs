//! What one unit is in another, exactly, by definition: the inch and the pound by the agreement of 1959, the US gallon of 231
//! cubic inches and its parts by NIST Handbook 44, Appendix C.

/// Meters in an inch.
pub const INCH: f64 = 0.0254;
/// Meters in a foot.
pub const FOOT: f64 = 0.3048;
/// Square meters in a square inch.
pub const SQUARE_INCH: f64 = 0.000_645_16;
/// Square meters in a square foot.
pub const SQUARE_FOOT: f64 = 0.092_903_04;
/// Kilograms in an ounce.
pub const OUNCE: f64 = 0.028_349_523_125;
/// Kilograms in a pound.
pub const POUND: f64 = 0.453_592_37;
/// Liters in a US fluid ounce.
pub const FLUID_OUNCE: f64 = 0.029_573_529_562_5;
/// Liters in a US cup.
pub const CUP: f64 = 0.236_588_236_5;
/// Liters in a US pint.
pub const PINT: f64 = 0.473_176_473;
/// Liters in a US quart.
pub const QUART: f64 = 0.946_352_946;
/// Liters in a US gallon.
pub const GALLON: f64 = 3.785_411_784;
/// Kilograms to the liter in a pound to the US gallon.
pub const POUND_PER_GALLON: f64 = POUND / GALLON;
/// Square meters to the liter in a square foot to the US gallon.
pub const SQUARE_FOOT_PER_GALLON: f64 = SQUARE_FOOT / GALLON;
/// Degrees Celsius in a degree Fahrenheit: five ninths.
pub const FAHRENHEIT_STEPS: f64 = 1.8;
/// Meters in a mil, a thousandth of an inch.
pub const MIL: f64 = 0.000_025_4;

#[cfg(test)]
mod tests {
    use super::*;

    /// Handbook 44: 231 cubic inches, 128 fluid ounces, 16 cups, 8 pints and 4 quarts to the gallon; 16 ounces to the pound.
    #[test]
    fn units_fit_each_other() {
        let near = |one: f64, other: f64| (one / other - 1.0).abs() < 1e-15;
        assert!(near(GALLON, 231.0 * INCH * INCH * INCH * 1000.0));
        for (count, part) in [(128.0, FLUID_OUNCE), (16.0, CUP), (8.0, PINT), (4.0, QUART)] {
            assert!(near(GALLON, count * part), "{part}");
        }
        assert!(near(POUND, 16.0 * OUNCE) && near(FOOT, 12.0 * INCH) && near(MIL, INCH / 1000.0));
        assert!(near(SQUARE_FOOT, FOOT * FOOT) && near(SQUARE_INCH, INCH * INCH));
    }
}
