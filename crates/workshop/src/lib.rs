//! The workshop: the document that a maker keeps, and everything that follows from it.
//!
//! [`Workshop`] is the document. [`Workshop::apply`] is the only way in which it changes. [`takeoff`] works out
//! surfaces and materials of a piece; [`format`] reads and writes the save file.
//!
//! Invariant: this crate has no browser, no clock and no randomness; what it needs of them comes in as an
//! argument.

mod demo;
mod document;
mod edit;
pub mod format;
mod takeoff;
mod tape;

pub use demo::invented_workshop;
pub use document::{
    Bay, ChangeKind, Colour, Piece, PieceChange, PieceId, Reading, Row, Scheme, StageCoats, SurfaceChoice,
    Workshop, ZoneChoice,
};
pub use edit::{Edit, EditError, PieceEdit};
pub use takeoff::{
    MaterialLine, SurfaceLine, Takeoff, ToolColumn, ToolFigure, WANTED_CONFIDENCE, ZoneLine, edges, takeoff,
    unmeasured,
};
pub use tape::standard_uncertainty;
