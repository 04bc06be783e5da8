//! Which grits a surface is sanded with, and how many sheets that takes.

use coatings::{Reason, SourcedRange, Substrate};
use units::Area;

/// A full sheet is 9 by 11 inches, 99 square inches (common practice).
const SHEET: f64 = 0.2286 * 0.2794;
/// A disc of 5 inches, over all of it.
const DISC: f64 = std::f64::consts::PI * 0.0635 * 0.0635;

/// How much a full sheet scuffs before it is blunt, square metres. Reports of makers for a quarter of a sheet are 0.2 to 1
/// m2; no neutral source was found, so a maker's own figure goes before.
pub const USUAL_YIELD: SourcedRange = SourcedRange::practice(0.8, 4.0);

/// Grits by the grade of FEPA and ISO 6344, the coarsest first. From 220 on the grades without a P are finer than their
/// namesakes: P320 is 46 micrometres, 320 is 35.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ladder {
    /// The grits.
    pub grits: &'static [&'static str],
    /// Why these.
    pub why: Reason,
}

const SCUFF: Ladder = Ladder {
    grits: &["P180", "P220"],
    why: Reason::practice(
        "An old finish is only scuffed: first with P180, then with P220, until it is dull all over.",
    ),
};
const SLICK: Ladder = Ladder {
    grits: &["P220"],
    why: Reason::practice("Laminate is dulled with one fine grit; a coarse one leaves scratches that show."),
};
const CLEAR_WOOD: Ladder = Ladder {
    grits: &["P100", "P120", "P180", "P220"],
    why: Reason::read(
        "Under a clear coat each grit takes out the scratches of the one before: 80 or 100, 120, 180, 220. Look along \
         the light after 180.",
        "Journal of Light Construction, \"Clear finishes for wood\"",
    ),
};
const PAINTED_WOOD: Ladder = Ladder {
    grits: &["P120", "P180"],
    why: Reason::practice("Under paint 180 is fine enough; finer takes the primer its hold."),
};
const ROUGH_WOOD: Ladder = Ladder {
    grits: &["P80", "P120", "P180"],
    why: Reason::practice("Weathered wood begins coarser, until sound wood is reached."),
};
/// Between coats of primer and paint.
pub(super) const BETWEEN_PAINT: Ladder = Ladder {
    grits: &["P320"],
    why: Reason::practice("Between coats of primer and paint lightly, only until the nibs are off."),
};
/// Between clear coats.
pub(super) const BETWEEN_CLEAR: Ladder = Ladder {
    grits: &["P400"],
    why: Reason::practice("Between clear coats lightly, only until the nibs are off."),
};

impl Ladder {
    /// The ladder for a ground; `shows_wood` says whether the wood is seen in the end, `bare` whether the old finish comes
    /// off first.
    pub fn of(ground: Substrate, shows_wood: bool, bare: bool) -> Self {
        match ground {
            Substrate::Laminate => SLICK,
            Substrate::Porous => ROUGH_WOOD,
            _ if (bare || ground == Substrate::Bare) && shows_wood => CLEAR_WOOD,
            Substrate::Bare => PAINTED_WOOD,
            Substrate::Sealed | Substrate::PaintedSound | Substrate::Glossy => SCUFF,
        }
    }
}

/// What sanding an area takes of each grit: likely, and at most. They are no whole numbers: what one piece leaves of a sheet
/// does for the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheets {
    /// Full sheets, if all of it is done by hand.
    pub all_by_hand: (f64, f64),
    /// Discs of 5 inches for the plane faces, if a machine does those.
    pub discs: (f64, f64),
    /// Full sheets for the profiles beside those discs.
    pub beside_discs: (f64, f64),
}

