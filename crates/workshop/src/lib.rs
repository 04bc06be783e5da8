//! The workshop: the maker's document, and everything derived from it.
//!
//! [`Workshop`] is the document, and only [`Workshop::apply`] changes it. [`takeoff`] calculates the surfaces
//! and materials of a piece. [`format`] reads and writes the save file. [`out`] creates exports.
//!
//! Invariant: this crate has no browser, no clock and no randomness. They are passed in as arguments where
//! needed.

mod analysis;
pub mod art;
pub mod book;
pub mod days;
mod demo;
mod document;
mod edit;
pub mod format;
pub mod goods;
mod hours;
pub mod learning;
pub mod market;
mod meant;
pub mod mixing;
pub mod money;
pub mod out;
mod palette;
pub mod preparing;
mod prices;
pub mod records;
pub mod results;
#[cfg(test)]
mod samples;
pub mod shelf;
mod status;
mod stock;
pub mod stores;
mod takeoff;
mod tape;
mod tool_choice;
pub mod weighing;
mod work;

pub use analysis::{Analysis, reads};
pub use demo::invented_workshop;
pub use document::{
    Bay, ChangeKind, Colour, Confidence, Currency, CurrencyError, EntryId, LABEL_FIELDS, LabelError,
    LabelField, LabelReading, LayerPlan, OwnMaterial, Piece, PieceChange, PieceId, Price, Reading, Row,
    Scheme, Settings, SurfaceChoice, Workshop, ZoneChoice, as_far_as_it_fits, label_field, material_of,
};
pub use edit::{
    Along, BookEdit, BrushTo, Case, Edit, EditError, HaveEdit, MaterialEdit, PieceEdit, SchemeEdit,
    SettingEdit, Sign,
};
pub use hours::read_hours;
pub use palette::palette;
pub use status::{Status, left_out};
pub use takeoff::{
    Buy, ComparedAt, MaterialLine, Notice, Shopping, SurfaceLine, Takeoff, WayCoat, WayColumn, WayFigure,
    WayWhole, ZoneLine, about_as_soon, are_finished, basket_key, compare, edges_by_zone, main_ways,
    side_faces, surfaces, switched, takeoff, touched_faces, unmeasured,
};
pub use tape::standard_uncertainty;
