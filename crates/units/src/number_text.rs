//! Numbers as a label or a price tag writes them: `400`, `350-450`, `10,5`, `1 1/2`, `2 to 3`, `1,250.50`, `1.250,50`.

use std::fmt;

use crate::decimal::read_decimal;
use crate::spoken::in_digits_with;

/// The decimal sign. It matters only where a text can mean two numbers, as `1,250` and `1.250` can.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Decimals {
    /// A point, as in `1,250.50`.
    Point,
    /// A comma, as in `1.250,50`.
    Comma,
    /// Either: for saved numbers without a value beside them.
    #[default]
    Either,
}

/// Why a text is not a number or range.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NumberError {
    /// Nothing was written.
    Empty,
    /// A part of it is not a number.
    NotANumber,
    /// A fraction over zero.
    OverZero,
    /// Three whole numbers that are a fraction if a line is drawn between the last two.
    Perhaps(String),
}

impl fmt::Display for NumberError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NumberError::Empty | NumberError::NotANumber => f.write_str("Use a number, like 400 or 10.5."),
            NumberError::OverZero => f.write_str("The bottom of a fraction can't be 0."),
            NumberError::Perhaps(text) => write!(f, "Did you mean {text}?"),
        }
    }
}

impl std::error::Error for NumberError {}

/// Reads a number, or two with a dash or `to` between them, the lower first, as a save file without values has it.
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
    read_range_with(text, Decimals::Either)
}

/// The same with this decimal sign. Numbers may be spoken words.
///
/// # Errors
/// If the text is empty or is not made of plain numbers.
///
/// # Example
/// ```
/// use units::{Decimals, read_range_with};
/// assert_eq!(read_range_with("1,250", Decimals::Point), Ok((1250.0, 1250.0)));
/// assert_eq!(read_range_with("1,250", Decimals::Comma), Ok((1.25, 1.25)));
/// assert_eq!(read_range_with("two and a half to three", Decimals::Point), Ok((2.5, 3.0)));
/// ```
pub fn read_range_with(text: &str, decimals: Decimals) -> Result<(f64, f64), NumberError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(NumberError::Empty);
    }
    // A dash at the front is a sign and one in a word a joint; neither makes a range.
    let dash = text
        .char_indices()
        .skip(1)
        .filter(|_| !text.contains(char::is_alphabetic))
        .find(|(_, c)| matches!(c, '-' | '\u{2013}'));
    let parted = dash
        .map(|(at, dash)| (&text[..at], &text[at + dash.len_utf8()..]))
        .or_else(|| text.split_once(" to "))
        .or_else(|| {
            text.split_once("to")
                .filter(|_| in_digits_with(text, |_| None).is_none())
        });
    let number = |text: &str| read_number(text, decimals);
    match parted {
        Some((low, high)) => Ok((number(low)?, number(high)?)),
        None => number(text).map(|number| (number, number)),
    }
}

/// A whole number, a decimal, a fraction, or a whole number and a fraction.
fn read_number(text: &str, decimals: Decimals) -> Result<f64, NumberError> {
    let said = in_digits_with(text, |_| None);
    let decimals = of_said(text, said.as_deref(), decimals);
    let text = said.as_deref().unwrap_or(text).trim();
    let (whole, fraction) = match (text.rsplit_once(' '), text.contains('/')) {
        (Some((whole, fraction)), true) => (whole, Some(fraction)),
        (None, true) => ("0", Some(text)),
        (_, false) => (text, None),
    };
    let signed = |text: &str| {
        let (sign, text) = match text.trim().strip_prefix(['-', '\u{2212}']) {
            Some(text) => (-1.0, text),
            None => (1.0, text.trim()),
        };
        let number = plain_number(text, decimals).and_then(|text| read_decimal(&text));
        number.map(|number| sign * number).ok_or(NumberError::NotANumber)
    };
    let whole = signed(whole).map_err(|error| perhaps(text).map_or(error, NumberError::Perhaps))?;
    let Some(fraction) = fraction else {
        return Ok(whole);
    };
    let (above, below) = fraction.split_once('/').ok_or(NumberError::NotANumber)?;
    let (above, below) = (signed(above)?, signed(below)?);
    if below == 0.0 {
        return Err(NumberError::OverZero);
    }
    Ok(whole + above / below)
}

