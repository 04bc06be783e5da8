//! Spoken numbers: `thirty three and seven eighths` is 33 7/8. Dictation writes them this way.

use std::fmt::Write as _;

/// Words of numbers below twenty, each at its own place.
const SMALL: [&str; 20] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];

/// Words of tens from twenty on.
const TENS: [&str; 8] = [
    "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety",
];

/// Words of fractions, singular and plural, with the denominator.
const PARTS: [(&str, &str, u32); 6] = [
    ("half", "halves", 2),
    ("third", "thirds", 3),
    ("quarter", "quarters", 4),
    ("fourth", "fourths", 4),
    ("eighth", "eighths", 8),
    ("sixteenth", "sixteenths", 16),
];

/// What a word means.
#[derive(Clone, Copy, PartialEq)]
enum Word<'a> {
    /// A part of a number: adds to what was said before.
    Ones(u32),
    /// The same, for tens.
    Tens(u32),
    Hundred,
    Thousand,
    /// The denominator of a fraction.
    Part(u32),
    /// The decimal point.
    Point,
    /// `and`: what follows belongs to what was said.
    And,
    /// `a`, `an` or `of`: one, or nothing.
    Article,
    /// A number in digits, or a unit, unchanged.
    AsItIs(&'a str),
}

/// The text with spoken numbers in digits. Units and digits stay as they are. `None` if it has no spoken
/// number or a word that is neither a number nor a unit, so that the caller reports the original text.
///
/// # Example
/// ```
/// use units::in_digits;
/// assert_eq!(in_digits("thirty three and seven eighths").as_deref(), Some("33 7/8"));
/// assert_eq!(in_digits("two feet nine and a half inches").as_deref(), Some("2 feet 9 1/2 inches"));
/// assert_eq!(in_digits("33 7/8"), None);
/// ```
pub fn in_digits(text: &str) -> Option<String> {
    in_digits_with(text, length_unit)
}

/// The same with other units: how each of their words is written, or nothing if a word is none.
///
/// # Example
/// ```
/// use units::in_digits_with;
/// let sign = |word: &str| word.starts_with("hour").then_some("h");
/// assert_eq!(in_digits_with("two and a half hours", sign).as_deref(), Some("2 1/2 h"));
/// ```
pub fn in_digits_with<'a>(text: &'a str, sign: impl Fn(&'a str) -> Option<&'a str>) -> Option<String> {
    let mut words = Vec::new();
    for word in text.split(is_between).filter(|word| !word.is_empty()) {
        words.push(meaning(word, &sign)?);
    }
    let is_said = |word: &Word<'_>| match word {
        Word::AsItIs(_) => false,
        Word::Article => words.len() > 1,
        _ => true,
    };
    if !words.iter().any(is_said) {
        return None;
    }
    Some(written(&words))
}

/// The first unknown word of a text with spoken numbers, and its position in characters.
pub(crate) fn not_understood(text: &str) -> Option<(usize, String)> {
    let meaning = |word| meaning(word, &length_unit);
    let is_number = |word| matches!(meaning(word), Some(Word::Ones(_) | Word::Tens(_) | Word::Part(_)));
    if !text.split(is_between).any(is_number) {
        return None;
    }
    let mut at = 0;
    for word in text.split(is_between) {
        if !word.is_empty() && meaning(word).is_none() {
            return Some((at, word.trim_end_matches(['.', ',']).to_owned()));
        }
        at += word.chars().count() + 1;
    }
    None
}

fn is_between(c: char) -> bool {
    c.is_whitespace() || c == '-'
}

/// A unit of length, as it was said.
fn length_unit(word: &str) -> Option<&str> {
    let is = |other: &&str| word.eq_ignore_ascii_case(other);
    let begins = |head: &&str| {
        word.get(..head.len())
            .is_some_and(|begin| begin.eq_ignore_ascii_case(head))
    };
    let is_unit = ["in", "ft", "mm", "cm", "m"].iter().any(is)
        || ["inch", "foot", "feet", "met", "milli", "centi"]
            .iter()
            .any(begins);
    is_unit.then_some(word)
}

