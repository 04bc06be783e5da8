//! What the maker is told.

use std::rc::Rc;
use workshop::Workshop;

/// A step that was taken back or made again.
#[derive(Clone, Debug, PartialEq)]
pub struct Stepped {
    /// Whether it was taken back.
    pub is_back: bool,
    /// The document before.
    pub from: Rc<Workshop>,
}

/// Something to tell the maker.
#[derive(Clone, Debug, PartialEq)]
pub enum Message {
    /// A sentence that stays until it is put away.
    Plain(String),
    /// What was done; it stays until something else is told.
    Done(String),
    /// A file or a link was read; what should become of it?
    Opened(Box<Workshop>),
}
