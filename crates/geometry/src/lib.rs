//! Geometry of case furniture: which faces a piece has, how large each is, what covers it, how it looks.
//!
//! The way of one piece: [`Furniture`] (what the maker measured) is built into an [`Assembly`] of placed
//! [`Part`]s; [`Assembly::surfaces`] finds what lies against what and gives each [`Surface`] with its gross
//! area, its deductions and its net area; [`Drawing`] shows the same surfaces as seen from one side.
//!
//! # Axes
//! x to the right, y from the front to the wall, z up from the floor; metres.
//!
//! Invariant: this crate knows nothing of paint, money, saved documents or browsers.

mod assembly;
mod contact;
mod drawing;
mod face;
mod furniture;
mod part;
mod region;
mod space;
mod surface;

pub use assembly::Assembly;
pub use drawing::{Dimension, Drawing, View, VisibleFace};
pub use face::{Face, Plane, Side};
pub use furniture::{
    BackStyle, BaseStyle, DrawerRow, FieldId, FrontStyle, Furniture, Kind, LengthField, MAX_COLUMNS,
    MAX_ROWS, Measures, Problem, fields,
};
pub use part::{Part, PartId, PartKind};
pub use region::{Point2, Region};
pub use space::{HalfSpace, Sense, Space};
pub use surface::{Deduction, Surface, SurfaceId};

/// A point in the room of the piece, metres.
pub type Point3 = nalgebra::Point3<f64>;
/// A direction in the room of the piece.
pub type Vector3 = nalgebra::Vector3<f64>;

/// How far apart two faces may lie and still count as touching.
///
/// A gap below half a millimetre takes no brush, and tape readings of parts that touch rarely agree to less.
pub const CONTACT_GAP: f64 = 0.000_5;

/// The smallest area that is kept, 0.1 mm2: below it lies only the noise of the arithmetic.
pub const SMALLEST_AREA: f64 = 1e-7;
