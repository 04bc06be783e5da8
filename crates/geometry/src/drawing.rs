//! Drawings: what is seen of a piece from one side, with hidden parts removed by the geometry.
//!
//! The projection is parallel and true to scale, as in a working drawing. Each visible polygon is what is left
//! of a surface's projection when everything nearer to the eye is taken away.

use crate::region::{Point2, Region};
use crate::surface::{Surface, SurfaceId};
use crate::{Point3, SMALLEST_AREA, Vector3};

/// From where a piece is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum View {
    /// From the front.
    Front,
    /// From the right hand side; the front is at the left of the drawing.
    Side,
    /// From above; the front is at the foot of the drawing.
    Top,
    /// From the front, turned about the upright and tilted from above; angles in radians.
    Turned {
        /// How far to the right of the front the eye stands.
        turn: f64,
        /// How far above the piece the eye stands.
        tilt: f64,
    },
}

impl View {
    /// The directions to the right and up in the drawing, and towards the eye.
    fn axes(self) -> [Vector3; 3] {
        match self {
            View::Front => [Vector3::x(), Vector3::z(), -Vector3::y()],
            View::Side => [Vector3::y(), Vector3::z(), Vector3::x()],
            View::Top => [Vector3::x(), Vector3::y(), Vector3::z()],
            View::Turned { turn, tilt } => {
                let (sin_turn, cos_turn) = libm::sincos(turn);
                let (sin_tilt, cos_tilt) = libm::sincos(tilt);
                let right = Vector3::new(cos_turn, sin_turn, 0.0);
                let eye = Vector3::new(sin_turn * cos_tilt, -cos_turn * cos_tilt, sin_tilt);
                [right, eye.cross(&right), eye]
            }
        }
    }

    /// Where a point of the room stands in the drawing.
    pub fn project(self, point: &Point3) -> Point2 {
        let [right, up, _] = self.axes();
        [point.coords.dot(&right), point.coords.dot(&up)]
    }
}

/// The visible part of one surface.
#[derive(Clone, Debug, PartialEq)]
pub struct VisibleFace {
    /// The surface that is seen.
    pub surface: SurfaceId,
    /// What is seen of it, in the coordinates of the drawing: metres, y upwards.
    pub region: Region,
    /// How squarely the surface looks at the eye: 1 face on, near 0 edge on.
    pub squareness: f64,
}

/// A dimension line of a drawing, in the coordinates of the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension {
    /// The measurement that it shows.
    pub field: crate::FieldId,
    /// Where the measured length begins.
    pub from: Point2,
    /// Where it ends.
    pub to: Point2,
    /// Which way the dimension line is set off from the piece: a direction of length 1.
    pub away: Point2,
    /// In which row from the piece it stands; 1 is the nearest.
    pub row: u8,
}

/// A piece as seen from one side.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// What is seen, in the order of the surfaces.
    pub faces: Vec<VisibleFace>,
    /// Everything that is seen as one region: its contours are the outline of the piece.
    pub outline: Region,
}

impl Drawing {
    /// Draws surfaces as seen from one side.
    ///
    /// The surfaces must bound solids that do not run into each other, as [`crate::Assembly::surfaces`] gives
    /// them.
    pub fn of(surfaces: &[Surface], view: View) -> Self {
        let [right, up, eye] = view.axes();
        let seen: Vec<Projected> = surfaces
            .iter()
            .filter_map(|surface| Projected::new(surface, &right, &up, &eye))
            .collect();
        let faces: Vec<VisibleFace> = seen
            .iter()
            .filter_map(|face| {
                let nearer = seen
                    .iter()
                    .filter(|other| other.hides(face))
                    .map(|other| &other.region);
                let region = face.region.difference_of_all(nearer);
                (region.area() > SMALLEST_AREA).then_some(VisibleFace {
                    surface: face.id,
                    region,
                    squareness: face.squareness,
                })
            })
            .collect();
        let outline = Region::union_of_all(seen.iter().map(|face| &face.region));
        Drawing { faces, outline }
    }

