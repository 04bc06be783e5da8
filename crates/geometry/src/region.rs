//! Flat regions: polygons with holes in the plane of a face, and their boolean operations.

#![allow(
    clippy::indexing_slicing,
    reason = "hot loops over the corners of its own outlines"
)]

use crate::boolean::{Boolean, Rule};
use crate::corner::Corner;

/// A point in the plane of a face, metres.
pub type Point2 = [f64; 2];

/// A closed line of corners; the last is joined to the first.
type Contour = Vec<Point2>;

/// How far two corners may lie apart and still be one: a nanometre, far above the noise of the arithmetic and far
/// below any tape.
const SAME_POINT: f64 = 1e-9;

/// How nearly the sides of a rectangle must be upright: well below [`SAME_POINT`], so that nothing is lost when it
/// is taken as exactly upright.
const EXACT: f64 = 1e-12;

/// A flat region: any number of separate shapes, each with any number of holes.
///
/// Nearly all faces of furniture are upright rectangles, and most others are convex. Two rectangles meet in a
/// rectangle, two convex regions in a convex region that is found by clipping. Everything else goes through the
/// general polygon [`boolean`](crate::boolean).
#[derive(Clone, Debug, PartialEq)]
pub struct Region(Kind);

#[derive(Clone, Debug, PartialEq)]
enum Kind {
    /// The corners of an upright rectangle, from the lower left counter-clockwise.
    Rectangle([Point2; 4]),
    /// Corners counter-clockwise; fewer than three are the empty region.
    Convex(Contour),
    /// Outer contours (counter-clockwise), each followed by its holes (clockwise).
    General(Vec<Contour>),
}

impl Region {
    /// The region without any area.
    pub const EMPTY: Self = Region(Kind::Convex(Vec::new()));

    /// The rectangle from the origin to `(width, height)`.
    pub fn rectangle(width: f64, height: f64) -> Self {
        Region::between([0.0, 0.0], [width, height])
    }

    /// The upright rectangle between its lower left and its upper right corner.
    pub(crate) fn between(low: Point2, high: Point2) -> Self {
        Region(Kind::Rectangle(corners_between(low, high)))
    }

    /// The region inside a simple closed line of corners, in either direction.
    ///
    /// # Example
    /// ```
    /// use geometry::Region;
    /// let gable = Region::polygon(vec![[0.0, 0.0], [0.4, 0.0], [0.4, 0.3], [0.2, 0.5], [0.0, 0.3]]);
    /// assert!((gable.area() - 0.16).abs() < 1e-12);
    /// ```
    pub fn polygon(mut corners: Vec<Point2>) -> Self {
        if signed_area(&corners) < 0.0 {
            corners.reverse();
        }
        if let Some((low, high)) = as_rectangle(&corners) {
            Region::between(low, high)
        } else if is_convex(&corners) {
            Region(Kind::Convex(corners))
        } else {
            Region(Kind::General(vec![corners]))
        }
    }

    /// The region within outer contours (counter-clockwise), each followed by its holes (clockwise).
    pub(crate) fn within_lines(mut contours: Vec<Contour>) -> Self {
        match contours.as_mut_slice() {
            [] => Region::EMPTY,
            [one] => Region::polygon(std::mem::take(one)),
            _ => Region(Kind::General(contours)),
        }
    }

    /// The area in square metres.
    pub fn area(&self) -> f64 {
        match &self.0 {
            Kind::Rectangle([low, _, high, _]) => (high[0] - low[0]) * (high[1] - low[1]),
            Kind::Convex(corners) => signed_area(corners),
            Kind::General(contours) => contours.iter().map(|contour| signed_area(contour)).sum(),
        }
    }

    /// Every contour, outer lines and holes alike.
    pub fn contours(&self) -> impl Iterator<Item = &[Point2]> {
        let (one, many) = match &self.0 {
            Kind::Rectangle(corners) => (Some(corners.as_slice()), [].as_slice()),
            Kind::Convex(corners) => (Some(corners.as_slice()), [].as_slice()),
            Kind::General(contours) => (None, contours.as_slice()),
        };
        one.filter(|c| c.len() > 2)
            .into_iter()
            .chain(many.iter().map(Vec::as_slice))
    }

