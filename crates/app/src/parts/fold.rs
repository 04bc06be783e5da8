//! A section that expands and collapses. The contents of a collapsed section are not built, so long pages
//! stay fast.

use yew::prelude::*;

/// A summary with a figure, and the contents if the section is open.
pub fn fold(
    name: &str,
    (title, figure): (String, String),
    is_open: bool,
    on_toggle: Callback<String>,
    content: &dyn Fn() -> Html,
) -> Html {
    let toggled = name.to_owned();
    let toggle = on_toggle.reform(move |event: MouseEvent| {
        // The state controls what is open. Otherwise the element could disagree with it after an update.
        event.prevent_default();
        toggled.clone()
    });
    html! {
        <details key={name} open={is_open}>
            <summary id={format!("fold-{name}")} onclick={toggle}>
                <span>{ title }</span>{ " " }<span class="figure">{ figure }</span>
            </summary>
            if is_open { { content() } }
        </details>
    }
}
