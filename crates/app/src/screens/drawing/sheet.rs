//! The drawing itself: faces in the color of the paint or bare, shades, lines, outline and dimensions.

use std::rc::Rc;

use geometry::Point2;
use workshop::{Colour, OwnMaterial, Piece, SurfaceLine};
use yew::prelude::*;

use super::super::{Shown, say_if};
use super::dimension::{closer, dimension_lines};
use super::hand::Hand;
use super::margins::margins;
use super::picture::{Face, Picture};
use super::scale::FINE;
use crate::state::{Action, RowPlace, Screen, part_of};

/// The appearance of a face.
pub enum Look {
    /// Behind glass.
    Glass,
    /// Painted in a color.
    Coloured(Colour),
    /// Under a clear finish.
    Clear,
    /// Unfinished.
    Bare,
}

impl Look {
    /// Returns true if dark lines would be invisible on it.
    pub fn is_dark(&self) -> bool {
        matches!(self, Look::Coloured(colour) if !colour.is_light())
    }
}

/// Shows the drawing of a piece.
pub fn sheet(shown: &Shown, picture: &Picture, surfaces: &[SurfaceLine], hand: &Hand) -> Html {
    let face = |face: &Face| {
        let own = &shown.app.workshop.materials;
        let fill = match look(&shown.piece, own, face, surfaces) {
            Look::Glass => None,
            Look::Coloured(colour) => Some(AttrValue::from(colour.write())),
            Look::Clear => Some("var(--clear)".into()),
            Look::Bare => Some("var(--bare)".into()),
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
    let is_dark = |face: &&Face| look(&shown.piece, &shown.app.workshop.materials, face, surfaces).is_dark();
    let picked = picture.faces.iter().filter(|face| is_picked(shown, face));
    let is_measured = matches!(shown.app.screen, Screen::Measure | Screen::Parts);
    let view_box = match (is_measured, closer(shown.app.field, picture)) {
        (true, Some(closer)) => close_up(whole(picture), closer),
        (true, None) => whole(picture),
        (false, _) => cropped(picture),
    };
    let view_box = view_box.map(|of| format!("{of:.0}")).join(" ");
    html! {
        <svg class="drawing" viewBox={view_box} role="group"
            aria-label={format!("{}, drawn to scale", shown.piece.name)} onpointerdown={hand.down(shown)}
            onpointermove={hand.moved(shown)} onpointerup={hand.up(shown)} onpointercancel={hand.up(shown)}>
            <g transform={format!("scale({})", 1.0 / FINE)}>
                { for picture.faces.iter().map(face) }
                <path class="edges" d={picture.edges.clone()} />
                { for picture.faces.iter().filter(is_dark).map(|face| html! {
                    <path class="on-dark" d={face.lines.clone()} />
                }) }
                <path class="outline" d={picture.outline.clone()} />
                { for picked.map(|face| html! { <path class="mark" d={face.lines.clone()} /> }) }
            </g>
            if is_measured { { dimension_lines(shown, picture) } }
        </svg>
    }
}

/// Returns the sheet as a view box, as high as the piece with its dimension lines.
fn whole(picture: &Picture) -> [f64; 4] {
    let [_, _, above, below] = margins(&picture.dimensions, &picture.room);
    let (top, bottom) = upper_and_lower_edge(picture);
    let (y, height) = (top - above, bottom - top + above + below);
    [0.0, y, picture.room.size[0], height]
}

/// Returns the part of a view box around a point, so many times closer.
fn close_up([x, y, width, height]: [f64; 4], (middle, times): (Point2, f64)) -> [f64; 4] {
    let part = [width / times, height / times];
    let from = [(x, width), (y, height)];
    let [x, y] = [0, 1].map(|axis| {
        let (least, all) = from[axis];
        (middle[axis] - part[axis] / 2.0).clamp(least, least + all - part[axis])
    });
    [x, y, part[0], part[1]]
}

fn upper_and_lower_edge(picture: &Picture) -> (f64, f64) {
    let (low, high) = picture.bounds;
    (picture.scale.at(high)[1], picture.scale.at(low)[1])
}

/// Returns the part of the sheet with the piece, without the room for dimension lines.
fn cropped(picture: &Picture) -> [f64; 4] {
    let (low, high) = picture.bounds;
    let [left, right] = [low, high].map(|corner| picture.scale.at(corner)[0]);
    let (top, bottom) = upper_and_lower_edge(picture);
    [
        left - EDGE,
        top - EDGE,
        right - left + 2.0 * EDGE,
        bottom - top + 2.0 * EDGE,
    ]
}

/// The margin around a piece without dimension lines.
const EDGE: f64 = 6.0;

/// Returns the appearance of a face with its planned finish.
pub fn look(piece: &Piece, own: &[Rc<OwnMaterial>], face: &Face, surfaces: &[SurfaceLine]) -> Look {
    match surfaces.get(face.place) {
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

/// Returns true if a face is selected. Where parts are changed, selection applies to the whole part, and where the piece is
/// measured, to the whole row.
fn is_picked(shown: &Shown, face: &Face) -> bool {
    let app = &shown.app;
    match app.screen {
        Screen::Parts => app.part.as_deref() == Some(part_of(&face.name)),
        Screen::Measure => app.row.is_some() && row(shown, face) == app.row,
        _ => app.picked.as_deref() == Some(face.name.as_str()),
    }
}

/// Returns the row of fronts that a face belongs to.
fn row(shown: &Shown, face: &Face) -> Option<RowPlace> {
    let line = shown.takeoff()?.surfaces.get(face.place)?;
    RowPlace::of(&shown.piece, line.surface.id.part)
}

/// Returns a callback that selects a face, or deselects it if it was selected. Where the piece is measured, it selects the
/// row. The end of a drag has no effect, and neither does a brush.
fn pick(shown: &Shown, face: &Face, hand: &Hand) -> Callback<MouseEvent> {
    let app = &shown.app;
    let action = if app.screen == Screen::Measure {
        let row = row(shown, face);
        Action::Row(row.filter(|_| row != app.row))
    } else {
        let again = app.picked.as_deref() == Some(face.name.as_str());
        Action::Pick((!again).then(|| face.name.clone()))
    };
    let hand = hand.clone();
    let has_brush = app.brush.is_some();
    say_if(&shown.send, move |_| {
        (!has_brush && !hand.dragged()).then(|| action.clone())
    })
}
