//! Dimension lines: where each measurement is in a drawing.

mod cabinet;

use crate::drawing::View;
use crate::region::Point2;

use super::fields::{self as f, FieldId, LengthField};
use super::headboard::HeadboardLayout;
use super::layout::{Layout, RowLayout, Span, Unit};
use super::styles::{BackStyle, BaseStyle, FrontStyle, LegStyle};
use super::table::TableLayout;
use super::{BayPlace, Construction, Furniture, base, case};

/// A dimension line of a drawing, in the coordinates of the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension {
    /// The measurement that it shows.
    pub field: FieldId,
    /// Where the measured length begins.
    pub from: Point2,
    /// Where it ends.
    pub to: Point2,
    /// The unit direction in which the dimension line is offset from the piece.
    pub away: Point2,
    /// Its row, counted from the piece; 1 is the nearest.
    pub row: u8,
}

/// The dimension lines of a piece whose measurements fit. There is room for the rows of one bay: `rows_of` in a cabinet
/// projection, or the first one if that is `None`; the rightmost one in the other views.
pub(super) fn of(furniture: &Furniture, view: View, rows_of: Option<BayPlace>) -> Vec<Dimension> {
    if view == View::Cabinet {
        return cabinet::of(furniture, rows_of);
    }
    flat(furniture, view, RowsOf::Last)
}

/// Which bay of a case has room for the heights of its rows.
#[derive(Clone, Copy)]
enum RowsOf {
    /// The rightmost one.
    Last,
    /// The one at this place, or the first one of a case that it is not in.
    At(Option<BayPlace>),
}

impl RowsOf {
    fn index(self, unit: &Unit) -> usize {
        match self {
            RowsOf::Last => unit.bays.len().saturating_sub(1),
            RowsOf::At(place) => (0..unit.bays.len())
                .position(|i| Some(unit.place(i)) == place)
                .unwrap_or(0),
        }
    }
}

fn flat(furniture: &Furniture, view: View, rows_of: RowsOf) -> Vec<Dimension> {
    let mut lines = Lines {
        furniture,
        rows_of,
        list: vec![],
    };
    match furniture.kind.construction() {
        Construction::Case | Construction::TwoCases => cases(&mut lines, view),
        Construction::Pedestals => pedestals(&mut lines, view),
        Construction::Table => table(&mut lines, view),
        Construction::Chest => chest(&mut lines, view),
        Construction::Headboard => headboard(&mut lines, view),
        Construction::Frame => frame(&mut lines, view),
    }
    lines.list
}

/// On which side of the piece a line stands.
#[derive(Clone, Copy)]
enum Edge {
    /// At this coordinate, set off to the left.
    Left(f64),
    /// At this coordinate, set off to the right.
    Right(f64),
    /// At this coordinate, set off downward.
    Below(f64),
    /// At this coordinate, set off upward.
    Above(f64),
}

struct Lines<'a> {
    furniture: &'a Furniture,
    rows_of: RowsOf,
    list: Vec<Dimension>,
}

