//! All pieces together, and what to buy for them.

use std::rc::Rc;

use units::{Area, show_area};
use workshop::{BookEdit, Edit, Piece, Shopping, Takeoff, shopping, takeoffs};
use yew::prelude::*;

use super::drawing::Silhouette;
use super::{Send, amounts::swatch, money};
use crate::browser::{print, today};
use crate::parts::button;
use crate::state::{Act, App, Room};
use crate::words;

#[derive(Properties, PartialEq)]
pub struct Props {
    pub app: Rc<App>,
    pub send: Send,
}

/// Every piece with its painted area, then one line for each material that they share.
#[component]
pub fn Together(props: &Props) -> Html {
    let Props { app, send } = props;
    let found = use_memo(app.workshop.clone(), |workshop| {
        let takeoffs = takeoffs(workshop);
        let bought = shopping(workshop, &takeoffs);
        (areas(takeoffs), bought)
    });
    let (areas, bought) = &*found;
    html! {
        <section class="together" aria-labelledby="together-title">
            <h2 id="together-title">{ "All pieces together" }</h2>
            <ul class="pieces-list">
                { for app.workshop.pieces.iter().zip(areas.iter()).map(|(of, area)| piece(app, send, of, *area)) }
            </ul>
            <h2>{ "To buy, besides what is in hand" }</h2>
            <div class="row">
                { button("shelf", "Shelf", send.reform(|_: MouseEvent| Act::Room(Room::Shelf))) }
                { button("print-list", "Print the list", Callback::from(|_: MouseEvent| print())) }
            </div>
            { list(app, send, bought) }
        </section>
    }
}

/// The painted area of each piece, its whole set; nothing where the measurements do not fit.
fn areas(takeoffs: Vec<Option<Takeoff>>) -> Vec<Option<Area>> {
    let areas = takeoffs.into_iter();
    areas.map(|takeoff| Some(takeoff?.painted.value)).collect()
}

fn piece(app: &App, send: &Send, piece: &Rc<Piece>, area: Option<Area>) -> Html {
    let (open, removed) = (piece.id.clone(), piece.id.clone());
    let (figure, unit) = area.map_or(("\u{2013}".into(), ""), |area| {
        show_area(area, app.workshop.units)
    });
    let name = piece.name.clone();
    html! {
        <li key={&*piece.id.0}>
            <button type="button" class="piece" onclick={send.reform(move |_| Act::Open(open.clone()))}>
                <Silhouette piece={piece.clone()} />
                <span>{ &piece.name }{ (piece.count > 1).then(|| format!(", {} alike", piece.count)) }</span>
            </button>
            <span class="figure">{ words::local(figure) }{ " " }{ unit }</span>
            <button type="button" aria-label={format!("Remove {name}")}
                onclick={send.reform(move |_| Act::Edit(Edit::Remove(removed.clone())))}>{ "Remove" }</button>
        </li>
    }
}

fn list(app: &App, send: &Send, bought: &[Shopping]) -> Html {
    if bought.is_empty() {
        return html! { <p>{ "Nothing goes on any piece yet. Open one and plan its finish." }</p> };
    }
    let line = |lot: &Shopping| {
        let colour = lot.colour.map(|colour| format!(", {}", words::colour(colour)));
        let pieces: Vec<&str> = lot.pieces.iter().map(String::as_str).collect();
        html! {
            <li>
                <h3>{ lot.colour.map(swatch) }{ &*lot.material.name }{ colour }</h3>
                <p>{ words::buy(&lot.buy, !lot.in_hand.is_empty() || !lot.on_shelf.is_empty(), &app.workshop, &money(app)) }</p>
                <p class="hint">
                    { format!("For {}. Likely it takes {}.", words::and(&pieces), words::volume(lot.likely, app.workshop.units)) }
                    { words::in_hand(&lot.in_hand) }
                    { words::on_shelf(&lot.on_shelf, app.workshop.units) }
                </p>
                { basket(app, send, lot) }
            </li>
        }
    };
    html! { <ul id="shopping">{ for bought.iter().map(line) }</ul> }
}

/// Whether it lies in the basket already; nothing where nothing is to be bought.
fn basket(app: &App, send: &Send, lot: &Shopping) -> Html {
    if lot.buy.as_ref().is_ok_and(|buy| buy.cans.is_empty()) {
        return Html::default();
    }
    let colour = lot
        .colour
        .map(|[red, green, blue]| format!("-{red:02x}{green:02x}{blue:02x}"));
    let key: Rc<str> = format!("{}{}", lot.material.key, colour.unwrap_or_default()).into();
    let is_in = app.workshop.books.line("basket", &key).is_some();
    let id = format!("basket-{key}");
    let tick = send.reform(move |_: Event| {
        Act::Book(match is_in {
            true => BookEdit::Strike("basket", Rc::clone(&key)),
            false => BookEdit::Add("basket", Rc::clone(&key), vec![("day", today().to_string())]),
        })
    });
    html! {
        <label class="switch" for={id.clone()}>
            <input {id} type="checkbox" checked={is_in} onchange={tick} />{ "In the basket" }
        </label>
    }
}
