//! Mixing: custom colours, chalk-type paint, thinning, and how truly a kitchen measures them.

mod chalk;
mod filler;
mod hobby;
mod measure;
mod recipe;
mod scale;
mod thin;

pub use chalk::{ChalkBatch, ChalkError, ChalkMix, Paint};
pub(crate) use filler::OIL_DENSITY;
pub use filler::{
    Binder, CALCIUM_CARBONATE, DUST, LATEX_CPVC, Latex, Powder, SHEENS, Sheen, WATER_DENSITY, cpvc,
};
pub use hobby::{CHALK_RECIPES, ChalkRecipe, NotThis, WHY_NOT, chalk_recipe};
pub use measure::{Jug, MEASURES, Measure, jug_limits, measure, powder_limits, powder_mass};
pub use recipe::{By, ByWeight, Component, Mend, Recipe, RecipeError};
pub use scale::Scale;
pub use thin::{THINNERS, ThinError, Thinned, Thinner, Thinning, TooThin, thinner};
