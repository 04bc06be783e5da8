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
                    "{} is {}. The least is {}. Measure it again.",
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
            Problem::RowsDoNotAddUp {
                place,
                fronts,
                room,
                rail,
            } => {
                let (rest, why) = match (fronts < room, rail) {
                    (true, None) => (
                        format!("{} too little", show(*room - *fronts)),
                        "Are there rails between the rows (a face frame), or is what it stands on higher?"
                            .into(),
                    ),
                    (true, Some(rail)) => (
                        format!("{} too little", show(*room - *fronts)),
                        format!(
                            "The rails between the rows are taken to be {}: are they higher (Frame rail), or is what it \
                             stands on?",
                            show(*rail)
                        ),
                    ),
                    (false, None) => (
                        format!("{} too much", show(*fronts - *room)),
                        "Is what it stands on lower?".into(),
                    ),
                    (false, Some(rail)) => (
                        format!("{} too much", show(*fronts - *room)),
                        format!(
                            "The rails between the rows are taken to be {}: are they lower (Frame rail), or is what it \
                             stands on?",
                            show(*rail)
                        ),
                    ),
                };
                format!(
                    "{}the rows add up to {}, but there is room for {}: {rest}. {why} Else measure the rows and the gap \
                     again, or leave one row empty: it takes the rest.",
                    in_bay(*place),
                    show(*fronts),
                    show(*room)
                )
            }
            Problem::BaysDoNotAddUp { upper, bays, room } => format!(
                "{}he sections take {} with what stands between them, but there is room for {}. Leave one section empty to \
                 give it the rest, or measure them again.",
                if *upper { "In the upper case t" } else { "T" },
                show(*bays),
                show(*room)
            ),
            Problem::NoRows { place } => format!("{}there is no row. Add one.", in_bay(*place)),
            Problem::TooManyRows { place, given } => format!(
                "{}{given} rows are too many. The most is {}.",
                in_bay(*place),
                super::MAX_ROWS
            ),
            Problem::Count {
                what,
                given,
                least,
                most,
            } => format!("{what}: {given} cannot be. Give {least} to {most}."),
            Problem::NoSuchPart { change, name } => format!(
                "Change {} is about \"{name}\", which this piece does not have any more. Take the change back or \
                 bring the part back.",
                change + 1
            ),
            Problem::NotABoard { change, part } => format!(
                "Change {}: {part} is shaped, and only plain boards can be given another length. Change its \
                 measurements instead.",
                change + 1
            ),
            Problem::TurningOutOfOrder { change } => format!(
                "Change {}: the points of the turning must go from the foot up, each higher than the one before. \
                 Put them in order.",
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
        FieldId::RowHeight(place, row) => format!("The height of row {row}{}", of_bay(place)),
        FieldId::BayWidth(place) => format!(
            "The width of section {}{}",
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
        (false, bay) => format!(" of section {bay}"),
        (true, 1) => " of the upper case".into(),
        (true, bay) => format!(" of section {bay} of the upper case"),
    }
}

/// The beginning of a sentence about a bay.
pub(super) fn in_bay(place: BayPlace) -> String {
    match (place.upper, place.bay) {
        (false, bay) => format!("In section {bay} "),
        (true, bay) => format!("In section {bay} of the upper case "),
    }
}
