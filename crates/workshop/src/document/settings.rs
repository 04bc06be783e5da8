//! Settings for the whole workshop.

use std::fmt;

use units::Inches;

use super::Scheme;

/// The settings for the whole workshop. Each has a default.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Settings {
    /// The probability at which a can counts as enough.
    pub confidence: Confidence,
    /// How lengths in inches are displayed. It does not change any value.
    pub inches: Inches,
    /// The currency of all prices, if the maker chose one.
    pub currency: Option<Currency>,
    /// The finish of a new piece, if it differs from the usual one.
    pub finish: Option<Scheme>,
}

/// The probability at which a can counts as enough. A lower one risks a second trip to the store. A higher
/// one leaves more paint over. The default of 90% is common practice, no source.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Confidence {
    /// 80%.
    Percent80,
    /// 90%.
    #[default]
    Percent90,
    /// 95%.
    Percent95,
    /// 99%.
    Percent99,
}

impl Confidence {
    /// All values, in ascending order.
    pub const ALL: [Confidence; 4] = [
        Confidence::Percent80,
        Confidence::Percent90,
        Confidence::Percent95,
        Confidence::Percent99,
    ];

    /// Returns the percentage, as shown and saved.
    pub fn percent(self) -> u32 {
        match self {
            Confidence::Percent80 => 80,
            Confidence::Percent90 => 90,
            Confidence::Percent95 => 95,
            Confidence::Percent99 => 99,
        }
    }

    /// Returns the probability, from 0 to 1.
    pub fn probability(self) -> f64 {
        f64::from(self.percent()) / 100.0
    }

    /// Returns the value with this percentage, if there is one.
    pub fn of_percent(percent: u32) -> Option<Self> {
        Confidence::ALL
            .into_iter()
            .find(|known| known.percent() == percent)
    }
}

/// A currency, by its three-letter code (ISO 4217). Codes are not checked against a list, because the list
/// changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Currency([u8; 3]);

/// The text is not a currency code.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CurrencyError;

impl fmt::Display for CurrencyError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Use three letters, like USD or EUR.")
    }
}

impl std::error::Error for CurrencyError {}

impl Currency {
    /// Reads a code in upper or lower case.
    ///
    /// # Errors
    /// If the text is not three letters from A to Z.
    pub fn new(text: &str) -> Result<Self, CurrencyError> {
        let letters: [u8; 3] = text.trim().as_bytes().try_into().map_err(|_| CurrencyError)?;
        if letters.iter().all(u8::is_ascii_alphabetic) {
            Ok(Currency(letters.map(|letter| letter.to_ascii_uppercase())))
        } else {
            Err(CurrencyError)
        }
    }

    /// Returns the three capital letters.
    pub fn code(&self) -> &str {
        std::str::from_utf8(&self.0).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_currency_is_three_letters() {
        assert_eq!(Currency::new(" eur ").unwrap().code(), "EUR");
        for bad in ["", "EU", "EURO", "E1R", "\u{20ac}", "\u{e9}A"] {
            assert_eq!(Currency::new(bad), Err(CurrencyError), "{bad}");
        }
    }

    #[test]
    fn confidences_are_told_apart_by_their_hundredths() {
        for known in Confidence::ALL {
            assert_eq!(Confidence::of_percent(known.percent()), Some(known));
        }
        assert_eq!(Confidence::of_percent(0), None);
        assert_eq!(Confidence::default().probability(), 0.9);
    }
}
