//! Errors of mixing.

use std::fmt;

/// Why a mix has no color, or no drift.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum MixError {
    /// There is nothing in it.
    Empty,
    /// The amount of this part, counted from 0, is negative or not a number.
    Amount(usize),
    /// As many doses are needed as there are parts.
    Count {
        /// How many parts there are.
        parts: usize,
        /// How many doses were given.
        doses: usize,
    },
    /// The step of the scale is negative or not a number.
    Step,
    /// The accuracy of the scale is not a share from 0 to 1.
    Accuracy,
}

impl fmt::Display for MixError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            MixError::Empty => f.write_str("Enter the amount of at least one part."),
            MixError::Amount(place) => write!(f, "Part {}: enter an amount of 0 or more.", place + 1),
            MixError::Count { parts, doses } => write!(
                f,
                "Enter one dose per part. There are {parts} parts and {doses} doses."
            ),
            MixError::Step => f.write_str("Enter the scale's step in grams, like 1 or 0.1."),
            MixError::Accuracy => f.write_str("Enter the scale's accuracy from its manual, 0% to 100%."),
        }
    }
}

impl std::error::Error for MixError {}
