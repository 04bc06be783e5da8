//! One zone: its switch, its name if the maker added it, and its surfaces by part.

use geometry::Zone;
use units::Area;
use web_sys::HtmlInputElement;
use workshop::{PieceEdit, SurfaceLine, Takeoff, ZoneLine};
use yew::prelude::*;

use super::super::Shown;
use super::line;
use crate::parts::{button, fold};
use crate::state::Action;
use crate::words;

/// Shows a zone with its painted area.
pub fn zone(shown: &Shown, takeoff: &Takeoff, zone: &ZoneLine) -> Html {
    let painted: Area = zone.areas.into_iter().sum();
    let summary = (zone.label.clone(), words::area(painted, shown.app.workshop.units));
    unfolding(shown, &format!("zone-{}", zone.key), summary, &|| {
        content(shown, takeoff, zone)
    })
}

fn unfolding(shown: &Shown, name: &str, summary: (String, String), content: &dyn Fn() -> Html) -> Html {
    let is_open = shown.app.unfolded.contains(name);
    fold(name, summary, is_open, shown.send.reform(Action::Fold), content)
}

fn content(shown: &Shown, takeoff: &Takeoff, zone: &ZoneLine) -> Html {
    let system = shown.app.workshop.units;
    let lines: Vec<&SurfaceLine> = takeoff
        .surfaces
        .iter()
        .filter(|line| line.zone == zone.key)
        .collect();
    let parts = lines.chunk_by(|a, b| a.surface.id.part == b.surface.id.part);
    let left = (zone.left > Area::ZERO).then(|| format!("{} not painted", words::area(zone.left, system)));
    let lying = Some(words::lying(zone.areas, system)).filter(|text| !text.is_empty());
    let sizes: Vec<String> = lying.into_iter().chain(left).collect();
    html! {
        <div class="zone">
            { switch(shown, zone) }
            <p class="working">{ sizes.join("; ") }</p>
            { own(shown, zone) }
            { for parts.map(|lines| part(shown, zone, lines)) }
        </div>
    }
}

/// Shows the switch of the whole zone.
fn switch(shown: &Shown, zone: &ZoneLine) -> Html {
    let painted = !zone.painted;
    let usual = shown.piece.usually_paints(&zone.key);
    let edit = PieceEdit::ZonePainted {
        zone: zone.key.clone(),
        painted: (painted != usual).then_some(painted),
    };
    html! {
        <label class="switch">
            <input type="checkbox" id={format!("paint-{}", zone.key)} checked={zone.painted}
                onchange={shown.change(move |_: Event| Some(edit.clone()))} />
            <span>{ "Paint this group" }</span>
        </label>
    }
}

/// Shows the name of a zone that the maker added, and a button that deletes it.
fn own(shown: &Shown, zone: &ZoneLine) -> Html {
    if Zone::by_key(&zone.key).is_some() {
        return Html::default();
    }
    let (named, removed) = (zone.key.clone(), zone.key.clone());
    let name = shown.change(move |event: Event| {
        let name = event.target_unchecked_into::<HtmlInputElement>().value();
        Some(PieceEdit::NameZone {
            zone: named.clone(),
            name,
        })
    });
    let remove = shown.change(move |_: MouseEvent| Some(PieceEdit::RemoveZone(removed.clone())));
    let id = format!("name-{}", zone.key);
    html! {
        <div class="row">
            <div class="field">
                <label for={id.clone()}>{ "Group name" }</label>
                <input {id} type="text" maxlength="120" value={zone.label.clone()} onchange={name} />
            </div>
            { button(format!("remove-{}", zone.key), "Delete group", remove) }
        </div>
    }
}

fn part(shown: &Shown, zone: &ZoneLine, lines: &[&SurfaceLine]) -> Html {
    let Some(id) = lines.first().map(|line| line.surface.id.part) else {
        return Html::default();
    };
    let painted = lines.iter().filter(|line| line.painted);
    let painted: Area = painted.map(|line| line.surface.net).sum();
    let summary = (id.label(), words::area(painted, shown.app.workshop.units));
    let content = || html! { <ul>{ for lines.iter().map(|line| line::surface(shown, line)) }</ul> };
    unfolding(shown, &format!("{}-{id}", zone.key), summary, &content)
}
