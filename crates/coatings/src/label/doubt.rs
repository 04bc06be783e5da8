//! Implausible values of a label.

use std::fmt;

use super::field::{Field, shown_range};
use crate::film;

/// Square feet per gallon and square meters per liter differ by a factor of 41; materials of one kind differ
/// by less than 5.
const RATE_OFF: f64 = 5.0;
/// Pounds per gallon and kilograms per liter differ by a factor of 8; densities of one kind by less than
/// 1.5.
const DENSITY_OFF: f64 = 1.5;
/// Minutes, hours and days differ by factors of 60 and 24; fast and slow materials by less than 10.
const TIME_OFF: f64 = 10.0;
/// A misplaced decimal point is a factor of 10; percent by weight instead of by volume is less than 2.
const SOLIDS_OFF: f64 = 2.0;
/// Thinner above this multiple of the usual share, and above 15 %, is likely a typing error.
const THINNING_OFF: f64 = 3.0;
const MUCH_THINNER: f64 = 0.15;

/// A unit of time on a label that is easily taken for hours.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TimeUnit {
    /// Minutes.
    Minutes,
    /// Days.
    Days,
}

impl TimeUnit {
    /// One of it in hours.
    fn hours(self) -> f64 {
        match self {
            TimeUnit::Minutes => 1.0 / 60.0,
            TimeUnit::Days => 24.0,
        }
    }

    /// The word for several.
    pub fn label(self) -> &'static str {
        match self {
            TimeUnit::Minutes => "minutes",
            TimeUnit::Days => "days",
        }
    }
}

/// A question about a figure that is far from those of its kind. Ranges are from low to high.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Doubt {
    /// A rate so high that it was likely meant as square feet per US gallon.
    SquareFeetPerGallon {
        /// What was entered, m2/L.
        given: (f64, f64),
        /// What it would be then, m2/L.
        meant: (f64, f64),
        /// What is usual, m2/L.
        usual: (f64, f64),
    },
    /// A rate so low that it was likely meant as square meters per liter and taken for square feet per US gallon.
    SquareMetresPerLitre {
        /// What was entered, m2/L.
        given: (f64, f64),
        /// What it would be then, m2/L: the same number as was entered in ft2/gal.
        meant: (f64, f64),
        /// What is usual, m2/L.
        usual: (f64, f64),
    },
    /// A rate that is far from usual in either unit.
    Rate {
        /// What was entered, m2/L.
        given: (f64, f64),
        /// What is usual, m2/L.
        usual: (f64, f64),
    },
    /// A density that is far from usual.
    Density {
        /// What was entered, kg/L.
        given: (f64, f64),
        /// What it would be if it was meant as pounds per US gallon, kg/L; `None` if that is no likelier.
        as_pounds: Option<(f64, f64)>,
        /// What is usual, kg/L.
        usual: (f64, f64),
    },
    /// Volume solids or thinning that are far from usual.
    Share {
        /// Which of them.
        field: Field,
        /// What was entered, a fraction.
        given: (f64, f64),
        /// What is usual, a fraction.
        usual: (f64, f64),
    },
    /// A time that is far from usual.
    Time {
        /// Recoat or cure.
        field: Field,
        /// What was entered, hours.
        given: (f64, f64),
        /// The unit that it was likely meant in, and what it would be then, hours; `None` if none is likelier.
        meant: Option<(TimeUnit, (f64, f64))>,
        /// What is usual, hours.
        usual: (f64, f64),
    },
}

impl Doubt {
    /// Whether a rate was likely in the other unit, so that it is not used before the maker confirms it.
    pub fn asks_for_unit(&self) -> bool {
        matches!(
            self,
            Doubt::SquareFeetPerGallon { .. } | Doubt::SquareMetresPerLitre { .. }
        )
    }

    pub(super) fn of_rate(given: (f64, f64), usual: (f64, f64)) -> Option<Self> {
        if times_off(given, usual) <= RATE_OFF {
            return None;
        }
        let metric = map(given, film::from_square_feet_per_gallon);
        let customary = map(given, film::to_square_feet_per_gallon);
        Some(if times_off(metric, usual) <= RATE_OFF {
            Doubt::SquareFeetPerGallon {
                given,
                meant: metric,
                usual,
            }
        } else if times_off(customary, usual) <= RATE_OFF {
            Doubt::SquareMetresPerLitre {
                given,
                meant: customary,
                usual,
            }
        } else {
            Doubt::Rate { given, usual }
        })
    }

