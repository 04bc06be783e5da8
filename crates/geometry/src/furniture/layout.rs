//! Where the boards and fronts of a case lie: the arithmetic between the tape and the placed parts.

use units::Length;

use super::fields::{
    BACK_RECESS, BACK_THICKNESS, BOARD, DEPTH, FRAME, FRONT_THICKNESS, GAP, HEIGHT, LEG_HEIGHT,
    PLINTH_HEIGHT, TOP_THICKNESS, WIDTH,
};
use super::{BackStyle, BaseStyle, FrontStyle, Furniture};

/// How far measured fronts may miss the height there is for them and still be taken as a tape's slip.
///
/// A sixteenth of an inch for each reading would be usual; 2 % of the height covers that on any piece.
pub(super) const ROW_SLIP: f64 = 0.02;

/// How deep a rail between drawers reaches into the case (common practice, no source). Nothing that is
/// painted by default depends on it.
const RAIL_DEPTH: f64 = 0.06;

/// A span from a low to a high coordinate, metres.
pub(super) type Span = [f64; 2];

/// The main coordinates of a case, metres.
pub(super) struct Layout {
    pub(super) width: f64,
    pub(super) depth: f64,
    pub(super) board: f64,
    /// The carcass from below to above.
    pub(super) carcass: Span,
    /// The rear end of the boards that the back panel does not cover.
    pub(super) boards_rear: f64,
    /// The back panel from its front to its rear.
    pub(super) back: Span,
    /// The drawer fronts from their front to their rear.
    pub(super) front: Span,
    /// How deep the rails and dividers in front reach.
    pub(super) rail_depth: f64,
    /// How deep the rail at the back is.
    pub(super) rear_rail_depth: f64,
    pub(super) rows: Vec<RowLayout>,
}

/// Where one row of drawers lies.
pub(super) struct RowLayout {
    /// The fronts from below to above.
    pub(super) front: Span,
    /// The opening between the boards above and below.
    pub(super) opening: Span,
    /// Each front from left to right.
    pub(super) columns: Vec<Span>,
}

/// How much height and width the fronts of a piece have between them.
pub(super) struct Room {
    /// From the lowest edge of the lowest front to the highest edge of the highest.
    pub(super) height: Span,
    /// From the left edge of the first front to the right edge of the last.
    pub(super) width: Span,
    /// Between two rows of fronts, and between two fronts of a row.
    pub(super) between: f64,
}

impl Room {
    pub(super) fn of(furniture: &Furniture, carcass: Span) -> Self {
        let metres = |field| furniture.length(field).as_metres();
        let (width, board, gap) = (metres(&WIDTH), metres(&BOARD), metres(&GAP));
        let (edge, between) = match furniture.fronts {
            FrontStyle::Overlay => (metres(&FRAME), gap),
            // An inset front has a gap on each side of the board between it and its neighbour.
            FrontStyle::Inset => (board + gap, board + 2.0 * gap),
        };
        Room {
            height: [carcass[0] + edge, carcass[1] - edge],
            width: [edge, width - edge],
            between,
        }
    }

    /// The height that is left for fronts when the gaps between rows are taken off.
    pub(super) fn for_fronts(&self, rows: usize) -> f64 {
        self.height[1] - self.height[0] - self.between * (rows.saturating_sub(1)) as f64
    }

    /// The width of one front when a row has this many.
    pub(super) fn front_width(&self, columns: usize) -> f64 {
        (self.width[1] - self.width[0] - self.between * (columns.saturating_sub(1)) as f64) / columns as f64
    }

    /// The narrowest opening between two uprights when a row has this many drawers.
    pub(super) fn clear_width(&self, furniture: &Furniture, columns: usize) -> f64 {
        let metres = |field| furniture.length(field).as_metres();
        let (width, board) = (metres(&WIDTH), metres(&BOARD));
        let step = self.front_width(columns) + self.between;
        match columns {
            0 | 1 => width - 2.0 * board,
            // At the sides an opening ends at the inner face of the side board, else at a divider.
            _ => {
                let at_side = self.width[0] + step - self.between / 2.0 - board / 2.0 - board;
                if columns == 2 {
                    at_side
                } else {
                    at_side.min(step - board)
                }
            }
        }
    }
}

