//! A piece as placed parts, with the spaces that its faces look into.

use nalgebra::Isometry3;
use units::Area;

use crate::SMALLEST_AREA;
use crate::contact::{Cover, covers};
use crate::face::Face;
use crate::part::Part;
use crate::region::Region;
use crate::space::{Sense, Space};
use crate::surface::{Deduction, Surface, SurfaceId};

/// Placed parts and the spaces around and between them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Assembly {
    /// The solids.
    pub parts: Vec<Part>,
    /// The spaces, the first that fits a face deciding; what none of them claims looks into the room.
    pub spaces: Vec<Space>,
}

impl Assembly {
    /// The same piece moved and turned.
    pub fn moved(self, by: &Isometry3<f64>) -> Self {
        Assembly {
            parts: self.parts.into_iter().map(|part| part.moved(by)).collect(),
            spaces: self.spaces.into_iter().map(|space| space.moved(by)).collect(),
        }
    }

    /// Every surface of the piece: each face, divided by what it looks at, less what lies against it.
    ///
    /// The order is that of the parts and their faces; a surface that is wholly covered is listed with a net
    /// area of zero, so that a reader can see why it needs no paint.
    ///
    /// # Example
    /// ```
    /// use geometry::{Assembly, Part, PartId, PartKind};
    /// let board = |n, x: f64| Part::block(PartId::nth(PartKind::Board, n), [x, 0.0, 0.0], [x + 0.5, 0.02, 0.3]);
    /// let two = Assembly { parts: vec![board(1, 0.0), board(2, 0.5)], spaces: vec![] };
    /// let net: f64 = two.surfaces().iter().map(|s| s.net.as_square_metres()).sum();
    /// // Pushed together end to end, they are one board of twice the length.
    /// assert!((net - 2.0 * (1.0 * 0.3 + 1.0 * 0.02 + 0.3 * 0.02)).abs() < 1e-12);
    /// ```
    pub fn surfaces(&self) -> Vec<Surface> {
        let covers = covers(self);
        let faces = self
            .parts
            .iter()
            .flat_map(|part| part.faces.iter().map(move |face| (part, face)));
        faces
            .zip(&covers)
            .flat_map(|((part, face), covers)| {
                self.divided(face)
                    .into_iter()
                    .map(move |(sense, region)| self.surface(part, face, sense, region, covers))
            })
            .collect()
    }

    /// A face, divided by the spaces it looks into.
    fn divided(&self, face: &Face) -> Vec<(Sense, Region)> {
        let mut parts = Vec::with_capacity(1);
        let mut rest = face.region.clone();
        for space in &self.spaces {
            if rest.is_empty() {
                break;
            }
            let seen = space.seen_from(face, &rest);
            let area = seen.area();
            if area <= SMALLEST_AREA {
                continue;
            }
            rest = if rest.area() - area <= SMALLEST_AREA {
                Region::EMPTY
            } else {
                rest.difference(&seen)
            };
            parts.push((space.sense, seen));
        }
        if rest.area() > SMALLEST_AREA {
            parts.push((Sense::Outside, rest));
        }
        join_alike(parts)
    }

    fn surface(&self, part: &Part, face: &Face, sense: Sense, region: Region, covers: &[Cover]) -> Surface {
        let gross = region.area();
        let deductions = deductions(&region, covers);
        let covered: f64 = deductions.iter().map(|(_, area)| area).sum();
        let net = gross - covered;
        Surface {
            id: SurfaceId {
                part: part.id,
                side: face.side,
                sense,
            },
            is_edge: face.is_edge,
            plane: face.plane.clone(),
            region,
            gross: Area::square_metres(gross),
            deductions: deductions
                .into_iter()
                .map(|(index, area)| Deduction {
                    by: self.parts[index].id,
                    area: Area::square_metres(area),
                })
                .collect(),
            net: Area::square_metres(if net > SMALLEST_AREA { net } else { 0.0 }),
        }
    }
}

/// Regions of one face that look at the same thing are one surface.
fn join_alike(parts: Vec<(Sense, Region)>) -> Vec<(Sense, Region)> {
    let mut joined: Vec<(Sense, Region)> = Vec::with_capacity(parts.len());
    for (sense, region) in parts {
        match joined.iter_mut().find(|(other, _)| *other == sense) {
            Some((_, into)) => *into = Region::union_of_all([&*into, &region].into_iter()),
            None => joined.push((sense, region)),
        }
    }
    joined
}

/// What each covering part takes from a region. A strip that two parts cover is taken once, by the first.
fn deductions(region: &Region, covers: &[Cover]) -> Vec<(usize, f64)> {
    let mut taken: Vec<(usize, f64)> = Vec::new();
    let mut earlier: Vec<&Region> = Vec::new();
    for cover in covers {
        let mut cut = region.intersection(&cover.region);
        let doubled: Vec<&Region> = earlier
            .iter()
            .copied()
            .filter(|other| other.intersection(&cut).area() > SMALLEST_AREA)
            .collect();
        if !doubled.is_empty() {
            cut = cut.difference_of_all(doubled.into_iter());
        }
        let area = cut.area();
        if area > SMALLEST_AREA {
            match taken.iter_mut().find(|(part, _)| *part == cover.part) {
                Some((_, sum)) => *sum += area,
                None => taken.push((cover.part, area)),
            }
            earlier.push(&cover.region);
        }
    }
    taken
}
