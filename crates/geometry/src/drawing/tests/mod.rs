//! Tests of drawings: known ones, and properties of generated pieces.

mod pieces;
mod witness;

use std::collections::BTreeMap;
use std::f64::consts::FRAC_PI_2;

use nalgebra::{Isometry3, Translation3, UnitQuaternion};
use proptest::prelude::*;

use super::*;
use crate::corner::Corner;
use crate::solid::Turning;
use crate::surface::SurfaceId;
use crate::{Assembly, Furniture, Kind, Part, PartId, PartKind, SMALLEST_AREA};
use crate::{Point3, Vector3};
use pieces::{heap, piece, view};
use witness::{Sight, Witness, contains};

fn block(n: usize, low: [f64; 3], high: [f64; 3]) -> Part {
    Part::block(PartId::nth(PartKind::Board, n), low, high)
}

fn seen_of(parts: Vec<Part>, view: View) -> Drawing {
    Drawing::of(&Assembly::new(parts, vec![]).surfaces(), view)
}

#[test]
fn a_block_shows_one_face_from_the_front_and_three_when_turned() {
    let parts = vec![block(1, [0.0; 3], [1.0, 0.5, 0.8])];
    assert_eq!(seen_of(parts.clone(), View::Front).faces.len(), 1);
    let turned = seen_of(parts, View::Turned { turn: 0.5, tilt: 0.4 });
    assert_eq!(turned.faces.len(), 3);
    let sum: f64 = turned.faces.iter().map(|f| f.region.area()).sum();
    assert!((sum - turned.outline.area()).abs() < 1e-7);
}

#[test]
fn a_board_before_another_hides_what_lies_behind_it() {
    let parts = vec![
        block(1, [0.0; 3], [1.0, 0.1, 1.0]),
        block(2, [0.25, -0.3, 0.25], [0.75, -0.2, 0.75]),
    ];
    let front = seen_of(parts, View::Front);
    let areas: Vec<f64> = front.faces.iter().map(|f| f.region.area()).collect();
    assert!(
        (areas[0] - 0.75).abs() < 1e-7 && (areas[1] - 0.25).abs() < 1e-7,
        "{areas:?}"
    );
}

#[test]
fn the_side_view_has_the_front_at_the_left() {
    let at = View::Side.project(&Point3::new(0.3, 0.1, 0.7));
    assert_eq!(at, [0.1, 0.7]);
}

#[test]
fn the_straight_views_are_turned_ones() {
    let point = Point3::new(0.3, 0.1, 0.7);
    let turned = |turn, tilt| View::Turned { turn, tilt }.project(&point);
    for (straight, turned) in [
        (View::Front, turned(0.0, 0.0)),
        (View::Side, turned(FRAC_PI_2, 0.0)),
        (View::Left, turned(-FRAC_PI_2, 0.0)),
        (View::Top, turned(0.0, FRAC_PI_2)),
    ] {
        let [x, y] = straight.project(&point);
        assert!(
            (x - turned[0]).abs() < 1e-15 && (y - turned[1]).abs() < 1e-15,
            "{straight:?}"
        );
    }
}

#[test]
fn nothing_makes_an_empty_drawing() {
    let nothing = Drawing::of(&[], View::Front);
    assert!(nothing.faces.is_empty() && nothing.outline.area() == 0.0);
}

/// A post with a collar that stands out in its middle.
fn post() -> Part {
    let turning = Turning::from(0.02, 0.3)
        .line_to(0.02, 0.2)
        .line_to(0.03, 0.2)
        .line_to(0.03, 0.1)
        .line_to(0.02, 0.1)
        .line_to(0.02, 0.0);
    turning.part(PartId::nth(PartKind::Leg, 1), Point3::origin())
}

#[test]
fn a_round_post_is_drawn_without_the_seams_of_its_facets() {
    let front = seen_of(vec![post()], View::Front);
    let [around] = front.faces.as_slice() else {
        panic!("{} faces", front.faces.len());
    };
    let corners: Vec<usize> = around.region.contours().map(<[Point2]>::len).collect();
    assert_eq!(corners, [12]);
    // Its outline, and where the collar steps out above and below.
    let points: Vec<usize> = around.lines.iter().map(Vec::len).collect();
    assert_eq!(points, [13, 2, 2]);
    assert!(around.shades.len() > 5);
    let shaded: f64 = around.shades.iter().map(|shade| shade.region.area()).sum();
    assert!((shaded - around.region.area()).abs() < 1e-9);
}