    /// The smallest upright rectangle around the region: its lower left and its upper right corner.
    pub fn bounds(&self) -> (Point2, Point2) {
        if let Kind::Rectangle([low, _, high, _]) = self.0 {
            return (low, high);
        }
        let mut low = [f64::INFINITY; 2];
        let mut high = [f64::NEG_INFINITY; 2];
        for point in self.contours().flatten() {
            for axis in 0..2 {
                low[axis] = low[axis].min(point[axis]);
                high[axis] = high[axis].max(point[axis]);
            }
        }
        (low, high)
    }

    /// What lies in both regions.
    pub fn intersection(&self, other: &Region) -> Region {
        match (&self.0, &other.0) {
            (Kind::Rectangle(a), Kind::Rectangle(b)) => common_rectangle(a, b),
            _ => match (self.convex_corners(), other.convex_corners()) {
                (Some(a), Some(b)) => Region(Kind::Convex(clip_convex(a, b))),
                _ => boolean(&[self], &[other], Rule::Intersection),
            },
        }
    }

    /// The area of what lies in both regions.
    pub(crate) fn intersection_area(&self, other: &Region) -> f64 {
        if let (Kind::Rectangle(a), Kind::Rectangle(b)) = (&self.0, &other.0) {
            return common_rectangle(a, b).area();
        }
        let (region, clip) = match (self.convex_corners(), other.convex_corners()) {
            (_, Some(clip)) => (self, clip),
            (Some(clip), None) => (other, clip),
            (None, None) => return boolean(&[self], &[other], Rule::Intersection).area(),
        };
        // Clipped lines of a region that is not convex may run to and fro along the clip, which encloses nothing.
        let clipped = region.contours().map(|line| signed_area(&clip_line(line, clip)));
        clipped.sum()
    }

    /// What lies in this region and not in the other.
    pub fn difference(&self, other: &Region) -> Region {
        match (&self.0, &other.0) {
            (Kind::Rectangle(a), Kind::Rectangle(b)) => rectangle_less(a, b),
            _ => boolean(&[self], &[other], Rule::Difference),
        }
    }

    /// Whether the region is known to be convex.
    pub(crate) fn is_convex(&self) -> bool {
        self.convex_corners().is_some()
    }

    fn convex_corners(&self) -> Option<&[Point2]> {
        match &self.0 {
            Kind::Rectangle(corners) => Some(corners),
            Kind::Convex(corners) => Some(corners),
            Kind::General(_) => None,
        }
    }

    /// What lies in this region and in none of the others.
    pub(crate) fn difference_of_all<'a>(&self, others: impl Iterator<Item = &'a Region>) -> Region {
        let others: Vec<&Region> = others.collect();
        if others.iter().all(|other| other.contours().next().is_none()) {
            return self.clone();
        }
        boolean(&[self], &others, Rule::Difference)
    }

    /// What lies in any of the regions.
    pub(crate) fn union_of_all<'a>(regions: impl Iterator<Item = &'a Region>) -> Region {
        boolean(&regions.collect::<Vec<_>>(), &[], Rule::Union)
    }

    /// The part of this region in which every `a x + b y <= c` holds; the lines bound a convex area.
    pub(crate) fn clipped_to(&self, lines: impl Iterator<Item = [f64; 3]>) -> Region {
        let (low, high) = self.bounds();
        let corners = corners_between(low, high);
        let mut crossing = Vec::new();
        for line in lines {
            let inside = corners.map(|p| room_before(line, p));
            if inside.iter().all(|room| *room <= 0.0) {
                return Region::EMPTY;
            }
            if inside.iter().any(|room| *room < 0.0) {
                crossing.push(line);
            }
        }
        if crossing.is_empty() {
            return self.clone();
        }
        if matches!(self.0, Kind::Rectangle(_)) && crossing.iter().all(|&line| is_upright(line)) {
            let (mut low, mut high) = (low, high);
            for [a, b, c] in crossing {
                let (axis, slope) = if a == 0.0 { (1, b) } else { (0, a) };
                if slope > 0.0 {
                    high[axis] = high[axis].min(c / slope);
                } else {
                    low[axis] = low[axis].max(c / slope);
                }
            }
            return if low[0] < high[0] && low[1] < high[1] {
                Region::between(low, high)
            } else {
                Region::EMPTY
            };
        }
        let mut kept = corners.to_vec();
        let mut next = Vec::new();
        for line in crossing {
            clip_by(&kept, |p| room_before(line, p), &mut next);
            std::mem::swap(&mut kept, &mut next);
        }
        join_near(&mut kept);
        self.intersection(&Region::polygon(kept))
    }

    /// Whether it is a rectangle that stands upright in its plane.
    pub(crate) fn is_upright_rectangle(&self) -> bool {
        matches!(self.0, Kind::Rectangle(_))
    }

    /// The same region with every corner moved by `map`, which must keep lengths and may mirror.
    pub(crate) fn mapped(&self, map: impl Fn(Point2) -> Point2) -> Region {
        let mut contours: Vec<Contour> = match &self.0 {
            Kind::Rectangle(corners) => {
                let moved = corners.map(map);
                return match as_rectangle(&moved) {
                    Some((low, high)) => Region::between(low, high),
                    None => Region::polygon(moved.to_vec()),
                };
            }
            Kind::Convex(corners) => return Region::polygon(corners.iter().map(|&p| map(p)).collect()),
            Kind::General(contours) => {
                let moved = contours.iter().map(|line| line.iter().map(|&p| map(p)).collect());
                moved.collect()
            }
        };
        if contours.first().is_some_and(|outer| signed_area(outer) < 0.0) {
            contours.iter_mut().for_each(|line| line.reverse());
        }
        Region(Kind::General(contours))
    }
}

