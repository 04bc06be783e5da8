//! The placed parts as cells: what is solid, what is the room, what a front opens.

use super::blocks::is_block;
use super::gaps::closed_gaps;
use super::grid::{Cells, Planes, Shape, add, keep};
use super::sight::{extend_down, flood_fill, seen};
use crate::part::Part;
use crate::part_kind::PartKind;
use crate::zone::Zone;

/// The widest slit, meters. Only what a line of sight hits is visible through a slit; it opens nothing beside it,
/// because no hand with a brush fits in (common practice, no source).
const SLIT: f64 = 0.04;

/// The greatest depth of air that belongs to the wall, meters: recessed backs, and rails that are thinner than the
/// posts beside them (common practice, no source). Nobody can look in there.
const BEFORE_WALL: f64 = 0.1;

/// A part in its place.
pub(super) struct PlacedPart<'a> {
    pub(super) part: &'a Part,
    /// The cells of its bounding box, along each axis.
    pub(super) cells: [[usize; 2]; 3],
    /// The holes through it, as boxes.
    pub(super) holes: &'a [[[f64; 3]; 2]],
}

/// The parts of a piece and the planes that divide its space.
pub(super) struct Scene<'a> {
    pub(super) planes: &'a [Planes; 3],
    pub(super) shape: Shape,
    pub(super) placed: &'a [PlacedPart<'a>],
}

impl Scene<'_> {
    /// The cells that boards fill, and the bounding boxes of shaped parts. Glass does not count: one looks through it.
    pub(super) fn solids(&self) -> [Cells; 2] {
        let (mut solid, mut shapes) = (self.shape.none(), self.shape.none());
        for PlacedPart { part, cells, holes } in self.placed {
            if part.id.kind == PartKind::DoorGlass {
                continue;
            }
            if holes.is_empty() && !is_block(part) {
                shapes.add_block(*cells);
            } else if holes.is_empty() {
                solid.add_block(*cells);
            } else {
                let mut board = self.shape.none();
                board.add_block(*cells);
                for hole in *holes {
                    board.remove_block(cells_of(hole, self.planes));
                }
                solid.add(&board);
            }
        }
        [solid, shapes]
    }

    /// The bounding boxes of the parts of these kinds.
    pub(super) fn blocks_of(&self, is_wanted: impl Fn(PartKind) -> bool) -> Cells {
        let mut cells = self.shape.none();
        for of in self.placed.iter().filter(|of| is_wanted(of.part.id.kind)) {
            cells.add_block(of.cells);
        }
        cells
    }

    /// Fills the space behind each drawer front.
    pub(super) fn fill_drawers(&self, solid: &Cells, blocked: &mut Cells) {
        let drawers = self.placed.iter();
        for of in drawers.filter(|of| of.part.id.kind == PartKind::DrawerFront) {
            fill_behind(of.cells, solid, blocked);
        }
    }

    /// The room: visible air, and the air connected with it.
    pub(super) fn room(
        &self,
        [solid, blocked, above_floor, fronts]: [&Cells; 4],
        open: [[bool; 2]; 3],
    ) -> Cells {
        let mut hidden = above_floor.clone();
        hidden.add(blocked);
        let mut inner = solid.neither(&hidden);
        let free = solid.neither(blocked);
        let mut room = seen(&free, self.planes, open);
        if connected(&room, &free, &inner) != room {
            // Air that is only visible through a slit opens nothing beside or below it.
            let mut filled = solid.clone();
            filled.add(blocked);
            let [slits, _] = closed_gaps([&filled, fronts], self.planes, SLIT);
            let free = filled.neither(&slits);
            let seen_past = seen(&free, self.planes, open);
            inner.remove(&slits);
            room.add(&connected(&seen_past, &free, &inner));
        }
        room
    }

    /// The part of this air that fronts and lids open.
    pub(super) fn opened(&self, air: &Cells) -> Cells {
        let mut opened = self.shape.none();
        for of in self.placed {
            behind_front(of.part.id.kind, of.cells, &mut opened);
        }
        opened.keep(air);
        flood_fill(&mut opened, air);
        opened
    }
}

/// The cells of a block, along each axis.
pub(super) fn cells_of([low, high]: &[[f64; 3]; 2], planes: &[Planes; 3]) -> [[usize; 2]; 3] {
    [0, 1, 2].map(|axis| planes[axis].span(low[axis], high[axis]))
}

/// These cells, the free ones straight below them, and the inner air connected with all of these.
fn connected(cells: &Cells, free: &Cells, inner: &Cells) -> Cells {
    let mut connected = cells.clone();
    extend_down(&mut connected, free);
    let mut open = inner.clone();
    open.add(&connected);
    flood_fill(&mut connected, &open);
    connected
}

/// Fills the space straight behind a drawer front, up to the next solid.
fn fill_behind([x, y, z]: [[usize; 2]; 3], solid: &Cells, blocked: &mut Cells) {
    let shape = solid.shape();
    for x in x[0]..x[1] {
        let mut drawer = shape.column(z);
        for y in y[1]..shape.cells[1] {
            for (drawer, solid) in drawer.iter_mut().zip(solid.column(x, y)) {
                *drawer &= !solid;
            }
            add(blocked.column_mut(x, y), &drawer);
        }
    }
}

/// Adds the cells straight behind a front, or under a lid.
fn behind_front(kind: PartKind, [x, y, z]: [[usize; 2]; 3], opened: &mut Cells) {
    if kind.zone() == Zone::Fronts {
        opened.add_block([x, [y[1], (y[1] + 1).min(opened.shape().cells[1])], z]);
    }
    if kind == PartKind::Lid {
        opened.add_block([x, y, [z[0].saturating_sub(1), z[0]]]);
    }
}

/// Shallow air between the wall and a solid.
pub(super) fn before_wall(solid: &Cells, planes: &[Planes; 3], has_wall: bool) -> Cells {
    let shape @ Shape {
        cells: [nx, ny, nz], ..
    } = solid.shape();
    let mut found = shape.none();
    if !has_wall || ny == 0 {
        return found;
    }
    let wall = planes[1].cell(ny - 1)[1];
    for x in 0..nx {
        // The levels that are still open, from the wall toward the person.
        let mut open = shape.column([0, nz]);
        for y in (0..ny).rev() {
            if wall - planes[1].cell(y)[1] > BEFORE_WALL {
                break;
            }
            let mut ends = open.clone();
            keep(&mut ends, solid.column(x, y));
            for behind in y + 1..ny {
                add(found.column_mut(x, behind), &ends);
            }
            for (open, solid) in open.iter_mut().zip(solid.column(x, y)) {
                *open &= !solid;
            }
        }
    }
    found
}

/// Air with nothing solid below it.
pub(super) fn above_floor(solid: &Cells, has_floor: bool) -> Cells {
    let [nx, ny, _] = solid.shape().cells;
    let mut found = solid.shape().none();
    if !has_floor {
        return found;
    }
    for x in 0..nx {
        for y in 0..ny {
            // Bits count from the highest cell down, so the air above the floor is everything after the last solid bit.
            let column = found.column_mut(x, y);
            column.fill(!0);
            let solid = solid.column(x, y);
            if let Some(word) = solid.iter().rposition(|bits| *bits != 0) {
                column[..word].fill(0);
                column[word] = !(!0 >> solid[word].leading_zeros());
            }
        }
    }
    found.trim();
    found
}
