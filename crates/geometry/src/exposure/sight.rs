//! What a person in the room sees of the air around and in a piece.
//!
//! A person looks level or down: who has to lie on the floor to see a face does not count. A cell is seen where a straight line
//! leaves the piece from it, level or straight up, and where one looks down into it from air that is seen. Lines along the
//! axes are followed for whole rows of cells at once. Slanting lines are followed one by one, and only for cells that
//! [`swept`] paths reach: these never turn back along an axis and never rise, as straight lines do not, but may bend.

use super::grid::{Cells, Planes, Shape, add, fall, keep, rise};

/// How far slanting lines go along the second axis for each step along the first. The flattest one looks behind the feet of a
/// wide case.
const SLOPES: [f64; 7] = [0.1, 0.25, 0.5, 1.0, 2.0, 4.0, 10.0];

/// Where slanting lines begin, in parts of the width of a cell from its middle; and how many of them have to leave the piece.
const STARTS: [[f64; 2]; 4] = [[-0.25, -0.25], [-0.25, 0.25], [0.25, -0.25], [0.25, 0.25]];

/// Up or down each of the level axes.
const WAYS: [[bool; 2]; 4] = [[false, false], [false, true], [true, false], [true, true]];

/// The free cells that are seen. The outermost cells on the open sides of the piece are the room; `open` says which those
/// sides are: for each axis, below and above.
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

/// Adds the free cells that lie straight below some.
pub(super) fn look_down(from: &mut Cells, free: &Cells) {
    let [nx, ny, _] = free.shape().cells;
    for x in 0..nx {
        for y in 0..ny {
            fall(from.column_mut(x, y), free.column(x, y));
        }
    }
}

/// Adds what is seen from straight above.
fn from_above(free: &Cells, seen: &mut Cells) {
    let shape @ Shape {
        cells: [nx, ny, nz], ..
    } = free.shape();
    let top = shape.column([nz - 1, nz]);
    for x in 0..nx {
        for y in 0..ny {
            let (column, around) = (seen.column_mut(x, y), free.column(x, y));
            column.copy_from_slice(&top);
            keep(column, around);
            fall(column, around);
        }
    }
}

/// Adds what is seen level along the axes.
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

/// Adds those of the reached cells from which a slanting line leaves, from more than half of the places in them.
fn slanting(free: &Cells, reached: &Cells, planes: &[Planes; 3], open: [[bool; 2]; 3], seen: &mut Cells) {
    let shape @ Shape {
        cells: [nx, ny, _], ..
    } = free.shape();
    let [mut unseen, mut way, mut leaving] = [(); 3].map(|()| shape.column([0, 0]));
    // The levels seen from one place at least, from two, from three.
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

/// A level line that slants between the axes.
struct Line {
    start: [f64; 2],
    slope: f64,
    up: [bool; 2],
}

impl Line {
    /// Keeps the levels of `way` at which the line leaves the piece from a column.
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

/// The cells that a sight reaches which goes up or down the axes x and y.
fn swept(free: &Cells, open: [[bool; 2]; 3], [up_x, up_y]: [bool; 2]) -> Cells {
    let shape @ Shape {
        cells: [nx, ny, nz], ..
    } = free.shape();
    let mut seen = shape.none();
    let from_above = shape.column(if open[2][1] { [nz - 1, nz] } else { [0, 0] });
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
                fall(&mut column, around);
            }
            seen.column_mut(x, y).copy_from_slice(&column);
        }
    }
    seen
}

/// Adds the cells that are connected with those of `from` through free ones; those of `from` are free themselves.
pub(super) fn spread(from: &mut Cells, free: &Cells) {
    let [nx, ny, _] = free.shape().cells;
    let is_full = |from: &Cells, [x, y]: [usize; 2]| {
        let mut words = free.column(x, y).iter().zip(from.column(x, y));
        words.all(|(free, known)| free & !known == 0)
    };
    // Most columns have nothing that is left to be reached, and soon fewer.
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
            rise(&mut above, around);
            fall(&mut column, around);
            add(&mut column, &above);
            if column != from.column(x, y) {
                from.column_mut(x, y).copy_from_slice(&column);
                has_grown = true;
            }
            !is_full(from, at)
        });
        // To and fro, so that two rounds reach around a corner either way.
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
