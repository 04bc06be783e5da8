//! The results to show for the open piece while somebody is typing.

use super::Bought;
use super::Result;
use crate::state::App;
use std::rc::Rc;
use workshop::Piece;
use yew::prelude::*;

/// A piece and its results.
#[derive(Clone, Default)]
pub(super) struct Answer {
    pub(super) piece: Option<Rc<Piece>>,
    pub(super) result: Option<Result>,
    pub(super) cans: Rc<Vec<Bought>>,
    /// True if these are the last valid results because the text being typed cannot be read or does not fit
    /// yet.
    pub(super) waits: bool,
}

/// Returns the results for the open piece. While somebody types, the last results stay. For example, the
/// first digit of 26 on its own never fits.
#[hook]
pub(super) fn use_answer(app: &App, piece: Option<&Rc<Piece>>) -> Answer {
    let analysis = app.analysis();
    let result = piece.map(|piece| analysis.takeoff(piece));
    let last = use_mut_ref(Answer::default);
    let mut last = last.borrow_mut();
    let is_good = result.as_ref().is_some_and(|result| result.is_ok());
    let is_of_it = last.piece.as_ref().map(|of| &of.id) == piece.map(|of| &of.id);
    // The field says what is wrong. Its answer stays gray until the measurement ends, so that no key moves.
    let is_measuring = app.typing.is_some() || app.field.is_some();
    if is_of_it && is_measuring && (app.is_half_typed() || !is_good) {
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
