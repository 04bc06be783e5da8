//! Tops, with their worked edges.

use units::Length;

use super::Furniture;
use super::fields::{EDGE_GIRTH, EDGE_HEIGHT, EDGE_WIDTH};
use super::girth::HALVINGS;
use super::layout::{Span, length_of};
use super::styles::Edge;
use crate::face::Side;
use crate::part::{Part, PartId};
use crate::profile::{First, Member, Profile, Shape, multiplier_of};
use crate::solid::{Faces, Worked, slab};

/// How far equal lengths may differ by rounding, meters.
const ROUNDING: f64 = 1e-9;

/// The profile of the edge of a top of this thickness, as wide and as high as measured.
pub(super) fn edge_profile(furniture: &Furniture, shape: Shape, thickness: f64) -> Profile {
    let metres = |field| furniture.length(field).as_metres();
    let height = metres(&EDGE_HEIGHT);
    match shape {
        Shape::HalfRound => Profile::standard(shape, thickness / 2.0, thickness),
        // A profile of the whole thickness rests on the lower face. The foot is the difference of two heights; its
        // rounding error would leave a sheet without thickness.
        _ if height >= thickness - ROUNDING => {
            Profile::standard(shape, metres(&EDGE_WIDTH), thickness).grounded()
        }
        _ => Profile::standard(shape, metres(&EDGE_WIDTH), height),
    }
}

/// A top within these spans. `edges` lists which edges are worked: front, right, back, left.
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
        Edge::Measured => measured_board(furniture, id, (low, high), edges),
    }
}

/// A top whose edge is known only by its girth and its width into the face.
///
/// Its worked edges keep the names of square ones, because choices and holes of saved pieces refer to these.
fn measured_board(
    furniture: &Furniture,
    id: PartId,
    (low, high): ([f64; 3], [f64; 3]),
    edges: [bool; 4],
) -> Part {
    let thickness = high[2] - low[2];
    let girth = furniture.length(&EDGE_GIRTH).as_metres();
    if girth <= thickness + ROUNDING {
        return flat_measured_board(id, (low, high), edges, multiplier_of(girth, thickness));
    }
    let profile = measured_profile(girth, furniture.length(&EDGE_WIDTH).as_metres(), thickness);
    let worked = Worked {
        profile: &profile,
        edges,
    };
    let mut board = slab(id, low, high, Faces::Up, &worked);
    // Below a quarter of an ellipse, or above a square arris, only the girth is known: the area of the drawn profile is
    // scaled to it.
    let times = girth / profile.girth();
    for face in &mut board.faces {
        let Some(side) = flat_side(face.side) else {
            continue;
        };
        face.side = side;
        face.is_edge = true;
        face.stretch *= times;
        face.multiplier = multiplier_of(girth, thickness);
    }
    board
}

/// If the strip of paper is no longer than the board is thick, the board is square.
fn flat_measured_board(
    id: PartId,
    (low, high): ([f64; 3], [f64; 3]),
    edges: [bool; 4],
    multiplier: f64,
) -> Part {
    let mut board = Part::block(id, low, high);
    let sides = [Side::Front, Side::Right, Side::Back, Side::Left];
    for face in &mut board.faces {
        let mut worked = sides.iter().zip(edges);
        if worked.any(|(side, is_worked)| is_worked && face.side == *side) {
            face.multiplier = multiplier;
            face.stretch = multiplier;
        }
    }
    board
}

/// The name of the square edge that a worked one replaces.
fn flat_side(side: Side) -> Option<Side> {
    match side {
        Side::MouldedFront => Some(Side::Front),
        Side::MouldedBack => Some(Side::Back),
        Side::MouldedLeft => Some(Side::Left),
        Side::MouldedRight => Some(Side::Right),
        _ => None,
    }
}

