//! Coatings: how much of each material an area takes, with which tool, how sure that is, and whether a can
//! is enough.
//!
//! The rules of the trade stand each in one place: [`film`] holds the formulas between spreading rate, wet
//! film and dry film; [`Material`] and [`Tool`] hold the figures with their sources; [`Application`] puts
//! them together into an [`Amount`]; [`Spread`] is the distribution that every amount is.
//!
//! Invariant: this crate knows areas, films and volumes. It knows nothing of furniture, documents or browsers.

mod amount;
mod can;
mod compare;
mod distribution;
mod figure;
pub mod film;
mod material;
mod tool;

pub use amount::{Amount, Application, AreaEstimate, Basis, DryFilm, Ground, Share, TRIALS};
pub use can::{CanSize, Enough, Verdict, can, can_sizes};
pub use compare::coats_to_match;
pub use distribution::{Distribution, Spread, propagate};
pub use figure::{Certainty, Figure};
pub use material::{MATERIALS, Material, Stage, material};
pub use tool::{Keeps, TOOLS, Tool, tool};
