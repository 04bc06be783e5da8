//! Everything that touches the browser besides drawing the page.

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
    keep_last_piece, keep_last_sheet, last_piece, last_sheet, mark_opening, unfinished, unmark_opening_soon,
};
pub use light::{light, shine};
pub use print::{on_print, print};
pub use shortcuts::{Shortcut, on_shortcut};

/// A name for a new piece.
pub fn new_piece_id() -> workshop::PieceId {
    workshop::PieceId(new_name().into())
}

/// A name for something new, random enough that two tabs never give the same one.
pub fn new_name() -> String {
    let random = web_sys::window()
        .and_then(|w| w.crypto().ok())
        .map(|c| c.random_uuid());
    random.unwrap_or_else(|| format!("p-{}", js_sys::Date::now()))
}

/// The day that it is where the maker is.
pub fn today() -> Day {
    let now = js_sys::Date::new_0();
    let year = i32::try_from(now.get_full_year()).unwrap_or_default();
    Day::from_ymd(year, now.get_month() + 1, now.get_date()).unwrap_or(Day::since_1970(0))
}

/// The minute that it is where the maker is.
pub fn now() -> Moment {
    let now = js_sys::Date::new_0();
    Moment::new(today(), now.get_hours() * 60 + now.get_minutes())
}

/// The minute that it is by universal time.
pub fn utc() -> Moment {
    let minutes = js_sys::Date::now() / 60_000.0;
    Moment::new(Day::since_1970(0), 0).after(minutes as i64)
}

/// Loads the page anew.
pub fn reload() {
    // A browser that does not let it leaves the maker its own button.
    let _ = web_sys::window().map(|window| window.location().reload());
}

/// Goes back to the head of the page's main part, if the page stands below it. Where the maker was led to a field, the page
/// stays there.
pub fn to_head() {
    use wasm_bindgen::JsCast;
    let found = || {
        let window = web_sys::window()?;
        let document = window.document()?;
        let main = document.query_selector("main").ok()??;
        let cursor = document.active_element()?;
        if main.contains(Some(&cursor)) && cursor.matches("input").unwrap_or(false) {
            return None;
        }
        let top = f64::from(main.dyn_into::<web_sys::HtmlElement>().ok()?.offset_top());
        (window.scroll_y().ok()? > top).then(|| window.scroll_to_with_x_and_y(0.0, top))
    };
    found().unwrap_or_default();
}

/// Puts the cursor into the element with this name and brings it into view. Returns whether the cursor is there then.
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

/// The same for an element that is there once the page was drawn anew.
pub fn focus_soon(element: String) {
    gloo::timers::callback::Timeout::new(0, move || {
        focus(&element);
    })
    .forget();
}

/// Marks all that stands in the field with this name, if the cursor is in it: what is typed next takes its place.
pub fn mark_all_in(element: &str) {
    use wasm_bindgen::JsCast;
    let active = web_sys::window().and_then(|w| w.document()?.active_element());
    let input = active.filter(|active| active.id() == element);
    if let Some(input) = input.and_then(|input| input.dyn_into::<web_sys::HtmlInputElement>().ok()) {
        input.select();
    }
}

/// The same once the touch that brought the cursor there is over, which would take the mark away.
pub fn mark_all_soon(element: String) -> yew::Callback<web_sys::FocusEvent> {
    yew::Callback::from(move |_| {
        let element = element.clone();
        gloo::timers::callback::Timeout::new(0, move || mark_all_in(&element)).forget();
    })
}

/// Scrolls as little as it takes until the element with this name is in sight.
pub fn bring_into_sight(element: &str) {
    let found = web_sys::window().and_then(|w| w.document()?.get_element_by_id(element));
    scroll_to(found);
}

/// The same for the open piece in the strip of pieces.
pub fn bring_piece_into_sight() {
    let found =
        web_sys::window().and_then(|w| w.document()?.query_selector("#pieces [aria-current]").ok()?);
    scroll_to(found);
}

fn scroll_to(found: Option<web_sys::Element>) {
    if let Some(element) = found {
        let how = web_sys::ScrollIntoViewOptions::new();
        how.set_block(web_sys::ScrollLogicalPosition::Nearest);
        element.scroll_into_view_with_scroll_into_view_options(&how);
    }
}
