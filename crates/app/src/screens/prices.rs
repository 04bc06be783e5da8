//! The price notes screen: local prices, and their statistics by kind.

use std::rc::Rc;

use workshop::book::Line;
use workshop::market::{FEWEST, Row, Side, notes, what_sells};
use yew::prelude::*;

use super::book::{Form, add};
use super::{Send, refused};
use crate::browser::today;
use crate::state::App;
use crate::words;

/// Shows the price notes.
pub fn prices(app: &Rc<App>, send: &Send) -> Html {
    let (known, lacking) = notes(&app.workshop);
    let money = super::money(app);
    let lines = app.workshop.books.lines("prices");
    let kind = app.piece().map_or("", |piece| piece.kind.key());
    let add_note = add(send, "prices", "Add price", move || {
        let first = vec![
            ("furniture", kind.to_owned()),
            ("is", "asked".into()),
            ("day", today().to_string()),
        ];
        first.into_iter().filter(|(_, text)| !text.is_empty()).collect()
    });
    html! {
        <section class="prices" aria-labelledby="prices-title">
            <h2 id="prices-title">{ "Local prices" }</h2>
            <p>{ format!("Note asking and selling prices of second-hand pieces near you. {FEWEST} of a kind give a typical price.") }</p>
            { add_note }
            <ul class="entries">{ for lines.iter().rev().map(|line| note(app, send, line)) }</ul>
            <p role="status">{ words::lacking(lacking) }</p>
            if !known.is_empty() {
                <h3>{ "Prices by kind" }</h3>
                { refused::answer(app, |id| id.is_of("prices"), || {
                    html! { <div class="rows">{ for what_sells(&known, today()).iter().map(|of| row(of, &money)) }</div> }
                }) }
            }
        </section>
    }
}

fn note(app: &App, send: &Send, line: &Rc<Line>) -> Html {
    let Some(form) = Form::of(app, send, "prices", Rc::clone(&line.id)) else {
        return Html::default();
    };
    html! {
        <li key={&*line.id} class="entry">
            { form.fields(&["furniture", "style", "price", "is", "day", "listed", "gone"]) }
            { form.strike(line.text("style")) }
        </li>
    }
}

/// Shows the statistics of a kind, and each note as a point: a ring for an asked price, a dot for a sale.
fn row(row: &Row, money: &dyn Fn(u64) -> String) -> Html {
    let name = row.kind.map_or("All prices", |kind| kind.label());
    html! {
        <article class="what-sells">
            <h4>{ name }</h4>
            { points(row, name) }
            <p class="hint">{ words::points(row, money) }</p>
            <p>{ words::nearby(row, money) }</p>
        </article>
    }
}

/// The width and height of the chart, in drawing units.
const PICTURE: (f64, f64) = (240.0, 64.0);
/// The margin around the points.
const EDGE: f64 = 6.0;

fn points(row: &Row, name: &str) -> Html {
    let (width, height) = PICTURE;
    let dot = |(across, up, side): (f64, f64, Side)| {
        let x = EDGE + across * (width - 2.0 * EDGE);
        let y = height - EDGE - up * (height - 2.0 * EDGE);
        let class = if side == Side::Sold { "sold" } else { "asked" };
        html! { <circle {class} cx={format!("{x:.1}")} cy={format!("{y:.1}")} r="4" /> }
    };
    html! {
        <svg class="points" viewBox={format!("0 0 {width} {height}")} role="img"
            aria-label={format!("{name}: prices over time. Rings are asking prices, dots are sales.")}>
            <line x1="0" y1={height.to_string()} x2={width.to_string()} y2={height.to_string()} />
            { for row.placed().into_iter().map(dot) }
        </svg>
    }
}
