//! The answer: how much of each material, how sure, and whether the can in question is enough.

use coatings::Verdict;
use units::{show_area, show_volume};
use web_sys::HtmlSelectElement;
use workshop::{MaterialLine, PieceEdit, Takeoff, unmeasured};
use yew::prelude::*;

use super::{Shown, say_if};
use crate::state::Act;
use crate::words;

/// Area and amounts in full.
pub fn amounts(shown: &Shown) -> Html {
    match shown.takeoff() {
        Some(takeoff) => answer(shown, takeoff),
        None => {
            let problems = shown.problems();
            let system = shown.app.workshop.units;
            let sentences = problems
                .iter()
                .map(|p| html! { <li>{ p.message(|l| units::show_length(l, system)) }</li> });
            html! {
                <section class="against" role="alert">
                    <h2>{ "The measurements do not fit yet" }</h2>
                    <ul>{ for sentences }</ul>
                </section>
            }
        }
    }
}

fn answer(shown: &Shown, takeoff: &Takeoff) -> Html {
    let system = shown.app.workshop.units;
    let (figure, unit) = show_area(takeoff.painted.area, system);
    let count = shown.piece.count;
    let what = if count > 1 {
        format!("To paint, {count} pieces")
    } else {
        "To paint".into()
    };
    html! {
        <>
            <section class="area">
                <h2>{ what }</h2>
                <p id="painted-area" class="big"><b>{ figure }</b>{ " " }<span>{ unit }</span></p>
                <p class="range">{ sureness(shown, takeoff) }</p>
            </section>
            { for takeoff.materials.iter().filter(|line| line.coats > 0).map(|line| material(shown, line)) }
        </>
    }
}

fn sureness(shown: &Shown, takeoff: &Takeoff) -> String {
    let guessed = unmeasured(&shown.piece).len();
    let share = takeoff.painted.give_or_take() * 100.0;
    let share = if share < 1.0 {
        format!("{share:.1}")
    } else {
        format!("{share:.0}")
    };
    match guessed {
        0 => format!("Give or take {share} %. Everything was measured."),
        1 => format!("Give or take {share} %. One measurement is still a usual value."),
        n => format!("Give or take {share} %. {n} measurements are still usual values."),
    }
}

fn material(shown: &Shown, line: &MaterialLine) -> Html {
    let system = shown.app.workshop.units;
    let key = words::stage_key(line.stage);
    let (figure, unit) = show_volume(line.amount.likely(), system);
    html! {
        <section class="amount" aria-labelledby={format!("name-{key}")}>
            <h2 id={format!("name-{key}")}>
                { line.stage.label() }
                <span class="with">{ format!(" {}, {}", words::coats(line.coats), line.tool.name.to_ascii_lowercase()) }</span>
            </h2>
            <p id={format!("amount-{key}")} class="big"><b>{ figure }</b>{ " " }<span>{ unit }</span></p>
            <p id={format!("range-{key}")} class="range">{ words::range(&line.amount, system) }</p>
            { band(line) }
            { can(shown, line, key) }
        </section>
    }
}

/// The amount as a band from low to high with the likely value marked, under the can in question, to scale.
fn band(line: &MaterialLine) -> Html {
    let amount = &line.amount;
    let can = line.can.volume();
    let whole = amount.high().max(can).as_litres() * 1.04;
    let place = |volume: units::Volume| format!("{:.1}", volume.as_litres() / whole * 1000.0);
    let width =
        |from: units::Volume, to: units::Volume| format!("{:.1}", (to - from).as_litres() / whole * 1000.0);
    html! {
        <svg class="band" viewBox="0 0 1000 60" preserveAspectRatio="none" aria-hidden="true">
            <rect class="can" x="0" y="6" width={place(can)} height="48" />
            <rect class="sure" x="0" y="22" width={place(amount.low())} height="16" />
            <rect class="unsure" x={place(amount.low())} y="22" width={width(amount.low(), amount.high())} height="16" />
            <rect class="likely" x={place(amount.likely())} y="14" width="4" height="32" />
        </svg>
    }
}

fn can(shown: &Shown, line: &MaterialLine, key: &str) -> Html {
    let system = shown.app.workshop.units;
    let stage = line.stage;
    let choose = say_if(&shown.send, move |event: Event| {
        let key = event.target_unchecked_into::<HtmlSelectElement>().value();
        coatings::can(&key).map(|can| Act::Change(PieceEdit::Can(stage, can.key)))
    });
    // A can of the other system stays in the list while it is the chosen one.
    let sizes = coatings::can_sizes(system);
    let foreign = (!sizes.contains(line.can)).then_some(line.can);
    let options = sizes.iter().chain(foreign).map(|can| {
        html! { <option value={can.key} selected={can == line.can}>{ can.label }</option> }
    });
    let verdict = words::verdict(line.enough.verdict);
    let class = match line.enough.verdict {
        Verdict::Enough => "enough",
        Verdict::Tight => "tight",
        Verdict::Short => "short",
    };
    html! {
        <div class={classes!("question", class)}>
            <label for={format!("can-{key}")}>{ "One can of" }</label>
            <select id={format!("can-{key}")} onchange={choose}>{ for options }</select>
            <p aria-live="polite">
                <strong id={format!("verdict-{key}")}>{ verdict }</strong>
                <span id={format!("answer-{key}")}>{ words::enough(&line.enough, system) }</span>
            </p>
        </div>
    }
}

/// The amounts in one line, always in sight on a narrow screen; it leads to the full answer.
pub fn in_short(shown: &Shown) -> Html {
    let system = shown.app.workshop.units;
    let figures = match shown.takeoff() {
        Some(takeoff) => takeoff
            .materials
            .iter()
            .filter(|line| line.coats > 0)
            .map(|line| {
                let verdict = words::verdict(line.enough.verdict);
                html! {
                    <span class="one">
                        <span class="label">{ line.stage.label() }</span>
                        <b>{ words::volume(line.amount.likely(), system) }</b>
                        <span class="label">{ verdict }</span>
                    </span>
                }
            })
            .collect::<Html>(),
        None => html! { <span class="one">{ "The measurements do not fit yet" }</span> },
    };
    html! { <a class="in-short" href="#answers" aria-label="To the amounts">{ figures }</a> }
}
