//! Spaces around and in a piece, and the exposure of faces that look into them.

use nalgebra::Isometry3;

use crate::face::Plane;
use crate::region::Region;
use crate::{CONTACT_GAP, Vector3};

/// What a surface faces. It decides whether a finisher would paint it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Exposure {
    /// The room: what a person sees of the piece.
    Outside,
    /// The inside of the case, behind the drawers.
    Inside,
    /// The wall behind the piece.
    Wall,
    /// The floor it stands on.
    Floor,
    /// The floor below, seen only by lying down.
    Underneath,
    /// Whatever a part without a place is glued to.
    Glued,
}

impl Exposure {
    /// The word for it, as used in identities.
    pub fn key(self) -> &'static str {
        match self {
            Exposure::Outside => "outside",
            Exposure::Inside => "inside",
            Exposure::Wall => "wall",
            Exposure::Floor => "floor",
            Exposure::Underneath => "underneath",
            Exposure::Glued => "glued",
        }
    }
}

/// All points `p` with `normal . p <= limit`.
#[derive(Clone, Debug, PartialEq)]
pub struct HalfSpace {
    /// The direction out of the half space, of length 1.
    pub normal: Vector3,
    /// How far along it the boundary lies, meters.
    pub limit: f64,
}

impl HalfSpace {
    /// The lowest value of `normal . p` over a box.
    fn nearest(&self, low: &[f64; 3], high: &[f64; 3]) -> f64 {
        let nearest = |out: f64, low: f64, high: f64| out * if out > 0.0 { low } else { high };
        let [x, y, z] = self.normal.into();
        nearest(x, low[0], high[0]) + nearest(y, low[1], high[1]) + nearest(z, low[2], high[2])
    }
}

/// A convex space and the exposure of faces that look into it.
#[derive(Clone, Debug, PartialEq)]
pub struct Space {
    /// The exposure of faces that look into it.
    pub exposure: Exposure,
    /// The half spaces that bound it; without any, it is all of space.
    pub bounds: Vec<HalfSpace>,
    /// If set, only faces within 45 degrees of this direction count.
    pub facing: Option<Vector3>,
}

impl Space {
    /// The block between two corners; an infinite coordinate leaves that side open.
    pub fn block(exposure: Exposure, low: [f64; 3], high: [f64; 3]) -> Self {
        let axes = [Vector3::x(), Vector3::y(), Vector3::z()];
        let bounds = axes
            .iter()
            .zip(low.iter().zip(high))
            .flat_map(|(axis, (low, high))| {
                [
                    HalfSpace {
                        normal: *axis,
                        limit: high,
                    },
                    HalfSpace {
                        normal: -axis,
                        limit: -low,
                    },
                ]
            });
        Space {
            exposure,
            bounds: bounds.filter(|b| b.limit.is_finite()).collect(),
            facing: None,
        }
    }

    /// The same space, counting only for faces that look in one direction.
    pub fn facing(mut self, direction: Vector3) -> Self {
        self.facing = Some(direction);
        self
    }

    /// The same space moved and turned.
    pub fn moved(mut self, by: &Isometry3<f64>) -> Self {
        for bound in &mut self.bounds {
            bound.normal = by * bound.normal;
            bound.limit += bound.normal.dot(&by.translation.vector);
        }
        self.facing = self.facing.map(|direction| by * direction);
        self
    }

    /// Whether a facet within this box cannot look into the space.
    pub(crate) fn is_out_of_sight(&self, normal: &Vector3, low: &[f64; 3], high: &[f64; 3]) -> bool {
        let looks_away = |direction: Vector3| normal.dot(&direction) < std::f64::consts::FRAC_1_SQRT_2;
        self.facing.is_some_and(looks_away)
            || self
                .bounds
                .iter()
                .any(|bound| bound.nearest(low, high) + step_along(bound, normal) >= bound.limit)
    }

    /// Whether nothing within this box can look into the space, in any direction.
    pub(crate) fn is_disjoint_from(&self, low: &[f64; 3], high: &[f64; 3]) -> bool {
        let mut bounds = self.bounds.iter();
        bounds.any(|bound| bound.nearest(low, high) - CONTACT_GAP >= bound.limit)
    }

    /// Whether all of a facet within this box looks into the space, if it does not face away.
    pub(crate) fn is_all_in_sight(&self, normal: &Vector3, low: &[f64; 3], high: &[f64; 3]) -> bool {
        // The farthest corner is the nearest one of the box with its ends swapped.
        let mut bounds = self.bounds.iter();
        bounds.all(|bound| bound.nearest(high, low) + step_along(bound, normal) <= bound.limit)
    }

    /// The part of a region of a plane from which one looks into the space.
    pub(crate) fn seen_from(&self, plane: &Plane, region: &Region) -> Region {
        let normal = plane.normal();
        region.clipped_to(self.bounds.iter().map(|bound| {
            let [a, b] = [bound.normal.dot(&plane.u), bound.normal.dot(&plane.v)];
            let at = bound.normal.dot(&plane.origin.coords) + step_along(bound, &normal);
            [a, b, bound.limit - at]
        }))
    }
}

/// The offset for a face that lies on the boundary of a space: a small step out of its solid decides whether it looks
/// into the space or away. A face that crosses the boundary is divided by it and needs no offset.
fn step_along(bound: &HalfSpace, normal: &Vector3) -> f64 {
    let along = bound.normal.dot(normal);
    if along.abs() > 1.0 - 1e-6 {
        along * CONTACT_GAP
    } else {
        0.0
    }
}
