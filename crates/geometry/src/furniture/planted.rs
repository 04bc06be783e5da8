//! Applied moldings: rectangles on fronts and in doors, crowns around a case.

use super::layout::Span;
use crate::Point3;
use crate::Vector3;
use crate::face::{Plane, Side};
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;
use crate::profile::{Profile, Shape};
use crate::region::Point2;
use crate::solid::{CHORD, Cut, Prism, Run};

/// A rectangle on a front, seen from the front, and the ground that its moldings are on.
pub(super) struct Window {
    pub(super) x: Span,
    pub(super) z: Span,
    /// The y of the ground; moldings are in front of it.
    pub(super) ground: f64,
}

/// A run of a rectangle: its name, the start of its outer line, the direction inward and the direction along.
struct Place {
    kind: PartKind,
    outer: Side,
    start: Point3,
    inwards: Vector3,
    length: f64,
}

impl Window {
    fn places(&self, kinds: [PartKind; 4]) -> [Place; 4] {
        let (x, z) = (Vector3::x(), Vector3::z());
        let at = |px: f64, pz: f64| Point3::new(px, self.ground, pz);
        let (wide, high) = (self.x[1] - self.x[0], self.z[1] - self.z[0]);
        let place = |kind, outer, start, inwards, length| Place {
            kind,
            outer,
            start,
            inwards,
            length,
        };
        let [left, right, top, bottom] = kinds;
        // Each run is oriented so that inward, out of the ground and along form a right-handed system.
        [
            place(left, Side::Left, at(self.x[0], self.z[1]), x, high),
            place(right, Side::Right, at(self.x[1], self.z[0]), -x, high),
            place(top, Side::Top, at(self.x[1], self.z[1]), -z, wide),
            place(bottom, Side::Bottom, at(self.x[0], self.z[0]), z, wide),
        ]
    }

    /// A run for each side of the rectangle. The outline is in (inward, out of the ground).
    fn runs(
        &self,
        kinds: [PartKind; 4],
        outline: impl Fn(Side) -> Vec<Run>,
        id: impl Fn(PartKind) -> PartId,
    ) -> Vec<Part> {
        let out = -Vector3::y();
        let runs = self.places(kinds).into_iter().map(|place| {
            let prism = Prism {
                plane: Plane {
                    origin: place.start,
                    u: place.inwards,
                    v: out,
                },
                outline: outline(place.outer),
                holes: vec![],
                start: Cut { at: 0.0, slope: 1.0 },
                end: Cut {
                    at: place.length,
                    slope: -1.0,
                },
            };
            prism.part(id(place.kind))
        });
        runs.collect()
    }
}

/// The molding in the corner between the frame of a door and its panel.
pub(super) fn sticking(
    window: &Window,
    shape: Shape,
    [width, depth]: [f64; 2],
    id: impl Fn(PartKind) -> PartId,
) -> Vec<Part> {
    let kinds = [
        PartKind::StickingLeft,
        PartKind::StickingRight,
        PartKind::StickingTop,
        PartKind::StickingBottom,
    ];
    let profile = Profile::standard(shape, width, depth).in_corner();
    window.runs(
        kinds,
        |outer| edge_outline(&profile, [width, depth], Some(outer)),
        id,
    )
}

/// A mitered rectangle on a front.
pub(super) fn applied(
    window: &Window,
    shape: Shape,
    [width, height]: [f64; 2],
    id: impl Fn(PartKind) -> PartId,
) -> Vec<Part> {
    let kinds = [
        PartKind::AppliedLeft,
        PartKind::AppliedRight,
        PartKind::AppliedTop,
        PartKind::AppliedBottom,
    ];
    if shape == Shape::HalfRound {
        // Half an ellipse on its flat side: its height is half the width of a worked edge.
        let profile = Profile::standard(shape, height, width);
        return window.runs(kinds, |_| lying_outline(&profile, width, height), id);
    }
    let profile = Profile::standard(shape, width, height).in_corner();
    window.runs(kinds, |_| edge_outline(&profile, [width, height], None), id)
}

