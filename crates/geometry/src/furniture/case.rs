//! Cases of boards: one alone, one on the counter of another, two as the pedestals of a desk.

use super::Furniture;
use super::base;
use super::columns;
use super::fields::{
    APRON_HEIGHT, APRON_THICKNESS, BOARD, CROWN_HEIGHT, CROWN_PROJECTION, DEPTH, GAP, HEIGHT, MODESTY_FOOT,
    OVERHANG_FRONT, OVERHANG_SIDE, PEDESTAL_WIDTH, TOP_DEPTH, TOP_THICKNESS, TOP_WIDTH, UPPER_DEPTH,
    UPPER_HEIGHT, WIDTH,
};
use super::layout::{Span, Unit};
use super::planted;
use super::spaces;
use super::styles::Edge;
use super::top::top_board;
use super::unit::block;
use crate::assembly::Assembly;
use crate::exposure::Setting;
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;

/// The units of a piece: one case, a case and its upper case, or two pedestals.
pub(super) fn units(furniture: &Furniture) -> Vec<Unit<'_>> {
    let metres = |field| furniture.length(field).as_metres();
    let foot = base::height(furniture);
    let head = metres(&HEIGHT) - metres(&TOP_THICKNESS);
    let unit = |upper, x, y, z| Unit {
        furniture,
        upper,
        first_bay: 1,
        bays: if upper { &furniture.upper } else { &furniture.bays },
        x,
        y,
        z,
        has_crown: true,
    };
    match furniture.kind.construction() {
        super::Construction::Pedestals => {
            let (wide, os) = (metres(&TOP_WIDTH), metres(&OVERHANG_SIDE));
            let y = [metres(&OVERHANG_FRONT), metres(&TOP_DEPTH)];
            let pedestal = metres(&PEDESTAL_WIDTH);
            let spans = [[os, os + pedestal], [wide - os - pedestal, wide - os]];
            let pedestals = furniture.bays.chunks(1).zip(spans).enumerate();
            pedestals
                .map(|(i, (bays, x))| Unit {
                    first_bay: i + 1,
                    bays,
                    has_crown: false,
                    ..unit(false, x, y, [foot, head])
                })
                .collect()
        }
        super::Construction::TwoCases => {
            let (x, depth) = ([0.0, metres(&WIDTH)], metres(&DEPTH));
            let counter = metres(&HEIGHT);
            let upper_head = counter + metres(&UPPER_HEIGHT) - metres(&TOP_THICKNESS);
            vec![
                Unit {
                    has_crown: false,
                    ..unit(false, x, [0.0, depth], [foot, head])
                },
                unit(
                    true,
                    x,
                    [depth - metres(&UPPER_DEPTH), depth],
                    [counter, upper_head],
                ),
            ]
        }
        _ => vec![unit(
            false,
            [0.0, metres(&WIDTH)],
            [0.0, metres(&DEPTH)],
            [foot, head],
        )],
    }
}

/// Builds a piece of cases. The measurements must have passed the check.
pub(super) fn build(furniture: &Furniture) -> Assembly {
    let units = units(furniture);
    let is_desk = furniture.kind.construction() == super::Construction::Pedestals;
    let mut parts = Vec::new();
    let layouts: Vec<_> = units.iter().map(Unit::layout).collect();
    for (unit, at) in units.iter().zip(&layouts) {
        if !is_desk {
            parts.push(unit_top(unit));
        }
        parts.extend(unit.boards(at));
        parts.extend(unit.front_parts(at));
        parts.extend(columns::parts(unit, at));
        parts.extend(crown(unit));
        if !unit.upper {
            let base = base::parts(furniture, [unit.x, unit.y]);
            parts.extend(base.into_iter().map(|part| Part {
                id: unit.whole_id(part.id),
                ..part
            }));
        }
    }
    if is_desk {
        parts.insert(0, desk_top(furniture));
        parts.extend(kneehole(furniture, &units));
    }
    let gap = furniture.length(&GAP).as_metres();
    let setting = Setting::against_wall().with_gap(gap);
    if is_desk {
        return Assembly::of_parts(parts, setting);
    }
    let rear = units
        .iter()
        .map(|unit| unit.y[1])
        .fold(f64::NEG_INFINITY, f64::max);
    let mut spaces = vec![spaces::floor(), spaces::wall(rear)];
    for (unit, at) in units.iter().zip(&layouts) {
        spaces.extend(spaces::of_unit(unit, at));
    }
    spaces::around(parts, spaces, setting, rear)
}

fn unit_top(unit: &Unit) -> Part {
    let metres = |field| unit.furniture.length(field).as_metres();
    let (side, front) = (metres(&OVERHANG_SIDE), metres(&OVERHANG_FRONT));
    top_board(
        unit.furniture,
        unit.whole_id(PartId::only(PartKind::Top)),
        [unit.x[0] - side, unit.x[1] + side],
        [unit.y[0] - front, unit.y[1]],
        [unit.z[1], unit.z[1] + metres(&TOP_THICKNESS)],
        [true, true, false, true],
    )
}

fn desk_top(furniture: &Furniture) -> Part {
    let metres = |field| furniture.length(field).as_metres();
    let height = metres(&HEIGHT);
    top_board(
        furniture,
        PartId::only(PartKind::Top),
        [0.0, metres(&TOP_WIDTH)],
        [0.0, metres(&TOP_DEPTH)],
        [height - metres(&TOP_THICKNESS), height],
        [true, true, false, true],
    )
}

fn crown(unit: &Unit) -> Vec<Part> {
    let Edge::Shaped(shape) = unit.furniture.styles.crown else {
        return vec![];
    };
    if !unit.has_crown {
        return vec![];
    }
    let size = [&CROWN_PROJECTION, &CROWN_HEIGHT].map(|field| unit.furniture.length(field).as_metres());
    planted::crown(shape, size, [unit.x, unit.y], unit.z[1], |n| {
        unit.whole_id(PartId::nth(PartKind::Crown, n))
    })
}

/// What stands between two pedestals.
fn kneehole(furniture: &Furniture, units: &[Unit]) -> Vec<Part> {
    let [left, right] = units else { return vec![] };
    let metres = |field| furniture.length(field).as_metres();
    let x: Span = [left.x[1], right.x[0]];
    let ([y0, y1], head) = (left.y, left.z[1]);
    let board = metres(&BOARD);
    vec![
        block(
            PartId::only(PartKind::ApronFront),
            x,
            [y0, y0 + metres(&APRON_THICKNESS)],
            [head - metres(&APRON_HEIGHT), head],
        ),
        block(
            PartId::only(PartKind::Modesty),
            x,
            [y1 - 2.0 * board, y1 - board],
            [metres(&MODESTY_FOOT), head],
        ),
    ]
}
