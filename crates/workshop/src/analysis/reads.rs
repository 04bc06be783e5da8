//! The book entries that each result reads. The analysis builds its slices from these lists, and the page
//! uses them to tell which answers are affected by a refused value.

use crate::book::{AIR, OF_MONEY, WEEK};

/// The entries of the books of the workshop and its pieces that a result reads. Every result of a piece also
/// reads its measurements and its finish.
#[derive(Debug)]
pub struct Reads {
    /// Other results whose entries are read too.
    also: &'static [&'static Reads],
    /// Books read in full.
    books: &'static [&'static str],
    /// Fields read, by book.
    fields: &'static [(&'static str, &'static [&'static str])],
}

impl Reads {
    /// Returns true if the result reads this field of a book.
    pub fn has(&self, book: &str, field: &str) -> bool {
        let is_field = |(known, fields): &(&str, &[&str])| *known == book && fields.contains(&field);
        self.books.contains(&book)
            || self.fields.iter().any(is_field)
            || self.also.iter().any(|other| other.has(book, field))
    }

    /// Calls a function for each book that is read in full.
    pub(super) fn each_book(&self, of: &mut dyn FnMut(&'static str)) {
        self.also.iter().for_each(|other| other.each_book(of));
        self.books.iter().for_each(|book| of(book));
    }

    /// Calls a function for each list of fields, with its book.
    pub(super) fn each_list(&self, of: &mut dyn FnMut(&'static str, &'static [&'static str])) {
        self.also.iter().for_each(|other| other.each_list(of));
        self.fields.iter().for_each(|(book, fields)| of(book, fields));
    }
}

/// The facts that say how far a piece is.
const STATUS: [&str; 3] = ["status", "sold", "sold-on"];

const NOTHING: Reads = Reads {
    also: &[],
    books: &[],
    fields: &[],
};

/// The finish: the rates learned from weighed jobs.
pub(super) const JOB: Reads = Reads {
    books: &["weighings"],
    fields: &[("habits", &["scale-step"])],
    ..NOTHING
};

/// Areas and amounts, and what is on hand.
pub const AMOUNTS: Reads = Reads {
    also: &[&JOB],
    books: &["shelf"],
    ..NOTHING
};

/// The cans to buy.
pub const CANS: Reads = Reads {
    also: &[&AMOUNTS],
    books: &["cans"],
    fields: &[("habits", &["reserve"])],
};

/// The comparison of tools.
pub const TOOLS: Reads = Reads {
    also: &[&CANS],
    fields: &[("habits", &["sprayer"])],
    ..NOTHING
};

/// The preparation steps. They also read the lead test among the finished steps.
pub const PREPARING: Reads = Reads {
    also: &[&JOB],
    fields: &[
        ("habits", &["sheet-yield", "dilution"]),
        (
            "facts",
            &[
                "age",
                "lead",
                "stickers",
                "loose",
                "loose-joints",
                "rust",
                "hardware",
                "holes",
                "hole-width",
                "hole-depth",
                "dents",
                "dent-width",
                "dent-depth",
            ],
        ),
    ],
    ..NOTHING
};

/// The costs and earnings of pieces.
pub const EARNINGS: Reads = Reads {
    also: &[&CANS, &PREPARING],
    books: &["art"],
    fields: &[
        ("habits", &OF_MONEY),
        (
            "facts",
            &["bought", "asking", "sold", "hours", "materials", "delivery"],
        ),
    ],
};

/// The account of a piece. It also reads prices of similar pieces nearby.
pub const MONEY: Reads = Reads {
    also: &[&EARNINGS],
    books: &["prices"],
    ..NOTHING
};

/// The cans for all pieces.
pub const SHOPPING: Reads = Reads {
    also: &[&CANS],
    books: &["done"],
    ..NOTHING
};

/// The materials that have all their coats.
pub const COATED: Reads = Reads {
    also: &[&JOB],
    books: &["done"],
    ..NOTHING
};

/// The supplies besides cans.
pub const GOODS: Reads = Reads {
    also: &[&PREPARING],
    books: &["stores", "art", "done"],
    ..NOTHING
};

/// The supplies on hand, and what the pieces with work ahead take of them.
pub(super) const STORES: Reads = Reads {
    also: &[&GOODS],
    fields: &[("facts", &STATUS)],
    ..NOTHING
};

/// The shopping list. The status of the pieces says which are left out of it.
pub const LIST: Reads = Reads {
    also: &[&SHOPPING, &STORES],
    ..NOTHING
};

/// The schedule.
pub const DAYS: Reads = Reads {
    also: &[&PREPARING],
    books: &["done"],
    fields: &[
        ("habits", &WEEK),
        ("habits", &AIR),
        ("facts", &["begin", "due"]),
        ("facts", &STATUS),
    ],
};
