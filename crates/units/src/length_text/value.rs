//! Values of a written length, one after another: whole numbers, decimals and fractions.

use super::error::{LengthError, LengthFault, fault};
use super::tokens::{Placed, Token};
use crate::LengthUnit;

pub(super) struct Cursor<'a> {
    pub(super) tokens: &'a [Placed],
    pub(super) next: usize,
    pub(super) end: usize,
}

impl Cursor<'_> {
    pub(super) fn peek(&self) -> Option<&Placed> {
        self.tokens.get(self.next)
    }

    fn token(&self, ahead: usize) -> Option<&Token> {
        self.tokens.get(self.next + ahead).map(|(_, token)| token)
    }

    /// Where the next token stands, or the end of the text.
    pub(super) fn place(&self) -> usize {
        self.peek().map_or(self.end, |(at, _)| *at)
    }

    pub(super) fn unit(&mut self) -> Option<LengthUnit> {
        match self.token(0) {
            Some(&Token::Unit(unit)) => {
                self.next += 1;
                Some(unit)
            }
            _ => None,
        }
    }

    /// Passes the dash of `2'-9"`; a dash at the end joins nothing and is left to be reported.
    pub(super) fn skip_joint(&mut self) {
        if self.token(0) == Some(&Token::Dash) && self.token(1).is_some() {
            self.next += 1;
        }
    }

    /// A whole number, decimal, fraction, or whole number and fraction.
    pub(super) fn value(&mut self) -> Result<f64, LengthError> {
        let at = self.place();
        match self.token(0) {
            Some(Token::Dash) => Err(fault(at, LengthFault::Negative)),
            Some(&Token::Vulgar(part)) => {
                self.next += 1;
                Ok(part)
            }
            Some(&Token::Number { value, decimal }) => {
                if self.token(1) == Some(&Token::Slash) {
                    return self.fraction();
                }
                self.next += 1;
                Ok(value + self.part_behind(decimal)?)
            }
            _ => Err(fault(at, LengthFault::NumberMissing)),
        }
    }

    /// The fraction behind a whole number, joined by a space, a dash or nothing; zero if there is none.
    fn part_behind(&mut self, decimal: bool) -> Result<f64, LengthError> {
        let dash = usize::from(self.token(0) == Some(&Token::Dash));
        let (at, part) = match (self.token(dash), self.token(dash + 1)) {
            (Some(&Token::Vulgar(part)), _) => {
                let at = self.tokens[self.next + dash].0;
                self.next += dash + 1;
                (at, part)
            }
            (Some(Token::Number { .. }), Some(Token::Slash)) => {
                self.next += dash;
                (self.place(), self.fraction()?)
            }
            _ => return Ok(0.0),
        };
        if decimal {
            Err(fault(at, LengthFault::DecimalWithFraction))
        } else {
            Ok(part)
        }
    }

    /// A fraction in digits. `33/8` is refused, because it is more often a typo for `3 3/8`.
    fn fraction(&mut self) -> Result<f64, LengthError> {
        let start = self.place();
        let upper = self.whole()?;
        self.next += 1;
        let at = self.place();
        let lower = self.whole()?;
        if lower == 0.0 {
            return Err(fault(at, LengthFault::DividedByZero));
        }
        if upper >= lower {
            return Err(fault(start, LengthFault::FractionNotProper));
        }
        Ok(upper / lower)
    }

    fn whole(&mut self) -> Result<f64, LengthError> {
        let at = self.place();
        match self.token(0) {
            Some(&Token::Number {
                value,
                decimal: false,
            }) => {
                self.next += 1;
                Ok(value)
            }
            Some(Token::Number { .. }) => Err(fault(at, LengthFault::DecimalWithFraction)),
            _ => Err(fault(at, LengthFault::NumberMissing)),
        }
    }
}
