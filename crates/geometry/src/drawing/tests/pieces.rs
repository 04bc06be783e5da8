//! Generated pieces of solids that keep apart: each in a cell of its own, now and then filling it so that it lies
//! against its neighbors.

use std::f64::consts::FRAC_PI_2;
use std::fmt;

use nalgebra::{Isometry3, Translation3, UnitQuaternion};
use proptest::prelude::*;
use proptest::sample::select;

use crate::face::{Plane, Side};
use crate::profile::{Profile, Shape};
use crate::solid::{Cut, Faces, Prism, Run, Turning, Worked, frustum, slab, splayed_cone};
use crate::{Assembly, Exposure, Part, PartId, PartKind, Point2, Point3, Space, Vector3, View};

/// The side of a cell, meters.
const CELL: f64 = 0.2;

/// Solids of one cell from `[0, 0, 0]` to `[CELL, CELL, CELL]`, and which way the cell is turned.
#[derive(Clone, Debug)]
struct Filling {
    solid: Solid,
    turn: usize,
}

#[derive(Clone, Debug)]
enum Solid {
    /// A block, as shares of the cell.
    Block([f64; 3], [f64; 3]),
    /// A board with an opening, and a rod through it.
    Threaded(f64, f64),
    /// A bar of a section that is not convex.
    Ell(f64),
    /// A bar with a molded side.
    Moulded(Shape),
    /// A slab with worked edges.
    Worked(Shape, [bool; 4]),
    /// A turned post: radii as shares, from the head down.
    Turned(Vec<f64>),
    /// A turned post in a board: it is thicker above and below the board than its hole is wide.
    Collared,
    /// A ball with a groove.
    Grooved(f64),
    Tapered(f64),
    Splayed(f64, f64),
}

fn solid() -> impl Strategy<Value = Solid> {
    let low = prop_oneof![2 => Just(0.0), 1 => 0.0..0.4];
    let high = prop_oneof![2 => Just(1.0), 1 => 0.5..1.0];
    let shape = || {
        select(vec![
            Shape::Ogee,
            Shape::Cove,
            Shape::Roundover,
            Shape::Ovolo,
            Shape::BeadAndCove,
        ])
    };
    prop_oneof![
        4 => ([low.clone(), low.clone(), low], [high.clone(), high.clone(), high])
            .prop_map(|(low, high)| Solid::Block(low, high)),
        1 => (0.1..0.4, 0.05..0.3).prop_map(|(hole, rod)| Solid::Threaded(hole, hole * rod / 0.35)),
        1 => (0.2..0.8).prop_map(Solid::Ell),
        1 => shape().prop_map(Solid::Moulded),
        1 => (shape(), prop::array::uniform4(any::<bool>())).prop_map(|(shape, edges)| Solid::Worked(shape, edges)),
        2 => prop::collection::vec(0.2..1.0f64, 3..6).prop_map(Solid::Turned),
        1 => Just(Solid::Collared),
        1 => (0.2..0.9).prop_map(Solid::Grooved),
        1 => (0.1..0.9).prop_map(Solid::Tapered),
        1 => (-0.2..0.2, -0.2..0.2).prop_map(|(x, y)| Solid::Splayed(x, y)),
    ]
}

/// A piece of up to eight filled cells. What stands in the cells is printed where a test fails.
#[derive(Clone)]
pub(super) struct Piece {
    cells: Vec<Option<Filling>>,
    /// Whether what looks down is a surface of its own, which divides curved faces.
    divided: bool,
    pub(super) assembly: Assembly,
}

impl fmt::Debug for Piece {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "divided: {}, {:#?}", self.divided, self.cells)
    }
}

impl Piece {
    fn of(cells: Vec<Option<Filling>>, divided: bool) -> Self {
        let mut parts = Vec::new();
        for (place, filling) in cells.iter().enumerate() {
            let at = [place % 2, place / 2 % 2, place / 4].map(|n| n as f64 * CELL);
            if let Some(filling) = filling {
                parts.extend(filled(filling, at, parts.len()));
            }
        }
        let everywhere = ([f64::NEG_INFINITY; 3], [f64::INFINITY; 3]);
        let below = Space::block(Exposure::Underneath, everywhere.0, everywhere.1).facing(-Vector3::z());
        let spaces = if divided { vec![below] } else { vec![] };
        Piece {
            cells,
            divided,
            assembly: Assembly::new(parts, spaces),
        }
    }
}

