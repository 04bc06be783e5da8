//! The preparation tab: the condition of the piece, the steps with their amounts, and the log.

use std::rc::Rc;

use coatings::Reason;
use workshop::PieceEdit;
use workshop::preparing::{Amount, Held, PrepareStep};
use yew::prelude::*;

use super::book::{Form, add, only, tick_off};
use super::days::Ready;
use super::lead_test::result_of_test;
use super::{Send, Shown, refused, weighed};
use crate::browser::today;
use crate::parts::fold;
use crate::state::{Action, App, DraftId};
use crate::words;
use workshop::book::{DoneStep, Line, LogLine, LogTime, Record};

/// Returns the steps of the open piece, or nothing if its measurements do not fit.
pub fn steps(shown: &Shown) -> Rc<Vec<PrepareStep>> {
    match shown.takeoff() {
        Some(_) => shown.app.analysis().preparing(&shown.piece),
        None => Rc::default(),
    }
}

/// Shows the preparation tab.
pub fn prepare(shown: &Shown) -> Html {
    let Shown { app, send, .. } = shown;
    let steps = steps(shown);
    let done = steps
        .iter()
        .filter(|step| done_on(app, &step.key).is_some())
        .count();
    html! {
        <section aria-label="Prepare" class="prepare">
            <div class="row ready">
                <p class="with">{ "What lies under the new coats, gloss, smells, wax and stains, stands on Finish: As it was found." }</p>
                <a class="button" href="#log">{ "How it went" }</a>
            </div>
            { found(shown, &steps) }
            { only(app, send, "facts", &["begin", "due"]) }
            <Ready app={app.clone()} send={send.clone()} />
            <h3>{ "Step by step" }<span class="with" id="steps-done">{ format!(" {done} of {} done", steps.len()) }</span></h3>
            <p class="with">{ "How far a sheet, a cloth or a litre goes is a rule of thumb here: common practice, no source. What you write down of your own sheets is used instead." }</p>
            { refused::answer(app, DraftId::is_of_preparing, || html! { <ol class="steps">{ for steps.iter().map(|of| step(shown, of)) }</ol> }) }
            { weighed::of_piece(shown) }
            { log(app, send) }
        </section>
    }
}

/// The facts about the condition of a piece.
const FACTS: [&str; 9] = [
    "age",
    "lead",
    "hardware",
    "holes",
    "dents",
    "stickers",
    "loose",
    "loose-joints",
    "rust",
];

/// Shows the condition of the piece, and the maker's habits that affect the amounts.
fn found(shown: &Shown, steps: &[PrepareStep]) -> Html {
    let Shown { app, send, .. } = shown;
    let holes = || {
        only(
            app,
            send,
            "facts",
            &["hole-width", "hole-depth", "dent-width", "dent-depth"],
        )
    };
    let habits = || only(app, send, "habits", &["sheet-yield", "dilution"]);
    let toggle = send.reform(Action::Fold);
    // The result of a test is entered at the test step.
    let is_asked = steps.iter().any(PrepareStep::asks_for_result);
    let facts: Vec<&str> = FACTS
        .into_iter()
        .filter(|key| *key != "lead" || !is_asked)
        .collect();
    let of = |name: &str, title: &str, content: &dyn Fn() -> Html| {
        let is_open = app.unfolded.contains(name);
        fold(
            name,
            (title.into(), String::new()),
            is_open,
            toggle.clone(),
            content,
        )
    };
    html! {
        <fieldset class="found">
            <legend>{ "What was found on it" }</legend>
            { only(app, send, "facts", &facts) }
            { of("pits", "How large holes and dents are", &holes) }
            { of("own-habits", "Your own sheets and cleaner", &habits) }
        </fieldset>
    }
}

/// Returns the day when a step was checked off.
fn done_on(app: &App, key: &str) -> Option<units::Day> {
    app.piece()?.books.find::<DoneStep>(key)?.day
}

