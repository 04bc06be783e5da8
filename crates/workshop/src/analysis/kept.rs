//! Results that are kept as long as what they were read from is the same.

use std::cell::RefCell;
use std::rc::Rc;

use crate::document::{Piece, Workshop};

/// Where a result was asked for: the document, the piece, and what else decides it.
pub(super) struct Asked<B> {
    pub(super) workshop: Rc<Workshop>,
    pub(super) piece: Option<Rc<Piece>>,
    pub(super) besides: B,
}

impl<B: PartialEq> PartialEq for Asked<B> {
    /// Whether both are the very same document and piece, which is quickly told.
    fn eq(&self, other: &Self) -> bool {
        let is_same_piece = match (&self.piece, &other.piece) {
            (Some(one), Some(other)) => Rc::ptr_eq(one, other),
            (None, None) => true,
            _ => false,
        };
        Rc::ptr_eq(&self.workshop, &other.workshop) && is_same_piece && self.besides == other.besides
    }
}

/// The last result of one kind.
struct Last<S, B, T> {
    asked: Asked<B>,
    /// What it was read from.
    slice: S,
    result: Rc<T>,
}

/// Keeps the last result of one kind.
pub(super) struct Kept<S, B, T>(RefCell<Option<Last<S, B, T>>>);

impl<S, B, T> Default for Kept<S, B, T> {
    fn default() -> Self {
        Kept(RefCell::new(None))
    }
}

impl<S: PartialEq, B: PartialEq, T> Kept<S, B, T> {
    /// The result: the one that is kept, if it is asked for in the same place or was read from the same, or else worked out now.
    pub(super) fn get(
        &self,
        asked: Asked<B>,
        slice: impl FnOnce(&Asked<B>) -> S,
        work_out: impl FnOnce(&S, &B) -> T,
    ) -> Rc<T> {
        if let Some(last) = &*self.0.borrow()
            && last.asked == asked
        {
            return Rc::clone(&last.result);
        }
        let slice = slice(&asked);
        if let Some(last) = &mut *self.0.borrow_mut()
            && last.slice == slice
            && last.asked.besides == asked.besides
        {
            last.asked = asked;
            return Rc::clone(&last.result);
        }
        let result = Rc::new(work_out(&slice, &asked.besides));
        *self.0.borrow_mut() = Some(Last {
            asked,
            slice,
            result: Rc::clone(&result),
        });
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
        for (slice, besides, expected) in [(1, 'a', 1), (1, 'a', 1), (2, 'a', 2), (2, 'b', 3), (1, 'b', 4)] {
            let asked = Asked {
                workshop: Rc::default(),
                piece: None,
                besides,
            };
            let found = kept.get(
                asked,
                |_| slice,
                |_, _| {
                    times += 1;
                    times
                },
            );
            assert_eq!(*found, expected);
        }
    }
}
