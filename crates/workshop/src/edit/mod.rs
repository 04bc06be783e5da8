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

/// A change of one piece.
#[derive(Clone, Debug, PartialEq)]
pub enum PieceEdit {
    /// What the maker calls it.
    Name(String),
    /// How many there are.
    Count(u32),
    /// A measurement, or none any more.
    Measure(FieldId, Option<Reading>),
    /// A choice about how it is made: the key of the choice and of the answer.
    Style(&'static str, &'static str),
    /// Something that is counted, by its key; `None` goes back to the usual number.
    Counted(&'static str, Option<u32>),
    /// How many bays the upper or the lower case has.
    Bays(bool, usize),
    /// How many rows a bay has.
    Rows(BayPlace, usize),
    /// A row of a bay comes once more, below itself; rows are counted from 1.
    RepeatRow(BayPlace, usize),
    /// A row goes, from one on; the only one of a bay stays.
    RemoveRow(BayPlace, usize),
    /// What fills a row of a bay.
    Fill(BayPlace, usize, Fill),
    /// How many drawers, doors or compartments a row of a bay has.
    Columns(BayPlace, usize, usize),
    /// How many shelves lie in each compartment of a row of a bay.
    Shelves(BayPlace, usize, usize),
    /// One more change of the piece.
    AddChange(PieceChange),
    /// A part of the maker's own comes in; its number is the next that is free.
    AddPart(AddedShape),
    /// Another change stands in the place of one; readings that it does not have go.
    AlterChange(usize, ChangeKind),
    /// A change is taken back, by its place.
    RemoveChange(usize),
    /// Whether a surface is painted; `None` goes with its zone.
    Painted(String, Option<bool>),
    /// Which zone a surface belongs to, by its key; `None` is the usual one.
    Zone(String, Option<String>),
    /// All of these surfaces, by their names, are left, painted or put into a zone at once.
    Brush(Vec<String>, BrushTo),
    /// Whether a zone is painted, by its key; `None` goes back to the default.
    ZonePainted(String, Option<bool>),
    /// A zone of the maker's own, or a new name for one.
    NameZone(String, String),
    /// A zone of the maker's own goes; its surfaces go back to their usual zones.
    RemoveZone(String),
    /// How the piece is finished changes, or how one of its zones is that has a scheme of its own.
    Finish(Option<String>, SchemeEdit),
    /// A zone is finished in its own way, or as the piece is.
    Apart(String, bool),
    /// Another material takes the place of one, by their keys, wherever the piece plans it: one can serves all zones.
    Exchange(Rc<str>, Rc<str>),
    /// A book of the piece changes.
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

/// The first characters of a name, as many as a name may have.
pub(crate) fn shortened(name: &str) -> String {
    name.chars().take(MAX_NAME).collect()
}

#[cfg(test)]
mod tests;
