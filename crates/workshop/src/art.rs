//! Decorative art on a piece: leaf, stencils, transfers, paper and cast ornaments. Each item is an area with its own takeoff.
//!
//! All rates, minutes and default sheet sizes here are common practice without a source, or from memory, and
//! are marked as such. No standard or handbook was found for them.

use std::rc::Rc;

use coatings::{Reason, SourcedRange};
use units::{Area, Length, Volume};

pub use crate::book::ArtKind;
use crate::book::{ArtLine, Share};
use crate::document::Piece;
use crate::takeoff::Takeoff;

/// Art on one place of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Art {
    /// The id of its line.
    pub id: Rc<str>,
    /// The kind of art.
    pub kind: ArtKind,
    /// The place, in the maker's words.
    pub place: String,
    /// Its takeoff, or why it has none.
    pub takes: Result<Takes, ArtFault>,
}

/// The material and time for one item of art.
#[derive(Clone, Debug, PartialEq)]
pub struct Takes {
    /// The area it covers. For castings, their outline.
    pub area: Area,
    /// The area that castings add to what is coated, low and high: their front, less what they hide. It is not
    /// part of the amounts of the piece.
    pub added: Option<(Area, Area)>,
    /// The assumed width and height of a leaf, if the maker gave no size.
    pub usual_leaf: Option<Length>,
    /// Whole sheets, leaves or transfers, low and high. `None` for a stencil or a casting.
    pub sheets: Option<(u32, u32)>,
    /// The liquids under or over it, or what it is cast of: name, low and high volume.
    pub liquids: Vec<(&'static str, Volume, Volume)>,
    /// Minutes, low and high.
    pub minutes: (f64, f64),
    /// The maximum cost of the sheets, in hundredths, if the maker entered the price of one.
    pub price: Option<u64>,
}

impl Takes {
    /// Returns true if it covers more than the finished area of the piece, so that one of its sizes is
    /// probably wrong.
    pub fn is_too_much(&self, takeoff: &Takeoff) -> bool {
        self.area > takeoff.painted.value
    }

    /// Returns the midpoint of the minutes.
    pub fn likely_minutes(&self) -> f64 {
        (self.minutes.0 + self.minutes.1) / 2.0
    }
}

/// Why the takeoff of an item of art is unknown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ArtFault {
    /// The width or height is missing.
    Size,
    /// The size of a sheet is missing and has no default.
    Sheet,
    /// The leaf is not larger than its overlap.
    Leaf,
    /// The volume of a mold is missing.
    Mold,
}

impl std::fmt::Display for ArtFault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            ArtFault::Size => "Enter its width and height.",
            ArtFault::Sheet => "Enter the width and height of one sheet.",
            ArtFault::Mold => "Enter how much one mold holds.",
            ArtFault::Leaf => "Check the leaf size. It must be larger than the overlap.",
        })
    }
}

/// The default width and height of a leaf (from memory: 5 1/2 in, 14 cm).
const LEAF: Length = Length::millimetres(140.0);

/// The note to show if the size of a leaf was not given.
pub const OTHER_LEAF: Reason =
    Reason::memory("Real gold leaf is smaller, about 80 mm or 3 1/8 in. Enter the size of one sheet.");
/// The overlap between leaves, in meters.
const OVERLAP: SourcedRange<coatings::unit::Metres> = SourcedRange::practice(0.003, 0.006);
/// The factor for leaf that tears and is laid again.
const TORN: SourcedRange = SourcedRange::practice(1.05, 1.20);
/// The area that a liter of size for leaf covers, in square meters.
const SIZE_RATE: SourcedRange<coatings::unit::SquareMetresPerLitre> = SourcedRange::practice(10.0, 14.0);
/// The area that a liter of sealer or glue covers in one coat, in square meters.
const SEALER_RATE: SourcedRange<coatings::unit::SquareMetresPerLitre> = SourcedRange::practice(8.0, 12.0);
/// The wet film of paint through a stencil, in meters. It is dabbed on nearly dry.
const STENCIL_FILM: SourcedRange<coatings::unit::Metres> = SourcedRange::practice(30e-6, 70e-6);

/// The factor for casting material that is mixed or kneaded and does not end in the mold.
const SPILLED: SourcedRange = SourcedRange::practice(1.05, 1.20);
/// How much larger the front of a casting is than its outline. The upper end agrees with measuring rules that
/// double carved work (IS 1200-15, as reported).
const RELIEF: SourcedRange = SourcedRange::practice(1.5, 2.0);
/// Minutes to fill a mold, take the casting out and glue it on.
const CASTING: SourcedRange<coatings::unit::Minutes> = SourcedRange::practice(6.0, 15.0);

