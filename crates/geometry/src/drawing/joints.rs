//! Where the facets of a folded or curved face meet.

use std::ops::Range;

use super::cut::Contour;
use super::sheet::{ProjectedFacet, real};
use super::spans::{Stroke, at, strokes};
use crate::sorting;

/// Facets that meet at less than about 40 degrees belong to one curve (common practice, no source). Facets of curves
/// turn by up to 30; the flattest fold in practice is a chamfer at 45.
const ONE_CURVE: f64 = 0.766;

/// Facets whose projected edges coincide do not meet if they are this far apart in depth, meters.
const STEP: f64 = 1e-5;

/// The edges of a run of facets on the sheet.
#[derive(Default)]
pub(super) struct Joints {
    /// Edges between two facets, as they run around the first.
    pub(super) inner: Vec<(Stroke, [usize; 2])>,
    /// Edges with a front-facing facet on one side only, as they run around their facet.
    pub(super) border: Vec<(Stroke, usize)>,
}

/// An edge of a facet.
#[derive(Clone, Copy)]
struct Edge {
    /// Its lesser and its greater end, in an order that is fast to sort.
    ends: [u64; 2],
    stroke: Stroke,
    facet: usize,
}

impl Edge {
    fn new(stroke: Stroke, facet: usize) -> Self {
        // Corners of the grid are never negative.
        let [p, q] = stroke.map(|corner| (u64::from(corner.x as u32) << 32) | u64::from(corner.y as u32));
        Edge {
            ends: [p.min(q), p.max(q)],
            stroke,
            facet,
        }
    }
}

impl Joints {
    /// The joints between a run of facets.
    pub(super) fn of(projected: &[ProjectedFacet], run: Range<usize>) -> Joints {
        let mut edges: Vec<Edge> = Vec::with_capacity(4 * run.len());
        for facet in run {
            for contour in &projected[facet].contours {
                edges.extend(strokes(contour).map(|stroke| Edge::new(stroke, facet)));
            }
        }
        sorting::sort_by(&mut edges, |edge| edge.ends);
        let mut joints = Joints::default();
        for same in edges.chunk_by(|a, b| a.ends == b.ends) {
            match same {
                [edge] => joints.border.push((edge.stroke, edge.facet)),
                [a, b] if a.stroke != b.stroke => joints.inner.push((a.stroke, [a.facet, b.facet])),
                _ => joints.pair(same, projected),
            }
        }
        joints
    }

    /// Pairs the facets at an edge of the sheet where more than two meet, those nearest to each other in depth first.
    fn pair(&mut self, edges: &[Edge], projected: &[ProjectedFacet]) {
        let is_there = |edge: &&Edge| edge.stroke == edges[0].stroke;
        let (mut there, mut back): (Vec<&Edge>, Vec<&Edge>) = edges.iter().partition(is_there);
        loop {
            let both = (0..there.len()).flat_map(|a| (0..back.len()).map(move |b| (a, b)));
            let apart = |(a, b): (usize, usize)| {
                depth_between(
                    there[a].stroke,
                    &projected[there[a].facet],
                    &projected[back[b].facet],
                )
            };
            let nearest = both.min_by(|&p, &q| apart(p).total_cmp(&apart(q)));
            let Some((a, b)) = nearest else { break };
            let (f, g) = (there.swap_remove(a), back.swap_remove(b));
            self.inner.push((f.stroke, [f.facet, g.facet]));
        }
        let rest = there.into_iter().chain(back);
        self.border.extend(rest.map(|edge| (edge.stroke, edge.facet)));
    }

    /// The seams at which one surface continues into another of the same curve.
    pub(super) fn seams_of(&self, own: &Range<usize>, projected: &[ProjectedFacet]) -> Vec<Stroke> {
        let seams = self.inner.iter().filter(|(stroke, [f, g])| {
            own.contains(f) != own.contains(g) && is_smooth(*stroke, &projected[*f], &projected[*g])
        });
        seams.map(|(stroke, _)| *stroke).collect()
    }

    /// Closed lines around groups of facets: they enclose the union of the facets of a group.
    ///
    /// Where two facets of a group meet, their edges cancel.
    pub(super) fn around(&self, groups: usize, group: impl Fn(usize) -> Option<usize>) -> Vec<Vec<Contour>> {
        let mut edges: Vec<Vec<Stroke>> = vec![Vec::new(); groups];
        for &(stroke, facet) in &self.border {
            if let Some(group) = group(facet) {
                edges[group].push(stroke);
            }
        }
        for &([p, q], [f, g]) in &self.inner {
            let (f, g) = (group(f), group(g));
            if f != g {
                f.into_iter().for_each(|f| edges[f].push([p, q]));
                g.into_iter().for_each(|g| edges[g].push([q, p]));
            }
        }
        edges.into_iter().map(closed).collect()
    }
}

/// Joins edges end to end into closed lines. As many edges leave each corner as arrive there.
fn closed(mut edges: Vec<Stroke>) -> Vec<Contour> {
    sorting::sort_by(&mut edges, |edge| edge.map(sorting::packed));
    let mut used = vec![false; edges.len()];
    let mut contours = Vec::new();
    for &[start, _] in &edges {
        let mut contour = Vec::new();
        let mut at = start;
        loop {
            let leaving = edges.partition_point(|[p, _]| *p < at);
            let onward = edges[leaving..]
                .iter()
                .zip(leaving..)
                .take_while(|([p, _], _)| *p == at);
            let Some(([_, q], place)) = onward.into_iter().find(|(_, place)| !used[*place]) else {
                break;
            };
            used[place] = true;
            contour.push(at);
            at = *q;
        }
        if contour.len() > 2 {
            contours.push(contour);
        }
    }
    contours
}

/// Whether the curve continues from one facet to the other without a fold or a step.
pub(super) fn is_smooth(stroke: Stroke, f: &ProjectedFacet, g: &ProjectedFacet) -> bool {
    f.normal.dot(&g.normal) > ONE_CURVE && depth_between(stroke, f, g) < STEP
}

/// Whether the facet on the other side of a stroke is clearly nearer to the eye.
pub(super) fn steps_forward(stroke: Stroke, from: &ProjectedFacet, to: &ProjectedFacet) -> bool {
    let [a, b, c] = to.nearness_difference(from);
    let [x, y] = at(stroke.map(real), 0.5);
    a * x + b * y + c > 0.0 && depth_between(stroke, from, to) > STEP
}

/// How far apart in depth two facets are at a common edge of the sheet, less the rounding that their slopes amplify.
fn depth_between(stroke: Stroke, f: &ProjectedFacet, g: &ProjectedFacet) -> f64 {
    let [a, b, c] = f.nearness_difference(g);
    let [x, y] = at(stroke.map(real), 0.5);
    (a * x + b * y + c).abs() - 2.0 * (a.abs() + b.abs())
}
