//! Regions of the sheet: joined, cut, and freed of the slivers that rounding leaves.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{IntOverlayOptions, Overlay, ShapeType};
use i_overlay::core::overlay_rule::OverlayRule;

use super::order::Before;
use super::sheet::{Corner, Grid, NOISE, Seen, real};
use crate::region::{Point2, Region, SOLVER, clip_by};

/// A closed line of corners; the last is joined to the first.
pub(super) type Contour = Vec<Corner>;

/// Separate shapes, each of an outer contour (counter-clockwise) and its holes (clockwise).
pub(super) type Shapes = Vec<Vec<Contour>>;

/// Joins and cuts regions of the sheet, one after the other in the same memory.
pub(super) struct Cutter {
    overlay: Overlay<i32>,
}

impl Cutter {
    pub(super) fn new() -> Self {
        // A corner in the middle of a straight side stays, so that facets that share the side cancel there.
        let options = IntOverlayOptions {
            preserve_input_collinear: true,
            ..IntOverlayOptions::default()
        };
        Cutter {
            overlay: Overlay::new_custom(64, options, SOLVER),
        }
    }

    /// What lies in any of the regions and in none of those taken away.
    pub(super) fn cut<'a>(
        &mut self,
        regions: impl IntoIterator<Item = &'a Contour>,
        away: impl IntoIterator<Item = &'a Contour>,
    ) -> Shapes {
        self.combine(regions, away, OverlayRule::Difference)
    }

    fn combine<'a>(
        &mut self,
        first: impl IntoIterator<Item = &'a Contour>,
        second: impl IntoIterator<Item = &'a Contour>,
        rule: OverlayRule,
    ) -> Shapes {
        self.overlay.clear();
        for contour in first {
            self.overlay.add_contour(contour, ShapeType::Subject);
        }
        for contour in second {
            self.overlay.add_contour(contour, ShapeType::Clip);
        }
        let mut shapes = self.overlay.overlay(rule, FillRule::NonZero);
        shapes.retain_mut(|shape| {
            let holes = shape.len();
            for contour in shape.iter_mut() {
                tidy(contour);
            }
            let outer_is_sound = shape.first().is_some_and(|outer| outer.len() > 2);
            if holes > 1 {
                shape.retain(|contour| contour.len() > 2);
            }
            outer_is_sound
        });
        shapes
    }

    /// What of a facet stands before another, by a pair of the order.
    pub(super) fn standing_before(&mut self, pair: &Before, seen: &[Seen]) -> Vec<Contour> {
        let (front, behind) = (&seen[pair.front], &seen[pair.behind]);
        if !pair.crossing {
            return front.contours.clone();
        }
        let [a, b, c] = front.lead(behind);
        let clipped = |corners: &[Corner]| {
            let corners: Vec<Point2> = corners.iter().map(|&corner| real(corner)).collect();
            let mut kept = Vec::new();
            clip_by(&corners, |[x, y]| a * x + b * y + c, &mut kept);
            let whole = |[x, y]: Point2| Corner::new(x.round() as i32, y.round() as i32);
            kept.into_iter().map(whole).collect::<Contour>()
        };
        let part = clipped(front.hull());
        if front.is_convex() {
            return vec![part];
        }
        let common = self.combine(&front.contours, [&part], OverlayRule::Intersect);
        common.into_iter().flatten().collect()
    }
}

/// Shapes of the sheet as a region of the drawing.
pub(super) fn region(shapes: &Shapes, grid: &Grid) -> Region {
    let line = |contour: &Contour| contour.iter().map(|&corner| grid.point(corner)).collect();
    let shape = |shape: &Vec<Contour>| shape.iter().map(line).collect();
    Region::shapes(shapes.iter().map(shape).collect())
}

/// The area of shapes, square metres.
pub(super) fn area(shapes: &Shapes, grid: &Grid) -> f64 {
    let doubled: i64 = shapes.iter().flatten().map(|contour| size(contour)).sum();
    doubled as f64 / 2.0 * grid.step * grid.step
}

/// Takes out the corners that stand out from their neighbours by no more than noise: corners along a straight line,
/// and the tips of slits and spikes.
///
/// Of a contour that is nothing but a sliver, fewer than three corners are left.
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
    // The same around the end.
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
        .map(|pair| (pair[0] - first).cross_product(pair[1] - first));
    pairs.sum()
}

/// Whether the triangle of three corners is no wider than noise.
pub(super) fn is_flat(p: Corner, q: Corner, r: Corner) -> bool {
    let square = |p: Corner, q: Corner| {
        let (x, y) = (f64::from(q.x) - f64::from(p.x), f64::from(q.y) - f64::from(p.y));
        x * x + y * y
    };
    let longest = square(p, q).max(square(q, r)).max(square(r, p));
    let doubled = (q - p).cross_product(r - q) as f64;
    doubled * doubled <= NOISE * NOISE * longest
}
