//! Small pictures of pieces.

use std::rc::Rc;

use geometry::{Drawing, View};
use workshop::Piece;
use yew::prelude::*;

use super::picture::{FINE, Scale};

/// The width and height of a small picture in its own units.
const SMALL: [f64; 2] = [100.0, 64.0];

#[derive(Properties, PartialEq)]
pub struct Props {
    pub piece: Rc<Piece>,
}

/// A small picture of a piece from the front, in its colour.
#[component]
pub fn Silhouette(props: &Props) -> Html {
    let paths = use_memo(props.piece.furniture(), |furniture| {
        let surfaces = furniture.assembly().ok()?.surfaces();
        let drawing = Drawing::of(&surfaces, View::Front);
        let scale = Scale::fitting(&drawing, SMALL, [4.0; 4]);
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
        <svg class="silhouette" viewBox={format!("0 0 {} {}", SMALL[0] * FINE, SMALL[1] * FINE)} aria-hidden="true">
            <path fill={props.piece.scheme.colour.write()} d={outline} />
            <path class="glass" d={glass} />
            <path class="seam" d={seams} />
        </svg>
    }
}
