//! The tape readings: one field for each measurement, with the keys that a tape needs.

use geometry::{BackStyle, BaseStyle, FieldId, FrontStyle, LengthField, MAX_COLUMNS, MAX_ROWS};
use units::{System, show_length};
use web_sys::HtmlInputElement;
use workshop::{Edit, Piece, PieceEdit};
use yew::prelude::*;

use super::Shown;
use crate::browser::new_piece_id;
use crate::parts::{Choice, Stepper};
use crate::state::{Act, BACK};
use crate::words;

/// The sheet of measurements.
#[component]
pub fn Measure(shown: &Shown) -> Html {
    let Shown { piece, send, .. } = shown;
    let furniture = piece.furniture();
    let name = send.reform(|event: Event| {
        Act::Change(PieceEdit::Name(
            event.target_unchecked_into::<HtmlInputElement>().value(),
        ))
    });
    let count = send.reform(|count| Act::Change(PieceEdit::Count(count)));
    let rows = send.reform(|rows: u32| Act::Change(PieceEdit::Rows(rows as usize)));
    html! {
        <section aria-label="Measure">
            { pad(shown) }
            <div class="fields">
                { for furniture.fields().into_iter().map(|field| tape_field(shown, field.id(), field)) }
            </div>
            <h3>{ "Drawers, from the top" }</h3>
            <div class="line">
                <span class="label">{ "Rows" }</span>
                <Stepper label="rows of drawers" id="rows" value={piece.rows.len() as u32} limits={(1, MAX_ROWS as u32)} on_change={rows} />
            </div>
            <div class="rows">{ for (1..=piece.rows.len()).map(|row| drawer_row(shown, row)) }</div>
            <h3>{ "How it is built" }</h3>
            { styles(shown) }
            <div class="fields">
                <div class="field">
                    <label for="piece-name">{ "Name of the piece" }</label>
                    <input id="piece-name" type="text" maxlength="120" value={piece.name.clone()} onchange={name} />
                </div>
                <div class="line">
                    <span class="label">{ "How many alike" }</span>
                    <Stepper label="pieces alike" id="count" value={piece.count} limits={(1, 99)} on_change={count} />
                </div>
                { copy_and_remove(shown) }
            </div>
        </section>
    }
}

fn copy_and_remove(shown: &Shown) -> Html {
    let (copied, removed) = (shown.piece.id.clone(), shown.piece.id.clone());
    let copy = shown.send.reform(move |_: MouseEvent| {
        let id = new_piece_id();
        Act::Start(
            Edit::Copy {
                of: copied.clone(),
                id: id.clone(),
            },
            id,
        )
    });
    let remove = shown
        .send
        .reform(move |_: MouseEvent| Act::Edit(Edit::Remove(removed.clone())));
    html! {
        <div class="buttons">
            <button type="button" id="copy-piece" onclick={copy}>{ "Copy" }</button>
            <button type="button" id="remove-piece" onclick={remove}>{ "Remove" }</button>
        </div>
    }
}

fn drawer_row(shown: &Shown, row: usize) -> Html {
    let on_change = shown
        .send
        .reform(move |columns: u32| Act::Change(PieceEdit::Columns(row, columns as usize)));
    let columns = shown.piece.rows.get(row - 1).map_or(1, |row| row.columns) as u32;
    html! {
        <div class="row">
            { tape_field(shown, FieldId::RowHeight(row), &geometry::fields::ROW_HEIGHT) }
            <div class="line">
                <span class="label">{ "Side by side" }</span>
                <Stepper label={format!("drawers in row {row}")} id={format!("columns-{row}")} value={columns}
                    limits={(1, MAX_COLUMNS as u32)} {on_change} />
            </div>
        </div>
    }
}

fn tape_field(shown: &Shown, id: FieldId, field: &LengthField) -> Html {
    let Shown { app, piece, send, .. } = shown;
    let element = words::field_element(id);
    let system = app.workshop.units;
    let fault = fault(shown, id);
    let hint = format!("{element}-hint");
    let error = format!("{element}-error");
    let described = if fault.is_some() {
        format!("{hint} {error}")
    } else {
        hint.clone()
    };
    let typed = send.reform(move |event: InputEvent| {
        Act::Type(id, event.target_unchecked_into::<HtmlInputElement>().value())
    });
    html! {
        <div class={classes!("field", fault.is_some().then_some("wrong"), piece.reading(id).is_none().then_some("guessed"))}>
            <label for={element.clone()}>
                { words::field_label(id) }<span class="unit">{ format!(" ({})", system.tape_unit().sign()) }</span>
            </label>
            <span class="hint" id={hint}>{ field.hint }</span>
            if let Some(fault) = &fault {
                <span class="error" id={error}><span class="unseen">{ "Error: " }</span>{ fault }</span>
            }
            <input id={element} type="text" inputmode="decimal" autocomplete="off" spellcheck="false"
                value={app.text(id)} placeholder={guess(shown, id, field)} aria-describedby={described}
                aria-invalid={fault.is_some().then_some("true")} oninput={typed}
                onfocus={send.reform(move |_| Act::Enter(id))} onblur={send.reform(move |_| Act::Leave(id))} />
        </div>
    }
}

