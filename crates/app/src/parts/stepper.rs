//! A small count with a button to either side.

use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct Props {
    /// What is counted: `rows`, `coats of paint`.
    pub label: AttrValue,
    /// How the names of the buttons' elements begin.
    pub id: AttrValue,
    /// The count.
    pub value: u32,
    /// The least and the most that it can be.
    pub limits: (u32, u32),
    /// What happens when it changes.
    pub on_change: Callback<u32>,
}

/// A count that is made one more or one less.
#[component]
pub fn Stepper(props: &Props) -> Html {
    let (least, most) = props.limits;
    let button = |sign: &'static str, word: &'static str, next: Option<u32>| {
        let on_change = props.on_change.clone();
        let onclick = next.map(|next| Callback::from(move |_: MouseEvent| on_change.emit(next)));
        html! {
            <button type="button" id={format!("{}-{}", props.id, word.to_lowercase())} disabled={next.is_none()}
                aria-label={format!("{word} {}", props.label)} {onclick}>{ sign }</button>
        }
    };
    html! {
        <div class="stepper" role="group" aria-label={props.label.clone()}>
            { button("\u{2212}", "Fewer", props.value.checked_sub(1).filter(|next| *next >= least)) }
            <output aria-live="polite">{ props.value }</output>
            { button("+", "More", Some(props.value + 1).filter(|next| *next <= most)) }
        </div>
    }
}
