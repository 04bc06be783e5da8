//! Quantities in books: a number with a unit behind it, as a kitchen scale or a label shows it.

use std::fmt;

use units::{NumberError, System, read_range};

/// What is measured, with the units that it may be written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// A mass, in kilograms.
    Mass,
    /// An area, in square metres.
    Area,
    /// A volume, in litres.
    Volume,
    /// A length, in metres.
    Length,
    /// A time, in hours.
    Time,
    /// A density, in kilograms a litre.
    Density,
    /// A temperature, in degrees Celsius.
    Temperature,
    /// A share, from 0 to 1.
    Share,
}

/// How a unit is written, how much of the tool's own unit one is, and where its nought lies in that.
type Unit = (&'static str, f64, f64);

impl Quantity {
    /// The units; the first is the usual metric one, the second the usual one of US trade.
    fn units(self) -> &'static [Unit] {
        // Exact by definition: the pound, the inch, the US gallon of 231 cubic inches.
        match self {
            Quantity::Mass => &[
                ("g", 0.001, 0.0),
                ("oz", 0.028_349_523_125, 0.0),
                ("kg", 1.0, 0.0),
                ("lb", 0.453_592_37, 0.0),
            ],
            Quantity::Area => &[
                ("m2", 1.0, 0.0),
                ("ft2", 0.092_903_04, 0.0),
                ("cm2", 0.0001, 0.0),
                ("in2", 0.000_645_16, 0.0),
            ],
            Quantity::Volume => &[
                ("mL", 0.001, 0.0),
                ("fl oz", 0.029_573_529_562_5, 0.0),
                ("L", 1.0, 0.0),
                ("cup", 0.236_588_236_5, 0.0),
                ("pt", 0.473_176_473, 0.0),
                ("qt", 0.946_352_946, 0.0),
                ("gal", 3.785_411_784, 0.0),
            ],
            Quantity::Length => &[
                ("mm", 0.001, 0.0),
                ("in", 0.0254, 0.0),
                ("cm", 0.01, 0.0),
                ("m", 1.0, 0.0),
                ("ft", 0.3048, 0.0),
            ],
            Quantity::Time => &[
                ("h", 1.0, 0.0),
                ("h", 1.0, 0.0),
                ("min", 1.0 / 60.0, 0.0),
                ("d", 24.0, 0.0),
            ],
            Quantity::Density => &[("kg/l", 1.0, 0.0), ("lb/gal", 0.453_592_37 / 3.785_411_784, 0.0)],
            Quantity::Temperature => &[("C", 1.0, 0.0), ("F", 5.0 / 9.0, 32.0)],
            Quantity::Share => &[("%", 0.01, 0.0), ("%", 0.01, 0.0)],
        }
    }

    /// The unit of a number without one.
    pub fn usual_unit(self, system: System) -> &'static str {
        let place = usize::from(system == System::UsCustomary);
        self.units().get(place).map_or("", |(sign, ..)| sign)
    }

    /// The units by their signs, each once.
    pub fn signs(self) -> impl Iterator<Item = &'static str> {
        let units = self.units();
        let is_new = move |place: usize| place != 1 || units[0].0 != units[1].0;
        let numbered = units.iter().enumerate();
        numbered
            .filter(move |(place, _)| is_new(*place))
            .map(|(_, (sign, ..))| *sign)
    }

    /// Reads a number with its unit, in the tool's own unit.
    ///
    /// # Errors
    /// If there is no plain number, the unit is not one of this quantity, or the value is less than there can be.
    pub fn read(self, text: &str) -> Result<f64, ValueError> {
        let (number, unit) = parted(text);
        let unit = unit.replace('\u{b2}', "2").replace('\u{b0}', "");
        let same = |sign: &str| sign.eq_ignore_ascii_case(&unit);
        let (_, factor, nought) = *self
            .units()
            .iter()
            .find(|(sign, ..)| same(sign))
            .ok_or(ValueError::Unit(self))?;
        let value = match read_range(number).map_err(ValueError::Number)? {
            (low, high) if low == high => (low - nought) * factor,
            _ => return Err(ValueError::Range),
        };
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

    /// What was written, with the usual unit behind it if there is none.
    pub fn with_unit(self, text: &str, system: System) -> String {
        match parted(text) {
            (number, "") => format!("{} {}", number.trim(), self.usual_unit(system)),
            _ => text.trim().into(),
        }
    }
}

