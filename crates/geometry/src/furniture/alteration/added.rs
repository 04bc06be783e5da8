//! Parts that the maker adds.

use units::Length;

use crate::face::Side;
use crate::furniture::fields::{
    FLUTE_RADIUS, LengthField, Measures, PART_DEPTH, PART_DIAMETER, PART_FOOT, PART_GIRTH, PART_HEIGHT,
    PART_LENGTH, PART_WIDTH,
};
use crate::profile::Shape;

/// The most members of a composed molding, and the most points of a turning.
pub const MAX_STEPS: usize = 24;

/// A part that the maker adds.
#[derive(Clone, Debug, PartialEq)]
pub struct Added {
    /// Its number among the added parts of the piece. It stays the same when others are removed.
    pub number: usize,
    /// What it is.
    pub shape: AddedShape,
    /// Its measurements.
    pub measures: Measures,
    /// The members of a molding from its foot up, each with how far it comes out and how high it is.
    pub members: Vec<(Shape, Length, Length)>,
    /// The points of a turning from the foot up: height above the foot, and diameter.
    pub turning: Vec<(Length, Length)>,
    /// How many flutes a column has.
    pub flutes: u32,
    /// Where it begins: from the left, from the front (to its back if it is planted on something) and from the floor.
    /// With `None` it stands beside the piece and touches nothing.
    pub place: Option<[Length; 3]>,
}

/// The shape of an added part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum AddedShape {
    /// A board: width, depth, height.
    Board,
    /// One face only: width and height.
    Panel,
    /// A bar of any section: girth and length, without its ends.
    Bar,
    /// A straight molding: its members and its length; its back is to the wall.
    Moulding,
    /// A turned part: its points, or a plain taper between two diameters.
    Turned,
    /// A square leg tapered on four sides.
    Tapered,
    /// A round column, plain or fluted.
    Column,
    /// A half round column, its flat side to the wall.
    HalfColumn,
}

impl AddedShape {
    /// Every shape.
    pub const ALL: [AddedShape; 8] = [
        AddedShape::Board,
        AddedShape::Panel,
        AddedShape::Bar,
        AddedShape::Moulding,
        AddedShape::Turned,
        AddedShape::Tapered,
        AddedShape::Column,
        AddedShape::HalfColumn,
    ];

    /// Its name in saved files; it never changes.
    pub fn key(self) -> &'static str {
        match self {
            AddedShape::Board => "board",
            AddedShape::Panel => "panel",
            AddedShape::Bar => "bar",
            AddedShape::Moulding => "moulding",
            AddedShape::Turned => "turned",
            AddedShape::Tapered => "tapered",
            AddedShape::Column => "column",
            AddedShape::HalfColumn => "half-column",
        }
    }

    /// What a maker calls it.
    pub fn label(self) -> &'static str {
        match self {
            AddedShape::Board => "Board",
            AddedShape::Panel => "Single face",
            AddedShape::Bar => "Bar, by girth",
            AddedShape::Moulding => "Molding",
            AddedShape::Turned => "Turned part",
            AddedShape::Tapered => "Tapered leg",
            AddedShape::Column => "Round column",
            AddedShape::HalfColumn => "Half column",
        }
    }

    /// The sides that a part of this shape is glued with if nobody says on what: the back of a molding, and its ends,
    /// where it meets the next one; the flat side of a half column.
    pub(super) fn glued(self) -> &'static [Side] {
        match self {
            AddedShape::Moulding => &[Side::Back, Side::Left, Side::Right],
            AddedShape::HalfColumn => &[Side::Back],
            _ => &[],
        }
    }

    /// Its measurements, each with its usual size in millimeters (common practice, no source).
    pub fn fields(self) -> &'static [(&'static LengthField, f64)] {
        match self {
            AddedShape::Board => &[(&PART_WIDTH, 400.0), (&PART_DEPTH, 300.0), (&PART_HEIGHT, 19.0)],
            AddedShape::Panel => &[(&PART_WIDTH, 400.0), (&PART_HEIGHT, 300.0)],
            AddedShape::Bar => &[(&PART_GIRTH, 100.0), (&PART_LENGTH, 600.0)],
            AddedShape::Moulding => &[(&PART_LENGTH, 1000.0)],
            AddedShape::Turned => &[(&PART_HEIGHT, 400.0), (&PART_DIAMETER, 50.0), (&PART_FOOT, 25.0)],
            AddedShape::Tapered => &[(&PART_HEIGHT, 400.0), (&PART_WIDTH, 40.0), (&PART_FOOT, 22.0)],
            AddedShape::Column | AddedShape::HalfColumn => &[
                (&PART_HEIGHT, 600.0),
                (&PART_DIAMETER, 50.0),
                (&FLUTE_RADIUS, 2.0),
            ],
        }
    }
}

impl Added {
    /// A part of this shape of which nothing was measured yet.
    pub fn usual(number: usize, shape: AddedShape) -> Self {
        Added {
            number,
            shape,
            measures: Measures::default(),
            members: match shape {
                AddedShape::Moulding => {
                    vec![(Shape::Ogee, Length::millimetres(20.0), Length::millimetres(30.0))]
                }
                _ => vec![],
            },
            turning: vec![],
            flutes: 0,
            place: None,
        }
    }

    /// The measured length, or the usual one.
    pub fn length(&self, field: &LengthField) -> Length {
        let usual = self
            .shape
            .fields()
            .iter()
            .find(|(known, _)| known.key == field.key);
        self.measures
            .get(field)
            .unwrap_or_else(|| Length::millimetres(usual.map_or(0.0, |(_, mm)| *mm)))
    }

    pub(super) fn metres(&self, field: &LengthField) -> f64 {
        self.length(field).as_metres()
    }
}
