//! Edits: every change that a maker can make, and the one function that applies it.

mod alike;
mod books;
mod brush;
mod changes;
mod division;
mod gather;
mod have;
mod hours;
mod materials;
mod piece;
mod scheme;
mod settings;
mod ticks;
mod workshop;
mod zones;

use std::fmt;
use std::rc::Rc;

use coatings::Rgb;
use geometry::{AddedShape, BayPlace, FieldId, Fill, Kind};
use units::System;

pub use books::BookEdit;
pub use brush::BrushTo;
pub(crate) use changes::MAX_FLUTES;
pub use gather::Along;
pub use have::HaveEdit;
pub(crate) use materials::MAX_MATERIALS;
pub use materials::MaterialEdit;
pub(crate) use scheme::{MAX_COATS, MAX_LAYERS, MAX_THINNED};
pub use scheme::{SchemeEdit, Sign};
pub use settings::SettingEdit;
pub(crate) use zones::{MAX_ZONES, may_be_key};

use crate::book::ValueError;
use crate::document::{ChangeKind, PieceChange, PieceId, Reading, Workshop};

/// The most pieces in a set.
pub(crate) const MAX_COUNT: u32 = 99;
/// The maximum length of a name or title, in characters.
pub(crate) const MAX_NAME: usize = 120;
/// The most pieces in a workshop.
pub(crate) const MAX_PIECES: usize = 5000;

/// A change to the document.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Sets the units for reading and writing.
    Units(System),
    /// Changes a setting of the workshop.
    Settings(SettingEdit),
    /// Adds an unmeasured piece that the maker has.
    Add {
        /// Its id. It was never used before.
        id: PieceId,
        /// The kind of furniture.
        kind: Kind,
    },
    /// Adds an unmeasured piece that the maker may buy.
    Consider {
        /// Its id. It was never used before.
        id: PieceId,
        /// The kind of furniture.
        kind: Kind,
    },
    /// Duplicates a piece with its measurements.
    Copy {
        /// The piece to copy.
        of: PieceId,
        /// The id of the copy. It was never used before.
        id: PieceId,
    },
    /// Copies the finish of another piece. The condition of the surfaces stays.
    CopyFinish {
        /// The piece to copy from.
        from: PieceId,
        /// The piece to change.
        to: PieceId,
    },
    /// Deletes a piece.
    Remove(PieceId),
    /// Replaces the workshop.
    Replace(Workshop),
    /// Adds the pieces of another workshop at the end.
    Gather(Workshop),
    /// Deletes the sample pieces and the note about them.
    ClearInvented,
    /// Copies a built-in material. The first key is the new one, which was never used before.
    AddMaterial(Rc<str>, String),
    /// Changes one of the maker's own materials.
    Material(Rc<str>, MaterialEdit),
    /// Deletes one of the maker's own materials.
    RemoveMaterial(Rc<str>),
    /// Changes a book of the workshop.
    Book(BookEdit),
    /// Sets the working hours of several weekdays. Each has the key of its habit.
    Hours(Vec<(&'static str, String)>),
    /// Changes what is on hand of a material, entered with a piece that uses it.
    Have {
        /// The piece.
        piece: PieceId,
        /// The key of the material.
        material: Rc<str>,
        /// Its color, if the material comes in colors.
        colour: Option<Rgb>,
        /// The change.
        edit: HaveEdit,
    },
    /// Changes one piece.
    Piece(PieceId, PieceEdit),
}

/// Which of two cases. A piece with one case has only the lower one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Case {
    /// The only case, or the lower of two.
    Lower,
    /// The upper case.
    Upper,
}

impl Case {
    /// Converts from the `upper` of a [`BayPlace`].
    pub fn from_upper(upper: bool) -> Self {
        if upper { Case::Upper } else { Case::Lower }
    }
}

