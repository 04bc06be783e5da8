//! The drawing on a job card: lines and figures alone, so that any printer can print it.

use std::rc::Rc;

use workshop::Piece;
use yew::prelude::*;

use super::super::Result;
use super::dimension::{Line, lines};
use super::picture::{FINE, Picture, SHEET};
use crate::state::{App, Look};

#[derive(Properties, PartialEq)]
pub struct Props {
    pub app: Rc<App>,
    pub piece: Rc<Piece>,
    pub result: Rc<Option<Result>>,
    pub look: Look,
}

/// A piece as seen from one side, with its dimensions.
#[component]
pub fn CardDrawing(props: &Props) -> Html {
    let of = (props.piece.clone(), props.look);
    let picture = use_memo(of, |(piece, look)| {
        let takeoff = props.result.as_ref().as_ref()?.as_ref().ok()?;
        Some(Picture::of(&piece.furniture(), takeoff, look.view()))
    });
    let Some(picture) = picture.as_ref() else {
        return Html::default();
    };
    let all = lines(&props.piece, picture, &|length| props.app.length(length), &|_| {
        None
    });
    html! {
        <svg class="drawing" viewBox={format!("0 0 {} {}", SHEET[0], SHEET[1])} role="img" aria-label="Drawing with dimensions">
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
