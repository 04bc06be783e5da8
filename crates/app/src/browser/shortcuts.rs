//! Keys that mean the same on the whole page.

use wasm_bindgen::prelude::*;
use web_sys::{Event, KeyboardEvent};

/// What a key of the whole page means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shortcut {
    /// Take the last step back.
    Undo,
    /// Make it again.
    Redo,
}

/// Tells when such a key is pressed. The browser would take back what was typed last in some field of the page, wherever
/// the maker is by then; here it is the last step of the document.
pub fn on_shortcut(tell: impl Fn(Shortcut) + 'static) {
    let Some(window) = web_sys::window() else { return };
    let heard = Closure::<dyn Fn(Event)>::new(move |event: Event| {
        // Browsers that fill fields in by themselves send events of this name that are of no key.
        let Ok(event) = event.dyn_into::<KeyboardEvent>() else {
            return;
        };
        let is_held = event.ctrl_key() || event.meta_key();
        if let Some(shortcut) = shortcut(&event.key(), is_held && !event.alt_key(), event.shift_key()) {
            event.prevent_default();
            tell(shortcut);
        }
    });
    // A window that takes no listener leaves these keys to the browser; the buttons do the same.
    let _ = window.add_event_listener_with_callback("keydown", heard.as_ref().unchecked_ref());
    // The page listens as long as it lives.
    heard.forget();
}

/// What a key means while the control or the command key is held. The letter is large with the shift key, and without it
/// while capitals are locked.
fn shortcut(key: &str, is_held: bool, is_shifted: bool) -> Option<Shortcut> {
    match (key, is_shifted) {
        ("z" | "Z", false) if is_held => Some(Shortcut::Undo),
        ("z" | "Z", true) | ("y" | "Y", false) if is_held => Some(Shortcut::Redo),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_held_keys_mean_something() {
        assert_eq!(shortcut("z", true, false), Some(Shortcut::Undo));
        assert_eq!(shortcut("Z", true, true), Some(Shortcut::Redo));
        assert_eq!(shortcut("y", true, false), Some(Shortcut::Redo));
        assert_eq!(shortcut("z", false, false), None);
        assert_eq!(shortcut("x", true, false), None);
    }

    #[test]
    fn locked_capitals_change_nothing() {
        assert_eq!(shortcut("Z", true, false), Some(Shortcut::Undo));
        assert_eq!(shortcut("z", true, true), Some(Shortcut::Redo));
        assert_eq!(shortcut("Y", true, false), Some(Shortcut::Redo));
    }
}
