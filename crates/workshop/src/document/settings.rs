//! What a maker settled once for the whole workshop.

use std::fmt;

use units::Inches;

use super::Scheme;

/// What a maker settled once for the whole workshop; all of it has a usual value.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Settings {
    /// How sure a can must be before it is called enough.
    pub confidence: Confidence,
    /// How lengths in inches are shown. It changes no value.
    pub inches: Inches,
    /// The currency of all prices, if the maker named one.
    pub currency: Option<Currency>,
    /// How a new piece is finished, if that is not as usual in the trade.
    pub finish: Option<Scheme>,
}

/// The probability that a maker wants of a can before calling it enough: what a bought can risks is a second way to the
/// shop, and what a safer answer costs is paint that stays over. That 90 % is usual is common practice, no source.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Confidence {
    /// Four times of five.
    Percent80,
    /// Nine times of ten.
    #[default]
    Percent90,
    /// Nineteen times of twenty.
    Percent95,
    /// All but once in a hundred times.
    Percent99,
}

impl Confidence {
    /// Every one that can be wanted, from the least.
    pub const ALL: [Confidence; 4] = [
        Confidence::Percent80,
        Confidence::Percent90,
        Confidence::Percent95,
        Confidence::Percent99,
    ];

    /// In hundredths, as it is shown and saved.
    pub fn percent(self) -> u32 {
        match self {
            Confidence::Percent80 => 80,
            Confidence::Percent90 => 90,
            Confidence::Percent95 => 95,
            Confidence::Percent99 => 99,
        }
    }

    /// As a probability, from 0 to 1.
    pub fn probability(self) -> f64 {
        f64::from(self.percent()) / 100.0
    }

    /// The one of so many hundredths, if it can be wanted.
    pub fn of_percent(percent: u32) -> Option<Self> {
        Confidence::ALL
            .into_iter()
            .find(|known| known.percent() == percent)
    }
}

/// A currency by its code of three letters (ISO 4217). Whether the code is given out is not asked: new ones come and old
/// ones go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Currency([u8; 3]);

/// A text that is not the code of a currency.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CurrencyError;

impl fmt::Display for CurrencyError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("A currency is three letters, such as USD or EUR. Write those three.")
    }
}

impl std::error::Error for CurrencyError {}

impl Currency {
    /// Reads a code; small letters will do.
    ///
    /// # Errors
    /// Where the text is not three letters of the Latin alphabet.
    pub fn new(text: &str) -> Result<Self, CurrencyError> {
        let letters: [u8; 3] = text.trim().as_bytes().try_into().map_err(|_| CurrencyError)?;
        if letters.iter().all(u8::is_ascii_alphabetic) {
            Ok(Currency(letters.map(|letter| letter.to_ascii_uppercase())))
        } else {
            Err(CurrencyError)
        }
    }

    /// Its three capital letters.
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
