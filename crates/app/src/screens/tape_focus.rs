//! The focus when a measurement starts and ends.

use std::cell::RefCell;

use gloo::timers::callback::Timeout;
use wasm_bindgen::JsCast;
use web_sys::Element;
use yew::prelude::*;

use super::Send;
use crate::browser::{focus, focus_first};
use crate::state::Action;

/// The element id of the reading on the keypad.
pub const READING: &str = "tape-reading";

thread_local! {
    // The previous focus belongs to the browser's document and not to the state, because no screen shows it.
    /// The element that had the focus before the keypad. Empty if there was none.
    static CAME_FROM: RefCell<String> = const { RefCell::new(String::new()) };
}

/// Focuses the reading on the keypad after the next update, or the field in the list where there is no keypad.
pub fn focus_measurement_soon() {
    Timeout::new(0, || {
        if !focus(READING) {
            focus_first(".field.taken input");
        }
    })
    .forget();
}

/// Records the previous focus when it moves to the keypad or its reading. Moves between keys are ignored.
pub fn come_from(event: FocusEvent) {
    let from = event
        .related_target()
        .and_then(|from| from.dyn_into::<Element>().ok());
    let is_key = |from: &Element| from.closest("#tape-keys").is_ok_and(|keys| keys.is_some());
    if !from.as_ref().is_some_and(is_key) {
        CAME_FROM.set(from.map(|from| from.id()).unwrap_or_default());
    }
}

/// Ends the measurement and restores the focus, or focuses the drawing if the previous element no longer
/// exists. Otherwise the focus would move to the top of the page.
pub fn back(send: &Send) {
    let from = CAME_FROM.take();
    if !focus(&from) {
        focus("drawing");
    }
    // Send this last because a measurement in the list starts again when it gets the focus.
    send.emit(Action::PutTapeAway);
}
