//! Quantities in books: a number followed by a unit, as on a kitchen scale or a label.

use std::fmt;

use units::{Decimals, NumberError, System, exact, in_digits_with, read_range_with};

/// A physical quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// A mass, in kilograms.
    Mass,
    /// An area, in square meters.
    Area,
    /// A volume, in liters.
    Volume,
    /// A length, in meters.
    Length,
    /// A time, in hours.
    Time,
    /// A density, in kilograms per liter.
    Density,
    /// A temperature, in degrees Celsius.
    Temperature,
    /// A share, from 0 to 1.
    Share,
    /// Parts of a mix. A number has no unit.
    Parts,
}

/// A unit: its symbol, its size in internal units, and the internal value of its zero.
type Unit = (&'static str, f64, f64);

impl Quantity {
    /// Returns the accepted units. The first is the usual metric unit. The second is the usual US one.
    fn units(self) -> &'static [Unit] {
        match self {
            Quantity::Mass => &[
                ("g", 0.001, 0.0),
                ("oz", exact::OUNCE, 0.0),
                ("kg", 1.0, 0.0),
                ("lb", exact::POUND, 0.0),
            ],
            Quantity::Area => &[
                ("m\u{b2}", 1.0, 0.0),
                ("ft\u{b2}", exact::SQUARE_FOOT, 0.0),
                ("cm\u{b2}", 0.0001, 0.0),
                ("in\u{b2}", exact::SQUARE_INCH, 0.0),
            ],
            Quantity::Volume => &[
                ("mL", 0.001, 0.0),
                ("fl oz", exact::FLUID_OUNCE, 0.0),
                ("L", 1.0, 0.0),
                ("cup", exact::CUP, 0.0),
                ("pt", exact::PINT, 0.0),
                ("qt", exact::QUART, 0.0),
                ("gal", exact::GALLON, 0.0),
            ],
            Quantity::Length => &[
                ("mm", 0.001, 0.0),
                ("in", exact::INCH, 0.0),
                ("cm", 0.01, 0.0),
                ("m", 1.0, 0.0),
                ("ft", exact::FOOT, 0.0),
            ],
            Quantity::Time => &[
                ("h", 1.0, 0.0),
                ("h", 1.0, 0.0),
                ("min", 1.0 / 60.0, 0.0),
                ("d", 24.0, 0.0),
            ],
            Quantity::Density => &[("kg/l", 1.0, 0.0), ("lb/gal", exact::POUND_PER_GALLON, 0.0)],
            Quantity::Temperature => &[("C", 1.0, 0.0), ("F", 5.0 / 9.0, 32.0)],
            Quantity::Share => &[("%", 0.01, 0.0), ("%", 0.01, 0.0)],
            Quantity::Parts => &[("", 1.0, 0.0), ("", 1.0, 0.0)],
        }
    }

    /// Returns the symbol of the unit to assume for a bare number.
    pub fn usual_unit(self, system: System) -> &'static str {
        let place = usize::from(system == System::UsCustomary);
        self.units().get(place).map_or("", |(sign, ..)| sign)
    }

    /// Returns the symbols of the units, each once.
    pub fn signs(self) -> impl Iterator<Item = &'static str> {
        let units = self.units();
        let is_new = move |place: usize| place != 1 || units[0].0 != units[1].0;
        let numbered = units.iter().enumerate();
        numbered
            .filter(move |(place, _)| is_new(*place))
            .map(|(_, (sign, ..))| *sign)
    }

    /// Reads a number with its unit, as in a save file that has no separate numbers. Returns it in internal
    /// units.
    ///
    /// # Errors
    /// If there is no plain number, the unit does not fit this quantity, or the value is below the minimum.
    pub fn read(self, text: &str) -> Result<f64, ValueError> {
        self.read_with(text, Decimals::Either)
    }

    /// Like [`Quantity::read`], with this decimal sign. A mass, time or length may have a smaller unit after
    /// a larger one, as in `2 lb 14 oz`.
    ///
    /// # Errors
    /// If there is no plain number, the unit does not fit this quantity, or the value is below the minimum.
    pub fn read_with(self, text: &str, decimals: Decimals) -> Result<f64, ValueError> {
        let said = self.in_digits(text);
        let text = said.replace('\u{b2}', "2").replace('\u{b0}', "");
        let mut rest = text.trim();
        let (mut value, mut before) = (0.0, f64::INFINITY);
        loop {
            let (number, behind) = parted(rest);
            let (unit, behind) = self.unit(behind).ok_or(ValueError::Unit(self))?;
            let (_, factor, nought) = unit;
            let number = match read_range_with(number, decimals).map_err(ValueError::Number)? {
                (low, high) if low == high => low,
                _ => return Err(ValueError::Range),
            };
            let part = (number - nought) * factor;
            if before.is_finite() && (factor >= before || part >= before || number < 0.0) {
                return Err(ValueError::Order);
            }
            value += part;
            if behind.is_empty() {
                break;
            }
            // Nobody writes two units for the other quantities.
            if !matches!(self, Quantity::Mass | Quantity::Time | Quantity::Length) {
                return Err(ValueError::Unit(self));
            }
            (rest, before) = (behind, factor);
        }
        let least = match self {
            Quantity::Temperature => -40.0,
            _ => 0.0,
        };
        if value < least || !value.is_finite() {
            return Err(ValueError::TooSmall);
        }
        if value > 1e6 || (self == Quantity::Share && value > 1.0) {
            return Err(ValueError::TooLarge);
        }
        Ok(value)
    }

    /// Returns the unit at the start of a text, and the rest of the text.
    fn unit(self, text: &str) -> Option<(Unit, &str)> {
        let is_letter = |c: char| c.is_alphabetic();
        let starts = |word: &str| {
            let begin = text.get(..word.len())?;
            let rest = &text[word.len()..];
            let is_whole = !rest.starts_with(|c: char| is_letter(c) || matches!(c, '/'));
            (begin.eq_ignore_ascii_case(word) && is_whole).then_some(rest)
        };
        let end = |rest: &str| rest.trim_start_matches(['.', ',']).trim().len();
        let signs = self
            .units()
            .iter()
            .filter_map(|unit| Some((*unit, starts(&unit.0.replace('\u{b2}', "2"))?)));
        let words = WORDS.iter().filter_map(|(word, sign)| {
            let unit = self.units().iter().find(|(known, ..)| known == sign)?;
            Some((*unit, starts(word)?))
        });
        // `ft2` also starts with `ft`, and `m2` with `m`, so take the longest match.
        let found = signs.chain(words).min_by_key(|(_, rest)| rest.len())?;
        Some((found.0, &text[text.len() - end(found.1)..]))
    }

    /// Converts numbers in words to digits. Other text is unchanged.
    fn in_digits(self, text: &str) -> String {
        let said = in_digits_with(text, |word| {
            let known = WORDS.iter().find(|(known, _)| word.eq_ignore_ascii_case(known));
            let signs = self.units().iter().map(|(sign, ..)| *sign).chain(["fl"]);
            let mut signs = known.map(|(_, sign)| *sign).into_iter().chain(signs);
            signs.find(|sign| known.is_some() || word.eq_ignore_ascii_case(sign))
        });
        said.unwrap_or_else(|| text.trim().to_owned())
    }

    /// Adds the usual unit to a number that has none, and converts numbers in words to digits.
    pub fn with_unit(self, text: &str, system: System) -> String {
        let text = self.in_digits(text);
        match parted(&text) {
            (number, "") => format!("{} {}", number.trim(), self.usual_unit(system))
                .trim_end()
                .to_owned(),
            _ => text,
        }
    }
}

