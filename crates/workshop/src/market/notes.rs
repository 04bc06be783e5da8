//! The price notes as the maker wrote them.

use geometry::Kind;

use super::{Note, Side};
use crate::document::Workshop;

/// The notes that have a kind, a price and a day, and how many lack one of them.
pub fn notes(workshop: &Workshop) -> (Vec<Note>, usize) {
    let lines = workshop.books.lines("prices");
    let note = |line: &crate::book::Line| {
        Some(Note {
            kind: Kind::by_key(line.text("furniture"))?,
            style: line.text("style").to_owned(),
            side: match line.text("is") {
                "sold" => Side::Sold,
                _ => Side::Asked,
            },
            price: line.money("price")?,
            gone: line.count("gone"),
            day: line.day("day")?,
        })
    };
    let known: Vec<Note> = lines.iter().filter_map(|line| note(line)).collect();
    let lacking = lines.len() - known.len();
    (known, lacking)
}
