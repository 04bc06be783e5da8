//! Tests of edge lengths.

use super::line::ALONG;
use super::*;
use crate::face::Side;
use crate::furniture::styles::BaseStyle;
use crate::furniture::{Furniture, Kind};
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;
use crate::profile::{Profile, Shape};
use crate::solid::{Faces, Turning, Worked, slab};
use crate::space::{Exposure, Space};
use crate::{Point3, Vector3};
use nalgebra::Isometry3;
use proptest::prelude::*;

fn id(n: usize) -> PartId {
    PartId::nth(PartKind::Board, n)
}

fn block(n: usize, low: [f64; 3], high: [f64; 3]) -> Part {
    Part::block(id(n), low, high)
}

fn total(assembly: &Assembly, is_painted: impl Fn(&SurfaceId) -> bool) -> [f64; 3] {
    let sum: Edges = assembly
        .edges(is_painted)
        .into_iter()
        .map(|(_, edges)| edges)
        .sum();
    [sum.arrises, sum.corners, sum.borders].map(Length::as_metres)
}

/// The same however the piece stands.
#[track_caller]
fn assert_edges(parts: Vec<Part>, is_painted: impl Fn(&SurfaceId) -> bool, expected: [f64; 3]) {
    assert_within(&Assembly::new(parts, vec![]), is_painted, expected, 1e-7);
}

#[track_caller]
fn assert_within(
    assembly: &Assembly,
    is_painted: impl Fn(&SurfaceId) -> bool,
    expected: [f64; 3],
    tolerance: f64,
) {
    let by = Isometry3::new(Vector3::new(1.0, -2.0, 0.5), Vector3::new(0.3, 1.1, -0.7));
    for assembly in [assembly.clone(), assembly.clone().moved(&by)] {
        let found = total(&assembly, &is_painted);
        let near = found
            .iter()
            .zip(expected)
            .all(|(f, e)| (f - e).abs() <= tolerance);
        assert!(near, "{found:?} instead of {expected:?}");
    }
}

#[test]
fn a_block_has_twelve_arrises() {
    let board = block(1, [0.0; 3], [0.6, 0.3, 0.02]);
    assert_edges(vec![board.clone()], |_| true, [4.0 * 0.92, 0.0, 0.0]);
    assert_edges(vec![board], |_| false, [0.0; 3]);
}

#[test]
fn a_block_painted_in_part() {
    let board = block(1, [0.0; 3], [0.6, 0.3, 0.02]);
    let top = |id: &SurfaceId| id.side == Side::Top;
    assert_edges(vec![board.clone()], top, [0.0, 0.0, 1.8]);
    // All but the underside: its four edges are borders.
    assert_edges(
        vec![board.clone()],
        |id| id.side != Side::Bottom,
        [1.8 + 0.08, 0.0, 1.8],
    );
    // Top and front share an arris, and end in three edges each.
    let two = |id: &SurfaceId| matches!(id.side, Side::Top | Side::Front);
    assert_edges(vec![board], two, [0.6, 0.0, 1.2 + 0.64]);
}

#[test]
fn halves_of_an_arris_belong_to_both_surfaces() {
    let one = Assembly::new(vec![block(1, [0.0; 3], [0.6, 0.3, 0.02])], vec![]);
    let edges = one.edges(|_| true);
    assert_eq!(edges.len(), 6);
    let top = edges
        .iter()
        .find(|(id, _)| id.side == Side::Top)
        .map(|(_, edges)| edges.arrises);
    assert!(top.is_some_and(|length| (length.as_metres() - 0.9).abs() < 1e-12));
}

