//! The spaces that the faces of cases look into, other than the room.

use super::base;
use super::layout::{BayLayout, Layout, Unit};
use super::styles::FrontStyle;
use crate::assembly::Assembly;
use crate::exposure::Setting;
use crate::part::Part;
use crate::part_kind::PartKind;
use crate::space::{Exposure, Space};
use crate::{CONTACT_GAP, Vector3};

const INF: f64 = f64::INFINITY;

/// A piece with these spaces, whose back is at `rear`. Splayed legs may reach further back: then the piece is away from
/// the wall, and none of the spaces applies.
pub(super) fn around(parts: Vec<Part>, spaces: Vec<Space>, setting: Setting, rear: f64) -> Assembly {
    let reaches_back = parts
        .iter()
        .any(|part| part.id.kind == PartKind::Leg && part.bounds().1[1] > rear + CONTACT_GAP);
    if reaches_back {
        Assembly::of_parts(parts, setting)
    } else {
        Assembly::new(parts, spaces).standing(setting)
    }
}

pub(super) fn floor() -> Space {
    Space::block(Exposure::Floor, [-INF, -INF, -INF], [INF, INF, 0.0])
}

pub(super) fn wall(y: f64) -> Space {
    Space::block(Exposure::Wall, [-INF, y, -INF], [INF; 3])
}

/// The underside of a case that covers these spans, as far as it hangs over the floor.
pub(super) fn underneath(x: [f64; 2], y: [f64; 2], z: [f64; 2]) -> Space {
    Space::block(Exposure::Underneath, [x[0], y[0], z[0]], [x[1], y[1], z[1]]).facing(-Vector3::z())
}

/// The spaces in, behind and under a unit.
pub(super) fn of_unit(unit: &Unit, at: &Layout) -> Vec<Space> {
    let m = &at.members;
    let between = unit.between_sides(at);
    let [foot, head] = unit.z;
    let front = match unit.furniture.styles.fronts {
        // The inside begins behind a face frame, even if fronts are thicker than the frame is deep.
        FrontStyle::Inset if m.has_frame => at.front[1].min(unit.y[0] + m.frame_depth),
        FrontStyle::Inset => at.front[1],
        FrontStyle::Overlay | FrontStyle::Lipped => unit.y[0],
    };
    let mut list = Vec::new();
    for bay in &at.bays {
        for [below, above] in closed_runs(unit, at, bay) {
            list.push(Space::block(
                Exposure::Inside,
                [bay.reach[0], front, below],
                [bay.reach[1], at.back[0], above],
            ));
        }
    }
    list.extend(
        unit.behind_panels(at)
            .into_iter()
            .map(|[x, y, z]| Space::block(Exposure::Inside, [x[0], y[0], z[0]], [x[1], y[1], z[1]])),
    );
    if at.back[1] > at.back[0] && at.back[1] < unit.y[1] {
        list.push(Space::block(
            Exposure::Wall,
            [between[0], at.back[1], foot + m.below],
            [between[1], unit.y[1], head],
        ));
    }
    if !unit.upper {
        list.push(underneath(unit.x, unit.y, [0.0, foot]));
        if let Some([hollow_front, hollow_rear]) = base::hollow(unit.furniture, unit.y) {
            list.push(Space::block(
                Exposure::Underneath,
                [between[0], hollow_front, 0.0],
                [between[1], hollow_rear, foot],
            ));
        }
    }
    if m.has_frame {
        list.push(Space::block(
            Exposure::Underneath,
            [between[0], unit.y[0] + m.frame_depth, foot],
            [between[1], at.boards_rear, foot + m.below - m.board],
        ));
    }
    list
}

/// The vertical extents of runs of closed rows; the first may reach up to the top.
fn closed_runs(unit: &Unit, at: &Layout, bay: &BayLayout) -> Vec<[f64; 2]> {
    let mut runs: Vec<[f64; 2]> = Vec::new();
    let mut goes_on = false;
    for (r, row) in bay.rows.iter().enumerate() {
        if row.open_to_view {
            goes_on = false;
            continue;
        }
        let [below, above] = unit.compartment(at, bay, (r, row));
        let reaches_top = r == 0 && !at.whole_top;
        match runs.last_mut().filter(|_| goes_on) {
            Some(run) => run[0] = below,
            None => runs.push([below, if reaches_top { unit.z[1] } else { above }]),
        }
        goes_on = !row.board_below;
    }
    runs
}
