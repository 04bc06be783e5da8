//! Tables: a top on legs, with aprons, drawers, stretchers and a shelf below.

use super::Furniture;
use super::counts::DRAWERS;
use super::fields::{
    APRON_HEIGHT, APRON_RAIL, APRON_RISE, APRON_SETBACK, APRON_THICKNESS, BOARD, FRONT_THICKNESS, GAP,
    HEIGHT, LEG_WIDTH, OVERHANG_FRONT, OVERHANG_SIDE, SHELF_HEIGHT, STRETCHER_HEIGHT, STRETCHER_SIZE,
    TOP_DEPTH, TOP_THICKNESS, TOP_WIDTH,
};
use super::layout::{Span, length_of};
use super::legs::{self, Corner};
use super::spaces;
use super::styles::{ApronStyle, LegStyle, LowerShelf, Stretchers};
use super::top::top_board;
use super::unit::block;
use crate::assembly::Assembly;
use crate::exposure::Setting;
use crate::face::{Plane, Side};
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;
use crate::profile::equal_area_arc;
use crate::region::Point2;
use crate::solid::{CHORD, Cut, Prism, Run};
use crate::space::{Exposure, Space};
use crate::{Point3, Vector3};

/// The main coordinates of a table, meters.
pub(super) struct TableLayout {
    /// The rectangle of the legs, outside to outside.
    pub(super) x: Span,
    pub(super) y: Span,
    /// The underside of the top.
    pub(super) under: f64,
    /// The lower end of aprons and leg heads.
    pub(super) apron_foot: f64,
    pub(super) leg: f64,
    /// Between the legs, along and across.
    pub(super) between: [Span; 2],
    /// The aprons from outside to inside: front, back, left, right.
    pub(super) aprons: [Span; 4],
}

impl TableLayout {
    pub(super) fn of(furniture: &Furniture) -> Self {
        let metres = |field| furniture.length(field).as_metres();
        let (side, front) = (metres(&OVERHANG_SIDE), metres(&OVERHANG_FRONT));
        let x = [side, metres(&TOP_WIDTH) - side];
        let y = [front, metres(&TOP_DEPTH) - front];
        let (leg, setback, thick) = (
            metres(&LEG_WIDTH),
            metres(&APRON_SETBACK),
            metres(&APRON_THICKNESS),
        );
        let under = metres(&HEIGHT) - metres(&TOP_THICKNESS);
        let low = |span: Span| [span[0] + setback, span[0] + setback + thick];
        let high = |span: Span| [span[1] - setback - thick, span[1] - setback];
        TableLayout {
            under,
            apron_foot: under - metres(&APRON_HEIGHT),
            leg,
            between: [[x[0] + leg, x[1] - leg], [y[0] + leg, y[1] - leg]],
            aprons: [low(y), high(y), low(x), high(x)],
            x,
            y,
        }
    }
}

/// Builds a table. The measurements must have passed the check.
pub(super) fn build(furniture: &Furniture) -> Assembly {
    let at = TableLayout::of(furniture);
    let styles = &furniture.styles;
    let mut parts = vec![top(furniture)];
    parts.extend(leg_parts(furniture, &at));
    let mut spaces = vec![spaces::floor()];
    if styles.legs != LegStyle::Splayed {
        parts.extend(aprons(furniture, &at));
        parts.extend(drawer_fronts(furniture, &at));
        let [front, back, left, right] = at.aprons;
        spaces.push(Space::block(
            Exposure::Underneath,
            [left[1], front[1], at.apron_foot],
            [right[0], back[0], at.under],
        ));
        spaces.extend(behind_fronts(furniture, &at));
    }
    if styles.legs == LegStyle::Square {
        parts.extend(stretchers(furniture, &at));
        parts.extend(lower_shelf(furniture, &at));
    }
    let gap = furniture.length(&GAP).as_metres();
    Assembly::new(parts, spaces).standing(Setting::default().with_gap(gap))
}

fn top(furniture: &Furniture) -> Part {
    let metres = |field| furniture.length(field).as_metres();
    let height = metres(&HEIGHT);
    top_board(
        furniture,
        PartId::only(PartKind::Top),
        [0.0, metres(&TOP_WIDTH)],
        [0.0, metres(&TOP_DEPTH)],
        [height - metres(&TOP_THICKNESS), height],
        [true; 4],
    )
}

