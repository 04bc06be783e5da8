//! The exposure of cells as bit masks, a column at a time.

use super::grid::Cells;
use crate::space::Exposure;

/// The exposure of 64 cells of a column, one bit a cell. Solid cells have no bit set.
#[derive(Clone, Copy, Default)]
pub(super) struct ExposureMasks {
    pub(super) outside: u64,
    pub(super) wall: u64,
    pub(super) inside: u64,
    pub(super) underneath: u64,
    /// Any of these that is also above the floor.
    pub(super) above_floor: u64,
}

impl ExposureMasks {
    pub(super) fn bare(&self) -> u64 {
        self.outside | self.wall | self.inside | self.underneath
    }

    /// The exposure of all bare cells, if it is the same. It is the inside if all are covered, as where parts
    /// intersect.
    pub(super) fn only(&self) -> Option<Exposure> {
        match [self.outside, self.wall, self.inside, self.underneath].map(|bits| bits != 0) {
            [true, false, false, false] => Some(Exposure::Outside),
            [false, true, false, false] => Some(Exposure::Wall),
            [false, false, false, true] => Some(Exposure::Underneath),
            [false, false, _, false] => Some(Exposure::Inside),
            _ => None,
        }
    }
}

/// The exposure of each cell for most faces, in the word order of the sets.
pub(super) fn exposure_masks(
    [solid, room, before_wall, opened, above_floor]: [&Cells; 5],
) -> Vec<ExposureMasks> {
    let words = solid.words().iter().zip(room.words()).zip(before_wall.words());
    let words = words.zip(opened.words()).zip(above_floor.words());
    let masks = words.map(|((((solid, room), wall), opened), above_floor)| {
        let (outside, bare) = (room & !solid, !solid);
        let wall = wall & bare & !outside;
        let rest = bare & !outside & !wall;
        let inside = rest & opened & !above_floor;
        ExposureMasks {
            outside,
            wall,
            inside,
            underneath: rest & !inside,
            above_floor: above_floor & bare,
        }
    });
    masks.collect()
}
