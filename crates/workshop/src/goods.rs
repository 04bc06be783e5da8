//! Supplies to buy besides cans: abrasives, cloths, filler and other preparation supplies, leaf and other art
//! supplies. Totals cover all pieces, minus what the workshop has.

use crate::art::{Art, ArtKind, art};
use crate::book::{DoneStep, Habits, Supply, SupplyKind};
use crate::document::{Piece, Workshop, generic};
use crate::preparing::{Amount, Much, PrepareStep, RUNNER_WAX, grit_name, whole_sheets};
use crate::takeoff::Takeoff;
use crate::work::Work;

/// One item to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct Good {
    /// The key in the basket.
    pub key: String,
    /// The name to display.
    pub name: String,
    /// The singular and plural name of one item. `None` if the amount has a unit.
    pub unit: Option<(&'static str, &'static str)>,
    /// How much all pieces take.
    pub takes: Much,
    /// How many the workshop has, for countable items.
    pub here: u32,
    /// The names of the pieces that need it.
    pub pieces: Vec<String>,
}

impl Good {
    /// Returns how much to buy, or `None` if the workshop has enough even for the maximum.
    pub fn to_buy(&self) -> Option<Much> {
        let rest = |(low, high): (u32, u32)| (low.saturating_sub(self.here), high.saturating_sub(self.here));
        let (left, most) = match self.takes {
            Much::Count(low, high) => {
                let (low, high) = rest((low, high));
                (Much::Count(low, high), high)
            }
            Much::Sheets(grit, likely, most) => {
                let rest = |sheets: f64| (sheets - f64::from(self.here)).max(0.0);
                (
                    Much::Sheets(grit, rest(likely), rest(most)),
                    whole_sheets(rest(most)),
                )
            }
            other => return Some(other),
        };
        (most > 0).then_some(left)
    }

    /// Returns the likely and maximum cost, in hundredths of the currency, or `None` without a price. Only
    /// abrasive sheets have a price.
    pub fn price(&self, workshop: &Workshop) -> Option<(u64, u64)> {
        let Some(Much::Sheets(_, likely, most)) = self.to_buy() else {
            return None;
        };
        let each = workshop.books.one::<Habits>().sheet_price?;
        let of = |sheets: f64| u64::from(whole_sheets(sheets)) * each;
        Some((of(likely), of(most)))
    }
}

/// The key of the plant mister. A mist of water keeps chalk-type paint workable and smooths the strokes (common
/// practice, no source).
const MISTER: &str = "plant-mister";
/// The keys of what one of is enough for all pieces.
const ONE_FOR_ALL: [&str; 2] = [MISTER, RUNNER_WAX];

/// Returns true if chalk-type paint is still to go on.
fn is_misted(workshop: &Workshop, piece: &Piece, takeoff: &Takeoff) -> bool {
    takeoff.materials.iter().any(|line| {
        generic(&workshop.materials, &line.need.material.key) == "chalk-type-paint"
            && (1..=line.coats).any(|coat| !piece.books.has::<DoneStep>(&line.coat_key(coat)))
    })
}

/// Returns all supplies in the order of the work. Abrasives are grouped, coarsest first. `works` has one
/// entry for each piece. Steps that must not be done take nothing, and steps that are checked off need no
/// more supplies.
pub(crate) fn goods(workshop: &Workshop, works: &[Option<Work>]) -> Vec<Good> {
    let mut all: Vec<Good> = Vec::new();
    for (piece, work) in workshop.pieces.iter().zip(works) {
        let steps = work.iter().flat_map(|work| &*work.steps);
        let is_ahead = |step: &&PrepareStep| step.may_be_done() && !piece.books.has::<DoneStep>(&step.key);
        for amount in steps.filter(is_ahead).flat_map(|step| step.amounts.clone()) {
            let Amount { what, much, good, .. } = amount;
            if let Some(key) = good {
                let name = match much {
                    Much::Sheets(grit, ..) => format!("{} sandpaper", grit_name(grit)),
                    _ => what,
                };
                take(&mut all, piece, (key, name, None), much);
            }
        }
        if work
            .as_ref()
            .is_some_and(|work| is_misted(workshop, piece, &work.takeoff))
        {
            let named = (MISTER.to_owned(), "Plant mister with water".to_owned(), None);
            take(&mut all, piece, named, Much::Count(1, 1));
        }
        for of in art(piece) {
            decor(&mut all, piece, &of);
        }
    }
    for good in &mut all {
        good.here = in_the_workshop(workshop, good);
    }
    by_grit(all)
}