pub(super) fn piece() -> impl Strategy<Value = Piece> {
    let filling = (solid(), 0..6usize).prop_map(|(solid, turn)| Filling { solid, turn });
    let cells = prop::collection::vec(prop::option::weighted(0.7, filling), 8);
    let cells = cells.prop_filter("no solid at all", |cells| cells.iter().any(Option::is_some));
    (cells, any::<bool>()).prop_map(|(cells, divided)| Piece::of(cells, divided))
}

/// Blocks that stand anyhow and run into each other.
pub(super) fn heap() -> impl Strategy<Value = Assembly> {
    let block = (
        prop::array::uniform3(0.0..0.4f64),
        prop::array::uniform3(0.05..0.6f64),
        0.0..3.0f64,
    );
    prop::collection::vec(block, 2..6).prop_map(|blocks| {
        let part = |(n, (low, size, turn)): (usize, ([f64; 3], [f64; 3], f64))| {
            let high = std::array::from_fn(|axis| low[axis] + size[axis]);
            let block = Part::block(PartId::nth(PartKind::Board, n + 1), low, high);
            block.moved(&Isometry3::rotation(Vector3::new(0.3, 0.4, 0.87) * turn))
        };
        Assembly::new(blocks.into_iter().enumerate().map(part).collect(), vec![])
    })
}

/// Views from everywhere, the straight ones and turned ones alike.
pub(super) fn view() -> impl Strategy<Value = View> {
    let turned = |turn, tilt| View::Turned { turn, tilt };
    prop_oneof![
        1 => Just(View::Front),
        1 => Just(View::Side),
        1 => Just(View::Left),
        1 => Just(View::Top),
        1 => Just(View::Cabinet),
        1 => (0..8, -2..=2).prop_map(move |(turn, tilt)| {
            turned(f64::from(turn) * FRAC_PI_2 / 2.0, f64::from(tilt) * FRAC_PI_2 / 2.0)
        }),
        4 => (-3.2..3.2, -1.6..1.6).prop_map(move |(turn, tilt)| turned(turn, tilt)),
    ]
}

/// The cell in its place: turned about its middle so that one of its sides is above, then moved.
fn filled(filling: &Filling, at: [f64; 3], number: usize) -> Vec<Part> {
    let middle = Translation3::new(CELL / 2.0, CELL / 2.0, CELL / 2.0);
    let axis = [Vector3::x_axis(), Vector3::y_axis(), Vector3::z_axis()][filling.turn % 3];
    let turn = UnitQuaternion::from_axis_angle(&axis, FRAC_PI_2 * (filling.turn / 3) as f64);
    let to = Translation3::from(at) * middle * turn * middle.inverse();
    let id = |n: usize| PartId::nth(PartKind::Board, 1 + number + n);
    let to: Isometry3<f64> = to;
    solids(&filling.solid, id)
        .into_iter()
        .map(|part| part.moved(&to))
        .collect()
}

