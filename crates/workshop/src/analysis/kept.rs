//! Results that are kept as long as what they were read from is the same.

use std::cell::RefCell;
use std::rc::Rc;

use timetable::Moment;
use units::Day;

use crate::document::{Piece, PieceId, Workshop};

/// What decides a result besides the document.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Besides {
    /// Nothing.
    Nothing,
    /// The present day.
    Today(Day),
    /// The present moment.
    Now(Moment),
    /// The pieces that are left out.
    LeftOut(Vec<PieceId>),
}

/// Where a result is asked for.
pub(super) struct Asked {
    pub(super) workshop: Rc<Workshop>,
    /// The piece, of a result that is of one piece.
    pub(super) piece: Option<Rc<Piece>>,
    pub(super) besides: Besides,
}

impl Asked {
    /// Whether both are the very same document and piece, which is quickly told.
    fn is_same(&self, other: &Self) -> bool {
        let is_same_piece = match (&self.piece, &other.piece) {
            (Some(one), Some(other)) => Rc::ptr_eq(one, other),
            (None, None) => true,
            _ => false,
        };
        Rc::ptr_eq(&self.workshop, &other.workshop) && is_same_piece && self.besides == other.besides
    }
}

/// What a result is read from: the parts of the document that it reads, and those of the piece.
#[derive(PartialEq)]
pub(super) struct Slice {
    pub(super) workshop: Workshop,
    /// Nothing of any piece where the result is of all.
    pub(super) piece: Option<Piece>,
}

/// Where a result was last asked for, and what it was read from.
struct Last {
    asked: Asked,
    slice: Rc<Slice>,
}

impl Last {
    /// The slice to read a result from, and whether it is the last one.
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

/// Keeps the last result of one kind.
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
    /// The result: the one that is kept, if it is asked for in the same place or was read from the same, or else worked out now.
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
