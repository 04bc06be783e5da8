//! What a case stands on.

use std::f64::consts::{FRAC_PI_2, PI};

use super::Furniture;
use super::fields::{BOARD, CUTOUT_HEIGHT, FOOT_WIDTH, LEG_HEIGHT, PLINTH_HEIGHT, PLINTH_SETBACK};
use super::layout::Span;
use super::legs;
use super::styles::BaseStyle;
use super::unit::block;
use crate::face::{Plane, Side};
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;
use crate::profile::equal_area_arc;
use crate::region::Point2;
use crate::solid::{CHORD, Cut, Prism, Run};
use crate::{Point3, Vector3};

/// The height of the base of a case.
pub(super) fn height(furniture: &Furniture) -> f64 {
    let field = match furniture.styles.base {
        BaseStyle::Floor => return 0.0,
        BaseStyle::Plinth | BaseStyle::CutOutPlinth | BaseStyle::BracketFeet => &PLINTH_HEIGHT,
        _ => &LEG_HEIGHT,
    };
    furniture.length(field).as_metres()
}

/// The base parts of a case with this plan.
pub(super) fn parts(furniture: &Furniture, [x, y]: [Span; 2]) -> Vec<Part> {
    let below = [0.0, height(furniture)];
    let legs = || legs::corners(furniture, [x, y], legs::inset(furniture)).into_iter();
    match furniture.styles.base {
        BaseStyle::Floor => vec![],
        BaseStyle::Plinth => plinth(furniture, [x, y], None),
        BaseStyle::CutOutPlinth => plinth(
            furniture,
            [x, y],
            Some(furniture.length(&CUTOUT_HEIGHT).as_metres()),
        ),
        BaseStyle::BracketFeet => bracket_feet(furniture, [x, y]),
        BaseStyle::Legs => legs().map(|leg| leg.block(leg.id(), below)).collect(),
        BaseStyle::TaperedLegs => legs().map(|leg| legs::tapered(furniture, &leg, below)).collect(),
        BaseStyle::TurnedLegs => legs().map(|leg| legs::turned(furniture, &leg, below)).collect(),
        BaseStyle::BunFeet => legs().map(|leg| legs::bun(furniture, &leg, below)).collect(),
        BaseStyle::SplayedLegs => legs().map(|leg| legs::splayed(furniture, &leg, below)).collect(),
    }
}

/// The hollow inside the plinth from front to back; `None` if there is none.
pub(super) fn hollow(furniture: &Furniture, y: Span) -> Option<Span> {
    let board = furniture.length(&BOARD).as_metres();
    let front = y[0] + furniture.length(&PLINTH_SETBACK).as_metres() + board;
    matches!(furniture.styles.base, BaseStyle::Plinth | BaseStyle::CutOutPlinth)
        .then_some([front, y[1] - board])
}

/// The four boards of a plinth, with openings of height `cut_out` cut into the front and the sides.
fn plinth(furniture: &Furniture, [x, y]: [Span; 2], cut_out: Option<f64>) -> Vec<Part> {
    let board = furniture.length(&BOARD).as_metres();
    let foot = furniture.length(&FOOT_WIDTH).as_metres();
    let below = [0.0, height(furniture)];
    let front = y[0] + furniture.length(&PLINTH_SETBACK).as_metres();
    let between = [front + board, y[1] - board];
    let sides = [(1, [x[0], x[0] + board]), (2, [x[1] - board, x[1]])];
    let back = block(PartId::only(PartKind::PlinthBack), x, [between[1], y[1]], below);
    let front_id = PartId::only(PartKind::PlinthFront);
    let side_id = |n| PartId::nth(PartKind::PlinthSide, n);
    let front_y = [front, between[0]];
    let mut parts = match cut_out {
        None => vec![
            block(front_id, x, front_y, below),
            block(side_id(1), sides[0].1, between, below),
            block(side_id(2), sides[1].1, between, below),
        ],
        Some(rise) => {
            let across = CutBoard::between(x, [x[0] + foot, x[1] - foot], below[1], rise);
            let along = CutBoard::between(between, [front + foot, y[1] - foot], below[1], rise);
            vec![
                across.facing_front(front_id, front_y),
                along.facing_side(side_id(1), sides[0].1),
                along.facing_side(side_id(2), sides[1].1),
            ]
        }
    };
    parts.push(back);
    parts
}

