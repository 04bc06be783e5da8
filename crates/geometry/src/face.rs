//! Faces of solids: flat regions in planes in the room, one or several to a face.

use crate::bounds::{self, Bounds};
use crate::region::{Point2, Region};
use crate::{Point3, Vector3};

/// The direction that a face of a part faces, seen from the front of the piece, or which part of a shaped solid it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Side {
    /// Toward the person.
    Front,
    /// Toward the wall.
    Back,
    /// To the left hand.
    Left,
    /// To the right hand.
    Right,
    /// Up.
    Top,
    /// Down.
    Bottom,
    /// All around a turned or round part, with its rings and flutes.
    Around,
    /// The profile of a molding.
    Moulded,
    /// The profile of a worked edge, by the edge.
    MouldedFront,
    /// See [`Side::MouldedFront`].
    MouldedBack,
    /// See [`Side::MouldedFront`].
    MouldedLeft,
    /// See [`Side::MouldedFront`].
    MouldedRight,
    /// See [`Side::MouldedFront`].
    MouldedTop,
    /// See [`Side::MouldedFront`].
    MouldedBottom,
    /// The bevels around the field of a raised panel, by their place.
    BevelLeft,
    /// See [`Side::BevelLeft`].
    BevelRight,
    /// See [`Side::BevelLeft`].
    BevelTop,
    /// See [`Side::BevelLeft`].
    BevelBottom,
    /// The flat strip around the bevels of a raised panel.
    Margin,
    /// The underside of an opening that is cut into the foot of a board.
    CutOut,
    /// The edges of holes through a board.
    Opening,
}

impl Side {
    /// Its key in the names of surfaces.
    pub fn word(self) -> &'static str {
        match self {
            Side::Front => "front",
            Side::Back => "back",
            Side::Left => "left",
            Side::Right => "right",
            Side::Top => "top",
            Side::Bottom => "bottom",
            Side::Around => "around",
            Side::Moulded => "moulded",
            Side::MouldedFront => "moulded-front",
            Side::MouldedBack => "moulded-back",
            Side::MouldedLeft => "moulded-left",
            Side::MouldedRight => "moulded-right",
            Side::MouldedTop => "moulded-top",
            Side::MouldedBottom => "moulded-bottom",
            Side::BevelLeft => "bevel-left",
            Side::BevelRight => "bevel-right",
            Side::BevelTop => "bevel-top",
            Side::BevelBottom => "bevel-bottom",
            Side::Margin => "margin",
            Side::CutOut => "cut-out",
            Side::Opening => "opening",
        }
    }

    /// What a maker calls a face of this side; an edge is a narrow face of a board.
    pub(crate) fn label(self, is_edge: bool) -> &'static str {
        match (self, is_edge) {
            (Side::Front, false) => "front face",
            (Side::Front, true) => "front edge",
            (Side::Back, false) => "back face",
            (Side::Back, true) => "back edge",
            (Side::Left, false) => "left face",
            (Side::Left, true) => "left edge",
            (Side::Right, false) => "right face",
            (Side::Right, true) => "right edge",
            (Side::Top, false) => "top face",
            (Side::Top, true) => "top edge",
            (Side::Bottom, false) => "underside",
            (Side::Bottom, true) => "bottom edge",
            (Side::Around, _) => "all around",
            (Side::Moulded, _) => "profile",
            (Side::MouldedFront, _) => "front profile",
            (Side::MouldedBack, _) => "back profile",
            (Side::MouldedLeft, _) => "left profile",
            (Side::MouldedRight, _) => "right profile",
            (Side::MouldedTop, _) => "top profile",
            (Side::MouldedBottom, _) => "bottom profile",
            (Side::BevelLeft, _) => "left bevel",
            (Side::BevelRight, _) => "right bevel",
            (Side::BevelTop, _) => "top bevel",
            (Side::BevelBottom, _) => "bottom bevel",
            (Side::Margin, _) => "flat around the bevels",
            (Side::CutOut, _) => "underside of the cutout",
            (Side::Opening, _) => "edges of the openings",
        }
    }

    /// The side that is nearest to a direction.
    pub(crate) fn looking(direction: &Vector3) -> Side {
        let [x, y, z] = [direction.x, direction.y, direction.z];
        let most = x.abs().max(y.abs()).max(z.abs());
        match () {
            () if z.abs() == most => {
                if z > 0.0 {
                    Side::Top
                } else {
                    Side::Bottom
                }
            }
            () if x.abs() == most => {
                if x > 0.0 {
                    Side::Right
                } else {
                    Side::Left
                }
            }
            () if y > 0.0 => Side::Back,
            () => Side::Front,
        }
    }
}

/// A plane in space with two directions at right angles in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Plane {
    /// The point `(0, 0)` of the plane.
    pub origin: Point3,
    /// The direction of the first coordinate, of length 1.
    pub u: Vector3,
    /// The direction of the second coordinate, of length 1, at right angles to `u`.
    pub v: Vector3,
}

impl Plane {
    /// The unit normal of the face, out of the solid.
    pub fn normal(&self) -> Vector3 {
        self.u.cross(&self.v)
    }

