//! A comparison of brush and roller for this piece: a sentence, the time, paint and look of each, and all figures.

mod bars;
mod table;

use workshop::{ComparedAt, MaterialLine, WayColumn};
use yew::prelude::*;

use super::Shown;
use super::book::only;
use crate::parts::{choice, fold};
use crate::state::Action;
use crate::words;

/// The name of the toggle that makes the bars show the planned coats instead of coats of equal film.
const PLANNED: &str = "planned-coats";

/// The name of the section with all figures.
const FIGURES: &str = "all-figures";

/// Shows the comparison.
pub fn compare(shown: &Shown) -> Html {
    let Some(takeoff) = shown.takeoff() else {
        return html! { <p>{ "Correct the sizes to compare brush and roller." }</p> };
    };
    if takeoff.materials.is_empty() {
        return html! { <p>{ "Plan the finish to compare brush and roller." }</p> };
    }
    let columns = shown.app.analysis().ways(&shown.piece);
    let columns: Vec<WayColumn> = columns
        .iter()
        .filter(|column| column.is_at_hand)
        .cloned()
        .collect();
    let is_planned = shown.app.unfolded.contains(PLANNED);
    let compared = match is_planned {
        true => ComparedAt::Planned,
        false => ComparedAt::EqualFilm,
    };
    let basis = match is_planned {
        true => "For the planned coats.",
        false => "For coats that dry to the same thickness.",
    };
    let at = [
        (false, "film", "Same thickness"),
        (true, "coats", "Planned coats"),
    ];
    let switch = super::say_if(&shown.send, move |planned: bool| {
        (planned != is_planned).then(|| Action::Fold(PLANNED.into()))
    });
    let lines = &takeoff.materials;
    let figures = || {
        html! {
            <>
                { choice("Compare at", "compare-at", &at, is_planned, switch.clone()) }
                { bars::bars(shown, lines, &columns, compared) }
                { table::table(shown, lines, &columns) }
            </>
        }
    };
    let is_open = shown.app.unfolded.contains(FIGURES);
    let title = ("All the figures".into(), String::new());
    // The roller with a brush for narrow parts differs too little from the roller to stand here.
    let main = columns.iter().filter(|column| column.key != "rolled");
    html! {
        <section class="compare" aria-label="Brush or roller">
            <h2 class="unseen">{ "Brush or roller" }</h2>
            <p id="which-tool" class="verdict">{ words::which_way(&columns, compared) }</p>
            <div class="ways">{ for main.map(|column| way(shown, lines, column, compared)) }</div>
            <p class="hint">{ basis }</p>
            { fold(FIGURES, title, is_open, shown.send.reform(Action::Fold), &figures) }
            { only(&shown.app, &shown.send, "habits", &["sprayer"]) }
        </section>
    }
}

/// Shows the time, paint and look of one tool.
fn way(shown: &Shown, lines: &[MaterialLine], column: &WayColumn, compared: ComparedAt) -> Html {
    let whole = column.whole(compared);
    let coats = match compared {
        ComparedAt::EqualFilm => words::more_coats(lines, column),
        ComparedAt::Planned => String::new(),
    };
    html! {
        <section class="way" aria-label={column.label}>
            <h3>{ column.label }</h3>
            <dl class="totals">
                <div><dt>{ "Time" }</dt><dd>{ words::minutes_as(whole.minutes, words::in_hours([whole.minutes])) }</dd></div>
                <div><dt>{ "Paint" }</dt><dd>{ words::volume(whole.all(), shown.app.workshop.units) }</dd></div>
            </dl>
            <p><b>{ coats }</b>{ column.remarks.first() }</p>
        </section>
    }
}
