//! Profiles: the line a moulding or a worked edge follows, how long it is, and the polyline that stands for it.
//!
//! A profile lies in a plane of its own with the axes *in* (towards the wood) and *up*, metres. Each member is a
//! straight piece or a quarter of an ellipse, as `tests/cad/CONSTRUCTION.md` lays down.
//!
//! Lengths, moments and areas come from closed formulas of the ellipse and never from points. [`Profile::line`]
//! cuts the same ellipses into points for drawings in space and for solids; [`Profile::curve`] gives them to
//! `kurbo`, which is there for drawing only.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI, TAU};

use kurbo::{Arc, BezPath};

use crate::Point2;

/// How far the drawn curve may stray from the true ellipse: a nanometre, which no drawing shows.
const CURVE_TOLERANCE: f64 = 1e-9;

/// The most chords in one arc, so that no tolerance, however small, can fill the memory.
const MOST_CHORDS: usize = 1000;

/// A standard shape of the trade.
///
/// The ogee is the cyma recta of the books of architecture (hollow above, full below), the reversed ogee the cyma
/// reversa (full above, hollow below).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shape {
    /// A flat slope.
    Chamfer,
    /// A full quarter of an ellipse, flush with both faces.
    Roundover,
    /// A hollow quarter of an ellipse.
    Cove,
    /// A full quarter between two fillets.
    Ovolo,
    /// Full below, hollow above: cyma recta.
    Ogee,
    /// Hollow below, full above: cyma reversa.
    ReversedOgee,
    /// A right-angled step.
    Step,
    /// A bead below a cove.
    BeadAndCove,
    /// A full half round over the whole thickness.
    HalfRound,
}

impl Shape {
    /// Every shape, in the order in which they are offered.
    pub const ALL: [Self; 9] = [
        Shape::Chamfer,
        Shape::Roundover,
        Shape::Cove,
        Shape::Ovolo,
        Shape::Ogee,
        Shape::ReversedOgee,
        Shape::Step,
        Shape::BeadAndCove,
        Shape::HalfRound,
    ];

    /// The word for it in saved files.
    pub const fn key(self) -> &'static str {
        match self {
            Shape::Chamfer => "chamfer",
            Shape::Roundover => "roundover",
            Shape::Cove => "cove",
            Shape::Ovolo => "ovolo",
            Shape::Ogee => "ogee",
            Shape::ReversedOgee => "reversed-ogee",
            Shape::Step => "step",
            Shape::BeadAndCove => "bead-and-cove",
            Shape::HalfRound => "half-round",
        }
    }

    /// The word for it in the trade: the ogee is the cyma recta, the reversed ogee the cyma reversa.
    pub const fn label(self) -> &'static str {
        match self {
            Shape::Chamfer => "Chamfer",
            Shape::Roundover => "Round-over",
            Shape::Cove => "Cove",
            Shape::Ovolo => "Ovolo",
            Shape::Ogee => "Ogee",
            Shape::ReversedOgee => "Reversed ogee",
            Shape::Step => "Step",
            Shape::BeadAndCove => "Bead and cove",
            Shape::HalfRound => "Half round",
        }
    }

    /// The shape with this key.
    pub fn by_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|shape| shape.key() == key)
    }

    /// Where the shape begins within the stated edge, and its members, as on a worked edge.
    fn members(self, width: f64, height: f64) -> (f64, Vec<Member>) {
        let straight = |inward, up| Member::Straight { inward, up };
        let quarter = |first| move |inward, up| Member::Quarter { inward, up, first };
        let (up_first, in_first) = (quarter(First::Up), quarter(First::In));
        let (half_width, half_height) = (width / 2.0, height / 2.0);
        let members = match self {
            Shape::Chamfer => vec![straight(width, height)],
            Shape::Roundover => vec![up_first(width, height)],
            Shape::Cove => vec![in_first(width, height)],
            Shape::Ovolo => vec![
                straight(width / 5.0, 0.0),
                up_first(0.8 * width, 0.8 * height),
                straight(0.0, height / 5.0),
            ],
            Shape::Ogee => vec![
                up_first(half_width, half_height),
                in_first(half_width, half_height),
            ],
            Shape::ReversedOgee => vec![
                in_first(half_width, half_height),
                up_first(half_width, half_height),
            ],
            Shape::Step => vec![straight(width, 0.0), straight(0.0, height)],
            Shape::BeadAndCove => vec![
                straight(half_width, 0.0),
                in_first(-half_width, height / 4.0),
                up_first(half_width, height / 4.0),
                in_first(half_width, half_height),
            ],
            Shape::HalfRound => vec![in_first(-width, half_height), up_first(width, half_height)],
        };
        let start = if self == Shape::HalfRound { width } else { 0.0 };
        (start, members)
    }
}

