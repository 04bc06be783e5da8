//! The drawing of a piece: visible faces, outline and dimension lines. It uses the same surfaces as the
//! takeoff.

mod card;
mod dimension;
mod hand;
mod margins;
mod picture;
mod room;
mod scale;
mod sheet;
mod silhouette;
mod svg;

use std::rc::Rc;

use geometry::BayPlace;
use workshop::{Piece, SurfaceLine, Takeoff, as_far_as_it_fits, surfaces, touched_faces};
use yew::prelude::*;

pub use card::CardDrawings;
pub use room::{Room, use_room};
pub use silhouette::Silhouette;
pub use svg::svg;

use super::Shown;
use super::surfaces::{switch_or_word, zone_list};
use crate::parts::{Icon, icon};
use crate::state::{Action, Look, Screen};
use crate::words;

use hand::Hand;
use picture::Picture;

/// The maximum number of overlaps described one by one.
const OVERLAPS: usize = 3;

/// The contents of the drawing.
pub struct Drawn {
    /// The picture.
    picture: Rc<Option<Picture>>,
    /// The surfaces that the picture shows.
    surfaces: Option<Surfaces>,
    /// The current touch.
    hand: Hand,
}

/// The surfaces of a drawing.
#[derive(Clone)]
enum Surfaces {
    /// Those of a takeoff.
    Measured(Rc<Takeoff>),
    /// Those of a piece without the readings that do not fit.
    Fitting(Rc<Vec<SurfaceLine>>),
}

impl Surfaces {
    fn lines(&self) -> &[SurfaceLine] {
        match self {
            Surfaces::Measured(takeoff) => &takeoff.surfaces,
            Surfaces::Fitting(lines) => lines,
        }
    }
}

/// Draws the open piece. While a measurement does not fit, the last drawing stays.
#[hook]
pub fn use_drawn(
    piece: Option<&Rc<Piece>>,
    result: Option<&super::Result>,
    look: Look,
    rows_of: Option<BayPlace>,
    room: Room,
) -> Drawn {
    let hand = (*use_memo((), |()| Hand::default())).clone();
    let last = use_mut_ref(|| None::<(Rc<Piece>, Surfaces)>);
    if let (Some(piece), Some(Ok(takeoff))) = (piece, result.map(|result| &**result)) {
        *last.borrow_mut() = Some((piece.clone(), Surfaces::Measured(Rc::clone(takeoff))));
    }
    let is_it = |piece: &Piece| {
        last.borrow()
            .as_ref()
            .is_some_and(|(drawn, _)| drawn.id == piece.id)
    };
    if let Some(piece) = piece.filter(|piece| !is_it(piece)) {
        // The piece did not fit when it was opened, so it is drawn without the readings that do not fit.
        let fits = as_far_as_it_fits(piece).map(Rc::new);
        *last.borrow_mut() = fits.and_then(|piece| {
            let lines = surfaces(&piece).ok()?;
            Some((piece, Surfaces::Fitting(Rc::new(lines))))
        });
    }
    let drawn = last.borrow().clone();
    let furniture = drawn.as_ref().map(|(piece, _)| piece.furniture());
    let surfaces = drawn.map(|(_, surfaces)| surfaces);
    let made_of = surfaces.clone();
    let picture = use_memo(
        (furniture, look, rows_of, room),
        move |(furniture, look, rows_of, room)| {
            Some(Picture::of(
                furniture.as_ref()?,
                made_of.as_ref()?.lines(),
                look.view(),
                *rows_of,
                *room,
            ))
        },
    );
    Drawn {
        picture,
        surfaces,
        hand,
    }
}

/// Shows the drawing beside the content of a screen that changes what is drawn.
pub fn beside(shown: &Shown, drawn: &Drawn, content: Html) -> Html {
    html! {
        <div class="beside">
            <div class="drawn">{ board(shown, drawn) }</div>
            <div class="questions">{ content }</div>
        </div>
    }
}

/// Shows the drawing, the view buttons, overlaps, and the selected surface.
pub fn board(shown: &Shown, drawn: &Drawn) -> Html {
    let takeoff = shown.takeoff();
    html! {
        <section id="drawing" class={classes!("sheet", takeoff.is_none().then_some("stale"), shown.app.brush.is_some().then_some("brushed"))} aria-label="Drawing" tabindex="-1">
            { views(shown) }
            { sheet(shown, drawn) }
            { takeoff.map(|takeoff| overlaps(shown, takeoff)) }
            { takeoff.map(|takeoff| notices(shown, takeoff)) }
            if shown.app.screen != Screen::Measure { { picked(shown) } }
        </section>
    }
}

