//! Measurements that a maker takes of a piece: their names, their limits, what to do with the tape.
//!
//! The limits stand here once. The check, the hint beside the field, the error and the tests read them.

use std::collections::BTreeMap;

use units::Length;

/// The name of a measurement.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum FieldId {
    /// A measurement of the piece as a whole, by its key in [`fields::ALL`](super::fields::ALL).
    Of(&'static str),
    /// The height of the drawer fronts in a row, counted from the top, from 1.
    RowHeight(usize),
}

/// A length that a maker can measure.
#[derive(Clone, Debug, PartialEq)]
pub struct LengthField {
    /// Its name in saved files.
    pub key: &'static str,
    /// What the trade calls it.
    pub label: &'static str,
    /// Where to hold the tape.
    pub hint: &'static str,
    /// The smallest value that makes sense.
    pub min: Length,
    /// The largest value that makes sense.
    pub max: Length,
}

impl LengthField {
    /// The name of this measurement.
    pub const fn id(&self) -> FieldId {
        FieldId::Of(self.key)
    }
}

const fn field(
    key: &'static str,
    label: &'static str,
    hint: &'static str,
    min_mm: f64,
    max_mm: f64,
) -> LengthField {
    LengthField {
        key,
        label,
        hint,
        min: Length::millimetres(min_mm),
        max: Length::millimetres(max_mm),
    }
}

/// Width of the carcass.
pub const WIDTH: LengthField = field(
    "width",
    "Width",
    "Across the carcass, side to side, without the top's overhang",
    50.0,
    3000.0,
);
/// Depth of the carcass.
pub const DEPTH: LengthField = field(
    "depth",
    "Depth",
    "From the front edge of the side to the wall, without the drawer fronts",
    50.0,
    3000.0,
);
/// Height of the piece.
pub const HEIGHT: LengthField = field(
    "height",
    "Height",
    "From the floor to the top surface",
    50.0,
    3000.0,
);
/// Thickness of the carcass boards.
pub const BOARD: LengthField = field(
    "board",
    "Carcass board",
    "Thickness of the side boards",
    3.0,
    60.0,
);
/// Thickness of the top.
pub const TOP_THICKNESS: LengthField = field(
    "top-thickness",
    "Top thickness",
    "At the front edge of the top",
    3.0,
    100.0,
);
/// Overhang of the top in front.
pub const OVERHANG_FRONT: LengthField = field(
    "overhang-front",
    "Overhang, front",
    "From the carcass to the front edge of the top",
    0.0,
    300.0,
);
/// Overhang of the top at each side.
pub const OVERHANG_SIDE: LengthField = field(
    "overhang-side",
    "Overhang, each side",
    "From the carcass to the end of the top",
    0.0,
    300.0,
);
/// Thickness of the drawer fronts.
pub const FRONT_THICKNESS: LengthField = field(
    "front-thickness",
    "Front thickness",
    "Pull a drawer and measure the board behind the pull",
    3.0,
    60.0,
);
/// Gap between drawer fronts, or around each inset front.
pub const GAP: LengthField = field(
    "gap",
    "Gap",
    "Between two drawer fronts, or around an inset front",
    0.0,
    60.0,
);
/// Frame that shows around overlay fronts.
pub const FRAME: LengthField = field(
    "frame",
    "Frame showing",
    "From the outside of the carcass to the nearest drawer front",
    0.0,
    60.0,
);
/// Thickness of the back panel.
pub const BACK_THICKNESS: LengthField = field(
    "back-thickness",
    "Back panel",
    "Thickness of the back panel",
    2.0,
    40.0,
);
/// How far the back panel is set in.
pub const BACK_RECESS: LengthField = field(
    "back-recess",
    "Back set in",
    "From the rear edge of the side to the back panel",
    1.0,
    200.0,
);
/// Height of the plinth.
pub const PLINTH_HEIGHT: LengthField = field(
    "plinth-height",
    "Plinth height",
    "From the floor to the carcass",
    10.0,
    400.0,
);
/// How far the plinth front is set back.
pub const PLINTH_SETBACK: LengthField = field(
    "plinth-setback",
    "Plinth set back",
    "From the front of the carcass to the front of the plinth",
    0.0,
    300.0,
);
/// Height of the legs.
pub const LEG_HEIGHT: LengthField = field(
    "leg-height",
    "Leg height",
    "From the floor to the carcass",
    10.0,
    1500.0,
);
/// Width of the square legs.
pub const LEG_WIDTH: LengthField = field(
    "leg-width",
    "Leg width",
    "Across one face of a square leg",
    15.0,
    150.0,
);
/// How far the legs are set in.
pub const LEG_INSET: LengthField = field(
    "leg-inset",
    "Legs set in",
    "From the outside of the carcass to the leg, front and sides",
    0.0,
    300.0,
);

/// Limits for the height of a drawer front.
pub const ROW_HEIGHT: LengthField = field(
    "row-height",
    "Front height",
    "Top to bottom of one drawer front",
    10.0,
    1500.0,
);

/// Every measurement of a piece as a whole.
pub const ALL: [&LengthField; 17] = [
    &WIDTH,
    &DEPTH,
    &HEIGHT,
    &BOARD,
    &TOP_THICKNESS,
    &OVERHANG_FRONT,
    &OVERHANG_SIDE,
    &FRONT_THICKNESS,
    &GAP,
    &FRAME,
    &BACK_THICKNESS,
    &BACK_RECESS,
    &PLINTH_HEIGHT,
    &PLINTH_SETBACK,
    &LEG_HEIGHT,
    &LEG_WIDTH,
    &LEG_INSET,
];

/// The measurement with this key in saved files.
pub fn by_key(key: &str) -> Option<&'static LengthField> {
    ALL.into_iter().find(|field| field.key == key)
}

/// What was measured; a measurement that is missing takes the usual value of the kind of piece.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Measures(BTreeMap<&'static str, Length>);

impl Measures {
    /// The measured length, if it was measured.
    pub fn get(&self, field: &LengthField) -> Option<Length> {
        self.0.get(field.key).copied()
    }

    /// Notes a measured length.
    pub fn set(&mut self, field: &'static LengthField, length: Length) {
        self.0.insert(field.key, length);
    }

    /// Every measured length with its field.
    pub fn iter(&self) -> impl Iterator<Item = (&'static LengthField, Length)> {
        self.0
            .iter()
            .filter_map(|(key, length)| Some((by_key(key)?, *length)))
    }
}

impl FromIterator<(&'static LengthField, Length)> for Measures {
    fn from_iter<I: IntoIterator<Item = (&'static LengthField, Length)>>(items: I) -> Self {
        Measures(
            items
                .into_iter()
                .map(|(field, length)| (field.key, length))
                .collect(),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_field_has_its_own_key_and_sound_limits() {
        for field in ALL {
            assert!(field.min < field.max, "{}", field.key);
            assert_eq!(
                ALL.iter().filter(|other| other.key == field.key).count(),
                1,
                "{}",
                field.key
            );
            assert_eq!(by_key(field.key), Some(field));
        }
    }
}
