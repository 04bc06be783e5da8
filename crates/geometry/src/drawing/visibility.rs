//! Finds the visible part of each front-facing surface.

use std::ops::Range;

use super::cut::{Contour, area, cut, occluding_part, region, size, tidy};
use super::joints::Joints;
use super::lines::{Polyline, lines, outline};
use super::order::Order;
use super::sheet::{Grid, ProjectedFacet, Projection};
use super::view::Axes;
use super::visible::{Drawing, Shade, VisibleFace};
use crate::SMALLEST_AREA;
use crate::face::Facet;
use crate::region::{Point2, Region};
use crate::sorting;
use crate::surface::{Facets, Surface};

/// The number of shades from edge on to face on. The steps are too small to see in a drawing.
pub(super) const SHADES: f64 = 24.0;

/// The facets of one surface.
struct Group<'a> {
    surface: &'a Surface,
    /// The range of their indices among all facets.
    own: Range<usize>,
    /// Contours of their union.
    around: Vec<Contour>,
    /// The index of their joints, for a folded or curved surface.
    joints: Option<usize>,
    /// Their visible part.
    visible: Vec<Contour>,
    /// Whether all of them is visible.
    is_whole: bool,
}

/// Finds visible surfaces and makes the drawing.
pub(super) struct Visibility<'a> {
    axes: &'a Axes,
    grid: &'a Grid,
    projected: &'a [ProjectedFacet],
    order: Order,
    groups: Vec<Group<'a>>,
    /// The group of each facet.
    group_of: Vec<usize>,
    /// Which groups are behind which with at least one facet: the group behind and that in front, sorted.
    behind: Vec<(usize, usize)>,
    /// The joints of each folded or curved face.
    joints: Vec<Joints>,
}

impl<'a> Visibility<'a> {
    pub(super) fn new(
        surfaces: &'a [Surface],
        axes: &'a Axes,
        grid: &'a Grid,
        projected: &'a [ProjectedFacet],
    ) -> Self {
        let mut visibility = Visibility {
            axes,
            grid,
            projected,
            order: Order::of(projected),
            groups: Vec::new(),
            group_of: Vec::with_capacity(projected.len()),
            behind: Vec::new(),
            joints: Vec::new(),
        };
        let face = |facet: &ProjectedFacet| {
            let id = &surfaces[facet.surface].id;
            (id.part, id.side)
        };
        let mut from = 0;
        for run in projected.chunk_by(|a, b| face(a) == face(b)) {
            visibility.add_face(surfaces, from..from + run.len());
            from += run.len();
        }
        let group_of = &visibility.group_of;
        let pairs = visibility.order.pairs.iter();
        let mut behind: Vec<_> = pairs
            .map(|pair| (group_of[pair.behind], group_of[pair.front]))
            .collect();
        sorting::sort_by(&mut behind, |pair| *pair);
        behind.dedup();
        visibility.behind = behind;
        visibility
    }

    /// Adds the surfaces of one face of a part; `run` is the range of its facets.
    fn add_face(&mut self, surfaces: &'a [Surface], run: Range<usize>) {
        let mut joints = None;
        let mut from = run.start;
        for own in self.projected[run.clone()].chunk_by(|a, b| a.surface == b.surface) {
            let own = from..from + own.len();
            from = own.end;
            let surface = &surfaces[self.projected[own.start].surface];
            if let Facets::Many(_) = &surface.facets {
                joints.get_or_insert_with(|| {
                    self.joints.push(Joints::of(self.projected, run.clone()));
                    self.joints.len() - 1
                });
            }
            let joints = joints.filter(|_| matches!(surface.facets, Facets::Many(_)));
            let around = match joints {
                Some(place) => {
                    let open = |place: usize| own.contains(&place) && !self.order.hidden[place];
                    let around = self.joints[place].around(1, |place| open(place).then_some(0));
                    around.into_iter().flatten().collect()
                }
                None => self.projected[own.start].contours.clone(),
            };
            self.group_of.extend(own.clone().map(|_| self.groups.len()));
            self.groups.push(Group {
                surface,
                own,
                around,
                joints,
                visible: Vec::new(),
                is_whole: false,
            });
        }
    }

    pub(super) fn drawing(mut self) -> Drawing {
        self.find_visible();
        let mut faces = Vec::new();
        for group in 0..self.groups.len() {
            if !self.groups[group].visible.is_empty() {
                faces.push(self.face(group));
            }
        }
        // Hidden facets add nothing to the outline.
        let open = self
            .groups
            .iter()
            .filter(|group| group.own.clone().any(|place| !self.order.hidden[place]));
        let outline = cut(open.flat_map(|group| &group.around), []);
        Drawing {
            faces,
            outline: region(&outline, self.grid),
        }
    }

    /// Finds the visible part of each surface. A surface that turns out to be completely hidden hides nothing more, so
    /// surfaces with little in front of them come first.
    fn find_visible(&mut self) {
        let load = |group: &Group| {
            let pairs: usize = group.own.clone().map(|place| self.order.count(place)).sum();
            pairs as f64 / group.own.len() as f64
        };
        let loads: Vec<f64> = self.groups.iter().map(load).collect();
        let mut turns: Vec<usize> = (0..self.groups.len()).collect();
        sorting::sort_by(&mut turns, |&turn| loads[turn]);
        for turn in turns {
            self.find_visible_of(turn);
        }
    }

