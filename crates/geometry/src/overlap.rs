//! Overlaps: parts that intersect, which real boards cannot.
//!
//! Two solids are apart if their projections onto some direction do not overlap. For two parallel blocks the directions
//! of their faces decide it exactly. Other pairs that no face direction separates are cut just below each of their
//! facets and compared as flat regions. Any intersection begins below some facet of either solid, so no cut is missed.

#![allow(
    clippy::indexing_slicing,
    reason = "the places are those of the parts that it lists itself"
)]

mod solid;
#[cfg(test)]
mod tests;

use std::cell::OnceCell;

use units::Length;

use crate::assembly::Assembly;
use crate::bounds::{self, Bounds};
use crate::face::{Facet, Plane};
use crate::part::{Part, PartId};
use crate::region::{Point2, Region};
use crate::sorting;
use crate::{CONTACT_GAP, Point3, SMALLEST_AREA, Vector3};
use solid::{Bound, NEAR_CORNER, Solid, distance, reach, span_overlap};

/// How nearly parallel two directions must be to count as one, as the difference of their cosine from 1.
const SAME_DIRECTION: f64 = 1e-9;

/// The largest cosine between two cuts that count as cuts in different directions: 20 degrees.
const OTHER_DIRECTION: f64 = 0.94;

/// The most overlaps that are reported: a maker fixes a few at a time, and parts repeated in the same place all
/// intersect.
const MAX_REPORTED: usize = 100;

/// Two parts that intersect.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Overlap {
    /// The part that comes first in the assembly.
    pub a: PartId,
    /// The other part.
    pub b: PartId,
    /// The depth of the intersection: its smallest extent along the normals of their faces.
    pub depth: Length,
}

impl Assembly {
    /// The pairs of parts that intersect by more than [`CONTACT_GAP`], in the order of the parts.
    ///
    /// Facets deviate from the curves that they approximate by a tenth of a millimeter or so, which is never reported.
    /// A single face has no inside, and neither has a bar of which only the girth is known: nothing intersects them.
    /// Only the first hundred overlaps are reported.
    ///
    /// # Example
    /// ```
    /// use geometry::{Assembly, Part, PartId, PartKind};
    /// let board = |n, low, high| Part::block(PartId::nth(PartKind::Board, n), low, high);
    /// let shelf = board(1, [0.0, 0.0, 0.3], [0.612, 0.3, 0.319]);
    /// let side = board(2, [0.6, 0.0, 0.0], [0.619, 0.3, 0.8]);
    /// let found = Assembly::new(vec![shelf, side], vec![]).overlaps();
    /// assert_eq!((found[0].a.label(), found[0].b.label()), ("Board 1".into(), "Board 2".into()));
    /// assert!((found[0].depth.as_millimetres() - 12.0).abs() < 1e-9);
    /// ```
    pub fn overlaps(&self) -> Vec<Overlap> {
        let bounds: Vec<Bounds> = self.parts.iter().map(Part::bounds).collect();
        let solids: Vec<OnceCell<Solid>> = self.parts.iter().map(|_| OnceCell::new()).collect();
        let solid = |place: usize| solids[place].get_or_init(|| Solid::of(&self.parts[place], bounds[place]));
        let found = candidate_pairs(&bounds).into_iter().filter_map(|(a, b)| {
            Some(Overlap {
                a: self.parts[a].id,
                b: self.parts[b].id,
                depth: Length::metres(depth(solid(a), solid(b))?),
            })
        });
        found.take(MAX_REPORTED).collect()
    }
}

/// The pairs of parts whose bounding boxes intersect: their indices, the lower first, in order.
///
/// The boxes are sorted along one axis, so that each is compared only with those that begin before it ends.
fn candidate_pairs(bounds: &[Bounds]) -> Vec<(usize, usize)> {
    let along = sorted_axis(bounds);
    let mut order: Vec<usize> = (0..bounds.len()).collect();
    sorting::sort_by(&mut order, |&place| bounds[place].0[along]);
    let mut pairs = Vec::new();
    let mut open: Vec<usize> = Vec::new();
    for &next in &order {
        let begins = bounds[next].0[along] + CONTACT_GAP;
        open.retain(|&other| bounds[other].1[along] > begins);
        let meets = |other: usize| {
            let ((low, high), (other_low, other_high)) = (bounds[next], bounds[other]);
            (0..3).all(|axis| {
                span_overlap([low[axis], high[axis]], [other_low[axis], other_high[axis]]) > CONTACT_GAP
            })
        };
        let met = open.iter().filter(|&&other| meets(other));
        pairs.extend(met.map(|&other| (next.min(other), next.max(other))));
        open.push(next);
    }
    sorting::sort_by(&mut pairs, |&pair| pair);
    pairs
}

/// The axis along which the boxes overlap least: vertical for a chest, horizontal for a dresser.
fn sorted_axis(bounds: &[Bounds]) -> usize {
    let crowd = |axis: usize| {
        let sizes: f64 = bounds.iter().map(|(low, high)| high[axis] - low[axis]).sum();
        let low = bounds
            .iter()
            .map(|(low, _)| low[axis])
            .fold(f64::INFINITY, f64::min);
        let high = bounds
            .iter()
            .map(|(_, high)| high[axis])
            .fold(f64::NEG_INFINITY, f64::max);
        sizes / (high - low)
    };
    let crowds = [crowd(0), crowd(1), crowd(2)];
    (0..3)
        .min_by(|&a, &b| crowds[a].total_cmp(&crowds[b]))
        .unwrap_or(0)
}

