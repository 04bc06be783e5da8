//! Lines of books, and what can be read from them.

use std::rc::Rc;

use coatings::can::read_price;
use units::SortedMap;

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
}
