//! The sheet itself: faces in the colour of the paint or bare, their shades, lines, outline and dimensions.

use std::rc::Rc;

use workshop::{Colour, OwnMaterial, Piece, Takeoff};
use yew::prelude::*;

use super::super::{Shown, say_if};
use super::dimension::dimension_lines;
use super::hand::Hand;
use super::picture::{Face, Picture, SHEET};
use super::scale::FINE;
use crate::state::{Action, Tab, part_of};

/// What is behind glass, in a colour, under a clear finish, or as it was.
pub enum Look {
    /// Behind glass.
    Glass,
    /// In a colour.
    Coloured(Colour),
    /// Under a clear finish.
    Clear,
    /// As it was.
    Bare,
}

impl Look {
    /// Whether dark lines would not be seen on it.
    pub fn is_dark(&self) -> bool {
        matches!(self, Look::Coloured(colour) if !colour.is_light())
    }
}

/// The drawing of a piece.
pub fn sheet(shown: &Shown, picture: &Picture, takeoff: &Takeoff, hand: &Hand) -> Html {
    let face = |face: &Face| {
        let own = &shown.app.workshop.materials;
        let fill = match look(&shown.piece, own, face, takeoff) {
            Look::Glass => None,
            Look::Coloured(colour) => Some(AttrValue::from(colour.write())),
            Look::Clear => Some("var(--wood)".into()),
            Look::Bare => Some("url(#bare)".into()),
        };
        let class = if fill.is_some() { "face" } else { "face glass" };
        html! {
            <>
                <path {class} d={face.region.clone()} {fill} onclick={pick(shown, face, hand)}
                    onpointerdown={hand.brush_down(shown, &face.name)} onpointerover={hand.brush_over(shown, &face.name)} />
                { for face.shades.iter().map(|(path, dark)| html! {
                    <path class="shade" d={path.clone()} opacity={dark.clone()} />
                }) }
            </>
        }
    };
    let is_dark = |face: &&Face| look(&shown.piece, &shown.app.workshop.materials, face, takeoff).is_dark();
    let picked = picture.faces.iter().filter(|face| is_picked(shown, face));
    html! {
        <svg class="drawing" viewBox={format!("0 0 {} {}", SHEET[0], SHEET[1])} role="group"
            aria-label={format!("{}, drawn to scale", shown.piece.name)} onpointerdown={hand.down(shown)}
            onpointermove={hand.moved(shown)} onpointerup={hand.up(shown)} onpointercancel={hand.up(shown)}>
            <defs>
                <pattern id="bare" width="9" height="9" patternUnits="userSpaceOnUse"
                    patternTransform="rotate(45) scale(10)">
                    <rect class="bare-ground" width="9" height="9" /><rect class="bare-line" width="1.2" height="9" />
                </pattern>
            </defs>
            <g transform={format!("scale({})", 1.0 / FINE)}>
                { for picture.faces.iter().map(face) }
                <path class="edges" d={picture.edges.clone()} />
                { for picture.faces.iter().filter(is_dark).map(|face| html! {
                    <path class="on-dark" d={face.lines.clone()} />
                }) }
                <path class="outline" d={picture.outline.clone()} />
                { for picked.map(|face| html! { <path class="mark" d={face.lines.clone()} /> }) }
            </g>
            { dimension_lines(shown, picture) }
        </svg>
    }
}

/// How a face looks with the finish that is planned for it.
pub fn look(piece: &Piece, own: &[Rc<OwnMaterial>], face: &Face, takeoff: &Takeoff) -> Look {
    match takeoff.surfaces.get(face.place) {
        Some(line) if !line.surface.id.part.kind.takes_finish() => Look::Glass,
        Some(line) if line.painted => {
            let scheme = piece.scheme_of(&line.zone);
            if scheme.is_coloured(own) {
                Look::Coloured(scheme.colour)
            } else {
                Look::Clear
            }
        }
        _ => Look::Bare,
    }
}

/// On the sheet of parts the whole part is picked, elsewhere the surface.
fn is_picked(shown: &Shown, face: &Face) -> bool {
    if shown.app.tab == Tab::Parts {
        shown.app.part.as_deref() == Some(part_of(&face.name))
    } else {
        shown.app.picked.as_deref() == Some(face.name.as_str())
    }
}

/// A touch picks a face, a second one lets go of it. The end of a drag is no touch, and a brush does not pick.
fn pick(shown: &Shown, face: &Face, hand: &Hand) -> Callback<MouseEvent> {
    let again = shown.app.picked.as_deref() == Some(face.name.as_str());
    let surface = (!again).then(|| face.name.clone());
    let hand = hand.clone();
    let has_brush = shown.app.brush.is_some();
    say_if(&shown.send, move |_| {
        (!has_brush && !hand.dragged()).then(|| Action::Pick(surface.clone()))
    })
}
