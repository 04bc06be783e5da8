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
            RecipeError::Empty => write!(f, "Add at least one part."),
            RecipeError::TooMany => write!(f, "Use at most {MOST_COMPONENTS} parts. Mix some of them first."),
            RecipeError::Share(place) => {
                write!(f, "Part {}: enter an amount above 0, or delete it.", place + 1)
            }
            RecipeError::Amount => write!(f, "Enter an amount of 0 or more."),
            RecipeError::Count { components, given } => write!(
                f,
                "Enter one number per part. There are {components} parts and {given} numbers."
            ),
            RecipeError::By(By::Weight) => write!(
                f,
                "Weigh the batch, or enter the recipe by volume. It is by weight now."
            ),
            RecipeError::By(By::Volume) => write!(
                f,
                "Enter each part's density to weigh it. The recipe is by volume."
            ),
            RecipeError::MoreThanWanted { rest, wanted } => write!(
                f,
                "You have {:.0} g already; you want {:.0} g. Add nothing.",
                rest.as_grams(),
                wanted.as_grams()
            ),
            RecipeError::Density(place) => write!(f, "Part {}: enter a density above 0, in kg/L.", place + 1),
            RecipeError::NoDensity(place) => write!(
                f,
                "Part {}: enter its density in kg/L, or mix by weight.",
                place + 1
            ),
            RecipeError::Scale => write!(
                f,
                "Enter the scale's step in grams, like 1 or 0.1, and its accuracy in percent."
            ),
        }
    }
}

impl std::error::Error for RecipeError {}
