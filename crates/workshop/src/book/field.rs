//! The fields of a book: what each takes.

use coatings::Ground;
use coatings::can::read_price;
use geometry::Kind;
use units::{Day, System};

use super::quantity::{Quantity, ValueError};
use super::{MAX_PICTURE, MAX_TEXT};
use crate::document::Colour;
use crate::hours::read_hours;

/// A field of a book.
#[derive(Debug, PartialEq, Eq)]
pub struct BookField {
    /// Its name in saved files.
    pub key: &'static str,
    /// Its label.
    pub label: &'static str,
    /// What it takes.
    pub kind: FieldKind,
}

/// What a field takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FieldKind {
    /// A line of text.
    Text,
    /// Several lines of text.
    Words,
    /// One of these answers: its key and its label.
    Choice(&'static [(&'static str, &'static str)]),
    /// A kind of furniture, by its key.
    Furniture,
    /// A whole number, and the most it may be.
    Count(u32),
    /// A sum of money.
    Money,
    /// A number with a unit.
    Of(Quantity),
    /// A mass as a kitchen scale shows it: grams where no unit is written.
    Scale,
    /// A day.
    Day,
    /// Hours of work on a day: `9:00-12:30, 13:00-17:00`.
    Hours,
    /// A material, by its key: a known one, or one of the maker's own.
    Material,
    /// A tool, by its key.
    Tool,
    /// What a coat goes onto, by its key.
    Ground,
    /// A size of can, by its key.
    Can,
    /// A colour.
    Colour,
    /// A small photo, as the address that holds it.
    Picture,
    /// Yes; nothing is no.
    Tick,
}

impl FieldKind {
    /// The text as it is kept, with the unit behind a lone number.
    ///
    /// # Errors
    /// If the field does not take it; the error says why.
    pub fn take(self, text: &str, system: System) -> Result<String, ValueError> {
        let text = match self {
            FieldKind::Of(quantity) => quantity.with_unit(text, system),
            FieldKind::Scale => Quantity::Mass.with_unit(text, System::Metric),
            _ => text.trim().to_owned(),
        };
        self.check(&text)?;
        Ok(match self {
            FieldKind::Text | FieldKind::Words => text.chars().take(MAX_TEXT).collect(),
            _ => text,
        })
    }

    /// Whether a text can stand in a field of this kind as it is.
    ///
    /// # Errors
    /// If it cannot; the error says why.
    pub fn check(self, text: &str) -> Result<(), ValueError> {
        let answer = |is_known: bool| is_known.then_some(()).ok_or(ValueError::Answer);
        match self {
            FieldKind::Text | FieldKind::Words => Ok(()),
            FieldKind::Choice(answers) => answer(answers.iter().any(|(key, _)| *key == text)),
            FieldKind::Furniture => answer(Kind::by_key(text).is_some()),
            FieldKind::Count(most) => match text.parse::<u32>() {
                Ok(count) if count <= most => Ok(()),
                Ok(_) => Err(ValueError::TooLarge),
                Err(_) => Err(ValueError::Number(units::NumberError::NotANumber)),
            },
            FieldKind::Money => read_price(text).map(|_| ()).map_err(ValueError::Price),
            FieldKind::Of(quantity) => quantity.read(text).map(|_| ()),
            FieldKind::Scale => Quantity::Mass.read(text).map(|_| ()),
            // Materials of the maker's own come and go.
            FieldKind::Material => answer(!text.is_empty() && text.len() <= 120),
            FieldKind::Tool => answer(coatings::tool(text).is_some()),
            FieldKind::Ground => answer(Ground::ALL.iter().any(|ground| ground.key() == text)),
            FieldKind::Can => answer(coatings::can(text).is_some()),
            FieldKind::Colour => Colour::read(text).map(|_| ()).ok_or(ValueError::Colour),
            FieldKind::Day => Day::read(text).map(|_| ()).ok_or(ValueError::Day),
            FieldKind::Hours => read_hours(text).map(|_| ()).ok_or(ValueError::Hours),
            FieldKind::Picture => {
                let is_one = text.starts_with("data:image/jpeg;base64,") && text.len() <= MAX_PICTURE;
                is_one.then_some(()).ok_or(ValueError::Picture)
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
        let take = |kind: FieldKind, text: &str| kind.take(text, System::UsCustomary);
        assert_eq!(take(FieldKind::Of(Quantity::Mass), " 12 "), Ok("12 oz".into()));
        assert_eq!(take(FieldKind::Scale, " 12 "), Ok("12 g".into()));
        assert_eq!(take(FieldKind::Colour, "green"), Err(ValueError::Colour));
        assert_eq!(take(FieldKind::Furniture, "dresser"), Ok("dresser".into()));
        assert_eq!(take(FieldKind::Furniture, "boat"), Err(ValueError::Answer));
        assert_eq!(take(FieldKind::Count(9), "10"), Err(ValueError::TooLarge));
        assert!(matches!(
            take(FieldKind::Count(9), "-1"),
            Err(ValueError::Number(_))
        ));
        assert!(matches!(take(FieldKind::Money, "ten"), Err(ValueError::Price(_))));
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
}