    /// The point in space at a point of the plane.
    pub fn at(&self, point: Point2) -> Point3 {
        self.origin + self.u * point[0] + self.v * point[1]
    }

    /// The projection of a point onto the plane.
    pub fn project(&self, point: &Point3) -> Point2 {
        let from_origin = point - self.origin;
        [from_origin.dot(&self.u), from_origin.dot(&self.v)]
    }

    /// The signed distance of a point in front of the plane.
    pub fn height_of(&self, point: &Point3) -> f64 {
        (point - self.origin).dot(&self.normal())
    }
}

/// A flat region in space.
#[derive(Clone, Debug, PartialEq)]
pub struct Facet {
    /// Where it lies.
    pub plane: Plane,
    /// Its outline and holes, in the coordinates of the plane.
    pub region: Region,
}

impl Facet {
    /// The facet inside a closed line of points in one plane, counter-clockwise as seen from outside the solid.
    ///
    /// `None` where the points enclose no area.
    pub(crate) fn around(points: &[Point3]) -> Option<Facet> {
        let first = points.first()?;
        // The sum over the fan is twice the area along the normal, whatever the shape (Newell's method).
        let area: Vector3 = points
            .iter()
            .zip(points.iter().skip(1))
            .map(|(p, q)| (p - first).cross(&(q - first)))
            .sum();
        let normal = area.try_normalize(1e-14)?;
        let u = points
            .iter()
            .map(|point| point - first)
            .find_map(|edge| edge.try_normalize(1e-9))?;
        let plane = Plane {
            origin: *first,
            u,
            v: normal.cross(&u),
        };
        let region = Region::polygon(points.iter().map(|point| plane.project(point)).collect());
        Some(Facet { plane, region })
    }

    /// The bounding box of the facet: its lowest and its highest corner.
    pub(crate) fn bounds(&self) -> Bounds {
        self.region
            .contours()
            .flatten()
            .fold(bounds::EMPTY, |all, &corner| {
                let point = self.plane.at(corner);
                let point = [point.x, point.y, point.z];
                bounds::union(all, (point, point))
            })
    }
}

/// The form of a face.
#[derive(Clone, Debug, PartialEq)]
pub enum FaceShape {
    /// Flat.
    Flat(Facet),
    /// Folded out of several flat facets, each of which can lie against another part.
    Folded(Vec<Facet>),
    /// Curved. The facets approximate it in drawings; its exact area is known separately, and other parts touch it only
    /// along lines.
    Curved(Vec<Facet>),
}

/// One face of a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Face {
    /// Which way it looks, or which part of a shaped solid it is.
    pub side: Side,
    /// Its form.
    pub patch: FaceShape,
    /// Its exact area over that of its facets: 1 where it is flat, a little more where facets approximate a curve.
    pub stretch: f64,
    /// Profile multiplier: developed girth over flat height for a face with a profile, else 1. The area includes it
    /// already.
    pub multiplier: f64,
    /// Whether it is a narrow face: an edge of a board rather than one of its faces.
    pub is_edge: bool,
}

impl Face {
    /// A flat face.
    pub(crate) fn flat(side: Side, facet: Facet, is_edge: bool) -> Face {
        Face {
            side,
            patch: FaceShape::Flat(facet),
            stretch: 1.0,
            multiplier: 1.0,
            is_edge,
        }
    }

    /// A curved face of known area.
    pub(crate) fn curved(side: Side, facets: Vec<Facet>, area: f64) -> Face {
        let drawn: f64 = facets.iter().map(|facet| facet.region.area()).sum();
        Face {
            side,
            patch: FaceShape::Curved(facets),
            stretch: area / drawn,
            multiplier: 1.0,
            is_edge: false,
        }
    }

    /// A face folded out of flat facets.
    pub(crate) fn folded(side: Side, mut facets: Vec<Facet>) -> Face {
        let patch = match facets.len() {
            1 => FaceShape::Flat(facets.remove(0)),
            _ => FaceShape::Folded(facets),
        };
        Face {
            side,
            patch,
            stretch: 1.0,
            multiplier: 1.0,
            is_edge: false,
        }
    }

    /// The same face with a profile multiplier to show.
    pub(crate) fn with_multiplier(mut self, multiplier: f64) -> Face {
        self.multiplier = multiplier;
        self
    }

    /// The flat pieces that it is made of or drawn with.
    pub fn facets(&self) -> &[Facet] {
        match &self.patch {
            FaceShape::Flat(facet) => std::slice::from_ref(facet),
            FaceShape::Folded(facets) | FaceShape::Curved(facets) => facets,
        }
    }

    pub(crate) fn facets_mut(&mut self) -> &mut [Facet] {
        match &mut self.patch {
            FaceShape::Flat(facet) => std::slice::from_mut(facet),
            FaceShape::Folded(facets) | FaceShape::Curved(facets) => facets,
        }
    }

    /// The developed area, square meters.
    pub fn area(&self) -> f64 {
        self.facets().iter().map(|facet| facet.region.area()).sum::<f64>() * self.stretch
    }
}
