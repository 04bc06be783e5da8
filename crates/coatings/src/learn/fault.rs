//! Invalid weighings.

use std::fmt;

/// Why a weighing gives no rate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// A number is not finite.
    NotANumber,
    /// The can is no lighter than before.
    NothingUsed,
    /// There is no area, or no coat on it.
    NoArea,
    /// What the tool kept is as much as was taken from the can.
    AllKept,
    /// The density is nothing or less, or its lower figure is above the upper one.
    Density,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Fault::NotANumber => "One of the figures is not a number. Enter it again.",
            Fault::NothingUsed => {
                "The can weighs no less after than before. Weigh it with the same lid and tray both times, and enter the heavier one first."
            }
            Fault::NoArea => "No area was coated. Measure the piece and give its coats first.",
            Fault::AllKept => {
                "The tool keeps as much as was taken from the can, so nothing is left for the piece. Check both weights."
            }
            Fault::Density => {
                "The density must be more than 0, the lower figure first. Enter the one on the label or data sheet."
            }
        })
    }
}

impl std::error::Error for Fault {}
