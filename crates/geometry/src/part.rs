//! Parts of a piece: solids placed in the room, with names that stay when the piece changes size.

use std::fmt;

use nalgebra::Isometry3;

use crate::face::{Face, Plane, Side};
use crate::region::Region;
use crate::{Point3, Vector3};

/// What a part of the piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum PartKind {
    /// The top board.
    Top,
    /// The side board at the left hand.
    LeftSide,
    /// The side board at the right hand.
    RightSide,
    /// The bottom board of the carcass.
    Bottom,
    /// The back panel.
    Back,
    /// A rail under the top: the first is in front, the second at the back.
    TopRail,
    /// A rail between two rows of drawers.
    Rail,
    /// An upright between two drawers of a row.
    Divider,
    /// A drawer front.
    DrawerFront,
    /// The front board of the plinth.
    PlinthFront,
    /// A side board of the plinth: the first is at the left.
    PlinthSide,
    /// The back board of the plinth.
    PlinthBack,
    /// A leg: front left, front right, back left, back right.
    Leg,
    /// A board on its own.
    Board,
}

impl PartKind {
    fn key(self) -> &'static str {
        match self {
            PartKind::Top => "top",
            PartKind::LeftSide => "left-side",
            PartKind::RightSide => "right-side",
            PartKind::Bottom => "bottom",
            PartKind::Back => "back",
            PartKind::TopRail => "top-rail",
            PartKind::Rail => "rail",
            PartKind::Divider => "divider",
            PartKind::DrawerFront => "drawer-front",
            PartKind::PlinthFront => "plinth-front",
            PartKind::PlinthSide => "plinth-side",
            PartKind::PlinthBack => "plinth-back",
            PartKind::Leg => "leg",
            PartKind::Board => "board",
        }
    }
}

/// The name of a part within its piece. It depends on what the part is and where it stands in its row, never
/// on a dimension, so a choice made for a part stays with it when the piece is measured again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct PartId {
    /// What the part is.
    pub kind: PartKind,
    /// The row from the top, or the number among its like; from 1, or 0 where there is only one.
    pub row: u16,
    /// The place in the row from the left; from 1, or 0 where there is only one.
    pub column: u16,
}

impl PartId {
    /// The only part of its kind.
    pub fn only(kind: PartKind) -> Self {
        PartId {
            kind,
            row: 0,
            column: 0,
        }
    }

    /// The part with this number among its like, from 1.
    pub fn nth(kind: PartKind, number: usize) -> Self {
        PartId {
            kind,
            row: number as u16,
            column: 0,
        }
    }

    /// The part in a row (from the top) and column (from the left), both from 1.
    pub fn in_row(kind: PartKind, row: usize, column: usize) -> Self {
        PartId {
            kind,
            row: row as u16,
            column: column as u16,
        }
    }

    /// What a maker calls the part.
    pub fn label(self) -> String {
        let PartId { kind, row, column } = self;
        let corner = |number| match number {
            1 => "front left",
            2 => "front right",
            3 => "back left",
            _ => "back right",
        };
        match kind {
            PartKind::Top => "Top".into(),
            PartKind::LeftSide => "Left side".into(),
            PartKind::RightSide => "Right side".into(),
            PartKind::Bottom => "Bottom board".into(),
            PartKind::Back => "Back panel".into(),
            PartKind::TopRail => if row == 1 {
                "Top rail, front"
            } else {
                "Top rail, back"
            }
            .into(),
            PartKind::Rail => format!("Rail under row {row}"),
            PartKind::Divider => format!("Divider {column}, row {row}"),
            PartKind::DrawerFront => format!("Drawer {row}.{column}"),
            PartKind::PlinthFront => "Plinth front".into(),
            PartKind::PlinthSide => if row == 1 {
                "Plinth, left side"
            } else {
                "Plinth, right side"
            }
            .into(),
            PartKind::PlinthBack => "Plinth back".into(),
            PartKind::Leg => format!("Leg, {}", corner(row)),
            PartKind::Board => format!("Board {row}"),
        }
    }
}

impl fmt::Display for PartId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.row, self.column) {
            (0, _) => f.write_str(self.kind.key()),
            (row, 0) => write!(f, "{}-{row}", self.kind.key()),
            (row, column) => write!(f, "{}-{row}-{column}", self.kind.key()),
        }
    }
}

/// A solid part, placed in the room.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its name within the piece.
    pub id: PartId,
    /// Its faces; together they close the solid.
    pub faces: Vec<Face>,
}

impl Part {
    /// An upright block between two corners, `low` in front, left and below.
    ///
    /// # Units
    /// Metres; the axes are those of the crate.
    ///
    /// # Example
    /// ```
    /// use geometry::{Part, PartId, PartKind};
    /// let board = Part::block(PartId::nth(PartKind::Board, 1), [0.0; 3], [0.6, 0.019, 0.2]);
    /// let area: f64 = board.faces.iter().map(|face| face.region.area()).sum();
    /// assert!((area - 2.0 * (0.6 * 0.019 + 0.6 * 0.2 + 0.019 * 0.2)).abs() < 1e-12);
    /// ```
    pub fn block(id: PartId, low: [f64; 3], high: [f64; 3]) -> Self {
        let size = [high[0] - low[0], high[1] - low[1], high[2] - low[2]];
        let thinnest = size[0].min(size[1]).min(size[2]);
        let (x, y, z) = (Vector3::x(), Vector3::y(), Vector3::z());
        // Each face as its lower left corner seen from outside, the direction to its right, and its height.
        let face =
            |side, corner: [f64; 3], u: Vector3, width: f64, v: Vector3, height: f64, across: f64| Face {
                side,
                plane: Plane {
                    origin: Point3::from(corner),
                    u,
                    v,
                },
                region: Region::rectangle(width, height),
                // The two faces across the thinnest direction are faces of the board, the other four its edges.
                is_edge: across > thinnest,
            };
        let [w, d, h] = size;
        Part {
            id,
            faces: vec![
                face(Side::Front, low, x, w, z, h, d),
                face(Side::Back, [high[0], high[1], low[2]], -x, w, z, h, d),
                face(Side::Left, [low[0], high[1], low[2]], -y, d, z, h, w),
                face(Side::Right, [high[0], low[1], low[2]], y, d, z, h, w),
                face(Side::Top, [low[0], low[1], high[2]], x, w, y, d, h),
                face(Side::Bottom, [low[0], high[1], low[2]], x, w, -y, d, h),
            ],
        }
    }

    /// The same part moved and turned.
    pub fn moved(mut self, by: &Isometry3<f64>) -> Self {
        for face in &mut self.faces {
            let plane = &mut face.plane;
            plane.origin = by * plane.origin;
            plane.u = by * plane.u;
            plane.v = by * plane.v;
        }
        self
    }
}
