//! The list of surfaces: what each measures, what lies against it, and whether it gets the finish.

use geometry::PartId;
use units::{Area, System};
use workshop::{PieceEdit, SurfaceLine};
use yew::prelude::*;

use super::Shown;
use crate::state::Act;
use crate::words;

/// The sheet of surfaces, part by part.
#[component]
pub fn Surfaces(shown: &Shown) -> Html {
    let Ok(takeoff) = shown.result.as_ref() else {
        return html! { <p>{ "Mend the measurements first; then the surfaces stand here." }</p> };
    };
    let groups = takeoff
        .surfaces
        .chunk_by(|a, b| a.surface.id.part == b.surface.id.part);
    html! {
        <section aria-label="Surfaces" class="surfaces">
            <p>{ "Each surface of one piece, less what lies against it. Switch on what gets the finish." }</p>
            { for groups.map(|lines| part(shown, lines)) }
        </section>
    }
}

fn part(shown: &Shown, lines: &[SurfaceLine]) -> Html {
    let system = shown.app.workshop.units;
    let Some(id) = lines.first().map(|line| line.surface.id.part) else {
        return Html::default();
    };
    let painted: Area = lines
        .iter()
        .filter(|line| line.painted)
        .map(|line| line.surface.net)
        .sum();
    html! {
        <details key={id.to_string()}>
            <summary><span>{ PartId::label(id) }</span><span class="figure">{ words::area(painted, system) }</span></summary>
            <ul>{ for lines.iter().map(|line| surface(shown, line, system)) }</ul>
        </details>
    }
}

fn surface(shown: &Shown, line: &SurfaceLine, system: System) -> Html {
    let name = line.surface.id.to_string();
    let covered = line.surface.net == Area::ZERO;
    html! {
        <li key={name.clone()}>
            if covered {
                <span class="covered">{ line.surface.side_label() }</span>
            } else {
                { switch(shown, line, &name) }
            }
            <span class="figure">{ words::area(line.surface.net, system) }</span>
            <span class="working">{ words::working(&line.surface, system) }</span>
        </li>
    }
}

/// The switch of one surface.
pub fn switch(shown: &Shown, line: &SurfaceLine, name: &str) -> Html {
    let painted = !line.painted;
    let choice = (painted != line.painted_by_default).then_some(painted);
    let act = Act::Change(PieceEdit::Painted(name.to_owned(), choice));
    html! {
        <label class="switch">
            <input type="checkbox" checked={line.painted} onchange={shown.send.reform(move |_| act.clone())} />
            <span>{ line.surface.side_label() }</span>
        </label>
    }
}
