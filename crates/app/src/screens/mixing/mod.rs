//! The mixing screen: recipes by weight, pouring steps, color drift, jar labels and finished batches.

mod chalk;
mod recipe;
mod thin;

use std::rc::Rc;

use coatings::Rgb;
use coatings::mix::{Recipe, Step};
use units::System;
use workshop::BookEdit;
use workshop::book::{Line, MixedBatch, Record};
use yew::prelude::*;

use super::amounts::swatch;
use super::book::{Form, add};
use super::{Send, refused};
use crate::browser::{new_name, print, today};
use crate::parts::{button, button_for, fold};
use crate::state::{Action, App, DraftId, Message};
use crate::words::{self, calendar};

/// Shows the mixing screen.
pub fn bench(app: &Rc<App>, send: &Send) -> Html {
    let recipes = app.workshop.books.lines("recipes");
    let form = Form::of(app, send, "habits", "only".into());
    let cans = Rc::new(recipe::cans(app));
    let system = app.workshop.units;
    let first = move || {
        let pint = match system {
            System::UsCustomary => "16 fl oz",
            System::Metric => "500 g",
        };
        vec![("wanted", pint.into())]
    };
    html! {
        <section class="mixing" aria-labelledby="mixing-title">
            <h2 id="mixing-title">{ "Mixing" }</h2>
            <p>{ "Mix by weight. The same weights give the same color again. Let a dab dry before you judge the color." }</p>
            <div class="row">
                { add(send, "recipes", "New recipe", first) }
                { button("print-labels", "Print labels", Callback::from(|_: MouseEvent| print())) }
            </div>
            { form.map(|form| html! { <div class="fields">
                { form.typed("scale-step", "Smallest step on your scale".into(), Some("1 g".into()), None) }
            </div> }) }
            { recipe::suggestions(&cans) }
            <ul class="entries">{ for recipes.iter().rev().map(|line| recipe::recipe(app, send, line, &cans)) }</ul>
            { chalk::batches(app, send) }
            { thin::thinnings(app, send) }
        </section>
    }
}

/// Shows the result of a line if all of its fields are accepted. Otherwise it says which are not.
fn answer(app: &App, book: &str, line: &Rc<Line>, content: impl FnOnce() -> Html) -> Html {
    refused::strict(app, counts(book, line), content)
}

/// Returns true if all fields of a line are accepted.
fn is_accepted(app: &App, book: &str, line: &Rc<Line>) -> bool {
    app.refused(counts(book, line)).is_empty()
}

/// Returns whether a field counts for the result of a line.
fn counts(book: &str, line: &Rc<Line>) -> impl Fn(&DraftId) -> bool {
    move |id| id.is_of_line(book, &line.id) || id.is_one_of("habits", &["scale-step"])
}

/// Shows the doses in pouring order. `say` returns the words for a step and its part: a lead, what to pour, and the rest.
fn steps(
    recipe: &Recipe,
    steps: &[Step],
    colour: &dyn Fn(usize) -> Option<Rgb>,
    say: &dyn Fn(&Step, &str) -> (&'static str, String, String),
) -> Html {
    let step = |step: &Step| {
        let part = recipe.components().get(step.component);
        let (lead, dose, rest) = say(step, part.map_or("", |part| part.name.as_str()));
        html! {
            <li>
                { colour(step.component).map(swatch) }
                { lead }<b>{ dose }</b>{ rest }
                { step.warning.as_ref().map(|warning| html! { <span class="with">{ format!(" {warning}") }</span> }) }
            </li>
        }
    };
    html! {
        <>
            <h4>{ "Pour in this order" }</h4>
            <ol class="pour">{ for steps.iter().map(step) }</ol>
        </>
    }
}

/// Shows labeled results.
fn rows(lines: Vec<(&'static str, String)>) -> Html {
    let row = |(what, much)| html! { <div><dt>{ what }</dt><dd>{ much }</dd></div> };
    html! { <dl class="amounts-of">{ for lines.into_iter().map(row) }</dl> }
}

/// Formats today's date in the style of the locale.
fn named_today() -> String {
    calendar::day(today())
}

fn label_of_jar(lines: Vec<String>) -> Html {
    html! { <div class="label-of-jar">{ for lines.into_iter().map(|line| html! { <p>{ line }</p> }) }</div> }
}

/// Shows a button that records a batch of this mass.
fn done(send: &Send, line: &Rc<Line>, made: String) -> Html {
    let name = line.text("name");
    let what = format!("Log this batch: {name}");
    let (send, recipe) = (send.clone(), line.id.to_string());
    let log = Callback::from(move |_: MouseEvent| {
        let values = vec![
            ("recipe", recipe.clone()),
            ("day", today().to_string()),
            ("made", made.clone()),
        ];
        send.emit(Action::Book(BookEdit::Add("batches", new_name().into(), values)));
        let said = format!("Batch saved: {}, {}.", named_today(), words::measured(&made));
        send.emit(Action::Tell(Message::Done(said)));
    });
    button_for(format!("made-{}", line.id), "Log this batch", what, log)
}

/// Shows the batches of a recipe, each with these fields. What is left of an older one is shown if it was
/// entered.
fn batches(app: &App, send: &Send, recipe: &Rc<Line>, fields: &[&str]) -> Html {
    let lines = app.workshop.books.lines(MixedBatch::BOOK).iter();
    let batch = |line: &Rc<Line>| {
        let form = Form::of(app, send, "batches", Rc::clone(&line.id))?;
        let batch = MixedBatch::read(line);
        let day = batch
            .day
            .map_or_else(|| "on an unknown day".to_owned(), calendar::day);
        let left: &[&str] = match batch.left != batch.made && !fields.contains(&"left") {
            true => &["left"],
            false => &[],
        };
        let key = format!("batch-{}", line.id);
        let title = (format!("Mixed {day}"), words::measured(line.text("made")));
        let content = || html! { <>{ form.fields(&[fields, left].concat()) }{ form.strike(&day) }</> };
        let is_open = app.unfolded.contains(&key);
        Some(html! {
            <li key={&*line.id}>{ fold(&key, title, is_open, send.reform(Action::Fold), &content) }</li>
        })
    };
    let of = lines.filter(|line| line.text("recipe") == &*recipe.id);
    html! { <ul class="batches">{ for of.filter_map(batch) }</ul> }
}
