//! The contents of a can: full, part full, measured, or weighed.

use std::fmt;

use units::{Density, Mass, Volume};

use crate::distribution::Distribution;
use crate::estimate::COVERAGE_FACTOR;
use crate::estimate::Estimate;
use crate::mix::Scale;
use crate::propagate::linear_estimate;
use crate::propagate::{Input, draw};
use crate::sourced_range::SourcedRange;
use crate::unit::KilogramsPerLitre;

/// How full a can looks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Level {
    /// Its key in saved files.
    pub key: &'static str,
    /// Its label on screen.
    pub label: &'static str,
    /// The share of the can that is left.
    pub share: SourcedRange,
}

/// How full a can looks, the fullest first (common practice, no source).
pub static LEVELS: [Level; 5] = [
    level_of("nearly-full", "nearly full", 0.85, 1.0),
    level_of("three-quarters", "about three quarters", 0.65, 0.85),
    level_of("half", "about half", 0.4, 0.6),
    level_of("quarter", "about a quarter", 0.15, 0.35),
    level_of("nearly-empty", "nearly empty", 0.02, 0.15),
];

const fn level_of(key: &'static str, label: &'static str, low: f64, high: f64) -> Level {
    Level {
        key,
        label,
        share: SourcedRange::practice(low, high),
    }
}

/// The level with this key in saved files.
pub fn level(key: &str) -> Option<&'static Level> {
    LEVELS.iter().find(|level| level.key == key)
}

/// A reading of a scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighing {
    /// What the scale shows.
    pub mass: Mass,
    /// The scale.
    pub scale: Scale,
}

/// What is in a can, as a model of independent inputs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contents {
    way: Way,
    can: Option<Volume>,
}

/// How the contents were determined.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Way {
    Full(Volume),
    Part {
        can: Volume,
        low: f64,
        high: f64,
    },
    Between {
        low: Volume,
        high: Volume,
    },
    Weighed {
        gross: Weighing,
        tare: Weighing,
        density: SourcedRange<KilogramsPerLitre>,
    },
}

/// Why the contents of a can are invalid.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum ContentsError {
    /// The can, or what is in it, is negative or not a number.
    Volume,
    /// A share that is not between nothing and all, or a lower limit above the upper one.
    Share,
    /// The lower limit of a volume is above the upper one.
    Limits,
    /// A mass is negative or not a number.
    Mass,
    /// The step or the accuracy of a scale is negative, not a number, or the accuracy above 1.
    Scale,
    /// The can with its contents weighs less than the empty can.
    GrossBelowTare {
        /// With its contents.
        gross: Mass,
        /// Empty.
        tare: Mass,
    },
    /// The density is not positive.
    Density,
}

impl fmt::Display for ContentsError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ContentsError::Volume => write!(f, "Enter the can's volume again."),
            ContentsError::Share => write!(f, "Use a share from 0 to 1 for what's left, lower number first."),
            ContentsError::Limits => write!(f, "Put the lower limit first."),
            ContentsError::Mass => write!(f, "Enter the weight the scale shows."),
            ContentsError::Scale => write!(f, "Enter the scale's step and its accuracy in percent."),
            ContentsError::GrossBelowTare { gross, tare } => write!(
                f,
                "Swap the weights or weigh again. The can weighs {:.0} g full and {:.0} g empty.",
                gross.as_grams(),
                tare.as_grams()
            ),
            ContentsError::Density => {
                write!(f, "Enter a density above 0, in kg/L. Paint is about 1.2 to 1.4.")
            }
        }
    }
}

impl std::error::Error for ContentsError {}

/// A question to the maker about implausible contents.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Doubt {
    /// More than the can holds, by more than two standard uncertainties.
    MoreThanTheCan {
        /// What is likely in it.
        likely: Volume,
        /// What it holds.
        can: Volume,
    },
}

impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Doubt::MoreThanTheCan { likely, can } => write!(
                f,
                "That's {:.0} mL in a {:.0} mL can. Check the empty weight, the density and the size.",
                likely.as_millilitres(),
                can.as_millilitres()
            ),
        }
    }
}

fn volume(value: Volume) -> Result<Volume, ContentsError> {
    if value >= Volume::ZERO && value.as_litres().is_finite() {
        Ok(value)
    } else {
        Err(ContentsError::Volume)
    }
}

