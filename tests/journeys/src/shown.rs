//! Figures as they stand on the page, with what their rounding hides.

use anyhow::{Context, Result, ensure};

/// A US gallon in litres: 231 cubic inches of 25.4 mm.
const GALLON: f64 = 231.0 * 25.4 * 25.4 * 25.4 * 1e-6;

/// A square foot in square metres.
const SQUARE_FOOT: f64 = 0.3048 * 0.3048;

/// A figure with its unit, in litres or square metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shown {
    /// The figure as it stands there.
    pub value: f64,
    /// Half a step of its last digit: the most that rounding has changed.
    pub rounding: f64,
}

impl Shown {
    /// Reads a text such as `32.8 ft²` or `16 fl oz`.
    ///
    /// # Errors
    /// If it is no figure with a unit that the page uses.
    pub fn read(text: &str) -> Result<Self> {
        let (figure, unit) = text
            .trim()
            .split_once(char::is_whitespace)
            .with_context(|| format!("`{text}` is no figure with a unit"))?;
        let unit = match unit.trim() {
            "ft²" => SQUARE_FOOT,
            "m²" | "L" => 1.0,
            "mL" => 1e-3,
            "fl oz" => GALLON / 128.0,
            "qt" => GALLON / 4.0,
            "gal" => GALLON,
            other => anyhow::bail!("`{text}` has the unit `{other}`, which is not known here"),
        };
        let value: f64 = figure
            .replace(',', "")
            .parse()
            .with_context(|| format!("`{text}` has no figure"))?;
        let decimals = figure.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let step = (0..decimals).fold(1.0, |step, _| step / 10.0);
        Ok(Shown {
            value: value * unit,
            rounding: 0.5 * step * unit,
        })
    }

    /// Fails unless the figure is this one, but for its rounding and a share of the figure.
    ///
    /// # Errors
    /// If it is another figure.
    pub fn is(self, what: &str, expected: f64, share: f64) -> Result<()> {
        let may_differ = self.rounding * (1.0 + 1e-9) + share * expected;
        ensure!(
            (self.value - expected).abs() <= may_differ,
            "{what}: the page shows {}, expected is {expected} within {may_differ}",
            self.value
        );
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_read_with_their_rounding() {
        let quarts = Shown::read("2.5 qt").unwrap();
        assert!((quarts.value - 2.366).abs() < 1e-3 && (quarts.rounding - 0.0473).abs() < 1e-3);
        assert!(quarts.is("", 2.4, 0.0).is_ok() && quarts.is("", 2.42, 0.0).is_err());
        assert_eq!(Shown::read("85 mL").unwrap().value, 0.085);
        assert!(Shown::read("85").is_err() && Shown::read("8 cups").is_err());
    }
}
