//! Prices as a person types them, held in the hundredth part of the currency.

use std::fmt;

use units::{Decimals, in_digits_with, plain_number};

/// The largest accepted price of a can, in hundredths: a million.
pub const LARGEST_PRICE: u64 = 100_000_000;

/// Why a text is not a price.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum PriceError {
    /// There is nothing to read.
    Empty,
    /// It is negative.
    Negative,
    /// It is not one number, with or without a currency.
    NotANumber,
    /// More than two figures behind the decimal sign.
    TooManyDecimals,
    /// More than [`LARGEST_PRICE`].
    TooLarge,
}

impl fmt::Display for PriceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            PriceError::Empty | PriceError::NotANumber => "Use a number, like 45 or 12.50.",
            PriceError::Negative => "A price can't be less than 0.",
            PriceError::TooManyDecimals => "Use two decimals at most, like 12.50.",
            PriceError::TooLarge => "A price can't be more than 1,000,000. Check it.",
        })
    }
}

impl std::error::Error for PriceError {}

/// Checks a price in hundredths, such as one from a file; nothing is a price, negative is not.
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

/// Reads a price in the notation of a save file without values, as hundredths.
///
/// # Errors
/// A [`PriceError`] that says what is wrong.
///
/// # Example
/// ```
/// use coatings::can::read_price;
/// assert_eq!(read_price("12,50"), Ok(1250));
/// assert_eq!(read_price("$1,200.00"), Ok(120_000));
/// ```
pub fn read_price(text: &str) -> Result<u64, PriceError> {
    read_price_with(text, Decimals::Either)
}

/// The same where this sign stands before decimals. A currency may stand before the number or behind it, and the number
/// may be said in words; which currency it is, is not looked at.
///
/// # Errors
/// A [`PriceError`] that says what is wrong.
///
/// # Example
/// ```
/// use coatings::can::read_price_with;
/// use units::Decimals;
/// assert_eq!(read_price_with("1,250", Decimals::Point), Ok(125_000));
/// assert_eq!(read_price_with("forty five dollars", Decimals::Point), Ok(4500));
/// ```
pub fn read_price_with(text: &str, decimals: Decimals) -> Result<u64, PriceError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(PriceError::Empty);
    }
    let said = in_digits_with(text, |word| is_currency_word(word).then_some("$"));
    let text = without_currency(said.as_deref().unwrap_or(text));
    if text.starts_with(['-', '\u{2212}', '\u{2013}']) {
        return Err(PriceError::Negative);
    }
    let plain = plain_number(text, decimals).ok_or(PriceError::NotANumber)?;
    let (whole, behind) = plain.split_once('.').unwrap_or((&plain, "00"));
    let behind = match behind.len() {
        0 => return Err(PriceError::NotANumber),
        1 => format!("{behind}0"),
        2 => behind.to_owned(),
        _ => return Err(PriceError::TooManyDecimals),
    };
    let digits = whole.chars().chain(behind.chars()).filter_map(|c| c.to_digit(10));
    let price = digits.fold(0u64, |price, digit| {
        price.saturating_mul(10).saturating_add(u64::from(digit))
    });
    check_price(i64::try_from(price).unwrap_or(i64::MAX))
}

/// Spoken names of currencies.
fn is_currency_word(word: &str) -> bool {
    ["dollar", "dollars", "bucks", "euro", "euros", "pounds", "francs"]
        .iter()
        .any(|known| word.eq_ignore_ascii_case(known))
}

/// Signs of currencies; up to three letters may stand with one, as in `US$`.
const SIGNS: [char; 14] = [
    '$', '\u{20ac}', '\u{a3}', '\u{a5}', '\u{20a9}', '\u{20b9}', '\u{20ba}', '\u{20bd}', '\u{20b4}',
    '\u{20a6}', '\u{20ab}', '\u{20b1}', '\u{20aa}', '\u{20a1}',
];
/// Currencies that are written with small letters, beside the codes of three.
const SHORT: [&str; 6] = ["kr", "fr", "z\u{142}", "k\u{10d}", "ft", "lei"];

