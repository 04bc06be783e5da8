//! The checklist of the work on a piece, from the lead test to the last coat, with the step to do now, the log and the
//! weighed cans.

use std::rc::Rc;

use timetable::{Job, Moment, Step};
use units::Day;
use workshop::book::{DoneStep, Facts, LeadTest, Line, LogLine, LogTime, Record};
use workshop::days::Days;
use workshop::preparing::{Amount, Much, PrepareStep};
use workshop::{BookEdit, PieceEdit};
use yew::prelude::*;

use super::book::{Form, add, only, tick_step};
use super::lead_test::result_of_test;
use super::{Send, Shown, refused, weighed};
use crate::browser::{now, today};
use crate::parts::{button, fold};
use crate::state::{Action, App, Screen};
use crate::words;

/// Returns the steps of the open piece, or nothing if its measurements do not fit.
pub fn steps(shown: &Shown) -> Rc<Vec<PrepareStep>> {
    match shown.takeoff() {
        Some(_) => shown.app.analysis().preparing(&shown.piece),
        None => Rc::default(),
    }
}

/// Shows the checklist.
pub fn work(shown: &Shown) -> Html {
    let Shown { app, send, .. } = shown;
    let days = app.analysis().days(now(), app.open.as_ref());
    let place = days.jobs.iter().position(|job| job.key == *shown.piece.id.0);
    let card = send.reform(|_: MouseEvent| Action::Screen(Screen::Card));
    let folded = |name: &str, title: &str, content: &dyn Fn() -> Html| {
        let is_open = app.unfolded.contains(name);
        fold(
            name,
            (title.into(), String::new()),
            is_open,
            send.reform(Action::Fold),
            content,
        )
    };
    html! {
        <section class="work-screen" aria-labelledby="work-title">
            <h2 id="work-title" class="unseen">{ "Work" }</h2>
            { folded("when", &words::starts(&shown.piece.books.one(), &app.workshop.books.one()), &|| only(app, send, "facts", &["begin", "due", "status"])) }
            { refused::answer(app, |id| id.is_of_preparing() || id.is_of_days(), || match place {
                Some(place) => checklist(shown, &days, place),
                None => html! { <p>{ "There is no work on this piece. It is sold, or its sizes don\u{2019}t fit." }</p> },
            }) }
            <div class="buttons">{ button("job-card", "Job card", card) }</div>
            { folded("own-habits", "Your sheets and cleaner", &|| only(app, send, "habits", &["sheet-yield", "dilution"])) }
            { folded("weighing", "What it really took", &|| weighed::of_piece(shown)) }
            <h3 id="log">{ "Photos and log" }</h3>
            { log(app, send) }
        </section>
    }
}

fn checklist(shown: &Shown, days: &Days, place: usize) -> Html {
    let Some(job) = days.jobs.get(place) else {
        return Html::default();
    };
    let prepared = steps(shown);
    let is_done = |step: &Step| shown.piece.books.has::<DoneStep>(&step.key);
    let done = job.steps.iter().filter(|step| is_done(step)).count();
    let next = job.steps.iter().position(|step| !is_done(step));
    let held = prepared.iter().filter(|step| !step.may_be_done());
    let schedule = shown
        .send
        .reform(|_: MouseEvent| Action::Screen(Screen::Schedule));
    html! {
        <div class="work-board">
            { next.and_then(|next| now_pane(shown, days, (place, next), job)).unwrap_or_default() }
            <div class="list">
                <div class="bar">
                    <p id="steps-done"><b>{ format!("{done} of {}", job.steps.len()) }</b>{ " checked off" }</p>
                    <button type="button" id="all-days" class="act" onclick={schedule}>{ words::ready_to_sell(days, place) }</button>
                </div>
                { for held.map(|step| html! { <p class="against held">{ format!("{}: ", step.title) }{ step.held.map(|held| held.message()) }</p> }) }
                <ol class="steps">{ for rows(shown, days, place, job, next) }</ol>
            </div>
        </div>
    }
}

