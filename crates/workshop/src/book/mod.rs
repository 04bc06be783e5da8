//! Books: the records that a maker keeps in lines. The workshop has price notes, the shelf, recipes and
//! batches. Each piece has its costs, finished steps and log.
//!
//! A line holds texts as written, by field key. [`BOOKS`] lists the fields of each book, and each field says
//! what it accepts, so editing, saving and display are the same for every book. Other modules read [`Line`]
//! and do the calculations.

mod books;
mod field;
mod line;
mod quantity;
mod record;
mod shown;

pub use books::{
    AIR, ArtKind, ArtLine, BOOKS, Book, CanPart, CanPrice, ChalkLine, DoneStep, Facts, FinishAge, Habits,
    InBasket, LeadTest, LogLine, LogTime, MixRecipe, MixedBatch, OF_MONEY, PartsBy, PriceNote, ShelfCan,
    Side, Status, Supply, SupplyKind, ThinLine, WEEK, Weighing, book,
};
pub(crate) use books::{ONLY, label};
pub use field::{Bare, BookField, Entered, FieldKind};
pub use line::{Books, Line};
pub use quantity::{Quantity, ValueError, system_of_amount};
pub use record::{Amount, Celsius, Record, Share, WorkTime, WorkingHours};

/// The maximum number of lines in a book.
pub const MAX_LINES: usize = 2000;
/// The maximum length of a value, in characters.
pub(crate) const MAX_TEXT: usize = 1000;
/// The maximum size of a picture, in characters of its data URL.
pub const MAX_PICTURE: usize = 160_000;
/// The maximum number of pictures in a workshop: 80 MB. A save file can hold these and the maximum number of
/// pieces.
pub(crate) const MAX_PICTURES: usize = 500;
/// The maximum number of values in a line, counting unknown fields.
pub(crate) const MAX_VALUES: usize = 60;
