//! The boolean against another one, against counting, and against what holds of every result.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{IntOverlayOptions, Overlay, ShapeType};
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::core::solver::{Precision, Solver};
use i_overlay::i_float::int::point::IntPoint;
use proptest::prelude::*;

use super::*;

const EVERY: [Rule; 3] = [Rule::Union, Rule::Intersection, Rule::Difference];

fn combined(first: &[Contour], second: &[Contour], rule: Rule) -> Vec<Contour> {
    let mut boolean = Boolean::new(0);
    for (set, contours) in [first, second].into_iter().enumerate() {
        for contour in contours {
            boolean.add(set, contour.iter().copied());
        }
    }
    boolean.contours(rule)
}

/// Twice the area within contours.
fn doubled(contours: &[Contour]) -> i64 {
    contours.iter().map(|contour| doubled_of(contour)).sum()
}

fn doubled_of(contour: &[Corner]) -> i64 {
    let from = contour[0];
    let pairs = contour
        .windows(2)
        .map(|pair| (pair[0] - from).cross(pair[1] - from));
    pairs.sum()
}

/// The same by `i_overlay`, whose usual precision does not come to an end with lines that all but run along each other.
fn witnessed(first: &[Contour], second: &[Contour], rule: Rule) -> i64 {
    let solver = Solver {
        precision: Precision {
            start: 2,
            progression: 8,
        },
        ..Solver::AUTO
    };
    let mut overlay = Overlay::<i32>::new_custom(64, IntOverlayOptions::default(), solver);
    for (contours, of) in [(first, ShapeType::Subject), (second, ShapeType::Clip)] {
        for contour in contours {
            let points: Vec<_> = contour.iter().map(|at| IntPoint::new(at.x, at.y)).collect();
            overlay.add_contour(&points, of);
        }
    }
    let rule = match rule {
        Rule::Union => OverlayRule::Union,
        Rule::Intersection => OverlayRule::Intersect,
        Rule::Difference => OverlayRule::Difference,
    };
    let shapes = overlay.overlay(rule, FillRule::NonZero);
    let corner = |at: &IntPoint<i32>| Corner::new(at.x, at.y);
    let contours = shapes.iter().flatten();
    doubled(
        &contours
            .map(|contour| contour.iter().map(corner).collect())
            .collect::<Vec<_>>(),
    )
}

fn length(contours: &[Contour]) -> f64 {
    let next = |contour: &Contour| contour.clone().into_iter().cycle().skip(1);
    let lines = contours
        .iter()
        .flat_map(|contour| contour.clone().into_iter().zip(next(contour)));
    lines.map(|(p, q)| ((q - p).dot(q - p) as f64).sqrt()).sum()
}

/// Twice the area by which results may differ where crossings go to the nearest corner: each line is moved by less than
/// so many steps.
fn noise(contours: &[Contour], steps: f64) -> i64 {
    (2.0 * steps * (length(contours) + 4.0)) as i64
}

// --- Regions of every kind ---------------------------------------------------------------------------------------

fn contour(corners: impl IntoIterator<Item = [i32; 2]>) -> Contour {
    corners.into_iter().map(|[x, y]| Corner::new(x, y)).collect()
}

/// Corners of a coarse grid, of which most lines touch, coincide or cross themselves.
fn tangle(steps: i32, step: i32) -> impl Strategy<Value = Contour> {
    let corners = prop::collection::vec(prop::array::uniform2(0..steps), 3..9);
    corners.prop_map(move |corners| contour(corners.iter().map(|at| at.map(|n| n * step))))
}

/// A strip along one of few lines, narrower than a few steps or not closed at all.
fn sliver(span: i32) -> impl Strategy<Value = Contour> {
    let line = prop::sample::select(vec![[0, 3], [3, 0], [1, 2], [2, 1], [1, 1]]);
    (line, prop::collection::vec((0..8, -2..3, -2..3), 3..7)).prop_map(move |([x, y], at)| {
        contour(at.into_iter().map(|(t, a, b)| {
            let part = |way: i32| (i64::from(way) * i64::from(t) * i64::from(span) / 24) as i32;
            [part(x) + a, part(y) + b]
        }))
    })
}

/// A ring with a hole that may touch it.
fn ring(span: i32) -> impl Strategy<Value = Vec<Contour>> {
    let eighth = span / 8;
    (0..4, 5..9_i32, 0..3).prop_map(move |(low, high, skew)| {
        let at = |n: i32| n * eighth;
        let outer = [[0, 0], [at(8), at(skew)], [at(8), at(8)], [0, at(8)]];
        let hole = [
            [at(low), at(4)],
            [at(4), at(high.min(8))],
            [at(high.min(8)), at(4)],
            [at(4), at(3)],
        ];
        vec![contour(outer), contour(hole)]
    })
}

