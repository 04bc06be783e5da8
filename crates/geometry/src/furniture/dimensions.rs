//! Dimension lines: which measurement stands where in a drawing of a case.

use crate::Point3;
use crate::drawing::{Dimension, View};

use super::fields::{
    DEPTH, FieldId, HEIGHT, LEG_HEIGHT, LEG_WIDTH, OVERHANG_FRONT, OVERHANG_SIDE, PLINTH_HEIGHT,
    PLINTH_SETBACK, TOP_THICKNESS, WIDTH,
};
use super::layout::Layout;
use super::{BaseStyle, Furniture};

/// The dimension lines of a piece whose measurements fit.
pub(super) fn of(furniture: &Furniture, view: View) -> Vec<Dimension> {
    let at = Layout::of(furniture);
    match view {
        View::Front => front(furniture, &at),
        View::Side => side(furniture, &at),
        View::Top => above(furniture, &at),
        View::Turned { .. } => vec![],
    }
}

const LEFT: [f64; 2] = [-1.0, 0.0];
const RIGHT: [f64; 2] = [1.0, 0.0];
const DOWN: [f64; 2] = [0.0, -1.0];
const UP: [f64; 2] = [0.0, 1.0];

fn line(field: FieldId, from: [f64; 2], to: [f64; 2], away: [f64; 2], row: u8) -> Dimension {
    Dimension {
        field,
        from,
        to,
        away,
        row,
    }
}

fn front(furniture: &Furniture, at: &Layout) -> Vec<Dimension> {
    let height = furniture.length(&HEIGHT).as_metres();
    let overhang = furniture.length(&OVERHANG_SIDE).as_metres();
    let (left, right) = (-overhang, at.width + overhang);
    let mut list = vec![
        line(WIDTH.id(), [0.0, 0.0], [at.width, 0.0], DOWN, 1),
        line(HEIGHT.id(), [left, 0.0], [left, height], LEFT, 1),
        line(
            TOP_THICKNESS.id(),
            [right, at.carcass[1]],
            [right, height],
            RIGHT,
            1,
        ),
    ];
    for (i, row) in at.rows.iter().enumerate() {
        list.push(line(
            FieldId::RowHeight(i + 1),
            [right, row.front[0]],
            [right, row.front[1]],
            RIGHT,
            1,
        ));
    }
    match furniture.base {
        BaseStyle::Floor => {}
        BaseStyle::Plinth => list.push(line(
            PLINTH_HEIGHT.id(),
            [right, 0.0],
            [right, at.carcass[0]],
            RIGHT,
            1,
        )),
        BaseStyle::Legs => list.push(line(
            LEG_HEIGHT.id(),
            [right, 0.0],
            [right, at.carcass[0]],
            RIGHT,
            1,
        )),
    }
    list
}

fn side(furniture: &Furniture, at: &Layout) -> Vec<Dimension> {
    let height = furniture.length(&HEIGHT).as_metres();
    let overhang = furniture.length(&OVERHANG_FRONT).as_metres();
    let foremost = (-overhang).min(at.front[0]);
    let mut list = vec![
        line(DEPTH.id(), [0.0, 0.0], [at.depth, 0.0], DOWN, 1),
        line(HEIGHT.id(), [at.depth, 0.0], [at.depth, height], RIGHT, 1),
    ];
    if overhang > 0.0 {
        list.push(line(
            OVERHANG_FRONT.id(),
            [-overhang, height],
            [0.0, height],
            UP,
            1,
        ));
    }
    match furniture.base {
        BaseStyle::Plinth => {
            list.push(line(
                PLINTH_HEIGHT.id(),
                [foremost, 0.0],
                [foremost, at.carcass[0]],
                LEFT,
                1,
            ));
            let setback = furniture.length(&PLINTH_SETBACK).as_metres();
            if setback > 0.0 {
                list.push(line(PLINTH_SETBACK.id(), [0.0, 0.0], [setback, 0.0], DOWN, 2));
            }
        }
        BaseStyle::Legs => {
            list.push(line(
                LEG_HEIGHT.id(),
                [foremost, 0.0],
                [foremost, at.carcass[0]],
                LEFT,
                1,
            ));
            let leg = furniture.length(&LEG_WIDTH).as_metres();
            let inset = furniture.length(&super::fields::LEG_INSET).as_metres();
            list.push(line(LEG_WIDTH.id(), [inset, 0.0], [inset + leg, 0.0], DOWN, 2));
        }
        BaseStyle::Floor => {}
    }
    list
}

fn above(furniture: &Furniture, at: &Layout) -> Vec<Dimension> {
    let side = furniture.length(&OVERHANG_SIDE).as_metres();
    let front = furniture.length(&OVERHANG_FRONT).as_metres();
    let foot = |x: f64| View::Top.project(&Point3::new(x, -front, 0.0));
    let mut list = vec![
        line(WIDTH.id(), foot(0.0), foot(at.width), DOWN, 1),
        line(DEPTH.id(), [-side, 0.0], [-side, at.depth], LEFT, 1),
    ];
    if side > 0.0 {
        list.push(line(
            OVERHANG_SIDE.id(),
            [at.width, at.depth],
            [at.width + side, at.depth],
            UP,
            1,
        ));
    }
    if front > 0.0 {
        list.push(line(OVERHANG_FRONT.id(), [-side, -front], [-side, 0.0], LEFT, 1));
    }
    list
}
