//! The words of the save file for everything that is a choice. Each choice has its words here, once.

use coatings::{Basis, Ground};
use geometry::{BackStyle, BaseStyle, FrontStyle, Kind};
use units::{LengthUnit, System};

/// A choice with a word for each of its values.
pub(super) trait Word: Copy + PartialEq + Sized + 'static {
    /// What is chosen, for notices.
    const WHAT: &'static str;
    /// Every value with its word.
    const WORDS: &'static [(Self, &'static str)];

    /// The word of this value.
    fn word(self) -> &'static str {
        Self::WORDS
            .iter()
            .find(|(value, _)| *value == self)
            .map_or("", |(_, word)| word)
    }

    /// The value of a word.
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

impl Word for Kind {
    const WHAT: &'static str = "kind of furniture";
    const WORDS: &'static [(Self, &'static str)] = &[
        (Kind::Dresser, "dresser"),
        (Kind::Nightstand, "nightstand"),
        (Kind::ChestOfDrawers, "chest-of-drawers"),
    ];
}

impl Word for FrontStyle {
    const WHAT: &'static str = "style of drawer fronts";
    const WORDS: &'static [(Self, &'static str)] =
        &[(FrontStyle::Overlay, "overlay"), (FrontStyle::Inset, "inset")];
}

impl Word for BackStyle {
    const WHAT: &'static str = "style of back";
    const WORDS: &'static [(Self, &'static str)] =
        &[(BackStyle::Flush, "flush"), (BackStyle::Recessed, "recessed")];
}

impl Word for BaseStyle {
    const WHAT: &'static str = "base";
    const WORDS: &'static [(Self, &'static str)] = &[
        (BaseStyle::Floor, "floor"),
        (BaseStyle::Plinth, "plinth"),
        (BaseStyle::Legs, "legs"),
    ];
}

impl Word for Ground {
    const WHAT: &'static str = "ground";
    const WORDS: &'static [(Self, &'static str)] = &[(Ground::Sealed, "sealed"), (Ground::Porous, "porous")];
}

impl Word for Basis {
    const WHAT: &'static str = "basis of the volumes";
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
        check::<LengthUnit>();
        check::<Kind>();
        check::<FrontStyle>();
        check::<BackStyle>();
        check::<BaseStyle>();
        check::<Ground>();
        check::<Basis>();
        assert!(Kind::ALL.into_iter().all(|kind| !kind.word().is_empty()));
    }
}
