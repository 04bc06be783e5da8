//! Tests of overlaps.

use super::*;
use crate::face::Side;
use crate::furniture::alteration::{Alteration, Towards};
use crate::furniture::{Furniture, Kind, fields, styles};
use crate::part_kind::PartKind;
use crate::profile::{Profile, Shape};
use crate::solid::{Cut, Prism, Run, Turning, frustum};
use nalgebra::{Isometry3, UnitQuaternion};
use proptest::prelude::*;
use std::f64::consts::PI;

fn id(n: usize) -> PartId {
    PartId::nth(PartKind::Board, n)
}

fn block(n: usize, low: [f64; 3], high: [f64; 3]) -> Part {
    Part::block(id(n), low, high)
}

/// The depths of all overlaps, in millimeters.
fn depths(parts: Vec<Part>) -> Vec<f64> {
    let found = Assembly::new(parts, vec![]).overlaps();
    found
        .iter()
        .map(|overlap| overlap.depth.as_millimetres())
        .collect()
}

#[track_caller]
fn assert_deep(parts: Vec<Part>, expected: f64, tolerance: f64) {
    let found = depths(parts);
    assert_eq!(found.len(), 1, "{found:?} instead of {expected}");
    assert!(
        (found[0] - expected).abs() <= tolerance,
        "{found:?} instead of {expected}"
    );
}

#[track_caller]
fn assert_apart(parts: Vec<Part>) {
    assert_eq!(depths(parts), [0.0; 0]);
}

fn some_turn() -> Isometry3<f64> {
    Isometry3::new(Vector3::new(1.0, -2.0, 0.5), Vector3::new(0.3, 1.1, -0.7))
}

fn turned(parts: Vec<Part>) -> Vec<Part> {
    parts.into_iter().map(|part| part.moved(&some_turn())).collect()
}

/// A leg as `tests/cad/CONSTRUCTION.md` describes it, its head at 0.2.
fn leg(n: usize, x: f64) -> Part {
    Turning::from(0.02, 0.2)
        .line_to(0.02, 0.18)
        .line_to(0.012, 0.18)
        .arc([0.012, 0.176], 0.004, PI / 2.0, -PI / 2.0)
        .line_to(0.02, 0.172)
        .line_to(0.01, 0.0)
        .part(id(n), Point3::new(x, 0.0, 0.0))
}

/// A board with a round hole through it, as wide as the head of the leg.
fn bored(n: usize, radius: f64, corners: usize) -> Part {
    let outline = [[-0.1, -0.1], [0.1, -0.1], [0.1, 0.1], [-0.1, 0.1], [-0.1, -0.1]];
    let runs = outline
        .windows(2)
        .zip([Side::Front, Side::Right, Side::Back, Side::Left]);
    let mut hole = crate::profile::equal_area_circle(radius, corners);
    hole.reverse();
    let plane = Plane {
        origin: Point3::origin(),
        u: Vector3::x(),
        v: Vector3::y(),
    };
    let prism = Prism {
        plane,
        outline: runs
            .map(|(pair, side)| Run::straight(side, pair.to_vec()))
            .collect(),
        holes: vec![hole],
        start: Cut::square(0.185),
        end: Cut::square(0.204),
    };
    prism.part(id(n))
}

/// A run of a crown along the front or, turned, along a side, mitered at both ends.
fn crown(n: usize, shape: Shape, length: f64) -> Part {
    let profile = Profile::crown(shape, 0.04, 0.05);
    let line: Vec<Point2> = profile
        .line(crate::solid::CHORD)
        .iter()
        .map(|[x, z]| [-x, *z])
        .collect();
    let plane = Plane {
        origin: Point3::origin(),
        u: -Vector3::y(),
        v: Vector3::z(),
    };
    let prism = Prism {
        plane,
        outline: vec![
            Run::curved(Side::Moulded, line, profile.girth(), -profile.moment()),
            Run::straight(Side::Top, vec![[0.04, 0.05], [0.0, 0.05]]),
            Run::straight(Side::Back, vec![[0.0, 0.05], [0.0, 0.0]]),
        ],
        holes: vec![],
        start: Cut {
            at: -length,
            slope: -1.0,
        },
        end: Cut { at: 0.0, slope: 1.0 },
    };
    prism.part(id(n))
}

