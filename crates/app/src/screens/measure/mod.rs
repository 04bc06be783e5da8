//! Measuring: the drawing with its sizes, the selected row, and the same sizes as a list.

mod built;
mod rows;

use geometry::Furniture;
use web_sys::HtmlInputElement;
use workshop::{Edit, PieceEdit, unmeasured};
use yew::prelude::*;

use super::drawing::{Drawn, board};
use super::tape::{Tape, stands_in, tape_field};
use super::tape_focus::focus_measurement_soon;
use super::{Shown, amounts, folded};
use crate::browser::new_piece_id;
use crate::parts::{button, stepper};
use crate::state::{Action, MORE_SIZES, Message, Screen, in_order};
use crate::words;

/// Shows the drawing, and beside or below it the rows and the list of sizes.
pub fn measure(shown: &Shown, drawn: &Drawn) -> Html {
    let furniture = shown.piece.furniture();
    let has_problems = shown.takeoff().is_none();
    html! {
        <div class="beside">
            <div class="drawn">{ board(shown, drawn) }</div>
            <section class="questions" aria-labelledby="measure-title">
                <h2 id="measure-title" class="unseen">{ "Measure" }</h2>
                if has_problems { { amounts::problems(shown) } }
                { next(shown) }
                { rows::rows(shown, &furniture) }
                <h3>{ "Sizes" }</h3>
                { built::tape_over(shown, &furniture) }
                <div class="sizes">{ fields(shown, &furniture, true) }</div>
                { built::stand(shown, &furniture) }
                { folded(shown, MORE_SIZES, "More measurements", &|| html! {
                    <div class="sizes">{ fields(shown, &furniture, false) }</div>
                }) }
                { folded(shown, "built", "How it\u{2019}s built", &|| built::built(shown, &furniture)) }
                { folded(shown, "this-piece", "Name, number, delete", &|| itself(shown)) }
                { button("change-parts", "Change, add or remove parts", go(shown, Screen::Parts)) }
            </section>
        </div>
    }
}

fn go(shown: &Shown, screen: Screen) -> Callback<MouseEvent> {
    shown.send.reform(move |_| Action::Screen(screen))
}

/// Shows the one next thing to do: measure the first guess in order, or go on to the condition.
fn next(shown: &Shown) -> Html {
    let guesses = unmeasured(&shown.piece);
    let first = in_order(&shown.piece)
        .into_iter()
        .find(|field| guesses.contains(field));
    let verdict = button("should-i-buy", "Should I buy it?", go(shown, Screen::Verdict));
    let Some(first) = first else {
        return html! { <div class="next">{ verdict }{ button("go-on", "Next: condition", go(shown, Screen::Condition)) }</div> };
    };
    let send = shown.send.clone();
    let take = Callback::from(move |_: MouseEvent| {
        send.emit(Action::Enter(first));
        focus_measurement_soon();
    });
    html! {
        <div class="next">
            { verdict }
            <button type="button" id="measure-guesses" class="act" onclick={take}>{ words::measure_guesses(guesses.len()) }</button>
        </div>
    }
}

/// Shows the sizes of the whole piece, or all others.
pub fn fields(shown: &Shown, furniture: &Furniture, of_whole: bool) -> Html {
    let field = |field: &geometry::LengthField| {
        tape_field(
            shown,
            Tape {
                id: field.id(),
                label: field.label.into(),
                usual: stands_in(furniture, &[], field.id()),
                with_hint: false,
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
        <>
            <div class="field">
                <label for="piece-name">{ "Name" }</label>
                <input id="piece-name" type="text" maxlength="120" value={piece.name.clone()} onchange={name} />
            </div>
            { stepper(("How many of these", ""), "count", piece.count, (1, 99), count) }
            { copy_and_remove(shown) }
        </>
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
        send.emit(Action::Tell(Message::Done(words::deleted(&gone))));
    });
    html! {
        <div class="buttons">
            { button("copy-piece", "Duplicate piece", copy) }
            { button("remove-piece", "Delete piece", remove) }
        </div>
    }
}
