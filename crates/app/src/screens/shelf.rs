//! The shelf screen: every can in the workshop, its contents, the pieces it is enough for, and warnings.

use std::rc::Rc;

use workshop::book::{Line, Record, Supply, SupplyKind};
use workshop::shelf::{Stock, good_for, is_known, mind, stock};
use workshop::stores::Store;
use workshop::{Colour, Takeoff};
use yew::prelude::*;

use super::amounts::swatch;
use super::book::{Form, add};
use super::{OfApp, Send, refused, weighed};
use crate::browser::today;
use crate::state::App;
use crate::words;

/// Shows the cans on the shelf.
#[component]
pub fn Shelf(props: &OfApp) -> Html {
    let OfApp { app, send } = props;
    let taken = app.analysis().takeoffs();
    let known = stock(&app.workshop);
    let lines = app.workshop.books.lines("shelf");
    let can = |line: &Rc<Line>| {
        let known = known.iter().find(|stock| stock.id == line.id);
        entry(app, send, line, known, &taken)
    };
    html! {
        <section class="shelf" aria-labelledby="shelf-title">
            <h2 id="shelf-title">{ "Shelf" }</h2>
            <p>{ "Cans you have. They come off the shopping list. Enter how full a can looks, or weigh it and an empty \
                  one like it." }</p>
            { add(send, "shelf", "Add can", Vec::new) }
            <ul class="entries">{ for lines.iter().rev().map(can) }</ul>
            { besides(app, send) }
            { weighed::taught(app, send) }
        </section>
    }
}

/// Shows the supplies other than cans.
fn besides(app: &App, send: &Send) -> Html {
    let known = app.analysis().stores();
    let line = |(line, known): (&Rc<Line>, &Store)| {
        let form = Form::of(app, send, "stores", Rc::clone(&line.id))?;
        let fields: &[&str] = match Supply::read(line).kind {
            Some(SupplyKind::Sheets) => &["kind", "grit", "count", "note"],
            Some(SupplyKind::Leaf) => &["kind", "count", "note"],
            _ => &["kind", "name", "count", "note"],
        };
        Some(html! {
            <li key={&*line.id} class="entry">
                { form.fields(fields) }
                { refused::answer(app, |id| id.is_of_line("stores", &line.id), || html! { <p class="left">{ words::store(known) }</p> }) }
                { form.strike(line.text("name")) }
            </li>
        })
    };
    let lines = app.workshop.books.lines("stores").iter().zip(&*known);
    html! {
        <>
            <h2>{ "Sheets, leaf, additives, decor" }</h2>
            { add(send, "stores", "Add supply", Vec::new) }
            <ul class="entries">{ for lines.filter_map(line) }</ul>
        </>
    }
}

fn entry(
    app: &App,
    send: &Send,
    line: &Rc<Line>,
    known: Option<&Stock>,
    taken: &[Option<Rc<Takeoff>>],
) -> Html {
    let Some(form) = Form::of(app, send, "shelf", Rc::clone(&line.id)) else {
        return Html::default();
    };
    let name = known.map_or("A can", |stock| &*stock.material.name);
    let is_coloured = known.is_some_and(|stock| stock.material.coloured);
    let first: &[&str] = if is_coloured {
        &["material", "can", "level", "colour"]
    } else {
        &["material", "can", "level"]
    };
    html! {
        <li key={&*line.id} class="entry">
            <h3>{ known.and_then(|stock| stock.colour).map(swatch) }{ name }</h3>
            { form.fields(first) }
            if is_coloured {
                { form.palette("colour", known.and_then(|stock| stock.colour).map(Colour)) }
            }
            { form.fields(&["weight", "tare", "density", "opened", "frozen", "note"]) }
            { refused::answer(app, |id| id.is_of_line("shelf", &line.id), || {
                known.map(|stock| says(app, stock, taken)).unwrap_or_default()
            }) }
            { form.strike(name) }
        </li>
    }
}

/// Shows the contents of a can and the pieces it is enough for.
fn says(app: &App, stock: &Stock, taken: &[Option<Rc<Takeoff>>]) -> Html {
    let good = good_for(&app.workshop, taken, stock);
    html! {
        <>
            <p class="left">{ words::left(stock, app.workshop.units) }</p>
            <p class="mind">{ words::sentences(&mind(&app.workshop, stock, today())) }</p>
            <p class="hint">{ (good.is_empty() && is_known(stock))
                .then_some("No piece uses it as planned now.") }</p>
            <p class="hint">{ (good.len() > 1).then_some("For each piece alone. The shopping list counts all together.") }</p>
            <ul class="good-for">{ for good.iter().map(|(piece, enough)| html! {
                <li><b>{ piece }</b>{ ": " }{ words::verdict(enough.verdict) }{ ". " }{ words::enough(enough, app.workshop.units) }</li>
            }) }</ul>
        </>
    }
}
