//! Plain buttons.

use yew::prelude::*;

use super::icon::{Icon, icon};

/// A button with a word.
pub fn button(id: impl Into<AttrValue>, word: &'static str, onclick: Callback<MouseEvent>) -> Html {
    labelled(id.into(), word, None, onclick)
}

/// A button with a word and a longer label for screen readers.
pub fn button_for(id: String, word: &'static str, label: String, onclick: Callback<MouseEvent>) -> Html {
    labelled(id.into(), word, Some(label), onclick)
}

fn labelled(id: AttrValue, word: &'static str, label: Option<String>, onclick: Callback<MouseEvent>) -> Html {
    html! { <button type="button" {id} aria-label={label} {onclick}>{ word }</button> }
}

/// A button with an icon and a word. In narrow layouts, only screen readers get the word. Without `onclick`,
/// the button is disabled.
pub fn sign(id: &'static str, of: Icon, word: &'static str, onclick: Option<Callback<MouseEvent>>) -> Html {
    html! {
        <button type="button" {id} class="sign" disabled={onclick.is_none()} {onclick}>
            { icon(of) }<span>{ word }</span>
        </button>
    }
}
