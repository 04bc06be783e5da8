//! What faces look at, worked out from the parts of a piece as they stand.
//!
//! The room is divided into cells by the planes of all parts. Which of them a person sees is found once for the whole
//! piece ([`sight`]); then each face is looked up, cell by cell. `tests/cad/CONSTRUCTION.md` states the rules in words,
//! and `tests/cad/seen.py` holds them against rays.

#![allow(clippy::indexing_slicing, reason = "hot loops over the cells of its own grid")]

mod air;
mod blocks;
mod gaps;
mod grid;
mod looks;
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
use air::{Air, Bit};

/// What the face of a placed part can look at.
const SENSES: [Exposure; 5] = [
    Exposure::Outside,
    Exposure::Inside,
    Exposure::Wall,
    Exposure::Floor,
    Exposure::Underneath,
];

/// What the faces of the parts of a piece look at.
pub(crate) struct ExposureMap {
    air: Air,
}

impl ExposureMap {
    /// What faces of these parts look at.
    pub(crate) fn of(parts: &[Part], setting: &Setting) -> Self {
        ExposureMap {
            air: Air::around(parts, setting),
        }
    }

    /// Divides a facet of a part by what it looks at.
    pub(crate) fn divided(&self, part: &Part, placed: &Placed, mut of: impl FnMut(Exposure, Region)) {
        let whole = || placed.facet.region.clone();
        let Some(front) = self.air.in_front_of(placed) else {
            return of(Exposure::Outside, whole());
        };
        if let Some(sense) = self.air.uniform(&front, part.id.kind) {
            return of(sense, whole());
        }
        let bits = self.air.bits(&front, part.id.kind);
        let main = most(&bits);
        if !front.divides || bits.iter().all(|bit| bit.sense.is_none_or(|sense| sense == main)) {
            return of(main, whole());
        }
        let mut rest = whole();
        for sense in SENSES.into_iter().filter(|sense| *sense != main) {
            for cells in self.air.regions(&front, &bits, sense, placed) {
                let part = rest.intersection(&cells);
                if part.area() > SMALLEST_AREA {
                    rest = rest.difference(&cells);
                    of(sense, part);
                }
            }
        }
        if rest.area() > SMALLEST_AREA {
            of(main, rest);
        }
    }

    /// What a curved face looks at, of facets of this area, square metres: where more than half of it looks.
    pub(crate) fn of_curved(&self, part: &Part, placed: &[Placed], whole: f64) -> Exposure {
        let senses = placed.iter().map(|placed| {
            let front = self.air.in_front_of(placed);
            let sense = front.map_or(Exposure::Outside, |front| {
                most(&self.air.bits(&front, part.id.kind))
            });
            (sense, placed.facet.region.area())
        });
        match largest(senses) {
            Some((sense, area)) if 2.0 * area > whole => sense,
            _ => Exposure::Outside,
        }
    }
}

/// What a face of a part looks at that is not placed: the room, but for the faces that its kind is glued with.
pub(crate) fn loose(part: &Part, face: &Face) -> Exposure {
    if part.glued.contains(&face.side) {
        Exposure::Glued
    } else {
        Exposure::Outside
    }
}

/// What most of the bare bits look at; the inside if all are covered, as where parts run into each other.
fn most(bits: &[Bit]) -> Exposure {
    let bare = bits.iter().filter_map(|bit| Some((bit.sense?, bit.area)));
    largest(bare).map_or(Exposure::Inside, |(sense, _)| sense)
}

/// The sense with the largest sum of areas, and that sum.
fn largest(areas: impl Iterator<Item = (Exposure, f64)>) -> Option<(Exposure, f64)> {
    let mut sums: [(Exposure, f64); 5] = SENSES.map(|sense| (sense, 0.0));
    for (sense, area) in areas {
        for (known, sum) in &mut sums {
            if *known == sense {
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