#[test]
fn a_round_post_is_drawn_with_its_folds() {
    let turned = seen_of(vec![post()], View::Turned { turn: 0.0, tilt: 0.4 });
    let around = &turned.faces[0];
    assert_eq!(around.region.contours().count(), 1);
    // The outline; the fold around the top of the collar; the edge below, where it hides the post; and the foot of
    // the post on the collar, up on both sides to the outline.
    assert_eq!(around.lines.len(), 4, "{:?}", around.lines);
}

#[test]
fn slivers_slits_and_spikes_are_no_part_of_a_contour() {
    let corner = |(x, y): (i32, i32)| Corner::new(x, y);
    let tidied = |corners: &[(i32, i32)]| {
        let mut contour: Vec<Corner> = corners.iter().copied().map(corner).collect();
        cut::tidy(&mut contour);
        contour.len()
    };
    let square = [(0, 0), (9000, 0), (9000, 9000), (0, 9000)];
    assert_eq!(tidied(&square), 4);
    assert_eq!(
        tidied(&[(0, 0), (4000, 1), (9000, 0), (9000, 9000), (0, 9000)]),
        4
    );
    assert_eq!(
        tidied(&[
            (0, 0),
            (9000, 0),
            (9000, 4000),
            (10, 4001),
            (9000, 4002),
            (9000, 9000),
            (0, 9000)
        ]),
        4
    );
    assert_eq!(
        tidied(&[(0, 0), (9000, 0), (9000, 9000), (0, 9000), (0, 9990), (1, 9000)]),
        4
    );
    assert_eq!(tidied(&[(0, 0), (9000, 1), (9000, 3), (0, 2)]), 0);
}

/// How many points the witness looks through, across and up.
const SCREEN: [usize; 2] = [96, 72];

/// The points of a screen over a drawing.
fn screen(drawing: &Drawing) -> impl Fn(usize, usize) -> Point2 {
    let (low, high) = drawing.bounds();
    let at = move |axis: usize, n: usize| {
        // Nowhere that round sizes have their edges.
        let share = (n as f64 + [0.381_966, 0.567_143][axis]) / SCREEN[axis] as f64;
        low[axis] + (high[axis] - low[axis]) * share
    };
    move |x, y| [at(0, x), at(1, y)]
}

/// The points away from edges, around which the witness sees but one surface or nothing, with what it sees there.
fn plain_points(drawing: &Drawing, witness: &Witness) -> Vec<(Point2, Option<Sight>)> {
    let point = screen(drawing);
    let [wide, high] = SCREEN;
    let points = (0..high).flat_map(|y| (0..wide).map(move |x| (x, y)));
    let sights: Vec<Option<Sight>> = points.clone().map(|(x, y)| witness.look(point(x, y))).collect();
    let id = |x: usize, y: usize| sights[x + wide * y].as_ref().map(|sight| sight.id);
    let is_plain = |&(x, y): &(usize, usize)| {
        let is_inside = 0 < x && x + 1 < wide && 0 < y && y + 1 < high;
        is_inside
            && [id(x - 1, y), id(x + 1, y), id(x, y - 1), id(x, y + 1)]
                .iter()
                .all(|near| *near == id(x, y))
    };
    let plain = points.filter(is_plain);
    plain
        .map(|(x, y)| (point(x, y), sights[x + wide * y].clone()))
        .collect()
}

/// The drawing shows what the witness sees: of a thousand points away from edges, one may differ, and of two hundred
/// one may be shaded wrongly.
fn compare_with_witness(surfaces: &[Surface], view: View) -> Result<(), TestCaseError> {
    let drawing = Drawing::of(surfaces, view);
    let points = plain_points(&drawing, &Witness::of(surfaces, view));
    let faces_at = |at: Point2| {
        drawing
            .faces
            .iter()
            .filter(move |face| contains(&face.region, at))
    };
    let is_drawn = |at: Point2, sight: &Option<Sight>| {
        faces_at(at)
            .map(|face| face.surface)
            .eq(sight.iter().map(|sight| sight.id))
    };
    let differing: Vec<_> = points
        .iter()
        .filter(|(at, sight)| !is_drawn(*at, sight))
        .collect();
    prop_assert!(
        differing.len() * 1000 <= points.len(),
        "{view:?}: of {} differ {differing:?}",
        points.len()
    );
    let is_shaded = |at: Point2, sight: &Sight| {
        let shades = faces_at(at).flat_map(|face| &face.shades);
        let off = |shade: &Shade| (shade.squareness - sight.squareness).abs();
        let mut here = shades.filter(|shade| contains(&shade.region, at));
        here.next()
            .is_some_and(|shade| off(shade) < 1.0 / visibility::SHADES + 1e-9)
            && here.next().is_none()
    };
    let misshaded: Vec<_> = points
        .iter()
        .filter(|(at, sight)| sight.as_ref().is_some_and(|sight| !is_shaded(*at, sight)))
        .collect();
    prop_assert!(
        misshaded.len() * 200 <= points.len(),
        "{view:?}: of {} are shaded wrongly {misshaded:?}",
        points.len()
    );
    Ok(())
}

