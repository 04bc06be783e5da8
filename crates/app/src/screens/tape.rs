//! The field of one tape reading.

use geometry::{FieldId, Furniture, Problem};
use units::Length;
use web_sys::HtmlInputElement;
use workshop::Piece;
use yew::prelude::*;

use super::Shown;
use super::tape_keys::READING;
use crate::browser::focus;
use crate::state::Act;
use crate::words;

/// What a field asks.
pub struct Tape {
    /// The measurement.
    pub id: FieldId,
    /// What it is called where it stands.
    pub label: String,
    /// What stands in for it, and what that is called.
    pub usual: Option<(Length, &'static str)>,
    /// Whether the field itself says where to hold the tape; else something above it does.
    pub with_hint: bool,
}

/// The field with its label, its hint and what is wrong with it.
pub fn tape_field(shown: &Shown, tape: &Tape) -> Html {
    field(shown, tape, words::field_element(tape.id))
}

/// The same in an element of this name; a measurement can stand in two places.
pub fn field(shown: &Shown, tape: &Tape, element: String) -> Html {
    let id = tape.id;
    let fault = fault(shown, id);
    let doubt = doubt(shown, id);
    let [hint, error] = ["hint", "error"].map(|end| format!("{element}-{end}"));
    let described = [tape.with_hint.then_some(&hint), fault.is_some().then_some(&error)];
    let described: Vec<&str> = described.into_iter().flatten().map(String::as_str).collect();
    let described = described.join(" ");
    let is_guessed = shown.piece.reading(id).is_none();
    let tape_unit = shown.app.workshop.units.tape_unit();
    // A reading that was taken in other units is told in those of the workshop too.
    let here = shown
        .piece
        .reading(id)
        .filter(|reading| reading.unit() != tape_unit);
    let here = here.map(|reading| format!(": {}", shown.app.length(reading.length())));
    let class = classes!(
        "field",
        fault.is_some().then_some("wrong"),
        is_guessed.then_some("guessed"),
        (shown.app.field == Some(id)).then_some("taken")
    );
    html! {
        <div key={element.clone()} {class} data-tape="">
            <label for={element.clone()}>{ &tape.label }<span class="unit">{ format!(" ({})", tape_unit.sign()) }{ here }</span></label>
            if tape.with_hint {
                // A question stands in the place of the hint, so that nothing moves while one types.
                <span class={if doubt.is_some() { "hint doubt" } else { "hint" }} id={hint}>
                    { doubt.unwrap_or_else(|| Piece::field(id).map_or("", |field| field.hint).to_owned()) }
                </span>
            }
            if let Some(fault) = &fault {
                <span class="error" id={error}><span class="unseen">{ "Error: " }</span>{ fault }</span>
            }
            { input(shown, tape, element, described, fault.is_some()) }
        </div>
    }
}

fn input(shown: &Shown, tape: &Tape, element: String, described: String, is_wrong: bool) -> Html {
    let Shown { app, send, .. } = shown;
    let id = tape.id;
    // Keys can come faster than the page is drawn: what is typed at the tape keys is of the measurement that is taken then.
    let is_reading = element == READING;
    let typed = send.reform(move |event: InputEvent| {
        let text = event.target_unchecked_into::<HtmlInputElement>().value();
        if is_reading {
            Act::TypeHere(text)
        } else {
            Act::Type(id, text)
        }
    });
    let entered = send.reform(move |event: FocusEvent| {
        event.target_unchecked_into::<HtmlInputElement>().select();
        // What is marked is replaced, by whatever keys.
        if is_reading { Act::Marked } else { Act::Enter(id) }
    });
    // The tape keys are on the page; the device's own keyboard would lie over them.
    let inputmode = if app.keyboard { "text" } else { "none" };
    html! {
        <input id={element.clone()} type="text" {inputmode} enterkeyhint="next" autocomplete="off" spellcheck="false"
            value={app.text(id)} placeholder={placeholder(shown, tape)} aria-describedby={described}
            aria-invalid={is_wrong.then_some("true")} oninput={typed} onkeydown={keys(shown, element)}
            onfocus={entered} onblur={send.reform(move |_| Act::Leave(id))} />
    }
}

/// Enter goes on to the next measurement, with the shift key back to the one before; Escape puts the tape away.
fn keys(shown: &Shown, element: String) -> Callback<KeyboardEvent> {
    let (send, app) = (shown.send.clone(), shown.app.clone());
    Callback::from(move |event: KeyboardEvent| match event.key().as_str() {
        "Enter" => {
            event.prevent_default();
            let on = !event.shift_key();
            let next = app.next_field(on);
            send.emit(Act::GoOn(on));
            // In the list the next field of the list is gone into; the field of the keys stays where it is, and what it
            // held goes at once.
            match next {
                Some(_) if element == READING => {
                    event.target_unchecked_into::<HtmlInputElement>().set_value("");
                }
                Some(next) => focus(&words::field_element(next)),
                None => focus("drawing"),
            }
        }
        "Escape" => send.emit(Act::PutTapeAway),
        _ => {}
    })
}

/// What stands in for a measurement that nobody took, and what that is called; `shared` are the lengths that are shared out.
pub fn stands_in(
    furniture: &Furniture,
    shared: &[(FieldId, Length)],
    id: FieldId,
) -> Option<(Length, &'static str)> {
    let rest = shared.iter().find(|(of, _)| *of == id);
    match (rest, id) {
        (Some((_, rest)), _) => Some((*rest, unmeasured(furniture, id))),
        (None, FieldId::Of(_)) => Some((furniture.length(Piece::field(id)?), "usual")),
        _ => None,
    }
}

/// What the length of a row or a bay is called that nobody measured: one that comes with the kind, or what the others leave, for
/// it alone or for several.
fn unmeasured(furniture: &Furniture, id: FieldId) -> &'static str {
    let bays = |upper: bool| if upper { &furniture.upper } else { &furniture.bays };
    let lengths: Vec<Option<Length>> = match id {
        FieldId::RowHeight(place, _) => {
            let bay = place
                .bay
                .checked_sub(1)
                .and_then(|bay| bays(place.upper).get(bay));
            let rows = bay.iter().flat_map(|bay| &bay.rows);
            rows.map(|row| row.height).collect()
        }
        FieldId::BayWidth(place) => bays(place.upper).iter().map(|bay| bay.width).collect(),
        _ => Vec::new(),
    };
    let place = match id {
        FieldId::RowHeight(_, row) => row,
        FieldId::BayWidth(place) => place.bay,
        _ => 0,
    };
    let own = place
        .checked_sub(1)
        .and_then(|place| lengths.get(place).copied().flatten());
    match (own, lengths.iter().filter(|length| length.is_none()).count()) {
        (Some(_), _) => "usual",
        (None, 0 | 1) => "the rest",
        (None, _) => "shared out",
    }
}

