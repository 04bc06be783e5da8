//! What pieces with a price earn.

use super::costs::reckon;
use super::{Outcome, result, sum};
use crate::book::Facts;
use crate::document::Workshop;
use crate::work::Work;

/// What a piece that was sold, or has an asking price, earns.
#[derive(Clone, Debug, PartialEq)]
pub struct Earning {
    /// The name of the piece.
    pub name: String,
    /// How many pieces the price is for together.
    pub count: u32,
    /// Whether it was sold.
    pub is_sold: bool,
    /// Minutes of work.
    pub minutes: u32,
    /// What comes of it.
    pub outcome: Outcome,
}

/// What pieces earn.
#[derive(Clone, Debug, PartialEq)]
pub struct Earnings {
    /// Every piece with a price, in the maker's order.
    pub each: Vec<Earning>,
    /// All that were sold: what is left of them, and for an hour of work.
    pub together: Option<(i64, Option<i64>)>,
}

/// What every piece with a price earns, in the maker's order, and all that were sold together: what is left, and for an
/// hour. `works` are those of all pieces.
pub fn earnings(workshop: &Workshop, works: &[Option<Work>]) -> Earnings {
    let mut sold = Vec::new();
    let mut all = Vec::new();
    for (piece, work) in workshop.pieces.iter().zip(works) {
        let facts: Facts = piece.books.one();
        let (sale, asked) = (facts.sold, facts.asking);
        let Some((work, price)) = work.as_ref().zip(sale.or(asked)) else {
            continue;
        };
        let costs = reckon(workshop, piece, work).costs;
        if sale.is_some() {
            sold.push((costs, price));
        }
        all.extend(result(&costs, price).map(|outcome| Earning {
            name: piece.name.clone(),
            count: piece.count,
            is_sold: sale.is_some(),
            minutes: costs.minutes,
            outcome,
        }));
    }
    let together = (!sold.is_empty()).then(|| sum(&sold)).flatten();
    Earnings { each: all, together }
}
