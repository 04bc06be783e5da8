//! Drawings: what is seen of a piece from one side, with hidden parts removed by the geometry.
//!
//! The projection is parallel and true to scale, as in a working drawing. What is seen of a surface is what is left
//! of its projection when everything nearer to the eye is taken away.
//!
//! The way of one drawing: [`sheet`] projects the facets that look at the eye on a grid of whole numbers; [`order`]
//! finds which facet stands before which; [`draughtsman`] takes away from each surface what stands before it, with
//! the polygon boolean in [`cut`]; [`lines`] finds what a pencil would draw.

mod cut;
mod draughtsman;
mod joints;
mod lines;
mod order;
mod sheet;
mod spans;
#[cfg(test)]
mod tests;
mod tree;

use crate::region::{Point2, Region};
use crate::surface::{Surface, SurfaceId};
use crate::{Facet, Point3, Vector3};

use draughtsman::Draughtsman;
use sheet::{Axes, seen};

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
    /// From anywhere: from the front, turned about the upright and tilted from above; any angles, in radians.
    Turned {
        /// How far to the right of the front the eye stands.
        turn: f64,
        /// How far above the piece the eye stands.
        tilt: f64,
    },
}

impl View {
    fn axes(self) -> Axes {
        let [right, up, eye] = match self {
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
        Axes { right, up, eye }
    }

    /// How far towards the eye a surface reaches, metres; only to be compared with that of another surface. Exact where
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

/// The visible part of one surface.
#[derive(Clone, Debug, PartialEq)]
pub struct VisibleFace {
    /// The surface that is seen.
    pub surface: SurfaceId,
    /// What is seen of it, in the coordinates of the drawing: metres, y upwards.
    pub region: Region,
    /// The lines to draw, each a row of points; a closed one ends where it begins. They are the edge of the region
    /// and, within it, where the surface folds sharply or hides part of itself, without the seams between the facets
    /// that stand in for a curve.
    pub lines: Vec<Vec<Point2>>,
    /// The region by how much light falls on it, piece by piece without overlap: one shade for a flat surface, for a
    /// folded or curved one as many as it takes, facets of like light being one.
    pub shades: Vec<Shade>,
}

/// What is seen of a surface at one angle to the eye.
#[derive(Clone, Debug, PartialEq)]
pub struct Shade {
    /// The part of the visible region, in the coordinates of the drawing.
    pub region: Region,
    /// How squarely it looks at the eye: 1 face on, near 0 edge on.
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
    /// The surfaces bound solids, as [`crate::Assembly::surfaces`] gives them. Where two solids run into each other,
    /// what is seen is what is nearer to the eye, as anywhere else.
    pub fn of(surfaces: &[Surface], view: View) -> Self {
        let axes = view.axes();
        match seen(surfaces, &axes) {
            Some((grid, seen)) => Draughtsman::new(surfaces, &axes, &grid, &seen).drawing(),
            None => Drawing {
                faces: vec![],
                outline: Region::EMPTY,
            },
        }
    }

    /// The smallest upright rectangle around the drawing: its lower left and upper right corner.
    pub fn bounds(&self) -> (Point2, Point2) {
        self.outline.bounds()
    }
}
