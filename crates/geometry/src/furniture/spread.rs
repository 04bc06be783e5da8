//! How far real pieces are from the usual sizes: common practice, no source.

use units::Length;

use super::fields::{self, LengthField};
use super::styles::BaseStyle;
use super::{Furniture, Kind};

/// The range of a size on real pieces. All sizes between low and high are equally likely (JCGM 100, 4.3.7).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlausibleRange {
    /// The smallest common size.
    pub low: Length,
    /// The largest common size.
    pub high: Length,
    /// The share of pieces where it is zero: a top without overhang, legs that are not set in.
    pub none: f64,
}

impl PlausibleRange {
    const fn inches(low: f64, high: f64, none: f64) -> Self {
        PlausibleRange {
            low: Length::inches(low),
            high: Length::inches(high),
            none,
        }
    }

    fn times(usual: Length, low: f64, high: f64) -> Self {
        PlausibleRange {
            low: usual * low,
            high: usual * high,
            none: 0.0,
        }
    }

    /// The root mean square distance of the nonzero real sizes from the used size. The used size is not always in their
    /// middle; an offset that is not corrected is part of the uncertainty (JCGM 100, F.2.4.5).
    ///
    /// # Example
    /// ```
    /// use geometry::PlausibleRange;
    /// use units::Length;
    /// let overhang = PlausibleRange { low: Length::inches(0.0), high: Length::inches(2.0), none: 0.25 };
    /// let around = overhang.around(Length::inches(1.0));
    /// assert!((around / Length::inches(1.0) - 1.0 / 3f64.sqrt()).abs() < 1e-9);
    /// ```
    pub fn around(&self, used: Length) -> Length {
        let [low, high, used] = [self.low, self.high, used].map(Length::as_metres);
        let (off, wide) = ((low + high) / 2.0 - used, high - low);
        Length::metres((off * off + wide * wide / 12.0).sqrt())
    }

    /// The end of the range that is furthest from the used size, then the other end.
    pub fn ends(&self, used: Length) -> [Length; 2] {
        if used - self.low > self.high - used {
            [self.low, self.high]
        } else {
            [self.high, self.low]
        }
    }
}

impl Furniture {
    /// Whether a person sits at it or on it, which settles its height.
    fn is_sat_at(&self) -> bool {
        matches!(
            self.kind,
            Kind::Desk | Kind::PedestalDesk | Kind::Vanity | Kind::Bench
        )
    }

    /// The range of this size on real pieces of the kind.
    pub fn spread(&self, field: &LengthField) -> PlausibleRange {
        let usual = self.length(field);
        match field.key {
            key if key == fields::HEIGHT.key && self.is_sat_at() => PlausibleRange::times(usual, 0.9, 1.1),
            // Pictures and mirrors come in any size.
            _ if field.is_of_whole() && self.kind == Kind::Frame => PlausibleRange::times(usual, 0.6, 1.6),
            _ if field.is_of_whole() => PlausibleRange::times(usual, 0.7, 1.35),
            key if key == fields::EDGE_GIRTH.key => PlausibleRange::times(usual, 0.9, 1.8),
            key if key == fields::LEG_WIDTH.key && self.has_bun_feet() => {
                PlausibleRange::inches(2.0, 4.5, 0.0)
            }
            key if key == fields::LEG_WIDTH.key && self.kind == Kind::Headboard => {
                PlausibleRange::inches(1.5, 4.0, 0.0)
            }
            key if key == fields::LEG_HEIGHT.key && self.has_bun_feet() => {
                PlausibleRange::inches(1.5, 4.5, 0.0)
            }
            key if key == fields::PLINTH_SETBACK.key && self.styles.base != BaseStyle::Plinth => {
                PlausibleRange::inches(0.25, 1.0, 0.6)
            }
            key => SPREADS
                .iter()
                .find(|(known, ..)| *known == key)
                .map_or(BOARDS, |(_, low, high, none)| {
                    PlausibleRange::inches(*low, *high, *none)
                }),
        }
    }
}

/// Boards and fronts: half an inch to a full inch.
const BOARDS: PlausibleRange = PlausibleRange::inches(0.5, 1.0, 0.0);

