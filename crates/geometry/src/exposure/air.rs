//! The air around and in a piece: which cells are solid, closed, seen, open to the wall or to the floor.

use nalgebra::Isometry3;

use super::grid::{Cells, Planes, Shape, add, keep, main_axis};
use super::setting::Setting;
use super::sight::{seen, spread};
use crate::contact::Placed;
use crate::face::{Face, Facet, Side};
use crate::part::Part;
use crate::part_kind::PartKind;
use crate::region::Region;
use crate::space::Sense;
use crate::zone::Zone;
use crate::{CONTACT_GAP, Point3};

/// How deep the air before the wall may be and still belong to it, metres: recessed backs, and rails that are thinner
/// than the posts beside them (common practice, no source). Nobody's eye comes between.
const BEFORE_WALL: f64 = 0.1;

/// How far in the middle of a closed gap may lie and still be the room's, metres: more than a front is thick, and as far as a
/// brush reaches (common practice, no source).
const INTO_GAP: f64 = 0.05;

/// Gaps narrower than this show what a line of sight hits, and open nothing beside it, metres: no hand with a brush goes in
/// (common practice, no source).
const SLIT: f64 = 0.04;

/// The air around a piece.
pub(super) struct Air {
    planes: [Planes; 3],
    /// The block around each part, in the axes of the piece.
    blocks: Vec<[[f64; 3]; 2]>,
    /// The blocks of air that go through each part.
    holes: Vec<Vec<[[f64; 3]; 2]>>,
    /// Back into the axes of the piece.
    back: Option<Isometry3<f64>>,
    solid: Cells,
    /// Closed gaps, and the air around shaped parts: what is bare there joins no bare bits beside it.
    apart: Cells,
    /// Within the block around a shaped part, and seen: how much of it the part fills is not known here.
    around_shapes: Cells,
    /// The room: what is seen of the air, what is connected with that, and gaps around fronts that open into it.
    room: Cells,
    /// Open to the wall, and not deep.
    before_wall: Cells,
    /// Not the room, but behind a front or under a lid.
    opened: Cells,
    /// Nothing but air, or what the piece stands on, down to the floor.
    above_floor: Cells,
    /// All of these for most faces.
    looks: Vec<Looks>,
    setting: Setting,
}

/// The cells in front of a facet.
pub(super) struct Front {
    /// The axis along which the face looks, and whether up it.
    looks: (usize, bool),
    /// The layer of cells in front of it; `None` where the floor or the wall is.
    layer: Option<usize>,
    /// The other two axes, with the span of cells along each.
    across: [(usize, [usize; 2]); 2],
    /// Whether the facet lies in the plane of its block, so that it can be divided where cells end.
    pub(super) divides: bool,
}

/// A cell in front of a facet.
pub(super) struct Bit {
    /// What the facet looks at there; `None` where a solid covers it.
    pub(super) sense: Option<Sense>,
    /// How large it is, square metres.
    pub(super) area: f64,
    /// Whether it lies in a closed gap or beside a shaped part: it joins no bare bits beside it.
    is_apart: bool,
}

