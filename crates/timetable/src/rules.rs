//! How a timetable is to be made.

use crate::minutes::Pace;

/// Which job goes first where two could.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Order {
    /// As the jobs are given.
    #[default]
    Given,
    /// The one that is due first; jobs without a day come last, otherwise as they are given.
    Due,
}

/// What matters more: busy hands, or recoat windows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Haste {
    /// Hands never rest while a step could go on. A window that closes meanwhile is missed and scuffed.
    Busy,
    /// Hands may rest, and a coat may wait for another opening of the workshop, so that the next coat falls into its
    /// window.
    #[default]
    Windows,
}

/// How a timetable is to be made.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Rules {
    /// Which job goes first.
    pub order: Order,
    /// Whether hands may rest for a window.
    pub haste: Haste,
    /// Which guess of all times is taken.
    pub pace: Pace,
}
