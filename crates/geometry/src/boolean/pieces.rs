//! Edges split where they meet.
//!
//! Every end of an edge and every crossing, rounded to the nearest grid point, is a corner of the result. An edge that
//! runs through the half-step square around such a corner is routed through the corner itself (snap rounding: Hobby,
//! "Practical segment intersection with finite precision output", 1999; Guibas and Marimont, "Rounding arrangements
//! dynamically", 1998). They prove that the pieces then meet only at their ends, so one pass is enough.

use super::edge::{Edge, merged};
use crate::corner::{Corner, Offset};
use crate::sorting::{self, packed, unpacked};

/// An edge that the sweep line crosses.
struct Open {
    ends: [Corner; 2],
    /// Its index among the edges.
    edge: usize,
    /// The index of the last corner that it ran through.
    last: usize,
}

/// The corners from left to right, and the pieces between them by their indices, sorted.
pub(super) fn divided(edges: &[Edge<Corner>]) -> (Vec<Corner>, Vec<Edge<i64>>) {
    let corners = corners(edges);
    let mut pieces: Vec<sorting::Entry> = Vec::with_capacity(corners.len() + edges.len());
    let mut open: Vec<Open> = Vec::new();
    let (mut begun, mut from) = (0, 0);
    for column in corners.chunk_by(|p, q| p.x == q.x) {
        let x = column[0].x;
        while let Some(edge) = edges.get(begun).filter(|edge| edge.ends[0].x == x) {
            open.push(Open {
                ends: edge.ends,
                edge: begun,
                last: usize::MAX,
            });
            begun += 1;
        }
        open.retain_mut(|open| {
            let Open { ends, edge, last } = open;
            let [p, q] = *ends;
            let is_falling = q.y < p.y;
            let (low, high) = if is_falling { (q.y, p.y) } else { (p.y, q.y) };
            let reached = column.partition_point(|corner| corner.y < low);
            let beside = column[reached..].iter().take_while(|corner| corner.y <= high);
            let count = beside.count();
            for step in 0..count {
                let step = reached + if is_falling { count - 1 - step } else { step };
                if !is_through(ends, column[step]) {
                    continue;
                }
                let place = from + step;
                if *last != usize::MAX {
                    let turned = usize::from(place < *last);
                    let between = [place.min(*last) as i64, place.max(*last) as i64];
                    pieces.push((between, 2 * *edge + turned));
                }
                *last = place;
            }
            x < q.x
        });
        from += column.len();
    }
    let pieces = merged(pieces, |number| {
        let step = edges[number / 2].step;
        if number & 1 == 0 {
            step
        } else {
            step.map(|step| -step)
        }
    });
    (corners, pieces)
}

/// The ends of the edges and where they cross, from left to right, each once.
fn corners(edges: &[Edge<Corner>]) -> Vec<Corner> {
    let mut corners: Vec<sorting::Entry> = Vec::with_capacity(2 * edges.len());
    let mut open: Vec<[Corner; 2]> = Vec::new();
    for Edge { ends, .. } in edges {
        let [p, q] = *ends;
        let (low, high) = (p.y.min(q.y), p.y.max(q.y));
        let entry = |corner: Corner| ([packed(corner), 0], 0);
        corners.extend(ends.map(entry));
        open.retain(|other| {
            let [r, s] = *other;
            if r.y.min(s.y) < high
                && low < r.y.max(s.y)
                && p.x < s.x
                && let Some(corner) = crossing(ends, other)
            {
                corners.push(entry(corner));
            }
            p.x < s.x
        });
        open.push(*ends);
    }
    sorting::sort_entries(&mut corners);
    corners.dedup();
    corners.into_iter().map(|(at, _)| unpacked(at[0])).collect()
}

/// The corner nearest to where two edges cross; `None` if they do not, or only touch.
fn crossing(&[p, q]: &[Corner; 2], &[r, s]: &[Corner; 2]) -> Option<Corner> {
    let (way, other) = (q - p, s - r);
    let (start, end) = (other.cross(p - r), other.cross(q - r));
    if start.signum() * end.signum() >= 0 || way.cross(r - p).signum() * way.cross(s - p).signum() >= 0 {
        return None;
    }
    // Inside both edges, and so on the grid.
    let part = |way: i64| nearest_part(way, start.abs(), start.abs() + end.abs()) as i32;
    Some(Corner::new(p.x + part(way.x), p.y + part(way.y)))
}

/// The integer nearest to `of * share / whole`; halves round up.
fn nearest_part(of: i64, share: i64, whole: i64) -> i64 {
    let mut nearest = (of as f64 * (share as f64 / whole as f64) + 0.5).floor() as i64;
    // The floating-point result is off by far less than a step, but may be on the wrong side of half a step.
    let doubled = 2 * i128::from(of) * i128::from(share);
    let reaches = |half_steps: i64| doubled >= i128::from(half_steps) * i128::from(whole);
    if !reaches(2 * nearest - 1) {
        nearest -= 1;
    } else if reaches(2 * nearest + 1) {
        nearest += 1;
    }
    nearest
}

/// Whether an edge, in whose box a corner lies, meets the half-step square around that corner. The square includes its
/// left and lower sides, to match the rounding.
fn is_through(&[p, q]: &[Corner; 2], corner: Corner) -> bool {
    let Offset { x, y } = q - p;
    let doubled = 2 * (q - p).cross(corner - p);
    let reach = x.abs() + y.abs();
    if doubled.abs() == reach {
        // It runs through a corner of the square. Only the lower left corner counts, and only if the edge does not end
        // there.
        return doubled == x - y && corner.x > p.x && corner.y > p.y.min(q.y);
    }
    doubled.abs() < reach
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// What floats find is what whole numbers find, with shares near half a step among them.
        #[test]
        fn the_nearest_part_is_exact(
            of in -(1_i64 << 30)..1 << 30, whole in 2_i64..1 << 61, near in any::<bool>(), at in 0.0..1.0_f64, off in -2_i64..3,
        ) {
            let share = if near && of != 0 {
                let steps = (of.abs() as f64 * at).floor() as i128;
                ((2 * steps + 1) * i128::from(whole) / i128::from(2 * of.abs())) as i64 + off
            } else {
                (whole as f64 * at) as i64
            };
            let share = share.clamp(1, whole - 1);
            let (of_wide, share_wide, whole_wide) = (i128::from(of), i128::from(share), i128::from(whole));
            let asked = (2 * of_wide * share_wide + whole_wide).div_euclid(2 * whole_wide);
            prop_assert_eq!(i128::from(nearest_part(of, share, whole)), asked);
        }
    }

    #[test]
    fn a_square_has_its_left_and_its_lower_side() {
        let edge = |x: i32, y: i32| [Corner::new(0, 0), Corner::new(x, y)];
        assert!(is_through(&edge(9, 4), Corner::new(4, 2)));
        assert!(!is_through(&edge(9, 4), Corner::new(4, 3)));
        // Halfway between two corners of the grid, the one at the right or above has the point.
        assert_eq!(nearest_part(1, 1, 2), 1);
        assert_eq!(nearest_part(-1, 1, 2), 0);
        // Through the common corner of four squares: only the one above it at the right has that.
        let falling = [Corner::new(0, 1), Corner::new(1, 0)];
        assert!(is_through(&falling, Corner::new(1, 1)));
        assert!(!is_through(&falling, Corner::new(0, 0)));
    }
}
