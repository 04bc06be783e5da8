//! The air around and in a piece: which cells are solid, in a closed gap, visible, open to the wall or open to the
//! floor.

use nalgebra::Isometry3;

use super::blocks::{block, bounds, holes};
use super::gaps::{closed_gaps, open_gaps};
use super::grid::{Cells, Planes, Shape, main_axis};
use super::masks::{ExposureMasks, exposure_masks};
use super::scene::{PlacedPart, Scene, above_floor, before_wall, cells_of};
use super::setting::Setting;
use super::sight::flood_fill;
use crate::contact::Placed;
use crate::part::Part;
use crate::part_kind::PartKind;
use crate::region::Region;
use crate::space::Exposure;
use crate::zone::Zone;
use crate::{CONTACT_GAP, Point3};

/// The air around a piece.
pub(super) struct Air {
    planes: [Planes; 3],
    /// The block around each part, in the axes of the piece.
    blocks: Vec<[[f64; 3]; 2]>,
    /// The blocks of air that go through each part.
    holes: Vec<Vec<[[f64; 3]; 2]>>,
    /// The transform back into the axes of the piece.
    back: Option<Isometry3<f64>>,
    solid: Cells,
    /// Closed gaps, and the air around shaped parts. A bare cell here does not join the bare cells beside it.
    apart: Cells,
    /// Inside the bounding box of a shaped part, and visible. How much of the box the part fills is not known here.
    around_shapes: Cells,
    /// The room: visible air, the air connected with it, and gaps around fronts that open into it.
    room: Cells,
    /// Shallow air that is open to the wall.
    before_wall: Cells,
    /// Not the room, but behind a front or under a lid.
    opened: Cells,
    /// Nothing but air, or the base of the piece, down to the floor.
    above_floor: Cells,
    /// The exposure that follows from all of these, for most faces.
    masks: Vec<ExposureMasks>,
    setting: Setting,
}

/// The cells in front of a facet.
pub(super) struct Front {
    /// The main axis of the normal, and whether it points up that axis.
    direction: (usize, bool),
    /// The layer of cells in front of it; `None` at the floor or the wall.
    layer: Option<usize>,
    /// The other two axes, each with its span of cells.
    across: [(usize, [usize; 2]); 2],
    /// Whether the facet lies in a plane of its bounding box, so that it can be divided at cell boundaries.
    pub(super) divides: bool,
}

/// A cell in front of a facet.
pub(super) struct FrontCell {
    /// The exposure of the facet there; `None` where a solid covers it.
    pub(super) exposure: Option<Exposure>,
    /// Its area, square meters.
    pub(super) area: f64,
    /// Whether it is in a closed gap or beside a shaped part. It does not join the bare cells beside it then.
    is_isolated: bool,
}

