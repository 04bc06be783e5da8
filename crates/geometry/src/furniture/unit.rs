//! The boards of one case: carcass, back, face frame, rails, partitions and shelves.

use super::bay::Fill;
use super::layout::{BayLayout, Layout, RowLayout, Span, Unit};
use super::styles::BackStyle;
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;

/// The block of three spans.
pub(super) fn block(id: PartId, x: Span, y: Span, z: Span) -> Part {
    Part::block(id, [x[0], y[0], z[0]], [x[1], y[1], z[1]])
}

impl Unit<'_> {
    /// The name of a part of this unit.
    pub(super) fn id(&self, id: PartId, bay: usize) -> PartId {
        id.in_bay(bay).in_upper(self.upper)
    }

    /// The name of a part that belongs to no bay.
    pub(super) fn whole_id(&self, id: PartId) -> PartId {
        self.id(id, self.first_bay)
    }

    /// All boards except fronts, top and base.
    pub(super) fn boards(&self, at: &Layout) -> Vec<Part> {
        let mut parts = self.carcass(at);
        parts.extend(self.under_top(at));
        if at.members.has_frame {
            parts.extend(self.frame(at));
        }
        for (i, bay) in at.bays.iter().enumerate() {
            parts.extend(self.bay_boards(at, bay));
            parts.extend(self.partition(at, i, bay));
        }
        parts
    }

    /// From the front of the carcass boards to the back panel.
    pub(super) fn full_depth(&self, at: &Layout) -> Span {
        [self.y[0] + at.members.frame_depth, at.back[0]]
    }

    pub(super) fn between_sides(&self, at: &Layout) -> Span {
        [self.x[0] + at.members.board, self.x[1] - at.members.board]
    }

    fn carcass(&self, at: &Layout) -> Vec<Part> {
        let m = &at.members;
        let boards = [self.y[0] + m.frame_depth, at.boards_rear];
        let [foot, head] = self.z;
        let bottom_top = foot + m.below;
        let side = |kind, x| block(self.whole_id(PartId::only(kind)), x, boards, self.z);
        let mut parts = vec![
            side(PartKind::LeftSide, [self.x[0], self.x[0] + m.board]),
            side(PartKind::RightSide, [self.x[1] - m.board, self.x[1]]),
            block(
                self.whole_id(PartId::only(PartKind::Bottom)),
                self.between_sides(at),
                boards,
                [bottom_top - m.board, bottom_top],
            ),
        ];
        let back = |x, z| block(self.whole_id(PartId::only(PartKind::Back)), x, at.back, z);
        match self.furniture.styles.back {
            BackStyle::None => {}
            BackStyle::Flush => parts.push(back(self.x, self.z)),
            BackStyle::Recessed => parts.push(back(self.between_sides(at), [bottom_top, head])),
        }
        parts
    }

    fn under_top(&self, at: &Layout) -> Vec<Part> {
        let m = &at.members;
        let head = self.z[1];
        let rail = |n, y, height| {
            let id = self.whole_id(PartId::nth(PartKind::TopRail, n));
            block(id, self.between_sides(at), y, [head - height, head])
        };
        if at.whole_top {
            return vec![rail(1, self.full_depth(at), m.above)];
        }
        let mut parts = Vec::new();
        if !m.has_frame {
            parts.push(rail(1, [self.y[0], self.y[0] + at.rail_depth], m.above));
        }
        parts.push(rail(2, [at.back[0] - at.rear_rail_depth, at.back[0]], m.board));
        parts
    }

    fn frame(&self, at: &Layout) -> Vec<Part> {
        let m = &at.members;
        let y = [self.y[0], self.y[0] + m.frame_depth];
        let ([x0, x1], [foot, head]) = (self.x, self.z);
        let between = [x0 + m.side, x1 - m.side];
        let whole = |id, x, z| block(self.whole_id(id), x, y, z);
        let mut parts = vec![
            whole(PartId::nth(PartKind::FrameStile, 1), [x0, x0 + m.side], self.z),
            whole(PartId::nth(PartKind::FrameStile, 2), [x1 - m.side, x1], self.z),
            whole(PartId::only(PartKind::FrameTop), between, [head - m.above, head]),
            whole(
                PartId::only(PartKind::FrameBottom),
                between,
                [foot, foot + m.below],
            ),
        ];
        for (i, bay) in at.bays.iter().enumerate() {
            if let Some(middle) = bay.partition {
                let x = [middle - m.bay / 2.0, middle + m.bay / 2.0];
                let id = PartId::nth(PartKind::FrameMidStile, i + 1);
                parts.push(whole(id, x, [foot + m.below, head - m.above]));
            }
            for (r, row) in bay.rows.iter().enumerate() {
                let name = |id| self.id(id, bay.number);
                if let Some(below) = bay.rows.get(r + 1) {
                    let id = name(PartId::nth(PartKind::FrameRail, r + 1));
                    parts.push(block(id, bay.clear, y, [below.opening[1], row.opening[0]]));
                }
                for (c, middle) in row.dividers.iter().enumerate() {
                    let x = [middle - m.column / 2.0, middle + m.column / 2.0];
                    let id = name(PartId::in_row(PartKind::FrameDivider, r + 1, c + 1));
                    parts.push(block(id, x, y, row.opening));
                }
            }
        }
        parts
    }

    fn bay_boards(&self, at: &Layout, bay: &BayLayout) -> Vec<Part> {
        let m = &at.members;
        let name = |id| self.id(id, bay.number);
        let in_front = [self.y[0], self.y[0] + at.rail_depth];
        let mut parts = Vec::new();
        for (r, row) in bay.rows.iter().enumerate() {
            if let Some(below) = bay.rows.get(r + 1) {
                let z = board_between(m.has_frame, m.board, row, below);
                let id = name(PartId::nth(PartKind::Rail, r + 1));
                if row.board_below {
                    let depth = if m.has_frame {
                        self.full_depth(at)
                    } else {
                        [self.y[0], at.back[0]]
                    };
                    parts.push(block(id, bay.between, depth, z));
                } else if !m.has_frame {
                    parts.push(block(id, bay.between, in_front, z));
                }
            }
            let is_open = row.fill == Fill::Open;
            for (c, middle) in row.dividers.iter().enumerate() {
                let x = [middle - m.board / 2.0, middle + m.board / 2.0];
                let id = name(PartId::in_row(PartKind::Divider, r + 1, c + 1));
                if is_open {
                    parts.push(block(
                        id,
                        x,
                        self.full_depth(at),
                        self.compartment(at, bay, (r, row)),
                    ));
                } else if !m.has_frame {
                    parts.push(block(id, x, in_front, row.opening));
                }
            }
            parts.extend(self.shelves(at, bay, (r, row)));
        }
        parts
    }

    /// The vertical extent between the boards above and below a row. Behind a face frame the boards are thinner than
    /// its members.
    pub(super) fn compartment(&self, at: &Layout, bay: &BayLayout, (r, row): (usize, &RowLayout)) -> Span {
        let m = &at.members;
        let [mut below, mut above] = row.opening;
        if m.has_frame {
            if let Some(next) = bay.rows.get(r + 1)
                && row.board_below
            {
                below = board_between(true, m.board, row, next)[1];
            }
            if let Some(before) = r.checked_sub(1).and_then(|before| bay.rows.get(before))
                && before.board_below
            {
                above = board_between(true, m.board, before, row)[0];
            }
        }
        [below, above]
    }

    fn shelves(&self, at: &Layout, bay: &BayLayout, (r, row): (usize, &RowLayout)) -> Vec<Part> {
        let m = &at.members;
        if row.fill == Fill::Drawers || row.shelves == 0 {
            return vec![];
        }
        let [below, above] = self.compartment(at, bay, (r, row));
        let clear = (above - below - row.shelves as f64 * m.board) / (row.shelves + 1) as f64;
        let mut depth = self.full_depth(at);
        if row.fill == Fill::Doors {
            depth[0] = depth[0].max(self.doors_rear(at));
        }
        let across: Vec<Span> = row.between_dividers(bay.between, m.board / 2.0).collect();
        (0..row.shelves)
            .flat_map(|level| across.iter().enumerate().map(move |(c, x)| (level, c, *x)))
            .map(|(level, c, x)| {
                let top = above - (level + 1) as f64 * clear - level as f64 * m.board;
                let number = level * across.len() + c + 1;
                let id = self.id(PartId::in_row(PartKind::Shelf, r + 1, number), bay.number);
                block(id, x, depth, [top - m.board, top])
            })
            .collect()
    }

    fn partition(&self, at: &Layout, i: usize, bay: &BayLayout) -> Option<Part> {
        let m = &at.members;
        let middle = bay.partition?;
        let id = self.whole_id(PartId::nth(PartKind::Partition, i + 1));
        let x = [middle - m.board / 2.0, middle + m.board / 2.0];
        let z = [self.z[0] + m.below, self.z[1] - m.above];
        Some(block(id, x, self.full_depth(at), z))
    }
}

/// The board between two rows: as high as the member, or behind a face frame one board at its middle.
fn board_between(has_frame: bool, board: f64, above: &RowLayout, below: &RowLayout) -> Span {
    let [foot, head] = [below.opening[1], above.opening[0]];
    if has_frame {
        let middle = (foot + head) / 2.0;
        [middle - board / 2.0, middle + board / 2.0]
    } else {
        [foot, head]
    }
}
