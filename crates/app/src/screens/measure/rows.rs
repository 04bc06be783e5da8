//! The front: columns, and the rows of each from the top. One row at a time is open to be changed: the one that was touched
//! here or on the drawing.

use geometry::{
    BayPlace, FieldId, Fill, Furniture, MAX_BAYS, MAX_COLUMNS, MAX_ROWS, MAX_SHELVES, Notice, Problem,
};
use units::Length;
use workshop::{Bay, Case, PieceEdit, Row};
use yew::prelude::*;

use super::super::Shown;
use super::super::tape::{Tape, error, stands_in, tape_field};
use crate::parts::{button_for, choice, stepper};
use crate::state::{Action, RowPlace, has_free_bays};
use crate::words;

/// The contents of a row, each with its element word.
const FILLS: [(Fill, &str); 3] = [
    (Fill::Drawers, "drawers"),
    (Fill::Doors, "doors"),
    (Fill::Open, "open"),
];

/// The lengths that divide the remaining space.
type Shared = Vec<(FieldId, Length)>;

/// Shows the front of each case. Empty for a piece without one.
pub fn rows(shown: &Shown, furniture: &Furniture) -> Html {
    let checked = furniture.checked();
    let shared = checked.map(|piece| piece.shared_lengths()).unwrap_or_default();
    let has_upper = !shown.piece.upper.is_empty();
    [true, false]
        .into_iter()
        .filter(|upper| !shown.piece.bays_of(*upper).is_empty())
        .map(|upper| {
            let title = match (has_upper, upper) {
                (false, _) => "Front",
                (true, true) => "Front, upper case",
                (true, false) => "Front, lower case",
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
                { stepper(("Columns", ""), id, bays.len() as u32, (1, MAX_BAYS as u32), change) }
            }
            { error(shown, &of_bays) }
            { slip(shown, &|notice| matches!(notice, Notice::BaysStretched { upper: u, .. } if *u == upper)) }
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
            { stepper(("Rows", &format!(", {}", label.to_ascii_lowercase())), &format!("{prefix}rows"),
                bay.rows.len() as u32, (1, MAX_ROWS as u32), rows) }
            if is_one_of_many && has_free_bays(kind.construction()) {
                <div class="sizes">{ length(shown, FieldId::BayWidth(place), "Inside width".into(), shared) }</div>
            }
            { error(shown, &of_rows) }
            { slip(shown, &|notice| matches!(notice, Notice::RowsStretched { place: p, .. } if *p == place)) }
            <ol class="row-list">
                { for bay.rows.iter().enumerate().map(|(i, of)| row(shown, RowPlace { bay: place, row: i + 1 }, of, bay, shared)) }
            </ol>
        </div>
    }
}

/// Describes how rows or columns that do not quite add up were adjusted.
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

/// Shows a row. The button opens it.
fn row(shown: &Shown, place: RowPlace, row: &Row, bay: &Bay, shared: &Shared) -> Html {
    let is_open = shown.app.row == Some(place);
    let id = format!("{}row-{}", words::place_prefix(place.bay), place.row);
    let next = (!is_open).then_some(place);
    let height = shown.piece.reading(place.height()).map(words::reading);
    let usual = stands_in(&shown.piece.furniture(), shared, place.height());
    let guess =
        || usual.map(|(length, from)| format!("{} ({})", shown.app.length(length), words::stand_in(from)));
    html! {
        <li>
            <button type="button" id={format!("pick-{id}")} class="row-button" aria-expanded={is_open.to_string()}
                onclick={shown.send.reform(move |_| Action::Row(next))}>
                <b>{ format!("Row {}", place.row) }</b>
                <span>{ words::row_holds(row) }</span>
                <span class="figure">{ height.clone().or_else(guess) }</span>
            </button>
            if is_open { { opened(shown, place, row, bay.rows.len() > 1, shared) } }
        </li>
    }
}

fn opened(shown: &Shown, place: RowPlace, row: &Row, is_removable: bool, shared: &Shared) -> Html {
    let RowPlace { bay, row: number } = place;
    let prefix = words::place_prefix(bay);
    let id = |of: &str| format!("{prefix}{of}-{number}");
    let fills = FILLS.map(|(fill, key)| (fill, key, words::fill(fill)));
    let fill = shown.change(move |fill| {
        Some(PieceEdit::Fill {
            bay,
            row: number,
            fill,
        })
    });
    let columns = shown.change(move |n: u32| {
        Some(PieceEdit::Columns {
            bay,
            row: number,
            columns: n as usize,
        })
    });
    let shelves = shown.change(move |n: u32| {
        Some(PieceEdit::Shelves {
            bay,
            row: number,
            shelves: n as usize,
        })
    });
    let repeat = shown.change(move |_: MouseEvent| Some(PieceEdit::RepeatRow { bay, row: number }));
    let remove = shown.change(move |_: MouseEvent| Some(PieceEdit::RemoveRow { bay, row: number }));
    let of = format!(", row {number}");
    html! {
        <div class="row-open" role="group" aria-label={format!("Row {number}")}>
            { choice("Row holds", &id("fill"), &fills, row.fill, fill) }
            { stepper((words::how_many(row.fill), &of), &id("columns"), row.columns as u32, (1, MAX_COLUMNS as u32), columns) }
            if row.fill != Fill::Drawers {
                { stepper(("Shelves in each", &of), &id("shelves"), row.shelves as u32, (0, MAX_SHELVES as u32), shelves) }
            }
            <div class="sizes">{ length(shown, place.height(), format!("Row {number}, height"), shared) }</div>
            <div class="buttons">
                { button_for(id("repeat"), "Duplicate row", format!("Duplicate row {number}"), repeat) }
                if is_removable {
                    { button_for(id("remove"), "Delete row", format!("Delete row {number}"), remove) }
                }
            </div>
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
