//! The condition before work: what is on the piece, what is wrong with it, and what that calls for.

use yew::prelude::*;

use super::Shown;
use super::book::only;
use super::finish::{Planned, ground, recommended};
use crate::parts::{button, fold};
use crate::state::{Action, Screen};

/// The repairs that are counted or checked.
const REPAIRS: [&str; 7] = [
    "holes",
    "dents",
    "hardware",
    "stickers",
    "loose",
    "loose-joints",
    "rust",
];

/// Shows the condition of the piece.
pub fn condition(shown: &Shown) -> Html {
    let Shown { app, send, piece, .. } = shown;
    let planned = Planned {
        shown,
        zone: None,
        scheme: &piece.scheme,
    };
    let sizes = || {
        only(
            app,
            send,
            "facts",
            &["hole-width", "hole-depth", "dent-width", "dent-depth"],
        )
    };
    let toggle = send.reform(Action::Fold);
    let is_open = app.unfolded.contains("pits");
    let go_on = send.reform(|_: MouseEvent| Action::Screen(Screen::Finish));
    html! {
        <section class="condition columns" aria-labelledby="condition-title">
            <div>
                <h2 id="condition-title">{ "Condition" }</h2>
                <p class="caution">{ workshop::preparing::of_lead(piece) }</p>
                { ground(&planned) }
                <h3>{ "Lead" }</h3>
                { only(app, send, "facts", &["age", "lead"]) }
            </div>
            <div>
                <h3>{ "Repairs" }</h3>
                { only(app, send, "facts", &REPAIRS) }
                { fold("pits", ("Size of holes and dents".into(), String::new()), is_open, toggle, &sizes) }
                <h3>{ "Recommended" }</h3>
                { recommended(&planned) }
                { button("go-on", "Next: finish", go_on) }
            </div>
        </section>
    }
}
