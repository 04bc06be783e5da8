//! The field of a tape reading.

use geometry::{FieldId, Furniture, Problem, StandIn};
use units::Length;
use web_sys::HtmlInputElement;
use workshop::Piece;
use yew::prelude::*;

use super::tape_focus::{READING, back};
use super::{Send, Shown};
use crate::browser::focus_soon;
use crate::state::{Action, DraftId};
use crate::words;

/// The inputs of a field.
pub struct Tape {
    /// The measurement.
    pub id: FieldId,
    /// The label.
    pub label: String,
    /// The default, and its origin.
    pub usual: Option<(Length, StandIn)>,
    /// True if the field itself shows where to hold the tape. Otherwise something above it does.
    pub with_hint: bool,
}

/// Shows the field with its label, hint and error.
pub fn tape_field(shown: &Shown, tape: Tape) -> Html {
    let element = words::field_element(tape.id);
    field(shown, tape, element)
}

/// Shows the field with another element id. A measurement can appear in two places.
pub fn field(shown: &Shown, tape: Tape, element: String) -> Html {
    let Shown { app, piece, send, .. } = shown;
    let id = tape.id;
    let tape_unit = app.workshop.units.tape_unit();
    let reading = piece.reading(id);
    // A reading in another unit system is also shown in that of the workshop.
    let here = reading.filter(|reading| reading.unit() != tape_unit);
    let here = here.map_or_else(String::new, |reading| {
        format!(": {}", app.length(reading.length()))
    });
    // The first digit of a size is always far from the usual size.
    let is_typed = app.typing == Some(DraftId::Field(id));
    let doubt = doubt(shown, id).filter(|_| tape.with_hint && !is_typed);
    let is_taken = app.field == Some(id);
    let key = element.clone();
    html! {
        <Field {key} {id} {element} label={tape.label}
            unit={format!(" ({}){here}", tape_unit.sign())}
            is_doubt={doubt.is_some()}
            hint={doubt.or_else(|| tape.with_hint.then(|| words::where_to_hold(piece, id).to_owned()))}
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

/// The properties of a field. It is only redrawn if one of them changes, because a piece has dozens of fields
/// and a key changes a single one.
#[derive(Properties, PartialEq)]
struct FieldProps {
    id: FieldId,
    element: String,
    label: String,
    /// The unit of the tape, and the reading in the workshop's unit system if it was taken in another one.
    unit: String,
    /// Where to hold the tape, or the question that replaces it.
    hint: Option<String>,
    is_doubt: bool,
    fault: Option<String>,
    text: String,
    placeholder: Option<String>,
    is_guessed: bool,
    is_taken: bool,
    /// The previous and the next measurement, if this one is current.
    neighbours: Option<[Option<FieldId>; 2]>,
    /// True if the device keyboard is used instead of the tape keypad.
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
                // A question replaces the hint, so that nothing moves during typing.
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
    // Keys can be pressed faster than the page updates. Text from the keypad belongs to the measurement that
    // is current at that moment.
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
        // Any key replaces the selection.
        if is_reading {
            Action::Marked
        } else {
            Action::Enter(id)
        }
    });
    // The tape keypad is part of the page. The device keyboard would cover it.
    let inputmode = if props.own_keyboard { "text" } else { "none" };
    html! {
        <input id={element.clone()} type="text" {inputmode} enterkeyhint="next" autocomplete="off" spellcheck="false"
            value={props.text.clone()} placeholder={props.placeholder.clone()} aria-describedby={described}
            aria-invalid={props.fault.is_some().then_some("true")} oninput={typed} onkeydown={keys(props)}
            onfocus={entered} onblur={send.reform(move |_| Action::Leave(id))} />
    }
}

/// Returns the key handler. Enter moves to the next measurement, and Shift+Enter to the previous one. Escape
/// ends the measurement and restores the focus.
fn keys(props: &FieldProps) -> Callback<KeyboardEvent> {
    let send = props.send.clone();
    let is_reading = props.element == READING;
    let [before, after] = props.neighbours.unwrap_or_default();
    Callback::from(move |event: KeyboardEvent| match event.key().as_str() {
        "Enter" => {
            event.prevent_default();
            let on = !event.shift_key();
            send.emit(Action::GoOn(on));
            // In the list, the next field gets the focus. The keypad's field stays, and its text is cleared
            // at once.
            match if on { after } else { before } {
                Some(_) if is_reading => {
                    event.target_unchecked_into::<HtmlInputElement>().set_value("");
                }
                // The field may only be there after the update.
                next => focus_soon(next.map_or("drawing".into(), words::field_element)),
            }
        }
        // Escape ends the measurement only, and leaves the screen open.
        "Escape" => {
            event.prevent_default();
            match is_reading {
                true => back(&send),
                false => send.emit(Action::PutTapeAway),
            }
        }
        _ => {}
    })
}

/// Returns the default of a missing measurement, and its origin. `shared` holds the lengths that divide the
/// remaining space.
pub fn stands_in(
    furniture: &Furniture,
    shared: &[(FieldId, Length)],
    id: FieldId,
) -> Option<(Length, StandIn)> {
    let rest = shared.iter().find(|(of, _)| *of == id);
    match (rest, id) {
        (Some((_, rest)), _) => Some((*rest, furniture.stand_in(id))),
        (None, FieldId::Of(_)) => {
            let field = Piece::field(id)?;
            Some((
                furniture.length(field) + furniture.beyond_case(field),
                StandIn::Usual,
            ))
        }
        _ => None,
    }
}

/// Returns the error of a field: its text is refused, or its value does not fit the others.
fn fault(shown: &Shown, id: FieldId) -> Option<String> {
    if let Some(error) = shown.app.fault(&DraftId::Field(id)) {
        return Some(error);
    }
    let mut problems = shown.problems().iter();
    let problem = problems.find(|problem| problem.field() == Some(id))?;
    Some(problem.message(|length| shown.app.length(length)))
}

/// Returns a question if a size is far from the usual one.
fn doubt(shown: &Shown, id: FieldId) -> Option<String> {
    let field = Piece::field(id).filter(|_| matches!(id, FieldId::Of(_)))?;
    let (kind, edition) = (shown.piece.kind, shown.piece.edition);
    let usual = kind.doubts(edition, field, shown.piece.reading(id)?.length())?;
    let usual = shown.app.length(usual);
    Some(format!("Most are about {usual}. Is this right?"))
}

/// Shows the first of the problems that concern something as a whole.
pub fn error(shown: &Shown, is_about: &dyn Fn(&Problem) -> bool) -> Html {
    let found = shown.problems().iter().find(|problem| is_about(problem));
    let sentence = found.map(|problem| problem.message(|length| shown.app.length(length)));
    sentence.map_or_else(
        Html::default,
        |sentence| html! { <p class="error">{ sentence }</p> },
    )
}
