//! Solids that parts are made of, other than plain blocks: what the shop makes with a saw, a lathe or a cutter.

mod chord;
mod lathe;
mod prism;
mod slab;
mod tapered;

pub(crate) use chord::CHORD;
pub use lathe::Turning;
pub(crate) use lathe::splayed_cone;
pub(crate) use prism::{Cut, Prism, Run};
pub(crate) use slab::{Faces, Worked, slab};
pub(crate) use tapered::{Plan, RaisedPanel, frustum, raised_panel};
