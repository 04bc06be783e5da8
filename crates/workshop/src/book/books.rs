//! The books, and the fields of each.

use super::field::{BookField, FieldKind};
use super::quantity::Quantity;

/// The name of the line of a book that has only one.
pub(crate) const ONLY: &str = "only";

/// A book.
#[derive(Debug, PartialEq, Eq)]
pub struct Book {
    /// Its name in saved files.
    pub key: &'static str,
    /// Whether each piece has one of its own; otherwise the workshop has one.
    pub of_piece: bool,
    /// Whether it has one line only.
    pub is_single: bool,
    /// Its fields.
    pub fields: &'static [BookField],
}

impl Book {
    /// The field that a value with this key stands in.
    pub fn field(&self, key: &str) -> Option<&'static BookField> {
        self.fields.iter().find(|field| field.has(key))
    }
}

/// The book with this key.
pub fn book(key: &str) -> Option<&'static Book> {
    BOOKS.iter().find(|book| book.key == key)
}

const fn once(key: &'static str, label: &'static str, kind: FieldKind) -> BookField {
    BookField::once(key, label, kind)
}

use FieldKind::{
    Can, Choice, Colour, Count, Day, Furniture, Hours, Material, Money, Of, Picture, Text, Tick, Tool, Words,
};
use Quantity::{Area, Density, Length, Mass, Share, Temperature, Time};

/// The most parts of a recipe.
pub(crate) const MAX_PARTS: usize = 8;

