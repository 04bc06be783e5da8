//! The finish tab: the substrate, the coats and the tools, for the piece or for one zone.

mod art;
mod ground;
mod label;
mod layer;

use coatings::{Basis, Stage};
use web_sys::HtmlSelectElement;
use workshop::{Edit, PieceEdit, PieceId, Scheme, SchemeEdit, material_of};
use yew::prelude::*;

use super::Shown;
use crate::parts::{button, choice, select};
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

/// Shows the finish tab.
pub fn finish(shown: &Shown) -> Html {
    let piece = &shown.piece;
    let zone = shown.app.finished.as_deref();
    let scheme = match zone {
        None => Some(&piece.scheme),
        Some(key) => piece.zones.get(key).and_then(|zone| zone.scheme.as_ref()),
    };
    html! {
        <section class="finish" aria-label="Finish">
            <p class="caution">{ workshop::preparing::of_lead(piece) }</p>
            <div class="row">
                { whose(shown) }
                { like(shown) }
                { button("mixing", "Mixing bench", shown.send.reform(|_: MouseEvent| Action::Screen(Screen::Mixing))) }
                // Always emit one node, or the next list would be rebuilt and lose the focus.
                { zone.map(|key| apart(shown, key, scheme.is_some())).unwrap_or_default() }
            </div>
            { scheme.map(|scheme| plan(&Planned { shown, zone: zone.map(str::to_owned), scheme })).unwrap_or_default() }
            { art::of_piece(shown) }
        </section>
    }
}

/// Shows the choice between the scheme of the piece and those of its zones.
fn whose(shown: &Shown) -> Html {
    let zones = shown.takeoff().map(|takeoff| &*takeoff.zones).unwrap_or_default();
    let is_apart = |key: &str| {
        let zone = shown.piece.zones.get(key);
        zone.is_some_and(|zone| zone.scheme.is_some())
    };
    let zones: Vec<(&str, String)> = zones
        .iter()
        .filter(|zone| zone.painted || is_apart(&zone.key))
        .map(|zone| {
            let how = if is_apart(&zone.key) {
                "on its own"
            } else {
                "as the piece"
            };
            (&*zone.key, format!("{}, {how}", zone.label))
        })
        .collect();
    let options = std::iter::once(("", "The piece")).chain(zones.iter().map(|(key, label)| (*key, &**label)));
    let value = shown.app.finished.as_deref().unwrap_or_default();
    let open = shown
        .send
        .reform(|key: String| Action::Finished(Some(key).filter(|key| !key.is_empty())));
    select("Finish of", "finish-of".into(), options, value, open)
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
        let done = format!("Planned as on {}.", like.name);
        let to = to.clone();
        send.emit(Action::Edit(Edit::CopyFinish { from, to }));
        send.emit(Action::Tell(Message::Done(done)));
    });
    html! {
        <div class="field list">
            <label for="finish-like">{ "Same finish as" }</label>
            <select id="finish-like" onchange={copy} disabled={shown.app.workshop.pieces.len() < 2}>
                <option value="" selected={true}>{ "Another piece\u{2026}" }</option>
                { options }
            </select>
        </div>
    }
}

/// Shows the button that gives a zone its own finish, or removes it.
fn apart(shown: &Shown, key: &str, is_apart: bool) -> Html {
    let key = key.to_owned();
    let set = move |_: MouseEvent| {
        Some(PieceEdit::Apart {
            zone: key.clone(),
            apart: !is_apart,
        })
    };
    if is_apart {
        button("as-the-piece", "Finish it as the piece", shown.change(set))
    } else {
        button("on-its-own", "Finish it on its own", shown.change(set))
    }
}

fn plan(planned: &Planned<'_>) -> Html {
    let Planned { shown, scheme, .. } = planned;
    let basis = [
        (Basis::WetFilm, "wet-film", "What the tool lays on"),
        (Basis::LabelRate, "label-rate", "Rate on the label"),
    ];
    let names = layer::names(planned);
    html! {
        <>
            { ground::wanted(planned) }
            { ground::ground(planned) }
            { ground::asks(planned, shown) }
            <div>
                { for scheme.layers.iter().zip(&names).enumerate().map(|(place, (layer, name))| {
                    layer::layer(planned, place, layer, name)
                }) }
            </div>
            <div class="styles">
                { add(planned) }
                { choice("Amounts by", "basis", &basis, scheme.basis,
                    planned.change(|basis| Some(SchemeEdit::Basis(basis)))) }
                if states_rate(planned) {
                    <p class="hint">{ "A rate you entered from a label always counts." }</p>
                }
            </div>
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
                    <option value={key.to_owned()}>{ name }</option>
                }) }
            </optgroup>
        }
    };
    html! {
        <div class="field list">
            <label for="add-layer">{ "Something more goes on" }</label>
            <select id="add-layer" onchange={change}>
                <option value="" selected={true}>{ "Choose\u{2026}" }</option>
                { for Stage::ALL.into_iter().map(group) }
            </select>
        </div>
    }
}
