//! A choice of one out of a few, all of them in sight.

use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct Props<T: Copy + PartialEq + 'static> {
    /// What is chosen.
    pub label: AttrValue,
    /// How the names of the buttons' elements begin.
    pub id: AttrValue,
    /// Each value with the end of its element's name and its word.
    pub options: Vec<(T, &'static str, &'static str)>,
    /// The value that holds.
    pub value: T,
    /// What happens when another is chosen.
    pub on_choose: Callback<T>,
}

/// A row of buttons of which one is pressed.
#[component]
pub fn Choice<T: Copy + PartialEq + 'static>(props: &Props<T>) -> Html {
    let button = |&(value, key, word): &(T, &'static str, &'static str)| {
        let on_choose = props.on_choose.clone();
        let pressed = value == props.value;
        html! {
            <button type="button" id={format!("{}-{key}", props.id)} aria-pressed={pressed.to_string()}
                onclick={move |_| on_choose.emit(value)}>{ word }</button>
        }
    };
    html! {
        <div class="choice" role="group" aria-label={props.label.clone()}>
            <span class="label">{ props.label.clone() }</span>
            <div class="buttons">{ for props.options.iter().map(button) }</div>
        </div>
    }
}
