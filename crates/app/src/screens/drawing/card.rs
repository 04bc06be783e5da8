//! The drawing on a job card. It only has lines and figures, so that any printer can print it.

use std::rc::Rc;

use workshop::Piece;
use yew::prelude::*;

use super::super::Result;
use super::dimension::{Line, lines};
use super::margins::margins;
use super::picture::{Picture, SHEET};
use super::scale::FINE;
use crate::state::{App, Look};

/// The width of a character in the figures on the card, which are larger than on the page.
const WIDTH: f64 = 17.0;

#[derive(Properties, PartialEq)]
pub struct Props {
    pub app: Rc<App>,
    pub piece: Rc<Piece>,
    pub result: Option<Result>,
}

/// Draws a piece from the front and the side at the same scale, with its dimensions.
#[component]
pub fn CardDrawings(props: &Props) -> Html {
    let pictures = use_memo(props.piece.clone(), |piece| {
        let takeoff = props.result.as_deref()?.as_ref().ok()?;
        let furniture = piece.furniture();
        let of = |look: Look, most| Picture::no_larger(&furniture, takeoff, look.view(), most);
        let at = |picture: &Picture| picture.scale.units_to_the_metre();
        let both = [Look::Front, Look::Side].map(|look| of(look, f64::INFINITY));
        let common = at(&both[0]).min(at(&both[1]));
        Some([Look::Front, Look::Side].map(|look| of(look, common)))
    });
    let Some(pictures) = pictures.as_ref() else {
        return Html::default();
    };
    html! { <div class="views-of">{ for pictures.iter().map(|picture| drawn(props, picture)) }</div> }
}

fn drawn(props: &Props, picture: &Picture) -> Html {
    let all = lines(&props.piece, picture, &|length| props.app.length(length), &|_| {
        None
    });
    // Crop to the piece and its figures, so that the two views are close together.
    let [left, right, ..] = margins(&picture.dimensions);
    let x = |point| picture.scale.at(point)[0];
    let ends = all.iter().filter(|line| line.figure.anchor == "start");
    let ends = ends.map(|line| line.figure.at[0] + WIDTH * line.text.chars().count() as f64);
    let from = x(picture.bounds.0) - left;
    let to = ends.fold(x(picture.bounds.1) + right, f64::max);
    html! {
        <svg class="drawing" viewBox={format!("{from:.0} 0 {:.0} {}", to - from, SHEET[1])} role="img"
            aria-label="Drawing with dimensions">
            <g transform={format!("scale({})", 1.0 / FINE)}>
                <path class="edges" d={picture.edges.clone()} />
                <path class="outline" d={picture.outline.clone()} />
            </g>
            { for all.into_iter().map(line) }
        </svg>
    }
}

fn line(line: Line) -> Html {
    let [x, y] = line.figure.at;
    html! {
        <g class={classes!("dimension", line.is_guessed.then_some("guessed"))}>
            <path class="thin" d={line.thin} />
            <path class="end" d={line.ends} />
            <text x={format!("{x:.1}")} y={format!("{y:.1}")} transform={line.figure.turn}
                text-anchor={line.figure.anchor}>{ line.text }</text>
        </g>
    }
}
