//! What an eye makes of a difference.

/// What an eye makes of a difference between two painted surfaces in good light.
///
/// The first two limits are read in the abstract of a review of twenty visual studies of dental shades (Mustansiria
/// Dental Journal 19 (2023) 280-289), the field with the most such studies: what half of the observers just see was
/// found from 0.8 to 1.7, what half of them accept from 1.8 on, with 1.8 by CIEDE2000 in many. That they hold for
/// furniture is taken over, no source. The last limit is common practice, no source, and about where the formula itself
/// ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Seen {
    /// Below 0.8.
    Hardly,
    /// From 0.8 to 1.8.
    SideBySide,
    /// From 1.8 to 5.
    Plainly,
    /// From 5 on.
    AnotherShade,
}

impl Seen {
    /// All of them with the difference from which each begins, the least first.
    pub const ALL: [(Seen, f64); 4] = [
        (Seen::Hardly, 0.0),
        (Seen::SideBySide, 0.8),
        (Seen::Plainly, 1.8),
        (Seen::AnotherShade, 5.0),
    ];

    /// What is made of this difference by CIEDE2000; what is no number counts as another shade.
    pub fn of(difference: f64) -> Seen {
        let reached = Seen::ALL.iter().rev().find(|(_, from)| difference >= *from);
        reached.map_or(Seen::AnotherShade, |(seen, _)| *seen)
    }

    /// The words for it.
    pub fn label(self) -> &'static str {
        match self {
            Seen::Hardly => "hardly seen, even side by side",
            Seen::SideBySide => "seen side by side, hardly apart from each other",
            Seen::Plainly => "plainly seen side by side",
            Seen::AnotherShade => "another shade",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_limit_belongs_to_what_is_above_it() {
        for (difference, seen) in [
            (0.0, Seen::Hardly),
            (0.79, Seen::Hardly),
            (0.8, Seen::SideBySide),
            (1.8, Seen::Plainly),
            (5.0, Seen::AnotherShade),
            (f64::NAN, Seen::AnotherShade),
        ] {
            assert_eq!(Seen::of(difference), seen, "{difference}");
        }
    }
}
