//! Profiles against closed formulas, an outside library for curves, and sums of many small steps.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI, TAU};

use super::arc::*;
use super::*;
use kurbo::{Arc, BezPath, ParamCurve, ParamCurveArclen};
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

/// The area that a polyline sweeps about the center, positive counter-clockwise.
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
    // Source: tests/cad/CONSTRUCTION.md: the cove of a crown leaves upward, its roundover level.
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
        let curve = curve(&profile);
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

/// The curve in (in, up), from `(start, 0)`, by an outside library: within a nanometer of the true ellipses.
fn curve(profile: &Profile) -> BezPath {
    let mut path = BezPath::new();
    path.move_to((profile.start, 0.0));
    for (from, member) in profile.placed() {
        match member {
            Member::Straight { .. } => {
                let [x, y] = plus(from, member.moves());
                path.line_to((x, y));
            }
            Member::Quarter { inward, up, first } => {
                path.extend(quarter_arc(from, inward, up, first).append_iter(1e-9));
            }
        }
    }
    path
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
