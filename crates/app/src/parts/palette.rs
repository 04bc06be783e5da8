//! A color palette for picking a color with one touch.

use workshop::Colour;
use yew::prelude::*;

use crate::words;

/// A row of colors. `chosen` is the current one. The ids of the buttons start with `of`.
pub fn palette(of: &str, colours: &[Colour], chosen: Option<Colour>, on_choose: &Callback<Colour>) -> Html {
    let one = |colour: &Colour| {
        let colour = *colour;
        html! {
            <button type="button" id={format!("{of}-{}", &colour.write()[1..])} aria-label={words::colour(colour.0)}
                aria-pressed={(chosen == Some(colour)).to_string()} onclick={on_choose.reform(move |_: MouseEvent| colour)}>
                <svg viewBox="0 0 10 10" aria-hidden="true">
                    <rect width="10" height="10" fill={colour.write()} />
                </svg>
            </button>
        }
    };
    html! { <div class="palette" role="group" aria-label="Your colors">{ for colours.iter().map(one) }</div> }
}
