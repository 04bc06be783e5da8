//! Everything that is not a stage of the job.

use std::rc::Rc;

use yew::prelude::*;

use super::Send;
use crate::state::{Action, App, Screen};

/// The screens under `More`: the screen, its title, and what it is for.
const LINKS: [(Screen, &str, &str); 8] = [
    (Screen::Verdict, "Should I buy it?", "The most to pay, and why"),
    (
        Screen::Money,
        "Money",
        "Costs, prices and profit of this piece and of all",
    ),
    (Screen::Prices, "Local prices", "What pieces sell for near you"),
    (Screen::Schedule, "Schedule", "Every piece, day by day"),
    (
        Screen::Mixing,
        "Mixing",
        "Recipes by weight, chalk-type paint, thinning",
    ),
    (Screen::Shelf, "Shelf", "The cans and supplies you have"),
    (Screen::Export, "Export", "Share link, tables, drawings"),
    (
        Screen::Settings,
        "Settings and files",
        "Units, currency, saving, opening a file",
    ),
];

/// Shows the list of these screens.
pub fn more(app: &Rc<App>, send: &Send) -> Html {
    let has_piece = app.piece().is_some();
    let link = |(screen, title, what): (Screen, &'static str, &'static str)| {
        html! {
            <li>
                <button type="button" id={format!("more-{}", screen.key())} disabled={screen.is_of_piece() && !has_piece}
                    onclick={send.reform(move |_: MouseEvent| Action::Screen(screen))}>
                    <span>{ title }<small>{ what }</small></span>
                </button>
            </li>
        }
    };
    html! {
        <section class="more" aria-labelledby="more-title">
            <h2 id="more-title">{ "More" }</h2>
            <ul class="links">{ for LINKS.map(link) }</ul>
        </section>
    }
}
