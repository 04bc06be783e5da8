//! Everything that can happen to the page.

use super::figure::FigureId;
use super::look::Look;
use super::message::Message;
use super::saving::Load;
use super::saving::SaveStatus;
use super::screen::Light;
use super::screen::Screen;
use super::screen::Tab;
use super::writing::EntryId;
use crate::device_status::News;
use geometry::FieldId;
use std::rc::Rc;
use workshop::{BookEdit, BrushTo, Edit, PieceEdit, PieceId, Workshop};

/// Everything that can happen to the page.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// The document came out of the database, or was changed in another tab.
    Loaded(Rc<Workshop>),
    /// The maker was told which pieces have other numbers; the document keeps that.
    Told,
    /// The maker changes the document.
    Edit(Edit),
    /// The maker adds a piece and opens it.
    Start(Edit, PieceId),
    /// The maker opens a piece.
    Open(PieceId),
    /// The maker changes the open piece.
    Change(PieceEdit),
    /// The same as one of many such changes that come from one movement of the hand, named by the text: they are taken
    /// back together.
    Stroke(PieceEdit, &'static str),
    /// The maker's hand comes to rest.
    Rest,
    /// The maker types in a field.
    Type(FieldId, String),
    /// The maker types at the tape keys, for the measurement that is being taken.
    TypeHere(String),
    /// The maker types a figure in a unit, or chooses another unit for it.
    Figure(FigureId, String, &'static str),
    /// The maker leaves a figure.
    LeaveFigure(FigureId),
    /// The maker writes into a field of a book.
    Write(EntryId, String),
    /// The maker leaves a field of a book.
    LeaveEntry(EntryId),
    /// The maker types no further for a while.
    Pause,
    /// A line of a book comes or goes, or a value changes that is chosen and not written.
    Book(BookEdit),
    /// A layer of the open piece, or of one of its zones, gets a material of the maker's own, a copy of the one that it
    /// has.
    OwnLabel(Option<String>, usize),
    /// The maker presses a tape key: text to put behind what stands in the field.
    Key(&'static str),
    /// The maker takes this measurement.
    Enter(FieldId),
    /// All that stands in the measurement that is being taken is marked.
    Marked,
    /// The maker leaves a field.
    Leave(FieldId),
    /// The maker goes on to the next measurement, or back to the one before.
    GoOn(bool),
    /// The maker puts the tape away.
    PutTapeAway,
    /// The device's own keyboard comes up for measurements, or stays away.
    Keyboard(bool),
    /// The drawing looks from elsewhere.
    Look(Look),
    /// Another room.
    Screen(Screen),
    /// Another sheet comes on top.
    Tab(Tab),
    /// A surface is tapped, or none any more.
    Pick(Option<String>),
    /// A part is looked at, or none any more.
    Part(Option<String>),
    /// The kinds of pieces to begin with are shown, or put away.
    Adding(bool),
    /// Nothing is bought for a piece now, or something again.
    LeaveOut(PieceId),
    /// Something on a sheet is unfolded, or folded again, by its name.
    Fold(String),
    /// The finish of a zone comes on the sheet, or that of the piece.
    Finished(Option<String>),
    /// There is something to tell.
    Tell(Message),
    /// The maker puts away what was told, by its place.
    PutAway(usize),
    /// What is saved was read, or could not be.
    Load(Load),
    /// The maker goes on though nothing could be read.
    GoOnUnsaved,
    /// The database answered.
    SaveStatus(SaveStatus),
    /// There is news about how the page stands on this device.
    Hear(News),
    /// How light the page shall be.
    Light(Light),
    /// From now on the hand does this to the faces that it goes over.
    Brush(Option<BrushTo>),
    /// The open piece was made into a link.
    Linked(Rc<str>),
    /// Printing begins or is over.
    Printing(bool),
    /// The last change is taken back.
    Undo,
    /// The last change that was taken back is made again.
    Redo,
}
