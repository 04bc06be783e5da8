//! All pieces together, and the shopping list for them.

use std::rc::Rc;

use coatings::can::Offer;
use coatings::{CanSize, can_sizes};
use units::{Area, show_area};
use wasm_bindgen_futures::spawn_local;
use workshop::goods::Good;
use workshop::money::{Earning, Earnings};
use workshop::preparing::Much;
use workshop::{Piece, Shopping, Takeoff};
use yew::prelude::*;

use super::book::{only, tick_off};
use super::drawing::Silhouette;
use super::figure::price_field;
use super::{Send, amounts::swatch, money, refused};
use crate::browser::{device, print};
use crate::parts::{button, fold};
use crate::state::{Action, App, DraftId, Message};
use crate::words;
use workshop::book::InBasket;

#[derive(Properties, PartialEq)]
pub struct Props {
    pub app: Rc<App>,
    pub send: Send,
}

/// Shows every piece with its painted area, then one line for each material.
#[component]
pub fn Together(props: &Props) -> Html {
    let Props { app, send } = props;
    let analysis = app.analysis();
    let (areas, earned) = (areas(&analysis.takeoffs()), analysis.earnings());
    let (bought, goods, coated) = (
        analysis.shopping(&app.left_out),
        analysis.goods(&app.left_out),
        analysis.coated(&app.left_out),
    );
    let text = words::list(&bought, &goods, &app.workshop, &money(app));
    html! {
        <section class="together" aria-labelledby="together-title">
            <h2 id="together-title">{ "All pieces together" }</h2>
            <ul class="pieces-list">
                { for app.workshop.pieces.iter().zip(areas.iter()).map(|(of, area)| piece(app, send, of, *area)) }
            </ul>
            <h2>{ "To buy, besides what is in hand" }</h2>
            <div class="row">
                { button("print-list", "Print the list", Callback::from(|_: MouseEvent| print())) }
                { hand_on(send, &text) }
            </div>
            { refused::lines(app, DraftId::is_of_list) }
            { list(app, send, &bought) }
            <p class="hint">{ words::coated(&coated) }</p>
            if !app.is_blocked(DraftId::is_of_list) {
                <p id="list-price">{ words::price_of_list(&bought, &goods, &app.workshop, &money(app)) }</p>
            }
            <p class="hint">{ "Have gloves, eye protection and the mask that the labels ask for, brushes, rags for what is wiped, and masking tape where a zone or something left ends." }</p>
            { besides(app, send, &goods) }
            { refused::answer(app, DraftId::is_of_money, || earns(app, &earned)) }
        </section>
    }
}

/// Returns the painted area of each piece, for its whole set, or `None` if the measurements do not fit.
fn areas(takeoffs: &[Option<Rc<Takeoff>>]) -> Vec<Option<Area>> {
    let areas = takeoffs.iter();
    areas
        .map(|takeoff| Some(takeoff.as_ref()?.painted.value))
        .collect()
}

fn piece(app: &App, send: &Send, piece: &Rc<Piece>, area: Option<Area>) -> Html {
    let open = piece.id.clone();
    let (figure, unit) = area.map_or(("\u{2013}".into(), ""), |area| {
        show_area(area, app.workshop.units)
    });
    let id = format!("buy-{}", piece.id.0);
    let is_bought = !app.left_out.contains(&piece.id);
    let of = piece.id.clone();
    let leave_out = send.reform(move |_: Event| Action::LeaveOut(of.clone()));
    html! {
        <li key={&*piece.id.0}>
            <button type="button" class="piece" onclick={send.reform(move |_| Action::Open(open.clone()))}>
                <Silhouette piece={piece.clone()} />
                <span>{ &piece.name }{ (piece.count > 1).then(|| format!(", {} alike", piece.count)) }</span>
            </button>
            <span class="figure">{ words::number(&figure) }{ " " }{ unit }</span>
            <label class="switch" for={id.clone()}>
                <input {id} type="checkbox" checked={is_bought} onchange={leave_out} />
                <span>{ "on the list" }<span class="unseen">{ format!(": {}", piece.name) }</span></span>
            </label>
        </li>
    }
}

fn list(app: &App, send: &Send, bought: &[Shopping]) -> Html {
    if bought.is_empty() {
        return html! { <p>{ "Nothing is to be bought for these pieces." }</p> };
    }
    let line = |(place, lot): (usize, &Shopping)| {
        // Two colors of a material have the same price, so only the first one shows the price fields.
        let is_first = bought[..place]
            .iter()
            .all(|other| other.material.key != lot.material.key);
        let colour = lot.colour.map(|colour| format!(", {}", words::colour(colour)));
        let pieces: Vec<&str> = lot.pieces.iter().map(String::as_str).collect();
        html! {
            <li>
                <h3>{ lot.colour.map(swatch) }{ &*lot.material.name }{ colour }</h3>
                <p>{ words::buy(&lot.buy, !lot.on_shelf.is_empty(), &app.workshop, &money(app)) }</p>
                <p class="hint">
                    { format!("For {}. Likely it takes {}.", words::and(&pieces), words::volume(lot.likely, app.workshop.units)) }
                    { words::one_less(lot) }
                    { format!(" {}", words::on_hand(&lot.on_shelf, &[], app.workshop.units)) }
                </p>
                { basket(app, send, lot) }
                { if is_first { prices(app, send, lot) } else { Html::default() } }
            </li>
        }
    };
    html! { <ul id="shopping">{ for bought.iter().enumerate().map(line) }</ul> }
}

