//! Polygon booleans: union, intersection and difference of two sets of regions.
//!
//! The arithmetic is exact on integers, except that each crossing moves to the nearest grid point. [`pieces`] splits
//! the edges so that they meet only at their ends; [`fill`] finds the side of each piece that the result is on, and
//! which piece follows which around it; [`chain`] joins the pieces into contours. There is no iteration, so it
//! terminates on any input.
//!
//! Edges may cross, touch and coincide in any way, and the regions of a set may overlap. A point belongs to a set if
//! any of its contours winds around it.

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
    /// The ends of each edge, with flags: 1 if it runs from its greater to its lesser end, 2 if it belongs to the
    /// second set.
    edges: Vec<sorting::Entry>,
}

impl Boolean {
    /// An empty boolean with capacity for this many edges.
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

    /// The contours of the result: outer ones counter-clockwise, holes clockwise, without collinear corners. Each outer
    /// contour is followed by its holes.
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
