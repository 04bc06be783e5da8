//! The maker's own materials: copies of built-in materials, with values from a label and prices.

use std::fmt;
use std::rc::Rc;

use coatings::can::{Offer, PriceError, read_price, read_price_with};
use coatings::label::{Doubt, Fault, Field};
use coatings::{Label, Material, SourcedRange};
use units::{Decimals, NumberError, SortedMap, System, exact, read_range, read_range_with};

use crate::book::Entered;
use crate::meant::{is_near, read_meant, written_here};

/// A value on a label that a maker can enter.
#[derive(Debug, PartialEq)]
pub struct LabelField {
    /// The key in saved files.
    pub key: &'static str,
    /// The label value.
    pub field: Field,
    /// The accepted units: key in saved files, symbol, and size in internal units. The first is the default.
    /// If the US trade uses a unit of its own, it is the second.
    pub units: &'static [(&'static str, &'static str, f64)],
}

/// All values on a label.
pub static LABEL_FIELDS: [LabelField; 7] = [
    LabelField {
        key: "rate",
        field: Field::Rate,
        units: &[
            ("m2/L", "m\u{b2}/L", 1.0),
            ("ft2/gal", "ft\u{b2}/gal", exact::SQUARE_FOOT_PER_GALLON),
        ],
    },
    LabelField {
        key: "solids",
        field: Field::VolumeSolids,
        units: &[("%", "%", 0.01)],
    },
    LabelField {
        key: "density",
        field: Field::Density,
        units: &[
            ("kg/L", "kg/L", 1.0),
            ("lb/gal", "lb/gal", exact::POUND_PER_GALLON),
        ],
    },
    LabelField {
        key: "recoat",
        field: Field::Recoat,
        units: &[("h", "h", 1.0), ("min", "min", 1.0 / 60.0), ("d", "days", 24.0)],
    },
    LabelField {
        key: "cure",
        field: Field::Cure,
        units: &[("d", "days", 24.0), ("h", "h", 1.0)],
    },
    LabelField {
        key: "thinning",
        field: Field::Thinning,
        units: &[("%", "%", 0.01)],
    },
    LabelField {
        key: "coldest",
        field: Field::Coldest,
        units: &[
            ("C", "\u{b0}C", 1.0),
            (FAHRENHEIT, "\u{b0}F", 1.0 / exact::FAHRENHEIT_STEPS),
        ],
    },
];

/// The only unit whose zero differs from that of the internal unit.
const FAHRENHEIT: &str = "F";
/// 0 °F in degrees Celsius.
const NOUGHT_FAHRENHEIT: f64 = -32.0 / exact::FAHRENHEIT_STEPS;

/// Returns the zero of a unit, in internal units.
fn nought(unit: &str) -> f64 {
    if unit == FAHRENHEIT {
        NOUGHT_FAHRENHEIT
    } else {
        0.0
    }
}

impl LabelField {
    /// Returns the key of the unit that labels in this system use.
    pub fn usual_unit(&self, system: System) -> &'static str {
        let place = match (self.field, system) {
            (Field::Rate | Field::Density | Field::Coldest, System::UsCustomary) => 1,
            _ => 0,
        };
        self.units.get(place).map_or("", |(key, ..)| key)
    }

    /// Returns the value of a material in the unit with this key, if it has one.
    pub fn figure(&self, material: &Material, unit: &str) -> Option<SourcedRange> {
        let figure: SourcedRange = match self.field {
            Field::Rate => material.label_rate.as_numbers(),
            Field::VolumeSolids => material.volume_solids,
            Field::Density => material.density.as_numbers(),
            Field::Recoat => material.recoat.as_numbers(),
            Field::Cure => material.cure.as_numbers(),
            Field::Thinning => material.thinning,
            Field::Coldest => material.coldest?.as_numbers(),
        };
        let known = self.units.iter().find(|(key, ..)| *key == unit);
        let factor = known.map_or(1.0, |(.., factor)| *factor);
        let in_unit = |value: f64| (value - nought(unit)) / factor;
        Some(figure.with_range(in_unit(figure.low), in_unit(figure.high)))
    }
}

/// Returns the label field with this key.
pub fn label_field(key: &str) -> Option<&'static LabelField> {
    LABEL_FIELDS.iter().find(|field| field.key == key)
}

/// A value as written on a label.
#[derive(Clone, Debug, PartialEq)]
pub struct LabelReading {
    typed: String,
    unit: &'static str,
    /// The low and high value, in the unit of the label.
    numbers: (f64, f64),
    /// The low and high value, in internal units.
    range: (f64, f64),
}