/// The text without a currency before or behind it; a minus before the sign stays.
fn without_currency(text: &str) -> &str {
    let is_currency = |text: &str| {
        let text = text.trim().trim_end_matches('.');
        let letters = text.chars().filter(|c| c.is_alphabetic()).count();
        let signs = text.chars().filter(|c| SIGNS.contains(c)).count();
        let is_code = signs == 0 && letters == 3 && text.chars().all(|c| c.is_ascii_alphabetic());
        let is_sign = signs == 1 && letters <= 3 && letters + signs == text.chars().count();
        is_code
            || is_sign
            || is_currency_word(text)
            || SHORT.iter().any(|short| text.to_lowercase() == *short)
    };
    let is_number = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '\u{2212}' | '\u{2013}');
    let is_digit = |c: char| c.is_ascii_digit();
    let first = text.find(is_digit).unwrap_or(0);
    let begin = text[..first].trim_end_matches(is_number).len();
    let end = text.rfind(is_digit).map_or(text.len(), |last| last + 1);
    let (before, behind) = (&text[..begin], &text[end..]);
    match (is_currency(before), is_currency(behind)) {
        // `-$5` is as much negative as `$-5`.
        _ if before.starts_with(['-', '\u{2212}', '\u{2013}']) => before,
        (true, _) if behind.is_empty() => text[begin..].trim(),
        (_, true) if before.is_empty() => text[..end].trim(),
        _ => text,
    }
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
            ("-$3", PriceError::Negative),
            ("$-3", PriceError::Negative),
            ("12 50", PriceError::NotANumber),
            ("3/0", PriceError::NotANumber),
            ("1,20.50", PriceError::NotANumber),
            ("1.200", PriceError::TooManyDecimals),
            ("nan", PriceError::NotANumber),
            ("abc", PriceError::NotANumber),
            ("$", PriceError::NotANumber),
            ("$45 USD", PriceError::NotANumber),
            ("1e3", PriceError::NotANumber),
            ("4 lb 5", PriceError::NotANumber),
            (".", PriceError::NotANumber),
            ("12.", PriceError::NotANumber),
            ("1000000.01", PriceError::TooLarge),
            ("99999999999999999999999999", PriceError::TooLarge),
        ] {
            assert_eq!(read_price(text), Err(error), "{text}");
        }
    }

    #[test]
    fn a_currency_may_stand_on_either_side() {
        for (text, hundredths) in [
            ("$45", 4500),
            ("$55", 5500),
            ("$ 1,250.50", 125_050),
            ("US$45", 4500),
            ("45 \u{20ac}", 4500),
            ("1.250,00 \u{20ac}", 125_000),
            ("USD 45", 4500),
            ("45 eur", 4500),
            ("CHF 1'250.50", 125_050),
            ("45 kr", 4500),
            ("45 kr.", 4500),
            ("45 dollars", 4500),
            ("forty five dollars", 4500),
            ("twelve hundred", 120_000),
            ("forty five", 4500),
        ] {
            assert_eq!(read_price(text), Ok(hundredths), "{text}");
        }
    }

    /// Where a point, and where a comma stands before decimals.
    #[test]
    fn thousands_are_those_of_the_place() {
        for (text, point, comma) in [
            ("1,250", Ok(125_000), Err(PriceError::TooManyDecimals)),
            ("1.250", Err(PriceError::TooManyDecimals), Ok(125_000)),
            ("1,200", Ok(120_000), Err(PriceError::TooManyDecimals)),
            ("1.250,00", Ok(125_000), Ok(125_000)),
            ("1,250.00", Ok(125_000), Ok(125_000)),
            ("12,50", Ok(1250), Ok(1250)),
        ] {
            assert_eq!(read_price_with(text, Decimals::Point), point, "{text}");
            assert_eq!(read_price_with(text, Decimals::Comma), comma, "{text}");
        }
    }

    #[test]
    fn prices_from_a_file() {
        assert_eq!(check_price(1250), Ok(1250));
        assert_eq!(check_price(0), Ok(0));
        assert_eq!(check_price(-1), Err(PriceError::Negative));
        assert_eq!(check_price(i64::MAX), Err(PriceError::TooLarge));
        assert_eq!(PriceError::Negative.to_string(), "A price can't be less than 0.");
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
