//! The finish: the coats and the tools, for the piece or for one group of surfaces.

mod art;
mod ground;
mod groups;
mod label;
mod layer;
mod recommended;
mod wanted;

use coatings::{Basis, Stage};
use web_sys::HtmlSelectElement;
use workshop::{Edit, PieceEdit, PieceId, Scheme, SchemeEdit, material_of};
use yew::prelude::*;

use super::drawing::{Drawn, sheet};
use super::{Shown, folded};
use crate::parts::{button, choice};

pub use ground::ground;
pub use recommended::recommended;

use crate::state::{Action, Message, Screen};

/// The displayed scheme and its context.
pub struct Planned<'a> {
    /// The shared screen data.
    pub shown: &'a Shown,
    /// The key of the zone, or `None` for the scheme of the piece.
    pub zone: Option<String>,
    /// The scheme.
    pub scheme: &'a Scheme,
}

impl Planned<'_> {
    /// Returns a callback that changes the scheme if `edit` returns an edit for the event.
    pub fn change<E: 'static>(&self, edit: impl Fn(E) -> Option<SchemeEdit> + 'static) -> Callback<E> {
        let zone = self.zone.clone();
        self.shown
            .change(move |event| Some(PieceEdit::Finish(zone.clone(), edit(event)?)))
    }
}

/// Shows the groups of surfaces beside the drawing, and the finish of the chosen one.
pub fn finish(shown: &Shown, drawn: &Drawn) -> Html {
    let piece = &shown.piece;
    let zone = shown.app.finished.as_deref();
    let scheme = match zone {
        None => Some(&piece.scheme),
        Some(key) => piece.zones.get(key).and_then(|zone| zone.scheme.as_ref()),
    };
    let title = zone.map_or("Whole piece".into(), |key| piece.zone_label(key));
    html! {
        <section class="finish" aria-label="Finish">
            <div class="left">
                <div id="drawing" class="sheet" aria-hidden="true">{ sheet(shown, drawn) }</div>
                { groups::groups(shown) }
            </div>
            <div class="right">
                <h2>{ title }</h2>
                // Always emit one node, or the next list would be rebuilt and lose the focus.
                { zone.map(|key| groups::ways(shown, key)).unwrap_or_default() }
                { scheme.map(|scheme| plan(&Planned { shown, zone: zone.map(str::to_owned), scheme })).unwrap_or_default() }
                if zone.is_none() { { folded(shown, "art-fold", "Leaf, stencils, transfers, paper", &|| art::of_piece(shown)) } }
            </div>
        </section>
    }
}

/// Shows a list of other pieces whose finish can be copied.
fn like(shown: &Shown) -> Html {
    let here = shown.piece.id.clone();
    let others = shown.app.workshop.pieces.iter().filter(|piece| piece.id != here);
    let options: Html = others
        .map(|piece| html! { <option value={piece.id.0.to_string()}>{ &piece.name }</option> })
        .collect();
    let (to, send, app) = (shown.piece.id.clone(), shown.send.clone(), shown.app.clone());
    let copy = Callback::from(move |event: Event| {
        let list = event.target_unchecked_into::<HtmlSelectElement>();
        let from = PieceId(list.value().into());
        list.set_selected_index(0);
        let Some(like) = app.workshop.piece(&from) else {
            return;
        };
        let done = format!("Finish copied from {}.", like.name);
        let to = to.clone();
        send.emit(Action::Edit(Edit::CopyFinish { from, to }));
        send.emit(Action::Tell(Message::Done(done)));
    });
    html! {
        <div class="field list">
            <label for="finish-like">{ "Copy the finish of" }</label>
            <select id="finish-like" onchange={copy} disabled={shown.app.workshop.pieces.len() < 2}>
                <option value="" selected={true}>{ "Choose a piece\u{2026}" }</option>
                { options }
            </select>
        </div>
    }
}

fn plan(planned: &Planned<'_>) -> Html {
    let Planned { shown, scheme, .. } = planned;
    let names = layer::names(planned);
    let tools = shown.send.reform(|_: MouseEvent| Action::Screen(Screen::Tools));
    let layers = scheme.layers.iter().zip(&names).enumerate().rev();
    html! {
        <>
            { wanted::wanted(planned) }
            { recommended::recommended(planned) }
            <div class="core-list">
                { add(planned) }
                { for layers.map(|(place, (layer, name))| layer::layer(planned, place, layer, name)) }
                { on_what(planned) }
            </div>
            { button("which-tool-link", "Brush or roller?", tools) }
            { folded(shown, "advanced", "More options", &|| advanced(planned)) }
        </>
    }
}

/// Shows what is under the coats.
fn on_what(planned: &Planned<'_>) -> Html {
    let condition = &planned.scheme.condition;
    let wood = condition
        .species
        .map(|wood| format!(" on {}", coatings::in_sentence(wood.name)));
    html! {
        <div class="layer wood">
            <div class="core"><span></span></div>
            <div class="lb">
                <h3>{ condition.substrate.label() }{ wood }</h3>
                if planned.zone.is_some() {
                    { folded(planned.shown, "own-ground", "Condition", &|| ground(planned)) }
                }
            </div>
        </div>
    }
}

/// Shows how amounts are worked out, and another piece to copy the finish of.
fn advanced(planned: &Planned<'_>) -> Html {
    let Planned { shown, scheme, .. } = planned;
    let basis = [
        (Basis::WetFilm, "wet-film", "Typical for the tool"),
        (Basis::LabelRate, "label-rate", "Coverage on the label"),
    ];
    let mixing = shown.send.reform(|_: MouseEvent| Action::Screen(Screen::Mixing));
    html! {
        <>
            { choice("Amounts by", "basis", &basis, scheme.basis, planned.change(|basis| Some(SchemeEdit::Basis(basis)))) }
            if states_rate(planned) {
                <p class="hint">{ "A coverage that you entered from a label always counts." }</p>
            }
            { like(shown) }
            { button("mixing", "Mix a color or chalk-type paint", mixing) }
        </>
    }
}

/// Returns true if the maker entered the rate of a planned material.
fn states_rate(planned: &Planned<'_>) -> bool {
    let own = &planned.shown.app.workshop.materials;
    let mut layers = planned.scheme.layers.iter();
    layers.any(|layer| material_of(own, &layer.material).is_some_and(|material| material.states_rate()))
}

/// Shows a list of all materials by stage. A selected material is inserted after the others of its stage.
fn add(planned: &Planned<'_>) -> Html {
    let change = planned.change(|event: Event| {
        let list = event.target_unchecked_into::<HtmlSelectElement>();
        let key = list.value();
        list.set_selected_index(0);
        (!key.is_empty()).then(|| SchemeEdit::Add(key.into()))
    });
    let own = &planned.shown.app.workshop.materials;
    let group = |stage: Stage| {
        html! {
            <optgroup label={stage.label()}>
                { for layer::choices(own, stage).into_iter().map(|(key, name)| html! {
                    <option value={key.to_owned()}>{ name.to_string() }</option>
                }) }
            </optgroup>
        }
    };
    html! {
        <div class="field list add-layer">
            <label for="add-layer">{ "Add a coat" }</label>
            <select id="add-layer" onchange={change}>
                <option value="" selected={true}>{ "Choose\u{2026}" }</option>
                { for Stage::ALL.into_iter().map(group) }
            </select>
        </div>
    }
}
