//! Changes of books.

use std::rc::Rc;

use units::System;

use super::EditError;
use crate::book::{Book, Books, Entered, Line, MAX_LINES, ONLY, Record, book};

/// A change to a book, by the key of the book.
#[derive(Clone, Debug, PartialEq)]
pub enum BookEdit {
    /// Adds a line at the end, with its id and its first values by field key. The id was never used before.
    Add(&'static str, Rc<str>, Vec<(&'static str, String)>),
    /// Sets a value of a line, by its id and field key. An empty text clears the value. A book with a single
    /// line gets that line with its first value.
    Write(&'static str, Rc<str>, String, Entered),
    /// Sets several values of a line at once, by its id.
    Fill(&'static str, Rc<str>, Vec<(&'static str, String)>),
    /// Deletes a line.
    Strike(&'static str, Rc<str>),
}

impl BookEdit {
    /// Returns the key of the book.
    pub fn key(&self) -> &'static str {
        let (BookEdit::Add(key, ..)
        | BookEdit::Write(key, ..)
        | BookEdit::Fill(key, ..)
        | BookEdit::Strike(key, _)) = self;
        key
    }

    fn book(&self) -> Result<&'static Book, EditError> {
        book(self.key()).ok_or(EditError::Unknown("book"))
    }
}

impl Books {
    /// Applies a change to the books of a piece, or of the workshop.
    pub(super) fn apply(&mut self, edit: BookEdit, of_piece: bool, system: System) -> Result<(), EditError> {
        let book = edit.book()?;
        if book.of_piece != of_piece {
            return Err(EditError::Unknown("book"));
        }
        match edit {
            BookEdit::Add(_, id, values) => {
                let mut line = Line::new(id);
                for (key, text) in values {
                    write(book, &mut line, key.into(), &text.into(), system)?;
                }
                self.add(book, line)
            }
            BookEdit::Write(_, id, key, entered) => {
                let known = self.line(book.key, &id).cloned();
                if known.is_none() && !(book.is_single && &*id == ONLY) {
                    return Err(EditError::Unknown("line"));
                }
                if known.is_none() && entered.text.trim().is_empty() {
                    return Ok(());
                }
                let mut line = known.map_or_else(|| Line::new(id), |line| (*line).clone());
                write(book, &mut line, key, &entered, system)?;
                if book.is_single && line.values.is_empty() {
                    self.0.remove(book.key);
                    return Ok(());
                }
                self.put(book, line)
            }
            BookEdit::Fill(_, id, values) => {
                let known = self.line(book.key, &id).ok_or(EditError::Unknown("line"))?;
                let mut line = (**known).clone();
                for (key, text) in values {
                    write(book, &mut line, key.into(), &text.into(), system)?;
                }
                self.put(book, line)
            }
            BookEdit::Strike(_, id) => {
                if self.lines(book.key).is_empty() {
                    return Err(EditError::Unknown("line"));
                }
                self.strike_all(book.key, |other| *other == *id);
                Ok(())
            }
        }
    }

    /// Deletes the lines of a book with these ids.
    pub(super) fn strike_all(&mut self, book: &str, is_struck: impl Fn(&str) -> bool) {
        let Some(lines) = self.0.get_mut(book) else { return };
        lines.retain(|line| !is_struck(&line.id));
        if lines.is_empty() {
            self.0.remove(book);
        }
    }

    /// Replaces the lines of a book.
    pub(super) fn set_lines(&mut self, book: &str, lines: Vec<Rc<Line>>) {
        match lines.is_empty() {
            true => self.0.remove(book),
            false => self.0.insert(book.into(), lines),
        };
    }

    /// Deletes the lines of a book with these records.
    pub(super) fn strike_if<R: Record>(&mut self, is_struck: impl Fn(&R) -> bool) {
        let lines = self.lines(R::BOOK).iter();
        let struck: Vec<Rc<str>> = lines
            .filter(|line| is_struck(&R::read(line)))
            .map(|line| Rc::clone(&line.id))
            .collect();
        self.strike_all(R::BOOK, |id| struck.iter().any(|known| **known == *id));
    }

