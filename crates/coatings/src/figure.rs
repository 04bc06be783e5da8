//! Figures of the trade: a range, where it comes from, and how sure that is.

use std::marker::PhantomData;

use crate::distribution::Distribution;
use crate::unit::{Ratio, Unit};

/// How sure a figure is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Certainty {
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

impl Certainty {
    /// The words for it.
    pub fn label(self) -> &'static str {
        match self {
            Certainty::Read => "read in the source",
            Certainty::Calculated => "calculated",
            Certainty::Memory => "from memory, not confirmed",
            Certainty::Practice => "common practice, no source",
            Certainty::Maker => "entered by the maker",
        }
    }
}

/// A figure between two limits, in a unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figure<U: Unit = Ratio> {
    /// The lower limit.
    pub low: f64,
    /// The upper limit.
    pub high: f64,
    /// Where it comes from.
    pub source: &'static str,
    /// How sure it is.
    pub certainty: Certainty,
    unit: PhantomData<U>,
}

/// The source of what is common practice.
pub(crate) const NO_SOURCE: &str = "no neutral source found";
/// The source of what is from memory.
pub(crate) const GENERIC: &str = "generic data for this kind of material";
/// The source of what the maker entered.
const OWN: &str = "the maker's own figure";

impl<U: Unit> Figure<U> {
    /// A figure with its source.
    pub const fn new(low: f64, high: f64, source: &'static str, certainty: Certainty) -> Self {
        Figure {
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
    pub const fn with_range<V: Unit>(self, low: f64, high: f64) -> Figure<V> {
        Figure::new(low, high, self.source, self.certainty)
    }

    /// The numbers without their unit, for tables in which each row names its own.
    pub const fn as_numbers(self) -> Figure {
        self.with_range(self.low, self.high)
    }

    /// A figure that was read in a source.
    pub const fn read(low: f64, high: f64, source: &'static str) -> Self {
        Figure::new(low, high, source, Certainty::Read)
    }

    /// A figure that follows from a definition or from figures that were read.
    pub const fn calculated(low: f64, high: f64, source: &'static str) -> Self {
        Figure::new(low, high, source, Certainty::Calculated)
    }

    /// A figure from memory.
    pub const fn memory(low: f64, high: f64) -> Self {
        Figure::new(low, high, GENERIC, Certainty::Memory)
    }

    /// A figure of common practice.
    pub const fn practice(low: f64, high: f64) -> Self {
        Figure::new(low, high, NO_SOURCE, Certainty::Practice)
    }

    /// A figure that follows from what is assumed by common practice; the source says what that is.
    pub const fn assumed(low: f64, high: f64, source: &'static str) -> Self {
        Figure::new(low, high, source, Certainty::Practice)
    }

    /// A figure of the maker's own.
    pub const fn own(low: f64, high: f64) -> Self {
        Figure::new(low, high, OWN, Certainty::Maker)
    }

    /// Nothing but the limits is known, so every value between them is as likely (JCGM 100, 4.3.7).
    pub fn distribution(&self) -> Distribution {
        Distribution::between(self.low, self.high)
    }

    /// The middle of the range.
    pub fn middle(&self) -> f64 {
        (self.low + self.high) / 2.0
    }
}
