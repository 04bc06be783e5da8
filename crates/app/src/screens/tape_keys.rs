//! The tape keypad, open during a measurement: the reading, an inch of a tape, digits, and the next measurement.

use geometry::FieldId;
use units::System;
use yew::prelude::*;

use super::tape::{Tape, field, stands_in};
use super::tape_focus::{READING, back, come_from};
use super::{Send, Shown};
use crate::browser::{focus, focus_soon};
use crate::parts::{Icon, icon};
use crate::state::{Action, BACK};
use crate::words;

/// A key: its element suffix, the text it types, its face and its label.
type Key = (&'static str, &'static str, &'static str, &'static str);

/// The eighths of an inch with their element suffix, text, face and label.
const EIGHTHS: [Key; 7] = [
    ("1-8", "1/8", "1/8", "1/8, one eighth"),
    ("1-4", "1/4", "1/4", "1/4, one quarter"),
    ("3-8", "3/8", "3/8", "3/8, three eighths"),
    ("1-2", "1/2", "1/2", "1/2, one half"),
    ("5-8", "5/8", "5/8", "5/8, five eighths"),
    ("3-4", "3/4", "3/4", "3/4, three quarters"),
    ("7-8", "7/8", "7/8", "7/8, seven eighths"),
];

/// Shows the keypad. Empty if there is no current measurement.
pub fn tape_keys(shown: &Shown) -> Html {
    let Some(id) = shown.app.field else {
        return Html::default();
    };
    let is_metric = shown.app.workshop.units == System::Metric;
    let class = classes!("pad", shown.app.keyboard.then_some("folded"));
    html! {
        <section id="tape-keys" {class} aria-label="Tape keypad" data-tape="" onfocusin={come_from}>
            { moves(shown) }
            { reading(shown, id) }
            if !shown.app.keyboard {
                if !is_metric { { inch(shown, id) } }
                { keys(shown, is_metric) }
            } else {
                <div class="keys">{ next(shown) }</div>
            }
        </section>
    }
}

/// Shows the name of the measurement, and the buttons for the one before, the device keyboard and the end.
fn moves(shown: &Shown) -> Html {
    let app = &shown.app;
    let send = &shown.send;
    let before = app.next_field(false);
    let away = {
        let send = send.clone();
        Callback::from(move |_: MouseEvent| back(&send))
    };
    let keyboard = !app.keyboard;
    let swap = {
        let send = send.clone();
        Callback::from(move |_: MouseEvent| {
            send.emit(Action::Keyboard(keyboard));
            focus_soon(READING.into());
        })
    };
    html! {
        <div class="moves">
            <button type="button" id="tape-before" aria-label="Previous measurement" disabled={before.is_none()}
                onclick={go(send, false)}>{ icon(Icon::Back) }</button>
            <button type="button" id="tape-keyboard" aria-pressed={app.keyboard.to_string()}
                aria-label="Device keyboard" onclick={swap}>{ icon(Icon::Keyboard) }</button>
            <button type="button" id="tape-away" class="act" onclick={away}>{ "Done" }</button>
        </div>
    }
}

fn go(send: &Send, on: bool) -> Callback<MouseEvent> {
    let send = send.clone();
    Callback::from(move |_: MouseEvent| {
        send.emit(Action::GoOn(on));
        focus(READING);
    })
}

fn reading(shown: &Shown, id: FieldId) -> Html {
    let furniture = shown.piece.furniture();
    let checked = furniture.checked();
    let shared = checked.map(|piece| piece.shared_lengths()).unwrap_or_default();
    let tape = Tape {
        id,
        label: words::sentence(words::field_label(shown.piece.kind, id)),
        usual: stands_in(&furniture, &shared, id),
        with_hint: true,
    };
    let is_metric = shown.app.workshop.units == System::Metric;
    let nudge = |steps: i32| shown.send.reform(move |_: MouseEvent| Action::Nudge(steps));
    let key = |id: &'static str, sign: &str, label: &str, steps: i32| {
        let step = if is_metric { "1 mm" } else { "1/16" };
        html! {
            <button type="button" {id} aria-label={format!("{step} {label}")} onmousedown={stay}
                onclick={nudge(steps)}>{ sign.to_owned() }<span class={(!is_metric).then_some("fr")}>{ step }</span></button>
        }
    };
    html! {
        <div class="value">
            { field(shown, tape, READING.into()) }
            <div class="nudge">
                { key("tape-less", "\u{2212}", "less", -1) }
                { key("tape-more", "+", "more", 1) }
            </div>
        </div>
    }
}