/// Which way a quarter of an ellipse leaves its first end; it arrives at right angles to that.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum First {
    /// It leaves upwards (or downwards) and arrives level.
    Up,
    /// It leaves level and arrives upwards (or downwards).
    In,
}

/// One piece of a profile, from where the piece before it ended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Member {
    /// A straight piece.
    Straight {
        /// How far it goes towards the wood, metres; negative away from it.
        inward: f64,
        /// How far it goes up, metres; negative down.
        up: f64,
    },
    /// A quarter of an ellipse; a quarter circle if both moves are equal.
    Quarter {
        /// How far it goes towards the wood, metres; negative away from it.
        inward: f64,
        /// How far it goes up, metres; negative down.
        up: f64,
        /// Which way it leaves.
        first: First,
    },
}

impl Member {
    fn moves(self) -> Point2 {
        match self {
            Member::Straight { inward, up } | Member::Quarter { inward, up, .. } => [inward, up],
        }
    }

    /// The same piece where the moulding grows out of the wood.
    ///
    /// The first move changes places too: what is hollow on an edge cut away is hollow on a crown built out.
    fn outward(self) -> Self {
        match self {
            Member::Straight { inward, up } => Member::Straight { inward: -inward, up },
            Member::Quarter { inward, up, first } => Member::Quarter {
                inward: -inward,
                up,
                first: match first {
                    First::Up => First::In,
                    First::In => First::Up,
                },
            },
        }
    }

    /// A quarter without width or without height is a straight piece.
    fn settled(self) -> Self {
        match self.moves() {
            [inward, up] if inward == 0.0 || up == 0.0 => Member::Straight { inward, up },
            _ => self,
        }
    }

    fn length(self) -> f64 {
        match self {
            Member::Straight { inward, up } => libm::hypot(inward, up),
            Member::Quarter { inward, up, .. } => quarter_length(inward.abs(), up.abs()),
        }
    }

    /// The integral of *in* along the piece, if it begins at `from`.
    fn moment(self, from: f64) -> f64 {
        match self {
            Member::Straight { inward, .. } => (from + inward / 2.0) * self.length(),
            Member::Quarter { inward, up, first } => {
                let about_centre = inward * quarter_moment(inward.abs(), up.abs());
                match first {
                    First::Up => (from + inward) * self.length() - about_centre,
                    First::In => from * self.length() + about_centre,
                }
            }
        }
    }

    /// The integral of *in* over *up*, if the piece begins at `from`.
    fn area_within(self, from: f64) -> f64 {
        let [inward, up] = self.moves();
        let mean_share = match self {
            Member::Straight { .. } => 0.5,
            Member::Quarter { first: First::Up, .. } => 1.0 - FRAC_PI_4,
            Member::Quarter { first: First::In, .. } => FRAC_PI_4,
        };
        (from + inward * mean_share) * up
    }

    /// Adds the points of the piece between its ends, if it begins at (x, y).
    fn append_inner(self, [x, y]: Point2, tolerance: f64, points: &mut Vec<Point2>) {
        let Member::Quarter { inward, up, first } = self else {
            return;
        };
        // The ellipse is a circle drawn out along its axes, so equal areas stay equal, and nothing strays further
        // than along the longer axis.
        let longest = inward.abs().max(up.abs());
        points.extend(
            inner_points(0.0, FRAC_PI_2, longest, tolerance).map(|[cos, sin]| match first {
                First::Up => [x + inward * (1.0 - cos), y + up * sin],
                First::In => [x + inward * sin, y + up * (1.0 - cos)],
            }),
        );
    }
}

/// The line of a moulding or a worked edge, from its foot up.
///
/// # Example
/// ```
/// use geometry::{Profile, Shape};
/// let edge = Profile::standard(Shape::Roundover, 0.010, 0.010);
/// assert!((edge.girth() - 0.010 * std::f64::consts::FRAC_PI_2).abs() < 1e-15);
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    start: f64,
    /// Settled, and each moves somewhere.
    members: Vec<Member>,
}

impl Profile {
    /// The worked edge of a board: it goes towards the wood and up, `width` by `height`, metres.
    ///
    /// Source of the members: `tests/cad/CONSTRUCTION.md`.
    pub fn standard(shape: Shape, width: f64, height: f64) -> Self {
        let (start, members) = shape.members(width, height);
        Self::begun_at(start, members)
    }