impl ArtKind {
    /// Returns the trade name.
    pub fn label(self) -> &'static str {
        match self {
            ArtKind::Leaf => "Leaf",
            ArtKind::Stencil => "Stencil",
            ArtKind::Transfer => "Transfer",
            ArtKind::Paper => "Decoupage paper",
            ArtKind::Cast => "Cast ornament",
        }
    }

    /// Returns the singular and plural name of a sheet.
    pub fn sheet(self) -> (&'static str, &'static str) {
        match self {
            ArtKind::Leaf => ("leaf", "leaves"),
            ArtKind::Transfer => ("transfer", "transfers"),
            ArtKind::Cast => ("casting", "castings"),
            ArtKind::Stencil | ArtKind::Paper => ("sheet", "sheets"),
        }
    }

    /// Returns the low and high minutes for a design of so many square meters, or for so many castings.
    fn minutes(self, square_metres: f64, count: u32) -> (f64, f64) {
        type Pace = SourcedRange<coatings::unit::MinutesPerSquareMetre>;
        let on = |pace: Pace| (square_metres * pace.low, square_metres * pace.high);
        match self {
            ArtKind::Leaf => on(SourcedRange::practice(120.0, 240.0)),
            ArtKind::Stencil => on(SourcedRange::practice(60.0, 150.0)),
            ArtKind::Transfer => on(SourcedRange::practice(30.0, 80.0)),
            ArtKind::Paper => on(SourcedRange::practice(60.0, 120.0)),
            ArtKind::Cast => (f64::from(count) * CASTING.low, f64::from(count) * CASTING.high),
        }
    }

    /// Returns the liquids it needs: name, area per liter, and number of coats.
    fn liquids(
        self,
    ) -> &'static [(
        &'static str,
        SourcedRange<coatings::unit::SquareMetresPerLitre>,
        f64,
    )] {
        match self {
            ArtKind::Leaf => &[("Gilding size", SIZE_RATE, 1.0), ("Sealer", SEALER_RATE, 1.0)],
            ArtKind::Stencil | ArtKind::Cast => &[],
            ArtKind::Transfer => &[("Sealer", SEALER_RATE, 1.0)],
            // One coat under the paper and two over it.
            ArtKind::Paper => &[("Glue and sealer", SEALER_RATE, 3.0)],
        }
    }

    /// Returns the advice for this kind of art.
    pub fn mind(self) -> Reason {
        match self {
            ArtKind::Leaf => Reason::practice(
                "Lay leaf when the size is just tacky. Seal brass and copper leaf, or it tarnishes. With solvent-based size, ventilate and keep flames away.",
            ),
            ArtKind::Stencil => Reason::practice(
                "Use a nearly dry brush or pad. Wipe the back of the stencil each time you move it.",
            ),
            ArtKind::Transfer => Reason::practice(
                "Apply to cured, dust-free paint. Rub it down all over before you peel the film.",
            ),
            ArtKind::Paper => Reason::practice(
                "Spread the glue thin, smooth from the middle out, and let it dry before you seal it.",
            ),
            ArtKind::Cast => Reason::practice(
                "Resin: wear gloves, open the windows, follow the label. Let castings harden, then glue, prime and paint them.",
            ),
        }
    }
}

/// Returns the art of a piece, one item for each line that has a kind.
pub fn art(piece: &Piece) -> Vec<Art> {
    let of = |line: ArtLine| {
        let kind = line.kind?;
        Some(Art {
            kind,
            takes: takes(kind, &line, piece.count),
            place: line.place,
            id: line.id,
        })
    };
    piece.books.all().filter_map(of).collect()
}

