//! Cans: the sizes of the trade, and whether one is enough.

use units::{System, Volume, VolumeUnit};

use crate::amount::Amount;

/// A size that materials are sold in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CanSize {
    /// Its name in saved files.
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
static US: [CanSize; 4] = [
    size("us-8-fl-oz", "8 fl oz sample", 8.0, VolumeUnit::UsFluidOunce),
    size("us-pint", "1 pint", 1.0, VolumeUnit::UsPint),
    size("us-quart", "1 quart", 1.0, VolumeUnit::UsQuart),
    size("us-gallon", "1 gallon", 1.0, VolumeUnit::UsGallon),
];

/// Metric trade sizes (common practice, no source).
static METRIC: [CanSize; 4] = [
    size("metric-250-ml", "250 mL sample", 250.0, VolumeUnit::Millilitre),
    size("metric-750-ml", "750 mL", 750.0, VolumeUnit::Millilitre),
    size("metric-1-l", "1 L", 1.0, VolumeUnit::Litre),
    size("metric-2500-ml", "2.5 L", 2.5, VolumeUnit::Litre),
];

/// The can sizes of a system's trade, the smallest first.
pub fn can_sizes(system: System) -> &'static [CanSize] {
    match system {
        System::UsCustomary => &US,
        System::Metric => &METRIC,
    }
}

/// The can size with this name in saved files.
pub fn can(key: &str) -> Option<&'static CanSize> {
    US.iter().chain(&METRIC).find(|can| can.key == key)
}

/// The answer in one word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Enough with the wanted confidence.
    Enough,
    /// More likely enough than not, but not with the wanted confidence.
    Tight,
    /// More likely too little.
    Short,
}

/// Whether a can is enough, and what would be left or lacking.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Enough {
    /// The answer in one word.
    pub verdict: Verdict,
    /// The probability that the can is enough.
    pub probability: f64,
    /// What is likely left over; nothing if the can is likely too small.
    pub left: Volume,
    /// What is likely lacking; nothing if the can is likely enough.
    pub lacking: Volume,
}

impl Enough {
    /// Judges a can against an amount; `confidence` is the probability that the maker wants.
    ///
    /// # Example
    /// ```
    /// # use coatings::{Application, AreaEstimate, Basis, Enough, Ground, Verdict, can_sizes, material, tool};
    /// # use units::{Area, System};
    /// # let amount = Application {
    /// #     material: material("trim-enamel").unwrap(), tool: tool("brush").unwrap(), coats: 2,
    /// #     area: AreaEstimate { area: Area::square_metres(4.0), standard_uncertainty: Area::ZERO },
    /// #     ground: Ground::Sealed, basis: Basis::WetFilm,
    /// # }.amount();
    /// let sample = &can_sizes(System::UsCustomary)[0];
    /// assert_eq!(Enough::judge(&amount, sample.volume(), 0.9).verdict, Verdict::Short);
    /// ```
    pub fn judge(amount: &Amount, can: Volume, confidence: f64) -> Self {
        let probability = amount.probability_enough(can);
        let verdict = if probability >= confidence {
            Verdict::Enough
        } else if probability >= 0.5 {
            Verdict::Tight
        } else {
            Verdict::Short
        };
        let likely = amount.likely();
        Enough {
            verdict,
            probability,
            left: (can - likely).max(Volume::ZERO),
            lacking: (likely - can).max(Volume::ZERO),
        }
    }
}