#[test]
fn boards_side_by_side_are_one() {
    let whole = 4.0 * (1.0 + 0.3 + 0.02);
    let first = block(1, [0.0; 3], [0.5, 0.3, 0.02]);
    assert_edges(
        vec![first.clone(), block(2, [0.5, 0.0, 0.0], [1.0, 0.3, 0.02])],
        |_| true,
        [whole, 0.0, 0.0],
    );
    // Measured with a tape, they neither meet nor are they flush.
    for by in [
        [0.0004, 0.0, 0.0],
        [0.0, 0.0, 0.0004],
        [0.0004, 0.0003, 0.0004],
        [-0.0004, 0.0, -0.0003],
    ] {
        let second = block(2, [0.5, 0.0, 0.0], [1.0, 0.3, 0.02]).moved(&Isometry3::from(by));
        let both = Assembly::new(vec![first.clone(), second], vec![]);
        assert_within(&both, |_| true, [whole, 0.0, 0.0], 0.004);
    }
    // A joint that can be seen has its own arrises.
    let apart = block(2, [0.502, 0.0, 0.0], [1.002, 0.3, 0.02]);
    assert_edges(
        vec![first.clone(), apart],
        |_| true,
        [whole + 8.0 * 0.16, 0.0, 0.0],
    );
    // Paint on one board ends at the joint.
    let both = vec![first, block(2, [0.5, 0.0, 0.0], [1.0, 0.3, 0.02])];
    assert_edges(both, |s| s.part == id(1), [2.0 * 0.32 + 4.0 * 0.5, 0.0, 0.64]);
}

#[test]
fn an_ell_has_one_inner_corner() {
    let ell = |gap: f64| {
        vec![
            block(1, [0.0; 3], [0.5, 0.3, 0.02]),
            block(2, [0.0, 0.0, 0.02 + gap], [0.02, 0.3, 0.42]),
        ]
    };
    // Two outlines of an L, four long arrises around the outside and one at the foot of the inner side.
    let outline = 2.0 * (0.5 + 0.42);
    let arrises = 2.0 * outline + 5.0 * 0.3;
    assert_edges(ell(0.0), |_| true, [arrises, 0.3, 0.0]);
    assert_within(
        &Assembly::new(ell(0.0004), vec![]),
        |_| true,
        [arrises, 0.3, 0.0],
        0.004,
    );
    // If only the upright is painted, its foot is cut in on all four sides.
    assert_edges(ell(0.0), |s| s.part == id(2), [4.0 * 0.4 + 0.64, 0.0, 0.64]);
}

#[test]
fn a_board_on_a_larger_board() {
    let parts = vec![
        block(1, [0.0; 3], [0.5, 0.5, 0.02]),
        block(2, [0.1, 0.1, 0.02], [0.3, 0.2, 0.32]),
    ];
    let arrises = 4.0 * (1.02) + 2.0 * 0.3 + 4.0 * 0.3;
    assert_edges(parts.clone(), |_| true, [arrises, 0.6, 0.0]);
    // The wide board alone: masked around the foot of the other.
    assert_edges(parts, |s| s.part == id(1), [4.0 * 1.02, 0.0, 0.6]);
}

#[test]
fn boards_that_touch_along_an_edge_keep_their_arrises() {
    let parts = vec![
        block(1, [0.0; 3], [0.1, 0.1, 0.5]),
        block(2, [0.1, 0.1, 0.0], [0.2, 0.2, 0.5]),
    ];
    // Across the air, the two meet in two inner corners.
    assert_edges(parts, |_| true, [2.0 * 4.0 * 0.7 - 1.0, 1.0, 0.0]);
}

#[test]
fn a_cylinder_has_two_rings_and_no_seams() {
    let cylinder = Turning::from(0.03, 0.4)
        .line_to(0.03, 0.0)
        .part(id(1), Point3::origin());
    let ring = TAU * 0.03;
    let one = Assembly::new(vec![cylinder.clone()], vec![]);
    assert_within(&one, |_| true, [2.0 * ring, 0.0, 0.0], 0.005 * ring);
    assert_within(
        &one,
        |s| s.side == Side::Around,
        [0.0, 0.0, 2.0 * ring],
        0.005 * ring,
    );
    // On a board: an inner corner around its foot.
    let board = block(2, [-0.1, -0.1, -0.02], [0.1, 0.1, 0.0]);
    let both = Assembly::new(vec![cylinder, board], vec![]);
    assert_within(&both, |_| true, [4.0 * 0.42 + ring, ring, 0.0], 0.005 * ring);
}