fn takes(kind: ArtKind, line: &ArtLine, pieces: u32) -> Result<Takes, ArtFault> {
    let metres = |length: Option<Length>| length.map(Length::as_metres).filter(|metres| *metres > 0.0);
    let (width, height) = match (metres(line.width), metres(line.height)) {
        (Some(width), Some(height)) => (width, height),
        // What is cast follows from the mold alone.
        _ if kind == ArtKind::Cast => (0.0, 0.0),
        _ => return Err(ArtFault::Size),
    };
    let count = line.count.unwrap_or(1) * pieces;
    let Share(cover) = line.cover.unwrap_or(Share(1.0));
    let whole = width * height * f64::from(count);
    let area = whole * cover;
    let own_sheet = metres(line.sheet_width).zip(metres(line.sheet_height));
    let sheet = match own_sheet {
        Some((width, height)) => Some([width, height]),
        _ if kind == ArtKind::Leaf => Some([LEAF.as_metres(); 2]),
        _ => None,
    };
    let sheets = match kind {
        ArtKind::Stencil | ArtKind::Cast => None,
        ArtKind::Leaf => Some(leaves(area, sheet.ok_or(ArtFault::Sheet)?)?),
        ArtKind::Transfer | ArtKind::Paper => {
            let each = laid_out([width, height], sheet.ok_or(ArtFault::Sheet)?);
            Some((each * count, each * count))
        }
    };
    let litres = |litres: f64| Volume::litres(litres);
    let mut liquids: Vec<_> = kind
        .liquids()
        .iter()
        .map(|(name, rate, coats)| {
            (
                *name,
                litres(area * coats / rate.high),
                litres(area * coats / rate.low),
            )
        })
        .collect();
    if kind == ArtKind::Stencil {
        let film = |metres: f64| litres(area * metres * 1000.0);
        liquids.push((
            "Paint for stenciling",
            film(STENCIL_FILM.low),
            film(STENCIL_FILM.high),
        ));
    }
    if kind == ArtKind::Cast {
        let mold = line.volume.filter(|volume| *volume > Volume::ZERO);
        let all = mold.ok_or(ArtFault::Mold)? * f64::from(count);
        liquids.push(("Casting clay or resin", all * SPILLED.low, all * SPILLED.high));
    }
    let own = line.hours.map(|time| (time.minutes(), time.minutes()));
    let added = |relief: f64| Area::square_metres(area * (relief - 1.0));
    Ok(Takes {
        area: Area::square_metres(area),
        added: (kind == ArtKind::Cast && area > 0.0).then(|| (added(RELIEF.low), added(RELIEF.high))),
        usual_leaf: (kind == ArtKind::Leaf && own_sheet.is_none()).then_some(LEAF),
        minutes: own.unwrap_or(kind.minutes(whole, count)),
        price: line
            .price
            .zip(sheets)
            .and_then(|(one, (_, most))| one.checked_mul(u64::from(most))),
        sheets,
        liquids,
    })
}

/// Returns the leaves for an area, low and high. Each covers its size minus the overlap, and some tear.
fn leaves(area: f64, [width, height]: [f64; 2]) -> Result<(u32, u32), ArtFault> {
    let covers = |overlap: f64| (width - overlap) * (height - overlap);
    if width <= OVERLAP.high || height <= OVERLAP.high {
        return Err(ArtFault::Leaf);
    }
    let whole = |leaves: f64| leaves.ceil().clamp(0.0, 1e6) as u32;
    Ok((
        whole(area / covers(OVERLAP.low) * TORN.low),
        whole(area / covers(OVERLAP.high) * TORN.high),
    ))
}

/// Returns the whole sheets that cover a design, in the orientation that takes fewer.
fn laid_out(design: [f64; 2], sheet: [f64; 2]) -> u32 {
    // A tiny excess over a whole sheet is rounding error from unit conversion.
    let along = |design: f64, sheet: f64| (design / sheet - 1e-9).ceil().clamp(1.0, 1e3) as u32;
    let way = |[a, b]: [f64; 2]| along(design[0], a) * along(design[1], b);
    way(sheet).min(way([sheet[1], sheet[0]]))
}

