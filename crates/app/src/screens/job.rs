//! The navigation: the stages of the job in order, each with what it says now.

use workshop::unmeasured;
use yew::prelude::*;

use super::{Send, Shown};
use crate::state::{Action, Stage};
use crate::words;

/// The stages with their element suffix and word.
const STAGES: [(Stage, &str, &str); 6] = [
    (Stage::Measure, "measure", "Measure"),
    (Stage::Condition, "condition", "Condition"),
    (Stage::Finish, "finish", "Finish"),
    (Stage::Shop, "shop", "Shop"),
    (Stage::Work, "work", "Work"),
    (Stage::More, "more", "More"),
];

/// Shows the stages. Without an open piece, only `More` has something to show.
pub fn job(current: Option<Stage>, shown: Option<&Shown>, send: &Send) -> Html {
    let stage = |(stage, id, word): (Stage, &'static str, &'static str)| {
        let is_current = current == Some(stage);
        let says = shown.and_then(|shown| says(shown, stage)).unwrap_or_default();
        let open = send.reform(move |_: MouseEvent| Action::Screen(stage.first()));
        html! {
            <button type="button" id={format!("stage-{id}")} aria-current={is_current.then_some("step")}
                disabled={shown.is_none() && stage != Stage::More} onclick={open}>
                <span>{ word }</span>
                <small>{ says }</small>
            </button>
        }
    };
    html! { <nav class="job" aria-label="Job">{ for STAGES.map(stage) }</nav> }
}

/// Returns what a stage says about the open piece.
fn says(shown: &Shown, stage: Stage) -> Option<String> {
    let piece = &shown.piece;
    let own = &shown.app.workshop.materials;
    Some(match stage {
        Stage::Measure => words::guesses(unmeasured(piece).len()),
        Stage::Condition => words::surface(piece.scheme.condition.substrate).into(),
        Stage::Finish => words::wish(piece.scheme.wish(own)).into(),
        Stage::Shop => words::to_buy(shown.cans.iter()),
        Stage::Work => words::checked_off(shown.app.analysis().checked_off(piece)),
        Stage::More => return None,
    })
}
