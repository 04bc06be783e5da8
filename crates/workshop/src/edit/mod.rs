//! Edits: every change that a maker can make, and the one function that makes it.

mod alike;
mod books;
mod brush;
mod changes;
mod division;
mod gather;
mod have;
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
/// The longest name or title, in characters.
pub(crate) const MAX_NAME: usize = 120;
/// The most pieces in a workshop.
pub(crate) const MAX_PIECES: usize = 5000;

/// A change of the document.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// The maker reads and writes other units from now on.
    Units(System),
    /// Something changes that is settled for the whole workshop.
    Settings(SettingEdit),
    /// A new piece, of which nothing is measured yet.
    Add {
        /// Its name in the workshop, never used before.
        id: PieceId,
        /// What kind of piece it is.
        kind: Kind,
    },
    /// A piece with all its measurements once more.
    Copy {
        /// The piece to copy.
        of: PieceId,
        /// The name of the copy, never used before.
        id: PieceId,
    },
    /// A piece is finished as another is; what its own surfaces are like stays.
    CopyFinish {
        /// The piece whose finish is copied.
        from: PieceId,
        /// The piece that gets it.
        to: PieceId,
    },
    /// A piece goes.
    Remove(PieceId),
    /// Another workshop takes the place of this one.
    Replace(Workshop),
    /// The pieces of another workshop come in behind the ones that are here.
    Gather(Workshop),
    /// The invented pieces go, and the remark about them.
    ClearInvented,
    /// A copy of a known material comes in: its key, never used before, and that of the known one.
    AddMaterial(Rc<str>, String),
    /// Something about a material of the maker's own changes.
    Material(Rc<str>, MaterialEdit),
    /// A material of the maker's own goes.
    RemoveMaterial(Rc<str>),
    /// A book of the workshop changes.
    Book(BookEdit),
    /// What the maker has of a material changes, said beside a piece that takes it.
    Have {
        /// The piece.
        piece: PieceId,
        /// The key of the material.
        material: Rc<str>,
        /// Its color, of a material that comes in colors.
        colour: Option<Rgb>,
        /// What changes.
        edit: HaveEdit,
    },
    /// Something about one piece changes.
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

/// Why an edit was not made.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum EditError {
    /// The piece is not there any more.
    NoSuchPiece,
    /// The name of a new piece is taken.
    IdTaken,
    /// More than a document may hold.
    TooMany {
        /// Of what.
        what: &'static str,
        /// The most there may be.
        most: usize,
    },
    /// A name or key that the tool does not know.
    Unknown(&'static str),
    /// A text that a field of a book does not take.
    Value(ValueError),
    /// A tool that cannot put a material on.
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
            EditError::NoSuchPiece => {
                f.write_str("That piece is not in the workshop any more. Choose another.")
            }
            EditError::IdTaken => f.write_str("A piece with that name is already there. Try once more."),
            EditError::TooMany { what, most } => write!(f, "Too many {what}. The most is {most}."),
            EditError::WrongTool { tool, material } => {
                write!(
                    f,
                    "{material} does not go on with the {tool}. Choose another tool."
                )
            }
            EditError::Value(error) => error.fmt(f),
            EditError::Unknown(what) => write!(f, "This {what} is not known here. Choose one from the list."),
        }
    }
}

impl std::error::Error for EditError {}

/// The first characters of a name, as many as a name may have.
pub(crate) fn shortened(name: &str) -> String {
    name.chars().take(MAX_NAME).collect()
}

#[cfg(test)]
mod tests;
