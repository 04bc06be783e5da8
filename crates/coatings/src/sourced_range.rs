//! Ranges of values with their source and certainty.

use std::marker::PhantomData;

use crate::distribution::Distribution;
use crate::unit::{Ratio, Unit};

/// The certainty of a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Provenance {
    /// Read in the named source.
    Read,
    /// Worked out from a definition or from figures that were read.
    Calculated,
    /// From memory, not confirmed.
    Memory,
    /// Common practice in the trade, no source.
    Practice,
    /// Entered by the maker, from a label or from a measurement of their own.
    Maker,
}

impl Provenance {
    /// Its label.
    pub fn label(self) -> &'static str {
        match self {
            Provenance::Read => "read in the source",
            Provenance::Calculated => "calculated",
            Provenance::Memory => "from memory, not confirmed",
            Provenance::Practice => "common practice, no source",
            Provenance::Maker => "your own entry",
        }
    }
}

/// A value between two limits, in a unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SourcedRange<U: Unit = Ratio> {
    /// The lower limit.
    pub low: f64,
    /// The upper limit.
    pub high: f64,
    /// Where it comes from.
    pub source: &'static str,
    /// How sure it is.
    pub certainty: Provenance,
    unit: PhantomData<U>,
}

/// The source of what is common practice.
pub(crate) const NO_SOURCE: &str = "no neutral source found";
/// The source of what is from memory.
pub(crate) const GENERIC: &str = "typical for this kind of material";
/// The source of what the maker entered.
const OWN: &str = "your own number";

impl<U: Unit> SourcedRange<U> {
    /// A figure with its source.
    pub const fn new(low: f64, high: f64, source: &'static str, certainty: Provenance) -> Self {
        SourcedRange {
            low,
            high,
            source,
            certainty,
            unit: PhantomData,
        }
    }

    /// The lower and the upper limit.
    pub const fn range(self) -> (f64, f64) {
        (self.low, self.high)
    }

    /// Other numbers of the same source, as they follow from these, in any unit.
    pub const fn with_range<V: Unit>(self, low: f64, high: f64) -> SourcedRange<V> {
        SourcedRange::new(low, high, self.source, self.certainty)
    }

    /// The numbers without their unit, for tables in which each row names its own.
    pub const fn as_numbers(self) -> SourcedRange {
        self.with_range(self.low, self.high)
    }

    /// A figure that was read in a source.
    pub const fn read(low: f64, high: f64, source: &'static str) -> Self {
        SourcedRange::new(low, high, source, Provenance::Read)
    }

    /// A figure that follows from a definition or from figures that were read.
    pub const fn calculated(low: f64, high: f64, source: &'static str) -> Self {
        SourcedRange::new(low, high, source, Provenance::Calculated)
    }

    /// A figure from memory.
    pub const fn memory(low: f64, high: f64) -> Self {
        SourcedRange::new(low, high, GENERIC, Provenance::Memory)
    }

    /// A figure of common practice.
    pub const fn practice(low: f64, high: f64) -> Self {
        SourcedRange::new(low, high, NO_SOURCE, Provenance::Practice)
    }

    /// A figure that follows from what is assumed by common practice; the source says what that is.
    pub const fn assumed(low: f64, high: f64, source: &'static str) -> Self {
        SourcedRange::new(low, high, source, Provenance::Practice)
    }

    /// A figure of the maker's own.
    pub const fn own(low: f64, high: f64) -> Self {
        SourcedRange::new(low, high, OWN, Provenance::Maker)
    }

    /// A rectangular distribution, because only the limits are known (JCGM 100, 4.3.7).
    pub fn distribution(&self) -> Distribution {
        Distribution::between(self.low, self.high)
    }

    /// The middle of the range.
    pub fn middle(&self) -> f64 {
        (self.low + self.high) / 2.0
    }
}
