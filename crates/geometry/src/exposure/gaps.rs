//! Gaps between parts: which are closed, and which of those around fronts are open to the room.

use super::grid::{Cells, Planes, Shape, add, keep};

/// The greatest depth of a cell in a closed gap that is still part of the room, meters: more than a front is thick, and
/// as far as a brush reaches (common practice, no source).
const INTO_GAP: f64 = 0.05;

/// The gaps between two solids that are narrower than `width`, and those of them beside a front. Where two gaps cross,
/// neither has a solid beside it, so these are found in a second round.
pub(super) fn closed_gaps([solid, fronts]: [&Cells; 2], planes: &[Planes; 3], width: f64) -> [Cells; 2] {
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
    let [nx, ny, _] = filled.shape().cells;
    for x in 0..nx {
        for y in (0..ny).filter(|y| looked_at(x, *y)) {
            filled.free_between(x, y, |[first, end]| {
                if !planes.is_narrow([first, end], width) {
                    return;
                }
                let run = [[x, x + 1], [y, y + 1], [first, end]];
                gaps[0].add_block(run);
                if fronts.has([x, y, first - 1]) || fronts.has([x, y, end]) {
                    gaps[1].add_block(run);
                }
            });
        }
    }
}

/// The gaps around fronts that lead straight into the room and are shallow.
pub(super) fn open_gaps(around_fronts: &Cells, closed: &Cells, room: &Cells, planes: &[Planes; 3]) -> Cells {
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

/// Closes the gaps of one run of cells along a horizontal axis: free from first to last, filled before and behind.
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
