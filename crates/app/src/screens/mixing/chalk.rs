//! Chalk-type paint: what to weigh, the properties of the mix, and what not to add.

use std::rc::Rc;

use coatings::mix::{DUST, Scale, WHY_NOT};
use units::System;
use workshop::book::{ChalkLine, Line, Record};
use workshop::mixing::chalk::{Chalk, NAMELESS, chalk, label};
use workshop::mixing::scale;
use yew::prelude::*;

use super::super::Send;
use super::super::book::{Form, add};
use super::{answer, batches as batches_of, done, label_of_jar, named_today, rows, steps};
use crate::parts::fold;
use crate::state::{Action, App};
use crate::words;

/// Shows every batch of chalk-type paint.
pub fn batches(app: &App, send: &Send) -> Html {
    let why_not = || {
        html! { <ul>{ for WHY_NOT.iter().map(|not| html! {
            <li><b>{ not.name }</b>{ format!(": {} ", not.reason) }<span class="with">{ not.certainty.label() }</span></li>
        }) }</ul> }
    };
    let is_open = app.unfolded.contains("why-not");
    let title = ("Don\u{2019}t add these".into(), String::new());
    let system = app.workshop.units;
    let first = move || {
        let cup = match system {
            System::UsCustomary => "8 fl oz",
            System::Metric => "250 mL",
        };
        vec![("volume", cup.into()), ("recipe", "chalk-quarter".into())]
    };
    html! {
        <>
            <h2>{ "Chalk-type paint" }</h2>
            <p>{ "Latex paint made flat with calcium carbonate. The amounts are common practice; there is no standard. " }<span class="mind">{ DUST }</span></p>
            { add(send, "chalk", "New chalk-type batch", first) }
            { fold("why-not", title, is_open, send.reform(Action::Fold), &why_not) }
            <ul class="entries">{ for app.workshop.books.lines("chalk").iter().rev().map(|line| batch(app, send, line)) }</ul>
        </>
    }
}

fn batch(app: &App, send: &Send, line: &Rc<Line>) -> Html {
    let Some(form) = Form::of(app, send, "chalk", Rc::clone(&line.id)) else {
        return Html::default();
    };
    let mix = ChalkLine::read(line);
    let name = match mix.name.as_str() {
        "" => NAMELESS,
        name => name,
    };
    let comes_to = || match chalk(&app.workshop, line) {
        Ok(of) => {
            let scale = scale(&app.workshop);
            let made = of.steps.iter().map(|step| step.dose).sum();
            html! { <>{ mixed(app, &of, &scale) }{ done(send, line, scale.show(made)) }</> }
        }
        Err(fault) => html! { <p role="status">{ fault.to_string() }</p> },
    };
    html! {
        <li key={&*line.id} class="entry">
            <h3>{ name }</h3>
            { form.fields(&["name", "volume", "paint", "recipe", "powder", "water", "wanted"]) }
            { form.fields(&["sheen", "material", "density", "solids", "cup", "note"]) }
            { answer(app, "chalk", line, comes_to) }
            { batches_of(app, send, line, &["day", "made", "left"]) }
            { form.strike(name) }
        </li>
    }
}

fn mixed(app: &App, of: &Chalk, scale: &Scale) -> Html {
    let system = app.workshop.units;
    html! {
        <>
            { steps(&of.recipe, &of.steps, &|_| None, &|step, name| {
                ("Zero the scale. ", format!("{name}: {}", words::dose(of, step, scale, system)), String::new())
            }) }
            <p>{ of.stir }</p>
            { rows(words::chalk(of, system)) }
            <p class="left">{ words::binder(of, scale) }</p>
            { label_of_jar(label(of, &|mass| words::weight(mass, scale, system), &named_today(), system)) }
        </>
    }
}
