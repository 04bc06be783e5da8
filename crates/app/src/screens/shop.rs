//! The shopping list: one line for each item, checked off as it goes into the cart.

use std::rc::Rc;

use coatings::can::Offer;
use coatings::{CanSize, can_sizes};
use wasm_bindgen_futures::spawn_local;
use workshop::book::InBasket;
use workshop::goods::Good;
use workshop::preparing::Much;
use workshop::{Piece, PieceId, Shopping, Status};
use yew::prelude::*;

use super::book::{only, tick_off};
use super::drawing::Silhouette;
use super::figure::price_field;
use super::{OfApp, Send, amounts::swatch, money, refused};
use crate::browser::{device, print};
use crate::parts::{button, fold};
use crate::state::{Action, App, DraftId, Message};
use crate::words;

/// Shows the list for all pieces that are on it.
#[component]
pub fn Shop(props: &OfApp) -> Html {
    let OfApp { app, send } = props;
    let analysis = app.analysis();
    let off = app.off_the_list();
    let (bought, goods, coated) = (
        analysis.shopping(&off),
        analysis.goods(&off),
        analysis.coated(&off),
    );
    let text = words::list(&bought, &goods, &app.workshop, &money(app));
    let is_bought = |lot: &&Shopping| lot.buy.as_ref().map_or(true, |buy| !buy.cans.is_empty());
    let cans: Vec<&Shopping> = bought.iter().filter(is_bought).collect();
    let enough: Vec<&Shopping> = bought.iter().filter(|lot| !is_bought(lot)).collect();
    let pieces = app.workshop.pieces.iter();
    let is_for_several = pieces.filter(|piece| !off.contains(&piece.id)).count() > 1;
    let has_sheets = goods.iter().any(|good| matches!(good.takes, Much::Sheets(..)));
    html! {
        <section class="shop" aria-labelledby="shop-title">
            <div class="top">
                <h2 id="shop-title">{ "Shopping list" }</h2>
                if !app.is_blocked(DraftId::is_of_list) {
                    <p id="list-price">{ words::price_of_list(&bought, &goods, &app.workshop, &money(app)) }</p>
                }
            </div>
            { refused::lines(app, DraftId::is_of_list) }
            { group("For", "for", app.workshop.pieces.iter().filter(|of| of.status() != Status::Sold).map(|of| piece(send, of, &off)).collect()) }
            { group("Coatings", "shopping", cans.iter().enumerate().map(|(n, lot)| can(app, send, (&cans, n, is_for_several), lot)).collect()) }
            { group("Supplies", "goods", goods.iter().filter(|good| good.to_buy().is_some()).map(|of| good(app, send, of, is_for_several)).collect()) }
            { group("I have enough", "have", enough.iter().map(|lot| have(app, lot)).chain(goods.iter().filter(|good| good.to_buy().is_none()).map(have_good)).collect()) }
            <p class="hint">{ words::coated(&coated) }</p>
            <p class="hint">{ "You also need gloves, eye protection, the mask the labels call for, and brushes." }</p>
            if has_sheets { { only(app, send, "habits", &["sheet-price"]) } }
            <div class="buttons acts">
                { button("print-list", "Print list", Callback::from(|_: MouseEvent| print())) }
                { hand_on(send, &text) }
            </div>
        </section>
    }
}

/// Shows a group of lines with its name. Empty without lines.
fn group(name: &'static str, id: &'static str, lines: Vec<Html>) -> Html {
    if lines.is_empty() {
        return Html::default();
    }
    html! {
        <section class={classes!("grp", id)} aria-labelledby={format!("{id}-title")}>
            <h3 id={format!("{id}-title")}>{ name }</h3>
            <ul {id}>{ for lines }</ul>
        </section>
    }
}

fn piece(send: &Send, piece: &Rc<Piece>, off: &[PieceId]) -> Html {
    let id = format!("buy-{}", piece.id.0);
    let is_on = !off.contains(&piece.id);
    let of = piece.id.clone();
    let list = send.reform(move |_: Event| Action::OnList(of.clone(), !is_on));
    html! {
        <li key={&*piece.id.0}>
            <label for={id.clone()}>
                <input {id} type="checkbox" checked={is_on} onchange={list} />
                <span class="q"><Silhouette piece={piece.clone()} /></span>
                <span class="it">{ &piece.name }<small>{ piece.status().label() }{ words::set_of(piece.count).map(|set| format!(". {set}")) }</small></span>
            </label>
        </li>
    }
}