/// Shows the steps in order, with a heading for each day, and the waits between them.
fn rows(shown: &Shown, days: &Days, place: usize, job: &Job, next: Option<usize>) -> Vec<Html> {
    let mut last: Option<Day> = None;
    let mut rows: Vec<Html> = tested(shown).into_iter().collect();
    for (n, step) in job.steps.iter().enumerate() {
        let works = days.timetable.work(place, n);
        let start = works.and_then(|work| work.start());
        if let Some(day) = start.map(Moment::day).filter(|day| last != Some(*day)) {
            last = Some(day);
            rows.push(html! { <li class="day" key={format!("day-{n}")}><h3>{ words::weekday_and_day(day) }</h3></li> });
        }
        rows.push(row(shown, job, step, start, next == Some(n)));
        let end = works.and_then(|work| work.end());
        if let Some(until) = end.filter(|_| step.wait > 0) {
            let text = words::dries(step.wait, until.after(i64::from(step.wait)), until);
            rows.push(html! { <li class="dry" key={format!("dry-{n}")}>{ text }</li> });
        }
    }
    rows
}

/// Shows the lead test with its result, once there is one. To uncheck it takes the result back.
fn tested(shown: &Shown) -> Option<Html> {
    let result = shown.piece.books.one::<Facts>().lead;
    let result = result.filter(|result| *result != LeadTest::NotDone)?;
    let untest = BookEdit::Write("facts", "only".into(), "lead".into(), "".into());
    let untest = shown
        .send
        .reform(move |_: Event| Action::Change(PieceEdit::Book(untest.clone())));
    Some(html! {
        <li key="lead-tested" class="step is-done">
            <label for="lead-tested">
                <input id="lead-tested" type="checkbox" checked={true} onchange={untest} />
                <time></time>
                <span class="it">{ words::lead_test(result) }</span>
                <b></b>
            </label>
        </li>
    })
}

fn row(shown: &Shown, job: &Job, step: &Step, start: Option<Moment>, is_now: bool) -> Html {
    let Shown { app, send, .. } = shown;
    let prepared = steps(shown);
    let of = prepared.iter().find(|of| of.key == step.key);
    let id = format!("done-{}", step.key);
    let is_done = shown.piece.books.has::<DoneStep>(&step.key);
    let name = format!("why-{}", step.key);
    let is_open = app.unfolded.contains(&name);
    let asks = of.is_some_and(PrepareStep::asks_for_result);
    html! {
        <li key={step.key.clone()} class={classes!("step", is_done.then_some("is-done"), is_now.then_some("is-now"))}>
            <label for={id.clone()}>
                <input {id} type="checkbox" checked={is_done} onchange={tick(send, &step.key, is_done)} />
                <time>{ start.map(words::clock) }</time>
                <span class="it">{ &step.name }</span>
                <b>{ amount_of(shown, step, of) }</b>
            </label>
            if of.is_some() {
                <button type="button" id={format!("fold-{name}")} aria-expanded={is_open.to_string()} aria-label={format!("How: {}", step.name)}
                    onclick={send.reform({ let name = name.clone(); move |_: MouseEvent| Action::Fold(name.clone()) })}>
                    { if is_open { "\u{2212}" } else { "+" } }
                </button>
            }
            if asks && !is_now { { result_of_test(send, &workshop::PieceId(job.key.as_str().into()), is_done) } }
            if let Some(of) = of.filter(|_| is_open) { <div class="how">{ how(shown, of) }</div> }
        </li>
    }
}

/// Returns a callback that checks off a step of the open piece, or unchecks it.
fn tick(send: &Send, key: &str, is_done: bool) -> Callback<Event> {
    let key: Rc<str> = key.into();
    send.reform(move |_: Event| Action::Change(PieceEdit::Book(tick_step(&key, is_done))))
}

