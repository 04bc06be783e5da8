//! The polygon boolean: what lies in one set of regions, in both of two sets, or in one and not in the other.
//!
//! It works on whole numbers and is exact, but for the place of a crossing, which goes to the nearest corner of the
//! grid. [`pieces`] divides the edges so that they meet at their ends only; [`fill`] finds on which side of each piece
//! the result lies and which piece follows which around it; [`chain`] joins them to contours. Nothing is done twice,
//! so that it comes to an end whatever it is given.
//!
//! Edges may cross, touch and lie on each other in any way, and a region may be given as many that overlap: what a
//! region winds around at all is in it.

mod chain;
mod fill;
mod pieces;
#[cfg(test)]
mod tests;

use crate::corner::Corner;
use crate::sorting::{self, packed, unpacked};

/// A closed line of corners; the last is joined to the first.
pub(crate) type Contour = Vec<Corner>;

/// What is wanted of two sets of regions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rule {
    /// What lies in any region of either set.
    Either,
    /// What lies in both.
    Both,
    /// What lies in the first and not in the second.
    Less,
}

impl Rule {
    /// Whether a place belongs to the result around which the two sets wind so many times.
    fn takes(self, [first, second]: Winding) -> bool {
        match self {
            Rule::Either => first != 0 || second != 0,
            Rule::Both => first != 0 && second != 0,
            Rule::Less => first != 0 && second == 0,
        }
    }
}

/// How many times the contours of the first and of the second set run counter-clockwise around a place.
type Winding = [i32; 2];

/// An edge, or a piece of one, from its lesser to its greater end.
struct Edge<End> {
    ends: [End; 2],
    /// How many times more one is wound around above the edge, at the left, than below it.
    step: Winding,
}

/// Edges that lie on each other as one; those that cancel each other are left out.
///
/// Sorts edges by their ends, each with the number of what it adds to the winding.
fn merged(mut edges: Vec<sorting::Entry>, step: impl Fn(usize) -> Winding) -> Vec<Edge<i64>> {
    sorting::sort_entries(&mut edges);
    let mut merged: Vec<Edge<i64>> = Vec::with_capacity(edges.len());
    for same in edges.chunk_by(|a, b| a.0 == b.0) {
        let mut sum = [0; 2];
        for (_, number) in same {
            let [first, second] = step(*number);
            sum = [sum[0] + first, sum[1] + second];
        }
        if sum != [0; 2] {
            merged.push(Edge {
                ends: same[0].0,
                step: sum,
            });
        }
    }
    merged
}

/// Two sets of regions.
pub(crate) struct Boolean {
    /// The ends of each edge, and whether it runs from its greater to its lesser end (1) and is one of the second
    /// set (2).
    edges: Vec<sorting::Entry>,
}

impl Boolean {
    /// Room for so many edges.
    pub(crate) fn new(edges: usize) -> Self {
        Boolean {
            edges: Vec::with_capacity(edges),
        }
    }

    /// Adds a contour to the first (0) or the second set (1).
    pub(crate) fn add(&mut self, set: usize, contour: impl Iterator<Item = Corner>) {
        let mut contour = contour.map(packed);
        let Some(first) = contour.next() else { return };
        let mut from = first;
        loop {
            let next = contour.next();
            let to = next.unwrap_or(first);
            if from != to {
                let ends = [from.min(to), from.max(to)];
                self.edges.push((ends, usize::from(from > to) + 2 * set));
            }
            if next.is_none() {
                return;
            }
            from = to;
        }
    }

    /// The contours of the result: outer ones counter-clockwise, holes clockwise, without corners in the middle of a
    /// straight side. Each outer one is followed by its holes.
    pub(crate) fn contours(self, rule: Rule) -> Vec<Contour> {
        let edges = merged(self.edges, |number| {
            let step = if number & 1 == 0 { 1 } else { -1 };
            if number & 2 == 0 { [step, 0] } else { [0, step] }
        });
        let edges: Vec<Edge<Corner>> = edges
            .into_iter()
            .map(|edge| Edge {
                ends: edge.ends.map(unpacked),
                step: edge.step,
            })
            .collect();
        let (corners, pieces) = pieces::divided(&edges);
        let borders = fill::borders(&corners, pieces, rule);
        chain::contours(&corners, &borders)
    }
}
