//! The list of parts with their painted areas, and the actions for the selected part.

use geometry::Towards;
use units::Area;
use workshop::{ChangeKind, PieceChange, SurfaceLine};
use yew::prelude::*;

use super::super::Shown;
use super::begin_change;
use super::board::{ALONG, resize, size};
use crate::state::Action;
use crate::words;

/// Shows every part of the piece.
pub fn parts(shown: &Shown) -> Html {
    let Some(takeoff) = shown.takeoff() else {
        return html! { <p>{ "Correct the sizes to see the parts." }</p> };
    };
    let parts = takeoff
        .surfaces
        .chunk_by(|a, b| a.surface.id.part == b.surface.id.part);
    html! { <ul class="parts">{ for parts.map(|lines| part(shown, lines)) }</ul> }
}

fn part(shown: &Shown, lines: &[SurfaceLine]) -> Html {
    let Some(id) = lines.first().map(|line| line.surface.id.part) else {
        return Html::default();
    };
    let name = id.to_string();
    let painted: Area = lines
        .iter()
        .filter(|line| line.painted)
        .map(|line| line.surface.net)
        .sum();
    let is_open = shown.app.part.as_deref() == Some(name.as_str());
    let next = (!is_open).then(|| name.clone());
    let toggle = shown.send.reform(move |_| Action::Part(next.clone()));
    html! {
        <li key={name.clone()}>
            <button type="button" id={format!("part-{name}")} class="line-button" aria-expanded={is_open.to_string()}
                onclick={toggle}>
                <span>{ id.label() }</span>
                <span class="figure">{ words::area(painted, shown.app.workshop.units) }</span>
            </button>
            if is_open { { tools(shown, &name, lines) } }
        </li>
    }
}

/// Shows the actions for a part.
fn tools(shown: &Shown, part: &str, lines: &[SurfaceLine]) -> Html {
    let towards = Towards::Right;
    let of = || part.to_owned();
    let kinds = [
        ("leave-out", "Remove", ChangeKind::Remove { part: of() }),
        ("move", "Move", ChangeKind::Move { part: of(), towards }),
        (
            "repeat",
            "Repeat",
            ChangeKind::Repeat {
                part: of(),
                times: 2,
                towards,
            },
        ),
    ];
    let button = |(id, word, kind)| button(shown, id, word, PieceChange::new(kind));
    html! {
        <div class="part-tools">
            <div class="buttons">{ for kinds.into_iter().map(button) }</div>
            { sizes(shown, part) }
            { holes(shown, lines) }
        </div>
    }
}

fn button(shown: &Shown, id: &'static str, word: &'static str, change: PieceChange) -> Html {
    crate::parts::button(format!("{id}-part"), word, begin_change(shown, change))
}

/// Shows the resize buttons. Only plain boards can be resized.
fn sizes(shown: &Shown, part: &str) -> Html {
    let Some(size) = size(&shown.piece, part) else {
        return Html::default();
    };
    let system = shown.app.workshop.units;
    let buttons = ALONG
        .into_iter()
        .zip(size)
        .map(|((along, id, word), present)| button(shown, id, word, resize(part, along, present, system)));
    html! {
        <div role="group" aria-label="Change its size">
            <span class="label">{ "Change" }</span>
            <div class="buttons">{ for buttons }</div>
        </div>
    }
}

/// Shows a button for a hole in every face with any area left.
fn holes(shown: &Shown, lines: &[SurfaceLine]) -> Html {
    let open = lines.iter().filter(|line| line.surface.takes_finish());
    let hole = |(i, line): (usize, &SurfaceLine)| {
        let surface = line.surface.id.to_string();
        let onclick = begin_change(shown, PieceChange::new(ChangeKind::Hole { surface }));
        let id = format!("hole-{}", i + 1);
        html! { <button type="button" {id} {onclick}>{ line.surface.side_label() }</button> }
    };
    html! {
        <div role="group" aria-label="Cut a hole">
            <span class="label">{ "Cut a hole in" }</span>
            <div class="buttons">{ for open.enumerate().map(hole) }</div>
        </div>
    }
}