/// What is wrong with a field: its text, or its value among the others.
fn fault(shown: &Shown, id: FieldId) -> Option<String> {
    if let Some(error) = shown.app.fault(id) {
        return Some(error.to_string());
    }
    let system = shown.app.workshop.units;
    let problems = shown.result.as_ref().as_ref().err()?;
    let problem = problems.iter().find(|problem| problem.field() == Some(id))?;
    Some(problem.message(|length| show_length(length, system)))
}

/// The value that stands in for a measurement that was not taken.
fn guess(shown: &Shown, id: FieldId, field: &LengthField) -> String {
    let system = shown.app.workshop.units;
    let furniture = shown.piece.furniture();
    let length = match id {
        FieldId::Of(_) => Some(furniture.length(field)),
        FieldId::RowHeight(row) => furniture
            .row_heights()
            .ok()
            .and_then(|heights| heights.get(row - 1).copied()),
    };
    let what = if matches!(id, FieldId::Of(_)) {
        "usual"
    } else {
        "the rest"
    };
    length
        .map(|length| format!("{} ({what})", show_length(length, system)))
        .unwrap_or_default()
}

fn styles(shown: &Shown) -> Html {
    let Shown { piece, send, .. } = shown;
    let piece: &Piece = piece;
    let fronts = vec![
        (FrontStyle::Overlay, "overlay", "Overlay"),
        (FrontStyle::Inset, "inset", "Inset, flush"),
    ];
    let back = vec![
        (BackStyle::Recessed, "recessed", "Set in"),
        (BackStyle::Flush, "flush", "Flush"),
    ];
    let base = vec![
        (BaseStyle::Floor, "floor", "Floor"),
        (BaseStyle::Plinth, "plinth", "Plinth"),
        (BaseStyle::Legs, "legs", "Square legs"),
    ];
    html! {
        <div class="styles">
            <Choice<FrontStyle> label="Drawer fronts" id="fronts" options={fronts} value={piece.fronts}
                on_choose={send.reform(|fronts| Act::Change(PieceEdit::Fronts(fronts)))} />
            <Choice<BackStyle> label="Back panel" id="back" options={back} value={piece.back}
                on_choose={send.reform(|back| Act::Change(PieceEdit::Back(back)))} />
            <Choice<BaseStyle> label="Stands on" id="base" options={base} value={piece.base}
                on_choose={send.reform(|base| Act::Change(PieceEdit::Base(base)))} />
        </div>
    }
}

/// The keys that a tape needs and a number keypad lacks. They write into the field that was touched last.
fn pad(shown: &Shown) -> Html {
    let keys: &[(&'static str, &'static str, &'static str)] = match shown.app.workshop.units {
        System::UsCustomary => &[
            ("1-8", "1/8", "\u{215b}"),
            ("1-4", "1/4", "\u{bc}"),
            ("3-8", "3/8", "\u{215c}"),
            ("1-2", "1/2", "\u{bd}"),
            ("5-8", "5/8", "\u{215d}"),
            ("3-4", "3/4", "\u{be}"),
            ("7-8", "7/8", "\u{215e}"),
            ("1-16", "1/16", "1/16"),
            ("ft", " ft ", "ft"),
        ],
        System::Metric => &[("mm", " mm", "mm"), ("cm", " cm", "cm"), ("m", " m", "m")],
    };
    let field = shown.app.field;
    let key = |&(id, text, face): &(&'static str, &'static str, &'static str)| {
        let act = Act::Pad(text);
        html! { { pad_key(shown, id, act, face, text.trim()) } }
    };
    let into = field.map_or("Touch a field, then a key".into(), |field| {
        format!("Into {}", words::field_label(field).to_lowercase())
    });
    html! {
        <div class="pad" role="group" aria-label="Tape keys">
            <span class="label">{ into }</span>
            <div class="buttons">
                { for keys.iter().map(key) }
                { pad_key(shown, "back", Act::Pad(BACK), "\u{232b}", "take back one character") }
            </div>
        </div>
    }
}

fn pad_key(shown: &Shown, id: &'static str, act: Act, face: &'static str, label: &str) -> Html {
    // The field keeps the cursor, so that the keypad of a tablet stays open.
    let stay = |event: PointerEvent| event.prevent_default();
    html! {
        <button type="button" id={format!("pad-{id}")} aria-label={label.to_owned()} disabled={shown.app.field.is_none()}
            onpointerdown={stay} onmousedown={|event: MouseEvent| event.prevent_default()}
            onclick={shown.send.reform(move |_| act.clone())}>{ face }</button>
    }
}
