//! The other screens and the links to them.

use super::Send;
use super::days;
use super::mixing;
use super::prices;
use super::settings;
use super::shelf;
use super::together;
use crate::parts::{button, choice};
use crate::state::{Action, App, Screen};
use std::rc::Rc;
use yew::prelude::*;

/// Shows the current screen, if it is not that of a piece. In an empty workshop, some screens have nothing to
/// show.
pub(super) fn room(app: &Rc<App>, send: &Send) -> Option<Html> {
    let is_empty = app.workshop.pieces.is_empty();
    let props = || (app.clone(), send.clone());
    Some(match app.screen {
        Screen::Board => return None,
        Screen::Together if is_empty => return None,
        Screen::Together => {
            let (app, send) = props();
            html! { <together::Together {app} {send} /> }
        }
        Screen::Days => {
            let (app, send) = props();
            html! { <days::DaysRoom {app} {send} /> }
        }
        Screen::Mixing => mixing::bench(app, send),
        Screen::Shelf => {
            let (app, send) = props();
            html! { <shelf::Shelf {app} {send} /> }
        }
        Screen::Prices => prices::prices(app, send),
        Screen::Settings => settings::settings(app, send),
    })
}

/// The other screens with their words. They show what does not belong to a single piece.
pub(super) const ROOMS: [(Screen, &str, &str); 6] = [
    (Screen::Together, "to-buy", "To buy"),
    (Screen::Days, "days", "Days"),
    (Screen::Mixing, "mixing", "Mixing bench"),
    (Screen::Shelf, "shelf", "Shelf"),
    (Screen::Prices, "prices", "Price notes"),
    (Screen::Settings, "settings", "Settings, files"),
];

/// Shows the link back from another screen, and the links to the others.
pub(super) fn ways(app: &App, send: &Send) -> Html {
    let back = send.reform(|_: MouseEvent| Action::Screen(Screen::Board));
    let word = match app.piece() {
        Some(_) => "Back to the piece",
        None => "Back to the start",
    };
    let rooms = match app.workshop.pieces.is_empty() {
        true => &ROOMS[1..],
        false => &ROOMS[..],
    };
    html! {
        <nav class="rooms" aria-label="Rooms">
            { button("to-board", word, back) }
            <div class="sheets">{ choice("Rooms", "room", rooms, app.screen, send.reform(Action::Screen)) }</div>
        </nav>
    }
}
