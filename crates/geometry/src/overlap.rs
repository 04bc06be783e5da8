//! Overlaps: parts that run into each other, which no two boards can.
//!
//! Two solids are apart if along one direction they have nothing in common. For two blocks that stand alike, the
//! directions of their faces settle it, and the answer is exact. Other pairs that these do not part are cut open
//! along each of their facets, just below it, and compared as flat regions: whatever they have in common begins
//! below some facet of either, so no cut is missed.

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
use solid::{Bound, NEAR_CORNER, Solid, common, distance, reach};

/// How nearly two directions must agree to be one, as the difference of their cosine from 1.
const SAME_DIRECTION: f64 = 1e-9;

/// The largest cosine between two cuts that count as cuts in different directions: 20 degrees.
const OTHER_DIRECTION: f64 = 0.94;

/// The most overlaps that are told: a maker mends a few at a time, and parts that were repeated on the spot all run
/// into each other.
const MOST: usize = 100;

/// Two parts that run into each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Overlap {
    /// The part that comes first in the assembly.
    pub a: PartId,
    /// The other part.
    pub b: PartId,
    /// How deep they run into each other: the smallest extent of what they have in common, along the directions in
    /// which their faces look.
    pub depth: Length,
}

impl Assembly {
    /// The parts that run into each other by more than [`CONTACT_GAP`], in the order of the parts.
    ///
    /// Facets that stand in for curves stray from them by a tenth of a millimetre or so, which is never reported. A
    /// single face has no inside, and neither has a bar that is known by its girth only: nothing runs into them. Of
    /// very many overlaps the first hundred are told.
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
        let found = near(&bounds).into_iter().filter_map(|(a, b)| {
            Some(Overlap {
                a: self.parts[a].id,
                b: self.parts[b].id,
                depth: Length::metres(depth(solid(a), solid(b))?),
            })
        });
        found.take(MOST).collect()
    }
}

/// The pairs of which the blocks around them run into each other, by their places, the lower first, in order.
///
/// The blocks are sorted along one axis, so that each meets only those that begin before it ends.
fn near(bounds: &[Bounds]) -> Vec<(usize, usize)> {
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
                common([low[axis], high[axis]], [other_low[axis], other_high[axis]]) > CONTACT_GAP
            })
        };
        let met = open.iter().filter(|&&other| meets(other));
        pairs.extend(met.map(|&other| (next.min(other), next.max(other))));
        open.push(next);
    }
    sorting::sort_by(&mut pairs, |&pair| pair);
    pairs
}

/// The axis along which the fewest blocks lie beside each other: upwards for a chest, sideways for a dresser.
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

/// How deep two solids run into each other, if they do by more than [`CONTACT_GAP`].
fn depth(a: &Solid, b: &Solid) -> Option<f64> {
    let directions = directions(a.facets.iter().chain(&b.facets).map(|bound| &bound.normal));
    let mut least = f64::INFINITY;
    for direction in &directions {
        least = least.min(common(a.reach(direction), b.reach(direction)));
        if least <= CONTACT_GAP {
            return None;
        }
    }
    if are_blocks_that_stand_alike(a, b, &directions) {
        return Some(least);
    }
    let points = common_points(a, b)?;
    let extents = directions.iter().map(|direction| {
        let [low, high] = reach(&points, direction);
        high - low
    });
    // Cuts begin a little below the facets, so they tell the extent a little too small, but never below the gap.
    Some(extents.fold(least, f64::min).max(CONTACT_GAP))
}

/// The directions in which facets look, each only once and opposite ones as one.
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
fn are_blocks_that_stand_alike(a: &Solid, b: &Solid, directions: &[Vector3]) -> bool {
    let square = |p: &Vector3, q: &Vector3| p.dot(q).abs() < SAME_DIRECTION;
    a.facets.len() == 6
        && b.facets.len() == 6
        && matches!(directions, [x, y, z] if square(x, y) && square(y, z) && square(z, x))
}

/// Points on the outline of what two solids have in common, if that is more than their facets stray from the
/// curves that they stand in for.
///
/// A thin film between two facets looks wide in a cut that runs along it, so thick cuts in two directions are asked
/// for.
fn common_points(a: &Solid, b: &Solid) -> Option<Vec<Point3>> {
    let mut points = Vec::new();
    let mut thick: Vec<Vector3> = Vec::new();
    let block = bounds::intersection(a.bounds, b.bounds);
    // Cuts lie a little below their facets.
    let may_cut = |bound: &&Bound| bound.is_near(&block, 2.0 * CONTACT_GAP);
    for Bound { facet, normal, .. } in a.facets.iter().chain(&b.facets).filter(may_cut) {
        let plane = below(facet, normal, a, b);
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

/// The plane along a facet, [`CONTACT_GAP`] or a little more within the solid, so that it meets no corner.
fn below(facet: &Facet, normal: &Vector3, a: &Solid, b: &Solid) -> Plane {
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

/// The outlines of those shapes of a region that are thicker than [`CONTACT_GAP`], measured as twice the area over
/// the length of the outline: that of a long strip is its width.
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