/// Returns the cost of the sheets for all art on a piece, in hundredths, and the low and high minutes.
pub(crate) fn cost_and_minutes(art: &[Art]) -> (u64, (f64, f64)) {
    let takes = || art.iter().filter_map(|art| art.takes.as_ref().ok());
    (
        takes().filter_map(|takes| takes.price).sum(),
        takes().fold((0.0, 0.0), |(least, most), takes| {
            (least + takes.minutes.0, most + takes.minutes.1)
        }),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BookEdit, Edit, PieceEdit, Workshop, invented_workshop};

    fn with(piece: usize, values: &[(&'static str, &str)]) -> Workshop {
        let workshop = invented_workshop();
        let id = workshop.pieces[piece].id.clone();
        let values = crate::samples::values(values);
        let add = BookEdit::Add("art", "a".into(), values);
        workshop.apply(Edit::Piece(id, PieceEdit::Book(add))).unwrap()
    }

    fn takes(values: &[(&'static str, &str)]) -> Result<Takes, ArtFault> {
        art(&with(0, values).pieces[0]).remove(0).takes
    }

    /// 0.7 by 1.4 m. A 140 mm leaf covers between 134 and 137 mm each way. By hand: 0.98 / 0.018769 * 1.05 is
    /// 54.8, and 0.98 / 0.017956 * 1.2 is 65.5. The size takes between 0.98 / 14 and 0.98 / 10 L.
    #[test]
    fn leaf_is_counted_with_its_overlap_and_what_tears() {
        let found = takes(&[
            ("kind", "leaf"),
            ("width", "700 mm"),
            ("height", "1400 mm"),
            ("price", "0.30"),
        ])
        .unwrap();
        assert_eq!(found.sheets, Some((55, 66)));
        assert_eq!(found.price, Some(66 * 30));
        assert!((found.area.as_square_metres() - 0.98).abs() < 1e-12);
        let piece = &invented_workshop().pieces[0];
        let takeoff = crate::samples::takeoff(piece).unwrap();
        assert!(!found.is_too_much(&takeoff));
        let more = takes(&[("kind", "leaf"), ("width", "4 m"), ("height", "4 m")]).unwrap();
        assert!(more.is_too_much(&takeoff));
        let (name, low, high) = found.liquids[0];
        assert_eq!(name, "Gilding size");
        assert!((low.as_millilitres() - 70.0).abs() < 1e-9 && (high.as_millilitres() - 98.0).abs() < 1e-9);
        let tiny = [
            ("kind", "leaf"),
            ("width", "1 m"),
            ("height", "1 m"),
            ("sheet-width", "5 mm"),
            ("sheet-height", "5 mm"),
        ];
        assert_eq!(takes(&tiny), Err(ArtFault::Leaf));
    }

    /// A 30 by 20 in design takes two sheets of 16 by 20, not four of 20 by 16.
    #[test]
    fn transfers_are_laid_the_way_that_takes_fewer() {
        let sheet = |width, height| {
            let design = [("kind", "transfer"), ("width", "30 in"), ("height", "20 in")];
            takes(
                &[
                    &design[..],
                    &[("sheet-width", width), ("sheet-height", height), ("count", "2")],
                ]
                .concat(),
            )
        };
        for (width, height) in [("16 in", "20 in"), ("20 in", "16 in")] {
            assert_eq!(sheet(width, height).unwrap().sheets, Some((4, 4)));
        }
        assert_eq!(sheet("30 in", "20 in").unwrap().sheets, Some((2, 2)));
        assert_eq!(
            takes(&[("kind", "paper"), ("width", "30 in"), ("height", "20 in")]),
            Err(ArtFault::Sheet)
        );
    }

    /// A third of a square meter open, 30 to 70 µm wet: 10 to 23 mL.
    #[test]
    fn a_stencil_takes_little_paint() {
        let found = takes(&[
            ("kind", "stencil"),
            ("width", "1 m"),
            ("height", "1 m"),
            ("cover", "33.333 %"),
        ])
        .unwrap();
        let (_, low, high) = found.liquids[0];
        assert!((low.as_millilitres() - 10.0).abs() < 0.01 && (high.as_millilitres() - 23.33).abs() < 0.01);
        assert_eq!((found.sheets, found.minutes), (None, (60.0, 150.0)));
        let own = takes(&[
            ("kind", "stencil"),
            ("width", "1 m"),
            ("height", "1 m"),
            ("hours", "2 h"),
        ])
        .unwrap();
        assert_eq!(own.minutes, (120.0, 120.0));
        assert_eq!(takes(&[("kind", "stencil")]), Err(ArtFault::Size));
    }

    /// Four castings of 30 mL take 120 mL and 5 to 20 % more. Their outline is 4 by 10 by 5 cm = 0.02 m2, and they
    /// add half of that to all of it.
    #[test]
    fn castings_take_what_the_mold_holds() {
        let mold = [("kind", "cast"), ("volume", "30 mL"), ("count", "4")];
        let found = takes(&[&mold[..], &[("width", "10 cm"), ("height", "5 cm")]].concat()).unwrap();
        let (name, low, high) = found.liquids[0];
        assert_eq!(
            (name, found.liquids.len(), found.sheets),
            ("Casting clay or resin", 1, None)
        );
        assert!((low.as_millilitres() - 126.0).abs() < 1e-9 && (high.as_millilitres() - 144.0).abs() < 1e-9);
        let (least, most) = found.added.unwrap();
        assert!(
            (least.as_square_metres() - 0.01).abs() < 1e-12 && (most.as_square_metres() - 0.02).abs() < 1e-12
        );
        assert_eq!(found.minutes, (24.0, 60.0));
        assert_eq!(takes(&mold).map(|takes| takes.added), Ok(None));
        assert_eq!(takes(&[("kind", "cast")]), Err(ArtFault::Mold));
        let told = ArtKind::Cast.mind().text;
        assert!(
            ["gloves", "windows", "label"]
                .iter()
                .all(|word| told.contains(word))
        );
    }

    /// The second sample piece is a pair, so its art counts twice.
    #[test]
    fn a_pair_has_its_art_twice() {
        let workshop = with(1, &[("kind", "leaf"), ("width", "100 mm"), ("height", "100 mm")]);
        let found = art(&workshop.pieces[1]).remove(0).takes.unwrap();
        assert!((found.area.as_square_metres() - 0.02).abs() < 1e-12);
    }
}