/// Shows the prices of a material's cans, to be entered at the store.
fn prices(app: &App, send: &Send, lot: &Shopping) -> Html {
    let key = &lot.material.key;
    let name = format!("price-{key}");
    let offers = app.workshop.offers(key);
    let price = |(can, offer): &(&str, Offer)| {
        let can = coatings::can(can).map_or("", |can| can.label);
        format!("{can} {}", money(app)(offer.price))
    };
    let figure = match offers.as_slice() {
        [] => "no price yet".to_owned(),
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
        ("What it costs".into(), figure),
        is_open,
        send.reform(Action::Fold),
        &|| html! { <div class="fields">{ for sizes.clone().map(field) }</div> },
    )
}

/// Shows ways to share the list.
fn hand_on(send: &Send, text: &str) -> Html {
    let by = |share: bool| {
        let (text, send) = (text.to_owned(), send.clone());
        Callback::from(move |_: MouseEvent| {
            let (text, send) = (text.clone(), send.clone());
            spawn_local(async move {
                let done = match share {
                    true => device::share("To buy", "text", &text).await,
                    false => device::copy(&text).await,
                };
                let said = match done {
                    Ok(()) if share => return,
                    Ok(()) => Message::Done("The list is copied.".into()),
                    Err(reason) => Message::Plain(reason),
                };
                send.emit(Action::Tell(said));
            });
        })
    };
    html! {
        <>
            { button("copy-list", "Copy the list", by(false)) }
            if device::can_share() { { button("share-list", "Share\u{2026}", by(true)) } }
        </>
    }
}

/// Shows one line for each item other than cans.
fn besides(app: &App, send: &Send, goods: &[Good]) -> Html {
    let line = |good: &Good| {
        let much = words::good(good, app.workshop.units);
        let id = format!("basket-{}", good.key);
        let pieces: Vec<&str> = good.pieces.iter().map(String::as_str).collect();
        let text = html! {
            <span>
                <b>{ &good.name }</b>{ ": " }{ much.clone().unwrap_or_else(|| "enough is here".into()) }
                { words::price_of_good(good, &app.workshop, &money(app)) }
                <span class="hint">{ format!(" for {}", words::and(&pieces)) }{ words::good_here(good) }</span>
            </span>
        };
        html! {
            <li key={good.key.clone()}>
                { match much {
                    Some(_) => tick(app, send, id, good.key.as_str().into(), text),
                    None => text,
                } }
            </li>
        }
    };
    let has_sheets = goods.iter().any(|good| matches!(good.takes, Much::Sheets(..)));
    html! {
        <>
            <ul id="goods">{ for goods.iter().map(line) }</ul>
            if has_sheets { { only(app, send, "habits", &["sheet-price"]) } }
        </>
    }
}

/// Shows the earnings from pieces that were sold, and those expected from pieces that have a price.
fn earns(app: &App, Earnings { each, together }: &Earnings) -> Html {
    if each.is_empty() {
        return Html::default();
    }
    let money = money(app);
    let signed = |sum: i64| words::signed(sum, &money);
    let row = |of: &Earning| {
        let together = words::together(of.count).map(|together| format!(", {together}"));
        let how = if of.is_sold { " sold" } else { " asked" };
        html! {
            <tr>
                <th scope="row">{ &of.name }<span class="with">{ how }{ together }</span></th>
                <td>{ money(of.outcome.price) }</td>
                <td>{ words::hours_of(of.minutes) }</td>
                <td>{ signed(of.outcome.left) }</td>
                <td>{ of.outcome.per_hour.map(signed) }</td>
            </tr>
        }
    };
    let all = together.map(|(left, per_hour)| {
        let hour = per_hour.map_or_else(String::new, |hour| {
            format!(", {} for an hour of work", signed(hour))
        });
        format!("All that were sold together leave {}{hour}.", signed(left))
    });
    html! {
        <>
            <h2>{ "What the pieces earn" }</h2>
            <div class="wide-table" tabindex="0" role="region" aria-label="What the pieces earn">
                <table class="sum earned"><thead><tr>
                    <th scope="col">{ "Piece" }</th><th scope="col">{ "Price" }</th><th scope="col">{ "Hours" }</th>
                    <th scope="col">{ "Left for the work" }</th><th scope="col">{ "For an hour" }</th>
                </tr></thead><tbody>{ for each.iter().map(row) }</tbody></table>
            </div>
            <p id="earned">{ all }</p>
        </>
    }
}

/// Shows the basket checkbox. Empty if there is nothing to buy.
fn basket(app: &App, send: &Send, lot: &Shopping) -> Html {
    if lot.buy.as_ref().is_ok_and(|buy| buy.cans.is_empty()) {
        return Html::default();
    }
    let key: Rc<str> = lot.basket_key().into();
    tick(app, send, format!("basket-{key}"), key, "In the basket".into())
}

/// Shows a checkbox for an item in the basket.
fn tick(app: &App, send: &Send, id: String, key: Rc<str>, text: Html) -> Html {
    let is_in = app.workshop.books.has::<InBasket>(&key);
    let tick = send.reform(move |_: Event| Action::Book(tick_off("basket", &key, is_in)));
    html! {
        <label class="switch" for={id.clone()}>
            <input {id} type="checkbox" checked={is_in} onchange={tick} />{ text }
        </label>
    }
}
