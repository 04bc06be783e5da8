//! All interaction with the browser except drawing the page.

pub mod device;
pub mod device_status;
pub mod files;
mod last_place;
mod light;
mod print;
pub mod saver;
mod shortcuts;
pub mod store;

use timetable::Moment;
use units::Day;

pub use last_place::{
    keep_last_piece, keep_last_screen, last_piece, last_screen, mark_opening, unfinished, unmark_opening_soon,
};
pub use light::{light, shine};
pub use print::{on_print, print};
pub use shortcuts::{Shortcut, on_shortcut};

/// Returns an id for a new piece.
pub fn new_piece_id() -> workshop::PieceId {
    workshop::PieceId(new_name().into())
}

/// Returns a random id that is unique across tabs.
pub fn new_name() -> String {
    let random = web_sys::window()
        .and_then(|w| w.crypto().ok())
        .map(|c| c.random_uuid());
    random.unwrap_or_else(|| format!("p-{}", js_sys::Date::now()))
}

/// Returns the local date.
pub fn today() -> Day {
    let now = js_sys::Date::new_0();
    let year = i32::try_from(now.get_full_year()).unwrap_or_default();
    Day::from_ymd(year, now.get_month() + 1, now.get_date()).unwrap_or(Day::since_1970(0))
}

/// Returns the local time, to the minute.
pub fn now() -> Moment {
    let now = js_sys::Date::new_0();
    Moment::new(today(), now.get_hours() * 60 + now.get_minutes())
}

/// Returns the UTC time, to the minute.
pub fn utc() -> Moment {
    let minutes = js_sys::Date::now() / 60_000.0;
    Moment::new(Day::since_1970(0), 0).after(minutes as i64)
}

/// Reloads the page.
pub fn reload() {
    // If the browser refuses, the maker can still use its reload button.
    let _ = web_sys::window().map(|window| window.location().reload());
}

/// Scrolls to the top of the page, unless a field of the main part was just focused.
pub fn to_head() {
    let found = || {
        let window = web_sys::window()?;
        let document = window.document()?;
        let main = document.query_selector("main").ok()??;
        let cursor = document.active_element()?;
        if main.contains(Some(&cursor)) && cursor.matches("input").unwrap_or(false) {
            return None;
        }
        window.scroll_to_with_x_and_y(0.0, 0.0);
        Some(())
    };
    found().unwrap_or_default();
}

/// Focuses the element with this id and scrolls it into view. Returns true if it has the focus.
pub fn focus(element: &str) -> bool {
    use wasm_bindgen::JsCast;
    let found = || {
        let document = web_sys::window()?.document()?;
        let found = document.get_element_by_id(element)?;
        found.dyn_into::<web_sys::HtmlElement>().ok()?.focus().ok()?;
        Some(document.active_element()?.id() == element)
    };
    found().unwrap_or_default()
}

/// Focuses the first element that a selector finds, if there is one.
pub fn focus_first(selector: &str) {
    use wasm_bindgen::JsCast;
    let found = || web_sys::window()?.document()?.query_selector(selector).ok()?;
    if let Some(element) = found().and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
        // An element that cannot take the focus leaves it where it is.
        let _ = element.focus();
    }
}

/// Focuses an element that will exist after the next update.
pub fn focus_soon(element: String) {
    gloo::timers::callback::Timeout::new(0, move || {
        focus(&element);
    })
    .forget();
}

/// Selects the text of the field with this id if it has the focus, so that typing replaces it.
pub fn mark_all_in(element: &str) {
    use wasm_bindgen::JsCast;
    let active = web_sys::window().and_then(|w| w.document()?.active_element());
    let input = active.filter(|active| active.id() == element);
    if let Some(input) = input.and_then(|input| input.dyn_into::<web_sys::HtmlInputElement>().ok()) {
        input.select();
    }
}

/// Selects the text of a field after the touch that focused it has ended, because the touch would clear the
/// selection.
pub fn mark_all_soon(element: String) -> yew::Callback<web_sys::FocusEvent> {
    yew::Callback::from(move |_| {
        let element = element.clone();
        gloo::timers::callback::Timeout::new(0, move || mark_all_in(&element)).forget();
    })
}

/// Scrolls as little as necessary to make the element with this id visible.
pub fn bring_into_sight(element: &str) {
    let found = web_sys::window().and_then(|w| w.document()?.get_element_by_id(element));
    if let Some(element) = found {
        let how = web_sys::ScrollIntoViewOptions::new();
        how.set_block(web_sys::ScrollLogicalPosition::Nearest);
        element.scroll_into_view_with_scroll_into_view_options(&how);
    }
}