#[test]
fn boards_that_touch_are_apart() {
    let shelf = block(1, [0.0, 0.0, 0.3], [0.6, 0.3, 0.319]);
    let side = |x: f64| block(2, [x, 0.0, 0.0], [x + 0.019, 0.3, 0.8]);
    for x in [0.6, 0.6004, 0.6006, 0.6 - 0.0004] {
        assert_apart(vec![shelf.clone(), side(x)]);
        assert_apart(turned(vec![shelf.clone(), side(x)]));
    }
    assert_deep(vec![shelf.clone(), side(0.6 - 0.0006)], 0.6, 1e-9);
    assert_deep(turned(vec![shelf, side(0.588)]), 12.0, 1e-9);
}

#[test]
fn blocks_along_an_edge_or_at_a_corner_are_apart() {
    let one = block(1, [0.0; 3], [0.1; 3]);
    assert_apart(vec![one.clone(), block(2, [0.1, 0.1, 0.0], [0.2, 0.2, 0.1])]);
    assert_apart(turned(vec![one, block(2, [0.1; 3], [0.2; 3])]));
}

#[test]
fn a_part_within_another() {
    let outer = block(1, [0.0; 3], [0.5; 3]);
    let inner = block(2, [0.2; 3], [0.3, 0.22, 0.3]);
    assert_deep(vec![outer.clone(), inner.clone()], 20.0, 1e-9);
    assert_deep(turned(vec![inner, outer.clone()]), 20.0, 1e-9);
    assert_deep(vec![outer.clone(), outer.clone()], 500.0, 1e-9);
    // The foot of the leg is its narrowest, but it is as wide as its head.
    assert_deep(
        vec![outer, leg(2, 0.2).moved(&Isometry3::translation(0.0, 0.2, 0.1))],
        40.0,
        0.5,
    );
}

#[test]
fn a_leg_through_a_board() {
    let board = |z: f64| block(2, [-0.1, -0.1, z], [0.1, 0.1, z + 0.019]);
    assert_apart(vec![leg(1, 0.0), board(0.2)]);
    assert_apart(turned(vec![leg(1, 0.0), board(0.2)]));
    assert_deep(vec![leg(1, 0.0), board(0.198)], 2.0, 1e-6);
    assert_deep(turned(vec![leg(1, 0.0), board(0.198)]), 2.0, 1e-6);
    assert_deep(vec![leg(1, 0.0), board(0.1)], 19.0, 1e-6);
    // A level board beside the neck of the bead is no board within the leg.
    assert_apart(vec![
        leg(1, 0.0),
        block(2, [0.017, -0.1, 0.173], [0.1, 0.1, 0.179]),
    ]);
}

#[test]
fn a_leg_in_its_bore() {
    for corners in [12, 32, 33, 64] {
        let parts = vec![leg(1, 0.0), bored(2, 0.02, corners)];
        // Twelve corners stand out by a third of a millimeter.
        assert_apart(parts.clone());
        assert_apart(turned(parts));
    }
    assert_deep(vec![leg(1, 0.0), bored(2, 0.015, 32)], 15.0, 0.6);
    assert_deep(vec![leg(1, 0.003), bored(2, 0.02, 32)], 15.0, 0.6);
}

