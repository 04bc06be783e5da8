//! What a maker alters.

use units::Length;

use super::added::Added;

/// The most changes of one piece.
pub const MAX_CHANGES: usize = 200;

/// The most times that a part is repeated.
pub const MAX_REPEATS: usize = 100;

/// A direction along which a board grows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Along {
    /// Left to right.
    Width,
    /// Front to back.
    Depth,
    /// Bottom to top.
    Height,
}

/// A direction in which a part goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Towards {
    /// To the left hand.
    Left,
    /// To the right hand.
    Right,
    /// Towards the person.
    Front,
    /// Towards the wall.
    Back,
    /// Up.
    Up,
    /// Down.
    Down,
}

/// A change of a piece.
#[derive(Clone, Debug, PartialEq)]
pub enum Alteration {
    /// A part goes.
    Remove {
        /// Its name.
        part: String,
    },
    /// A plain board gets another size along one direction; its middle stays.
    Resize {
        /// Its name.
        part: String,
        /// Along which direction.
        along: Along,
        /// Its new size.
        to: Length,
    },
    /// A part goes elsewhere.
    Move {
        /// Its name.
        part: String,
        /// In which direction.
        towards: Towards,
        /// How far.
        by: Length,
    },
    /// A part comes again at even steps.
    Repeat {
        /// Its name.
        part: String,
        /// How many there are in the end, with the part itself.
        times: usize,
        /// In which direction.
        towards: Towards,
        /// From one to the next.
        every: Length,
    },
    /// A hole is deducted from a surface.
    Hole {
        /// The name of the surface.
        surface: String,
        /// Its width.
        width: Length,
        /// Its height.
        height: Length,
    },
    /// A part comes in.
    Add(Added),
}
