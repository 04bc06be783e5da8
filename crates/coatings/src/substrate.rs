//! What the first coat of a material goes onto.

use crate::sourced_range::{Provenance, SourcedRange};

/// What the first coat of a material goes onto.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Substrate {
    /// A sealed, sound surface: an old clear finish, a primer, another coat.
    #[default]
    Sealed,
    /// Old paint that is sound.
    PaintedSound,
    /// A finish with a gloss, on which little holds.
    Glossy,
    /// Laminate or melamine.
    Laminate,
    /// Bare planed wood.
    Bare,
    /// Weathered or open wood, which is absorbent.
    Porous,
}

const SEALED_SOURCE: &str = "on a sealed surface, the first coat takes no more than the others";
const BARE_SOURCE: &str = "first coat of varnish 350-450 against 450-550 ft²/gal for later ones, upper ends and lower ends, \"Data on Painting\", Building Construction vol. 4";
const POROUS_SOURCE: &str =
    "prime coat 300-400 against 400-500 ft²/gal on weathered wood, TM 43-0139 Table 3-2";

impl Substrate {
    /// Every surface.
    pub const ALL: [Substrate; 6] = [
        Substrate::Sealed,
        Substrate::PaintedSound,
        Substrate::Glossy,
        Substrate::Laminate,
        Substrate::Bare,
        Substrate::Porous,
    ];

    /// Its key in saved files.
    pub fn key(self) -> &'static str {
        match self {
            Substrate::Sealed => "sealed",
            Substrate::PaintedSound => "painted",
            Substrate::Glossy => "glossy",
            Substrate::Laminate => "laminate",
            Substrate::Bare => "bare",
            Substrate::Porous => "porous",
        }
    }

    /// Its label on screen.
    pub fn label(self) -> &'static str {
        match self {
            Substrate::Sealed => "Sound old clear finish",
            Substrate::PaintedSound => "Sound old paint",
            Substrate::Glossy => "Glossy old paint or varnish",
            Substrate::Laminate => "Laminate or melamine",
            Substrate::Bare => "Bare wood",
            Substrate::Porous => "Weathered or very porous wood",
        }
    }

    /// Returns true if it may be an old paint, whose color a new one has to hide.
    pub fn may_be_paint(self) -> bool {
        matches!(self, Substrate::PaintedSound | Substrate::Glossy)
    }

    /// The volume of the first coat as a multiple of that of a later coat.
    pub fn first_coat(self) -> SourcedRange {
        match self {
            Substrate::Sealed | Substrate::PaintedSound | Substrate::Glossy | Substrate::Laminate => {
                SourcedRange::new(1.0, 1.0, SEALED_SOURCE, Provenance::Practice)
            }
            Substrate::Bare => SourcedRange::calculated(1.22, 1.29, BARE_SOURCE),
            Substrate::Porous => SourcedRange::calculated(1.25, 1.33, POROUS_SOURCE),
        }
    }

    /// Whether it is an old finish, which may hold lead.
    pub fn is_old_finish(self) -> bool {
        matches!(
            self,
            Substrate::Sealed | Substrate::PaintedSound | Substrate::Glossy
        )
    }

    /// Whether it is bare wood, which is absorbent and shows its color through the next coat.
    pub fn is_open(self) -> bool {
        matches!(self, Substrate::Bare | Substrate::Porous)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The share that a first coat takes is the rate of later coats over that of the first; the printed ranges
    /// are divided end by end, upper by upper for the low limit and lower by lower for the high one.
    fn follows(substrate: Substrate, first: (f64, f64), later: (f64, f64)) {
        let figure = substrate.first_coat();
        assert!((figure.low - later.1 / first.1).abs() < 0.005, "{substrate:?}");
        assert!((figure.high - later.0 / first.0).abs() < 0.005, "{substrate:?}");
    }

    /// Varnish, first coat 350-450 and later coats 450-550 ft²/gal ("Data on Painting", Building Construction
    /// vol. 4): 550/450 and 450/350.
    #[test]
    fn bare_wood_follows_from_the_varnish_rates() {
        follows(Substrate::Bare, (350.0, 450.0), (450.0, 550.0));
    }

    /// Oil paint on weathered wood, prime coat 300-400 and later coats 400-500 ft²/gal (TM 43-0139 Table 3-2):
    /// 500/400 and 400/300.
    #[test]
    fn porous_wood_follows_from_the_rates_on_weathered_wood() {
        follows(Substrate::Porous, (300.0, 400.0), (400.0, 500.0));
    }

    #[test]
    fn keys_are_unique_and_only_open_wood_drinks() {
        for (place, substrate) in Substrate::ALL.iter().enumerate() {
            assert!(
                Substrate::ALL[..place]
                    .iter()
                    .all(|other| other.key() != substrate.key())
            );
            assert_eq!(substrate.is_open(), substrate.first_coat().low > 1.0);
            assert!(!substrate.label().is_empty());
        }
        assert_eq!(Substrate::default(), Substrate::Sealed);
    }
}
