//! Turned parts: surfaces of revolution, upright or splayed.

use std::f64::consts::{PI, TAU};

use crate::face::{Face, Facet, Side};
use crate::part::{Part, PartId};
use crate::profile::{equal_area_arc, equal_area_circle};
use crate::region::Point2;
use crate::{Point3, Vector3};

use super::chord::CHORD;

/// The number of facets of a turned part around its axis.
const AROUND: usize = 32;

/// The line that a lathe turns: from the head of the part down, as radius and height above its foot, meters.
///
/// Its area is the sum over its members (Pappus: length times the path of its centroid).
///
/// # Example
/// ```
/// use std::f64::consts::PI;
/// use geometry::{PartId, PartKind, Point3, Turning};
/// let leg = Turning::from(0.03, 0.4).line_to(0.03, 0.3).line_to(0.015, 0.0);
/// let leg = leg.part(PartId::nth(PartKind::Leg, 1), Point3::origin());
/// let around = 2.0 * PI * 0.03 * 0.1 + PI * 0.045 * (0.3f64 * 0.3 + 0.015 * 0.015).sqrt();
/// assert!((leg.faces[0].area() - around).abs() < 1e-12);
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Turning {
    points: Vec<Point2>,
    area: f64,
}

impl Turning {
    /// Begins with a radius at a height, meters.
    pub fn from(radius: f64, height: f64) -> Self {
        Turning {
            points: vec![[radius, height]],
            area: 0.0,
        }
    }

    /// A straight line to a radius at a height: a cylinder, a cone or, level, a ring.
    pub fn line_to(mut self, radius: f64, height: f64) -> Self {
        let [r, z] = self.last();
        let slant = libm::hypot(radius - r, height - z);
        self.area += PI * (r + radius) * slant;
        self.points.push([radius, height]);
        self
    }

    /// An arc about a center from one angle to another, in radians from the outward direction, positive up.
    pub fn arc(mut self, centre: Point2, radius: f64, from: f64, to: f64) -> Self {
        let swept = (to - from).abs();
        let ((sin_from, _), (sin_to, _)) = (libm::sincos(from), libm::sincos(to));
        let sine = (sin_to - sin_from) * (to - from).signum();
        self.area += TAU * radius * (centre[0] * swept + radius * sine);
        let points = equal_area_arc(centre, radius, from, to, CHORD);
        self.points.extend(points.into_iter().skip(1));
        self
    }

    fn last(&self) -> Point2 {
        self.points.last().copied().unwrap_or([0.0, 0.0])
    }

    /// The lateral area without the ends, square meters.
    #[cfg(test)]
    fn area(&self) -> f64 {
        self.area
    }

    /// The turned part about an upright axis that stands on `foot`.
    pub fn part(&self, id: PartId, foot: Point3) -> Part {
        // Rotated by half a step, so that no corner sticks out of the square around the circle.
        let (sin, cos) = libm::sincos(PI / AROUND as f64);
        let circle = equal_area_circle(1.0, AROUND).into_iter();
        let circle: Vec<Point2> = circle
            .map(|[x, y]| [cos * x - sin * y, sin * x + cos * y])
            .collect();
        let ring = |[radius, height]: Point2| -> Vec<Point3> {
            circle
                .iter()
                .map(|[x, y]| foot + Vector3::new(radius * x, radius * y, height))
                .collect()
        };
        let rings: Vec<Vec<Point3>> = self.points.iter().map(|&point| ring(point)).collect();
        let pairs = rings.iter().zip(rings.iter().skip(1));
        let around = pairs.flat_map(|(upper, lower)| bands(lower, upper));
        let around = Face::curved(Side::Around, around.collect(), self.area);
        let ends = [
            rings
                .first()
                .and_then(|ring| horizontal(ring, true))
                .map(|f| (Side::Top, f)),
            rings
                .last()
                .and_then(|ring| horizontal(ring, false))
                .map(|f| (Side::Bottom, f)),
        ];
        let ends = ends
            .into_iter()
            .flatten()
            .map(|(side, facet)| Face::flat(side, facet, true));
        Part::of(id, std::iter::once(around).chain(ends))
    }
}

