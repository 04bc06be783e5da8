//! Drawings: what is seen of a piece from one side, with hidden parts removed by the geometry.
//!
//! The projection is parallel and to scale, as in a working drawing. The visible part of a surface is its projection
//! less everything nearer to the eye.
//!
//! [`sheet`] projects the front-facing facets onto an integer grid; [`order`] finds which facet is in front of which;
//! [`visibility`] subtracts from each surface what is in front of it, with the polygon boolean in [`cut`]; [`lines`]
//! finds the lines to draw.

#![allow(
    clippy::indexing_slicing,
    reason = "hot loops over places that it finds itself"
)]

mod cut;
mod joints;
mod lines;
mod order;
mod sheet;
mod spans;
#[cfg(test)]
mod tests;
mod tree;
mod view;
mod visibility;
mod visible;

pub use view::View;
pub use visible::{Drawing, Shade, VisibleFace};

use crate::region::{Point2, Region};
use crate::surface::Surface;

use sheet::projected;
use visibility::Visibility;

impl Drawing {
    /// Draws surfaces as seen from one side.
    ///
    /// The surfaces bound solids, as [`crate::Assembly::surfaces`] gives them. Where two solids intersect, whatever is
    /// nearer to the eye is visible, as everywhere else.
    pub fn of(surfaces: &[Surface], view: View) -> Self {
        let axes = view.axes();
        match projected(surfaces, &axes) {
            Some((grid, projected)) => Visibility::new(surfaces, &axes, &grid, &projected).drawing(),
            None => Drawing {
                faces: vec![],
                outline: Region::EMPTY,
            },
        }
    }

    /// The bounding box of the drawing: its lower left and upper right corner.
    pub fn bounds(&self) -> (Point2, Point2) {
        self.outline.bounds()
    }
}
