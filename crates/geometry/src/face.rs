//! Faces of solids: a flat region in a plane in the room.

use crate::region::{Point2, Region};
use crate::{Point3, Vector3};

/// Which way a face of a part looks, as one stands before the piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Side {
    /// Towards the person.
    Front,
    /// Towards the wall.
    Back,
    /// To the left hand.
    Left,
    /// To the right hand.
    Right,
    /// Up.
    Top,
    /// Down.
    Bottom,
}

impl Side {
    /// The word for it, as used in identities and labels.
    pub fn word(self) -> &'static str {
        match self {
            Side::Front => "front",
            Side::Back => "back",
            Side::Left => "left",
            Side::Right => "right",
            Side::Top => "top",
            Side::Bottom => "bottom",
        }
    }
}

/// A plane in the room with two directions at right angles in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Plane {
    /// The point `(0, 0)` of the plane.
    pub origin: Point3,
    /// The direction of the first coordinate, of length 1.
    pub u: Vector3,
    /// The direction of the second coordinate, of length 1, at right angles to `u`.
    pub v: Vector3,
}

impl Plane {
    /// The direction in which the face looks: out of the solid.
    pub fn normal(&self) -> Vector3 {
        self.u.cross(&self.v)
    }

    /// The point of the room at a point of the plane.
    pub fn at(&self, point: Point2) -> Point3 {
        self.origin + self.u * point[0] + self.v * point[1]
    }

    /// The point of the plane below or above a point of the room.
    pub fn project(&self, point: &Point3) -> Point2 {
        let from_origin = point - self.origin;
        [from_origin.dot(&self.u), from_origin.dot(&self.v)]
    }

    /// How far a point of the room lies in front of the plane.
    pub fn height_of(&self, point: &Point3) -> f64 {
        (point - self.origin).dot(&self.normal())
    }
}

/// One flat face of a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Face {
    /// Which way it looks.
    pub side: Side,
    /// Where it lies.
    pub plane: Plane,
    /// Its outline and holes, in the coordinates of the plane.
    pub region: Region,
    /// Whether it is a narrow face: an edge of a board rather than one of its faces.
    pub is_edge: bool,
}

impl Face {
    /// The smallest upright block around the face: its lowest and its highest corner.
    pub(crate) fn bounds(&self) -> ([f64; 3], [f64; 3]) {
        let mut low = [f64::INFINITY; 3];
        let mut high = [f64::NEG_INFINITY; 3];
        for &corner in self.region.contours().flatten() {
            let point = self.plane.at(corner);
            for axis in 0..3 {
                low[axis] = low[axis].min(point[axis]);
                high[axis] = high[axis].max(point[axis]);
            }
        }
        (low, high)
    }
}
