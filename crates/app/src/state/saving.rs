//! How far the document was read and saved.

use std::rc::Rc;
use workshop::records::Unread;

/// How far what is saved was read. Nothing is written before all of it was, or the maker let go of the rest.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Load {
    /// Nothing was read yet.
    #[default]
    Opening,
    /// Nothing was read yet, and that takes long.
    Slow,
    /// Nothing could be read; the reason in words.
    Failed(String),
    /// Some of it could not be read.
    Partly(Rc<Unread>),
    /// All of it was read.
    Whole,
}

/// How the document stands in the browser's database.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum SaveStatus {
    /// Nothing was read yet.
    #[default]
    Opening,
    /// A change is on its way.
    Writing,
    /// All is kept.
    Saved,
    /// It could not be kept; the reason in words.
    Failed(String),
}
