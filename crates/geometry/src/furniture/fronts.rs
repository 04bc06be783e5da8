//! Drawer fronts and doors, the moldings on them, and the drawer boxes behind them.

use super::bay::Fill;
use super::fields::{
    APPLIED_HEIGHT, APPLIED_INSET, APPLIED_WIDTH, BOX_THICKNESS, DOOR_RAIL, DOOR_STILE, FRONT_EDGE_SIZE,
    FRONT_THICKNESS, LIP, PANEL_BEVEL, PANEL_RAISE, PANEL_RECESS, PANEL_THICKNESS, STICKING_WIDTH,
};
use super::layout::{BayLayout, Layout, RowLayout, Span, Unit, length_of};
use super::planted::{self, Window};
use super::styles::{DoorStyle, DrawerBoxes, Edge, FrontStyle};
use super::unit::block;
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;
use crate::profile::Profile;
use crate::solid::{Faces, RaisedPanel, Worked, raised_panel, slab};

/// The clearance of a drawer box at each side, below, above and to the back panel, meters (common practice, no source).
const BOX_CLEAR: [f64; 4] = [0.013, 0.006, 0.019, 0.020];

/// A front: its place, and its row and column in part names.
struct Front<'a> {
    unit: &'a Unit<'a>,
    bay: &'a BayLayout,
    in_row: &'a RowLayout,
    row: usize,
    column: usize,
    x: Span,
    y: Span,
    z: Span,
}

impl Unit<'_> {
    /// Every front with its moldings and its drawer box.
    pub(super) fn front_parts(&self, at: &Layout) -> Vec<Part> {
        let mut parts = Vec::new();
        for bay in &at.bays {
            for (r, row) in bay.rows.iter().enumerate() {
                for (c, x) in row.columns.iter().enumerate() {
                    let front = Front {
                        unit: self,
                        bay,
                        in_row: row,
                        row: r + 1,
                        column: c + 1,
                        x: *x,
                        y: at.front,
                        z: row.front,
                    };
                    match row.fill {
                        Fill::Open => {}
                        Fill::Drawers => {
                            parts.extend(front.slab(PartKind::DrawerFront, PartKind::Tongue));
                            parts.extend(front.drawer_box(at));
                        }
                        Fill::Doors => parts.extend(front.door()),
                    }
                }
            }
        }
        parts
    }

    /// The hollows behind the panels of doors that are not glazed, as spans across, along and up.
    pub(super) fn behind_panels(&self, at: &Layout) -> Vec<[Span; 3]> {
        let metres = |field| self.furniture.length(field).as_metres();
        if !matches!(
            self.furniture.styles.doors,
            DoorStyle::FlatPanel | DoorStyle::RaisedPanel
        ) {
            return vec![];
        }
        let rear = at.front[1];
        let panel = rear - metres(&FRONT_THICKNESS) + metres(&PANEL_RECESS) + metres(&PANEL_THICKNESS);
        let (stile, rail) = (metres(&DOOR_STILE), metres(&DOOR_RAIL));
        let rows = at
            .bays
            .iter()
            .flat_map(|bay| &bay.rows)
            .filter(|row| row.fill == Fill::Doors);
        rows.flat_map(|row| {
            let z = [row.front[0] + rail, row.front[1] - rail];
            row.columns
                .iter()
                .map(move |x| [[x[0] + stile, x[1] - stile], [panel, rear], z])
        })
        .filter(|[_, y, _]| y[1] > y[0])
        .collect()
    }

    /// How far doors reach into the case.
    pub(super) fn doors_rear(&self, at: &Layout) -> f64 {
        match self.furniture.styles.doors {
            DoorStyle::Slab => self.fronts_rear(at),
            _ => at.front[1],
        }
    }

    /// How far fronts of one board reach into the case.
    pub(super) fn fronts_rear(&self, at: &Layout) -> f64 {
        match self.furniture.styles.fronts {
            FrontStyle::Lipped => at.front[0] + self.furniture.length(&FRONT_THICKNESS).as_metres(),
            _ => at.front[1],
        }
    }
}

