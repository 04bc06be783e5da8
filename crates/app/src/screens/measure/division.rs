//! The division of the front: bays from the left, and rows from the top in each of them.

use geometry::{
    BayPlace, FieldId, Fill, Furniture, MAX_BAYS, MAX_COLUMNS, MAX_ROWS, MAX_SHELVES, Notice, Problem, fields,
};
use units::Length;
use workshop::{Bay, Case, PieceEdit, Row};
use yew::prelude::*;

use super::super::Shown;
use super::super::tape::{Tape, error, stands_in, tape_field};
use crate::parts::{button_for, select, stepper};
use crate::state::has_free_bays;
use crate::words;

/// The contents of a row, each with its element word.
const FILLS: [(Fill, &str); 3] = [
    (Fill::Drawers, "drawers"),
    (Fill::Doors, "doors"),
    (Fill::Open, "open"),
];

/// The lengths that divide the remaining space.
type Shared = Vec<(FieldId, Length)>;

/// Shows the division of each case. Empty for a piece without one.
pub fn division(shown: &Shown, furniture: &Furniture) -> Html {
    let checked = furniture.checked();
    let shared = checked.map(|piece| piece.shared_lengths()).unwrap_or_default();
    let has_upper = !shown.piece.upper.is_empty();
    [true, false]
        .into_iter()
        .filter(|upper| !shown.piece.bays_of(*upper).is_empty())
        .map(|upper| {
            let title = match (has_upper, upper) {
                (false, _) => "The front",
                (true, true) => "The front of the upper case",
                (true, false) => "The front of the lower case",
            };
            html! { <><h3>{ title }</h3>{ case(shown, upper, &shared) }</> }
        })
        .collect()
}

fn case(shown: &Shown, upper: bool, shared: &Shared) -> Html {
    let bays = shown.piece.bays_of(upper);
    let id = if upper { "upper-bays" } else { "bays" };
    let is_free = has_free_bays(shown.piece.kind.construction());
    let change = shown.change(move |bays: u32| {
        Some(PieceEdit::Bays {
            case: Case::from_upper(upper),
            count: bays as usize,
        })
    });
    let of_bays =
        |problem: &Problem| matches!(problem, Problem::BaysDoNotAddUp { upper: u, .. } if *u == upper);
    html! {
        <>
            if is_free {
                { stepper(("Sections side by side", ""), id, bays.len() as u32, (1, MAX_BAYS as u32), change) }
            }
            { error(shown, &of_bays) }
            { slip(shown, &|notice| matches!(notice, Notice::BaysStretched { upper: u, .. } if *u == upper)) }
            <p class="hint">{ format!("Rows from the top. {}.", fields::ROW_HEIGHT.hint) }</p>
            { for bays.iter().enumerate().map(|(i, of)| bay(shown, BayPlace { upper, bay: i + 1 }, of, shared)) }
        </>
    }
}

fn bay(shown: &Shown, place: BayPlace, bay: &Bay, shared: &Shared) -> Html {
    let (kind, prefix) = (shown.piece.kind, words::place_prefix(place));
    let is_one_of_many = shown.piece.bays_of(place.upper).len() > 1;
    let rows = shown.change(move |rows: u32| {
        Some(PieceEdit::Rows {
            bay: place,
            count: rows as usize,
        })
    });
    let label = words::bay_label(kind, place);
    let of_rows =
        |problem: &Problem| matches!(problem, Problem::RowsDoNotAddUp { place: p, .. } if *p == place);
    html! {
        <div class="bay" role="group" aria-label={label.clone()}>
            if is_one_of_many { <h4>{ label.clone() }</h4> }
            <div class="row">
                { stepper(("Rows", &format!(", {}", label.to_ascii_lowercase())), &format!("{prefix}rows"),
                    bay.rows.len() as u32, (1, MAX_ROWS as u32), rows) }
                if is_one_of_many && has_free_bays(kind.construction()) {
                    { length(shown, FieldId::BayWidth(place), "Clear width".into(), shared) }
                }
            </div>
            { error(shown, &of_rows) }
            { slip(shown, &|notice| matches!(notice, Notice::RowsStretched { place: p, .. } if *p == place)) }
            { opens(bay) }
            <div class="rows">
                { for bay.rows.iter().enumerate().map(|(i, of)| row(shown, place, (i + 1, bay.rows.len() > 1), of, shared)) }
            </div>
        </div>
    }
}

