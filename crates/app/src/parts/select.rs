//! A choice of one out of many, in a list that opens.

use web_sys::HtmlSelectElement;
use yew::prelude::*;

/// A labelled list. Each option is its key and its word; `on_choose` is told the key.
pub fn select<'a>(
    label: &str,
    id: String,
    options: impl IntoIterator<Item = (&'a str, &'a str)>,
    value: &str,
    on_choose: Callback<String>,
) -> Html {
    let option = |(key, word): (&str, &str)| {
        html! { <option value={key.to_owned()} selected={key == value}>{ word }</option> }
    };
    let options: Html = options.into_iter().map(option).collect();
    framed(label, id, options, on_choose)
}

fn framed(label: &str, id: String, options: Html, on_choose: Callback<String>) -> Html {
    let onchange =
        on_choose.reform(|event: Event| event.target_unchecked_into::<HtmlSelectElement>().value());
    html! {
        <div class="field list">
            <label for={id.clone()}>{ label }</label>
            <select {id} {onchange}>{ options }</select>
        </div>
    }
}
