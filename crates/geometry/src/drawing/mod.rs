//! Drawings: what is seen of a piece from one side, with hidden parts removed by the geometry.
//!
//! The projection is parallel and true to scale, as in a working drawing. What is seen of a surface is what is left
//! of its projection when everything nearer to the eye is taken away.

mod cut;
mod joints;
mod lines;
mod order;
mod sheet;
mod spans;
#[cfg(test)]
mod tests;
mod tree;

use std::ops::Range;

use crate::face::Facet;
use crate::region::{Point2, Region};
use crate::surface::{Facets, Surface, SurfaceId};
use crate::{Point3, SMALLEST_AREA, Vector3};

use cut::{Contour, Cutter, Shapes, region, size, tidy};
use joints::Joints;
use lines::{Polyline, lines, outline};
use order::Order;
use sheet::{Axes, Grid, Seen, Shadow, seen};

/// From where a piece is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum View {
    /// From the front.
    Front,
    /// From the right hand side; the front is at the left of the drawing.
    Side,
    /// From above; the front is at the foot of the drawing.
    Top,
    /// From the front, turned about the upright and tilted from above; angles in radians.
    Turned {
        /// How far to the right of the front the eye stands.
        turn: f64,
        /// How far above the piece the eye stands.
        tilt: f64,
    },
}

impl View {
    fn axes(self) -> Axes {
        let [right, up, eye] = match self {
            View::Front => [Vector3::x(), Vector3::z(), -Vector3::y()],
            View::Side => [Vector3::y(), Vector3::z(), Vector3::x()],
            View::Top => [Vector3::x(), Vector3::y(), Vector3::z()],
            View::Turned { turn, tilt } => {
                let (sin_turn, cos_turn) = libm::sincos(turn);
                let (sin_tilt, cos_tilt) = libm::sincos(tilt);
                let right = Vector3::new(cos_turn, sin_turn, 0.0);
                let eye = Vector3::new(sin_turn * cos_tilt, -cos_turn * cos_tilt, sin_tilt);
                [right, eye.cross(&right), eye]
            }
        };
        Axes { right, up, eye }
    }

    /// Where a point of the room stands in the drawing.
    pub fn project(self, point: &Point3) -> Point2 {
        let Axes { right, up, .. } = self.axes();
        [point.coords.dot(&right), point.coords.dot(&up)]
    }
}

/// The visible part of one surface.
#[derive(Clone, Debug, PartialEq)]
pub struct VisibleFace {
    /// The surface that is seen.
    pub surface: SurfaceId,
    /// What is seen of it, in the coordinates of the drawing: metres, y upwards.
    pub region: Region,
    /// The lines to draw, each a row of points; a closed one ends where it begins. They are the edge of the region
    /// and, within it, where the surface folds sharply or hides part of itself, without the seams between the facets
    /// that stand in for a curve.
    pub lines: Vec<Vec<Point2>>,
    /// The region by how much light falls on it: one shade for a flat surface, several for a folded or curved one.
    pub shades: Vec<Shade>,
}

/// What is seen of a surface at one angle to the eye.
#[derive(Clone, Debug, PartialEq)]
pub struct Shade {
    /// The part of the visible region, in the coordinates of the drawing.
    pub region: Region,
    /// How squarely it looks at the eye: 1 face on, near 0 edge on.
    pub squareness: f64,
}

/// A dimension line of a drawing, in the coordinates of the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension {
    /// The measurement that it shows.
    pub field: crate::FieldId,
    /// Where the measured length begins.
    pub from: Point2,
    /// Where it ends.
    pub to: Point2,
    /// Which way the dimension line is set off from the piece: a direction of length 1.
    pub away: Point2,
    /// In which row from the piece it stands; 1 is the nearest.
    pub row: u8,
}

/// A piece as seen from one side.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// What is seen, in the order of the surfaces.
    pub faces: Vec<VisibleFace>,
    /// Everything that is seen as one region: its contours are the outline of the piece.
    pub outline: Region,
}