fn meaning<'a>(word: &'a str, sign: &dyn Fn(&'a str) -> Option<&'a str>) -> Option<Word<'a>> {
    // Dictation puts punctuation between words.
    let word = if word.starts_with(|c: char| c.is_alphabetic()) {
        word.trim_end_matches(['.', ','])
    } else {
        word
    };
    let is = |other: &&str| word.eq_ignore_ascii_case(other);
    let place = |list: &[&str]| list.iter().position(is).map(|place| place as u32);
    if let Some(ones) = place(&SMALL) {
        return Some(Word::Ones(ones));
    }
    if let Some(tens) = place(&TENS) {
        return Some(Word::Tens((tens + 2) * 10));
    }
    if let Some((.., below)) = PARTS.iter().find(|(one, several, _)| is(one) || is(several)) {
        return Some(Word::Part(*below));
    }
    let words = [
        ("hundred", Word::Hundred),
        ("thousand", Word::Thousand),
        ("point", Word::Point),
        ("and", Word::And),
        ("a", Word::Article),
        ("an", Word::Article),
        ("of", Word::Article),
    ];
    if let Some((_, word)) = words.iter().find(|(other, _)| is(other)) {
        return Some(*word);
    }
    if word.starts_with(|c: char| c.is_ascii_digit()) {
        return Some(Word::AsItIs(word));
    }
    sign(word).map(Word::AsItIs)
}

