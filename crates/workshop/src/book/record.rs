//! Records: the lines of a book as typed values. What a field is, how it is saved and what it is read into is declared once,
//! in `books.rs`.

use coatings::can::Level;
use coatings::mix::{ChalkRecipe, SHEENS, Sheen, Thinner, chalk_recipe, thinner};
use coatings::{CanSize, Substrate, Tool};
use geometry::Kind;
use units::{Area, Day, Density, Length, Mass, Volume};

use super::line::{Books, Line};
use super::quantity::Quantity;
use crate::document::Colour;
use crate::hours::read_hours;

/// A line of a book as typed values. A field that is empty, or holds what cannot be read, has no value.
pub trait Record {
    /// The name of the book in saved files.
    const BOOK: &'static str;

    /// Reads a line of that book.
    fn read(line: &Line) -> Self;
}

/// A value that a field is read into.
pub(super) trait Value {
    fn read(line: &Line, key: &str) -> Self;
}

/// A share, from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Share(pub f64);

/// A temperature, degrees Celsius.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Celsius(pub f64);

/// A time of work.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct WorkTime {
    /// Hours.
    pub hours: f64,
}

impl WorkTime {
    /// Minutes.
    pub fn minutes(self) -> f64 {
        self.hours * 60.0
    }
}

/// The minutes of a day between which somebody works, in order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WorkingHours(pub Vec<(u32, u32)>);

impl Value for String {
    fn read(line: &Line, key: &str) -> Self {
        line.text(key).to_owned()
    }
}

impl Value for bool {
    fn read(line: &Line, key: &str) -> Self {
        !line.text(key).is_empty()
    }
}

/// Money, in hundredths of the currency.
impl Value for Option<u64> {
    fn read(line: &Line, key: &str) -> Self {
        line.money(key)
    }
}

/// A whole number.
impl Value for Option<u32> {
    fn read(line: &Line, key: &str) -> Self {
        line.text(key).parse().ok()
    }
}

/// The number in a field that is for this quantity, in the tool's own unit.
fn number(line: &Line, key: &str, quantity: Quantity) -> Option<f64> {
    let alone = || quantity.read(line.values.get(key)?).ok();
    line.meant.get(key).copied().or_else(alone)
}

macro_rules! numbers {
    ($($type:ty = $quantity:ident, $of:expr;)*) => {$(
        impl Value for Option<$type> {
            fn read(line: &Line, key: &str) -> Self {
                number(line, key, Quantity::$quantity).map($of)
            }
        }
    )*};
}

numbers! {
    Length = Length, Length::metres;
    Area = Area, Area::square_metres;
    Volume = Volume, Volume::litres;
    Mass = Mass, Mass::kilograms;
    Density = Density, Density::kilograms_per_litre;
    Share = Share, Share;
    Celsius = Temperature, Celsius;
    WorkTime = Time, |hours| WorkTime { hours };
}

macro_rules! texts {
    ($($type:ty = $of:expr;)*) => {$(
        impl Value for Option<$type> {
            fn read(line: &Line, key: &str) -> Self {
                $of(line.text(key))
            }
        }
    )*};
}

texts! {
    Day = Day::read;
    Colour = Colour::read;
    WorkingHours = |text: &str| read_hours(text).filter(|_| !text.is_empty()).map(WorkingHours);
    Kind = Kind::by_key;
    Substrate = |text| Substrate::ALL.into_iter().find(|ground| ground.key() == text);
    &'static Tool = coatings::tool;
    &'static CanSize = coatings::can;
    &'static Level = coatings::can::level;
    &'static ChalkRecipe = chalk_recipe;
    &'static Sheen = |text| SHEENS.iter().find(|sheen| sheen.key == text);
    &'static Thinner = thinner;
}

/// Declares answers of which one is chosen: the name of each in saved files, and its label.
macro_rules! answers {
    ($($(#[$doc:meta])* $name:ident { $($answer:ident = $key:literal, $label:literal;)* })*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum $name {
            $(#[doc = concat!("`", $key, "`: ", $label, ".")] $answer,)*
        }

        impl $name {
            pub(super) const ANSWERS: &'static [(&'static str, &'static str)] = &[$(($key, $label)),*];

            /// Its name in saved files.
            pub fn key(self) -> &'static str {
                match self {
                    $($name::$answer => $key,)*
                }
            }
        }

        impl super::record::Value for Option<$name> {
            fn read(line: &super::line::Line, key: &str) -> Self {
                match line.text(key) {
                    $($key => Some($name::$answer),)*
                    _ => None,
                }
            }
        }
    )*};
}
pub(super) use answers;

/// Declares the books: each with the record that its lines are read into, and each field with its type, its name in saved
/// files, its label and what it takes.
macro_rules! records {
    ($($(#[$doc:meta])* $name:ident = $key:literal (of_piece: $of_piece:literal, is_single: $is_single:literal) {
        $($field:ident: $type:ty = $field_key:literal, $label:literal, $kind:expr;)*
    })*) => {
        $(
            $(#[$doc])*
            #[derive(Clone, Debug, PartialEq)]
            pub struct $name {
                /// The name of the line within its book.
                pub id: std::rc::Rc<str>,
                $(#[doc = $label] pub $field: $type,)*
            }

            impl super::record::Record for $name {
                const BOOK: &'static str = $key;

                fn read(line: &super::line::Line) -> Self {
                    $name {
                        id: std::rc::Rc::clone(&line.id),
                        $($field: super::record::Value::read(line, $field_key),)*
                    }
                }
            }
        )*

        /// Every book.
        pub static BOOKS: &[Book] = &[$(Book {
            key: $key,
            of_piece: $of_piece,
            is_single: $is_single,
            fields: &[$(BookField { key: $field_key, label: $label, kind: $kind },)*],
        },)*];
    };
}
pub(super) use records;

impl Books {
    /// Every line of a book, in the maker's order.
    pub fn all<R: Record>(&self) -> impl Iterator<Item = R> {
        self.lines(R::BOOK).iter().map(|line| R::read(line))
    }

    /// The line of a book that has only one; without values where there is none.
    pub fn one<R: Record>(&self) -> R {
        R::read(&self.only(R::BOOK))
    }

    /// The line of a book with this name.
    pub fn find<R: Record>(&self, id: &str) -> Option<R> {
        self.line(R::BOOK, id).map(|line| R::read(line))
    }

    /// Whether a line of a book has this name.
    pub fn has<R: Record>(&self, id: &str) -> bool {
        self.line(R::BOOK, id).is_some()
    }
}
