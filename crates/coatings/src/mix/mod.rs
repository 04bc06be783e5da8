//! Mixing: custom colors, chalk-type paint, thinning, and the accuracy of kitchen measures.

mod batch;
mod chalk;
mod component;
mod filler;
mod hobby;
mod measure;
mod pour;
mod recipe;
mod recipe_error;
mod scale;
mod tag;
mod thin;
mod top_up;

pub use batch::{Batch, Wanted};
pub use chalk::{ChalkBatch, ChalkError, ChalkMix, Paint};
pub use component::{By, Component};
pub use filler::{
    Binder, CALCIUM_CARBONATE, DUST, LATEX_CPVC, Latex, Powder, SHEENS, Sheen, WATER_DENSITY, cpvc,
};
pub use hobby::{CHALK_RECIPES, ChalkRecipe, NotThis, WHY_NOT, chalk_recipe};
pub use measure::{Jug, MEASURES, Measure, jug_limits, measure, powder_limits};
pub use pour::{Bench, Order, Step, Tare, TooSmall, pour};
pub use recipe::Recipe;
pub use recipe_error::RecipeError;
pub use scale::Scale;
pub use tag::{LABELS_HOLD, Tag};
pub use thin::{THINNERS, ThinError, Thinned, Thinner, Thinning, TooThin, thinner};