/// The general boolean of two sets of regions.
fn boolean(first: &[&Region], second: &[&Region], rule: Rule) -> Region {
    let corners = || {
        first
            .iter()
            .chain(second)
            .flat_map(|region| region.contours().flatten())
    };
    let Some(grid) = Grid::over(corners()) else {
        return Region::EMPTY;
    };
    let mut boolean = Boolean::new(corners().count());
    for (set, regions) in [first, second].into_iter().enumerate() {
        for contour in regions.iter().flat_map(|region| region.contours()) {
            boolean.add(set, contour.iter().map(|&point| grid.corner(point)));
        }
    }
    let contours = boolean.contours(rule).into_iter();
    let points = |contour: Vec<Corner>| contour.into_iter().map(|corner| grid.point(corner)).collect();
    Region::within_lines(contours.map(points).collect())
}

/// The grid of whole numbers of the general boolean.
struct Grid {
    middle: Point2,
    steps_per_metre: f64,
}

impl Grid {
    /// The grid over points: its steps are the power of two with which no point is more than 2^29 of them from the
    /// middle. `None` without points, and with one that lies nowhere.
    fn over<'a>(points: impl Iterator<Item = &'a Point2>) -> Option<Grid> {
        let mut low = [f64::INFINITY; 2];
        let mut high = [f64::NEG_INFINITY; 2];
        for point in points {
            for axis in 0..2 {
                if !point[axis].is_finite() {
                    return None;
                }
                low[axis] = low[axis].min(point[axis]);
                high[axis] = high[axis].max(point[axis]);
            }
        }
        let middle = [0, 1].map(|axis| (low[axis] + high[axis]) * 0.5);
        let reach = (high[0] - middle[0]).max(high[1] - middle[1]);
        let (fraction, exponent) = libm::frexp(reach);
        let digits = if fraction == 0.5 { exponent - 1 } else { exponent };
        let steps_per_metre = libm::ldexp(1.0, (29 - digits).min(f64::MAX_EXP - 1));
        reach.is_finite().then_some(Grid {
            middle,
            steps_per_metre,
        })
    }

    fn corner(&self, point: Point2) -> Corner {
        let whole = |axis: usize| ((point[axis] - self.middle[axis]) * self.steps_per_metre).round() as i32;
        Corner::new(whole(0), whole(1))
    }

    fn point(&self, corner: Corner) -> Point2 {
        let Corner { x, y } = corner;
        let at = |axis: usize, steps: i32| self.middle[axis] + f64::from(steps) / self.steps_per_metre;
        [at(0, x), at(1, y)]
    }
}

/// The corners of an upright rectangle from the lower left counter-clockwise.
fn corners_between(low: Point2, high: Point2) -> [Point2; 4] {
    [low, [high[0], low[1]], high, [low[0], high[1]]]
}

/// Whether the line `a x + b y = c` runs along one of the two axes.
fn is_upright([a, b, _]: [f64; 3]) -> bool {
    (a == 0.0) != (b == 0.0)
}

