//! A piece as placed parts, with the spaces that its faces look into.

use nalgebra::Isometry3;
use units::Area;

use crate::SMALLEST_AREA;
use crate::contact::{Cover, Placed, covers, placed};
use crate::exposure::{ExposureMap, Setting};
use crate::exposure_source::ExposureSource;
use crate::face::{Face, FaceShape, Facet};
use crate::part::{Part, PartId};
use crate::region::Region;
use crate::space::Space;
use crate::surface::{Deduction, Facets, Surface, SurfaceId};

/// Placed parts and the spaces around and between them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Assembly {
    /// The solids.
    pub parts: Vec<Part>,
    /// The spaces. The first one that a face looks into decides; a face that looks into none of them looks into the
    /// room. They describe the parts as they were measured.
    pub spaces: Vec<Space>,
    /// Where the piece stands: whether a wall is behind it and a floor below it.
    pub setting: Setting,
    /// Whether exposure is worked out from the parts instead of the spaces. This holds for every piece whose parts were
    /// altered after they were measured.
    pub by_parts: bool,
    /// Holes through faces that the maker wants deducted: name of the hole, name of the surface, area.
    pub holes: Vec<(PartId, String, Area)>,
}

impl Assembly {
    /// Parts and spaces, without holes.
    pub fn new(parts: Vec<Part>, spaces: Vec<Space>) -> Self {
        Assembly {
            parts,
            spaces,
            setting: Setting::default(),
            by_parts: false,
            holes: vec![],
        }
    }

    /// The same piece in another setting.
    pub(crate) fn standing(self, setting: Setting) -> Self {
        Assembly { setting, ..self }
    }

    /// Parts alone; the exposure of their faces is worked out from them.
    pub(crate) fn of_parts(parts: Vec<Part>, setting: Setting) -> Self {
        Assembly {
            by_parts: true,
            ..Assembly::new(parts, vec![]).standing(setting)
        }
    }

    /// The same piece moved and turned.
    pub fn moved(self, by: &Isometry3<f64>) -> Self {
        Assembly {
            parts: self.parts.into_iter().map(|part| part.moved(by)).collect(),
            spaces: self.spaces.into_iter().map(|space| space.moved(by)).collect(),
            setting: Setting {
                at: by * self.setting.at,
                ..self.setting
            },
            by_parts: self.by_parts,
            holes: self.holes,
        }
    }

    /// Every surface of the piece: each face, divided by what it looks at, less what lies against it.
    ///
    /// Surfaces are in the order of the parts and their faces. A surface that is completely covered is listed with a
    /// net area of zero, so that a reader can see why it needs no paint.
    ///
    /// # Example
    /// ```
    /// use geometry::{Assembly, Part, PartId, PartKind};
    /// let board = |n, x: f64| Part::block(PartId::nth(PartKind::Board, n), [x, 0.0, 0.0], [x + 0.5, 0.02, 0.3]);
    /// let two = Assembly::new(vec![board(1, 0.0), board(2, 0.5)], vec![]);
    /// let net: f64 = two.surfaces().iter().map(|s| s.net.as_square_metres()).sum();
    /// // Pushed together end to end, they are one board of twice the length.
    /// assert!((net - 2.0 * (1.0 * 0.3 + 1.0 * 0.02 + 0.3 * 0.02)).abs() < 1e-12);
    /// ```
    pub fn surfaces(&self) -> Vec<Surface> {
        let mut surfaces = Vec::with_capacity(self.parts.len() * 6);
        let exposures = self.exposures();
        self.each_face(|part, face, placed, first, covers| {
            self.face_surfaces(&exposures, (part, face), placed, (first, covers), &mut surfaces);
        });
        self.deduct_holes(&mut surfaces);
        surfaces
    }

