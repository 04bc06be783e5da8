//! Changes: what a maker alters on a piece that was built from its measurements.
//!
//! Parts are removed, resized, moved, repeated or added, and holes are deducted. Changes are applied in order, each to
//! the result of the ones before.

mod added;
mod apply;
mod build;
mod kinds;
mod limits;
#[cfg(test)]
mod tests;

pub use added::{Added, AddedShape, MAX_STEPS};
pub(super) use apply::applied;
pub use kinds::{Along, Alteration, MAX_CHANGES, MAX_REPEATS, Towards};