fn leg_parts(furniture: &Furniture, at: &TableLayout) -> Vec<Part> {
    let corners = legs::corners(furniture, [at.x, at.y], 0.0);
    let below = [0.0, at.apron_foot];
    let with_head = |leg: &dyn Fn(&Corner) -> Part| -> Vec<Part> {
        let pairs = corners.iter().map(|corner| {
            let head = PartId::nth(PartKind::LegHead, corner.number);
            [corner.block(head, [at.apron_foot, at.under]), leg(corner)]
        });
        pairs.flatten().collect()
    };
    match furniture.styles.legs {
        LegStyle::Square => corners.iter().map(|c| c.block(c.id(), [0.0, at.under])).collect(),
        LegStyle::Tapered => with_head(&|corner| legs::tapered(furniture, corner, below)),
        LegStyle::Turned => with_head(&|corner| legs::turned(furniture, corner, below)),
        LegStyle::Splayed => corners
            .iter()
            .map(|corner| legs::splayed(furniture, corner, [0.0, at.under]))
            .collect(),
    }
}

/// The openings for drawers in the front apron, as spans across, and their height.
pub(super) fn openings(furniture: &Furniture, at: &TableLayout) -> (Vec<Span>, Span) {
    let metres = |field| furniture.length(field).as_metres();
    let rail = metres(&APRON_RAIL);
    let rise = match furniture.styles.apron {
        ApronStyle::Arched => metres(&APRON_RISE),
        ApronStyle::Straight => 0.0,
    };
    let count = furniture.count(&DRAWERS) as usize;
    let [across, _] = at.between;
    let width = (length_of(across) - rail * (count + 1) as f64) / count.max(1) as f64;
    let spans = (0..count)
        .map(|i| across[0] + rail + i as f64 * (width + rail))
        .map(|left| [left, left + width])
        .collect();
    (spans, [at.apron_foot + rise + rail, at.under - rail])
}

fn aprons(furniture: &Furniture, at: &TableLayout) -> Vec<Part> {
    let [front, back, left, right] = at.aprons;
    let [across, along] = at.between;
    let z = [at.apron_foot, at.under];
    let arch =
        (furniture.styles.apron == ApronStyle::Arched).then(|| furniture.length(&APRON_RISE).as_metres());
    let (holes, hole_z) = openings(furniture, at);
    let apron = |kind, stands: Stands, length, thick, holes: &[Span]| {
        let board = Apron {
            length,
            z,
            arch,
            holes: holes.iter().map(|span| (*span, hole_z)).collect(),
        };
        board.part(PartId::only(kind), stands, thick)
    };
    vec![
        apron(PartKind::ApronFront, Stands::Before, across, front, &holes),
        apron(PartKind::ApronBack, Stands::Before, across, back, &[]),
        apron(PartKind::ApronLeft, Stands::Aside, along, left, &[]),
        apron(PartKind::ApronRight, Stands::Aside, along, right, &[]),
    ]
}

#[derive(Clone, Copy, PartialEq)]
enum Stands {
    /// Its length runs along x.
    Before,
    /// Its length runs along y.
    Aside,
}

struct Apron {
    length: Span,
    z: Span,
    arch: Option<f64>,
    holes: Vec<(Span, Span)>,
}

impl Apron {
    fn part(&self, id: PartId, stands: Stands, thick: Span) -> Part {
        if self.arch.is_none() && self.holes.is_empty() {
            return match stands {
                Stands::Before => block(id, self.length, thick, self.z),
                Stands::Aside => block(id, thick, self.length, self.z),
            };
        }
        let (u, origin, ends) = match stands {
            Stands::Before => (
                Vector3::x(),
                Point3::new(0.0, thick[1], 0.0),
                [Side::Left, Side::Right],
            ),
            Stands::Aside => (
                Vector3::y(),
                Point3::new(thick[0], 0.0, 0.0),
                [Side::Front, Side::Back],
            ),
        };
        let prism = Prism {
            plane: Plane {
                origin,
                u,
                v: Vector3::z(),
            },
            outline: self.outline(ends),
            holes: self.holes.iter().map(|&(x, z)| hole(x, z)).collect(),
            start: Cut::square(0.0),
            end: Cut::square(length_of(thick)),
        };
        prism.part(id)
    }