fn placeholder(shown: &Shown, tape: &Tape) -> Option<String> {
    let (length, what) = tape.usual?;
    Some(format!("{} ({what})", shown.app.length(length)))
}

/// What is wrong with a field: its text, or its value among the others.
fn fault(shown: &Shown, id: FieldId) -> Option<String> {
    if let Some(error) = shown.app.fault(id) {
        return Some(error.to_string());
    }
    let mut problems = shown.problems().iter();
    let problem = problems.find(|problem| problem.field() == Some(id))?;
    Some(problem.message(|length| shown.app.length(length)))
}

/// A question about a size that is far from the usual one.
fn doubt(shown: &Shown, id: FieldId) -> Option<String> {
    let field = Piece::field(id).filter(|_| matches!(id, FieldId::Of(_)))?;
    let kind = shown.piece.kind;
    let usual = kind.doubts(field, shown.piece.reading(id)?.length())?;
    let usual = shown.app.length(usual);
    Some(format!(
        "{} of this kind: about {usual}. Is this right?",
        field.label
    ))
}

/// The first of the problems that are about something as a whole, in words.
pub fn error(shown: &Shown, is_about: &dyn Fn(&Problem) -> bool) -> Html {
    let found = shown.problems().iter().find(|problem| is_about(problem));
    let sentence = found.map(|problem| problem.message(|length| shown.app.length(length)));
    sentence.map_or_else(
        Html::default,
        |sentence| html! { <p class="error">{ sentence }</p> },
    )
}
