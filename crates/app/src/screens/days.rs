//! The schedule screen: when each step of every piece is due, when pieces are ready, whether the air allows
//! coating, and the calendar.

use std::rc::Rc;

use timetable::{BarKind, Chart, Job, Moment, Step, Work, calendar_file, chart, events};
use units::Day;
use wasm_bindgen_futures::spawn_local;
use workshop::book::{Habits, WEEK};
use workshop::days::{Days, USUAL_HOURS_TEXT, air, written_hours};
use workshop::preparing::asks_for_result;
use workshop::{Edit, PieceEdit};
use yew::prelude::*;

use super::book::{only, tick_step};
use super::files::tell_saved;
use super::lead_test::result_of_test;
use super::{OfApp, Send, refused};
use crate::browser::{device, now, utc};
use crate::parts::{button, fold};
use crate::state::{Action, App, DraftId};
use crate::words;
use workshop::book::DoneStep;

/// The maximum number of days in the chart.
const MOST_DAYS: u32 = 21;

/// Shows the schedule of all pieces, starting now.
#[component]
pub fn DaysRoom(props: &OfApp) -> Html {
    let OfApp { app, send } = props;
    let days = app.analysis().days(now(), app.open.as_ref());
    let days = &*days;
    html! {
        <section class="days" aria-labelledby="days-title">
            <h2 id="days-title">{ "Schedule" }</h2>
            if days.jobs.is_empty() {
                <p>{ "Nothing to schedule yet." }</p>
            } else {
                { refused::answer(app, DraftId::is_of_days, || html! { <>
                    <ul id="ready">{ for (0..days.jobs.len()).map(|job| html! { <li>{ words::ready(&app.workshop, days, job) }</li> }) }</ul>
                    { drawn(days) }
                </> }) }
            }
            { given(app, send, days) }
            if !days.jobs.is_empty() && !app.is_blocked(DraftId::is_of_days) {
                { list(app, send, days) }
                { calendar(send, days) }
            }
        </section>
    }
}

/// Shows the inputs of the schedule: the working hours and the current air.
fn given(app: &App, send: &Send, days: &Days) -> Html {
    let is_open = |name: &str| app.unfolded.contains(name);
    let week = written_hours(&app.workshop);
    let hours = || {
        html! {
            <>
                <p>{ days.usual_hours.then(words::usual_hours) }{ " Type hours like 6pm-9pm, or 9-12, 1-5." }</p>
                { hours_at_once(app, send) }
                { only(app, send, "habits", &WEEK) }
                <p id="understood" role="status">{ words::understood(&week) }</p>
            </>
        }
    };
    let start = || only(app, send, "habits", &["begin"]);
    let begins = app.workshop.books.one::<Habits>().begin;
    let today = air(&app.workshop);
    let measured = || {
        html! {
            <>
                { only(app, send, "habits", &["temperature", "humidity", "surface"]) }
                <div id="air" role="status">
                    { for words::air(today.as_ref(), app.workshop.units).into_iter().map(|text| html! { <p>{ text }</p> }) }
                </div>
            </>
        }
    };
    let fold = |name: &str, word: &str, figure: &str, content: &dyn Fn() -> Html| {
        let toggle = send.reform(Action::Fold);
        fold(name, (word.into(), figure.into()), is_open(name), toggle, content)
    };
    let of_hours = match days.usual_hours {
        true => words::usual_hours(),
        false => words::understood(&week),
    };
    let of_start = begins.map_or_else(|| "today".into(), words::weekday_and_day);
    html! {
        <>
            { fold("start", "Start date of all pieces", &of_start, &start) }
            { fold("hours", "Your hours", &of_hours, &hours) }
            { fold("air-now", "Shop temperature and humidity", words::air_in_brief(today.as_ref()), &measured) }
        </>
    }
}

/// Hours for several days at once: element suffix, label, days by their place in the week, and the hours.
const AT_ONCE: [(&str, &str, std::ops::Range<usize>, &str); 4] = [
    ("weekdays", "Weekdays 9 to 5", 0..5, USUAL_HOURS_TEXT),
    ("evenings", "Weekday evenings", 0..5, "6pm to 9pm"),
    ("saturday", "Saturday 9 to 5", 5..6, USUAL_HOURS_TEXT),
    ("sunday", "Sunday 9 to 5", 6..7, USUAL_HOURS_TEXT),
];

