//! Strokes of the sheet, and which spans of them are hidden.

use super::order::Occlusion;
use super::sheet::{NOISE, ProjectedFacet, real, side, signed_distance};
use crate::corner::Corner;
use crate::region::Point2;
use crate::sorting;

/// A stroke from corner to corner.
pub(super) type Stroke = [Corner; 2];

/// A part of a stroke: 0 is where it begins, 1 where it ends.
pub(super) type Span = [f64; 2];

const WHOLE: Span = [0.0, 1.0];

pub(super) fn strokes(contour: &[Corner]) -> impl Iterator<Item = Stroke> {
    let next = contour.iter().cycle().skip(1);
    contour.iter().zip(next).map(|(&p, &q)| [p, q])
}

/// The point at parameter `t` of a stroke.
pub(super) fn at([[px, py], [qx, qy]]: [Point2; 2], t: f64) -> Point2 {
    [px + t * (qx - px), py + t * (qy - py)]
}

/// The shortest stroke that is drawn, in steps of the grid: a micrometer at most. Where a stroke runs behind something,
/// rounding noise leaves shorter remainders.
const SHORTEST: i32 = 256;

/// A part of a stroke; `None` if it is too short to draw.
pub(super) fn part(stroke: Stroke, [from, to]: Span) -> Option<Stroke> {
    let corner = |t: f64| {
        let [x, y] = at(stroke.map(real), t);
        Corner::new(x.round() as i32, y.round() as i32)
    };
    let (p, q) = (corner(from), corner(to));
    let is_long = (q.x - p.x).abs().max((q.y - p.y).abs()) > SHORTEST;
    is_long.then_some([p, q])
}

/// Spans less another.
pub(super) fn subtract_span(spans: Vec<Span>, [low, high]: Span) -> Vec<Span> {
    let cut = |[from, to]: Span| {
        let parts = match high <= from || low >= to {
            true => [[from, to], [1.0, 0.0]],
            false => [[from, to.min(low)], [from.max(high), to]],
        };
        parts.into_iter().filter(|[from, to]| from < to)
    };
    spans.into_iter().flat_map(cut).collect()
}

/// The spans of an edge of a facet along which the facet is visible.
pub(super) fn open_spans<'a>(
    edge: Stroke,
    before: impl Iterator<Item = &'a Occlusion>,
    projected: &[ProjectedFacet],
) -> Vec<Span> {
    // A little inside the facet, noise does not decide the side of another edge.
    let [a, b, _] = side(edge[0], edge[1]);
    let inside = edge.map(|corner| {
        let [x, y] = real(corner);
        [x - 2.0 * NOISE * a, y - 2.0 * NOISE * b]
    });
    let mut open = vec![WHOLE];
    for pair in before {
        for hidden in hidden_spans(inside, pair, projected) {
            open = subtract_span(open, hidden);
        }
        if open.is_empty() {
            break;
        }
    }
    open
}

/// The spans that lie in both lists.
pub(super) fn intersect_spans(first: &[Span], second: &[Span]) -> Vec<Span> {
    let both = first
        .iter()
        .flat_map(|a| second.iter().map(|b| [a[0].max(b[0]), a[1].min(b[1])]));
    both.filter(|[from, to]| from < to).collect()
}

/// The spans of a stroke that lie behind a facet.
fn hidden_spans(stroke: [Point2; 2], pair: &Occlusion, projected: &[ProjectedFacet]) -> Vec<Span> {
    let front = &projected[pair.front];
    let mut span = WHOLE;
    if pair.crossing {
        let [a, b, c] = front.nearness_difference(&projected[pair.behind]);
        span = narrowed(span, stroke.map(|[x, y]| a * x + b * y + c));
    }
    for &side in &front.sides {
        span = narrowed(span, stroke.map(|point| -signed_distance(side, point)));
    }
    if span[0] >= span[1] {
        return vec![];
    }
    if front.is_convex() {
        return vec![span];
    }
    let edges = || front.contours.iter().flat_map(|contour| strokes(contour));
    let mut cuts: Vec<f64> = edges().filter_map(|edge| crossing(stroke, edge)).collect();
    cuts.retain(|t| span[0] < *t && *t < span[1]);
    cuts.extend(span);
    sorting::sort(&mut cuts);
    let spans = cuts.windows(2).map(|pair| [pair[0], pair[1]]);
    let is_hidden = |[from, to]: &Span| is_within(at(stroke, (from + to) / 2.0), front);
    spans.filter(is_hidden).collect()
}

/// The part of a span where a linear function with these values at the ends of the stroke is not negative.
fn narrowed([from, to]: Span, [start, end]: [f64; 2]) -> Span {
    let change = start / (start - end);
    match (start >= 0.0, end >= 0.0) {
        (true, true) => [from, to],
        (true, false) => [from, to.min(change)],
        (false, true) => [from.max(change), to],
        (false, false) => [1.0, 0.0],
    }
}

/// The parameter at which a stroke crosses the line of an edge, if its ends are on either side.
fn crossing(stroke: [Point2; 2], [p, q]: Stroke) -> Option<f64> {
    let line = side(p, q);
    let [start, end] = stroke.map(|point| signed_distance(line, point));
    ((start < 0.0) != (end < 0.0)).then(|| start / (start - end))
}

fn is_within([x, y]: Point2, facet: &ProjectedFacet) -> bool {
    let mut inside = false;
    for edge in facet.contours.iter().flat_map(|contour| strokes(contour)) {
        let [[px, py], [qx, qy]] = edge.map(real);
        if (py > y) != (qy > y) && x < px + (y - py) / (qy - py) * (qx - px) {
            inside = !inside;
        }
    }
    inside
}

/// The parameter of the point of a stroke's line nearest to another point; 0 if the stroke has no length.
pub(super) fn place([x, y]: Point2, stroke: Stroke) -> f64 {
    let [[px, py], [qx, qy]] = stroke.map(real);
    let (along, up) = (qx - px, qy - py);
    let square = along * along + up * up;
    if square > 0.0 {
        ((x - px) * along + (y - py) * up) / square
    } else {
        0.0
    }
}

/// The distance of a point from a stroke, in steps of the grid.
pub(super) fn distance(point: Point2, stroke: Stroke) -> f64 {
    let [x, y] = at(stroke.map(real), place(point, stroke).clamp(0.0, 1.0));
    libm::hypot(point[0] - x, point[1] - y)
}

/// The span of an edge along which a seam runs.
pub(super) fn along(edge: Stroke, seam: Stroke) -> Option<Span> {
    let line = side(edge[0], edge[1]);
    if seam
        .iter()
        .any(|&corner| signed_distance(line, real(corner)).abs() > NOISE)
    {
        return None;
    }
    let [a, b] = seam.map(|corner| place(real(corner), edge).clamp(0.0, 1.0));
    let span = [a.min(b), a.max(b)];
    part(edge, span).map(|_| span)
}
