//! Brush, roller and sprayer on this piece, side by side: a picture of where the paint goes, then every figure.

mod bars;
mod table;

use workshop::WayColumn;
use yew::prelude::*;

use super::Shown;

/// The sheet of the ways.
pub fn compare(shown: &Shown, columns: &[WayColumn]) -> Html {
    let Some(takeoff) = shown.takeoff() else {
        return html! { <p>{ "Mend the measurements first; then the tools stand here side by side." }</p> };
    };
    if takeoff.materials.is_empty() {
        return html! { <p>{ "Nothing goes on yet. Plan the finish first; then the tools stand here side by side." }</p> };
    }
    html! {
        <section class="compare" aria-label="Tools">
            <p>{ "Where it goes: the same finish, the same coats, one way below the other." }</p>
            { bars::bars(shown, columns) }
            <h3>{ "Every figure" }</h3>
            <p>{ "First at the coats that are planned, then at as many as the thickest film asks for." }</p>
            { table::table(shown, &takeoff.materials, columns) }
            <ul class="remarks">
                { for columns.iter().map(|column| html! {
                    <li><b>{ column.label }</b>{ ". " }{ column.remarks.join(" ") }</li>
                }) }
            </ul>
        </section>
    }
}