/// A spoken `point` is always the decimal sign.
pub(crate) fn of_said(text: &str, said: Option<&str>, decimals: Decimals) -> Decimals {
    match said.is_some_and(|said| said.contains('.')) && !text.contains('.') {
        true => Decimals::Point,
        false => decimals,
    }
}

/// `33 7 8` with the line that is missing in it, if the last two numbers can be a fraction of an inch or a cup.
pub(crate) fn perhaps(text: &str) -> Option<String> {
    let mut words = text.split_whitespace();
    let (whole, above, below) = (words.next()?, words.next()?, words.next()?);
    let small = |text: &str| Some(text).filter(|text| text.len() <= 2)?.parse::<u32>().ok();
    let is_fraction = matches!(small(below)?, 2 | 3 | 4 | 8 | 16 | 32 | 64) && small(above)? < small(below)?;
    let is_whole = whole.bytes().all(|byte| byte.is_ascii_digit());
    (is_fraction && is_whole && words.next().is_none()).then(|| format!("{whole} {above}/{below}"))
}

/// A number with a point before its decimals and nothing between its thousands; `None` if the text is not one number.
///
/// Points, commas, spaces and apostrophes may separate thousands. If a number has both a point and a comma,
/// the last one is the decimal sign.
///
/// # Example
/// ```
/// use units::{Decimals, plain_number};
/// let plain = |text| plain_number(text, Decimals::Point);
/// assert_eq!(plain("1.250,00").as_deref(), Some("1250.00"));
/// assert_eq!(plain("1,250,000").as_deref(), Some("1250000"));
/// assert_eq!(plain("1,20.50"), None);
/// ```
pub fn plain_number(text: &str, decimals: Decimals) -> Option<String> {
    const LONGEST: usize = 40;
    let kind = |c: char| match c {
        '\u{2019}' => '\'',
        c if c.is_whitespace() => ' ',
        c => c,
    };
    let chars: Vec<char> = text.trim().chars().map(kind).collect();
    let is_mark = |c: &char| matches!(c, '.' | ',' | '\'' | ' ');
    if chars.len() > LONGEST || !chars.iter().all(|c| c.is_ascii_digit() || is_mark(c)) {
        return None;
    }
    let marks: Vec<usize> = (0..chars.len()).filter(|at| is_mark(&chars[*at])).collect();
    let sign_at = marks.last().copied().filter(|last| {
        let sign = chars[*last];
        let alike = marks.iter().filter(|at| chars[**at] == sign).count();
        let may_be_thousands = chars.len() - last == 4 && (1..=3).contains(last) && chars[0] != '0';
        match (sign, marks.len()) {
            ('.', 1) if may_be_thousands => decimals != Decimals::Comma,
            (',', 1) if may_be_thousands => decimals != Decimals::Point,
            ('.' | ',', _) => alike == 1,
            _ => false,
        }
    });
    let (whole, behind) = chars.split_at(sign_at.unwrap_or(chars.len()));
    let mut groups = whole.split(is_mark);
    let first = groups.next()?;
    let is_grouped = marks.len() > usize::from(sign_at.is_some());
    let mark = whole.iter().find(|c| is_mark(c));
    let fits = !is_grouped
        || ((1..=3).contains(&first.len())
            && first[0] != '0'
            && groups.all(|group| group.len() == 3)
            && whole.iter().filter(|c| is_mark(c)).all(|c| Some(c) == mark));
    let mut plain: String = whole.iter().filter(|c| !is_mark(c)).collect();
    if let Some((_, digits)) = behind.split_first() {
        plain.push('.');
        plain.extend(digits);
    }
    fits.then_some(plain)
}