impl Contents {
    /// A can that was never opened. The tolerance of the filling line is not counted.
    ///
    /// # Errors
    /// [`ContentsError::Volume`].
    pub fn full(can: Volume) -> Result<Self, ContentsError> {
        Ok(Contents {
            way: Way::Full(volume(can)?),
            can: Some(can),
        })
    }

    /// A can of which a share between two limits is left; see [`LEVELS`].
    ///
    /// # Errors
    /// [`ContentsError::Volume`] or [`ContentsError::Share`].
    ///
    /// # Example
    /// ```
    /// use coatings::can::{Contents, can, level};
    /// let half = level("half").unwrap().share;
    /// let rest = Contents::part(can("metric-1-l").unwrap().volume(), half.low, half.high)?;
    /// assert_eq!(rest.likely().as_millilitres(), 500.0);
    /// # Ok::<(), coatings::can::ContentsError>(())
    /// ```
    pub fn part(can: Volume, low: f64, high: f64) -> Result<Self, ContentsError> {
        if !(0.0 <= low && low <= high && high <= 1.0) {
            return Err(ContentsError::Share);
        }
        Ok(Contents {
            way: Way::Part {
                can: volume(can)?,
                low,
                high,
            },
            can: Some(can),
        })
    }

    /// A volume between two limits, such as one measured in a jug; `can` is what the can holds, if known.
    ///
    /// # Errors
    /// [`ContentsError::Volume`] or [`ContentsError::Limits`].
    pub fn between(low: Volume, high: Volume, can: Option<Volume>) -> Result<Self, ContentsError> {
        if volume(low)? > volume(high)? {
            return Err(ContentsError::Limits);
        }
        Ok(Contents {
            way: Way::Between { low, high },
            can: can.map(volume).transpose()?,
        })
    }

    /// A can that was weighed with its contents and empty; density in kg/L, `can` is what it holds, if known.
    ///
    /// `volume = (gross - tare) / density`. Both readings are rounded each for itself. One scale is off by the
    /// same share in both readings, two scales each by its own.
    ///
    /// # Errors
    /// A [`ContentsError`] that says which of these cannot be so. More than the can holds is no error but a
    /// [`Doubt`], because density and empty can are often guessed.
    pub fn weighed(
        gross: Weighing,
        tare: Weighing,
        density: SourcedRange<KilogramsPerLitre>,
        can: Option<Volume>,
    ) -> Result<Self, ContentsError> {
        for weighing in [gross, tare] {
            if !(weighing.mass >= Mass::ZERO && weighing.mass.as_kilograms().is_finite()) {
                return Err(ContentsError::Mass);
            }
            let scale = weighing.scale;
            if !(scale.resolution >= Mass::ZERO
                && scale.resolution.as_kilograms().is_finite()
                && (0.0..=1.0).contains(&scale.accuracy))
            {
                return Err(ContentsError::Scale);
            }
        }
        if gross.mass < tare.mass {
            return Err(ContentsError::GrossBelowTare {
                gross: gross.mass,
                tare: tare.mass,
            });
        }
        if !(0.0 < density.low && density.low <= density.high && density.high.is_finite()) {
            return Err(ContentsError::Density);
        }
        Ok(Contents {
            way: Way::Weighed { gross, tare, density },
            can: can.map(volume).transpose()?,
        })
    }

    /// Liters in each of a number of trials (JCGM 101).
    pub fn drawn(&self, trials: usize) -> Vec<f64> {
        if let Way::Full(can) = self.way {
            return vec![can.as_litres().max(0.0); trials];
        }
        let columns: Vec<Vec<f64>> = self
            .inputs()
            .into_iter()
            .map(|(name, distribution)| {
                let name = format!("can/{name}");
                draw(&Input { name, distribution }, trials)
            })
            .collect();
        let mut row = vec![0.0; columns.len()];
        (0..trials)
            .map(|trial| {
                for (value, column) in row.iter_mut().zip(&columns) {
                    *value = column[trial];
                }
                self.litres(&row)
            })
            .collect()
    }

