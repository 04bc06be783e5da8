//! The page on this device: whether it works without a network, whether the browser may clear what it keeps, when a file
//! was last saved.
//!
//! The talk with the browser itself stands in `device_status.js`: it is nothing but that, and bound to Rust call by call it puts
//! two kilobytes more on the page. It tells what it heard by a number for the subject, as [`news`] reads it, and a value.
//! - The service worker is named relative to the page, so that the page can lie in any folder of a host. Browsers have
//!   none where the page was served without encryption, other than from this machine; they may also refuse it, as in some
//!   private windows. Then the page stays as it is and needs a network.
//! - A page that a worker answers for came from the device, which is told at once: asking for the worker may take as long
//!   as a bad network takes.
//! - The first worker waits for nobody, so one that waits beside an active one is newer than the page. It waits until the
//!   maker takes it. Another tab may have done that: then this page hears that its worker changed, and is old as well.
//! - For a newer version is asked when the page is looked at again, and each hour while it is looked at.
//! - The time of the last file stands in the browser's `localStorage`. It is no part of the document, and the database
//!   holds nothing else.

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

/// Has the page kept on the device, where the browser can do that, and tells from now on how it stands. The other
/// functions here come after this one.
pub fn start_telling(tell: Callback<Action>) {
    let heard = Closure::<dyn Fn(u8, f64)>::new(move |subject, value| {
        if let Some(news) = news(subject, value) {
            tell.emit(Action::Hear(news));
        }
    });
    // It is called as long as the page lives.
    start(&heard.into_js_value());
}

/// Puts the new version in place of this page, which loads anew, once. What is half typed is lost, so this is only done
/// when the maker asks for it.
pub fn take_new_version() {
    take();
}

/// Asks the browser to clear nothing by itself, and tells what it answers. Some browsers ask the maker in turn, so this
/// is done once there is something to lose.
pub fn ask_to_last() {
    storage("persist");
}

/// Remembers and tells that a file was saved just now.
pub fn file_saved() {
    saved();
}

/// What `device_status.js` tells.
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

/// Whether a workshop holds a piece that did not come with the page.
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
