//! The pieces of the workshop, side by side, and a way to begin another.

use std::rc::Rc;

use workshop::{Edit, Piece};
use yew::prelude::*;

use super::Send;
use super::drawing::Silhouette;
use super::start::Kinds;
use crate::state::{Act, App};

#[derive(Properties, PartialEq)]
pub struct Props {
    pub app: Rc<App>,
    pub send: Send,
}

/// The strip of pieces.
#[component]
pub fn Pieces(Props { app, send }: &Props) -> Html {
    let adding = use_state(|| false);
    let toggle = {
        let adding = adding.clone();
        move |_: MouseEvent| adding.set(!*adding)
    };
    // Once a piece was begun, or another one opened, the kinds are in the way.
    {
        let adding = adding.setter();
        use_effect_with(app.open.clone(), move |_| adding.set(false));
    }
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
    let invented = app.workshop.pieces.iter().any(|piece| piece.is_invented());
    html! {
        <nav class="pieces" aria-label="Pieces">
            <div id="pieces">{ for app.workshop.pieces.iter().map(piece) }</div>
            <button type="button" id="new-piece" aria-expanded={adding.to_string()} onclick={toggle}>{ "New piece" }</button>
            if *adding { <Kinds app={app.clone()} send={send.clone()} /> }
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
