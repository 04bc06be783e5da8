//! Editions: the values of everything that a maker did not measure, choose or count.
//!
//! A saved piece stores its edition and leaves out the values that the edition gives. A published edition therefore
//! never changes. To change a usual size, add a new edition. Pieces that are already saved keep the old one. The steps
//! are in DEVELOPERS.md under "A usual size, style or scheme". The tests in `crates/workshop/tests/frozen` fail if an
//! edition changes.

use units::Length;

use super::bay::Bay;
use super::counts::CountField;
use super::fields::LengthField;
use super::kind::Kind;
use super::styles::Styles;
use crate::zone::Zone;

/// An edition of the usual sizes, styles, counts, rows and painted zones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Edition {
    /// That of every piece saved before pieces named their edition.
    First,
}

impl Edition {
    /// Every edition, the oldest first.
    pub const ALL: [Edition; 1] = [Edition::First];
    /// The one that a new piece gets.
    pub const LATEST: Edition = Edition::First;

    /// Its number in saved files; it never changes.
    pub fn number(self) -> u64 {
        match self {
            Edition::First => 1,
        }
    }

    /// The edition with this number in saved files.
    pub fn by_number(number: u64) -> Option<Edition> {
        Edition::ALL
            .into_iter()
            .find(|edition| edition.number() == number)
    }

    /// How a kind is usually made.
    pub fn styles(self, kind: Kind) -> Styles {
        match self {
            Edition::First => kind.usual_styles(),
        }
    }

    /// How the front of a kind is usually divided, or that of its upper case.
    pub(super) fn bays(self, kind: Kind, upper: bool) -> Vec<Bay> {
        match self {
            Edition::First if upper => kind.usual_upper_bays(),
            Edition::First => kind.usual_bays(),
        }
    }

    /// The usual number of something that was not counted.
    pub(super) fn count(self, kind: Kind, field: &CountField) -> u32 {
        match self {
            Edition::First => kind.usual_count(field),
        }
    }

    /// The usual size of a kind, whatever else was measured or chosen.
    pub fn size(self, kind: Kind, field: &LengthField) -> Length {
        match self {
            Edition::First => kind.usual(field),
        }
    }

    /// Whether a zone gets the finish if nobody says otherwise.
    pub fn paints(self, zone: Zone) -> bool {
        match self {
            Edition::First => zone.painted_by_default(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_edition_comes_back_from_its_number_and_the_last_is_the_latest() {
        for (edition, number) in Edition::ALL.into_iter().zip(1..) {
            assert_eq!(edition.number(), number);
            assert_eq!(Edition::by_number(number), Some(edition));
        }
        assert_eq!(Edition::ALL.last(), Some(&Edition::LATEST));
        assert_eq!(Edition::by_number(0), None);
        assert_eq!(Edition::by_number(Edition::LATEST.number() + 1), None);
    }
}
