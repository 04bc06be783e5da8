//! A piece that comes in by a link.

use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::spawn_local;
use workshop::out::read_link;
use yew::prelude::*;

use super::Send;
use crate::browser::{device, new_piece_id};
use crate::state::{Action, Message};

/// Looks at the address of the page once the workshop is there, and whenever it changes, for a piece to take in.
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
        // Without a listener a link opens with the next start of the page.
        let _ = window.add_event_listener_with_callback("hashchange", heard.as_ref().unchecked_ref());
        // The page listens as long as it lives.
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
