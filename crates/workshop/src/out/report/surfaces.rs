//! The surfaces and zones of a piece, with the calculation of their areas.

use geometry::Surface;
use serde::Serialize;
use units::Area;

use crate::document::Piece;
use crate::format::SchemeRecord;
use crate::takeoff::{SurfaceLine, Takeoff, ZoneLine};

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct SurfaceReport {
    name: String,
    part: String,
    part_label: String,
    label: String,
    gross_square_metres: f64,
    deducted_square_metres: f64,
    deductions: Vec<DeductionReport>,
    profile_multiplier: f64,
    net_square_metres: f64,
    net_by_orientation: Orientations,
    takes_finish: bool,
    zone: String,
    painted: bool,
    painted_with_zone: bool,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct DeductionReport {
    by: String,
    by_label: String,
    square_metres: f64,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct Orientations {
    up_square_metres: f64,
    upright_square_metres: f64,
    down_square_metres: f64,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct ZoneReport {
    zone: String,
    label: String,
    painted: bool,
    gross_square_metres: f64,
    deducted_square_metres: f64,
    net_square_metres: f64,
    net_by_orientation: Orientations,
    left_square_metres: f64,
    own_scheme: Option<SchemeRecord>,
}

impl SurfaceReport {
    pub(super) fn of(line: &SurfaceLine) -> Self {
        let surface = &line.surface;
        let deductions = surface.deductions.iter().map(|deduction| DeductionReport {
            by: deduction.by.to_string(),
            by_label: deduction.by.label(),
            square_metres: deduction.area.as_square_metres(),
        });
        SurfaceReport {
            name: surface.id.to_string(),
            part: surface.id.part.to_string(),
            part_label: surface.id.part.label(),
            label: surface.side_label(),
            gross_square_metres: surface.gross.as_square_metres(),
            deducted_square_metres: deducted(surface).as_square_metres(),
            deductions: deductions.collect(),
            profile_multiplier: surface.multiplier,
            net_square_metres: surface.net.as_square_metres(),
            net_by_orientation: Orientations::of(surface.by_orientation()),
            takes_finish: surface.takes_finish(),
            zone: line.zone.clone(),
            painted: line.painted,
            painted_with_zone: line.painted_with_zone,
        }
    }
}

fn deducted(surface: &Surface) -> Area {
    surface.deductions.iter().map(|deduction| deduction.area).sum()
}

impl ZoneReport {
    pub(super) fn of(piece: &Piece, takeoff: &Takeoff, line: &ZoneLine) -> Self {
        let own = piece.zones.get(&line.key).and_then(|zone| zone.scheme.as_ref());
        let of_zone = takeoff.surfaces.iter().filter(|surface| surface.zone == line.key);
        let painted = || {
            let painted = of_zone.clone().filter(|surface| surface.painted);
            painted.map(|surface| &surface.surface)
        };
        ZoneReport {
            zone: line.key.clone(),
            label: line.label.clone(),
            painted: line.painted,
            gross_square_metres: painted().map(|of| of.gross).sum::<Area>().as_square_metres(),
            deducted_square_metres: painted().map(deducted).sum::<Area>().as_square_metres(),
            net_square_metres: line.areas.into_iter().sum::<Area>().as_square_metres(),
            net_by_orientation: Orientations::of(line.areas),
            left_square_metres: line.left.as_square_metres(),
            own_scheme: own.map(Into::into),
        }
    }
}

impl Orientations {
    fn of(areas: [Area; 3]) -> Self {
        let [up_square_metres, upright_square_metres, down_square_metres] = areas.map(Area::as_square_metres);
        Orientations {
            up_square_metres,
            upright_square_metres,
            down_square_metres,
        }
    }
}
