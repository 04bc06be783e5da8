//! The polygon boolean: what lies in one set of regions, in both of two sets, or in one and not in the other.
//!
//! It works on whole numbers and is exact, but for the place of a crossing, which goes to the nearest corner of the
//! grid. [`pieces`] divides the edges so that they meet at their ends only; [`fill`] finds on which side of each piece
//! the result lies and which piece follows which around it; [`chain`] joins them to contours. Nothing is done twice,
//! so that it comes to an end whatever it is given.
//!
//! Edges may cross, touch and lie on each other in any way, and a region may be given as many that overlap: what a
//! region winds around at all is in it.

#![allow(
    clippy::indexing_slicing,
    reason = "hot loops over places that it finds itself"
)]

mod chain;
mod edge;
mod fill;
mod pieces;
#[cfg(test)]
mod tests;

pub(crate) use edge::{Contour, Rule};

use edge::{Edge, merged};

use crate::corner::Corner;
use crate::sorting::{self, packed, unpacked};

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
