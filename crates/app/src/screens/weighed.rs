//! Cans weighed before and after a job, and the rates learned from them.

use std::rc::Rc;

use coatings::Basis;
use workshop::learning::{Lesson, Weighed, lessons, weighed};
use workshop::weighing::{changed, to_weigh};
use workshop::{BookEdit, MaterialLine, Takeoff};
use yew::prelude::*;

use super::book::Form;
use super::{Send, Shown, refused};
use crate::browser::{focus_soon, new_name, today};
use crate::parts::button_for;
use crate::state::{Action, App, Screen};
use crate::words;
use workshop::book::Weighing;

/// The width of the chart of a rate.
const WIDE: f64 = 1000.0;

/// Shows the weighed cans of the open piece.
pub fn of_piece(shown: &Shown) -> Html {
    let Shown { app, send, .. } = shown;
    let known = weighed(&app.workshop);
    let lines = app.workshop.books.all::<Weighing>();
    let here = lines.filter(|line| line.piece_id == *shown.piece.id.0);
    html! {
        <>
            <h3>{ "What it really took" }</h3>
            <p>{ "Weigh the can before the first coat and after the last, with lid and stick. Later amounts then use what you used." }</p>
            <div class="row">{ shown.takeoff().map(|takeoff| cans(shown, takeoff)) }</div>
            <ul class="entries">{ for here.map(|line| entry(app, send, &line.id, &known, shown.takeoff())) }</ul>
        </>
    }
}

/// Shows a button for the can of each material.
fn cans(shown: &Shown, takeoff: &Takeoff) -> Html {
    let named = |line: &MaterialLine| {
        html! { <p class="weigh"><span>{ takeoff.name_of(line) }</span>{ can(shown, takeoff, line, "weigh") }</p> }
    };
    takeoff.materials.iter().map(named).collect()
}

/// Shows a button that starts weighing the can of a material, on the screen where the weights are entered.
pub fn can(shown: &Shown, takeoff: &Takeoff, line: &MaterialLine, id: &str) -> Html {
    let first = to_weigh(&shown.app.workshop, &shown.piece, takeoff, line);
    let name = coatings::in_sentence(&line.need.material.name);
    let send = shown.send.clone();
    // Continue a weighing that was started but has no weight yet.
    let mut begun = shown.app.workshop.books.all().filter(|of: &Weighing| {
        of.piece_id == *shown.piece.id.0 && of.material == *line.need.material.key && of.before.is_none()
    });
    let begun = begun.next().map(|of| of.id);
    let add = Callback::from(move |_: MouseEvent| {
        let line = begun.clone().unwrap_or_else(|| {
            let day = std::iter::once(("day", today().to_string()));
            let values = day.chain(first.iter().cloned()).collect();
            let line: Rc<str> = new_name().into();
            send.emit(Action::Book(BookEdit::Add("weighings", Rc::clone(&line), values)));
            line
        });
        send.emit(Action::Screen(Screen::Work));
        focus_soon(format!("weighings-{line}-before"));
    });
    button_for(
        format!("{id}-{}", line.id),
        "Weigh the can",
        format!("Weigh the can: {name}"),
        add,
    )
}

/// Shows one weighed can. With the takeoff of its piece, it also shows the effect on it.
fn entry(app: &App, send: &Send, id: &Rc<str>, known: &[Weighed], taken: Option<&Takeoff>) -> Html {
    let Some(form) = Form::of(app, send, "weighings", Rc::clone(id)) else {
        return Html::default();
    };
    let weighed = known.iter().find(|weighed| weighed.id == *id);
    let name = weighed.map_or("A can", |weighed| &*weighed.material.name);
    let changes = weighed
        .zip(app.piece().zip(taken))
        .and_then(|(of, (piece, taken))| changed(&app.workshop, piece, taken, of));
    let asks = weighed.is_some_and(|weighed| weighed.is_questioned() || weighed.is_confirmed);
    let said = match weighed {
        Some(weighed) => words::weighed(weighed, app.workshop.units),
        None => "Choose the material and the tool.".into(),
    };
    html! {
        <li key={&**id} class="entry">
            <h4>{ name }</h4>
            { form.fields(&["before", "after", "coats", "area", "share"]) }
            { form.fields(&["day", "material", "tool", "ground"]) }
            <div class="left" id={format!("observed-{id}")} role="status">
                { refused::answer(app, |of| of.is_of_line("weighings", id), || html! { <>
                    { said }{ changes.map(|both| words::changed(both, app.workshop.units)) }
                </> }) }
            </div>
            { if asks { form.fields(&["sure"]) } else { html! { <div class="row" /> } } }
            { form.strike(name) }
        </li>
    }
}

/// Shows the rates learned from all jobs, by tool. Empty if nothing was weighed.
pub fn taught(app: &App, send: &Send) -> Html {
    let known = weighed(&app.workshop);
    let lessons = lessons(&app.workshop);
    // All rates share one scale.
    let ends = lessons
        .iter()
        .flat_map(|lesson| [lesson.by_film, lesson.by_label]);
    let most = ends
        .map(|learned| learned.before().high.max(learned.range().high))
        .fold(0.0, f64::max);
    let lines: Vec<Weighing> = app.workshop.books.all().collect();
    html! {
        <>
            <h2>{ "Your weighed jobs" }</h2>
            <p>{ "How far a can goes. The upper bar is typical, the lower one is yours. Weigh cans under Work." }</p>
            <ul class="lessons">{ for lessons.iter().map(|of| lesson(app, of, most)) }</ul>
            if !lines.is_empty() { <h3>{ "Weighed cans" }</h3> }
            <ul class="entries">{ for lines.iter().rev().map(|line| html! {
                <>
                    <li class="with">{ &line.piece }</li>
                    { entry(app, send, &line.id, &known, None) }
                </>
            }) }</ul>
        </>
    }
}

fn lesson(app: &App, lesson: &Lesson, most: f64) -> Html {
    let Lesson { material, tool, .. } = lesson;
    let bar = |figure: coatings::SourcedRange<coatings::unit::SquareMetresPerLitre>,
               y: f64,
               class: &'static str| {
        let (x, width) = (figure.low / most * WIDE, (figure.high - figure.low) / most * WIDE);
        html! { <rect {class} x={format!("{x:.1}")} y={format!("{y}")} width={format!("{width:.1}")} height="14" /> }
    };
    let by = |(basis, word): (Basis, &'static str)| {
        let learned = lesson.learned(basis);
        html! {
            <>
                <svg class="bar" viewBox="0 0 1000 40" preserveAspectRatio="none" aria-hidden="true">
                    { bar(learned.before(), 4.0, "lost") }{ bar(learned.range(), 22.0, "on-piece") }
                </svg>
                <p>{ words::taught(word, &learned, app.workshop.units) }</p>
            </>
        }
    };
    let both = [
        (Basis::WetFilm, "Typical for the tool"),
        (Basis::LabelRate, "On the label"),
    ];
    html! {
        <li id={format!("lesson-{}-{}", material.key, tool.key)}>
            <h3>{ &*material.name }<span class="with">{ format!(" {}", coatings::in_sentence(tool.name)) }</span></h3>
            { for both.into_iter().map(by) }
        </li>
    }
}
