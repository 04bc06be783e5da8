//! The shelf: the uses of its cans, and warnings about them.

use std::rc::Rc;

use coatings::{Demand, Enough, Reason, Thinner};
use units::Day;

use crate::book::ShelfCan;
use crate::document::{PieceId, Scheme, Workshop};
pub use crate::stock::{OnHand, Stock, StockFault, stock};
use crate::takeoff::Takeoff;

/// The age in days at which an opened can counts as old. Normal shelf life is a year (MIL-HDBK-1110 s. 7.2).
const OLD: i32 = 365;
const OLD_CAN: Reason = Reason::read(
    "Opened over a year ago. Stir it, strain it and try it on scrap first.",
    "normal shelf life 1 year, MIL-HDBK-1110 s. 7.2",
);
const FROZEN: Reason = Reason::read(
    "It froze. Freezing ruins water-based products. If it stays lumpy after stirring, don't use it.",
    "MIL-HDBK-1110 s. 7.2",
);

/// Returns the warnings about a can: whether it is old or was frozen.
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

/// Returns true if enough is known about a can to use it for a piece: its contents, and its color if the
/// material has one.
pub fn is_known(stock: &Stock) -> bool {
    stock.contents.is_ok() && (stock.colour.is_some() || !stock.material.coloured)
}

/// Returns whether a can is enough for each piece that uses its contents, with the name of the piece.
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
        let enough = Enough::judge(&takeoff.job, &line.need, &[*contents], confidence);
        Some((piece.name.clone(), enough))
    };
    workshop
        .pieces
        .iter()
        .zip(takeoffs)
        .filter_map(of_piece)
        .collect()
}

/// Returns the names of the other pieces that use the same material in the same color, and therefore the same
/// cans.
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
    use crate::samples::{takeoff_in, takeoffs};
    use crate::takeoff::shopping;
    use crate::{BookEdit, Edit, invented_workshop};
    use coatings::{Stage, Verdict};

    fn with(values: &[(&'static str, &str)]) -> Workshop {
        let values = crate::samples::values(values);
        let add = BookEdit::Add("shelf", "s1".into(), values);
        bare().apply(Edit::Book(add)).unwrap()
    }

    /// The sample workshop with an empty shelf.
    fn bare() -> Workshop {
        let mut workshop = invented_workshop();
        workshop.books = Default::default();
        workshop
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
        // The nightstands have another color but the same clear coat.
        assert!(of("trim-enamel").is_empty());
        assert_eq!(of("water-polyurethane"), [workshop.pieces[1].name.clone()]);
    }

    /// By hand: 780 g with the can, 120 g without, 1.3 kg/L. 660 / 1.3 = 507.7 mL.
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

    /// A quart is 946.35 mL, exactly a quarter of 231 in³.
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
        // Alcohol-based materials are not damaged by freezing.
        assert_eq!(mind(&[("material", "shellac-primer"), ("frozen", "yes")]), []);
    }

    /// A gallon on the shelf is enough for every piece that uses it, so none is bought.
    #[test]
    fn what_is_on_the_shelf_is_not_bought() {
        let bare = bare();
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
        // The same holds for a single piece.
        let cans = |workshop: &Workshop| {
            let taken = takeoff_in(workshop, &workshop.pieces[0]).unwrap();
            let mut lines = taken.materials.iter();
            let line = lines.find(|line| line.need.material.key == *key).unwrap();
            crate::takeoff::cans_to_buy(workshop, line).unwrap().cans.len()
        };
        assert_eq!((cans(&stocked), cans(&bare)), (0, 1));
        assert_eq!(buys(&bare).0, 0);
    }
}
