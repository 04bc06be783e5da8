//! Where the cursor goes as the tape comes out and is put away.

use std::cell::RefCell;

use wasm_bindgen::JsCast;
use web_sys::Element;
use yew::prelude::*;

use super::Send;
use crate::browser::focus;
use crate::state::Action;

/// The element of the reading among the keys.
pub const READING: &str = "tape-reading";

/// The element of the choices that follow the measurements.
pub const CHOICES: &str = "made";

thread_local! {
    // Where the cursor was is a fact of the document in the browser, not of the state: no screen shows it.
    /// The element that the cursor was in before it came to the keys; empty where it was in none.
    static CAME_FROM: RefCell<String> = const { RefCell::new(String::new()) };
}

/// Notes where the cursor comes from as it goes to the keys or their reading. From key to key it comes from nowhere new.
pub fn come_from(event: FocusEvent) {
    let from = event
        .related_target()
        .and_then(|from| from.dyn_into::<Element>().ok());
    let is_key = |from: &Element| from.closest("#tape-keys").is_ok_and(|keys| keys.is_some());
    if !from.as_ref().is_some_and(is_key) {
        CAME_FROM.set(from.map(|from| from.id()).unwrap_or_default());
    }
}

/// Puts the tape away; the cursor goes back to where it came from, or to the drawing if that is not there any more. Otherwise
/// it would be at the head of the page.
pub fn back(send: &Send) {
    let from = CAME_FROM.take();
    if !focus(&from) {
        focus("drawing");
    }
    // A measurement of the list takes the tape out again as the cursor comes there.
    send.emit(Action::PutTapeAway);
}
