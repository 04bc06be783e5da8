//! Why something is suggested.

use crate::sourced_range::{GENERIC, NO_SOURCE, Provenance};

/// Why, and where that comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reason {
    /// The reason in one or two sentences.
    pub text: &'static str,
    /// Where it comes from.
    pub source: &'static str,
    /// How sure it is.
    pub certainty: Provenance,
}

impl Reason {
    /// A reason that was read in a source.
    pub const fn read(text: &'static str, source: &'static str) -> Self {
        Reason {
            text,
            source,
            certainty: Provenance::Read,
        }
    }

    /// A reason that is common practice.
    pub const fn practice(text: &'static str) -> Self {
        Reason {
            text,
            source: NO_SOURCE,
            certainty: Provenance::Practice,
        }
    }

    /// A reason from memory, not confirmed.
    pub const fn memory(text: &'static str) -> Self {
        Reason {
            text,
            source: GENERIC,
            certainty: Provenance::Memory,
        }
    }
}
