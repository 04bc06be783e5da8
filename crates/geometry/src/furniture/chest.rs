//! Blanket boxes: four boards, a bottom and a lid.

use super::Furniture;
use super::base;
use super::fields::{BOARD, DEPTH, HEIGHT, OVERHANG_FRONT, OVERHANG_SIDE, TOP_THICKNESS, WIDTH};
use super::spaces;
use super::top::top_board;
use super::unit::block;
use crate::assembly::Assembly;
use crate::exposure::Setting;
use crate::part::PartId;
use crate::part_kind::PartKind;
use crate::space::{Exposure, Space};

/// Builds a blanket box. The measurements must have passed the check.
pub(super) fn build(furniture: &Furniture) -> Assembly {
    let metres = |field| furniture.length(field).as_metres();
    let (wide, deep, board) = (metres(&WIDTH), metres(&DEPTH), metres(&BOARD));
    let (side, front) = (metres(&OVERHANG_SIDE), metres(&OVERHANG_FRONT));
    let (foot, height) = (base::height(furniture), metres(&HEIGHT));
    let head = height - metres(&TOP_THICKNESS);
    let (x, y, z) = ([0.0, wide], [0.0, deep], [foot, head]);
    let inner_x = [board, wide - board];
    let inner_y = [board, deep - board];
    let only = PartId::only;
    let mut parts = vec![
        top_board(
            furniture,
            only(PartKind::Lid),
            [-side, wide + side],
            [-front, deep],
            [head, height],
            [true, true, false, true],
        ),
        block(only(PartKind::Front), x, [0.0, board], z),
        block(only(PartKind::BackBoard), x, [deep - board, deep], z),
        block(only(PartKind::LeftSide), [0.0, board], inner_y, z),
        block(only(PartKind::RightSide), [wide - board, wide], inner_y, z),
        block(only(PartKind::Bottom), inner_x, inner_y, [foot, foot + board]),
    ];
    parts.extend(base::parts(furniture, [x, y]));
    let mut spaces = vec![
        spaces::floor(),
        spaces::wall(deep),
        Space::block(
            Exposure::Inside,
            [inner_x[0], inner_y[0], foot + board],
            [inner_x[1], inner_y[1], head],
        ),
        spaces::underneath(x, y, [0.0, foot]),
    ];
    if let Some([hollow_front, hollow_rear]) = base::hollow(furniture, y) {
        spaces.push(Space::block(
            Exposure::Underneath,
            [inner_x[0], hollow_front, 0.0],
            [inner_x[1], hollow_rear, foot],
        ));
    }
    spaces::around(parts, spaces, Setting::against_wall(), deep)
}
