//! Tape readings as a person writes them: `33 7/8`, `2' 9 7/8"`, `2 ft 9 in`, `33⅞`, `85.1 cm`.
//!
//! A reading is one or more values with units, the larger unit first. A value is a whole number, a decimal,
//! a fraction, or a whole number and a fraction. The last unit may be left out: after feet it is inches,
//! after meters nothing may be left out, and a lone number takes the unit of the tape.

mod error;
mod tokens;
mod value;

pub use error::{LengthError, LengthFault};

use error::fault;
use tokens::{tokens, vulgar};
use value::Cursor;

use crate::number_text::{Decimals, of_said, perhaps};
use crate::spoken::{in_digits, not_understood};
use crate::{Length, LengthUnit};

/// Reads a length as a person writes or says it, and as a save file without values has it; a lone number has the unit
/// `tape`.
///
/// # Errors
/// A [`LengthError`] with the place and the reason where the text is not one length.
///
/// # Example
/// ```
/// use units::{LengthUnit, read_length};
/// let width = read_length("33 7/8", LengthUnit::Inch)?;
/// assert!((width.as_millimetres() - 860.425).abs() < 1e-9);
/// let feet = read_length("2' 9 7/8\"", LengthUnit::Millimetre)?;
/// assert!((feet.as_millimetres() - 860.425).abs() < 1e-9);
/// # Ok::<(), units::LengthError>(())
/// ```
pub fn read_length(text: &str, tape: LengthUnit) -> Result<Length, LengthError> {
    read_length_with(text, tape, Decimals::Either)
}

/// The same with this decimal sign.
///
/// # Errors
/// A [`LengthError`] with the place and the reason where the text is not one length.
///
/// # Example
/// ```
/// use units::{Decimals, LengthUnit, read_length_with};
/// let read = |decimals| read_length_with("1,250 mm", LengthUnit::Inch, decimals).map(|of| of.as_millimetres());
/// assert_eq!(read(Decimals::Point), Ok(1250.0));
/// assert_eq!(read(Decimals::Comma), Ok(1.25));
/// ```
pub fn read_length_with(text: &str, tape: LengthUnit, decimals: Decimals) -> Result<Length, LengthError> {
    let text = without_stop(text);
    let said = in_digits(text);
    let decimals = of_said(text, said.as_deref(), decimals);
    let read = |text: &str| {
        read(text, tape, decimals).map_err(|error| match (&error.fault, perhaps(text)) {
            (LengthFault::NumbersSideBySide, Some(text)) => fault(error.at, LengthFault::Perhaps(text)),
            _ => error,
        })
    };
    let Some(digits) = said else {
        return read(text).map_err(|error| match not_understood(text) {
            Some((at, word)) => fault(at, LengthFault::UnknownUnit(word)),
            None => error,
        });
    };
    read(&digits).map_err(|error| fault(0, LengthFault::Spoken(digits, Box::new(error))))
}

/// A length as it would be typed: spoken numbers in digits, without the period that dictation adds. Any
/// other text is only trimmed.
///
/// # Example
/// ```
/// use units::as_typed;
/// assert_eq!(as_typed("Thirty three and seven eighths."), "33 7/8");
/// assert_eq!(as_typed(" 2' 9\" "), "2' 9\"");
/// ```
pub fn as_typed(text: &str) -> String {
    let text = without_stop(text.trim());
    in_digits(text).unwrap_or_else(|| text.to_owned())
}

/// A period after digits ends a sentence. One after letters may belong to an abbreviation.
fn without_stop(text: &str) -> &str {
    let text = text.trim_end();
    text.strip_suffix('.')
        .filter(|rest| rest.ends_with(|c: char| c.is_ascii_digit() || vulgar(c).is_some()))
        .unwrap_or(text)
}

