//! Tops, with their worked edges.

use super::Furniture;
use super::fields::{EDGE_GIRTH, EDGE_HEIGHT, EDGE_WIDTH};
use super::layout::{Span, length_of};
use super::styles::Edge;
use crate::face::Side;
use crate::part::{Part, PartId};
use crate::profile::{Profile, Shape, multiplier_of};
use crate::solid::{Faces, Worked, slab};

/// How far equal lengths may differ by rounding, metres.
const ROUNDING: f64 = 1e-9;

/// The profile of the edge of a top of this thickness, as wide and as high as measured.
pub(super) fn edge_profile(furniture: &Furniture, shape: Shape, thickness: f64) -> Profile {
    let metres = |field| furniture.length(field).as_metres();
    let height = metres(&EDGE_HEIGHT);
    match shape {
        Shape::HalfRound => Profile::standard(shape, thickness / 2.0, thickness),
        // A profile of the whole thickness stands on the lower face. That is the difference of two heights: what it lacks by
        // rounding would leave a sheet without thickness.
        _ if height >= thickness - ROUNDING => {
            Profile::standard(shape, metres(&EDGE_WIDTH), thickness).grounded()
        }
        _ => Profile::standard(shape, metres(&EDGE_WIDTH), height),
    }
}

/// A top in these spans; which edges are worked: front, right, back, left.
pub(super) fn top_board(
    furniture: &Furniture,
    id: PartId,
    x: Span,
    y: Span,
    z: Span,
    edges: [bool; 4],
) -> Part {
    let (low, high) = ([x[0], y[0], z[0]], [x[1], y[1], z[1]]);
    match furniture.styles.top_edge {
        Edge::Plain => Part::block(id, low, high),
        Edge::Shaped(shape) => {
            let worked = Worked {
                profile: &edge_profile(furniture, shape, length_of(z)),
                edges,
            };
            slab(id, low, high, Faces::Up, &worked)
        }
        Edge::Measured => {
            let girth = furniture.length(&EDGE_GIRTH).as_metres();
            let mut board = Part::block(id, low, high);
            let sides = [Side::Front, Side::Right, Side::Back, Side::Left];
            for face in &mut board.faces {
                if sides
                    .iter()
                    .zip(edges)
                    .any(|(side, worked)| worked && face.side == *side)
                {
                    face.multiplier = multiplier_of(girth, length_of(z));
                    face.stretch = face.multiplier;
                }
            }
            board
        }
    }
}
