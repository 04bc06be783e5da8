//! The fields of a label, and how values are written in sentences.

/// A field of a label.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// The spreading rate.
    Rate,
    /// The volume solids.
    VolumeSolids,
    /// The density.
    Density,
    /// The time until the next coat.
    Recoat,
    /// The time until it is hard.
    Cure,
    /// The most thinner.
    Thinning,
    /// The least temperature of the air.
    Coldest,
}

impl Field {
    /// Its label on screen.
    pub fn label(self) -> &'static str {
        match self {
            Field::Rate => "Coverage",
            Field::VolumeSolids => "Volume solids",
            Field::Density => "Density",
            Field::Recoat => "Recoat time",
            Field::Cure => "Cure time",
            Field::Thinning => "Thinning",
            Field::Coldest => "Minimum temperature",
        }
    }
}

/// A number in a sentence: about three digits, no trailing zeros.
pub(crate) fn shown(value: f64) -> String {
    let size = value.abs();
    if size >= 1e6 || (size > 0.0 && size < 0.001) {
        return units::show_number(value);
    }
    let decimals = match size {
        100.0.. => 0,
        10.0.. => 1,
        1.0.. => 2,
        _ => 3,
    };
    let text = format!("{value:.decimals$}");
    if decimals == 0 {
        text
    } else {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }
}

/// A range in a sentence.
pub(super) fn shown_range((low, high): (f64, f64)) -> String {
    let (low, high) = (shown(low), shown(high));
    if low == high {
        low
    } else {
        format!("{low} to {high}")
    }
}