/// The field keeps the focus when a key is pressed.
fn stay(event: MouseEvent) {
    event.prevent_default();
}

/// Shows an inch of the tape, enlarged. Its eighths are keys, and the marks between them sixteenths.
fn inch(shown: &Shown, id: FieldId) -> Html {
    let inches = shown
        .piece
        .reading(id)
        .map(|reading| reading.length().as_inches());
    let whole = inches.map_or(0.0, f64::floor);
    // The nearest eighth, counted from 0.
    let at = inches.map(|inches| ((inches - whole) * 8.0).round() as usize);
    let mark = |(n, of): (usize, &Key)| {
        let class = match n + 1 {
            4 => "eighth half",
            2 | 6 => "eighth quarter",
            _ => "eighth",
        };
        let is_on = at == Some(n + 1);
        key(shown, *of, classes!(class, is_on.then_some("on")))
    };
    html! {
        <div class="inch" role="group" aria-label="Fractions of an inch">
            <span class="whole" aria-hidden="true">{ format!("{whole:.0}") }</span>
            { for EIGHTHS.iter().enumerate().map(mark) }
            <span class="whole" aria-hidden="true">{ format!("{:.0}", whole + 1.0) }</span>
        </div>
    }
}

/// The faces of the keys that are not digits: delete, another unit, and the decimal sign.
const DELETE: Key = ("back", BACK, "\u{232b}", "Delete one character");
const FEET: Key = ("ft", " ft ", "ft", "ft, feet");
const CENTIMETERS: Key = ("cm", " cm", "cm", "cm, centimeters");
const POINT: Key = ("point", ".", ".", ". point");

fn keys(shown: &Shown, is_metric: bool) -> Html {
    let digit = |digit: &'static str| key(shown, (digit, digit, digit, digit), classes!());
    let sign = |of: Key| key(shown, of, classes!("fn"));
    let guess = shown.send.reform(|_: MouseEvent| Action::Guess);
    html! {
        <div class="keys" role="group" aria-label="Digits">
            { for ["7", "8", "9"].map(digit) }{ sign(DELETE) }
            { for ["4", "5", "6"].map(digit) }{ sign(if is_metric { CENTIMETERS } else { FEET }) }
            { for ["1", "2", "3"].map(digit) }
            <button type="button" id="key-guess" class="fn" onmousedown={stay} onclick={guess}>{ "Guess" }</button>
            { digit("0") }{ sign(POINT) }
            { next(shown) }
        </div>
    }
}

/// Shows the button for the next measurement, or for the end at the last one.
fn next(shown: &Shown) -> Html {
    let word = match shown.app.next_in_group() {
        Some(next) => format!(
            "Next: {}",
            coatings::in_sentence(&words::field_label(shown.piece.kind, next))
        ),
        None => "Done".into(),
    };
    let on = match shown.app.next_in_group() {
        Some(_) => go(&shown.send, true),
        None => {
            let send = shown.send.clone();
            Callback::from(move |_: MouseEvent| back(&send))
        }
    };
    html! { <button type="button" id="tape-next" class="go" onclick={on}>{ word }</button> }
}

fn key(shown: &Shown, (id, text, face, label): Key, class: Classes) -> Html {
    let is_fraction = face.contains('/');
    html! {
        <button type="button" id={format!("key-{id}")} {class} aria-label={label} onmousedown={stay}
            onclick={shown.send.reform(move |_| Action::Key(text))}>
            <span class={is_fraction.then_some("fr")}>{ face }</span>
        </button>
    }
}