/// Pieces of every kind: the usual one, and others whose choices each differ from it as far as they go together.
fn real_pieces() -> Vec<(String, Vec<Surface>)> {
    let mut pieces = Vec::new();
    for kind in Kind::ALL {
        for variant in 0..4 {
            let mut piece = Furniture::usual(kind);
            for field in piece.style_fields() {
                let before = piece.clone();
                let option = field.options[variant % field.options.len()];
                if variant > 0 && field.choose(&mut piece.styles, option.key) && piece.assembly().is_err() {
                    piece = before;
                }
            }
            pieces.push((
                format!("{kind:?} {variant}"),
                piece.assembly().unwrap().surfaces(),
            ));
        }
    }
    pieces
}

#[test]
fn real_pieces_are_drawn_as_the_witness_sees_them() {
    for (name, surfaces) in real_pieces() {
        for view in [
            View::Front,
            View::Cabinet,
            View::Turned { turn: 0.5, tilt: 0.4 },
            View::Turned {
                turn: -2.0,
                tilt: -0.3,
            },
        ] {
            let drawing = Drawing::of(&surfaces, view);
            let (seen, outline) = (sum(&drawing.faces), drawing.outline.area());
            let tolerance = SMALLEST_AREA * surfaces.len() as f64;
            assert!(
                (seen - outline).abs() < tolerance,
                "{name}, {view:?}: {seen} in {outline}"
            );
            if let Err(error) = compare_with_witness(&surfaces, view) {
                panic!("{name}: {error}");
            }
        }
    }
}

