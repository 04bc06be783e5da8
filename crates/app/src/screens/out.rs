//! What leaves the page: the job card on paper, tables, pictures, a link.

use yew::prelude::*;

use super::{Shown, card};
use crate::browser::print;
use crate::parts::button;

/// The sheet of the job card.
pub fn out(shown: &Shown) -> Html {
    html! {
        <section aria-label="Job card" class="out">
            <div class="buttons">
                { button("print", "Print the card", Callback::from(|_: MouseEvent| print())) }
            </div>
            { card::card(shown) }
        </section>
    }
}