    /// A crown, or a member of a moulding: it goes away from the wall and up, `projection` by `height`, metres; *in* counts
    /// negative.
    ///
    /// A `cove` is hollow and a `roundover` is full here too, and a bead bulges away from the wall. Source:
    /// `tests/cad/CONSTRUCTION.md`.
    pub fn crown(shape: Shape, projection: f64, height: f64) -> Self {
        let quarter = |inward, up, first| Member::Quarter { inward, up, first };
        let (half_out, quarter_up) = (projection / 2.0, height / 4.0);
        // Turned outwards like the others a bead would become a hollow.
        let members = match shape {
            Shape::HalfRound => vec![
                quarter(-projection, height / 2.0, First::In),
                quarter(projection, height / 2.0, First::Up),
            ],
            Shape::BeadAndCove => vec![
                Member::Straight {
                    inward: -half_out,
                    up: 0.0,
                },
                quarter(-half_out, quarter_up, First::In),
                quarter(half_out, quarter_up, First::Up),
                quarter(-half_out, height / 2.0, First::Up),
            ],
            _ => {
                let (_, members) = shape.members(projection, height);
                members.into_iter().map(Member::outward).collect()
            }
        };
        Self::begun_at(0.0, members)
    }

    /// Any members one after the other, from the stated edge.
    pub fn composed(members: Vec<Member>) -> Self {
        Self::begun_at(0.0, members)
    }

    fn begun_at(start: f64, mut members: Vec<Member>) -> Self {
        members.retain(|member| member.moves() != [0.0, 0.0]);
        for member in &mut members {
            *member = member.settled();
        }
        Profile { start, members }
    }

    /// The same profile where it stands on a ground: members that would lie along the ground at its foot are none.
    pub fn grounded(mut self) -> Self {
        let level = |member: &Member| member.moves()[1] == 0.0;
        let count = self.members.iter().take_while(|member| level(member)).count();
        self.start += self
            .members
            .drain(..count)
            .map(|member| member.moves()[0])
            .sum::<f64>();
        self
    }

    /// The same profile in a corner: besides what [`Profile::grounded`] leaves out, members that would run up the
    /// upright side at its end are none.
    pub fn in_corner(self) -> Self {
        let mut profile = self.grounded();
        while profile
            .members
            .last()
            .is_some_and(|member| member.moves()[0] == 0.0)
        {
            profile.members.pop();
        }
        profile
    }

    /// How far within the stated edge the profile begins, metres: the width of a half round, otherwise nothing.
    pub fn start(&self) -> f64 {
        self.start
    }

    /// The whole move from the first end to the last, (in, up), metres.
    pub fn size(&self) -> [f64; 2] {
        self.members
            .iter()
            .fold([0.0; 2], |sum, member| plus(sum, member.moves()))
    }

    /// Each member with the point where it begins.
    fn placed(&self) -> impl Iterator<Item = (Point2, Member)> {
        let mut next = [self.start, 0.0];
        self.members.iter().map(move |member| {
            let from = next;
            next = plus(from, member.moves());
            (from, *member)
        })
    }

    /// The curve in (in, up), from `(start, 0)`: for drawing only, within a nanometre of the true ellipses.
    pub fn curve(&self) -> BezPath {
        let mut path = BezPath::new();
        path.move_to((self.start, 0.0));
        for (from, member) in self.placed() {
            match member {
                Member::Straight { .. } => {
                    let [x, y] = plus(from, member.moves());
                    path.line_to((x, y));
                }
                Member::Quarter { inward, up, first } => {
                    path.extend(quarter_arc(from, inward, up, first).append_iter(CURVE_TOLERANCE));
                }
            }
        }
        path
    }

    /// The length along the curve, metres: what a strip of paper pressed around the profile measures.
    pub fn girth(&self) -> f64 {
        self.members.iter().map(|member| member.length()).sum()
    }

    /// The first moment of the curve about the stated edge, square metres: the integral of *in* along it.
    ///
    /// Where two worked edges are mitred at a right angle, each is shorter by *in* than the stated edge, and so
    /// has this much less area than girth times length.
    pub fn moment(&self) -> f64 {
        self.placed().map(|(from, member)| member.moment(from[0])).sum()
    }

    /// How many times as large the profile is as a flat edge of the same height.
    pub fn multiplier(&self) -> f64 {
        multiplier_of(self.girth(), self.size()[1])
    }

    /// The points of a polyline in (in, up), from `(start, 0)` to the last end.
    ///
    /// Straight members give just their ends. Quarters are divided so that the polyline stays within `tolerance`
    /// (metres) of the curve, and their inner points are pushed out from the centre of the ellipse so that the
    /// polyline bounds exactly the area that the curve bounds: planar areas of sections are exact.
    pub fn line(&self, tolerance: f64) -> Vec<Point2> {
        let mut points = vec![[self.start, 0.0]];
        for (from, member) in self.placed() {
            member.append_inner(from, tolerance, &mut points);
            points.push(plus(from, member.moves()));
        }
        points
    }

