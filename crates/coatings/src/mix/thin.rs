//! Thinning for the sprayer: what it does to the film, and what to weigh in.

use std::fmt;

use units::{Density, Length, Mass, Volume};

use crate::estimate::Estimate;
use crate::film;
use crate::mix::WATER_DENSITY;
use crate::sourced_range::SourcedRange;
use crate::unit::KilogramsPerLitre;

/// What paint is thinned with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thinner {
    /// Its key in saved files.
    pub key: &'static str,
    /// Its name in the trade.
    pub label: &'static str,
    /// Density, kg/L.
    pub density: SourcedRange<KilogramsPerLitre>,
    /// What to watch out for; short, and second to the label.
    pub caution: &'static str,
}

const FLAMMABLE: &str = "Flammable. No flame, spark or heater nearby. Ventilate and follow the label.";

/// What paint is thinned with; the label of the paint says which. Densities near 20 degrees, from memory.
pub static THINNERS: [Thinner; 3] = [
    Thinner {
        key: "water",
        label: "water",
        density: WATER_DENSITY,
        caution: "Only for water-based paint.",
    },
    Thinner {
        key: "mineral-spirits",
        label: "mineral spirits",
        density: SourcedRange::memory(0.77, 0.79),
        caution: FLAMMABLE,
    },
    Thinner {
        key: "alcohol",
        label: "denatured alcohol",
        density: SourcedRange::memory(0.785, 0.80),
        caution: FLAMMABLE,
    },
];

/// The thinner with this key in saved files.
pub fn thinner(key: &str) -> Option<&'static Thinner> {
    THINNERS.iter().find(|thinner| thinner.key == key)
}

/// A paint that is to be thinned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thinning {
    /// How much paint there is.
    pub paint: Volume,
    /// Its volume solids, a fraction.
    pub volume_solids: SourcedRange,
    /// How much thinner goes in, as a fraction of the volume of the paint.
    pub share: f64,
    /// The most that its label allows, as a fraction of the volume of the paint, if it is known.
    pub most: Option<f64>,
    /// What goes in.
    pub thinner: &'static Thinner,
}

/// A thinned paint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thinned {
    /// How much there is to spray: `V (1 + t)`.
    pub liquid: Volume,
    /// How much thinner goes in: `V t`.
    pub thinner: Volume,
    /// What that weighs: `V t x density`.
    pub thinner_mass: Estimate<Mass>,
    /// Volume solids of what is sprayed: `VS / (1 + t)`.
    pub volume_solids: Estimate<f64>,
    /// What to tell the maker where more goes in than the label allows.
    pub warning: Option<TooThin>,
}

/// More thinner than the label allows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TooThin {
    /// The share of thinner.
    pub share: f64,
    /// The most that the label allows.
    pub most: f64,
}

impl fmt::Display for TooThin {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "Thin less, or use a larger nozzle. {:.0}% is more than the label's {:.0}%, and the film may run or bond poorly.",
            self.share * 100.0,
            self.most * 100.0
        )
    }
}

/// Why a thinning is invalid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ThinError {
    /// The volume of the paint is negative or not a number.
    Paint,
    /// The share of thinner is not between nothing and as much as there is paint.
    Share,
    /// The label's most is negative or not a number.
    Most,
    /// Volume solids that are not positive, or above 1.
    VolumeSolids,
}

impl fmt::Display for ThinError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            ThinError::Paint => "Enter how much paint you're thinning.",
            ThinError::Share => "Enter thinner as 0% to 100% of the paint's volume.",
            ThinError::Most => "Enter the label's maximum in percent, or leave it blank.",
            ThinError::VolumeSolids => "Enter volume solids from the data sheet, above 0% and up to 100%.",
        })
    }
}

impl std::error::Error for ThinError {}

impl Thinning {
    /// Calculates the thinning.
    ///
    /// # Errors
    /// A [`ThinError`] that says which figure cannot be so.
    pub fn thinned(&self) -> Result<Thinned, ThinError> {
        let Thinning { paint, share, .. } = *self;
        if !(paint >= Volume::ZERO && paint.as_litres().is_finite()) {
            return Err(ThinError::Paint);
        }
        if !(0.0..=1.0).contains(&share) {
            return Err(ThinError::Share);
        }
        if self.most.is_some_and(|most| !(most >= 0.0 && most.is_finite())) {
            return Err(ThinError::Most);
        }
        let solids = self.volume_solids;
        if !(0.0 < solids.low && solids.low <= solids.high && solids.high <= 1.0) {
            return Err(ThinError::VolumeSolids);
        }
        let (solids, density) = (solids.distribution(), self.thinner.density.distribution());
        let thinner = paint * share;
        Ok(Thinned {
            liquid: paint + thinner,
            thinner,
            thinner_mass: Estimate {
                value: thinner * Density::kilograms_per_litre(density.mean()),
                standard_uncertainty: thinner * Density::kilograms_per_litre(density.standard_uncertainty()),
            },
            volume_solids: Estimate {
                value: solids.mean() / (1.0 + share),
                standard_uncertainty: solids.standard_uncertainty() / (1.0 + share),
            },
            warning: self
                .most
                .filter(|&most| share > most)
                .map(|most| TooThin { share, most }),
        })
    }

