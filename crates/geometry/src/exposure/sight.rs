//! What a person in the room sees of the air around and in a piece.
//!
//! A person looks level or down: who has to lie on the floor to see a face does not count. Lines of sight are replaced
//! by paths from cell to cell that never turn back along an axis and never rise. Every straight line is such a path, so
//! nothing that can be seen is missed; a path may also bend, so a little more is seen than straight lines reach.

use super::grid::{Cells, Shape, add, fall, keep, rise};

/// The free cells that are seen. The outermost cells on the open sides of the piece are the room; `open` says which those
/// sides are: for each axis, below and above.
pub(super) fn seen(free: &Cells, open: [[bool; 2]; 3]) -> Cells {
    let mut seen = free.shape().none();
    for way in [[false, false], [false, true], [true, false], [true, true]] {
        seen.add(&swept(free, open, way));
    }
    seen
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
    let (mut column, mut above) = (free.shape().column([0, 0]), free.shape().column([0, 0]));
    loop {
        let mut has_grown = false;
        // To and fro, so that one round reaches around a corner either way.
        for back in [false, true] {
            for step_x in 0..nx {
                let x = if back { nx - 1 - step_x } else { step_x };
                for step_y in 0..ny {
                    let y = if back { ny - 1 - step_y } else { step_y };
                    let (around, known) = (free.column(x, y), from.column(x, y));
                    // Most columns have nothing left to be reached.
                    if around.iter().zip(known).all(|(free, known)| free & !known == 0) {
                        continue;
                    }
                    gather(&mut column, from, [x, y]);
                    keep(&mut column, around);
                    above.copy_from_slice(&column);
                    rise(&mut above, around);
                    fall(&mut column, around);
                    add(&mut column, &above);
                    if column != from.column(x, y) {
                        from.column_mut(x, y).copy_from_slice(&column);
                        has_grown = true;
                    }
                }
            }
        }
        if !has_grown {
            return;
        }
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
