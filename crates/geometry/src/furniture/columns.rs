//! Half columns on the stiles of a face frame, plain or fluted.

use std::f64::consts::PI;

use super::counts::FLUTES;
use super::fields::{COLUMN_DIAMETER, FLUTE_RADIUS};
use super::layout::{Layout, Unit};
use super::styles::{CornerColumns, FaceFrame};
use crate::face::{Plane, Side};
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;
use crate::profile::equal_area_arc;
use crate::region::Point2;
use crate::solid::{CHORD, Cut, Prism, Run};
use crate::{Point3, Vector3};

/// The columns of a unit, if it has any.
pub(super) fn parts(unit: &Unit, at: &Layout) -> Vec<Part> {
    let styles = &unit.furniture.styles;
    if styles.face_frame == FaceFrame::None {
        return vec![];
    }
    let radius = unit.furniture.length(&COLUMN_DIAMETER).as_metres() / 2.0;
    let (points, girth) = match styles.corner_columns {
        CornerColumns::None => return vec![],
        CornerColumns::Plain => (equal_area_arc([0.0, 0.0], radius, 0.0, PI, CHORD), PI * radius),
        CornerColumns::Fluted => {
            let flute = unit.furniture.length(&FLUTE_RADIUS).as_metres();
            fluted(radius, unit.furniture.count(&FLUTES), flute)
        }
    };
    let half = at.members.side / 2.0;
    let [foot, head] = [unit.z[0], unit.z[1] - at.members.crown];
    [unit.x[0] + half, unit.x[1] - half]
        .into_iter()
        .enumerate()
        .map(|(i, x)| {
            let prism = Prism {
                // Seen from above with the front at the top: the first axis points left, the second out of the stile.
                plane: Plane {
                    origin: Point3::new(x, unit.y[0], foot),
                    u: -Vector3::x(),
                    v: -Vector3::y(),
                },
                outline: vec![
                    Run::straight(Side::Back, vec![[-radius, 0.0], [radius, 0.0]]),
                    Run::curved(Side::Around, points.clone(), girth, 0.0),
                ],
                holes: vec![],
                start: Cut::square(0.0),
                end: Cut::square(head - foot),
            };
            prism.part(unit.whole_id(PartId::nth(PartKind::Column, i + 1)))
        })
        .collect()
}

/// The outline of a half column from right to left with its flutes, and its girth.
///
/// A flute is a circle about a point of the column's surface. Half of the angle that it takes of the column is
/// `asin(flute / (2 radius))` doubled, by the triangle of the two centers and a point where the circles meet; by the
/// same triangle its own arc within the column has twice the angle `acos(flute / (2 radius))`.
pub(super) fn fluted(radius: f64, count: u32, flute: f64) -> (Vec<Point2>, f64) {
    let ratio = flute / (2.0 * radius);
    let (half, own) = (2.0 * libm::asin(ratio), libm::acos(ratio));
    let mut points: Vec<Point2> = Vec::new();
    let mut girth = 0.0;
    let mut at = 0.0;
    let mut flat = |points: &mut Vec<Point2>, from: f64, to: f64| {
        let arc = equal_area_arc([0.0, 0.0], radius, from, to, CHORD);
        points.extend(arc.into_iter().skip(usize::from(!points.is_empty())));
        girth += radius * (to - from);
    };
    for k in 0..count {
        let angle = PI * (f64::from(k) + 0.5) / f64::from(count);
        flat(&mut points, at, angle - half);
        let (sin, cos) = libm::sincos(angle);
        // Through the inside of the column, so in reverse.
        let arc = equal_area_arc(
            [radius * cos, radius * sin],
            flute,
            angle + PI + own,
            angle + PI - own,
            CHORD,
        );
        points.extend(arc.into_iter().skip(1));
        at = angle + half;
    }
    flat(&mut points, at, PI);
    (points, girth + f64::from(count) * 2.0 * own * flute)
}

/// The largest radius of this many flutes of a half column that keeps them apart, and away from its flat side.
///
/// Circles about points of the surface meet first on the chord between them, a little within the column.
pub(super) fn widest_flute(radius: f64, count: u32) -> f64 {
    0.99 * radius * libm::sin(PI / (2.0 * f64::from(count)))
}
