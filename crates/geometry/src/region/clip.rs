//! Contours: their area, and clipping by convex ones.

use super::{Contour, Point2, SAME_POINT};

pub(super) fn signed_area(corners: &[Point2]) -> f64 {
    let Some(&first) = corners.first() else { return 0.0 };
    // Shifting to the first corner keeps the products small and the sum exact to the last digits.
    let shifted = |p: &Point2| [p[0] - first[0], p[1] - first[1]];
    let pairs = corners.iter().zip(corners.iter().skip(1));
    pairs
        .map(|(p, q)| (shifted(p), shifted(q)))
        .map(|(p, q)| p[0] * q[1] - q[0] * p[1])
        .sum::<f64>()
        / 2.0
}

pub(super) fn is_convex(corners: &[Point2]) -> bool {
    let n = corners.len();
    (0..n).all(|i| {
        let (a, b, c) = (corners[i], corners[(i + 1) % n], corners[(i + 2) % n]);
        (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) >= -1e-15
    })
}

/// Clips a contour to where `inside` is not negative, into `kept`.
pub(crate) fn clip_by(corners: &[Point2], inside: impl Fn(Point2) -> f64, kept: &mut Contour) {
    kept.clear();
    let Some(&last) = corners.last() else { return };
    let mut before = last;
    let mut before_inside = inside(before);
    for &point in corners {
        let point_inside = inside(point);
        if (before_inside < 0.0) != (point_inside < 0.0) {
            let t = before_inside / (before_inside - point_inside);
            kept.push([
                before[0] + t * (point[0] - before[0]),
                before[1] + t * (point[1] - before[1]),
            ]);
        }
        if point_inside >= 0.0 {
            kept.push(point);
        }
        before = point;
        before_inside = point_inside;
    }
}

/// Clips one convex contour by another.
pub(super) fn clip_convex(subject: &[Point2], clip: &[Point2]) -> Contour {
    let mut kept = clip_line(subject, clip);
    merge_near_corners(&mut kept);
    kept
}

/// Clips a contour by each edge of a convex one (Sutherland and Hodgman).
pub(super) fn clip_line(subject: &[Point2], clip: &[Point2]) -> Contour {
    if clip.len() < 3 {
        return Vec::new();
    }
    // Two buffers that are swapped: this is the innermost loop of every takeoff.
    let mut kept = Vec::with_capacity(subject.len() + clip.len());
    kept.extend_from_slice(subject);
    let mut next = Vec::with_capacity(kept.capacity());
    for i in 0..clip.len() {
        let (a, b) = (clip[i], clip[(i + 1) % clip.len()]);
        clip_by(
            &kept,
            |p| (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]),
            &mut next,
        );
        std::mem::swap(&mut kept, &mut next);
        if kept.len() < 3 {
            return Vec::new();
        }
    }
    kept
}

/// Merges corners that are within [`SAME_POINT`] of the next one.
///
/// Where two regions share an edge, clipping leaves corners that only rounding noise separates. The line through two
/// such corners has an arbitrary direction, and clipping another region by it could remove any share of its area.
pub(super) fn merge_near_corners(corners: &mut Contour) {
    let near = |p: Point2, q: Point2| (p[0] - q[0]).abs() < SAME_POINT && (p[1] - q[1]).abs() < SAME_POINT;
    corners.dedup_by(|later, earlier| near(*later, *earlier));
    while corners.len() > 1 && near(corners[0], corners[corners.len() - 1]) {
        corners.pop();
    }
    if corners.len() < 3 {
        corners.clear();
    }
}
