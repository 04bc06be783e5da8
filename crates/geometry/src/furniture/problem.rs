//! What can be wrong with the measurements of a piece, said so that a maker can mend it.

use std::fmt;

use units::Length;

use super::fields::{self, FieldId};

/// A measurement that does not fit, with the limit it breaks.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Problem {
    /// A value below the smallest that makes sense.
    TooSmall {
        /// Which measurement.
        field: FieldId,
        /// What it was.
        given: Length,
        /// The smallest that makes sense.
        min: Length,
    },
    /// A value above the largest that makes sense, or not a number.
    TooLarge {
        /// Which measurement.
        field: FieldId,
        /// What it was.
        given: Length,
        /// The largest that makes sense.
        max: Length,
    },
    /// A value that leaves no room beside another one.
    NoRoom {
        /// Which measurement is too large.
        field: FieldId,
        /// What it was.
        given: Length,
        /// The most there is room for.
        room: Length,
        /// What takes the room.
        beside: &'static str,
    },
    /// The drawer fronts measured do not add up to the height there is for them.
    RowsDoNotAddUp {
        /// The sum of the measured fronts.
        fronts: Length,
        /// The height there is for fronts.
        room: Length,
    },
    /// There are no drawers at all.
    NoRows,
    /// More rows of drawers than a piece can have.
    TooManyRows {
        /// How many were given.
        given: usize,
    },
    /// More drawers in a row than a piece can have, or none.
    ColumnCount {
        /// The row from the top, from 1.
        row: usize,
        /// How many were given.
        given: usize,
    },
}

impl Problem {
    /// The measurement to look at.
    pub fn field(&self) -> Option<FieldId> {
        match self {
            Problem::TooSmall { field, .. }
            | Problem::TooLarge { field, .. }
            | Problem::NoRoom { field, .. } => Some(*field),
            _ => None,
        }
    }

    /// The sentence for the maker, with lengths written by `show`.
    pub fn message(&self, show: impl Fn(Length) -> String) -> String {
        match self {
            Problem::TooSmall { field, given, min } => {
                format!(
                    "{} is {}. The least is {}.",
                    name(*field),
                    show(*given),
                    show(*min)
                )
            }
            Problem::TooLarge { field, given, max } => {
                format!(
                    "{} is {}. The most is {}. Check the unit.",
                    name(*field),
                    show(*given),
                    show(*max)
                )
            }
            Problem::NoRoom {
                field,
                given,
                room,
                beside,
            } => format!(
                "{} is {}, but beside {beside} there is room for {}. Measure both again.",
                name(*field),
                show(*given),
                show(*room)
            ),
            Problem::RowsDoNotAddUp { fronts, room } => format!(
                "The drawer fronts add up to {}, but there is room for {}. Leave one row empty to give it the rest, \
                 or measure the fronts and the gap again.",
                show(*fronts),
                show(*room)
            ),
            Problem::NoRows => "There is no row of drawers. Add one.".into(),
            Problem::TooManyRows { given } => {
                format!(
                    "{given} rows of drawers are too many. The most is {}.",
                    super::MAX_ROWS
                )
            }
            Problem::ColumnCount { row, given } => {
                format!(
                    "Row {row} has {given} drawers. Give it 1 to {}.",
                    super::MAX_COLUMNS
                )
            }
        }
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message(|length| units::show_length(length, units::System::Metric)))
    }
}

impl std::error::Error for Problem {}

fn name(field: FieldId) -> String {
    match field {
        FieldId::Of(key) => fields::by_key(key).map_or(key, |field| field.label).into(),
        FieldId::RowHeight(row) => format!("The front height of row {row}"),
    }
}