/// The words one after the other, numbers put together.
fn written(words: &[Word<'_>]) -> String {
    let mut text = String::new();
    let mut place = 0;
    while place < words.len() {
        let (number, after) = number(&words[place..]);
        let said = number.or(match words[place] {
            Word::Article => Some(1),
            // `3 quarters`
            Word::AsItIs(digits) if matches!(words.get(place + 1), Some(Word::Part(_))) => {
                digits.parse().ok()
            }
            _ => None,
        });
        let taken = if number.is_some() { after } else { 1 };
        match (said, words[place]) {
            // `seven eighths`, `a half`, `a quarter`
            (Some(above), _) if matches!(words.get(place + taken), Some(Word::Part(_))) => {
                if let Some(Word::Part(below)) = words.get(place + taken) {
                    apart(&mut text, &format!("{above}/{below}"));
                }
                place += taken + 1;
                continue;
            }
            // `half an inch`, `quarter inch`
            (None, Word::Part(below)) => apart(&mut text, &format!("1/{below}")),
            // `eighty five point one two`: figure by figure
            (None, Word::Point) => {
                text.push('.');
                place += 1;
                while let Some(Word::Ones(figure @ 0..=9)) = words.get(place) {
                    // Writing into a string never fails.
                    let _ = write!(text, "{figure}");
                    place += 1;
                }
                if let Some(Word::AsItIs(digits)) = words.get(place)
                    && digits.starts_with(|c: char| c.is_ascii_digit())
                {
                    text.push_str(digits);
                    place += 1;
                }
                continue;
            }
            // `a foot`, but not `half an inch`
            (Some(_), Word::Article) if number.is_none() && !text.is_empty() => {}
            (Some(number), _) => apart(&mut text, &number.to_string()),
            (_, Word::AsItIs(word)) => apart(&mut text, word),
            _ => {}
        }
        place += taken;
    }
    text
}

/// The whole number that the words begin with, and how many of them it takes.
fn number(words: &[Word<'_>]) -> (Option<u32>, usize) {
    let (mut sum, mut taken, mut last) = (None, 0, u32::MAX);
    let mut thousands = 0;
    for (place, word) in words.iter().enumerate() {
        let value = sum.unwrap_or(0);
        match *word {
            Word::Tens(tens) if last > 99 => (sum, last) = (Some(value + tens), 99),
            Word::Ones(ones) if last > 99 || (last == 99 && (1..10).contains(&ones)) => {
                (sum, last) = (Some(value + ones), 9);
            }
            // `twelve hundred` as well as `two hundred`
            Word::Hundred if last == 9 && value < 100 => (sum, last) = (Some(value * 100), 999),
            Word::Hundred if sum.is_none() => (sum, last) = (Some(100), 999),
            Word::Thousand if thousands == 0 && value < 1000 => {
                thousands = sum.unwrap_or(1) * 1000;
                (sum, last) = (Some(0), 999);
            }
            // `a hundred`, and `one hundred and five`
            Word::Article if place == 0 && matches!(words.get(1), Some(Word::Hundred | Word::Thousand)) => {
                continue;
            }
            Word::And
                if last == 999
                    && matches!(words.get(place + 1), Some(Word::Ones(_) | Word::Tens(_)))
                    && !is_fraction(&words[place + 1..]) =>
            {
                continue;
            }
            _ => break,
        }
        taken = place + 1;
    }
    (sum.map(|sum| thousands + sum), taken)
}

/// Whether the words begin with a fraction, as in `seven eighths`.
fn is_fraction(words: &[Word<'_>]) -> bool {
    let part = words.iter().position(|word| matches!(word, Word::Part(_)));
    part.is_some_and(|part| {
        words[..part]
            .iter()
            .all(|word| matches!(word, Word::Ones(_) | Word::Tens(_)))
    })
}

fn apart(text: &mut String, word: &str) {
    if !text.is_empty() {
        text.push(' ');
    }
    text.push_str(word);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{LengthUnit, read_length};

    #[test]
    fn readings_are_understood_as_they_are_said() {
        let said = [
            ("thirty three and seven eighths", "33 7/8"),
            ("Thirty-three and seven eighths inches", "33 7/8 inches"),
            ("seventeen and a half", "17 1/2"),
            ("three quarters", "3/4"),
            ("half an inch", "1/2 inch"),
            ("a quarter", "1/4"),
            ("four feet ten and a half", "4 feet 10 1/2"),
            ("a foot", "1 foot"),
            ("one hundred and twenty two centimetres", "122 centimetres"),
            ("a hundred and five and three sixteenths", "105 3/16"),
            ("eighty five point one centimetres", "85.1 centimetres"),
            ("eight hundred sixty millimetres", "860 millimetres"),
            ("33 and seven eighths", "33 7/8"),
            ("33 and 7/8", "33 7/8"),
            ("two and eleven sixteenths", "2 11/16"),
            ("nineteen", "19"),
            ("Thirty three and seven eighths.", "33 7/8"),
            ("Two feet, nine and a half inches.", "2 feet 9 1/2 inches"),
            ("an inch and a half", "1 inch 1/2"),
            ("thirty three inches and seven eighths", "33 inches 7/8"),
            ("62 and 3 quarters", "62 3/4"),
            ("62 3 quarters", "62 3/4"),
            ("three and 7 eighths", "3 7/8"),
        ];
        for (words, digits) in said {
            assert_eq!(in_digits(words).as_deref(), Some(digits), "{words}");
            let read = |text: &str| read_length(text, LengthUnit::Inch);
            assert_eq!(read(words), read(digits), "{words}");
            assert!(read(words).is_ok(), "{words}");
        }
    }

    #[test]
    fn every_whole_number_of_inches_is_understood() {
        for number in 1..1000u32 {
            let mut words = String::new();
            if number >= 100 {
                words = format!("{} hundred ", SMALL[(number / 100) as usize]);
            }
            match number % 100 {
                0 => {}
                small @ 1..20 => words.push_str(SMALL[small as usize]),
                tens => {
                    words.push_str(TENS[(tens / 10 - 2) as usize]);
                    if !tens.is_multiple_of(10) {
                        words.push(' ');
                        words.push_str(SMALL[(tens % 10) as usize]);
                    }
                }
            }
            assert_eq!(in_digits(&words), Some(number.to_string()), "{words}");
        }
    }

    #[test]
    fn sums_are_understood_as_they_are_said() {
        let none = |_| None;
        for (words, digits) in [
            ("twelve hundred", "1200"),
            ("a thousand two hundred", "1200"),
            ("one thousand and five", "1005"),
            ("twelve thousand three hundred forty five", "12345"),
            ("two thousand", "2000"),
        ] {
            assert_eq!(in_digits_with(words, none).as_deref(), Some(digits), "{words}");
        }
        assert_eq!(in_digits_with("two pounds", none), None);
    }

    #[test]
    fn what_is_not_said_in_words_stays_as_it_is() {
        for text in ["33 7/8", "2' 9\"", "85.1 cm", "wide", "thirty parsecs", "", "a"] {
            assert_eq!(in_digits(text), None, "{text}");
        }
        let error = read_length("thirty parsecs", LengthUnit::Inch).unwrap_err();
        assert_eq!(
            error.at, 7,
            "the place is that of the word that is not understood"
        );
    }
}
