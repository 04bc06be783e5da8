//! The first step in an empty workshop.

use std::rc::Rc;

use geometry::Kind;
use workshop::{Edit, Piece, PieceId, invented_workshop};
use yew::prelude::*;

use super::tape_focus::focus_measurement_soon;
use super::{Send, drawing::Silhouette};
use crate::browser::new_piece_id;
use crate::state::{Action, App};

/// Shows the start screen when there are no pieces.
pub fn start(app: &App, send: &Send) -> Html {
    let decide = !app.deciding;
    let (title, words) = match app.deciding {
        false => (
            "What are you working on?",
            "Pick a piece, measure it, and see how much primer, paint and topcoat it takes, and what to buy.",
        ),
        true => (
            "Should I buy it?",
            "Pick the piece to see the most you should pay, even before you measure.",
        ),
    };
    html! {
        <section class="start">
            <h2>{ title }</h2>
            <p>{ words }</p>
            <div class="buttons">
                <button type="button" id="should-i-buy" aria-pressed={app.deciding.to_string()} onclick={send.reform(move |_| Action::Decide(decide))}>
                    { "Should I buy it?" }
                </button>
                <button type="button" id="look-around" onclick={send.reform(|_| Action::Edit(Edit::Replace(invented_workshop())))}>
                    { "Try sample pieces" }
                </button>
            </div>
            { kinds(app, send) }
        </section>
    }
}

/// The kinds of pieces in groups.
const GROUPS: [(&str, &[Kind]); 4] = [
    (
        "Drawers",
        &[Kind::Dresser, Kind::ChestOfDrawers, Kind::Nightstand],
    ),
    (
        "Doors and shelves",
        &[
            Kind::Sideboard,
            Kind::Wardrobe,
            Kind::Hutch,
            Kind::GlazedCabinet,
            Kind::Bookcase,
            Kind::OpenShelf,
        ],
    ),
    (
        "Tables and desks",
        &[
            Kind::PedestalDesk,
            Kind::Desk,
            Kind::Vanity,
            Kind::Console,
            Kind::SideTable,
        ],
    ),
    (
        "Other",
        &[Kind::BlanketBox, Kind::Bench, Kind::Headboard, Kind::Frame],
    ),
];

/// Shows one button for each kind of piece, with its silhouette.
pub fn kinds(app: &App, send: &Send) -> Html {
    let is_deciding = app.deciding;
    let kind = |kind: &Kind| {
        let kind = *kind;
        let send = send.clone();
        let onclick = move |_| {
            let id = new_piece_id();
            let add = match is_deciding {
                true => Edit::Consider { id: id.clone(), kind },
                false => Edit::Add { id: id.clone(), kind },
            };
            send.emit(Action::Start(add, id));
            if !is_deciding {
                focus_measurement_soon();
            }
        };
        let sample = Rc::new(Piece::new(PieceId("sample".into()), kind));
        html! {
            <button type="button" class="kind" id={format!("new-{}", kind.key())} {onclick}>
                <Silhouette piece={sample} />
                <span>{ kind.label() }</span>
            </button>
        }
    };
    let group = |(label, kinds): &(&'static str, &[Kind])| {
        html! {
            <section aria-label={*label}>
                <h3>{ *label }</h3>
                <div class="group">{ for kinds.iter().map(kind) }</div>
            </section>
        }
    };
    html! { <div class="kinds">{ for GROUPS.iter().map(group) }</div> }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_is_offered_once() {
        let offered = || GROUPS.iter().flat_map(|(_, kinds)| *kinds);
        for kind in Kind::ALL {
            assert_eq!(
                offered().filter(|other| **other == kind).count(),
                1,
                "{}",
                kind.key()
            );
        }
    }
}
