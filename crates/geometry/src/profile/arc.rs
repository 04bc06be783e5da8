//! Arcs as points that bound exactly the area that the arc bounds.

use std::f64::consts::{FRAC_PI_4, TAU};

use crate::Point2;

/// The most chords in one arc, so that no tolerance can exhaust the memory.
pub(super) const MOST_CHORDS: usize = 1000;

/// A regular polygon around the origin with exactly the area of the circle, counter-clockwise.
///
/// It has at least three corners; the first lies on the first axis.
pub(crate) fn equal_area_circle(radius: f64, corners: usize) -> Vec<Point2> {
    let corners = corners.max(3);
    let step = TAU / corners as f64;
    let reach = radius * over_sine(step).sqrt();
    let corner = |n: usize| {
        let (sin, cos) = libm::sincos(n as f64 * step);
        [reach * cos, reach * sin]
    };
    (0..corners).map(corner).collect()
}

/// The points of a circular arc from angle to angle (radians, at most one turn either way), both ends exact.
///
/// The inner points are pushed out so that the polyline bounds exactly the area that the arc bounds, and stays
/// within `tolerance` of it.
pub(crate) fn equal_area_arc(centre: Point2, radius: f64, from: f64, to: f64, tolerance: f64) -> Vec<Point2> {
    let place = |[x, y]: Point2| [centre[0] + radius * x, centre[1] + radius * y];
    let end = |angle: f64| {
        let (sin, cos) = libm::sincos(angle);
        place([cos, sin])
    };
    let mut points = vec![end(from)];
    points.extend(inner_points(from, to, radius, tolerance).map(place));
    points.push(end(to));
    points
}

/// The points between the ends of an arc of the unit circle, pushed out for equal area.
///
/// The tolerance holds once the circle is drawn out to `radius`.
pub(super) fn inner_points(from: f64, to: f64, radius: f64, tolerance: f64) -> impl Iterator<Item = Point2> {
    let chords = chords_within((to - from).abs(), tolerance / radius);
    let step = (to - from) / chords as f64;
    let reach = inner_radius(chords, step);
    (1..chords).map(move |n| {
        let (sin, cos) = libm::sincos(from + n as f64 * step);
        [reach * cos, reach * sin]
    })
}

/// How many chords an arc of the unit circle takes.
///
/// The pushed points lie furthest off the arc, in n chords by about sweep^2 / (12 n (n - 1)). With 11 for 12 that
/// is never too little as long as no chord spans more than an eighth of a turn. One chord has no point to push.
fn chords_within(sweep: f64, tolerance: f64) -> usize {
    let close_enough = 0.5 + (0.25 + sweep * sweep / (11.0 * tolerance)).sqrt();
    // NaN becomes 0 here, and the bounds make it 2.
    (close_enough.max(sweep / FRAC_PI_4).ceil() as usize).clamp(2, MOST_CHORDS)
}

/// How far from the center the inner points of an arc of the unit circle lie.
///
/// With both ends at 1 and the n - 1 inner points at r, the triangles to the center have the area
/// sin(step) (2 r + (n - 2) r^2) / 2, which must be that of the sector, n step / 2. This is the root of that, in
/// the form that also holds for n = 2.
fn inner_radius(chords: usize, step: f64) -> f64 {
    let sector = chords as f64 * over_sine(step);
    sector / (1.0 + (1.0 + (chords as f64 - 2.0) * sector).sqrt())
}

/// An angle over its sine.
fn over_sine(angle: f64) -> f64 {
    if angle == 0.0 {
        1.0
    } else {
        angle / libm::sin(angle)
    }
}
