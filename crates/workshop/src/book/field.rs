//! The fields of a book and the values that they accept.

use coatings::Substrate;
use coatings::can::read_price_with;
use geometry::Kind;
use units::{Day, Decimals, NumberError, System, read_range_with};

use super::quantity::{Quantity, ValueError, read_amount};
use super::{MAX_PICTURE, MAX_TEXT};
use crate::document::Colour;
use crate::hours::read_hours;
use crate::meant::{is_near, read_meant, written_here};

/// A field of a book.
#[derive(Debug, PartialEq, Eq)]
pub struct BookField {
    /// The field's key in saved files.
    pub key: &'static str,
    /// The field's label.
    pub label: &'static str,
    /// The kind of value that the field accepts.
    pub kind: FieldKind,
}

/// Text for a field, with the decimal sign in use where it was typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Entered {
    /// The text.
    pub text: String,
    /// The decimal sign in use where the text was typed.
    pub decimals: Decimals,
}

impl<T: Into<String>> From<T> for Entered {
    /// Text written by a program, whose number may use either decimal sign.
    fn from(text: T) -> Self {
        Entered {
            text: text.into(),
            decimals: Decimals::Either,
        }
    }
}

/// The kind of value that a field accepts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FieldKind {
    /// A line of text.
    Text,
    /// Several lines of text.
    Words,
    /// One of these answers, each a key and a label.
    Choice(&'static [(&'static str, &'static str)]),
    /// A kind of furniture, by key.
    Furniture,
    /// A whole number up to this maximum.
    Count(u32),
    /// A sum of money.
    Money,
    /// A number with a unit.
    Of(Quantity),
    /// A mass as a kitchen scale shows it. A number without a unit is in grams.
    Scale,
    /// An amount of paint: a weight or a volume.
    Amount(Bare),
    /// A day.
    Day,
    /// Working hours for one day: `9:00-12:30, 13:00-17:00`.
    Hours,
    /// A material, by key: a built-in one or one of the maker's own.
    Material,
    /// A tool, by key.
    Tool,
    /// The substrate under a coat, by key.
    Substrate,
    /// A can size, by key.
    Can,
    /// A color.
    Colour,
    /// A small photo, as a data URL.
    Picture,
    /// Yes, or nothing for no.
    Tick,
}

/// What a bare number means as an amount of paint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bare {
    /// Parts of a mix.
    Parts,
    /// Grams.
    Grams,
    /// Grams, or fluid ounces in US units.
    Usual,
}

impl Bare {
    /// Returns the quantity and the system whose usual unit a bare number gets.
    pub fn means(self, system: System) -> (Quantity, System) {
        match (self, system) {
            (Bare::Parts, _) => (Quantity::Parts, system),
            (Bare::Usual, System::UsCustomary) => (Quantity::Volume, system),
            (Bare::Grams | Bare::Usual, _) => (Quantity::Mass, System::Metric),
        }
    }

    /// Returns the quantities that the amount may be of.
    pub(super) fn quantities(self) -> &'static [Quantity] {
        match self {
            Bare::Parts => &[Quantity::Mass, Quantity::Volume, Quantity::Parts],
            Bare::Grams | Bare::Usual => &[Quantity::Mass, Quantity::Volume],
        }
    }
}

impl FieldKind {
    /// Returns the text to save, with a unit added to a bare number. Also returns the number if the text on
    /// its own could be read as a different one.
    ///
    /// # Errors
    /// If the field does not accept the text. The error says why.
    pub fn take(self, entered: &Entered, system: System) -> Result<(String, Option<f64>), ValueError> {
        let text = match self {
            FieldKind::Of(quantity) => quantity.with_unit(&entered.text, system),
            FieldKind::Scale => Quantity::Mass.with_unit(&entered.text, System::Metric),
            FieldKind::Amount(bare) => {
                let (quantity, system) = bare.means(system);
                quantity.with_unit(&entered.text, system)
            }
            _ => entered.text.trim().to_owned(),
        };
        let number = self.number(&text, entered.decimals)?;
        let alone = self.number(&text, Decimals::Either).ok().flatten();
        Ok(match (self, number) {
            (FieldKind::Text | FieldKind::Words, _) => (text.chars().take(MAX_TEXT).collect(), None),
            (FieldKind::Count(_), Some(number)) => (format!("{number:.0}"), None),
            _ => (text, number.filter(|number| alone != Some(*number))),
        })
    }

