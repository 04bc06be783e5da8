//! Exports: the printed job card, tables, pictures, and the piece as a link.

use std::rc::Rc;

use wasm_bindgen_futures::spawn_local;
use workshop::Takeoff;
use workshop::out::{amounts_csv, link_text, qr, surfaces_csv};
use yew::prelude::*;

use super::drawing::svg;
use super::files::tell_saved;
use super::{Send, Shown, card};
use crate::browser::files::file_name;
use crate::browser::{device, print};
use crate::parts::button;
use crate::state::{Action, Message};

/// Shows the job card tab.
pub fn out(shown: &Shown) -> Html {
    html! {
        <section aria-label="Job card" class="out">
            <div class="buttons">
                <button type="button" id="print" class="main" onclick={|_| print()}>{ "Print the card" }</button>
                { for FILES.into_iter().filter(|_| shown.takeoff().is_some()).map(|kind| file(shown, kind)) }
            </div>
            { link(shown) }
            { card::card(shown) }
        </section>
    }
}

/// A file that a button saves: the end of its name, the word on the button, and its text.
type Kind = (&'static str, &'static str, fn(&Shown, &Takeoff) -> String);

const FILES: [Kind; 4] = [
    ("surfaces.csv", "Surfaces, a CSV table", |shown, takeoff| {
        surfaces_csv(&shown.piece, takeoff, shown.app.workshop.units)
    }),
    ("amounts.csv", "Amounts, a CSV table", |shown, takeoff| {
        amounts_csv(&shown.app.workshop, takeoff)
    }),
    ("drawing.svg", "Drawing, SVG lines", drawing),
    ("drawing.png", "Drawing, PNG picture", drawing),
];

fn drawing(shown: &Shown, takeoff: &Takeoff) -> String {
    svg(&shown.app.workshop, &shown.piece, takeoff, shown.app.look)
}

/// Shows the button for a file. The text is created when it is pressed.
fn file(shown: &Shown, (ending, word, text): Kind) -> Html {
    let of = shown.clone();
    let save = move |_: MouseEvent| {
        let Some(text) = of.takeoff().map(|takeoff| text(&of, takeoff)) else {
            return;
        };
        let (name, send) = (file_name(&of.piece.name, ending), of.send.clone());
        spawn_local(async move {
            let saved = match ending.rsplit('.').next() {
                Some("png") => device::save_picture(&name, &text).await,
                Some("svg") => device::save(&name, "image/svg+xml", &text).await,
                _ => device::save(&name, "text/csv", &text).await,
            };
            tell_saved(&send, saved);
        });
    };
    button(format!("save-{}", ending.replace('.', "-")), word, save.into())
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
                { button("make-link", "Share link", make(shown)) }
            </div>
        };
    };
    let (copied, send) = (link.clone(), shown.send.clone());
    let copy = move |_: MouseEvent| {
        let (link, send) = (copied.clone(), send.clone());
        spawn_local(async move { tell(&send, device::copy(&link).await.err()) });
    };
    let (name, shared, send) = (shown.piece.name.clone(), link.clone(), shown.send.clone());
    let share = move |_: MouseEvent| {
        let (name, link, send) = (name.clone(), shared.clone(), send.clone());
        spawn_local(async move { tell(&send, device::share(&name, "url", &link).await.err()) });
    };
    html! {
        <div class="link" role="group" aria-label="This piece as a link">
            <div class="field">
                <label for="link">{ "This link holds the sizes, parts and finish of the piece. Its money, photos, notes and checked-off steps stay here. No server saves it." }</label>
                <input id="link" type="text" readonly={true} value={link.to_string()} />
            </div>
            <div class="buttons">
                { button("copy-link", "Copy", copy.into()) }
                if device::can_share() { { button("share-link", "Share\u{2026}", share.into()) } }
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
                aria-label="The link as a code to photograph">
                <rect width="100%" height="100%" fill="#fff" /><path d={picture.d} fill="#000" />
            </svg>
        },
        None => {
            html! { <p class="hint">{ "The link is too long for a code to photograph; copy it, or hand on the file." }</p> }
        }
    }
}
