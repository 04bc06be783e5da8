//! Coatings: how much of each material an area takes, with which tool, how sure that is, which cans that is, and how
//! it is mixed.
//!
//! The rules of the trade stand each in one place. [`film`] holds the formulas between spreading rate, wet film and dry
//! film. [`Material`], [`Tool`] and [`Substrate`] hold the figures with their sources; a maker's [`Label`] takes their place.
//! A [`Job`] says what goes where; [`demands`] makes of it a [`Demand`] for each material, with its [`Samples`], and
//! [`workings`] shows how. [`Enough`] and [`can::choose`] answer for cans, [`mix`] for the
//! mixing bench, [`suggest`](suggest::suggest) for what a piece asks for.
//!
//! Invariant: this crate knows areas, films, volumes and masses. It knows nothing of furniture, documents or browsers.

mod area;
mod basis;
pub mod can;
mod cause;
mod compare;
mod demand;
mod distribution;
mod draw_cache;
mod dry_film;
mod enough;
mod estimate;
#[cfg(test)]
mod examples;
pub mod film;
mod job;
pub mod label;
pub mod learn;
mod material;
mod minutes;
pub mod mix;
mod model;
mod normal;
mod propagate;
mod samples;
mod sourced_range;
mod species;
mod substrate;
pub mod suggest;
mod tool;
mod trials;
pub mod unit;
mod working;
mod workings;

pub use area::Patch;
pub use basis::Basis;
pub use can::{CanSize, Contents, can, can_sizes};
pub use cause::{Cause, in_sentence};
pub use compare::Way;
pub use demand::{Contribution, Demand, Place, Share, TRIALS, best_estimates, by_tools, demands, together};
pub use distribution::Distribution;
pub use dry_film::DryFilm;
pub use enough::{Enough, Leftover, Verdict, enough_with, extra_needed, extra_needed_to_keep};
pub use estimate::Estimate;
pub use job::{Job, Layer, OwnRate, Rgb, ZoneWork};
pub use label::Label;
pub use material::{FilmClass, Material, Stage, Thinner, material, materials};
pub use minutes::minutes;
pub use propagate::{Input, Linear, draw, linear, monte_carlo};
pub use samples::Samples;
pub use sourced_range::{Provenance, SourcedRange};
pub use species::{Bleed, LatexClass, Pores, SPECIES, Species, Stated, species};
pub use substrate::Substrate;
pub use suggest::{Condition, Reason, Wish, suggest};
pub use tool::{Retention, TOOLS, Tool, ToolKind, tool};
pub use trials::Trials;
pub use working::{Measure, Quantity, Working};
pub use workings::{DemandWorking, LayerWorking, workings};
