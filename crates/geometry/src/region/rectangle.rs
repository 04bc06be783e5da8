//! Axis-aligned rectangles: their intersection and difference.

use super::{Kind, Point2, Region, SAME_POINT};

/// How nearly axis-aligned the sides of a rectangle must be: well below [`SAME_POINT`], so that treating it as exactly
/// aligned loses nothing.
const EXACT: f64 = 1e-12;

/// The corners of an upright rectangle from the lower left counter-clockwise.
pub(super) fn corners_between(low: Point2, high: Point2) -> [Point2; 4] {
    [low, [high[0], low[1]], high, [low[0], high[1]]]
}

/// The lower left and upper right corner, if four corners are those of an upright rectangle.
pub(super) fn as_rectangle(corners: &[Point2]) -> Option<(Point2, Point2)> {
    let &[a, b, c, d] = corners else { return None };
    let same = |p: f64, q: f64| (p - q).abs() < EXACT;
    let level_first = same(a[1], b[1]) && same(b[0], c[0]) && same(c[1], d[1]) && same(d[0], a[0]);
    let upright_first = same(a[0], b[0]) && same(b[1], c[1]) && same(c[0], d[0]) && same(d[1], a[1]);
    (level_first || upright_first).then(|| {
        let low = [a[0].min(c[0]), a[1].min(c[1])];
        (low, [a[0].max(c[0]), a[1].max(c[1])])
    })
}

pub(super) fn rectangle_intersection(
    [a_low, _, a_high, _]: &[Point2; 4],
    [b_low, _, b_high, _]: &[Point2; 4],
) -> Region {
    let low = [a_low[0].max(b_low[0]), a_low[1].max(b_low[1])];
    let high = [a_high[0].min(b_high[0]), a_high[1].min(b_high[1])];
    if high[0] - low[0] < SAME_POINT || high[1] - low[1] < SAME_POINT {
        Region::EMPTY
    } else {
        Region::between(low, high)
    }
}

/// The difference of two rectangles.
pub(super) fn rectangle_difference(a: &[Point2; 4], b: &[Point2; 4]) -> Region {
    let ([low, _, high, _], [b_low, _, b_high, _]) = (a, b);
    let misses = |axis: usize| b_high[axis] < low[axis] + SAME_POINT || b_low[axis] > high[axis] - SAME_POINT;
    if misses(0) || misses(1) {
        return Region(Kind::Rectangle(*a));
    }
    let below = [0, 1].map(|axis| b_low[axis] < low[axis] + SAME_POINT);
    let above = [0, 1].map(|axis| b_high[axis] > high[axis] - SAME_POINT);
    let (mut cut_low, mut cut_high) = (*low, *high);
    for axis in 0..2 {
        if !below[axis] {
            cut_low[axis] = b_low[axis];
        }
        if !above[axis] {
            cut_high[axis] = b_high[axis];
        }
    }
    let crosses = [0, 1].map(|axis| below[axis] && above[axis]);
    let (before, after) = match crosses {
        [true, true] => return Region::EMPTY,
        [true, false] => ([high[0], cut_low[1]], [low[0], cut_high[1]]),
        [false, true] => ([cut_low[0], high[1]], [cut_high[0], low[1]]),
        [false, false] => return notched(a, [cut_low, cut_high], [below[1], above[0], above[1], below[0]]),
    };
    let along = usize::from(crosses[0]);
    match (below[along], above[along]) {
        (true, _) => Region::between(after, *high),
        (_, true) => Region::between(*low, before),
        _ => Region(Kind::General(vec![
            corners_between(*low, before).to_vec(),
            corners_between(after, *high).to_vec(),
        ])),
    }
}

/// A rectangle less another one that sticks out over at most one of two opposite sides: over a corner, into one side,
/// or through the middle. `over` lists the sides that it sticks out over: lower, right, upper, left.
fn notched(corners: &[Point2; 4], [low, high]: [Point2; 2], over: [bool; 4]) -> Region {
    let cut = corners_between(low, high);
    let mut outline = Vec::with_capacity(8);
    for (k, &corner) in corners.iter().enumerate() {
        let [before, next] = [over[(k + 3) % 4], over[(k + 1) % 4]];
        if over[k] && before {
            outline.extend([3, 2, 1].map(|step| cut[(k + step) % 4]));
        } else {
            outline.push(corner);
            if over[k] && !next {
                outline.extend([0, 3, 2, 1].map(|step| cut[(k + step) % 4]));
            }
        }
    }
    let mut contours = vec![outline];
    if over == [false; 4] {
        contours.push(cut.into_iter().rev().collect());
    }
    Region(Kind::General(contours))
}