impl Lines<'_> {
    fn metres(&self, field: &LengthField) -> f64 {
        self.furniture.length(field).as_metres()
    }

    /// A line over a span; none over a span without length.
    fn add(&mut self, field: FieldId, span: Span, edge: Edge, row: u8) {
        if span[1] - span[0] < 1e-6 {
            return;
        }
        let (from, to, away) = match edge {
            Edge::Left(x) => ([x, span[0]], [x, span[1]], [-1.0, 0.0]),
            Edge::Right(x) => ([x, span[0]], [x, span[1]], [1.0, 0.0]),
            Edge::Below(y) => ([span[0], y], [span[1], y], [0.0, -1.0]),
            Edge::Above(y) => ([span[0], y], [span[1], y], [0.0, 1.0]),
        };
        self.list.push(Dimension {
            field,
            from,
            to,
            away,
            row,
        });
    }

    fn of(&mut self, field: &LengthField, span: Span, edge: Edge, row: u8) {
        // A reading over the top is drawn over the top: on both sides, or in front.
        let beyond = self.furniture.beyond_case(field).as_metres();
        let (before, after) = match field.key == f::WIDTH.key {
            true => (beyond / 2.0, beyond / 2.0),
            false => (beyond, 0.0),
        };
        self.add(field.id(), [span[0] - before, span[1] + after], edge, row);
    }

    /// What the piece stands on.
    fn base(&mut self, edge: Edge) {
        let field = match self.furniture.styles.base {
            BaseStyle::Floor => return,
            BaseStyle::Plinth | BaseStyle::CutOutPlinth | BaseStyle::BracketFeet => &f::PLINTH_HEIGHT,
            _ => &f::LEG_HEIGHT,
        };
        self.of(field, [0.0, base::height(self.furniture)], edge, 1);
    }

    /// Whether a measurement is one that this piece has.
    fn asks(&self, field: &LengthField) -> bool {
        self.furniture.fields().contains(&field)
    }

    /// The gap over the lower of the two lowest adjacent fronts, on the left. Between inset fronts there is a rail with
    /// such a gap on either side.
    fn seams(&mut self, at: &Layout, left: f64) {
        let rows = at.bays.first().map(|bay| &*bay.rows).unwrap_or_default();
        let is_closed = |pair: &&[RowLayout]| pair.iter().all(|row| row.fill != super::Fill::Open);
        let lowest = rows.windows(2).rfind(is_closed).and_then(<[_]>::last);
        if let Some(lower) = lowest.filter(|_| self.asks(&f::GAP)) {
            let head = lower.front[1];
            let gap = self.metres(&f::GAP);
            self.of(&f::GAP, [head, head + gap], Edge::Left(left), 2);
        }
    }

    /// Rows on the right, bays at the bottom.
    fn rows(&mut self, unit: &Unit, at: &Layout, right: f64, below: f64) {
        for (i, bay) in at.bays.iter().enumerate().filter(|_| at.bays.len() > 1) {
            self.add(FieldId::BayWidth(unit.place(i)), bay.clear, Edge::Below(below), 1);
        }
        self.heights(unit, at, right);
    }

    /// The rows of the one bay that has room for them.
    fn heights(&mut self, unit: &Unit, at: &Layout, right: f64) {
        let shown = self.rows_of.index(unit);
        let rows = at.bays.get(shown).map(|bay| &*bay.rows).unwrap_or_default();
        for (r, row) in rows.iter().enumerate() {
            let is_open = row.fill == super::Fill::Open;
            let span = if is_open { row.opening } else { row.front };
            let field = FieldId::RowHeight(unit.place(shown), r + 1);
            self.add(field, span, Edge::Right(right), 1);
        }
    }
}

fn cases(lines: &mut Lines, view: View) {
    let units = case::units(lines.furniture);
    let Some((lower, others)) = units.split_first() else {
        return;
    };
    let upper = others.first();
    let side = lines.metres(&f::OVERHANG_SIDE);
    let (left, right) = (-side, lower.x[1] + side);
    let height = lines.metres(&f::HEIGHT);
    let head = height + upper.map_or(0.0, |_| lines.metres(&f::UPPER_HEIGHT));
    let front = lines.metres(&f::OVERHANG_FRONT);
    let whole_row = if lower.bays.len() > 1 { 2 } else { 1 };
    match view {
        View::Front => {
            lines.of(&f::WIDTH, lower.x, Edge::Below(0.0), whole_row);
            lines.of(&f::HEIGHT, [0.0, height], Edge::Left(left), 1);
            lines.of(&f::TOP_THICKNESS, [lower.z[1], height], Edge::Right(right), 1);
            lines.base(Edge::Right(right));
            let at = lower.layout();
            lines.rows(lower, &at, right, 0.0);
            lines.seams(&at, left);
            let [x0, x1] = lower.x;
            lines.of(
                &f::BOARD,
                [x0, x0 + lines.metres(&f::BOARD)],
                Edge::Above(head),
                1,
            );
            if lines.asks(&f::FRAME) {
                lines.of(
                    &f::FRAME,
                    [x1 - lines.metres(&f::FRAME), x1],
                    Edge::Above(head),
                    1,
                );
            }
            if let Some(upper) = upper {
                lines.of(&f::UPPER_HEIGHT, [height, head], Edge::Left(left), 1);
                lines.heights(upper, &upper.layout(), right);
            }
        }
        View::Side => {
            case_side(lines, lower, height, head);
            if let Some(upper) = upper {
                lines.of(&f::UPPER_DEPTH, upper.y, Edge::Above(head), 1);
                lines.of(&f::UPPER_HEIGHT, [height, head], Edge::Right(lower.y[1]), 1);
            } else {
                lines.of(&f::OVERHANG_FRONT, [-front, 0.0], Edge::Above(height), 1);
            }
        }
        View::Top => {
            lines.of(&f::WIDTH, lower.x, Edge::Below(-front), 1);
            lines.of(&f::DEPTH, lower.y, Edge::Left(-side), 1);
            lines.of(&f::OVERHANG_SIDE, [lower.x[1], right], Edge::Above(lower.y[1]), 1);
            lines.of(&f::OVERHANG_FRONT, [-front, 0.0], Edge::Left(-side), 1);
        }
        View::Left | View::Cabinet | View::Turned { .. } => {}
    }
}

