//! A choice from many options, in a drop-down list.

use web_sys::HtmlSelectElement;
use yew::prelude::*;
use yew::virtual_dom::{VTag, VText};

/// A list with a label. Each option has a key and a word. `on_choose` receives the key.
pub fn select<'a>(
    label: &str,
    id: String,
    options: impl IntoIterator<Item = (&'a str, &'a str)>,
    value: &str,
    on_choose: Callback<String>,
) -> Html {
    let mut is_long = false;
    let option = |(key, word): (&str, &str)| {
        is_long |= key == value && word.chars().count() > LONG;
        self::option(key, word, key == value)
    };
    let options: Html = options.into_iter().map(option).collect();
    framed(label, id, options, is_long, on_choose)
}

/// An option of a list. The selection is set as a property instead of an attribute. Browsers ignore the
/// attribute after the maker made a choice, so the list for the next piece would still show the choice for
/// the last one.
pub fn option(key: &str, word: &str, is_chosen: bool) -> Html {
    let mut option = VTag::new("option");
    option.add_attribute("value", key.to_owned());
    option.add_property("selected", is_chosen);
    option.add_child(VText::new(word.to_owned()).into());
    option.into()
}

/// A selected word longer than this is cut off in a list of normal width.
const LONG: usize = 16;

fn framed(label: &str, id: String, options: Html, is_long: bool, on_choose: Callback<String>) -> Html {
    let onchange =
        on_choose.reform(|event: Event| event.target_unchecked_into::<HtmlSelectElement>().value());
    html! {
        <div class={if is_long { "field list long" } else { "field list" }}>
            <label for={id.clone()}>{ label }</label>
            <select {id} {onchange}>{ options }</select>
        </div>
    }
}