fn step(shown: &Shown, step: &PrepareStep) -> Html {
    let Shown { app, send, .. } = shown;
    let done = done_on(app, &step.key);
    let id = format!("done-{}", step.key);
    let key: Rc<str> = step.key.as_str().into();
    let tick =
        send.reform(move |_: Event| Action::Change(PieceEdit::Book(tick_off("done", &key, done.is_some()))));
    let why = format!("why-{}", step.key);
    let reasons = || html! { { for step.how.iter().chain(&step.cautions).map(source) } };
    let toggle = send.reform(Action::Fold);
    let is_open = app.unfolded.contains(&why);
    html! {
        <li key={step.key.clone()} class={classes!(done.is_some().then_some("done"), step.held.is_some().then_some("held"))}>
            <label class="switch" for={id.clone()}>
                <input {id} type="checkbox" checked={done.is_some()} onchange={tick} />
                <b>{ &step.title }</b>
                <span class="with">{ done.map(|day| format!("done {}", words::day(day))) }</span>
            </label>
            <p class="held">{ step.held.map(Held::message) }</p>
            if step.asks_for_result() { { result_of_test(send, &shown.piece.id, done.is_some()) } }
            <p>{ sentences(&step.how) }</p>
            // Steps that must not be done take nothing.
            <dl class="amounts-of">{ for step.taken().iter().map(|of| amount(of, app.workshop.units)) }</dl>
            <p class="mind">{ sentences(&step.cautions) }</p>
            { fold(&why, ("Where that is from".into(), String::new()), is_open, toggle, &reasons) }
        </li>
    }
}

/// Joins the texts of reasons.
pub fn sentences(reasons: &[Reason]) -> String {
    let texts: Vec<&str> = reasons.iter().map(|reason| reason.text).collect();
    texts.join(" ")
}

fn source(reason: &Reason) -> Html {
    let begin: String = reason.text.chars().take(40).collect();
    html! { <p class="with">{ format!("{begin}\u{2026} \u{2014} {}", words::source(reason.source, reason.certainty)) }</p> }
}

fn amount(amount: &Amount, system: units::System) -> Html {
    html! {
        <div title={amount.from}>
            <dt>{ &amount.what }</dt>
            <dd>{ words::much(amount.much, system) }</dd>
            <dd class="with">{ amount.from }</dd>
        </div>
    }
}

/// Shows the first photo from before and the last one from after, once both exist.
fn before_and_after(lines: &[Rc<Line>]) -> Html {
    let is_photo = |line: &&Rc<Line>, when: LogTime| {
        let of = LogLine::read(line);
        of.photo && of.when == Some(when)
    };
    let before = lines.iter().find(|line| is_photo(line, LogTime::Before));
    let after = lines.iter().rfind(|line| is_photo(line, LogTime::After));
    let Some((before, after)) = before.zip(after) else {
        return Html::default();
    };
    let figure = |line: &Rc<Line>, word: &'static str| {
        html! { <figure><img src={line.text("photo").to_owned()} alt={word} /><figcaption>{ word }</figcaption></figure> }
    };
    html! { <div class="before-after">{ figure(before, "Before") }{ figure(after, "After") }</div> }
}

/// Shows the log: days, photos and notes.
fn log(app: &App, send: &Send) -> Html {
    let lines = app
        .piece()
        .map(|piece| piece.books.lines("log").to_vec())
        .unwrap_or_default();
    let line = |line: &Rc<Line>| {
        let form = Form::of(app, send, "log", Rc::clone(&line.id))?;
        Some(html! {
            <li key={&*line.id} class="entry">
                { form.fields(&["day", "when", "photo", "note"]) }
                { form.strike(line.text("day")) }
            </li>
        })
    };
    html! {
        <>
            <h3 id="log" tabindex="-1">{ "How it went" }</h3>
            <p>{ "Photos before and after, made small, and notes stay with the piece on this device, and go into its file." }</p>
            { before_and_after(&lines) }
            <ul class="entries">{ for lines.iter().filter_map(line) }</ul>
            { add(send, "log", "Add a day", || vec![("day", today().to_string())]) }
        </>
    }
}