fn can(
    app: &App,
    send: &Send,
    (lots, place, is_for_several): (&[&Shopping], usize, bool),
    lot: &Shopping,
) -> Html {
    // Two colors of a material have the same price, so only the first one shows the price fields.
    let is_first = lots[..place]
        .iter()
        .all(|other| other.material.key != lot.material.key);
    let colour = words::tint(&app.workshop.materials, &lot.material.name, lot.colour);
    let key: Rc<str> = lot.basket_key().into();
    let (cans, price) = words::cans_and_price(&lot.buy, &money(app));
    let text = html! {
        <>
            <span class="q">{ cans }</span>
            <span class="it">
                { lot.colour.map(swatch) }{ &*lot.material.name }{ colour }
                <small>{ words::why_so_many(lot, is_for_several, app.workshop.units) }</small>
            </span>
            <b>{ price }</b>
        </>
    };
    html! {
        <li key={key.to_string()}>
            { tick(app, send, format!("basket-{key}"), key, text) }
            if is_first { { details(app, send, lot) } }
        </li>
    }
}

/// Shows what is left over, and the prices of the material's cans, to be entered at the store.
fn details(app: &App, send: &Send, lot: &Shopping) -> Html {
    let key = &lot.material.key;
    let name = format!("price-{key}");
    let offers = app.workshop.offers(key);
    let price = |(can, offer): &(&str, Offer)| {
        let can = coatings::can(can).map_or("", |can| can.label);
        format!("{can} {}", money(app)(offer.price))
    };
    let figure = match offers.as_slice() {
        [] => "no price".to_owned(),
        offers => offers.iter().map(price).collect::<Vec<_>>().join(", "),
    };
    let buys = |can: &CanSize| {
        let cans = lot.buy.iter().flat_map(|buy| &buy.cans);
        cans.into_iter().any(|(of, _)| of.key == can.key)
    };
    let sizes = can_sizes(app.workshop.units).iter();
    let sizes = sizes.filter(|can| lot.material.cans.contains(&can.key) || buys(can));
    let field = |can: &'static CanSize| price_field(app, send, key.to_string().into(), can);
    let is_open = app.unfolded.contains(&name);
    fold(
        &name,
        ("Price".into(), figure),
        is_open,
        send.reform(Action::Fold),
        &|| {
            html! {
                <>
                    <p>{ words::buy(&lot.buy, !lot.on_shelf.is_empty(), &app.workshop, &money(app)) }{ words::one_less(lot) }</p>
                    <div class="fields">{ for sizes.clone().map(field) }</div>
                </>
            }
        },
    )
}

fn good(app: &App, send: &Send, good: &Good, is_for_several: bool) -> Html {
    let named = words::sentence(
        words::for_pieces(&good.pieces, is_for_several)
            .trim_start_matches(", ")
            .to_owned(),
    );
    let (most, maybe) = words::good(good, app.workshop.units).unwrap_or_default();
    let text = html! {
        <>
            <span class="q">{ most }</span>
            <span class="it">{ &good.name }<small>{ maybe }{ " " }{ named }{ words::good_here(good) }</small></span>
            <b>{ good.price(&app.workshop).map(|(_, most)| money(app)(most)) }</b>
        </>
    };
    html! { <li key={good.key.clone()}>{ tick(app, send, format!("basket-{}", good.key), good.key.as_str().into(), text) }</li> }
}

fn have(app: &App, lot: &Shopping) -> Html {
    html! {
        <li><p>
            <span class="q"></span>
            <span class="it">{ lot.colour.map(swatch) }{ &*lot.material.name }
                <small>{ words::on_hand(&lot.on_shelf, &[], app.workshop.units) }</small></span>
        </p></li>
    }
}

fn have_good(good: &Good) -> Html {
    html! {
        <li><p><span class="q"></span><span class="it">{ &good.name }<small>{ words::good_here(good) }</small></span></p></li>
    }
}

/// Shows a line with a checkbox for what is in the cart.
fn tick(app: &App, send: &Send, id: String, key: Rc<str>, text: Html) -> Html {
    let is_in = app.workshop.books.has::<InBasket>(&key);
    let tick = send.reform(move |_: Event| Action::Book(tick_off("basket", &key, is_in)));
    html! {
        <label class={is_in.then_some("is-done")} for={id.clone()}>
            <input {id} type="checkbox" checked={is_in} onchange={tick} />{ text }
        </label>
    }
}

/// Shows ways to share the list.
fn hand_on(send: &Send, text: &str) -> Html {
    let by = |share: bool| {
        let (text, send) = (text.to_owned(), send.clone());
        Callback::from(move |_: MouseEvent| {
            let (text, send) = (text.clone(), send.clone());
            spawn_local(async move {
                let done = match share {
                    true => device::share("Shopping list", "text", &text).await,
                    false => device::copy(&text).await,
                };
                let said = match done {
                    Ok(()) if share => return,
                    Ok(()) => Message::Done("List copied.".into()),
                    Err(reason) => Message::Plain(reason),
                };
                send.emit(Action::Tell(said));
            });
        })
    };
    html! {
        <>
            { button("copy-list", "Copy list", by(false)) }
            if device::can_share() { { button("share-list", "Share list", by(true)) } }
        </>
    }
}
