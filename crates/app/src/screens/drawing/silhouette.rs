//! Thumbnails of pieces.

use std::rc::Rc;

use geometry::{Drawing, View};
use gloo::timers::callback::Timeout;
use workshop::{Piece, as_far_as_it_fits};
use yew::prelude::*;

use super::scale::{FINE, Scale};
use crate::browser::device::when_in_sight;

/// The width and height of a thumbnail, in drawing units.
const SMALL: [f64; 2] = [100.0, 64.0];

/// The delay before a thumbnail follows a change, in milliseconds. It does not update during typing.
const REST: u32 = 250;

#[derive(Properties)]
pub struct Props {
    pub piece: Rc<Piece>,
}

/// There may be a thousand thumbnails, and nearly all pieces are the same object as before.
impl PartialEq for Props {
    fn eq(&self, other: &Props) -> bool {
        Rc::ptr_eq(&self.piece, &other.piece) || self.piece == other.piece
    }
}

/// Shows a thumbnail of a piece from the front, in its color. It is drawn when it becomes visible.
#[component]
pub fn Silhouette(props: &Props) -> Html {
    let (sheet, is_seen) = (use_node_ref(), use_state(|| false));
    use_effect_with((), {
        let (sheet, is_seen) = (sheet.clone(), is_seen.setter());
        move |()| {
            if let Some(sheet) = sheet.cast::<web_sys::Element>() {
                when_in_sight(&sheet, move || is_seen.set(true));
            }
        }
    });
    let now = props.piece.furniture();
    let drawn = use_state(|| now.clone());
    use_effect_with(now, {
        let (is_drawn, drawn) = (drawn.clone(), drawn.setter());
        move |now| {
            // If the piece cannot be drawn, the thumbnail stays as it was.
            let later = (*is_drawn != *now && now.assembly().is_ok()).then(|| {
                let now = now.clone();
                Timeout::new(REST, move || drawn.set(now))
            });
            // Another change within the delay restarts it.
            || drop(later)
        }
    });
    let paths = use_memo((*is_seen, (*drawn).clone()), |(is_seen, furniture)| {
        if !is_seen {
            return None;
        }
        let assembly = furniture.assembly();
        // A piece that does not fit when it becomes visible is drawn without the readings that do not fit.
        let as_far = || as_far_as_it_fits(&props.piece)?.furniture().assembly().ok();
        let surfaces = assembly.ok().or_else(as_far)?.surfaces();
        let drawing = Drawing::of(&surfaces, View::Front);
        let scale = Scale::fitting(&drawing, SMALL, [4.0; 4], f64::INFINITY);
        let lines = drawing.faces.iter().map(|face| scale.lines(&face.lines));
        let glass = drawing
            .faces
            .iter()
            .filter(|face| !face.surface.part.kind.takes_finish());
        let glass = glass.map(|face| scale.path(&face.region));
        let paths = [scale.path(&drawing.outline), glass.collect(), lines.collect()];
        Some(paths.map(AttrValue::from))
    });
    let [outline, glass, seams] = paths.as_ref().clone().unwrap_or_default();
    html! {
        <svg ref={sheet} class="silhouette" viewBox={format!("0 0 {} {}", SMALL[0] * FINE, SMALL[1] * FINE)} aria-hidden="true">
            <path fill={props.piece.scheme.colour.write()} d={outline} />
            <path class="glass" d={glass} />
            <path class="seam" d={seams} />
        </svg>
    }
}