/// The rest, in inches, and the share of pieces that have none.
const SPREADS: &[(&str, f64, f64, f64)] = &[
    ("top-thickness", 0.625, 1.5, 0.0),
    ("overhang-front", 0.25, 2.0, 0.3),
    ("overhang-side", 0.25, 2.0, 0.3),
    ("rail-thickness", 0.75, 1.5, 0.0),
    ("stretcher-size", 0.75, 1.75, 0.0),
    ("gap", 0.0625, 0.25, 0.0),
    ("frame", 0.25, 1.0, 0.25),
    ("back-thickness", 0.125, 0.5, 0.0),
    ("back-recess", 0.125, 1.0, 0.0),
    ("plinth-height", 2.0, 6.0, 0.0),
    ("plinth-setback", 0.25, 3.0, 0.3),
    ("leg-height", 3.0, 10.0, 0.0),
    ("leg-width", 1.25, 2.75, 0.0),
    ("leg-inset", 0.25, 2.0, 0.3),
    ("leg-foot", 0.625, 1.5, 0.0),
    ("leg-splay", 0.5, 3.0, 0.0),
    ("foot-width", 1.0, 6.0, 0.0),
    ("cutout-height", 1.0, 3.5, 0.0),
    ("stile", 1.0, 2.5, 0.0),
    ("frame-rail", 0.75, 2.5, 0.0),
    ("crown-height", 1.0, 4.0, 0.0),
    ("crown-projection", 0.5, 3.5, 0.0),
    ("edge-height", 0.25, 0.75, 0.0),
    ("edge-width", 0.25, 1.0, 0.0),
    ("front-edge-size", 0.125, 0.5, 0.0),
    ("lip", 0.25, 0.5, 0.0),
    ("lip-thickness", 0.25, 0.5, 0.0),
    ("door-stile", 1.5, 3.5, 0.0),
    ("door-rail", 1.5, 4.0, 0.0),
    ("panel-recess", 0.125, 0.5, 0.0),
    ("panel-thickness", 0.125, 0.5, 0.0),
    ("panel-raise", 0.125, 0.375, 0.0),
    ("sticking-width", 0.125, 0.5, 0.0),
    ("panel-bevel", 0.75, 2.25, 0.0),
    ("applied-inset", 0.75, 3.0, 0.0),
    ("applied-width", 0.375, 1.5, 0.0),
    ("applied-height", 0.1875, 0.75, 0.0),
    ("box-thickness", 0.375, 0.75, 0.0),
    ("column-diameter", 0.75, 2.0, 0.0),
    ("flute-radius", 0.046875, 0.125, 0.0),
    ("apron-height", 2.5, 6.0, 0.0),
    ("apron-setback", 0.0625, 0.5, 0.4),
    ("apron-rise", 0.5, 2.5, 0.0),
    ("stretcher-height", 2.5, 8.0, 0.0),
    ("shelf-height", 3.0, 10.0, 0.0),
    ("pedestal-width", 11.0, 19.0, 0.0),
    ("modesty-foot", 2.0, 16.0, 0.0),
    ("headboard-rail", 2.5, 6.0, 0.0),
    ("panel-foot", 8.0, 22.0, 0.0),
    ("slat-width", 1.25, 3.5, 0.0),
    ("member-width", 1.5, 4.5, 0.0),
    ("member-thickness", 0.5, 1.5, 0.0),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_usual_size_is_one_that_is_often_seen() {
        for kind in Kind::ALL {
            let furniture = Furniture::usual(kind);
            for field in fields::ALL {
                let (usual, spread) = (furniture.length(field), furniture.spread(field));
                let is_seen = usual >= spread.low && usual <= spread.high;
                assert!(
                    is_seen || usual == Length::ZERO && spread.none > 0.0,
                    "{} {}",
                    kind.key(),
                    field.key
                );
            }
        }
    }

    /// A key that is misspelled, left out or given twice would silently get the range of a board.
    #[test]
    fn every_measurement_has_one_range() {
        let boards = [
            &fields::BOARD,
            &fields::FRONT_THICKNESS,
            &fields::FRAME_THICKNESS,
            &fields::APRON_THICKNESS,
            &fields::APRON_RAIL,
        ];
        // The sizes of an added part have no usual value to be far from.
        let is_of_part =
            |field: &LengthField| field.key.starts_with("part-") || field == &fields::POINT_HEIGHT;
        let is_elsewhere = |field: &LengthField| {
            field.is_of_whole()
                || field == &fields::EDGE_GIRTH
                || boards.contains(&field)
                || is_of_part(field)
        };
        let mut wanted: Vec<&str> = fields::ALL
            .into_iter()
            .filter(|field| !is_elsewhere(field))
            .map(|field| field.key)
            .collect();
        let mut given: Vec<&str> = SPREADS.iter().map(|(key, ..)| *key).collect();
        wanted.sort_unstable();
        given.sort_unstable();
        assert_eq!(given, wanted);
        assert!(
            SPREADS
                .iter()
                .all(|(_, low, high, none)| low < high && (0.0..1.0).contains(none))
        );
    }

    #[test]
    fn the_furthest_end_stands_first() {
        let dresser = Furniture::usual(Kind::Dresser);
        let setback = dresser.spread(&fields::PLINTH_SETBACK);
        let used = dresser.length(&fields::PLINTH_SETBACK);
        assert_eq!(setback.ends(used), [setback.low, setback.high]);
        // The middle of 0.25 to 3 in is 1.625, off by 0.375: 0.375^2 + 2.75^2 / 12 = 0.771 square inches.
        assert!((setback.around(used) / Length::inches(1.0) - 0.771_f64.sqrt()).abs() < 1e-3);
    }
}