/// The profile of an edge of this girth, measured from the flat of the top to the underside, that reaches `width` into
/// the face of a board of this thickness: a round-over as high as makes up the girth, and below it the flat of the edge.
///
/// No such round-over is longer than a square arris, width and thickness, or shorter than a quarter of an ellipse over
/// the whole thickness; at a girth beyond these it is that quarter.
fn measured_profile(girth: f64, width: f64, thickness: f64) -> Profile {
    let of_height = |height: f64| {
        Profile::composed(vec![
            Member::Straight {
                inward: 0.0,
                up: thickness - height,
            },
            Member::Quarter {
                inward: width,
                up: height,
                first: First::Up,
            },
        ])
    };
    if girth >= width + thickness || girth <= of_height(thickness).girth() {
        return of_height(thickness);
    }
    // The higher the round-over, the shorter the strip.
    let (mut low, mut high) = (0.0, thickness);
    for _ in 0..HALVINGS {
        let middle = (low + high) / 2.0;
        if of_height(middle).girth() > girth {
            low = middle;
        } else {
            high = middle;
        }
    }
    of_height(high)
}

/// How far the profile may reach into the face: no strip is shorter than the straight way.
pub(super) fn widest_of_girth(girth: Length, thickness: Length) -> f64 {
    let [girth, thickness] = [girth, thickness].map(Length::as_metres);
    ((girth - thickness) * (girth + thickness)).max(0.0).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Kind, Surface};

    fn table(edge: &str, measured: &[(&'static super::super::LengthField, f64)]) -> Vec<Surface> {
        let mut piece = Furniture::usual(Kind::SideTable);
        piece.styles.top_edge = if edge == "measured" {
            Edge::Measured
        } else {
            Edge::Shaped(Shape::by_key(edge).unwrap())
        };
        for (field, millimetres) in measured {
            piece.measures.set(field, Length::millimetres(*millimetres));
        }
        piece.assembly().unwrap().surfaces()
    }

    fn area(surfaces: &[Surface], names: &[&str]) -> f64 {
        let named = surfaces
            .iter()
            .filter(|surface| names.contains(&surface.id.to_string().as_str()));
        named.map(|surface| surface.gross.as_square_metres() * 1e6).sum()
    }

    #[test]
    fn a_measured_edge_keeps_its_names_and_takes_from_the_flat() {
        let measured = [
            (&super::super::fields::TOP_THICKNESS, 20.0),
            (&EDGE_GIRTH, 32.0),
            (&EDGE_WIDTH, 15.0),
        ];
        let surfaces = table("measured", &measured);
        let side = Kind::SideTable
            .usual(&super::super::fields::TOP_WIDTH)
            .as_millimetres();
        let flat = area(&surfaces, &["top/top"]);
        assert!((flat - (side - 30.0) * (side - 30.0)).abs() < 1e-6, "{flat}");
        let edges = ["top/front", "top/back", "top/left", "top/right"];
        for edge in edges {
            let found = surfaces
                .iter()
                .find(|surface| surface.id.to_string() == edge)
                .unwrap();
            assert!(found.is_edge && (found.multiplier - 1.6).abs() < 1e-12, "{edge}");
        }
        assert!(
            surfaces
                .iter()
                .all(|surface| !surface.id.to_string().starts_with("top/moulded"))
        );
    }

    #[test]
    fn any_girth_has_a_profile_with_the_area_of_the_strip() {
        // The front and back edges run out square on the sides of a case, so nothing but the girth counts.
        for girth in [21.0, 26.0, 30.0, 34.0, 34.9, 36.0, 60.0] {
            let profile = measured_profile(girth, 15.0, 20.0);
            let times = girth / profile.girth();
            assert!((profile.size()[0] - 15.0).abs() < 1e-12 && (profile.size()[1] - 20.0).abs() < 1e-12);
            let is_round_over = (25.0..35.0).contains(&girth) && girth > profile.girth() * (1.0 - 1e-12);
            assert!(
                !is_round_over || girth < 28.0 || (times - 1.0).abs() < 1e-12,
                "{girth} {times}"
            );
        }
    }
}
