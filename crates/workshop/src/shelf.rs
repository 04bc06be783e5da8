//! The shelf: what stands in the workshop, how much is left in each can, what that is good for, and what to mind about it.

use std::rc::Rc;

use coatings::can::{ContentsError, Weighing};
use coatings::{CanSize, Contents, Demand, Enough, Material, Reason, Rgb, SourcedRange, Thinner};
use units::{Day, Density, Mass};

use crate::book::ShelfCan;
use crate::document::{PieceId, Scheme, Workshop, material_of};
use crate::mixing::scale;
use crate::takeoff::Takeoff;

/// Days after which an opened can is called old: a normal shelf life is a year (MIL-HDBK-1110 s. 7.2).
const OLD: i32 = 365;
const OLD_CAN: Reason = Reason::read(
    "Opened more than a year ago: stir it, strain it, and try it on scrap before it goes on a piece.",
    "normal shelf life 1 year, MIL-HDBK-1110 s. 7.2",
);
const FROZEN: Reason = Reason::read(
    "It has frozen: freezing harms what is thinned with water. If it stays lumpy when it is stirred, do not use it.",
    "MIL-HDBK-1110 s. 7.2",
);

/// A can on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    /// The name of its line.
    pub id: Rc<str>,
    /// The material in it.
    pub material: Rc<Material>,
    /// Its colour, of a material that comes in colours.
    pub colour: Option<Rgb>,
    /// Its size, where that is written down.
    pub can: Option<&'static CanSize>,
    /// What is left in it.
    pub contents: Result<Contents, StockFault>,
}

/// Why it is not known what is left in a can.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StockFault {
    /// Neither its size nor its weight is written down.
    Unknown,
    /// It was weighed, and the empty can was not.
    NoTare,
    /// What was written down cannot be so.
    Contents(ContentsError),
}

impl std::fmt::Display for StockFault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            StockFault::Unknown => f.write_str("Choose its size and how full it is, or weigh it."),
            StockFault::NoTare => f.write_str("Weigh an empty can of the same kind too."),
            StockFault::Contents(fault) => fault.fmt(f),
        }
    }
}

impl Stock {
    /// Whether it is what is needed.
    pub fn is_for(&self, need: &Demand) -> bool {
        self.material.key == need.material.key && self.colour == need.colour
    }

    /// Whether it may be the very can that is said to be in hand: not if it is of another size.
    pub fn may_be(&self, in_hand: &CanSize) -> bool {
        self.can.is_none_or(|can| can.key == in_hand.key)
    }
}

/// Every can on the shelf whose material is known.
pub fn stock(workshop: &Workshop) -> Vec<Stock> {
    let of = |can: ShelfCan| {
        let material = material_of(&workshop.materials, &can.material)?;
        let colour = can.colour.map(|colour| colour.0);
        Some(Stock {
            contents: contents(workshop, &can, &material),
            can: can.can,
            id: can.id,
            colour: colour.filter(|_| material.coloured),
            material,
        })
    };
    workshop.books.all().filter_map(of).collect()
}

/// What is left: weighed with the can and without, by the density of the label or else of its kind; else as full as it
/// looks; a can of which only the size is known is full.
fn contents(workshop: &Workshop, shelf: &ShelfCan, material: &Material) -> Result<Contents, StockFault> {
    let can = shelf.can.map(|can| can.volume());
    let Some(gross) = shelf.weight else {
        let can = can.ok_or(StockFault::Unknown)?;
        let contents = match shelf.level {
            Some(level) => Contents::part(can, level.share.low, level.share.high),
            None => Contents::full(can),
        };
        return contents.map_err(StockFault::Contents);
    };
    let tare = shelf.tare.ok_or(StockFault::NoTare)?;
    let own = shelf.density.map(Density::as_kilograms_per_litre);
    let own = own.filter(|density| *density > 0.0);
    let density = own.map_or(material.density, |own| SourcedRange::own(own, own));
    let scale = scale(workshop);
    let weighing = |mass: Mass| Weighing { mass, scale };
    Contents::weighed(weighing(gross), weighing(tare), density, can).map_err(StockFault::Contents)
}