/// Shows buttons that set the hours of several days.
fn hours_at_once(app: &App, send: &Send) -> Html {
    let line = app.workshop.books.only("habits");
    let set = |id: &str, label: &'static str, days: std::ops::Range<usize>, hours: String| {
        let days: Vec<_> = WEEK[days].iter().map(|day| (*day, hours.clone())).collect();
        let act = send.reform(move |_: MouseEvent| Action::Edit(Edit::Hours(days.clone())));
        button(format!("hours-{id}"), label, act)
    };
    let at_once = AT_ONCE
        .into_iter()
        .map(|(id, label, days, hours)| set(id, label, days, hours.into()));
    // What was entered for one day is copied to the days like it.
    let like = [
        ("like-monday", "Copy Monday to all weekdays", "mon", 1..5),
        ("like-saturday", "Copy Saturday to Sunday", "sat", 6..7),
    ];
    let like = like
        .into_iter()
        .filter(|(_, _, day, _)| !line.text(day).is_empty())
        .map(|(id, label, day, days)| set(id, label, days, line.text(day).to_owned()));
    html! { <div class="buttons">{ for at_once.chain(like) }</div> }
}

/// The width of the chart and the height of a row, in drawing units.
const WIDTH: f64 = 720.0;
const ROW: f64 = 40.0;
const HEAD: f64 = 22.0;
/// The minimum width for a day heading.
const LEAST_HEAD: f64 = 72.0;

/// Draws a row for each piece and a column for each day.
fn drawn(days: &Days) -> Html {
    let picture = chart(&days.jobs, &days.timetable, &days.hours, MOST_DAYS);
    let height = HEAD + ROW * picture.rows.len() as f64;
    let column = WIDTH / picture.days.len().max(1) as f64;
    // With narrow columns, only some headings fit.
    let every = (LEAST_HEAD / column).ceil().max(1.0) as usize;
    let day = |(n, of): (usize, &timetable::DayColumn)| {
        let x = column * n as f64;
        let head = n.is_multiple_of(every).then(|| words::weekday_and_number(of.day));
        let closed = of.open.is_empty().then_some("closed");
        html! {
            <g>
                <rect class={classes!("day", closed)} x={x.to_string()} y="0" width={column.to_string()} height={height.to_string()} />
                <text x={(x + 4.0).to_string()} y="15">{ head }</text>
            </g>
        }
    };
    html! {
        <div class="pictured" tabindex="0" role="group" aria-label="Schedule chart">
            <svg class="timetable" viewBox={format!("0 0 {WIDTH} {height}")} role="img"
            aria-label="Work by day, one row for each piece. The list below says the same.">
            { for picture.days.iter().enumerate().map(day) }
            { for picture.rows.iter().enumerate().map(|(n, row)| bars(days, &picture, n, row)) }
            </svg>
            <ul class="legend">
                <li class="hands">{ "work" }</li>
                <li class="drying">{ "drying" }</li>
                <li class="curing">{ "curing, not for sale yet" }</li>
            </ul>
        </div>
    }
}

fn bars(days: &Days, picture: &Chart, n: usize, row: &timetable::Row) -> Html {
    let top = HEAD + ROW * n as f64;
    let bar = |bar: &timetable::Bar| {
        let (from, to) = (picture.share(bar.from) * WIDTH, picture.share(bar.to) * WIDTH);
        let class = match bar.kind {
            BarKind::Work => "hands",
            BarKind::Drying => "drying",
            BarKind::Curing => "curing",
        };
        html! {
            <rect {class} x={from.to_string()} y={(top + 17.0).to_string()} width={(to - from).max(1.5).to_string()} height="16" />
        }
    };
    let name = days.jobs.get(row.job).map(|job| job.name.clone());
    html! {
        <g>
            <text x="4" y={(top + 13.0).to_string()}>{ name }</text>
            { for row.bars.iter().map(bar) }
            <text class="ready" x={(WIDTH - 6.0).to_string()} y={(top + 13.0).to_string()}>{ words::ready_on(days, row.job) }</text>
        </g>
    }
}