fn case_side(lines: &mut Lines, unit: &Unit, height: f64, head: f64) {
    let furniture = lines.furniture;
    let overhang = lines.metres(&f::OVERHANG_FRONT);
    let at = unit.layout();
    let foremost = (-overhang).min(at.front[0]);
    lines.of(&f::DEPTH, unit.y, Edge::Below(0.0), 1);
    lines.of(&f::HEIGHT, [0.0, height], Edge::Right(unit.y[1]), 1);
    lines.base(Edge::Left(foremost));
    match furniture.styles.base {
        BaseStyle::Plinth | BaseStyle::CutOutPlinth | BaseStyle::BracketFeet => {
            let setback = lines.metres(&f::PLINTH_SETBACK);
            lines.of(&f::PLINTH_SETBACK, [0.0, setback], Edge::Below(0.0), 2);
        }
        BaseStyle::Floor => {}
        _ => {
            let (leg, inset) = (lines.metres(&f::LEG_WIDTH), lines.metres(&f::LEG_INSET));
            lines.of(&f::LEG_WIDTH, [inset, inset + leg], Edge::Below(0.0), 2);
        }
    }
    let [back, rear] = [at.back, [at.back[1], unit.y[1]]];
    for (field, span) in [(&f::BACK_THICKNESS, back), (&f::BACK_RECESS, rear)] {
        if lines.asks(field) {
            lines.of(field, span, Edge::Above(head), 1);
        }
    }
    let is_hidden = furniture.styles.fronts == FrontStyle::Inset || furniture.styles.back == BackStyle::None;
    if !is_hidden && lines.asks(&f::FRONT_THICKNESS) {
        lines.of(&f::FRONT_THICKNESS, at.front, Edge::Below(0.0), 2);
    }
}

fn pedestals(lines: &mut Lines, view: View) {
    let units = case::units(lines.furniture);
    let [left, right] = &*units else {
        return;
    };
    let (wide, deep) = (lines.metres(&f::TOP_WIDTH), lines.metres(&f::TOP_DEPTH));
    let height = lines.metres(&f::HEIGHT);
    match view {
        View::Front => {
            lines.of(&f::TOP_WIDTH, [0.0, wide], Edge::Above(height), 1);
            lines.of(&f::HEIGHT, [0.0, height], Edge::Left(0.0), 1);
            lines.of(&f::PEDESTAL_WIDTH, left.x, Edge::Below(0.0), 1);
            lines.of(&f::TOP_THICKNESS, [left.z[1], height], Edge::Right(wide), 1);
            lines.base(Edge::Right(wide));
            lines.rows(right, &right.layout(), wide, 0.0);
        }
        View::Side => {
            lines.of(&f::TOP_DEPTH, [0.0, deep], Edge::Below(0.0), 1);
            lines.of(&f::HEIGHT, [0.0, height], Edge::Right(deep), 1);
            lines.of(&f::OVERHANG_FRONT, [0.0, left.y[0]], Edge::Above(height), 1);
        }
        View::Top => {
            lines.of(&f::TOP_WIDTH, [0.0, wide], Edge::Below(0.0), 1);
            lines.of(&f::TOP_DEPTH, [0.0, deep], Edge::Left(0.0), 1);
        }
        View::Left | View::Cabinet | View::Turned { .. } => {}
    }
}

