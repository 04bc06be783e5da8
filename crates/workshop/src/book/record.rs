//! Records: the lines of a book as typed values. `books.rs` declares each field once, with its type, key,
//! label and kind.

use coatings::can::Level;
use coatings::mix::{ChalkRecipe, SHEENS, Sheen, Thinner, chalk_recipe, thinner};
use coatings::{CanSize, Substrate, Tool};
use geometry::Kind;
use units::{Area, Day, Decimals, Density, Length, Mass, Volume};

use super::field::Bare;
use super::line::{Books, Line};
use super::quantity::{Quantity, read_amount};
use crate::document::Colour;
use crate::hours::read_hours;

/// A line of a book as typed values. A field that is empty or cannot be read has no value.
pub trait Record {
    /// The book's key in saved files.
    const BOOK: &'static str;

    /// Reads a line of that book.
    fn read(line: &Line) -> Self;
}

/// A value that a field can be read into.
pub(super) trait Value {
    fn read(line: &Line, key: &str) -> Self;
}

/// A share, from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Share(pub f64);

/// A temperature, in degrees Celsius.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Celsius(pub f64);

/// A working time.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct WorkTime {
    /// The time in hours.
    pub hours: f64,
}

impl WorkTime {
    /// Returns the time in minutes.
    pub fn minutes(self) -> f64 {
        self.hours * 60.0
    }
}

/// An amount of paint in a mix.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub enum Amount {
    /// Parts of the mix.
    Parts(f64),
    /// A weight.
    Mass(Mass),
    /// A volume.
    Volume(Volume),
}

impl Amount {
    /// Returns true if it is more than nothing.
    pub fn is_some(self) -> bool {
        match self {
            Amount::Parts(parts) => parts > 0.0,
            Amount::Mass(mass) => mass > Mass::ZERO,
            Amount::Volume(volume) => volume > Volume::ZERO,
        }
    }
}

impl Value for Option<Amount> {
    fn read(line: &Line, key: &str) -> Self {
        let (quantity, alone) =
            read_amount(Bare::Parts.quantities(), line.values.get(key)?, Decimals::Either).ok()?;
        let amount = line.meant.get(key).copied().unwrap_or(alone);
        Some(match quantity {
            Quantity::Parts => Amount::Parts(amount),
            Quantity::Volume => Amount::Volume(Volume::litres(amount)),
            _ => Amount::Mass(Mass::kilograms(amount)),
        })
    }
}

/// The working hours of one day: start and end in minutes after midnight, in order.
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

/// Returns the number in a field of this quantity, in internal units.
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

/// Declares enums for fields with fixed answers. Each answer has a key for saved files and a label.
macro_rules! answers {
    ($($(#[$doc:meta])* $name:ident { $($answer:ident = $key:literal, $label:literal;)* })*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum $name {
            $(#[doc = concat!("`", $key, "`: ", $label, ".")] $answer,)*
        }

        impl $name {
            pub(crate) const ANSWERS: &'static [(&'static str, &'static str)] = &[$(($key, $label)),*];

            /// Returns the answer's key in saved files.
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

/// Declares the books. Each book has a record type for its lines. Each field has a type, a key for saved
/// files, a label and a kind.
macro_rules! records {
    ($($(#[$doc:meta])* $name:ident = $key:literal (of_piece: $of_piece:literal, is_single: $is_single:literal) {
        $($field:ident: $type:ty = $field_key:literal, $label:literal, $kind:expr;)*
    })*) => {
        $(
            $(#[$doc])*
            #[derive(Clone, Debug, PartialEq)]
            pub struct $name {
                /// The line's id within its book.
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

        /// All books.
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
    /// Returns every line of a book, in the maker's order.
    pub fn all<R: Record>(&self) -> impl Iterator<Item = R> {
        self.lines(R::BOOK).iter().map(|line| R::read(line))
    }

    /// Returns the line of a single-line book. It has no values if nothing was written.
    pub fn one<R: Record>(&self) -> R {
        R::read(&self.only(R::BOOK))
    }

    /// Returns the line of a book with this id.
    pub fn find<R: Record>(&self, id: &str) -> Option<R> {
        self.line(R::BOOK, id).map(|line| R::read(line))
    }

    /// Returns true if a book has a line with this id.
    pub fn has<R: Record>(&self, id: &str) -> bool {
        self.line(R::BOOK, id).is_some()
    }
}
