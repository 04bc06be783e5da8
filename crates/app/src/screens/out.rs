//! Exports: the printed job card, tables, pictures, and the piece as a link.

use std::rc::Rc;

use wasm_bindgen_futures::spawn_local;
use workshop::out::{link_text, qr};
use yew::prelude::*;

use super::{Send, Shown, card, saved};
use crate::browser::{device, print};
use crate::parts::button;
use crate::state::{Action, Message};

/// Shows the job card, with a button that prints it.
pub fn card(shown: &Shown) -> Html {
    html! {
        <section aria-label="Job card" class="out">
            <div class="buttons">
                <button type="button" id="print" onclick={|_| print()}>{ "Print card" }</button>
            </div>
            { card::card(shown) }
        </section>
    }
}

/// Shows the share link and the files of the piece.
pub fn out(shown: &Shown) -> Html {
    html! {
        <section class="out" aria-labelledby="export-title">
            <h2 id="export-title">{ "Export" }</h2>
            { link(shown) }
            <h3>{ "Files" }</h3>
            <div class="buttons">
                { for saved::FILES.into_iter().filter(|_| shown.takeoff().is_some()).map(|kind| saved::file(shown, kind)) }
            </div>
        </section>
    }
}

fn tell(send: &Send, reason: Option<String>) {
    if let Some(reason) = reason {
        send.emit(Action::Tell(Message::Plain(reason)));
    }
}

/// Shows the link with the sizes, parts and finish of the piece, and a QR code for a phone or tablet.
fn link(shown: &Shown) -> Html {
    let Some(link) = &shown.app.link else {
        return html! {
            <div class="buttons">
                { button("make-link", "Make a share link", make(shown)) }
            </div>
        };
    };
    let (copied, send) = (link.clone(), shown.send.clone());
    let copy = move |_: MouseEvent| {
        let (link, send) = (copied.clone(), send.clone());
        spawn_local(async move {
            let said = match device::copy(&link).await {
                Ok(()) => Message::Done("Link copied.".into()),
                Err(reason) => Message::Plain(reason),
            };
            send.emit(Action::Tell(said));
        });
    };
    let (name, shared, send) = (shown.piece.name.clone(), link.clone(), shown.send.clone());
    let share = move |_: MouseEvent| {
        let (name, link, send) = (name.clone(), shared.clone(), send.clone());
        spawn_local(async move { tell(&send, device::share(&name, "url", &link).await.err()) });
    };
    html! {
        <div class="link" role="group" aria-label="Share link">
            <div class="field">
                <label for="link">{ "Sizes, parts and finish are in this link. Money, photos, notes and checked-off steps stay here." }</label>
                <input id="link" type="text" readonly={true} value={link.to_string()} />
            </div>
            <div class="buttons">
                { button("copy-link", "Copy link", copy.into()) }
                if device::can_share() { { button("share-link", "Share link", share.into()) } }
            </div>
            { code(link) }
        </div>
    }
}

fn make(shown: &Shown) -> Callback<MouseEvent> {
    let (piece, app, send) = (shown.piece.clone(), shown.app.clone(), shown.send.clone());
    Callback::from(move |_| {
        let text = link_text(&piece, &app.workshop.materials).map_err(|error| error.to_string());
        let send = send.clone();
        spawn_local(async move {
            let link = match text {
                Ok(text) => device::link(&text).await,
                Err(reason) => Err(reason),
            };
            match link {
                Ok(link) => send.emit(Action::Linked(Rc::from(link))),
                Err(reason) => tell(&send, Some(reason)),
            }
        });
    })
}

fn code(link: &str) -> Html {
    match qr(link) {
        Some(picture) => html! {
            <svg id="link-code" class="code" viewBox={format!("0 0 {0} {0}", picture.side)} role="img"
                aria-label="QR code of the link">
                <rect width="100%" height="100%" fill="#fff" /><path d={picture.d} fill="#000" />
            </svg>
        },
        None => {
            html! { <p class="hint">{ "This link is too long for a code. Copy it, or save the workshop to a file." }</p> }
        }
    }
}
