//! The keys that a tape needs and a number keypad lacks. They write into the field that was touched last.

use units::System;
use yew::prelude::*;

use super::Shown;
use crate::state::{Act, BACK};
use crate::words;

/// A key: the end of its element's name, what it writes, what stands on it.
type Key = (&'static str, &'static str, &'static str);

const INCHES: &[Key] = &[
    ("1-8", "1/8", "\u{215b}"),
    ("1-4", "1/4", "\u{bc}"),
    ("3-8", "3/8", "\u{215c}"),
    ("1-2", "1/2", "\u{bd}"),
    ("5-8", "5/8", "\u{215d}"),
    ("3-4", "3/4", "\u{be}"),
    ("7-8", "7/8", "\u{215e}"),
    ("1-16", "1/16", "1/16"),
    ("ft", " ft ", "ft"),
];

const MILLIMETRES: &[Key] = &[("mm", " mm", "mm"), ("cm", " cm", "cm"), ("m", " m", "m")];

/// The tape pad.
pub fn pad(shown: &Shown) -> Html {
    let keys = match shown.app.workshop.units {
        System::UsCustomary => INCHES,
        System::Metric => MILLIMETRES,
    };
    let key = |&(id, text, face): &Key| pad_key(shown, id, text, face, text.trim());
    let into = shown
        .app
        .field
        .map_or("Touch a field, then a key".into(), |field| {
            format!(
                "Into {}",
                words::field_label(shown.piece.kind, field).to_ascii_lowercase()
            )
        });
    html! {
        <div class="pad" role="group" aria-label="Tape keys">
            <span class="label">{ into }</span>
            <div class="buttons">
                { for keys.iter().map(key) }
                { pad_key(shown, "back", BACK, "\u{232b}", "take back one character") }
            </div>
        </div>
    }
}

fn pad_key(
    shown: &Shown,
    id: &'static str,
    text: &'static str,
    face: &'static str,
    label: &'static str,
) -> Html {
    // The field keeps the cursor, so that the keypad of a tablet stays open.
    let stay = |event: PointerEvent| event.prevent_default();
    html! {
        <button type="button" id={format!("pad-{id}")} aria-label={label} disabled={shown.app.field.is_none()}
            onpointerdown={stay} onmousedown={|event: MouseEvent| event.prevent_default()}
            onclick={shown.send.reform(move |_| Act::Pad(text))}>{ face }</button>
    }
}