    /// Adds a line at the end of a book.
    pub(super) fn add(&mut self, book: &Book, line: Line) -> Result<(), EditError> {
        if self.line(book.key, &line.id).is_some() {
            return Err(EditError::IdTaken);
        }
        let mut lines = self.lines(book.key).to_vec();
        let most = if book.is_single { 1 } else { MAX_LINES };
        if lines.len() >= most {
            return Err(EditError::TooMany { what: "lines", most });
        }
        lines.push(Rc::new(line));
        self.0.insert(book.key.into(), lines);
        Ok(())
    }

    /// Replaces the line with this id, or adds it at the end.
    pub(super) fn put(&mut self, book: &Book, line: Line) -> Result<(), EditError> {
        let place = self.lines(book.key).iter().position(|other| other.id == line.id);
        match (place, self.0.get_mut(book.key)) {
            (Some(place), Some(lines)) => lines[place] = Rc::new(line),
            _ => return self.add(book, line),
        }
        Ok(())
    }
}

fn write(
    book: &Book,
    line: &mut Line,
    key: String,
    entered: &Entered,
    system: System,
) -> Result<(), EditError> {
    let field = book.field(&key).ok_or(EditError::Unknown("field"))?;
    line.meant.remove(&key);
    if entered.text.trim().is_empty() {
        line.values.remove(&key);
    } else {
        let (text, number) = field.kind.take(entered, system).map_err(EditError::Value)?;
        line.meant.extend(number.map(|number| (key.clone(), number)));
        line.values.insert(key, text);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::Facts;
    use crate::book::PriceNote;
    use crate::{Edit, Workshop, invented_workshop};

    fn apply(workshop: &Workshop, edit: BookEdit) -> Result<Workshop, EditError> {
        workshop.apply(Edit::Book(edit))
    }

    fn price(workshop: &Workshop) -> Option<u64> {
        let mut notes = workshop.books.all::<PriceNote>();
        notes.next().and_then(|note| note.price)
    }

    #[test]
    fn a_line_comes_changes_and_goes() {
        let note = BookEdit::Add(
            "prices",
            "n1".into(),
            vec![("price", "85".into()), ("day", "2026-05-03".into())],
        );
        let one = apply(&Workshop::default(), note.clone()).unwrap();
        assert_eq!(price(&one), Some(8500));
        assert_eq!(apply(&one, note), Err(EditError::IdTaken));

        let dearer = BookEdit::Write("prices", "n1".into(), "price".into(), "95.50".into());
        let dearer = apply(&one, dearer).unwrap();
        assert_eq!(price(&dearer), Some(9550));
        let emptied = BookEdit::Write("prices", "n1".into(), "price".into(), " ".into());
        assert_eq!(price(&apply(&dearer, emptied).unwrap()), None);

        let gone = apply(&one, BookEdit::Strike("prices", "n1".into())).unwrap();
        assert_eq!(gone, Workshop::default());
    }

    #[test]
    fn what_a_field_does_not_take_changes_nothing_and_says_why() {
        let write =
            |book, id: &str, key: &str, text: &str| BookEdit::Write(book, id.into(), key.into(), text.into());
        let error = |edit| apply(&Workshop::default(), edit).unwrap_err().to_string();
        assert_eq!(
            error(write("habits", "only", "fee-share", "130")),
            "That's too high. Check it."
        );
        assert_eq!(
            apply(&Workshop::default(), write("habits", "two", "fee", "1")),
            Err(EditError::Unknown("line"))
        );
        assert_eq!(
            apply(&Workshop::default(), write("diary", "only", "fee", "1")),
            Err(EditError::Unknown("book"))
        );
        assert_eq!(
            apply(&Workshop::default(), write("facts", "only", "bought", "1")),
            Err(EditError::Unknown("book"))
        );
    }

    #[test]
    fn a_piece_has_books_of_its_own() {
        let workshop = invented_workshop();
        let id = workshop.pieces[0].id.clone();
        let bought = BookEdit::Write("facts", "only".into(), "bought".into(), "20".into());
        let edited = workshop
            .apply(Edit::Piece(id, crate::PieceEdit::Book(bought)))
            .unwrap();
        assert_eq!(edited.pieces[0].books.one::<Facts>().bought, Some(2000));
        assert_eq!(edited.pieces[1], workshop.pieces[1]);
    }
}