impl Drawing {
    /// Draws surfaces as seen from one side.
    ///
    /// The surfaces must bound solids that do not run into each other, as [`crate::Assembly::surfaces`] gives
    /// them.
    pub fn of(surfaces: &[Surface], view: View) -> Self {
        let axes = view.axes();
        match seen(surfaces, &axes) {
            Some((grid, seen)) => {
                let order = Order::of(&seen);
                Draughtsman::new(surfaces, &axes, &grid, &seen, &order).drawing()
            },
            None => Drawing {
                faces: vec![],
                outline: Region::EMPTY,
            },
        }
    }

    /// The smallest upright rectangle around the drawing: its lower left and upper right corner.
    pub fn bounds(&self) -> (Point2, Point2) {
        self.outline.bounds()
    }
}

/// How many shades lie between edge on and face on: their steps are below what one sees in a drawing.
const SHADES: f64 = 24.0;

/// Facets of like squareness.
#[derive(Default)]
struct Level {
    /// The sum of their squareness, and how many they are.
    sum: f64,
    count: f64,
    /// Those that are partly hidden.
    cut: Vec<usize>,
}

impl Level {
    fn add(&mut self, place: usize, seen: &[Seen], order: &Order) {
        self.sum += seen[place].squareness;
        self.count += 1.0;
        if !order.before(place).is_empty() {
            self.cut.push(place);
        }
    }
}

/// Makes a drawing of what looks at the eye.
struct Draughtsman<'a> {
    surfaces: &'a [Surface],
    axes: &'a Axes,
    grid: &'a Grid,
    seen: &'a [Seen],
    order: &'a Order,
    cutter: Cutter,
    /// Closed lines around all that may be seen: what they enclose is the outline.
    around: Vec<Contour>,
}

impl<'a> Draughtsman<'a> {
    fn new(
        surfaces: &'a [Surface],
        axes: &'a Axes,
        grid: &'a Grid,
        seen: &'a [Seen],
        order: &'a Order,
    ) -> Self {
        Draughtsman {
            surfaces,
            axes,
            grid,
            seen,
            order,
            cutter: Cutter::new(),
            around: Vec::new(),
        }
    }

    fn drawing(mut self) -> Drawing {
        let mut faces = Vec::new();
        let (seen, surfaces) = (self.seen, self.surfaces);
        let face = |facet: &Seen| {
            let id = &surfaces[facet.surface].id;
            (id.part, id.side)
        };
        let mut from = 0;
        for run in seen.chunk_by(|a, b| face(a) == face(b)) {
            let run = from..from + run.len();
            from = run.end;
            self.face(run, &mut faces);
        }
        // What is wholly hidden adds nothing to the outline.
        let outline = self.cutter.cut(&self.around, []);
        Drawing {
            faces,
            outline: region(&outline, self.grid),
        }
    }

    /// All that is seen of one face of a part, of which `run` are the facets.
    fn face(&mut self, run: Range<usize>, into: &mut Vec<VisibleFace>) {
        let mut joints = None;
        let mut from = run.start;
        for own in self.seen[run.clone()].chunk_by(|a, b| a.surface == b.surface) {
            let own = from..from + own.len();
            from = own.end;
            let surface = &self.surfaces[self.seen[own.start].surface];
            let face = match &surface.facets {
                Facets::One(_) => self.flat(surface, own.start),
                Facets::Many(_) => {
                    let joints = joints.get_or_insert_with(|| Joints::of(self.seen, run.clone()));
                    self.curved(surface, own, joints)
                }
            };
            into.extend(face.filter(|face| face.region.area() > SMALLEST_AREA));
        }
    }

    /// What is seen of a flat surface.
    fn flat(&mut self, surface: &Surface, place: usize) -> Option<VisibleFace> {
        if self.order.hidden[place] {
            return None;
        }
        let facet = &self.seen[place];
        self.around.extend_from_slice(&facet.contours);
        let (region, shapes) = if self.order.before(place).is_empty() {
            let Facet { plane, region } = &surface.facets[facet.facet];
            let shadow = Shadow::of(plane, self.axes);
            (
                region.mapped(|point| shadow.point(point)),
                vec![facet.contours.clone()],
            )
        } else {
            let shapes = self.visible(&[place], &facet.contours);
            (region(&shapes, self.grid), shapes)
        };
        Some(VisibleFace {
            surface: surface.id,
            lines: self.drawn(outline(&shapes)),
            shades: vec![Shade {
                region: region.clone(),
                squareness: facet.squareness,
            }],
            region,
        })
    }

