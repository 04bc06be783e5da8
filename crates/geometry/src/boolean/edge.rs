//! Edges, and the winding numbers of two sets of regions on either side of them.

use crate::corner::Corner;
use crate::sorting;

/// A closed line of corners; the last is joined to the first.
pub(crate) type Contour = Vec<Corner>;

/// The operation on two sets of regions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rule {
    /// What lies in any region of either set.
    Union,
    /// What lies in both.
    Intersection,
    /// What lies in the first and not in the second.
    Difference,
}

impl Rule {
    /// Whether a point with these winding numbers belongs to the result.
    pub(super) fn takes(self, [first, second]: Winding) -> bool {
        match self {
            Rule::Union => first != 0 || second != 0,
            Rule::Intersection => first != 0 && second != 0,
            Rule::Difference => first != 0 && second == 0,
        }
    }
}

/// The winding numbers of the first and of the second set around a point.
pub(super) type Winding = [i32; 2];

/// An edge, or a piece of one, from its lesser to its greater end.
pub(super) struct Edge<End> {
    pub(super) ends: [End; 2],
    /// How much the winding number increases from below the edge to above it (its left side).
    pub(super) step: Winding,
}

/// Merges coincident edges; those that cancel each other are left out.
///
/// Sorts edges by their ends, each with the number of what it adds to the winding.
pub(super) fn merged(mut edges: Vec<sorting::Entry>, step: impl Fn(usize) -> Winding) -> Vec<Edge<i64>> {
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
