//! The check of a piece's measurements, before anything is built from them.

use units::Length;

use super::fields::{
    BACK_RECESS, BACK_THICKNESS, BOARD, DEPTH, FRAME, FRONT_THICKNESS, FieldId, GAP, HEIGHT, LEG_INSET,
    LEG_WIDTH, LengthField, PLINTH_SETBACK, ROW_HEIGHT, WIDTH,
};
use super::layout::{Layout, ROW_SLIP, Room, carcass_span};
use super::{BackStyle, BaseStyle, FrontStyle, Furniture, MAX_COLUMNS, MAX_ROWS, Problem};

/// The smallest clear width or height that a drawer, a leg or the inside of a case may be left with.
const LEAST_ROOM: f64 = 0.01;

/// Every measurement that is out of its limits; if all are within, those that do not fit beside each other.
pub(super) fn problems(furniture: &Furniture) -> Vec<Problem> {
    let mut found = counts(furniture);
    found.extend(limits(furniture));
    if found.is_empty() {
        found.extend(room_in_the_case(furniture));
    }
    if found.is_empty() {
        found.extend(room_for_rows(furniture));
    }
    found
}

fn counts(furniture: &Furniture) -> Vec<Problem> {
    match furniture.rows.len() {
        0 => vec![Problem::NoRows],
        given if given > MAX_ROWS => vec![Problem::TooManyRows { given }],
        _ => furniture
            .rows
            .iter()
            .enumerate()
            .filter(|(_, row)| !(1..=MAX_COLUMNS).contains(&row.columns))
            .map(|(i, row)| Problem::ColumnCount {
                row: i + 1,
                given: row.columns,
            })
            .collect(),
    }
}

fn limits(furniture: &Furniture) -> Vec<Problem> {
    let of_piece = furniture
        .fields()
        .into_iter()
        .map(|field| (field.id(), field, furniture.length(field)));
    let heights = furniture.rows.iter().take(MAX_ROWS).enumerate();
    let of_rows = heights.filter_map(|(i, row)| {
        row.height
            .map(|height| (FieldId::RowHeight(i + 1), &ROW_HEIGHT, height))
    });
    of_piece
        .chain(of_rows)
        .filter_map(|(id, field, given)| outside(id, field, given))
        .collect()
}

fn outside(id: FieldId, field: &LengthField, given: Length) -> Option<Problem> {
    if given < field.min {
        Some(Problem::TooSmall {
            field: id,
            given,
            min: field.min,
        })
    } else if given <= field.max {
        None
    } else {
        // Also what is not a number: it compares with nothing.
        Some(Problem::TooLarge {
            field: id,
            given,
            max: field.max,
        })
    }
}

/// A measurement that must leave room beside others: the field, how much there is for it, what takes the rest.
type Claim = (&'static LengthField, f64, &'static str);

fn room_in_the_case(furniture: &Furniture) -> Vec<Problem> {
    let metres = |field| furniture.length(field).as_metres();
    let [foot, head] = carcass_span(furniture);
    let board = metres(&BOARD);
    let mut claims: Vec<Claim> = vec![
        (
            &BOARD,
            (metres(&WIDTH) - LEAST_ROOM) / 2.0,
            "the width of the carcass",
        ),
        (
            &BOARD,
            (head - foot - LEAST_ROOM) / 2.0,
            "the top and what the carcass stands on, within the height",
        ),
    ];
    let mut behind_fronts = metres(&DEPTH) - LEAST_ROOM;
    match furniture.fronts {
        FrontStyle::Overlay => {
            // A wider frame or gap would leave a hole beside the board behind it.
            claims.push((&FRAME, board, "the carcass board"));
            claims.push((&GAP, board, "the board behind the gap"));
        }
        FrontStyle::Inset => {
            behind_fronts -= metres(&FRONT_THICKNESS);
            claims.push((
                &FRONT_THICKNESS,
                metres(&DEPTH) - LEAST_ROOM,
                "the depth of the carcass",
            ));
        }
    }
    if furniture.back == BackStyle::Recessed {
        claims.push((
            &BACK_RECESS,
            behind_fronts - metres(&BACK_THICKNESS),
            "the depth of the carcass",
        ));
    } else {
        claims.push((&BACK_THICKNESS, behind_fronts, "the depth of the carcass"));
    }
    match furniture.base {
        BaseStyle::Floor => {}
        BaseStyle::Plinth => {
            claims.push((
                &PLINTH_SETBACK,
                metres(&DEPTH) - 2.0 * board - LEAST_ROOM,
                "the plinth boards, within the depth",
            ));
        }
        BaseStyle::Legs => {
            let legs = metres(&WIDTH).min(metres(&DEPTH)) - 2.0 * metres(&LEG_INSET) - LEAST_ROOM;
            claims.push((
                &LEG_WIDTH,
                legs / 2.0,
                "the other leg and how far both are set in",
            ));
        }
    }
    if head - foot < LEAST_ROOM {
        let given = furniture.length(&HEIGHT);
        return vec![Problem::TooSmall {
            field: HEIGHT.id(),
            given,
            min: given + Length::metres(foot - head + LEAST_ROOM),
        }];
    }
    claims
        .into_iter()
        .filter(|(field, room, _)| furniture.length(field).as_metres() > *room + 1e-9)
        .map(|(field, room, beside)| Problem::NoRoom {
            field: field.id(),
            given: furniture.length(field),
            room: Length::metres(room.max(0.0)),
            beside,
        })
        .collect()
}

fn room_for_rows(furniture: &Furniture) -> Vec<Problem> {
    let room = Room::of(furniture, carcass_span(furniture));
    let rows = &furniture.rows;
    let for_fronts = room.for_fronts(rows.len());
    let measured: f64 = rows
        .iter()
        .filter_map(|row| row.height)
        .map(Length::as_metres)
        .sum();
    let open = rows.iter().filter(|row| row.height.is_none()).count();
    let fits = if open == 0 {
        for_fronts > 0.0 && (measured - for_fronts).abs() <= ROW_SLIP * for_fronts
    } else {
        for_fronts - measured >= LEAST_ROOM * open as f64
    };
    let mut found = Vec::new();
    if !fits {
        found.push(Problem::RowsDoNotAddUp {
            fronts: Length::metres(measured),
            room: Length::metres(for_fronts.max(0.0)),
        });
    }
    let clear = |columns: usize| {
        room.clear_width(furniture, columns)
            .min(room.front_width(columns))
    };
    let too_narrow = rows
        .iter()
        .map(|row| row.columns)
        .find(|&n| clear(n) < LEAST_ROOM);
    if let Some(columns) = too_narrow {
        let missing = (LEAST_ROOM - clear(columns)) * columns as f64;
        let given = furniture.length(&WIDTH);
        found.push(Problem::TooSmall {
            field: WIDTH.id(),
            given,
            min: given + Length::metres(missing),
        });
    }
    if found.is_empty() {
        found.extend(room_between_rails(furniture));
    }
    found
}

/// A front that is lower than the rails around it would leave no opening for its drawer.
fn room_between_rails(furniture: &Furniture) -> Vec<Problem> {
    let rows = Layout::of(furniture).rows.into_iter().enumerate();
    rows.filter_map(|(i, row)| {
        let missing = LEAST_ROOM - (row.opening[1] - row.opening[0]);
        let given = Length::metres(row.front[1] - row.front[0]);
        (missing > 1e-9).then(|| Problem::TooSmall {
            field: FieldId::RowHeight(i + 1),
            given,
            min: given + Length::metres(missing),
        })
    })
    .collect()
}
