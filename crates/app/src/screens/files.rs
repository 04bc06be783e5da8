//! Saving the workshop to a file, and opening one.

use std::rc::Rc;

use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlInputElement;
use workshop::{Workshop, format};
use yew::prelude::*;

use super::Send;
use crate::browser::{device, device_status, files};
use crate::device_status::Saved;
use crate::parts::button;
use crate::state::{Action, App, Message};
use crate::words;

/// Shows the two buttons.
pub fn files(app: &Rc<App>, send: &Send) -> Html {
    html! {
        <div class="buttons">
            { button("save-file", "Save to a file", save(app, send)) }
            <label class="button" for="open-file">{ "Open a file" }</label>
            <input type="file" id="open-file" class="unseen" accept=".json,application/json" onchange={open(send)} />
        </div>
    }
}

fn save(app: &Rc<App>, send: &Send) -> Callback<MouseEvent> {
    let (app, send) = (app.clone(), send.clone());
    Callback::from(move |_| {
        let (app, send) = (app.clone(), send.clone());
        spawn_local(async move { save_workshop(&app.workshop, &send).await });
    })
}

/// Saves a workshop to a file and reports the result.
pub async fn save_workshop(workshop: &Workshop, send: &Send) {
    let name = files::file_name(&workshop.title, files::WORKSHOP);
    let text = format::save(workshop);
    let saved = match text.len() > format::MAX_BYTES {
        false => device::save(&name, "application/json", &text).await,
        // A file that cannot be opened again is useless.
        true => Err(words::too_large(text.len())),
    };
    if matches!(saved, Ok(Saved::As(_) | Saved::Downloaded(_))) {
        device_status::file_saved();
    }
    tell_saved(send, saved);
}

/// Reports whether a file was saved.
pub fn tell_saved(send: &Send, saved: Result<Saved, String>) {
    let message = match saved {
        Ok(saved) => Message::Done(words::file_saved(&saved)),
        Err(reason) => Message::Plain(reason),
    };
    send.emit(Action::Tell(message));
}

fn open(send: &Send) -> Callback<Event> {
    let send = send.clone();
    Callback::from(move |event: Event| {
        let Some(input) = event.target().and_then(|t| t.dyn_into::<HtmlInputElement>().ok()) else {
            return;
        };
        let Some(file) = input.files().and_then(|files| files.get(0)) else {
            return;
        };
        let send = send.clone();
        spawn_local(async move {
            let text = files::read(file).await;
            // Clear the input so that the same file can be chosen again after it was corrected.
            input.set_value("");
            let loaded = text.and_then(|text| format::load(&text).map_err(|error| error.to_string()));
            match loaded {
                Ok(loaded) => {
                    for notice in loaded.notices {
                        send.emit(Action::Tell(Message::Plain(notice.to_string())));
                    }
                    send.emit(Action::Tell(Message::Opened(Box::new(loaded.workshop))));
                }
                Err(reason) => send.emit(Action::Tell(Message::Plain(reason))),
            }
        });
    })
}
