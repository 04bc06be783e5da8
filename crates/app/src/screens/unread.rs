//! The page while the saved data could not be read, or not completely.

use std::rc::Rc;

use wasm_bindgen_futures::spawn_local;
use workshop::records::Unread;
use yew::prelude::*;

use super::Send;
use super::files::save_workshop;
use crate::browser::{self, saver::Saver};
use crate::parts::button;
use crate::state::{Action, App, Load};

/// The maximum number of errors listed one by one.
const TOLD: usize = 6;

/// Shows the reason in place of the page while there is nothing to show.
pub fn instead(app: &App, send: &Send, saver: &Saver) -> Html {
    let (title, words, way) = match &app.load {
        Load::Failed(reason) => (
            "Your saved work could not be read",
            format!("Nothing was changed. Reason: {reason}."),
            try_again(saver),
        ),
        Load::Slow => (
            "Your saved work doesn\u{2019}t open",
            "The browser isn\u{2019}t answering. Close other tabs of this page, and this one opens.".into(),
            button("reload", "Reload", Callback::from(|_| browser::reload())),
        ),
        _ => {
            return html! { <p class="opening">{ "Opening\u{2026}" }</p> };
        }
    };
    html! {
        <main class="room opening">
            <section role="alert" aria-labelledby="unread-title">
                <h2 id="unread-title">{ title }</h2>
                <p>{ words }</p>
                <div class="buttons">
                    { way }
                    { button("go-on-unsaved", "Continue without saving", send.reform(|_| Action::GoOnUnsaved)) }
                </div>
            </section>
        </main>
    }
}

fn try_again(saver: &Saver) -> Html {
    let saver = saver.clone();
    button(
        "try-again",
        "Try again",
        Callback::from(move |_| saver.try_again()),
    )
}

/// Shows the notice above the page while nothing is saved.
pub fn notice(app: &Rc<App>, send: &Send, saver: &Saver) -> Html {
    let (words, faults) = match &app.load {
        Load::Whole => return Html::default(),
        Load::Partly(unread) => (
            "Some of your saved work can\u{2019}t be read. Nothing is written over it until you choose.",
            Some(unread),
        ),
        _ => (
            "Your saved work could not be read. Changes you make now aren\u{2019}t saved.",
            None,
        ),
    };
    html! {
        <section id="unread" class="notice" role="alert" aria-label="Not saved">
            <p>{ words }</p>
            if let Some(unread) = faults { { told(unread) } }
            <div class="buttons">
                { try_again(saver) }
                if let Some(unread) = faults {
                    { button("save-unread", "Save everything to a file", save(app, send, unread)) }
                    { leave_out(saver) }
                }
            </div>
        </section>
    }
}

fn told(unread: &Unread) -> Html {
    let faults = unread.faults.iter().take(TOLD);
    let more = unread.faults.len().saturating_sub(TOLD);
    html! {
        <ul>
            { for faults.map(|fault| html! { <li>{ fault.to_string() }</li> }) }
            if more > 0 { <li>{ format!("And {more} more.") }</li> }
        </ul>
    }
}

/// Returns a callback that saves what could be read, together with the unreadable records.
fn save(app: &Rc<App>, send: &Send, unread: &Rc<Unread>) -> Callback<MouseEvent> {
    let (app, send, unread) = (app.clone(), send.clone(), unread.clone());
    Callback::from(move |_| {
        let (whole, send) = (unread.beside(&app.workshop), send.clone());
        spawn_local(async move { save_workshop(&whole, &send).await });
    })
}

fn leave_out(saver: &Saver) -> Html {
    let saver = saver.clone();
    button(
        "leave-out",
        "Delete what can\u{2019}t be read",
        Callback::from(move |_| saver.leave_out()),
    )
}
