//! Flat regions: polygons with holes in a plane, and their booleans.

#![allow(
    clippy::indexing_slicing,
    reason = "hot loops over the corners of its own outlines"
)]

mod clip;
mod general;
mod rectangle;
#[cfg(test)]
mod tests;

use crate::boolean::Rule;
pub(crate) use clip::clip_by;
use clip::{clip_convex, clip_line, is_convex, merge_near_corners, signed_area};
use general::boolean;
use rectangle::{as_rectangle, corners_between, rectangle_difference, rectangle_intersection};

/// A point in the plane of a face, meters.
pub type Point2 = [f64; 2];

/// A closed line of corners; the last is joined to the first.
type Contour = Vec<Point2>;

/// How far apart two corners may be and still be one: a nanometer, far above rounding noise and far below any tape.
const SAME_POINT: f64 = 1e-9;

/// A flat region: any number of separate shapes, each with any number of holes.
///
/// Nearly all faces of furniture are axis-aligned rectangles, and most others are convex. Two rectangles intersect in a
/// rectangle; two convex regions intersect in a convex region, found by clipping. Everything else goes through the
/// general polygon [`boolean`](crate::boolean).
#[derive(Clone, Debug, PartialEq)]
pub struct Region(Kind);

#[derive(Clone, Debug, PartialEq)]
enum Kind {
    /// The corners of an upright rectangle, from the lower left counter-clockwise.
    Rectangle([Point2; 4]),
    /// Corners counter-clockwise; fewer than three are the empty region.
    Convex(Contour),
    /// Outer contours (counter-clockwise), each followed by its holes (clockwise).
    General(Vec<Contour>),
}

impl Region {
    /// The empty region.
    pub const EMPTY: Self = Region(Kind::Convex(Vec::new()));

    /// The rectangle from the origin to `(width, height)`.
    pub fn rectangle(width: f64, height: f64) -> Self {
        Region::between([0.0, 0.0], [width, height])
    }

    /// The upright rectangle between its lower left and its upper right corner.
    pub(crate) fn between(low: Point2, high: Point2) -> Self {
        Region(Kind::Rectangle(corners_between(low, high)))
    }

    /// The region inside a simple closed line of corners, in either direction.
    ///
    /// # Example
    /// ```
    /// use geometry::Region;
    /// let gable = Region::polygon(vec![[0.0, 0.0], [0.4, 0.0], [0.4, 0.3], [0.2, 0.5], [0.0, 0.3]]);
    /// assert!((gable.area() - 0.16).abs() < 1e-12);
    /// ```
    pub fn polygon(mut corners: Vec<Point2>) -> Self {
        if signed_area(&corners) < 0.0 {
            corners.reverse();
        }
        if let Some((low, high)) = as_rectangle(&corners) {
            Region::between(low, high)
        } else if is_convex(&corners) {
            Region(Kind::Convex(corners))
        } else {
            Region(Kind::General(vec![corners]))
        }
    }

    /// The region within outer contours (counter-clockwise), each followed by its holes (clockwise).
    pub(crate) fn from_contours(mut contours: Vec<Contour>) -> Self {
        match contours.as_mut_slice() {
            [] => Region::EMPTY,
            [one] => Region::polygon(std::mem::take(one)),
            _ => Region(Kind::General(contours)),
        }
    }

    /// The area in square meters.
    pub fn area(&self) -> f64 {
        match &self.0 {
            Kind::Rectangle([low, _, high, _]) => (high[0] - low[0]) * (high[1] - low[1]),
            Kind::Convex(corners) => signed_area(corners),
            Kind::General(contours) => contours.iter().map(|contour| signed_area(contour)).sum(),
        }
    }

    /// All contours, outer ones and holes.
    pub fn contours(&self) -> impl Iterator<Item = &[Point2]> {
        let (one, many) = match &self.0 {
            Kind::Rectangle(corners) => (Some(corners.as_slice()), [].as_slice()),
            Kind::Convex(corners) => (Some(corners.as_slice()), [].as_slice()),
            Kind::General(contours) => (None, contours.as_slice()),
        };
        one.filter(|c| c.len() > 2)
            .into_iter()
            .chain(many.iter().map(Vec::as_slice))
    }

    /// The bounding box of the region: its lower left and its upper right corner.
    pub fn bounds(&self) -> (Point2, Point2) {
        if let Kind::Rectangle([low, _, high, _]) = self.0 {
            return (low, high);
        }
        let mut low = [f64::INFINITY; 2];
        let mut high = [f64::NEG_INFINITY; 2];
        for point in self.contours().flatten() {
            for axis in 0..2 {
                low[axis] = low[axis].min(point[axis]);
                high[axis] = high[axis].max(point[axis]);
            }
        }
        (low, high)
    }

    /// The intersection of two regions.
    pub fn intersection(&self, other: &Region) -> Region {
        match (&self.0, &other.0) {
            (Kind::Rectangle(a), Kind::Rectangle(b)) => rectangle_intersection(a, b),
            _ => match (self.convex_corners(), other.convex_corners()) {
                (Some(a), Some(b)) => Region(Kind::Convex(clip_convex(a, b))),
                _ => boolean(&[self], &[other], Rule::Intersection),
            },
        }
    }

