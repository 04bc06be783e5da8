//! Prisms: a section extruded along a straight line, its ends cut square or mitered.
//!
//! Moldings, shaped boards, columns and the members of frames are prisms.

use crate::Point3;
use crate::face::{Face, Facet, Plane, Side};
use crate::part::{Part, PartId};
use crate::region::{Point2, Region};
use crate::sorting;

/// Part of the outline of a section, between two corners, and the name of the face that it sweeps out.
pub(crate) struct Run {
    pub(crate) side: Side,
    /// Its points, from where the run before it ends to where the next begins.
    pub(crate) points: Vec<Point2>,
    /// For a curve, its exact length and the integral of the first coordinate along it; its points are for drawings
    /// only.
    pub(crate) curve: Option<Curve>,
    /// Profile multiplier to show.
    pub(crate) multiplier: f64,
}

/// The exact measures of a curve that its points approximate.
#[derive(Clone, Copy)]
pub(crate) struct Curve {
    /// Arc length, meters.
    pub(crate) girth: f64,
    /// Integral of the first coordinate along the curve, square meters.
    pub(crate) moment: f64,
}

impl Run {
    /// Straight lines from point to point.
    pub(crate) fn straight(side: Side, points: Vec<Point2>) -> Self {
        Run {
            side,
            points,
            curve: None,
            multiplier: 1.0,
        }
    }

    /// A curve through these points.
    pub(crate) fn curved(side: Side, points: Vec<Point2>, girth: f64, moment: f64) -> Self {
        Run {
            curve: Some(Curve { girth, moment }),
            ..Run::straight(side, points)
        }
    }

    /// The same run with a profile multiplier to show.
    pub(crate) fn with_multiplier(mut self, multiplier: f64) -> Self {
        self.multiplier = multiplier;
        self
    }
}

/// Where the section ends: at `at`, plus `slope` times the first coordinate of the section for a miter.
#[derive(Clone, Copy)]
pub(crate) struct Cut {
    pub(crate) at: f64,
    pub(crate) slope: f64,
}

impl Cut {
    /// A square cut.
    pub(crate) fn square(at: f64) -> Self {
        Cut { at, slope: 0.0 }
    }
}

/// A section extruded along the normal of its plane.
pub(crate) struct Prism {
    /// The plane of the section; the prism runs along its normal.
    pub(crate) plane: Plane,
    /// The outline, counter-clockwise as seen against the normal.
    pub(crate) outline: Vec<Run>,
    /// Holes through the section, each clockwise; they sweep out the face [`Side::Opening`].
    pub(crate) holes: Vec<Vec<Point2>>,
    pub(crate) start: Cut,
    pub(crate) end: Cut,
}

impl Prism {
    /// The part with its faces: one for each name in the outline, the openings, and the two ends.
    pub(crate) fn part(&self, id: PartId) -> Part {
        let mut faces: Vec<Face> = Vec::new();
        let mut sides: Vec<Side> = Vec::new();
        for run in &self.outline {
            if !sides.contains(&run.side) {
                sides.push(run.side);
                faces.push(self.swept(run.side));
            }
        }
        if !self.holes.is_empty() {
            let facets = self
                .holes
                .iter()
                .flat_map(|hole| self.strips(&closed(hole)).collect::<Vec<_>>())
                .collect();
            faces.push(Face::folded(Side::Opening, facets));
        }
        let along = self.plane.normal();
        faces.extend(
            self.end(&self.end, false)
                .map(|facet| Face::flat(Side::looking(&along), facet, false)),
        );
        faces.extend(
            self.end(&self.start, true)
                .map(|facet| Face::flat(Side::looking(&-along), facet, false)),
        );
        mark_edges(&mut faces);
        Part::of(id, faces)
    }

    /// The face that all runs of one name sweep out.
    fn swept(&self, side: Side) -> Face {
        let runs = || self.outline.iter().filter(|run| run.side == side);
        let multiplier = runs().map(|run| run.multiplier).fold(1.0, f64::max);
        let facets: Vec<Facet> = runs().flat_map(|run| self.strips(&run.points)).collect();
        if runs().all(|run| run.curve.is_none()) {
            return Face::folded(side, joined(facets)).with_multiplier(multiplier);
        }
        let area = runs()
            .map(|run| match run.curve {
                Some(Curve { girth, moment }) => {
                    (self.end.at - self.start.at) * girth + (self.end.slope - self.start.slope) * moment
                }
                None => self.strips(&run.points).map(|facet| facet.region.area()).sum(),
            })
            .sum();
        Face::curved(side, facets, area).with_multiplier(multiplier)
    }

    fn strips(&self, points: &[Point2]) -> impl Iterator<Item = Facet> {
        let edges = points.iter().zip(points.iter().skip(1));
        edges.filter_map(|(&p, &q)| {
            Facet::around(&[
                self.at(p, &self.start),
                self.at(q, &self.start),
                self.at(q, &self.end),
                self.at(p, &self.end),
            ])
        })
    }

    /// The flat end, as seen from outside.
    fn end(&self, cut: &Cut, is_start: bool) -> Option<Facet> {
        let mut outline: Vec<Point2> = Vec::new();
        for run in &self.outline {
            if let Some((_, points)) = run.points.split_last() {
                outline.extend(points);
            }
        }
        let mut points: Vec<Point3> = outline.iter().map(|&point| self.at(point, cut)).collect();
        if is_start {
            points.reverse();
        }
        let facet = Facet::around(&points)?;
        if self.holes.is_empty() {
            return Some(facet);
        }
        let holes = self.holes.iter().map(|hole| {
            let points = hole
                .iter()
                .map(|&point| facet.plane.project(&self.at(point, cut)));
            Region::polygon(points.collect())
        });
        let holes: Vec<Region> = holes.collect();
        Some(Facet {
            region: facet.region.difference_of_all(holes.iter()),
            plane: facet.plane,
        })
    }

    fn at(&self, point: Point2, cut: &Cut) -> Point3 {
        self.plane.at(point) + self.plane.normal() * (cut.at + cut.slope * point[0])
    }
}

fn closed(points: &[Point2]) -> Vec<Point2> {
    points.iter().chain(points.first()).copied().collect()
}

/// Merges coplanar facets into one, such as the feet of a plinth on the floor.
fn joined(facets: Vec<Facet>) -> Vec<Facet> {
    let mut list: Vec<Facet> = Vec::new();
    for facet in facets {
        let in_plane = list.iter_mut().find(|other| {
            other.plane.normal().dot(&facet.plane.normal()) > 1.0 - 1e-9
                && other.plane.height_of(&facet.plane.origin).abs() < 1e-9
        });
        match in_plane {
            Some(other) => {
                let carried = facet
                    .region
                    .mapped(|point| other.plane.project(&facet.plane.at(point)));
                other.region = Region::union_of_all([&other.region, &carried].into_iter());
            }
            None => list.push(facet),
        }
    }
    list
}

/// The two largest flat faces are the faces of a board; the other flat ones are its edges.
fn mark_edges(faces: &mut [Face]) {
    let mut areas: Vec<f64> = faces.iter().map(Face::area).collect();
    sorting::sort(&mut areas);
    let Some(&second) = areas.iter().rev().nth(1) else {
        return;
    };
    for face in faces {
        let is_plain = matches!(
            face.side,
            Side::Front | Side::Back | Side::Left | Side::Right | Side::Top | Side::Bottom
        );
        face.is_edge = is_plain && face.area() < second * (1.0 - 1e-9);
    }
}
