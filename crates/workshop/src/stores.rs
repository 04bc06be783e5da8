//! Supplies in the workshop other than cans: abrasive sheets, leaf, additives and decor. For sheets and leaf,
//! the amount that all pieces take is known.

use std::rc::Rc;

use crate::book::{Supply, SupplyKind};
use crate::document::Workshop;
use crate::goods::goods;
use crate::preparing::{Much, whole_sheets};
use crate::work::Work;

/// A supply in the workshop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Store {
    /// The id of its line.
    pub id: Rc<str>,
    /// How many there are.
    pub have: u32,
    /// How many all pieces take, low and high, if known. For sheets, likely and at most.
    pub needed: Option<(u32, u32)>,
}

impl Store {
    /// Returns how many to buy, low and high, or `None` if the amount needed is unknown.
    pub fn lacking(&self) -> Option<(u32, u32)> {
        let (low, high) = self.needed?;
        Some((low.saturating_sub(self.have), high.saturating_sub(self.have)))
    }
}

/// Returns every supply, in the maker's order. `works` has one entry for each piece.
pub(crate) fn stores(workshop: &Workshop, works: &[Option<Work>]) -> Vec<Store> {
    let supplies: Vec<Supply> = workshop.books.all().collect();
    let is_taken = |supply: &Supply| matches!(supply.kind, Some(SupplyKind::Sheets | SupplyKind::Leaf));
    let goods = if supplies.iter().any(is_taken) {
        goods(workshop, works)
    } else {
        Vec::new()
    };
    let needed = |key: &str| {
        let good = goods.iter().find(|good| good.key == key)?;
        match good.takes {
            Much::Sheets(_, likely, most) => Some((whole_sheets(likely), whole_sheets(most))),
            Much::Count(low, high) => Some((low, high)),
            _ => None,
        }
    };
    let of = |supply: Supply| Store {
        have: supply.count.unwrap_or(0),
        needed: match supply.kind {
            Some(SupplyKind::Sheets) => needed(&format!("sheets-{}", supply.grit)),
            Some(SupplyKind::Leaf) => needed("leaf"),
            _ => None,
        },
        id: supply.id,
    };
    supplies.into_iter().map(of).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::preparing::PrepareStep;
    use crate::samples::works;
    use crate::{BookEdit, Edit, PieceEdit, invented_workshop};

    fn add(workshop: &Workshop, id: &str, values: &[(&'static str, &str)]) -> Workshop {
        let values = crate::samples::values(values);
        let add = BookEdit::Add("stores", id.into(), values);
        workshop.apply(Edit::Book(add)).unwrap()
    }

    /// The total of the steps for both sample pieces, minus what is on hand.
    #[test]
    fn sheets_are_counted_against_all_pieces() {
        let bare = invented_workshop();
        let taken = works(&bare);
        let of_piece = |place: usize| {
            let steps = taken[place].as_ref().unwrap().steps.to_vec();
            let may = steps.into_iter().filter(PrepareStep::may_be_done);
            let sheets = may
                .flat_map(|step| step.amounts)
                .filter(|amount| amount.what == "180-grit, by hand");
            sheets
                .map(|amount| match amount.much {
                    Much::Sheets("P180", _, most) => most,
                    other => panic!("{other:?}"),
                })
                .sum::<f64>()
        };
        let all = (of_piece(0) + of_piece(1)).ceil() as u32;
        assert!(all > 0);
        let stocked = add(
            &bare,
            "s",
            &[("kind", "sheets"), ("grit", "P180"), ("count", "1")],
        );
        let found = &stores(&stocked, &taken)[0];
        assert_eq!(found.needed.unwrap().1, all);
        assert_eq!(found.lacking().unwrap().1, all - 1);
        let many = add(
            &bare,
            "s",
            &[("kind", "sheets"), ("grit", "P180"), ("count", "900")],
        );
        assert_eq!(stores(&many, &taken)[0].lacking(), Some((0, 0)));
    }

    #[test]
    fn leaf_is_counted_against_all_art_and_the_rest_is_only_kept() {
        let stocked = add(&invented_workshop(), "l", &[("kind", "leaf"), ("count", "25")]);
        let stocked = add(
            &stocked,
            "a",
            &[("kind", "additive"), ("name", "retarder"), ("count", "1")],
        );
        let taken = works(&stocked);
        let bare = stores(&stocked, &taken);
        assert_eq!((bare[0].needed, bare[1].lacking()), (None, None));
        let values = [("kind", "leaf"), ("width", "700 mm"), ("height", "1400 mm")];
        let values = crate::samples::values(&values);
        let art = PieceEdit::Book(BookEdit::Add("art", "a".into(), values));
        let gilded = stocked
            .apply(Edit::Piece(stocked.pieces[0].id.clone(), art))
            .unwrap();
        assert_eq!(stores(&gilded, &taken)[0].lacking(), Some((30, 41)));
    }
}
