//! The sheet: front-facing facets, projected onto an integer grid.
//!
//! Two facets that share an edge in space share it exactly on the grid, so that they join without a gap.

use super::view::Axes;
use crate::Vector3;
use crate::corner::Corner;
use crate::face::{Facet, Plane};
use crate::region::Point2;
use crate::sorting;
use crate::surface::Surface;

/// A line `a x + b y = c` of the grid; `(a, b)` is its unit normal and points outward.
pub(super) type Line = [f64; 3];

/// The drawing spans at most this many binary digits of the grid: the boolean takes 30.
const DIGITS: i32 = 29;

/// The offset of the grid, in steps. Sizes are often multiples of a round number. Halfway between two grid lines,
/// rounding noise would decide which way a corner goes; the offset keeps corners away from there.
const OFF_THE_LINES: f64 = 0.381_966;

/// Anything narrower than this many steps is noise: rounding moves a corner by half a step, and a crossing at a flat
/// angle by one or two.
pub(super) const NOISE: f64 = 4.0;

/// Facets whose normal has a smaller component toward the eye are edge on.
const EDGE_ON: f64 = 1e-6;

/// The grid of a drawing. Its step is a few nanometers, far below any tape.
pub(super) struct Grid {
    low: Point2,
    /// The step in meters, a power of two so that integers convert without loss.
    pub(super) step: f64,
}

impl Grid {
    /// The grid over a bounding box; `None` if the box is empty.
    fn over((low, high): (Point2, Point2)) -> Option<Grid> {
        let span = (high[0] - low[0]).max(high[1] - low[1]);
        let is_sound = span > 0.0 && span.is_finite() && low.iter().all(|x| x.is_finite());
        let (_, digits) = libm::frexp(span);
        let step = libm::ldexp(1.0, digits - DIGITS);
        is_sound.then(|| Grid {
            low: low.map(|x| x - OFF_THE_LINES * step),
            step,
        })
    }

    fn corner(&self, point: Point2) -> Corner {
        let whole = |axis: usize| ((point[axis] - self.low[axis]) / self.step).round() as i32;
        Corner::new(whole(0), whole(1))
    }

    /// The point of the drawing at a corner, meters.
    pub(super) fn point(&self, corner: Corner) -> Point2 {
        [
            self.low[0] + f64::from(corner.x) * self.step,
            self.low[1] + f64::from(corner.y) * self.step,
        ]
    }
}

/// The projection of a plane onto the drawing.
pub(super) struct Projection {
    at: Point2,
    u: Point2,
    v: Point2,
}

impl Projection {
    pub(super) fn of(plane: &Plane, axes: &Axes) -> Self {
        let projected = |v: &Vector3| [v.dot(&axes.right), v.dot(&axes.up)];
        Projection {
            at: projected(&plane.origin.coords),
            u: projected(&plane.u),
            v: projected(&plane.v),
        }
    }

    pub(super) fn point(&self, [x, y]: Point2) -> Point2 {
        let Projection { at, u, v } = self;
        [at[0] + x * u[0] + y * v[0], at[1] + x * u[1] + y * v[1]]
    }
}

/// A front-facing facet on the grid.
pub(super) struct ProjectedFacet {
    /// The index of its surface.
    pub(super) surface: usize,
    /// Its index in that surface.
    pub(super) facet: usize,
    /// Its contours: outer ones counter-clockwise, holes clockwise.
    pub(super) contours: Vec<Vec<Corner>>,
    /// The corners of its convex hull, if it is not convex itself.
    hull: Option<Vec<Corner>>,
    /// The sides of its convex hull.
    pub(super) sides: Vec<Line>,
    pub(super) low: [i32; 2],
    pub(super) high: [i32; 2],
    /// Its nearness to the eye at `(x, y)` of the grid is `a x + b y + c`, meters.
    pub(super) nearness: [f64; 3],
    /// Its normal.
    pub(super) normal: Vector3,
    /// The component of its normal toward the eye.
    pub(super) squareness: f64,
    /// Whether it is too narrow on the grid to be visible.
    pub(super) is_thin: bool,
}

impl ProjectedFacet {
    fn new(place: (usize, usize), facet: &Facet, axes: &Axes, grid: &Grid) -> Option<ProjectedFacet> {
        let projection = Projection::of(&facet.plane, axes);
        let contours: Vec<Vec<Corner>> = facet
            .region
            .contours()
            .map(|contour| settled(contour.iter().map(|&point| grid.corner(projection.point(point)))))
            .filter(|contour| contour.len() > 2)
            .collect();
        let is_convex = facet.region.is_convex() && contours.len() == 1;
        let hull = (!is_convex).then(|| hull(contours.iter().flatten().copied().collect()));
        let around = hull.as_ref().or(contours.first())?;
        let (low, high) = bounds(around)?;
        let sides = sides(around);
        let is_thin = sides.len() < 3 || width(around, &sides) < NOISE;
        let normal = facet.plane.normal();
        Some(ProjectedFacet {
            surface: place.0,
            facet: place.1,
            sides,
            low,
            high,
            nearness: nearness(facet, &normal, axes, grid),
            normal,
            squareness: normal.dot(&axes.eye),
            is_thin,
            hull,
            contours,
        })
    }

