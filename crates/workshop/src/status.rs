//! How far a piece is: being looked at, bought, in work, for sale or sold.

use std::rc::Rc;

pub use crate::book::Status;
use crate::book::{Books, Facts, Line, Record};
use crate::document::{Piece, PieceId, Workshop};

const STATUS: &str = "status";
/// The facts that say that a piece was sold.
pub(crate) const SALE: [&str; 2] = ["sold", "sold-on"];

impl Status {
    /// All of them, in the order of the work.
    pub const ALL: [Status; 5] = [
        Status::Looking,
        Status::Bought,
        Status::Working,
        Status::ForSale,
        Status::Sold,
    ];

    /// Returns the label.
    pub fn label(self) -> &'static str {
        let answer = Status::ANSWERS.iter().find(|(key, _)| *key == self.key());
        answer.map_or("", |(_, label)| label)
    }

    /// Returns true if there is work to do: it is bought, and neither for sale nor sold. Such pieces are on
    /// the schedule and on the shopping list.
    pub fn is_ahead(self) -> bool {
        matches!(self, Status::Bought | Status::Working)
    }
}

impl Piece {
    /// Returns how far the piece is. A piece saved before there was a status counts as bought, or as sold if
    /// it has a sale price or a sale day.
    pub fn status(&self) -> Status {
        let facts: Facts = self.books.one();
        facts.status.unwrap_or(match (facts.sold, facts.sold_on) {
            (None, None) => Status::Bought,
            _ => Status::Sold,
        })
    }
}

/// Returns the pieces that are not bought for: all but those that are bought or in work, and the open one.
pub fn left_out(workshop: &Workshop, open: Option<&PieceId>) -> Vec<PieceId> {
    let pieces = workshop.pieces.iter();
    pieces
        .filter(|piece| !piece.status().is_ahead() && open != Some(&piece.id))
        .map(|piece| piece.id.clone())
        .collect()
}

impl Books {
    /// Writes the status.
    pub(crate) fn set_status(&mut self, status: Status) {
        self.change_facts(|line| {
            line.values.insert(STATUS.into(), status.key().into());
        });
    }

    /// Makes the facts those of a copy of the piece, which is neither begun nor sold.
    pub(crate) fn begin_again(&mut self) {
        self.change_facts(|line| {
            line.values.remove(STATUS);
            for key in SALE {
                line.values.remove(key);
                line.meant.remove(key);
            }
        });
    }

    fn change_facts(&mut self, change: impl FnOnce(&mut Line)) {
        let mut line = self.only(Facts::BOOK);
        change(&mut line);
        match line.values.is_empty() {
            true => self.0.remove(Facts::BOOK),
            false => self.0.insert(Facts::BOOK.into(), vec![Rc::new(line)]),
        };
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BookEdit, Edit, PieceEdit, invented_workshop};
    use geometry::Kind;

    fn write(workshop: &Workshop, key: &str, text: &str) -> Workshop {
        let edit = BookEdit::Write(Facts::BOOK, "only".into(), key.into(), text.into());
        edited(workshop, edit)
    }

    fn edited(workshop: &Workshop, edit: BookEdit) -> Workshop {
        let id = workshop.pieces[0].id.clone();
        workshop.apply(Edit::Piece(id, PieceEdit::Book(edit))).unwrap()
    }

    fn first(workshop: &Workshop) -> Status {
        workshop.pieces[0].status()
    }

    #[test]
    fn a_piece_without_a_status_is_bought_or_sold() {
        let old = invented_workshop();
        assert_eq!(first(&old), Status::Bought);
        assert_eq!(first(&write(&old, "sold", "80")), Status::Sold);
        assert_eq!(first(&write(&old, "sold-on", "2026-05-03")), Status::Sold);
        assert_eq!(first(&write(&old, "asking", "80")), Status::Bought);
    }

    #[test]
    fn a_piece_to_decide_on_is_only_looked_at_and_a_copy_is_bought() {
        let id = PieceId("a".into());
        let kind = Kind::Bench;
        let add = |edit: Edit| Workshop::default().apply(edit).unwrap();
        let one = add(Edit::Add { id: id.clone(), kind });
        assert_eq!(first(&one), Status::Bought);
        let one = add(Edit::Consider { id: id.clone(), kind });
        assert_eq!(first(&one), Status::Looking);
        let paid = write(&write(&one, "bought", "20"), "sold", "80");
        let sold = write(&paid, "sold-on", "2026-05-03");
        let copy = Edit::Copy {
            of: id,
            id: PieceId("b".into()),
        };
        let both = sold.apply(copy).unwrap();
        let facts: Facts = both.pieces[1].books.one();
        assert_eq!(
            (first(&both), both.pieces[1].status()),
            (Status::Sold, Status::Bought)
        );
        assert_eq!(
            (facts.bought, facts.sold, facts.sold_on),
            (Some(2000), None, None)
        );
    }

    #[test]
    fn a_step_that_is_checked_off_begins_the_work() {
        let tick = BookEdit::Add("done", "clean".into(), vec![("day", "2026-05-03".into())]);
        let begun = |status| {
            first(&edited(
                &write(&invented_workshop(), "status", status),
                tick.clone(),
            ))
        };
        assert_eq!(["looking", "bought", ""].map(begun), [Status::Working; 3]);
        assert_eq!(["for-sale", "sold"].map(begun), [Status::ForSale, Status::Sold]);
        let done = edited(&invented_workshop(), tick.clone());
        let undone = edited(&done, BookEdit::Strike("done", "clean".into()));
        assert_eq!(first(&undone), Status::Working);
    }

    #[test]
    fn a_sale_that_is_written_down_is_a_sale() {
        let working = write(&invented_workshop(), "status", "for-sale");
        let sold = write(&working, "sold", "80");
        assert_eq!(first(&sold), Status::Sold);
        // Who takes the sale back chooses another status.
        assert_eq!(first(&write(&sold, "status", "for-sale")), Status::ForSale);
    }

    #[test]
    fn what_is_not_ahead_is_left_out_but_for_the_open_piece() {
        let workshop = invented_workshop();
        let id = workshop.pieces[0].id.clone();
        assert!(left_out(&workshop, None).is_empty());
        for status in Status::ALL {
            let workshop = write(&workshop, "status", status.key());
            let out = left_out(&workshop, None);
            assert_eq!(out.is_empty(), matches!(status, Status::Bought | Status::Working));
            assert!(out.is_empty() || out == [id.clone()], "{status:?}");
            assert!(left_out(&workshop, Some(&id)).is_empty());
            assert!(!status.label().is_empty());
        }
    }
}