/// Units in words, with their symbols.
const WORDS: [(&str, &str); 47] = [
    ("gram", "g"),
    ("grams", "g"),
    ("kilogram", "kg"),
    ("kilograms", "kg"),
    ("kilo", "kg"),
    ("kilos", "kg"),
    ("ounce", "oz"),
    ("ounces", "oz"),
    ("pound", "lb"),
    ("pounds", "lb"),
    ("lbs", "lb"),
    ("fluid", "fl"),
    ("fl ounces", "fl oz"),
    ("fl ounce", "fl oz"),
    ("fl. oz", "fl oz"),
    ("floz", "fl oz"),
    ("fluid oz", "fl oz"),
    ("fluid ounce", "fl oz"),
    ("fluid ounces", "fl oz"),
    ("milliliter", "mL"),
    ("milliliters", "mL"),
    ("liter", "L"),
    ("liters", "L"),
    ("cups", "cup"),
    ("pint", "pt"),
    ("pints", "pt"),
    ("quart", "qt"),
    ("quarts", "qt"),
    ("gallon", "gal"),
    ("gallons", "gal"),
    ("inch", "in"),
    ("inches", "in"),
    ("foot", "ft"),
    ("feet", "ft"),
    ("hour", "h"),
    ("hours", "h"),
    ("hr", "h"),
    ("hrs", "h"),
    ("minute", "min"),
    ("minutes", "min"),
    ("mins", "min"),
    ("day", "d"),
    ("days", "d"),
    ("percent", "%"),
    ("degrees", ""),
    ("part", ""),
    ("parts", ""),
];