    fn find_visible_of(&mut self, group: usize) {
        let Group {
            own, around, joints, ..
        } = &self.groups[group];
        let (own, around) = (own.clone(), around.clone());
        let open: Vec<usize> = own.clone().filter(|&place| !self.order.hidden[place]).collect();
        if open.is_empty() {
            return;
        }
        let is_whole = joints.is_none() && open.iter().all(|&place| self.order.is_whole(place));
        let visible = if is_whole {
            around
        } else {
            self.visible(&open, &around)
        };
        if area(&visible, self.grid) > SMALLEST_AREA {
            self.groups[group].visible = visible;
            self.groups[group].is_whole = is_whole;
        } else {
            own.for_each(|place| self.order.hidden[place] = true);
        }
    }

    /// The visible part of some facets of one surface, in order, as one: the inside of `around` less what is in front.
    fn visible(&mut self, own: &[usize], around: &[Contour]) -> Vec<Contour> {
        let mut fronts: Vec<usize> = Vec::new();
        for &place in own {
            fronts.extend(self.order.before(place).map(|pair| pair.front));
        }
        fronts.retain(|front| own.binary_search(front).is_err());
        sorting::sort_by(&mut fronts, |front| *front);
        fronts.dedup();
        let mut away: Vec<&Contour> = Vec::new();
        let mut parts: Vec<Contour> = Vec::new();
        for fronts in fronts.chunk_by(|&a, &b| self.group_of[a] == self.group_of[b]) {
            let group = self.group_of[fronts[0]];
            if self.is_before(group, self.group_of[own[0]]) {
                away.extend(&self.groups[group].around);
                continue;
            }
            for &front in fronts {
                let mut nearer: Vec<Contour> = Vec::new();
                for pair in self.order.before(front) {
                    if own.binary_search(&pair.front).is_ok() {
                        nearer.extend(occluding_part(pair, self.projected));
                    }
                }
                let contours = &self.projected[front].contours;
                if nearer.is_empty() {
                    away.extend(contours);
                } else {
                    parts.extend(cut(contours, &nearer));
                }
            }
        }
        cut(around, away.into_iter().chain(&parts))
    }

    /// Whether a surface is in front of another with all of its facets. Surfaces may also interlock.
    fn is_before(&self, front: usize, behind: usize) -> bool {
        front != behind && self.behind.binary_search(&(front, behind)).is_err()
    }

    fn face(&mut self, group: usize) -> VisibleFace {
        let group = &self.groups[group];
        let (surface, own) = (group.surface.id, group.own.clone());
        let Some(joints) = group.joints else {
            let whole = self.flat_region(group);
            let shade = Shade {
                region: whole.clone(),
                squareness: self.projected[own.start].squareness,
            };
            return VisibleFace {
                surface,
                region: whole,
                lines: self.drawn(outline(&group.visible)),
                shades: vec![shade],
            };
        };
        let lines = lines(
            &own,
            &group.visible,
            &self.joints[joints],
            self.projected,
            &self.order,
        );
        VisibleFace {
            surface,
            region: region(&group.visible, self.grid),
            lines: self.drawn(lines),
            shades: self.shades(own, joints),
        }
    }

    /// The visible part of a flat surface, exact if all of it is visible.
    fn flat_region(&self, group: &Group) -> Region {
        if !group.is_whole {
            return region(&group.visible, self.grid);
        }
        let Facet { plane, region } = &group.surface.facets[self.projected[group.own.start].facet];
        let projection = Projection::of(plane, self.axes);
        region.mapped(|point| projection.point(point))
    }

    /// The visible parts of the facets of a surface, those of similar squareness as one shade.
    fn shades(&mut self, own: Range<usize>, joints: usize) -> Vec<Shade> {
        let (projected, order) = (self.projected, &self.order);
        let level = |place: usize| (projected[place].squareness * SHADES).round() as usize;
        let mut levels: Vec<Level> = vec![];
        levels.resize_with(1 + SHADES as usize, Level::default);
        for place in own.clone().filter(|&place| !order.hidden[place]) {
            levels[level(place)].add(place, projected, order);
        }
        let is_whole = |place: usize| own.contains(&place) && !order.hidden[place] && order.is_whole(place);
        let whole = self.joints[joints].around(levels.len(), |place| is_whole(place).then(|| level(place)));
        let mut shades = Vec::new();
        for (level, whole) in levels.iter().zip(whole) {
            shades.extend(self.shade(level, whole));
        }
        shades
    }

    /// The shade of facets; `whole` are the contours of those that are completely visible.
    fn shade(&mut self, level: &Level, whole: Vec<Contour>) -> Option<Shade> {
        let mut contours = whole;
        contours.iter_mut().for_each(tidy);
        contours.retain(|contour| contour.len() > 2);
        if !level.cut.is_empty() {
            let projected = self.projected;
            let cut: Vec<Contour> = level
                .cut
                .iter()
                .flat_map(|&place| projected[place].contours.clone())
                .collect();
            contours.extend(self.visible(&level.cut, &cut));
        }
        // The largest contour is an outer one, which a region needs first.
        sorting::sort_by(&mut contours, |contour| [-size(contour), 0]);
        (!contours.is_empty()).then(|| Shade {
            region: region(&contours, self.grid),
            squareness: level.sum / level.count,
        })
    }

    fn drawn(&self, lines: Vec<Polyline>) -> Vec<Vec<Point2>> {
        let points = |line: Polyline| line.into_iter().map(|corner| self.grid.point(corner)).collect();
        lines.into_iter().map(points).collect()
    }
}

/// Facets of similar squareness.
#[derive(Default)]
struct Level {
    /// The sum of their squareness, and their number.
    sum: f64,
    count: f64,
    /// Those that are partly hidden.
    cut: Vec<usize>,
}

impl Level {
    fn add(&mut self, place: usize, projected: &[ProjectedFacet], order: &Order) {
        self.sum += projected[place].squareness;
        self.count += 1.0;
        if !order.is_whole(place) {
            self.cut.push(place);
        }
    }
}
