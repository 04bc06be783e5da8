//! Chalk-type paint on the bench: what to weigh, what it comes to, what not to put in.

use std::rc::Rc;

use coatings::mix::{DUST, Scale, WHY_NOT};
use workshop::book::Line;
use workshop::mixing::chalk::{Chalk, chalk, label};
use workshop::mixing::scale;
use yew::prelude::*;

use super::super::Send;
use super::super::book::{Form, add};
use super::label_of_jar;
use crate::browser::today;
use crate::parts::fold;
use crate::state::{Act, App};
use crate::words;

/// Every batch of chalk-type paint.
pub fn batches(app: &App, send: &Send) -> Html {
    let scale = scale(&app.workshop);
    let why_not = || {
        html! { <ul>{ for WHY_NOT.iter().map(|not| html! { <li><b>{ not.name }</b>{ ": " }{ not.reason }</li> }) }</ul> }
    };
    let is_open = app.unfolded.contains("why-not");
    let title = ("What does not go in, and why".into(), String::new());
    html! {
        <>
            <h2>{ "Chalk-type paint" }</h2>
            <p>{ "Latex paint made matt with calcium carbonate. No standard stands behind it; the amounts in cups are those of \
                  the hobby. " }<span class="mind">{ DUST }</span></p>
            { add(send, "chalk", "New chalk-type batch", || vec![("recipe", "chalk-quarter".into())]) }
            { fold("why-not", title, is_open, send.reform(Act::Fold), &why_not) }
            <ul class="entries">{ for app.workshop.books.lines("chalk").iter().rev().map(|line| batch(app, send, line, scale)) }</ul>
        </>
    }
}

fn batch(app: &App, send: &Send, line: &Rc<Line>, scale: Scale) -> Html {
    let Some(form) = Form::of(app, send, "chalk", Rc::clone(&line.id)) else {
        return Html::default();
    };
    let name = match line.text("name") {
        "" => "Chalk-type paint",
        name => name,
    };
    let comes_to = match chalk(line, scale) {
        Ok(of) => mixed(app, &of, scale),
        Err(fault) => html! { <p role="status">{ fault.to_string() }</p> },
    };
    html! {
        <li key={&*line.id} class="entry">
            <h3>{ name }</h3>
            { form.fields(&["name", "paint", "recipe", "powder", "water", "wanted"]) }
            { form.fields(&["sheen", "density", "solids", "note"]) }
            { comes_to }
            { form.strike(name) }
        </li>
    }
}

fn mixed(app: &App, of: &Chalk, scale: Scale) -> Html {
    let step = |step: &coatings::mix::Step| {
        let name = of
            .recipe
            .components()
            .get(step.component)
            .map_or("", |part| part.name.as_str());
        html! {
            <li>
                { "Set to zero. " }<b>{ format!("{name}: {}", scale.show(step.display)) }</b>
                { step.warning.as_ref().map(|warning| html! { <span class="with">{ format!(" {warning}") }</span> }) }
            </li>
        }
    };
    let system = app.workshop.units;
    html! {
        <>
            <h4>{ "Pour in this order" }</h4>
            <ol class="pour">{ for of.steps.iter().map(step) }</ol>
            <dl class="amounts-of">
                { for words::chalk(&of.mix, system).into_iter().map(|(what, much)| html! {
                    <div><dt>{ what }</dt><dd>{ much }</dd></div>
                }) }
            </dl>
            <p class="left">{ of.mix.binder.words() }</p>
            { label_of_jar(label(of, &scale, today(), system)) }
        </>
    }
}
