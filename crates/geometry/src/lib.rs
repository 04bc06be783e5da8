//! Geometry of case furniture: the faces of a piece, their areas, what covers them, and drawings of them.
//!
//! A [`Furniture`] (what the maker measured) is built into an [`Assembly`] of placed [`Part`]s. [`Assembly::surfaces`]
//! finds the contacts between them and gives each [`Surface`] its gross area, its deductions and its net area.
//! [`Drawing`] shows the same surfaces as seen from one side.
//!
//! # Axes
//! x points right, y from the front to the wall, z up from the floor, all in meters.
//!
//! Invariant: this crate knows nothing of paint, money, saved documents or browsers.

// A panic kills the page, and a maker may type or load any number. Modules that index lists of their own making in hot
// loops allow it for themselves.
#![cfg_attr(not(test), warn(clippy::indexing_slicing))]

mod arris;
mod assembly;
mod boolean;
mod bounds;
mod contact;
mod corner;
mod drawing;
mod exposure;
mod exposure_source;
mod face;
mod furniture;
mod overlap;
mod part;
mod part_kind;
mod profile;
mod region;
mod solid;
mod sorting;
mod space;
mod surface;
mod zone;

pub use arris::Edges;
pub use assembly::Assembly;
pub use drawing::{Drawing, Shade, View, VisibleFace};
pub use exposure::Setting;
pub use face::{Face, FaceShape, Facet, Plane, Side};
pub use furniture::alteration::{
    Added, AddedShape, Along, Alteration, MAX_CHANGES, MAX_REPEATS, MAX_STEPS, Towards,
};
pub use furniture::{
    Bay, BayPlace, Checked, Construction, CountField, Counts, Dimension, Edge, Edition, FieldId, Fill,
    Furniture, Kind, LengthField, MAX_BAYS, MAX_COLUMNS, MAX_ROWS, MAX_SHELVES, Measures, Notice,
    PlausibleRange, Problem, Row, StandIn, StyleField, StyleOption, Styles, counts, fields, styles,
    surface_words,
};
pub use overlap::Overlap;
pub use part::{Part, PartId};
pub use part_kind::PartKind;
pub use profile::{First, Member, Profile, Shape, multiplier_of};
pub use region::{Point2, Region};
pub use solid::Turning;
pub use space::{Exposure, HalfSpace, Space};
pub use surface::{Deduction, Facets, Orientation, Surface, SurfaceId};
pub use zone::Zone;

/// A point in space, meters.
pub type Point3 = nalgebra::Point3<f64>;
/// A direction in space.
pub type Vector3 = nalgebra::Vector3<f64>;

/// How far apart two faces may be and still count as touching, meters.
///
/// No brush reaches into a gap below half a millimeter, and tape readings of parts that touch rarely agree to less.
pub const CONTACT_GAP: f64 = 0.000_5;

/// The smallest area that counts, 0.1 mm2. Anything smaller is rounding noise.
pub const SMALLEST_AREA: f64 = 1e-7;