    /// The area between the curve and the stated edge, square metres: the integral of *in* over *up*.
    pub fn area_within(&self) -> f64 {
        self.placed()
            .map(|(from, member)| member.area_within(from[0]))
            .sum()
    }
}

/// How many times as large a measured profile is as a flat edge of the same height, both in metres.
///
/// The girth is measured with a strip of paper pressed around the profile and laid flat again. Without a height
/// there is no flat edge to compare with, and the multiplier is 1.
pub fn multiplier_of(girth: f64, flat_height: f64) -> f64 {
    if flat_height > 0.0 {
        girth / flat_height
    } else {
        1.0
    }
}

/// A regular polygon around the origin with exactly the area of the circle, counter-clockwise.
///
/// It has at least three corners; the first lies on the first axis.
pub(crate) fn equal_area_circle(radius: f64, corners: usize) -> Vec<Point2> {
    let corners = corners.max(3);
    let step = TAU / corners as f64;
    let reach = radius * over_sine(step).sqrt();
    let corner = |n: usize| {
        let (sin, cos) = libm::sincos(n as f64 * step);
        [reach * cos, reach * sin]
    };
    (0..corners).map(corner).collect()
}

/// The points of a circular arc from angle to angle (radians, at most one turn either way), both ends exact.
///
/// The inner points are pushed out so that the polyline bounds exactly the area that the arc bounds, and stays
/// within `tolerance` of it.
pub(crate) fn equal_area_arc(centre: Point2, radius: f64, from: f64, to: f64, tolerance: f64) -> Vec<Point2> {
    let place = |[x, y]: Point2| [centre[0] + radius * x, centre[1] + radius * y];
    let end = |angle: f64| {
        let (sin, cos) = libm::sincos(angle);
        place([cos, sin])
    };
    let mut points = vec![end(from)];
    points.extend(inner_points(from, to, radius, tolerance).map(place));
    points.push(end(to));
    points
}

/// The points between the ends of an arc of the unit circle, pushed out for equal area.
///
/// The tolerance holds once the circle is drawn out to `radius`.
fn inner_points(from: f64, to: f64, radius: f64, tolerance: f64) -> impl Iterator<Item = Point2> {
    let chords = chords_within((to - from).abs(), tolerance / radius);
    let step = (to - from) / chords as f64;
    let reach = inner_radius(chords, step);
    (1..chords).map(move |n| {
        let (sin, cos) = libm::sincos(from + n as f64 * step);
        [reach * cos, reach * sin]
    })
}

/// How many chords an arc of the unit circle takes.
///
/// The pushed points lie furthest off the arc, in n chords by about sweep^2 / (12 n (n - 1)). With 11 for 12 that
/// is never too little as long as no chord spans more than an eighth of a turn. One chord has no point to push.
fn chords_within(sweep: f64, tolerance: f64) -> usize {
    let close_enough = 0.5 + (0.25 + sweep * sweep / (11.0 * tolerance)).sqrt();
    // A number that is not one becomes 0 here, and the bounds make it 2.
    (close_enough.max(sweep / FRAC_PI_4).ceil() as usize).clamp(2, MOST_CHORDS)
}

/// How far from the centre the inner points of an arc of the unit circle lie.
///
/// With both ends at 1 and the n - 1 inner points at r, the triangles to the centre have the area
/// sin(step) (2 r + (n - 2) r^2) / 2, which must be that of the sector, n step / 2. This is the root of that, in
/// the form that also holds for n = 2.
fn inner_radius(chords: usize, step: f64) -> f64 {
    let sector = chords as f64 * over_sine(step);
    sector / (1.0 + (1.0 + (chords as f64 - 2.0) * sector).sqrt())
}

/// An angle over its sine.
fn over_sine(angle: f64) -> f64 {
    if angle == 0.0 {
        1.0
    } else {
        angle / libm::sin(angle)
    }
}

fn plus(a: Point2, b: Point2) -> Point2 {
    [a[0] + b[0], a[1] + b[1]]
}

