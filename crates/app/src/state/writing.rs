//! What is being written into books. A text that its field does not take is no part of the document, and stays in the
//! field until it is mended.

use std::rc::Rc;

use workshop::book::{Books, Line, ValueError, book};
use workshop::{BookEdit, Edit, PieceEdit};

use super::App;

/// A field of a line of a book, of the workshop or of the open piece as the book has it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct EntryId {
    /// The key of the book.
    pub book: &'static str,
    /// The name of the line.
    pub line: Rc<str>,
    /// The key of the field.
    pub field: String,
}

impl EntryId {
    /// The name of its element on the page.
    pub fn element(&self) -> String {
        format!("{}-{}-{}", self.book, self.line, self.field)
    }
}

impl App {
    /// The books of the open piece, or those of the workshop.
    pub fn books(&self, of_piece: bool) -> Option<&Books> {
        if of_piece {
            self.piece().map(|piece| &piece.books)
        } else {
            Some(&self.workshop.books)
        }
    }

    /// The only line of a book that has one.
    pub fn only(&self, key: &'static str) -> Line {
        let books = book(key).and_then(|book| self.books(book.of_piece));
        books.map_or_else(|| Books::default().only(key), |books| books.only(key))
    }

    /// What stands in a field: what is being written, or else what was.
    pub fn entry(&self, id: &EntryId) -> String {
        let written = || {
            let books = self.books(book(id.book)?.of_piece)?;
            Some(books.line(id.book, &id.line)?.text(&id.field).to_owned())
        };
        let draft = self.entries.get(id).cloned();
        draft.or_else(written).unwrap_or_default()
    }

    /// Why the text in a field is not taken, if it is not.
    pub fn entry_fault(&self, id: &EntryId) -> Option<ValueError> {
        let draft = self.entries.get(id).filter(|text| !text.trim().is_empty())?;
        let field = book(id.book)?.field(&id.field)?;
        field.kind.take(draft, self.workshop.units).err()
    }

    pub(super) fn write(&mut self, id: EntryId, text: String) {
        self.entries.insert(id.clone(), text.clone());
        if self.entry_fault(&id).is_none() {
            let about = id.element();
            let (line, field) = (Rc::clone(&id.line), id.field.clone());
            self.change_book(BookEdit::Write(id.book, line, field, text), Some(about));
        }
    }

    pub(super) fn leave_entry(&mut self, id: &EntryId) {
        if self.entry_fault(id).is_none() {
            self.entries.remove(id);
        }
        self.past.part();
    }

    pub(super) fn change_book(&mut self, edit: BookEdit, about: Option<String>) {
        let (BookEdit::Add(key, ..) | BookEdit::Write(key, ..) | BookEdit::Strike(key, _)) = &edit;
        if book(key).is_some_and(|book| book.of_piece) {
            if let Some(id) = self.open.clone() {
                self.edit(Edit::Piece(id, PieceEdit::Book(edit)), about);
            }
        } else {
            self.edit(Edit::Book(edit), about);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::with_piece;
    use super::*;
    use crate::state::Act;

    fn id(book: &'static str, field: &str) -> EntryId {
        EntryId {
            book,
            line: "only".into(),
            field: field.into(),
        }
    }

    fn write(app: &App, id: &EntryId, text: &str) -> App {
        app.update(Act::Write(id.clone(), text.into()))
    }

    #[test]
    fn what_is_written_stands_in_the_book_as_soon_as_its_field_takes_it() {
        let bought = id("facts", "bought");
        let app = write(&write(&with_piece(), &bought, "2"), &bought, "20");
        assert_eq!(app.only("facts").money("bought"), Some(2000));
        let app = write(&app, &bought, "20.");
        assert_eq!(app.entry(&bought), "20.");
        assert_eq!(app.only("facts").money("bought"), Some(2000));
        let app = app.update(Act::LeaveEntry(bought.clone()));
        assert!(
            app.entry_fault(&bought).is_some(),
            "what is wrong stays to be mended"
        );
        assert_eq!(
            app.update(Act::Undo).only("facts").money("bought"),
            None,
            "one step"
        );
    }

    #[test]
    fn a_quantity_gets_its_unit_when_the_maker_is_done() {
        let lasts = id("habits", "sheet-yield");
        let app = write(&with_piece(), &lasts, "20");
        assert_eq!(app.entry(&lasts), "20");
        let app = app.update(Act::LeaveEntry(lasts.clone()));
        assert_eq!(app.entry(&lasts), "20 ft2");
    }
}