/// Every book.
pub static BOOKS: [Book; 10] = [
    // What pieces go for where the maker lives.
    Book {
        key: "prices",
        of_piece: false,
        is_single: false,
        fields: &[
            once("furniture", "Kind", Furniture),
            once("style", "Style", Text),
            once("price", "Price", Money),
            once(
                "is",
                "That was",
                Choice(&[("asked", "asked"), ("sold", "sold for")]),
            ),
            once("day", "Seen on", Day),
            once("gone", "Gone after days", Count(3650)),
        ],
    },
    // What stands in the workshop.
    Book {
        key: "shelf",
        of_piece: false,
        is_single: false,
        fields: &[
            once(
                "sort",
                "Sort",
                Choice(&[
                    ("can", "can"),
                    ("additive", "additive"),
                    ("abrasive", "abrasive"),
                    ("cloth", "cloth"),
                    ("decor", "decor"),
                ]),
            ),
            once("name", "Name", Text),
            once("material", "Material", Material),
            once("colour", "Colour", Colour),
            once("can", "Can", Can),
            once("weight", "Weighs now", Of(Mass)),
            once("tare", "Empty can weighs", Of(Mass)),
            once("density", "Density", Of(Density)),
            once("opened", "Opened on", Day),
            once("frozen", "It has frozen", Tick),
            once("count", "How many", Count(999)),
            once("price", "Paid", Money),
        ],
    },
    Book {
        key: "recipes",
        of_piece: false,
        is_single: false,
        fields: &[
            once("name", "Name", Text),
            once("colour", "Colour when dry", Colour),
            once("photo", "Photo", Picture),
            BookField::often("part", "Part", Text, MAX_PARTS),
            BookField::often("weight", "Weight", Of(Mass), MAX_PARTS),
            BookField::often("colour-of", "Its colour when dry", Colour, MAX_PARTS),
            BookField::often("density-of", "Its density", Of(Density), MAX_PARTS),
            once("note", "Note", Words),
        ],
    },
    Book {
        key: "batches",
        of_piece: false,
        is_single: false,
        fields: &[
            once("recipe", "Recipe", FieldKind::Line("recipes")),
            once("day", "Mixed on", Day),
            once("made", "Made", Of(Mass)),
            once("left", "Left", Of(Mass)),
            once("note", "Note", Words),
        ],
    },
    // What the maker settles once: money, hours, the room, the scale, abrasives.
    Book {
        key: "habits",
        of_piece: false,
        is_single: true,
        fields: &[
            once("hourly", "Wanted for an hour", Money),
            once("fee-share", "Fee of the marketplace", Of(Share)),
            once("fee", "Fee for each sale", Money),
            once("wear", "Wear of tools for a piece", Money),
            once("delivery", "Delivery of a piece", Money),
            once("mon", "Monday", Hours),
            once("tue", "Tuesday", Hours),
            once("wed", "Wednesday", Hours),
            once("thu", "Thursday", Hours),
            once("fri", "Friday", Hours),
            once("sat", "Saturday", Hours),
            once("sun", "Sunday", Hours),
            once("temperature", "Air of the workshop", Of(Temperature)),
            once("surface", "Surface of the piece", Of(Temperature)),
            once("humidity", "Humidity of the air", Of(Share)),
            once("scale-step", "Smallest step of the scale", Of(Mass)),
            once("sheet-yield", "A sheet of abrasive lasts for", Of(Area)),
        ],
    },
    // What is known of a piece besides its measurements.
    Book {
        key: "facts",
        of_piece: true,
        is_single: true,
        fields: &[
            once("bought", "Bought for", Money),
            once("asking", "Asking price", Money),
            once("sold", "Sold for", Money),
            once("sold-on", "Sold on", Day),
            once("begin", "Work begins on", Day),
            once("hours", "Hours of work", Of(Time)),
            once("delivery", "Delivery", Money),
            once(
                "age",
                "The old finish is from",
                Choice(&[
                    ("unknown", "I do not know"),
                    ("before-1978", "before 1978"),
                    ("later", "1978 or later"),
                ]),
            ),
            once(
                "lead",
                "Lead test of the old finish",
                Choice(&[
                    ("none", "not done"),
                    ("negative", "no lead found"),
                    ("positive", "lead found"),
                ]),
            ),
            once("stickers", "Stickers or their glue", Tick),
            once("smell", "It smells", Tick),
            once("loose", "Old finish comes off", Tick),
            once("rust", "Rusty hardware", Tick),
            once("hardware", "Knobs, pulls, hinges", Count(500)),
            once("holes", "Holes to fill", Count(500)),
            once("hole-width", "Width of a hole", Of(Length)),
            once("hole-depth", "Depth of a hole", Of(Length)),
            once("dents", "Dents to fill", Count(500)),
            once("dent-width", "Width of a dent", Of(Length)),
            once("dent-depth", "Depth of a dent", Of(Length)),
        ],
    },
    // What was done, by the name of the step.
    Book {
        key: "done",
        of_piece: true,
        is_single: false,
        fields: &[once("day", "Done on", Day)],
    },
    Book {
        key: "log",
        of_piece: true,
        is_single: false,
        fields: &[
            once("day", "Day", Day),
            once(
                "when",
                "When",
                Choice(&[
                    ("before", "before"),
                    ("during", "during the work"),
                    ("after", "after"),
                ]),
            ),
            once("photo", "Photo", Picture),
            once("note", "Note", Words),
        ],
    },
    // Leaf, stencils, transfers, pictures glued on.
    Book {
        key: "art",
        of_piece: true,
        is_single: false,
        fields: &[
            once(
                "sort",
                "Sort",
                Choice(&[
                    ("leaf", "leaf"),
                    ("stencil", "stencil"),
                    ("transfer", "transfer"),
                    ("paper", "paper glued on"),
                ]),
            ),
            once("name", "Where", Text),
            once("width", "Width", Of(Length)),
            once("height", "Height", Of(Length)),
            once("count", "How many", Count(99)),
            once("price", "Material for it costs", Money),
            once("minutes", "Work on it", Of(Time)),
        ],
    },
    // Cans weighed before and after a coat.
    Book {
        key: "weighings",
        of_piece: true,
        is_single: false,
        fields: &[
            once("material", "Material", Material),
            once("tool", "Tool", Tool),
            once("coats", "Coats", Count(9)),
            once("share", "Of its surface", Of(Share)),
            once("before", "Can before", Of(Mass)),
            once("after", "Can after", Of(Mass)),
            once("day", "Day", Day),
        ],
    },
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_name_is_given_twice() {
        for (place, book) in BOOKS.iter().enumerate() {
            assert!(
                BOOKS[..place].iter().all(|other| other.key != book.key),
                "{}",
                book.key
            );
            for (place, field) in book.fields.iter().enumerate() {
                let before = &book.fields[..place];
                assert!(
                    before.iter().all(|other| other.key != field.key),
                    "{} {}",
                    book.key,
                    field.key
                );
                assert!(!field.label.is_empty());
            }
        }
    }
}