/// A change to one piece. Rows are counted from 1.
#[derive(Clone, Debug, PartialEq)]
pub enum PieceEdit {
    /// Sets the name.
    Name(String),
    /// Sets how many of these there are.
    Count(u32),
    /// Sets a measurement, or clears it.
    Measure(FieldId, Option<Reading>),
    /// Sets how the piece is made, by the keys of the choice and the answer.
    Style {
        /// The key of the choice.
        choice: &'static str,
        /// The key of the answer.
        answer: &'static str,
    },
    /// Sets a counted number by its key. `None` restores the default.
    Counted(&'static str, Option<u32>),
    /// Sets the number of bays.
    Bays {
        /// The case.
        case: Case,
        /// The number of bays.
        count: usize,
    },
    /// Sets the number of rows in a bay.
    Rows {
        /// The bay.
        bay: BayPlace,
        /// The number of rows.
        count: usize,
    },
    /// Duplicates a row. The copy goes below it.
    RepeatRow {
        /// The bay.
        bay: BayPlace,
        /// The row.
        row: usize,
    },
    /// Deletes a row. The last row of a bay cannot be deleted.
    RemoveRow {
        /// The bay.
        bay: BayPlace,
        /// The row.
        row: usize,
    },
    /// Sets what a row holds.
    Fill {
        /// The bay.
        bay: BayPlace,
        /// The row.
        row: usize,
        /// What it holds.
        fill: Fill,
    },
    /// Sets the number of drawers, doors or compartments in a row.
    Columns {
        /// The bay.
        bay: BayPlace,
        /// The row.
        row: usize,
        /// The number side by side.
        columns: usize,
    },
    /// Sets the number of shelves in each compartment of a row.
    Shelves {
        /// The bay.
        bay: BayPlace,
        /// The row.
        row: usize,
        /// The number of shelves.
        shelves: usize,
    },
    /// Adds a change.
    AddChange(PieceChange),
    /// Adds a part. It gets the next free number.
    AddPart(AddedShape),
    /// Replaces a change. Readings that the new one has no field for are deleted.
    AlterChange {
        /// Its index in the list of changes.
        change: usize,
        /// The new change.
        kind: ChangeKind,
    },
    /// Deletes a change, by its index.
    RemoveChange(usize),
    /// Sets whether a surface is painted.
    Painted {
        /// The name of the surface.
        surface: String,
        /// `None` follows the zone.
        painted: Option<bool>,
    },
    /// Sets the zone of a surface, by its key. `None` restores the default.
    Zone(String, Option<String>),
    /// Changes several surfaces at once, by their names.
    Brush(Vec<String>, BrushTo),
    /// Sets whether a zone is painted.
    ZonePainted {
        /// The key of the zone.
        zone: String,
        /// `None` restores the default.
        painted: Option<bool>,
    },
    /// Adds a zone, or renames one.
    NameZone {
        /// The key of the zone.
        zone: String,
        /// Its name.
        name: String,
    },
    /// Deletes an added zone. Its surfaces return to their default zones.
    RemoveZone(String),
    /// Changes the finish of the piece, or of a zone with its own finish.
    Finish(Option<String>, SchemeEdit),
    /// Sets whether a zone has its own finish.
    Apart {
        /// The key of the zone.
        zone: String,
        /// False if the zone is finished like the piece.
        apart: bool,
    },
    /// Replaces a material in every layer of the piece, because one can serves all zones.
    Exchange {
        /// The key of the old material.
        from: Rc<str>,
        /// The key of the new one.
        to: Rc<str>,
    },
    /// Changes a book of the piece.
    Book(BookEdit),
}

/// Why an edit was refused.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum EditError {
    /// The piece does not exist.
    NoSuchPiece,
    /// The id of a new piece is taken.
    IdTaken,
    /// A document cannot hold more.
    TooMany {
        /// The name of the items.
        what: &'static str,
        /// The maximum.
        most: usize,
    },
    /// A name or key is unknown.
    Unknown(&'static str),
    /// The text does not fit the field of a book.
    Value(ValueError),
    /// The tool cannot apply the material.
    WrongTool {
        /// The tool.
        tool: &'static str,
        /// The material.
        material: String,
    },
}

impl fmt::Display for EditError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            EditError::NoSuchPiece => f.write_str("That piece is no longer here. Choose another."),
            EditError::IdTaken => f.write_str("A piece with that name already exists. Try again."),
            EditError::TooMany { what, most } => write!(f, "Use at most {most} {what}."),
            EditError::WrongTool { tool, material } => {
                write!(
                    f,
                    "You can't apply {material} with the {tool}. Choose another tool."
                )
            }
            EditError::Value(error) => error.fmt(f),
            EditError::Unknown(what) => write!(f, "Choose a {what} from the list."),
        }
    }
}

impl std::error::Error for EditError {}

/// Returns the name, cut to the maximum length.
pub(crate) fn shortened(name: &str) -> String {
    name.chars().take(MAX_NAME).collect()
}

#[cfg(test)]
mod tests;