    /// The area of the intersection.
    pub(crate) fn intersection_area(&self, other: &Region) -> f64 {
        if let (Kind::Rectangle(a), Kind::Rectangle(b)) = (&self.0, &other.0) {
            return rectangle_intersection(a, b).area();
        }
        let (region, clip) = match (self.convex_corners(), other.convex_corners()) {
            (_, Some(clip)) => (self, clip),
            (Some(clip), None) => (other, clip),
            (None, None) => return boolean(&[self], &[other], Rule::Intersection).area(),
        };
        // Clipping a region that is not convex may leave lines that double back along the clip; they enclose nothing.
        let clipped = region.contours().map(|line| signed_area(&clip_line(line, clip)));
        clipped.sum()
    }

    /// The difference: this region less another.
    pub fn difference(&self, other: &Region) -> Region {
        match (&self.0, &other.0) {
            (Kind::Rectangle(a), Kind::Rectangle(b)) => rectangle_difference(a, b),
            _ => boolean(&[self], &[other], Rule::Difference),
        }
    }

    /// Whether the region is known to be convex.
    pub(crate) fn is_convex(&self) -> bool {
        self.convex_corners().is_some()
    }

    fn convex_corners(&self) -> Option<&[Point2]> {
        match &self.0 {
            Kind::Rectangle(corners) => Some(corners),
            Kind::Convex(corners) => Some(corners),
            Kind::General(_) => None,
        }
    }

    /// This region less all of the others.
    pub(crate) fn difference_of_all<'a>(&self, others: impl Iterator<Item = &'a Region>) -> Region {
        let others: Vec<&Region> = others.collect();
        if others.iter().all(|other| other.contours().next().is_none()) {
            return self.clone();
        }
        boolean(&[self], &others, Rule::Difference)
    }

    /// The union of the regions.
    pub(crate) fn union_of_all<'a>(regions: impl Iterator<Item = &'a Region>) -> Region {
        boolean(&regions.collect::<Vec<_>>(), &[], Rule::Union)
    }

    /// The part of this region in which every `a x + b y <= c` holds; the lines bound a convex area.
    pub(crate) fn clipped_to(&self, lines: impl Iterator<Item = [f64; 3]>) -> Region {
        let (low, high) = self.bounds();
        let corners = corners_between(low, high);
        let mut crossing = Vec::new();
        for line in lines {
            let inside = corners.map(|p| distance_inside(line, p));
            if inside.iter().all(|room| *room <= 0.0) {
                return Region::EMPTY;
            }
            if inside.iter().any(|room| *room < 0.0) {
                crossing.push(line);
            }
        }
        if crossing.is_empty() {
            return self.clone();
        }
        if matches!(self.0, Kind::Rectangle(_)) && crossing.iter().all(|&line| is_upright(line)) {
            let (mut low, mut high) = (low, high);
            for [a, b, c] in crossing {
                let (axis, slope) = if a == 0.0 { (1, b) } else { (0, a) };
                if slope > 0.0 {
                    high[axis] = high[axis].min(c / slope);
                } else {
                    low[axis] = low[axis].max(c / slope);
                }
            }
            return if low[0] < high[0] && low[1] < high[1] {
                Region::between(low, high)
            } else {
                Region::EMPTY
            };
        }
        let mut kept = corners.to_vec();
        let mut next = Vec::new();
        for line in crossing {
            clip_by(&kept, |p| distance_inside(line, p), &mut next);
            std::mem::swap(&mut kept, &mut next);
        }
        merge_near_corners(&mut kept);
        self.intersection(&Region::polygon(kept))
    }

    /// Whether it is an axis-aligned rectangle.
    pub(crate) fn is_upright_rectangle(&self) -> bool {
        matches!(self.0, Kind::Rectangle(_))
    }

    /// The same region with every corner moved by `map`, which must keep lengths and may mirror.
    pub(crate) fn mapped(&self, map: impl Fn(Point2) -> Point2) -> Region {
        let mut contours: Vec<Contour> = match &self.0 {
            Kind::Rectangle(corners) => {
                let moved = corners.map(map);
                return match as_rectangle(&moved) {
                    Some((low, high)) => Region::between(low, high),
                    None => Region::polygon(moved.to_vec()),
                };
            }
            Kind::Convex(corners) => return Region::polygon(corners.iter().map(|&p| map(p)).collect()),
            Kind::General(contours) => {
                let moved = contours.iter().map(|line| line.iter().map(|&p| map(p)).collect());
                moved.collect()
            }
        };
        if contours.first().is_some_and(|outer| signed_area(outer) < 0.0) {
            contours.iter_mut().for_each(|line| line.reverse());
        }
        Region(Kind::General(contours))
    }
}

/// Whether the line `a x + b y = c` runs along one of the two axes.
fn is_upright([a, b, _]: [f64; 3]) -> bool {
    (a == 0.0) != (b == 0.0)
}

/// How far a point is inside `a x + b y <= c`.
fn distance_inside([a, b, c]: [f64; 3], point: Point2) -> f64 {
    c - a * point[0] - b * point[1]
}
