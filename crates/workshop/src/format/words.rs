//! The words in save files for choices that have no key of their own. Each word is defined here, once.

use coatings::Basis;
use geometry::{Along, Fill, Towards};
use units::{Inches, LengthUnit, System};

/// A choice with a word for each of its values.
pub(super) trait Word: Copy + PartialEq + Sized + 'static {
    /// The name of the choice, for notices.
    const WHAT: &'static str;
    /// Every value with its word.
    const WORDS: &'static [(Self, &'static str)];

    /// Returns the word for this value.
    fn word(self) -> &'static str {
        Self::WORDS
            .iter()
            .find(|(value, _)| *value == self)
            .map_or("", |(_, word)| word)
    }

    /// Returns the value for a word.
    fn of(word: &str) -> Option<Self> {
        Self::WORDS
            .iter()
            .find(|(_, known)| *known == word)
            .map(|(value, _)| *value)
    }
}

impl Word for System {
    const WHAT: &'static str = "system of units";
    const WORDS: &'static [(Self, &'static str)] = &[(System::UsCustomary, "us"), (System::Metric, "metric")];
}

/// Returns the unit system for a word in a save file.
pub fn system_of(word: &str) -> Option<System> {
    System::of(word)
}

impl Word for Inches {
    const WHAT: &'static str = "inch style";
    const WORDS: &'static [(Self, &'static str)] =
        &[(Inches::Fractions, "fractions"), (Inches::Decimals, "decimals")];
}

impl Word for LengthUnit {
    const WHAT: &'static str = "unit of length";
    const WORDS: &'static [(Self, &'static str)] = &[
        (LengthUnit::Inch, "in"),
        (LengthUnit::Foot, "ft"),
        (LengthUnit::Millimetre, "mm"),
        (LengthUnit::Centimetre, "cm"),
        (LengthUnit::Metre, "m"),
    ];
}

impl Word for Fill {
    const WHAT: &'static str = "row type";
    const WORDS: &'static [(Self, &'static str)] = &[
        (Fill::Drawers, "drawers"),
        (Fill::Doors, "doors"),
        (Fill::Open, "open"),
    ];
}

impl Word for Along {
    const WHAT: &'static str = "size direction";
    const WORDS: &'static [(Self, &'static str)] = &[
        (Along::Width, "width"),
        (Along::Depth, "depth"),
        (Along::Height, "height"),
    ];
}

impl Word for Towards {
    const WHAT: &'static str = "part direction";
    const WORDS: &'static [(Self, &'static str)] = &[
        (Towards::Left, "left"),
        (Towards::Right, "right"),
        (Towards::Front, "front"),
        (Towards::Back, "back"),
        (Towards::Up, "up"),
        (Towards::Down, "down"),
    ];
}

impl Word for Basis {
    const WHAT: &'static str = "volume basis";
    const WORDS: &'static [(Self, &'static str)] =
        &[(Basis::WetFilm, "wet-film"), (Basis::LabelRate, "label-rate")];
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check<W: Word>() {
        for (value, word) in W::WORDS {
            assert!(W::of(word) == Some(*value), "{word}");
            assert_eq!(value.word(), *word);
        }
        assert!(W::of("").is_none());
    }

    #[test]
    fn every_word_comes_back_as_its_value() {
        check::<System>();
        check::<Inches>();
        check::<LengthUnit>();
        check::<Fill>();
        check::<Along>();
        check::<Towards>();
        check::<Basis>();
        assert!(Fill::ALL.into_iter().all(|fill| !fill.word().is_empty()));
    }
}