/// Sheets for plane and profiled areas, where a full sheet lasts for between two areas, square metres.
///
/// Likely is the middle by ratio: the range spans a factor of five, and a sheet is as easily twice as good as half as good
/// (common practice, no source).
///
/// # Example
/// ```
/// use units::Area;
/// use workshop::preparing::sheets;
/// let of = sheets(Area::square_metres(3.0), Area::square_metres(1.0), (1.0, 4.0));
/// assert_eq!(of.all_by_hand, (2.0, 4.0));
/// ```
pub fn sheets(plane: Area, profiled: Area, yields: (f64, f64)) -> Sheets {
    let (low, high) = yields;
    let taken = |area: Area, of: f64| {
        let taken = |lasts: f64| area.as_square_metres() / (lasts * of);
        (taken((low * high).sqrt()), taken(low))
    };
    Sheets {
        all_by_hand: taken(plane + profiled, 1.0),
        discs: taken(plane, DISC / SHEET),
        beside_discs: taken(profiled, 1.0),
    }
}

/// As many whole sheets as there have to be.
pub fn whole_sheets(sheets: f64) -> u32 {
    // A hair above a whole number is the noise of the division, not another sheet.
    (sheets - 1e-9).ceil().max(0.0) as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_disc_lasts_for_its_share_of_a_sheet() {
        // 19.635 in2 of 99 in2: by hand, pi / 4 * 5^2 / (9 * 11).
        assert!((DISC / SHEET - 0.198_333).abs() < 1e-6);
        // By hand: 11 m2 at 2 m2 are 5.5 sheets, at the likely 4 m2 2.75; 10 m2 by disc at a fifth of these, 12.6 and 25.2.
        let of = sheets(Area::square_metres(10.0), Area::square_metres(1.0), (2.0, 8.0));
        assert_eq!(of.all_by_hand, (2.75, 5.5));
        assert_eq!([of.discs.0, of.discs.1].map(whole_sheets), [13, 26]);
        assert_eq!([of.beside_discs.0, of.beside_discs.1].map(whole_sheets), [1, 1]);
        let none = sheets(Area::ZERO, Area::ZERO, (2.0, 4.0));
        assert_eq!(none.all_by_hand, (0.0, 0.0));
        assert_eq!([0.0, 2.0 + 1e-12, 2.1].map(whole_sheets), [0, 2, 3]);
    }

    /// A rest of a sheet does for the next piece: three pieces of half a sheet take two and not three.
    #[test]
    fn a_range_has_its_likely_number_between() {
        let of = sheets(
            Area::square_metres(4.0),
            Area::ZERO,
            (USUAL_YIELD.low, USUAL_YIELD.high),
        );
        let (likely, most) = of.all_by_hand;
        assert!(
            (most - 5.0).abs() < 1e-12 && (likely - 5f64.sqrt()).abs() < 1e-12,
            "{likely} {most}"
        );
        assert_eq!(whole_sheets(0.5 * 3.0), 2);
    }

    #[test]
    fn grits_only_get_finer() {
        let all = [SCUFF, SLICK, CLEAR_WOOD, PAINTED_WOOD, ROUGH_WOOD];
        for ladder in all.into_iter().chain([BETWEEN_PAINT, BETWEEN_CLEAR]) {
            let numbers = ladder.grits.iter().map(|grit| grit[1..].parse::<u32>().unwrap());
            assert!(numbers.is_sorted(), "{ladder:?}");
        }
    }

    #[test]
    fn wood_that_is_seen_is_sanded_finer_than_wood_that_is_painted() {
        assert_eq!(Ladder::of(Substrate::Bare, true, false), CLEAR_WOOD);
        assert_eq!(Ladder::of(Substrate::Bare, false, false), PAINTED_WOOD);
        // Stain over old paint: the paint comes off, and then it is bare wood.
        assert_eq!(Ladder::of(Substrate::PaintedSound, true, true), CLEAR_WOOD);
        // Clear over an old clear finish that stays.
        assert_eq!(Ladder::of(Substrate::Sealed, true, false), SCUFF);
    }
}
