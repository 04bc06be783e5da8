//! What a person in the room can see of the air around and in a piece.
//!
//! A person looks horizontally or down; what can only be seen by lying on the floor does not count. A cell is visible
//! if a straight line from it leaves the piece, horizontally or straight up, or if it is seen from above out of visible
//! air. Lines along the axes are followed for whole rows of cells at once. Slanting lines are followed one by one, and
//! only from cells that [`swept`] paths reach: like straight lines, these never turn back along an axis and never rise,
//! but they may bend.

use super::grid::{Cells, Planes, Shape, add, fill_down, fill_up, keep};

/// The slopes of slanting lines. The flattest one reaches behind the feet of a wide case.
const SLOPES: [f64; 7] = [0.1, 0.25, 0.5, 1.0, 2.0, 4.0, 10.0];

/// The start points of slanting lines, relative to the middle of a cell and in parts of its width.
const STARTS: [[f64; 2]; 4] = [[-0.25, -0.25], [-0.25, 0.25], [0.25, -0.25], [0.25, 0.25]];

/// Up or down each of the horizontal axes.
const WAYS: [[bool; 2]; 4] = [[false, false], [false, true], [true, false], [true, true]];

/// The visible free cells. The outermost cells on the open sides of the piece are the room. `open` lists those sides:
/// for each axis, low and high.
pub(super) fn seen(free: &Cells, planes: &[Planes; 3], open: [[bool; 2]; 3]) -> Cells {
    let mut seen = free.shape().none();
    if open[2][1] {
        from_above(free, &mut seen);
    }
    along_axes(free, open, &mut seen);
    let mut reached = free.shape().none();
    for way in WAYS {
        reached.add(&swept(free, open, way));
    }
    slanting(free, &reached, planes, open, &mut seen);
    seen
}

/// Adds the free cells straight below those of `from`.
pub(super) fn extend_down(from: &mut Cells, free: &Cells) {
    let [nx, ny, _] = free.shape().cells;
    for x in 0..nx {
        for y in 0..ny {
            fill_down(from.column_mut(x, y), free.column(x, y));
        }
    }
}

/// Adds what is visible from straight above.
fn from_above(free: &Cells, seen: &mut Cells) {
    let shape @ Shape {
        cells: [nx, ny, nz], ..
    } = free.shape();
    let top = shape.column([nz.saturating_sub(1), nz]);
    for x in 0..nx {
        for y in 0..ny {
            let (column, around) = (seen.column_mut(x, y), free.column(x, y));
            column.copy_from_slice(&top);
            keep(column, around);
            fill_down(column, around);
        }
    }
}

/// Adds what is visible horizontally along the axes.
fn along_axes(free: &Cells, open: [[bool; 2]; 3], seen: &mut Cells) {
    let shape @ Shape {
        cells: [nx, ny, nz], ..
    } = free.shape();
    let all = shape.column([0, nz]);
    let mut way = all.clone();
    for (axis, [along, beside]) in [[nx, ny], [ny, nx]].into_iter().enumerate() {
        for up in [true, false]
            .into_iter()
            .filter(|up| open[axis][usize::from(!up)])
        {
            for other in 0..beside {
                way.copy_from_slice(&all);
                for step in 0..along {
                    let at = if up { step } else { along - 1 - step };
                    let [x, y] = if axis == 0 { [at, other] } else { [other, at] };
                    keep(&mut way, free.column(x, y));
                    if is_empty(&way) {
                        break;
                    }
                    add(seen.column_mut(x, y), &way);
                }
            }
        }
    }
}

/// Adds the reached cells from which slanting lines leave the piece, from more than half of the start points.
fn slanting(free: &Cells, reached: &Cells, planes: &[Planes; 3], open: [[bool; 2]; 3], seen: &mut Cells) {
    let shape @ Shape {
        cells: [nx, ny, _], ..
    } = free.shape();
    let [mut unseen, mut way, mut leaving] = [(); 3].map(|()| shape.column([0, 0]));
    // The levels visible from at least one start point, from two, from three.
    let mut counts = [(); 3].map(|()| shape.column([0, 0]));
    for x in 0..nx {
        for y in 0..ny {
            unseen.copy_from_slice(reached.column(x, y));
            for (unseen, seen) in unseen.iter_mut().zip(seen.column(x, y)) {
                *unseen &= !seen;
            }
            if is_empty(&unseen) {
                continue;
            }
            counts.iter_mut().for_each(|count| count.fill(0));
            for start in STARTS {
                leaving.fill(0);
                for slope in SLOPES {
                    for up in WAYS {
                        way.copy_from_slice(&unseen);
                        for (way, leaving) in way.iter_mut().zip(&leaving) {
                            *way &= !leaving;
                        }
                        let line = Line { start, slope, up };
                        line.leave(free, planes, open, [x, y], &mut way);
                        add(&mut leaving, &way);
                    }
                }
                let [from_one, from_two, from_three] = &mut counts;
                for (n, leaving) in leaving.iter().enumerate() {
                    from_three[n] |= from_two[n] & leaving;
                    from_two[n] |= from_one[n] & leaving;
                    from_one[n] |= leaving;
                }
            }
            add(seen.column_mut(x, y), &counts[2]);
        }
    }
}

