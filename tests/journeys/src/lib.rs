//! Journeys through the built page in a real browser.
//!
//! This library starts the browser and speaks for the maker's hands and eyes; each file in `tests/` is one
//! journey. `examples/` holds what `cargo xtask look` and `cargo xtask pace` run. What the page must show comes from
//! outside: areas from the CAD kernel (`tests/cad`), volumes and probabilities from a Monte Carlo with NumPy
//! (`tests/outside/scripts/quantiles.py`, `scripts/nightstand.py`). Where there is none, the crates work it out in the
//! program of the journey, and `tests/outside` holds them against outside sources.
//!
//! Run them with `cargo xtask test --only journeys`.

mod axe;
mod downloads;
mod expected;
mod focus;
mod hands;
mod journey;
mod page;
mod pixels;
mod programs;
mod records;
mod scenes;
mod session;
mod shown;
mod sight;
mod site;
mod way;
mod worked_out;

pub use axe::Finding;
pub use expected::{
    DRESSER_DETAILS, Likely, NIGHTSTAND, Nightstand, cad_piece, dresser_amounts, invented_amounts,
    nightstand, outside_area,
};
pub use focus::Spoken;
pub use journey::{journey, journey_at, journey_elsewhere, journey_in};
pub use page::Page;
pub use pixels::Pixels;
pub use records::Records;
pub use scenes::{SCENES, Scene};
pub use session::{Screen, Session, Text};
pub use shown::Shown;
pub use sight::{Light, Size};
pub use site::{Sent, Site};
pub use way::{Hand, readings, way_to};
pub use worked_out::worked_out;
