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
            Fault::NotANumber => "Enter the numbers again. One isn't a number.",
            Fault::NothingUsed => {
                "Enter the heavier weight first. Weigh with the same lid and tray both times."
            }
            Fault::NoArea => "Measure the piece and enter its coats first.",
            Fault::AllKept => "Check both weights. The tool alone holds as much as you used.",
            Fault::Density => "Enter the density from the label or data sheet, above 0, lower number first.",
        })
    }
}

impl std::error::Error for Fault {}