/// The lower left and upper right corner, if four corners are those of an upright rectangle.
fn as_rectangle(corners: &[Point2]) -> Option<(Point2, Point2)> {
    let &[a, b, c, d] = corners else { return None };
    let same = |p: f64, q: f64| (p - q).abs() < EXACT;
    let level_first = same(a[1], b[1]) && same(b[0], c[0]) && same(c[1], d[1]) && same(d[0], a[0]);
    let upright_first = same(a[0], b[0]) && same(b[1], c[1]) && same(c[0], d[0]) && same(d[1], a[1]);
    (level_first || upright_first).then(|| {
        let low = [a[0].min(c[0]), a[1].min(c[1])];
        (low, [a[0].max(c[0]), a[1].max(c[1])])
    })
}

fn common_rectangle([a_low, _, a_high, _]: &[Point2; 4], [b_low, _, b_high, _]: &[Point2; 4]) -> Region {
    let low = [a_low[0].max(b_low[0]), a_low[1].max(b_low[1])];
    let high = [a_high[0].min(b_high[0]), a_high[1].min(b_high[1])];
    if high[0] - low[0] < SAME_POINT || high[1] - low[1] < SAME_POINT {
        Region::EMPTY
    } else {
        Region::between(low, high)
    }
}

/// A rectangle less another.
fn rectangle_less(a: &[Point2; 4], b: &[Point2; 4]) -> Region {
    let ([low, _, high, _], [b_low, _, b_high, _]) = (a, b);
    let misses = |axis: usize| b_high[axis] < low[axis] + SAME_POINT || b_low[axis] > high[axis] - SAME_POINT;
    if misses(0) || misses(1) {
        return Region(Kind::Rectangle(*a));
    }
    let below = [0, 1].map(|axis| b_low[axis] < low[axis] + SAME_POINT);
    let above = [0, 1].map(|axis| b_high[axis] > high[axis] - SAME_POINT);
    let (mut cut_low, mut cut_high) = (*low, *high);
    for axis in 0..2 {
        if !below[axis] {
            cut_low[axis] = b_low[axis];
        }
        if !above[axis] {
            cut_high[axis] = b_high[axis];
        }
    }
    let crosses = [0, 1].map(|axis| below[axis] && above[axis]);
    let (before, after) = match crosses {
        [true, true] => return Region::EMPTY,
        [true, false] => ([high[0], cut_low[1]], [low[0], cut_high[1]]),
        [false, true] => ([cut_low[0], high[1]], [cut_high[0], low[1]]),
        [false, false] => return notched(a, [cut_low, cut_high], [below[1], above[0], above[1], below[0]]),
    };
    let along = usize::from(crosses[0]);
    match (below[along], above[along]) {
        (true, _) => Region::between(after, *high),
        (_, true) => Region::between(*low, before),
        _ => Region(Kind::General(vec![
            corners_between(*low, before).to_vec(),
            corners_between(after, *high).to_vec(),
        ])),
    }
}

/// A rectangle from which another is cut that reaches over at most one of two opposite sides: over a corner, into one
/// side, or through the middle. `over` says which sides it reaches over: lower, right, upper, left.
fn notched(corners: &[Point2; 4], [low, high]: [Point2; 2], over: [bool; 4]) -> Region {
    let cut = corners_between(low, high);
    let mut outline = Vec::with_capacity(8);
    for (k, &corner) in corners.iter().enumerate() {
        let [before, next] = [over[(k + 3) % 4], over[(k + 1) % 4]];
        if over[k] && before {
            outline.extend([3, 2, 1].map(|step| cut[(k + step) % 4]));
        } else {
            outline.push(corner);
            if over[k] && !next {
                outline.extend([0, 3, 2, 1].map(|step| cut[(k + step) % 4]));
            }
        }
    }
    let mut contours = vec![outline];
    if over == [false; 4] {
        contours.push(cut.into_iter().rev().collect());
    }
    Region(Kind::General(contours))
}

/// How far a point lies within `a x + b y <= c`.
fn room_before([a, b, c]: [f64; 3], point: Point2) -> f64 {
    c - a * point[0] - b * point[1]
}

