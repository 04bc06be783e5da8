//! Checks one measurement against its limits, and against the room that others leave.

use units::Length;

use super::super::fields::{FieldId, LengthField};
use super::super::piece::Furniture;
use super::super::problem::Problem;

/// The smallest clear width or height that a drawer, a leg or the inside of a case may be left with.
pub(super) const LEAST_ROOM: f64 = 0.01;

/// A measurement that must fit beside others: its field, the room for it, and what takes up the rest.
pub(super) type Claim = (&'static LengthField, f64, &'static str);

/// The claims for which there is not enough room.
pub(super) fn unmet(furniture: &Furniture, claims: Vec<Claim>) -> Vec<Problem> {
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

pub(super) fn too_small(furniture: &Furniture, field: &'static LengthField, missing: f64) -> Problem {
    let given = furniture.length(field);
    Problem::TooSmall {
        field: field.id(),
        given,
        min: given + Length::metres(missing),
    }
}

/// The problem with a length that is out of the limits of its field.
pub(in crate::furniture) fn outside(id: FieldId, field: &LengthField, given: Length) -> Option<Problem> {
    if given < field.min {
        Some(Problem::TooSmall {
            field: id,
            given,
            min: field.min,
        })
    } else if given <= field.max {
        None
    } else {
        // Also NaN, which compares with nothing.
        Some(Problem::TooLarge {
            field: id,
            given,
            max: field.max,
        })
    }
}
