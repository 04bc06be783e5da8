//! The layout of a case: where its boards and fronts are, worked out from the measurements.

use std::iter;

use units::Length;

use super::Furniture;
use super::bay::{Bay, Fill, Row};
use super::fields::{
    BACK_RECESS, BACK_THICKNESS, BOARD, BayPlace, CROWN_HEIGHT, FRAME, FRAME_RAIL, FRAME_THICKNESS,
    FRONT_THICKNESS, GAP, LIP_THICKNESS, STILE,
};
use super::styles::{BackStyle, DoorStyle, Edge, FaceFrame, FrontStyle};

/// How far measured fronts may miss the room for them, as a share of it, and still pass for errors of the tape.
///
/// A sixteenth of an inch for each reading would be usual; 2 % of the height covers that on any piece.
pub(super) const ROW_SLIP: f64 = 0.02;

/// The depth of a rail between drawers, meters (common practice, no source). Nothing that is painted by default depends
/// on it.
const RAIL_DEPTH: f64 = 0.06;

/// A span from a low to a high coordinate, meters.
pub(super) type Span = [f64; 2];

pub(super) fn length_of(span: Span) -> f64 {
    span[1] - span[0]
}

/// One case: a carcass with what is in it, without top and base.
pub(super) struct Unit<'a> {
    pub(super) furniture: &'a Furniture,
    /// Whether it is the upper of two cases.
    pub(super) upper: bool,
    /// Which bay the first one is: 1, or the number of the pedestal.
    pub(super) first_bay: usize,
    pub(super) bays: &'a [Bay],
    /// From the outside of the left side to the outside of the right.
    pub(super) x: Span,
    /// From the front edges to the rear.
    pub(super) y: Span,
    /// From the foot of the sides to their head.
    pub(super) z: Span,
    /// Whether a crown runs around its head.
    pub(super) has_crown: bool,
}

/// The widths of the members around and between fronts: boards, or members of a face frame.
pub(super) struct Members {
    pub(super) board: f64,
    /// Depth of the face frame; 0 without one.
    pub(super) frame_depth: f64,
    pub(super) has_frame: bool,
    /// At each side.
    pub(super) side: f64,
    /// At the foot.
    pub(super) below: f64,
    /// At the head, with the crown on it.
    pub(super) above: f64,
    /// Between two rows.
    pub(super) row: f64,
    /// Between two bays.
    pub(super) bay: f64,
    /// Between two columns.
    pub(super) column: f64,
    /// Height of the crown; 0 without one.
    pub(super) crown: f64,
}

/// The layout of a unit.
pub(super) struct Layout {
    pub(super) members: Members,
    /// The rear end of the boards that the back panel does not cover.
    pub(super) boards_rear: f64,
    /// The back panel from its front to its rear.
    pub(super) back: Span,
    /// The fronts from their front to their rear.
    pub(super) front: Span,
    /// How deep the rails and dividers in front reach.
    pub(super) rail_depth: f64,
    /// How deep the rail at the back is.
    pub(super) rear_rail_depth: f64,
    /// Whether one board lies under the top instead of two rails.
    pub(super) whole_top: bool,
    pub(super) bays: Vec<BayLayout>,
}

/// The layout of a bay.
pub(super) struct BayLayout {
    /// Its number in part names.
    pub(super) number: usize,
    /// Between the carcass boards to its left and right.
    pub(super) between: Span,
    /// Between the stiles of the face frame; without one, the same.
    pub(super) clear: Span,
    /// From the middle of the upright on its left to the middle of the one on its right; at a side, to the inner face.
    pub(super) reach: Span,
    /// The middle of the partition to its right, if there is one.
    pub(super) partition: Option<f64>,
    pub(super) rows: Vec<RowLayout>,
}

/// The layout of a row.
pub(super) struct RowLayout {
    pub(super) fill: Fill,
    pub(super) shelves: usize,
    /// Whether its compartment is open to view.
    pub(super) open_to_view: bool,
    /// The fronts from below to above.
    pub(super) front: Span,
    /// The opening between the members above and below.
    pub(super) opening: Span,
    /// Each front from left to right.
    pub(super) columns: Vec<Span>,
    /// The middles of the members between its columns. There are none between doors.
    pub(super) dividers: Vec<f64>,
    /// Whether the member below it is a full-depth board.
    pub(super) board_below: bool,
}

