//! The field of one tape reading.

use geometry::{FieldId, Problem};
use units::{Length, show_length};
use web_sys::HtmlInputElement;
use workshop::Piece;
use yew::prelude::*;

use super::Shown;
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
    let Shown { app, piece, send, .. } = shown;
    let id = tape.id;
    let element = words::field_element(id);
    let fault = fault(shown, id);
    let [hint, error] = ["hint", "error"].map(|end| format!("{element}-{end}"));
    let described = [tape.with_hint.then_some(&hint), fault.is_some().then_some(&error)];
    let described: Vec<&str> = described.into_iter().flatten().map(String::as_str).collect();
    let described = described.join(" ");
    let typed = send.reform(move |event: InputEvent| {
        Act::Type(id, event.target_unchecked_into::<HtmlInputElement>().value())
    });
    let is_guessed = piece.reading(id).is_none();
    let unit = app.workshop.units.tape_unit().sign();
    html! {
        <div key={element.clone()}
            class={classes!("field", fault.is_some().then_some("wrong"), is_guessed.then_some("guessed"))}>
            <label for={element.clone()}>{ &tape.label }<span class="unit">{ format!(" ({unit})") }</span></label>
            if tape.with_hint {
                <span class="hint" id={hint}>{ Piece::field(id).map_or("", |field| field.hint) }</span>
            }
            if let Some(fault) = &fault {
                <span class="error" id={error}><span class="unseen">{ "Error: " }</span>{ fault }</span>
            }
            <input id={element} type="text" inputmode="decimal" autocomplete="off" spellcheck="false"
                value={app.text(id)} placeholder={placeholder(shown, tape)} aria-describedby={described}
                aria-invalid={fault.is_some().then_some("true")} oninput={typed}
                onfocus={send.reform(move |_| Act::Enter(id))} onblur={send.reform(move |_| Act::Leave(id))} />
        </div>
    }
}

fn placeholder(shown: &Shown, tape: &Tape) -> Option<String> {
    let (length, what) = tape.usual?;
    Some(format!(
        "{} ({what})",
        show_length(length, shown.app.workshop.units)
    ))
}

/// What is wrong with a field: its text, or its value among the others.
fn fault(shown: &Shown, id: FieldId) -> Option<String> {
    if let Some(error) = shown.app.fault(id) {
        return Some(error.to_string());
    }
    let mut problems = shown.problems().iter();
    let problem = problems.find(|problem| problem.field() == Some(id))?;
    Some(problem.message(|length| show_length(length, shown.app.workshop.units)))
}

/// The first of the problems that are about something as a whole, in words.
pub fn error(shown: &Shown, is_about: &dyn Fn(&Problem) -> bool) -> Html {
    let system = shown.app.workshop.units;
    let found = shown.problems().iter().find(|problem| is_about(problem));
    let sentence = found.map(|problem| problem.message(|length| show_length(length, system)));
    sentence.map_or_else(
        Html::default,
        |sentence| html! { <p class="error">{ sentence }</p> },
    )
}