/// A text with points and commas swapped: the same number with the other decimal sign.
///
/// # Example
/// ```
/// assert_eq!(units::in_other_signs("1,250.00"), "1.250,00");
/// ```
pub fn in_other_signs(text: &str) -> String {
    let other = |c| match c {
        '.' => ',',
        ',' => '.',
        c => c,
    };
    text.chars().map(other).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use Decimals::{Comma, Either, Point};

    #[test]
    fn numbers_and_ranges_as_labels_write_them() {
        let known = [
            ("400", (400.0, 400.0)),
            (" 350 \u{2013} 450 ", (350.0, 450.0)),
            ("0.5-.75", (0.5, 0.75)),
            ("2 to 4", (2.0, 4.0)),
            ("2to4", (2.0, 4.0)),
            ("1/3", (1.0 / 3.0, 1.0 / 3.0)),
            ("-3", (-3.0, -3.0)),
            ("450-350", (450.0, 350.0)),
            ("1,234.5", (1234.5, 1234.5)),
            ("two to three", (2.0, 3.0)),
            ("thirty-three and 3 quarters", (33.75, 33.75)),
        ];
        for (text, range) in known {
            assert_eq!(read_range(text), Ok(range), "{text}");
        }
    }

    /// Each text where a point, where a comma and where either stands before decimals.
    #[test]
    fn the_sign_here_decides_only_what_can_be_read_in_two_ways() {
        for (text, point, comma, either) in [
            ("1,250", 1250.0, 1.25, 1.25),
            ("1.250", 1.25, 1250.0, 1.25),
            ("1,250.00", 1250.0, 1250.0, 1250.0),
            ("1.250,00", 1250.0, 1250.0, 1250.0),
            ("1.234,50", 1234.5, 1234.5, 1234.5),
            ("1,250,000", 1.25e6, 1.25e6, 1.25e6),
            ("1 250", 1250.0, 1250.0, 1250.0),
            ("1\u{202f}250,5", 1250.5, 1250.5, 1250.5),
            ("1'250.50", 1250.5, 1250.5, 1250.5),
            ("1\u{2019}250", 1250.0, 1250.0, 1250.0),
            ("12,50", 12.5, 12.5, 12.5),
            ("0,250", 0.25, 0.25, 0.25),
            ("0.250", 0.25, 0.25, 0.25),
            (".250", 0.25, 0.25, 0.25),
            ("1250,125", 1250.125, 1250.125, 1250.125),
        ] {
            for (decimals, value) in [(Point, point), (Comma, comma), (Either, either)] {
                assert_eq!(
                    read_range_with(text, decimals),
                    Ok((value, value)),
                    "{text}, {decimals:?}"
                );
            }
        }
        for text in [
            "1,20.50",
            "1.2.3",
            "1,25,000",
            "12 50",
            "1 250'000",
            "0,250,000",
            ".",
            ",",
        ] {
            for decimals in [Point, Comma, Either] {
                assert!(read_range_with(text, decimals).is_err(), "{text}, {decimals:?}");
            }
        }
    }

    #[test]
    fn what_is_no_number_is_refused_with_words() {
        for (text, error) in [
            ("", NumberError::Empty),
            ("lots", NumberError::NotANumber),
            ("400 ft2", NumberError::NotANumber),
            ("nan", NumberError::NotANumber),
            ("inf", NumberError::NotANumber),
            ("1e9", NumberError::NotANumber),
            ("3-", NumberError::NotANumber),
            ("1/0", NumberError::OverZero),
            ("3/0", NumberError::OverZero),
        ] {
            assert_eq!(read_range(text), Err(error.clone()), "{text}");
            assert!(error.to_string().ends_with('.'));
        }
        let asked = read_range("33 7 8").unwrap_err().to_string();
        assert_eq!(asked, "Did you mean 33 7/8?");
    }
}