#[expect(clippy::too_many_lines, reason = "one arm for each solid")]
fn solids(solid: &Solid, id: impl Fn(usize) -> PartId) -> Vec<Part> {
    let (c, half) = (CELL, CELL / 2.0);
    match solid {
        Solid::Block(low, high) => vec![Part::block(id(0), low.map(|x| x * c), high.map(|x| x * c))],
        Solid::Threaded(hole, rod) => {
            let square = |half_side: f64| {
                let (low, high) = (half - half_side * c, half + half_side * c);
                vec![[low, low], [low, high], [high, high], [high, low]]
            };
            let board = prism(rectangle(c, c), vec![square(*hole)], 0.4 * c, 0.5 * c).part(id(0));
            let (low, high) = (half - rod * c, half + rod * c);
            vec![board, Part::block(id(1), [low, low, 0.0], [high, high, c])]
        }
        Solid::Ell(arm) => {
            let arm = arm * c;
            let outline = vec![[0.0, 0.0], [c, 0.0], [c, arm], [arm, arm], [arm, c], [0.0, c]];
            vec![prism(straight(outline), vec![], 0.0, c).part(id(0))]
        }
        Solid::Moulded(shape) => {
            let mut line = Profile::standard(*shape, half, half).line(5e-4);
            line.iter_mut()
                .for_each(|point| *point = [c - point[0], half + point[1]]);
            let end = line[line.len() - 1];
            let back = vec![end, [end[0], c], [0.0, c], [0.0, 0.0], [c, 0.0], line[0]];
            let outline = vec![
                Run::curved(Side::Moulded, line, 1.0, 0.0),
                Run::straight(Side::Back, back),
            ];
            vec![prism(outline, vec![], 0.0, c).part(id(0))]
        }
        Solid::Worked(shape, edges) => {
            let profile = Profile::standard(*shape, 0.2 * c, 0.3 * c);
            let worked = Worked {
                profile: &profile,
                edges: *edges,
            };
            vec![slab(id(0), [0.0; 3], [c, c, half], Faces::Up, &worked)]
        }
        Solid::Turned(radii) => {
            let step = c / (radii.len() - 1) as f64;
            let first = Turning::from(radii[0] * half, c);
            let lines = radii.iter().enumerate().skip(1);
            let turning = lines.fold(first, |turning, (n, radius)| {
                turning.line_to(
                    radius * half,
                    if n + 1 == radii.len() {
                        0.0
                    } else {
                        c - n as f64 * step
                    },
                )
            });
            vec![turning.part(id(0), Point3::new(half, half, 0.0))]
        }
        Solid::Collared => {
            let turning = Turning::from(0.9 * half, c)
                .line_to(0.9 * half, 0.7 * c)
                .line_to(0.3 * half, 0.6 * c)
                .line_to(0.3 * half, 0.4 * c)
                .line_to(0.9 * half, 0.3 * c)
                .line_to(0.9 * half, 0.0);
            let hole = (0..8).map(|n| {
                let (sin, cos) = libm::sincos(-FRAC_PI_2 * f64::from(n) / 2.0);
                [half + 0.45 * half * cos, half + 0.45 * half * sin]
            });
            let collar = prism(rectangle(c, c), vec![hole.collect()], 0.45 * c, 0.55 * c);
            vec![
                turning.part(id(0), Point3::new(half, half, 0.0)),
                collar.part(id(1)),
            ]
        }
        Solid::Grooved(depth) => {
            let turning = Turning::from(0.02 * half, 0.99 * c)
                .arc([0.0, half], 0.98 * half, FRAC_PI_2, 0.3)
                .line_to((1.0 - depth) * half, half)
                .arc([0.0, half], 0.98 * half, -0.3, -FRAC_PI_2);
            vec![turning.part(id(0), Point3::new(half, half, 0.0))]
        }
        Solid::Tapered(foot) => {
            let (low, high) = (half - foot * half, half + foot * half);
            vec![frustum(
                id(0),
                ([[low, low], [high, half]], 0.0),
                ([[0.0, 0.0], [c, c]], c),
            )]
        }
        Solid::Splayed(x, y) => {
            let head = (Point3::new(half, half, c), 0.3 * half);
            let foot = (Point3::new(half + x * c, half + y * c, 0.0), 0.15 * half);
            vec![splayed_cone(id(0), head, foot)]
        }
    }
}

fn rectangle(width: f64, height: f64) -> Vec<Run> {
    straight(vec![[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]])
}

/// A closed outline of straight sides, in two faces.
fn straight(mut points: Vec<Point2>) -> Vec<Run> {
    let rest = points.split_off(2);
    let first = Run::straight(Side::Front, [points.clone(), vec![rest[0]]].concat());
    vec![first, Run::straight(Side::Back, [rest, vec![points[0]]].concat())]
}

fn prism(outline: Vec<Run>, holes: Vec<Vec<Point2>>, start: f64, end: f64) -> Prism {
    Prism {
        plane: Plane {
            origin: Point3::origin(),
            u: Vector3::x(),
            v: Vector3::y(),
        },
        outline,
        holes,
        start: Cut::square(start),
        end: Cut::square(end),
    }
}
