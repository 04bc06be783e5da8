//! The page on this device: whether it works offline, whether the browser may clear its data, and when a file
//! was last saved.
//!
//! `device_status.js` talks to the browser. Binding each call to Rust would make the page two kilobytes
//! larger. It reports events as a number for the subject, which [`news`] decodes, and a value.
//! - The URL of the service worker is relative, so that the page can be in any folder of a host. Browsers
//!   only support service workers over encrypted connections or on the local machine. They may also refuse
//!   them, for example in some private windows. In that case, the page needs a network.
//! - If a worker controls the page, the page came from the device. This is reported at once because asking
//!   for the worker can take as long as a slow network.
//! - The first worker does not wait, so a worker that waits beside an active one is newer than the page. It
//!   waits until the maker accepts it. If another tab accepts it, this page is notified that its worker
//!   changed, and is outdated too.
//! - The page checks for a newer version when it becomes visible, and every hour while it is visible.
//! - The time of the last file is stored in `localStorage`. It is not part of the document, and the database
//!   only holds the document.

use wasm_bindgen::prelude::*;
use workshop::{Workshop, invented_workshop};
use yew::Callback;

use crate::device_status::{News, Offline};
use crate::state::Action;

#[wasm_bindgen(module = "/src/browser/device_status.js")]
extern "C" {
    fn start(tell: &JsValue);
    fn take();
    fn storage(question: &str);
    fn saved();
}

/// Starts the service worker if the browser supports it, and reports status changes from now on. Call this
/// before the other functions here.
pub fn start_telling(tell: Callback<Action>) {
    let heard = Closure::<dyn Fn(u8, f64)>::new(move |subject, value| {
        if let Some(news) = news(subject, value) {
            tell.emit(Action::Hear(news));
        }
    });
    // The callback lives as long as the page.
    start(&heard.into_js_value());
}

/// Replaces this page with the new version and reloads it once. Unfinished typing is lost, so only do this
/// when the maker asks.
pub fn take_new_version() {
    take();
}

/// Asks the browser not to clear the data, and reports the answer. Some browsers then ask the maker, so do
/// this only when there is something to lose.
pub fn ask_to_last() {
    storage("persist");
}

/// Stores and reports that a file was saved just now.
pub fn file_saved() {
    saved();
}

/// Decodes an event from `device_status.js`.
fn news(subject: u8, value: f64) -> Option<News> {
    match subject {
        0 => Some(News::Offline(Offline::Ready)),
        1 => Some(News::Offline(Offline::NewVersion)),
        2 => Some(News::Lasting(value > 0.0)),
        3 => Some(News::Taken(value)),
        4 => Some(News::Saved(value)),
        _ => None,
    }
}

/// Returns true if a workshop has a piece that is not one of the samples.
pub fn has_own_piece(workshop: &Workshop) -> bool {
    let invented = invented_workshop();
    workshop
        .pieces
        .iter()
        .any(|piece| invented.piece(&piece.id).is_none())
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::Kind;
    use workshop::{Edit, PieceId};

    #[test]
    fn the_invented_workshop_is_nothing_to_lose() {
        let invented = invented_workshop();
        assert!(!has_own_piece(&Workshop::default()) && !has_own_piece(&invented));
        let id = PieceId("own".into());
        let kind = Kind::Nightstand;
        let with_own = invented.apply(Edit::Add { id, kind }).unwrap();
        assert!(has_own_piece(&with_own));
    }

    #[test]
    fn what_the_script_tells_is_understood() {
        assert_eq!(news(1, 0.0), Some(News::Offline(Offline::NewVersion)));
        assert_eq!(
            (news(2, 1.0), news(2, 0.0)),
            (Some(News::Lasting(true)), Some(News::Lasting(false)))
        );
        assert_eq!(news(4, 7.0), Some(News::Saved(7.0)));
        assert_eq!(news(5, 0.0), None);
    }
}
