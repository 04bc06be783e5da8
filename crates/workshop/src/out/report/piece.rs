//! The takeoff of one piece.

use std::rc::Rc;

use geometry::{Edges, Overlap};
use serde::Serialize;
use units::Length;

use super::materials::MaterialReport;
use super::messages;
use super::surfaces::{SurfaceReport, ZoneReport};
use super::ways::WayReport;
use super::working::{WorkingReport, workings};
use crate::Analysis;
use crate::document::Piece;
use crate::format::SchemeRecord;

/// The takeoff of a piece, or why it has none.
#[derive(Clone, Debug, Serialize)]
#[serde(untagged)]
pub(super) enum PieceReport {
    Measured(Box<Measured>),
    Problems(Problems),
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Problems {
    id: String,
    name: String,
    count: u32,
    problems: Vec<String>,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Measured {
    id: String,
    name: String,
    count: u32,
    painted_each_square_metres: f64,
    painted_square_metres: f64,
    painted_standard_uncertainty_square_metres: f64,
    surfaces: Vec<SurfaceReport>,
    zones: Vec<ZoneReport>,
    scheme: SchemeRecord,
    edges_each: EdgesReport,
    overlaps: Vec<OverlapReport>,
    notices: Vec<String>,
    materials: Vec<MaterialReport>,
    ways: Vec<WayReport>,
    #[serde(skip_serializing_if = "Option::is_none")]
    workings: Option<Vec<WorkingReport>>,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct EdgesReport {
    arrises_metres: f64,
    corners_metres: f64,
    borders_metres: f64,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct OverlapReport {
    parts: [String; 2],
    labels: [String; 2],
    depth_metres: f64,
}

impl PieceReport {
    pub(super) fn of(analysis: &Analysis, piece: &Rc<Piece>, working: bool) -> Self {
        let (id, name, count) = (piece.id.0.to_string(), piece.name.clone(), piece.count);
        let takeoff = analysis.takeoff(piece);
        let takeoff = match &*takeoff {
            Ok(takeoff) => takeoff,
            Err(problems) => {
                return PieceReport::Problems(Problems {
                    id,
                    name,
                    count,
                    problems: messages(analysis.workshop(), problems),
                });
            }
        };
        let (edges, cans) = (analysis.edges(piece), analysis.cans(piece));
        PieceReport::Measured(Box::new(Measured {
            id,
            name,
            count,
            painted_each_square_metres: takeoff.painted_each.as_square_metres(),
            painted_square_metres: takeoff.painted.value.as_square_metres(),
            painted_standard_uncertainty_square_metres: takeoff
                .painted
                .standard_uncertainty
                .as_square_metres(),
            surfaces: takeoff.surfaces.iter().map(SurfaceReport::of).collect(),
            zones: takeoff
                .zones
                .iter()
                .map(|zone| ZoneReport::of(piece, takeoff, zone))
                .collect(),
            scheme: (&piece.scheme).into(),
            edges_each: EdgesReport::of(edges.iter().map(|(_, edges)| *edges).sum()),
            overlaps: takeoff.overlaps.iter().map(OverlapReport::of).collect(),
            notices: takeoff
                .notices
                .iter()
                .map(|notice| notice.message(analysis.workshop().units))
                .collect(),
            materials: (takeoff.materials.iter().zip(&*cans))
                .map(|(line, cans)| MaterialReport::of(takeoff, line, cans))
                .collect(),
            ways: analysis.ways(piece).iter().map(WayReport::of).collect(),
            workings: working.then(|| workings(takeoff)),
        }))
    }
}

impl EdgesReport {
    fn of(edges: Edges) -> Self {
        let [arrises_metres, corners_metres, borders_metres] =
            [edges.arrises, edges.corners, edges.borders].map(Length::as_metres);
        EdgesReport {
            arrises_metres,
            corners_metres,
            borders_metres,
        }
    }
}

impl OverlapReport {
    fn of(overlap: &Overlap) -> Self {
        OverlapReport {
            parts: [overlap.a.to_string(), overlap.b.to_string()],
            labels: [overlap.a.label(), overlap.b.label()],
            depth_metres: overlap.depth.as_metres(),
        }
    }
}
