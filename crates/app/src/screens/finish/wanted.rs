//! The wanted look and color.

use coatings::Wish;
use web_sys::HtmlInputElement;
use workshop::{Colour, SchemeEdit};
use yew::prelude::*;

use super::Planned;
use crate::parts::{choice, palette};

/// Shows the choice of the look, and the color of paint or stain.
pub fn wanted(planned: &Planned<'_>) -> Html {
    let own = &planned.shown.app.workshop.materials;
    let light = planned.scheme.colour.is_light();
    let wishes = [
        (Wish::Painted { light }, "painted", "Painted"),
        (Wish::Clear, "clear", "Clear"),
        (Wish::StainedClear, "stained", "Stained, then clear"),
    ];
    let wish = planned.scheme.wish(own);
    let plan = planned.change(|wish| Some(SchemeEdit::Suggested(wish)));
    let colour = planned.change(|event: InputEvent| {
        let read = Colour::read(&event.target_unchecked_into::<HtmlInputElement>().value());
        read.map(SchemeEdit::Colour)
    });
    let choose = planned.change(|colour| Some(SchemeEdit::Colour(colour)));
    let colours = workshop::palette(&planned.shown.app.workshop);
    html! {
        <>
            { choice("Look", "wish", &wishes, wish, plan) }
            if wish != Wish::Clear {
                <div class="colours">
                    <label for="colour">{ "Color" }</label>
                    <input id="colour" type="color" value={planned.scheme.colour.write()} oninput={colour} />
                    { palette("colour", &colours, Some(planned.scheme.colour), &choose) }
                </div>
            }
        </>
    }
}