fn table(lines: &mut Lines, view: View) {
    let at = TableLayout::of(lines.furniture);
    let (wide, deep) = (lines.metres(&f::TOP_WIDTH), lines.metres(&f::TOP_DEPTH));
    let height = lines.metres(&f::HEIGHT);
    match view {
        View::Front => {
            lines.of(&f::TOP_WIDTH, [0.0, wide], Edge::Above(height), 1);
            lines.of(&f::HEIGHT, [0.0, height], Edge::Left(0.0), 1);
            lines.of(&f::TOP_THICKNESS, [at.under, height], Edge::Right(wide), 1);
            lines.of(&f::OVERHANG_SIDE, [0.0, at.x[0]], Edge::Below(0.0), 1);
            if lines.furniture.styles.legs != LegStyle::Splayed {
                lines.of(&f::APRON_HEIGHT, [at.apron_foot, at.under], Edge::Right(wide), 1);
                lines.of(&f::LEG_WIDTH, [at.x[1] - at.leg, at.x[1]], Edge::Below(0.0), 1);
            }
        }
        View::Side => {
            lines.of(&f::TOP_DEPTH, [0.0, deep], Edge::Above(height), 1);
            lines.of(&f::HEIGHT, [0.0, height], Edge::Right(deep), 1);
            lines.of(&f::OVERHANG_FRONT, [0.0, at.y[0]], Edge::Below(0.0), 1);
        }
        View::Top => {
            lines.of(&f::TOP_WIDTH, [0.0, wide], Edge::Below(0.0), 1);
            lines.of(&f::TOP_DEPTH, [0.0, deep], Edge::Left(0.0), 1);
        }
        View::Left | View::Cabinet | View::Turned { .. } => {}
    }
}

fn chest(lines: &mut Lines, view: View) {
    let (wide, deep, height) = (
        lines.metres(&f::WIDTH),
        lines.metres(&f::DEPTH),
        lines.metres(&f::HEIGHT),
    );
    let (side, front) = (lines.metres(&f::OVERHANG_SIDE), lines.metres(&f::OVERHANG_FRONT));
    let under = height - lines.metres(&f::TOP_THICKNESS);
    match view {
        View::Front => {
            lines.of(&f::WIDTH, [0.0, wide], Edge::Below(0.0), 1);
            lines.of(&f::HEIGHT, [0.0, height], Edge::Left(-side), 1);
            lines.of(&f::TOP_THICKNESS, [under, height], Edge::Right(wide + side), 1);
            lines.base(Edge::Right(wide + side));
        }
        View::Side => {
            lines.of(&f::DEPTH, [0.0, deep], Edge::Below(0.0), 1);
            lines.of(&f::HEIGHT, [0.0, height], Edge::Right(deep), 1);
            lines.of(&f::OVERHANG_FRONT, [-front, 0.0], Edge::Above(height), 1);
            lines.base(Edge::Left(-front));
        }
        View::Top => {
            lines.of(&f::WIDTH, [0.0, wide], Edge::Below(-front), 1);
            lines.of(&f::DEPTH, [0.0, deep], Edge::Left(-side), 1);
            lines.of(&f::OVERHANG_SIDE, [wide, wide + side], Edge::Above(deep), 1);
        }
        View::Left | View::Cabinet | View::Turned { .. } => {}
    }
}

fn headboard(lines: &mut Lines, view: View) {
    let at = HeadboardLayout::of(lines.furniture);
    let (wide, height) = (lines.metres(&f::WIDTH), lines.metres(&f::HEIGHT));
    match view {
        View::Front => {
            lines.of(&f::WIDTH, [0.0, wide], Edge::Below(0.0), 1);
            lines.of(&f::HEIGHT, [0.0, height], Edge::Left(0.0), 1);
            lines.of(&f::HEADBOARD_RAIL, at.rails[1], Edge::Right(wide), 1);
            lines.of(&f::PANEL_FOOT, [0.0, at.rails[0][0]], Edge::Right(wide), 1);
            lines.of(&f::LEG_WIDTH, [0.0, at.post], Edge::Above(height), 1);
        }
        View::Side => lines.of(&f::LEG_WIDTH, [0.0, at.post], Edge::Below(0.0), 1),
        View::Top => lines.of(&f::WIDTH, [0.0, wide], Edge::Below(0.0), 1),
        View::Left | View::Cabinet | View::Turned { .. } => {}
    }
}

