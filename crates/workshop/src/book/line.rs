//! Lines of books, and how to read values from them.

use std::rc::Rc;

use coatings::can::read_price;
use units::SortedMap;

/// A line of a book: the texts as written, by field key. Values of unknown fields are kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// The line's id, unique within its book. It never changes.
    pub id: Rc<str>,
    /// The texts, by field key.
    pub values: SortedMap<String, String>,
    /// The numbers of the texts that could be read as a different number on their own, by field key.
    pub(crate) meant: SortedMap<String, f64>,
}

impl Line {
    /// Creates an empty line.
    pub fn new(id: Rc<str>) -> Self {
        Line {
            id,
            values: SortedMap::new(),
            meant: SortedMap::new(),
        }
    }

    /// Returns the text of a field, or an empty string.
    pub fn text(&self, key: &str) -> &str {
        self.values.get(key).map_or("", String::as_str)
    }

    /// Returns the sum of money in a field, in hundredths.
    pub(super) fn money(&self, key: &str) -> Option<u64> {
        let text = self.values.get(key)?;
        let meant = self.meant.get(key).map(|hundredths| *hundredths as u64);
        meant.or_else(|| read_price(text).ok())
    }
}

/// The books of a workshop or a piece, by key. Unknown books are kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Books(pub(crate) SortedMap<String, Vec<Rc<Line>>>);

impl Books {
    /// Returns true if there are no books.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Returns the lines of a book, in the maker's order.
    pub fn lines(&self, book: &str) -> &[Rc<Line>] {
        self.0.get(book).map_or(&[], Vec::as_slice)
    }

    /// Returns the line of a book with this id.
    pub fn line(&self, book: &str, id: &str) -> Option<&Rc<Line>> {
        self.lines(book).iter().find(|line| &*line.id == id)
    }
}