impl Front<'_> {
    fn metres(&self, field: &super::LengthField) -> f64 {
        self.unit.furniture.length(field).as_metres()
    }

    fn id(&self, kind: PartKind) -> PartId {
        self.unit
            .id(PartId::in_row(kind, self.row, self.column), self.bay.number)
    }

    /// A front of one board, with its lip and its moldings.
    fn slab(&self, kind: PartKind, tongue: PartKind) -> Vec<Part> {
        let styles = &self.unit.furniture.styles;
        let mut parts = vec![self.worked(kind)];
        if styles.fronts == FrontStyle::Lipped {
            let lip = self.metres(&LIP);
            let rear = self.y[0] + self.metres(&FRONT_THICKNESS);
            let within = |span: Span| [span[0] + lip, span[1] - lip];
            parts.push(block(
                self.id(tongue),
                within(self.x),
                [self.y[1], rear],
                within(self.z),
            ));
        }
        if let Edge::Shaped(shape) = styles.applied {
            let inset = self.metres(&APPLIED_INSET);
            let window = Window {
                x: [self.x[0] + inset, self.x[1] - inset],
                z: [self.z[0] + inset, self.z[1] - inset],
                ground: self.y[0],
            };
            let size = [self.metres(&APPLIED_WIDTH), self.metres(&APPLIED_HEIGHT)];
            parts.extend(planted::applied(&window, shape, size, |kind| self.id(kind)));
        }
        parts
    }

    fn worked(&self, kind: PartKind) -> Part {
        let (low, high) = (
            [self.x[0], self.y[0], self.z[0]],
            [self.x[1], self.y[1], self.z[1]],
        );
        match self.unit.furniture.styles.front_edge.shape() {
            None => Part::block(self.id(kind), low, high),
            Some(shape) => {
                let size = self.metres(&FRONT_EDGE_SIZE);
                let worked = Worked {
                    profile: &Profile::standard(shape, size, size),
                    edges: [true; 4],
                };
                slab(self.id(kind), low, high, Faces::Front, &worked)
            }
        }
    }

    fn door(&self) -> Vec<Part> {
        let style = self.unit.furniture.styles.doors;
        if style == DoorStyle::Slab {
            return self.slab(PartKind::Door, PartKind::DoorTongue);
        }
        // A frame-and-panel door has no lip: all of it is in front of the case.
        let y = [self.y[1] - self.metres(&FRONT_THICKNESS), self.y[1]];
        let (stile, rail) = (self.metres(&DOOR_STILE), self.metres(&DOOR_RAIL));
        let inner = [self.x[0] + stile, self.x[1] - stile];
        let light = [self.z[0] + rail, self.z[1] - rail];
        let mut parts = vec![
            block(self.id(PartKind::DoorStileLeft), [self.x[0], inner[0]], y, self.z),
            block(
                self.id(PartKind::DoorStileRight),
                [inner[1], self.x[1]],
                y,
                self.z,
            ),
            block(self.id(PartKind::DoorRailTop), inner, y, [light[1], self.z[1]]),
            block(self.id(PartKind::DoorRailBottom), inner, y, [self.z[0], light[0]]),
        ];
        parts.extend(self.panel(style, inner, y[0], light));
        parts
    }

    fn panel(&self, style: DoorStyle, x: Span, front: f64, z: Span) -> Vec<Part> {
        let recess = self.metres(&PANEL_RECESS);
        let ground = front + recess;
        let y = [ground, ground + self.metres(&PANEL_THICKNESS)];
        let sticking = self.unit.furniture.styles.sticking.shape();
        let width = self.metres(&STICKING_WIDTH);
        let panel = match style {
            DoorStyle::Glazed => block(self.id(PartKind::DoorGlass), x, y, z),
            DoorStyle::RaisedPanel => raised_panel(
                self.id(PartKind::DoorPanel),
                &RaisedPanel {
                    low: [x[0], y[0], z[0]],
                    high: [x[1], y[1], z[1]],
                    margin: if sticking.is_some() { width } else { 0.0 },
                    bevel: self.metres(&PANEL_BEVEL),
                    raise: self.metres(&PANEL_RAISE),
                },
            ),
            DoorStyle::FlatPanel | DoorStyle::Slab => block(self.id(PartKind::DoorPanel), x, y, z),
        };
        let mut parts = vec![panel];
        if let Some(shape) = sticking {
            let window = Window { x, z, ground };
            parts.extend(planted::sticking(&window, shape, [width, recess], |kind| {
                self.id(kind)
            }));
        }
        parts
    }

    fn drawer_box(&self, at: &Layout) -> Vec<Part> {
        if self.unit.furniture.styles.drawer_boxes == DrawerBoxes::Hidden {
            return vec![];
        }
        let [x, y, z] = self.box_room(at);
        let k = self.metres(&BOX_THICKNESS);
        let inner = [x[0] + k, x[1] - k];
        vec![
            block(self.id(PartKind::BoxLeft), [x[0], inner[0]], y, z),
            block(self.id(PartKind::BoxRight), [inner[1], x[1]], y, z),
            block(self.id(PartKind::BoxBack), inner, [y[1] - k, y[1]], z),
            block(
                self.id(PartKind::BoxBottom),
                inner,
                [y[0], y[1] - k],
                [z[0], z[0] + k],
            ),
        ]
    }

    fn box_room(&self, at: &Layout) -> [Span; 3] {
        let dividers = &self.in_row.dividers;
        let half = if at.members.has_frame {
            at.members.column
        } else {
            at.members.board
        } / 2.0;
        let clear = if at.members.has_frame {
            self.bay.clear
        } else {
            self.bay.between
        };
        let left = self.column.checked_sub(2).and_then(|left| dividers.get(left));
        let left = left.map_or(clear[0], |middle| middle + half);
        let right = self.column.checked_sub(1).and_then(|right| dividers.get(right));
        let right = right.map_or(clear[1], |middle| middle - half);
        let [aside, below, above, behind] = BOX_CLEAR;
        [
            [left + aside, right - aside],
            [self.unit.fronts_rear(at), at.back[0] - behind],
            [self.in_row.opening[0] + below, self.in_row.opening[1] - above],
        ]
    }
}

/// The smallest clear size inside any drawer box, meters.
pub(super) fn least_box_room(unit: &Unit, at: &Layout) -> f64 {
    let k = unit.furniture.length(&BOX_THICKNESS).as_metres();
    let mut least = f64::INFINITY;
    for bay in &at.bays {
        for (r, row) in bay
            .rows
            .iter()
            .enumerate()
            .filter(|(_, row)| row.fill == Fill::Drawers)
        {
            for (c, x) in row.columns.iter().enumerate() {
                let front = Front {
                    unit,
                    bay,
                    in_row: row,
                    row: r + 1,
                    column: c + 1,
                    x: *x,
                    y: at.front,
                    z: row.front,
                };
                let [x, y, z] = front.box_room(at);
                least = least
                    .min(length_of(x) - 2.0 * k)
                    .min(length_of(y) - k)
                    .min(length_of(z) - k);
            }
        }
    }
    least
}