/// Whether two strokes cross.
fn cross([p, q]: [Point2; 2], [r, s]: [Point2; 2]) -> bool {
    let turn =
        |a: Point2, b: Point2, c: Point2| (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0.0;
    turn(p, q, r) != turn(p, q, s) && turn(r, s, p) != turn(r, s, q)
}

/// Whether the eye clearly passes an edge between two points `apart` from each other: to another surface, or by more
/// than slanted faces explain to another depth.
fn is_edge_between(first: &Option<Sight>, second: &Option<Sight>, apart: f64) -> bool {
    let (Some(a), Some(b)) = (first, second) else {
        return first.is_some() != second.is_some();
    };
    let slope = |sight: &Sight| 1.0 / sight.squareness;
    !a.is_of_one_face(b) || (a.near - b.near).abs() > 1e-3 + 4.0 * apart * (slope(a) + slope(b))
}

/// Both drawings show the same, the second `shift` away.
fn compare_drawings(first: &Drawing, second: &Drawing, shift: Point2) -> Result<(), TestCaseError> {
    let regions = |drawing: &Drawing, by: Point2| -> BTreeMap<SurfaceId, Region> {
        let moved = |region: &Region| region.mapped(|[x, y]| [x - by[0], y - by[1]]);
        drawing
            .faces
            .iter()
            .map(|face| (face.surface, moved(&face.region)))
            .collect()
    };
    let (first, second) = (regions(first, [0.0; 2]), regions(second, shift));
    let none = &Region::EMPTY;
    for id in first.keys().chain(second.keys()) {
        let [a, b] = [&first, &second].map(|regions| regions.get(id).unwrap_or(none));
        let off = a.difference(b).area() + b.difference(a).area();
        prop_assert!(off < 3.0 * SMALLEST_AREA, "{id} differs by {off}");
    }
    Ok(())
}

fn sum(faces: &[VisibleFace]) -> f64 {
    faces.iter().map(|face| face.region.area()).sum()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_is_seen_fills_the_outline_once(piece in piece(), view in view()) {
        let surfaces = piece.assembly.surfaces();
        let drawing = Drawing::of(&surfaces, view);
        let (seen, outline) = (sum(&drawing.faces), drawing.outline.area());
        let tolerance = SMALLEST_AREA * surfaces.len() as f64;
        prop_assert!((seen - outline).abs() < tolerance, "{seen} in an outline of {outline}");
        let joined = Region::union_of_all(drawing.faces.iter().map(|face| &face.region)).area();
        prop_assert!((seen - joined).abs() < tolerance, "{seen} overlap to {joined}");
        for face in &drawing.faces {
            let shades: f64 = face.shades.iter().map(|shade| shade.region.area()).sum();
            prop_assert!((shades - face.region.area()).abs() < 1e-6, "{}: {shades}", face.surface);
        }
    }

    #[test]
    fn a_second_witness_sees_the_same(piece in piece(), view in view()) {
        compare_with_witness(&piece.assembly.surfaces(), view)?;
    }

    /// A maker may move one part into another; the drawing then shows what one would see.
    #[test]
    fn parts_that_run_into_each_other_are_drawn_as_seen(heap in heap(), view in view()) {
        compare_with_witness(&heap.surfaces(), view)?;
    }

    /// A line is where the eye passes from one surface, depth or direction to another.
    #[test]
    fn lines_are_real_edges(piece in piece(), view in view()) {
        let surfaces = piece.assembly.surfaces();
        let witness = Witness::of(&surfaces, view);
        let (mut all, mut idle) = (0.0, vec![]);
        for face in &Drawing::of(&surfaces, view).faces {
            for stroke in face.lines.iter().flat_map(|line| line.windows(2)) {
                let (p, q) = (stroke[0], stroke[1]);
                let (along, up) = (q[0] - p[0], q[1] - p[1]);
                let length = libm::hypot(along, up);
                all += length;
                let beside = |off: f64| {
                    let by = off / length;
                    witness.look([(p[0] + q[0]) / 2.0 - up * by, (p[1] + q[1]) / 2.0 + along * by])
                };
                if let (Some(a), Some(b)) = (beside(1e-6), beside(-1e-6))
                    && a.is_of_one_face(&b) && (a.near - b.near).abs() < 1e-4 && a.normal.dot(&b.normal) > 0.8
                {
                    idle.push((face.surface, p, q, length, a.near - b.near, a.normal.dot(&b.normal), a.squareness, b.squareness));
                }
            }
        }
        let lost: f64 = idle.iter().map(|stroke| stroke.3).sum();
        prop_assert!(lost <= 0.002 * all, "{lost} of {all}: {idle:?}");
    }

    /// Where the eye passes from one surface or depth to another, there is a line.
    #[test]
    fn edges_have_lines(piece in piece(), view in view()) {
        let surfaces = piece.assembly.surfaces();
        let witness = Witness::of(&surfaces, view);
        let drawing = Drawing::of(&surfaces, view);
        let lines = || drawing.faces.iter().flat_map(|face| &face.lines);
        let strokes: Vec<[Point2; 2]> = lines().flat_map(|line| line.windows(2).map(|s| [s[0], s[1]])).collect();
        let point = screen(&drawing);
        let (mut edges, mut bare) = (0, vec![]);
        for y in (0..SCREEN[1]).step_by(4) {
            let sights: Vec<_> = (0..SCREEN[0]).map(|x| witness.look(point(x, y))).collect();
            for x in 1..SCREEN[0] {
                let step = [point(x - 1, y), point(x, y)];
                if is_edge_between(&sights[x - 1], &sights[x], step[1][0] - step[0][0]) {
                    edges += 1;
                    if !strokes.iter().any(|&stroke| cross(step, stroke)) {
                        bare.push(step);
                    }
                }
            }
        }
        prop_assert!(bare.len() * 200 <= edges, "of {edges} edges these have no line: {bare:?}");
    }

    #[test]
    fn moving_the_piece_moves_the_drawing(
        piece in piece(), view in view(), to in prop::array::uniform3(-50.0..50.0f64),
    ) {
        let before = Drawing::of(&piece.assembly.surfaces(), view);
        let moved = piece.assembly.moved(&Isometry3::from_parts(Translation3::from(to), UnitQuaternion::identity()));
        let shift = view.project(&Point3::from(to));
        compare_drawings(&before, &Drawing::of(&moved.surfaces(), view), shift)?;
    }

    #[test]
    fn turning_the_piece_is_walking_around_it(piece in piece(), turn in -4.0..4.0f64, tilt in -1.5..1.5f64) {
        let before = Drawing::of(&piece.assembly.surfaces(), View::Turned { turn, tilt });
        let turned = piece.assembly.moved(&Isometry3::rotation(Vector3::z() * -turn));
        let after = Drawing::of(&turned.surfaces(), View::Turned { turn: 0.0, tilt });
        // The names of faces go by where they look; those of parts stay.
        prop_assert!((sum(&before.faces) - sum(&after.faces)).abs() < 1e-5);
        prop_assert!((before.outline.area() - after.outline.area()).abs() < 1e-6);
        compare_drawings(&before, &after, [0.0; 2])?;
    }

    #[test]
    fn the_order_of_parts_does_not_matter(piece in piece(), view in view(), seed in any::<u64>()) {
        let before = Drawing::of(&piece.assembly.surfaces(), view);
        let mut mixed = piece.assembly;
        mixed.parts.sort_by_key(|part| seed.wrapping_mul(u64::from(part.id.row) * 2 + 1).rotate_left(20));
        compare_drawings(&before, &Drawing::of(&mixed.surfaces(), view), [0.0; 2])?;
    }
}
