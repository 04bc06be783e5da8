//! Lines of books as the page shows and accepts them.

use std::rc::Rc;
use units::Decimals;

use super::books::{ONLY, book};
use super::field::{Entered, FieldKind};
use super::line::{Books, Line};

impl Line {
    /// Returns the text of a field in this book with its decimal sign, so that entering it again gives the
    /// same number.
    pub fn entered(&self, of: &str, key: &str) -> Entered {
        let text = self.text(key).to_owned();
        let kind = book(of).and_then(|book| book.field(key)).map(|field| field.kind);
        let meant = self.meant.get(key).copied();
        let decimals = [Decimals::Point, Decimals::Comma].into_iter().find(|decimals| {
            let number = kind.and_then(|kind| kind.number(&text, *decimals).ok().flatten());
            meant.is_some() && number == meant
        });
        Entered {
            text,
            decimals: decimals.unwrap_or_default(),
        }
    }

    /// Returns the text of a field in this book, written for a locale with this decimal sign.
    pub fn written_here(&self, of: &str, key: &str, decimals: Decimals) -> String {
        let text = self.text(key);
        let field = book(of).and_then(|book| book.field(key));
        field.map_or_else(
            || text.to_owned(),
            |field| {
                field
                    .kind
                    .written_here(text, self.meant.get(key).copied(), decimals)
            },
        )
    }
}

impl Books {
    /// Returns the number of pictures.
    pub(crate) fn pictures(&self) -> usize {
        let is_picture = |key: &str, field: &str| {
            let field = book(key).and_then(|book| book.field(field));
            field.is_some_and(|field| field.kind == FieldKind::Picture)
        };
        let in_book = |(key, lines): &(String, Vec<Rc<Line>>)| -> usize {
            let fields = lines.iter().flat_map(|line| line.values.keys());
            fields.filter(|field| is_picture(key, field)).count()
        };
        self.0.iter().map(in_book).sum()
    }

    /// Returns the line of a single-line book, or an empty line.
    pub fn only(&self, book: &str) -> Line {
        let line = self.lines(book).first();
        line.map_or_else(|| Line::new(ONLY.into()), |line| (**line).clone())
    }
}