    /// The names and distributions of the independent inputs.
    pub fn inputs(&self) -> Vec<(&'static str, Distribution)> {
        match self.way {
            Way::Full(can) => vec![("can volume, L", Distribution::Exact(can.as_litres()))],
            Way::Part { low, high, .. } => vec![("share of the can left", Distribution::between(low, high))],
            Way::Between { low, high } => vec![(
                "volume left in the can, L",
                Distribution::between(low.as_litres(), high.as_litres()),
            )],
            Way::Weighed { gross, tare, density } => {
                let rounding = |weighing: Weighing| {
                    let half = weighing.scale.resolution.as_kilograms() / 2.0;
                    Distribution::between(-half, half)
                };
                let off = |weighing: Weighing| {
                    Distribution::between(-weighing.scale.accuracy, weighing.scale.accuracy)
                };
                let mut inputs = vec![
                    ("density, kg/L", density.distribution()),
                    ("rounding of the full weight, kg", rounding(gross)),
                    ("rounding of the empty weight, kg", rounding(tare)),
                    ("scale error, share of the reading", off(gross)),
                ];
                if gross.scale != tare.scale {
                    inputs.push(("scale error on the empty can, share of the reading", off(tare)));
                }
                inputs
            }
        }
    }

    /// The volume in liters for values of the inputs, in the order of [`Contents::inputs`]; never below zero.
    pub fn litres(&self, x: &[f64]) -> f64 {
        self.unbounded(x).max(0.0)
    }

    /// The same model without its lower bound, which would halve the uncertainty of an empty can.
    fn unbounded(&self, x: &[f64]) -> f64 {
        let at = |place: usize| x.get(place).copied().unwrap_or(0.0);
        match self.way {
            Way::Full(_) | Way::Between { .. } => at(0),
            Way::Part { can, .. } => can.as_litres() * at(0),
            Way::Weighed { gross, tare, .. } => {
                let off = at(3);
                let other = x.get(4).copied().unwrap_or(off);
                let full = (gross.mass.as_kilograms() + at(1)) * (1.0 + off);
                let empty = (tare.mass.as_kilograms() + at(2)) * (1.0 + other);
                let content = Mass::kilograms(full - empty);
                (content / Density::kilograms_per_litre(at(0))).as_litres()
            }
        }
    }

    /// The best estimate with its standard uncertainty by the linear law (JCGM 100, 5.1.2).
    pub fn estimate(&self) -> Estimate<Volume> {
        let inputs: Vec<Distribution> = self.inputs().into_iter().map(|(_, input)| input).collect();
        linear_estimate(&inputs, &|x| self.unbounded(x)).with(Volume::litres)
    }

    /// What is likely in it.
    pub fn likely(&self) -> Volume {
        self.estimate().value
    }

    /// The standard uncertainty of what is in it, by the linear law (JCGM 100, 5.1.2).
    pub fn standard_uncertainty(&self) -> Volume {
        self.estimate().standard_uncertainty
    }

