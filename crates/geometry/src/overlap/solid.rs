//! Solids as the facets that close them, and their plane sections.

use crate::bounds::Bounds;
use crate::face::{Face, Facet, Plane};
use crate::part::Part;
use crate::region::{Point2, Region};
use crate::sorting;
use crate::{Point3, Vector3};

/// How far apart the ends of two cuts through adjacent facets may be, meters. Facets that approximate a slanted cone
/// meet to within a few micrometers.
const JOINT: f64 = 5e-5;

/// How near to a corner a cut may not be: rounding noise would decide the result there.
pub(super) const NEAR_CORNER: f64 = 1e-7;

/// A facet of a solid with its bounding box.
pub(super) struct Bound<'a> {
    pub(super) facet: &'a Facet,
    pub(super) normal: Vector3,
    low: [f64; 3],
    high: [f64; 3],
}

impl Bound<'_> {
    /// Whether a plane at this height along its normal comes within `reach` of the bounding box.
    pub(super) fn is_met_by(&self, normal: &Vector3, height: f64, reach: f64) -> bool {
        let (mut middle, mut half) = (0.0, reach);
        for axis in 0..3 {
            middle += normal[axis] * (self.low[axis] + self.high[axis]) / 2.0;
            half += normal[axis].abs() * (self.high[axis] - self.low[axis]) / 2.0;
        }
        (middle - height).abs() <= half
    }

    /// Whether the bounding box comes within `reach` of another box.
    pub(super) fn is_near(&self, (low, high): &Bounds, reach: f64) -> bool {
        let mut axes = 0..3;
        axes.all(|axis| {
            let (own, other) = ([self.low[axis], self.high[axis]], [low[axis], high[axis]]);
            span_overlap(own, other) >= -reach
        })
    }

    pub(super) fn corners(&self) -> impl Iterator<Item = Point3> {
        let corners = self.facet.region.contours().flatten();
        corners.map(|&corner| self.facet.plane.at(corner))
    }
}

/// A part as the facets that close it.
pub(super) struct Solid<'a> {
    pub(super) facets: Vec<Bound<'a>>,
    corners: Vec<Point3>,
    pub(super) bounds: Bounds,
}

impl<'a> Solid<'a> {
    pub(super) fn of(part: &'a Part, bounds: Bounds) -> Self {
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

    /// Its extent along a direction.
    pub(super) fn reach(&self, direction: &Vector3) -> [f64; 2] {
        reach(&self.corners, direction)
    }

    /// Its section by a plane, in the coordinates of the plane.
    pub(super) fn cut(&self, plane: &Plane) -> Region {
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
        // Outer contours run counter-clockwise and holes clockwise, which is all that the boolean needs.
        Region::from_contours(loops)
    }
}

pub(super) fn reach(points: &[Point3], direction: &Vector3) -> [f64; 2] {
    let start = [f64::INFINITY, f64::NEG_INFINITY];
    points.iter().fold(start, |[low, high], point| {
        let at = point.coords.dot(direction);
        [low.min(at), high.max(at)]
    })
}

/// The length of the overlap of two spans; negative where they are apart.
pub(super) fn span_overlap([low, high]: [f64; 2], [other_low, other_high]: [f64; 2]) -> f64 {
    high.min(other_high) - low.max(other_low)
}

/// Adds the lines in which a plane cuts a facet, with the solid on their left.
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
    // The cut enters and leaves the facet alternately.
    sorting::sort_by(&mut crossings, |crossing| crossing.0);
    into.extend(crossings.chunks_exact(2).map(|pair| [pair[0].1, pair[1].1]));
}

/// Chains directed lines into closed ones.
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

/// The line whose start is nearest to a point, if it is within [`JOINT`] and nearer than `other`.
fn nearest(lines: &[[Point2; 2]], point: Point2, other: f64) -> Option<usize> {
    // Squares sort as distances do, and are faster.
    let square = |i: &usize| {
        let [x, y] = lines[*i][0];
        (x - point[0]) * (x - point[0]) + (y - point[1]) * (y - point[1])
    };
    (0..lines.len())
        .min_by(|a, b| square(a).total_cmp(&square(b)))
        .filter(|i| square(i).sqrt() <= JOINT.min(other))
}

pub(super) fn distance(a: Point2, b: Point2) -> f64 {
    libm::hypot(a[0] - b[0], a[1] - b[1])
}
