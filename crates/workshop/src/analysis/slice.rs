//! What a result reads of a document, and nothing else.
//!
//! A result is worked out from such a slice and never from the document itself. So a slice is the whole of what the result can
//! depend on: as long as two slices are equal, so are the results.

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
    /// Nothing of a workshop yet.
    pub(super) fn of(from: &'a Workshop) -> Self {
        OfWorkshop {
            from,
            slice: Workshop::default(),
        }
    }

    /// With the units of the maker.
    pub(super) fn units(mut self) -> Self {
        self.slice.units = self.from.units;
        self
    }

    /// With how sure a can must be.
    pub(super) fn confidence(mut self) -> Self {
        self.slice.settings.confidence = self.from.settings.confidence;
        self
    }

    /// With the materials of the maker's own.
    pub(super) fn materials(mut self) -> Self {
        self.slice.materials.clone_from(&self.from.materials);
        self
    }

    /// With what a result reads of the books of the workshop, but for the shelf.
    pub(super) fn reads(mut self, reads: &Reads) -> Self {
        let (from, to) = (&self.from.books, &mut self.slice.books);
        take(reads, from, to, |key| {
            key != ShelfCan::BOOK && book(key).is_some_and(|book| !book.of_piece)
        });
        self
    }

    /// With what the shelf has of these materials.
    pub(super) fn shelf(mut self, is_wanted: impl Fn(&str) -> bool) -> Self {
        let lines = stock::lines(self.from, is_wanted);
        if !lines.is_empty() {
            self.slice.books.0.insert(ShelfCan::BOOK.into(), lines);
        }
        self
    }

    /// With these parts of all pieces.
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
    /// The measurements, the parts, and what is painted of them: all that decides areas.
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

    /// With how it is finished, and how many there are.
    pub(super) fn finish(mut self) -> Self {
        self.slice.count = self.from.count;
        self.slice.scheme.clone_from(&self.from.scheme);
        self.slice.zones.clone_from(&self.from.zones);
        self
    }

    /// With its name.
    pub(super) fn name(mut self) -> Self {
        self.slice.name.clone_from(&self.from.name);
        self
    }

    /// With what a result reads of the books of the piece.
    pub(super) fn reads(mut self, reads: &Reads) -> Self {
        let (from, to) = (&self.from.books, &mut self.slice.books);
        take(reads, from, to, |key| book(key).is_some_and(|book| book.of_piece));
        self
    }

    /// With one line of a book.
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

/// Takes over what is read of the books that are wanted.
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
