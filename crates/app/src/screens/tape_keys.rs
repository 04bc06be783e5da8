//! The tape keypad: the keys for a tape reading, at the bottom of the screen during a measurement. The
//! fractions are arranged along an inch as on a tape.

use geometry::FieldId;
use units::System;
use yew::prelude::*;

use super::tape::{Tape, field, stands_in};
use super::tape_focus::{CHOICES, READING, back, come_from};
use super::{Send, Shown};
use crate::browser::{focus, focus_soon};
use crate::parts::{Icon, icon};
use crate::state::{Action, BACK};
use crate::words;

/// A key: its element suffix, the text it types, its face and its label.
type Key = (&'static str, &'static str, &'static str, &'static str);

const DIGITS: [&str; 10] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0"];

/// A tape may have both scales. The keys next to zero are harmless if touched by mistake.
const INCHES: [Key; 3] = [
    ("point", ".", ".", "point"),
    ("ft", " ft ", "ft", "ft, feet"),
    ("cm", " cm", "cm", "cm, centimetres"),
];

const METRIC: [Key; 4] = [
    ("mm", " mm", "mm", "mm, millimetres"),
    ("cm", " cm", "cm", "cm, centimetres"),
    ("m", " m", "m", "m, metres"),
    ("point", ".", ".", "point"),
];

/// The fractions of an inch in order. Their lines are as long as on a tape.
const INCH: [(Key, &str); 15] = [
    (
        ("1-16", "1/16", "1/16", "1/16, a sixteenth"),
        "key line sixteenth",
    ),
    (("1-8", "1/8", "\u{215b}", "an eighth"), "key line eighth"),
    (
        ("3-16", "3/16", "3/16", "3/16, three sixteenths"),
        "key line sixteenth",
    ),
    (("1-4", "1/4", "\u{bc}", "a quarter"), "key line quarter"),
    (
        ("5-16", "5/16", "5/16", "5/16, five sixteenths"),
        "key line sixteenth",
    ),
    (("3-8", "3/8", "\u{215c}", "three eighths"), "key line eighth"),
    (
        ("7-16", "7/16", "7/16", "7/16, seven sixteenths"),
        "key line sixteenth",
    ),
    (("1-2", "1/2", "\u{bd}", "a half"), "key line half"),
    (
        ("9-16", "9/16", "9/16", "9/16, nine sixteenths"),
        "key line sixteenth",
    ),
    (("5-8", "5/8", "\u{215d}", "five eighths"), "key line eighth"),
    (
        ("11-16", "11/16", "11/16", "11/16, eleven sixteenths"),
        "key line sixteenth",
    ),
    (("3-4", "3/4", "\u{be}", "three quarters"), "key line quarter"),
    (
        ("13-16", "13/16", "13/16", "13/16, thirteen sixteenths"),
        "key line sixteenth",
    ),
    (("7-8", "7/8", "\u{215e}", "seven eighths"), "key line eighth"),
    (
        ("15-16", "15/16", "15/16", "15/16, fifteen sixteenths"),
        "key line sixteenth",
    ),
];

/// Shows the keys and the reading. Empty if there is no current measurement.
pub fn tape_keys(shown: &Shown) -> Html {
    let Some(id) = shown.app.field else {
        return Html::default();
    };
    let is_metric = shown.app.workshop.units == System::Metric;
    let class = classes!("tape-keys", shown.app.keyboard.then_some("folded"));
    html! {
        <section id="tape-keys" {class} aria-label="Tape keys" data-tape="" onfocusin={come_from}>
            { reading(shown, id) }
            { moves(shown) }
            if !shown.app.keyboard {
                <div class="digits" role="group" aria-label="Digits">
                    { for DIGITS.map(|digit| key(shown, (digit, digit, digit, digit), "key")) }
                    { if is_metric { marks(shown, &METRIC) } else { marks(shown, &INCHES) } }
                    { key(shown, ("back", BACK, "\u{232b}", "take back one character"), "key") }
                </div>
                if !is_metric { { inch(shown) } }
            }
        </section>
    }
}

fn marks(shown: &Shown, keys: &[Key]) -> Html {
    keys.iter().map(|of| key(shown, *of, "key")).collect()
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
    field(shown, tape, READING.into())
}

/// Shows the buttons for the next measurement, the previous one, and the end.
fn moves(shown: &Shown) -> Html {
    let app = &shown.app;
    let send = &shown.send;
    let go = |on: bool| {
        let send = send.clone();
        Callback::from(move |_: MouseEvent| {
            send.emit(Action::GoOn(on));
            focus(READING);
        })
    };
    let away = || {
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
    let before = app.next_field(false);
    let (next, on) = match app.next_field(true) {
        _ if app.comes_to_choices() => ("How it is made", to_choices(send)),
        Some(_) => ("Next", go(true)),
        None => ("Done", away()),
    };
    html! {
        <div class="moves">
            <button type="button" id="tape-before" aria-label="The measurement before" disabled={before.is_none()}
                onclick={go(false)}>{ icon(Icon::Back) }</button>
            <button type="button" id="tape-next" class="main" onclick={on}>{ next }{ icon(Icon::On) }</button>
            <button type="button" id="tape-keyboard" aria-pressed={app.keyboard.to_string()}
                aria-label="Keyboard of the device" onclick={swap}>{ icon(Icon::Keyboard) }</button>
            <button type="button" id="tape-away" aria-label="Close: put the tape away"
                onclick={away()}>{ "Close" }</button>
        </div>
    }
}

/// Returns a callback that ends the measurement and moves to the choices of how the piece is built.
fn to_choices(send: &Send) -> Callback<MouseEvent> {
    let send = send.clone();
    Callback::from(move |_: MouseEvent| {
        send.emit(Action::PutTapeAway);
        focus_soon(CHOICES.into());
    })
}

/// Shows an enlarged inch of the tape. Each of its lines is a key.
fn inch(shown: &Shown) -> Html {
    let line = |(of, class): (Key, &'static str)| key(shown, of, class);
    html! { <div class="inch" role="group" aria-label="Fractions of an inch">{ for INCH.map(line) }</div> }
}

fn key(shown: &Shown, (id, text, face, label): Key, class: &'static str) -> Html {
    // The field keeps the focus.
    let stay = |event: MouseEvent| event.prevent_default();
    html! {
        <button type="button" id={format!("key-{id}")} {class} aria-label={label} onmousedown={stay}
            onclick={shown.send.reform(move |_| Action::Key(text))}>{ face }</button>
    }
}