impl RowLayout {
    /// The clear spans from left to right between two ends and the dividers, which extend `half` to either side of
    /// their middle.
    pub(super) fn between_dividers(&self, ends: Span, half: f64) -> impl Iterator<Item = Span> {
        let dividers = self.dividers.iter();
        let lows = iter::once(ends[0]).chain(dividers.clone().map(move |middle| middle + half));
        let highs = dividers.map(move |middle| middle - half).chain([ends[1]]);
        lows.zip(highs).map(|(low, high)| [low, high])
    }
}

impl Members {
    pub(super) fn of(furniture: &Furniture, has_crown: bool) -> Self {
        let metres = |field| furniture.length(field).as_metres();
        let board = metres(&BOARD);
        let has_frame = furniture.styles.face_frame == FaceFrame::Frame;
        let (stile, rail, frame_depth) = if has_frame {
            (metres(&STILE), metres(&FRAME_RAIL), metres(&FRAME_THICKNESS))
        } else {
            (board, board, 0.0)
        };
        let crown = if has_crown && furniture.styles.crown != Edge::Plain {
            metres(&CROWN_HEIGHT)
        } else {
            0.0
        };
        Members {
            board,
            frame_depth,
            has_frame,
            side: stile,
            below: rail,
            above: rail + crown,
            row: rail,
            bay: stile,
            column: rail,
            crown,
        }
    }
}

/// How fronts share a length: the allowances at its ends and between them.
#[derive(Clone, Copy)]
struct Spacing {
    /// How much more room an opening at the first or last member takes than its clear size.
    at_low: f64,
    at_high: f64,
    /// The same at a member between two fronts.
    inner: f64,
    between: f64,
}