    /// The net area of every surface, in the order of [`Assembly::surfaces`] and with the same values, but without the
    /// working behind it. It takes about half the time, for a piece that is measured again and again.
    pub fn net_areas(&self) -> Vec<(SurfaceId, Area)> {
        let mut nets: Vec<(SurfaceId, f64)> = Vec::with_capacity(self.parts.len() * 6);
        let exposures = self.exposures();
        self.each_face(|part, face, placed, first, covers| {
            if matches!(face.patch, FaceShape::Curved(_)) {
                let (exposure, area) = exposures.curved((part, face), placed);
                let (part, side) = (part.id, face.side);
                nets.push((SurfaceId { part, side, exposure }, area));
                return;
            }
            let start = nets.len();
            exposures.each_region(
                (part, face),
                placed,
                first,
                covers,
                |_, exposure, region, covers| {
                    let id = SurfaceId {
                        part: part.id,
                        side: face.side,
                        exposure,
                    };
                    let mut covered = 0.0;
                    self.each_deduction(&region, covers, |_, area| covered += area);
                    let net = (region.area() - covered) * face.stretch;
                    match nets.iter_mut().skip(start).find(|(known, _)| *known == id) {
                        Some((_, sum)) => *sum += net,
                        None => nets.push((id, net)),
                    }
                },
            );
        });
        let mut nets: Vec<(SurfaceId, Area)> = nets.into_iter().map(|(id, net)| (id, kept(net))).collect();
        for (_, surface, area) in self.holes.iter().filter(|(.., area)| *area > Area::ZERO) {
            if let Some((_, net)) = nets.iter_mut().find(|(id, _)| id.to_string() == *surface) {
                *net = kept((*net - area.min(*net)).as_square_metres());
            }
        }
        nets
    }

    /// Where the exposure of the faces comes from.
    fn exposures(&self) -> ExposureSource<'_> {
        if self.by_parts {
            ExposureSource::Parts(Box::new(ExposureMap::of(&self.parts, &self.setting)))
        } else {
            ExposureSource::Spaces(&self.spaces)
        }
    }

    /// Calls `of` for each face with its part, its facets, the index of the first of them among all facets, and what
    /// covers them.
    fn each_face(&self, mut of: impl FnMut(&Part, &Face, &[Placed], usize, &[Cover])) {
        let facets = placed(&self.parts);
        let covers = covers(&facets);
        let (mut facets, mut covers) = (&*facets, &*covers);
        let mut first = 0;
        for part in &self.parts {
            for face in &part.faces {
                let (own, later_facets) = facets.split_at(face.facets().len());
                let next = first + own.len();
                let count = covers.iter().take_while(|cover| cover.facet < next).count();
                let (on_it, later_covers) = covers.split_at(count);
                of(part, face, own, first, on_it);
                (facets, covers, first) = (later_facets, later_covers, next);
            }
        }
    }

    /// The uncovered part of each facet, with its surface, in the order of the facets.
    pub(crate) fn net_facets(&self) -> Vec<(SurfaceId, Facet)> {
        let exposures = self.exposures();
        let facets = placed(&self.parts);
        let mut covers = covers(&facets).into_iter().peekable();
        let mut net = Vec::with_capacity(facets.len());
        let mut first = 0;
        let mut rest = &*facets;
        let faces = self.parts.iter().flat_map(|part| {
            let faces = part.faces.iter();
            faces.map(move |face| (part, face))
        });
        for (part, face) in faces {
            let own;
            (own, rest) = rest.split_at(face.facets().len());
            let places = first..;
            first += own.len();
            if matches!(face.patch, FaceShape::Curved(_)) {
                let surface = exposures.curved_surface((part, face), own);
                net.extend(surface.facets.iter().map(|facet| (surface.id, facet.clone())));
                continue;
            }
            for (place, placed) in places.zip(own) {
                let on_it = std::iter::from_fn(|| covers.next_if(|cover| cover.facet == place));
                let on_it: Vec<Region> = on_it.map(|cover| cover.region).collect();
                exposures.divided((part, face), placed, |exposure, region| {
                    let region = region.difference_of_all(on_it.iter());
                    if region.area() > SMALLEST_AREA {
                        let (part, side) = (part.id, face.side);
                        let plane = placed.facet.plane.clone();
                        net.push((SurfaceId { part, side, exposure }, Facet { plane, region }));
                    }
                });
            }
        }
        net
    }

    /// The surfaces of one face. `first` is the index of its first facet among all facets.
    fn face_surfaces(
        &self,
        exposures: &ExposureSource,
        (part, face): (&Part, &Face),
        placed: &[Placed],
        (first, covers): (usize, &[Cover]),
        into: &mut Vec<Surface>,
    ) {
        let start = into.len();
        if matches!(face.patch, FaceShape::Curved(_)) {
            into.push(exposures.curved_surface((part, face), placed));
            return;
        }
        exposures.each_region(
            (part, face),
            placed,
            first,
            covers,
            |placed, exposure, region, covers| {
                let id = SurfaceId {
                    part: part.id,
                    side: face.side,
                    exposure,
                };
                let gross = region.area() * face.stretch;
                let mut deductions = Vec::new();
                self.each_deduction(&region, covers, |by, area| {
                    let area = Area::square_metres(area * face.stretch);
                    add_deduction(&mut deductions, Deduction { by, area });
                });
                let facet = Facet {
                    plane: placed.facet.plane.clone(),
                    region,
                };
                match into.iter_mut().skip(start).find(|surface| surface.id == id) {
                    Some(surface) => surface.add(facet, gross, deductions),
                    None => into.push(Surface {
                        id,
                        is_edge: face.is_edge,
                        facets: Facets::One(facet),
                        multiplier: face.multiplier,
                        gross: Area::square_metres(gross),
                        deductions,
                        net: Area::ZERO,
                    }),
                }
            },
        );
        for surface in into.iter_mut().skip(start) {
            surface.settle();
        }
    }

    /// Calls `of` with each covering part and the area that it takes from a region, square meters. A strip that two
    /// parts cover counts once, for the first.
    fn each_deduction(&self, region: &Region, covers: &[Cover], mut of: impl FnMut(PartId, f64)) {
        let mut earlier: Vec<&Region> = Vec::new();
        for cover in covers {
            let mut area = region.intersection_area(&cover.region);
            if area <= SMALLEST_AREA {
                continue;
            }
            let doubles = |other: &Region, region: &Region| other.intersection_area(region) > SMALLEST_AREA;
            if earlier.iter().any(|other| doubles(other, &cover.region)) {
                let cut = region.intersection(&cover.region);
                let doubled = earlier.iter().copied().filter(|other| doubles(other, &cut));
                area = cut.difference_of_all(doubled).area();
            }
            if area > SMALLEST_AREA
                && let Some(part) = self.parts.get(cover.part)
            {
                of(part.id, area);
                earlier.push(&cover.region);
            }
        }
    }

    fn deduct_holes(&self, surfaces: &mut [Surface]) {
        for (by, surface, area) in &self.holes {
            let holed = surfaces.iter_mut().find(|s| s.id.to_string() == *surface);
            if let Some(holed) = holed {
                let area = area.min(holed.net);
                if area > Area::ZERO {
                    holed.deductions.push(Deduction { by: *by, area });
                    holed.settle();
                }
            }
        }
    }
}