/// The length of a quarter of an ellipse with these half axes, both above zero.
///
/// The complete elliptic integral of the second kind by the arithmetic-geometric mean (Abramowitz and Stegun,
/// Handbook of Mathematical Functions, 17.6): it needs only roots, so every target gives the same digits.
fn quarter_length(a: f64, b: f64) -> f64 {
    let (long, short) = (a.max(b), a.min(b));
    let (mut arithmetic, mut geometric) = (1.0, short / long);
    let mut weight = 0.5;
    let mut rest = 1.0 - weight * (1.0 - geometric * geometric);
    // The digits double with each turn; the first turns of a very flat ellipse only bring the means together.
    for _ in 0..16 {
        let half_gap = (arithmetic - geometric) / 2.0;
        (arithmetic, geometric) = ((arithmetic + geometric) / 2.0, (arithmetic * geometric).sqrt());
        weight *= 2.0;
        rest -= weight * half_gap * half_gap;
    }
    long * FRAC_PI_2 * rest / arithmetic
}

/// The first moment of a quarter of an ellipse about its axis along `b`, over `a`; both half axes above zero.
///
/// With u the sine of the parameter it is the integral of sqrt(b^2 + (a^2 - b^2) u^2) from 0 to 1. The inverse
/// sine that belongs to a < b is taken as an inverse tangent, which loses no digits where a is small.
fn quarter_moment(a: f64, b: f64) -> f64 {
    let difference = (a - b) * (a + b);
    let root = difference.abs().sqrt();
    let slope = root / b;
    let share = if root == 0.0 {
        1.0
    } else if difference > 0.0 {
        libm::asinh(slope) / slope
    } else {
        libm::atan2(root, a) / slope
    };
    (a + b * share) / 2.0
}