impl Unit<'_> {
    fn metres(&self, field: &super::LengthField) -> f64 {
        self.furniture.length(field).as_metres()
    }

    fn is_inset(&self) -> bool {
        self.furniture.styles.fronts == FrontStyle::Inset
    }

    /// The place of a bay by its index.
    pub(super) fn place(&self, bay: usize) -> BayPlace {
        BayPlace {
            upper: self.upper,
            bay: self.first_bay + bay,
        }
    }

    /// The room for all fronts: horizontally and vertically.
    pub(super) fn room(&self, members: &Members) -> [Span; 2] {
        let (frame, gap) = (self.metres(&FRAME), self.metres(&GAP));
        let [side, below, above] = if self.is_inset() {
            [members.side + gap, members.below + gap, members.above + gap]
        } else {
            [frame, frame, frame + members.crown]
        };
        [
            [self.x[0] + side, self.x[1] - side],
            [self.z[0] + below, self.z[1] - above],
        ]
    }

    fn across(&self, members: &Members) -> Spacing {
        let (frame, gap) = (self.metres(&FRAME), self.metres(&GAP));
        if self.is_inset() {
            return Spacing {
                at_low: -gap,
                at_high: -gap,
                inner: -gap,
                between: members.bay + 2.0 * gap,
            };
        }
        Spacing {
            at_low: members.side - frame,
            at_high: members.side - frame,
            inner: (members.bay - gap) / 2.0,
            between: gap,
        }
    }

    fn upright(&self, members: &Members) -> Spacing {
        let (frame, gap) = (self.metres(&FRAME), self.metres(&GAP));
        if self.is_inset() {
            return Spacing {
                at_low: -gap,
                at_high: -gap,
                inner: -gap,
                between: members.row + 2.0 * gap,
            };
        }
        Spacing {
            at_low: members.below - frame,
            at_high: members.above - members.crown - frame,
            inner: (members.row - gap) / 2.0,
            between: gap,
        }
    }

    /// Between two fronts of a row.
    pub(super) fn between_columns(&self, members: &Members, fill: Fill) -> f64 {
        let gap = self.metres(&GAP);
        if self.is_inset() && fill != Fill::Doors {
            members.column + 2.0 * gap
        } else {
            gap
        }
    }

    /// The width that each bay takes, `None` if not measured, and the room for all.
    pub(super) fn bay_claims(&self, members: &Members) -> (Vec<Option<f64>>, f64) {
        let spacing = self.across(members);
        let clear = self.bays.iter().map(|bay| bay.width.map(Length::as_metres));
        let claims = spacing.claims(clear.map(|width| (width, true)));
        let [room, _] = self.room(members);
        (claims, spacing.room(room, self.bays.len()))
    }

    /// The height that each row takes, from the top, `None` if not measured, and the room for all.
    pub(super) fn row_claims(&self, members: &Members, rows: &[Row]) -> (Vec<Option<f64>>, f64) {
        let spacing = self.upright(members);
        let from_below = rows
            .iter()
            .rev()
            .map(|row| (row.height.map(Length::as_metres), row.fill == Fill::Open));
        let mut claims = spacing.claims(from_below);
        claims.reverse();
        let [_, room] = self.room(members);
        (claims, spacing.room(room, rows.len()))
    }

    /// The layout. The measurements must have passed the check.
    pub(super) fn layout(&self) -> Layout {
        let members = Members::of(self.furniture, self.has_crown);
        let [y0, y1] = self.y;
        let thick = self.metres(&BACK_THICKNESS);
        let (back, boards_rear) = match self.furniture.styles.back {
            BackStyle::None => ([y1, y1], y1),
            BackStyle::Flush => ([y1 - thick, y1], y1 - thick),
            BackStyle::Recessed => {
                let rear = y1 - self.metres(&BACK_RECESS);
                ([rear - thick, rear], y1)
            }
        };
        let front = self.fronts();
        let reach = RAIL_DEPTH.min((back[0] - y0) / 3.0);
        // A divider shallower than an inset front would float behind it.
        let rail_depth = if self.is_inset() {
            reach.max(length_of(front))
        } else {
            reach
        };
        let bays = self.bay_layouts(&members);
        let first_rows = bays.iter().filter_map(|bay| bay.rows.first());
        Layout {
            whole_top: first_rows.clone().any(|row| row.open_to_view),
            rear_rail_depth: reach.min(back[0] - y0 - rail_depth.max(members.frame_depth)),
            members,
            boards_rear,
            back,
            front,
            rail_depth,
            bays,
        }
    }

    /// The fronts from their front to their rear, without the part behind a lip.
    fn fronts(&self) -> Span {
        let (y0, thick) = (self.y[0], self.metres(&FRONT_THICKNESS));
        match self.furniture.styles.fronts {
            FrontStyle::Overlay => [y0 - thick, y0],
            FrontStyle::Inset => [y0, y0 + thick],
            FrontStyle::Lipped => [y0 - self.metres(&LIP_THICKNESS), y0],
        }
    }

    fn bay_layouts(&self, members: &Members) -> Vec<BayLayout> {
        let (claims, for_all) = self.bay_claims(members);
        let [room, _] = self.room(members);
        let spans = distributed(room[0], &claims, for_all, self.across(members).between);
        let uprights = middles(&spans);
        let half = members.board / 2.0;
        // Carcass board, stile and middle of the upright on the left and on the right of a bay.
        let at_left = |upright: Option<&f64>| match upright {
            Some(m) => [m + half, m + members.bay / 2.0, *m],
            None => [members.board, members.side, members.board].map(|width| self.x[0] + width),
        };
        let at_right = |upright: Option<&f64>| match upright {
            Some(m) => [m - half, m - members.bay / 2.0, *m],
            None => [members.board, members.side, members.board].map(|width| self.x[1] - width),
        };
        spans
            .iter()
            .zip(self.bays)
            .enumerate()
            .map(|(i, (span, bay))| {
                let partition = uprights.get(i);
                let left = at_left(i.checked_sub(1).and_then(|left| uprights.get(left)));
                let right = at_right(partition);
                BayLayout {
                    number: self.first_bay + i,
                    between: [left[0], right[0]],
                    clear: [left[1], right[1]],
                    reach: [left[2], right[2]],
                    partition: partition.copied(),
                    rows: self.row_layouts(members, &bay.rows, *span),
                }
            })
            .collect()
    }

    fn row_layouts(&self, members: &Members, rows: &[Row], across: Span) -> Vec<RowLayout> {
        let (mut claims, for_all) = self.row_claims(members, rows);
        let between = self.upright(members).between;
        let [_, room] = self.room(members);
        claims.reverse();
        let mut fronts = distributed(room[0], &claims, for_all, between);
        fronts.reverse();
        let half = members.row / 2.0;
        let between_fronts = fronts.iter().zip(fronts.iter().skip(1));
        let rails: Vec<f64> = between_fronts
            .map(|(upper, lower)| (upper[0] + lower[1]) / 2.0)
            .collect();
        let open = |row: &Row| self.is_open_to_view(row.fill);
        rows.iter()
            .zip(fronts)
            .enumerate()
            .map(|(i, (row, front))| {
                let rail_above = i.checked_sub(1).and_then(|above| rails.get(above));
                let above = rail_above.map_or(self.z[1] - members.above, |middle| middle - half);
                let below = rails
                    .get(i)
                    .map_or(self.z[0] + members.below, |middle| middle + half);
                let columns = self.columns(members, row, across);
                RowLayout {
                    fill: row.fill,
                    shelves: row.shelves,
                    open_to_view: open(row),
                    front,
                    opening: [below, above],
                    dividers: match row.fill {
                        Fill::Doors => vec![],
                        Fill::Drawers | Fill::Open => middles(&columns),
                    },
                    columns,
                    board_below: rows.get(i + 1).is_some_and(|next| open(row) || open(next)),
                }
            })
            .collect()
    }

    fn is_open_to_view(&self, fill: Fill) -> bool {
        match fill {
            Fill::Open => true,
            Fill::Doors => self.furniture.styles.doors == DoorStyle::Glazed,
            Fill::Drawers => false,
        }
    }

    fn columns(&self, members: &Members, row: &Row, across: Span) -> Vec<Span> {
        let between = self.between_columns(members, row.fill);
        let width = (length_of(across) - between * row.columns.saturating_sub(1) as f64) / row.columns as f64;
        (0..row.columns)
            .map(|c| across[0] + c as f64 * (width + between))
            .map(|left| [left, left + width])
            .collect()
    }
}