    /// The corners of its convex hull.
    pub(super) fn hull(&self) -> &[Corner] {
        match &self.hull {
            Some(hull) => hull,
            None => self.contours.first().map_or(&[], Vec::as_slice),
        }
    }

    pub(super) fn is_convex(&self) -> bool {
        self.hull.is_none()
    }

    /// How much nearer to the eye it is than another, as a function of the grid position.
    pub(super) fn nearness_difference(&self, other: &ProjectedFacet) -> [f64; 3] {
        std::array::from_fn(|i| self.nearness[i] - other.nearness[i])
    }
}

/// All front-facing facets, in the order of the surfaces, and their grid.
pub(super) fn projected(surfaces: &[Surface], axes: &Axes) -> Option<(Grid, Vec<ProjectedFacet>)> {
    let mut facing = Vec::new();
    let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for (surface, faces) in surfaces.iter().enumerate() {
        for (place, facet) in faces.facets.iter().enumerate() {
            if facet.plane.normal().dot(&axes.eye) <= EDGE_ON {
                continue;
            }
            facing.push(((surface, place), facet));
            let projection = Projection::of(&facet.plane, axes);
            for &corner in facet.region.contours().flatten() {
                let point = projection.point(corner);
                for axis in 0..2 {
                    low[axis] = low[axis].min(point[axis]);
                    high[axis] = high[axis].max(point[axis]);
                }
            }
        }
    }
    let grid = Grid::over((low, high))?;
    let mut projected = Vec::new();
    for (place, facet) in facing {
        projected.extend(ProjectedFacet::new(place, facet, axes, &grid));
    }
    Some((grid, projected))
}

/// From `normal . p = normal . origin` with `p = x across + y upward + near eye`.
fn nearness(facet: &Facet, normal: &Vector3, axes: &Axes, grid: &Grid) -> [f64; 3] {
    let squareness = normal.dot(&axes.eye);
    let a = -normal.dot(&axes.across) / squareness;
    let b = -normal.dot(&axes.upward) / squareness;
    let c = normal.dot(&facet.plane.origin.coords) / squareness;
    [
        a * grid.step,
        b * grid.step,
        c + a * grid.low[0] + b * grid.low[1],
    ]
}

/// The corners of a contour without duplicates.
fn settled(corners: impl Iterator<Item = Corner>) -> Vec<Corner> {
    let mut contour: Vec<Corner> = corners.collect();
    contour.dedup();
    while contour.len() > 1 && contour.first() == contour.last() {
        contour.pop();
    }
    contour
}

fn bounds(corners: &[Corner]) -> Option<([i32; 2], [i32; 2])> {
    let first = corners.first()?;
    let start = ([first.x, first.y], [first.x, first.y]);
    Some(corners.iter().fold(start, |(low, high), corner| {
        (
            [low[0].min(corner.x), low[1].min(corner.y)],
            [high[0].max(corner.x), high[1].max(corner.y)],
        )
    }))
}

fn sides(corners: &[Corner]) -> Vec<Line> {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|(&p, &q)| side(p, q)).collect()
}

/// The line from one corner to the next, with the outside on its right.
pub(super) fn side(p: Corner, q: Corner) -> Line {
    let ([px, py], [qx, qy]) = (real(p), real(q));
    let (along, up) = (qx - px, qy - py);
    let length = (along * along + up * up).sqrt();
    let (a, b) = (up / length, -along / length);
    [a, b, a * px + b * py]
}

/// The signed distance of a point from a line, positive outside.
pub(super) fn signed_distance([a, b, c]: Line, [x, y]: Point2) -> f64 {
    a * x + b * y - c
}

/// A corner as a floating-point position on the grid.
pub(super) fn real(corner: Corner) -> Point2 {
    [f64::from(corner.x), f64::from(corner.y)]
}

/// The width of a convex region: the least distance between one of its sides and the corner farthest from it.
fn width(corners: &[Corner], sides: &[Line]) -> f64 {
    let depth = |side: &Line| {
        let depths = corners
            .iter()
            .map(|&corner| -signed_distance(*side, real(corner)));
        depths.fold(0.0, f64::max)
    };
    sides.iter().map(depth).fold(f64::INFINITY, f64::min)
}

/// The convex hull of corners, counter-clockwise (Andrew's method).
fn hull(mut corners: Vec<Corner>) -> Vec<Corner> {
    sorting::sort_by(&mut corners, |corner| [sorting::packed(*corner), 0]);
    corners.dedup();
    let mut hull: Vec<Corner> = half_hull(corners.iter().copied());
    hull.pop();
    hull.extend(half_hull(corners.iter().rev().copied()));
    hull.pop();
    hull
}

fn half_hull(corners: impl Iterator<Item = Corner>) -> Vec<Corner> {
    let mut half: Vec<Corner> = Vec::new();
    for corner in corners {
        while let [.., p, q] = half[..]
            && (q - p).cross(corner - q) <= 0
        {
            half.pop();
        }
        half.push(corner);
    }
    half
}