    pub(super) fn of_density(given: (f64, f64), usual: (f64, f64)) -> Option<Self> {
        let as_pounds = map(given, |value| value * units::exact::POUND_PER_GALLON);
        (times_off(given, usual) > DENSITY_OFF).then_some(Doubt::Density {
            given,
            as_pounds: (times_off(as_pounds, usual) <= DENSITY_OFF).then_some(as_pounds),
            usual,
        })
    }

    /// A material without a film has no usual solids, so there is no question.
    pub(super) fn of_solids(given: (f64, f64), usual: (f64, f64)) -> Option<Self> {
        let field = Field::VolumeSolids;
        (usual.0 > 0.0 && times_off(given, usual) > SOLIDS_OFF).then_some(Doubt::Share {
            field,
            given,
            usual,
        })
    }

    pub(super) fn of_thinning(given: (f64, f64), usual: (f64, f64)) -> Option<Self> {
        let field = Field::Thinning;
        (given.1 > MUCH_THINNER && given.1 > usual.1 * THINNING_OFF).then_some(Doubt::Share {
            field,
            given,
            usual,
        })
    }

    pub(super) fn of_time(field: Field, given: (f64, f64), usual: (f64, f64)) -> Option<Self> {
        let meant = [TimeUnit::Minutes, TimeUnit::Days]
            .into_iter()
            .map(|unit| (unit, map(given, |value| value * unit.hours())))
            .find(|(_, hours)| times_off(*hours, usual) <= TIME_OFF);
        (times_off(given, usual) > TIME_OFF).then_some(Doubt::Time {
            field,
            given,
            meant,
            usual,
        })
    }

    /// Where it is.
    pub fn field(self) -> Field {
        match self {
            Doubt::SquareFeetPerGallon { .. } | Doubt::SquareMetresPerLitre { .. } | Doubt::Rate { .. } => {
                Field::Rate
            }
            Doubt::Density { .. } => Field::Density,
            Doubt::Share { field, .. } | Doubt::Time { field, .. } => field,
        }
    }
}

fn map((low, high): (f64, f64), change: impl Fn(f64) -> f64) -> (f64, f64) {
    (change(low), change(high))
}

/// The factor by which the farther end of a range lies outside the usual range; 1 within it.
fn times_off(given: (f64, f64), usual: (f64, f64)) -> f64 {
    let above = given.1 / usual.1;
    let below = usual.0 / given.0;
    above.max(below).max(1.0)
}

impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Doubt::SquareFeetPerGallon { given, meant, usual } => write!(
                f,
                "Coverage: {given} m²/L is far above the typical {} m²/L. Did you mean {given} ft²/gal ({} m²/L)? It isn't used yet.",
                shown_range(usual),
                shown_range(meant),
                given = shown_range(given),
            ),
            Doubt::SquareMetresPerLitre { given, meant, usual } => write!(
                f,
                "Coverage: {meant} ft²/gal ({} m²/L) is far below the typical {} m²/L. Did you mean {meant} m²/L? It isn't used yet.",
                shown_range(given),
                shown_range(usual),
                meant = shown_range(meant),
            ),
            Doubt::Rate { given, usual } => write!(
                f,
                "Coverage: {} m²/L is far from the typical {} m²/L. Check the label.",
                shown_range(given),
                shown_range(usual),
            ),
            Doubt::Density {
                given,
                as_pounds,
                usual,
            } => {
                let given = shown_range(given);
                write!(
                    f,
                    "Density: {given} kg/L is far from the typical {} kg/L. ",
                    shown_range(usual)
                )?;
                match as_pounds {
                    Some(meant) => write!(f, "Did you mean {given} lb/gal ({} kg/L)?", shown_range(meant)),
                    None => f.write_str("Check the label."),
                }
            }
            Doubt::Share { field, given, usual } => write!(
                f,
                "{}: {}% is far from the typical {}%. Check the label; use percent by volume.",
                field.label(),
                shown_range(map(given, |share| share * 100.0)),
                shown_range(map(usual, |share| share * 100.0)),
            ),
            Doubt::Time {
                field,
                given,
                meant,
                usual,
            } => {
                let given = shown_range(given);
                write!(
                    f,
                    "{}: {given} h is far from the typical {} h. ",
                    field.label(),
                    shown_range(usual)
                )?;
                match meant {
                    Some((unit, hours)) => write!(
                        f,
                        "Did you mean {given} {} ({} h)?",
                        unit.label(),
                        shown_range(hours)
                    ),
                    None => f.write_str("Check the label."),
                }
            }
        }
    }
}
