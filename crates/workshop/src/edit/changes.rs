//! Edits of the maker's changes to a piece: parts that are removed, resized, repeated or added.

use geometry::{AddedShape, MAX_CHANGES, MAX_REPEATS, MAX_STEPS, Shape};

use super::EditError;
use crate::document::{ChangeKind, Piece, PieceChange, Reading};

/// The maximum number of flutes in an added column.
pub(crate) const MAX_FLUTES: u32 = 48;

impl Piece {
    pub(super) fn add_change(&mut self, change: PieceChange) -> Result<(), EditError> {
        if self.changes.len() >= MAX_CHANGES {
            return Err(EditError::TooMany {
                what: "changes per piece",
                most: MAX_CHANGES,
            });
        }
        within_bounds(&change.kind)?;
        self.changes.push(change);
        Ok(())
    }

    /// A number is not reused while its part exists, so choices stay with their part.
    pub(super) fn add_part(&mut self, shape: AddedShape) -> Result<(), EditError> {
        let numbers = self.changes.iter().filter_map(|change| match change.kind {
            ChangeKind::Add { number, .. } => Some(number),
            _ => None,
        });
        let members = match shape {
            AddedShape::Moulding => vec![Shape::Ogee],
            _ => vec![],
        };
        self.add_change(PieceChange::new(ChangeKind::Add {
            number: numbers.max().unwrap_or(0) + 1,
            shape,
            placed: false,
            flutes: 0,
            members,
            points: 0,
        }))
    }

    pub(super) fn alter_change(&mut self, place: usize, kind: ChangeKind) -> Result<(), EditError> {
        within_bounds(&kind)?;
        let change = self.changes.get_mut(place).ok_or(EditError::Unknown("change"))?;
        change.kind = kind;
        let known = change.fields();
        change
            .readings
            .retain(|(item, key), _| known.iter().any(|(i, field, _)| i == item && field.key == *key));
        Ok(())
    }

    pub(super) fn measure_change(
        &mut self,
        place: usize,
        item: usize,
        key: &str,
        reading: Option<Reading>,
    ) -> Result<(), EditError> {
        let change = self.changes.get_mut(place).ok_or(EditError::Unknown("change"))?;
        let fields = change.fields();
        let known = fields.iter().find(|(i, field, _)| *i == item && field.key == key);
        let (_, field, _) = known.ok_or(EditError::Unknown("measurement"))?;
        match reading {
            Some(reading) => change.readings.insert((item, field.key), reading),
            None => change.readings.remove(&(item, field.key)),
        };
        Ok(())
    }
}

fn within_bounds(kind: &ChangeKind) -> Result<(), EditError> {
    let too_many = |what, most| Err(EditError::TooMany { what, most });
    match kind {
        ChangeKind::Repeat { times, .. } if *times > MAX_REPEATS => too_many("repeats per part", MAX_REPEATS),
        ChangeKind::Add { flutes, .. } if *flutes > MAX_FLUTES => too_many("flutes", MAX_FLUTES as usize),
        ChangeKind::Add { members, points, .. } if members.len().max(*points) > MAX_STEPS => {
            too_many("molding members or turning points", MAX_STEPS)
        }
        _ => Ok(()),
    }
}
