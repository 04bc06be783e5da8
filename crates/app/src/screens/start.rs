//! The empty workshop: what to do first.

use std::rc::Rc;

use geometry::Kind;
use workshop::{Edit, Piece, PieceId, invented_workshop};
use yew::prelude::*;

use super::{Send, drawing::Silhouette};
use crate::browser::new_piece_id;
use crate::state::{Act, App};

#[derive(Properties, PartialEq)]
pub struct Props {
    pub app: Rc<App>,
    pub send: Send,
}

/// What is shown when there is no piece yet.
#[component]
pub fn Start(Props { app, send }: &Props) -> Html {
    html! {
        <section class="start">
            <h2>{ "What stands before you?" }</h2>
            <Kinds app={app.clone()} send={send.clone()} />
            <p>{ "Take the tape to it and read how much surface there is, and what primer, paint and clear coat it takes." }</p>
            <button type="button" id="look-around" onclick={send.reform(|_| Act::Edit(Edit::Replace(invented_workshop())))}>
                { "Look around in an invented workshop" }
            </button>
        </section>
    }
}

/// One button for each kind of piece, with its silhouette.
#[component]
pub fn Kinds(Props { app, send }: &Props) -> Html {
    let kind = |kind: Kind| {
        let units = app.workshop.units;
        let onclick = send.reform(move |_| {
            let id = new_piece_id();
            Act::Start(Edit::Add { id: id.clone(), kind }, id)
        });
        let sample = Rc::new(Piece::new(PieceId("sample".into()), kind, units));
        let key = kind.label().to_lowercase().replace(' ', "-");
        html! {
            <button type="button" class="kind" id={format!("new-{key}")} {onclick}>
                <Silhouette piece={sample} />
                <span>{ kind.label() }</span>
            </button>
        }
    };
    html! { <div class="kinds">{ for Kind::ALL.into_iter().map(kind) }</div> }
}
