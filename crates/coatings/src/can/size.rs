//! The sizes that materials are sold in.

use units::{System, Volume, VolumeUnit};

/// Picolitres in a liter. Every can of either trade is a whole number of picolitres: the US gallon is
/// 3.785411784 L, and a half fluid ounce ends at the thirteenth decimal place of a liter.
pub(super) const PER_LITRE: f64 = 1e12;

/// A size that materials are sold in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CanSize {
    /// Its key in saved files.
    pub key: &'static str,
    /// What is printed on it.
    pub label: &'static str,
    unit: VolumeUnit,
    count: f64,
}

impl CanSize {
    /// How much is in it.
    pub fn volume(&self) -> Volume {
        self.unit.of(self.count)
    }

    /// How much is in it, exactly, in picolitres.
    pub fn picolitres(&self) -> u64 {
        // The noise of the `f64` is under a hundredth of a picolitre for all that a person can lift.
        (self.volume().as_litres() * PER_LITRE).round() as u64
    }
}

const fn size(key: &'static str, label: &'static str, count: f64, unit: VolumeUnit) -> CanSize {
    CanSize {
        key,
        label,
        unit,
        count,
    }
}

/// US trade sizes (common practice, no source).
static US: [CanSize; 6] = [
    size("us-4-fl-oz", "4 fl oz", 4.0, VolumeUnit::UsFluidOunce),
    size("us-8-fl-oz", "8 fl oz", 8.0, VolumeUnit::UsFluidOunce),
    size("us-pint", "1 pint", 1.0, VolumeUnit::UsPint),
    size("us-quart", "1 quart", 1.0, VolumeUnit::UsQuart),
    size("us-gallon", "1 gallon", 1.0, VolumeUnit::UsGallon),
    size("us-5-gallon", "5 gallons", 5.0, VolumeUnit::UsGallon),
];

/// Metric trade sizes (common practice, no source).
static METRIC: [CanSize; 9] = [
    size("metric-125-ml", "125 mL", 125.0, VolumeUnit::Millilitre),
    size("metric-250-ml", "250 mL", 250.0, VolumeUnit::Millilitre),
    size("metric-375-ml", "375 mL", 375.0, VolumeUnit::Millilitre),
    size("metric-500-ml", "500 mL", 500.0, VolumeUnit::Millilitre),
    size("metric-750-ml", "750 mL", 750.0, VolumeUnit::Millilitre),
    size("metric-1-l", "1 L", 1.0, VolumeUnit::Litre),
    size("metric-2500-ml", "2.5 L", 2.5, VolumeUnit::Litre),
    size("metric-5-l", "5 L", 5.0, VolumeUnit::Litre),
    size("metric-10-l", "10 L", 10.0, VolumeUnit::Litre),
];

/// The can sizes of a system's trade, the smallest first.
///
/// # Example
/// ```
/// use coatings::can::can_sizes;
/// use units::System;
/// let sample = can_sizes(System::UsCustomary)[1];
/// assert_eq!((sample.key, sample.picolitres()), ("us-8-fl-oz", 236_588_236_500));
/// ```
pub fn can_sizes(system: System) -> &'static [CanSize] {
    match system {
        System::UsCustomary => &US,
        System::Metric => &METRIC,
    }
}

/// The can size with this key in saved files.
pub fn can(key: &str) -> Option<&'static CanSize> {
    US.iter().chain(&METRIC).find(|can| can.key == key)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked out by hand from 231 cubic inches of 16.387064 mL, NIST Handbook 44 (from memory).
    #[test]
    fn picolitres_are_exact() {
        for (key, picolitres) in [
            ("us-4-fl-oz", 118_294_118_250),
            ("us-8-fl-oz", 236_588_236_500),
            ("us-pint", 473_176_473_000),
            ("us-quart", 946_352_946_000),
            ("us-gallon", 3_785_411_784_000),
            ("us-5-gallon", 18_927_058_920_000),
            ("metric-125-ml", 125_000_000_000),
            ("metric-250-ml", 250_000_000_000),
            ("metric-375-ml", 375_000_000_000),
            ("metric-500-ml", 500_000_000_000),
            ("metric-750-ml", 750_000_000_000),
            ("metric-1-l", 1_000_000_000_000),
            ("metric-2500-ml", 2_500_000_000_000),
            ("metric-5-l", 5_000_000_000_000),
            ("metric-10-l", 10_000_000_000_000),
        ] {
            assert_eq!(can(key).unwrap().picolitres(), picolitres, "{key}");
        }
    }

    #[test]
    fn sizes_rise_and_names_differ() {
        for system in [System::UsCustomary, System::Metric] {
            let sizes = can_sizes(system);
            assert!(
                sizes
                    .windows(2)
                    .all(|pair| pair[0].picolitres() < pair[1].picolitres())
            );
            for size in sizes {
                assert_eq!(can(size.key), Some(size));
            }
        }
        assert_eq!(can("us-barrel"), None);
    }
}
