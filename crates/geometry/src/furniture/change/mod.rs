//! Changes: what a maker alters on a piece after it was built from its measurements.
//!
//! A piece is opened into its parts: parts go, boards grow, parts move or repeat, parts of one's own come in, holes
//! are deducted. Changes are applied in order, each to what the ones before have left.

mod added;
mod altered;
mod apply;
mod build;
mod limits;
#[cfg(test)]
mod tests;

pub use added::{Added, AddedShape, MAX_STEPS};
pub use altered::{Along, Change, MAX_CHANGES, MAX_REPEATS, Towards};
pub(super) use apply::applied;
