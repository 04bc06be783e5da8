//! The fields of books.

use std::rc::Rc;

use workshop::book::{Books, Line, Record, book};
use workshop::{BookEdit, Edit, PieceEdit};

use super::App;

/// A field of a line in a book. The book determines whether it belongs to the workshop or the open piece.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct EntryId {
    /// The key of the book.
    pub book: &'static str,
    /// The id of the line.
    pub line: Rc<str>,
    /// The key of the field.
    pub field: String,
}

impl EntryId {
    /// Returns the id of its element.
    pub fn element(&self) -> String {
        format!("{}-{}-{}", self.book, self.line, self.field)
    }
}

impl App {
    /// Returns the books of the open piece or of the workshop.
    pub fn books(&self, of_piece: bool) -> Option<&Books> {
        if of_piece {
            self.piece().map(|piece| &piece.books)
        } else {
            Some(&self.workshop.books)
        }
    }

    /// Returns the line of a single-line book.
    pub fn only(&self, key: &'static str) -> Line {
        let books = book(key).and_then(|book| self.books(book.of_piece));
        books.map_or_else(|| Books::default().only(key), |books| books.only(key))
    }

    /// Returns the line of a single-line book as typed values.
    pub fn one<R: Record>(&self) -> R {
        R::read(&self.only(R::BOOK))
    }

    pub(super) fn change_book(&mut self, edit: BookEdit, about: Option<String>) {
        if book(edit.key()).is_some_and(|book| book.of_piece) {
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
    use crate::state::{Action, DraftId};
    use workshop::book::Facts;

    fn id(book: &'static str, field: &str) -> EntryId {
        EntryId {
            book,
            line: "only".into(),
            field: field.into(),
        }
    }

    fn write(app: &App, id: &EntryId, text: &str) -> App {
        app.update(Action::Write(id.clone(), text.into()))
    }

    fn entry(app: &App, id: &EntryId) -> String {
        app.text_of(&DraftId::Entry(id.clone()))
    }

    #[test]
    fn what_is_written_stands_in_the_book_as_soon_as_its_field_takes_it() {
        let bought = id("facts", "bought");
        let app = write(&write(&with_piece(), &bought, "2"), &bought, "20");
        assert_eq!(app.one::<Facts>().bought, Some(2000));
        let app = write(&app, &bought, "20.");
        assert_eq!(entry(&app, &bought), "20.");
        assert_eq!(
            app.one::<Facts>().bought,
            None,
            "a part of what cannot be read is no price"
        );
        let app = app.update(Action::LeaveEntry(bought.clone()));
        let wrong = DraftId::Entry(bought.clone());
        assert!(app.fault(&wrong).is_some(), "what is wrong stays to be mended");
        assert!(
            !app.can_undo() || app.update(Action::Undo).piece().is_none(),
            "nothing changed"
        );
        let app = write(&app, &bought, "20.5").update(Action::LeaveEntry(bought.clone()));
        assert_eq!(app.one::<Facts>().bought, Some(2050));
        assert_eq!(app.update(Action::Undo).one::<Facts>().bought, None, "one step");
    }

    #[test]
    fn a_quantity_gets_its_unit_when_the_maker_is_done() {
        let lasts = id("habits", "sheet-yield");
        let app = write(&with_piece(), &lasts, "20");
        assert_eq!(entry(&app, &lasts), "20");
        let app = app.update(Action::LeaveEntry(lasts.clone()));
        assert_eq!(entry(&app, &lasts), "20 ft\u{b2}");
    }
}
