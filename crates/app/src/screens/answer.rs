//! What is told of the open piece while somebody types.

use super::Bought;
use super::Result;
use crate::state::App;
use std::rc::Rc;
use workshop::Piece;
use yew::prelude::*;

/// A piece and what is told of it.
#[derive(Clone, Default)]
pub(super) struct Answer {
    pub(super) piece: Option<Rc<Piece>>,
    pub(super) result: Option<Result>,
    pub(super) cans: Rc<Vec<Bought>>,
    /// Whether it is the last that could be told, while somebody types what cannot be read or does not fit yet.
    pub(super) waits: bool,
}

/// What is told of the open piece. Of a size of 26 the first figure alone fits nowhere: as long as somebody is typing, what
/// was told last stays.
#[hook]
pub(super) fn use_answer(app: &App, piece: Option<&Rc<Piece>>) -> Answer {
    let analysis = app.analysis();
    let result = piece.map(|piece| analysis.takeoff(piece));
    let last = use_mut_ref(Answer::default);
    let mut last = last.borrow_mut();
    let is_good = result.as_ref().is_some_and(|result| result.is_ok());
    let is_of_it = last.piece.as_ref().map(|of| &of.id) == piece.map(|of| &of.id);
    if is_of_it && app.typing.is_some() && (app.is_half_typed() || !is_good) {
        return Answer {
            waits: true,
            ..last.clone()
        };
    }
    let now = Answer {
        piece: piece.cloned(),
        result,
        cans: piece.map(|piece| analysis.cans(piece)).unwrap_or_default(),
        waits: false,
    };
    if is_good {
        *last = now.clone();
    }
    now
}
