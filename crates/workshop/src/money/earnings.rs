//! The earnings from pieces that have a price.

use super::costs::{EstimatedCosts, estimate_costs};
use super::{Guess, Outcome, result, sum};
use crate::book::Facts;
use crate::document::Workshop;
use crate::work::Work;

/// The earnings from a piece that was sold or has an asking price.
#[derive(Clone, Debug, PartialEq)]
pub struct Earning {
    /// The name of the piece.
    pub name: String,
    /// The number of pieces that the price covers.
    pub count: u32,
    /// True if it was sold.
    pub is_sold: bool,
    /// The working time in minutes.
    pub minutes: u32,
    /// The outcome at the price.
    pub outcome: Outcome,
    /// The inputs that were guessed. The wage makes no difference to the outcome.
    pub guesses: Vec<Guess>,
}

/// The earnings from all pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct Earnings {
    /// Every piece with a price, in the maker's order.
    pub each: Vec<Earning>,
    /// The money left from all sold pieces together, in total and per hour of work.
    pub together: Option<(i64, Option<i64>)>,
}

/// Returns the earnings from every piece that has a price, in the maker's order, and the total of the sold
/// ones. `works` has one entry for each piece.
pub(crate) fn earnings(workshop: &Workshop, works: &[Option<Work>]) -> Earnings {
    let mut sold = Vec::new();
    let mut all = Vec::new();
    for (piece, work) in workshop.pieces.iter().zip(works) {
        let facts: Facts = piece.books.one();
        let (sale, asked) = (facts.sold, facts.asking);
        let Some((work, price)) = work.as_ref().zip(sale.or(asked)) else {
            continue;
        };
        let EstimatedCosts { costs, guesses, .. } = estimate_costs(workshop, piece, work);
        if sale.is_some() {
            sold.push((costs, price));
        }
        all.extend(result(&costs, price).map(|outcome| Earning {
            name: piece.name.clone(),
            count: piece.count,
            is_sold: sale.is_some(),
            minutes: costs.minutes,
            outcome,
            guesses,
        }));
    }
    let together = (!sold.is_empty()).then(|| sum(&sold)).flatten();
    Earnings { each: all, together }
}
