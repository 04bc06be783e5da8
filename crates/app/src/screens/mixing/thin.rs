//! Thinning for the sprayer: what to add, and its effect on the film.

use std::rc::Rc;

use units::System;
use workshop::book::Line;
use workshop::mixing::scale;
use workshop::mixing::thin::{ThinnedPaint, thinned};
use yew::prelude::*;

use super::super::Send;
use super::super::book::{Form, add};
use super::{answer, rows};
use crate::state::App;
use crate::words;

/// Shows every thinned paint.
pub fn thinnings(app: &App, send: &Send) -> Html {
    let system = app.workshop.units;
    let first = move || {
        let paint = match system {
            System::UsCustomary => "1 qt",
            System::Metric => "1 L",
        };
        vec![
            ("material", "trim-enamel".into()),
            ("paint", paint.into()),
            ("share", "10 %".into()),
            ("coats", "2".into()),
        ]
    };
    html! {
        <>
            <h2>{ "Thinning for the sprayer" }</h2>
            <p>{ "The label says what to thin with, and how much at most. A thinned coat dries thinner." }</p>
            { add(send, "thinning", "New thinning", first) }
            <ul class="entries">{ for app.workshop.books.lines("thinning").iter().rev().map(|line| entry(app, send, line)) }</ul>
        </>
    }
}

fn entry(app: &App, send: &Send, line: &Rc<Line>) -> Html {
    let Some(form) = Form::of(app, send, "thinning", Rc::clone(&line.id)) else {
        return Html::default();
    };
    let found = thinned(&app.workshop, line);
    let name = found.as_ref().map_or("Paint", |of| &*of.material.name).to_owned();
    let comes_to = || match &found {
        Ok(of) => comes_to(app, of),
        Err(fault) => html! { <p role="status">{ fault.to_string() }</p> },
    };
    html! {
        <li key={&*line.id} class="entry">
            <h3>{ &name }</h3>
            { form.fields(&["material", "paint", "share", "most", "thinner", "solids", "coats"]) }
            { answer(app, "thinning", line, comes_to) }
            { form.strike(&name) }
        </li>
    }
}

fn comes_to(app: &App, of: &ThinnedPaint) -> Html {
    html! {
        <>
            { rows(words::thinned(of, &scale(&app.workshop), app.workshop.units)) }
            <p class="error" role="status">{ words::against(of) }</p>
            <p class="mind">{ words::mind(of) }</p>
        </>
    }
}
