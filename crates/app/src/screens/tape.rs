//! The field of one tape reading.

use geometry::{FieldId, Furniture, Problem, StandIn};
use units::Length;
use web_sys::HtmlInputElement;
use workshop::Piece;
use yew::prelude::*;

use super::tape_focus::{READING, back};
use super::{Send, Shown};
use crate::browser::focus;
use crate::state::{Action, DraftId};
use crate::words;

/// What a field asks.
pub struct Tape {
    /// The measurement.
    pub id: FieldId,
    /// What it is called where it stands.
    pub label: String,
    /// What stands in for it, and where that comes from.
    pub usual: Option<(Length, StandIn)>,
    /// Whether the field itself says where to hold the tape; else something above it does.
    pub with_hint: bool,
}

/// The field with its label, its hint and what is wrong with it.
pub fn tape_field(shown: &Shown, tape: Tape) -> Html {
    let element = words::field_element(tape.id);
    field(shown, tape, element)
}

/// The same in an element of this name; a measurement can stand in two places.
pub fn field(shown: &Shown, tape: Tape, element: String) -> Html {
    let Shown { app, piece, send, .. } = shown;
    let id = tape.id;
    let tape_unit = app.workshop.units.tape_unit();
    let reading = piece.reading(id);
    // A reading that was taken in other units is told in those of the workshop too.
    let here = reading.filter(|reading| reading.unit() != tape_unit);
    let here = here.map_or_else(String::new, |reading| {
        format!(": {}", app.length(reading.length()))
    });
    // The first figure of a size is far from the usual one.
    let is_typed = app.typing == Some(DraftId::Field(id));
    let doubt = doubt(shown, id).filter(|_| tape.with_hint && !is_typed);
    let is_taken = app.field == Some(id);
    let key = element.clone();
    html! {
        <Field {key} {id} {element} label={tape.label}
            unit={format!(" ({}){here}", tape_unit.sign())}
            is_doubt={doubt.is_some()}
            hint={doubt.or_else(|| tape.with_hint.then(|| Piece::field(id).map_or("", |field| field.hint).to_owned()))}
            fault={fault(shown, id)}
            text={app.text_of(&DraftId::Field(id))}
            placeholder={tape.usual.map(|(length, from)| format!("{} ({})", app.length(length), words::stand_in(from)))}
            is_guessed={reading.is_none()}
            {is_taken}
            neighbours={is_taken.then(|| [false, true].map(|on| app.next_field(on)))}
            own_keyboard={app.keyboard}
            send={send.clone()} />
    }
}

/// All that a field shows. It is drawn anew only if something of it changed: a piece has dozens of fields, and a key changes
/// one of them.
#[derive(Properties, PartialEq)]
struct FieldProps {
    id: FieldId,
    element: String,
    label: String,
    /// The unit of the tape, and the reading in that of the workshop if it was taken in another one.
    unit: String,
    /// Where to hold the tape, or the question that stands in its place.
    hint: Option<String>,
    is_doubt: bool,
    fault: Option<String>,
    text: String,
    placeholder: Option<String>,
    is_guessed: bool,
    is_taken: bool,
    /// The measurement before this one and the one after it, while this one is taken.
    neighbours: Option<[Option<FieldId>; 2]>,
    /// Whether the device's own keyboard is used in place of the tape keys.
    own_keyboard: bool,
    send: Send,
}

#[component]
fn Field(props: &FieldProps) -> Html {
    let FieldProps { element, fault, .. } = props;
    let [hint, error] = ["hint", "error"].map(|end| format!("{element}-{end}"));
    let described = [
        props.hint.is_some().then_some(&hint),
        fault.is_some().then_some(&error),
    ];
    let described: Vec<&str> = described.into_iter().flatten().map(String::as_str).collect();
    let described = described.join(" ");
    let class = classes!(
        "field",
        fault.is_some().then_some("wrong"),
        props.is_guessed.then_some("guessed"),
        props.is_taken.then_some("taken")
    );
    html! {
        <div {class} data-tape="">
            <label for={element.clone()}>{ &props.label }<span class="unit">{ &props.unit }</span></label>
            if let Some(text) = &props.hint {
                // A question stands in the place of the hint, so that nothing moves while one types.
                <span class={if props.is_doubt { "hint doubt" } else { "hint" }} id={hint}>{ text }</span>
            }
            if let Some(fault) = fault {
                <span class="error" id={error}><span class="unseen">{ "Error: " }</span>{ fault }</span>
            }
            { input(props, described) }
        </div>
    }
}

