//! The parts screen: the boards of the piece, and the maker's changes to them.

mod board;
mod changes;
mod options;
mod parts;

use geometry::{AddedShape, FieldId};
use workshop::{PieceChange, PieceEdit};
use yew::prelude::*;

use super::Shown;
use crate::browser::focus_soon;
use crate::parts::button;
use crate::state::Action;
use crate::words;

/// Shows the parts screen.
pub fn alter(shown: &Shown) -> Html {
    html! {
        <section aria-label="Parts" class="alter">
            <h2 class="unseen">{ "Parts" }</h2>
            if !shown.piece.changes.is_empty() {
                    <h3>{ "Your changes" }</h3>
                { changes::changes(shown) }
            }
            <h3>{ "Add a part" }</h3>
            <div class="buttons">{ for AddedShape::ALL.iter().map(|shape| add(shown, *shape)) }</div>
            <h3>{ "Parts" }</h3>
            { parts::parts(shown) }
        </section>
    }
}

fn add(shown: &Shown, shape: AddedShape) -> Html {
    let first = shape.fields().first().map(|(field, _)| (0, field.key));
    let onclick = begin(shown, PieceEdit::AddPart(shape), first);
    button(format!("add-{}", shape.key()), shape.label(), onclick)
}

/// Returns a callback that adds a change.
fn begin_change(shown: &Shown, change: PieceChange) -> Callback<MouseEvent> {
    let first = change.fields().first().map(|(item, field, _)| (*item, field.key));
    begin(shown, PieceEdit::AddChange(change), first)
}

/// Returns a callback that makes an edit and focuses the first field of the new change, given by item and
/// key.
fn begin(shown: &Shown, edit: PieceEdit, first: Option<(usize, &'static str)>) -> Callback<MouseEvent> {
    let (send, change) = (shown.send.clone(), shown.piece.changes.len());
    Callback::from(move |_| {
        send.emit(Action::Change(edit.clone()));
        if let Some((item, key)) = first {
            focus_soon(words::field_element(FieldId::Alteration { change, item, key }));
        }
    })
}
