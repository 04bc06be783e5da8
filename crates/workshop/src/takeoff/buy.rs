//! Which cans to buy: of one material for a piece, and of all materials for the workshop.

use coatings::can::{ChoiceError, Purchase, choose, fewest};
use coatings::{CanSize, Contents, Demand, Leftover, Material, Stage, can, can_sizes, extra_needed_to_keep};
use units::Volume;

use super::MaterialLine;
use crate::book::{Habits, Share};
use crate::document::Workshop;

/// What to buy of one material.
#[derive(Clone, Debug, PartialEq)]
pub struct Buy {
    /// The volume to buy, on top of what is on hand, that is enough with the wanted confidence. It includes
    /// the reserve.
    pub need: Volume,
    /// The part of the paint to keep for touch-ups.
    pub reserve: Volume,
    /// The number of each can. Empty if nothing is needed.
    pub cans: Vec<(&'static CanSize, u32)>,
    /// True if it is one can of the smallest size that holds at least twice the need.
    pub no_smaller: bool,
    /// The purchase.
    pub purchase: Purchase,
    /// What is left over of the purchase and the cans on hand, if a use was given.
    pub left: Option<Leftover>,
    /// The cost in hundredths of the currency, if the maker entered prices.
    pub price: Option<u64>,
}

/// Without prices, no can is bought that holds more than this multiple of the need (common practice, no
/// source).
const TOO_LARGE: f64 = 2.0;

/// Returns the cans to buy of one material, on top of everything on hand, so that it is enough with the
/// wanted confidence.
///
/// # Errors
/// If the need or a price is out of range.
pub(crate) fn cans_to_buy(workshop: &Workshop, line: &MaterialLine) -> Result<Buy, ChoiceError> {
    let sure = workshop.settings.confidence.probability();
    let reserve = reserve(workshop, &[&line.need]);
    let (need, contents) = match &line.on_hand {
        None => (line.need.at(sure) + reserve, Vec::new()),
        Some(hand) if reserve > Volume::ZERO => {
            let contents = hand.contents();
            let need = extra_needed_to_keep(&[&line.need], &contents, reserve, sure);
            (need, contents)
        }
        Some(hand) => (hand.enough.extra_needed, hand.contents()),
    };
    let cans = line.on_hand.iter().flat_map(|hand| &hand.cans);
    let had: Vec<&CanSize> = cans.filter_map(|stock| stock.can).collect();
    let buy = cans_for(workshop, &line.need.material, need, &had)?;
    let buy = buy.leaving(&[&line.need], &contents, sure);
    Ok(Buy { reserve, ..buy })
}

/// Returns the paint that the maker keeps for touch-ups after these jobs: a share of the likely amount. Nothing
/// is kept of other materials.
pub(crate) fn reserve(workshop: &Workshop, needs: &[&Demand]) -> Volume {
    let Some(Share(share)) = workshop.books.one::<Habits>().reserve else {
        return Volume::ZERO;
    };
    let paint = needs.iter().filter(|need| need.material.stage == Stage::Paint);
    paint.map(|need| need.likely() * share).sum()
}

impl Buy {
    /// Returns the volume of all the cans.
    pub(super) fn volume(&self) -> Volume {
        let each = self.cans.iter();
        each.map(|(can, count)| can.volume() * f64::from(*count)).sum()
    }