/// The carcass from below to above.
pub(super) fn carcass_span(furniture: &Furniture) -> Span {
    let base = match furniture.base {
        BaseStyle::Floor => 0.0,
        BaseStyle::Plinth => furniture.length(&PLINTH_HEIGHT).as_metres(),
        BaseStyle::Legs => furniture.length(&LEG_HEIGHT).as_metres(),
    };
    [
        base,
        furniture.length(&HEIGHT).as_metres() - furniture.length(&TOP_THICKNESS).as_metres(),
    ]
}

impl Layout {
    /// The layout of a piece whose measurements fit.
    pub(super) fn of(furniture: &Furniture) -> Self {
        let metres = |field| furniture.length(field).as_metres();
        let (depth, board) = (metres(&DEPTH), metres(&BOARD));
        let carcass = carcass_span(furniture);
        let back_thickness = metres(&BACK_THICKNESS);
        let back_rear = match furniture.back {
            BackStyle::Flush => depth,
            BackStyle::Recessed => depth - metres(&BACK_RECESS),
        };
        let back = [back_rear - back_thickness, back_rear];
        let front = match furniture.fronts {
            FrontStyle::Overlay => [-metres(&FRONT_THICKNESS), 0.0],
            FrontStyle::Inset => [0.0, metres(&FRONT_THICKNESS)],
        };
        let room = Room::of(furniture, carcass);
        // A rail that ended within the thickness of an inset front would show its back.
        let reach = RAIL_DEPTH.min(back[0] / 3.0);
        let rail_depth = reach.max(front[1]);
        Layout {
            width: metres(&WIDTH),
            depth,
            board,
            carcass,
            boards_rear: if furniture.back == BackStyle::Flush {
                back[0]
            } else {
                depth
            },
            back,
            front,
            rail_depth,
            rear_rail_depth: reach.min(back[0] - rail_depth),
            rows: rows(furniture, &room, board, carcass),
        }
    }
}

/// The rows from the top down. Rows without a height share what is left; small slips are shared by all.
fn rows(furniture: &Furniture, room: &Room, board: f64, carcass: Span) -> Vec<RowLayout> {
    let count = furniture.rows.len();
    let for_fronts = room.for_fronts(count);
    let measured: f64 = furniture
        .rows
        .iter()
        .filter_map(|row| row.height)
        .map(Length::as_metres)
        .sum();
    let open = furniture.rows.iter().filter(|row| row.height.is_none()).count();
    let (stretch, share) = if open == 0 {
        (for_fronts / measured, 0.0)
    } else {
        (1.0, (for_fronts - measured) / open as f64)
    };
    let half_rail = board / 2.0;
    let mut above = room.height[1];
    let mut rail_below = carcass[1] - board;
    furniture
        .rows
        .iter()
        .enumerate()
        .map(|(i, row)| {
            let height = row.height.map_or(share, |height| height.as_metres() * stretch);
            let front = [above - height, above];
            let opening_top = rail_below;
            let middle_of_gap = front[0] - room.between / 2.0;
            let last = i + 1 == count;
            let opening_foot = if last {
                carcass[0] + board
            } else {
                middle_of_gap + half_rail
            };
            rail_below = middle_of_gap - half_rail;
            above = front[0] - room.between;
            let width = room.front_width(row.columns);
            let columns = (0..row.columns)
                .map(|c| room.width[0] + c as f64 * (width + room.between))
                .map(|left| [left, left + width])
                .collect();
            RowLayout {
                front,
                opening: [opening_foot, opening_top],
                columns,
            }
        })
        .collect()
}