/// Reads an amount of paint in whichever of these quantities its unit belongs to. Returns the quantity and the
/// amount in internal units.
///
/// # Errors
/// If there is no plain number, no quantity has the unit, or the value is below the minimum.
pub(super) fn read_amount(
    quantities: &[Quantity],
    text: &str,
    decimals: Decimals,
) -> Result<(Quantity, f64), ValueError> {
    for quantity in quantities {
        match quantity.read_with(text, decimals) {
            Err(ValueError::Unit(_)) => {}
            read => return read.map(|amount| (*quantity, amount)),
        }
    }
    Err(ValueError::Amount)
}

/// Returns the system of the first unit in an amount of paint.
pub fn system_of_amount(text: &str) -> Option<System> {
    let (_, unit) = parted(text);
    let ((sign, ..), _) = Quantity::Mass.unit(unit).or(Quantity::Volume.unit(unit))?;
    Some(match sign {
        "g" | "kg" | "mL" | "L" => System::Metric,
        _ => System::UsCustomary,
    })
}

/// Splits a text into the number and the part that starts with the unit.
fn parted(text: &str) -> (&str, &str) {
    let text = text.trim();
    let at = text.find(|c: char| c.is_alphabetic() || matches!(c, '%' | '\u{b0}'));
    let (number, unit) = text.split_at(at.unwrap_or(text.len()));
    (number, unit.trim())
}

/// Why a field does not accept a text.
#[derive(Clone, Debug, PartialEq)]
pub enum ValueError {
    /// The text is not a number.
    Number(NumberError),
    /// The text is a range, but the field takes a single number.
    Range,
    /// The unit does not fit this quantity.
    Unit(Quantity),
    /// The unit is neither one of weight nor one of volume.
    Amount,
    /// The smaller unit is not last, or its part is at least one of the larger unit.
    Order,
    /// The value is below the minimum.
    TooSmall,
    /// The value is too large to be plausible.
    TooLarge,
    /// The text is not a price.
    Price(coatings::can::PriceError),
    /// The text is not a calendar day.
    Day,
    /// The text is not a color.
    Colour,
    /// The text is not one of the answers.
    Answer,
    /// The text is not a picture, or the picture is too large.
    Picture,
    /// The text is not a list of working hours.
    Hours,
}

