//! The components of a recipe, and what their shares are shares of.

/// The most components of a recipe.
pub(super) const MOST_COMPONENTS: usize = 40;

/// What the shares of a recipe are shares of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum By {
    /// Of the weight. Such a recipe can be mixed again to the same shade.
    Weight,
    /// Of the volume, as poured.
    Volume,
}

/// One paint, tint or addition of a recipe.
#[derive(Clone, Debug, PartialEq)]
pub struct Component {
    /// The maker's name for it.
    pub name: String,
    /// How many parts of it; positive.
    pub share: f64,
}
