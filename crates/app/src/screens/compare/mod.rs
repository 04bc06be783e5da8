//! A comparison of brush and roller for this piece: a sentence, the time, paint and look of each, and all figures.

mod bars;
mod table;

use coatings::Stage;
use workshop::{ComparedAt, WayColumn, main_ways};
use yew::prelude::*;

use super::Shown;
use super::book::only;
use crate::parts::{button, choice, fold};
use crate::state::{Action, Screen};
use crate::words;

/// The name of the toggle that makes the bars show coats of equal film instead of the planned ones.
const EQUAL_FILM: &str = "equal-film";

/// The name of the section with all figures.
const FIGURES: &str = "all-figures";

/// Shows the comparison.
pub fn compare(shown: &Shown) -> Html {
    let Some(takeoff) = shown.takeoff() else {
        return html! { <p>{ "Correct the sizes to compare brush and roller." }</p> };
    };
    let Some(stage) = takeoff.stage_of_tool() else {
        return html! { <p>{ "Plan the finish to compare brush and roller." }</p> };
    };
    let columns = shown.app.analysis().ways(&shown.piece);
    let columns: Vec<WayColumn> = columns
        .iter()
        .filter(|column| column.is_at_hand)
        .cloned()
        .collect();
    let main = main_ways(&columns, takeoff);
    let in_hours = words::in_hours(main.iter().map(|column| column.coat.minutes));
    let system = shown.app.workshop.units;
    let lines = &takeoff.materials;
    let is_equal = shown.app.unfolded.contains(EQUAL_FILM);
    let compared = match is_equal {
        true => ComparedAt::EqualFilm,
        false => ComparedAt::Planned,
    };
    let at = [(false, "coats", "Planned coats"), (true, "film", "Same dry film")];
    let switch = super::say_if(&shown.send, move |equal: bool| {
        (equal != is_equal).then(|| Action::Fold(EQUAL_FILM.into()))
    });
    let figures = || {
        html! {
            <>
                { choice("Compare at", "compare-at", &at, is_equal, switch.clone()) }
                { bars::bars(shown, lines, &columns, compared, in_hours) }
                { table::table(shown, lines, &columns, in_hours) }
            </>
        }
    };
    let is_open = shown.app.unfolded.contains(FIGURES);
    let title = ("All the figures".into(), String::new());
    let least = words::least_of(&main);
    let way = |column: &&WayColumn| {
        let volume = words::volume_beside(column.coat.volume, least, system);
        html! {
            <section class="way" aria-label={column.label}>
                <h3>{ column.label }</h3>
                <dl class="totals">
                    <div><dt>{ "Time" }</dt><dd>{ words::minutes_as(column.coat.minutes, in_hours) }</dd></div>
                    <div><dt>{ words::stage(stage) }</dt><dd>{ volume }</dd></div>
                </dl>
                <p>{ column.remarks.first() }</p>
                { take(shown, column, stage) }
            </section>
        }
    };
    html! {
        <section class="compare" aria-label="Brush or roller">
            <h2 class="unseen">{ "Brush or roller" }</h2>
            <p id="which-tool" class="verdict">{ words::which_way(&main, stage, system) }</p>
            <p class="hint">{ words::planned_way(lines, stage) }</p>
            <div class="ways">{ for main.iter().map(way) }</div>
            { fold(FIGURES, title, is_open, shown.send.reform(Action::Fold), &figures) }
            { only(&shown.app, &shown.send, "habits", &["sprayer"]) }
        </section>
    }
}

/// Shows a button that plans the coats with these tools and returns to the finish, or that they are planned.
fn take(shown: &Shown, column: &WayColumn, stage: Stage) -> Html {
    let own = &shown.app.workshop.materials;
    if column.is_planned(&shown.piece, own, stage) {
        return html! { <p><b>{ "In your plan" }</b></p> };
    }
    let word = match column.key {
        "brush" => "Use the brush",
        "hvlp" => "Use the sprayer",
        _ => "Use the roller",
    };
    let (edits, send) = (column.edits(&shown.piece, own, stage), shown.send.clone());
    let take = Callback::from(move |_: MouseEvent| {
        for edit in &edits {
            send.emit(Action::Stroke(edit.clone(), "use-way"));
        }
        send.emit(Action::Rest);
        send.emit(Action::Screen(Screen::Finish));
    });
    button(format!("use-{}", column.key), word, take)
}