impl fmt::Display for ValueError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ValueError::Number(error) => error.fmt(f),
            ValueError::Range => f.write_str("Use one number, not a range."),
            ValueError::Unit(quantity) => {
                f.write_str("Use ")?;
                let signs: Vec<&str> = quantity.signs().collect();
                f.write_str(&signs.join(", "))?;
                f.write_str(".")
            }
            ValueError::Amount => f.write_str("Use a weight or a volume, like 680 g or 24 fl oz."),
            ValueError::Order => f.write_str("Put the larger unit first, like 2 lb 14 oz."),
            ValueError::TooSmall => f.write_str("That's too low. Check it."),
            ValueError::TooLarge => f.write_str("That's too high. Check it."),
            ValueError::Price(error) => error.fmt(f),
            ValueError::Day => f.write_str("Use a date, like 2026-05-03."),
            ValueError::Answer => f.write_str("Pick one from the list."),
            ValueError::Picture => f.write_str("Pick a smaller photo."),
            ValueError::Colour => f.write_str("Use a color, like #4a6b61."),
            ValueError::Hours => f.write_str("Use start and end times, like 9-5 or 6pm-9pm."),
        }
    }
}

impl std::error::Error for ValueError {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_come_with_their_units() {
        let near = |quantity: Quantity, text: &str, value: f64| {
            let read = quantity.read(text).unwrap();
            assert!((read - value).abs() < 1e-12, "{text}: {read}");
        };
        near(Quantity::Mass, "1 1/2 lb", 0.680_388_555);
        near(Quantity::Mass, "850g", 0.85);
        near(Quantity::Temperature, "77 \u{b0}F", 25.0);
        near(Quantity::Temperature, "-5 C", -5.0);
        near(Quantity::Time, "90 min", 1.5);
        near(Quantity::Area, "2 ft\u{b2}", 0.185_806_08);
        near(Quantity::Share, "13 %", 0.13);
        near(Quantity::Volume, "1 1/2 qt", 1.419_529_419);
        near(Quantity::Volume, "16 fl oz", 0.473_176_473);
        near(Quantity::Volume, "1/2 cup", 0.118_294_118_25);
        near(Quantity::Volume, "750 mL", 0.75);
        near(Quantity::Mass, "2 lb 14 oz", 1.304_078_063_75);
        near(Quantity::Mass, "2lb14oz", 1.304_078_063_75);
        near(Quantity::Mass, "2 lb, 14 oz", 1.304_078_063_75);
        near(Quantity::Mass, "two pounds fourteen ounces", 1.304_078_063_75);
        near(Quantity::Mass, "2 pounds 14 ounces", 1.304_078_063_75);
        near(Quantity::Mass, "1 kg 250 g", 1.25);
        near(Quantity::Time, "1 h 30 min", 1.5);
        near(Quantity::Time, "two and a half hours", 2.5);
        near(Quantity::Time, "2 and 3 quarter hours", 2.75);
        near(Quantity::Length, "three quarters inch", 0.01905);
        near(Quantity::Volume, "eight fluid ounces", 0.236_588_236_5);
        near(Quantity::Share, "thirteen percent", 0.13);
        near(Quantity::Density, "10.9 lb/gal", 1.306_108_057_754_17);
    }

    #[test]
    fn a_lone_number_gets_the_unit_of_its_time() {
        assert_eq!(Quantity::Mass.with_unit(" 850 ", System::Metric), "850 g");
        assert_eq!(Quantity::Mass.with_unit("30", System::UsCustomary), "30 oz");
        assert_eq!(Quantity::Mass.with_unit("2 kg", System::UsCustomary), "2 kg");
        let said = Quantity::Mass.with_unit("two pounds fourteen ounces", System::UsCustomary);
        assert_eq!(said, "2 lb 14 oz");
        assert_eq!(
            Quantity::Time.with_unit("two and a half", System::UsCustomary),
            "2 1/2 h"
        );
        assert_eq!(
            Quantity::Volume.with_unit("eight fluid ounces", System::UsCustomary),
            "8 fl oz"
        );
        assert!(
            Quantity::Mass
                .read(&Quantity::Mass.with_unit("850", System::Metric))
                .is_ok()
        );
    }

