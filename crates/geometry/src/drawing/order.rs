//! Depth order: which facet is in front of which.

use super::sheet::{Line, NOISE, ProjectedFacet, real, signed_distance};
use super::tree::Tree;
use crate::corner::Corner;
use crate::region::{Point2, clip_by};
use crate::sorting;

/// How far apart two planes may be and still touch, meters: above the rounding noise.
const SAME_DEPTH: f64 = 1e-8;

/// A facet that is in front of another where both are visible.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Occlusion {
    /// The index of the facet behind.
    pub(super) behind: usize,
    /// The index of the facet in front.
    pub(super) front: usize,
    /// Whether their planes cross within the overlap, so that each is in front of the other somewhere.
    pub(super) crossing: bool,
}

/// The depth order of all facets.
pub(super) struct Order {
    /// Sorted by the facet behind.
    pub(super) pairs: Vec<Occlusion>,
    /// The index of the first pair of each facet behind.
    starts: Vec<usize>,
    /// Whether a facet is completely hidden. Such a facet hides nothing that is not hidden without it.
    pub(super) hidden: Vec<bool>,
}

impl Order {
    pub(super) fn of(projected: &[ProjectedFacet]) -> Order {
        let tree = Tree::over(projected.iter().map(|facet| (facet.low, facet.high)));
        let mut hidden = vec![false; projected.len()];
        let mut pairs = Vec::new();
        let mut scratch = Scratch::default();
        for (i, f) in projected.iter().enumerate().filter(|(_, facet)| !facet.is_thin) {
            tree.overlapping((f.low, f.high), NOISE as i32, |j| {
                let g = &projected[j];
                if j <= i || g.is_thin || hidden[i] || hidden[j] {
                    return;
                }
                match depth_order(f, g, &mut scratch) {
                    DepthOrder::Apart => {}
                    DepthOrder::Crossing => {
                        pairs.push(Occlusion {
                            behind: i,
                            front: j,
                            crossing: true,
                        });
                        pairs.push(Occlusion {
                            behind: j,
                            front: i,
                            crossing: true,
                        });
                    }
                    DepthOrder::InFront => {
                        hidden[j] = f.covers(g);
                        pairs.push(Occlusion {
                            behind: j,
                            front: i,
                            crossing: false,
                        });
                    }
                    DepthOrder::Behind => {
                        hidden[i] = g.covers(f);
                        pairs.push(Occlusion {
                            behind: i,
                            front: j,
                            crossing: false,
                        });
                    }
                }
            });
        }
        pairs.retain(|pair| !hidden[pair.behind] && !hidden[pair.front]);
        sorting::sort_by(&mut pairs, |pair| (pair.behind, pair.front));
        let mut starts = vec![0; projected.len() + 1];
        for pair in &pairs {
            starts[pair.behind + 1] += 1;
        }
        for place in 0..projected.len() {
            starts[place + 1] += starts[place];
        }
        Order {
            pairs,
            starts,
            hidden,
        }
    }

    /// The facets in front of one that are not completely hidden themselves.
    pub(super) fn before(&self, facet: usize) -> impl Iterator<Item = &Occlusion> {
        let pairs = &self.pairs[self.starts[facet]..self.starts[facet + 1]];
        pairs.iter().filter(|pair| !self.hidden[pair.front])
    }

    /// Whether nothing is in front of a facet.
    pub(super) fn is_whole(&self, facet: usize) -> bool {
        self.before(facet).next().is_none()
    }

    /// How many facets are in front of one, hidden ones too.
    pub(super) fn count(&self, facet: usize) -> usize {
        self.starts[facet + 1] - self.starts[facet]
    }
}

/// The depth order of two facets, seen from the first.
enum DepthOrder {
    /// They do not overlap on the sheet.
    Apart,
    InFront,
    Behind,
    Crossing,
}

#[derive(Default)]
struct Scratch {
    intersection: Vec<Point2>,
    next: Vec<Point2>,
}

/// The depth order of two facets with overlapping boxes.
///
/// Facets of solids that do not intersect swap depth order only where a hole or a notch lets one through the other;
/// there their planes cross.
fn depth_order(f: &ProjectedFacet, g: &ProjectedFacet, scratch: &mut Scratch) -> DepthOrder {
    if is_separated(f, g) || is_separated(g, f) {
        return DepthOrder::Apart;
    }
    let nearness_difference = f.nearness_difference(g);
    // A corner on the grid is up to a step off, and a steep plane amplifies that.
    let noise = SAME_DEPTH + 2.0 * (nearness_difference[0].abs() + nearness_difference[1].abs());
    let mut range = range_in_box(nearness_difference, f, g);
    if range[0] < -noise && range[1] > noise || range[0] >= -noise && range[1] <= noise {
        range = range_in_intersection(nearness_difference, f, g, scratch);
    }
    match range {
        [least, most] if least > most => DepthOrder::Apart,
        [least, most] if least < -noise && most > noise => DepthOrder::Crossing,
        // Coplanar facets, which only intersecting solids have: either order will do.
        [least, most] if most.max(-least) < SAME_DEPTH => DepthOrder::InFront,
        [least, most] if most > -least => DepthOrder::InFront,
        _ => DepthOrder::Behind,
    }
}

/// Whether one of the sides of `f` separates it from `g`.
fn is_separated(f: &ProjectedFacet, g: &ProjectedFacet) -> bool {
    let is_outside = |side: &Line| {
        g.hull()
            .iter()
            .all(|&corner| signed_distance(*side, real(corner)) > -NOISE)
    };
    f.sides.iter().any(is_outside)
}

/// The range of the nearness difference within the overlap of the boxes of two facets.
fn range_in_box([a, b, c]: [f64; 3], f: &ProjectedFacet, g: &ProjectedFacet) -> [f64; 2] {
    let span = |axis: usize| [f.low[axis].max(g.low[axis]), f.high[axis].min(g.high[axis])].map(f64::from);
    let [x, y] = [span(0), span(1)];
    let middle = a * (x[0] + x[1]) / 2.0 + b * (y[0] + y[1]) / 2.0 + c;
    let reach = (a * (x[1] - x[0])).abs() / 2.0 + (b * (y[1] - y[0])).abs() / 2.0;
    [middle - reach, middle + reach]
}

/// The range of the nearness difference within the intersection of the hulls of two facets.
fn range_in_intersection(
    [a, b, c]: [f64; 3],
    f: &ProjectedFacet,
    g: &ProjectedFacet,
    scratch: &mut Scratch,
) -> [f64; 2] {
    let Scratch { intersection, next } = scratch;
    intersection.clear();
    intersection.extend(f.hull().iter().map(|&corner| real(corner)));
    for [a, b, c] in &g.sides {
        clip_by(intersection, |[x, y]| c - a * x - b * y, next);
        std::mem::swap(intersection, next);
    }
    let differences = intersection.iter().map(|[x, y]| a * x + b * y + c);
    differences.fold([f64::INFINITY, f64::NEG_INFINITY], |[least, most], difference| {
        [least.min(difference), most.max(difference)]
    })
}

impl ProjectedFacet {
    /// Whether this facet hides all of a facet behind it.
    fn covers(&self, behind: &ProjectedFacet) -> bool {
        let within = |corner: &Corner| {
            self.sides
                .iter()
                .all(|&side| signed_distance(side, real(*corner)) < NOISE / 2.0)
        };
        self.is_convex() && behind.hull().iter().all(within)
    }
}