fn region(span: i32) -> impl Strategy<Value = Vec<Contour>> {
    let tangles = prop::collection::vec(tangle(9, span / 8), 1..4);
    let anything = prop::collection::vec(tangle(span, 1), 1..3);
    let slivers = prop::collection::vec(sliver(span), 1..4);
    let both = (tangle(9, span / 8), sliver(span)).prop_map(|(a, b)| vec![a, b]);
    prop_oneof![tangles, anything, slivers, both, ring(span)]
}

/// As far as a grid goes.
const WIDE: i32 = 1 << 29;

/// So few steps that nearly every crossing is moved.
const NARROW: i32 = 40;

// --- What holds of them --------------------------------------------------------------------------------------------

fn cases(cases: u32) -> ProptestConfig {
    let asked = std::env::var("PROPTEST_CASES").ok();
    ProptestConfig {
        cases: asked.and_then(|asked| asked.parse().ok()).unwrap_or(cases),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(cases(2000))]

    #[test]
    fn areas_are_those_of_another_boolean(first in region(WIDE), second in region(WIDE)) {
        let both: Vec<Contour> = first.iter().chain(&second).cloned().collect();
        for rule in EVERY {
            let (ours, theirs) = (doubled(&combined(&first, &second, rule)), witnessed(&first, &second, rule));
            prop_assert!((ours - theirs).abs() <= noise(&both, 8.0), "{rule:?}: {ours} against {theirs}");
        }
    }

    #[test]
    fn what_is_in_both_counts_twice(first in region(WIDE), second in region(WIDE)) {
        let of = |rule| doubled(&combined(&first, &second, rule));
        let alone = |region: &[Contour]| doubled(&combined(region, &[], Rule::Union));
        let both: Vec<Contour> = first.iter().chain(&second).cloned().collect();
        let off = alone(&first) + alone(&second) - of(Rule::Union) - of(Rule::Intersection);
        prop_assert!(off.abs() <= noise(&both, 2.0), "off by {off}");
    }

    /// The results of two regions are parts of one division of the plane, which add up to the last step.
    #[test]
    fn the_parts_add_up(first in region(WIDE), second in region(WIDE)) {
        let of = |rule| doubled(&combined(&first, &second, rule));
        let back = doubled(&combined(&second, &first, Rule::Difference));
        prop_assert_eq!(of(Rule::Union), of(Rule::Intersection) + of(Rule::Difference) + back);
    }
}

proptest! {
    #![proptest_config(cases(4000))]

    #[test]
    fn pieces_meet_at_their_ends_only(first in region(NARROW), second in region(NARROW)) {
        meet_at_ends(&first, &second)?;
    }

    #[test]
    fn wide_pieces_meet_at_their_ends_only(first in region(WIDE), second in region(WIDE)) {
        meet_at_ends(&first, &second)?;
    }

    #[test]
    fn contours_are_closed_and_bound_the_result(first in region(NARROW), second in region(NARROW)) {
        for rule in EVERY {
            let contours = combined(&first, &second, rule);
            prop_assert!(contours.first().is_none_or(|outer| doubled_of(outer) > 0));
            for contour in &contours {
                prop_assert!(contour.len() > 2 && doubled_of(contour) != 0, "{:?}", contour);
                let n = contour.len();
                let bend = |i: usize| (contour[(i + 1) % n] - contour[i]).cross(contour[(i + 2) % n] - contour[i]);
                prop_assert!((0..n).all(|i| bend(i) != 0), "{:?}", contour);
            }
            holes_follow(&contours)?;
        }
    }
}

/// Pieces neither cross nor run through the end of another.
fn meet_at_ends(first: &[Contour], second: &[Contour]) -> Result<(), TestCaseError> {
    let mut edges = Vec::new();
    for (set, contours) in [first, second].into_iter().enumerate() {
        for contour in contours {
            for (i, &p) in contour.iter().enumerate() {
                let q = contour[(i + 1) % contour.len()];
                if p != q {
                    let ends = [p.min(q), p.max(q)];
                    let sign = if p < q { 1 } else { -1 };
                    let step = if set == 0 { [sign, 0] } else { [0, sign] };
                    edges.push(Edge { ends, step });
                }
            }
        }
    }
    edges.sort_by_key(|edge| edge.ends);
    let (corners, pieces) = pieces::divided(&edges);
    prop_assert!(corners.is_sorted());
    let ends: Vec<[Corner; 2]> = pieces
        .iter()
        .map(|piece| piece.ends.map(|end| corners[end as usize]))
        .collect();
    for (i, &[p, q]) in ends.iter().enumerate() {
        prop_assert!(p < q);
        for corner in &corners {
            let within = p < *corner && *corner < q;
            prop_assert!(
                !within || (q - p).cross(*corner - p) != 0,
                "{corner:?} in {p:?} {q:?}"
            );
        }
        for &[r, s] in &ends[..i] {
            let sides = |p: Corner, q: Corner, at: Corner| (q - p).cross(at - p).signum();
            let crosses = sides(p, q, r) * sides(p, q, s) < 0 && sides(r, s, p) * sides(r, s, q) < 0;
            prop_assert!(!crosses && [p, q] != [r, s], "{p:?} {q:?} and {r:?} {s:?}");
        }
    }
    Ok(())
}

