//! Where the facets of a folded or curved face meet.

use std::ops::Range;

use super::cut::Contour;
use super::sheet::{Seen, real};
use super::spans::{Stroke, at, strokes};
use crate::sorting;

/// Facets that meet at less than about 40 degrees belong to one curve (common practice, no source): facets of curves
/// turn by up to 30, the flattest fold of the shop is a chamfer at 45.
const ONE_CURVE: f64 = 0.766;

/// Facets whose common edge is two edges on one sight line, this far apart or more, do not meet, metres.
const STEP: f64 = 1e-5;

/// The edges of a run of facets on the sheet.
#[derive(Default)]
pub(super) struct Joints {
    /// Edges between two facets, as they run around the first.
    pub(super) inner: Vec<(Stroke, [usize; 2])>,
    /// Edges beyond which no other facet looks at the eye, as they run around their facet.
    pub(super) border: Vec<(Stroke, usize)>,
}

/// An edge of a facet.
#[derive(Clone, Copy)]
struct Edge {
    /// Its lesser and its greater end, in an order that is quick to sort.
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
    pub(super) fn of(seen: &[Seen], run: Range<usize>) -> Joints {
        let mut edges: Vec<Edge> = Vec::with_capacity(4 * run.len());
        for facet in run {
            for contour in &seen[facet].contours {
                edges.extend(strokes(contour).map(|stroke| Edge::new(stroke, facet)));
            }
        }
        sorting::sort_by(&mut edges, |edge| edge.ends);
        let mut joints = Joints::default();
        for same in edges.chunk_by(|a, b| a.ends == b.ends) {
            match same {
                [edge] => joints.border.push((edge.stroke, edge.facet)),
                [a, b] if a.stroke != b.stroke => joints.inner.push((a.stroke, [a.facet, b.facet])),
                _ => joints.pair(same, seen),
            }
        }
        joints
    }

    /// Pairs facets at one edge of the sheet where many meet, those first that are nearest to each other in depth.
    fn pair(&mut self, edges: &[Edge], seen: &[Seen]) {
        let is_there = |edge: &&Edge| edge.stroke == edges[0].stroke;
        let (mut there, mut back): (Vec<&Edge>, Vec<&Edge>) = edges.iter().partition(is_there);
        loop {
            let both = (0..there.len()).flat_map(|a| (0..back.len()).map(move |b| (a, b)));
            let apart = |(a, b): (usize, usize)| {
                depth_between(there[a].stroke, &seen[there[a].facet], &seen[back[b].facet])
            };
            let nearest = both.min_by(|&p, &q| apart(p).total_cmp(&apart(q)));
            let Some((a, b)) = nearest else { break };
            let (f, g) = (there.swap_remove(a), back.swap_remove(b));
            self.inner.push((f.stroke, [f.facet, g.facet]));
        }
        let rest = there.into_iter().chain(back);
        self.border.extend(rest.map(|edge| (edge.stroke, edge.facet)));
    }

    /// The seams at which one surface goes over into another that is part of the same curve.
    pub(super) fn seams_of(&self, own: &Range<usize>, seen: &[Seen]) -> Vec<Stroke> {
        let seams = self.inner.iter().filter(|(stroke, [f, g])| {
            own.contains(f) != own.contains(g) && is_smooth(*stroke, &seen[*f], &seen[*g])
        });
        seams.map(|(stroke, _)| *stroke).collect()
    }

    /// Closed lines around groups of facets: what they enclose is what the facets of the group cover together.
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

/// Joins edges end to end to closed lines. As many edges leave each corner as arrive there.
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

/// Whether the curve goes over from one facet to the other without a fold or a step.
pub(super) fn is_smooth(stroke: Stroke, f: &Seen, g: &Seen) -> bool {
    f.normal.dot(&g.normal) > ONE_CURVE && depth_between(stroke, f, g) < STEP
}

/// Whether one comes from a facet over a stroke to another that is clearly nearer to the eye.
pub(super) fn steps_forward(stroke: Stroke, from: &Seen, to: &Seen) -> bool {
    let [a, b, c] = to.lead(from);
    let [x, y] = at(stroke.map(real), 0.5);
    a * x + b * y + c > 0.0 && depth_between(stroke, from, to) > STEP
}

/// How far apart two facets lie where they share an edge on the sheet, beyond what the grid makes of their slope.
fn depth_between(stroke: Stroke, f: &Seen, g: &Seen) -> f64 {
    let [a, b, c] = f.lead(g);
    let [x, y] = at(stroke.map(real), 0.5);
    (a * x + b * y + c).abs() - 2.0 * (a.abs() + b.abs())
}