fn read(text: &str, tape: LengthUnit, decimals: Decimals) -> Result<Length, LengthError> {
    // Nobody writes thousands of inches.
    let spaced = metric(tape) || text.contains(['m', 'M']);
    let tokens = tokens(text, decimals, spaced)?;
    let mut cursor = Cursor {
        tokens: &tokens,
        next: 0,
        end: text.chars().count(),
    };
    let mut total = Length::ZERO;
    let mut last: Option<LengthUnit> = None;
    while let Some(&(at, _)) = cursor.peek() {
        let value = cursor.value()?;
        let unit_at = cursor.place();
        let unit = match (cursor.unit(), last) {
            (Some(unit), _) => unit,
            (None, None) => tape,
            (None, Some(LengthUnit::Foot)) => LengthUnit::Inch,
            // `33 in 7/8`, as one says it: the fraction is of an inch.
            (None, Some(LengthUnit::Inch)) if value < 1.0 && cursor.peek().is_none() => {
                return Ok(total + LengthUnit::Inch.of(value));
            }
            (None, Some(_)) => return Err(fault(at, LengthFault::NumbersSideBySide)),
        };
        if let Some(before) = last {
            if metric(before) != metric(unit) {
                return Err(fault(unit_at.min(cursor.end), LengthFault::MixedSystems));
            }
            if unit.of(1.0) >= before.of(1.0) {
                return Err(fault(at, LengthFault::UnitOrder));
            }
            if unit.of(value) >= before.of(1.0) {
                return Err(fault(at, LengthFault::PartTooLarge(before)));
            }
        }
        // A value without a unit of its own ends the reading: `33 7` is not 40 of anything.
        if unit_at == cursor.place() && cursor.peek().is_some() {
            return Err(fault(cursor.place(), LengthFault::NumbersSideBySide));
        }
        total += unit.of(value);
        last = Some(unit);
        cursor.skip_joint();
    }
    match last {
        Some(_) => Ok(total),
        None => Err(fault(0, LengthFault::Empty)),
    }
}

