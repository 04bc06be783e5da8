//! Which facet stands before which.

use super::sheet::{Line, NOISE, Seen, beyond, real};
use super::tree::Tree;
use crate::corner::Corner;
use crate::region::{Point2, clip_by};
use crate::sorting;

/// How far two planes may be apart and still meet, metres: above the noise of the arithmetic.
const SAME_DEPTH: f64 = 1e-8;

/// One facet that stands before another where both are seen.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Before {
    /// The place of the facet behind.
    pub(super) behind: usize,
    /// The place of the facet in front.
    pub(super) front: usize,
    /// Whether their planes cross where both are seen, so that each stands before the other somewhere.
    pub(super) crossing: bool,
}

/// What stands before what.
pub(super) struct Order {
    /// Sorted by the facet behind.
    pub(super) pairs: Vec<Before>,
    /// Where the pairs of each facet behind begin.
    starts: Vec<usize>,
    /// Whether a facet is wholly hidden; such a facet hides nothing that is not hidden without it.
    pub(super) hidden: Vec<bool>,
}

impl Order {
    pub(super) fn of(seen: &[Seen]) -> Order {
        let tree = Tree::over(seen.iter().map(|facet| (facet.low, facet.high)));
        let mut hidden = vec![false; seen.len()];
        let mut pairs = Vec::new();
        let mut scratch = Scratch::default();
        for (i, f) in seen.iter().enumerate().filter(|(_, facet)| !facet.is_thin) {
            tree.overlapping((f.low, f.high), NOISE as i32, |j| {
                let g = &seen[j];
                if j <= i || g.is_thin || hidden[i] || hidden[j] {
                    return;
                }
                match stand(f, g, &mut scratch) {
                    Stand::Apart => {}
                    Stand::Crossing => {
                        pairs.push(Before {
                            behind: i,
                            front: j,
                            crossing: true,
                        });
                        pairs.push(Before {
                            behind: j,
                            front: i,
                            crossing: true,
                        });
                    }
                    Stand::Before => {
                        hidden[j] = f.covers(g);
                        pairs.push(Before {
                            behind: j,
                            front: i,
                            crossing: false,
                        });
                    }
                    Stand::Behind => {
                        hidden[i] = g.covers(f);
                        pairs.push(Before {
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
        let mut starts = vec![0; seen.len() + 1];
        for pair in &pairs {
            starts[pair.behind + 1] += 1;
        }
        for place in 0..seen.len() {
            starts[place + 1] += starts[place];
        }
        Order {
            pairs,
            starts,
            hidden,
        }
    }

    /// What stands before a facet and is not itself wholly hidden.
    pub(super) fn before(&self, facet: usize) -> impl Iterator<Item = &Before> {
        let pairs = &self.pairs[self.starts[facet]..self.starts[facet + 1]];
        pairs.iter().filter(|pair| !self.hidden[pair.front])
    }

    /// Whether nothing stands before a facet.
    pub(super) fn is_whole(&self, facet: usize) -> bool {
        self.before(facet).next().is_none()
    }

    /// How many facets stand before one, hidden ones too.
    pub(super) fn count(&self, facet: usize) -> usize {
        self.starts[facet + 1] - self.starts[facet]
    }
}

/// How one facet stands to another.
enum Stand {
    /// They have nothing in common on the sheet.
    Apart,
    Before,
    Behind,
    Crossing,
}

#[derive(Default)]
struct Scratch {
    common: Vec<Point2>,
    next: Vec<Point2>,
}

/// How one facet stands to another whose box it overlaps.
///
/// Facets of solids that do not run into each other change places only where a hole or a notch lets one through the
/// other; there their planes cross.
fn stand(f: &Seen, g: &Seen, scratch: &mut Scratch) -> Stand {
    if parted(f, g) || parted(g, f) {
        return Stand::Apart;
    }
    let lead = f.lead(g);
    // A corner on the grid lies up to a step from its place, and a steep plane makes much of it.
    let noise = SAME_DEPTH + 2.0 * (lead[0].abs() + lead[1].abs());
    let mut range = range_in_box(lead, f, g);
    if range[0] < -noise && range[1] > noise || range[0] >= -noise && range[1] <= noise {
        range = range_in_common(lead, f, g, scratch);
    }
    match range {
        [least, most] if least > most => Stand::Apart,
        [least, most] if least < -noise && most > noise => Stand::Crossing,
        // Two that lie in one plane, which no two solids do that keep apart: the first is as good as the other.
        [least, most] if most.max(-least) < SAME_DEPTH => Stand::Before,
        [least, most] if most > -least => Stand::Before,
        _ => Stand::Behind,
    }
}

/// Whether one of the sides of `f` parts it from `g`.
fn parted(f: &Seen, g: &Seen) -> bool {
    let is_outside = |side: &Line| {
        g.hull()
            .iter()
            .all(|&corner| beyond(*side, real(corner)) > -NOISE)
    };
    f.sides.iter().any(is_outside)
}

/// The least and the most of a lead within the common box of two facets.
fn range_in_box([a, b, c]: [f64; 3], f: &Seen, g: &Seen) -> [f64; 2] {
    let span = |axis: usize| [f.low[axis].max(g.low[axis]), f.high[axis].min(g.high[axis])].map(f64::from);
    let [x, y] = [span(0), span(1)];
    let middle = a * (x[0] + x[1]) / 2.0 + b * (y[0] + y[1]) / 2.0 + c;
    let reach = (a * (x[1] - x[0])).abs() / 2.0 + (b * (y[1] - y[0])).abs() / 2.0;
    [middle - reach, middle + reach]
}

/// The least and the most of a lead within the common part of the hulls of two facets.
fn range_in_common([a, b, c]: [f64; 3], f: &Seen, g: &Seen, scratch: &mut Scratch) -> [f64; 2] {
    let Scratch { common, next } = scratch;
    common.clear();
    common.extend(f.hull().iter().map(|&corner| real(corner)));
    for [a, b, c] in &g.sides {
        clip_by(common, |[x, y]| c - a * x - b * y, next);
        std::mem::swap(common, next);
    }
    let leads = common.iter().map(|[x, y]| a * x + b * y + c);
    leads.fold([f64::INFINITY, f64::NEG_INFINITY], |[least, most], lead| {
        [least.min(lead), most.max(lead)]
    })
}

impl Seen {
    /// Whether nothing of a facet behind this one is seen past it.
    fn covers(&self, behind: &Seen) -> bool {
        let within = |corner: &Corner| {
            self.sides
                .iter()
                .all(|&side| beyond(side, real(*corner)) < NOISE / 2.0)
        };
        self.is_convex() && behind.hull().iter().all(within)
    }
}
