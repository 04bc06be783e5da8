//! The lines of a drawing: real edges, without the seams between the facets that approximate a curve.

use std::ops::Range;

use super::cut::{Contour, is_flat};
use super::joints::{Joints, is_smooth, steps_forward};
use super::order::Order;
use super::sheet::{NOISE, ProjectedFacet, real, side, signed_distance};
use super::spans::{
    Stroke, along, at, distance, intersect_spans, open_spans, part, place, strokes, subtract_span,
};
use crate::corner::Corner;
use crate::sorting;

/// A line of corners; a closed one ends where it begins.
pub(super) type Polyline = Vec<Corner>;

pub(super) fn outline(contours: &[Contour]) -> Vec<Polyline> {
    let closed = |contour: &Contour| contour.iter().chain(contour.first()).copied().collect();
    contours.iter().map(closed).collect()
}

/// The lines of a folded or curved surface with the facets `own`: the edge of its visible part, its folds, and where it
/// hides part of itself.
pub(super) fn lines(
    own: &Range<usize>,
    contours: &[Contour],
    joints: &Joints,
    projected: &[ProjectedFacet],
    order: &Order,
) -> Vec<Polyline> {
    let seams = joints.seams_of(own, projected);
    let is_touched = |line: &Polyline| {
        let mut edges = line.windows(2).map(|edge| [edge[0], edge[1]]);
        edges.any(|edge| seams.iter().any(|&seam| along(edge, seam).is_some()))
    };
    let (touched, mut lines): (Vec<Polyline>, _) = outline(contours).into_iter().partition(is_touched);
    let edges = touched.iter().flat_map(|line| line.windows(2));
    let mut loose: Vec<Stroke> = edges
        .flat_map(|edge| without([edge[0], edge[1]], &seams))
        .collect();
    loose.extend(folds(own, joints, projected, order));
    loose.extend(rims(own, contours, joints, projected, order));
    lines.extend(chained(&loose));
    lines
}

/// The parts of an edge that no seam runs along.
fn without(edge: Stroke, seams: &[Stroke]) -> Vec<Stroke> {
    let spans = seams.iter().filter_map(|&seam| along(edge, seam));
    let open = spans.fold(vec![[0.0, 1.0]], subtract_span);
    open.into_iter().filter_map(|span| part(edge, span)).collect()
}

/// Folds of which both sides are visible.
fn folds(own: &Range<usize>, joints: &Joints, projected: &[ProjectedFacet], order: &Order) -> Vec<Stroke> {
    let is_open = |facet: usize| own.contains(&facet) && !order.hidden[facet];
    let mut folds = Vec::new();
    for &(stroke, [f, g]) in &joints.inner {
        if !is_open(f) || !is_open(g) || is_smooth(stroke, &projected[f], &projected[g]) {
            continue;
        }
        let [p, q] = stroke;
        let here = open_spans(stroke, order.before(f), projected);
        let mut there = open_spans([q, p], order.before(g), projected);
        for span in &mut there {
            *span = [1.0 - span[1], 1.0 - span[0]];
        }
        for span in intersect_spans(&here, &there) {
            folds.extend(part(stroke, span));
        }
    }
    folds
}

/// Where the surface hides part of itself, or steps back.
fn rims(
    own: &Range<usize>,
    contours: &[Contour],
    joints: &Joints,
    projected: &[ProjectedFacet],
    order: &Order,
) -> Vec<Stroke> {
    let mut rims = Vec::new();
    for &(edge, facet) in &joints.border {
        if !own.contains(&facet) || order.hidden[facet] {
            continue;
        }
        for span in open_spans(edge, order.before(facet), projected) {
            let open = part(edge, span).map(|stroke| beside_outline(stroke, contours));
            let mut inside = open.unwrap_or_default();
            inside.retain(|stroke| !is_drawn_beyond(*stroke, facet, own, projected));
            rims.extend(inside);
        }
    }
    rims
}

