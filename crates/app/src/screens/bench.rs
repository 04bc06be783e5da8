//! The pieces of the workshop, side by side, and a way to begin another.

use std::rc::Rc;

use workshop::{Edit, Piece};
use yew::prelude::*;

use super::Send;
use super::drawing::Silhouette;
use super::start::kinds;
use crate::state::{Act, App};

/// The strip of pieces.
pub fn pieces(app: &App, send: &Send) -> Html {
    let piece = |piece: &Rc<Piece>| {
        let id = piece.id.clone();
        let current = app.open.as_ref() == Some(&id);
        html! {
            <button type="button" key={&*piece.id.0} class="piece" aria-current={current.then_some("true")}
                onclick={send.reform(move |_| Act::Open(id.clone()))}>
                <Silhouette piece={piece.clone()} />
                <span>{ &piece.name }</span>
            </button>
        }
    };
    let adding = !app.adding;
    let toggle = send.reform(move |_: MouseEvent| Act::Adding(adding));
    let invented = app.workshop.pieces.iter().any(|piece| piece.is_invented());
    html! {
        <nav class="pieces" aria-label="Pieces">
            <div id="pieces">{ for app.workshop.pieces.iter().map(piece) }</div>
            <button type="button" id="new-piece" aria-expanded={app.adding.to_string()} onclick={toggle}>
                { "New piece" }
            </button>
            if app.adding { { kinds(app, send) } }
            if invented {
                <p class="invented">
                    { &app.workshop.note }
                    <button type="button" id="clear-invented" onclick={send.reform(|_| Act::Edit(Edit::ClearInvented))}>
                        { "Clear it away" }
                    </button>
                </p>
            }
        </nav>
    }
}
