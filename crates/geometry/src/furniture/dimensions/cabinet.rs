//! The dimension lines of a cabinet projection.
//!
//! Heights are on the left, widths below, and the depth recedes: what is on the right and above in a front view is covered
//! by the side and the top of the piece here.

use super::{BayPlace, Dimension, RowsOf, flat};
use crate::drawing::View;
use crate::furniture::fields::{self as f, FieldId, LengthField};
use crate::furniture::{Construction, Furniture};
use crate::{Point2, Point3};

/// Fields that would only crowd the drawing. A front view shows them.
const SMALL: [&LengthField; 6] = [
    &f::BOARD,
    &f::FRAME,
    &f::GAP,
    &f::OVERHANG_SIDE,
    &f::MEMBER_WIDTH,
    &f::LEG_WIDTH,
];

pub(super) fn of(furniture: &Furniture, rows_of: Option<BayPlace>) -> Vec<Dimension> {
    let front = flat(furniture, View::Front, RowsOf::At(rows_of));
    let shown = front
        .into_iter()
        .filter(|line| SMALL.iter().all(|small| line.field != small.id()));
    let mut lines: Vec<Dimension> = shown.collect();
    let ends = || lines.iter().flat_map(|line| [line.from, line.to]);
    let left = ends().map(|[x, _]| x).fold(f64::INFINITY, f64::min);
    let foot = ends().map(|[_, y]| y).fold(f64::INFINITY, f64::min);
    for line in &mut lines {
        if line.away[0] == 0.0 {
            line.away = [0.0, -1.0];
            line.from[1] = foot;
            line.to[1] = foot;
        } else {
            line.away = [-1.0, 0.0];
            line.from[0] = left;
            line.to[0] = left;
        }
    }
    in_rows(&mut lines);
    lines.extend(depth(furniture, left));
    lines
}

/// Puts the sizes of the whole piece outside those of its parts.
fn in_rows(lines: &mut [Dimension]) {
    let is_whole = |line: &Dimension| match line.field {
        FieldId::Of(key) => f::by_key(key).is_some_and(LengthField::is_of_whole),
        _ => false,
    };
    let has_parts = |away: Point2| lines.iter().any(|line| line.away == away && !is_whole(line));
    let outer = |away| if has_parts(away) { 2 } else { 1 };
    let [beside, below] = [outer([-1.0, 0.0]), outer([0.0, -1.0])];
    for line in lines {
        line.row = match is_whole(line) {
            false => 1,
            true if line.away[0] == 0.0 => below,
            true => beside,
        };
    }
}

/// The depth, along the left edge of the top, or along the floor where an upper case covers that.
fn depth(furniture: &Furniture, left: f64) -> Option<Dimension> {
    let side = flat(furniture, View::Side, RowsOf::Last);
    let line = side
        .into_iter()
        .find(|line| [f::DEPTH.id(), f::TOP_DEPTH.id()].contains(&line.field))?;
    let on_floor = furniture.kind.construction() == Construction::TwoCases;
    let (x, z, sign) = match on_floor {
        true => (furniture.length(&f::WIDTH).as_metres(), 0.0, 1.0),
        false => (left, furniture.length(&f::HEIGHT).as_metres(), -1.0),
    };
    let end = |y: f64| View::Cabinet.project(&Point3::new(x, y, z));
    let (from, to) = (end(line.from[0]), end(line.to[0]));
    let (along, up) = (to[0] - from[0], to[1] - from[1]);
    let length = libm::hypot(along, up);
    Some(Dimension {
        from,
        to,
        away: [sign * up / length, -sign * along / length],
        row: 1,
        ..line
    })
}
