//! The rooms besides the board, and the ways to them.

use super::Send;
use super::days;
use super::mixing;
use super::prices;
use super::settings;
use super::shelf;
use super::together;
use crate::parts::{button, choice};
use crate::state::{Act, App, Room};
use std::rc::Rc;
use yew::prelude::*;

/// The room that is open besides the board; of an empty workshop some have nothing to show.
pub(super) fn room(app: &Rc<App>, send: &Send) -> Option<Html> {
    let is_empty = app.workshop.pieces.is_empty();
    let props = || (app.clone(), send.clone());
    Some(match app.room {
        Room::Board => return None,
        Room::Together if is_empty => return None,
        Room::Together => {
            let (app, send) = props();
            html! { <together::Together {app} {send} /> }
        }
        Room::Days => {
            let (app, send) = props();
            html! { <days::DaysRoom {app} {send} /> }
        }
        Room::Mixing => mixing::bench(app, send),
        Room::Shelf => {
            let (app, send) = props();
            html! { <shelf::Shelf {app} {send} /> }
        }
        Room::Prices => prices::prices(app, send),
        Room::Settings => settings::settings(app, send),
    })
}

/// The rooms besides the board, with the word for each. What is of no piece lies there.
pub(super) const ROOMS: [(Room, &str, &str); 6] = [
    (Room::Together, "to-buy", "To buy"),
    (Room::Days, "days", "Days"),
    (Room::Mixing, "mixing", "Mixing bench"),
    (Room::Shelf, "shelf", "Shelf"),
    (Room::Prices, "prices", "Price notes"),
    (Room::Settings, "settings", "Settings, files"),
];

/// The way back from another room, and to the others.
pub(super) fn ways(app: &App, send: &Send) -> Html {
    let back = send.reform(|_: MouseEvent| Act::Room(Room::Board));
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
            <div class="sheets">{ choice("Rooms", "room", rooms, app.room, send.reform(Act::Room)) }</div>
        </nav>
    }
}