#[test]
fn a_round_edge_is_no_arris() {
    let profile = Profile::standard(Shape::Roundover, 0.01, 0.01);
    let worked = Worked {
        profile: &profile,
        edges: [true; 4],
    };
    let top = slab(id(1), [0.0; 3], [0.6, 0.4, 0.02], Faces::Up, &worked);
    // Around the underside; the miters, a little longer than a quarter circle, and four upright arrises.
    let sum: f64 = profile
        .line(crate::solid::CHORD)
        .windows(2)
        .map(|p| libm::hypot(SQRT_2 * (p[1][0] - p[0][0]), p[1][1] - p[0][1]))
        .sum();
    let one = Assembly::new(vec![top], vec![]);
    let found = total(&one, |_| true);
    // Between its mitered runs the edge turns by less and less toward the face.
    assert!(
        found[0] > 2.0 + 0.04 && found[0] <= 2.0 + 0.04 + 4.0 * sum,
        "{found:?}"
    );
    assert_eq!(found[1..], [0.0, 0.0]);
}

#[test]
fn paint_ends_where_a_face_begins_to_look_inside() {
    let side = block(1, [0.0; 3], [0.02, 0.4, 0.8]);
    let inside = Space::block(Exposure::Inside, [0.01, 0.05, 0.1], [0.5, 0.4, 0.7]);
    let one = Assembly::new(vec![side], vec![inside]);
    let found = total(&one, |s| s.exposure == Exposure::Outside);
    // The hollow reaches to the rear edge of the board.
    let border = 0.6 + 2.0 * 0.35 + 0.6;
    assert_eq!(
        found.map(|f| (f * 1e6).round() / 1e6),
        [4.0 * 1.22 - 0.6, 0.0, border]
    );
}

#[test]
fn a_narrow_surface_between_two_edges_is_overlooked() {
    // A board that stands out by less than a brush feels.
    let parts = vec![
        block(1, [0.0; 3], [0.5, 0.3, 0.02]),
        block(2, [0.0, 0.3, 0.0], [0.5, 0.5, 0.0203]),
    ];
    let whole = Assembly::new(parts, vec![]);
    assert_within(&whole, |_| true, [4.0 * (0.5 + 0.5 + 0.02), 0.0, 0.0], 0.002);
}

/// Blocks that do not run into each other, on a grid of centimeters, so that many touch and none nearly touch.
fn some_blocks() -> impl Strategy<Value = Vec<Part>> {
    let span = || (0i32..9, 1i32..7);
    let one = (span(), span(), span());
    prop::collection::vec(one, 1..6).prop_map(|list| {
        let parts = list.into_iter().enumerate().map(|(n, (x, y, z))| {
            let low = [x.0, y.0, z.0].map(|c| f64::from(c) / 100.0);
            let high = [x, y, z].map(|(c, s)| f64::from(c + s) / 100.0);
            block(n + 1, low, high)
        });
        parts.fold(Vec::new(), |mut kept: Vec<Part>, part| {
            kept.push(part);
            if !Assembly::new(kept.clone(), vec![]).overlaps().is_empty() {
                kept.pop();
            }
            kept
        })
    })
}

