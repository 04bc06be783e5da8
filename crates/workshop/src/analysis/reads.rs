//! What each result reads of the books, declared once: the slices of the analysis are cut by it, and the page tells by it
//! which answers rest on a value that it refused.

use crate::book::{AIR, OF_MONEY, WEEK};

/// What a result reads of the books of the workshop and of its pieces. Every result of a piece also reads its
/// measurements and its finish.
#[derive(Debug)]
pub struct Reads {
    /// All that these results read.
    also: &'static [&'static Reads],
    /// Every line of these books.
    books: &'static [&'static str],
    /// These fields, by book.
    fields: &'static [(&'static str, &'static [&'static str])],
}

impl Reads {
    /// Whether a result reads this field of a book.
    pub fn has(&self, book: &str, field: &str) -> bool {
        let is_field = |(known, fields): &(&str, &[&str])| *known == book && fields.contains(&field);
        self.books.contains(&book)
            || self.fields.iter().any(is_field)
            || self.also.iter().any(|other| other.has(book, field))
    }

    /// Calls for each book that is read as a whole.
    pub(super) fn each_book(&self, of: &mut dyn FnMut(&'static str)) {
        self.also.iter().for_each(|other| other.each_book(of));
        self.books.iter().for_each(|book| of(book));
    }

    /// Calls for each list of fields, with its book.
    pub(super) fn each_list(&self, of: &mut dyn FnMut(&'static str, &'static [&'static str])) {
        self.also.iter().for_each(|other| other.each_list(of));
        self.fields.iter().for_each(|(book, fields)| of(book, fields));
    }
}

const NOTHING: Reads = Reads {
    also: &[],
    books: &[],
    fields: &[],
};

/// What is finished and how: the rates that weighed jobs teach.
pub(super) const JOB: Reads = Reads {
    books: &["weighings"],
    fields: &[("habits", &["scale-step"])],
    ..NOTHING
};

/// Areas and amounts, with what is on hand.
pub const AMOUNTS: Reads = Reads {
    also: &[&JOB],
    books: &["shelf"],
    ..NOTHING
};

/// Which cans to buy.
pub const CANS: Reads = Reads {
    also: &[&AMOUNTS],
    books: &["cans"],
    ..NOTHING
};

/// The comparison of tools.
pub const TOOLS: Reads = Reads {
    also: &[&CANS],
    fields: &[("habits", &["sprayer"])],
    ..NOTHING
};

/// The steps of preparing. They also read the lead test among the steps that are done.
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

/// What pieces cost and bring.
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

/// The account of a piece: besides, what such pieces go for nearby.
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

/// What preparing and art take besides cans.
pub const GOODS: Reads = Reads {
    also: &[&PREPARING],
    books: &["stores", "art", "done"],
    ..NOTHING
};

/// All that is to be bought.
pub const LIST: Reads = Reads {
    also: &[&SHOPPING, &GOODS],
    ..NOTHING
};

/// The schedule.
pub const DAYS: Reads = Reads {
    also: &[&PREPARING],
    books: &["done"],
    fields: &[
        ("habits", &WEEK),
        ("habits", &AIR),
        ("facts", &["begin", "due", "sold-on"]),
    ],
};
