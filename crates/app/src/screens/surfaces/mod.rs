//! The list of surfaces by zone: their areas, what covers them, and whether they get the finish.

mod brush;
mod line;
mod zone;

use geometry::{Edges, Side};
use units::Area;
use workshop::{PieceEdit, Takeoff, are_finished, side_faces, switched};
use yew::prelude::*;

use super::Shown;
use crate::parts::button;
use crate::words;

pub use line::{switch_or_word, zone_list};

/// Shows the surfaces tab by zone and part.
pub fn surfaces(shown: &Shown) -> Html {
    let edges = shown.app.analysis().edges(&shown.piece);
    let edges = edges.iter().map(|(_, of_zone)| *of_zone).sum();
    let Some(takeoff) = shown.takeoff() else {
        return html! { <p>{ "Correct the sizes to see the surfaces." }</p> };
    };
    html! {
        <section aria-label="Surfaces" class="surfaces">
            { brush::brush(shown) }
            { sides(shown, takeoff) }
            { totals(shown, takeoff, edges) }
            <p>{ "Areas are for one piece, without covered parts. A group is everything that gets the same finish." }</p>
            { for takeoff.zones.iter().map(|line| zone::zone(shown, takeoff, line)) }
            { add_zone(shown) }
        </section>
    }
}

/// Shows switches for whole sides, for a piece against a wall.
fn sides(shown: &Shown, takeoff: &Takeoff) -> Html {
    let side = |(side, word): (Side, &'static str)| {
        let faces: Vec<_> = side_faces(&takeoff.surfaces, side).collect();
        let painted = are_finished(&faces);
        let names = faces.iter().map(|line| line.surface.id.to_string()).collect();
        let edit = PieceEdit::Brush(names, switched(&faces, painted));
        let id = format!("side-{}", side.word());
        html! {
            <label class="switch">
                <input type="checkbox" {id} checked={painted} disabled={faces.is_empty()}
                    onchange={shown.change(move |_: Event| Some(edit.clone()))} />
                <span>{ word }</span>
            </label>
        }
    };
    let both = [
        (Side::Left, "Paint the left side"),
        (Side::Right, "Paint the right side"),
    ];
    html! {
        <div class="row" role="group" aria-label="Whole sides to paint">{ for both.into_iter().map(side) }</div>
    }
}

/// Shows the painted area of one piece by orientation, and the lengths of its edges.
fn totals(shown: &Shown, takeoff: &Takeoff, edges: Edges) -> Html {
    let system = shown.app.workshop.units;
    let areas = takeoff.zones.iter().fold([Area::ZERO; 3], |sum, zone| {
        [0, 1, 2].map(|i| sum[i] + zone.areas[i])
    });
    let lengths = [
        ("arrises", "Edges to sand", edges.arrises),
        ("corners", "Inside corners", edges.corners),
        ("borders", "Edges to tape", edges.borders),
    ];
    let length = |(key, label, length): (&'static str, &'static str, units::Length)| {
        html! {
            <div>
                <dt>{ label }</dt>
                <dd id={format!("edges-{key}")} title={shown.app.length(length)}>{ words::run(length, system) }</dd>
            </div>
        }
    };
    html! {
        <dl class="totals">
            <div><dt>{ "Area to coat, one piece" }</dt><dd>{ words::area(takeoff.painted_each, system) }</dd></div>
            <div class="wide"><dt>{ "By direction" }</dt><dd id="lying">{ words::lying(areas, system) }</dd></div>
            { for lengths.into_iter().map(length) }
        </dl>
    }
}

/// Shows the button that adds a zone. The new zone gets the first free key.
fn add_zone(shown: &Shown) -> Html {
    let zones = &shown.piece.zones;
    let key = |n: usize| format!("own-{n}");
    let free = (1..).find(|n| !zones.contains_key(&key(*n))).unwrap_or_default();
    let add = shown.change(move |_: MouseEvent| {
        Some(PieceEdit::NameZone {
            zone: key(free),
            name: format!("Group {free}"),
        })
    });
    button("add-zone", "Add group", add)
}