/// A section whose profile falls from its outer side, `size[1]` high, to a foot at `size[0]`. The outer side is a face
/// of its own, or belongs to the profile.
///
/// The line of a profile runs from its stated edge inward and up; here that is from the foot outward and up.
fn edge_outline(profile: &Profile, size: [f64; 2], outer: Option<Side>) -> Vec<Run> {
    let [width, height] = size;
    let line: Vec<Point2> = profile
        .line(CHORD)
        .into_iter()
        .map(|[inward, up]| [width - inward, up])
        .collect();
    let foot = line.first().copied().unwrap_or([width, 0.0]);
    let head = line.last().copied().unwrap_or([0.0, height]);
    let girth = profile.girth();
    // The miter shortens a run by twice its distance from the outer line.
    let moment = width * girth - profile.moment();
    let back = Run::straight(Side::Back, vec![[0.0, 0.0], foot]);
    let moulded = Run::curved(Side::Moulded, line, girth, moment);
    let side = Run::straight(outer.unwrap_or(Side::Moulded), vec![head, [0.0, 0.0]]);
    let multiplier = girth / width;
    vec![back, moulded.with_multiplier(multiplier), side]
}

fn lying_outline(profile: &Profile, width: f64, height: f64) -> Vec<Run> {
    // A worked half round begins `height` within its edge and bulges to it; turned on its back, up is across.
    let line: Vec<Point2> = profile
        .line(CHORD)
        .into_iter()
        .map(|[inward, up]| [width - up, height - inward])
        .collect();
    let girth = profile.girth();
    let moulded = Run::curved(Side::Moulded, line, girth, girth * width / 2.0);
    let back = Run::straight(Side::Back, vec![[0.0, 0.0], [width, 0.0]]);
    vec![back, moulded.with_multiplier(girth / width)]
}

/// A crown around the left, the front and the right of a case, its top at `head`.
pub(super) fn crown(
    shape: Shape,
    [projection, height]: [f64; 2],
    [x, y]: [Span; 2],
    head: f64,
    id: impl Fn(usize) -> PartId,
) -> Vec<Part> {
    let profile = Profile::crown(shape, projection, height);
    let line: Vec<Point2> = profile
        .line(CHORD)
        .into_iter()
        .map(|[inward, up]| [-inward, up])
        .collect();
    let girth = profile.girth();
    let out = line.last().map_or(projection, |last| last[0]);
    let foot = head - height;
    let outline = |wall: Side| {
        vec![
            Run::curved(Side::Moulded, line.clone(), girth, -profile.moment())
                .with_multiplier(profile.multiplier()),
            Run::straight(Side::Top, vec![[out, height], [0.0, height]]),
            Run::straight(wall, vec![[0.0, height], [0.0, 0.0]]),
        ]
    };
    let ([x0, x1], [y0, y1]) = (x, y);
    let run = |n, start: Point3, away: Vector3, wall, from: Cut, to: Cut| {
        let prism = Prism {
            plane: Plane {
                origin: start,
                u: away,
                v: Vector3::z(),
            },
            outline: outline(wall),
            holes: vec![],
            start: from,
            end: to,
        };
        prism.part(id(n))
    };
    let (deep, wide) = (y1 - y0, x1 - x0);
    let mitre_before = Cut { at: 0.0, slope: -1.0 };
    // Seen along the run the wall is at the left hand: up the left side, along the front from right to left.
    vec![
        run(
            1,
            Point3::new(x0, y0, foot),
            -Vector3::x(),
            Side::Right,
            mitre_before,
            Cut::square(deep),
        ),
        run(
            2,
            Point3::new(x1, y0, foot),
            -Vector3::y(),
            Side::Back,
            mitre_before,
            Cut { at: wide, slope: 1.0 },
        ),
        run(
            3,
            Point3::new(x1, y1, foot),
            Vector3::x(),
            Side::Left,
            Cut::square(0.0),
            Cut { at: deep, slope: 1.0 },
        ),
    ]
}
