//! Edges, and how often the contours of two sets of regions wind around what lies beside them.

use crate::corner::Corner;
use crate::sorting;

/// A closed line of corners; the last is joined to the first.
pub(crate) type Contour = Vec<Corner>;

/// What is wanted of two sets of regions.
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
    /// Whether a place belongs to the result around which the two sets wind so many times.
    pub(super) fn takes(self, [first, second]: Winding) -> bool {
        match self {
            Rule::Union => first != 0 || second != 0,
            Rule::Intersection => first != 0 && second != 0,
            Rule::Difference => first != 0 && second == 0,
        }
    }
}

/// How many times the contours of the first and of the second set run counter-clockwise around a place.
pub(super) type Winding = [i32; 2];

/// An edge, or a piece of one, from its lesser to its greater end.
pub(super) struct Edge<End> {
    pub(super) ends: [End; 2],
    /// How many times more one is wound around above the edge, at the left, than below it.
    pub(super) step: Winding,
}

/// Edges that lie on each other as one; those that cancel each other are left out.
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
