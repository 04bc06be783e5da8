//! The parts of a written length: numbers, fractions, signs and units.

use super::error::{LengthError, LengthFault, fault};
use crate::LengthUnit;
use crate::decimal::read_decimal;
use crate::number_text::{Decimals, plain_number};

/// Longest text that is read at all; a tape reading is far shorter.
pub(super) const LONGEST_TEXT: usize = 60;

#[derive(Clone, Debug, PartialEq)]
pub(super) enum Token {
    /// A number, and whether it was written with a decimal sign.
    Number {
        value: f64,
        decimal: bool,
    },
    /// A single-character fraction such as ⅞.
    Vulgar(f64),
    Slash,
    Dash,
    Unit(LengthUnit),
}

pub(super) type Placed = (usize, Token);

/// The parts of a text; where thousands may be `spaced`, three figures behind a space can belong to those before it.
pub(super) fn tokens(text: &str, decimals: Decimals, spaced: bool) -> Result<Vec<Placed>, LengthError> {
    let chars: Vec<char> = text.chars().collect();
    if chars.len() > LONGEST_TEXT {
        return Err(fault(LONGEST_TEXT, LengthFault::TooLong));
    }
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(&c) = chars.get(at) {
        let start = at;
        at += 1;
        let token = match c {
            c if c.is_whitespace() => continue,
            '0'..='9' | '.' | ',' => {
                at = end_of_number(&chars, at);
                while spaced && is_thousands(&chars, start, at) {
                    at = end_of_number(&chars, at + 1);
                }
                number(&chars[start..at], start, decimals)?
            }
            '/' | '\u{2044}' | '\u{2215}' => Token::Slash,
            '-' | '\u{2010}' | '\u{2011}' | '\u{2013}' => Token::Dash,
            '\u{2212}' => return Err(fault(start, LengthFault::Negative)),
            '\'' | '\u{2019}' | '\u{2032}' => {
                // Two single marks are how many people write inches.
                if chars
                    .get(at)
                    .is_some_and(|c| matches!(c, '\'' | '\u{2019}' | '\u{2032}'))
                {
                    at += 1;
                    Token::Unit(LengthUnit::Inch)
                } else {
                    Token::Unit(LengthUnit::Foot)
                }
            }
            '"' | '\u{201d}' | '\u{2033}' => Token::Unit(LengthUnit::Inch),
            c if vulgar(c).is_some() => Token::Vulgar(vulgar(c).unwrap_or(0.0)),
            c if c.is_alphabetic() => {
                while chars.get(at).is_some_and(|c| c.is_alphabetic()) {
                    at += 1;
                }
                let word: String = chars[start..at].iter().collect();
                // A period after an abbreviation belongs to it, and a comma separates it: `33 in.`, `2 feet,
                // 9`
                if matches!(chars.get(at), Some('.' | ','))
                    && !chars.get(at + 1).is_some_and(char::is_ascii_digit)
                {
                    at += 1;
                }
                unit(&word)
                    .map(Token::Unit)
                    .ok_or_else(|| fault(start, LengthFault::UnknownUnit(word)))?
            }
            other => return Err(fault(start, LengthFault::Character(other))),
        };
        found.push((start, token));
    }
    Ok(found)
}

fn end_of_number(chars: &[char], from: usize) -> usize {
    let rest = chars.get(from..).unwrap_or_default();
    from + rest
        .iter()
        .take_while(|c| c.is_ascii_digit() || matches!(c, '.' | ','))
        .count()
}

/// Whether `1 250` is one number: one to three digits before the space and three after it, which are not a
/// fraction.
fn is_thousands(chars: &[char], start: usize, at: usize) -> bool {
    let group = |from: usize| {
        let rest = chars.get(from..).unwrap_or_default();
        rest.iter().take_while(|c| c.is_ascii_digit()).count()
    };
    let is_whole = chars[start..at]
        .iter()
        .all(|c| c.is_ascii_digit() || c.is_whitespace());
    let behind = chars.get(at + 4).copied().unwrap_or('m');
    is_whole
        && (1..=3).contains(&group(start))
        && chars.get(at).is_some_and(|c| c.is_whitespace())
        && group(at + 1) == 3
        && !matches!(behind, '/' | '\u{2044}' | '\u{2215}')
}

fn number(chars: &[char], at: usize, decimals: Decimals) -> Result<Token, LengthError> {
    let text: String = chars.iter().collect();
    let missing = || fault(at, LengthFault::NumberMissing);
    let Some(plain) = plain_number(&text, decimals) else {
        let second = chars
            .iter()
            .enumerate()
            .filter(|(_, c)| !c.is_ascii_digit())
            .nth(1);
        return Err(second.map_or_else(missing, |(place, c)| {
            fault(at + place, LengthFault::Character(*c))
        }));
    };
    let value = read_decimal(&plain).ok_or_else(missing)?;
    let decimal = plain.contains('.');
    Ok(Token::Number { value, decimal })
}

fn unit(word: &str) -> Option<LengthUnit> {
    Some(match word.to_ascii_lowercase().as_str() {
        "in" | "inch" | "inches" => LengthUnit::Inch,
        "ft" | "foot" | "feet" => LengthUnit::Foot,
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => LengthUnit::Millimetre,
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => LengthUnit::Centimetre,
        "m" | "metre" | "metres" | "meter" | "meters" => LengthUnit::Metre,
        _ => return None,
    })
}

pub(super) fn vulgar(c: char) -> Option<f64> {
    Some(match c {
        '¼' => 0.25,
        '½' => 0.5,
        '¾' => 0.75,
        '⅓' => 1.0 / 3.0,
        '⅔' => 2.0 / 3.0,
        '⅕' => 0.2,
        '⅖' => 0.4,
        '⅗' => 0.6,
        '⅘' => 0.8,
        '⅙' => 1.0 / 6.0,
        '⅚' => 5.0 / 6.0,
        '⅛' => 0.125,
        '⅜' => 0.375,
        '⅝' => 0.625,
        '⅞' => 0.875,
        _ => return None,
    })
}