/// Why a text is not a label value.
#[derive(Clone, Debug, PartialEq)]
pub enum LabelError {
    /// The text is not a number or a range.
    Number(NumberError),
    /// The unit does not fit this value.
    Unit(&'static LabelField),
}

impl fmt::Display for LabelError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LabelError::Number(error) => error.fmt(f),
            LabelError::Unit(field) => {
                write!(f, "{} can't use that unit. Use ", field.field.label())?;
                for (place, (_, sign, _)) in field.units.iter().enumerate() {
                    let between = if place > 0 { " or " } else { "" };
                    write!(f, "{between}{sign}")?;
                }
                f.write_str(".")
            }
        }
    }
}

impl std::error::Error for LabelError {}

impl LabelReading {
    /// Reads a value from a program or an old save file, in a unit of the field. Either decimal sign is
    /// accepted.
    ///
    /// # Errors
    /// If the text is not a number or a range, or the field does not have the unit. Plausibility is checked
    /// later, for the whole label.
    pub fn new(field: &'static LabelField, typed: &str, unit: &str) -> Result<Self, LabelError> {
        Self::typed_with(field, typed, unit, Decimals::Either)
    }

    /// Reads typed text with this decimal sign.
    ///
    /// # Errors
    /// Same as [`LabelReading::new`].
    pub fn typed_with(
        field: &'static LabelField,
        typed: &str,
        unit: &str,
        decimals: Decimals,
    ) -> Result<Self, LabelError> {
        let known = field.units.iter().find(|(key, ..)| *key == unit);
        let (unit, _, factor) = *known.ok_or(LabelError::Unit(field))?;
        let (low, high) = read_range_with(typed, decimals).map_err(LabelError::Number)?;
        Ok(LabelReading {
            typed: typed.trim().into(),
            unit,
            numbers: (low, high),
            range: (low * factor + nought(unit), high * factor + nought(unit)),
        })
    }

    /// Reads a saved text, with the numbers saved beside it: low and high, in the unit of the label.
    ///
    /// # Errors
    /// Same as [`LabelReading::new`].
    pub fn saved(
        field: &'static LabelField,
        typed: &str,
        unit: &str,
        beside: Option<(f64, f64)>,
    ) -> Result<Self, LabelError> {
        let is_meant = |reading: &Self| {
            let (low, high) = reading.numbers;
            beside.is_some_and(|of| is_near(low, of.0) && is_near(high, of.1))
        };
        read_meant(
            |decimals| Self::typed_with(field, typed, unit, decimals),
            is_meant,
        )
    }

    /// Returns the text as typed.
    pub fn typed(&self) -> &str {
        &self.typed
    }

    /// Returns the text for a locale with this decimal sign.
    pub fn written_here(&self, decimals: Decimals) -> String {
        written_here(&self.typed, decimals, |text, decimals| {
            read_range_with(text, decimals) == Ok(self.numbers)
        })
    }

    /// Returns the numbers in their unit, if the text on its own could be read as different ones.
    pub fn beside(&self) -> Option<(f64, f64)> {
        (read_range(&self.typed) != Ok(self.numbers)).then_some(self.numbers)
    }

    /// Returns the key of the unit.
    pub fn unit(&self) -> &'static str {
        self.unit
    }
}

/// A price as typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Price {
    typed: String,
    minor: u64,
}

impl Price {
    /// Reads a price from a program or an old save file. Either decimal sign is accepted.
    ///
    /// # Errors
    /// If the text is not a price, or is negative.
    pub fn new(typed: &str) -> Result<Self, PriceError> {
        Self::typed_with(typed, Decimals::Either)
    }

    /// Reads typed text with this decimal sign.
    ///
    /// # Errors
    /// If the text is not a price, or is negative.
    pub fn typed_with(typed: &str, decimals: Decimals) -> Result<Self, PriceError> {
        Ok(Price {
            minor: read_price_with(typed, decimals)?,
            typed: typed.trim().into(),
        })
    }

    /// Reads a saved text, with the hundredths saved beside it.
    ///
    /// # Errors
    /// If the text is not a price, or is negative.
    pub fn saved(typed: &str, beside: Option<u64>) -> Result<Self, PriceError> {
        let is_meant = |price: &Price| Some(price.minor) == beside;
        read_meant(|decimals| Self::typed_with(typed, decimals), is_meant)
    }

