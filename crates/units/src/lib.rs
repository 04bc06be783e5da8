//! Quantities: lengths, areas, volumes and masses as a workshop writes them, with their exact sizes.
//!
//! Quantities are in meters, square meters, liters or kilograms. Only this crate knows the sizes of units,
//! how a person writes a tape reading, and how a number is rounded for display.
//!
//! Invariant: this crate knows nothing of furniture, paint or browsers.

mod day;
mod decimal;
pub mod exact;
mod length_text;
mod number_text;
mod numerals;
mod quantity;
mod show;
mod sorted;
mod spoken;
mod system;

pub use day::Day;
pub use length_text::{LengthError, LengthFault, as_typed, read_length, read_length_with};
pub use number_text::{Decimals, NumberError, in_other_signs, plain_number, read_range, read_range_with};
pub use numerals::Numerals;
pub use quantity::{Area, Density, Length, Mass, Volume};
pub use show::{
    Inches, show_area, show_length, show_length_in, show_number, show_pounds, show_volume, show_volume_beside,
};
pub use sorted::{SortedMap, SortedSet, in_order, sort_few, sort_numbers};
pub use spoken::{in_digits, in_digits_with};
pub use system::{LengthUnit, System, VolumeUnit};
