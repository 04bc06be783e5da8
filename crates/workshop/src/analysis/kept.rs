//! Results that are kept until the data they depend on changes.

use std::cell::RefCell;
use std::rc::Rc;

use timetable::Moment;
use units::Day;

use crate::document::{Piece, PieceId, Workshop};

/// The inputs of a result besides the document.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Besides {
    /// Nothing.
    Nothing,
    /// The current day.
    Today(Day),
    /// The current moment, and the open piece.
    Now(Moment, Option<PieceId>),
    /// The pieces left out.
    LeftOut(Vec<PieceId>),
}

/// The inputs of a result.
pub(super) struct Asked {
    pub(super) workshop: Rc<Workshop>,
    /// The piece, for a result of one piece.
    pub(super) piece: Option<Rc<Piece>>,
    pub(super) besides: Besides,
}

impl Asked {
    /// Returns true if both are the same document and piece in memory, which is quick to check.
    fn is_same(&self, other: &Self) -> bool {
        let is_same_piece = match (&self.piece, &other.piece) {
            (Some(one), Some(other)) => Rc::ptr_eq(one, other),
            (None, None) => true,
            _ => false,
        };
        Rc::ptr_eq(&self.workshop, &other.workshop) && is_same_piece && self.besides == other.besides
    }
}

/// The data that a result depends on: parts of the document and of the piece.
#[derive(PartialEq)]
pub(super) struct Slice {
    pub(super) workshop: Workshop,
    /// `None` for a result of all pieces.
    pub(super) piece: Option<Piece>,
}

/// The inputs of the last result, and the slice it was calculated from.
struct Last {
    asked: Asked,
    slice: Rc<Slice>,
}

impl Last {
    /// Returns the slice for a result, and whether it equals the last one.
    fn look(last: &mut Option<Last>, asked: Asked, slice: &dyn Fn(&Asked) -> Slice) -> (Rc<Slice>, bool) {
        if let Some(last) = last
            && last.asked.is_same(&asked)
        {
            return (Rc::clone(&last.slice), true);
        }
        let slice = slice(&asked);
        if let Some(last) = last
            && *last.slice == slice
            && last.asked.besides == asked.besides
        {
            last.asked = asked;
            return (Rc::clone(&last.slice), true);
        }
        let slice = Rc::new(slice);
        *last = Some(Last {
            asked,
            slice: Rc::clone(&slice),
        });
        (slice, false)
    }
}

/// The last result of one kind.
pub(super) struct Kept<T> {
    last: RefCell<Option<Last>>,
    result: RefCell<Option<Rc<T>>>,
}

impl<T> Default for Kept<T> {
    fn default() -> Self {
        Kept {
            last: RefCell::new(None),
            result: RefCell::new(None),
        }
    }
}

impl<T> Kept<T> {
    /// Returns the result. It is kept if the inputs or the slice have not changed, and calculated otherwise.
    pub(super) fn get(
        &self,
        asked: Asked,
        slice: &dyn Fn(&Asked) -> Slice,
        work_out: impl FnOnce(&Slice) -> T,
    ) -> Rc<T> {
        let (slice, is_same) = Last::look(&mut self.last.borrow_mut(), asked, slice);
        if is_same && let Some(result) = &*self.result.borrow() {
            return Rc::clone(result);
        }
        let result = Rc::new(work_out(&slice));
        *self.result.borrow_mut() = Some(Rc::clone(&result));
        result
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_result_is_worked_out_once_for_what_it_is_read_from() {
        let kept = Kept::default();
        let mut times = 0;
        for (title, day, expected) in [("a", 1, 1), ("a", 1, 1), ("b", 1, 2), ("b", 2, 3), ("a", 2, 4)] {
            let asked = Asked {
                workshop: Rc::default(),
                piece: None,
                besides: Besides::Today(Day::since_1970(day)),
            };
            let slice = |_: &Asked| Slice {
                workshop: Workshop {
                    title: title.into(),
                    ..Workshop::default()
                },
                piece: None,
            };
            let found = kept.get(asked, &slice, |_| {
                times += 1;
                times
            });
            assert_eq!(*found, expected);
        }
    }
}
