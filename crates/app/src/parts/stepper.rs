//! A small number with a button on each side.

use yew::prelude::*;

/// A number to increase or decrease by one. `label` says what is counted, and `of` where, such as `, row 2`.
/// The ids of the buttons start with `id`. `limits` are the minimum and maximum.
pub fn stepper(
    (label, of): (&str, &str),
    id: &str,
    value: u32,
    limits: (u32, u32),
    on_change: Callback<u32>,
) -> Html {
    let (least, most) = limits;
    let what = format!("{}{of}", label.to_ascii_lowercase());
    let button = |sign: &'static str, word: &'static str, key: &'static str, next: Option<u32>| {
        let onclick = next.map(|next| on_change.reform(move |_: MouseEvent| next));
        html! {
            <button type="button" id={format!("{id}-{key}")} disabled={next.is_none()}
                aria-label={format!("{word} {what}")} {onclick}>{ sign }</button>
        }
    };
    html! {
        <div class="line">
            <span class="label">{ label }</span>
            <div class="stepper" role="group" aria-label={what.clone()}>
                { button("\u{2212}", "Fewer", "fewer", value.checked_sub(1).filter(|next| *next >= least)) }
                <output aria-live="polite">{ value }</output>
                { button("+", "More", "more", Some(value + 1).filter(|next| *next <= most)) }
            </div>
        </div>
    }
}