fn frame(lines: &mut Lines, view: View) {
    let (wide, height) = (lines.metres(&f::WIDTH), lines.metres(&f::HEIGHT));
    let (member, thick) = (lines.metres(&f::MEMBER_WIDTH), lines.metres(&f::MEMBER_THICKNESS));
    match view {
        View::Front => {
            lines.of(&f::WIDTH, [0.0, wide], Edge::Below(0.0), 1);
            lines.of(&f::HEIGHT, [0.0, height], Edge::Left(0.0), 1);
            lines.of(&f::MEMBER_WIDTH, [wide - member, wide], Edge::Above(height), 1);
        }
        View::Side => lines.of(&f::MEMBER_THICKNESS, [0.0, thick], Edge::Below(0.0), 1),
        View::Top => lines.of(&f::WIDTH, [0.0, wide], Edge::Below(0.0), 1),
        View::Left | View::Cabinet | View::Turned { .. } => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Kind;

    const FLAT: [View; 3] = [View::Front, View::Side, View::Top];

    /// Whatever stands on a line, the line is as long as that.
    #[test]
    fn lines_are_as_long_as_what_is_measured_along_them() {
        for kind in Kind::ALL {
            let furniture = Furniture::usual(kind);
            for line in FLAT.into_iter().flat_map(|view| of(&furniture, view, None)) {
                let FieldId::Of(key) = line.field else { continue };
                let field = f::by_key(key).unwrap();
                let length = libm::hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);
                let measured = furniture.length(field).as_metres();
                assert!(
                    (length - measured).abs() < 1e-9,
                    "{} {key}: {length} of {measured}",
                    kind.key()
                );
            }
        }
    }

    /// In a cabinet projection the depth is half as long, and no other line is shortened.
    #[test]
    fn a_cabinet_projection_shows_the_three_sizes_of_a_piece() {
        for kind in Kind::ALL {
            let furniture = Furniture::usual(kind);
            let lines = of(&furniture, View::Cabinet, None);
            for field in furniture.fields() {
                let line = lines.iter().find(|line| line.field == field.id());
                let is_depth = [f::DEPTH.id(), f::TOP_DEPTH.id()].contains(&field.id());
                let Some(line) = line else {
                    let is_hidden =
                        !field.is_of_whole() || [&f::UPPER_DEPTH, &f::PEDESTAL_WIDTH].contains(&field);
                    assert!(is_hidden, "{} {}", kind.key(), field.key);
                    continue;
                };
                let length = libm::hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);
                let drawn = furniture.length(field).as_metres() * if is_depth { 0.5 } else { 1.0 };
                assert!((length - drawn).abs() < 1e-9, "{} {}", kind.key(), field.key);
            }
        }
    }

    #[test]
    fn a_cabinet_projection_shows_the_rows_that_are_asked_for() {
        let sideboard = Furniture::usual(Kind::Sideboard);
        let bays = |rows_of| -> Vec<usize> {
            let lines = of(&sideboard, View::Cabinet, rows_of).into_iter();
            let rows = lines.filter_map(|line| match line.field {
                FieldId::RowHeight(place, _) => Some(place.bay),
                _ => None,
            });
            rows.collect()
        };
        let second = BayPlace { upper: false, bay: 2 };
        assert!(bays(None).iter().all(|bay| *bay == 1) && !bays(None).is_empty());
        assert!(bays(Some(second)).iter().all(|bay| *bay == 2));
    }

    #[test]
    fn boards_seams_and_the_back_of_a_case_have_lines() {
        let dresser = Furniture::usual(Kind::Dresser);
        let has = |view, field: &LengthField| {
            of(&dresser, view, None)
                .iter()
                .any(|line| line.field == field.id())
        };
        for field in [f::BOARD, f::FRAME, f::GAP] {
            assert!(has(View::Front, &field), "{}", field.key);
        }
        for field in [f::BACK_THICKNESS, f::BACK_RECESS] {
            assert!(has(View::Side, &field), "{}", field.key);
        }
    }
}
