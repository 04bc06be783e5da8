//! Messages to the maker.

use std::rc::Rc;
use workshop::Workshop;

/// A step that was undone or redone.
#[derive(Clone, Debug, PartialEq)]
pub struct Stepped {
    /// True if it was undone.
    pub is_back: bool,
    /// The document before the undo or redo.
    pub from: Rc<Workshop>,
}

/// A message to the maker.
#[derive(Clone, Debug, PartialEq)]
pub enum Message {
    /// A sentence that stays until it is dismissed.
    Plain(String),
    /// A confirmation that stays until the next message.
    Done(String),
    /// A file or link was read, and the maker must decide what to do with it.
    Opened(Box<Workshop>),
}
