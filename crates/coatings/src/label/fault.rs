//! Invalid values of a label.

use std::fmt;

use super::field::{Field, shown};

/// Limits of any label value, in the units of [`Label`](super::Label), so that amounts stay finite.
const SMALLEST: f64 = 1e-6;
const LARGEST: f64 = 1e6;
/// No label asks for air colder or warmer than this at least, degrees Celsius. A number in the other unit lies outside.
const COLDEST: (f64, f64) = (-10.0, 35.0);

/// Why a value of a label is invalid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// It is not a number, or one without end.
    NotANumber {
        /// Where.
        field: Field,
    },
    /// It is zero or negative.
    NotPositive {
        /// Where.
        field: Field,
    },
    /// It is outside all plausible limits.
    Extreme {
        /// Where.
        field: Field,
    },
    /// The lower figure is above the upper one.
    Reversed {
        /// Where.
        field: Field,
        /// What stands as the lower one, in the unit of the label.
        low: f64,
        /// What stands as the upper one.
        high: f64,
    },
    /// Volume solids that are nothing, or more than all of it.
    Solids,
    /// Thinner that is negative, or more than there is paint.
    Thinning,
}

impl Fault {
    /// The first error of the value of a field.
    pub(super) fn of(field: Field, (low, high): (f64, f64)) -> Option<Self> {
        if !(low.is_finite() && high.is_finite()) {
            return Some(Fault::NotANumber { field });
        }
        let least = low.min(high);
        let most = low.max(high);
        match field {
            Field::VolumeSolids if least <= 0.0 || most > 1.0 => Some(Fault::Solids),
            Field::Thinning if least < 0.0 || most > 1.0 => Some(Fault::Thinning),
            Field::Rate | Field::Density | Field::Recoat | Field::Cure if least <= 0.0 => {
                Some(Fault::NotPositive { field })
            }
            Field::Coldest if least < COLDEST.0 || most > COLDEST.1 => Some(Fault::Extreme { field }),
            Field::Coldest if low > high => Some(Fault::Reversed { field, low, high }),
            Field::Coldest => None,
            _ if field != Field::Thinning && !(SMALLEST <= least && most <= LARGEST) => {
                Some(Fault::Extreme { field })
            }
            _ if low > high => Some(Fault::Reversed { field, low, high }),
            _ => None,
        }
    }

    /// Where it is.
    pub fn field(self) -> Field {
        match self {
            Fault::NotANumber { field }
            | Fault::NotPositive { field }
            | Fault::Extreme { field }
            | Fault::Reversed { field, .. } => field,
            Fault::Solids => Field::VolumeSolids,
            Fault::Thinning => Field::Thinning,
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let name = self.field().label();
        match self {
            Fault::NotANumber { .. } => {
                write!(f, "{name}: enter the number on the label, or leave it blank.")
            }
            Fault::NotPositive { .. } => write!(f, "{name}: use a number above 0, or leave it blank."),
            Fault::Extreme { .. } => write!(f, "{name}: check the label. No label has a number like this."),
            Fault::Reversed { field, low, high } => {
                // Fractions are read as percent, as they are typed.
                let (factor, sign) = match field {
                    Field::VolumeSolids | Field::Thinning => (100.0, "%"),
                    _ => (1.0, ""),
                };
                write!(
                    f,
                    "{name}: put the lower number first. {}{sign} is above {}{sign}.",
                    shown(low * factor),
                    shown(high * factor)
                )
            }
            Fault::Solids => write!(
                f,
                "{name}: use percent by volume, above 0% and up to 100%, or leave it blank."
            ),
            Fault::Thinning => write!(
                f,
                "{name}: use percent of the paint by volume, 0% to 100%, or leave it blank."
            ),
        }
    }
}

impl std::error::Error for Fault {}