/// Each hole lies within the outer contour before it.
fn holes_follow(contours: &[Contour]) -> Result<(), TestCaseError> {
    let mut outer: &[Corner] = &[];
    for contour in contours {
        if doubled_of(contour) > 0 {
            outer = contour;
        } else {
            let rest = combined(std::slice::from_ref(contour), &[outer.to_vec()], Rule::Difference);
            prop_assert_eq!(doubled(&rest), 0, "{:?} without {:?}", contour, outer);
        }
    }
    Ok(())
}

// --- Upright regions are exact -------------------------------------------------------------------------------------

/// A closed line that goes level and upright by turns.
fn upright() -> impl Strategy<Value = Contour> {
    prop::collection::vec((0..SIDE, 0..SIDE), 2..6).prop_map(|turns| {
        let next = turns.iter().cycle().skip(1);
        let corners = turns.iter().zip(next);
        contour(corners.flat_map(|(&(x, y), &(next, _))| [[x, y], [next, y]]))
    })
}

const SIDE: i32 = 9;

/// How often contours wind around the middle of a square of the grid.
fn winding(contours: &[Contour], x: i32, y: i32) -> i32 {
    let mut winding = 0;
    for contour in contours {
        for (i, p) in contour.iter().enumerate() {
            let q = contour[(i + 1) % contour.len()];
            if p.x == q.x && p.x <= x && p.y.min(q.y) <= y && y < p.y.max(q.y) {
                winding += (p.y - q.y).signum();
            }
        }
    }
    winding
}

proptest! {
    #![proptest_config(cases(4000))]

    #[test]
    fn upright_regions_are_exact(
        first in prop::collection::vec(upright(), 1..4), second in prop::collection::vec(upright(), 1..4),
    ) {
        for rule in EVERY {
            let result = combined(&first, &second, rule);
            // It is its own union, corner by corner.
            prop_assert_eq!(&combined(&result, &[], Rule::Union), &result);
            for (x, y) in (0..SIDE).flat_map(|x| (0..SIDE).map(move |y| (x, y))) {
                let asked = rule.takes([winding(&first, x, y), winding(&second, x, y)]);
                prop_assert_eq!(winding(&result, x, y), i32::from(asked), "{:?} at {} {}", rule, x, y);
            }
        }
    }
}

#[test]
fn squares_that_touch_at_a_corner_stay_two() {
    let square = |x: i32, y: i32| contour([[x, y], [x + 4, y], [x + 4, y + 4], [x, y + 4]]);
    let both = combined(&[square(0, 0), square(4, 4)], &[], Rule::Union);
    assert_eq!(both, [square(0, 0), square(4, 4)]);
    let beside = combined(&[square(0, 0), square(4, 0)], &[], Rule::Union);
    assert_eq!(beside, [contour([[0, 0], [8, 0], [8, 4], [0, 4]])]);
    assert!(combined(&[square(0, 0)], &[square(4, 0)], Rule::Intersection).is_empty());
}

#[test]
fn an_island_in_a_hole_is_an_outline_of_its_own() {
    let square = |low: i32, high: i32| contour([[low, low], [high, low], [high, high], [low, high]]);
    let ring = combined(&[square(0, 90)], &[square(10, 80)], Rule::Difference);
    let all = [ring, vec![square(20, 70), square(100, 110)]].concat();
    let result = combined(&all, &[square(30, 40), square(50, 60)], Rule::Difference);
    let sizes: Vec<i64> = result.iter().map(|contour| doubled_of(contour) / 2).collect();
    assert_eq!(sizes, [8100, -4900, 2500, -100, -100, 100]);
}

#[test]
fn nothing_comes_of_nothing() {
    assert!(combined(&[], &[], Rule::Union).is_empty());
    let line = contour([[0, 0], [7, 3], [7, 3]]);
    assert!(combined(&[line, contour([[5, 5]]), contour([])], &[], Rule::Union).is_empty());
}
