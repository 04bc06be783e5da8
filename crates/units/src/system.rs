//! The two systems a workshop may use, and the units of each with their exact sizes.

use crate::{Length, Volume};

/// Which units a maker reads and writes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum System {
    /// Inches and fractions, square feet, US fluid ounces, quarts and gallons.
    #[default]
    UsCustomary,
    /// Millimetres, square meters, milliliters and liters.
    Metric,
}

impl System {
    /// The unit that a bare number on the tape has.
    pub fn tape_unit(self) -> LengthUnit {
        match self {
            System::UsCustomary => LengthUnit::Inch,
            System::Metric => LengthUnit::Millimetre,
        }
    }
}

/// A unit of length that may stand behind a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LengthUnit {
    /// 25.4 mm exactly (16 CFR 500.19).
    Inch,
    /// 12 inches, 304.8 mm exactly (16 CFR 500.19).
    Foot,
    /// A thousandth of a meter.
    Millimetre,
    /// A hundredth of a meter.
    Centimetre,
    /// The meter.
    Metre,
}

impl LengthUnit {
    /// The length of `value` of this unit.
    pub fn of(self, value: f64) -> Length {
        match self {
            LengthUnit::Inch => Length::inches(value),
            LengthUnit::Foot => Length::inches(value * 12.0),
            LengthUnit::Millimetre => Length::millimetres(value),
            LengthUnit::Centimetre => Length::metres(value / 100.0),
            LengthUnit::Metre => Length::metres(value),
        }
    }

    /// The short sign: `in`, `ft`, `mm`, `cm`, `m`.
    pub fn sign(self) -> &'static str {
        match self {
            LengthUnit::Inch => "in",
            LengthUnit::Foot => "ft",
            LengthUnit::Millimetre => "mm",
            LengthUnit::Centimetre => "cm",
            LengthUnit::Metre => "m",
        }
    }
}

/// A unit of volume that a can or a jug is marked in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum VolumeUnit {
    /// The liter.
    Litre,
    /// A thousandth of a liter.
    Millilitre,
    /// 231 cubic inches exactly, 3.785411784 L (NIST Handbook 44, Appendix C).
    UsGallon,
    /// A quarter of a US gallon.
    UsQuart,
    /// An eighth of a US gallon.
    UsPint,
    /// A sixteenth of a US gallon.
    UsCup,
    /// A 128th of a US gallon.
    UsFluidOunce,
    /// 4.54609 L exactly (UK Units of Measurement Regulations 1995; value from memory).
    ImperialGallon,
    /// An eighth of an imperial gallon (from memory, as the gallon).
    ImperialPint,
    /// A 160th of an imperial gallon (from memory, as the gallon).
    ImperialFluidOunce,
}

impl VolumeUnit {
    /// The volume of `value` of this unit.
    pub fn of(self, value: f64) -> Volume {
        Volume::litres(value * self.litres())
    }

    /// How many of this unit `volume` is.
    pub fn count(self, volume: Volume) -> f64 {
        volume.as_litres() / self.litres()
    }

    fn litres(self) -> f64 {
        // A cubic inch is 0.0254^3 m3 = 0.016387064 L exactly.
        const US_GALLON: f64 = 231.0 * 0.016_387_064;
        const IMPERIAL_GALLON: f64 = 4.546_09;
        match self {
            VolumeUnit::Litre => 1.0,
            VolumeUnit::Millilitre => 0.001,
            VolumeUnit::UsGallon => US_GALLON,
            VolumeUnit::UsQuart => US_GALLON / 4.0,
            VolumeUnit::UsPint => US_GALLON / 8.0,
            VolumeUnit::UsCup => US_GALLON / 16.0,
            VolumeUnit::UsFluidOunce => US_GALLON / 128.0,
            VolumeUnit::ImperialGallon => IMPERIAL_GALLON,
            VolumeUnit::ImperialPint => IMPERIAL_GALLON / 8.0,
            VolumeUnit::ImperialFluidOunce => IMPERIAL_GALLON / 160.0,
        }
    }
}