    /// A question to the maker, if the contents are implausible.
    pub fn doubt(&self) -> Option<Doubt> {
        let Estimate {
            value: likely,
            standard_uncertainty,
        } = self.estimate();
        let can = self.can?;
        // The tolerance absorbs rounding noise.
        (likely - standard_uncertainty * COVERAGE_FACTOR > can * (1.0 + 1e-9))
            .then_some(Doubt::MoreThanTheCan { likely, can })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::samples::Samples;

    const EXACT: Scale = Scale {
        resolution: Mass::ZERO,
        accuracy: 0.0,
    };

    fn on(scale: Scale, grams: f64) -> Weighing {
        Weighing {
            mass: Mass::grams(grams),
            scale,
        }
    }

    #[test]
    fn a_full_can_is_sure_and_half_a_can_is_not() {
        let litre = Volume::litres(1.0);
        let full = Contents::full(litre).unwrap();
        assert_eq!(
            (full.likely(), full.standard_uncertainty()),
            (litre, Volume::ZERO)
        );
        let half = Contents::part(litre, 0.4, 0.6).unwrap().estimate();
        assert_eq!(half.value.as_millilitres(), 500.0);
        // Half the width over the root of 3.
        assert!((half.standard_uncertainty.as_millilitres() - 57.735).abs() < 0.001);
        let jug = Contents::between(Volume::litres(0.5), Volume::litres(0.5), None).unwrap();
        assert_eq!(jug.standard_uncertainty(), Volume::ZERO);
    }

    /// By hand: 780 g - 120 g = 660 g at 1.3 kg/L are 507.7 mL. Density 0.1 / sqrt(12) / 1.3 = 2.2206 %, scale
    /// 1 % / sqrt(3) = 0.5774 %, two roundings of 1 g 0.40825 / 660 = 0.0619 %; together 2.2952 %.
    #[test]
    fn a_weighed_can() {
        let kitchen = |grams| on(Scale::KITCHEN, grams);
        let density = SourcedRange::own(1.25, 1.35);
        let contents = Contents::weighed(kitchen(780.0), kitchen(120.0), density, None).unwrap();
        let Estimate {
            value,
            standard_uncertainty,
        } = contents.estimate();
        assert!((value.as_millilitres() - 507.692).abs() < 0.001);
        assert!((standard_uncertainty / value - 0.022_952).abs() < 3e-5);
        // The trials of the same model agree with the linear law.
        let samples = Samples::of(&contents.drawn(50_000));
        assert!((samples.standard_uncertainty() / standard_uncertainty.as_litres() - 1.0).abs() < 0.02);
        // The uncertainty of an empty can is two roundings: 0.40825 g at 1.3 kg/L.
        let empty = Contents::weighed(kitchen(120.0), kitchen(120.0), density, None).unwrap();
        assert!((empty.standard_uncertainty().as_millilitres() - 0.314).abs() < 0.001);
        assert_eq!(empty.litres(&[1.3, -0.001, 0.0, 0.0]), 0.0);
        // A second scale for the empty can has an error of its own.
        let two = Contents::weighed(kitchen(780.0), on(Scale::FINE, 120.0), density, None).unwrap();
        assert_eq!((contents.inputs().len(), two.inputs().len()), (4, 5));
        assert!(two.standard_uncertainty() > standard_uncertainty);
    }

    #[test]
    fn what_cannot_be_so_is_refused() {
        let density = SourcedRange::own(1.3, 1.3);
        let weighed = |gross, tare, density| {
            Contents::weighed(on(EXACT, gross), on(EXACT, tare), density, None).unwrap_err()
        };
        assert_eq!(
            weighed(100.0, 120.0, density).to_string(),
            "Swap the weights or weigh again. The can weighs 100 g full and 120 g empty."
        );
        assert_eq!(weighed(-1.0, 120.0, density), ContentsError::Mass);
        assert_eq!(weighed(f64::NAN, 120.0, density), ContentsError::Mass);
        assert_eq!(
            weighed(200.0, 120.0, SourcedRange::own(0.0, 1.0)),
            ContentsError::Density
        );
        assert_eq!(
            weighed(200.0, 120.0, SourcedRange::own(1.4, 1.2)),
            ContentsError::Density
        );
        let broken = Scale {
            resolution: Mass::grams(1.0),
            accuracy: f64::NAN,
        };
        assert_eq!(
            Contents::weighed(on(broken, 2.0), on(broken, 1.0), density, None),
            Err(ContentsError::Scale)
        );
        let litre = Volume::litres(1.0);
        assert_eq!(Contents::full(litre * -1.0), Err(ContentsError::Volume));
        assert_eq!(Contents::part(litre, 0.6, 0.4), Err(ContentsError::Share));
        assert_eq!(Contents::part(litre, 0.5, 1.1), Err(ContentsError::Share));
        assert_eq!(
            Contents::between(litre, litre * 0.5, None),
            Err(ContentsError::Limits)
        );
    }

    #[test]
    fn more_than_the_can_holds_is_a_question() {
        let can = Some(Volume::millilitres(500.0));
        let density = SourcedRange::own(1.25, 1.35);
        let weighed = |gross| Contents::weighed(on(EXACT, gross), on(EXACT, 120.0), density, can).unwrap();
        // 507.7 mL are within the doubt of the density, 600 mL are not.
        assert_eq!(weighed(780.0).doubt(), None);
        let doubt = weighed(900.0).doubt().unwrap();
        assert_eq!(
            doubt.to_string(),
            "That's 600 mL in a 500 mL can. Check the empty weight, the density and the size."
        );
        assert_eq!(Contents::full(Volume::litres(0.3)).unwrap().doubt(), None);
    }

    #[test]
    fn levels_fall_and_are_found_by_their_names() {
        assert!(
            LEVELS
                .windows(2)
                .all(|pair| pair[0].share.low >= pair[1].share.high)
        );
        for one in &LEVELS {
            assert_eq!(level(one.key), Some(one));
        }
        assert_eq!(level("half").unwrap().share.low, 0.4);
    }
}
