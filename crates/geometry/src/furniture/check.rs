//! Checks the measurements of a piece, before anything is built from them.

mod cases;
mod claim;
mod others;

use super::bay::{Bay, MAX_BAYS, MAX_COLUMNS, MAX_ROWS, MAX_SHELVES};
use super::fields::{BAY_WIDTH, BayPlace, FieldId, ROW_HEIGHT};
use super::{Construction, Furniture, Problem};
pub(super) use claim::outside;

/// Every measurement that is out of its limits. If all are within, those that do not fit together.
pub(super) fn problems(furniture: &Furniture) -> Vec<Problem> {
    let mut found = counts(furniture);
    if found.is_empty() {
        found.extend(limits(furniture));
    }
    if found.is_empty() {
        found.extend(match furniture.kind.construction() {
            Construction::Case | Construction::TwoCases | Construction::Pedestals => {
                cases::problems(furniture)
            }
            Construction::Table => others::table(furniture),
            Construction::Chest => others::chest(furniture),
            Construction::Headboard => others::headboard(furniture),
            Construction::Frame => others::frame(furniture),
        });
    }
    found
}

fn counts(furniture: &Furniture) -> Vec<Problem> {
    let mut found: Vec<Problem> = furniture
        .count_fields()
        .into_iter()
        .filter(|field| !(field.min..=field.max).contains(&furniture.count(field)))
        .map(|field| Problem::Count {
            what: field.label,
            given: furniture.count(field) as usize,
            least: field.min as usize,
            most: field.max as usize,
        })
        .collect();
    let wanted = match furniture.kind.construction() {
        Construction::Case => (1..=MAX_BAYS, 0..=0),
        Construction::TwoCases => (1..=MAX_BAYS, 1..=MAX_BAYS),
        Construction::Pedestals => (2..=2, 0..=0),
        _ => (0..=0, 0..=0),
    };
    for (bays, wanted) in [(&furniture.bays, wanted.0), (&furniture.upper, wanted.1)] {
        if !wanted.contains(&bays.len()) {
            found.push(Problem::Count {
                what: "Columns",
                given: bays.len(),
                least: *wanted.start(),
                most: *wanted.end(),
            });
        }
    }
    if found.is_empty() {
        found.extend(each_bay(furniture).flat_map(|(place, bay)| bay_counts(place, bay)));
    }
    found
}

/// Every bay with its place.
fn each_bay(furniture: &Furniture) -> impl Iterator<Item = (BayPlace, &Bay)> {
    [false, true].into_iter().flat_map(|upper| {
        let bays = furniture.bays_of(upper).iter().enumerate();
        bays.map(move |(i, bay)| (BayPlace { upper, bay: i + 1 }, bay))
    })
}

fn bay_counts(place: BayPlace, bay: &Bay) -> Vec<Problem> {
    if bay.rows.is_empty() {
        return vec![Problem::NoRows { place }];
    }
    if bay.rows.len() > MAX_ROWS {
        return vec![Problem::TooManyRows {
            place,
            given: bay.rows.len(),
        }];
    }
    let count = |what, given: usize, least: usize, most: usize| {
        (!(least..=most).contains(&given)).then_some(Problem::Count {
            what,
            given,
            least,
            most,
        })
    };
    bay.rows
        .iter()
        .flat_map(|row| {
            [
                count("Drawers or doors in a row", row.columns, 1, MAX_COLUMNS),
                count("Shelves in a row", row.shelves, 0, MAX_SHELVES),
            ]
        })
        .flatten()
        .collect()
}

fn limits(furniture: &Furniture) -> Vec<Problem> {
    let of_piece = furniture
        .fields()
        .into_iter()
        .map(|field| (field.id(), field, furniture.length(field)));
    let of_bays = each_bay(furniture).flat_map(|(place, bay)| {
        let width = bay
            .width
            .map(|width| (FieldId::BayWidth(place), &BAY_WIDTH, width));
        let heights = bay.rows.iter().enumerate().filter_map(move |(i, row)| {
            let height = row.height?;
            Some((FieldId::RowHeight(place, i + 1), &ROW_HEIGHT, height))
        });
        width.into_iter().chain(heights)
    });
    of_piece
        .chain(of_bays)
        .filter_map(|(id, field, given)| outside(id, field, given))
        .collect()
}