/// The edges of blocks on the grid, cell by cell: along each line of the grid, how many of the four cells around
/// it are air between one board and the next.
fn counted(parts: &[Part], is_painted: impl Fn(PartId) -> bool) -> [f64; 3] {
    let mut sum = [0.0; 3];
    let blocks: Vec<_> = parts.iter().map(|part| (part.id, part.bounds())).collect();
    let solid = |cell: [f64; 3]| {
        let holds =
            |(low, high): &([f64; 3], [f64; 3])| (0..3).all(|i| low[i] < cell[i] && cell[i] < high[i]);
        blocks.iter().find(|(_, bounds)| holds(bounds)).map(|(id, _)| *id)
    };
    for place in 0..3 * 17 * 17 * 17 {
        let (axis, [i, j, k]) = (place % 3, [3, 51, 867].map(|n| (place / n % 17) as f64 / 100.0));
        let around = [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]].map(|[a, b]| {
            let mut cell = [i, j, k].map(|c| c - 0.005);
            cell[axis] = [i, j, k][axis] + 0.005;
            cell[(axis + 1) % 3] = [i, j, k][(axis + 1) % 3] + 0.005 * a;
            cell[(axis + 2) % 3] = [i, j, k][(axis + 2) % 3] + 0.005 * b;
            solid(cell)
        });
        for first in (0..4).filter(|&first| around[first].is_some()) {
            let air = (1..4).take_while(|n| around[(first + n) % 4].is_none()).count();
            let next = around[(first + air + 1) % 4];
            match (
                air,
                [around[first], next].map(|part| part.is_some_and(&is_painted)),
            ) {
                (0, _) | (2, [true, true]) | (_, [false, false]) => {}
                (1, [true, true]) => sum[1] += 0.01,
                (_, [true, true]) => sum[0] += 0.01,
                _ => sum[2] += 0.01,
            }
        }
    }
    sum
}

#[test]
fn edges_of_furniture_do_not_depend_on_how_it_stands() {
    for kind in [Kind::Sideboard, Kind::Wardrobe, Kind::SideTable, Kind::Frame] {
        let mut piece = Furniture::usual(kind);
        piece.styles.base = BaseStyle::CutOutPlinth;
        let piece = piece.assembly().unwrap();
        let is_painted = |s: &SurfaceId| s.exposure == Exposure::Outside;
        assert_within(&piece, is_painted, total(&piece, is_painted), 1e-6);
    }
}

proptest! {
    #[test]
    fn lines_that_run_along_each_other_run_along_one_axis(
        along in prop::array::uniform3(-1.0f64..1.0), by in prop::array::uniform3(-0.05f64..0.05),
    ) {
        let line = |along: Vector3| Line {
            surface: 0,
            from: Point3::origin(),
            along: along.normalize(),
            length: 1.0,
            normal: Vector3::zeros(),
        };
        let one = line(Vector3::from(along));
        let other = line(one.along + Vector3::from(by));
        prop_assume!(one.along.dot(&other.along) >= ALONG);
        prop_assert!((0..3).any(|axis| one.runs_along(axis) && other.runs_along(axis)));
    }

    #[test]
    fn edges_are_those_counted_cell_by_cell(parts in some_blocks(), some in 1u16..7) {
        let is_painted = |part: PartId| part.row <= some;
        let found = total(&Assembly::new(parts.clone(), vec![]), |s| is_painted(s.part));
        let expected = counted(&parts, is_painted);
        for (found, expected) in found.iter().zip(expected) {
            prop_assert!((found - expected).abs() < 1e-5, "{found} instead of {expected}");
        }
    }

    #[test]
    fn edges_do_not_depend_on_how_a_piece_stands(
        parts in some_blocks(), axis in prop::array::uniform3(-3.0f64..3.0), top_only in any::<bool>(),
    ) {
        let is_painted = |s: &SurfaceId| !top_only || s.side == Side::Top;
        let one = Assembly::new(parts, vec![]);
        let before = total(&one, is_painted);
        let by = Isometry3::new(Vector3::new(0.3, -0.2, 0.1), Vector3::from(axis));
        let after = total(&one.moved(&by), is_painted);
        for (before, after) in before.iter().zip(after) {
            prop_assert!((before - after).abs() < 1e-5, "{before} became {after}");
        }
    }

    #[test]
    fn edges_grow_with_the_piece(parts in some_blocks(), times in 0.5f64..3.0) {
        let grown = parts.iter().map(|part| {
            let (low, high) = part.bounds();
            Part::block(part.id, low.map(|c| c * times), high.map(|c| c * times))
        });
        let grown = Assembly::new(grown.collect(), vec![]);
        let (one, other) = (total(&Assembly::new(parts, vec![]), |_| true), total(&grown, |_| true));
        for (one, other) in one.iter().zip(other) {
            prop_assert!((times * one - other).abs() < 1e-5, "{one} became {other}");
        }
    }
}
