//! Numbers as a label or a price tag writes them: `400`, `350-450`, `10,5`, `1 1/2`, `2 to 3`.

use std::fmt;

use crate::decimal::read_decimal;

/// Why a text is no number or range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NumberError {
    /// Nothing was written.
    Empty,
    /// A part of it is no number.
    NotANumber,
    /// A fraction over zero.
    OverZero,
}

impl fmt::Display for NumberError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            NumberError::Empty => "Nothing is written there. Type a number such as 400, or a range such as 350-450.",
            NumberError::NotANumber => {
                "That is not a number. Type one such as 400 or 10.5, or a range such as 350-450, without the unit."
            }
            NumberError::OverZero => "A fraction cannot stand over 0.",
        })
    }
}

impl std::error::Error for NumberError {}

/// Reads a number, or two with a dash or `to` between them, the lower first.
///
/// # Errors
/// If the text is empty or is not made of plain numbers; which of the two is larger is not looked at.
///
/// # Example
/// ```
/// assert_eq!(units::read_range("350-450"), Ok((350.0, 450.0)));
/// assert_eq!(units::read_range("1 1/2 to 2"), Ok((1.5, 2.0)));
/// assert_eq!(units::read_range("10,5"), Ok((10.5, 10.5)));
/// ```
pub fn read_range(text: &str) -> Result<(f64, f64), NumberError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(NumberError::Empty);
    }
    // A dash at the front is a sign, not a range.
    let dash = text
        .char_indices()
        .skip(1)
        .find(|(_, c)| matches!(c, '-' | '\u{2013}'));
    let parted = dash
        .map(|(at, dash)| (&text[..at], &text[at + dash.len_utf8()..]))
        .or_else(|| text.split_once("to"));
    match parted {
        Some((low, high)) => Ok((read_number(low)?, read_number(high)?)),
        None => read_number(text).map(|number| (number, number)),
    }
}

/// A whole number, a decimal with point or comma, a fraction, or a whole number and a fraction.
fn read_number(text: &str) -> Result<f64, NumberError> {
    let text = text.trim();
    let (whole, fraction) = match (text.split_once(' '), text.contains('/')) {
        (Some((whole, fraction)), true) => (whole, Some(fraction)),
        (None, true) => ("0", Some(text)),
        (_, false) => (text, None),
    };
    let whole = decimal(whole)?;
    let Some(fraction) = fraction else {
        return Ok(whole);
    };
    let (above, below) = fraction.split_once('/').ok_or(NumberError::NotANumber)?;
    let (above, below) = (decimal(above)?, decimal(below)?);
    if below == 0.0 {
        return Err(NumberError::OverZero);
    }
    Ok(whole + above / below)
}

fn decimal(text: &str) -> Result<f64, NumberError> {
    let text = text.trim();
    let plain = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '-');
    if !text.chars().all(plain) || text.len() > 20 {
        return Err(NumberError::NotANumber);
    }
    let text = text.replace(',', ".");
    let number = match text.strip_prefix('-') {
        Some(text) => read_decimal(text).map(|number| -number),
        None => read_decimal(&text),
    };
    number.ok_or(NumberError::NotANumber)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_and_ranges_as_labels_write_them() {
        let known = [
            ("400", (400.0, 400.0)),
            (" 350 \u{2013} 450 ", (350.0, 450.0)),
            ("0.5-.75", (0.5, 0.75)),
            ("2 to 4", (2.0, 4.0)),
            ("1/3", (1.0 / 3.0, 1.0 / 3.0)),
            ("-3", (-3.0, -3.0)),
            ("450-350", (450.0, 350.0)),
        ];
        for (text, range) in known {
            assert_eq!(read_range(text), Ok(range), "{text}");
        }
    }

    #[test]
    fn what_is_no_number_is_refused_with_words() {
        for (text, error) in [
            ("", NumberError::Empty),
            ("four", NumberError::NotANumber),
            ("400 ft2", NumberError::NotANumber),
            ("1,234.5", NumberError::NotANumber),
            ("nan", NumberError::NotANumber),
            ("inf", NumberError::NotANumber),
            ("1e9", NumberError::NotANumber),
            ("3-", NumberError::NotANumber),
            ("1/0", NumberError::OverZero),
        ] {
            assert_eq!(read_range(text), Err(error), "{text}");
            assert!(error.to_string().ends_with('.'));
        }
    }
}
