//! A part of a sheet that opens and closes. What is closed is not made at all, so long sheets stay quick.

use yew::prelude::*;

/// A summary with a figure, and what lies under it when it is open.
pub fn fold(
    name: &str,
    (title, figure): (String, String),
    is_open: bool,
    on_toggle: Callback<String>,
    content: &dyn Fn() -> Html,
) -> Html {
    let toggled = name.to_owned();
    let toggle = on_toggle.reform(move |event: MouseEvent| {
        // The state says what is open; the element would be of another mind after it was made anew.
        event.prevent_default();
        toggled.clone()
    });
    html! {
        <details key={name} open={is_open}>
            <summary id={format!("fold-{name}")} onclick={toggle}>
                <span>{ title }</span><span class="figure">{ figure }</span>
            </summary>
            if is_open { { content() } }
        </details>
    }
}