/// Returns the main amount that a step takes.
pub fn amount_of(shown: &Shown, step: &Step, of: Option<&PrepareStep>) -> String {
    let system = shown.app.workshop.units;
    if let Some(of) = of {
        // A bare number says nothing without the item, which is listed with the instructions. Areas and edges
        // are no supplies.
        let is_supply =
            |amount: &&Amount| !matches!(amount.much, Much::Count(..) | Much::Area(_) | Much::Length(_));
        let mut taken = of.taken().iter().filter(is_supply);
        return taken
            .next()
            .map_or_else(String::new, |amount| words::much(amount.much, system));
    }
    let volume = shown
        .takeoff()
        .and_then(|takeoff| takeoff.likely_of_step(&step.key));
    volume.map_or_else(String::new, |volume| words::volume(volume, system))
}

/// Shows how a step is done, what it takes, and its cautions.
fn how(shown: &Shown, step: &PrepareStep) -> Html {
    let system = shown.app.workshop.units;
    let amount = |amount: &Amount| html! { <div title={amount.from}><dt>{ &amount.what }</dt><dd>{ words::much(amount.much, system) }</dd></div> };
    let why = format!("from-{}", step.key);
    let is_open = shown.app.unfolded.contains(&why);
    let sources = || {
        html! { { for step.how.iter().chain(&step.cautions).map(|reason| html! {
            <p><small>{ reason.text }{ " " }{ words::source(reason.source, reason.certainty) }</small></p>
        }) } }
    };
    html! {
        <>
            <p>{ words::sentences(&step.how) }</p>
            <dl class="amounts-of">{ for step.taken().iter().map(amount) }</dl>
            <p class="mind">{ words::sentences(&step.cautions) }</p>
            { fold(&why, ("Sources".into(), String::new()), is_open, shown.send.reform(Action::Fold), &sources) }
        </>
    }
}

/// Shows the step to do now, with a button that checks it off.
fn now_pane(shown: &Shown, days: &Days, (place, n): (usize, usize), job: &Job) -> Option<Html> {
    let step = job.steps.get(n)?;
    let prepared = steps(shown);
    let of = prepared.iter().find(|of| of.key == step.key);
    let asks = of.is_some_and(PrepareStep::asks_for_result);
    let key: Rc<str> = step.key.as_str().into();
    let check = shown
        .send
        .reform(move |_: MouseEvent| Action::Change(PieceEdit::Book(tick_step(&key, false))));
    let minutes = days
        .timetable
        .work(place, n)
        .map(|_| words::minutes(step.minutes));
    let mind = of
        .map(|of| words::sentences(&of.cautions))
        .filter(|text| !text.is_empty());
    Some(html! {
        <aside class="now" aria-label="Now">
            <p class="k">{ "Now" }</p>
            <h3>{ &step.name }</h3>
            <dl>
                { uses(shown, step, of) }
                <div><dt>{ "Time" }</dt><dd>{ minutes }</dd></div>
            </dl>
            { mind.map(|text| html! { <p class="mind">{ text }</p> }) }
            if asks {
                { result_of_test(&shown.send, &shown.piece.id, false) }
            } else {
                <button type="button" id="check-off" class="go" onclick={check}>{ "Check off" }</button>
            }
        </aside>
    })
}

/// Lists what a step takes.
fn uses(shown: &Shown, step: &Step, of: Option<&PrepareStep>) -> Html {
    let system = shown.app.workshop.units;
    match of {
        Some(of) => of
            .taken()
            .iter()
            .map(|amount| {
                html! { <div><dt>{ &amount.what }</dt><dd>{ words::much(amount.much, system) }</dd></div> }
            })
            .collect(),
        None => html! { <div><dt>{ "Use" }</dt><dd>{ amount_of(shown, step, of) }</dd></div> },
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
            { before_and_after(&lines) }
            <ul class="entries">{ for lines.iter().filter_map(line) }</ul>
            { add(send, "log", "Add a photo or note", || vec![("day", today().to_string())]) }
            <p class="hint">{ "Photos stay on this device and in the piece\u{2019}s file." }</p>
        </>
    }
}
