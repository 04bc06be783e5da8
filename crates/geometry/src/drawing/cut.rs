//! Booleans of contours on the sheet, without the slivers that rounding leaves.

use super::order::Occlusion;
use super::sheet::{Grid, NOISE, ProjectedFacet, real};
pub(super) use crate::boolean::Contour;
use crate::boolean::{Boolean, Rule};
use crate::corner::Corner;
use crate::region::{Point2, Region, clip_by};

/// The union of the regions less the union of `away`: outer contours counter-clockwise, holes clockwise.
pub(super) fn cut<'a>(
    regions: impl IntoIterator<Item = &'a Contour>,
    away: impl IntoIterator<Item = &'a Contour>,
) -> Vec<Contour> {
    let (regions, away): (Vec<_>, Vec<_>) = (regions.into_iter().collect(), away.into_iter().collect());
    combined(&regions, &away, Rule::Difference)
}

fn combined(first: &[&Contour], second: &[&Contour], rule: Rule) -> Vec<Contour> {
    let edges = first.iter().chain(second).map(|contour| contour.len()).sum();
    let mut boolean = Boolean::new(edges);
    for (set, contours) in [first, second].into_iter().enumerate() {
        for contour in contours {
            boolean.add(set, contour.iter().copied());
        }
    }
    let mut contours = boolean.contours(rule);
    contours.retain_mut(|contour| {
        tidy(contour);
        contour.len() > 2
    });
    contours
}

/// The part of the front facet of a pair that is in front of the other.
pub(super) fn occluding_part(pair: &Occlusion, projected: &[ProjectedFacet]) -> Vec<Contour> {
    let (front, behind) = (&projected[pair.front], &projected[pair.behind]);
    if !pair.crossing {
        return front.contours.clone();
    }
    let [a, b, c] = front.nearness_difference(behind);
    let corners: Vec<Point2> = front.hull().iter().map(|&corner| real(corner)).collect();
    let mut kept = Vec::new();
    clip_by(&corners, |[x, y]| a * x + b * y + c, &mut kept);
    let whole = |[x, y]: Point2| Corner::new(x.round() as i32, y.round() as i32);
    let part: Contour = kept.into_iter().map(whole).collect();
    if front.is_convex() {
        return vec![part];
    }
    let contours: Vec<&Contour> = front.contours.iter().collect();
    combined(&contours, &[&part], Rule::Intersection)
}

/// Contours of the sheet as a region of the drawing.
pub(super) fn region(contours: &[Contour], grid: &Grid) -> Region {
    let line = |contour: &Contour| contour.iter().map(|&corner| grid.point(corner)).collect();
    Region::from_contours(contours.iter().map(line).collect())
}

/// The area within contours, square meters.
pub(super) fn area(contours: &[Contour], grid: &Grid) -> f64 {
    let doubled: i64 = contours.iter().map(|contour| size(contour)).sum();
    doubled as f64 / 2.0 * grid.step * grid.step
}

/// Removes corners that stand out from the ones beside them by no more than noise: collinear corners, and the tips of
/// slits and spikes.
///
/// A contour that is only a sliver is left with fewer than three corners.
pub(super) fn tidy(contour: &mut Contour) {
    let mut kept: Contour = Vec::with_capacity(contour.len());
    for &corner in contour.iter() {
        kept.push(corner);
        while let [.., p, q, r] = kept[..]
            && is_flat(p, q, r)
        {
            kept.remove(kept.len() - 2);
        }
    }
    // The same across the end of the contour.
    let mut from = 0;
    while let [.., o, p] = kept[from..]
        && kept.len() - from > 2
    {
        let (q, r) = (kept[from], kept[from + 1]);
        if is_flat(p, q, r) {
            from += 1;
        } else if is_flat(o, p, q) {
            kept.pop();
        } else {
            break;
        }
    }
    if kept.len() - from < 3 {
        contour.clear();
    } else if kept.len() < contour.len() || from > 0 {
        contour.clear();
        contour.extend_from_slice(&kept[from..]);
    }
}

/// Twice the area within a contour, in steps of the grid.
pub(super) fn size(contour: &[Corner]) -> i64 {
    let Some(&first) = contour.first() else { return 0 };
    let pairs = contour
        .windows(2)
        .map(|pair| (pair[0] - first).cross(pair[1] - first));
    pairs.sum()
}

/// Whether the triangle of three corners is no wider than noise.
pub(super) fn is_flat(p: Corner, q: Corner, r: Corner) -> bool {
    let square = |p: Corner, q: Corner| {
        let (x, y) = (f64::from(q.x) - f64::from(p.x), f64::from(q.y) - f64::from(p.y));
        x * x + y * y
    };
    let longest = square(p, q).max(square(q, r)).max(square(r, p));
    let doubled = (q - p).cross(r - q) as f64;
    doubled * doubled <= NOISE * NOISE * longest
}
