//! Results while a field shows a refused text. They are based on its previous value. Without one, there are
//! no results.

use yew::prelude::*;

use crate::state::{App, DraftId, Refused};
use crate::words;

/// Shows a line for each selected field whose text is refused.
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

/// Shows results that depend on all of the selected fields. While a text is refused, there are none, because
/// amounts for its previous value would look like amounts for the text.
pub fn strict(app: &App, is_asked: impl Fn(&DraftId) -> bool, content: impl FnOnce() -> Html) -> Html {
    let mut refused = app.refused(is_asked);
    if refused.is_empty() {
        return content();
    }
    refused.iter_mut().for_each(|refused| refused.used = None);
    listed(&refused)
}

/// Shows results that depend on the selected fields, with a line for each refused text.
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