impl Spacing {
    /// What each front in a line takes of the room. A clear opening takes more or less than its size, because of the
    /// members at its ends.
    fn claims(&self, measured: impl ExactSizeIterator<Item = (Option<f64>, bool)>) -> Vec<Option<f64>> {
        let count = measured.len();
        measured
            .enumerate()
            .map(|(i, (length, is_clear))| {
                let low = if i == 0 { self.at_low } else { self.inner };
                let high = if i + 1 == count { self.at_high } else { self.inner };
                length.map(|length| if is_clear { length + low + high } else { length })
            })
            .collect()
    }

    fn room(&self, whole: Span, count: usize) -> f64 {
        length_of(whole) - self.between * count.saturating_sub(1) as f64
    }
}

/// The middles of the gaps between adjacent spans.
fn middles(spans: &[Span]) -> Vec<f64> {
    let pairs = spans.iter().zip(spans.iter().skip(1));
    pairs.map(|(left, right)| (left[1] + right[0]) / 2.0).collect()
}

/// Shares out the room: whatever was not measured takes equal shares of the rest. If all was measured, small errors are
/// spread over all.
fn distributed(start: f64, claims: &[Option<f64>], room: f64, between: f64) -> Vec<Span> {
    let measured: f64 = claims.iter().flatten().sum();
    let open = claims.iter().filter(|claim| claim.is_none()).count();
    let (stretch, share) = if open == 0 {
        (room / measured, 0.0)
    } else {
        (1.0, (room - measured) / open as f64)
    };
    let mut at = start;
    claims
        .iter()
        .map(|claim| {
            let length = claim.map_or(share, |claim| claim * stretch);
            let span = [at, at + length];
            at += length + between;
            span
        })
        .collect()
}
