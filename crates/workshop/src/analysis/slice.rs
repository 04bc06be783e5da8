//! The part of a document that a result reads.
//!
//! A result is kept until its slice changes. It is calculated from its slice and from the results inside it,
//! such as the takeoff, which read slices of their own. The slice must therefore also cover everything that
//! those inner results read. The compiler does not check this. The test
//! `a_result_is_worked_out_anew_when_an_edit_changes_it_and_only_then` does, with an edit of each kind.

use std::rc::Rc;

use super::reads::Reads;
use crate::book::{Books, Line, Record, ShelfCan, book};
use crate::document::{Piece, Workshop, ZoneChoice};
use crate::stock;

/// The parts of a workshop that a result reads.
pub(super) struct OfWorkshop<'a> {
    from: &'a Workshop,
    slice: Workshop,
}

impl<'a> OfWorkshop<'a> {
    /// Returns a slice with nothing of the workshop.
    pub(super) fn of(from: &'a Workshop) -> Self {
        OfWorkshop {
            from,
            slice: Workshop::default(),
        }
    }

    /// Adds the units.
    pub(super) fn units(mut self) -> Self {
        self.slice.units = self.from.units;
        self
    }

    /// Adds how sure a can must be.
    pub(super) fn confidence(mut self) -> Self {
        self.slice.settings.confidence = self.from.settings.confidence;
        self
    }

    /// Adds the currency, which says whether prices are guessed.
    pub(super) fn currency(mut self) -> Self {
        self.slice.settings.currency = self.from.settings.currency;
        self
    }

    /// Adds the maker's own materials.
    pub(super) fn materials(mut self) -> Self {
        self.slice.materials.clone_from(&self.from.materials);
        self
    }

    /// Adds the entries of the workshop's books, except the shelf.
    pub(super) fn reads(mut self, reads: &Reads) -> Self {
        let (from, to) = (&self.from.books, &mut self.slice.books);
        take(reads, from, to, |key| {
            key != ShelfCan::BOOK && book(key).is_some_and(|book| !book.of_piece)
        });
        self
    }

    /// Adds the cans of these materials on the shelf.
    pub(super) fn shelf(mut self, is_wanted: impl Fn(&str) -> bool) -> Self {
        let lines = stock::lines(self.from, is_wanted);
        if !lines.is_empty() {
            self.slice.books.0.insert(ShelfCan::BOOK.into(), lines);
        }
        self
    }

    /// Adds these parts of all pieces.
    pub(super) fn pieces<'p>(self, of: impl Fn(&'p Piece) -> OfPiece<'p>) -> Workshop
    where
        'a: 'p,
    {
        let pieces = self.from.pieces.iter();
        Workshop {
            pieces: pieces.map(|piece| Rc::new(of(piece).done())).collect(),
            ..self.slice
        }
    }

    pub(super) fn done(self) -> Workshop {
        self.slice
    }
}

/// The parts of a piece that a result reads.
pub(super) struct OfPiece<'a> {
    from: &'a Piece,
    slice: Piece,
}

impl<'a> OfPiece<'a> {
    /// Returns a slice with the measurements, the parts and the painted surfaces: everything that affects
    /// areas.
    pub(super) fn shape(from: &'a Piece) -> Self {
        let mut slice = Piece::of_edition(from.id.clone(), from.kind, from.edition);
        slice.name.clear();
        slice.readings.clone_from(&from.readings);
        slice.styles = from.styles;
        slice.counts.clone_from(&from.counts);
        slice.bays.clone_from(&from.bays);
        slice.upper.clone_from(&from.upper);
        slice.changes.clone_from(&from.changes);
        slice.choices.clone_from(&from.choices);
        let zones = from.zones.iter().map(|(key, zone)| {
            let bare = ZoneChoice {
                scheme: None,
                ..zone.clone()
            };
            (key.clone(), bare)
        });
        slice.zones = zones.collect();
        OfPiece { from, slice }
    }

    /// Adds the finish and the count.
    pub(super) fn finish(mut self) -> Self {
        self.slice.count = self.from.count;
        self.slice.scheme.clone_from(&self.from.scheme);
        self.slice.zones.clone_from(&self.from.zones);
        self
    }

    /// Adds the name.
    pub(super) fn name(mut self) -> Self {
        self.slice.name.clone_from(&self.from.name);
        self
    }

    /// Adds the entries of the piece's books.
    pub(super) fn reads(mut self, reads: &Reads) -> Self {
        let (from, to) = (&self.from.books, &mut self.slice.books);
        take(reads, from, to, |key| book(key).is_some_and(|book| book.of_piece));
        self
    }

    /// Adds one line of a book.
    pub(super) fn line<R: Record>(mut self, id: &str) -> Self {
        if let Some(line) = self.from.books.line(R::BOOK, id) {
            self.slice.books.0.insert(R::BOOK.into(), vec![Rc::clone(line)]);
        }
        self
    }

    pub(super) fn done(self) -> Piece {
        self.slice
    }
}

/// Copies the entries of the books that are read.
fn take(reads: &Reads, from: &Books, to: &mut Books, is_wanted: impl Fn(&str) -> bool) {
    reads.each_book(&mut |book| {
        if is_wanted(book) {
            take_book(book, from, to);
        }
    });
    reads.each_list(&mut |book, fields| {
        if is_wanted(book) {
            take_fields(book, from, to, fields);
        }
    });
}

fn take_book(book: &str, from: &Books, to: &mut Books) {
    let lines = from.lines(book);
    if !lines.is_empty() {
        to.0.insert(book.into(), lines.to_vec());
    }
}

fn take_fields(book: &str, from: &Books, to: &mut Books, fields: &[&str]) {
    let Some(all) = from.lines(book).first() else {
        return;
    };
    let mut line = to
        .lines(book)
        .first()
        .map_or_else(|| Line::new(Rc::clone(&all.id)), |line| (**line).clone());
    for field in fields {
        if let Some(text) = all.values.get(*field) {
            line.values.insert((*field).to_owned(), text.clone());
        }
        if let Some(number) = all.meant.get(*field) {
            line.meant.insert((*field).to_owned(), *number);
        }
    }
    if !line.values.is_empty() {
        to.0.insert(book.into(), vec![Rc::new(line)]);
    }
}
