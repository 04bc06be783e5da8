//! One surface: its switch, zone and calculation.

use workshop::{PieceEdit, SurfaceLine, switched};
use yew::prelude::*;

use super::super::Shown;
use super::brush::zone_keys;
use crate::parts::select;
use crate::words;

/// Shows a surface in full.
pub fn surface(shown: &Shown, line: &SurfaceLine) -> Html {
    let system = shown.app.workshop.units;
    let name = line.surface.id.to_string();
    html! {
        <li key={name.clone()}>
            { switch_or_word(shown, line, &[line]) }
            <span class="figure">{ words::area(line.surface.net, system) }</span>
            <span class="working">{ words::working(&line.surface, system) }</span>
            { zone_list(shown, line, format!("zone-of-{name}")) }
        </li>
    }
}

/// Shows the switch of a surface and the surfaces that belong to it, or only its name if there is nothing to
/// finish.
pub fn switch_or_word(shown: &Shown, line: &SurfaceLine, together: &[&SurfaceLine]) -> Html {
    if !line.surface.takes_finish() {
        return html! { <span class="covered">{ line.surface.side_label() }</span> };
    }
    let painted = !line.painted;
    let edit = if together.len() > 1 {
        let names = together.iter().map(|line| line.surface.id.to_string()).collect();
        PieceEdit::Brush(names, switched(together, line.painted))
    } else {
        let choice = (painted != line.painted_with_zone).then_some(painted);
        PieceEdit::Painted {
            surface: line.surface.id.to_string(),
            painted: choice,
        }
    };
    html! {
        <label class="switch">
            <input type="checkbox" checked={line.painted} onchange={shown.change(move |_: Event| Some(edit.clone()))} />
            <span>{ line.surface.side_label() }</span>
        </label>
    }
}

/// Shows the zones that a surface can belong to.
pub fn zone_list(shown: &Shown, line: &SurfaceLine, id: String) -> Html {
    if !line.surface.takes_finish() {
        return Html::default();
    }
    let piece = &shown.piece;
    let zones = zone_keys(piece);
    let (surface, usual) = (
        line.surface.id.to_string(),
        line.surface.usual_zone(piece.styles.stand).key(),
    );
    let choose = shown.change(move |key: String| {
        let zone = (key != usual).then_some(key);
        Some(PieceEdit::Zone(surface.clone(), zone))
    });
    let options = zones.iter().map(|(key, label)| (key.as_str(), label.as_str()));
    select("Group", id, options, &line.zone, choose)
}
