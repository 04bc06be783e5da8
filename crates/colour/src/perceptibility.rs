//! How perceptible a color difference is.

/// How perceptible a color difference is between two painted surfaces in good light.
///
/// The first two limits are read in the abstract of a review of twenty visual studies of dental shades (Mustansiria
/// Dental Journal 19 (2023) 280-289), the field with the most such studies: what half of the observers just see was
/// found from 0.8 to 1.7, what half of them accept from 1.8 on, with 1.8 by CIEDE2000 in many. That they hold for
/// furniture is taken over, no source. The last limit is common practice, no source, and about where the formula itself
/// ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Perceptibility {
    /// Below 0.8.
    Hardly,
    /// From 0.8 to 1.8.
    SideBySide,
    /// From 1.8 to 5.
    Plainly,
    /// From 5 on.
    AnotherShade,
}

impl Perceptibility {
    /// All levels with the difference at which each begins, the smallest first.
    pub const ALL: [(Perceptibility, f64); 4] = [
        (Perceptibility::Hardly, 0.0),
        (Perceptibility::SideBySide, 0.8),
        (Perceptibility::Plainly, 1.8),
        (Perceptibility::AnotherShade, 5.0),
    ];

    /// The level of a CIEDE2000 difference. A value that is not a number counts as another shade.
    pub fn of(difference: f64) -> Perceptibility {
        let reached = Perceptibility::ALL
            .iter()
            .rev()
            .find(|(_, from)| difference >= *from);
        reached.map_or(Perceptibility::AnotherShade, |(seen, _)| *seen)
    }

    /// Its label.
    pub fn label(self) -> &'static str {
        match self {
            Perceptibility::Hardly => "barely visible, even side by side",
            Perceptibility::SideBySide => "visible side by side, but not apart",
            Perceptibility::Plainly => "obvious side by side",
            Perceptibility::AnotherShade => "a different shade",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_limit_belongs_to_what_is_above_it() {
        for (difference, seen) in [
            (0.0, Perceptibility::Hardly),
            (0.79, Perceptibility::Hardly),
            (0.8, Perceptibility::SideBySide),
            (1.8, Perceptibility::Plainly),
            (5.0, Perceptibility::AnotherShade),
            (f64::NAN, Perceptibility::AnotherShade),
        ] {
            assert_eq!(Perceptibility::of(difference), seen, "{difference}");
        }
    }
}
