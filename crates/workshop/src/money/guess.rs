//! Guesses that stand in for what the maker has not entered, so that there is an answer before anything is
//! set up. They are in US dollars, are never saved, and never replace an entry.

use coatings::Provenance;

use crate::document::{Currency, Workshop};

/// The median hourly wage of furniture finishers in the United States, in hundredths of a dollar: 20.45 in
/// May 2024 (occupation 51-7021, Bureau of Labor Statistics, OEWS national table M2024, read in a copy).
pub const WAGE: u64 = 2_045;

/// The code of the currency of all guesses.
const DOLLAR: &str = "USD";

/// An input of an account that was guessed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Guess {
    /// The hourly wage is [`WAGE`].
    Wage,
    /// Some can prices are typical ones.
    Prices,
}

impl Guess {
    /// Returns where the guess comes from.
    pub fn source(self) -> &'static str {
        match self {
            Guess::Wage => "median wage of furniture finishers, United States, May 2024, BLS OEWS 51-7021",
            Guess::Prices => "typical prices in US stores, about 2024",
        }
    }

    /// Returns how sure the guess is.
    pub fn certainty(self) -> Provenance {
        match self {
            Guess::Wage => Provenance::Read,
            Guess::Prices => Provenance::Memory,
        }
    }
}

/// Returns the currency of the guesses, or `None` if nothing is guessed because the maker chose another one.
pub(super) fn currency_of_guesses(workshop: &Workshop) -> Option<Currency> {
    let dollar = Currency::new(DOLLAR).ok();
    dollar.filter(|dollar| workshop.settings.currency.is_none_or(|chosen| chosen == *dollar))
}