/// The quarter that begins at `from`, for `kurbo`, which wants the half axes positive.
fn quarter_arc([x, y]: Point2, inward: f64, up: f64, first: First) -> Arc {
    let turn = FRAC_PI_2 * inward.signum() * up.signum();
    let (centre, start, sweep) = match first {
        First::Up => ((x + inward, y), if inward > 0.0 { PI } else { 0.0 }, -turn),
        First::In => ((x, y + up), -FRAC_PI_2 * up.signum(), turn),
    };
    Arc::new(centre, (inward.abs(), up.abs()), start, sweep, 0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::{ParamCurve, ParamCurveArclen};
    use proptest::prelude::*;
    use proptest::sample::select;
    use std::f64::consts::SQRT_2;

    /// The length of a quarter of the ellipse with half axes 2 and 1: a fourth of 8 E(3/4) = 9.688448220547675,
    /// the complete elliptic integral of the second kind, calculated.
    const QUARTER_TWO_TO_ONE: f64 = 9.688448220547675 / 4.0;

    fn assert_near(found: f64, expected: f64, relative: f64) {
        let allowed = relative * expected.abs();
        assert!(
            (found - expected).abs() <= allowed,
            "{found} instead of {expected}"
        );
    }

    fn quarter(inward: f64, up: f64, first: First) -> Profile {
        Profile::composed(vec![Member::Quarter { inward, up, first }])
    }

    /// The integral of in over up along a polyline.
    fn area_under(line: &[Point2]) -> f64 {
        let trapezium = |pair: &[Point2]| (pair[0][0] + pair[1][0]) / 2.0 * (pair[1][1] - pair[0][1]);
        line.windows(2).map(trapezium).sum()
    }

    /// The area that a polyline sweeps about the centre, positive counter-clockwise.
    fn swept(line: &[Point2], [x, y]: Point2) -> f64 {
        let triangle = |p: &[Point2]| (p[0][0] - x) * (p[1][1] - y) - (p[1][0] - x) * (p[0][1] - y);
        line.windows(2).map(triangle).sum::<f64>() / 2.0
    }

    /// Girth and moment of a quarter from the origin, by the midpoint rule on the angle of the ellipse.
    fn by_many_steps(inward: f64, up: f64, first: First) -> [f64; 2] {
        const STEPS: usize = 4000;
        let step = FRAC_PI_2 / STEPS as f64;
        (0..STEPS).fold([0.0; 2], |[girth, moment], n| {
            let (sin, cos) = libm::sincos((n as f64 + 0.5) * step);
            let (x, across, along) = match first {
                First::Up => (inward * (1.0 - cos), inward * sin, up * cos),
                First::In => (inward * sin, inward * cos, up * sin),
            };
            let length = libm::hypot(across, along) * step;
            [girth + length, moment + x * length]
        })
    }

    #[test]
    fn keys_are_those_of_the_page() {
        // Source: the table in tests/cad/CONSTRUCTION.md.
        let keys = Shape::ALL.map(Shape::key).join(" ");
        let page = "chamfer roundover cove ovolo ogee reversed-ogee step bead-and-cove half-round";
        assert_eq!(keys, page);
        for shape in Shape::ALL {
            assert_eq!(Shape::by_key(shape.key()), Some(shape));
        }
        assert_eq!(Shape::by_key("bullnose"), None);
    }

    #[test]
    fn quarter_round_is_a_quarter_of_the_circle() {
        // Source: circumference of a circle, 2 pi r.
        for shape in [Shape::Roundover, Shape::Cove] {
            let profile = Profile::standard(shape, 0.012, 0.012);
            assert_near(profile.girth(), FRAC_PI_2 * 0.012, 1e-15);
            assert_near(profile.multiplier(), FRAC_PI_2, 1e-15);
        }
    }

    #[test]
    fn ogee_of_two_quarter_arcs() {
        // Source: two quarters of a circle, pi r; the ends lie 2 r apart both ways, so the chord is 2 sqrt 2 r.
        let r = 0.009;
        for shape in [Shape::Ogee, Shape::ReversedOgee] {
            let profile = Profile::standard(shape, 2.0 * r, 2.0 * r);
            assert_near(profile.girth(), PI * r, 1e-15);
            let [inward, up] = profile.size();
            assert_near(libm::hypot(inward, up), 2.0 * SQRT_2 * r, 1e-15);
        }
    }

    #[test]
    fn half_round_is_half_the_circle_and_begins_within_the_edge() {
        // Source: circumference of a circle; half a disc of radius r is pi r^2 / 2, the block around it 2 r^2.
        let r = 0.010;
        let profile = Profile::standard(Shape::HalfRound, r, 2.0 * r);
        assert_near(profile.girth(), PI * r, 1e-15);
        assert_eq!(profile.start(), r);
        assert_eq!(profile.size(), [0.0, 2.0 * r]);
        assert_near(profile.area_within(), (2.0 - FRAC_PI_2) * r * r, 1e-14);
    }

    #[test]
    fn chamfer_and_step() {
        // Source: Pythagoras, 3-4-5; a step is the sum of its two sides.
        assert_near(
            Profile::standard(Shape::Chamfer, 0.003, 0.004).girth(),
            0.005,
            1e-15,
        );
        assert_near(Profile::standard(Shape::Step, 0.003, 0.004).girth(), 0.007, 1e-15);
    }

    #[test]
    fn quarter_of_an_ellipse() {
        assert_near(quarter(2.0, 1.0, First::Up).girth(), QUARTER_TWO_TO_ONE, 1e-15);
        assert_near(
            quarter(-0.01, 0.02, First::In).girth(),
            QUARTER_TWO_TO_ONE / 100.0,
            1e-15,
        );
        // Source: an ellipse without height is its long axis there and back.
        assert_near(quarter(1.0, 0.0, First::Up).girth(), 1.0, 0.0);
        assert_near(quarter(1.0, 1e-12, First::Up).girth(), 1.0, 1e-14);
        assert_near(quarter(1e-300, 1.0, First::Up).girth(), 1.0, 1e-13);
    }

    #[test]
    fn shapes_of_several_members() {
        // Source: sums of the circumference of a circle and of straight lines, from the table of the page.
        let ovolo = Profile::standard(Shape::Ovolo, 0.010, 0.010);
        assert_near(ovolo.girth(), 0.004 + FRAC_PI_2 * 0.008, 1e-15);
        let bead = Profile::standard(Shape::BeadAndCove, 0.010, 0.020);
        let cove_of_bead = QUARTER_TWO_TO_ONE * 0.005;
        assert_near(bead.girth(), 0.005 + PI * 0.005 + cove_of_bead, 1e-15);
    }

    #[test]
    fn moment_of_a_quarter_arc() {
        // Source: the centroid of a quarter arc lies 2 r / pi from either radius, so the moment there is r^2.
        let r = 0.02;
        assert_near(quarter(r, r, First::In).moment(), r * r, 1e-14);
        assert_near(
            quarter(r, r, First::Up).moment(),
            (FRAC_PI_2 - 1.0) * r * r,
            1e-14,
        );
        assert_near(quarter(-r, r, First::In).moment(), -r * r, 1e-14);
    }

    #[test]
    fn moment_of_an_ellipse() {
        // Source: the half spheroids that the quarter turns out, 2 pi times the moment: oblate with half axes 2
        // and 1, pi (a^2 + c^2 / e artanh e), e = sqrt(3) / 2; prolate, pi (a^2 + a c / e arcsin e). Calculated.
        let e = 3f64.sqrt() / 2.0;
        let oblate = (4.0 + libm::atanh(e) / e) / 2.0;
        let prolate = (1.0 + 2.0 / e * libm::asin(e)) / 2.0;
        assert_near(quarter(2.0, 1.0, First::In).moment(), oblate, 1e-14);
        assert_near(quarter(1.0, 2.0, First::In).moment(), prolate, 1e-14);
        // Source: without height or width it is a straight line, a^2 / 2 and a b (1 / 2) pi / 2.
        assert_near(quarter(1.0, 1e-12, First::In).moment(), 0.5, 1e-10);
        assert_near(quarter(1e-12, 1.0, First::In).moment(), FRAC_PI_4 * 1e-12, 1e-10);
    }

    #[test]
    fn crowns_go_out_and_change_the_first_move() {
        // Source: tests/cad/CONSTRUCTION.md: the cove of a crown leaves upwards, its roundover level.
        let cove = Profile::crown(Shape::Cove, 0.03, 0.05);
        assert_eq!(cove, quarter(-0.03, 0.05, First::Up));
        assert_eq!(
            Profile::crown(Shape::Roundover, 0.03, 0.05),
            quarter(-0.03, 0.05, First::In)
        );
        // Half an ellipse; and half of the block with a bead before it, and a hollow above.
        assert_near(
            Profile::crown(Shape::HalfRound, 0.03, 0.05).area_within(),
            -FRAC_PI_4 * 0.0015,
            1e-14,
        );
        assert_near(
            Profile::crown(Shape::BeadAndCove, 0.03, 0.05).area_within(),
            -0.75 * 0.0015,
            1e-14,
        );
        // A hollow crown keeps close to the wall, a full one fills more than the half of its block.
        assert_near(cove.area_within(), -(1.0 - FRAC_PI_4) * 0.0015, 1e-14);
        for shape in Shape::ALL {
            let worked = Profile::standard(shape, 0.03, 0.05);
            let crown = Profile::crown(shape, 0.03, 0.05);
            assert_eq!(crown.size()[0], -worked.size()[0]);
            assert_near(crown.girth(), worked.girth(), 1e-15);
        }
    }

    #[test]
    fn nothing_to_follow() {
        let empty = Profile::composed(vec![Member::Straight { inward: 0.0, up: 0.0 }]);
        assert_eq!(empty.line(1e-4), [[0.0, 0.0]]);
        assert_eq!(
            (empty.girth(), empty.moment(), empty.multiplier()),
            (0.0, 0.0, 1.0)
        );
        assert_eq!(multiplier_of(0.03, 0.02), 1.5);
    }

    #[test]
    fn flat_members_give_just_their_ends() {
        let step = Profile::standard(Shape::Step, 0.01, 0.02).line(1e-6);
        assert_eq!(step, [[0.0, 0.0], [0.01, 0.0], [0.01, 0.02]]);
    }

    #[test]
    fn no_tolerance_fills_the_memory() {
        for tolerance in [0.0, -1.0, f64::NAN, f64::MIN_POSITIVE, f64::INFINITY] {
            let points = Profile::standard(Shape::Roundover, 0.01, 0.01).line(tolerance);
            assert!((3..=MOST_CHORDS + 1).contains(&points.len()));
        }
    }

    #[test]
    fn a_polygon_as_large_as_the_circle() {
        // Source: area of a circle, pi r^2.
        for corners in [3, 4, 12, 101] {
            let mut line = equal_area_circle(0.3, corners);
            assert_eq!(line.len(), corners);
            line.push(line[0]);
            assert_near(swept(&line, [0.0; 2]), PI * 0.09, 1e-13);
        }
    }

    #[test]
    fn an_arc_without_sweep_stays_where_it_is() {
        assert!(
            equal_area_arc([1.0, 2.0], 0.5, 0.0, 0.0, 1e-3)
                .iter()
                .all(|p| *p == [1.5, 2.0])
        );
    }

    proptest! {
        /// The polyline bounds the area of the curve and keeps to its ends.
        #[test]
        fn lines_keep_area_and_ends(
            shape in select(&Shape::ALL[..]), width in 0.001f64..0.1, height in 0.001f64..0.1,
            tolerance in 1e-7f64..1e-2, out in any::<bool>(),
        ) {
            let make = if out { Profile::crown } else { Profile::standard };
            let profile = make(shape, width, height);
            let line = profile.line(tolerance);
            let block = width * height;
            prop_assert!((area_under(&line) - profile.area_within()).abs() < 1e-12 * block);
            let last = plus([profile.start(), 0.0], profile.size());
            prop_assert_eq!(line[0], [profile.start(), 0.0]);
            for axis in 0..2 {
                prop_assert!((line[line.len() - 1][axis] - last[axis]).abs() < 1e-15);
            }
            // Pushed points never leave the block: no board grows beyond its stated size.
            let [low, high] = if out { [-width, 0.0] } else { [0.0, width] };
            prop_assert!(line.iter().all(|p| (low - 1e-15..=high + 1e-15).contains(&p[0])));
        }

        #[test]
        fn arcs_keep_area_and_tolerance(
            radius in 0.01f64..2.0, from in -7.0f64..7.0, sweep in -TAU..TAU, tolerance in 1e-5f64..0.1,
        ) {
            let centre = [0.4, -0.3];
            let line = equal_area_arc(centre, radius, from, from + sweep, tolerance);
            // Source: area of a sector, r^2 sweep / 2.
            let sector = radius * radius * sweep / 2.0;
            prop_assert!((swept(&line, centre) - sector).abs() < 1e-12 * radius * radius);
            let away = |[x, y]: Point2| (libm::hypot(x - centre[0], y - centre[1]) - radius).abs();
            let middle = |p: &[Point2]| [(p[0][0] + p[1][0]) / 2.0, (p[0][1] + p[1][1]) / 2.0];
            let allowed = tolerance + 1e-12;
            prop_assert!(line.iter().all(|p| away(*p) <= allowed));
            prop_assert!(line.windows(2).all(|pair| away(middle(pair)) <= allowed));
            prop_assert!(away(line[0]) < 1e-15 * 8.0 && away(line[line.len() - 1]) < 1e-15 * 8.0);
        }

        /// The sum of many small steps is a second witness of the closed formulas.
        #[test]
        fn formulas_agree_with_many_steps(
            inward in 0.01f64..1.0, up in 0.01f64..1.0, left in any::<bool>(), upwards in any::<bool>(),
        ) {
            let inward = if left { -inward } else { inward };
            let first = if upwards { First::Up } else { First::In };
            let profile = quarter(inward, up, first);
            let [girth, moment] = by_many_steps(inward, up, first);
            prop_assert!((profile.girth() / girth - 1.0).abs() < 1e-12);
            prop_assert!((profile.moment() / moment - 1.0).abs() < 1e-6);
        }

        /// The drawn curve is a third witness: its length, its ends, and its middle on the ellipse.
        #[test]
        fn the_drawn_curve_is_the_measured_one(
            inward in 0.002f64..0.1, up in 0.002f64..0.1, signs in 0u8..8,
        ) {
            let sign = |bit: u8| if signs & bit == 0 { 1.0 } else { -1.0 };
            let (inward, up) = (sign(1) * inward, sign(2) * up);
            let first = if signs & 4 == 0 { First::Up } else { First::In };
            let profile = quarter(inward, up, first);
            let curve = profile.curve();
            let length: f64 = curve.segments().map(|segment| segment.arclen(1e-10)).sum();
            prop_assert!((length - profile.girth()).abs() < 1e-8);
            let last = curve.segments().last().map(|segment| segment.end());
            prop_assert!(last.is_some_and(|end| end.distance((inward, up).into()) < 1e-15));
            let centre = if first == First::Up { [inward, 0.0] } else { [0.0, up] };
            for point in curve.segments().map(|segment| segment.eval(0.3)) {
                let on = libm::hypot((point.x - centre[0]) / inward, (point.y - centre[1]) / up);
                prop_assert!((on - 1.0).abs() < 1e-6);
                prop_assert!(point.x * inward > 0.0 && (point.x / inward) < 1.0);
            }
        }

        /// No line is shorter than the straight one, and without turning back none is longer than its two moves.
        #[test]
        fn girth_lies_between_chord_and_moves(
            shape in select(&Shape::ALL[..]), width in 0.0f64..0.1, height in 0.0f64..0.1,
        ) {
            let profile = Profile::standard(shape, width, height);
            let [inward, up] = profile.size();
            prop_assert!(profile.girth() >= libm::hypot(inward, up) * (1.0 - 1e-14));
            if !matches!(shape, Shape::BeadAndCove | Shape::HalfRound) {
                prop_assert!(profile.girth() <= (inward.abs() + up.abs()) * (1.0 + 1e-14));
            }
        }

        #[test]
        fn a_profile_twice_as_large_is_twice_as_long(
            shape in select(&Shape::ALL[..]), width in 0.001f64..0.1, height in 0.001f64..0.1,
            times in 0.1f64..10.0,
        ) {
            let one = Profile::standard(shape, width, height);
            let other = Profile::standard(shape, times * width, times * height);
            prop_assert!((other.girth() / (times * one.girth()) - 1.0).abs() < 1e-13);
            prop_assert!((other.moment() / (times * times * one.moment()) - 1.0).abs() < 1e-12);
            prop_assert!((other.area_within() / (times * times * one.area_within()) - 1.0).abs() < 1e-12);
            prop_assert!((other.multiplier() / one.multiplier() - 1.0).abs() < 1e-13);
        }
    }
}