fn metric(unit: LengthUnit) -> bool {
    !matches!(unit, LengthUnit::Inch | LengthUnit::Foot)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn check_mm(text: &str, millimetres: f64) {
        let length = read_length(text, LengthUnit::Inch).unwrap_or_else(|e| panic!("{text}: {e}"));
        assert!(
            (length.as_millimetres() - millimetres).abs() < 1e-9,
            "{text}: {}",
            length.as_millimetres()
        );
    }

    fn check_fault(text: &str, at: usize, reason: LengthFault) {
        assert_eq!(
            read_length(text, LengthUnit::Inch),
            Err(fault(at, reason)),
            "{text}"
        );
    }

    #[test]
    fn inches_and_fractions_in_every_common_spelling() {
        for text in [
            "33 7/8",
            "33-7/8\"",
            "33 7/8 in",
            "33⅞",
            "33 ⅞\"",
            "33\u{2009}7\u{2044}8″",
            "2' 9 7/8\"",
            "2' 9 7/8",
            "2'-9 7/8\"",
            "2ft 9-7/8in",
            "2 feet 9 7/8 inches",
            "33.875",
            "33,875 in.",
            "33 and 7 eighths",
            "2′ 9⅞″",
            "33 7/8''",
        ] {
            check_mm(text, 860.425);
        }
        check_mm("2 ft 9 in", 838.2);
        check_mm("7/8", 22.225);
        check_mm("¾", 19.05);
        check_mm("2'", 609.6);
    }

    #[test]
    fn metric_readings() {
        for text in ["851 mm", "85.1 cm", "0.851 m", "85,1cm", "0,851 m", "85 cm 1 mm"] {
            check_mm(text, 851.0);
        }
        check_mm("1 m 20 cm", 1200.0);
        assert_eq!(
            read_length("851", LengthUnit::Millimetre),
            Ok(Length::millimetres(851.0))
        );
    }

    #[test]
    fn each_fault_names_its_place() {
        check_fault("", 0, LengthFault::Empty);
        check_fault("   ", 0, LengthFault::Empty);
        check_fault("33 7/", 5, LengthFault::NumberMissing);
        check_fault("33 /8", 0, LengthFault::FractionNotProper);
        check_fault("33 7/0", 5, LengthFault::DividedByZero);
        check_fault("33 9/8", 3, LengthFault::FractionNotProper);
        check_fault("33.5 7/8", 5, LengthFault::DecimalWithFraction);
        check_fault("33 7", 3, LengthFault::NumbersSideBySide);
        check_fault("9 in 2 ft", 5, LengthFault::UnitOrder);
        check_fault("2 ft 2 ft", 5, LengthFault::UnitOrder);
        check_fault("2 ft 14 in", 5, LengthFault::PartTooLarge(LengthUnit::Foot));
        check_fault("2 ft 30 mm", 8, LengthFault::MixedSystems);
        check_fault("-5", 0, LengthFault::Negative);
        check_fault("\u{2212}5", 0, LengthFault::Negative);
        check_fault("33 yards", 3, LengthFault::UnknownUnit("yards".into()));
        check_fault("33 7/8 @", 7, LengthFault::Character('@'));
        check_fault("1.2.3", 3, LengthFault::Character('.'));
        check_fault("in", 0, LengthFault::NumberMissing);
        check_fault("33 7 8", 3, LengthFault::Perhaps("33 7/8".into()));
        check_fault("3/0", 2, LengthFault::DividedByZero);
        check_fault("1 250", 2, LengthFault::NumbersSideBySide);
        check_fault("1 m 5", 4, LengthFault::NumbersSideBySide);
        check_fault("33 in 7", 6, LengthFault::NumbersSideBySide);
        check_fault(".", 0, LengthFault::NumberMissing);
    }

    #[test]
    fn sentence_marks_of_a_tablet_that_listens_are_passed_over() {
        for text in [
            "33 7/8.",
            "33⅞.",
            "33 in 7/8",
            "2 feet, 9 7/8 inches.",
            "33 and 7/8.",
        ] {
            check_mm(text, 860.425);
        }
        check_mm("33.", 838.2);
        assert_eq!(as_typed("33 in."), "33 in.");
        assert_eq!(as_typed("33 7/8. "), "33 7/8");
    }

    #[test]
    fn what_was_said_and_is_no_length_tells_what_was_heard() {
        let said = |text| read_length(text, LengthUnit::Inch).unwrap_err().to_string();
        assert_eq!(
            said("thirty yards"),
            "\u{201c}yards\u{201d} is not a unit of length. Use in, ft, mm, cm or m."
        );
        assert!(said("thirty three seven").starts_with("Heard \u{201c}33 7\u{201d}. Use one number"));
        assert_eq!(
            said("thirty three seven eight"),
            "Heard \u{201c}33 7 8\u{201d}. Did you mean 33 7/8?"
        );
        assert_eq!(said("33 7 8"), "Did you mean 33 7/8?");
    }

    #[test]
    fn the_message_tells_the_remedy() {
        let error = read_length("33 7/0", LengthUnit::Inch).unwrap_err();
        assert_eq!(error.to_string(), "The bottom of a fraction can't be 0.");
    }

    #[test]
    fn thousands_and_decimals_are_told_apart() {
        use Decimals::{Comma, Either, Point};
        for (text, point, comma, either) in [
            ("1,250 mm", 1250.0, 1.25, 1.25),
            ("1.250 mm", 1.25, 1250.0, 1.25),
            ("1,250.5 mm", 1250.5, 1250.5, 1250.5),
            ("1.250,5 mm", 1250.5, 1250.5, 1250.5),
            ("1 250 mm", 1250.0, 1250.0, 1250.0),
            ("1\u{202f}250,5 mm", 1250.5, 1250.5, 1250.5),
            ("85,1 cm", 851.0, 851.0, 851.0),
            ("1 m 250 mm", 1250.0, 1250.0, 1250.0),
            ("one point two five zero", 1.25, 1.25, 1.25),
        ] {
            for (decimals, value) in [(Point, point), (Comma, comma), (Either, either)] {
                let read = read_length_with(text, LengthUnit::Millimetre, decimals);
                let read = read.map(|length| (length.as_millimetres() * 1e6).round() / 1e6);
                assert_eq!(read, Ok(value), "{text}, {decimals:?}");
            }
        }
    }

    proptest! {
        #[test]
        fn any_text_gives_a_length_or_an_error_inside_the_text(text in "\\PC{0,70}") {
            match read_length(&text, LengthUnit::Inch) {
                Ok(length) => prop_assert!(length.as_metres() >= 0.0),
                Err(error) => {
                    prop_assert!(error.at <= text.chars().count());
                    prop_assert!(!error.to_string().is_empty());
                }
            }
        }

        #[test]
        fn whole_sixteenths_come_back_exactly(feet in 0u32..9, inches in 0u32..12, sixteenths in 0u32..16) {
            let text = format!("{feet}' {inches} {sixteenths}/16\"");
            let length = read_length(&text, LengthUnit::Millimetre).unwrap();
            let expected = f64::from(feet * 12 + inches) + f64::from(sixteenths) / 16.0;
            prop_assert!((length.as_inches() - expected).abs() < 1e-12);
        }
    }
}
