//! Printing.

use wasm_bindgen::prelude::*;

/// Calls `tell` when printing starts and ends. The page is updated before the browser captures it.
pub fn on_print(tell: impl Fn(bool) + Clone + 'static) {
    let Some(window) = web_sys::window() else { return };
    for (event, begins) in [("beforeprint", true), ("afterprint", false)] {
        let tell = tell.clone();
        let heard = Closure::<dyn Fn()>::new(move || tell(begins));
        // Without a listener, the page prints as it is.
        let _ = window.add_event_listener_with_callback(event, heard.as_ref().unchecked_ref());
        // The listener lives as long as the page.
        heard.forget();
    }
}

/// Opens the browser's print dialog.
pub fn print() {
    if let Some(window) = web_sys::window() {
        // The browser refuses this inside a frame, but its menu can still print.
        let _ = window.print();
    }
}
