//! The header: the name of the page, the save status, the strip of pieces, undo, and links to the other
//! screens.

use std::rc::Rc;

use workshop::{Edit, Piece};
use yew::prelude::*;

use super::Send;
use super::drawing::Silhouette;
use super::start::kinds;
use crate::browser::device_status;
use crate::device_status::Offline;
use crate::parts::{Icon, held, sign};
use crate::state::{Action, App, SaveStatus, Screen};
use crate::words;

/// Shows the header.
pub fn head(app: &Rc<App>, send: &Send) -> Html {
    let act = |act: Action| send.reform(move |_: MouseEvent| act.clone());
    let undo = app.can_undo().then(|| act(Action::Undo));
    let redo = app.can_redo().then(|| act(Action::Redo));
    html! {
        <header class="head">
            <div class="name">
                <h1>{ "Coatwright" }</h1>
                { keeping(app) }
                <p id="stepped" role="status" class={app.field.map(|_| "above")}>
                    { for app.stepped.iter().map(|step| stepped(words::stepped(step, &app.workshop))) }
                </p>
            </div>
            <div class="tools">
                { sign("undo", Icon::Undo, "Undo", undo) }
                { sign("redo", Icon::Redo, "Redo", redo) }
                { room(app, send, Screen::Together, "together", Icon::Shopping, "To buy") }
                { room(app, send, Screen::Days, "days", Icon::Days, "Days") }
                { room(app, send, Screen::Settings, "settings", Icon::Settings, "Settings, files") }
            </div>
            { new_version(app) }
            { pieces(app, send) }
        </header>
    }
}

/// Shows a button that opens another screen, or returns to the piece. Its word never changes, so no button
/// moves.
fn room(app: &App, send: &Send, room: Screen, id: &'static str, icon: Icon, word: &'static str) -> Html {
    let is_here = app.screen == room;
    let next = if is_here { Screen::Board } else { room };
    held(
        id,
        icon,
        word,
        is_here,
        send.reform(move |_| Action::Screen(next)),
    )
}

fn keeping(app: &App) -> Html {
    let (state, words) = words::saving(&app.load, &app.save_status);
    html! { <p id="keeping" role="status" data-state={state}>{ words }</p> }
}

/// Shows what was undone or redone. It fades out, and the key restarts the fade for another step.
fn stepped(words: String) -> Html {
    html! { <span key={words.clone()}>{ words }</span> }
}

/// Shows that a newer version of the page is available. The maker decides when to load it. Other status
/// changes are only for screen readers.
fn new_version(app: &App) -> Html {
    let (state, words) = words::offline(app.device_status.offline);
    let is_ready = app.device_status.offline == Offline::NewVersion;
    let take = |_: MouseEvent| device_status::take_new_version();
    html! {
        <div class={if is_ready { "notice" } else { "unseen" }}>
            <p id="offline" role="status" data-state={state}>{ words }</p>
            if is_ready {
                <button type="button" id="take-update" disabled={app.save_status == SaveStatus::Writing} onclick={take}>
                    { "Take it" }
                </button>
            }
        </div>
    }
}

/// Shows the strip of pieces and the button that adds one.
fn pieces(app: &App, send: &Send) -> Html {
    if app.workshop.pieces.is_empty() {
        return Html::default();
    }
    let piece = |piece: &Rc<Piece>| {
        let id = piece.id.clone();
        let current = app.screen == Screen::Board && app.open.as_ref() == Some(&id);
        html! {
            <button type="button" key={&*piece.id.0} class="piece" aria-current={current.then_some("true")}
                onclick={send.reform(move |_| Action::Open(id.clone()))}>
                // A piece that made the page hang is not drawn before it is selected.
                if app.skipped.as_ref() != Some(&piece.id) { <Silhouette piece={piece.clone()} /> }
                <span>{ &piece.name }</span>
            </button>
        }
    };
    let adding = !app.adding;
    let toggle = send.reform(move |_: MouseEvent| Action::Adding(adding));
    html! {
        <>
            <nav class="pieces" aria-label="Pieces">
                <div id="pieces">{ for app.workshop.pieces.iter().map(piece) }</div>
                <button type="button" id="new-piece" aria-expanded={app.adding.to_string()} onclick={toggle}>
                    { "New piece" }
                </button>
            </nav>
            if app.adding { <h2 class="unseen">{ "Kinds of pieces" }</h2>{ kinds(send) } }
            { invented(app, send) }
        </>
    }
}

/// Shows that the pieces are samples, with a button that deletes them.
fn invented(app: &App, send: &Send) -> Html {
    if !app.workshop.pieces.iter().any(|piece| piece.is_invented()) {
        return Html::default();
    }
    html! {
        <p class="notice">
            { &app.workshop.note }
            <button type="button" id="clear-invented" onclick={send.reform(|_| Action::Edit(Edit::ClearInvented))}>
                { "Clear it away" }
            </button>
        </p>
    }
}
