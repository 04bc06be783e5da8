//! Corners on a grid of whole numbers, and the ways between them.

use std::ops::Sub;

/// A corner on a grid. Corners of one picture lie less than 2^30 steps apart, so that products of their distances are
/// exact.
///
/// They sort from left to right, and upwards where one is above the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Corner {
    pub(crate) x: i32,
    pub(crate) y: i32,
}

/// The way from one corner to another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Way {
    pub(crate) x: i64,
    pub(crate) y: i64,
}

impl Corner {
    pub(crate) const fn new(x: i32, y: i32) -> Self {
        Corner { x, y }
    }
}

impl Sub for Corner {
    type Output = Way;

    fn sub(self, from: Corner) -> Way {
        Way {
            x: i64::from(self.x) - i64::from(from.x),
            y: i64::from(self.y) - i64::from(from.y),
        }
    }
}

impl Way {
    /// Twice the area of the triangle that two ways from one corner span; positive if the other way is to the left.
    pub(crate) fn cross(self, other: Way) -> i64 {
        self.x * other.y - self.y * other.x
    }

    /// The product of the lengths, as far as the ways go the same way.
    pub(crate) fn dot(self, other: Way) -> i64 {
        self.x * other.x + self.y * other.y
    }
}