    /// The dry film that this wet film leaves, thinned: `DFT = WFT x VS / (1 + t)`.
    ///
    /// # Example
    /// 8 mil wet at 35 %, thinned by a tenth, dry to 2.55 mil (formula read in a table of films).
    /// ```
    /// use coatings::{SourcedRange, mix::{Thinning, thinner}};
    /// use units::{Length, Volume};
    /// let thinning = Thinning {
    ///     paint: Volume::litres(1.0), volume_solids: SourcedRange::own(0.35, 0.35), share: 0.1, most: Some(0.1),
    ///     thinner: thinner("water").unwrap(),
    /// };
    /// let dry = thinning.dry_film(Length::inches(0.008)).value;
    /// assert!((dry.as_inches() * 1000.0 - 2.55).abs() < 0.005);
    /// ```
    pub fn dry_film(&self, wet_film: Length) -> Estimate<Length> {
        let solids = self.volume_solids.distribution();
        Estimate {
            value: film::dry_film_thinned(wet_film, solids.mean(), self.share),
            standard_uncertainty: film::dry_film_thinned(wet_film, solids.standard_uncertainty(), self.share),
        }
    }

    /// The number of thinned coats that leave at least the dry film of this many unthinned ones at the same
    /// wet film: `n (1 + t)`, in whole coats.
    pub fn coats(&self, unthinned: u32) -> u32 {
        // The tolerance keeps rounding noise from adding a coat.
        (f64::from(unthinned) * (1.0 + self.share) - 1e-9).ceil() as u32
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn thinning(share: f64) -> Thinning {
        Thinning {
            paint: Volume::litres(2.0),
            volume_solids: SourcedRange::own(0.33, 0.37),
            share,
            most: Some(0.1),
            thinner: thinner("mineral-spirits").unwrap(),
        }
    }

    #[test]
    fn what_goes_in_and_what_comes_out() {
        let thinned = thinning(0.1).thinned().unwrap();
        assert!((thinned.liquid.as_litres() - 2.2).abs() < 1e-12);
        assert!((thinned.thinner.as_millilitres() - 200.0).abs() < 1e-9);
        // 200 mL at 0.78 kg/L; 0.02 / sqrt(12) of it unsure.
        assert!((thinned.thinner_mass.value.as_grams() - 156.0).abs() < 1e-9);
        assert!((thinned.thinner_mass.standard_uncertainty.as_grams() - 1.1547).abs() < 1e-3);
        assert!((thinned.volume_solids.value - 0.35 / 1.1).abs() < 1e-12);
        assert_eq!(thinned.warning, None);
        // The solids stay what they were.
        let solids = thinned.liquid * thinned.volume_solids.value;
        assert!((solids.as_litres() - 0.7).abs() < 1e-12);
    }

    #[test]
    fn thin_coats_are_more_coats() {
        assert_eq!(thinning(0.0).coats(2), 2);
        assert_eq!(thinning(0.1).coats(2), 3);
        assert_eq!(thinning(0.1).coats(10), 11);
        assert_eq!(thinning(0.5).coats(2), 3);
        assert_eq!(thinning(0.5).coats(0), 0);
        let wet = Length::millimetres(0.1);
        for share in [0.0, 0.07, 0.25, 0.5, 1.0] {
            let film = |coats: u32, share| thinning(share).dry_film(wet).value * f64::from(coats);
            let coats = thinning(share).coats(3);
            assert!(film(coats, share) >= film(3, 0.0) * (1.0 - 1e-9));
            assert!(film(coats - 1, share) < film(3, 0.0));
        }
    }

    #[test]
    fn more_than_the_label_allows_is_a_warning() {
        let warning = thinning(0.25).thinned().unwrap().warning.unwrap();
        assert_eq!((warning.share, warning.most), (0.25, 0.1));
        let told = warning.to_string();
        assert!(told.contains("25%") && told.contains("10%"), "{told}");
        let unknown = Thinning {
            most: None,
            ..thinning(0.25)
        };
        assert_eq!(unknown.thinned().unwrap().warning, None);
    }

    #[test]
    fn what_cannot_be_is_refused() {
        for share in [-0.1, 1.1, f64::NAN] {
            assert_eq!(thinning(share).thinned(), Err(ThinError::Share));
        }
        let paint = Thinning {
            paint: Volume::litres(-1.0),
            ..thinning(0.1)
        };
        assert_eq!(paint.thinned(), Err(ThinError::Paint));
        let solids = Thinning {
            volume_solids: SourcedRange::own(0.35, 35.0),
            ..thinning(0.1)
        };
        assert_eq!(solids.thinned(), Err(ThinError::VolumeSolids));
        let most = Thinning {
            most: Some(f64::NAN),
            ..thinning(0.1)
        };
        assert_eq!(most.thinned(), Err(ThinError::Most));
        assert_eq!(thinner("lacquer"), None);
    }
}
