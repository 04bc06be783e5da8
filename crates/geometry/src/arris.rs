//! Edge lengths of what is painted: arrises to sand, inner corners, and borders to cut in or mask.
//!
//! The outlines of all net surfaces are straight lines in space. Where several coincide, the surfaces are sorted by
//! angle around the line, and each one faces the next across the air.

#![allow(
    clippy::indexing_slicing,
    reason = "the places are those of the lines that it lists itself"
)]

mod line;
#[cfg(test)]
mod tests;

use std::f64::consts::{PI, SQRT_2, TAU};
use std::iter::Sum;
use std::ops::AddAssign;

use units::Length;

use crate::CONTACT_GAP;
use crate::assembly::Assembly;
use crate::sorting;
use crate::surface::SurfaceId;
use line::{Adjacent, Line, SHORTEST, adjacent, outlines, without_seams};

/// How far apart two lines may be and still coincide: parts may miss each other by [`CONTACT_GAP`] in two directions.
const SAME_LINE: f64 = 1.001 * SQRT_2 * CONTACT_GAP;

/// The largest angle between two surfaces at a smooth joint, radians: 20 degrees.
const SMOOTH: f64 = PI / 9.0;

/// Two surfaces that face each other at less than this angle (radians) touch, apart from a gap: there is no air between
/// them.
const CLOSED: f64 = 0.02;

/// Lengths of edges of painted surfaces.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Edges {
    /// Convex edges where two painted surfaces meet: they are sanded round, and a finish is thin there.
    pub arrises: Length,
    /// Inner corners between two painted surfaces, of one part or of two.
    pub corners: Length,
    /// Where a painted surface ends at something that is not painted: to be cut in or masked.
    pub borders: Length,
}

impl AddAssign for Edges {
    fn add_assign(&mut self, other: Self) {
        self.arrises += other.arrises;
        self.corners += other.corners;
        self.borders += other.borders;
    }
}

impl Sum for Edges {
    fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
        items.fold(Edges::default(), |mut sum, item| {
            sum += item;
            sum
        })
    }
}

impl Assembly {
    /// The edges of every painted surface that has any, in the order of the surfaces.
    ///
    /// Half of an arris or corner counts for each of the two surfaces that meet there, so the sum over all surfaces
    /// counts it once. Joints that turn by less than 20 degrees, such as those between flush boards, are not edges, nor
    /// are folds within one surface. A curved edge is measured along the facets that approximate it: it comes out a few
    /// parts in a thousand too long, or a hundredth at radii of a millimeter or two. Holes that are only deducted have
    /// no edges.
    ///
    /// # Example
    /// ```
    /// use geometry::{Assembly, Edges, Part, PartId, PartKind};
    /// let board = Part::block(PartId::nth(PartKind::Board, 1), [0.0; 3], [0.6, 0.3, 0.02]);
    /// let edges: Edges = Assembly::new(vec![board], vec![]).edges(|_| true).into_iter().map(|(_, e)| e).sum();
    /// assert!((edges.arrises.as_metres() - 4.0 * (0.6 + 0.3 + 0.02)).abs() < 1e-12);
    /// ```
    pub fn edges(&self, is_painted: impl Fn(&SurfaceId) -> bool) -> Vec<(SurfaceId, Edges)> {
        let (ids, lines) = outlines(&self.net_facets());
        let painted: Vec<bool> = ids.iter().map(is_painted).collect();
        let lines = without_seams(lines);
        let adjacent = adjacent(&lines, SAME_LINE);
        let mut edges = vec![Edges::default(); ids.len()];
        for (line, adjacent) in lines.iter().zip(&adjacent) {
            if painted[line.surface] {
                edges[line.surface] += line_edges(line, adjacent, &lines, &painted);
            }
        }
        let all = ids.into_iter().zip(edges);
        all.filter(|(_, edges)| *edges != Edges::default()).collect()
    }
}

/// The edges along one line of a painted surface. Edges shared with another surface count half.
fn line_edges(line: &Line, adjacent: &[Adjacent], lines: &[Line], painted: &[bool]) -> Edges {
    let mut cuts = vec![0.0, line.length];
    cuts.extend(adjacent.iter().flat_map(|b| b.span));
    sorting::sort(&mut cuts);
    let pieces = cuts.windows(2).filter(|piece| piece[1] - piece[0] > SHORTEST);
    let edges = pieces.map(|piece| {
        let middle = (piece[0] + piece[1]) / 2.0;
        let here = adjacent
            .iter()
            .filter(|b| b.span[0] < middle && middle < b.span[1]);
        let here: Vec<&Line> = here.map(|b| &lines[b.other]).collect();
        piece_edges(line, &here, Length::metres(piece[1] - piece[0]), painted)
    });
    edges.sum()
}

/// The same for a piece of a line that all of the others run along.
fn piece_edges(line: &Line, others: &[&Line], length: Length, painted: &[bool]) -> Edges {
    let runs_back = |a: &Line, b: &Line| a.surface == b.surface && a.along.dot(&b.along) < 0.0;
    // A surface with both of its edges here is narrower than the tolerance.
    if others.iter().any(|other| runs_back(other, line)) {
        return Edges::default();
    }
    let is_wide = |a: &&&Line| !others.iter().any(|b| runs_back(a, b));
    let angles = others.iter().filter(is_wide).filter_map(|other| {
        let angle = air_angle(line, other)?;
        Some((angle, *other))
    });
    let next = angles.min_by(|a, b| a.0.total_cmp(&b.0));
    match next {
        Some((_, next)) if next.surface == line.surface => Edges::default(),
        Some((angle, next)) if painted[next.surface] => shared_edge(angle, length / 2.0),
        _ => Edges {
            borders: length,
            ..Edges::default()
        },
    }
}

/// The edge between two painted surfaces with this angle of air between them.
fn shared_edge(angle: f64, length: Length) -> Edges {
    let none = Edges::default();
    if angle > PI + SMOOTH {
        Edges {
            arrises: length,
            ..none
        }
    } else if angle < PI - SMOOTH {
        Edges {
            corners: length,
            ..none
        }
    } else {
        none
    }
}

/// The angle through the air from one surface to another at their common line, radians. `None` where the other faces
/// away.
fn air_angle(line: &Line, other: &Line) -> Option<f64> {
    let (ahead, up) = (line.inwards(), line.normal);
    let inwards = other.inwards();
    let (x, y) = (inwards.dot(&ahead), inwards.dot(&up));
    let facing = (up * x - ahead * y).dot(&other.normal) < 0.0;
    let angle = libm::atan2(y, x);
    facing.then_some(if angle < CLOSED { angle + TAU } else { angle })
}
