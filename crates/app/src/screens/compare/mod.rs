//! A comparison of brush, roller and sprayer for this piece: which is fastest, which uses the least material,
//! a chart of where the paint goes, and all figures.

mod bars;
mod table;

use workshop::ComparedAt;
use yew::prelude::*;

use super::Shown;
use super::book::only;
use crate::parts::choice;
use crate::state::Action;
use crate::words;

/// The name of the toggle that makes the bars show the planned coats instead of coats of equal film.
const PLANNED: &str = "planned-coats";

/// Shows the tools tab.
pub fn compare(shown: &Shown) -> Html {
    let Some(takeoff) = shown.takeoff() else {
        return html! { <p>{ "Mend the measurements first; then the tools stand here side by side." }</p> };
    };
    if takeoff.materials.is_empty() {
        return html! { <p>{ "Nothing goes on yet. Plan the finish first; then the tools stand here side by side." }</p> };
    }
    let columns = &*shown.app.analysis().ways(&shown.piece);
    let is_planned = shown.app.unfolded.contains(PLANNED);
    let at = [
        (false, "film", "The same thickness"),
        (true, "coats", "The planned coats"),
    ];
    let switch = super::say_if(&shown.send, move |planned: bool| {
        (planned != is_planned).then(|| Action::Fold(PLANNED.into()))
    });
    let compared = match is_planned {
        true => ComparedAt::Planned,
        false => ComparedAt::EqualFilm,
    };
    html! {
        <section class="compare" aria-label="Tools">
            <p id="which-tool" class="verdict">{ words::which_way(columns, compared, shown.app.workshop.units) }</p>
            { only(&shown.app, &shown.send, "habits", &["sprayer"]) }
            { choice("Each way makes", "compare-at", &at, is_planned, switch) }
            { bars::bars(shown, &takeoff.materials, columns, compared) }
            <h3>{ "Every figure" }</h3>
            { table::table(shown, &takeoff.materials, columns) }
        </section>
    }
}
