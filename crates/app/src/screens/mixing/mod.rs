//! The mixing screen: recipes by weight, pouring steps, color drift, jar labels and finished batches.

mod chalk;
mod thin;

use std::rc::Rc;

use coatings::Rgb;
use coatings::mix::{Recipe, Scale, Step};
use units::Mass;
use workshop::BookEdit;
use workshop::book::{Line, MixRecipe, MixedBatch, Record};
use workshop::mixing::{PARTS, Pouring, Shade, label, pouring, scale, shade};
use yew::prelude::*;

use super::amounts::swatch;
use super::book::{Form, add, only};
use super::{Send, refused};
use crate::browser::{new_name, print, today};
use crate::parts::{button, button_for, fold};
use crate::state::{Action, App, DraftId};
use crate::words;

/// Shows the mixing screen.
pub fn bench(app: &Rc<App>, send: &Send) -> Html {
    let recipes = app.workshop.books.lines("recipes");
    html! {
        <section class="mixing" aria-labelledby="mixing-title">
            <h2 id="mixing-title">{ "Mixing" }</h2>
            <p>{ "Mix by weight. The same weights give the same color again. Let a drop dry before you judge it." }</p>
            <div class="row">
                { add(send, "recipes", "New recipe", || vec![("wanted", "500 g".into())]) }
                { button("print-labels", "Print labels", Callback::from(|_: MouseEvent| print())) }
            </div>
            { only(app, send, "habits", &["scale-step"]) }
            <ul class="entries">{ for recipes.iter().rev().map(|line| recipe(app, send, line)) }</ul>
            { chalk::batches(app, send) }
            { thin::thinnings(app, send) }
        </section>
    }
}

fn recipe(app: &App, send: &Send, line: &Rc<Line>) -> Html {
    let Some(form) = Form::of(app, send, "recipes", Rc::clone(&line.id)) else {
        return Html::default();
    };
    let mixed_by = MixRecipe::read(line);
    let name = match mixed_by.name.as_str() {
        "" => "Unnamed recipe",
        name => name,
    };
    let more = format!("parts-{}", line.id);
    let is_open = app.unfolded.contains(&more)
        || mixed_by
            .parts()
            .iter()
            .skip(3)
            .any(|(_, weight, _)| weight.is_some());
    let last_parts = || html! { { for PARTS.iter().skip(3).map(|keys| form.fields(keys)) } };
    html! {
        <li key={&*line.id} class="entry recipe">
            <h3>{ mixed_by.colour.map(|colour| swatch(colour.0)) }{ name }</h3>
            { form.fields(&["name", "colour", "photo"]) }
            { for PARTS.iter().take(3).map(|keys| form.fields(keys)) }
            { fold(&more, ("More parts".into(), String::new()), is_open, send.reform(Action::Fold), &last_parts) }
            { form.fields(&["wanted", "rest", "note"]) }
            { answer(app, "recipes", line, || mixed(app, send, line)) }
            { batches(app, send, line) }
            { form.strike(name) }
        </li>
    }
}

/// Shows the result of a line if all of its fields are accepted.
fn answer(app: &App, book: &str, line: &Rc<Line>, content: impl FnOnce() -> Html) -> Html {
    let is_asked = |id: &DraftId| id.is_of_line(book, &line.id) || id.is_one_of("habits", &["scale-step"]);
    refused::answer(app, is_asked, content)
}

/// Shows what to pour now.
fn mixed(app: &App, send: &Send, line: &Rc<Line>) -> Html {
    let shade = match shade(line) {
        Ok(shade) => shade,
        Err(fault) => return html! { <p role="status">{ fault.to_string() }</p> },
    };
    let recipe = MixRecipe::read(line);
    let wanted = recipe
        .wanted
        .filter(|mass| *mass > Mass::ZERO)
        .unwrap_or(shade.written);
    let scale = scale(&app.workshop);
    match pouring(&shade, scale, wanted, recipe.rest.unwrap_or(Mass::ZERO)) {
        Ok(of) => {
            let made = scale.show(of.total);
            html! { <>{ poured(&shade, &scale, &of) }{ tag(app, &shade, &scale, &of) }{ done(send, line, made) }</> }
        }
        Err(fault) => html! { <p role="status">{ fault.to_string() }</p> },
    }
}

fn poured(shade: &Shade, scale: &Scale, pouring: &Pouring) -> Html {
    let colour = |part: usize| shade.colours.get(part).copied().flatten();
    html! {
        <>
            { steps(&shade.recipe, &pouring.steps, &colour, &|step| words::measured(&scale.show(step.display))) }
            <p class="drift">{ pouring.colour.map(swatch) }{ words::drift(shade, pouring) }</p>
        </>
    }
}

/// Shows the doses in pouring order, each with its name and the amount returned by `dose`.
fn steps(
    recipe: &Recipe,
    steps: &[Step],
    colour: &dyn Fn(usize) -> Option<Rgb>,
    dose: &dyn Fn(&Step) -> String,
) -> Html {
    let step = |step: &Step| {
        let part = recipe.components().get(step.component);
        let name = part.map_or("", |part| part.name.as_str());
        html! {
            <li>
                { colour(step.component).map(swatch) }
                { "Zero the scale. " }<b>{ format!("{name}: {}", dose(step)) }</b>
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

/// Shows the label to print or write on the jar.
fn tag(app: &App, shade: &Shade, scale: &Scale, pouring: &Pouring) -> Html {
    label_of_jar(label(shade, scale, pouring.total, today(), app.workshop.units))
}

fn label_of_jar(lines: Vec<String>) -> Html {
    html! { <div class="label-of-jar">{ for lines.into_iter().map(|line| html! { <p>{ line }</p> }) }</div> }
}

/// Shows a button that records a batch of this mass.
fn done(send: &Send, line: &Rc<Line>, made: String) -> Html {
    let recipe = line.id.to_string();
    let note = send.reform(move |_: MouseEvent| {
        let values = vec![
            ("recipe", recipe.clone()),
            ("day", today().to_string()),
            ("made", made.clone()),
            ("left", made.clone()),
        ];
        Action::Book(BookEdit::Add("batches", new_name().into(), values))
    });
    let what = format!("Log this batch: {}", MixRecipe::read(line).name);
    button_for(format!("made-{}", line.id), "Log this batch", what, note)
}

/// Shows the batches of a recipe and what is left of each.
fn batches(app: &App, send: &Send, recipe: &Rc<Line>) -> Html {
    let of = app
        .workshop
        .books
        .lines(MixedBatch::BOOK)
        .iter()
        .filter(|line| MixedBatch::read(line).recipe == *recipe.id);
    let batch = |line: &Rc<Line>| {
        let form = Form::of(app, send, "batches", Rc::clone(&line.id))?;
        Some(html! {
            <li key={&*line.id}>{ form.fields(&["day", "made", "left"]) }{ form.strike(line.text("day")) }</li>
        })
    };
    html! { <ul class="batches">{ for of.filter_map(batch) }</ul> }
}
