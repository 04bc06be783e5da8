//! A plain button.

use yew::prelude::*;

/// A button with a word on it.
pub fn button(id: impl Into<AttrValue>, word: &'static str, onclick: Callback<MouseEvent>) -> Html {
    labelled(id.into(), word, None, onclick)
}

/// A button whose word says too little on its own.
pub fn button_for(id: String, word: &'static str, label: String, onclick: Callback<MouseEvent>) -> Html {
    labelled(id.into(), word, Some(label), onclick)
}

fn labelled(id: AttrValue, word: &'static str, label: Option<String>, onclick: Callback<MouseEvent>) -> Html {
    html! { <button type="button" {id} aria-label={label} {onclick}>{ word }</button> }
}
