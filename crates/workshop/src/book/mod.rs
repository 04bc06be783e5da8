//! Books: what a maker keeps in lines. Price notes, the shelf, recipes and batches belong to the workshop; what was paid,
//! what was done and weighed, and the log belong to a piece.
//!
//! A line holds texts as they were written, by the key of the field. [`BOOKS`] says which fields a book has, and a field
//! says what it takes; so one way of editing, saving and showing serves every book. What follows from the lines is
//! worked out elsewhere, from [`Line`]'s readings.

mod books;
mod field;
mod line;
mod quantity;
mod record;
mod shown;

pub use books::{
    AIR, ArtKind, ArtLine, BOOKS, Book, CanPrice, ChalkLine, DoneStep, Facts, FinishAge, Habits, InBasket,
    LeadTest, LogLine, LogTime, MixRecipe, MixedBatch, OF_MONEY, PriceNote, ShelfCan, Side, Supply,
    SupplyKind, ThinLine, WEEK, Weighing, book,
};
pub(crate) use books::{ONLY, label};
pub use field::{BookField, Entered, FieldKind};
pub use line::{Books, Line};
pub use quantity::{Quantity, ValueError};
pub use record::{Celsius, Record, Share, WorkTime, WorkingHours};

/// The most lines in one book.
pub const MAX_LINES: usize = 2000;
/// The longest text of a value, in characters.
pub(crate) const MAX_TEXT: usize = 1000;
/// The largest picture, in characters of its address.
pub const MAX_PICTURE: usize = 160_000;
/// The most pictures in a workshop: 80 MB. A save file holds them beside the most pieces.
pub(crate) const MAX_PICTURES: usize = 500;
/// The most values in a line, known or not.
pub(crate) const MAX_VALUES: usize = 60;