/// What to mind about a can: that it is old, that it has frozen.
pub fn mind(workshop: &Workshop, stock: &Stock, today: Day) -> Vec<Reason> {
    let mut mind = Vec::new();
    let Some(can) = workshop.books.find::<ShelfCan>(&stock.id) else {
        return mind;
    };
    if can
        .opened
        .is_some_and(|opened| today.days() - opened.days() > OLD)
    {
        mind.push(OLD_CAN);
    }
    if can.frozen && stock.material.thinner == Thinner::Water {
        mind.push(FROZEN);
    }
    mind
}

/// Whether all is known of a can that a piece could take it by: what is in it, how much, and its colour if it comes in one.
pub fn is_known(stock: &Stock) -> bool {
    stock.contents.is_ok() && (stock.colour.is_some() || !stock.material.coloured)
}

/// What a can would be for the pieces that take what is in it: by the name of the piece.
pub fn good_for(
    workshop: &Workshop,
    takeoffs: &[Option<Rc<Takeoff>>],
    stock: &Stock,
) -> Vec<(String, Enough)> {
    let Ok(contents) = &stock.contents else {
        return Vec::new();
    };
    let confidence = workshop.settings.confidence.probability();
    let of_piece = |(piece, takeoff): (&Rc<crate::Piece>, &Option<Rc<Takeoff>>)| {
        let takeoff = takeoff.as_ref()?;
        let line = takeoff.materials.iter().find(|line| stock.is_for(&line.need))?;
        let enough = Enough::judge(&takeoff.job, &line.need, contents, confidence);
        Some((piece.name.clone(), enough))
    };
    workshop
        .pieces
        .iter()
        .zip(takeoffs)
        .filter_map(of_piece)
        .collect()
}

