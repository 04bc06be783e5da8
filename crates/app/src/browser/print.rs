//! Printing.

use wasm_bindgen::prelude::*;

/// Tells when printing begins and when it is over. The page is drawn anew before the browser takes it for the paper.
pub fn on_print(tell: impl Fn(bool) + Clone + 'static) {
    let Some(window) = web_sys::window() else { return };
    for (event, begins) in [("beforeprint", true), ("afterprint", false)] {
        let tell = tell.clone();
        let heard = Closure::<dyn Fn()>::new(move || tell(begins));
        // A window that takes no listener prints the page as it stands.
        let _ = window.add_event_listener_with_callback(event, heard.as_ref().unchecked_ref());
        // The page listens as long as it lives.
        heard.forget();
    }
}

/// Opens the print dialogue of the browser.
pub fn print() {
    if let Some(window) = web_sys::window() {
        // Refused where the page stands in a frame; the menu of the browser still prints it.
        let _ = window.print();
    }
}
