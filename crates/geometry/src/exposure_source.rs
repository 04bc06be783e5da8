//! The exposure of the faces of a piece: from the spaces that came with its measurements, or worked out from its parts.

use units::Area;

use crate::SMALLEST_AREA;
use crate::bounds;
use crate::contact::{Cover, Placed};
use crate::exposure::{ExposureMap, loose};
use crate::face::Face;
use crate::part::Part;
use crate::region::Region;
use crate::space::{Exposure, Space};
use crate::surface::{Facets, Surface, SurfaceId};

/// The source of the exposure of faces.
pub(crate) enum ExposureSource<'a> {
    /// The spaces of a piece as it was measured.
    Spaces(&'a [Space]),
    /// The parts of a piece that was altered.
    Parts(Box<ExposureMap>),
}

impl ExposureSource<'_> {
    /// Calls `of` for each region of a face that is not curved, with its facet, its exposure and the covers of that
    /// facet. `first` is the index of the first facet among all facets.
    pub(crate) fn each_region(
        &self,
        (part, face): (&Part, &Face),
        placed: &[Placed],
        first: usize,
        covers: &[Cover],
        mut of: impl FnMut(&Placed, Exposure, Region, &[Cover]),
    ) {
        let mut rest = covers;
        for (i, placed) in placed.iter().enumerate() {
            let count = rest.iter().take_while(|cover| cover.facet == first + i).count();
            let covers;
            (covers, rest) = rest.split_at(count);
            self.divided((part, face), placed, |exposure, region| {
                of(placed, exposure, region, covers)
            });
        }
    }

    /// Divides a facet of a face that is not curved by exposure.
    pub(crate) fn divided(
        &self,
        (part, face): (&Part, &Face),
        placed: &Placed,
        mut of: impl FnMut(Exposure, Region),
    ) {
        if part.is_loose {
            return of(loose(part, face), placed.facet.region.clone());
        }
        match self {
            ExposureSource::Spaces(spaces) => divided_by(spaces, placed, of),
            ExposureSource::Parts(exposure) => exposure.divided(part, placed, of),
        }
    }

    /// The exposure of more than half of a curved face, and its area, square meters.
    pub(crate) fn curved(&self, (part, face): (&Part, &Face), placed: &[Placed]) -> (Exposure, f64) {
        let whole: f64 = placed.iter().map(|placed| placed.facet.region.area()).sum();
        let exposure = match self {
            _ if part.is_loose => loose(part, face),
            ExposureSource::Spaces(spaces) => curved_in(spaces, placed, whole),
            ExposureSource::Parts(exposure) => exposure.of_curved(part, placed, whole),
        };
        (exposure, whole * face.stretch)
    }

    /// The single surface of a curved face.
    pub(crate) fn curved_surface(&self, (part, face): (&Part, &Face), placed: &[Placed]) -> Surface {
        let (exposure, area) = self.curved((part, face), placed);
        let area = Area::square_metres(area);
        Surface {
            id: SurfaceId {
                part: part.id,
                side: face.side,
                exposure,
            },
            is_edge: face.is_edge,
            facets: Facets::Many(placed.iter().map(|p| p.facet.clone()).collect()),
            multiplier: face.multiplier,
            gross: area,
            deductions: vec![],
            net: area,
        }
    }
}

/// Divides a facet by the spaces in front of it.
fn divided_by(spaces: &[Space], placed: &Placed, mut part: impl FnMut(Exposure, Region)) {
    let Placed {
        facet,
        normal,
        low,
        high,
        ..
    } = placed;
    let mut rest = None;
    for space in spaces {
        if space.is_out_of_sight(normal, low, high) {
            continue;
        }
        let before = rest.as_ref().unwrap_or(&facet.region);
        if space.is_all_in_sight(normal, low, high) {
            part(space.exposure, before.clone());
            return;
        }
        let seen = space.seen_from(&facet.plane, before);
        let area = seen.area();
        if area <= SMALLEST_AREA {
            continue;
        }
        let left = before.area() - area > SMALLEST_AREA;
        rest = Some(if left {
            before.difference(&seen)
        } else {
            Region::EMPTY
        });
        part(space.exposure, seen);
        if !left {
            return;
        }
    }
    let rest = rest.unwrap_or_else(|| facet.region.clone());
    if rest.area() > SMALLEST_AREA {
        part(Exposure::Outside, rest);
    }
}

/// The exposure of a curved face. Spaces for one direction only do not count, because it faces every way.
fn curved_in(spaces: &[Space], placed: &[Placed], whole: f64) -> Exposure {
    let blocks = placed.iter().map(|placed| (placed.low, placed.high));
    let (low, high) = blocks.fold(bounds::EMPTY, bounds::union);
    let seen = |space: &Space, placed: &Placed| {
        let Placed {
            facet,
            normal,
            low,
            high,
            ..
        } = placed;
        if space.is_out_of_sight(normal, low, high) {
            0.0
        } else if space.is_all_in_sight(normal, low, high) {
            facet.region.area()
        } else {
            space.seen_from(&facet.plane, &facet.region).area()
        }
    };
    let holds = |space: &&Space| {
        let sum = || placed.iter().map(|placed| seen(space, placed)).sum::<f64>();
        !space.is_disjoint_from(&low, &high) && 2.0 * sum() > whole
    };
    let mut spaces = spaces.iter().filter(|space| space.facing.is_none());
    spaces
        .find(holds)
        .map_or(Exposure::Outside, |space| space.exposure)
}
