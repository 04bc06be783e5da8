//! The measure tab: a field for each measurement, and how the piece is built.

mod division;
mod made;

use geometry::Furniture;
use web_sys::HtmlInputElement;
use workshop::{Edit, PieceEdit};
use yew::prelude::*;

use super::Shown;
use super::tape::{Tape, stands_in, tape_field};
use super::tape_focus::CHOICES;
use crate::browser::new_piece_id;
use crate::parts::{button, stepper};
use crate::state::{Action, Message};

/// Shows the measure tab.
pub fn measure(shown: &Shown) -> Html {
    let furniture = shown.piece.furniture();
    html! {
        <section aria-label="Measure">
            <p class="hint">{ "Touch a dimension of the drawing to measure it. Drag the drawing to turn it." }</p>
            <div class="fields">{ fields(shown, &furniture, true) }</div>
            { division::division(shown, &furniture) }
            <h3 id={CHOICES} tabindex="-1">{ "How it is made" }</h3>
            <div class="styles">{ made::made(shown, &furniture) }</div>
            <h3>{ "Finer sizes" }</h3>
            <div class="fields">{ fields(shown, &furniture, false) }</div>
            <h3>{ "The piece itself" }</h3>
            { itself(shown) }
        </section>
    }
}

/// Shows the sizes of the whole piece, or all others.
fn fields(shown: &Shown, furniture: &Furniture, of_whole: bool) -> Html {
    let field = |field: &geometry::LengthField| {
        tape_field(
            shown,
            Tape {
                id: field.id(),
                label: field.label.into(),
                usual: stands_in(furniture, &[], field.id()),
                with_hint: true,
            },
        )
    };
    let fields = furniture.fields().into_iter();
    fields
        .filter(|field| field.is_of_whole() == of_whole)
        .map(field)
        .collect()
}

fn itself(shown: &Shown) -> Html {
    let piece = &shown.piece;
    let name = shown.change(|event: Event| {
        let name = event.target_unchecked_into::<HtmlInputElement>().value();
        Some(PieceEdit::Name(name))
    });
    let count = shown.change(|count| Some(PieceEdit::Count(count)));
    html! {
        <div class="fields">
            <div class="field wide">
                <label for="piece-name">{ "Name of the piece" }</label>
                <input id="piece-name" type="text" maxlength="120" value={piece.name.clone()} onchange={name} />
            </div>
            { stepper(("How many alike", ""), "count", piece.count, (1, 99), count) }
            { copy_and_remove(shown) }
        </div>
    }
}

fn copy_and_remove(shown: &Shown) -> Html {
    let (copied, removed) = (shown.piece.id.clone(), shown.piece.id.clone());
    let copy = shown.send.reform(move |_: MouseEvent| {
        let (of, id) = (copied.clone(), new_piece_id());
        Action::Start(Edit::Copy { of, id: id.clone() }, id)
    });
    let (send, gone) = (shown.send.clone(), shown.piece.name.clone());
    let remove = Callback::from(move |_: MouseEvent| {
        send.emit(Action::Edit(Edit::Remove(removed.clone())));
        let done = format!("{gone} is gone. Undo brings it back, as long as this page is open.");
        send.emit(Action::Tell(Message::Done(done)));
    });
    html! {
        <div class="buttons">
            { button("copy-piece", "Copy", copy) }
            { button("remove-piece", "Remove the piece", remove) }
        </div>
    }
}
