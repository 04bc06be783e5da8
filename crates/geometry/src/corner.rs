//! Points on an integer grid, and the vectors between them.

use std::ops::Sub;

/// A corner on a grid. The corners of one drawing are less than 2^30 steps apart, so that products of their distances
/// are exact.
///
/// They sort from left to right, then from bottom to top.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Corner {
    pub(crate) x: i32,
    pub(crate) y: i32,
}

/// The vector from one corner to another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Offset {
    pub(crate) x: i64,
    pub(crate) y: i64,
}

impl Corner {
    pub(crate) const fn new(x: i32, y: i32) -> Self {
        Corner { x, y }
    }
}

impl Sub for Corner {
    type Output = Offset;

    fn sub(self, from: Corner) -> Offset {
        Offset {
            x: i64::from(self.x) - i64::from(from.x),
            y: i64::from(self.y) - i64::from(from.y),
        }
    }
}

impl Offset {
    /// The cross product: twice the signed area of the triangle between two vectors, positive if the other one is to
    /// the left.
    pub(crate) fn cross(self, other: Offset) -> i64 {
        self.x * other.y - self.y * other.x
    }

    /// The dot product.
    pub(crate) fn dot(self, other: Offset) -> i64 {
        self.x * other.x + self.y * other.y
    }
}
