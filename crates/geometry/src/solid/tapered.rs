//! Solids of flat slanted faces: tapered legs and raised panels.

use super::lathe::horizontal;
use crate::Point3;
use crate::face::{Face, Facet, Side};
use crate::part::{Part, PartId};

/// An upright rectangle in plan: its lower left and its upper right corner, meters.
pub(crate) type Plan = [[f64; 2]; 2];

/// The four bands between two rings of four corners, the first from the first corner to the second.
pub(super) fn bands(lower: [Point3; 4], upper: [Point3; 4]) -> [[Point3; 4]; 4] {
    let ([a, b, c, d], [e, f, g, h]) = (lower, upper);
    [[a, b, f, e], [b, c, g, f], [c, d, h, g], [d, a, e, h]]
}

/// A leg between a rectangle on its foot and a rectangle at its head.
pub(crate) fn frustum(id: PartId, foot: (Plan, f64), head: (Plan, f64)) -> Part {
    let corners = |(plan, z): (Plan, f64)| {
        let [[x0, y0], [x1, y1]] = plan;
        [[x0, y0], [x1, y0], [x1, y1], [x0, y1]].map(|[x, y]| Point3::new(x, y, z))
    };
    let (low, high) = (corners(foot), corners(head));
    let sides = [Side::Front, Side::Right, Side::Back, Side::Left];
    let around = sides
        .into_iter()
        .zip(bands(low, high))
        .filter_map(|(side, band)| {
            let facet = Facet::around(&band)?;
            Some(Face::flat(side, facet, false))
        });
    let ends = [
        horizontal(&high, true).map(|facet| Face::flat(Side::Top, facet, true)),
        horizontal(&low, false).map(|facet| Face::flat(Side::Bottom, facet, true)),
    ];
    Part::of(id, around.chain(ends.into_iter().flatten()))
}

/// What a raised panel measures, meters.
pub(crate) struct RaisedPanel {
    /// The panel from its lower left front corner to its upper right rear corner, without the field.
    pub(crate) low: [f64; 3],
    pub(crate) high: [f64; 3],
    /// The flat strip between the frame and the bevel.
    pub(crate) margin: f64,
    /// How wide the bevel is as seen from the front.
    pub(crate) bevel: f64,
    /// How far the field stands before the flat of the panel.
    pub(crate) raise: f64,
}

/// A panel with a field that stands before it, and bevels around the field.
pub(crate) fn raised_panel(id: PartId, panel: &RaisedPanel) -> Part {
    let RaisedPanel {
        low,
        high,
        margin,
        bevel,
        raise,
    } = panel;
    let ring = |inset: f64, y: f64| {
        let (x0, x1) = (low[0] + inset, high[0] - inset);
        let (z0, z1) = (low[2] + inset, high[2] - inset);
        [[x0, z0], [x1, z0], [x1, z1], [x0, z1]].map(|[x, z]| Point3::new(x, y, z))
    };
    let (outer, foot) = (ring(0.0, low[1]), ring(*margin, low[1]));
    let field = ring(margin + bevel, low[1] - raise);
    let bevels = [
        Side::BevelBottom,
        Side::BevelRight,
        Side::BevelTop,
        Side::BevelLeft,
    ];
    let slopes = bevels.into_iter().zip(bands(foot, field));
    let slopes = slopes.filter_map(|(side, band)| {
        let facet = Facet::around(&band)?;
        Some(Face::flat(side, facet, false))
    });
    let mut faces: Vec<Face> = Part::block(id, *low, *high)
        .faces
        .into_iter()
        .filter(|face| face.side != Side::Front)
        .collect();
    faces.extend(Facet::around(&field).map(|facet| Face::flat(Side::Front, facet, false)));
    faces.extend(slopes);
    if *margin > 0.0
        && let (Some(whole), Some(hole)) = (Facet::around(&outer), Facet::around(&foot))
    {
        let hole = hole
            .region
            .mapped(|point| whole.plane.project(&hole.plane.at(point)));
        let region = whole.region.difference(&hole);
        let plane = whole.plane;
        faces.push(Face::flat(Side::Margin, Facet { plane, region }, false));
    }
    Part::of(id, faces)
}
