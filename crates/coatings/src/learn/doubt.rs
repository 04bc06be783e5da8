//! Implausible observed rates.

use std::fmt;

use crate::label::shown;
use crate::sourced_range::SourcedRange;
use crate::unit::SquareMetresPerLitre;

/// So many times outside the range of a label is asked about. Labels of one kind differ by less; a coat too many or too
/// few of two is a factor of 1.5 to 2.
const FAR: f64 = 1.4;
/// An observation whose standard uncertainty is more than this share of it says little.
const VAGUE: f64 = 0.2;

/// A question about an observed rate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Doubt {
    /// It lies far outside the range of the label.
    Far {
        /// What was observed, m2/L.
        observed: f64,
        /// The range of the label, m2/L.
        usual: (f64, f64),
        /// The number of coats with which it would lie within; `None` if none does.
        coats: Option<u32>,
    },
    /// The weighing is too uncertain to be useful.
    Vague {
        /// Its standard uncertainty, as a share.
        uncertainty: f64,
    },
}

impl Doubt {
    pub(super) fn of_rate(
        observed: f64,
        coats: u32,
        usual: SourcedRange<SquareMetresPerLitre>,
    ) -> Option<Self> {
        let within = |rate: f64| usual.low <= rate && rate <= usual.high;
        let far = observed > usual.high * FAR || observed < usual.low / FAR;
        far.then(|| Doubt::Far {
            observed,
            usual: (usual.low, usual.high),
            coats: (1..=2 * coats.clamp(1, 8))
                .filter(|other| *other != coats)
                .find(|other| within(observed * f64::from(*other) / f64::from(coats.max(1)))),
        })
    }

    pub(super) fn of_uncertainty(uncertainty: f64) -> Option<Self> {
        (uncertainty > VAGUE).then_some(Doubt::Vague { uncertainty })
    }
}

impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Doubt::Far {
                observed,
                usual: (low, high),
                coats,
            } => {
                write!(
                    f,
                    "Coverage came out at {} m²/L; the label says {} to {} m²/L. ",
                    shown(observed),
                    shown(low),
                    shown(high)
                )?;
                match coats {
                    Some(1) => f.write_str("1 coat would fit. How many did you apply?"),
                    Some(coats) => write!(f, "{coats} coats would fit. How many did you apply?"),
                    None => f.write_str("Check the weights and the area."),
                }
            }
            Doubt::Vague { uncertainty } => write!(
                f,
                "This weighing could be off by {}%. Use a finer scale or a larger job.",
                shown((uncertainty * 100.0).round())
            ),
        }
    }
}
