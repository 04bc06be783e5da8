//! Journeys through the built page in a real browser.
//!
//! This library starts the browser and speaks for the maker's hands and eyes; each file in `tests/` is one
//! journey. `examples/` holds what `cargo xtask look` and `cargo xtask pace` run. What the page must show comes from outside: areas from the CAD kernel (`tests/cad`), volumes and
//! probabilities from a Monte Carlo with NumPy (`tests/outside/scripts/quantiles.py`, `scripts/nightstand.py`).
//!
//! Run them with `cargo xtask test --only journeys`.

mod axe;
mod expected;
mod journey;
mod page;
mod programs;
mod scenes;
mod session;
mod shown;
mod sight;
mod site;

pub use axe::Finding;
pub use expected::{Likely, Nightstand, invented_amounts, nightstand, outside_area};
pub use journey::{journey, journey_at, journey_in};
pub use page::Page;
pub use scenes::{SCENES, Scene};
pub use session::{Screen, Session, Text};
pub use shown::Shown;
pub use sight::{Light, Size};
pub use site::{Sent, Site};