/// The other pieces that plan the same material in the same colour, and so would take from the same cans: their names.
pub fn also_planned_for(workshop: &Workshop, piece: &PieceId, need: &Demand) -> Vec<String> {
    let plans = |scheme: &Scheme| {
        let is_colour = need.colour.is_none_or(|colour| colour == scheme.colour.0);
        let mut layers = scheme.layers.iter().filter(|layer| layer.coats > 0);
        is_colour && layers.any(|layer| *layer.material == *need.material.key)
    };
    let others = workshop.pieces.iter().filter(|other| other.id != *piece);
    others
        .filter(|other| other.schemes().any(plans))
        .map(|other| other.name.clone())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BookEdit, Edit, invented_workshop, shopping, takeoffs};
    use coatings::{Stage, Verdict};

    fn with(values: &[(&'static str, &str)]) -> Workshop {
        let values = crate::samples::values(values);
        let add = BookEdit::Add("shelf", "s1".into(), values);
        invented_workshop().apply(Edit::Book(add)).unwrap()
    }

    fn today() -> Day {
        Day::read("2026-06-01").unwrap()
    }

    #[test]
    fn pieces_that_take_from_the_same_cans_are_named() {
        let workshop = invented_workshop();
        let taken = takeoffs(&workshop);
        let of = |material: &str| {
            let lines = &taken[0].as_ref().unwrap().materials;
            let line = lines.iter().find(|line| *line.need.material.key == *material);
            also_planned_for(&workshop, &workshop.pieces[0].id, &line.unwrap().need)
        };
        // The nightstands are painted in another colour, and get the same clear coat.
        assert!(of("trim-enamel").is_empty());
        assert_eq!(of("water-polyurethane"), [workshop.pieces[1].name.clone()]);
    }

    /// 780 g with the can, 120 g without, 1.3 kg/L: 660 / 1.3 = 507.7 mL, by hand.
    #[test]
    fn a_weighed_can_holds_its_mass_over_its_density() {
        let values = [
            ("material", "trim-enamel"),
            ("weight", "780 g"),
            ("tare", "120 g"),
            ("density", "1.3 kg/l"),
        ];
        let found = stock(&with(&values)).remove(0);
        let likely = found.contents.unwrap().likely();
        assert!((likely.as_millilitres() - 660.0 / 1.3).abs() < 1e-6);
        let fault = |values: &[(&'static str, &str)]| stock(&with(values)).remove(0).contents.unwrap_err();
        assert_eq!(fault(&values[..2]), StockFault::NoTare);
        assert_eq!(fault(&values[..1]), StockFault::Unknown);
        assert!(stock(&with(&[("material", "cement")])).is_empty());
    }

    /// A quart is 946.35 mL, exactly a quarter of 231 in3.
    #[test]
    fn a_can_is_as_full_as_it_looks_until_it_is_weighed() {
        let size = [("material", "trim-enamel"), ("can", "us-quart")];
        let likely = |more: &[(&'static str, &str)]| {
            let found = stock(&with(&[&size, more].concat())).remove(0);
            found.contents.unwrap().likely().as_millilitres()
        };
        assert!((likely(&[("level", "half")]) - 946.35 / 2.0).abs() < 0.1);
        assert!((likely(&[]) - 946.35).abs() < 0.1);
        let weighed = [
            ("level", "half"),
            ("weight", "780 g"),
            ("tare", "120 g"),
            ("density", "1.3 kg/l"),
        ];
        assert!((likely(&weighed) - 660.0 / 1.3).abs() < 1.0);
    }

    #[test]
    fn what_is_old_or_has_frozen_says_so() {
        let mind = |values: &[(&'static str, &str)]| {
            let workshop = with(values);
            super::mind(&workshop, &stock(&workshop)[0], today())
        };
        assert_eq!(
            mind(&[("material", "trim-enamel"), ("opened", "2025-05-01")]),
            [OLD_CAN]
        );
        assert_eq!(
            mind(&[
                ("material", "trim-enamel"),
                ("opened", "2026-05-01"),
                ("frozen", "yes")
            ]),
            [FROZEN]
        );
        // What is thinned with alcohol does not mind frost.
        assert_eq!(mind(&[("material", "shellac-primer"), ("frozen", "yes")]), []);
    }

    /// A gallon on the shelf is enough for every piece that takes it, and nothing of it is bought any more.
    #[test]
    fn what_is_on_the_shelf_is_not_bought() {
        let bare = invented_workshop();
        let taken = takeoffs(&bare);
        let lines = taken.iter().flatten().flat_map(|takeoff| &takeoff.materials);
        let clear = lines
            .filter(|line| line.need.material.stage == Stage::Topcoat)
            .map(|line| &line.need)
            .next()
            .unwrap();
        let key = clear.material.key.to_string();
        let stocked = with(&[("material", &key), ("can", "us-gallon")]);
        let found = stock(&stocked).remove(0);
        let good = good_for(&stocked, &takeoffs(&stocked), &found);
        assert!(is_known(&found));
        let paint = stock(&with(&[("material", "trim-enamel"), ("can", "us-gallon")])).remove(0);
        assert!(!is_known(&paint), "its colour was not said");
        assert!(!good.is_empty() && good.iter().all(|(_, enough)| enough.verdict == Verdict::Enough));
        let buys = |workshop: &Workshop| {
            let lots = shopping(workshop, &takeoffs(workshop));
            let lot = lots.into_iter().find(|lot| *lot.material.key == *key).unwrap();
            (lot.on_shelf.len(), lot.buy.unwrap().cans.len())
        };
        assert_eq!(buys(&stocked), (1, 0));
        // Nor for one piece, though nothing is said to be in hand for it.
        let mut piece = (*stocked.pieces[0]).clone();
        piece.scheme.layers.iter_mut().for_each(|layer| layer.can = None);
        let taken = crate::takeoff_in(&stocked, &piece).unwrap();
        let mut lines = taken.materials.iter();
        let line = lines.find(|line| line.need.material.key == *key).unwrap();
        let cans = |workshop: &Workshop| crate::cans_to_buy(workshop, line).unwrap().cans.len();
        assert_eq!((cans(&stocked), cans(&bare)), (0, 1));
        assert_eq!(buys(&bare).0, 0);
    }
}