/// The depth of the intersection of two solids, if it is more than [`CONTACT_GAP`].
fn depth(a: &Solid, b: &Solid) -> Option<f64> {
    let directions = directions(a.facets.iter().chain(&b.facets).map(|bound| &bound.normal));
    let mut least = f64::INFINITY;
    for direction in &directions {
        least = least.min(span_overlap(a.reach(direction), b.reach(direction)));
        if least <= CONTACT_GAP {
            return None;
        }
    }
    if are_parallel_blocks(a, b, &directions) {
        return Some(least);
    }
    let points = intersection_points(a, b)?;
    let extents = directions.iter().map(|direction| {
        let [low, high] = reach(&points, direction);
        high - low
    });
    // Cuts are a little below the facets, so the extent comes out a little too small. It is never below the gap.
    Some(extents.fold(least, f64::min).max(CONTACT_GAP))
}

/// The directions of facet normals, each only once; opposite directions count as one.
fn directions<'a>(normals: impl Iterator<Item = &'a Vector3>) -> Vec<Vector3> {
    let mut found: Vec<Vector3> = Vec::new();
    for normal in normals {
        let known = |other: &Vector3| other.dot(normal).abs() > 1.0 - SAME_DIRECTION;
        if !found.iter().any(known) {
            found.push(*normal);
        }
    }
    found
}

/// A closed solid of six facets in three directions at right angles is a block.
fn are_parallel_blocks(a: &Solid, b: &Solid, directions: &[Vector3]) -> bool {
    let square = |p: &Vector3, q: &Vector3| p.dot(q).abs() < SAME_DIRECTION;
    a.facets.len() == 6
        && b.facets.len() == 6
        && matches!(directions, [x, y, z] if square(x, y) && square(y, z) && square(z, x))
}

/// Points on the outline of the intersection of two solids, if it is larger than the deviation of their facets from the
/// curves that they approximate.
///
/// A thin film between two facets looks wide in a cut along it, so cuts in two directions must be thick.
fn intersection_points(a: &Solid, b: &Solid) -> Option<Vec<Point3>> {
    let mut points = Vec::new();
    let mut thick: Vec<Vector3> = Vec::new();
    let block = bounds::intersection(a.bounds, b.bounds);
    // Cuts are a little below their facets.
    let may_cut = |bound: &&Bound| bound.is_near(&block, 2.0 * CONTACT_GAP);
    for Bound { facet, normal, .. } in a.facets.iter().chain(&b.facets).filter(may_cut) {
        let plane = plane_below(facet, normal, a, b);
        let both = a.cut(&plane).intersection(&facet.region);
        if both.area() <= SMALLEST_AREA {
            continue;
        }
        let both = both.intersection(&b.cut(&plane));
        let before = points.len();
        for shape in thick_shapes(&both) {
            points.extend(shape.iter().map(|&point| plane.at(point)));
        }
        if points.len() > before {
            thick.push(*normal);
        }
    }
    let first = thick.first()?;
    let crossed = thick.iter().any(|other| other.dot(first).abs() < OTHER_DIRECTION);
    crossed.then_some(points)
}

/// The plane parallel to a facet, [`CONTACT_GAP`] or a little more below it, so that it meets no corner.
fn plane_below(facet: &Facet, normal: &Vector3, a: &Solid, b: &Solid) -> Plane {
    let surface = facet.plane.origin.coords.dot(normal);
    let is_free = |depth: &f64| {
        let at = surface - depth;
        let mut met = a
            .facets
            .iter()
            .chain(&b.facets)
            .filter(|bound| bound.is_met_by(normal, at, NEAR_CORNER));
        met.all(|bound| {
            let mut corners = bound.corners();
            corners.all(|corner| (corner.coords.dot(normal) - at).abs() > NEAR_CORNER)
        })
    };
    let depths = [1.0, 1.03, 1.07, 1.13].map(|times| times * CONTACT_GAP);
    let depth = depths.into_iter().find(is_free).unwrap_or(CONTACT_GAP);
    Plane {
        origin: facet.plane.origin - normal * depth,
        ..facet.plane.clone()
    }
}

/// The outlines of the shapes of a region that are thicker than [`CONTACT_GAP`]. The thickness is twice the area over
/// the length of the outline; for a long strip that is its width.
fn thick_shapes(region: &Region) -> Vec<&[Point2]> {
    let mut shapes: Vec<(&[Point2], f64, f64)> = Vec::new();
    for line in region.contours() {
        let (area, length) = measure(line);
        match shapes.last_mut() {
            // A hole runs clockwise and follows its outline.
            Some(shape) if area < 0.0 => {
                shape.1 += area;
                shape.2 += length;
            }
            _ => shapes.push((line, area, length)),
        }
    }
    shapes
        .into_iter()
        .filter(|(_, area, length)| *area > SMALLEST_AREA && 2.0 * area > CONTACT_GAP * length)
        .map(|(line, ..)| line)
        .collect()
}

/// The area, positive counter-clockwise, and the length of a closed line.
fn measure(line: &[Point2]) -> (f64, f64) {
    let Some(&origin) = line.first() else {
        return (0.0, 0.0);
    };
    let from_origin = |p: Point2| [p[0] - origin[0], p[1] - origin[1]];
    let ends = line.iter().zip(line.iter().cycle().skip(1));
    ends.fold((0.0, 0.0), |(area, length), (&p, &q)| {
        let (from, to) = (from_origin(p), from_origin(q));
        (
            area + (from[0] * to[1] - from[1] * to[0]) / 2.0,
            length + distance(p, q),
        )
    })
}
