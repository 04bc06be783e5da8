//! What the answers rest on while a field shows a text that it does not take: on what it had before, or on nothing; then
//! there is no answer.

use yew::prelude::*;

use crate::state::{App, DraftId, Refused};
use crate::words;

/// A line for each of the fields that are asked about whose text is not taken.
pub fn lines(app: &App, is_asked: impl Fn(&DraftId) -> bool) -> Html {
    listed(&app.refused(is_asked))
}

fn listed(refused: &[Refused]) -> Html {
    let line = |refused| html! { <li>{ words::refused(refused) }</li> };
    html! {
        if !refused.is_empty() {
            <div role="status"><ul class="refused">{ for refused.iter().map(line) }</ul></div>
        }
    }
}

/// An answer that rests on the fields that are asked about, with a line for each of them whose text is not taken.
pub fn answer(app: &App, is_asked: impl Fn(&DraftId) -> bool, content: impl FnOnce() -> Html) -> Html {
    let refused = app.refused(is_asked);
    let is_blocked = refused.iter().any(|refused| refused.used.is_none());
    html! {
        <>
            { listed(&refused) }
            if !is_blocked { { content() } }
        </>
    }
}
