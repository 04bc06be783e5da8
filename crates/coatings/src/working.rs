//! The derivation of a result as data: the formula, its terms and their sources.
//!
//! A screen or a printout can show it, and a test evaluates each formula again. Derivations are made on
//! demand.

use std::borrow::Cow;

use crate::sourced_range::{Provenance, SourcedRange};
use crate::unit::Unit;

/// What a number is measured in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Square meters.
    SquareMetres,
    /// Liters.
    Litres,
    /// Meters of film.
    Film,
    /// Square meters per liter.
    Rate,
    /// Square meters per liter at one meter of film.
    Spread,
    /// A share of one.
    Share,
    /// A plain number.
    Count,
}

impl Measure {
    /// The symbol of the unit; empty for a plain number.
    pub fn sign(self) -> &'static str {
        match self {
            Measure::SquareMetres => "m\u{b2}",
            Measure::Film => "m",
            Measure::Litres => "L",
            Measure::Rate => "m\u{b2}/L",
            Measure::Spread => "m\u{b3}/L",
            Measure::Share | Measure::Count => "",
        }
    }
}

/// A number in a formula.
#[derive(Clone, Debug, PartialEq)]
pub struct Quantity {
    /// Its name in the formula.
    pub symbol: &'static str,
    /// What it is.
    pub meaning: Cow<'static, str>,
    /// The value that the formula is worked out with: the best estimate.
    pub value: f64,
    /// Its standard uncertainty.
    pub standard_uncertainty: f64,
    /// What it is measured in.
    pub measure: Measure,
    /// Where it comes from, and how sure that is; `None` for what was worked out or planned.
    pub source: Option<(&'static str, Provenance)>,
}

/// The working of one result.
#[derive(Clone, Debug, PartialEq)]
pub struct Working {
    /// The formula, with `+ - * / ( )` and the symbols of the terms.
    pub formula: &'static str,
    /// What stands in the formula.
    pub terms: Vec<Quantity>,
    /// What comes out.
    pub result: Quantity,
}

impl Working {
    /// A result that is a formula over its terms.
    pub(crate) fn by(formula: &'static str, terms: Vec<Quantity>, result: Quantity) -> Self {
        Working {
            formula,
            terms,
            result,
        }
    }
}

/// A number that was planned, measured before or worked out.
pub(crate) fn given(symbol: &'static str, meaning: &'static str, value: f64, measure: Measure) -> Quantity {
    Quantity {
        symbol,
        meaning: Cow::Borrowed(meaning),
        value,
        standard_uncertainty: 0.0,
        measure,
        source: None,
    }
}

/// A figure, which has a source.
pub(crate) fn figure<U: Unit>(
    symbol: &'static str,
    meaning: &'static str,
    figure: SourcedRange<U>,
    measure: Measure,
) -> Quantity {
    let distribution = figure.distribution();
    Quantity {
        standard_uncertainty: distribution.standard_uncertainty(),
        source: Some((figure.source, figure.certainty)),
        ..given(symbol, meaning, distribution.mean(), measure)
    }
}

/// The formula with the values beside it, by an evaluator of formulas that knows nothing of this crate, gives the
/// result that stands beside it, from no other symbols than the terms have.
#[cfg(test)]
pub(crate) fn holds(working: &Working) {
    let mut value = |name: &str, _: Vec<f64>| {
        let term = working.terms.iter().find(|term| term.symbol == name);
        term.map(|term| term.value)
    };
    let value = fasteval::ez_eval(working.formula, &mut value).unwrap();
    let wanted = working.result.value;
    assert!(
        (value - wanted).abs() <= 1e-12 * wanted.abs().max(1e-9),
        "{value} {working:?}"
    );
    for term in &working.terms {
        assert!(working.formula.contains(term.symbol), "{}", term.symbol);
    }
}