/// Shows the drawing alone.
pub fn sheet(shown: &Shown, drawn: &Drawn) -> Html {
    match (drawn.picture.as_ref(), &drawn.surfaces) {
        (Some(picture), Some(surfaces)) => sheet::sheet(shown, picture, surfaces.lines(), &drawn.hand),
        _ => html! { <p class="nothing">{ "Correct the sizes to see the drawing." }</p> },
    }
}

/// The views that the buttons step through, with their words.
const VIEWS: [(Look, &str); 6] = [
    (Look::Cabinet, "From the right"),
    (Look::Front, "Front"),
    (Look::Side, "Right side"),
    (Look::Back, "Back"),
    (Look::Left, "Left side"),
    (Look::Above, "From above"),
];

/// Shows the current view, and buttons for the one before and the next.
fn views(shown: &Shown) -> Html {
    let look = shown.app.look;
    let place = VIEWS.iter().position(|(view, _)| *view == look);
    let word = place
        .and_then(|place| VIEWS.get(place))
        .map_or("Turned", |(_, word)| word);
    let step = |by: usize| {
        let next = place.map_or(0, |place| (place + by) % VIEWS.len());
        let next = VIEWS.get(next).map_or(Look::Cabinet, |(view, _)| *view);
        shown.send.reform(move |_: MouseEvent| Action::Look(next))
    };
    html! {
        <div class="turn" role="group" aria-label="View">
            <button type="button" id="view-before" aria-label="Previous view" onclick={step(VIEWS.len() - 1)}>{ icon(Icon::Back) }</button>
            <span id="view" aria-live="polite">{ word }</span>
            <button type="button" id="view-next" aria-label="Next view" onclick={step(1)}>{ icon(Icon::On) }</button>
        </div>
    }
}

/// Lists overlapping parts, the first few in full.
fn overlaps(shown: &Shown, takeoff: &Takeoff) -> Html {
    let system = shown.app.workshop.units;
    let all = &takeoff.overlaps;
    if all.is_empty() {
        return Html::default();
    }
    let sentences = all
        .iter()
        .take(OVERLAPS)
        .map(|overlap| words::overlap(overlap, system));
    let more = all.len().saturating_sub(OVERLAPS);
    let more = (more > 0).then(|| format!("{more} more places where parts overlap."));
    html! {
        <ul id="overlaps" class="overlaps" role="status">
            { for sentences.chain(more).map(|sentence| html! { <li>{ sentence }</li> }) }
        </ul>
    }
}

/// Lists inputs that have no effect, the first few in full.
fn notices(shown: &Shown, takeoff: &Takeoff) -> Html {
    let system = shown.app.workshop.units;
    let all = &takeoff.notices;
    if all.is_empty() {
        return Html::default();
    }
    let sentences = all.iter().take(OVERLAPS).map(|notice| notice.message(system));
    let more = all.len().saturating_sub(OVERLAPS);
    let more = (more > 0).then(|| format!("{more} more of these."));
    html! {
        <ul id="notices" class="overlaps" role="status">
            { for sentences.chain(more).map(|sentence| html! { <li>{ sentence }</li> }) }
        </ul>
    }
}

/// Shows the calculation of the selected surface.
fn picked(shown: &Shown) -> Html {
    let Some(line) = picked_line(shown) else {
        return Html::default();
    };
    let system = shown.app.workshop.units;
    let lines = shown.takeoff().map_or(&[][..], |takeoff| &takeoff.surfaces);
    html! {
        <div class="picked" aria-live="polite">
            <b>{ line.surface.id.part.label() }</b>
            { switch_or_word(shown, line, &touched_faces(&shown.piece, lines, &line.surface.id.to_string())) }
            { zone_list(shown, line, "picked-zone".into()) }
            <span class="figure">{ words::area(line.surface.net, system) }</span>
            <span class="working">{ words::working(&line.surface, system) }</span>
        </div>
    }
}

fn picked_line(shown: &Shown) -> Option<&SurfaceLine> {
    let name = shown.app.picked.as_deref()?;
    let mut lines = shown.takeoff()?.surfaces.iter();
    lines.find(|line| line.surface.id.to_string() == name)
}
