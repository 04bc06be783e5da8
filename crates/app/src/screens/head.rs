//! The header: the open piece, undo, a new piece, and the save status.

use std::rc::Rc;

use yew::prelude::*;

use super::Send;
use super::drawing::Silhouette;
use crate::browser::device_status;
use crate::device_status::Offline;
use crate::parts::{Icon, icon, sign};
use crate::state::{Action, App, SaveStatus, Screen};
use crate::words;
use workshop::Edit;

/// Shows the header.
pub fn head(app: &Rc<App>, send: &Send) -> Html {
    let act = |act: Action| send.reform(move |_: MouseEvent| act.clone());
    let undo = app.can_undo().then(|| act(Action::Undo));
    let redo = app.can_redo().then(|| act(Action::Redo));
    let pieces = act(Action::Screen(Screen::Pieces));
    html! {
        <header class="head">
            <h1 class="unseen">{ "Coatwright" }</h1>
            { piece(app, pieces.clone()) }
            <div class="tools">
                { sign("undo", Icon::Undo, "Undo", undo) }
                if redo.is_some() { { sign("redo", Icon::Redo, "Redo", redo) } }
                if app.piece().is_some() { { sign("new-piece", Icon::Add, "New piece", Some(pieces)) } }
            </div>
            <p id="stepped" role="status" class={app.field.map(|_| "above")}>
                { for app.stepped.iter().map(|step| stepped(words::stepped(step, &app.workshop))) }
            </p>
        </header>
    }
}

/// Shows the save status, and whether a newer version of the page is available.
pub fn status(app: &App) -> Html {
    html! { <>{ keeping(app) }{ new_version(app) }</> }
}

/// Shows the open piece. The button opens the list of pieces.
fn piece(app: &App, pieces: Callback<MouseEvent>) -> Html {
    let Some(piece) = app.piece() else {
        return html! { <p class="piece">{ "Coatwright" }</p> };
    };
    html! {
        <button type="button" id="piece" class="piece" aria-label={format!("{}: all pieces", piece.name)} onclick={pieces}>
            // A piece that made the page hang is not drawn before it is selected.
            if app.skipped.as_ref() != Some(&piece.id) { <Silhouette piece={piece.clone()} /> }
            <span>{ &piece.name }</span>
            { icon(Icon::Down) }
        </button>
    }
}

/// Shows the save status. While everything is saved, only screen readers get it.
fn keeping(app: &App) -> Html {
    let (state, words) = words::saving(&app.load, &app.save_status);
    let class = matches!(app.save_status, SaveStatus::Saved | SaveStatus::Writing).then_some("unseen");
    html! { <p id="keeping" role="status" {class} data-state={state}>{ words }</p> }
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
                <button type="button" id="take-update" class="act" disabled={app.save_status == SaveStatus::Writing} onclick={take}>
                    { "Use new version" }
                </button>
            }
        </div>
    }
}

/// Shows that the pieces are samples, with a button that deletes them.
pub fn invented(app: &App, send: &Send) -> Html {
    if !app.workshop.pieces.iter().any(|piece| piece.is_invented()) {
        return Html::default();
    }
    html! {
        <p class="notice">
            { &app.workshop.note }{ " " }
            <button type="button" id="clear-invented" class="act" onclick={send.reform(|_| Action::Edit(Edit::ClearInvented))}>
                { "Delete the samples" }
            </button>
        </p>
    }
}
