//! All pieces, and the kinds to add one.

use std::rc::Rc;

use workshop::Piece;
use yew::prelude::*;

use super::Send;
use super::drawing::Silhouette;
use super::start::kinds;
use crate::state::{Action, App};

/// Shows the list of pieces. A touch opens one.
pub fn pieces(app: &Rc<App>, send: &Send) -> Html {
    let piece = |piece: &Rc<Piece>| {
        let id = piece.id.clone();
        let is_open = app.open.as_ref() == Some(&id);
        html! {
            <li key={&*piece.id.0}>
                <button type="button" class="piece" aria-current={is_open.then_some("true")}
                    onclick={send.reform(move |_| Action::Open(id.clone()))}>
                    // A piece that made the page hang is not drawn before it is selected.
                    if app.skipped.as_ref() != Some(&piece.id) { <Silhouette piece={piece.clone()} /> }
                    <span>{ &piece.name }<small>{ piece.status().label() }</small></span>
                </button>
            </li>
        }
    };
    let decide = !app.deciding;
    html! {
        <section class="all-pieces" aria-labelledby="pieces-title">
            <h2 id="pieces-title">{ "Pieces" }</h2>
            <ul id="pieces">{ for app.workshop.pieces.iter().map(piece) }</ul>
            <h2 id="add-a-piece">{ "Add a piece" }</h2>
            <label class="switch" for="should-i-buy">
                <input type="checkbox" id="should-i-buy" checked={app.deciding} onchange={send.reform(move |_: Event| Action::Decide(decide))} />
                { "I\u{2019}m deciding whether to buy it" }
            </label>
            { kinds(app, send) }
        </section>
    }
}
