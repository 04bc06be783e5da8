//! What cells look at, a column at a time.

use super::grid::Cells;
use crate::space::Exposure;

/// What 64 cells of a column look at, one bit a cell; none of these where a solid is.
#[derive(Clone, Copy, Default)]
pub(super) struct Looks {
    pub(super) outside: u64,
    pub(super) wall: u64,
    pub(super) inside: u64,
    pub(super) underneath: u64,
    /// Any of these, and above the floor.
    pub(super) above_floor: u64,
}

impl Looks {
    pub(super) fn bare(&self) -> u64 {
        self.outside | self.wall | self.inside | self.underneath
    }

    /// The only thing that is looked at; the inside if all is covered, as where parts run into each other.
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

/// What each cell looks at for most faces, in the order of the words of the sets.
pub(super) fn looks([solid, room, before_wall, opened, above_floor]: [&Cells; 5]) -> Vec<Looks> {
    let words = solid.words().iter().zip(room.words()).zip(before_wall.words());
    let words = words.zip(opened.words()).zip(above_floor.words());
    let looks = words.map(|((((solid, room), wall), opened), above_floor)| {
        let (outside, bare) = (room & !solid, !solid);
        let wall = wall & bare & !outside;
        let rest = bare & !outside & !wall;
        let inside = rest & opened & !above_floor;
        Looks {
            outside,
            wall,
            inside,
            underneath: rest & !inside,
            above_floor: above_floor & bare,
        }
    });
    looks.collect()
}
