//! What a maker alters.

use units::Length;

use super::added::Added;

/// The most changes of one piece.
pub const MAX_CHANGES: usize = 200;

/// The most times that a part is repeated.
pub const MAX_REPEATS: usize = 100;

/// A direction in which a board is resized.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Along {
    /// Left to right.
    Width,
    /// Front to back.
    Depth,
    /// Bottom to top.
    Height,
}

/// A direction in which a part is moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Towards {
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// Toward the person.
    Front,
    /// Toward the wall.
    Back,
    /// Up.
    Up,
    /// Down.
    Down,
}

/// A change of a piece.
#[derive(Clone, Debug, PartialEq)]
pub enum Alteration {
    /// Removes a part.
    Remove {
        /// Its name.
        part: String,
    },
    /// Resizes a plain board in one direction; its middle stays.
    Resize {
        /// Its name.
        part: String,
        /// Along which direction.
        along: Along,
        /// Its new size.
        to: Length,
    },
    /// Moves a part.
    Move {
        /// Its name.
        part: String,
        /// In which direction.
        towards: Towards,
        /// How far.
        by: Length,
    },
    /// Repeats a part at even steps.
    Repeat {
        /// Its name.
        part: String,
        /// The total number, with the part itself.
        times: usize,
        /// In which direction.
        towards: Towards,
        /// The distance from one to the next.
        every: Length,
    },
    /// Deducts a hole from a surface.
    Hole {
        /// The name of the surface.
        surface: String,
        /// Its width.
        width: Length,
        /// Its height.
        height: Length,
    },
    /// Adds a part.
    Add(Added),
}
