//! Why a text is not a length, in words.

use std::fmt;

use crate::LengthUnit;

/// Why a text is not a length, and where.
#[derive(Clone, Debug, PartialEq)]
pub struct LengthError {
    /// The place in the text, counted in characters from 0.
    pub at: usize,
    /// What is wrong there.
    pub fault: LengthFault,
}

/// What can be wrong in a written length.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum LengthFault {
    /// There is nothing to read.
    Empty,
    /// The text is longer than any tape reading.
    TooLong,
    /// A character that has no meaning in a length.
    Character(char),
    /// A word that is not a unit of length.
    UnknownUnit(String),
    /// A unit without a number before it, or a fraction without its numerator or denominator.
    NumberMissing,
    /// The denominator of a fraction is zero.
    DividedByZero,
    /// A fraction must be smaller than one; whole inches stand before it.
    FractionNotProper,
    /// A decimal and a fraction in one value, as in `33.5 7/8`.
    DecimalWithFraction,
    /// Two numbers with nothing to tell what the second one is, as in `33 7`.
    NumbersSideBySide,
    /// A smaller unit stands before a larger one, or a unit stands twice.
    UnitOrder,
    /// Feet or inches and metric units in one reading.
    MixedSystems,
    /// A part of a larger unit that is itself a larger unit or more, as in `2 ft 14 in`.
    PartTooLarge(LengthUnit),
    /// A minus sign.
    Negative,
    /// Three numbers that are a length if a line is drawn between the last two: what that is.
    Perhaps(String),
    /// Spoken words that are not a length: the same in digits, and the error.
    Spoken(String, Box<LengthError>),
}

impl fmt::Display for LengthError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.fault {
            LengthFault::Empty
            | LengthFault::TooLong
            | LengthFault::Character(_)
            | LengthFault::NumberMissing => f.write_str("Use a number, like 33 7/8 or 85.1 cm."),
            LengthFault::UnknownUnit(word) => {
                write!(
                    f,
                    "\u{201c}{word}\u{201d} is not a unit of length. Use in, ft, mm, cm or m."
                )
            }
            LengthFault::DividedByZero => f.write_str("The bottom of a fraction can't be 0."),
            LengthFault::FractionNotProper => f.write_str("Put the whole number first, like 3 3/8."),
            LengthFault::DecimalWithFraction => f.write_str("Use a decimal or a fraction, not both."),
            LengthFault::NumbersSideBySide => {
                f.write_str("Use one number, like 33 7/8, or a unit between two, like 2 ft 9 in.")
            }
            LengthFault::UnitOrder => f.write_str("Put the larger unit first, like 2 ft 9 in."),
            LengthFault::MixedSystems => f.write_str("Use inches or metric, not both."),
            LengthFault::PartTooLarge(unit) => {
                write!(f, "The smaller part is 1 {} or more. Check it.", unit.sign())
            }
            LengthFault::Negative => f.write_str("A length can't be less than 0."),
            LengthFault::Perhaps(text) => write!(f, "Did you mean {text}?"),
            LengthFault::Spoken(digits, error) => {
                write!(f, "Heard \u{201c}{digits}\u{201d}. {error}")
            }
        }
    }
}

impl std::error::Error for LengthError {}

pub(super) fn fault(at: usize, fault: LengthFault) -> LengthError {
    LengthError { at, fault }
}