fn signed_area(corners: &[Point2]) -> f64 {
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

fn is_convex(corners: &[Point2]) -> bool {
    let n = corners.len();
    (0..n).all(|i| {
        let (a, b, c) = (corners[i], corners[(i + 1) % n], corners[(i + 2) % n]);
        (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) >= -1e-15
    })
}

/// Keeps of a convex line of corners what lies where `inside` is not negative; `kept` is written anew.
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

/// Clips one convex region by each edge of another.
fn clip_convex(subject: &[Point2], clip: &[Point2]) -> Contour {
    let mut kept = clip_line(subject, clip);
    join_near(&mut kept);
    kept
}

/// Clips a closed line by each edge of a convex region (the method of Sutherland and Hodgman).
fn clip_line(subject: &[Point2], clip: &[Point2]) -> Contour {
    if clip.len() < 3 {
        return Vec::new();
    }
    // Two lists that change places: this is the innermost loop of every takeoff.
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

/// Makes one corner of those that lie within [`SAME_POINT`] of their neighbour.
///
/// Where two regions share an edge, clipping leaves corners that only the noise of the arithmetic keeps apart.
/// The line through two such corners has any direction, and a region that is clipped by it later loses any
/// share of its area.
fn join_near(corners: &mut Contour) {
    let near = |p: Point2, q: Point2| (p[0] - q[0]).abs() < SAME_POINT && (p[1] - q[1]).abs() < SAME_POINT;
    corners.dedup_by(|later, earlier| near(*later, *earlier));
    while corners.len() > 1 && near(corners[0], corners[corners.len() - 1]) {
        corners.pop();
    }
    if corners.len() < 3 {
        corners.clear();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn square(x: f64, y: f64, size: f64) -> Region {
        Region::rectangle(size, size).mapped(|p| [p[0] + x, p[1] + y])
    }

    fn ell() -> Region {
        Region::polygon(vec![
            [0.0, 0.0],
            [2.0, 0.0],
            [2.0, 1.0],
            [1.0, 1.0],
            [1.0, 2.0],
            [0.0, 2.0],
        ])
    }

    #[test]
    fn overlapping_squares() {
        let (a, b) = (square(0.0, 0.0, 2.0), square(1.0, 1.0, 2.0));
        assert!((a.intersection(&b).area() - 1.0).abs() < 1e-12);
        assert!((a.difference(&b).area() - 3.0).abs() < 1e-8);
        assert!((Region::union_of_all([&a, &b].into_iter()).area() - 7.0).abs() < 1e-8);
    }

    #[test]
    fn a_hole_counts_against_the_area() {
        let ring = square(0.0, 0.0, 3.0).difference(&square(1.0, 1.0, 1.0));
        assert!((ring.area() - 8.0).abs() < 1e-8);
        assert_eq!(ring.contours().count(), 2);
        let mirrored = ring.mapped(|p| [-p[0], p[1]]);
        assert!((mirrored.area() - 8.0).abs() < 1e-8);
    }

    /// A member of a frame, the same nine times a little aside as a maker repeated it, and another member, as seen from
    /// a corner: with its usual precision `i_overlay` 9.1 does not come to an end with this.
    #[test]
    fn lines_that_all_but_run_along_each_other_are_cut_in_time() {
        let seen: [[[i32; 2]; 4]; 11] = [
            [
                [54_695_064, 63_722_591],
                [40_898_050, 50_930_597],
                [356_368_293, 0],
                [342_571_279, 17_246_869],
            ],
            [
                [301_673_229, 23_849_590],
                [315_470_243, 6_602_722],
                [315_470_243, 292_231_483],
                [301_673_229, 279_439_489],
            ],
            [
                [13_797_014, 70_325_312],
                [0, 57_533_318],
                [315_470_243, 6_602_722],
                [301_673_229, 23_849_590],
            ],
            [
                [18_341_242, 69_591_676],
                [4_544_228, 56_799_682],
                [320_014_470, 5_869_086],
                [306_217_457, 23_115_954],
            ],
            [
                [22_885_470, 68_858_040],
                [9_088_456, 56_066_047],
                [324_558_698, 5_135_450],
                [310_761_684, 22_382_318],
            ],
            [
                [27_429_697, 68_124_405],
                [13_632_684, 55_332_411],
                [329_102_926, 4_401_815],
                [315_305_912, 21_648_683],
            ],
            [
                [31_973_925, 67_390_769],
                [18_176_911, 54_598_775],
                [333_647_154, 3_668_179],
                [319_850_140, 20_915_047],
            ],
            [
                [36_518_153, 66_657_133],
                [22_721_139, 53_865_139],
                [338_191_382, 2_934_543],
                [324_394_368, 20_181_411],
            ],
            [
                [41_062_381, 65_923_498],
                [27_265_367, 53_131_504],
                [342_735_609, 2_200_907],
                [328_938_596, 19_447_776],
            ],
            [
                [45_606_609, 65_189_862],
                [31_809_595, 52_397_868],
                [347_279_837, 1_467_272],
                [333_482_823, 18_714_140],
            ],
            [
                [50_150_836, 64_456_226],
                [36_353_823, 51_664_232],
                [351_824_065, 733_636],
                [338_027_051, 17_980_504],
            ],
        ];
        let regions = seen.map(|corners| {
            Region::polygon(
                corners
                    .map(|corner| corner.map(|at| f64::from(at) * 4e-9))
                    .to_vec(),
            )
        });
        let rest = regions[0].difference_of_all(regions[1..].iter());
        let all = Region::union_of_all(regions.iter()).area();
        let others = Region::union_of_all(regions[1..].iter()).area();
        assert!((rest.area() - (all - others)).abs() < 1e-6);
    }

    #[test]
    fn a_rectangle_less_another_is_what_the_general_boolean_leaves() {
        let whole = square(0.0, 0.0, 4.0);
        // From before, at, within, at the end of, and beyond the square, each way.
        let places = [-1.0, 0.0, 1.0, 3.0, 4.0, 5.0];
        let spans = || (0..6).flat_map(|i| (i + 1..6).map(move |j| [places[i], places[j]]));
        for x in spans() {
            for y in spans() {
                let cut = Region::between([x[0], y[0]], [x[1], y[1]]);
                let (rest, general) = (
                    whole.difference(&cut),
                    boolean(&[&whole], &[&cut], Rule::Difference),
                );
                assert!((rest.area() - general.area()).abs() < 1e-7, "{x:?} {y:?}");
                assert_eq!(rest.contours().count(), general.contours().count(), "{x:?} {y:?}");
                let less = |a: &Region, b: &Region| boolean(&[a], &[b], Rule::Difference).area();
                let same = less(&rest, &general) + less(&general, &rest);
                assert!(same < 1e-7, "{x:?} {y:?}: {rest:?} against {general:?}");
                let corners = |region: &Region| region.contours().flatten().count();
                assert_eq!(corners(&rest), corners(&general), "{x:?} {y:?}");
            }
        }
    }

    #[test]
    fn a_reentrant_region_goes_through_the_general_boolean() {
        assert!((ell().intersection(&square(0.5, 0.5, 2.0)).area() - 1.25).abs() < 1e-8);
    }

    #[test]
    fn regions_that_only_touch_share_nothing() {
        assert!(
            square(0.0, 0.0, 1.0)
                .intersection(&square(1.0, 0.0, 1.0))
                .area()
                .abs()
                < 1e-12
        );
        assert!(
            square(0.0, 0.0, 1.0)
                .intersection(&square(5.0, 0.0, 1.0))
                .area()
                .abs()
                < 1e-12
        );
        assert_eq!(Region::EMPTY.area(), 0.0);
        assert_eq!(square(0.0, 0.0, 1.0).intersection(&Region::EMPTY).area(), 0.0);
    }

    proptest! {
        /// The quick way for convex regions and the general boolean are two witnesses of one area.
        #[test]
        fn clipping_agrees_with_the_general_boolean(
            x in -1.0f64..1.0, y in -1.0f64..1.0, size in 0.1f64..2.0, turn in 0.0f64..6.3,
        ) {
            let (sin, cos) = libm::sincos(turn);
            let a = square(0.0, 0.0, 1.0);
            let b = square(x, y, size).mapped(|p| [cos * p[0] - sin * p[1], sin * p[0] + cos * p[1]]);
            let clipped = a.intersection(&b).area();
            let general = boolean(&[&a], &[&b], Rule::Intersection).area();
            prop_assert!((clipped - general).abs() < 1e-7, "{clipped} against {general}");
            prop_assert!((a.difference(&b).area() + clipped - 1.0).abs() < 1e-7);
            let ring = square(-0.5, -0.5, 2.0).difference(&square(0.2, 0.3, 0.4));
            for region in [ell(), ring] {
                let general = boolean(&[&region], &[&b], Rule::Intersection).area();
                prop_assert!((region.intersection_area(&b) - general).abs() < 1e-7);
                prop_assert!((b.intersection_area(&region) - general).abs() < 1e-7);
            }
        }
    }
}