    fn outline(&self, [low, high]: [Side; 2]) -> Vec<Run> {
        let ([a, b], [foot, head]) = (self.length, self.z);
        vec![
            self.lower_edge(),
            Run::straight(high, vec![[b, foot], [b, head]]),
            Run::straight(Side::Top, vec![[b, head], [a, head]]),
            Run::straight(low, vec![[a, head], [a, foot]]),
        ]
    }

    fn lower_edge(&self) -> Run {
        let ([a, b], foot) = (self.length, self.z[0]);
        let Some(rise) = self.arch else {
            return Run::straight(Side::Bottom, vec![[a, foot], [b, foot]]);
        };
        // The circle through both ends and the highest point (intersecting chords).
        let half = (b - a) / 2.0;
        let radius = (half * half + rise * rise) / (2.0 * rise);
        let centre = [(a + b) / 2.0, foot + rise - radius];
        let angle = libm::atan2(foot - centre[1], half);
        let from = std::f64::consts::PI - angle;
        let points = equal_area_arc(centre, radius, from, angle, CHORD);
        Run::curved(Side::CutOut, points, radius * (from - angle), 0.0)
    }
}

/// A rectangular hole, clockwise.
fn hole(x: Span, z: Span) -> Vec<Point2> {
    vec![[x[0], z[0]], [x[0], z[1]], [x[1], z[1]], [x[1], z[0]]]
}

fn drawer_fronts(furniture: &Furniture, at: &TableLayout) -> Vec<Part> {
    let gap = furniture.length(&GAP).as_metres();
    let front = at.aprons[0][0];
    let y = [front, front + furniture.length(&FRONT_THICKNESS).as_metres()];
    let (openings, [foot, head]) = openings(furniture, at);
    let fronts = openings.iter().enumerate().map(|(c, x)| {
        let id = PartId::in_row(PartKind::DrawerFront, 1, c + 1);
        block(id, [x[0] + gap, x[1] - gap], y, [foot + gap, head - gap])
    });
    fronts.collect()
}

/// The rest of the openings behind fronts that are thinner than the apron, visible only from below.
fn behind_fronts(furniture: &Furniture, at: &TableLayout) -> Vec<Space> {
    let [front, inner] = at.aprons[0];
    let rear = front + furniture.length(&FRONT_THICKNESS).as_metres();
    if rear >= inner {
        return vec![];
    }
    let (openings, [foot, head]) = openings(furniture, at);
    let pocket = |x: Span| Space::block(Exposure::Underneath, [x[0], rear, foot], [x[1], inner, head]);
    openings.into_iter().map(pocket).collect()
}

fn stretchers(furniture: &Furniture, at: &TableLayout) -> Vec<Part> {
    let metres = |field| furniture.length(field).as_metres();
    let (size, foot) = (metres(&STRETCHER_SIZE), metres(&STRETCHER_HEIGHT));
    let z = [foot, foot + size];
    let middle = |at: f64| [at - size / 2.0, at + size / 2.0];
    let half = at.leg / 2.0;
    let [across, along] = at.between;
    let (left, right) = (middle(at.x[0] + half), middle(at.x[1] - half));
    let sides = [
        block(PartId::only(PartKind::StretcherLeft), left, along, z),
        block(PartId::only(PartKind::StretcherRight), right, along, z),
    ];
    match furniture.styles.stretchers {
        Stretchers::None => vec![],
        Stretchers::Box => {
            let front = middle(at.y[0] + half);
            let back = middle(at.y[1] - half);
            let mut parts = vec![
                block(PartId::only(PartKind::StretcherFront), across, front, z),
                block(PartId::only(PartKind::StretcherBack), across, back, z),
            ];
            parts.extend(sides);
            parts
        }
        Stretchers::H => {
            let y = middle((at.y[0] + at.y[1]) / 2.0);
            let mut parts = sides.to_vec();
            parts.push(block(
                PartId::only(PartKind::StretcherMiddle),
                [left[1], right[0]],
                y,
                z,
            ));
            parts
        }
    }
}

fn lower_shelf(furniture: &Furniture, at: &TableLayout) -> Option<Part> {
    if furniture.styles.lower_shelf == LowerShelf::None {
        return None;
    }
    let upper = furniture.length(&SHELF_HEIGHT).as_metres();
    let board = furniture.length(&BOARD).as_metres();
    Some(block(
        PartId::only(PartKind::LowerShelf),
        at.between[0],
        at.y,
        [upper - board, upper],
    ))
}
