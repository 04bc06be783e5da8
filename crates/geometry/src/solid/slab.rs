//! Slabs with worked edges: tops, drawer fronts, table tops.
//!
//! The stated size is that of the slab at its widest. Around a corner the profile is mitered, so its runs get shorter
//! further in: the developed area is girth times length less the first moment of the profile for each mitered end.

use nalgebra::{Isometry3, Rotation3, Translation3, UnitQuaternion};

use super::chord::CHORD;
use super::tapered::bands;
use crate::face::{Face, Facet, Side};
use crate::part::{Part, PartId};
use crate::profile::Profile;
use crate::region::Point2;
use crate::{Point3, Vector3};

/// How the edges of a slab are worked.
pub(crate) struct Worked<'a> {
    /// The shape of the worked edges.
    pub(crate) profile: &'a Profile,
    /// Which edges are worked, seen from the worked face: near (below), right, far (above), left.
    pub(crate) edges: [bool; 4],
}

/// Which face of the piece the worked face of a slab is.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Faces {
    Up,
    Front,
}

/// A slab between two corners of the room, its worked face above or in front.
pub(crate) fn slab(id: PartId, low: [f64; 3], high: [f64; 3], faces: Faces, worked: &Worked) -> Part {
    let [w, d, h] = [high[0] - low[0], high[1] - low[1], high[2] - low[2]];
    match faces {
        Faces::Up => {
            let names = [
                (Side::Front, Side::MouldedFront),
                (Side::Right, Side::MouldedRight),
                (Side::Back, Side::MouldedBack),
                (Side::Left, Side::MouldedLeft),
            ];
            let at = Isometry3::translation(low[0], low[1], low[2]);
            Slab::new([w, d, h], worked, &at).part(id, names, [Side::Top, Side::Bottom])
        }
        Faces::Front => {
            let names = [
                (Side::Bottom, Side::MouldedBottom),
                (Side::Right, Side::MouldedRight),
                (Side::Top, Side::MouldedTop),
                (Side::Left, Side::MouldedLeft),
            ];
            // The far edge is above the near one; what is above the slab is in front of it.
            let turn = Rotation3::from_basis_unchecked(&[Vector3::x(), Vector3::z(), -Vector3::y()]);
            let at = Isometry3::from_parts(
                Translation3::new(low[0], high[1], low[2]),
                UnitQuaternion::from_rotation_matrix(&turn),
            );
            Slab::new([w, h, d], worked, &at).part(id, names, [Side::Front, Side::Back])
        }
    }
}

struct Slab<'a> {
    size: [f64; 3],
    worked: &'a Worked<'a>,
    /// Points of the profile: the distance inside the stated edge, and the height above the lower face.
    line: Vec<Point2>,
    at: &'a Isometry3<f64>,
}

impl<'a> Slab<'a> {
    fn new(size: [f64; 3], worked: &'a Worked, at: &'a Isometry3<f64>) -> Self {
        let foot = size[2] - worked.profile.size()[1];
        let line = worked
            .profile
            .line(CHORD)
            .into_iter()
            .map(|[inward, up]| [inward, foot + up])
            .collect();
        Slab {
            size,
            worked,
            line,
            at,
        }
    }

    fn part(&self, id: PartId, names: [(Side, Side); 4], broad: [Side; 2]) -> Part {
        let [top, bottom] = broad;
        let [_, _, thick] = self.size;
        let first = self.line.first().copied().unwrap_or([0.0, thick]);
        let last = self.line.last().copied().unwrap_or([0.0, thick]);
        // Where the profile takes the whole edge, the lower face ends where the profile begins.
        let lower = if first[1] > 0.0 { 0.0 } else { first[0] };
        let above = self.ring(last[0], thick);
        let mut below = self.ring(lower, 0.0);
        below.reverse();
        let broad_face =
            |side, ring: [Point3; 4]| Facet::around(&ring).map(|facet| Face::flat(side, facet, false));
        let mut faces: Vec<Face> = [broad_face(top, above), broad_face(bottom, below)]
            .into_iter()
            .flatten()
            .collect();
        for (edge, (flat, moulded)) in names.into_iter().enumerate() {
            if self.is_worked(edge) {
                let band = self.band(edge, [0.0, 0.0], [0.0, first[1]]);
                faces.extend(band.map(|facet| Face::flat(flat, facet, true)));
                faces.push(self.moulded(edge, moulded));
            } else {
                faces.extend(self.end(edge).map(|facet| Face::flat(flat, facet, true)));
            }
        }
        Part::of(id, faces)
    }

    /// Whether an edge is worked, by its place in [`Worked::edges`].
    fn is_worked(&self, edge: usize) -> bool {
        self.worked.edges.get(edge).is_some_and(|is_worked| *is_worked)
    }

    /// The four corners, from near left counter-clockwise, of the slab `inward` within its worked edges.
    fn ring(&self, inward: f64, height: f64) -> [Point3; 4] {
        let [w, d, _] = self.size;
        let [near, right, far, left] = self
            .worked
            .edges
            .map(|is_worked| if is_worked { inward } else { 0.0 });
        let ([x0, x1], [y0, y1]) = ([left, w - right], [near, d - far]);
        [[x0, y0], [x1, y0], [x1, y1], [x0, y1]].map(|[x, y]| self.at * Point3::new(x, y, height))
    }

    /// The band of one edge between two points of the profile.
    fn band(&self, edge: usize, from: Point2, to: Point2) -> Option<Facet> {
        let (lower, upper) = (self.ring(from[0], from[1]), self.ring(to[0], to[1]));
        Facet::around(bands(lower, upper).get(edge)?)
    }

    fn moulded(&self, edge: usize, side: Side) -> Face {
        let profile = self.worked.profile;
        let facets: Vec<Facet> = self
            .line
            .iter()
            .zip(self.line.iter().skip(1))
            .filter_map(|(&from, &to)| self.band(edge, from, to))
            .collect();
        let [w, d, _] = self.size;
        let length = if edge.is_multiple_of(2) { w } else { d };
        let mitred = [(edge + 1) % 4, (edge + 3) % 4]
            .into_iter()
            .filter(|&neighbor| self.is_worked(neighbor))
            .count();
        let area = profile.girth() * length - mitred as f64 * profile.moment();
        Face::curved(side, facets, area).with_multiplier(profile.multiplier())
    }

    /// An edge that is not worked: the profiles that run out into it cut its outline.
    fn end(&self, edge: usize) -> Option<Facet> {
        let next = (edge + 1) % 4;
        let (before, after) = (self.is_worked((edge + 3) % 4), self.is_worked(next));
        let [_, _, thick] = self.size;
        let mut points = Vec::new();
        let plain = [[0.0, 0.0], [0.0, thick]];
        let line = |is_worked: bool| -> Vec<Point2> {
            if is_worked {
                let from_below = self.line.first().is_some_and(|first| first[1] > 0.0);
                let foot = from_below.then_some([0.0, 0.0]);
                foot.into_iter().chain(self.line.iter().copied()).collect()
            } else {
                plain.to_vec()
            }
        };
        let corner =
            |corner: usize, [inward, height]: &Point2| self.ring(*inward, *height).get(corner).copied();
        points.extend(line(after).iter().filter_map(|point| corner(next, point)));
        points.extend(line(before).iter().rev().filter_map(|point| corner(edge, point)));
        Facet::around(&points)
    }
}