/// The facets between two rings with equally many corners, counter-clockwise from above.
fn bands<'a>(lower: &'a [Point3], upper: &'a [Point3]) -> impl Iterator<Item = Facet> + 'a {
    edges(lower)
        .zip(edges(upper))
        .filter_map(|((a, b), (c, d))| Facet::around(&[*a, *b, *d, *c]))
}

/// Each corner of a ring with the next one.
fn edges(ring: &[Point3]) -> impl Iterator<Item = (&Point3, &Point3)> {
    ring.iter().zip(ring.iter().cycle().skip(1))
}

/// The horizontal facet inside a ring that runs counter-clockwise from above.
pub(crate) fn horizontal(ring: &[Point3], looks_up: bool) -> Option<Facet> {
    let mut points = ring.to_vec();
    if !looks_up {
        points.reverse();
    }
    Facet::around(&points)
}

/// A cone about a slanted axis, cut horizontally above and below: a splayed round leg.
///
/// `head` and `foot` are where the axis meets the two planes; the radius at right angles to the axis changes linearly
/// between them. Area and ends are integrals around the axis: the mean of evenly spaced values of a smooth periodic
/// function is accurate to the last digits.
pub(crate) fn splayed_cone(id: PartId, head: (Point3, f64), foot: (Point3, f64)) -> Part {
    let cone = SplayedCone::new(head, foot);
    let fine: Vec<[f64; 2]> = (0..8 * AROUND)
        .map(|i| cone.reach(TAU * i as f64 / (8 * AROUND) as f64))
        .collect();
    let lateral = fine
        .iter()
        .map(|&[above, below]| cone.strip(above, below))
        .sum::<f64>()
        * TAU
        / fine.len() as f64;
    let ring = |n: usize, is_upper: bool| -> Vec<Point3> {
        (0..n)
            .map(|i| {
                let angle = TAU * (i as f64 + 0.5) / n as f64;
                let [above, below] = cone.reach(angle);
                cone.at(angle, if is_upper { above } else { below })
            })
            .collect()
    };
    // The error of a polygon is proportional to the square of the step, so the difference of the two gives the error
    // (Richardson extrapolation).
    let exact = |is_upper: bool| {
        let [coarse, fine] = [4 * AROUND, 8 * AROUND].map(|n| plan_area(&ring(n, is_upper)));
        fine + (fine - coarse) / 3.0
    };
    let fitted = |is_upper: bool| {
        let ring = ring(AROUND, is_upper);
        let grow = (exact(is_upper) / plan_area(&ring)).sqrt();
        let middle = ring.iter().fold(Vector3::zeros(), |sum, p| sum + p.coords) / ring.len() as f64;
        ring.into_iter()
            .map(|p| Point3::from(middle + (p.coords - middle) * grow))
            .collect::<Vec<_>>()
    };
    let (upper, lower) = (fitted(true), fitted(false));
    let around = Face::curved(Side::Around, bands(&lower, &upper).collect(), lateral);
    let ends = [
        horizontal(&upper, true).map(|facet| Face::flat(Side::Top, facet, true)),
        horizontal(&lower, false).map(|facet| Face::flat(Side::Bottom, facet, true)),
    ];
    Part::of(id, std::iter::once(around).chain(ends.into_iter().flatten()))
}

/// The area of a horizontal ring.
fn plan_area(ring: &[Point3]) -> f64 {
    edges(ring).map(|(p, q)| p.x * q.y - q.x * p.y).sum::<f64>() / 2.0
}

struct SplayedCone {
    head: Point3,
    /// From head to foot.
    axis: Vector3,
    across: [Vector3; 2],
    radii: [f64; 2],
}

impl SplayedCone {
    fn new((head, head_radius): (Point3, f64), (foot, foot_radius): (Point3, f64)) -> Self {
        let axis = foot - head;
        let first = axis.cross(&Vector3::y()).normalize();
        // So that angles run counter-clockwise as seen from above.
        let second = first.cross(&axis).normalize();
        SplayedCone {
            head,
            axis,
            across: [first, second],
            radii: [head_radius, foot_radius],
        }
    }

