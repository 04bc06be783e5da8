//! The maker's price notes.

use super::{Note, Side};
use crate::book::{PriceNote, Record};
use crate::document::Workshop;

/// Returns the notes that have a kind, a price and a day, and the number of incomplete ones.
pub fn notes(workshop: &Workshop) -> (Vec<Note>, usize) {
    let note = |of: PriceNote| {
        Some(Note {
            kind: of.furniture?,
            style: of.style,
            side: of.side.unwrap_or(Side::Asked),
            price: of.price?,
            gone: of.gone,
            listed: of.listed,
            day: of.day?,
        })
    };
    let known: Vec<Note> = workshop.books.all().filter_map(note).collect();
    let lacking = workshop.books.lines(PriceNote::BOOK).len() - known.len();
    (known, lacking)
}