#[test]
fn mitred_runs_just_meet() {
    for shape in Shape::ALL
        .into_iter()
        .filter(|s| !matches!(s, Shape::BeadAndCove | Shape::HalfRound))
    {
        let corner = UnitQuaternion::from_axis_angle(&Vector3::z_axis(), -PI / 2.0);
        let beside = |gap: f64| {
            crown(2, shape, 0.4).moved(&Isometry3::from_parts(
                nalgebra::Translation3::new(gap, 0.4, 0.0),
                corner,
            ))
        };
        assert_apart(vec![crown(1, shape, 0.3), beside(0.0)]);
        assert_apart(turned(vec![crown(1, shape, 0.3), beside(0.0)]));
        assert_eq!(
            depths(vec![crown(1, shape, 0.3), beside(0.01)]).len(),
            1,
            "{shape:?}"
        );
    }
}

#[test]
fn a_tapered_leg_in_an_apron() {
    let plan = |half: f64| [[-half, -half], [half, half]];
    let leg = frustum(id(1), (plan(0.01), 0.0), (plan(0.02), 0.4));
    let apron = |x: f64| block(2, [x, -0.01, 0.35], [0.5, 0.01, 0.45]);
    assert_apart(vec![leg.clone(), apron(0.02)]);
    // Where the apron ends the leg is 18.75 mm wide; the taper is 1 in 40.
    assert_deep(vec![leg, apron(0.015)], 5.0, 0.2);
}

#[test]
fn boards_that_cross_at_a_slant() {
    let lean = Isometry3::rotation(Vector3::new(0.0, 0.4, 0.0));
    let one = block(1, [-0.01, 0.0, -0.5], [0.01, 0.3, 0.5]);
    let other = block(2, [-0.009, 0.0, -0.5], [0.009, 0.3, 0.5]).moved(&lean);
    assert_eq!(depths(vec![one.clone(), other.clone()]).len(), 1);
    let away = other.moved(&Isometry3::translation(0.25, 0.0, 0.0));
    assert_apart(vec![one, away]);
}

#[test]
fn many_parts_are_named_in_their_order() {
    let boards: Vec<Part> = (0..40)
        .map(|n| {
            block(
                n + 1,
                [0.1 * n as f64, 0.0, 0.0],
                [0.1 * n as f64 + 0.102, 0.3, 0.02],
            )
        })
        .collect();
    let found = Assembly::new(boards, vec![]).overlaps();
    assert_eq!(found.len(), 39);
    assert!(
        found
            .iter()
            .enumerate()
            .all(|(n, o)| (o.a, o.b) == (id(n + 1), id(n + 2)))
    );
    assert!(Assembly::default().overlaps().is_empty());
}

#[test]
fn usual_furniture_does_not_run_into_itself() {
    for &kind in Kind::ALL.iter() {
        let Ok(piece) = Furniture::usual(kind).assembly() else {
            continue;
        };
        assert_eq!(piece.overlaps(), [], "{}", kind.label());
        assert_eq!(piece.moved(&some_turn()).overlaps(), [], "{}", kind.label());
    }
}

/// The overlaps of a usual piece of these styles after one of its parts was moved, as the maker reads them.
fn after_move(kind: Kind, chosen: &[(&str, &str)], part: &str, towards: Towards, by: f64) -> Vec<String> {
    let mut piece = Furniture::usual(kind);
    for (key, option) in chosen {
        assert!(styles::by_key(key).unwrap().choose(&mut piece.styles, option));
    }
    if chosen.contains(&("face-frame", "frame")) {
        // Room for columns on the frame.
        piece.measures.set(&fields::FRAME, Length::millimetres(35.0));
    }
    let (part, by) = (part.to_owned(), Length::millimetres(by));
    piece.changes = vec![Alteration::Move { part, towards, by }];
    let found = piece.assembly().unwrap().overlaps();
    let told = |o: &Overlap| format!("{} {} {:.1}", o.a, o.b, o.depth.as_millimetres());
    found.iter().map(told).collect()
}

