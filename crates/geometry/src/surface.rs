//! Surfaces: what a finisher can paint, each with the working behind its area.

use std::fmt;

use units::Area;

use crate::face::{Plane, Side};
use crate::part::PartId;
use crate::region::Region;
use crate::space::Sense;

/// The name of a surface. It holds no dimension, so it stays when the piece is measured again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct SurfaceId {
    /// The part it belongs to.
    pub part: PartId,
    /// Which way the face looks.
    pub side: Side,
    /// What the surface looks at.
    pub sense: Sense,
}

impl fmt::Display for SurfaceId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}", self.part, self.side.word())?;
        match self.sense {
            Sense::Outside => Ok(()),
            other => write!(f, "/{}", other.key()),
        }
    }
}

/// What covers a surface, and how much of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Deduction {
    /// The part that lies against the surface.
    pub by: PartId,
    /// How much it covers.
    pub area: Area,
}

/// A surface with its working: gross area, less each deduction, is the net area.
#[derive(Clone, Debug, PartialEq)]
pub struct Surface {
    /// Its name.
    pub id: SurfaceId,
    /// Whether it is an edge of a board rather than one of its faces.
    pub is_edge: bool,
    /// Where it lies.
    pub plane: Plane,
    /// Its outline before deductions, in the coordinates of the plane.
    pub region: Region,
    /// The area of the outline.
    pub gross: Area,
    /// What lies against it.
    pub deductions: Vec<Deduction>,
    /// What is left to paint; zero if it is wholly covered.
    pub net: Area,
}

impl Surface {
    /// What a maker calls the surface within its part: `front face`, `top edge`, `underside`.
    pub fn side_label(&self) -> String {
        let kind = if self.is_edge { "edge" } else { "face" };
        let place = match (self.id.side, self.is_edge) {
            (Side::Bottom, false) => "underside".into(),
            (side, _) => format!("{} {kind}", side.word()),
        };
        match self.id.sense {
            Sense::Outside => place,
            Sense::Inside => format!("{place}, inside the case"),
            Sense::Wall => format!("{place}, to the wall"),
            Sense::Floor => format!("{place}, on the floor"),
            Sense::Underneath => format!("{place}, underneath"),
        }
    }
}