impl Air {
    pub(super) fn around(parts: &[Part], setting: &Setting) -> Self {
        let back = (setting.at != Isometry3::identity()).then(|| setting.at.inverse());
        let blocks: Vec<_> = parts.iter().map(|part| block(part, back.as_ref())).collect();
        let holes: Vec<Vec<_>> = parts.iter().map(|part| holes(part, back.as_ref())).collect();
        let all = parts.iter().zip(&blocks).zip(&holes);
        let fixed = all.filter(|((part, _), _)| !part.is_loose);
        // There is room beyond the open sides of the piece.
        let open = [
            [true, true],
            [true, !setting.has_wall],
            [!setting.has_floor, true],
        ];
        let places = [0, 1, 2].map(|axis| {
            let blocks = fixed.clone().map(|((_, block), _)| block);
            let blocks = blocks.chain(holes.iter().flatten());
            blocks
                .flat_map(|block| [block[0][axis], block[1][axis]])
                .collect()
        });
        let planes = Planes::within_limit(places, open);
        let placed = fixed.map(|((part, block), holes)| PlacedPart {
            part,
            cells: cells_of(block, &planes),
            holes,
        });
        let placed: Vec<PlacedPart> = placed.collect();
        let scene = Scene {
            shape: Shape::of(&planes),
            planes: &planes,
            placed: &placed,
        };
        let [mut solid, shapes] = scene.solids();
        let mut around_shapes = shapes.clone();
        around_shapes.remove(&solid);
        solid.add(&shapes);
        let fronts = scene.blocks_of(|kind| kind.zone() == Zone::Fronts);
        let [closed, around_fronts] = closed_gaps([&solid, &fronts], &planes, setting.closed_gap);
        let before_wall = before_wall(&solid, &planes, setting.has_wall);
        let above_base = scene.blocks_of(|kind| kind.zone() != Zone::Base);
        let above_floor = above_floor(&above_base, setting.has_floor);
        let mut blocked = closed.clone();
        scene.fill_drawers(&solid, &mut blocked);
        // A maker who opens a compartment to view finishes all of it, but not what is below or behind it.
        blocked.add(&before_wall);
        let mut room = scene.room([&solid, &blocked, &above_floor, &fronts], open);
        let mut seen_shapes = room.clone();
        let mut outer = room.clone();
        outer.add(&around_shapes);
        flood_fill(&mut seen_shapes, &outer);
        around_shapes.keep(&seen_shapes);
        let opened = scene.opened(&solid.neither(&room));
        let gaps = open_gaps(&around_fronts, &closed, &room, &planes);
        room.add(&gaps);
        room.add(&around_shapes);
        solid.remove(&around_shapes);
        let mut apart = closed;
        apart.add(&around_shapes);
        let masks = exposure_masks([&solid, &room, &before_wall, &opened, &above_floor]);
        Air {
            planes,
            blocks,
            holes,
            back,
            solid,
            apart,
            around_shapes,
            room,
            opened,
            before_wall,
            above_floor,
            masks,
            setting: setting.clone(),
        }
    }

    /// The cells in front of a facet; `None` if there are none.
    pub(super) fn in_front_of(&self, placed: &Placed) -> Option<Front> {
        let (normal, [low, high]) = match &self.back {
            None => (placed.normal, [placed.low, placed.high]),
            Some(back) => {
                let corners = placed.facet.region.contours().flatten();
                let points = corners.map(|&corner| back * placed.facet.plane.at(corner));
                (back * placed.normal, bounds(points))
            }
        };
        let direction @ (axis, up) = main_axis(&normal);
        let [block_low, block_high] = self.blocks[placed.part];
        let side = if up { block_high[axis] } else { block_low[axis] };
        let is_square = normal[axis].abs() > 1.0 - 1e-9;
        // The edges of a hole face into it.
        let side = if is_square && !self.holes[placed.part].is_empty() {
            low[axis]
        } else {
            side
        };
        // Curved and slanted faces face out of the bounding box of their part.
        let divides =
            is_square && (low[axis] - side).abs() <= CONTACT_GAP && (high[axis] - side).abs() <= CONTACT_GAP;
        let plane = self.planes[axis].plane(side);
        let layer = if up {
            (plane < self.planes[axis].cells()).then_some(plane)
        } else {
            plane.checked_sub(1)
        };
        let across = match axis {
            0 => [1, 2],
            1 => [0, 2],
            _ => [0, 1],
        };
        let across = across.map(|axis| (axis, self.planes[axis].span(low[axis], high[axis])));
        let is_empty = across.iter().any(|(_, [from, to])| from >= to);
        (!is_empty).then_some(Front {
            direction,
            layer,
            across,
            divides,
        })
    }

    /// The exposure of a facet, if all of its bare cells have the same. Most facets do.
    pub(super) fn uniform(&self, front: &Front, kind: PartKind) -> Option<Exposure> {
        let layer = front.layer.filter(|_| front.divides)?;
        let [(_, first), (_, second)] = front.across;
        let (axis, up) = front.direction;
        let only = [layer, layer + 1];
        let [xs, ys, zs] = match axis {
            0 => [only, first, second],
            1 => [first, only, second],
            _ => [first, second, only],
        };
        let shape = self.solid.shape();
        let levels = shape.words_of(zs);
        let is_underside = axis == 2 && !up && kind.is_carcass();
        let mut all = ExposureMasks::default();
        for x in xs[0]..xs[1] {
            for y in ys[0]..ys[1] {
                let start = shape.start(x, y);
                for (masks, levels) in self.masks[start..].iter().zip(levels.clone()) {
                    let below = if is_underside { masks.above_floor } else { 0 };
                    all.outside |= masks.outside & levels & !below;
                    all.wall |= masks.wall & levels & !below;
                    all.inside |= masks.inside & levels & !below;
                    all.underneath |= (masks.underneath | masks.bare() & below) & levels;
                }
            }
        }
        if is_leg(kind) {
            all.outside |= std::mem::take(&mut all.wall);
        }
        all.only()
    }