/// Shows the button for a calendar file (RFC 5545).
fn calendar(send: &Send, days: &Days) -> Html {
    let entries = events(&days.jobs, &days.timetable);
    let send = send.clone();
    let save = move |_: MouseEvent| {
        let (text, send) = (calendar_file(&entries, utc()), send.clone());
        spawn_local(async move { tell_saved(&send, device::save("work.ics", "text/calendar", &text).await) });
    };
    button("save-calendar", "Save calendar file", save.into())
}

/// Lists the hands-on work by day, with checkboxes.
fn list(app: &App, send: &Send, days: &Days) -> Html {
    let works: Vec<(Moment, &Work)> = days
        .timetable
        .works
        .iter()
        .filter_map(|work| Some((work.start()?, work)))
        .collect();
    let mut last: Option<Day> = None;
    let line = |(start, work): &(Moment, &Work)| {
        let (job, step) = (
            days.jobs.get(work.job)?,
            days.jobs.get(work.job)?.steps.get(work.step)?,
        );
        let day = start.day();
        let head = (last != Some(day)).then(|| words::weekday_and_day(day));
        last = Some(day);
        let id = format!("tick-{}-{}", job.key, step.key);
        let (is_done, tick) = tick(app, send, &job.key, &step.key);
        let is_test = asks_for_result(&step.key);
        Some(html! {
            <li key={id.clone()}>
                if let Some(head) = head { <h4>{ head }</h4> }
                <label class="switch" for={id.clone()}>
                    <input {id} type="checkbox" checked={is_done} onchange={tick} />
                    <span>
                        { words::stretch(work) }{ " " }<b>{ &step.name }</b>
                        if app.workshop.pieces.len() > 1 { <span class="with">{ format!(", {}", job.name) }</span> }
                        { words::remarks(is_done && !is_test) }
                    </span>
                </label>
                if is_test { { result_of_test(send, &workshop::PieceId(job.key.as_str().into()), is_done) } }
            </li>
        })
    };
    html! {
        <>
            <h3>{ "Steps" }</h3>
            <p>{ "Check off steps in order. Dry times are the label\u{2019}s longest. Nothing is sanded while a coat is wet." }</p>
            <ol class="works">{ for works.iter().filter_map(line) }</ol>
            { ticked(app, send, days) }
        </>
    }
}

/// Returns whether a step of a piece is checked off, and a callback that checks or unchecks it.
fn tick(app: &App, send: &Send, piece: &str, step: &str) -> (bool, Callback<Event>) {
    let (piece, key): (_, Rc<str>) = (workshop::PieceId(piece.into()), step.into());
    let lines = app.workshop.piece(&piece).map(|piece| &piece.books);
    let is_done = lines.is_some_and(|books| books.has::<DoneStep>(&key));
    let tick = send.reform(move |_: Event| {
        let edit = tick_step(&key, is_done);
        Action::Edit(Edit::Piece(piece.clone(), PieceEdit::Book(edit)))
    });
    (is_done, tick)
}

/// Lists the steps that are checked off, by piece, so that mistakes can be undone.
fn ticked(app: &App, send: &Send, days: &Days) -> Html {
    let done = || {
        let jobs = days.jobs.iter();
        jobs.flat_map(|job| job.steps.iter().zip(&job.done).map(move |(step, _)| (job, step)))
    };
    let count = done().count();
    if count == 0 {
        return Html::default();
    }
    let line = |(job, step): (&Job, &Step)| {
        let id = format!("ticked-{}-{}", job.key, step.key);
        let (is_done, tick) = tick(app, send, &job.key, &step.key);
        html! {
            <li key={id.clone()}>
                <label class="switch" for={id.clone()}>
                    <input {id} type="checkbox" checked={is_done} onchange={tick} />
                    <span>{ &step.name }<span class="with">{ format!(", {}", job.name) }</span></span>
                </label>
            </li>
        }
    };
    let is_open = app.unfolded.contains(TICKED);
    let title = ("Checked off".into(), count.to_string());
    fold(TICKED, title, is_open, send.reform(Action::Fold), &|| {
        html! { <ol class="works">{ for done().map(line) }</ol> }
    })
}

/// The name of the section of steps that are checked off.
const TICKED: &str = "checked-off";
