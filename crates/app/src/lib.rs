//! The page: Yew screens over one pure state.
//!
//! [`state::App`] holds the document and what is open on the screen. Only [`state::App::update`] changes it.
//! Everything else on the screen is derived from it by the other crates. All interaction with the browser is
//! in [`browser`].
//!
//! Invariant: nothing is computed here that a person could want tested without a browser.

#![allow(
    unreachable_pub,
    reason = "the screens are about to be drawn anew; what they share is public to the page"
)]

pub mod browser;
pub mod device_status;
mod parts;
mod screens;
pub mod state;
mod words;

/// Mounts the page in the element with this id and starts it.
pub fn start(element: &str) {
    let root = web_sys::window()
        .and_then(|w| w.document())
        .and_then(|d| d.get_element_by_id(element));
    if let Some(root) = root {
        words::write_numbers_as(browser::device::numerals());
        words::calendar::write_dates_as(browser::device::dates());
        root.set_text_content(None);
        yew::Renderer::<screens::Page>::with_root(root).render();
    }
}