impl Air {
    pub(super) fn around(parts: &[Part], setting: &Setting) -> Self {
        let back = (setting.at != Isometry3::identity()).then(|| setting.at.inverse());
        let blocks: Vec<_> = parts.iter().map(|part| block(part, back.as_ref())).collect();
        let holes: Vec<Vec<_>> = parts.iter().map(|part| holes(part, back.as_ref())).collect();
        let standing = || {
            let pairs = parts.iter().zip(&blocks);
            pairs.filter(|(part, _)| !part.is_loose)
        };
        // Open sides of the piece have room beyond them.
        let open = [
            [true, true],
            [true, !setting.has_wall],
            [!setting.has_floor, true],
        ];
        let planes = [0, 1, 2].map(|axis| {
            let blocks = standing().map(|(_, block)| block).chain(holes.iter().flatten());
            let places = blocks.flat_map(|block| [block[0][axis], block[1][axis]]);
            Planes::at(places.collect(), open[axis])
        });
        let shape = Shape::of(&planes);
        let (mut solid, mut shapes) = (shape.none(), shape.none());
        for (i, block) in blocks.iter().enumerate() {
            if parts[i].is_loose || parts[i].id.kind == PartKind::DoorGlass {
                continue;
            }
            if holes[i].is_empty() && !is_block(&parts[i]) {
                shapes.add_block(cells_of(&planes, block));
            } else if holes[i].is_empty() {
                solid.add_block(cells_of(&planes, block));
            } else {
                let mut board = shape.none();
                board.add_block(cells_of(&planes, block));
                for hole in &holes[i] {
                    board.remove_block(cells_of(&planes, hole));
                }
                solid.add(&board);
            }
        }
        let mut around_shapes = shapes.clone();
        around_shapes.remove(&solid);
        solid.add(&shapes);
        let mut fronts = shape.none();
        for (_, block) in standing().filter(|(part, _)| part.id.kind.zone() == Zone::Fronts) {
            fronts.add_block(cells_of(&planes, block));
        }
        let [closed, around_fronts] = closed_gaps([&solid, &fronts], &planes, setting.closed_gap);
        let mut blocked = closed.clone();
        for (_, block) in standing().filter(|(part, _)| part.id.kind == PartKind::DrawerFront) {
            fill_behind(cells_of(&planes, block), &solid, &mut blocked);
        }
        let before_wall = before_wall(&solid, &planes, setting.has_wall);
        let mut above_base = shape.none();
        for (_, block) in standing().filter(|(part, _)| part.id.kind.zone() != Zone::Base) {
            above_base.add_block(cells_of(&planes, block));
        }
        let above_floor = above_floor(&above_base, setting.has_floor);
        // Who opens a compartment to view finishes all of it, but not what lies below or behind.
        blocked.add(&before_wall);
        let mut hidden = above_floor.clone();
        hidden.add(&blocked);
        let inner = solid.neither(&hidden);
        let mut room = seen(&solid.neither(&blocked), &planes, open);
        let connected = connected(&room, &inner);
        if connected != room {
            // What is only seen through a slit opens nothing beside it.
            let mut filled = solid.clone();
            filled.add(&blocked);
            let [slits, _] = closed_gaps([&filled, &fronts], &planes, SLIT);
            filled.add(&slits);
            let beyond = seen(&filled.neither(&slits), &planes, open);
            let mut inner = inner;
            inner.remove(&slits);
            room.add(&self::connected(&beyond, &inner));
        }
        let mut seen_shapes = room.clone();
        let mut outer = room.clone();
        outer.add(&around_shapes);
        spread(&mut seen_shapes, &outer);
        around_shapes.keep(&seen_shapes);
        let mut opened = shape.none();
        for (part, block) in standing() {
            behind_front(part.id.kind, cells_of(&planes, block), &mut opened);
        }
        let air = solid.neither(&room);
        opened.keep(&air);
        spread(&mut opened, &air);
        let gaps = open_gaps(&around_fronts, &closed, &room, &planes);
        room.add(&gaps);
        room.add(&around_shapes);
        solid.remove(&around_shapes);
        let mut apart = closed;
        apart.add(&around_shapes);
        let looks = looks([&solid, &room, &before_wall, &opened, &above_floor]);
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
            looks,
            setting: setting.clone(),
        }
    }

    /// The cells in front of a facet; `None` where it lies in none of the planes.
    pub(super) fn in_front_of(&self, placed: &Placed) -> Option<Front> {
        let (normal, [low, high]) = match &self.back {
            None => (placed.normal, [placed.low, placed.high]),
            Some(back) => {
                let corners = placed.facet.region.contours().flatten();
                let points = corners.map(|&corner| back * placed.facet.plane.at(corner));
                (back * placed.normal, bounds(points))
            }
        };
        let looks @ (axis, up) = main_axis(&normal);
        let [block_low, block_high] = self.blocks[placed.part];
        let side = if up { block_high[axis] } else { block_low[axis] };
        let is_square = normal[axis].abs() > 1.0 - 1e-9;
        // The edges of a hole look into it.
        let side = if is_square && !self.holes[placed.part].is_empty() {
            low[axis]
        } else {
            side
        };
        // Curved and slanted faces look out of the block around their part.
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
            looks,
            layer,
            across,
            divides,
        })
    }

    /// What a facet looks at, if it is the same wherever it is bare: most are such facets.
    pub(super) fn uniform(&self, front: &Front, kind: PartKind) -> Option<Sense> {
        let layer = front.layer.filter(|_| front.divides)?;
        let [(_, first), (_, second)] = front.across;
        let (axis, up) = front.looks;
        let only = [layer, layer + 1];
        let [xs, ys, zs] = match axis {
            0 => [only, first, second],
            1 => [first, only, second],
            _ => [first, second, only],
        };
        let shape = self.solid.shape();
        let levels = shape.column(zs);
        let is_underside = axis == 2 && !up && kind.is_carcass();
        let mut all = Looks::default();
        for x in xs[0]..xs[1] {
            for y in ys[0]..ys[1] {
                let start = shape.start(x, y);
                for (looks, levels) in self.looks[start..].iter().zip(&levels) {
                    let below = if is_underside { looks.above_floor } else { 0 };
                    all.outside |= looks.outside & levels & !below;
                    all.wall |= looks.wall & levels & !below;
                    all.inside |= looks.inside & levels & !below;
                    all.underneath |= (looks.underneath | looks.bare() & below) & levels;
                }
            }
        }
        if is_leg(kind) {
            all.outside |= std::mem::take(&mut all.wall);
        }
        all.only()
    }

    /// What a facet looks at, cell by cell.
    pub(super) fn bits(&self, front: &Front, kind: PartKind) -> Vec<Bit> {
        let [(a, [a0, a1]), (b, [b0, b1])] = front.across;
        let mut bits = Vec::with_capacity((a1 - a0) * (b1 - b0));
        for i in a0..a1 {
            for j in b0..b1 {
                let (sense, is_apart) = self.before(front, [i, j], kind);
                bits.push(Bit {
                    sense,
                    area: self.planes[a].width(i) * self.planes[b].width(j),
                    is_apart,
                });
            }
        }
        if kind.zone() != Zone::Base {
            settle(&mut bits, b1 - b0);
        }
        bits
    }

    /// What a facet looks at in one cell, if it is not covered there; and whether that joins no bare bits beside it.
    fn before(&self, front: &Front, [i, j]: [usize; 2], kind: PartKind) -> (Option<Sense>, bool) {
        let [(a, _), (b, _)] = front.across;
        let (axis, up) = front.looks;
        let cell = |layer: usize| {
            let mut cell = [0; 3];
            (cell[axis], cell[a], cell[b]) = (layer, i, j);
            cell
        };
        let outer = front.layer.map(cell);
        if outer.is_none_or(|outer| self.solid.has(outer)) && !front.divides {
            // A shaped part leaves some of the block around it free: what lies against that block does not cover the shape.
            let inner = match front.layer {
                Some(layer) if up => layer.checked_sub(1),
                Some(layer) => Some(layer + 1),
                None if up => self.planes[axis].cells().checked_sub(1),
                None => Some(0),
            };
            let is_free = inner.is_some_and(|layer| self.around_shapes.has(cell(layer)));
            return (is_free.then_some(Sense::Outside), false);
        }
        match outer {
            None => (Some(if axis == 2 { Sense::Floor } else { Sense::Wall }), false),
            Some(outer) if self.solid.has(outer) => (None, false),
            Some(outer) => (Some(self.in_air(outer, front.looks, kind)), self.apart.has(outer)),
        }
    }

    /// What a face looks at in open air.
    fn in_air(&self, cell: [usize; 3], looks: (usize, bool), kind: PartKind) -> Sense {
        match () {
            () if self.is_underside(cell, looks, kind) => Sense::Underneath,
            () if self.before_wall.has(cell) && is_leg(kind) => Sense::Outside,
            () if self.room.has(cell) => Sense::Outside,
            () => self.unseen(cell),
        }
    }

    /// Whether a face is the underside of a case.
    fn is_underside(&self, cell: [usize; 3], looks: (usize, bool), kind: PartKind) -> bool {
        kind.is_carcass() && looks == (2, false) && self.above_floor.has(cell)
    }

    fn unseen(&self, cell: [usize; 3]) -> Sense {
        match () {
            () if self.before_wall.has(cell) => Sense::Wall,
            () if self.opened.has(cell) && !self.above_floor.has(cell) => Sense::Inside,
            () => Sense::Underneath,
        }
    }

    /// Cells in front of a facet that look at one thing, as rectangles in the plane of that facet: runs of cells along one axis,
    /// joined with equal runs beside them.
    pub(super) fn regions(&self, front: &Front, bits: &[Bit], sense: Sense, placed: &Placed) -> Vec<Region> {
        let [(_, [a0, a1]), (_, [b0, b1])] = front.across;
        let is_of_sense = |i: usize, j: usize| {
            let bit = bits.get((i - a0) * (b1 - b0) + (j - b0));
            bit.is_some_and(|bit| bit.sense == Some(sense))
        };
        // Runs that may go on: where they began, and their span along the second axis.
        let mut going: Vec<(usize, [usize; 2])> = Vec::new();
        let mut done = Vec::new();
        for i in a0..a1 {
            let mut runs: Vec<[usize; 2]> = Vec::new();
            for j in (b0..b1).filter(|j| is_of_sense(i, *j)) {
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

/// What 64 cells of a column look at, one bit a cell; none of these where a solid is.
#[derive(Clone, Copy, Default)]
struct Looks {
    outside: u64,
    wall: u64,
    inside: u64,
    underneath: u64,
    /// Any of these, and above the floor.
    above_floor: u64,
}

impl Looks {
    fn bare(&self) -> u64 {
        self.outside | self.wall | self.inside | self.underneath
    }

    /// The only thing that is looked at; the inside if all is covered, as where parts run into each other.
    fn only(&self) -> Option<Sense> {
        match [self.outside, self.wall, self.inside, self.underneath].map(|bits| bits != 0) {
            [true, false, false, false] => Some(Sense::Outside),
            [false, true, false, false] => Some(Sense::Wall),
            [false, false, false, true] => Some(Sense::Underneath),
            [false, false, _, false] => Some(Sense::Inside),
            _ => None,
        }
    }
}

/// What each cell looks at for most faces, in the order of the words of the sets.
fn looks([solid, room, before_wall, opened, above_floor]: [&Cells; 5]) -> Vec<Looks> {
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

/// Whether a part is finished all around, also towards the wall: legs, and what the maker added.
fn is_leg(kind: PartKind) -> bool {
    kind.zone() == Zone::Base || kind == PartKind::Added
}

/// Whether a part fills the block around it, but for a raised field.
fn is_block(part: &Part) -> bool {
    part.is_block() || part.faces.iter().any(|face| face.side == Side::BevelTop)
}

/// The block around a part, in the axes of the piece; of a raised panel, without its field.
fn block(part: &Part, back: Option<&Isometry3<f64>>) -> [[f64; 3]; 2] {
    let is_raised = part.faces.iter().any(|face| face.side == Side::BevelTop);
    let is_field = |side: Side| {
        matches!(
            side,
            Side::Front
                | Side::Margin
                | Side::BevelLeft
                | Side::BevelRight
                | Side::BevelTop
                | Side::BevelBottom
        )
    };
    if back.is_none() && !is_raised {
        let (low, high) = part.bounds();
        return [low, high];
    }
    let faces = part
        .faces
        .iter()
        .filter(|face| !(is_raised && is_field(face.side)));
    block_of(faces.flat_map(|face| face.facets()), back)
}

/// The block of each hole through a part, in the axes of the piece. The holes of a board are one face, with four facets
/// for each hole.
fn holes(part: &Part, back: Option<&Isometry3<f64>>) -> Vec<[[f64; 3]; 2]> {
    let edges = part.faces.iter().find(|face| face.side == Side::Opening);
    let holes = edges.map_or([].as_slice(), Face::facets).chunks(4);
    holes.map(|edges| block_of(edges.iter(), back)).collect()
}

/// The block around facets, in the axes of the piece.
fn block_of<'a>(facets: impl Iterator<Item = &'a Facet>, back: Option<&Isometry3<f64>>) -> [[f64; 3]; 2] {
    bounds(facets.flat_map(|facet| {
        let corners = facet.region.contours().flatten();
        corners.map(move |&corner| {
            let point = facet.plane.at(corner);
            back.map_or(point, |back| back * point)
        })
    }))
}

fn bounds(points: impl Iterator<Item = Point3>) -> [[f64; 3]; 2] {
    points.fold(
        [[f64::INFINITY; 3], [f64::NEG_INFINITY; 3]],
        |[low, high], point| {
            [
                [0, 1, 2].map(|axis| low[axis].min(point[axis])),
                [0, 1, 2].map(|axis| high[axis].max(point[axis])),
            ]
        },
    )
}

/// Some cells, and what is connected with them within the inner air.
fn connected(cells: &Cells, inner: &Cells) -> Cells {
    let mut free = inner.clone();
    free.add(cells);
    let mut connected = cells.clone();
    spread(&mut connected, &free);
    connected
}

fn cells_of(planes: &[Planes; 3], [low, high]: &[[f64; 3]; 2]) -> [[usize; 2]; 3] {
    [0, 1, 2].map(|axis| planes[axis].span(low[axis], high[axis]))
}

/// The gaps between two solids that are narrower than `width`, and those with a front at one of their ends. Where two gaps
/// cross, neither has a solid beside it: they are found in a second round.
fn closed_gaps([solid, fronts]: [&Cells; 2], planes: &[Planes; 3], width: f64) -> [Cells; 2] {
    let mut gaps = [solid.shape().none(), solid.shape().none()];
    let runs = [0, 1].map(|axis| planes[axis].narrow_runs(width));
    let everywhere = |_: usize, _: usize| true;
    close_all([solid, fronts], planes, &runs, width, everywhere, &mut gaps);
    let known = gaps.clone();
    let has_gap = |x: usize, y: usize| known[0].column(x, y).iter().any(|bits| *bits != 0);
    let (mut filled, mut of_fronts) = (solid.clone(), fronts.clone());
    filled.add(&known[0]);
    of_fronts.add(&known[1]);
    close_all([&filled, &of_fronts], planes, &runs, width, has_gap, &mut gaps);
    gaps
}

/// Closes gaps along all axes that end in columns which are `looked_at`.
fn close_all(
    filled: [&Cells; 2],
    planes: &[Planes; 3],
    runs: &[Vec<[usize; 2]>; 2],
    width: f64,
    looked_at: impl Fn(usize, usize) -> bool + Copy,
    gaps: &mut [Cells; 2],
) {
    for (axis, runs) in runs.iter().enumerate() {
        for run in runs {
            close(filled, axis, *run, looked_at, gaps);
        }
    }
    close_levels(filled, &planes[2], width, looked_at, gaps);
}

/// Closes the gaps along the columns: air between two solids.
fn close_levels(
    [filled, fronts]: [&Cells; 2],
    planes: &Planes,
    width: f64,
    looked_at: impl Fn(usize, usize) -> bool,
    gaps: &mut [Cells; 2],
) {
    let shape @ Shape {
        cells: [nx, ny, _], ..
    } = filled.shape();
    for x in 0..nx {
        for y in (0..ny).filter(|y| looked_at(x, *y)) {
            for [first, end] in filled.free_between(x, y) {
                if !planes.is_narrow([first, end], width) {
                    continue;
                }
                let run = shape.column([first, end]);
                add(gaps[0].column_mut(x, y), &run);
                if fronts.has([x, y, first - 1]) || fronts.has([x, y, end]) {
                    add(gaps[1].column_mut(x, y), &run);
                }
            }
        }
    }
}

/// The gaps around fronts that run straight into the room and not far.
fn open_gaps(around_fronts: &Cells, closed: &Cells, room: &Cells, planes: &[Planes; 3]) -> Cells {
    let mut open = around_fronts.shape().none();
    for cell in around_fronts.each() {
        let runs_to_room = |axis: usize, up: bool| {
            let mut at = cell;
            while closed.has(at) {
                let next = if up {
                    at[axis] + 1
                } else {
                    at[axis].wrapping_sub(1)
                };
                if next >= planes[axis].cells() {
                    return false;
                }
                at[axis] = next;
            }
            let plane = planes[axis].cell(at[axis])[usize::from(!up)];
            let [begins, ends] = planes[axis].cell(cell[axis]);
            room.has(at) && ((begins + ends) / 2.0 - plane).abs() <= INTO_GAP
        };
        if (0..3).any(|axis| runs_to_room(axis, false) || runs_to_room(axis, true)) {
            open.add_block(cell.map(|at| [at, at + 1]));
        }
    }
    open
}

/// Closes the gaps of one run of cells along an axis that is level: free from its first to its last, filled before and behind
/// it.
fn close(
    [filled, fronts]: [&Cells; 2],
    axis: usize,
    [first, end]: [usize; 2],
    looked_at: impl Fn(usize, usize) -> bool,
    gaps: &mut [Cells; 2],
) {
    let shape @ Shape {
        cells: [nx, ny, _], ..
    } = filled.shape();
    if first == 0 || end == shape.cells[axis] {
        return;
    }
    let place = |along: usize, other: usize| if axis == 0 { [along, other] } else { [other, along] };
    let (mut gap, mut around_front) = (shape.column([0, 0]), shape.column([0, 0]));
    for other in 0..if axis == 0 { ny } else { nx } {
        let [x0, y0] = place(first - 1, other);
        let [x1, y1] = place(end, other);
        if !looked_at(x0, y0) && !looked_at(x1, y1) {
            continue;
        }
        gap.copy_from_slice(filled.column(x0, y0));
        keep(&mut gap, filled.column(x1, y1));
        for along in first..end {
            let [x, y] = place(along, other);
            for (gap, cells) in gap.iter_mut().zip(filled.column(x, y)) {
                *gap &= !cells;
            }
        }
        if gap.iter().all(|bits| *bits == 0) {
            continue;
        }
        around_front.copy_from_slice(fronts.column(x0, y0));
        add(&mut around_front, fronts.column(x1, y1));
        keep(&mut around_front, &gap);
        for along in first..end {
            let [x, y] = place(along, other);
            add(gaps[0].column_mut(x, y), &gap);
            add(gaps[1].column_mut(x, y), &around_front);
        }
    }
}

/// A drawer fills the space straight behind its front, as far as there is no solid.
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

/// The cells straight behind a front, or under a lid: what is opened with it.
fn behind_front(kind: PartKind, [x, y, z]: [[usize; 2]; 3], opened: &mut Cells) {
    if kind.zone() == Zone::Fronts {
        opened.add_block([x, [y[1], (y[1] + 1).min(opened.shape().cells[1])], z]);
    }
    if kind == PartKind::Lid {
        opened.add_block([x, y, [z[0].saturating_sub(1), z[0]]]);
    }
}

/// Air between the wall and a solid that is not deep.
fn before_wall(solid: &Cells, planes: &[Planes; 3], has_wall: bool) -> Cells {
    let shape @ Shape {
        cells: [nx, ny, nz], ..
    } = solid.shape();
    let mut found = shape.none();
    if !has_wall || ny == 0 {
        return found;
    }
    let wall = planes[1].cell(ny - 1)[1];
    for x in 0..nx {
        // What is still open as one goes from the wall towards the person.
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
fn above_floor(solid: &Cells, has_floor: bool) -> Cells {
    let [nx, ny, _] = solid.shape().cells;
    let mut found = solid.shape().none();
    if !has_floor {
        return found;
    }
    for x in 0..nx {
        for y in 0..ny {
            // Bits count from the highest cell down, so the air above the floor is what comes behind the last solid bit.
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

/// What one connected bit of bare face looks at, where it would be partly the room and partly underneath: what the larger
/// part of it does. Nobody stops painting at a line of sight.
fn settle(bits: &mut [Bit], across: usize) {
    let mixes = |bit: &Bit| !bit.is_apart && matches!(bit.sense, Some(Sense::Outside | Sense::Underneath));
    let has = |bits: &[Bit], sense| bits.iter().any(|bit| mixes(bit) && bit.sense == Some(sense));
    if !has(bits, Sense::Outside) || !has(bits, Sense::Underneath) {
        return;
    }
    let mut is_done = vec![false; bits.len()];
    for start in 0..bits.len() {
        if is_done[start] || !mixes(&bits[start]) {
            continue;
        }
        let mut connected = vec![start];
        is_done[start] = true;
        let mut next = 0;
        let mut outside = 0.0;
        while next < connected.len() {
            let at = connected[next];
            next += 1;
            outside += match bits[at].sense {
                Some(Sense::Outside) => bits[at].area,
                _ => -bits[at].area,
            };
            let column = at % across;
            let beside = [
                (column > 0).then(|| at - 1),
                (column + 1 < across).then(|| at + 1),
                at.checked_sub(across),
                (at + across < bits.len()).then(|| at + across),
            ];
            for other in beside.into_iter().flatten() {
                if !is_done[other] && mixes(&bits[other]) {
                    is_done[other] = true;
                    connected.push(other);
                }
            }
        }
        let sense = if outside >= 0.0 {
            Sense::Outside
        } else {
            Sense::Underneath
        };
        for at in connected {
            bits[at].sense = Some(sense);
        }
    }
}
