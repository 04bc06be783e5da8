//! A case of boards: carcass, top, back, rails, drawer fronts, and what it stands on.

use crate::Vector3;
use crate::assembly::Assembly;
use crate::part::{Part, PartId, PartKind};
use crate::space::{Sense, Space};

use super::fields::{HEIGHT, LEG_INSET, LEG_WIDTH, OVERHANG_FRONT, OVERHANG_SIDE, PLINTH_SETBACK};
use super::layout::{Layout, Span};
use super::{BackStyle, BaseStyle, Furniture};

/// Builds the case. The measurements must have passed the check.
pub(super) fn build(furniture: &Furniture, at: &Layout) -> Assembly {
    let mut parts = vec![top(furniture, at)];
    parts.extend(carcass(furniture, at));
    parts.extend(rails(at));
    parts.extend(drawer_fronts(at));
    parts.extend(base(furniture, at));
    Assembly {
        parts,
        spaces: spaces(furniture, at),
    }
}

fn block(id: PartId, x: Span, y: Span, z: Span) -> Part {
    Part::block(id, [x[0], y[0], z[0]], [x[1], y[1], z[1]])
}

fn top(furniture: &Furniture, at: &Layout) -> Part {
    let front = furniture.length(&OVERHANG_FRONT).as_metres();
    let side = furniture.length(&OVERHANG_SIDE).as_metres();
    let height = furniture.length(&HEIGHT).as_metres();
    block(
        PartId::only(PartKind::Top),
        [-side, at.width + side],
        [-front, at.depth],
        [at.carcass[1], height],
    )
}

fn carcass(furniture: &Furniture, at: &Layout) -> Vec<Part> {
    let boards = [0.0, at.boards_rear];
    let [foot, head] = at.carcass;
    let between = [at.board, at.width - at.board];
    let (back_x, back_z) = match furniture.back {
        BackStyle::Flush => ([0.0, at.width], at.carcass),
        BackStyle::Recessed => (between, [foot + at.board, head]),
    };
    vec![
        block(
            PartId::only(PartKind::LeftSide),
            [0.0, at.board],
            boards,
            at.carcass,
        ),
        block(
            PartId::only(PartKind::RightSide),
            [at.width - at.board, at.width],
            boards,
            at.carcass,
        ),
        block(
            PartId::only(PartKind::Bottom),
            between,
            boards,
            [foot, foot + at.board],
        ),
        block(PartId::only(PartKind::Back), back_x, at.back, back_z),
    ]
}

fn rails(at: &Layout) -> Vec<Part> {
    let between = [at.board, at.width - at.board];
    let (front, rear) = (
        [0.0, at.rail_depth],
        [at.back[0] - at.rear_rail_depth, at.back[0]],
    );
    let under_top = [at.carcass[1] - at.board, at.carcass[1]];
    let mut parts = vec![
        block(PartId::nth(PartKind::TopRail, 1), between, front, under_top),
        block(PartId::nth(PartKind::TopRail, 2), between, rear, under_top),
    ];
    for (i, pair) in at.rows.windows(2).enumerate() {
        let height = [pair[1].opening[1], pair[0].opening[0]];
        parts.push(block(PartId::nth(PartKind::Rail, i + 1), between, front, height));
    }
    for (i, row) in at.rows.iter().enumerate() {
        for (c, pair) in row.columns.windows(2).enumerate() {
            let middle = (pair[0][1] + pair[1][0]) / 2.0;
            let across = [middle - at.board / 2.0, middle + at.board / 2.0];
            parts.push(block(
                PartId::in_row(PartKind::Divider, i + 1, c + 1),
                across,
                front,
                row.opening,
            ));
        }
    }
    parts
}

fn drawer_fronts(at: &Layout) -> Vec<Part> {
    let rows = at.rows.iter().enumerate();
    rows.flat_map(|(i, row)| {
        row.columns.iter().enumerate().map(move |(c, across)| {
            block(
                PartId::in_row(PartKind::DrawerFront, i + 1, c + 1),
                *across,
                at.front,
                row.front,
            )
        })
    })
    .collect()
}

fn base(furniture: &Furniture, at: &Layout) -> Vec<Part> {
    let below = [0.0, at.carcass[0]];
    match furniture.base {
        BaseStyle::Floor => vec![],
        BaseStyle::Plinth => {
            let hollow = plinth_hollow(furniture, at);
            let whole = [0.0, at.width];
            vec![
                block(
                    PartId::only(PartKind::PlinthFront),
                    whole,
                    [hollow[0] - at.board, hollow[0]],
                    below,
                ),
                block(
                    PartId::nth(PartKind::PlinthSide, 1),
                    [0.0, at.board],
                    hollow,
                    below,
                ),
                block(
                    PartId::nth(PartKind::PlinthSide, 2),
                    [at.width - at.board, at.width],
                    hollow,
                    below,
                ),
                block(
                    PartId::only(PartKind::PlinthBack),
                    whole,
                    [hollow[1], at.depth],
                    below,
                ),
            ]
        }
        BaseStyle::Legs => {
            let inset = furniture.length(&LEG_INSET).as_metres();
            let leg = furniture.length(&LEG_WIDTH).as_metres();
            let ends = |length: f64| [[inset, inset + leg], [length - inset - leg, length - inset]];
            let corners = ends(at.depth)
                .into_iter()
                .flat_map(|y| ends(at.width).map(|x| (x, y)));
            corners
                .enumerate()
                .map(|(i, (x, y))| block(PartId::nth(PartKind::Leg, i + 1), x, y, below))
                .collect()
        }
    }
}

/// The hollow within the plinth from front to back.
fn plinth_hollow(furniture: &Furniture, at: &Layout) -> Span {
    [
        furniture.length(&PLINTH_SETBACK).as_metres() + at.board,
        at.depth - at.board,
    ]
}

/// What the faces of the case look into, other than the room.
fn spaces(furniture: &Furniture, at: &Layout) -> Vec<Space> {
    let (inf, [foot, head]) = (f64::INFINITY, at.carcass);
    let between = [at.board, at.width - at.board];
    let front_plane = at.front[1].max(0.0);
    let mut list = vec![
        Space::block(Sense::Floor, [-inf, -inf, -inf], [inf, inf, 0.0]),
        Space::block(Sense::Wall, [-inf, at.depth, -inf], [inf; 3]),
        Space::block(
            Sense::Inside,
            [between[0], front_plane, foot + at.board],
            [between[1], at.back[0], head],
        ),
        Space::block(
            Sense::Wall,
            [between[0], at.back[1], foot + at.board],
            [between[1], at.depth, head],
        ),
        Space::block(Sense::Underneath, [0.0, 0.0, 0.0], [at.width, at.depth, foot]).facing(-Vector3::z()),
    ];
    if furniture.base == BaseStyle::Plinth {
        let [front, rear] = plinth_hollow(furniture, at);
        list.push(Space::block(
            Sense::Underneath,
            [between[0], front, 0.0],
            [between[1], rear, foot],
        ));
    }
    list
}
