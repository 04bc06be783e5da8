//! Which grits to sand a surface with, and how many sheets it takes.

use coatings::{Reason, SourcedRange, Substrate};
use units::Area;

/// The area of a full sheet, 9 by 11 inches, or 99 square inches (common practice).
const SHEET: f64 = 0.2286 * 0.2794;
/// The area of a 5-inch disc.
const DISC: f64 = std::f64::consts::PI * 0.0635 * 0.0635;

/// The area that a full sheet scuffs before it is dull, in square meters. Makers report 0.2 to 1 m² for a
/// quarter sheet. No neutral source was found, so a maker's own figure takes precedence.
pub const USUAL_YIELD: SourcedRange = SourcedRange::practice(0.8, 4.0);

/// A sequence of grits in FEPA and ISO 6344 grades, coarsest first. From 220 up, grades without a P are finer
/// than the P grades with the same number: P320 is 46 micrometers, 320 is 35.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ladder {
    /// The grits.
    pub grits: &'static [&'static str],
    /// The reason for these grits.
    pub why: Reason,
}

const SCUFF: Ladder = Ladder {
    grits: &["P180", "P220"],
    why: Reason::practice("Only scuff an old finish: 180-grit, then 220-grit, until it's dull all over."),
};
const SLICK: Ladder = Ladder {
    grits: &["P220"],
    why: Reason::practice("Dull laminate with one fine grit. Coarse scratches show."),
};
const CLEAR_WOOD: Ladder = Ladder {
    grits: &["P100", "P120", "P180", "P220"],
    why: Reason::read(
        "Under a clear coat, each grit removes the last one's scratches: 80 or 100, 120, 180, 220. Check in raking light after 180.",
        "Journal of Light Construction, \"Clear finishes for wood\"",
    ),
};
const PAINTED_WOOD: Ladder = Ladder {
    grits: &["P120", "P180"],
    why: Reason::practice("180 is fine enough under paint. Primer doesn't grip a finer surface."),
};
const ROUGH_WOOD: Ladder = Ladder {
    grits: &["P80", "P120", "P180"],
    why: Reason::practice("Start coarser on weathered wood, until you reach sound wood."),
};
/// Grits between coats of primer and paint.
pub(super) const BETWEEN_PAINT: Ladder = Ladder {
    grits: &["P320"],
    why: Reason::practice("Sand lightly between primer and paint coats, just enough to knock off the nibs."),
};
/// Grits between clear coats.
pub(super) const BETWEEN_CLEAR: Ladder = Ladder {
    grits: &["P400"],
    why: Reason::practice("Sand lightly between clear coats, just enough to knock off the nibs."),
};

impl Ladder {
    /// Returns the grits for a substrate. `shows_wood` is true if the finish shows the wood. `bare` is true
    /// if the old finish comes off first.
    pub fn of(ground: Substrate, shows_wood: bool, bare: bool) -> Self {
        match ground {
            Substrate::Laminate => SLICK,
            Substrate::Porous => ROUGH_WOOD,
            _ if (bare || ground == Substrate::Bare) && shows_wood => CLEAR_WOOD,
            Substrate::Bare => PAINTED_WOOD,
            Substrate::Sealed | Substrate::PaintedSound | Substrate::Glossy => SCUFF,
        }
    }

    /// Returns the grits as they are said: `180- and 220-grit`, `100- to 220-grit`.
    pub(super) fn spoken(&self) -> String {
        let number = |grit: &&'static str| grit.trim_start_matches('P');
        match self.grits {
            [] => String::new(),
            [only] => format!("{}-grit", number(only)),
            [first, last] => format!("{}- and {}-grit", number(first), number(last)),
            [first, .., last] => format!("{}- to {}-grit", number(first), number(last)),
        }
    }
}

/// Returns a grade of the FEPA as a store calls it: `180-grit` for `P180`.
pub fn grit_name(grade: &str) -> String {
    format!("{}-grit", grade.trim_start_matches('P'))
}

/// The sheets of each grit that an area takes, likely and at most. They are fractions because the next piece
/// can use the rest of a sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheets {
    /// Full sheets, if everything is sanded by hand.
    pub all_by_hand: (f64, f64),
    /// 5-inch discs, if a machine sands the flat faces.
    pub discs: (f64, f64),
    /// Full sheets for the profiles, if a machine sands the flat faces.
    pub beside_discs: (f64, f64),
}

/// Returns the sheets for flat and profiled areas. `yields` is the smallest and largest area that a full
/// sheet covers, in square meters.
///
/// The likely value uses the geometric mean. The range spans a factor of five, and a sheet is as likely to
/// last twice as long as half as long (common practice, no source).
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

/// Rounds up to whole sheets.
pub fn whole_sheets(sheets: f64) -> u32 {
    // A tiny excess over a whole number is rounding error from the division.
    (sheets - 1e-9).ceil().max(0.0) as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_disc_lasts_for_its_share_of_a_sheet() {
        // 19.635 in² of 99 in². By hand: pi / 4 * 5^2 / (9 * 11).
        assert!((DISC / SHEET - 0.198_333).abs() < 1e-6);
        // By hand: 11 m² at 2 m² per sheet is 5.5 sheets, or 2.75 at the likely 4 m². Discs last a fifth as
        // long, so 10 m² takes 12.6 or 25.2.
        let of = sheets(Area::square_metres(10.0), Area::square_metres(1.0), (2.0, 8.0));
        assert_eq!(of.all_by_hand, (2.75, 5.5));
        assert_eq!([of.discs.0, of.discs.1].map(whole_sheets), [13, 26]);
        assert_eq!([of.beside_discs.0, of.beside_discs.1].map(whole_sheets), [1, 1]);
        let none = sheets(Area::ZERO, Area::ZERO, (2.0, 4.0));
        assert_eq!(none.all_by_hand, (0.0, 0.0));
        assert_eq!([0.0, 2.0 + 1e-12, 2.1].map(whole_sheets), [0, 2, 3]);
    }

    /// The rest of a sheet goes to the next piece. Three pieces that take half a sheet each need two sheets.
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
        // For stain over old paint, the paint comes off and leaves bare wood.
        assert_eq!(Ladder::of(Substrate::PaintedSound, true, true), CLEAR_WOOD);
        // The old clear finish stays under the new clear coat.
        assert_eq!(Ladder::of(Substrate::Sealed, true, false), SCUFF);
    }
}