/// Groups the abrasives at the position of the first one, coarsest first.
fn by_grit(all: Vec<Good>) -> Vec<Good> {
    let grit = |good: &Good| match good.takes {
        Much::Sheets(grit, ..) => grit.trim_start_matches('P').parse::<u32>().ok(),
        _ => None,
    };
    let place = all.iter().position(|good| grit(good).is_some());
    let (mut sheets, mut rest): (Vec<Good>, Vec<Good>) =
        all.into_iter().partition(|good| grit(good).is_some());
    units::sort_few(&mut sheets, |one, other| grit(one) < grit(other));
    // No abrasive comes before the first one, so its index in `rest` is the same.
    if let Some(place) = place {
        rest.splice(place..place, sheets);
    }
    rest
}

/// Adds what one piece takes of an item to what the others take.
fn take(
    all: &mut Vec<Good>,
    piece: &Piece,
    (key, name, unit): (String, String, Option<(&'static str, &'static str)>),
    much: Much,
) {
    let known = all.iter_mut().find(|good| good.key == key);
    let together = |good: &Good| match ONE_FOR_ALL.contains(&&*good.key) {
        true => Some(good.takes),
        false => good.takes.and(much),
    };
    match known.and_then(|good| Some((together(good)?, good))) {
        Some((sum, good)) => {
            good.takes = sum;
            if !good.pieces.contains(&piece.name) {
                good.pieces.push(piece.name.clone());
            }
        }
        None => all.push(Good {
            key,
            name,
            unit,
            takes: much,
            here: 0,
            pieces: vec![piece.name.clone()],
        }),
    }
}

/// Adds the sheets of art, and the liquids under and over it. All leaf is one item. Each transfer or paper is
/// separate.
fn decor(all: &mut Vec<Good>, piece: &Piece, of: &Art) {
    let Ok(takes) = &of.takes else { return };
    if let Some((low, high)) = takes.sheets {
        let key = match of.kind {
            ArtKind::Leaf => "leaf".to_owned(),
            _ => of.id.to_string(),
        };
        let named = (key, of.kind.label().to_owned(), Some(of.kind.sheet()));
        take(all, piece, named, Much::Count(low, high));
    }
    for (name, low, high) in &takes.liquids {
        let named = ((*name).replace(' ', "-"), (*name).to_owned(), None);
        take(all, piece, named, Much::Volume(*low, *high));
    }
}

/// Returns how many of an item the workshop has, according to the supplies entered.
fn in_the_workshop(workshop: &Workshop, good: &Good) -> u32 {
    let same = |supply: &Supply| match (supply.kind, good.takes) {
        (Some(SupplyKind::Sheets), Much::Sheets(grit, ..)) => supply.grit == grit,
        (Some(SupplyKind::Leaf), _) => good.key == "leaf",
        _ => false,
    };
    let supplies = workshop.books.all().filter(same);
    supplies.filter_map(|supply| supply.count).sum()
}

