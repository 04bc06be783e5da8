//! Frames of pictures and mirrors: four mitered members, worked on their inner front edge.

use super::Furniture;
use super::fields::{EDGE_HEIGHT, EDGE_WIDTH, HEIGHT, MEMBER_THICKNESS, MEMBER_WIDTH, WIDTH};
use crate::assembly::Assembly;
use crate::exposure::Setting;
use crate::face::{Plane, Side};
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;
use crate::profile::Profile;
use crate::region::Point2;
use crate::solid::{CHORD, Cut, Prism, Run};
use crate::{Point3, Vector3};

/// Builds a frame. The measurements must have passed the check.
pub(super) fn build(furniture: &Furniture) -> Assembly {
    let metres = |field| furniture.length(field).as_metres();
    let (wide, high, thick) = (metres(&WIDTH), metres(&HEIGHT), metres(&MEMBER_THICKNESS));
    let (x, z) = (Vector3::x(), Vector3::z());
    let at = |px: f64, pz: f64| Point3::new(px, thick, pz);
    // Each member goes so that inward, out of the wall and along it are a right-handed system.
    let parts = vec![
        member(
            furniture,
            PartKind::MemberLeft,
            (at(0.0, high), x, high),
            [Side::Left, Side::Right],
        ),
        member(
            furniture,
            PartKind::MemberRight,
            (at(wide, 0.0), -x, high),
            [Side::Right, Side::Left],
        ),
        member(
            furniture,
            PartKind::MemberTop,
            (at(wide, high), -z, wide),
            [Side::Top, Side::Bottom],
        ),
        member(
            furniture,
            PartKind::MemberBottom,
            (at(0.0, 0.0), z, wide),
            [Side::Bottom, Side::Top],
        ),
    ];
    let hung = Setting {
        has_floor: false,
        ..Setting::against_wall()
    };
    Assembly::of_parts(parts, hung)
}

fn member(
    furniture: &Furniture,
    kind: PartKind,
    (start, inwards, length): (Point3, Vector3, f64),
    [outer, inner]: [Side; 2],
) -> Part {
    let metres = |field| furniture.length(field).as_metres();
    let (width, thick) = (metres(&MEMBER_WIDTH), metres(&MEMBER_THICKNESS));
    let back = |to: Point2| Run::straight(Side::Back, vec![[0.0, 0.0], to]);
    let outside = Run::straight(outer, vec![[0.0, thick], [0.0, 0.0]]);
    let outline = match furniture.styles.frame_profile.shape() {
        None => vec![
            back([width, 0.0]),
            Run::straight(inner, vec![[width, 0.0], [width, thick]]),
            Run::straight(Side::Front, vec![[width, thick], [0.0, thick]]),
            outside,
        ],
        Some(shape) => {
            let profile = Profile::standard(shape, metres(&EDGE_WIDTH), metres(&EDGE_HEIGHT));
            let foot = thick - profile.size()[1];
            // A profile of the whole thickness stands on the wall.
            let profile = if foot > 0.0 { profile } else { profile.grounded() };
            let line: Vec<Point2> = profile
                .line(CHORD)
                .into_iter()
                .map(|[inward, up]| [width - inward, foot + up])
                .collect();
            let [first, last] = [line.first(), line.last()].map(|end| end.copied().unwrap_or([width, thick]));
            let girth = profile.girth();
            let moment = width * girth - profile.moment();
            let mut outline = vec![back(if foot > 0.0 { [width, 0.0] } else { first })];
            if foot > 0.0 {
                outline.push(Run::straight(inner, vec![[width, 0.0], first]));
            }
            outline
                .push(Run::curved(Side::Moulded, line, girth, moment).with_multiplier(profile.multiplier()));
            outline.push(Run::straight(Side::Front, vec![last, [0.0, thick]]));
            outline.push(outside);
            outline
        }
    };
    let prism = Prism {
        plane: Plane {
            origin: start,
            u: inwards,
            v: -Vector3::y(),
        },
        outline,
        holes: vec![],
        start: Cut { at: 0.0, slope: 1.0 },
        end: Cut {
            at: length,
            slope: -1.0,
        },
    };
    prism.part(PartId::only(kind))
}