fn bracket_feet(furniture: &Furniture, [x, y]: [Span; 2]) -> Vec<Part> {
    let board = furniture.length(&BOARD).as_metres();
    let wide = furniture.length(&FOOT_WIDTH).as_metres();
    let height = height(furniture);
    let front = y[0] + furniture.length(&PLINTH_SETBACK).as_metres();
    let front_y = [front, front + board];
    let (left, right) = ([x[0], x[0] + board], [x[1] - board, x[1]]);
    let front_foot = |n, end, towards| {
        CutBoard::foot(end, end + towards * wide, height)
            .facing_front(PartId::nth(PartKind::FootFront, n), front_y)
    };
    // The front feet of the sides are measured from the front of the front board, but begin behind it.
    let ahead = CutBoard::foot(front + board, front + wide, height);
    let behind = CutBoard::foot(y[1], y[1] - wide, height);
    let side_foot = |n, foot: &CutBoard, x| foot.facing_side(PartId::nth(PartKind::FootSide, n), x);
    vec![
        front_foot(1, x[0], 1.0),
        front_foot(2, x[1], -1.0),
        side_foot(1, &ahead, left),
        side_foot(2, &ahead, right),
        side_foot(3, &behind, left),
        side_foot(4, &behind, right),
    ]
}

/// An upright board with a curve cut into its foot, as (along, up).
struct CutBoard {
    outline: Vec<Outline>,
}

/// A piece of the outline; for a curve with its exact length.
struct Outline {
    side: Edge,
    points: Vec<Point2>,
    girth: Option<f64>,
}

#[derive(Clone, Copy)]
enum Edge {
    Bottom,
    CutOut,
    High,
    Top,
    Low,
}

impl CutBoard {
    /// A board over `whole` from which an opening is cut over `cut`, its corners quarter circles.
    fn between(whole: Span, cut: Span, height: f64, rise: f64) -> Self {
        let left = equal_area_arc([cut[0] + rise, 0.0], rise, PI, FRAC_PI_2, CHORD);
        let right = equal_area_arc([cut[1] - rise, 0.0], rise, FRAC_PI_2, 0.0, CHORD);
        let girth = PI * rise + (cut[1] - cut[0] - 2.0 * rise);
        CutBoard {
            outline: vec![
                line(Edge::Bottom, [whole[0], 0.0], [cut[0], 0.0]),
                Outline {
                    side: Edge::CutOut,
                    points: left.into_iter().chain(right).collect(),
                    girth: Some(girth),
                },
                line(Edge::Bottom, [cut[1], 0.0], [whole[1], 0.0]),
                line(Edge::High, [whole[1], 0.0], [whole[1], height]),
                line(Edge::Top, [whole[1], height], [whole[0], height]),
                line(Edge::Low, [whole[0], height], [whole[0], 0.0]),
            ],
        }
    }

    /// A foot between its outer end and where its curve leaves the floor; the curve goes on away from the end.
    fn foot(end: f64, inner: f64, height: f64) -> Self {
        let girth = Some(FRAC_PI_2 * height);
        let curve = |points| Outline {
            side: Edge::CutOut,
            points,
            girth,
        };
        let outline = if end < inner {
            let tip = inner + height;
            vec![
                line(Edge::Bottom, [end, 0.0], [inner, 0.0]),
                curve(equal_area_arc([tip, 0.0], height, PI, FRAC_PI_2, CHORD)),
                line(Edge::Top, [tip, height], [end, height]),
                line(Edge::Low, [end, height], [end, 0.0]),
            ]
        } else {
            let tip = inner - height;
            vec![
                line(Edge::Bottom, [inner, 0.0], [end, 0.0]),
                line(Edge::High, [end, 0.0], [end, height]),
                line(Edge::Top, [end, height], [tip, height]),
                curve(equal_area_arc([tip, 0.0], height, FRAC_PI_2, 0.0, CHORD)),
            ]
        };
        CutBoard { outline }
    }

    /// In front of the piece: along is x.
    fn facing_front(&self, id: PartId, y: Span) -> Part {
        // Along x, up z: the section faces the front, so it is extruded from the rear forward.
        self.part(
            id,
            Vector3::x(),
            [Side::Left, Side::Right],
            Point3::new(0.0, y[1], 0.0),
            y[1] - y[0],
        )
    }

    /// At a side: along is y.
    fn facing_side(&self, id: PartId, x: Span) -> Part {
        self.part(
            id,
            Vector3::y(),
            [Side::Front, Side::Back],
            Point3::new(x[0], 0.0, 0.0),
            x[1] - x[0],
        )
    }

    fn part(&self, id: PartId, along: Vector3, [low, high]: [Side; 2], origin: Point3, thick: f64) -> Part {
        let outline = self.outline.iter().map(|piece| {
            let side = match piece.side {
                Edge::Bottom => Side::Bottom,
                Edge::CutOut => Side::CutOut,
                Edge::High => high,
                Edge::Top => Side::Top,
                Edge::Low => low,
            };
            match piece.girth {
                Some(girth) => Run::curved(side, piece.points.clone(), girth, 0.0),
                None => Run::straight(side, piece.points.clone()),
            }
        });
        let prism = Prism {
            plane: Plane {
                origin,
                u: along,
                v: Vector3::z(),
            },
            outline: outline.collect(),
            holes: vec![],
            start: Cut::square(0.0),
            end: Cut::square(thick),
        };
        prism.part(id)
    }
}

fn line(side: Edge, from: Point2, to: Point2) -> Outline {
    Outline {
        side,
        points: vec![from, to],
        girth: None,
    }
}