impl Much {
    /// Adds two amounts, or returns `None` if they do not add up.
    fn and(self, other: Much) -> Option<Much> {
        Some(match (self, other) {
            (Much::Volume(a, b), Much::Volume(c, d)) => Much::Volume(a + c, b + d),
            (Much::Mass(a, b), Much::Mass(c, d)) => Much::Mass(a + c, b + d),
            (Much::Count(a, b), Much::Count(c, d)) => Much::Count(a + c, b + d),
            (Much::Sheets(grit, a, b), Much::Sheets(same, c, d)) if grit == same => {
                Much::Sheets(grit, a + c, b + d)
            }
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::samples::works;
    use crate::{BookEdit, Edit, PieceEdit, invented_workshop};

    fn on_piece(workshop: &Workshop, place: usize, edit: BookEdit) -> Workshop {
        let id = workshop.pieces[place].id.clone();
        workshop.apply(Edit::Piece(id, PieceEdit::Book(edit))).unwrap()
    }

    fn add(book: &'static str, id: &str, values: &[(&'static str, &str)]) -> BookEdit {
        BookEdit::Add(book, id.into(), crate::samples::values(values))
    }

    fn stands(workshop: &Workshop, id: &str, values: &[(&'static str, &str)]) -> Workshop {
        workshop.apply(Edit::Book(add("stores", id, values))).unwrap()
    }

    fn all(workshop: &Workshop) -> Vec<Good> {
        goods(workshop, &works(workshop))
    }

    #[track_caller]
    fn good(workshop: &Workshop, key: &str) -> Good {
        let found = all(workshop).into_iter().find(|good| good.key == key);
        found.unwrap_or_else(|| panic!("no {key}"))
    }

    fn facts(workshop: &Workshop, place: usize, values: &[(&'static str, &'static str)]) -> Workshop {
        let set = |workshop: Workshop, (key, text): &(&'static str, &'static str)| {
            on_piece(
                &workshop,
                place,
                BookEdit::Write("facts", "only".into(), (*key).into(), (*text).into()),
            )
        };
        values.iter().fold(workshop.clone(), set)
    }

    /// Twice the holes in one piece and the same in the other: three times the filler of one.
    #[test]
    fn what_two_pieces_take_is_added() {
        let bare = invented_workshop();
        let one = facts(&bare, 0, &[("holes", "8")]);
        let both = facts(&facts(&bare, 0, &[("holes", "16")]), 1, &[("holes", "8")]);
        let filler = |workshop: &Workshop| match good(workshop, "filler").takes {
            Much::Volume(low, high) => (low.as_litres(), high.as_litres()),
            other => panic!("{other:?}"),
        };
        let (low, high) = filler(&one);
        let (all_low, all_high) = filler(&both);
        assert!((all_low / low - 3.0).abs() < 1e-9 && (all_high / high - 3.0).abs() < 1e-9);
        assert_eq!(good(&both, "filler").pieces.len(), 2);
        assert!(all(&bare).iter().all(|good| good.key != "filler"));
    }

    #[test]
    fn what_is_ticked_off_is_not_bought_again() {
        let bare = invented_workshop();
        let before = good(&bare, "tack-rags");
        let done = on_piece(&bare, 0, add("done", "dust", &[("day", "2026-05-03")]));
        assert_eq!(before.pieces.len(), 2);
        assert_eq!(good(&done, "tack-rags").pieces.len(), 1);
    }

    /// One mister and one piece of wax are enough for all pieces.
    #[test]
    fn chalk_type_paint_wants_a_mister() {
        let bare = invented_workshop();
        assert!(all(&bare).iter().all(|good| good.key != "plant-mister"));
        let chalk = |workshop: Workshop, place: usize| {
            let piece = &workshop.pieces[place];
            let is_paint = |layer: &crate::LayerPlan| &*layer.material == "trim-enamel";
            let layer = piece.scheme.layers.iter().position(is_paint).unwrap();
            let edit = crate::SchemeEdit::Material(layer, "chalk-type-paint".into());
            let id = piece.id.clone();
            workshop
                .apply(Edit::Piece(id, PieceEdit::Finish(None, edit)))
                .unwrap()
        };
        let both = chalk(chalk(bare, 0), 1);
        for key in ["plant-mister", "runner-wax"] {
            let found = good(&both, key);
            assert_eq!((found.takes, found.pieces.len()), (Much::Count(1, 1), 2), "{key}");
        }
        let day = [("day", "2026-05-03")];
        let half = on_piece(&both, 0, add("done", "coat-paint-1", &day));
        assert_eq!(good(&half, "plant-mister").pieces.len(), 2);
        let done = on_piece(&half, 0, add("done", "coat-paint-2", &day));
        assert_eq!(good(&done, "plant-mister").pieces.len(), 1);
    }

    #[test]
    fn sheets_that_are_here_are_taken_off() {
        let bare = invented_workshop();
        let Much::Sheets("P220", likely, most) = good(&bare, "sheets-P220").takes else {
            panic!("{:?}", good(&bare, "sheets-P220"));
        };
        assert!(likely > 1.0 && likely < most);
        let one = stands(
            &bare,
            "s",
            &[("kind", "sheets"), ("grit", "P220"), ("count", "1")],
        );
        let left = Much::Sheets("P220", likely - 1.0, most - 1.0);
        assert_eq!(good(&one, "sheets-P220").to_buy(), Some(left));
        let many = stands(
            &one,
            "t",
            &[("kind", "sheets"), ("grit", "P220"), ("count", "900")],
        );
        assert_eq!(good(&many, "sheets-P220").here, 901);
        assert_eq!(good(&many, "sheets-P220").to_buy(), None);
    }

    /// Bare wood starts at P120, and paint is scuffed with P180 and P220. The list has them coarsest first,
    /// and shows a likely and a maximum cost if a sheet has a price.
    #[test]
    fn abrasives_stand_by_grit_and_have_a_price() {
        let bare = invented_workshop();
        let ground = crate::SchemeEdit::Substrate(coatings::Substrate::Bare);
        let id = bare.pieces[1].id.clone();
        let mixed = bare
            .apply(Edit::Piece(id, PieceEdit::Finish(None, ground)))
            .unwrap();
        let grits = |workshop: &Workshop| -> Vec<u32> {
            let keys = all(workshop).into_iter().map(|good| good.key);
            keys.filter_map(|key| key.strip_prefix("sheets-P")?.parse().ok())
                .collect()
        };
        let found = grits(&mixed);
        assert!(found.len() > 3 && found.is_sorted(), "{found:?}");
        // All abrasives are grouped together.
        let places: Vec<usize> = (0..)
            .zip(all(&mixed))
            .filter(|(_, good)| good.key.starts_with("sheets-"))
            .map(|(n, _)| n)
            .collect();
        assert_eq!(places.len(), places[places.len() - 1] - places[0] + 1);
        let sheets = good(&mixed, "sheets-P180");
        assert_eq!(sheets.price(&mixed), None);
        let write = BookEdit::Write("habits", "only".into(), "sheet-price".into(), "1.50".into());
        let priced = mixed.apply(Edit::Book(write)).unwrap();
        let Much::Sheets(_, likely, most) = sheets.takes else {
            panic!()
        };
        let of = |sheets: f64| sheets.ceil() as u64 * 150;
        assert_eq!(sheets.price(&priced), Some((of(likely), of(most))));
        assert_eq!(good(&priced, "tack-rags").price(&priced), None);
    }

    #[test]
    fn leaf_comes_with_its_size_and_sealer() {
        let leaf = add(
            "art",
            "a",
            &[("kind", "leaf"), ("width", "700 mm"), ("height", "1400 mm")],
        );
        let gilded = on_piece(&invented_workshop(), 0, leaf);
        assert_eq!(good(&gilded, "leaf").to_buy(), Some(Much::Count(55, 66)));
        let stocked = stands(&gilded, "l", &[("kind", "leaf"), ("count", "25")]);
        assert_eq!(good(&stocked, "leaf").to_buy(), Some(Much::Count(30, 41)));
        for key in ["Gilding-size", "Sealer"] {
            assert!(matches!(good(&gilded, key).takes, Much::Volume(..)), "{key}");
        }
    }

    #[test]
    fn castings_are_bought_by_their_volume() {
        let cast = add(
            "art",
            "a",
            &[("kind", "cast"), ("volume", "30 mL"), ("count", "4")],
        );
        let found = good(&on_piece(&invented_workshop(), 0, cast), "Casting-clay-or-resin");
        let much = |litres: f64| (litres * 1e6).round();
        let Much::Volume(low, high) = found.takes else {
            panic!("{found:?}")
        };
        assert_eq!(
            [low, high].map(|volume| much(volume.as_litres())),
            [126_000.0, 144_000.0]
        );
        assert_eq!(found.name, "Casting clay or resin");
    }

    /// Everything that a step takes in a unit of sale is on the list. Surfaces, lengths, waits and water are
    /// not.
    #[test]
    fn nothing_that_has_to_be_had_is_missing() {
        let worst = facts(
            &invented_workshop(),
            0,
            &[
                ("stickers", "yes"),
                ("loose-joints", "yes"),
                ("rust", "yes"),
                ("hardware", "12"),
                ("holes", "8"),
            ],
        );
        let keys: Vec<String> = all(&worst).into_iter().map(|good| good.key).collect();
        for key in [
            "test-kit",
            "vinegar",
            "steel-wool",
            "soap",
            "cloths",
            "alcohol",
            "filler",
            "glue",
            "sheets-P180",
            "tack-rags",
        ] {
            assert!(keys.iter().any(|other| other == key), "{key} {keys:?}");
        }
    }
}