    /// The smallest upright rectangle around the drawing: its lower left and upper right corner.
    pub fn bounds(&self) -> (Point2, Point2) {
        self.outline.bounds()
    }
}

/// A surface that looks at the eye, projected.
struct Projected {
    id: SurfaceId,
    region: Region,
    low: Point2,
    high: Point2,
    squareness: f64,
    /// The nearness of its plane to the eye at `(x, y)` of the drawing is `a x + b y + c`.
    nearness: [f64; 3],
}

impl Projected {
    fn new(surface: &Surface, right: &Vector3, up: &Vector3, eye: &Vector3) -> Option<Self> {
        let plane = &surface.plane;
        let normal = plane.normal();
        let squareness = normal.dot(eye);
        if squareness < 1e-6 {
            return None;
        }
        let region = surface.region.mapped(|point| {
            let point = plane.at(point).coords;
            [point.dot(right), point.dot(up)]
        });
        let (low, high) = region.bounds();
        // From normal . p = normal . origin with p = x right + y up + near eye.
        let nearness = [
            -normal.dot(right) / squareness,
            -normal.dot(up) / squareness,
            normal.dot(&plane.origin.coords) / squareness,
        ];
        Some(Projected {
            id: surface.id,
            region,
            low,
            high,
            squareness,
            nearness,
        })
    }

    fn near_at(&self, point: Point2) -> f64 {
        let [a, b, c] = self.nearness;
        a * point[0] + b * point[1] + c
    }

    /// Whether this face stands before the other where both are seen.
    ///
    /// Flat faces of solids that do not run into each other never change places within their common region,
    /// so the sum over its corners has the sign of the whole.
    fn hides(&self, other: &Projected) -> bool {
        let apart = (0..2).any(|i| self.low[i] >= other.high[i] || other.low[i] >= self.high[i]);
        if apart || std::ptr::eq(self, other) {
            return false;
        }
        let common = self.region.intersection(&other.region);
        if common.area() <= SMALLEST_AREA {
            return false;
        }
        let corners: Vec<f64> = common
            .contours()
            .flatten()
            .map(|&point| self.near_at(point) - other.near_at(point))
            .collect();
        corners.iter().sum::<f64>() / corners.len() as f64 > 1e-7
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Assembly, Part, PartId, PartKind};

    fn block(n: usize, low: [f64; 3], high: [f64; 3]) -> Part {
        Part::block(PartId::nth(PartKind::Board, n), low, high)
    }

    fn seen(parts: Vec<Part>, view: View) -> Drawing {
        Drawing::of(
            &Assembly {
                parts,
                spaces: vec![],
            }
            .surfaces(),
            view,
        )
    }

    #[test]
    fn a_block_shows_one_face_from_the_front_and_three_when_turned() {
        let parts = vec![block(1, [0.0; 3], [1.0, 0.5, 0.8])];
        assert_eq!(seen(parts.clone(), View::Front).faces.len(), 1);
        let turned = seen(parts, View::Turned { turn: 0.5, tilt: 0.4 });
        assert_eq!(turned.faces.len(), 3);
        let sum: f64 = turned.faces.iter().map(|f| f.region.area()).sum();
        assert!((sum - turned.outline.area()).abs() < 1e-7);
    }

    #[test]
    fn a_board_before_another_hides_what_lies_behind_it() {
        let parts = vec![
            block(1, [0.0; 3], [1.0, 0.1, 1.0]),
            block(2, [0.25, -0.3, 0.25], [0.75, -0.2, 0.75]),
        ];
        let front = seen(parts, View::Front);
        let areas: Vec<f64> = front.faces.iter().map(|f| f.region.area()).collect();
        assert!(
            (areas[0] - 0.75).abs() < 1e-7 && (areas[1] - 0.25).abs() < 1e-7,
            "{areas:?}"
        );
    }

    #[test]
    fn the_side_view_has_the_front_at_the_left() {
        let at = View::Side.project(&Point3::new(0.3, 0.1, 0.7));
        assert_eq!(at, [0.1, 0.7]);
    }
}