    /// Checks that a saved text, with the number saved beside it, is valid for a field of this kind. Returns
    /// the number if the text on its own could be read as a different one.
    ///
    /// # Errors
    /// If the text is not valid. The error says why.
    pub fn check(self, text: &str, beside: Option<f64>) -> Result<Option<f64>, ValueError> {
        let is_meant =
            |number: &Option<f64>| number.zip(beside).is_some_and(|(one, other)| is_near(one, other));
        let number = read_meant(|decimals| self.number(text, decimals), is_meant)?;
        let alone = self.number(text, Decimals::Either).ok().flatten();
        Ok(number.filter(|number| alone != Some(*number)))
    }

    /// Rewrites a text for a locale with this decimal sign. `beside` is the number saved beside the text.
    pub fn written_here(self, text: &str, beside: Option<f64>, decimals: Decimals) -> String {
        let meant = beside.or_else(|| self.number(text, Decimals::Either).ok().flatten());
        written_here(text, decimals, |text, decimals| {
            self.number(text, decimals).ok().flatten() == meant
        })
    }

    /// Returns the number in a text, in internal units, or in hundredths for money. Returns `None` if the
    /// field does not hold a number.
    ///
    /// # Errors
    /// If the field does not accept the text. The error says why.
    pub fn number(self, text: &str, decimals: Decimals) -> Result<Option<f64>, ValueError> {
        let answer = |is_known: bool| is_known.then_some(None).ok_or(ValueError::Answer);
        match self {
            FieldKind::Text | FieldKind::Words => Ok(None),
            FieldKind::Choice(answers) => answer(answers.iter().any(|(key, _)| *key == text)),
            FieldKind::Furniture => answer(Kind::by_key(text).is_some()),
            FieldKind::Count(most) => match read_range_with(text, decimals).map_err(ValueError::Number)? {
                (low, high) if low != high => Err(ValueError::Range),
                (count, _) if count < 0.0 || count.trunc() != count => {
                    Err(ValueError::Number(NumberError::NotANumber))
                }
                (count, _) if count > f64::from(most) => Err(ValueError::TooLarge),
                (count, _) => Ok(Some(count)),
            },
            FieldKind::Money => read_price_with(text, decimals)
                .map(|hundredths| Some(hundredths as f64))
                .map_err(ValueError::Price),
            FieldKind::Of(quantity) => quantity.read_with(text, decimals).map(Some),
            FieldKind::Scale => Quantity::Mass.read_with(text, decimals).map(Some),
            FieldKind::Amount(bare) => {
                read_amount(bare.quantities(), text, decimals).map(|(_, amount)| Some(amount))
            }
            // The maker can add and delete materials at any time, so only the length is checked.
            FieldKind::Material => answer(!text.is_empty() && text.len() <= 120),
            FieldKind::Tool => answer(coatings::tool(text).is_some()),
            FieldKind::Substrate => answer(Substrate::ALL.iter().any(|ground| ground.key() == text)),
            FieldKind::Can => answer(coatings::can(text).is_some()),
            FieldKind::Colour => Colour::read(text).map(|_| None).ok_or(ValueError::Colour),
            FieldKind::Day => Day::read(text).map(|_| None).ok_or(ValueError::Day),
            FieldKind::Hours => read_hours(text).map(|_| None).ok_or(ValueError::Hours),
            FieldKind::Picture => {
                let is_one = text.starts_with("data:image/jpeg;base64,") && text.len() <= MAX_PICTURE;
                is_one.then_some(None).ok_or(ValueError::Picture)
            }
            FieldKind::Tick => answer(text == "yes"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_field_takes_what_it_is_for() {
        let take = |kind: FieldKind, text: &str| {
            let taken = kind.take(&text.into(), System::UsCustomary);
            taken.map(|(text, _)| text)
        };
        assert_eq!(take(FieldKind::Of(Quantity::Mass), " 12 "), Ok("12 oz".into()));
        assert_eq!(take(FieldKind::Scale, " 12 "), Ok("12 g".into()));
        for (bare, text) in [
            (Bare::Parts, "12"),
            (Bare::Grams, "12 g"),
            (Bare::Usual, "12 fl oz"),
        ] {
            assert_eq!(take(FieldKind::Amount(bare), " 12 "), Ok(text.into()));
            assert_eq!(take(FieldKind::Amount(bare), "1 lb 2 oz"), Ok("1 lb 2 oz".into()));
            assert_eq!(take(FieldKind::Amount(bare), "12 ft"), Err(ValueError::Amount));
        }
        assert_eq!(take(FieldKind::Colour, "green"), Err(ValueError::Colour));
        assert_eq!(take(FieldKind::Furniture, "dresser"), Ok("dresser".into()));
        assert_eq!(take(FieldKind::Furniture, "boat"), Err(ValueError::Answer));
        assert_eq!(take(FieldKind::Count(9), "10"), Err(ValueError::TooLarge));
        assert!(matches!(
            take(FieldKind::Count(9), "-1"),
            Err(ValueError::Number(_))
        ));
        assert!(matches!(take(FieldKind::Money, "tin"), Err(ValueError::Price(_))));
        assert_eq!(take(FieldKind::Money, "ten"), Ok("ten".into()));
        assert_eq!(take(FieldKind::Count(9), "seven"), Ok("7".into()));
        assert_eq!(
            take(FieldKind::Count(9), "1/2"),
            Err(ValueError::Number(NumberError::NotANumber))
        );
        assert_eq!(take(FieldKind::Day, "2026-02-29"), Err(ValueError::Day));
        assert_eq!(
            take(FieldKind::Picture, "data:text/html,x"),
            Err(ValueError::Picture)
        );
        assert_eq!(take(FieldKind::Tick, "yes"), Ok("yes".into()));
        assert_eq!(
            take(FieldKind::Text, &"a".repeat(5000)).map(|text| text.len()),
            Ok(MAX_TEXT)
        );
    }
    /// The decimal sign in use at entry settles the number. From then on, the number is saved with the text.
    #[test]
    fn a_number_that_can_be_read_in_two_ways_stands_beside_its_text() {
        let typed = |kind: FieldKind, text: &str, decimals| {
            let text = text.to_owned();
            kind.take(&Entered { text, decimals }, System::UsCustomary)
                .unwrap()
        };
        let hours = FieldKind::Of(Quantity::Time);
        for (kind, text, decimals, kept, beside) in [
            (
                FieldKind::Money,
                "1,250",
                Decimals::Point,
                "1,250",
                Some(125_000.0),
            ),
            (
                FieldKind::Money,
                "1.250",
                Decimals::Comma,
                "1.250",
                Some(125_000.0),
            ),
            (FieldKind::Money, "1.250,00", Decimals::Point, "1.250,00", None),
            (FieldKind::Money, "$45", Decimals::Point, "$45", None),
            (hours, "1,250", Decimals::Point, "1,250 h", Some(1250.0)),
            (hours, "1,250", Decimals::Comma, "1,250 h", None),
            (hours, "1.250", Decimals::Comma, "1.250 h", Some(1250.0)),
            (hours, "1.250", Decimals::Point, "1.250 h", None),
        ] {
            let taken = typed(kind, text, decimals);
            assert_eq!(taken, (kept.into(), beside), "{text}, {decimals:?}");
            let meant = kind
                .number(text, decimals)
                .unwrap_or(kind.number(kept, decimals).unwrap());
            let of = beside.or(kind.number(kept, Decimals::Either).unwrap_or_default());
            assert_eq!(of, meant, "{text}, {decimals:?}");
            // Typing the displayed text again gives the same number in any locale.
            for here in [Decimals::Point, Decimals::Comma] {
                let shown = kind.written_here(kept, beside, here);
                assert_eq!(kind.number(&shown, here), Ok(of), "{text} shown as {shown}");
            }
            assert_eq!(kind.check(kept, beside), Ok(beside), "{text}, {decimals:?}");
        }
        // A number that the text cannot mean is ignored, because an older page may have changed the text.
        assert_eq!(FieldKind::Money.check("60", Some(125_000.0)), Ok(None));
        assert!(FieldKind::Money.check("1,250", Some(7.0)).is_err());
    }
}
