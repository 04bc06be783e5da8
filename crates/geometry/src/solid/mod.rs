//! Solids that parts are made of, other than plain blocks: what the shop makes with a saw, a lathe or a cutter.

mod lathe;
mod prism;
mod slab;
mod tapered;

pub use lathe::Turning;
pub(crate) use lathe::splayed_cone;
pub(crate) use prism::{Cut, Prism, Run};
pub(crate) use slab::{Faces, Worked, slab};
pub(crate) use tapered::{Plan, RaisedPanel, frustum, raised_panel};

/// How far a chord that is drawn may lie from its curve: a twentieth of a millimetre, less than a pencil line.
pub(crate) const CHORD: f64 = 5e-5;
