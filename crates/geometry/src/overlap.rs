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

use std::cell::OnceCell;

use units::Length;

use crate::assembly::Assembly;
use crate::bounds::{self, Bounds};
use crate::face::{Face, Facet, Plane};
use crate::part::{Part, PartId};
use crate::region::{Point2, Region};
use crate::sorting;
use crate::{CONTACT_GAP, Point3, SMALLEST_AREA, Vector3};

/// How nearly two directions must agree to be one, as the difference of their cosine from 1.
const SAME_DIRECTION: f64 = 1e-9;

/// The largest cosine between two cuts that count as cuts in different directions: 20 degrees.
const OTHER_DIRECTION: f64 = 0.94;

/// How far apart the ends of two cuts through neighbouring facets may lie, metres. Facets that stand in for a
/// slanted cone meet to a few micrometres.
const JOINT: f64 = 5e-5;

/// How near to a corner no cut is made: there it would depend on the noise of the arithmetic.
const NEAR_CORNER: f64 = 1e-7;

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

/// A facet of a solid with the block around it.
struct Bound<'a> {
    facet: &'a Facet,
    normal: Vector3,
    low: [f64; 3],
    high: [f64; 3],
}

impl Bound<'_> {
    /// Whether a plane at this height along its normal comes as near as `reach` to the block around the facet.
    fn is_met_by(&self, normal: &Vector3, height: f64, reach: f64) -> bool {
        let (mut middle, mut half) = (0.0, reach);
        for axis in 0..3 {
            middle += normal[axis] * (self.low[axis] + self.high[axis]) / 2.0;
            half += normal[axis].abs() * (self.high[axis] - self.low[axis]) / 2.0;
        }
        (middle - height).abs() <= half
    }

    /// Whether the block around the facet comes as near as `reach` to another.
    fn is_near(&self, (low, high): &Bounds, reach: f64) -> bool {
        let mut axes = 0..3;
        axes.all(|axis| {
            let (own, other) = ([self.low[axis], self.high[axis]], [low[axis], high[axis]]);
            common(own, other) >= -reach
        })
    }

    fn corners(&self) -> impl Iterator<Item = Point3> {
        let corners = self.facet.region.contours().flatten();
        corners.map(|&corner| self.facet.plane.at(corner))
    }
}

/// A part as the facets that close it.
struct Solid<'a> {
    facets: Vec<Bound<'a>>,
    corners: Vec<Point3>,
    bounds: Bounds,
}

impl<'a> Solid<'a> {
    fn of(part: &'a Part, bounds: Bounds) -> Self {
        let facets: Vec<Bound> = part
            .faces
            .iter()
            .flat_map(Face::facets)
            .map(|facet| {
                let (low, high) = facet.bounds();
                let normal = facet.plane.normal();
                Bound {
                    facet,
                    normal,
                    low,
                    high,
                }
            })
            .collect();
        let corners = facets.iter().flat_map(Bound::corners).collect();
        Solid {
            facets,
            corners,
            bounds,
        }
    }

    /// From where to where it reaches in a direction.
    fn reach(&self, direction: &Vector3) -> [f64; 2] {
        reach(&self.corners, direction)
    }

    /// What a plane cuts out of it, in the coordinates of the plane.
    fn cut(&self, plane: &Plane) -> Region {
        let normal = plane.normal();
        let height = plane.origin.coords.dot(&normal);
        let mut cuts = Vec::new();
        let met = self
            .facets
            .iter()
            .filter(|bound| bound.is_met_by(&normal, height, NEAR_CORNER));
        for bound in met {
            cut_facet(bound.facet, &bound.normal, plane, &mut cuts);
        }
        let loops = chained(cuts);
        // Outer lines run counter-clockwise and holes clockwise, which is all that a boolean needs to know.
        Region::within_lines(loops)
    }
}

fn reach(points: &[Point3], direction: &Vector3) -> [f64; 2] {
    let start = [f64::INFINITY, f64::NEG_INFINITY];
    points.iter().fold(start, |[low, high], point| {
        let at = point.coords.dot(direction);
        [low.min(at), high.max(at)]
    })
}