    /// The exposure of a facet, cell by cell.
    pub(super) fn front_cells(&self, front: &Front, kind: PartKind) -> Vec<FrontCell> {
        let [(a, [a0, a1]), (b, [b0, b1])] = front.across;
        let mut cells = Vec::with_capacity((a1 - a0) * (b1 - b0));
        for i in a0..a1 {
            for j in b0..b1 {
                let (exposure, is_isolated) = self.exposure_at(front, [i, j], kind);
                cells.push(FrontCell {
                    exposure,
                    area: self.planes[a].width(i) * self.planes[b].width(j),
                    is_isolated,
                });
            }
        }
        if kind.zone() != Zone::Base {
            settle(&mut cells, b1 - b0);
        }
        cells
    }

    /// The exposure of a facet in one cell, if it is not covered there, and whether that cell is isolated.
    fn exposure_at(&self, front: &Front, [i, j]: [usize; 2], kind: PartKind) -> (Option<Exposure>, bool) {
        let [(a, _), (b, _)] = front.across;
        let (axis, up) = front.direction;
        let cell = |layer: usize| {
            let mut cell = [0; 3];
            (cell[axis], cell[a], cell[b]) = (layer, i, j);
            cell
        };
        let outer = front.layer.map(cell);
        if outer.is_none_or(|outer| self.solid.has(outer)) && !front.divides {
            // A shaped part does not fill its bounding box, so a part against that box does not cover the shape.
            let inner = match front.layer {
                Some(layer) if up => layer.checked_sub(1),
                Some(layer) => Some(layer + 1),
                None if up => self.planes[axis].cells().checked_sub(1),
                None => Some(0),
            };
            let is_free = inner.is_some_and(|layer| self.around_shapes.has(cell(layer)));
            return (is_free.then_some(Exposure::Outside), false);
        }
        match outer {
            None => (
                Some(if axis == 2 {
                    Exposure::Floor
                } else {
                    Exposure::Wall
                }),
                false,
            ),
            Some(outer) if self.solid.has(outer) => (None, false),
            Some(outer) => (
                Some(self.in_air(outer, front.direction, kind)),
                self.apart.has(outer),
            ),
        }
    }

    /// The exposure of a face in open air.
    fn in_air(&self, cell: [usize; 3], direction: (usize, bool), kind: PartKind) -> Exposure {
        match () {
            () if self.is_underside(cell, direction, kind) => Exposure::Underneath,
            () if self.before_wall.has(cell) && is_leg(kind) => Exposure::Outside,
            () if self.room.has(cell) => Exposure::Outside,
            () => self.unseen(cell),
        }
    }

    /// Whether a face is the underside of a case.
    fn is_underside(&self, cell: [usize; 3], direction: (usize, bool), kind: PartKind) -> bool {
        kind.is_carcass() && direction == (2, false) && self.above_floor.has(cell)
    }

    fn unseen(&self, cell: [usize; 3]) -> Exposure {
        match () {
            () if self.before_wall.has(cell) => Exposure::Wall,
            () if self.opened.has(cell) && !self.above_floor.has(cell) => Exposure::Inside,
            () => Exposure::Underneath,
        }
    }

