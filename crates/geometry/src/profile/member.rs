//! Straight pieces and quarters of ellipses: their lengths, moments, areas and points.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_4};

use super::arc::inner_points;
use crate::Point2;

/// Which way a quarter of an ellipse leaves its first end; it arrives at right angles to that.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum First {
    /// It leaves upward (or downward) and arrives level.
    Up,
    /// It leaves level and arrives upward (or downward).
    In,
}

/// One piece of a profile, from where the piece before it ended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Member {
    /// A straight piece.
    Straight {
        /// How far it goes toward the wood, meters; negative away from it.
        inward: f64,
        /// How far it goes up, meters; negative down.
        up: f64,
    },
    /// A quarter of an ellipse; a quarter circle if both moves are equal.
    Quarter {
        /// How far it goes toward the wood, meters; negative away from it.
        inward: f64,
        /// How far it goes up, meters; negative down.
        up: f64,
        /// Which way it leaves.
        first: First,
    },
}

impl Member {
    pub(super) fn moves(self) -> Point2 {
        match self {
            Member::Straight { inward, up } | Member::Quarter { inward, up, .. } => [inward, up],
        }
    }

    /// The same piece where the molding projects from the wood.
    ///
    /// The first direction changes too: what is hollow on a cut edge is hollow on a projecting crown.
    pub(super) fn outward(self) -> Self {
        match self {
            Member::Straight { inward, up } => Member::Straight { inward: -inward, up },
            Member::Quarter { inward, up, first } => Member::Quarter {
                inward: -inward,
                up,
                first: match first {
                    First::Up => First::In,
                    First::In => First::Up,
                },
            },
        }
    }

    /// A quarter without width or without height is a straight piece.
    pub(super) fn settled(self) -> Self {
        match self.moves() {
            [inward, up] if inward == 0.0 || up == 0.0 => Member::Straight { inward, up },
            _ => self,
        }
    }

    pub(super) fn length(self) -> f64 {
        match self {
            Member::Straight { inward, up } => libm::hypot(inward, up),
            Member::Quarter { inward, up, .. } => quarter_length(inward.abs(), up.abs()),
        }
    }

    /// The integral of *in* along the piece, if it begins at `from`.
    pub(super) fn moment(self, from: f64) -> f64 {
        match self {
            Member::Straight { inward, .. } => (from + inward / 2.0) * self.length(),
            Member::Quarter { inward, up, first } => {
                let about_centre = inward * quarter_moment(inward.abs(), up.abs());
                match first {
                    First::Up => (from + inward) * self.length() - about_centre,
                    First::In => from * self.length() + about_centre,
                }
            }
        }
    }

    /// The integral of *in* over *up*, if the piece begins at `from`.
    pub(super) fn area_within(self, from: f64) -> f64 {
        let [inward, up] = self.moves();
        let mean_share = match self {
            Member::Straight { .. } => 0.5,
            Member::Quarter { first: First::Up, .. } => 1.0 - FRAC_PI_4,
            Member::Quarter { first: First::In, .. } => FRAC_PI_4,
        };
        (from + inward * mean_share) * up
    }

    /// Adds the points of the piece between its ends, if it begins at (x, y).
    pub(super) fn append_inner(self, [x, y]: Point2, tolerance: f64, points: &mut Vec<Point2>) {
        let Member::Quarter { inward, up, first } = self else {
            return;
        };
        // The ellipse is a circle drawn out along its axes, so equal areas stay equal, and nothing strays further
        // than along the longer axis.
        let longest = inward.abs().max(up.abs());
        points.extend(
            inner_points(0.0, FRAC_PI_2, longest, tolerance).map(|[cos, sin]| match first {
                First::Up => [x + inward * (1.0 - cos), y + up * sin],
                First::In => [x + inward * sin, y + up * (1.0 - cos)],
            }),
        );
    }
}

/// The length of a quarter of an ellipse with these half axes, both above zero.
///
/// The complete elliptic integral of the second kind by the arithmetic-geometric mean (Abramowitz and Stegun,
/// Handbook of Mathematical Functions, 17.6): it needs only roots, so every target gives the same digits.
fn quarter_length(a: f64, b: f64) -> f64 {
    let (long, short) = (a.max(b), a.min(b));
    let (mut arithmetic, mut geometric) = (1.0, short / long);
    let mut weight = 0.5;
    let mut rest = 1.0 - weight * (1.0 - geometric * geometric);
    // The digits double with each turn; the first turns of a very flat ellipse only bring the means together.
    for _ in 0..16 {
        let half_gap = (arithmetic - geometric) / 2.0;
        (arithmetic, geometric) = ((arithmetic + geometric) / 2.0, (arithmetic * geometric).sqrt());
        weight *= 2.0;
        rest -= weight * half_gap * half_gap;
    }
    long * FRAC_PI_2 * rest / arithmetic
}

/// The first moment of a quarter of an ellipse about its axis along `b`, over `a`; both half axes above zero.
///
/// With u the sine of the parameter it is the integral of sqrt(b^2 + (a^2 - b^2) u^2) from 0 to 1. The inverse
/// sine that belongs to a < b is taken as an inverse tangent, which loses no digits where a is small.
fn quarter_moment(a: f64, b: f64) -> f64 {
    let difference = (a - b) * (a + b);
    let root = difference.abs().sqrt();
    let slope = root / b;
    let share = if root == 0.0 {
        1.0
    } else if difference > 0.0 {
        libm::asinh(slope) / slope
    } else {
        libm::atan2(root, a) / slope
    };
    (a + b * share) / 2.0
}

pub(super) fn plus(a: Point2, b: Point2) -> Point2 {
    [a[0] + b[0], a[1] + b[1]]
}
