//! Contacts: where faces of two parts touch.

#![allow(
    clippy::indexing_slicing,
    reason = "the places are those of the facets that it lists itself"
)]

use crate::face::{FaceShape, Facet, Plane};
use crate::part::Part;
use crate::region::Region;
use crate::sorting;
use crate::{CONTACT_GAP, SMALLEST_AREA, Vector3};

/// How nearly parallel two directions must be, as the difference of their cosine from 1: about 0.08 degrees.
const PARALLEL: f64 = 1e-6;

/// A facet with its part, normal and bounding box.
pub(crate) struct Placed<'a> {
    /// The index of its part in the assembly.
    pub(crate) part: usize,
    pub(crate) facet: &'a Facet,
    pub(crate) normal: Vector3,
    pub(crate) low: [f64; 3],
    pub(crate) high: [f64; 3],
    /// Whether other parts can touch it. They cannot touch a facet of a curve, nor a loose part.
    touches: bool,
}

/// A region of a facet that another part covers, in the plane of the facet.
pub(crate) struct Cover {
    /// The index of the covered facet among all facets.
    pub(crate) facet: usize,
    /// The index of the covering part in the assembly.
    pub(crate) part: usize,
    /// What it covers.
    pub(crate) region: Region,
}

/// Every facet of every face of every part, in order.
pub(crate) fn placed(parts: &[Part]) -> Vec<Placed<'_>> {
    let mut list = Vec::with_capacity(parts.len() * 6);
    for (part, solid) in parts.iter().enumerate() {
        for face in &solid.faces {
            let touches = !solid.is_loose && !matches!(face.patch, FaceShape::Curved(_));
            for facet in face.facets() {
                let (low, high) = facet.bounds();
                let normal = facet.plane.normal();
                list.push(Placed {
                    part,
                    facet,
                    normal,
                    low,
                    high,
                    touches,
                });
            }
        }
    }
    list
}

/// The covers of all facets, sorted by facet and then by part.
///
/// Only facets in nearly the same plane can touch. Nearly all planes of furniture are axis-aligned: their facets are
/// sorted by position, and only facets of one plane are compared. The few slanted ones are compared by their bounding
/// boxes.
pub(crate) fn covers(facets: &[Placed]) -> Vec<Cover> {
    let mut found = Vec::new();
    let mut slanted = Vec::new();
    let mut square: [Vec<usize>; 3] = [vec![], vec![], vec![]];
    for (i, placed) in facets.iter().enumerate().filter(|(_, placed)| placed.touches) {
        match (0..3).find(|&axis| placed.normal[axis].abs() > 1.0 - 1e-9) {
            Some(axis) => square[axis].push(i),
            None => slanted.push(i),
        }
    }
    for (axis, mut list) in square.into_iter().enumerate() {
        let at = |i: &usize| facets[*i].low[axis];
        sorting::sort_by(&mut list, at);
        for plane in list.chunk_by_mut(|a, b| at(b) - at(a) <= CONTACT_GAP) {
            compare(facets, plane, &mut found);
        }
    }
    compare(facets, &mut slanted, &mut found);
    sorting::sort_by(&mut found, |cover| (cover.facet, cover.part));
    found
}

/// Compares facets that may share a plane, sorted along the axis in which they are spread out most.
fn compare(facets: &[Placed], list: &mut [usize], found: &mut Vec<Cover>) {
    if list.len() < 2 {
        return;
    }
    let spread = |axis: usize| {
        let low = list
            .iter()
            .fold(f64::INFINITY, |low, &i| low.min(facets[i].low[axis]));
        let high = list
            .iter()
            .fold(f64::NEG_INFINITY, |high, &i| high.max(facets[i].high[axis]));
        high - low
    };
    let spreads = [spread(0), spread(1), spread(2)];
    let axis = (0..3)
        .max_by(|&a, &b| spreads[a].total_cmp(&spreads[b]))
        .unwrap_or(0);
    sorting::sort_by(list, |&place| facets[place].low[axis]);
    for (place, &i) in list.iter().enumerate() {
        let a = &facets[i];
        let reach = a.high[axis] + CONTACT_GAP;
        for &j in list[place + 1..]
            .iter()
            .take_while(|&&j| facets[j].low[axis] <= reach)
        {
            let b = &facets[j];
            if a.part != b.part && a.may_touch(b) {
                touch((i, a), (j, b), found);
            }
        }
    }
}

fn touch((i, a): (usize, &Placed), (j, b): (usize, &Placed), found: &mut Vec<Cover>) {
    let on_a = a
        .facet
        .region
        .intersection(&carried(&b.facet.plane, &b.facet.region, &a.facet.plane));
    if on_a.area() > SMALLEST_AREA {
        let on_b = carried(&a.facet.plane, &on_a, &b.facet.plane);
        found.push(Cover {
            facet: i,
            part: b.part,
            region: on_a,
        });
        found.push(Cover {
            facet: j,
            part: a.part,
            region: on_b,
        });
    }
}

impl Placed<'_> {
    /// Whether the two face each other, share a plane and have overlapping bounding boxes.
    fn may_touch(&self, other: &Placed) -> bool {
        self.normal.dot(&other.normal) < PARALLEL - 1.0
            && (0..3).all(|axis| {
                self.low[axis] <= other.high[axis] + CONTACT_GAP
                    && other.low[axis] <= self.high[axis] + CONTACT_GAP
            })
            && (other.facet.plane.origin - self.facet.plane.origin)
                .dot(&self.normal)
                .abs()
                <= CONTACT_GAP
    }
}

/// A region of one plane in the coordinates of another that is parallel to it.
fn carried(from: &Plane, region: &Region, to: &Plane) -> Region {
    let shift = to.project(&from.origin);
    let (u, v) = (
        [from.u.dot(&to.u), from.u.dot(&to.v)],
        [from.v.dot(&to.u), from.v.dot(&to.v)],
    );
    region.mapped(|[x, y]| [shift[0] + x * u[0] + y * v[0], shift[1] + x * u[1] + y * v[1]])
}