fn input(props: &FieldProps, described: String) -> Html {
    let FieldProps {
        id, element, send, ..
    } = props;
    let id = *id;
    // Keys can come faster than the page is drawn: what is typed at the tape keys is of the measurement that is taken then.
    let is_reading = element == READING;
    let typed = send.reform(move |event: InputEvent| {
        let text = event.target_unchecked_into::<HtmlInputElement>().value();
        if is_reading {
            Action::TypeHere(text)
        } else {
            Action::Type(id, text)
        }
    });
    let entered = send.reform(move |event: FocusEvent| {
        event.target_unchecked_into::<HtmlInputElement>().select();
        // What is marked is replaced, by whatever keys.
        if is_reading {
            Action::Marked
        } else {
            Action::Enter(id)
        }
    });
    // The tape keys are on the page; the device's own keyboard would lie over them.
    let inputmode = if props.own_keyboard { "text" } else { "none" };
    html! {
        <input id={element.clone()} type="text" {inputmode} enterkeyhint="next" autocomplete="off" spellcheck="false"
            value={props.text.clone()} placeholder={props.placeholder.clone()} aria-describedby={described}
            aria-invalid={props.fault.is_some().then_some("true")} oninput={typed} onkeydown={keys(props)}
            onfocus={entered} onblur={send.reform(move |_| Action::Leave(id))} />
    }
}

/// Enter goes on to the next measurement, with the shift key back to the one before; Escape puts the tape away and goes back
/// to where the cursor came from.
fn keys(props: &FieldProps) -> Callback<KeyboardEvent> {
    let send = props.send.clone();
    let is_reading = props.element == READING;
    let [before, after] = props.neighbours.unwrap_or_default();
    Callback::from(move |event: KeyboardEvent| match event.key().as_str() {
        "Enter" => {
            event.prevent_default();
            let on = !event.shift_key();
            send.emit(Action::GoOn(on));
            // In the list the next field of the list is gone into; the field of the keys stays where it is, and what it
            // held goes at once.
            match if on { after } else { before } {
                Some(_) if is_reading => {
                    event.target_unchecked_into::<HtmlInputElement>().set_value("");
                }
                next => {
                    focus(&next.map_or("drawing".into(), words::field_element));
                }
            }
        }
        "Escape" if is_reading => back(&send),
        "Escape" => send.emit(Action::PutTapeAway),
        _ => {}
    })
}

/// What stands in for a measurement that nobody took, and where it comes from; `shared` are the lengths that are shared out.
pub fn stands_in(
    furniture: &Furniture,
    shared: &[(FieldId, Length)],
    id: FieldId,
) -> Option<(Length, StandIn)> {
    let rest = shared.iter().find(|(of, _)| *of == id);
    match (rest, id) {
        (Some((_, rest)), _) => Some((*rest, furniture.stand_in(id))),
        (None, FieldId::Of(_)) => Some((furniture.length(Piece::field(id)?), StandIn::Usual)),
        _ => None,
    }
}

/// What is wrong with a field: its text, or its value among the others.
fn fault(shown: &Shown, id: FieldId) -> Option<String> {
    if let Some(error) = shown.app.fault(&DraftId::Field(id)) {
        return Some(error);
    }
    let mut problems = shown.problems().iter();
    let problem = problems.find(|problem| problem.field() == Some(id))?;
    Some(problem.message(|length| shown.app.length(length)))
}

/// A question about a size that is far from the usual one.
fn doubt(shown: &Shown, id: FieldId) -> Option<String> {
    let field = Piece::field(id).filter(|_| matches!(id, FieldId::Of(_)))?;
    let (kind, edition) = (shown.piece.kind, shown.piece.edition);
    let usual = kind.doubts(edition, field, shown.piece.reading(id)?.length())?;
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