/// An area in square meters, or zero if it is only rounding noise.
fn kept(net: f64) -> Area {
    Area::square_metres(if net > SMALLEST_AREA { net } else { 0.0 })
}

fn add_deduction(to: &mut Vec<Deduction>, deduction: Deduction) {
    match to.iter_mut().find(|other| other.by == deduction.by) {
        Some(other) => other.area += deduction.area,
        None => to.push(deduction),
    }
}

impl Surface {
    /// Adds another facet, or another region of the same facet.
    fn add(&mut self, facet: Facet, gross: f64, deductions: Vec<Deduction>) {
        self.gross += Area::square_metres(gross);
        for deduction in deductions {
            add_deduction(&mut self.deductions, deduction);
        }
        let facets = std::mem::replace(&mut self.facets, Facets::Many(Vec::new()));
        self.facets = match facets {
            // Regions of one plane with the same exposure become one outline.
            Facets::One(first) if first.plane == facet.plane => {
                let region = Region::union_of_all([&first.region, &facet.region].into_iter());
                Facets::One(Facet { region, ..first })
            }
            Facets::One(first) => Facets::Many(vec![first, facet]),
            Facets::Many(mut facets) => {
                facets.push(facet);
                Facets::Many(facets)
            }
        };
    }

    /// Sets the net area from the gross area and the deductions.
    fn settle(&mut self) {
        let covered: f64 = self.deductions.iter().map(|d| d.area.as_square_metres()).sum();
        self.net = kept(self.gross.as_square_metres() - covered);
    }
}
