//! Legs: square, tapered, turned, splayed, and bun feet.

use std::f64::consts::FRAC_PI_2;

use super::Furniture;
use super::fields::{LEG_FOOT, LEG_INSET, LEG_SPLAY, LEG_WIDTH};
use super::layout::Span;
use super::styles::Taper;
use crate::Point3;
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;
use crate::solid::{Plan, Turning, frustum, splayed_cone};

/// A leg on one corner of a rectangle: its number, its square at the top, and which way is outside.
pub(super) struct Corner {
    pub(super) number: usize,
    pub(super) square: Plan,
    /// -1 or 1 along x and y.
    pub(super) outward: [f64; 2],
}

impl Corner {
    pub(super) fn middle(&self) -> [f64; 2] {
        let [low, high] = self.square;
        [(low[0] + high[0]) / 2.0, (low[1] + high[1]) / 2.0]
    }

    pub(super) fn id(&self) -> PartId {
        PartId::nth(PartKind::Leg, self.number)
    }

    /// The corner as an upright block.
    pub(super) fn block(&self, id: PartId, z: Span) -> Part {
        let [low, high] = self.square;
        Part::block(id, [low[0], low[1], z[0]], [high[0], high[1], z[1]])
    }
}

/// The legs of a rectangle, set in from all four sides: front left, front right, back left, back right.
pub(super) fn corners(furniture: &Furniture, [x, y]: [Span; 2], inset: f64) -> Vec<Corner> {
    let width = furniture.length(&LEG_WIDTH).as_metres();
    let ends = |span: Span| {
        [
            (-1.0, [span[0] + inset, span[0] + inset + width]),
            (1.0, [span[1] - inset - width, span[1] - inset]),
        ]
    };
    let places = ends(y).into_iter().flat_map(|y| ends(x).map(|x| (x, y)));
    places
        .enumerate()
        .map(|(i, ((out_x, x), (out_y, y)))| Corner {
            number: i + 1,
            square: [[x[0], y[0]], [x[1], y[1]]],
            outward: [out_x, out_y],
        })
        .collect()
}

pub(super) fn inset(furniture: &Furniture) -> f64 {
    furniture.length(&LEG_INSET).as_metres()
}

/// A square leg that is tapered from `z[1]` down to the floor.
pub(super) fn tapered(furniture: &Furniture, corner: &Corner, z: Span) -> Part {
    let foot = furniture.length(&LEG_FOOT).as_metres();
    let along = |[low, high]: Span, outward: f64| -> Span {
        match furniture.styles.taper {
            Taper::Four => {
                let middle = (low + high) / 2.0;
                [middle - foot / 2.0, middle + foot / 2.0]
            }
            // The two outer sides stay upright.
            Taper::Two if outward < 0.0 => [low, low + foot],
            Taper::Two => [high - foot, high],
        }
    };
    let [[x0, y0], [x1, y1]] = corner.square;
    let [x, y] = [
        along([x0, x1], corner.outward[0]),
        along([y0, y1], corner.outward[1]),
    ];
    frustum(
        corner.id(),
        ([[x[0], y[0]], [x[1], y[1]]], z[0]),
        (corner.square, z[1]),
    )
}

/// The least height of a turned leg, for its collar and its bead, per meter of its radius.
pub(super) const TURNED_LEAST: f64 = 0.9;

/// A turned leg: a collar, a bead between two rings, and a long cone.
pub(super) fn turned(furniture: &Furniture, corner: &Corner, z: Span) -> Part {
    let radius = furniture.length(&LEG_WIDTH).as_metres() / 2.0;
    let foot = furniture.length(&LEG_FOOT).as_metres() / 2.0;
    let (head, neck, bead) = (z[1] - z[0], 0.6 * radius, 0.2 * radius);
    let collar = head - 0.5 * radius;
    let [x, y] = corner.middle();
    Turning::from(radius, head)
        .line_to(radius, collar)
        .line_to(neck, collar)
        .arc([neck, collar - bead], bead, FRAC_PI_2, -FRAC_PI_2)
        .line_to(radius, collar - 2.0 * bead)
        .line_to(foot, 0.0)
        .part(corner.id(), Point3::new(x, y, z[0]))
}

/// A bun foot: the zone of a ball between two planes equally far from its center.
pub(super) fn bun(furniture: &Furniture, corner: &Corner, z: Span) -> Part {
    let ball = furniture.length(&LEG_WIDTH).as_metres() / 2.0;
    let half = (z[1] - z[0]) / 2.0;
    let edge = (ball * ball - half * half).max(0.0).sqrt();
    let angle = libm::atan2(half, edge);
    let [x, y] = corner.middle();
    Turning::from(edge, 2.0 * half)
        .arc([0.0, half], ball, angle, -angle)
        .part(corner.id(), Point3::new(x, y, z[0]))
}

/// A round leg that stands further out at the floor.
pub(super) fn splayed(furniture: &Furniture, corner: &Corner, z: Span) -> Part {
    let metres = |field| furniture.length(field).as_metres();
    let [x, y] = corner.middle();
    let out = metres(&LEG_SPLAY);
    let foot = Point3::new(x + out * corner.outward[0], y + out * corner.outward[1], z[0]);
    splayed_cone(
        corner.id(),
        (Point3::new(x, y, z[1]), metres(&LEG_WIDTH) / 2.0),
        (foot, metres(&LEG_FOOT) / 2.0),
    )
}

/// How far a splayed leg of this height extends from the middle of its top, inward and outward, along x or y.
pub(super) fn splayed_reach(furniture: &Furniture, high: f64) -> [f64; 2] {
    let half = furniture.length(&LEG_WIDTH).as_metres() / 2.0;
    let corner = Corner {
        number: 1,
        square: [[-half; 2], [half; 2]],
        outward: [1.0; 2],
    };
    let (low, high) = splayed(furniture, &corner, [0.0, high]).bounds();
    [-low[0].min(low[1]), high[0].max(high[1])]
}