    /// Returns the text as typed.
    pub fn typed(&self) -> &str {
        &self.typed
    }

    /// Returns the text for a locale with this decimal sign.
    pub fn written_here(&self, decimals: Decimals) -> String {
        written_here(&self.typed, decimals, |text, decimals| {
            read_price_with(text, decimals) == Ok(self.minor)
        })
    }

    /// Returns the text with its decimal sign, so that entering it again gives the same price.
    pub fn entered(&self) -> Entered {
        let both = [Decimals::Either, Decimals::Point, Decimals::Comma];
        let is_meant = |decimals: &Decimals| read_price_with(&self.typed, *decimals) == Ok(self.minor);
        Entered {
            text: self.typed.clone(),
            decimals: both.into_iter().find(is_meant).unwrap_or_default(),
        }
    }

    /// Returns the hundredths, if the text on its own could be read as a different price.
    pub fn beside(&self) -> Option<u64> {
        (read_price(&self.typed) != Ok(self.minor)).then_some(self.minor)
    }

    /// Returns the price in hundredths of the currency.
    pub fn minor(&self) -> u64 {
        self.minor
    }
}

/// A material of the maker's own.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnMaterial {
    /// The key, unique within the workshop. It never changes.
    pub key: Rc<str>,
    /// The key of the built-in material it was copied from.
    pub of: &'static str,
    /// The maker's name for it.
    pub name: String,
    /// The values on its label, by field key.
    pub label: SortedMap<&'static str, LabelReading>,
    /// The price of a can, by can key.
    pub prices: SortedMap<&'static str, Price>,
}

impl OwnMaterial {
    /// Returns true if the maker named it. The name then says its color too. Older files have the name of the
    /// built-in material with `(own)` behind it.
    pub fn is_named(&self) -> bool {
        let name = self.name.strip_suffix(" (own)").unwrap_or(&self.name);
        coatings::material(self.of).is_none_or(|of| of.name != name)
    }

    fn label(&self) -> Label {
        let mut label = Label::default();
        for (key, reading) in &self.label {
            let range = Some(reading.range);
            match label_field(key).map(|field| field.field) {
                Some(Field::Rate) => label.rate = range,
                Some(Field::VolumeSolids) => label.volume_solids = range,
                Some(Field::Density) => label.density = range,
                Some(Field::Recoat) => label.recoat_hours = range,
                Some(Field::Cure) => label.cure_hours = range,
                Some(Field::Thinning) => label.thinning = range,
                Some(Field::Coldest) => label.coldest = range,
                None => {}
            }
        }
        label
    }

    /// Returns the label values that are possible but doubtful.
    ///
    /// # Errors
    /// The impossible values. They are not used.
    pub fn check(&self) -> Result<Vec<Doubt>, Vec<Fault>> {
        coatings::material(self.of).map_or(Ok(vec![]), |of| self.label().check(of))
    }

    /// Checks whether the label can have this value.
    ///
    /// # Errors
    /// Why it cannot.
    pub fn may_be(&self, field: &LabelField, reading: &LabelReading) -> Result<(), Fault> {
        let mut with = self.clone();
        with.label.insert(field.key, reading.clone());
        let faults = with.check().err().unwrap_or_default();
        let fault = faults.into_iter().find(|fault| fault.field() == field.field);
        fault.map_or(Ok(()), Err)
    }

    /// Returns the material with the values on its label, or with those of the built-in material if the label
    /// is impossible. A rate that was probably meant in the other unit is left out until the maker confirms
    /// it, because the amounts depend on it.
    pub fn material(&self) -> Option<Material> {
        let of = coatings::material(self.of)?;
        let mut label = self.label();
        let asks_for_unit = |doubts: Vec<Doubt>| doubts.iter().any(Doubt::asks_for_unit);
        if label.check(of).is_ok_and(asks_for_unit) {
            label.rate = None;
        }
        let named = || Material {
            key: self.key.to_string().into(),
            name: self.name.clone().into(),
            ..of.clone()
        };
        let applied = label.applied(of, self.key.to_string(), self.name.clone());
        Some(applied.unwrap_or_else(|_| named()))
    }

    /// Returns the cans for sale, with their keys.
    pub fn offers(&self) -> Vec<(&'static str, Offer)> {
        let offer = |(key, price): &(&'static str, Price)| {
            let size = coatings::can(key)?.volume();
            let price = price.minor;
            Some((*key, Offer { size, price }))
        };
        self.prices.iter().filter_map(offer).collect()
    }
}