/// The parts of a stroke that do not lie on the outline.
fn beside_outline(stroke: Stroke, contours: &[Contour]) -> Vec<Stroke> {
    let reach = |[p, q]: Stroke| [[p.x.min(q.x), p.x.max(q.x)], [p.y.min(q.y), p.y.max(q.y)]];
    let noise = NOISE as i32;
    let own = reach(stroke);
    let is_near = |edge: &Stroke| {
        let edge = reach(*edge);
        (0..2).all(|axis| edge[axis][0] - noise <= own[axis][1] && own[axis][0] <= edge[axis][1] + noise)
    };
    let near: Vec<Stroke> = contours
        .iter()
        .flat_map(|contour| strokes(contour))
        .filter(is_near)
        .collect();
    let line = side(stroke[0], stroke[1]);
    let corners = near.iter().map(|edge| real(edge[0]));
    let on_it = corners.filter(|&corner| signed_distance(line, corner).abs() < NOISE);
    let mut cuts: Vec<f64> = on_it
        .map(|corner| place(corner, stroke))
        .filter(|t| 0.0 < *t && *t < 1.0)
        .collect();
    cuts.extend([0.0, 1.0]);
    sorting::sort(&mut cuts);
    let parts = cuts
        .windows(2)
        .filter_map(|pair| part(stroke, [pair[0], pair[1]]));
    let middle = |stroke: &Stroke| at(stroke.map(real), 0.5);
    parts
        .filter(|part| {
            near.iter()
                .all(|&edge| distance(middle(part), edge) > 2.0 * NOISE)
        })
        .collect()
}

/// Whether an edge of a facet needs no line here: the curve continues, with a facet that shares only part of the edge,
/// or a nearer facet draws the line as its own edge.
fn is_drawn_beyond(stroke: Stroke, facet: usize, own: &Range<usize>, projected: &[ProjectedFacet]) -> bool {
    let [a, b, _] = side(stroke[0], stroke[1]);
    let [x, y] = at(stroke.map(real), 0.5);
    let outside = [x + 2.0 * NOISE * a, y + 2.0 * NOISE * b];
    own.clone().any(|other| {
        let beside = &projected[other];
        let is_in_box = |axis: usize| {
            f64::from(beside.low[axis]) < outside[axis] && outside[axis] < f64::from(beside.high[axis])
        };
        other != facet
            && is_in_box(0)
            && is_in_box(1)
            && beside
                .sides
                .iter()
                .all(|&side| signed_distance(side, outside) < 0.0)
            && (is_smooth(stroke, &projected[facet], beside)
                || steps_forward(stroke, &projected[facet], beside))
    })
}

/// Strokes joined end to end.
fn chained(strokes: &[Stroke]) -> Vec<Polyline> {
    let ends = strokes.iter().enumerate();
    let mut ends: Vec<(Corner, usize)> = ends
        .flat_map(|(place, &[p, q])| [(p, place), (q, place)])
        .collect();
    sorting::sort_by(&mut ends, |&(corner, place)| {
        [sorting::packed(corner), place as i64]
    });
    let ends_at = |corner: Corner| {
        let from = ends.partition_point(|end| end.0 < corner);
        let count = ends[from..].iter().take_while(|end| end.0 == corner).count();
        &ends[from..from + count]
    };
    // Start at loose ends; what is left then are rings.
    let loose = ends.iter().filter(|(corner, _)| ends_at(*corner).len() != 2);
    let mut used = vec![false; strokes.len()];
    let mut lines = Vec::new();
    for &(start, first) in loose.chain(&ends) {
        let mut line = vec![start];
        let mut next = Some(first).filter(|&place| !used[place]);
        while let Some(place) = next {
            used[place] = true;
            let [p, q] = strokes[place];
            let end = if line.last() == Some(&p) { q } else { p };
            line.push(end);
            let onward = ends_at(end).iter().map(|(_, place)| *place);
            next = onward
                .filter(|_| ends_at(end).len() == 2)
                .find(|&place| !used[place]);
        }
        if line.len() > 1 {
            lines.push(straightened(line));
        }
    }
    lines
}

/// A line without its collinear corners.
fn straightened(line: Polyline) -> Polyline {
    let mut kept = Polyline::with_capacity(line.len());
    for corner in line {
        while let [.., p, q] = kept[..]
            && is_flat(p, q, corner)
            && (q - p).dot(corner - q) > 0
        {
            kept.pop();
        }
        kept.push(corner);
    }
    kept
}
