//! Drawings: what is seen of a piece from one side, with hidden parts removed by the geometry.
//!
//! The projection is parallel and true to scale, as in a working drawing. What is seen of a surface is what is left
//! of its projection when everything nearer to the eye is taken away.
//!
//! The way of one drawing: [`sheet`] projects the facets that look at the eye on a grid of whole numbers; [`order`]
//! finds which facet stands before which; [`draughtsman`] takes away from each surface what stands before it, with
//! the polygon boolean in [`cut`]; [`lines`] finds what a pencil would draw.

#![allow(
    clippy::indexing_slicing,
    reason = "hot loops over places that it finds itself"
)]

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
mod view;
mod visible;

pub use view::View;
pub use visible::{Drawing, Shade, VisibleFace};

use crate::region::{Point2, Region};
use crate::surface::Surface;

use draughtsman::Draughtsman;
use sheet::seen;

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
