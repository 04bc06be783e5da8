//! Lines of books, and what can be read from them.

use std::rc::Rc;

use coatings::can::read_price;
use units::{Decimals, SortedMap};

use super::books::book;
use super::field::{Entered, FieldKind};

/// A line of a book: texts as they were written, by the key of the field. Values of fields that are not known here are
/// kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Its name within the book, given once.
    pub id: Rc<str>,
    /// The texts.
    pub values: SortedMap<String, String>,
    /// The numbers of those texts that alone would come to another number, as their fields tell them.
    pub(crate) meant: SortedMap<String, f64>,
}

impl Line {
    /// A line with nothing in it.
    pub fn new(id: Rc<str>) -> Self {
        Line {
            id,
            values: SortedMap::new(),
            meant: SortedMap::new(),
        }
    }

    /// The text in a field; empty if there is none.
    pub fn text(&self, key: &str) -> &str {
        self.values.get(key).map_or("", String::as_str)
    }

    /// The sum of money in a field, in hundredths.
    pub(super) fn money(&self, key: &str) -> Option<u64> {
        let text = self.values.get(key)?;
        let meant = self.meant.get(key).map(|hundredths| *hundredths as u64);
        meant.or_else(|| read_price(text).ok())
    }

    /// The text in a field of this book so that it comes to its number if it is entered once more.
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

    /// The text in a field of this book, as it is written where this sign stands before decimals.
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

/// The books of a workshop or of a piece, by their keys. Books that are not known here are kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Books(pub(crate) SortedMap<String, Vec<Rc<Line>>>);

impl Books {
    /// Whether nothing stands in them.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The lines of a book, in the maker's order.
    pub fn lines(&self, book: &str) -> &[Rc<Line>] {
        self.0.get(book).map_or(&[], Vec::as_slice)
    }

    /// A line of a book, by its name.
    pub fn line(&self, book: &str, id: &str) -> Option<&Rc<Line>> {
        self.lines(book).iter().find(|line| &*line.id == id)
    }

    /// How many pictures there are.
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

    /// The only line of a book that has one.
    pub fn only(&self, book: &str) -> Line {
        let line = self.lines(book).first();
        line.map_or_else(|| Line::new(super::books::ONLY.into()), |line| (**line).clone())
    }
}
