//! The exposure of faces, worked out from the parts of a piece.
//!
//! The planes of all parts divide space into cells. Which cells a person can see is found once for the whole piece
//! ([`sight`]); each face is then looked up, cell by cell. `tests/cad/CONSTRUCTION.md` states the rules in words, and
//! `tests/cad/seen.py` checks them against rays.
//!
//! A maker can repeat parts until there are millions of cells. Planes that are close together are merged then, at a
//! growing distance, until there are few enough ([`grid`]). Parts and gaps thinner than that distance may be lost.

#![allow(clippy::indexing_slicing, reason = "hot loops over the cells of its own grid")]

mod air;
mod blocks;
mod gaps;
mod grid;
mod masks;
mod scene;
mod setting;
mod sight;

pub use setting::Setting;

use crate::SMALLEST_AREA;
use crate::contact::Placed;
use crate::face::Face;
use crate::part::Part;
use crate::region::Region;
use crate::space::Exposure;
use air::{Air, FrontCell};

/// The exposures that a face of a placed part can have.
const EXPOSURES: [Exposure; 5] = [
    Exposure::Outside,
    Exposure::Inside,
    Exposure::Wall,
    Exposure::Floor,
    Exposure::Underneath,
];

/// The exposure of the faces of all parts.
pub(crate) struct ExposureMap {
    air: Air,
}

impl ExposureMap {
    /// Finds the exposure around these parts.
    pub(crate) fn of(parts: &[Part], setting: &Setting) -> Self {
        ExposureMap {
            air: Air::around(parts, setting),
        }
    }

    /// Divides a facet of a part by exposure.
    pub(crate) fn divided(&self, part: &Part, placed: &Placed, mut of: impl FnMut(Exposure, Region)) {
        let whole = || placed.facet.region.clone();
        let Some(front) = self.air.in_front_of(placed) else {
            return of(Exposure::Outside, whole());
        };
        if let Some(exposure) = self.air.uniform(&front, part.id.kind) {
            return of(exposure, whole());
        }
        let cells = self.air.front_cells(&front, part.id.kind);
        let main = most(&cells);
        if !front.divides
            || cells
                .iter()
                .all(|cell| cell.exposure.is_none_or(|exposure| exposure == main))
        {
            return of(main, whole());
        }
        let mut rest = whole();
        for exposure in EXPOSURES.into_iter().filter(|exposure| *exposure != main) {
            for region in self.air.regions(&front, &cells, exposure, placed) {
                let part = rest.intersection(&region);
                if part.area() > SMALLEST_AREA {
                    rest = rest.difference(&region);
                    of(exposure, part);
                }
            }
        }
        if rest.area() > SMALLEST_AREA {
            of(main, rest);
        }
    }

    /// The exposure of more than half of a curved face; `whole` is its area, square meters.
    pub(crate) fn of_curved(&self, part: &Part, placed: &[Placed], whole: f64) -> Exposure {
        let exposures = placed.iter().map(|placed| {
            let front = self.air.in_front_of(placed);
            let exposure = front.map_or(Exposure::Outside, |front| {
                most(&self.air.front_cells(&front, part.id.kind))
            });
            (exposure, placed.facet.region.area())
        });
        match largest(exposures) {
            Some((exposure, area)) if 2.0 * area > whole => exposure,
            _ => Exposure::Outside,
        }
    }
}

/// The exposure of a face of a part without a place: the room, except for the sides that parts of its kind are glued
/// with.
pub(crate) fn loose(part: &Part, face: &Face) -> Exposure {
    if part.glued.contains(&face.side) {
        Exposure::Glued
    } else {
        Exposure::Outside
    }
}

/// The exposure of most of the bare cells. It is the inside if all are covered, as where parts intersect.
fn most(cells: &[FrontCell]) -> Exposure {
    let bare = cells.iter().filter_map(|cell| Some((cell.exposure?, cell.area)));
    largest(bare).map_or(Exposure::Inside, |(exposure, _)| exposure)
}

/// The exposure with the largest sum of areas, and that sum.
fn largest(areas: impl Iterator<Item = (Exposure, f64)>) -> Option<(Exposure, f64)> {
    let mut sums: [(Exposure, f64); 5] = EXPOSURES.map(|exposure| (exposure, 0.0));
    for (exposure, area) in areas {
        for (known, sum) in &mut sums {
            if *known == exposure {
                *sum += area;
            }
        }
    }
    let best = sums
        .into_iter()
        .fold(None, |best: Option<(Exposure, f64)>, sum| match best {
            Some((_, most)) if most >= sum.1 => best,
            _ => Some(sum),
        });
    best.filter(|(_, area)| *area > 0.0)
}
