//! Prices as a person types them, held in the hundredth part of the currency.

use std::fmt;

/// The largest price of a can that is believed, in hundredths: a million.
pub const LARGEST_PRICE: u64 = 100_000_000;

/// Why something is not the price of a can.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum PriceError {
    /// There is nothing to read.
    Empty,
    /// It is less than nothing.
    Negative,
    /// A character that has no meaning in a price, and its place counted from 0.
    Character(char, usize),
    /// No figure, or none behind the decimal sign.
    NumberMissing,
    /// More than two figures behind the decimal sign.
    TooManyDecimals,
    /// More than [`LARGEST_PRICE`].
    TooLarge,
}

impl fmt::Display for PriceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PriceError::Empty => write!(f, "No price yet. Write what one can costs, such as 12.50."),
            PriceError::Negative => write!(
                f,
                "The price is less than nothing. Write 0 for a can that is free."
            ),
            PriceError::Character(c, at) => write!(
                f,
                "Price, character {}: \u{201c}{c}\u{201d} does not belong there. Write figures and one point, such as 12.50.",
                at + 1
            ),
            PriceError::NumberMissing => write!(
                f,
                "The price lacks figures. Write what one can costs, such as 12.50."
            ),
            PriceError::TooManyDecimals => write!(
                f,
                "The price has more than two figures after the point. Write 1200 for a thousand two hundred, 1.20 for one and twenty hundredths."
            ),
            PriceError::TooLarge => write!(
                f,
                "The price is above {} for one can. Check where the point stands.",
                LARGEST_PRICE / 100
            ),
        }
    }
}

impl std::error::Error for PriceError {}

/// Checks a price in hundredths, such as one from a file; nothing is a price, less than nothing is not.
///
/// # Errors
/// [`PriceError::Negative`] or [`PriceError::TooLarge`].
pub fn check_price(hundredths: i64) -> Result<u64, PriceError> {
    let price = u64::try_from(hundredths).map_err(|_| PriceError::Negative)?;
    if price > LARGEST_PRICE {
        return Err(PriceError::TooLarge);
    }
    Ok(price)
}

/// Reads a price as a person types it, with a point or a comma, as hundredths.
///
/// # Errors
/// A [`PriceError`] that says what is wrong. A sign for thousands is not read, because `1,200` may be either.
///
/// # Example
/// ```
/// use coatings::can::read_price;
/// assert_eq!(read_price("12,50"), Ok(1250));
/// assert!(read_price("1,200").is_err());
/// ```
pub fn read_price(text: &str) -> Result<u64, PriceError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(PriceError::Empty);
    }
    let mut price: u64 = 0;
    let mut whole = 0;
    let mut decimals: Option<u32> = None;
    for (at, c) in text.chars().enumerate() {
        match (c, c.to_digit(10), decimals) {
            ('-' | '\u{2212}' | '\u{2013}', ..) if at == 0 => return Err(PriceError::Negative),
            ('.' | ',', _, None) => decimals = Some(0),
            (_, Some(_), Some(2..)) => return Err(PriceError::TooManyDecimals),
            (_, Some(digit), _) => {
                price = price.saturating_mul(10).saturating_add(u64::from(digit));
                match &mut decimals {
                    Some(count) => *count += 1,
                    None => whole += 1,
                }
            }
            _ => return Err(PriceError::Character(c, at)),
        }
    }
    if decimals == Some(0) || (whole == 0 && decimals.is_none()) {
        return Err(PriceError::NumberMissing);
    }
    let hundredths = price.saturating_mul([100, 10, 1][decimals.unwrap_or(0) as usize]);
    check_price(i64::try_from(hundredths).unwrap_or(i64::MAX))
}

/// A price as it is shown, from hundredths; the currency has no name here.
///
/// # Example
/// ```
/// assert_eq!(coatings::can::show_price(2450), "24.50");
/// ```
pub fn show_price(hundredths: u64) -> String {
    format!("{}.{:02}", hundredths / 100, hundredths % 100)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn prices_as_people_write_them() {
        for (text, hundredths) in [
            ("12.50", 1250),
            ("12,50", 1250),
            ("12", 1200),
            (" 12.5 ", 1250),
            ("0", 0),
            (".50", 50),
            ("007", 700),
            ("1000000", LARGEST_PRICE),
        ] {
            assert_eq!(read_price(text), Ok(hundredths), "{text}");
        }
    }

    #[test]
    fn what_is_no_price_is_refused_with_its_reason() {
        for (text, error) in [
            ("", PriceError::Empty),
            ("  ", PriceError::Empty),
            ("-3", PriceError::Negative),
            ("\u{2212}3", PriceError::Negative),
            ("$12", PriceError::Character('$', 0)),
            ("12 50", PriceError::Character(' ', 2)),
            ("1,200.50", PriceError::TooManyDecimals),
            ("1,20.50", PriceError::Character('.', 4)),
            ("1.200", PriceError::TooManyDecimals),
            ("nan", PriceError::Character('n', 0)),
            ("1e3", PriceError::Character('e', 1)),
            (".", PriceError::NumberMissing),
            ("12.", PriceError::NumberMissing),
            ("1000000.01", PriceError::TooLarge),
            ("99999999999999999999999999", PriceError::TooLarge),
        ] {
            assert_eq!(read_price(text), Err(error), "{text}");
        }
    }

    #[test]
    fn prices_from_a_file() {
        assert_eq!(check_price(1250), Ok(1250));
        assert_eq!(check_price(0), Ok(0));
        assert_eq!(check_price(-1), Err(PriceError::Negative));
        assert_eq!(check_price(i64::MAX), Err(PriceError::TooLarge));
        assert_eq!(
            PriceError::Negative.to_string(),
            "The price is less than nothing. Write 0 for a can that is free."
        );
    }

    proptest! {
        #[test]
        fn any_text_gives_a_price_or_a_reason(text in "\\PC{0,30}") {
            match read_price(&text) {
                Ok(price) => prop_assert!(price <= LARGEST_PRICE),
                Err(error) => prop_assert!(!error.to_string().is_empty()),
            }
        }

        #[test]
        fn what_is_written_with_two_decimals_is_read_back(price in 0..=LARGEST_PRICE) {
            prop_assert_eq!(read_price(&format!("{}.{:02}", price / 100, price % 100)), Ok(price));
        }
    }
}