#[test]
fn shaped_parts_that_were_moved() {
    let columns = [("face-frame", "frame"), ("corner-columns", "fluted")];
    let pushed = after_move(Kind::Dresser, &columns, "column-1", Towards::Back, 5.0);
    assert_eq!(pushed, ["frame-stile-1 column-1 5.0"]);
    let sticking = [("doors", "flat-panel"), ("sticking", "ogee")];
    let pushed = after_move(Kind::Wardrobe, &sticking, "sticking-left-1-1", Towards::Back, 3.0);
    assert_eq!(pushed, ["door-panel-1-1 sticking-left-1-1 3.0"]);
    // Out of the opening of an arched apron, which is a hole in its face: the gap is an eighth of an inch.
    let arched = [("apron", "arched")];
    let pushed = after_move(
        Kind::Desk,
        &arched,
        "drawer-front-1-1",
        Towards::Left,
        3.175 + 4.0,
    );
    assert_eq!(pushed, ["apron-front drawer-front-1-1 4.0"]);
    let near = after_move(
        Kind::Desk,
        &arched,
        "drawer-front-1-1",
        Towards::Left,
        3.175 + 0.4,
    );
    assert_eq!(near, [""; 0]);
    let turned = [("legs", "turned")];
    let pushed = after_move(Kind::Desk, &turned, "leg-1", Towards::Up, 2.0);
    assert_eq!(pushed, ["leg-head-1 leg-1 2.0"]);
    let crown = [("crown", "cove")];
    let pushed = after_move(Kind::Bookcase, &crown, "crown-2", Towards::Back, 6.0);
    assert!(
        pushed.len() >= 2 && pushed.iter().any(|told| told.contains("crown-1")),
        "{pushed:?}"
    );
}

fn any_block(n: usize) -> impl Strategy<Value = ([f64; 3], [f64; 3], Part)> {
    let near = || prop::array::uniform3(0.0f64..0.5);
    let size = prop::array::uniform3(0.01f64..0.4);
    (near(), size).prop_map(move |(low, size)| {
        let high = std::array::from_fn(|i| low[i] + size[i]);
        (low, high, block(n, low, high))
    })
}

proptest! {
    /// Blocks have in common what their spans have in common, however they are turned.
    #[test]
    fn blocks_agree_with_their_spans(
        (a_low, a_high, a) in any_block(1), (b_low, b_high, b) in any_block(2),
        axis in prop::array::uniform3(-3.0f64..3.0),
    ) {
        let spans = (0..3).map(|i| a_high[i].min(b_high[i]) - a_low[i].max(b_low[i]));
        let depth = spans.fold(f64::INFINITY, f64::min);
        prop_assume!((depth - CONTACT_GAP).abs() > 1e-9);
        let by = Isometry3::rotation(Vector3::from(axis));
        let found = Assembly::new(vec![a, b], vec![]).moved(&by).overlaps();
        prop_assert_eq!(found.len(), usize::from(depth > CONTACT_GAP));
        if let [found] = found[..] {
            prop_assert!((found.depth.as_metres() - depth).abs() < 1e-9);
        }
    }

    /// The cuts are a second witness of the directions, where what is in common is thick enough for both.
    #[test]
    fn cuts_agree_with_spans(
        (a_low, a_high, a) in any_block(1), (b_low, b_high, b) in any_block(2),
        axis in prop::array::uniform3(-3.0f64..3.0),
    ) {
        let spans = (0..3).map(|i| a_high[i].min(b_high[i]) - a_low[i].max(b_low[i]));
        let depth = spans.fold(f64::INFINITY, f64::min);
        prop_assume!(!(0.0..0.002).contains(&depth));
        let by = Isometry3::rotation(Vector3::from(axis));
        let (a, b) = (a.moved(&by), b.moved(&by));
        let (a, b) = (Solid::of(&a, a.bounds()), Solid::of(&b, b.bounds()));
        let points = intersection_points(&a, &b);
        prop_assert_eq!(points.is_some(), depth > 0.0);
    }
}
