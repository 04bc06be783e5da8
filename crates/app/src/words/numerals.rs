//! Numbers in the format of the locale.

use std::cell::RefCell;

use units::Numerals;
use workshop::Reading;

thread_local! {
    // The locale does not change while a page is open. It is set once and is not part of the state.
    static HERE: RefCell<Numerals> = RefCell::default();
}

/// Sets the number format when the page starts.
pub fn write_numbers_as(numerals: Numerals) {
    HERE.replace(numerals);
}

/// Formats a plain number, which has a decimal point and no grouping.
pub fn number(plain: &str) -> String {
    HERE.with_borrow(|here| here.write(plain))
}

/// Formats a plain number that is followed by a space and its unit.
pub fn measured(plain: &str) -> String {
    match plain.split_once(' ') {
        Some((figure, unit)) => format!("{} {unit}", number(figure)),
        None => number(plain),
    }
}

/// Formats a reading as typed, with its unit.
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