    /// Adds what is left over of the purchase and the cans on hand.
    pub(super) fn leaving(mut self, needs: &[&Demand], in_hand: &[Contents], confidence: f64) -> Self {
        self.left = Some(Leftover::of(needs, in_hand, self.volume(), confidence));
        self
    }
}

/// Returns the cheapest cans if the maker entered prices. Otherwise returns the fewest of the usual cans. A
/// size that the maker already has is also sold.
pub(crate) fn cans_for(
    workshop: &Workshop,
    material: &Material,
    need: Volume,
    had: &[&CanSize],
) -> Result<Buy, ChoiceError> {
    let offers = workshop.offers(&material.key);
    if offers.is_empty() {
        let sizes: Vec<&'static CanSize> = can_sizes(workshop.units)
            .iter()
            .filter(|size| material.cans.contains(&size.key) || had.contains(size))
            .collect();
        // The smallest can is first, and is never too large.
        let sizes: Vec<&'static CanSize> = sizes
            .iter()
            .enumerate()
            .filter(|(place, size)| *place == 0 || size.volume() <= need * TOO_LARGE)
            .map(|(_, size)| *size)
            .collect();
        let volumes: Vec<Volume> = sizes.iter().map(|size| size.volume()).collect();
        return Ok(counted(need, &sizes, fewest(need, &[], &volumes)?, false));
    }
    let (sizes, offers): (Vec<_>, Vec<_>) = offers
        .into_iter()
        .filter_map(|(key, offer)| Some((can(key)?, offer)))
        .unzip();
    Ok(counted(need, &sizes, choose(need, &[], &offers)?, true))
}

fn counted(need: Volume, sizes: &[&'static CanSize], purchase: Purchase, priced: bool) -> Buy {
    let cans = sizes.iter().copied().zip(purchase.counts.iter().copied());
    let cans: Vec<_> = cans.filter(|(_, count)| *count > 0).collect();
    let smallest = sizes.iter().map(|size| size.volume()).reduce(Volume::min);
    let no_smaller =
        matches!(cans.as_slice(), [(can, 1)] if Some(can.volume()) == smallest) && purchase.left > need;
    Buy {
        need,
        reserve: Volume::ZERO,
        no_smaller,
        cans,
        price: priced.then_some(purchase.price),
        purchase,
        left: None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{LabelReading, OwnMaterial, Piece, PieceId, Price};
    use crate::samples::takeoffs;
    use crate::takeoff::shopping::{MAY_DO, Shopping, bought_for, coated, shopping};
    use crate::{BookEdit, Edit, HaveEdit, MaterialEdit, PieceEdit, SchemeEdit, label_field};
    use geometry::Kind;
    use std::rc::Rc;
    use units::System;

    fn bought(workshop: &Workshop) -> Vec<Shopping> {
        shopping(workshop, &takeoffs(workshop))
    }

    fn nightstands(count: usize) -> Workshop {
        let piece = |n: usize| {
            let id = PieceId(format!("n{n}").into());
            Rc::new(Piece::new(id, Kind::Nightstand))
        };
        Workshop {
            pieces: (0..count).map(piece).collect(),
            ..Workshop::default()
        }
    }

    /// Enamel is usually sold by the quart, but a maker who has a pot of it can buy another.
    #[test]
    fn what_is_in_hand_is_sold_in_that_size() {
        let paint = coatings::material("trim-enamel").unwrap();
        let pot = can("us-8-fl-oz").unwrap();
        let workshop = Workshop {
            units: System::UsCustomary,
            ..Workshop::default()
        };
        let buy = |had: &[&CanSize]| {
            let buy = cans_for(&workshop, paint, pot.volume() * 0.9, had).unwrap();
            let cans: Vec<_> = buy.cans.iter().map(|(can, count)| (can.key, *count)).collect();
            (cans, buy.no_smaller)
        };
        assert_eq!(buy(&[]), (vec![("us-quart", 1)], true));
        assert_eq!(buy(&[pot]), (vec![("us-8-fl-oz", 1)], false));
    }

    #[test]
    fn prices_decide_where_there_are_any() {
        let paint = coatings::material("trim-enamel").unwrap();
        let quarts = can("us-quart").unwrap().volume();
        let buy = |own: &[Rc<OwnMaterial>], material: &Material| {
            let workshop = Workshop {
                units: System::UsCustomary,
                materials: own.to_vec(),
                ..Workshop::default()
            };
            cans_for(&workshop, material, quarts * 1.5, &[]).unwrap()
        };
        let fewest = buy(&[], paint);
        let cans: Vec<_> = fewest.cans.iter().map(|(can, count)| (can.key, *count)).collect();
        assert_eq!(
            (cans, fewest.price),
            (vec![("us-quart", 2)], None),
            "a gallon is too much"
        );
        let mut own = OwnMaterial {
            key: "own-1".into(),
            of: "trim-enamel",
            name: "Green".into(),
            label: Default::default(),
            prices: Default::default(),
        };
        own.prices.insert("us-quart", Price::new("30").unwrap());
        own.prices.insert("us-gallon", Price::new("50").unwrap());
        let material = own.material().unwrap();
        let cheapest = buy(&[Rc::new(own)], &material);
        let cans: Vec<_> = cheapest
            .cans
            .iter()
            .map(|(can, count)| (can.key, *count))
            .collect();
        assert_eq!((cans, cheapest.price), (vec![("us-gallon", 1)], Some(5000)));
    }

    #[test]
    fn what_was_cleaned_wants_no_cleaner() {
        let one = nightstands(1);
        let keys = |workshop: &Workshop| -> Vec<String> {
            let lots = bought(workshop).into_iter();
            lots.map(|lot| lot.material.key.to_string()).collect()
        };
        assert!(keys(&one).contains(&"degreaser".to_owned()));
        let day = crate::samples::values(&[("day", "2026-05-03")]);
        let done = PieceEdit::Book(BookEdit::Add("done", "clean".into(), day));
        let cleaned = one.apply(Edit::Piece(one.pieces[0].id.clone(), done)).unwrap();
        let left = keys(&cleaned);
        assert_eq!(left, keys(&one)[1..], "the coats are still to come");
    }

    #[test]
    fn what_has_all_its_coats_is_not_bought_any_more() {
        let one = nightstands(1);
        let taken = takeoffs(&one);
        let line = &taken[0].as_ref().unwrap().materials[1];
        assert!(line.coats > 0);
        let lots = |coats: u32| {
            let ticked = (1..=coats).fold(one.clone(), |workshop, coat| {
                let day = crate::samples::values(&[("day", "2026-05-03")]);
                let done = BookEdit::Add("done", line.coat_key(coat).into(), day);
                let piece = workshop.pieces[0].id.clone();
                workshop.apply(Edit::Piece(piece, PieceEdit::Book(done))).unwrap()
            });
            let taken = takeoffs(&ticked);
            let told = coated(&ticked, &taken);
            assert_eq!(told.len(), usize::from(coats == line.coats), "{told:?}");
            let lots = bought(&ticked);
            lots.iter().any(|lot| lot.material == line.need.material)
        };
        assert!(lots(0) && lots(line.coats - 1));
        assert!(!lots(line.coats));
        let left_out = bought_for(&one, takeoffs(&one), &[one.pieces[0].id.clone()]);
        assert!(shopping(&one, &left_out).is_empty());
    }

    /// One can is likely enough even if the wanted confidence needs a little more.
    #[test]
    fn a_can_less_that_may_do_is_told() {
        let of = |count: usize| {
            let mut workshop = nightstands(count);
            workshop.units = System::UsCustomary;
            workshop.settings.confidence = crate::Confidence::Percent99;
            bought(&workshop).remove(2)
        };
        let told: Vec<(u32, Option<f64>)> = (1..12)
            .map(|count| {
                let line = of(count);
                let cans = line.buy.as_ref().unwrap().cans.iter();
                let cans = cans.map(|(_, count)| count).sum();
                (cans, line.one_less.map(|(_, likely)| likely))
            })
            .collect();
        let likely: Vec<f64> = told.iter().filter_map(|(_, likely)| *likely).collect();
        assert!(!likely.is_empty() && likely.len() < told.len(), "{told:?}");
        assert!(
            likely.iter().all(|likely| (MAY_DO..0.99).contains(likely)),
            "{told:?}"
        );
        assert_eq!(told[0].1, None, "nothing is in hand");
    }

    #[test]
    fn pieces_share_their_cans() {
        let of = |count| bought(&nightstands(count)).remove(2);
        let (one, four) = (of(1), of(4));
        assert_eq!((one.pieces.len(), four.pieces.len()), (1, 4));
        let need = |line: &Shopping| line.buy.as_ref().unwrap().need;
        // Film errors and guesses are shared by identical pieces, so they do not average out.
        let ratio = need(&four) / need(&one);
        assert!((ratio - 4.0).abs() < 1e-9, "{ratio}");
        // Other kinds have other guesses, so together they are a little more certain than each alone.
        let kinds = [Kind::Nightstand, Kind::Bench, Kind::Console, Kind::SideTable];
        let piece = |kind: Kind| Rc::new(Piece::new(PieceId(kind.key().into()), kind));
        let of = |kinds: &[Kind]| {
            let workshop = Workshop {
                pieces: kinds.iter().copied().map(piece).collect(),
                ..Workshop::default()
            };
            need(&bought(&workshop)[2])
        };
        let alone: Volume = kinds.iter().map(|kind| of(&[*kind])).sum();
        let ratio = of(&kinds) / alone;
        assert!((0.9..0.999).contains(&ratio), "{ratio}");
    }

    /// A can is on the shelf once, whichever piece it was entered for.
    #[test]
    fn what_is_on_hand_is_not_bought() {
        let colour = crate::Scheme::usual().colour;
        let have = |place: usize, can| Edit::Have {
            piece: PieceId(format!("n{place}").into()),
            material: "trim-enamel".into(),
            colour: Some(colour.0),
            edit: HaveEdit::Can(Some(can)),
        };
        let values = [
            ("material", "trim-enamel"),
            ("colour", &colour.write()),
            ("can", "us-8-fl-oz"),
        ];
        let second = Edit::Book(BookEdit::Add(
            "shelf",
            "s1".into(),
            crate::samples::values(&values),
        ));
        let with = |edits: &[Edit]| {
            let workshop = edits.iter().fold(nightstands(9), |workshop, edit| {
                workshop.apply(edit.clone()).unwrap()
            });
            let of_last = takeoffs(&workshop).remove(8).unwrap();
            let of_last = cans_to_buy(&workshop, &of_last.materials[2]).unwrap().need;
            let line = bought(&workshop).remove(2);
            (line.buy.unwrap().need.as_litres(), line.on_shelf.len(), of_last)
        };
        let (none, no_can, of_last) = with(&[]);
        assert!(of_last > Volume::ZERO && no_can == 0);
        let (one, ..) = with(&[have(0, "us-quart")]);
        assert_eq!(
            with(&[have(0, "us-quart"), have(1, "us-quart")]),
            (one, 1, Volume::ZERO)
        );
        let (two, cans, _) = with(&[have(0, "us-quart"), second]);
        let litres = |key| can(key).unwrap().volume().as_litres();
        assert!((none - one - litres("us-quart")).abs() < 1e-9);
        assert!((one - two - litres("us-8-fl-oz")).abs() < 1e-9 && cans == 2);
    }

    /// A tenth of the likely amount of paint comes on top of what is bought, for one piece and for all, with a
    /// can on hand and without. What the work takes stays the same.
    #[test]
    fn a_reserve_of_paint_is_bought_besides() {
        let habit = BookEdit::Write("habits", "only".into(), "reserve".into(), "10 %".into());
        let keeping = |workshop: &Workshop| workshop.apply(Edit::Book(habit.clone())).unwrap();
        let have = Edit::Have {
            piece: PieceId("n0".into()),
            material: "trim-enamel".into(),
            colour: Some(crate::Scheme::usual().colour.0),
            edit: HaveEdit::Can(Some("us-8-fl-oz")),
        };
        let nine = nightstands(9);
        for before in [nine.clone(), nine.apply(have).unwrap()] {
            let after = keeping(&before);
            for (one, other) in bought(&before).iter().zip(&bought(&after)) {
                assert_eq!(one.likely, other.likely);
                let reserve = match one.material.stage {
                    Stage::Paint => one.likely * 0.1,
                    _ => Volume::ZERO,
                };
                let [one, other] = [one, other].map(|line| line.buy.as_ref().unwrap());
                let more = (other.need - one.need - reserve).as_litres();
                assert!(libm::fabs(more) < 1e-9, "{more}");
                assert!(libm::fabs((other.reserve - reserve).as_litres()) < 1e-9);
            }
            let line = |workshop: &Workshop| takeoffs(workshop).remove(0).unwrap().materials[2].clone();
            let [one, other] = [&before, &after].map(|of| cans_to_buy(of, &line(of)).unwrap());
            let reserve = line(&before).need.likely() * 0.1;
            let more = (other.need - one.need).as_litres();
            assert!(line(&before).on_hand.is_some() || libm::fabs(more - reserve.as_litres()) < 1e-9);
            assert!((0.0..=reserve.as_litres() + 1e-9).contains(&more), "{more}");
        }
    }

    #[test]
    fn every_colour_is_a_line_and_a_label_of_ones_own_another() {
        let id = PieceId("n1".into());
        let red = SchemeEdit::Colour(crate::Colour([200, 0, 0]));
        let rate = label_field("rate").unwrap();
        let reading = LabelReading::new(rate, "300", "ft2/gal").unwrap();
        let edits = [
            Edit::Piece(id.clone(), PieceEdit::Finish(None, red)),
            Edit::AddMaterial("own-1".into(), "water-polyurethane".into()),
            Edit::Material("own-1".into(), MaterialEdit::Label(rate.key, Some(reading))),
            Edit::Piece(
                id,
                PieceEdit::Finish(None, SchemeEdit::Material(3, "own-1".into())),
            ),
        ];
        let workshop = edits
            .into_iter()
            .fold(nightstands(2), |workshop, edit| workshop.apply(edit).unwrap());
        let keys: Vec<String> = bought(&workshop)
            .iter()
            .map(|line| line.material.key.to_string())
            .collect();
        let expected = [
            "degreaser",
            "bonding-primer",
            "trim-enamel",
            "trim-enamel",
            "water-polyurethane",
            "own-1",
        ];
        assert_eq!(keys, expected);
    }
}
