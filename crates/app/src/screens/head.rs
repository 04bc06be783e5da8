//! The head of the page: the name, how the document is kept, units, undo, and files.

use std::rc::Rc;

use units::System;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlInputElement;
use workshop::{Edit, format};
use yew::prelude::*;

use super::Send;
use crate::browser::files;
use crate::parts::choice;
use crate::state::{Act, App, Keeping, Message};

/// The head of the page.
pub fn head(app: &Rc<App>, send: &Send) -> Html {
    let units = [
        (System::UsCustomary, "us", "in, oz"),
        (System::Metric, "metric", "mm, mL"),
    ];
    let act = |act: Act| {
        let send = send.clone();
        move |_: MouseEvent| send.emit(act.clone())
    };
    html! {
        <header class="head">
            <h1>{ "Coatwright" }</h1>
            { keeping(&app.keeping) }
            <div class="tools">
                <button type="button" id="undo" disabled={!app.can_undo()} onclick={act(Act::Undo)}>{ "Undo" }</button>
                <button type="button" id="redo" disabled={!app.can_redo()} onclick={act(Act::Redo)}>{ "Redo" }</button>
                { choice("Units", "units", &units, app.workshop.units,
                    send.reform(|units| Act::Edit(Edit::Units(units)))) }
                <button type="button" id="save-file" onclick={save(app, send)}>{ "Save to a file" }</button>
                <label class="button" for="open-file">{ "Open a file" }</label>
                <input type="file" id="open-file" class="unseen" accept=".json,application/json"
                    onchange={open(send)} />
            </div>
        </header>
    }
}

fn keeping(keeping: &Keeping) -> Html {
    let (state, words) = match keeping {
        Keeping::Opening => ("opening", "Opening\u{2026}".into()),
        Keeping::Writing => ("writing", "Keeping\u{2026}".into()),
        Keeping::Kept => ("kept", "Kept on this device".into()),
        Keeping::Failed(reason) => ("failed", format!("Not kept: {reason}. Save to a file now.")),
    };
    html! { <p id="keeping" role="status" data-state={state}>{ words }</p> }
}

fn save(app: &Rc<App>, send: &Send) -> Callback<MouseEvent> {
    let (app, send) = (app.clone(), send.clone());
    Callback::from(move |_| {
        let workshop = &app.workshop;
        if let Err(reason) = files::save(&files::file_name(&workshop.title), &format::save(workshop)) {
            send.emit(Act::Tell(Message::Plain(reason)));
        }
    })
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
            // Emptied, so that the same file can be chosen once more after it was mended.
            input.set_value("");
            let loaded = text.and_then(|text| format::load(&text).map_err(|error| error.to_string()));
            match loaded {
                Ok(loaded) => {
                    for notice in loaded.notices {
                        send.emit(Act::Tell(Message::Plain(notice.to_string())));
                    }
                    send.emit(Act::Tell(Message::Opened(loaded.workshop)));
                }
                Err(reason) => send.emit(Act::Tell(Message::Plain(reason))),
            }
        });
    })
}