/// A horizontal line that slants between the axes.
struct Line {
    start: [f64; 2],
    slope: f64,
    up: [bool; 2],
}

impl Line {
    /// Keeps the levels of `way` at which the line from a column leaves the piece.
    fn leave(
        &self,
        free: &Cells,
        planes: &[Planes; 3],
        open: [[bool; 2]; 3],
        mut at: [usize; 2],
        way: &mut [u64],
    ) {
        let pace = [1.0, self.slope];
        let start = [0, 1].map(|axis| {
            let [begins, ends] = planes[axis].cell(at[axis]);
            f64::midpoint(begins, ends) + self.start[axis] * (ends - begins)
        });
        let time = |axis: usize, at: usize| {
            let plane = planes[axis].cell(at)[usize::from(self.up[axis])];
            (plane - start[axis]).abs() / pace[axis]
        };
        while !is_empty(way) {
            let axis = usize::from(time(1, at[1]) < time(0, at[0]));
            let next = if self.up[axis] {
                at[axis] + 1
            } else {
                at[axis].wrapping_sub(1)
            };
            if next >= planes[axis].cells() {
                if !open[axis][usize::from(self.up[axis])] {
                    way.fill(0);
                }
                return;
            }
            at[axis] = next;
            keep(way, free.column(at[0], at[1]));
        }
    }
}

fn is_empty(column: &[u64]) -> bool {
    column.iter().all(|bits| *bits == 0)
}

/// The cells that a path reaches that goes up or down the axes x and y.
fn swept(free: &Cells, open: [[bool; 2]; 3], [up_x, up_y]: [bool; 2]) -> Cells {
    let shape @ Shape {
        cells: [nx, ny, nz], ..
    } = free.shape();
    let mut seen = shape.none();
    let from_above = shape.column(if open[2][1] {
        [nz.saturating_sub(1), nz]
    } else {
        [0, 0]
    });
    let is_room =
        |at: usize, cells: usize, [below, above]: [bool; 2]| below && at == 0 || above && at + 1 == cells;
    let mut column = shape.column([0, 0]);
    for step_x in 0..nx {
        let x = if up_x { step_x } else { nx - 1 - step_x };
        for step_y in 0..ny {
            let y = if up_y { step_y } else { ny - 1 - step_y };
            let around = free.column(x, y);
            if is_room(x, nx, open[0]) || is_room(y, ny, open[1]) {
                column.copy_from_slice(around);
            } else {
                column.copy_from_slice(&from_above);
                if step_x > 0 {
                    add(&mut column, seen.column(if up_x { x - 1 } else { x + 1 }, y));
                }
                if step_y > 0 {
                    add(&mut column, seen.column(x, if up_y { y - 1 } else { y + 1 }));
                }
                keep(&mut column, around);
                fill_down(&mut column, around);
            }
            seen.column_mut(x, y).copy_from_slice(&column);
        }
    }
    seen
}

/// Adds the free cells connected with those of `from`, which must be free themselves.
pub(super) fn flood_fill(from: &mut Cells, free: &Cells) {
    let [nx, ny, _] = free.shape().cells;
    let is_full = |from: &Cells, [x, y]: [usize; 2]| {
        let mut words = free.column(x, y).iter().zip(from.column(x, y));
        words.all(|(free, known)| free & !known == 0)
    };
    // Most columns have nothing left to reach, and soon fewer do.
    let columns = (0..nx).flat_map(|x| (0..ny).map(move |y| [x, y]));
    let mut left: Vec<[usize; 2]> = columns.filter(|at| !is_full(from, *at)).collect();
    let (mut column, mut above) = (free.shape().column([0, 0]), free.shape().column([0, 0]));
    let (mut is_first, mut has_grown) = (true, true);
    while has_grown {
        has_grown = is_first;
        left.retain(|&at @ [x, y]| {
            let around = free.column(x, y);
            gather(&mut column, from, at);
            keep(&mut column, around);
            if !is_first && column == from.column(x, y) {
                return true;
            }
            above.copy_from_slice(&column);
            fill_up(&mut above, around);
            fill_down(&mut column, around);
            add(&mut column, &above);
            if column != from.column(x, y) {
                from.column_mut(x, y).copy_from_slice(&column);
                has_grown = true;
            }
            !is_full(from, at)
        });
        // Alternate the direction, so that two rounds reach around a corner either way.
        left.reverse();
        is_first = false;
    }
}

/// A column together with the four beside it.
fn gather(into: &mut [u64], cells: &Cells, [x, y]: [usize; 2]) {
    let [nx, ny, _] = cells.shape().cells;
    into.copy_from_slice(cells.column(x, y));
    if x > 0 {
        add(into, cells.column(x - 1, y));
    }
    if x + 1 < nx {
        add(into, cells.column(x + 1, y));
    }
    if y > 0 {
        add(into, cells.column(x, y - 1));
    }
    if y + 1 < ny {
        add(into, cells.column(x, y + 1));
    }
}