    #[test]
    fn what_cannot_be_so_says_why() {
        let error = |quantity: Quantity, text: &str| quantity.read(text).unwrap_err().to_string();
        assert_eq!(error(Quantity::Density, "1.3 g"), "Use kg/l, lb/gal.");
        assert_eq!(error(Quantity::Time, "3 lb"), "Use h, min, d.");
        assert_eq!(Quantity::Mass.read("-3 g"), Err(ValueError::TooSmall));
        assert_eq!(Quantity::Share.read("130 %"), Err(ValueError::TooLarge));
        assert_eq!(Quantity::Mass.read("3-4 g"), Err(ValueError::Range));
        assert!(matches!(Quantity::Mass.read("g"), Err(ValueError::Number(_))));
        for wrong in ["14 oz 2 lb", "2 lb 20 oz", "2 lb 2 lb", "2 lb -3 oz"] {
            assert_eq!(Quantity::Mass.read(wrong), Err(ValueError::Order), "{wrong}");
        }
        assert_eq!(
            Quantity::Area.read("2 ft2 3 in2"),
            Err(ValueError::Unit(Quantity::Area))
        );
        assert_eq!(
            Quantity::Time.read("33 7 8 h").unwrap_err().to_string(),
            "Did you mean 33 7/8?"
        );
    }

    #[test]
    fn an_amount_is_a_weight_a_volume_or_parts() {
        let all = [Quantity::Mass, Quantity::Volume, Quantity::Parts];
        let read = |text: &str| read_amount(&all, text, Decimals::Point);
        let near = |text: &str, quantity: Quantity, value: f64| {
            let (of, amount) = read(text).unwrap();
            assert!(
                of == quantity && (amount - value).abs() < 1e-12,
                "{text}: {of:?} {amount}"
            );
        };
        for text in [
            "24 fl oz",
            "24 fl. oz.",
            "24floz",
            "24 fluid ounces",
            "24 Fl Oz",
            "1 1/2 pints",
            "3 cups",
        ] {
            near(text, Quantity::Volume, 0.709_764_709_5);
        }
        near("1 quart", Quantity::Volume, 0.946_352_946);
        near("half a gallon", Quantity::Volume, 1.892_705_892);
        near("70 g", Quantity::Mass, 0.07);
        near("2 lb 4 oz", Quantity::Mass, 1.020_582_832_5);
        for text in ["2", "two", "2 parts", "two parts"] {
            near(text, Quantity::Parts, 2.0);
        }
        near("1/2 part", Quantity::Parts, 0.5);
        assert_eq!(read("2 ft"), Err(ValueError::Amount));
        assert_eq!(
            read_amount(&all[..2], "24", Decimals::Point),
            Err(ValueError::Amount)
        );
        assert_eq!(read("-1"), Err(ValueError::TooSmall));
        let systems = ["24 fl oz", "2 lb", "500 g", "1 L", "2"].map(system_of_amount);
        let (us, metric) = (Some(System::UsCustomary), Some(System::Metric));
        assert_eq!(systems, [us, us, metric, metric, None]);
    }

    #[test]
    fn thousands_of_hours_are_those_of_the_place() {
        for (text, point, comma) in [("1,250 h", 1250.0, 1.25), ("1.250 h", 1.25, 1250.0)] {
            assert_eq!(Quantity::Time.read_with(text, Decimals::Point), Ok(point));
            assert_eq!(Quantity::Time.read_with(text, Decimals::Comma), Ok(comma));
            assert_eq!(
                Quantity::Time.read(text),
                Ok(1.25),
                "as a file without values has it"
            );
        }
    }
}
