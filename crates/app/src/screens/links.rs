//! Importing a piece from a link.

use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::spawn_local;
use workshop::out::read_link;
use yew::prelude::*;

use super::Send;
use crate::browser::{device, new_piece_id};
use crate::state::{Action, Message};

/// Checks the page address for a piece to import, after the workshop was loaded and whenever the address
/// changes.
#[hook]
pub fn use_links(send: &Send, is_opening: bool) {
    let send = send.clone();
    use_effect_with(is_opening, move |is_opening| {
        if *is_opening {
            return;
        }
        look(send.clone());
        let Some(window) = web_sys::window() else { return };
        let heard = Closure::<dyn Fn()>::new(move || look(send.clone()));
        // Without the listener, the link opens at the next start of the page.
        let _ = window.add_event_listener_with_callback("hashchange", heard.as_ref().unchecked_ref());
        // The listener lives as long as the page.
        heard.forget();
    });
}

fn look(send: Send) {
    spawn_local(async move {
        let Some(text) = device::linked().await else {
            return;
        };
        match text.and_then(|text| read_link(&text, new_piece_id())) {
            Ok(loaded) => {
                for notice in loaded.notices {
                    send.emit(Action::Tell(Message::Plain(notice.to_string())));
                }
                send.emit(Action::Tell(Message::Opened(Box::new(loaded.workshop))));
            }
            Err(error) => send.emit(Action::Tell(Message::Plain(error.to_string()))),
        }
    });
}