/// Describes how rows or bays that do not quite add up were adjusted.
fn slip(shown: &Shown, is_about: &dyn Fn(&Notice) -> bool) -> Html {
    let notices = shown.takeoff().map_or(&[][..], |takeoff| &takeoff.notices);
    let found = notices.iter().find_map(|notice| match notice {
        workshop::Notice::Piece(notice) if is_about(notice) => Some(notice),
        _ => None,
    });
    let sentence = found.map(|notice| notice.message(shown.app.workshop.units));
    sentence.map_or_else(
        Html::default,
        |sentence| html! { <p class="hint slip" role="status">{ sentence }</p> },
    )
}

/// Shows the consequence of an open row.
fn opens(bay: &Bay) -> Html {
    if bay.rows.iter().any(|row| row.fill == Fill::Open) {
        html! { <p class="hint">{ "The inside of an open row is seen, so it gets the finish too, unless you leave it on Surfaces." }</p> }
    } else {
        Html::default()
    }
}

fn row(
    shown: &Shown,
    place: BayPlace,
    (number, is_removable): (usize, bool),
    row: &Row,
    shared: &Shared,
) -> Html {
    let prefix = words::place_prefix(place);
    let id = |of: &str| format!("{prefix}{of}-{number}");
    let fill = shown.change(move |key: String| {
        let (fill, _) = FILLS.into_iter().find(|(_, known)| *known == key)?;
        Some(PieceEdit::Fill {
            bay: place,
            row: number,
            fill,
        })
    });
    let fills = FILLS.map(|(fill, key)| (key, fill.label()));
    let chosen = FILLS.into_iter().find(|(fill, _)| *fill == row.fill);
    let columns = shown.change(move |n: u32| {
        Some(PieceEdit::Columns {
            bay: place,
            row: number,
            columns: n as usize,
        })
    });
    let shelves = shown.change(move |n: u32| {
        Some(PieceEdit::Shelves {
            bay: place,
            row: number,
            shelves: n as usize,
        })
    });
    let repeat = shown.change(move |_: MouseEvent| {
        Some(PieceEdit::RepeatRow {
            bay: place,
            row: number,
        })
    });
    let remove = shown.change(move |_: MouseEvent| {
        Some(PieceEdit::RemoveRow {
            bay: place,
            row: number,
        })
    });
    let height = FieldId::RowHeight(place, number);
    let of = format!(", row {number}");
    html! {
        <div class="row" role="group" aria-label={format!("Row {number}")}>
            { length(shown, height, format!("Row {number}, height"), shared) }
            { select("Filled with", id("fill"), fills, chosen.map_or("", |(_, key)| key), fill) }
            { stepper(("Side by side", &of), &id("columns"), row.columns as u32, (1, MAX_COLUMNS as u32), columns) }
            if row.fill != Fill::Drawers {
                { stepper(("Shelves in each", &of), &id("shelves"), row.shelves as u32, (0, MAX_SHELVES as u32),
                    shelves) }
            }
            { button_for(id("repeat"), "Add one like it", format!("Add one like it: row {number}"), repeat) }
            if is_removable {
                { button_for(id("remove"), "Take it out", format!("Take it out: row {number}"), remove) }
            }
        </div>
    }
}

fn length(shown: &Shown, id: FieldId, label: String, shared: &Shared) -> Html {
    let tape = Tape {
        id,
        label,
        usual: stands_in(&shown.piece.furniture(), shared, id),
        with_hint: false,
    };
    tape_field(shown, tape)
}
