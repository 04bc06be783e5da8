//! Everything that touches the browser besides drawing the page.

pub mod device;
pub mod files;
pub mod keeper;
mod light;
mod print;
pub mod standing;
pub mod store;

pub use light::{light, shine};
pub use print::{on_print, print};

/// A name for a new piece, random enough that two tabs never give the same one.
pub fn new_piece_id() -> workshop::PieceId {
    let random = web_sys::window()
        .and_then(|w| w.crypto().ok())
        .map(|c| c.random_uuid());
    workshop::PieceId(
        random
            .unwrap_or_else(|| format!("p-{}", js_sys::Date::now()))
            .into(),
    )
}

/// Puts the cursor into the element with this name and brings it into view.
pub fn focus(element: &str) {
    use wasm_bindgen::JsCast;
    let found = web_sys::window()
        .and_then(|w| w.document())
        .and_then(|d| d.get_element_by_id(element));
    if let Some(element) = found.and_then(|e| e.dyn_into::<web_sys::HtmlElement>().ok()) {
        // If it cannot be focused the maker still sees it; there is nothing else to do.
        let _ = element.focus();
        // What is typed next takes the place of what stands in a field.
        if let Some(input) = element.dyn_ref::<web_sys::HtmlInputElement>() {
            input.select();
        }
    }
}

/// The same for an element that is there once the page was drawn anew.
pub fn focus_soon(element: String) {
    gloo::timers::callback::Timeout::new(0, move || focus(&element)).forget();
}
