//! Problems with the measurements of a piece, worded so that a maker can fix them.

use std::fmt;

use units::Length;

use super::fields::{self, BayPlace, FieldId};

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
    /// The rows measured do not add up to the height there is for them.
    RowsDoNotAddUp {
        /// In which bay.
        place: BayPlace,
        /// The sum of the measured rows.
        fronts: Length,
        /// The height there is for them.
        room: Length,
        /// How high the rails of a face frame between them are taken to be, if there are any.
        rail: Option<Length>,
    },
    /// The bays measured do not add up to the width there is for them.
    BaysDoNotAddUp {
        /// Whether in the upper of two cases.
        upper: bool,
        /// What the measured bays take.
        bays: Length,
        /// The width there is for them.
        room: Length,
    },
    /// A bay has no rows at all.
    NoRows {
        /// Which bay.
        place: BayPlace,
    },
    /// More rows than a bay can have.
    TooManyRows {
        /// Which bay.
        place: BayPlace,
        /// How many were given.
        given: usize,
    },
    /// A number of something that a piece cannot have.
    Count {
        /// Of what.
        what: &'static str,
        /// How many were given.
        given: usize,
        /// The fewest there may be.
        least: usize,
        /// The most there may be.
        most: usize,
    },
    /// A change names a part or a surface that the piece does not have.
    NoSuchPart {
        /// The place of the change in the list, from 0.
        change: usize,
        /// What it names.
        name: String,
    },
    /// Only a plain board can be made longer or shorter on its own.
    NotABoard {
        /// The place of the change in the list, from 0.
        change: usize,
        /// The part.
        part: String,
    },
    /// The points of a turning do not go from the foot up.
    TurningOutOfOrder {
        /// The place of the change in the list, from 0.
        change: usize,
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
    #[expect(clippy::too_many_lines, reason = "one sentence for each problem")]
    pub fn message(&self, show: impl Fn(Length) -> String) -> String {
        match self {
            Problem::TooSmall { field, given, min } => {
                format!(
                    "{} is {}. The minimum is {}. Measure it again.",
                    name(*field),
                    show(*given),
                    show(*min)
                )
            }
            Problem::TooLarge { field, given, max } => {
                format!(
                    "{} is {}. The maximum is {}. Check the unit.",
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
                "{} is {}; there is room for {}. Check it and {beside}.",
                name(*field),
                show(*given),
                show(*room)
            ),
            Problem::RowsDoNotAddUp {
                place,
                fronts,
                room,
                rail,
            } => {
                let off = match fronts < room {
                    true => format!("{} short", show(*room - *fronts)),
                    false => format!("{} over", show(*fronts - *room)),
                };
                let check = match (rail, fronts < room) {
                    (Some(rail), _) => {
                        format!("Check the rows, the base and the frame rail ({}).", show(*rail))
                    }
                    (None, true) => "Check the rows and the base. Is there a face frame?".into(),
                    (None, false) => "Check the rows, the gap and the base.".into(),
                };
                format!(
                    "{}rows add up to {}; there is room for {} ({off}). {check} Or leave one row blank to fill the rest.",
                    in_bay(*place),
                    show(*fronts),
                    show(*room)
                )
            }
            Problem::BaysDoNotAddUp { upper, bays, room } => format!(
                "{}olumns and the boards between them add up to {}; there is room for {}. Measure them again, or leave \
                 one blank to fill the rest.",
                if *upper { "Upper c" } else { "C" },
                show(*bays),
                show(*room)
            ),
            Problem::NoRows { place } => format!("{}add a row.", in_bay(*place)),
            Problem::TooManyRows { place, given } => format!(
                "{}use at most {} rows, not {given}.",
                in_bay(*place),
                super::MAX_ROWS
            ),
            Problem::Count {
                what,
                given,
                least,
                most,
            } => format!("{what}: use {least} to {most}, not {given}."),
            Problem::NoSuchPart { change, name } => format!(
                "Change {} is about \"{name}\", which this piece no longer has. Delete the change or restore the part.",
                change + 1
            ),
            Problem::NotABoard { change, part } => format!(
                "Change {}: {part} isn't a plain board. Change its measurements instead.",
                change + 1
            ),
            Problem::TurningOutOfOrder { change } => format!(
                "Change {}: put the points in order, from the bottom up.",
                change + 1
            ),
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
    let of_key = |key: &'static str| fields::by_key(key).map_or(key, |field| field.label).to_owned();
    match field {
        FieldId::Of(key) => of_key(key),
        FieldId::RowHeight(place, row) => format!("Height of row {row}{}", of_bay(place)),
        FieldId::BayWidth(place) => format!(
            "Width of column {}{}",
            place.bay,
            if place.upper { " of the upper case" } else { "" }
        ),
        FieldId::Alteration { change, key, .. } => {
            format!("Change {}: {}", change + 1, of_key(key).to_ascii_lowercase())
        }
    }
}

fn of_bay(place: BayPlace) -> String {
    match (place.upper, place.bay) {
        (false, 1) => String::new(),
        (false, bay) => format!(" of column {bay}"),
        (true, 1) => " of the upper case".into(),
        (true, bay) => format!(" of column {bay} of the upper case"),
    }
}

/// The beginning of a sentence about a bay.
pub(super) fn in_bay(place: BayPlace) -> String {
    match (place.upper, place.bay) {
        (false, bay) => format!("Column {bay}: "),
        (true, bay) => format!("Upper column {bay}: "),
    }
}
