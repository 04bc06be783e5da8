//! Journeys through the built page in a real browser.
//!
//! This library starts the browser and speaks for the maker's hands and eyes; each file in `tests/` is one
//! journey. What the page must show comes from outside: areas from the CAD kernel (`tests/cad`), volumes and
//! probabilities from a Monte Carlo with NumPy (`tests/outside/scripts/quantiles.py`, `scripts/nightstand.py`).
//!
//! Run them with `cargo xtask test --only journeys`.

mod expected;
mod journey;
mod page;
mod programs;
mod shown;

pub use expected::{Likely, Nightstand, invented_amounts, nightstand, outside_area};
pub use journey::{Screen, journey};
pub use page::Page;
pub use shown::Shown;
