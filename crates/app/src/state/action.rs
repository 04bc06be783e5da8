//! All events that change the state of the page.

use super::figure::FigureId;
use super::look::Look;
use super::message::Message;
use super::row::RowPlace;
use super::saving::Load;
use super::saving::SaveStatus;
use super::screen::Light;
use super::screen::Screen;
use super::writing::EntryId;
use crate::device_status::News;
use geometry::FieldId;
use std::rc::Rc;
use workshop::{BookEdit, BrushTo, Edit, PieceEdit, PieceId, Workshop};

/// An event that changes the state of the page.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// The document was loaded from the database or changed in another tab.
    Loaded(Rc<Workshop>),
    /// The maker was told which pieces have new results. The document stores that.
    Told,
    /// The maker changes the document.
    Edit(Edit),
    /// The maker adds a piece and opens it.
    Start(Edit, PieceId),
    /// The maker opens a piece.
    Open(PieceId),
    /// The maker changes the open piece.
    Change(PieceEdit),
    /// Like [`Action::Change`], for one of many changes from a single gesture. The text identifies the
    /// gesture, and all of its changes are undone together.
    Stroke(PieceEdit, &'static str),
    /// The gesture ends.
    Rest,
    /// The maker types in a field.
    Type(FieldId, String),
    /// The maker types on the tape keypad, for the current measurement.
    TypeHere(String),
    /// The maker types a label value, or selects another unit for it.
    Figure(FigureId, String, &'static str),
    /// The maker leaves a label value.
    LeaveFigure(FigureId),
    /// The maker types in a field of a book.
    Write(EntryId, String),
    /// The maker leaves a field of a book.
    LeaveEntry(EntryId),
    /// The maker has stopped typing for a while.
    Pause,
    /// A line of a book is added or deleted, or a value is selected.
    Book(BookEdit),
    /// The maker types the first value from a label. This layer of the open piece or of one of its zones gets a
    /// material of the maker's own, copied from its current material.
    OwnLabel(Option<String>, usize, FigureId, String, &'static str),
    /// The maker presses a key of the tape keypad, which appends text to the field.
    Key(&'static str),
    /// The maker makes the reading longer or shorter by this many of the finest marks of a tape.
    Nudge(i32),
    /// The maker guesses the current measurement, and moves on.
    Guess,
    /// The maker starts this measurement.
    Enter(FieldId),
    /// The text of the current measurement is selected.
    Marked,
    /// The maker leaves a field.
    Leave(FieldId),
    /// The maker moves to the next measurement, or to the previous one.
    GoOn(bool),
    /// The maker stops measuring.
    PutTapeAway,
    /// The device keyboard is enabled or disabled for measurements.
    Keyboard(bool),
    /// The view of the drawing changes.
    Look(Look),
    /// The screen changes.
    Screen(Screen),
    /// The maker returns from a screen that every stage opens.
    Back,
    /// Escape was pressed: closes a screen that is no stage.
    Escape,
    /// A surface is selected or deselected.
    Pick(Option<String>),
    /// A part is selected or deselected.
    Part(Option<String>),
    /// The next piece that is added is one that the maker may buy, or not.
    Decide(bool),
    /// A row is selected or deselected.
    Row(Option<RowPlace>),
    /// A piece is put on the shopping list, or taken off it.
    OnList(PieceId, bool),
    /// A section with this name is expanded or collapsed.
    Fold(String),
    /// The finish of a zone is shown, or that of the piece.
    Finished(Option<String>),
    /// There is a message for the maker.
    Tell(Message),
    /// The maker dismisses the message at this index.
    PutAway(usize),
    /// The saved document was read, or could not be.
    Load(Load),
    /// The maker continues although nothing could be read.
    GoOnUnsaved,
    /// The database reports its status.
    SaveStatus(SaveStatus),
    /// The status of the page on this device changed.
    Hear(News),
    /// The brightness of the page changes.
    Light(Light),
    /// From now on, brushing over faces does this to them.
    Brush(Option<BrushTo>),
    /// A link to the open piece was created.
    Linked(Rc<str>),
    /// Printing starts or ends.
    Printing(bool),
    /// The last change is undone.
    Undo,
    /// The last undone change is redone.
    Redo,
}
