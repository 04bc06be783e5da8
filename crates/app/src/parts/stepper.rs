//! A small count with a button to either side.

use yew::prelude::*;

/// A count that is made one more or one less. `label` says what is counted and `of` of what, as in `, row 2`; the
/// names of the buttons' elements begin with `id`; `limits` are the least and the most that it can be.
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
