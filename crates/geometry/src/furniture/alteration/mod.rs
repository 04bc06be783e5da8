//! Changes: what a maker alters on a piece after it was built from its measurements.
//!
//! A piece is opened into its parts: parts go, boards grow, parts move or repeat, parts of one's own come in, holes
//! are deducted. Changes are applied in order, each to what the ones before have left.

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