    /// The cells in front of a facet with one exposure, as rectangles in its plane: runs of cells along one axis,
    /// merged with equal runs beside them.
    pub(super) fn regions(
        &self,
        front: &Front,
        cells: &[FrontCell],
        exposure: Exposure,
        placed: &Placed,
    ) -> Vec<Region> {
        let [(_, [a0, a1]), (_, [b0, b1])] = front.across;
        let has_exposure = |i: usize, j: usize| {
            let cell = cells.get((i - a0) * (b1 - b0) + (j - b0));
            cell.is_some_and(|cell| cell.exposure == Some(exposure))
        };
        // Runs that may continue: where they began, and their span along the second axis.
        let mut going: Vec<(usize, [usize; 2])> = Vec::new();
        let mut done = Vec::new();
        for i in a0..a1 {
            let mut runs: Vec<[usize; 2]> = Vec::new();
            for j in (b0..b1).filter(|j| has_exposure(i, *j)) {
                match runs.last_mut().filter(|run| run[1] == j) {
                    Some(run) => run[1] = j + 1,
                    None => runs.push([j, j + 1]),
                }
            }
            let (same, other): (Vec<_>, Vec<_>) = going.into_iter().partition(|(_, run)| runs.contains(run));
            done.extend(other.into_iter().map(|(from, run)| ([from, i], run)));
            let fresh = runs
                .into_iter()
                .filter(|run| same.iter().all(|(_, known)| known != run));
            let fresh: Vec<_> = fresh.map(|run| (i, run)).collect();
            going = same;
            going.extend(fresh);
        }
        done.extend(going.into_iter().map(|(from, run)| ([from, a1], run)));
        let regions = done
            .into_iter()
            .map(|(along, run)| self.region(front, [along, run], placed));
        regions.collect()
    }

    /// A block of cells in front of a facet as a region in its plane.
    fn region(&self, front: &Front, spans: [[usize; 2]; 2], placed: &Placed) -> Region {
        let [(a, _), (b, _)] = front.across;
        let [low, high] = [0, 1].map(|end| {
            let place = |axis: usize, [first, behind]: [usize; 2]| {
                self.planes[axis].cell([first, behind - 1][end])[end]
            };
            let mut point = Point3::origin();
            point[a] = place(a, spans[0]);
            point[b] = place(b, spans[1]);
            let point = if self.back.is_some() {
                self.setting.at * point
            } else {
                point
            };
            placed.facet.plane.project(&point)
        });
        let corner = |pick: fn(f64, f64) -> f64| [0, 1].map(|axis| pick(low[axis], high[axis]));
        Region::between(corner(f64::min), corner(f64::max))
    }
}

/// Whether a part is finished on all sides, also toward the wall: legs, and parts that the maker added.
fn is_leg(kind: PartKind) -> bool {
    kind.zone() == Zone::Base || kind == PartKind::Added
}

/// Gives each connected patch of bare cells that is partly exposed to the room and partly underneath the exposure of
/// its larger part. Nobody stops painting at a line of sight.
fn settle(cells: &mut [FrontCell], across: usize) {
    let mixes = |cell: &FrontCell| {
        !cell.is_isolated && matches!(cell.exposure, Some(Exposure::Outside | Exposure::Underneath))
    };
    let has = |cells: &[FrontCell], exposure| {
        cells
            .iter()
            .any(|cell| mixes(cell) && cell.exposure == Some(exposure))
    };
    if !has(cells, Exposure::Outside) || !has(cells, Exposure::Underneath) {
        return;
    }
    let mut is_done = vec![false; cells.len()];
    for start in 0..cells.len() {
        if is_done[start] || !mixes(&cells[start]) {
            continue;
        }
        let mut connected = vec![start];
        is_done[start] = true;
        let mut next = 0;
        let mut outside = 0.0;
        while next < connected.len() {
            let at = connected[next];
            next += 1;
            outside += match cells[at].exposure {
                Some(Exposure::Outside) => cells[at].area,
                _ => -cells[at].area,
            };
            let column = at % across;
            let beside = [
                (column > 0).then(|| at - 1),
                (column + 1 < across).then(|| at + 1),
                at.checked_sub(across),
                (at + across < cells.len()).then(|| at + across),
            ];
            for other in beside.into_iter().flatten() {
                if !is_done[other] && mixes(&cells[other]) {
                    is_done[other] = true;
                    connected.push(other);
                }
            }
        }
        let exposure = if outside >= 0.0 {
            Exposure::Outside
        } else {
            Exposure::Underneath
        };
        for at in connected {
            cells[at].exposure = Some(exposure);
        }
    }
}