/// The number and the unit behind it.
fn parted(text: &str) -> (&str, &str) {
    let text = text.trim();
    let at = text.find(|c: char| c.is_alphabetic() || matches!(c, '%' | '\u{b0}'));
    let (number, unit) = text.split_at(at.unwrap_or(text.len()));
    (number, unit.trim())
}

/// Why a text cannot stand in a field.
#[derive(Clone, Debug, PartialEq)]
pub enum ValueError {
    /// It is no number.
    Number(NumberError),
    /// It is a range where one number is wanted.
    Range,
    /// The unit is not one of this quantity.
    Unit(Quantity),
    /// Less than there can be.
    TooSmall,
    /// More than can be believed.
    TooLarge,
    /// It is no price.
    Price(coatings::can::PriceError),
    /// It is no day of the calendar.
    Day,
    /// It is no colour.
    Colour,
    /// It is none of the answers.
    Answer,
    /// It is no picture, or too large a one.
    Picture,
    /// It is no hours of work.
    Hours,
}

impl fmt::Display for ValueError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ValueError::Number(error) => error.fmt(f),
            ValueError::Range => f.write_str("One number is wanted here, not a range."),
            ValueError::Unit(quantity) => {
                f.write_str("That unit does not belong here. Use ")?;
                let signs: Vec<&str> = quantity.signs().collect();
                f.write_str(&signs.join(", "))?;
                f.write_str(".")
            }
            ValueError::TooSmall => f.write_str("That is less than there can be. Look at the figure again."),
            ValueError::TooLarge => f.write_str("That is more than there can be. Look at the figure again."),
            ValueError::Price(error) => error.fmt(f),
            ValueError::Day => f.write_str("That is no day. Write year, month and day, such as 2026-05-03."),
            ValueError::Answer => f.write_str("That answer is not known here. Choose one from the list."),
            ValueError::Picture => f.write_str("That is no picture, or too large a one."),
            ValueError::Colour => f.write_str("That is no colour. Write it such as #4a6b61."),
            ValueError::Hours => {
                f.write_str("Those are no hours. Write from and to, such as 9:00-12:30, with commas between.")
            }
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
    }

    #[test]
    fn a_lone_number_gets_the_unit_of_its_time() {
        assert_eq!(Quantity::Mass.with_unit(" 850 ", System::Metric), "850 g");
        assert_eq!(Quantity::Mass.with_unit("30", System::UsCustomary), "30 oz");
        assert_eq!(Quantity::Mass.with_unit("2 kg", System::UsCustomary), "2 kg");
        assert!(
            Quantity::Mass
                .read(&Quantity::Mass.with_unit("850", System::Metric))
                .is_ok()
        );
    }

    #[test]
    fn what_cannot_be_so_says_why() {
        let error = |quantity: Quantity, text: &str| quantity.read(text).unwrap_err().to_string();
        assert_eq!(
            error(Quantity::Density, "1.3 g"),
            "That unit does not belong here. Use kg/l, lb/gal."
        );
        assert_eq!(
            error(Quantity::Time, "3 lb"),
            "That unit does not belong here. Use h, min, d."
        );
        assert_eq!(Quantity::Mass.read("-3 g"), Err(ValueError::TooSmall));
        assert_eq!(Quantity::Share.read("130 %"), Err(ValueError::TooLarge));
        assert_eq!(Quantity::Mass.read("3-4 g"), Err(ValueError::Range));
        assert!(matches!(Quantity::Mass.read("g"), Err(ValueError::Number(_))));
    }
}
