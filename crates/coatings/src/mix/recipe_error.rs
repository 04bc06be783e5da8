//! Errors of recipes, batches and scales, in words.

use std::fmt;

use units::Mass;

use super::component::{By, MOST_COMPONENTS};

/// Why a recipe or a batch of it is invalid.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum RecipeError {
    /// There is no component.
    Empty,
    /// More than 40 components.
    TooMany,
    /// The share of this component, counted from 0, is not positive.
    Share(usize),
    /// The amount of a batch is negative or not a number.
    Amount,
    /// As many figures are needed as there are components.
    Count {
        /// How many there are.
        components: usize,
        /// How many were given.
        given: usize,
    },
    /// The recipe is by the other measure.
    By(By),
    /// A batch cannot shrink.
    MoreThanWanted {
        /// What is there.
        rest: Mass,
        /// What was wanted.
        wanted: Mass,
    },
    /// The density of this component, counted from 0, is not positive.
    Density(usize),
    /// The density of this component, counted from 0, is wanted and not known.
    NoDensity(usize),
    /// The step of a scale is not positive, is far too fine, or its accuracy is not a share.
    Scale,
}

impl fmt::Display for RecipeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            RecipeError::Empty => write!(f, "The recipe is empty. Write at least one component."),
            RecipeError::TooMany => write!(
                f,
                "The recipe has more than {MOST_COMPONENTS} components. Mix some of them first."
            ),
            RecipeError::Share(place) => write!(
                f,
                "Component {}: its share must be above 0. Write its parts, or take it out.",
                place + 1
            ),
            RecipeError::Amount => write!(f, "The amount is not an amount. Write 0 or more."),
            RecipeError::Count { components, given } => write!(
                f,
                "The recipe has {components} components, but {given} figures were given. Write one for each."
            ),
            RecipeError::By(By::Weight) => write!(
                f,
                "The recipe is by weight. Weigh the batch, or write the recipe by volume."
            ),
            RecipeError::By(By::Volume) => write!(
                f,
                "The recipe is by volume. Write the density of each component to weigh it."
            ),
            RecipeError::MoreThanWanted { rest, wanted } => write!(
                f,
                "There are {:.0} g already, more than the {:.0} g wanted. Nothing needs to be added.",
                rest.as_grams(),
                wanted.as_grams()
            ),
            RecipeError::Density(place) => write!(
                f,
                "Component {}: its density must be above 0. Write it in kg/L.",
                place + 1
            ),
            RecipeError::NoDensity(place) => write!(
                f,
                "Component {} has no density. Write it in kg/L, or ask for a batch by weight.",
                place + 1
            ),
            RecipeError::Scale => write!(
                f,
                "The scale cannot be so. Write its step in grams, as 1 or 0.1, and its accuracy in per cent."
            ),
        }
    }
}

impl std::error::Error for RecipeError {}
