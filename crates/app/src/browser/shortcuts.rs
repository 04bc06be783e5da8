//! Keyboard shortcuts for the whole page.

use wasm_bindgen::prelude::*;
use web_sys::{Event, KeyboardEvent};

/// A keyboard shortcut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shortcut {
    /// Undo the last step.
    Undo,
    /// Redo the last undone step.
    Redo,
    /// Close a screen that opened over a stage.
    Close,
}

/// Calls `tell` for each shortcut. The browser's own undo would restore text in some field of the page,
/// wherever the maker is now. This one undoes the last step in the document.
pub fn on_shortcut(tell: impl Fn(Shortcut) + 'static) {
    let Some(window) = web_sys::window() else { return };
    let heard = Closure::<dyn Fn(Event)>::new(move |event: Event| {
        // Autofill sends events with this name that are not keyboard events.
        let Ok(event) = event.dyn_into::<KeyboardEvent>() else {
            return;
        };
        if event.default_prevented() {
            return;
        }
        let is_held = event.ctrl_key() || event.meta_key();
        if let Some(shortcut) = shortcut(&event.key(), is_held && !event.alt_key(), event.shift_key()) {
            if shortcut != Shortcut::Close {
                event.prevent_default();
            }
            tell(shortcut);
        }
    });
    // Without a listener, the browser handles these keys. The buttons do the same thing.
    let _ = window.add_event_listener_with_callback("keydown", heard.as_ref().unchecked_ref());
    // The listener lives as long as the page.
    heard.forget();
}

/// Returns the meaning of a key pressed with Control or Command. The letter is a capital with Shift, or
/// without it if Caps Lock is on.
fn shortcut(key: &str, is_held: bool, is_shifted: bool) -> Option<Shortcut> {
    match (key, is_shifted) {
        ("Escape", false) if !is_held => Some(Shortcut::Close),
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
        assert_eq!(shortcut("Escape", false, false), Some(Shortcut::Close));
    }

    #[test]
    fn locked_capitals_change_nothing() {
        assert_eq!(shortcut("Z", true, false), Some(Shortcut::Undo));
        assert_eq!(shortcut("z", true, true), Some(Shortcut::Redo));
        assert_eq!(shortcut("Y", true, false), Some(Shortcut::Redo));
    }
}