    /// What is seen of a folded or curved surface.
    fn curved(&mut self, surface: &Surface, own: Range<usize>, joints: &Joints) -> Option<VisibleFace> {
        let open: Vec<usize> = own.clone().filter(|&place| !self.order.hidden[place]).collect();
        if open.is_empty() {
            return None;
        }
        let is_open = |place: usize| (own.contains(&place) && !self.order.hidden[place]).then_some(0);
        let around: Vec<Contour> = joints.around(1, is_open).into_iter().flatten().collect();
        let shapes = self.visible(&open, &around);
        self.around.extend(around);
        let lines = lines(&own, &shapes, joints, self.seen, &self.order);
        Some(VisibleFace {
            surface: surface.id,
            region: region(&shapes, self.grid),
            lines: self.drawn(lines),
            shades: self.shades(&own, joints),
        })
    }

    /// The visible parts of the facets of a surface, those of like squareness as one shade.
    fn shades(&mut self, own: &Range<usize>, joints: &Joints) -> Vec<Shade> {
        let (seen, order) = (self.seen, self.order);
        let level = |place: usize| (seen[place].squareness * SHADES).round() as usize;
        let mut levels: Vec<Level> = vec![];
        levels.resize_with(1 + SHADES as usize, Level::default);
        for place in own.clone().filter(|&place| !order.hidden[place]) {
            levels[level(place)].add(place, seen, order);
        }
        let is_whole =
            |place: usize| own.contains(&place) && !order.hidden[place] && order.before(place).is_empty();
        let whole = joints.around(levels.len(), |place| is_whole(place).then(|| level(place)));
        let shades = levels.iter().zip(whole);
        shades.filter_map(|(level, whole)| self.shade(level, whole)).collect()
    }

    /// The shade of facets of which those that are seen whole lie within the lines `whole`.
    fn shade(&mut self, level: &Level, whole: Vec<Contour>) -> Option<Shade> {
        let mut contours = whole;
        contours.iter_mut().for_each(tidy);
        contours.retain(|contour| contour.len() > 2);
        let seen = self.seen;
        let cut: Vec<Contour> = level.cut.iter().flat_map(|&place| seen[place].contours.clone()).collect();
        contours.extend(self.visible(&level.cut, &cut).into_iter().flatten());
        // The largest is an outer one, as a region wants it of its first.
        contours.sort_by_key(|contour| std::cmp::Reverse(size(contour)));
        (!contours.is_empty()).then(|| Shade {
            region: region(&vec![contours], self.grid),
            squareness: level.sum / level.count,
        })
    }

    /// What is seen of facets, in order, as one: what the lines `around` them enclose without what stands before it.
    fn visible(&mut self, own: &[usize], around: &[Contour]) -> Shapes {
        let seen = self.seen;
        let is_own = |place: usize| own.binary_search(&place).is_ok();
        let fronts = own.iter().flat_map(|&place| self.order.before(place));
        let mut fronts: Vec<usize> = fronts
            .map(|pair| pair.front)
            .filter(|&place| !is_own(place))
            .collect();
        fronts.sort_unstable();
        fronts.dedup();
        // Now and then they reach around what stands before them: before it with one facet, behind it with another.
        let (around, plain): (Vec<usize>, Vec<usize>) = fronts
            .into_iter()
            .partition(|&front| self.order.before(front).iter().any(|pair| is_own(pair.front)));
        let mut parts: Vec<Contour> = Vec::new();
        for front in around {
            let before = self.order.before(front).iter().filter(|pair| is_own(pair.front));
            let nearer = before.flat_map(|pair| self.cutter.standing_before(pair, seen));
            let nearer: Vec<Contour> = nearer.collect();
            parts.extend(
                self.cutter
                    .cut(&seen[front].contours, &nearer)
                    .into_iter()
                    .flatten(),
            );
        }
        let plain = plain.iter().flat_map(|&front| &seen[front].contours);
        self.cutter.cut(
            own.iter().flat_map(|&place| &seen[place].contours),
            plain.chain(&parts),
        )
    }

    fn drawn(&self, lines: Vec<Polyline>) -> Vec<Vec<Point2>> {
        let points = |line: Polyline| line.into_iter().map(|corner| self.grid.point(corner)).collect();
        lines.into_iter().map(points).collect()
    }
}
