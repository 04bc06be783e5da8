//! The result of the lead test, where the test is checked off.

use web_sys::MouseEvent;
use workshop::preparing;
use workshop::{Edit, PieceEdit, PieceId};
use yew::prelude::*;

use super::Send;
use crate::parts::button;
use crate::state::Action;

/// Shows buttons for the result of a test.
pub fn result_of_test(send: &Send, piece: &PieceId, is_done: bool) -> Html {
    let write = |is_lead_found: bool| {
        let piece = piece.clone();
        send.reform(move |_: MouseEvent| {
            let result = PieceEdit::Book(preparing::result_of_test(is_lead_found));
            Action::Edit(Edit::Piece(piece.clone(), result))
        })
    };
    let asked = match is_done {
        true => "What did the test show? Don\u{2019}t sand until it\u{2019}s clear.",
        false => "What did the test show?",
    };
    html! {
        <div class="row result" role="group" aria-label="Result of the lead test">
            <p class="hint" role="status">{ asked }</p>
            { button(format!("lead-negative-{}", piece.0), "No lead found", write(false)) }
            { button(format!("lead-positive-{}", piece.0), "Lead found", write(true)) }
        </div>
    }
}
