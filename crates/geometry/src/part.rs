//! Parts of a piece: solids placed in the room, with names that stay when the piece changes size.

use std::fmt;

use nalgebra::Isometry3;

use crate::Vector3;
use crate::bounds;
use crate::face::{Face, Facet, Plane, Side};
use crate::part_kind::PartKind;
use crate::region::Region;
use crate::{Point3, SMALLEST_AREA};

/// The name of a part within its piece. It depends on what the part is and where it stands in its row, never
/// on a dimension, so a choice made for a part stays with it when the piece is measured again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct PartId {
    /// Whether it belongs to the upper of two cases.
    pub upper: bool,
    /// The bay or pedestal from the left; from 1.
    pub bay: u8,
    /// What the part is.
    pub kind: PartKind,
    /// The row from the top, or the number among its like; from 1, or 0 where there is only one.
    pub row: u16,
    /// The place in the row from the left; from 1, or 0 where there is only one.
    pub column: u16,
    /// Which of the repeats of a part it is; 1 is the part itself.
    pub repeat: u16,
}

impl PartId {
    /// The only part of its kind.
    pub fn only(kind: PartKind) -> Self {
        PartId::in_row(kind, 0, 0)
    }

    /// The part with this number among its like, from 1.
    pub fn nth(kind: PartKind, number: usize) -> Self {
        PartId::in_row(kind, number, 0)
    }

    /// The part in a row (from the top) and column (from the left), both from 1.
    pub fn in_row(kind: PartKind, row: usize, column: usize) -> Self {
        PartId {
            upper: false,
            bay: 1,
            kind,
            row: row as u16,
            column: column as u16,
            repeat: 1,
        }
    }

    /// The same part in a bay or pedestal, from 1.
    pub fn in_bay(self, bay: usize) -> Self {
        PartId {
            bay: bay as u8,
            ..self
        }
    }

    /// The same part in the upper case, if `upper`.
    pub fn in_upper(self, upper: bool) -> Self {
        PartId { upper, ..self }
    }

    /// A repeat of the part; the part itself is the first.
    pub fn repeated(self, number: usize) -> Self {
        PartId {
            repeat: number as u16,
            ..self
        }
    }

    /// What a maker calls the part.
    pub fn label(self) -> String {
        let mut label = String::new();
        if self.upper {
            label.push_str("Upper case: ");
        }
        if self.bay > 1 {
            label.push_str(&format!("Column {}: ", self.bay));
        }
        self.kind.write_label(self.row, self.column, &mut label);
        if self.repeat > 1 {
            label.push_str(&format!(", repeat {}", self.repeat));
        }
        label
    }
}

impl fmt::Display for PartId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.upper {
            f.write_str("upper-")?;
        }
        if self.bay > 1 {
            write!(f, "b{}-", self.bay)?;
        }
        f.write_str(self.kind.key())?;
        if self.row > 0 {
            write!(f, "-{}", self.row)?;
        }
        if self.column > 0 {
            write!(f, "-{}", self.column)?;
        }
        if self.repeat > 1 {
            write!(f, "~{}", self.repeat)?;
        }
        Ok(())
    }
}

/// A solid part, placed in the room.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its name within the piece.
    pub id: PartId,
    /// Its faces; together they close the solid.
    pub faces: Vec<Face>,
    /// Whether it was added without a place. It is drawn beside the piece and touches nothing.
    pub is_loose: bool,
    /// The sides that parts of its kind are glued with, whatever is beside it.
    pub glued: &'static [Side],
}

impl Part {
    /// An upright block between two corners, `low` in front, left and below.
    ///
    /// # Units
    /// Meters; the axes are those of the crate.
    ///
    /// # Example
    /// ```
    /// use geometry::{Part, PartId, PartKind};
    /// let board = Part::block(PartId::nth(PartKind::Board, 1), [0.0; 3], [0.6, 0.019, 0.2]);
    /// let area: f64 = board.faces.iter().map(|face| face.area()).sum();
    /// assert!((area - 2.0 * (0.6 * 0.019 + 0.6 * 0.2 + 0.019 * 0.2)).abs() < 1e-12);
    /// ```
    pub fn block(id: PartId, low: [f64; 3], high: [f64; 3]) -> Self {
        let size = [high[0] - low[0], high[1] - low[1], high[2] - low[2]];
        let thinnest = size[0].min(size[1]).min(size[2]);
        let (x, y, z) = (Vector3::x(), Vector3::y(), Vector3::z());
        // Each face as its lower left corner seen from outside, the direction to its right, and its height.
        let face = |side, corner: [f64; 3], u: Vector3, width: f64, v: Vector3, height: f64, across: f64| {
            let plane = Plane {
                origin: Point3::from(corner),
                u,
                v,
            };
            let region = Region::rectangle(width, height);
            // The two faces across the thinnest direction are faces of the board, the other four its edges. A square leg
            // has four faces, wherever it stands.
            Face::flat(side, Facet { plane, region }, across > thinnest * (1.0 + 1e-9))
        };
        let [w, d, h] = size;
        Part {
            id,
            is_loose: false,
            glued: &[],
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

    /// A part of faces that close a solid; faces without area are left out.
    pub(crate) fn of(id: PartId, faces: impl IntoIterator<Item = Face>) -> Self {
        Part {
            id,
            is_loose: false,
            glued: &[],
            faces: faces
                .into_iter()
                .filter(|face| face.area() > SMALLEST_AREA)
                .collect(),
        }
    }

    /// The same part moved and turned.
    pub fn moved(mut self, by: &Isometry3<f64>) -> Self {
        for facet in self.faces.iter_mut().flat_map(Face::facets_mut) {
            let plane = &mut facet.plane;
            plane.origin = by * plane.origin;
            plane.u = by * plane.u;
            plane.v = by * plane.v;
        }
        self
    }

    /// Whether it is a plain upright block.
    pub(crate) fn is_block(&self) -> bool {
        let sides = [
            Side::Front,
            Side::Back,
            Side::Left,
            Side::Right,
            Side::Top,
            Side::Bottom,
        ];
        self.faces.len() == 6
            && self.faces.iter().all(|face| {
                let [facet] = face.facets() else {
                    return false;
                };
                sides.contains(&face.side)
                    && facet.region.is_upright_rectangle()
                    && facet.plane.normal().iter().any(|along| along.abs() > 1.0 - 1e-12)
            })
    }

    /// The bounding box of the part: its lowest and its highest corner.
    pub fn bounds(&self) -> ([f64; 3], [f64; 3]) {
        let facets = self.faces.iter().flat_map(Face::facets);
        facets.map(Facet::bounds).fold(bounds::EMPTY, bounds::union)
    }
}
