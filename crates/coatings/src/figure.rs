//! Figures of the trade: a range, where it comes from, and how sure that is.

use crate::distribution::Distribution;

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
}

impl Certainty {
    /// The words for it.
    pub fn label(self) -> &'static str {
        match self {
            Certainty::Read => "read in the source",
            Certainty::Calculated => "calculated",
            Certainty::Memory => "from memory, not confirmed",
            Certainty::Practice => "common practice, no source",
        }
    }
}

/// A figure between two limits, in the unit that its owner names.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figure {
    /// The lower limit.
    pub low: f64,
    /// The upper limit.
    pub high: f64,
    /// Where it comes from.
    pub source: &'static str,
    /// How sure it is.
    pub certainty: Certainty,
}

impl Figure {
    /// Nothing but the limits is known, so every value between them is as likely (JCGM 100, 4.3.7).
    pub fn distribution(&self) -> Distribution {
        Distribution::Rectangular {
            low: self.low,
            high: self.high,
        }
    }

    /// The middle of the range.
    pub fn middle(&self) -> f64 {
        (self.low + self.high) / 2.0
    }
}
