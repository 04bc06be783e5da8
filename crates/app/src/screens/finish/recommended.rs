//! The coats that suit the condition and the wanted look, with the reasons.

use coatings::suggest::{Reason, SuggestedLayer, Suggestion};
use workshop::SchemeEdit;
use yew::prelude::*;

use super::Planned;
use crate::parts::{button, fold};
use crate::state::Action;
use crate::words;

/// Shows the recommended coats. One touch takes them.
pub fn recommended(planned: &Planned<'_>) -> Html {
    let app = &planned.shown.app;
    let own = &app.workshop.materials;
    let suggestion = planned.shown.piece.suggestion(planned.scheme, own);
    let is_planned = planned.scheme.is_as_suggested(own, &suggestion);
    let toggle = planned.shown.send.reform(Action::Fold);
    let wish = planned.scheme.wish(own);
    let plan = planned.change(move |_: MouseEvent| Some(SchemeEdit::Suggested(wish)));
    let is_open = app.unfolded.contains("asks");
    html! {
        <div class="recommended" id="recommended">
            if is_planned {
                <p>{ if suggestion.against.is_empty() { "This is the recommended plan." } else { "These are the right coats. Do this first:" } }</p>
            } else {
                <p>{ words::asked_for(&suggestion) }</p>
                { button("use-plan", "Use this plan", plan) }
            }
            if planned.shown.piece.lacks_old_color(planned.scheme, own) {
                <p class="hint" id="lacks-old-color">{ "Enter the old paint\u{2019}s color to see how many coats hide it." }</p>
            }
            <div class="against" id="against" role="status">
                { for suggestion.against.iter().map(|reason| html! { <p>{ reason.text }</p> }) }
            </div>
            { fold("asks", ("Why".into(), String::new()), is_open, toggle, &|| content(&suggestion)) }
        </div>
    }
}

fn content(suggestion: &Suggestion) -> Html {
    html! {
        <div class="asks">
            if suggestion.wants_bare_wood() {
                <p>{ "Strip the old finish first. The steps are under Work." }</p>
            }
            <ol>{ for suggestion.layers.iter().map(suggested) }</ol>
            <ul>{ for suggestion.against.iter().chain(&suggestion.notes).map(reason) }</ul>
        </div>
    }
}

fn suggested(layer: &SuggestedLayer) -> Html {
    let name = coatings::material(layer.material).map_or("", |material| &material.name);
    html! {
        <li>
            <b>{ name }</b>{ format!(", {}", words::coats(layer.coats)) }
            <ul>{ for layer.reasons.iter().map(reason) }</ul>
        </li>
    }
}

fn reason(reason: &Reason) -> Html {
    html! {
        <li>
            { reason.text }
            <small>{ words::source(reason.source, reason.certainty) }</small>
        </li>
    }
}
