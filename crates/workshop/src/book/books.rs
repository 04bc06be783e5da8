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
        self.fields.iter().find(|field| field.key == key)
    }
}

/// The book with this key.
pub fn book(key: &str) -> Option<&'static Book> {
    BOOKS.iter().find(|book| book.key == key)
}

const fn once(key: &'static str, label: &'static str, kind: FieldKind) -> BookField {
    BookField { key, label, kind }
}

use FieldKind::{
    Can, Choice, Colour, Count, Day, Furniture, Ground, Hours, Material, Money, Of, Picture, Scale, Text,
    Tick, Tool, Words,
};
use Quantity::{Area, Density, Length, Share, Temperature, Time, Volume};

/// Every book.
pub static BOOKS: [Book; 15] = [
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
            once("material", "Material", Material),
            once("colour", "Colour", Colour),
            once("can", "Size of the can", Can),
            once(
                "level",
                "How full it is",
                Choice(&[
                    ("nearly-full", "nearly full"),
                    ("three-quarters", "about three quarters"),
                    ("half", "about half"),
                    ("quarter", "about a quarter"),
                    ("nearly-empty", "nearly empty"),
                ]),
            ),
            once("weight", "Weighs now", Scale),
            once("tare", "Empty can weighs", Scale),
            once("density", "Density on its label", Of(Density)),
            once("opened", "Opened on", Day),
            once("frozen", "It has frozen", Tick),
            once("note", "Note", Text),
        ],
    },
    // What stands there besides cans.
    Book {
        key: "stores",
        of_piece: false,
        is_single: false,
        fields: &[
            once(
                "kind",
                "What",
                Choice(&[
                    ("sheets", "abrasive sheets"),
                    ("leaf", "metal leaf"),
                    ("additive", "additive"),
                    ("decor", "decor"),
                ]),
            ),
            once(
                "grit",
                "Grit",
                Choice(&[
                    ("P80", "P80"),
                    ("P100", "P100"),
                    ("P120", "P120"),
                    ("P180", "P180"),
                    ("P220", "P220"),
                    ("P320", "P320"),
                    ("P400", "P400"),
                ]),
            ),
            once("name", "Name", Text),
            once("count", "How many there are", Count(10_000)),
            once("note", "Note", Text),
        ],
    },
    // What is in the basket already, by material and colour.
    Book {
        key: "basket",
        of_piece: false,
        is_single: false,
        fields: &[once("day", "On", Day)],
    },
    // What cans cost of materials without a label of the maker's own; the name of a line is `prices::line`.
    Book {
        key: "cans",
        of_piece: false,
        is_single: false,
        fields: &[
            once("material", "Material", Material),
            once("can", "Can", Can),
            once("price", "Price", Money),
        ],
    },
    // What is mixed, by weight.
    Book {
        key: "recipes",
        of_piece: false,
        is_single: false,
        fields: &[
            once("name", "Name", Text),
            once("colour", "Colour when dry", Colour),
            once("photo", "Photo", Picture),
            once("part-1", "Part 1", Text),
            once("weight-1", "Weight of part 1", Scale),
            once("colour-1", "Colour of part 1, dry", Colour),
            once("part-2", "Part 2", Text),
            once("weight-2", "Weight of part 2", Scale),
            once("colour-2", "Colour of part 2, dry", Colour),
            once("part-3", "Part 3", Text),
            once("weight-3", "Weight of part 3", Scale),
            once("colour-3", "Colour of part 3, dry", Colour),
            once("part-4", "Part 4", Text),
            once("weight-4", "Weight of part 4", Scale),
            once("colour-4", "Colour of part 4, dry", Colour),
            once("part-5", "Part 5", Text),
            once("weight-5", "Weight of part 5", Scale),
            once("colour-5", "Colour of part 5, dry", Colour),
            once("part-6", "Part 6", Text),
            once("weight-6", "Weight of part 6", Scale),
            once("colour-6", "Colour of part 6, dry", Colour),
            once("wanted", "Batch wanted", Scale),
            once("rest", "Left in the jar", Scale),
            once("note", "Note", Words),
        ],
    },
    // Chalk-type paint, by weight.
    Book {
        key: "chalk",
        of_piece: false,
        is_single: false,
        fields: &[
            once("name", "Name", Text),
            once("paint", "Paint by weight instead", Scale),
            once("volume", "Paint by volume", Of(Volume)),
            once(
                "recipe",
                "How much powder",
                Choice(&[
                    ("chalk-eighth", "1/2 cup and 1/4 cup water to a quart"),
                    ("chalk-quarter", "4 tbsp and 2 tbsp water to a cup"),
                    ("chalk-third", "1/3 cup and 2 to 3 tbsp water to a cup"),
                    ("chalk-half", "one part to two of paint"),
                ]),
            ),
            once("powder", "Powder of your own", Scale),
            once("water", "Water of your own", Scale),
            once("wanted", "Batch wanted", Of(Volume)),
            once(
                "sheen",
                "Sheen of the paint",
                Choice(&[
                    ("gloss", "gloss"),
                    ("semi-gloss", "semi-gloss"),
                    ("satin", "satin"),
                    ("eggshell", "eggshell"),
                    ("flat", "flat"),
                ]),
            ),
            once("material", "Kind of paint", Material),
            once("density", "Density on its label", Of(Density)),
            once("solids", "Volume solids on its label", Of(Share)),
            once("cup", "A US cup (237 mL) of powder weighs", Scale),
            once("note", "Note", Words),
        ],
    },
    // Paint thinned for the sprayer.
    Book {
        key: "thinning",
        of_piece: false,
        is_single: false,
        fields: &[
            once("material", "Material", Material),
            once("paint", "Paint", Of(Volume)),
            once("share", "Thinner, of that", Of(Share)),
            once("most", "Its label allows", Of(Share)),
            once("solids", "Volume solids on its label", Of(Share)),
            once(
                "thinner",
                "Thinned with",
                Choice(&[
                    ("water", "water"),
                    ("mineral-spirits", "mineral spirits"),
                    ("alcohol", "denatured alcohol"),
                ]),
            ),
            once("coats", "Coats without thinner", Count(20)),
        ],
    },
    // What was mixed; each names its recipe.
    Book {
        key: "batches",
        of_piece: false,
        is_single: false,
        fields: &[
            once("recipe", "Recipe", Text),
            once("day", "Mixed on", Day),
            once("made", "Made", Scale),
            once("left", "Left", Scale),
        ],
    },
    // Cans weighed before and after a job; each names the piece.
    Book {
        key: "weighings",
        of_piece: false,
        is_single: false,
        fields: &[
            once("day", "Day", Day),
            once("of", "Name of the piece in the file", Text),
            once("piece", "Piece", Text),
            once("material", "Material", Material),
            once("tool", "Tool", Tool),
            once("coats", "Coats", Count(20)),
            once(
                "ground",
                "What its first coat went onto (primed counts as sound)",
                Ground,
            ),
            once("area", "Area that it coated", Of(Area)),
            once("share", "Give or take", Of(Share)),
            once("before", "Can before the job", Scale),
            once("after", "Can after the job", Scale),
            once("sure", "It is right all the same", Tick),
        ],
    },
    // What the maker settles once.
    Book {
        key: "habits",
        of_piece: false,
        is_single: true,
        fields: &[
            once("hourly", "Wanted for an hour", Money),
            once("profit", "Profit wanted besides", Money),
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
            once("scale-step", "Smallest step of the scale", Scale),
            once("sheet-yield", "A sheet of abrasive lasts for", Of(Area)),
            once("sheet-price", "A sheet of abrasive costs", Money),
            once("sprayer", "There is a sprayer in the workshop", Tick),
            once("dilution", "Parts of water to one of cleaner", Count(200)),
        ],
    },
    // What is known of a piece besides its measurements.
    Book {
        key: "facts",
        of_piece: true,
        is_single: true,
        fields: &[
            once("bought", "Paid for it, or asked", Money),
            once("asking", "What you would ask for it", Money),
            once("sold", "Sold for", Money),
            once("sold-on", "Sold on", Day),
            once("begin", "Work begins on", Day),
            once("due", "To be ready on", Day),
            once("hours", "Hours of work", Of(Time)),
            once("materials", "Materials for it, all", Money),
            once("delivery", "Delivery of this piece", Money),
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
            once("loose", "Old finish comes off in places", Tick),
            once("loose-joints", "Loose joints", Tick),
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
    // Leaf, stencils, transfers and paper on it.
    Book {
        key: "art",
        of_piece: true,
        is_single: false,
        fields: &[
            once(
                "kind",
                "What",
                Choice(&[
                    ("leaf", "metal leaf"),
                    ("stencil", "stencil"),
                    ("transfer", "transfer"),
                    ("paper", "glued paper"),
                ]),
            ),
            once("place", "Where", Text),
            once("width", "Width of it", Of(Length)),
            once("height", "Height of it", Of(Length)),
            once("count", "How many", Count(500)),
            once("cover", "Covered of that", Of(Share)),
            once("sheet-width", "One sheet, width", Of(Length)),
            once("sheet-height", "One sheet, height", Of(Length)),
            once("price", "Price of one sheet", Money),
            once("hours", "Time for it", Of(Time)),
        ],
    },
    // How it went.
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
    // What was done, by the name of the step.
    Book {
        key: "done",
        of_piece: true,
        is_single: false,
        fields: &[once("day", "Done on", Day)],
    },
];

#[cfg(test)]
mod tests {
    use super::*;

    /// The answers are written out, as the tables of `coatings` are no constants; every key must be known there.
    #[test]
    fn recipes_sheens_and_thinners_are_those_of_the_trade() {
        let keys = |of: &str, field: &str| match book(of).unwrap().field(field).unwrap().kind {
            FieldKind::Choice(answers) => answers.iter().map(|(key, _)| *key).collect::<Vec<_>>(),
            _ => panic!("{of} {field}"),
        };
        use coatings::mix::{CHALK_RECIPES, SHEENS, THINNERS};
        assert!(
            CHALK_RECIPES
                .iter()
                .map(|recipe| recipe.key)
                .eq(keys("chalk", "recipe"))
        );
        assert!(
            coatings::can::LEVELS
                .iter()
                .map(|level| level.key)
                .eq(keys("shelf", "level"))
        );
        assert!(SHEENS.iter().map(|sheen| sheen.key).eq(keys("chalk", "sheen")));
        assert!(
            THINNERS
                .iter()
                .map(|thinner| thinner.key)
                .eq(keys("thinning", "thinner"))
        );
    }

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
