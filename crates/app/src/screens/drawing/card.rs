//! The drawing on a job card. It only has lines and figures, so that any printer can print it.

use std::rc::Rc;

use workshop::Piece;
use yew::prelude::*;

use super::super::Result;
use super::dimension::{Line, figure, lines};
use super::margins::{extent, margins};
use super::picture::Picture;
use super::room::Room;
use super::scale::FINE;
use crate::state::{App, Look};
use crate::words;

/// The sheet of one view. Its figures are larger than on the page.
const ROOM: Room = Room {
    size: [1000.0, 570.0],
    figure: 34.0,
};

#[derive(Properties)]
pub struct Props {
    pub app: Rc<App>,
    pub piece: Rc<Piece>,
    pub result: Option<Result>,
}

/// To compare by content would compare the whole workshop.
impl PartialEq for Props {
    fn eq(&self, other: &Self) -> bool {
        let results = match (&self.result, &other.result) {
            (Some(one), Some(other)) => Rc::ptr_eq(one, other),
            (one, other) => one.is_none() && other.is_none(),
        };
        Rc::ptr_eq(&self.app, &other.app) && Rc::ptr_eq(&self.piece, &other.piece) && results
    }
}

/// Draws a piece from the front and the side at the same scale, with its dimensions.
#[component]
pub fn CardDrawings(props: &Props) -> Html {
    let pictures = use_memo(props.piece.clone(), |piece| {
        let takeoff = props.result.as_deref()?.as_ref().ok()?;
        let furniture = piece.furniture();
        let of = |look: Look, most| {
            Picture::no_larger(&furniture, &takeoff.surfaces, look.view(), None, (ROOM, most))
        };
        let at = |picture: &Picture| picture.scale.units_to_the_metre();
        let both = [Look::Front, Look::Side].map(|look| of(look, f64::INFINITY));
        let common = at(&both[0]).min(at(&both[1]));
        Some([Look::Front, Look::Side].map(|look| of(look, common)))
    });
    let Some(pictures) = pictures.as_ref() else {
        return Html::default();
    };
    // The same band for both, so that an inch is as long in each.
    let bands = pictures.iter().map(band);
    let band = bands.fold((f64::INFINITY, 0.0_f64), |(top, bottom), of| {
        (top.min(of.0), bottom.max(of.1))
    });
    html! { <div class="views-of">{ for pictures.iter().map(|picture| drawn(props, picture, band)) }</div> }
}

/// Returns the top and the bottom of a view with its figures, on its sheet.
fn band(picture: &Picture) -> (f64, f64) {
    let [.., top, bottom] = margins(&picture.dimensions, &ROOM);
    let y = |point| picture.scale.at(point)[1];
    (y(picture.bounds.1) - top, y(picture.bounds.0) + bottom)
}

fn drawn(props: &Props, picture: &Picture, (top, bottom): (f64, f64)) -> Html {
    let written = |length| words::without_unit(&props.app.length(length)).to_owned();
    let all = lines(&props.piece, picture, &ROOM, &written, &|_| None);
    // Crop to the piece and its figures, so that the two views are close together.
    let [left, right, ..] = margins(&picture.dimensions, &ROOM);
    let x = |point| picture.scale.at(point)[0];
    let ends = all.iter().filter(|line| line.anchor == "start");
    let ends = ends.map(|line| line.at[0] + extent(&line.text, &ROOM)[0]);
    let from = x(picture.bounds.0) - left;
    let to = ends.fold(x(picture.bounds.1) + right, f64::max);
    html! {
        <svg class="drawing" viewBox={format!("{from:.0} {top:.0} {:.0} {:.0}", to - from, bottom - top)} role="img"
            aria-label="Drawing with dimensions">
            <g transform={format!("scale({})", 1.0 / FINE)}>
                <path class="edges" d={picture.edges.clone()} />
                <path class="outline" d={picture.outline.clone()} />
            </g>
            <g font-size={ROOM.figure.to_string()}>{ for all.into_iter().map(line) }</g>
        </svg>
    }
}

fn line(line: Line) -> Html {
    let [x, y] = line.at;
    html! {
        <g class={classes!("dimension", line.is_guessed.then_some("guessed"))}>
            <path class="extension" d={line.extensions} />
            <path class="thin" d={line.thin} />
            <path class="end" d={line.ends} />
            <text x={format!("{x:.1}")} y={format!("{y:.1}")} text-anchor={line.anchor}>{ figure(&line.text) }</text>
        </g>
    }
}
