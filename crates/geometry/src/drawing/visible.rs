//! What a drawing shows.

use crate::region::{Point2, Region};
use crate::surface::SurfaceId;

/// The visible part of one surface.
#[derive(Clone, Debug, PartialEq)]
pub struct VisibleFace {
    /// The surface.
    pub surface: SurfaceId,
    /// Its visible part, in the coordinates of the drawing: meters, y up.
    pub region: Region,
    /// The lines to draw, each a list of points; a closed one ends where it begins. They are the edge of the region
    /// and, within it, sharp folds and edges where the surface hides part of itself, without the seams between the
    /// facets that approximate a curve.
    pub lines: Vec<Vec<Point2>>,
    /// The region by how much light falls on it, without overlap: one shade for a flat surface; for a folded or curved
    /// one as many as needed, with facets of similar light merged.
    pub shades: Vec<Shade>,
}

/// The visible part of a surface at one angle to the eye.
#[derive(Clone, Debug, PartialEq)]
pub struct Shade {
    /// The part of the visible region, in the coordinates of the drawing.
    pub region: Region,
    /// The component of the normal toward the eye: 1 face on, near 0 edge on.
    pub squareness: f64,
}

/// A piece as seen from one side.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// The visible faces, in the order of the surfaces.
    pub faces: Vec<VisibleFace>,
    /// Everything visible as one region; its contours are the outline of the piece.
    pub outline: Region,
}
