//! Numbers with the signs that people write here.

use std::cell::RefCell;

use units::Numerals;
use workshop::Reading;

thread_local! {
    // The locale of a browser does not change while a page is open, so it is set once and is no part of the state.
    static HERE: RefCell<Numerals> = RefCell::default();
}

/// The page begins: this is how numbers are written here.
pub fn write_numbers_as(numerals: Numerals) {
    HERE.replace(numerals);
}

/// A number as it is written here; it is given with a point before its decimals and nothing between its thousands.
pub fn number(plain: &str) -> String {
    HERE.with_borrow(|here| here.write(plain))
}

/// The same of a number with its unit behind a space.
pub fn measured(plain: &str) -> String {
    match plain.split_once(' ') {
        Some((figure, unit)) => format!("{} {unit}", number(figure)),
        None => number(plain),
    }
}

/// A reading as typed, with its unit, in the signs of here.
pub fn reading(of: &Reading) -> String {
    HERE.with_borrow(|here| of.with_unit_here(here.decimals()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_alone_are_written_as_here() {
        write_numbers_as(Numerals::of("1,5|1.000|10.000"));
        assert_eq!(number("1234.5"), "1.234,5");
        assert_eq!(measured("12.5 g"), "12,5 g");
        write_numbers_as(Numerals::default());
        assert_eq!(number("1234.5"), "1234.5");
    }
}
