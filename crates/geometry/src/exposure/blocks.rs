//! The bounding boxes of parts and of the holes through them.

use nalgebra::Isometry3;

use crate::Point3;
use crate::face::{Face, Facet, Side};
use crate::part::Part;

/// Whether a part fills its bounding box, apart from a raised field.
pub(super) fn is_block(part: &Part) -> bool {
    part.is_block() || part.faces.iter().any(|face| face.side == Side::BevelTop)
}

/// The bounding box of a part, in the axes of the piece; that of a raised panel without its field.
pub(super) fn block(part: &Part, back: Option<&Isometry3<f64>>) -> [[f64; 3]; 2] {
    let is_raised = part.faces.iter().any(|face| face.side == Side::BevelTop);
    let is_field = |side: Side| {
        matches!(
            side,
            Side::Front
                | Side::Margin
                | Side::BevelLeft
                | Side::BevelRight
                | Side::BevelTop
                | Side::BevelBottom
        )
    };
    if back.is_none() && !is_raised {
        let (low, high) = part.bounds();
        return [low, high];
    }
    let faces = part
        .faces
        .iter()
        .filter(|face| !(is_raised && is_field(face.side)));
    block_of(faces.flat_map(|face| face.facets()), back)
}

/// The bounding box of each hole through a part, in the axes of the piece. The holes of a board are one face, with four
/// facets for each hole.
pub(super) fn holes(part: &Part, back: Option<&Isometry3<f64>>) -> Vec<[[f64; 3]; 2]> {
    let edges = part.faces.iter().find(|face| face.side == Side::Opening);
    let holes = edges.map_or([].as_slice(), Face::facets).chunks(4);
    holes.map(|edges| block_of(edges.iter(), back)).collect()
}

/// The bounding box of facets, in the axes of the piece.
fn block_of<'a>(facets: impl Iterator<Item = &'a Facet>, back: Option<&Isometry3<f64>>) -> [[f64; 3]; 2] {
    bounds(facets.flat_map(|facet| {
        let corners = facet.region.contours().flatten();
        corners.map(move |&corner| {
            let point = facet.plane.at(corner);
            back.map_or(point, |back| back * point)
        })
    }))
}

pub(super) fn bounds(points: impl Iterator<Item = Point3>) -> [[f64; 3]; 2] {
    points.fold(
        [[f64::INFINITY; 3], [f64::NEG_INFINITY; 3]],
        |[low, high], point| {
            [
                [0, 1, 2].map(|axis| low[axis].min(point[axis])),
                [0, 1, 2].map(|axis| high[axis].max(point[axis])),
            ]
        },
    )
}
