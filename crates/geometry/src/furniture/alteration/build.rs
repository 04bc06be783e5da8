//! Builds the solids of added parts.

use std::f64::consts::PI;

use units::Length;

use super::added::{Added, AddedShape};
use crate::face::{Face, Facet, Plane, Side};
use crate::furniture::columns;
use crate::furniture::fields::{
    FLUTE_RADIUS, PART_DEPTH, PART_DIAMETER, PART_FOOT, PART_GIRTH, PART_HEIGHT, PART_LENGTH, PART_WIDTH,
};
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;
use crate::profile::{Profile, equal_area_arc};
use crate::solid::{CHORD, Cut, Prism, Run, Turning, frustum};
use crate::{Point3, Vector3};

pub(super) fn built(added: &Added) -> Part {
    let id = PartId::nth(PartKind::Added, added.number);
    let [x, y, z] = added.place.map_or([0.0; 3], |place| place.map(Length::as_metres));
    let m = |field| added.metres(field);
    match added.shape {
        AddedShape::Board => Part::block(
            id,
            [x, y, z],
            [x + m(&PART_WIDTH), y + m(&PART_DEPTH), z + m(&PART_HEIGHT)],
        ),
        AddedShape::Panel => {
            let board = Part::block(
                id,
                [x, y, z],
                [x + m(&PART_WIDTH), y + 0.001, z + m(&PART_HEIGHT)],
            );
            Part::of(
                id,
                board.faces.into_iter().filter(|face| face.side == Side::Front),
            )
        }
        AddedShape::Bar => bar(id, [x, y, z], m(&PART_GIRTH), m(&PART_LENGTH)),
        AddedShape::Moulding => moulding(id, added, [x, y, z]),
        AddedShape::Turned => turned(id, added, [x, y, z]),
        AddedShape::Tapered => {
            let (head, foot) = (m(&PART_WIDTH), m(&PART_FOOT));
            let widest = head.max(foot) / 2.0;
            let square = |size: f64| {
                let [cx, cy] = [x + widest, y + widest];
                [
                    [cx - size / 2.0, cy - size / 2.0],
                    [cx + size / 2.0, cy + size / 2.0],
                ]
            };
            frustum(id, (square(foot), z), (square(head), z + m(&PART_HEIGHT)))
        }
        AddedShape::Column => column(id, added, [x, y, z], true),
        AddedShape::HalfColumn => column(id, added, [x, y, z], false),
    }
}

/// A bar of which only the girth is known. It is drawn square; its ends do not count.
fn bar(id: PartId, [x, y, z]: [f64; 3], girth: f64, length: f64) -> Part {
    let side = girth / 4.0;
    let block = Part::block(id, [x, y, z], [x + length, y + side, z + side]);
    let facets: Vec<Facet> = block
        .faces
        .iter()
        .filter(|face| !matches!(face.side, Side::Left | Side::Right))
        .flat_map(|face| face.facets().to_vec())
        .collect();
    Part::of(id, [Face::folded(Side::Around, facets)])
}

/// A straight molding with its back to the wall; it runs along x.
fn moulding(id: PartId, added: &Added, [x, y, z]: [f64; 3]) -> Part {
    let mut points = vec![[0.0, 0.0]];
    let (mut out, mut up, mut girth) = (0.0, 0.0, 0.0);
    for (shape, width, height) in &added.members {
        let profile = Profile::crown(*shape, width.as_metres(), height.as_metres());
        let line = profile.line(CHORD).into_iter().skip(1);
        points.extend(line.map(|[inward, rise]| [out - inward, up + rise]));
        let [inward, rise] = profile.size();
        (out, up, girth) = (out - inward, up + rise, girth + profile.girth());
    }
    let mut outline = vec![Run::curved(Side::Moulded, points, girth, 0.0).with_multiplier(girth / up)];
    // A profile that ends in a bead is already back at the wall.
    if out > 0.0 {
        outline.push(Run::straight(Side::Top, vec![[out, up], [0.0, up]]));
    }
    outline.push(Run::straight(Side::Back, vec![[0.0, up], [0.0, 0.0]]));
    let prism = Prism {
        plane: Plane {
            origin: Point3::new(x + added.metres(&PART_LENGTH), y, z),
            u: -Vector3::y(),
            v: Vector3::z(),
        },
        outline,
        holes: vec![],
        start: Cut::square(0.0),
        end: Cut::square(added.metres(&PART_LENGTH)),
    };
    prism.part(id)
}

fn turned(id: PartId, added: &Added, [x, y, z]: [f64; 3]) -> Part {
    let points: Vec<[f64; 2]> = if added.turning.is_empty() {
        let [high, wide, foot] = [&PART_HEIGHT, &PART_DIAMETER, &PART_FOOT].map(|f| added.metres(f));
        vec![[foot / 2.0, 0.0], [wide / 2.0, high]]
    } else {
        let point = |(height, diameter): &(Length, Length)| [diameter.as_metres() / 2.0, height.as_metres()];
        added.turning.iter().map(point).collect()
    };
    let widest = points.iter().map(|[r, _]| *r).fold(0.0, f64::max);
    let mut from_head = points.iter().rev();
    let [head_radius, head] = from_head.next().copied().unwrap_or_default();
    let start = Turning::from(head_radius, head);
    let turning = from_head.fold(start, |turning, [radius, height]| {
        turning.line_to(*radius, *height)
    });
    turning.part(id, Point3::new(x + widest, y + widest, z))
}

fn column(id: PartId, added: &Added, [x, y, z]: [f64; 3], is_whole: bool) -> Part {
    let radius = added.metres(&PART_DIAMETER) / 2.0;
    let flute = added.metres(&FLUTE_RADIUS);
    let half = |count: u32| {
        if count == 0 {
            (equal_area_arc([0.0, 0.0], radius, 0.0, PI, CHORD), PI * radius)
        } else {
            columns::fluted(radius, count, flute)
        }
    };
    let (mut points, mut girth) = half(if is_whole {
        added.flutes.div_ceil(2)
    } else {
        added.flutes
    });
    let mut outline = Vec::new();
    if is_whole {
        // The other half is the same, turned about the axis; an odd count of flutes goes to the first half.
        let (other, other_girth) = half(added.flutes / 2);
        points.extend(other.into_iter().skip(1).map(|[a, b]| [-a, -b]));
        girth += other_girth;
    } else {
        outline.push(Run::straight(Side::Back, vec![[-radius, 0.0], [radius, 0.0]]));
    }
    outline.push(Run::curved(Side::Around, points, girth, 0.0));
    let prism = Prism {
        plane: Plane {
            origin: Point3::new(x + radius, if is_whole { y + radius } else { y }, z),
            u: -Vector3::x(),
            v: -Vector3::y(),
        },
        outline,
        holes: vec![],
        start: Cut::square(0.0),
        end: Cut::square(added.metres(&PART_HEIGHT)),
    };
    prism.part(id)
}
