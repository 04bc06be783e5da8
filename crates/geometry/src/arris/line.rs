//! The lines around surfaces, and which of them coincide.

use crate::face::Facet;
use crate::region::Point2;
use crate::sorting;
use crate::surface::SurfaceId;
use crate::{Point3, Vector3};

/// How far apart the edges of adjacent facets of one surface may be, meters. Facets that approximate a slanted cone
/// meet to within a few micrometers.
const SEAM: f64 = 2e-5;

/// The shortest piece of a line that counts, meters. Anything shorter is rounding noise.
pub(super) const SHORTEST: f64 = 1e-6;

/// The least cosine between parallel lines: 5 degrees.
pub(super) const ALONG: f64 = 0.996;

/// A straight piece of the outline of a surface.
#[derive(Clone)]
pub(super) struct Line {
    /// The index of its surface.
    pub(super) surface: usize,
    pub(super) from: Point3,
    /// Its unit direction. The surface is on its left.
    pub(super) along: Vector3,
    pub(super) length: f64,
    /// The normal of the surface.
    pub(super) normal: Vector3,
}

impl Line {
    pub(super) fn at(&self, distance: f64) -> Point3 {
        self.from + self.along * distance
    }

    /// From the line into the surface.
    pub(super) fn inwards(&self) -> Vector3 {
        self.normal.cross(&self.along)
    }

    fn piece(&self, [from, to]: [f64; 2]) -> Line {
        Line {
            from: self.at(from),
            length: to - from,
            ..self.clone()
        }
    }

    fn bounds(&self) -> [[f64; 2]; 3] {
        let to = self.at(self.length);
        std::array::from_fn(|axis| [self.from[axis].min(to[axis]), self.from[axis].max(to[axis])])
    }

    /// Whether it runs along an axis, or nearly as much along it as along any other. Two lines that differ by no more
    /// than [`ALONG`] run along at least one common axis.
    pub(super) fn runs_along(&self, axis: usize) -> bool {
        let share = self.along.map(f64::abs);
        share[axis] > share.max() - 0.18
    }

    /// The part of it that another line runs along, within a distance of it.
    fn span_along(&self, other: &Line, distance: f64) -> Option<[f64; 2]> {
        if self.along.dot(&other.along).abs() < ALONG {
            return None;
        }
        let seen = |point: Point3| {
            let to = point - self.from;
            let at = to.dot(&self.along);
            (at, to - self.along * at)
        };
        let ((start, start_away), (end, end_away)) = (seen(other.from), seen(other.at(other.length)));
        let (low, high) = (start.min(end).max(0.0), start.max(end).min(self.length));
        let away = |at: f64| start_away + (end_away - start_away) * ((at - start) / (end - start));
        (high - low > SHORTEST && away(low).norm() <= distance && away(high).norm() <= distance)
            .then_some([low, high])
    }
}

/// The surfaces and the lines around their facets.
pub(super) fn outlines(facets: &[(SurfaceId, Facet)]) -> (Vec<SurfaceId>, Vec<Line>) {
    let mut ids: Vec<SurfaceId> = Vec::new();
    let mut lines = Vec::new();
    // The surfaces of one face may alternate, but those of different faces do not.
    let mut first = 0;
    for (id, facet) in facets {
        let is_same_face = |other: &SurfaceId| (other.part, other.side) == (id.part, id.side);
        if ids.last().is_none_or(|last| !is_same_face(last)) {
            first = ids.len();
        }
        let known = ids[first..].iter().position(|other| other == id);
        let surface = known.map_or(ids.len(), |place| first + place);
        if known.is_none() {
            ids.push(*id);
        }
        let normal = facet.plane.normal();
        for contour in facet.region.contours() {
            let next = contour.iter().cycle().skip(1);
            let ends = contour.iter().zip(next);
            lines.extend(ends.filter_map(|(&p, &q)| line(surface, facet, normal, [p, q])));
        }
    }
    (ids, lines)
}

fn line(surface: usize, facet: &Facet, normal: Vector3, [from, to]: [Point2; 2]) -> Option<Line> {
    let (from, to) = (facet.plane.at(from), facet.plane.at(to));
    let length = (to - from).norm();
    (length > SHORTEST).then(|| Line {
        surface,
        from,
        along: (to - from) / length,
        length,
        normal,
    })
}

/// Another line that coincides with part of a line: its index, and the part.
pub(super) struct Adjacent {
    pub(super) other: usize,
    pub(super) span: [f64; 2],
}

/// The lines that coincide with part of each line, within a distance of it.
///
/// Lines along one axis are sorted by their position on another, so that each is compared with only a few.
pub(super) fn adjacent(lines: &[Line], distance: f64) -> Vec<Vec<Adjacent>> {
    let mut found: Vec<Vec<Adjacent>> = lines.iter().map(|_| Vec::new()).collect();
    let bounds: Vec<[[f64; 2]; 3]> = lines.iter().map(Line::bounds).collect();
    let seen = |from: usize, other: usize| {
        let span = lines[from].span_along(&lines[other], distance)?;
        Some(Adjacent { other, span })
    };
    // Horizontal lines are spread out vertically, vertical lines horizontally.
    for (axis, sorted) in [(0, 2), (1, 0), (2, 0)] {
        let runs_along = |place: &usize| lines[*place].runs_along(axis);
        let mut list: Vec<usize> = (0..lines.len()).filter(runs_along).collect();
        sorting::sort_by(&mut list, |&place| bounds[place][sorted][0]);
        for (rank, &a) in list.iter().enumerate() {
            let reach = bounds[a][sorted][1] + distance;
            let later = list[rank + 1..].iter();
            for &b in later.take_while(|&&b| bounds[b][sorted][0] <= reach) {
                // Lines halfway between two axes are in two lists.
                let are_new = (0..axis).all(|axis| !lines[a].runs_along(axis) || !lines[b].runs_along(axis));
                if are_new && boxes_touch(&bounds[a], &bounds[b], distance) {
                    found[a].extend(seen(a, b));
                    found[b].extend(seen(b, a));
                }
            }
        }
    }
    found
}

/// Whether two boxes come within this distance of each other.
fn boxes_touch(a: &[[f64; 2]; 3], b: &[[f64; 2]; 3], distance: f64) -> bool {
    let spans = a.iter().zip(b);
    spans
        .into_iter()
        .all(|(a, b)| a[0] <= b[1] + distance && b[0] <= a[1] + distance)
}

/// The lines without those between adjacent facets of one surface.
pub(super) fn without_seams(mut lines: Vec<Line>) -> Vec<Line> {
    sorting::sort_by(&mut lines, |line| line.surface);
    let mut left = Vec::new();
    for lines in lines.chunk_by(|a, b| a.surface == b.surface) {
        left.extend(outer_lines(lines));
    }
    left
}

/// The outer lines of one surface, which all of these lines belong to.
fn outer_lines(lines: &[Line]) -> Vec<Line> {
    let mut left = Vec::new();
    for (line, adjacent) in lines.iter().zip(adjacent(lines, SEAM)) {
        let seams = adjacent
            .into_iter()
            .filter(|b| lines[b.other].along.dot(&line.along) < 0.0);
        let mut seams: Vec<[f64; 2]> = seams.map(|b| b.span).collect();
        sorting::sort_by(&mut seams, |seam| seam[0]);
        let mut from = 0.0;
        for [start, end] in seams.into_iter().chain([[line.length, line.length]]) {
            if start - from > SHORTEST {
                left.push(line.piece([from, start]));
            }
            from = end.max(from);
        }
    }
    left
}
