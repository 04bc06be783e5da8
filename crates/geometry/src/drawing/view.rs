//! From where a piece is looked at, and how points fall on the drawing.

use crate::face::Facet;
use crate::region::Point2;
use crate::surface::Surface;
use crate::{Point3, Vector3};

/// From where a piece is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum View {
    /// From the front.
    Front,
    /// From the right hand side; the front is at the left of the drawing.
    Side,
    /// From the left hand side; the front is at the right of the drawing.
    Left,
    /// From above; the front is at the foot of the drawing.
    Top,
    /// Cabinet projection: the front is true to scale, and the depth recedes up and to the right at 30 degrees and half
    /// scale. It shows the front, the top and the right hand side.
    Cabinet,
    /// From anywhere: from the front, turned about the upright and tilted from above; any angles, in radians.
    Turned {
        /// How far to the right of the front the eye stands.
        turn: f64,
        /// How far above the piece the eye stands.
        tilt: f64,
    },
}

/// How far one meter of depth recedes to the right and up in a cabinet projection: half a meter at 30 degrees.
const RECEDING: [f64; 2] = [0.433_012_701_892_219_3, 0.25];

impl View {
    pub(super) fn axes(self) -> Axes {
        let [right, up, eye] = match self {
            View::Cabinet => return Axes::cabinet(),
            View::Front => [Vector3::x(), Vector3::z(), -Vector3::y()],
            View::Side => [Vector3::y(), Vector3::z(), Vector3::x()],
            View::Left => [-Vector3::y(), Vector3::z(), -Vector3::x()],
            View::Top => [Vector3::x(), Vector3::y(), Vector3::z()],
            View::Turned { turn, tilt } => {
                let (sin_turn, cos_turn) = libm::sincos(turn);
                let (sin_tilt, cos_tilt) = libm::sincos(tilt);
                let right = Vector3::new(cos_turn, sin_turn, 0.0);
                let eye = Vector3::new(sin_turn * cos_tilt, -cos_turn * cos_tilt, sin_tilt);
                [right, eye.cross(&right), eye]
            }
        };
        Axes {
            right,
            up,
            eye,
            across: right,
            upward: up,
        }
    }

    /// How far toward the eye a surface reaches, meters; only to be compared with that of another surface. Exact where
    /// the eye looks along an axis, otherwise that of a block around the surface.
    pub fn nearness(self, surface: &Surface) -> f64 {
        let eye = self.axes().eye;
        let of_facet = |facet: &Facet| {
            let (low, high) = facet.bounds();
            let towards = |axis: usize| (low[axis] * eye[axis]).max(high[axis] * eye[axis]);
            (0..3).map(towards).sum::<f64>()
        };
        surface
            .facets
            .iter()
            .map(of_facet)
            .fold(f64::NEG_INFINITY, f64::max)
    }

    /// Where a point of the room stands in the drawing.
    pub fn project(self, point: &Point3) -> Point2 {
        let Axes { right, up, .. } = self.axes();
        [point.coords.dot(&right), point.coords.dot(&up)]
    }
}

/// The directions of a parallel projection.
pub(super) struct Axes {
    /// A point `p` is drawn at `(p . right, p . up)`.
    pub(super) right: Vector3,
    pub(super) up: Vector3,
    /// The unit direction toward the eye: points along it are drawn at the same place.
    pub(super) eye: Vector3,
    /// A vector that is drawn as one meter to the right. It differs from `right` where the projection is oblique.
    pub(super) across: Vector3,
    /// A vector that is drawn as one meter up.
    pub(super) upward: Vector3,
}

impl Axes {
    fn cabinet() -> Axes {
        let [right, up] = RECEDING;
        Axes {
            right: Vector3::new(1.0, right, 0.0),
            up: Vector3::new(0.0, up, 1.0),
            eye: Vector3::new(right, -1.0, up).normalize(),
            across: Vector3::x(),
            upward: Vector3::z(),
        }
    }
}
