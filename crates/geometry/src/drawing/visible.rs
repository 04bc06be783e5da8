//! What a drawing shows.

use crate::region::{Point2, Region};
use crate::surface::SurfaceId;

/// The visible part of one surface.
#[derive(Clone, Debug, PartialEq)]
pub struct VisibleFace {
    /// The surface that is seen.
    pub surface: SurfaceId,
    /// What is seen of it, in the coordinates of the drawing: meters, y upward.
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

/// A piece as seen from one side.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// What is seen, in the order of the surfaces.
    pub faces: Vec<VisibleFace>,
    /// Everything that is seen as one region: its contours are the outline of the piece.
    pub outline: Region,
}