/// Returns the key of the built-in material that a material is or was copied from.
pub(crate) fn generic<'a>(own: &[Rc<OwnMaterial>], key: &'a str) -> &'a str {
    let of_maker = own.iter().find(|material| &*material.key == key);
    of_maker.map_or(key, |material| material.of)
}

/// Returns the material with this key, either the maker's own or a built-in one.
pub fn material_of(own: &[Rc<OwnMaterial>], key: &str) -> Option<Rc<Material>> {
    let of_maker = own.iter().find(|material| &*material.key == key);
    match of_maker {
        Some(own) => own.material().map(Rc::new),
        None => coatings::material(key).map(|material| Rc::new(material.clone())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn own(field: &str, typed: &str, unit: &str) -> OwnMaterial {
        let field = label_field(field).unwrap();
        OwnMaterial {
            key: "own-1".into(),
            of: "trim-enamel",
            name: "Old green".into(),
            label: SortedMap::from([(field.key, LabelReading::new(field, typed, unit).unwrap())]),
            prices: SortedMap::from([("us-quart", Price::new("24.50").unwrap())]),
        }
    }

    /// 400 ft²/gal is 9.816955 m²/L (from the exact foot and gallon).
    #[test]
    fn a_label_takes_the_place_of_what_is_usual() {
        let material = own("rate", "350-450", "ft2/gal").material().unwrap();
        assert!((material.label_rate.middle() - 9.816_955).abs() < 1e-5);
        assert_eq!((&*material.key, &*material.name), ("own-1", "Old green"));
        let solids = own("solids", "38-40", "%").material().unwrap().volume_solids;
        assert!((solids.low - 0.38).abs() < 1e-12 && (solids.high - 0.40).abs() < 1e-12);
        let density = own("density", "10.9", "lb/gal").material().unwrap().density;
        assert!((density.middle() - 1.3061).abs() < 1e-4);
    }

    #[test]
    fn what_cannot_be_so_is_said_and_not_used() {
        let absurd = own("solids", "140", "%");
        assert!(absurd.check().is_err());
        let usual = coatings::material("trim-enamel").unwrap();
        assert_eq!(absurd.material().unwrap().volume_solids, usual.volume_solids);
        let unsettled = own("rate", "400", "m2/L");
        assert_eq!(unsettled.check().unwrap().len(), 1);
        assert_eq!(unsettled.material().unwrap().label_rate, usual.label_rate);
        assert_eq!(own("rate", "400", "ft2/gal").check().unwrap(), []);
    }

    #[test]
    fn every_trade_has_its_unit() {
        let rate = label_field("rate").unwrap();
        assert_eq!(rate.usual_unit(System::UsCustomary), "ft2/gal");
        assert_eq!(rate.usual_unit(System::Metric), "m2/L");
        let hours = label_field("recoat").unwrap();
        assert_eq!(hours.usual_unit(System::UsCustomary), "h");
        let material = own("rate", "400", "ft2/gal").material().unwrap();
        let figure = rate.figure(&material, "ft2/gal").unwrap();
        assert!((figure.middle() - 400.0).abs() < 1e-9, "{figure:?}");
        // 35 °F is 1.67 °C. In the other unit, the number is not a plausible label temperature.
        let coldest = label_field("coldest").unwrap();
        assert_eq!(coldest.usual_unit(System::UsCustomary), "F");
        let cold = own("coldest", "35", "F").material().unwrap();
        assert!(
            (cold.coldest.unwrap().low - 5.0 / 3.0).abs() < 1e-12,
            "{:?}",
            cold.coldest
        );
        assert!((coldest.figure(&cold, "F").unwrap().low - 35.0).abs() < 1e-9);
        assert!(own("coldest", "50", "C").check().is_err() && own("coldest", "10", "F").check().is_err());
    }

    #[test]
    fn units_and_numbers_that_are_none_are_refused() {
        let rate = label_field("rate").unwrap();
        assert_eq!(
            LabelReading::new(rate, "400", "acres").unwrap_err().to_string(),
            "Coverage can't use that unit. Use m\u{b2}/L or ft\u{b2}/gal."
        );
        assert!(LabelReading::new(rate, "lots", "m2/L").is_err());
        assert!(Price::new("-3").is_err());
    }

    #[test]
    fn prices_make_offers() {
        let offers = own("rate", "400", "ft2/gal").offers();
        assert_eq!(offers.len(), 1);
        assert_eq!((offers[0].0, offers[0].1.price), ("us-quart", 2450));
    }
}