/// The length that two spans have in common; negative where they are apart.
fn common([low, high]: [f64; 2], [other_low, other_high]: [f64; 2]) -> f64 {
    high.min(other_high) - low.max(other_low)
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

/// Adds the lines that a plane cuts out of a facet, so directed that the solid lies at their left.
fn cut_facet(facet: &Facet, normal: &Vector3, plane: &Plane, into: &mut Vec<[Point2; 2]>) {
    let along = plane.normal().cross(normal);
    let mut crossings: Vec<(f64, Point2)> = Vec::new();
    for line in facet.region.contours() {
        let corner = |i: usize| facet.plane.at(line[i % line.len()]);
        for i in 0..line.len() {
            let (p, q) = (corner(i), corner(i + 1));
            let (from, to) = (plane.height_of(&p), plane.height_of(&q));
            if (from < 0.0) != (to < 0.0) {
                let point = p + (q - p) * (from / (from - to));
                crossings.push((point.coords.dot(&along), plane.project(&point)));
            }
        }
    }
    // Along the cut one enters and leaves the facet by turns.
    sorting::sort_by(&mut crossings, |crossing| crossing.0);
    into.extend(crossings.chunks_exact(2).map(|pair| [pair[0].1, pair[1].1]));
}

/// Chains directed lines to closed ones.
fn chained(mut lines: Vec<[Point2; 2]>) -> Vec<Vec<Point2>> {
    let mut loops = Vec::new();
    while let Some([first, mut last]) = lines.pop() {
        let mut chain = vec![first];
        while let Some(next) = nearest(&lines, last, distance(last, first)) {
            let [from, to] = lines.swap_remove(next);
            chain.push(from);
            last = to;
        }
        if chain.len() > 2 {
            loops.push(chain);
        }
    }
    loops
}

/// The line that begins nearest to a point, if one does within [`JOINT`] and nearer than `other`.
fn nearest(lines: &[[Point2; 2]], point: Point2, other: f64) -> Option<usize> {
    // Squares sort as the distances do, and are quick.
    let square = |i: &usize| {
        let [x, y] = lines[*i][0];
        (x - point[0]) * (x - point[0]) + (y - point[1]) * (y - point[1])
    };
    (0..lines.len())
        .min_by(|a, b| square(a).total_cmp(&square(b)))
        .filter(|i| square(i).sqrt() <= JOINT.min(other))
}

fn distance(a: Point2, b: Point2) -> f64 {
    libm::hypot(a[0] - b[0], a[1] - b[1])
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::face::Side;
    use crate::furniture::alteration::{Alteration, Towards};
    use crate::furniture::{Furniture, Kind, fields, styles};
    use crate::part_kind::PartKind;
    use crate::profile::{Profile, Shape};
    use crate::solid::{Cut, Prism, Run, Turning, frustum};
    use nalgebra::{Isometry3, UnitQuaternion};
    use proptest::prelude::*;
    use std::f64::consts::PI;

    fn id(n: usize) -> PartId {
        PartId::nth(PartKind::Board, n)
    }

    fn block(n: usize, low: [f64; 3], high: [f64; 3]) -> Part {
        Part::block(id(n), low, high)
    }

    /// The depths of all overlaps, in millimetres.
    fn depths(parts: Vec<Part>) -> Vec<f64> {
        let found = Assembly::new(parts, vec![]).overlaps();
        found
            .iter()
            .map(|overlap| overlap.depth.as_millimetres())
            .collect()
    }

    #[track_caller]
    fn assert_deep(parts: Vec<Part>, expected: f64, tolerance: f64) {
        let found = depths(parts);
        assert_eq!(found.len(), 1, "{found:?} instead of {expected}");
        assert!(
            (found[0] - expected).abs() <= tolerance,
            "{found:?} instead of {expected}"
        );
    }

    #[track_caller]
    fn assert_apart(parts: Vec<Part>) {
        assert_eq!(depths(parts), [0.0; 0]);
    }

    fn some_turn() -> Isometry3<f64> {
        Isometry3::new(Vector3::new(1.0, -2.0, 0.5), Vector3::new(0.3, 1.1, -0.7))
    }

    fn turned(parts: Vec<Part>) -> Vec<Part> {
        parts.into_iter().map(|part| part.moved(&some_turn())).collect()
    }

    /// A leg as `tests/cad/CONSTRUCTION.md` describes it, its head at 0.2.
    fn leg(n: usize, x: f64) -> Part {
        Turning::from(0.02, 0.2)
            .line_to(0.02, 0.18)
            .line_to(0.012, 0.18)
            .arc([0.012, 0.176], 0.004, PI / 2.0, -PI / 2.0)
            .line_to(0.02, 0.172)
            .line_to(0.01, 0.0)
            .part(id(n), Point3::new(x, 0.0, 0.0))
    }

    /// A board with a round hole through it, as wide as the head of the leg.
    fn bored(n: usize, radius: f64, corners: usize) -> Part {
        let outline = [[-0.1, -0.1], [0.1, -0.1], [0.1, 0.1], [-0.1, 0.1], [-0.1, -0.1]];
        let runs = outline
            .windows(2)
            .zip([Side::Front, Side::Right, Side::Back, Side::Left]);
        let mut hole = crate::profile::equal_area_circle(radius, corners);
        hole.reverse();
        let plane = Plane {
            origin: Point3::origin(),
            u: Vector3::x(),
            v: Vector3::y(),
        };
        let prism = Prism {
            plane,
            outline: runs
                .map(|(pair, side)| Run::straight(side, pair.to_vec()))
                .collect(),
            holes: vec![hole],
            start: Cut::square(0.185),
            end: Cut::square(0.204),
        };
        prism.part(id(n))
    }

    /// A run of a crown along the front or, turned, along a side, mitred at both ends.
    fn crown(n: usize, shape: Shape, length: f64) -> Part {
        let profile = Profile::crown(shape, 0.04, 0.05);
        let line: Vec<Point2> = profile
            .line(crate::solid::CHORD)
            .iter()
            .map(|[x, z]| [-x, *z])
            .collect();
        let plane = Plane {
            origin: Point3::origin(),
            u: -Vector3::y(),
            v: Vector3::z(),
        };
        let prism = Prism {
            plane,
            outline: vec![
                Run::curved(Side::Moulded, line, profile.girth(), -profile.moment()),
                Run::straight(Side::Top, vec![[0.04, 0.05], [0.0, 0.05]]),
                Run::straight(Side::Back, vec![[0.0, 0.05], [0.0, 0.0]]),
            ],
            holes: vec![],
            start: Cut {
                at: -length,
                slope: -1.0,
            },
            end: Cut { at: 0.0, slope: 1.0 },
        };
        prism.part(id(n))
    }

    #[test]
    fn boards_that_touch_are_apart() {
        let shelf = block(1, [0.0, 0.0, 0.3], [0.6, 0.3, 0.319]);
        let side = |x: f64| block(2, [x, 0.0, 0.0], [x + 0.019, 0.3, 0.8]);
        for x in [0.6, 0.6004, 0.6006, 0.6 - 0.0004] {
            assert_apart(vec![shelf.clone(), side(x)]);
            assert_apart(turned(vec![shelf.clone(), side(x)]));
        }
        assert_deep(vec![shelf.clone(), side(0.6 - 0.0006)], 0.6, 1e-9);
        assert_deep(turned(vec![shelf, side(0.588)]), 12.0, 1e-9);
    }

    #[test]
    fn blocks_along_an_edge_or_at_a_corner_are_apart() {
        let one = block(1, [0.0; 3], [0.1; 3]);
        assert_apart(vec![one.clone(), block(2, [0.1, 0.1, 0.0], [0.2, 0.2, 0.1])]);
        assert_apart(turned(vec![one, block(2, [0.1; 3], [0.2; 3])]));
    }

    #[test]
    fn a_part_within_another() {
        let outer = block(1, [0.0; 3], [0.5; 3]);
        let inner = block(2, [0.2; 3], [0.3, 0.22, 0.3]);
        assert_deep(vec![outer.clone(), inner.clone()], 20.0, 1e-9);
        assert_deep(turned(vec![inner, outer.clone()]), 20.0, 1e-9);
        assert_deep(vec![outer.clone(), outer.clone()], 500.0, 1e-9);
        // The foot of the leg is its narrowest, but it is as wide as its head.
        assert_deep(
            vec![outer, leg(2, 0.2).moved(&Isometry3::translation(0.0, 0.2, 0.1))],
            40.0,
            0.5,
        );
    }

    #[test]
    fn a_leg_through_a_board() {
        let board = |z: f64| block(2, [-0.1, -0.1, z], [0.1, 0.1, z + 0.019]);
        assert_apart(vec![leg(1, 0.0), board(0.2)]);
        assert_apart(turned(vec![leg(1, 0.0), board(0.2)]));
        assert_deep(vec![leg(1, 0.0), board(0.198)], 2.0, 1e-6);
        assert_deep(turned(vec![leg(1, 0.0), board(0.198)]), 2.0, 1e-6);
        assert_deep(vec![leg(1, 0.0), board(0.1)], 19.0, 1e-6);
        // A level board beside the neck of the bead is no board within the leg.
        assert_apart(vec![
            leg(1, 0.0),
            block(2, [0.017, -0.1, 0.173], [0.1, 0.1, 0.179]),
        ]);
    }

    #[test]
    fn a_leg_in_its_bore() {
        for corners in [12, 32, 33, 64] {
            let parts = vec![leg(1, 0.0), bored(2, 0.02, corners)];
            // Twelve corners stand out by a third of a millimetre.
            assert_apart(parts.clone());
            assert_apart(turned(parts));
        }
        assert_deep(vec![leg(1, 0.0), bored(2, 0.015, 32)], 15.0, 0.6);
        assert_deep(vec![leg(1, 0.003), bored(2, 0.02, 32)], 15.0, 0.6);
    }

    #[test]
    fn mitred_runs_just_meet() {
        for shape in Shape::ALL
            .into_iter()
            .filter(|s| !matches!(s, Shape::BeadAndCove | Shape::HalfRound))
        {
            let corner = UnitQuaternion::from_axis_angle(&Vector3::z_axis(), -PI / 2.0);
            let beside = |gap: f64| {
                crown(2, shape, 0.4).moved(&Isometry3::from_parts(
                    nalgebra::Translation3::new(gap, 0.4, 0.0),
                    corner,
                ))
            };
            assert_apart(vec![crown(1, shape, 0.3), beside(0.0)]);
            assert_apart(turned(vec![crown(1, shape, 0.3), beside(0.0)]));
            assert_eq!(
                depths(vec![crown(1, shape, 0.3), beside(0.01)]).len(),
                1,
                "{shape:?}"
            );
        }
    }

    #[test]
    fn a_tapered_leg_in_an_apron() {
        let plan = |half: f64| [[-half, -half], [half, half]];
        let leg = frustum(id(1), (plan(0.01), 0.0), (plan(0.02), 0.4));
        let apron = |x: f64| block(2, [x, -0.01, 0.35], [0.5, 0.01, 0.45]);
        assert_apart(vec![leg.clone(), apron(0.02)]);
        // Where the apron ends the leg is 18.75 mm wide; the taper is 1 in 40.
        assert_deep(vec![leg, apron(0.015)], 5.0, 0.2);
    }

    #[test]
    fn boards_that_cross_at_a_slant() {
        let lean = Isometry3::rotation(Vector3::new(0.0, 0.4, 0.0));
        let one = block(1, [-0.01, 0.0, -0.5], [0.01, 0.3, 0.5]);
        let other = block(2, [-0.009, 0.0, -0.5], [0.009, 0.3, 0.5]).moved(&lean);
        assert_eq!(depths(vec![one.clone(), other.clone()]).len(), 1);
        let away = other.moved(&Isometry3::translation(0.25, 0.0, 0.0));
        assert_apart(vec![one, away]);
    }

    #[test]
    fn many_parts_are_named_in_their_order() {
        let boards: Vec<Part> = (0..40)
            .map(|n| {
                block(
                    n + 1,
                    [0.1 * n as f64, 0.0, 0.0],
                    [0.1 * n as f64 + 0.102, 0.3, 0.02],
                )
            })
            .collect();
        let found = Assembly::new(boards, vec![]).overlaps();
        assert_eq!(found.len(), 39);
        assert!(
            found
                .iter()
                .enumerate()
                .all(|(n, o)| (o.a, o.b) == (id(n + 1), id(n + 2)))
        );
        assert!(Assembly::default().overlaps().is_empty());
    }

    #[test]
    fn usual_furniture_does_not_run_into_itself() {
        for &kind in Kind::ALL.iter() {
            let Ok(piece) = Furniture::usual(kind).assembly() else {
                continue;
            };
            assert_eq!(piece.overlaps(), [], "{}", kind.label());
            assert_eq!(piece.moved(&some_turn()).overlaps(), [], "{}", kind.label());
        }
    }

    /// The overlaps of a usual piece of these styles after one of its parts was moved, as the maker reads them.
    fn after_move(kind: Kind, chosen: &[(&str, &str)], part: &str, towards: Towards, by: f64) -> Vec<String> {
        let mut piece = Furniture::usual(kind);
        for (key, option) in chosen {
            assert!(styles::by_key(key).unwrap().choose(&mut piece.styles, option));
        }
        if chosen.contains(&("face-frame", "frame")) {
            // Room for columns on the frame.
            piece.measures.set(&fields::FRAME, Length::millimetres(35.0));
        }
        let (part, by) = (part.to_owned(), Length::millimetres(by));
        piece.changes = vec![Alteration::Move { part, towards, by }];
        let found = piece.assembly().unwrap().overlaps();
        let told = |o: &Overlap| format!("{} {} {:.1}", o.a, o.b, o.depth.as_millimetres());
        found.iter().map(told).collect()
    }

    #[test]
    fn shaped_parts_that_were_moved() {
        let columns = [("face-frame", "frame"), ("corner-columns", "fluted")];
        let pushed = after_move(Kind::Dresser, &columns, "column-1", Towards::Back, 5.0);
        assert_eq!(pushed, ["frame-stile-1 column-1 5.0"]);
        let sticking = [("doors", "flat-panel"), ("sticking", "ogee")];
        let pushed = after_move(Kind::Wardrobe, &sticking, "sticking-left-1-1", Towards::Back, 3.0);
        assert_eq!(pushed, ["door-panel-1-1 sticking-left-1-1 3.0"]);
        // Out of the opening of an arched apron, which is a hole in its face: the gap is an eighth of an inch.
        let arched = [("apron", "arched")];
        let pushed = after_move(
            Kind::Desk,
            &arched,
            "drawer-front-1-1",
            Towards::Left,
            3.175 + 4.0,
        );
        assert_eq!(pushed, ["apron-front drawer-front-1-1 4.0"]);
        let near = after_move(
            Kind::Desk,
            &arched,
            "drawer-front-1-1",
            Towards::Left,
            3.175 + 0.4,
        );
        assert_eq!(near, [""; 0]);
        let turned = [("legs", "turned")];
        let pushed = after_move(Kind::Desk, &turned, "leg-1", Towards::Up, 2.0);
        assert_eq!(pushed, ["leg-head-1 leg-1 2.0"]);
        let crown = [("crown", "cove")];
        let pushed = after_move(Kind::Bookcase, &crown, "crown-2", Towards::Back, 6.0);
        assert!(
            pushed.len() >= 2 && pushed.iter().any(|told| told.contains("crown-1")),
            "{pushed:?}"
        );
    }

    fn any_block(n: usize) -> impl Strategy<Value = ([f64; 3], [f64; 3], Part)> {
        let near = || prop::array::uniform3(0.0f64..0.5);
        let size = prop::array::uniform3(0.01f64..0.4);
        (near(), size).prop_map(move |(low, size)| {
            let high = std::array::from_fn(|i| low[i] + size[i]);
            (low, high, block(n, low, high))
        })
    }

    proptest! {
        /// Blocks have in common what their spans have in common, however they are turned.
        #[test]
        fn blocks_agree_with_their_spans(
            (a_low, a_high, a) in any_block(1), (b_low, b_high, b) in any_block(2),
            axis in prop::array::uniform3(-3.0f64..3.0),
        ) {
            let spans = (0..3).map(|i| a_high[i].min(b_high[i]) - a_low[i].max(b_low[i]));
            let depth = spans.fold(f64::INFINITY, f64::min);
            prop_assume!((depth - CONTACT_GAP).abs() > 1e-9);
            let by = Isometry3::rotation(Vector3::from(axis));
            let found = Assembly::new(vec![a, b], vec![]).moved(&by).overlaps();
            prop_assert_eq!(found.len(), usize::from(depth > CONTACT_GAP));
            if let [found] = found[..] {
                prop_assert!((found.depth.as_metres() - depth).abs() < 1e-9);
            }
        }

        /// The cuts are a second witness of the directions, where what is in common is thick enough for both.
        #[test]
        fn cuts_agree_with_spans(
            (a_low, a_high, a) in any_block(1), (b_low, b_high, b) in any_block(2),
            axis in prop::array::uniform3(-3.0f64..3.0),
        ) {
            let spans = (0..3).map(|i| a_high[i].min(b_high[i]) - a_low[i].max(b_low[i]));
            let depth = spans.fold(f64::INFINITY, f64::min);
            prop_assume!(!(0.0..0.002).contains(&depth));
            let by = Isometry3::rotation(Vector3::from(axis));
            let (a, b) = (a.moved(&by), b.moved(&by));
            let (a, b) = (Solid::of(&a, a.bounds()), Solid::of(&b, b.bounds()));
            let points = common_points(&a, &b);
            prop_assert_eq!(points.is_some(), depth > 0.0);
        }
    }
}
