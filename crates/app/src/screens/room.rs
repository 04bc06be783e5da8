//! The content of each screen, and the way back from those within a stage.

use std::rc::Rc;

use yew::prelude::*;

use super::{
    Send, Shown, alter, amounts, compare, condition, days, drawing, finish, measure, mixing, money, more,
    out, pieces, prices, settings, shelf, shop, start, surfaces, verdict, work,
};
use crate::state::{Action, App, Screen};

/// Shows the current screen. One that shows the open piece needs one.
pub fn room(app: &Rc<App>, send: &Send, shown: Option<&Shown>, drawn: &drawing::Drawn) -> Html {
    let (app_prop, send_prop) = (app.clone(), send.clone());
    match (app.screen, shown) {
        (Screen::Measure, Some(shown)) => measure::measure(shown, drawn),
        (Screen::Parts, Some(shown)) => within(
            send,
            Screen::Measure,
            "Measure",
            drawing::beside(shown, drawn, alter::alter(shown)),
        ),
        (Screen::Condition, Some(shown)) => condition::condition(shown),
        (Screen::Finish, Some(shown)) => finish::finish(shown, drawn),
        (Screen::Surfaces, Some(shown)) => within(
            send,
            Screen::Finish,
            "Finish",
            drawing::beside(shown, drawn, surfaces::surfaces(shown)),
        ),
        (Screen::Tools, Some(shown)) => within(send, Screen::Finish, "Finish", compare::compare(shown)),
        (Screen::Work, Some(shown)) => work::work(shown),
        (Screen::Card, Some(shown)) => within(send, Screen::Work, "Work", out::card(shown)),
        (Screen::Amounts, Some(shown)) => amounts::amounts(&shown.told()),
        (Screen::Verdict, Some(shown)) => verdict::verdict(shown),
        (Screen::Money, Some(shown)) => within(send, Screen::More, "More", money::sheet(shown)),
        (Screen::Export, Some(shown)) => within(send, Screen::More, "More", out::out(shown)),
        (Screen::Shop, _) => html! { <shop::Shop app={app_prop} send={send_prop} /> },
        (Screen::Pieces, _) => pieces::pieces(app, send),
        (Screen::More, _) => more::more(app, send),
        (Screen::Mixing, _) => within(send, Screen::More, "More", mixing::bench(app, send)),
        (Screen::Shelf, _) => within(
            send,
            Screen::More,
            "More",
            html! { <shelf::Shelf app={app_prop} send={send_prop} /> },
        ),
        (Screen::Schedule, _) => within(
            send,
            Screen::More,
            "More",
            html! { <days::DaysRoom app={app_prop} send={send_prop} /> },
        ),
        (Screen::Prices, _) => within(send, Screen::More, "More", prices::prices(app, send)),
        (Screen::Settings, _) => within(send, Screen::More, "More", settings::settings(app, send)),
        (_, None) => start::start(app, send),
    }
}

/// Shows a screen within a stage, with the way back to that stage's first screen.
fn within(send: &Send, first: Screen, word: &'static str, content: Html) -> Html {
    let back = send.reform(move |_: MouseEvent| Action::Screen(first));
    html! {
        <div class="within">
            <button type="button" id="back" class="act" onclick={back}>{ format!("\u{2190} {word}") }</button>
            { content }
        </div>
    }
}