    fn direction(&self, angle: f64) -> Vector3 {
        let (sin, cos) = libm::sincos(angle);
        self.across[0] * cos + self.across[1] * sin
    }

    fn radius(&self, t: f64) -> f64 {
        self.radii[0] + (self.radii[1] - self.radii[0]) * t
    }

    /// The point of the line at this angle, `t` of the way from head to foot along the axis.
    fn at(&self, angle: f64, t: f64) -> Point3 {
        self.head + self.axis * t + self.direction(angle) * self.radius(t)
    }

    /// Where the line at this angle meets the upper and the lower plane.
    fn reach(&self, angle: f64) -> [f64; 2] {
        let rise = self.direction(angle).z;
        let slope = self.axis.z + rise * (self.radii[1] - self.radii[0]);
        [0.0, self.axis.z].map(|height| (height - rise * self.radii[0]) / slope)
    }

    /// The area per radian about the axis between two parameters along it.
    fn strip(&self, from: f64, to: f64) -> f64 {
        let narrowing = self.radii[1] - self.radii[0];
        let slant = libm::hypot(self.axis.norm(), narrowing);
        let upto = |t: f64| self.radii[0] * t + narrowing * t * t / 2.0;
        slant * (upto(to) - upto(from))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::part_kind::PartKind;
    use std::f64::consts::FRAC_PI_2;

    fn area(part: &Part, side: Side) -> f64 {
        part.faces
            .iter()
            .filter(|face| face.side == side)
            .map(Face::area)
            .sum()
    }

    #[test]
    fn cones_rings_and_balls_have_their_textbook_areas() {
        let cone = Turning::from(0.04, 0.3).line_to(0.02, 0.0).area();
        assert!((cone - PI * 0.06 * libm::hypot(0.3, 0.02)).abs() < 1e-15);
        let ring = Turning::from(0.04, 0.3).line_to(0.02, 0.3).area();
        assert!((ring - PI * (0.04 * 0.04 - 0.02 * 0.02)).abs() < 1e-15);
        let ball = Turning::from(0.0, 0.1)
            .arc([0.0, 0.0], 0.1, FRAC_PI_2, -FRAC_PI_2)
            .area();
        assert!((ball - 4.0 * PI * 0.01).abs() < 1e-15);
        let torus_half = Turning::from(0.05, 0.02)
            .arc([0.05, 0.0], 0.02, FRAC_PI_2, -FRAC_PI_2)
            .area();
        assert!((torus_half - TAU * 0.02 * (0.05 * PI + 0.04)).abs() < 1e-15);
    }

    #[test]
    fn an_upright_splayed_cone_is_a_frustum() {
        let id = PartId::nth(PartKind::Leg, 1);
        let head = (Point3::new(0.0, 0.0, 0.4), 0.03);
        let leg = splayed_cone(id, head, (Point3::origin(), 0.01));
        assert!((area(&leg, Side::Around) - PI * 0.04 * libm::hypot(0.4, 0.02)).abs() < 1e-12);
        assert!((area(&leg, Side::Top) - PI * 0.0009).abs() < 1e-10);
    }

    #[test]
    fn a_slanted_cylinder_keeps_its_side_and_its_ends_grow() {
        let id = PartId::nth(PartKind::Leg, 1);
        let head = (Point3::new(0.0, 0.0, 0.4), 0.02);
        let leg = splayed_cone(id, head, (Point3::new(0.1, -0.05, 0.0), 0.02));
        let length = (0.4f64 * 0.4 + 0.1 * 0.1 + 0.05 * 0.05).sqrt();
        assert!((area(&leg, Side::Around) - TAU * 0.02 * length).abs() < 1e-12);
        // An ellipse: the circle over the cosine of the slant.
        assert!((area(&leg, Side::Bottom) - PI * 0.0004 * length / 0.4).abs() < 1e-10);
    }
}
