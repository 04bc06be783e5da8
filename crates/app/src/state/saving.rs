//! The load and save status of the document.

use std::rc::Rc;
use workshop::records::Unread;

/// How much of the saved document was read. Nothing is written until everything was read or the maker gave up
/// the rest.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Load {
    /// Nothing has been read yet.
    #[default]
    Opening,
    /// Nothing has been read yet, and it is taking long.
    Slow,
    /// Nothing could be read, for this reason.
    Failed(String),
    /// Some of it could not be read.
    Partly(Rc<Unread>),
    /// Everything was read.
    Whole,
}

/// The save status of the document in the browser's database.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum SaveStatus {
    /// Nothing has been read yet.
    #[default]
    Opening,
    /// A change is being written.
    Writing,
    /// Everything is saved.
    Saved,
    /// It could not be saved, for this reason.
    Failed(String),
}
