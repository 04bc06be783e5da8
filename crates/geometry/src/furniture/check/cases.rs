//! What must fit in cases: boards, frames, fronts, doors, and what the case stands on.

use units::Length;

use super::super::bay::Fill;
use super::super::counts::FLUTES;
use super::super::fields::{self as f, FieldId};
use super::super::fronts::least_box_room;
use super::super::layout::{Layout, Members, ROW_SLIP, Unit, length_of};
use super::super::styles::{BackStyle, BaseStyle, CornerColumns, DoorStyle, DrawerBoxes, Edge, FrontStyle};
use super::super::wanted::has_slabs;
use super::super::{Construction, Furniture, Problem, case, columns, legs, top};
use super::claim::{Claim, LEAST_ROOM, too_small, unmet};
use crate::profile::Shape;

/// Everything that does not fit in a piece of cases.
pub(super) fn problems(furniture: &Furniture) -> Vec<Problem> {
    let mut found = whole(furniture);
    if found.is_empty() {
        for unit in case::units(furniture) {
            found.extend(boards(&unit));
            if found.is_empty() {
                found.extend(room_for_fronts(&unit));
            }
            if found.is_empty() {
                found.extend(within_fronts(&unit, &unit.layout()));
            }
        }
    }
    if found.is_empty() && furniture.kind.construction() == Construction::Pedestals {
        found.extend(legs_in_kneehole(furniture));
    }
    found
}

/// What must fit before each case is checked.
fn whole(furniture: &Furniture) -> Vec<Problem> {
    let metres = |field| furniture.length(field).as_metres();
    let mut claims: Vec<Claim> = top_edge(furniture);
    match furniture.kind.construction() {
        Construction::TwoCases => {
            claims.push((&f::UPPER_DEPTH, metres(&f::DEPTH), "the depth of the lower case"))
        }
        Construction::Pedestals => {
            let between = metres(&f::TOP_WIDTH) - 2.0 * metres(&f::OVERHANG_SIDE) - LEAST_ROOM;
            claims.push((&f::PEDESTAL_WIDTH, between / 2.0, "the top width"));
            let head = metres(&f::HEIGHT) - metres(&f::TOP_THICKNESS) - LEAST_ROOM;
            claims.push((&f::MODESTY_FOOT, head, "the height"));
            claims.push((&f::APRON_HEIGHT, head, "the height"));
            let depth = metres(&f::TOP_DEPTH) - metres(&f::OVERHANG_FRONT);
            claims.push((
                &f::APRON_THICKNESS,
                depth - 2.0 * metres(&f::BOARD) - LEAST_ROOM,
                "the top depth",
            ));
        }
        _ => {}
    }
    unmet(furniture, claims)
}

/// How much further than its girth allows a measured profile may reach into the face: a sixteenth of an inch, the error
/// of a tape, for each of the two readings (common practice, no source).
const EDGE_SLIP: Length = Length::inches(2.0 / 16.0);

/// What the worked edge of a top must fit into.
pub(super) fn top_edge(furniture: &Furniture) -> Vec<Claim> {
    let metres = |field| furniture.length(field).as_metres();
    let [wide, deep] = match furniture.kind.construction() {
        Construction::Pedestals | Construction::Table => [&f::TOP_WIDTH, &f::TOP_DEPTH],
        _ => [&f::WIDTH, &f::DEPTH],
    };
    let beside_other: Claim = (
        &f::EDGE_WIDTH,
        metres(wide).min(metres(deep)) / 2.0 - LEAST_ROOM,
        "the size of the top",
    );
    match furniture.styles.top_edge {
        Edge::Shaped(shape) if shape != Shape::HalfRound => vec![
            (&f::EDGE_HEIGHT, metres(&f::TOP_THICKNESS), "the top thickness"),
            beside_other,
        ],
        Edge::Measured => {
            let [girth, thick] = [&f::EDGE_GIRTH, &f::TOP_THICKNESS].map(|field| furniture.length(field));
            let widest = top::widest_of_girth(girth, thick) + EDGE_SLIP.as_metres();
            vec![(&f::EDGE_WIDTH, widest, "the edge girth"), beside_other]
        }
        _ => vec![],
    }
}

/// The field in which the height of a unit was measured.
fn height_field(unit: &Unit) -> &'static f::LengthField {
    if unit.upper { &f::UPPER_HEIGHT } else { &f::HEIGHT }
}

fn depth_field(unit: &Unit) -> &'static f::LengthField {
    match (unit.upper, unit.furniture.kind.construction()) {
        (true, _) => &f::UPPER_DEPTH,
        (_, Construction::Pedestals) => &f::TOP_DEPTH,
        _ => &f::DEPTH,
    }
}

fn width_field(unit: &Unit) -> &'static f::LengthField {
    match unit.furniture.kind.construction() {
        Construction::Pedestals => &f::PEDESTAL_WIDTH,
        _ => &f::WIDTH,
    }
}

fn boards(unit: &Unit) -> Vec<Problem> {
    let furniture = unit.furniture;
    let metres = |field| furniture.length(field).as_metres();
    let members = Members::of(furniture, unit.has_crown);
    let (wide, deep, high) = (length_of(unit.x), length_of(unit.y), length_of(unit.z));
    let least = members.above + members.below + LEAST_ROOM;
    if high < least {
        return vec![too_small(furniture, height_field(unit), least - high)];
    }
    let mut claims: Vec<Claim> = vec![(&f::BOARD, (wide - LEAST_ROOM) / 2.0, "the width")];
    if members.has_frame {
        claims.push((&f::STILE, (wide - LEAST_ROOM) / 2.0, "the width"));
        claims.push((&f::BOARD, metres(&f::FRAME_RAIL), "the frame rail"));
        // Fronts and boxes pass the stiles, so no board may stick out behind them.
        claims.push((&f::BOARD, metres(&f::STILE), "the frame stile"));
    }
    let mut behind = deep - members.frame_depth - LEAST_ROOM;
    if has_fronts(unit) {
        match furniture.styles.fronts {
            FrontStyle::Overlay | FrontStyle::Lipped => {
                // A wider frame or gap would leave a hole beside the board behind it.
                let narrowest = members.side.min(members.below);
                claims.push((&f::FRAME, narrowest, "the board or frame behind it"));
                claims.push((&f::GAP, members.row, "the board or rail behind it"));
                if furniture.styles.fronts == FrontStyle::Lipped && has_slabs(furniture) {
                    behind -= metres(&f::FRONT_THICKNESS);
                    let thick = metres(&f::FRONT_THICKNESS) - 0.001;
                    claims.push((&f::LIP_THICKNESS, thick, "the front thickness"));
                }
            }
            FrontStyle::Inset => {
                claims.push((&f::FRONT_THICKNESS, deep - LEAST_ROOM, "the depth"));
                behind = behind.min(deep - metres(&f::FRONT_THICKNESS) - LEAST_ROOM);
            }
        }
    }
    match furniture.styles.back {
        BackStyle::None => {}
        BackStyle::Recessed => {
            claims.push((&f::BACK_RECESS, behind - metres(&f::BACK_THICKNESS), "the depth"))
        }
        BackStyle::Flush => claims.push((&f::BACK_THICKNESS, behind, "the depth")),
    }
    if behind < 0.0 {
        return vec![too_small(furniture, depth_field(unit), -behind)];
    }
    let mut found = unmet(furniture, claims);
    if !unit.upper {
        found.extend(unmet(furniture, base(furniture, [wide, deep])));
    }
    found
}

fn has_fronts(unit: &Unit) -> bool {
    unit.bays
        .iter()
        .flat_map(|bay| &bay.rows)
        .any(|row| row.fill != Fill::Open)
}

/// What must fit below a case or a box of this width and depth.
pub(super) fn base(furniture: &Furniture, [wide, deep]: [f64; 2]) -> Vec<Claim> {
    let metres = |field| furniture.length(field).as_metres();
    let board = metres(&f::BOARD);
    let for_feet = |rise: f64| {
        let along = wide.min(deep - metres(&f::PLINTH_SETBACK));
        (
            &f::FOOT_WIDTH,
            (along - LEAST_ROOM) / 2.0 - rise,
            "the width and depth",
        )
    };
    let plinth: Claim = (&f::PLINTH_SETBACK, deep - 2.0 * board - LEAST_ROOM, "the depth");
    let foot_board: Claim = (&f::BOARD, metres(&f::FOOT_WIDTH) - 0.001, "the foot width");
    let room = (wide.min(deep) - 2.0 * metres(&f::LEG_INSET) - LEAST_ROOM) / 2.0;
    let leg: Claim = (&f::LEG_WIDTH, room, "the leg inset");
    let high = metres(&f::LEG_HEIGHT);
    match furniture.styles.base {
        BaseStyle::Floor => vec![],
        BaseStyle::Plinth => vec![plinth],
        BaseStyle::CutOutPlinth => vec![
            plinth,
            foot_board,
            (
                &f::CUTOUT_HEIGHT,
                metres(&f::PLINTH_HEIGHT) - 0.003,
                "the plinth height",
            ),
            for_feet(metres(&f::CUTOUT_HEIGHT)),
        ],
        BaseStyle::BracketFeet => vec![plinth, foot_board, for_feet(metres(&f::PLINTH_HEIGHT))],
        BaseStyle::Legs => vec![leg],
        BaseStyle::TaperedLegs => vec![leg, foot_of_leg(furniture)],
        BaseStyle::TurnedLegs => vec![leg, turned(high), foot_of_leg(furniture)],
        BaseStyle::BunFeet => vec![
            leg,
            (&f::LEG_HEIGHT, 0.98 * metres(&f::LEG_WIDTH), "the leg width"),
        ],
        BaseStyle::SplayedLegs => {
            let mut claims = splayed(furniture, high, room);
            claims.push(leg);
            claims
        }
    }
}

/// What must fit of splayed legs of this height. `room` is how far each may reach from the outside of its top toward
/// the other.
pub(super) fn splayed(furniture: &Furniture, high: f64, room: f64) -> Vec<Claim> {
    let metres = |field| furniture.length(field).as_metres();
    let (wide, foot, splay) = (metres(&f::LEG_WIDTH), metres(&f::LEG_FOOT), metres(&f::LEG_SPLAY));
    let mut claims = vec![
        foot_of_leg(furniture),
        (&f::LEG_SPLAY, high, "the leg height"),
        (&f::LEG_WIDTH, foot + high, "the leg height"),
    ];
    // A leg cut horizontally on a slant is wider than its cross section.
    if splay <= high && wide <= foot + high {
        let [inwards, _] = legs::splayed_reach(furniture, high);
        let missing = wide / 2.0 + inwards - room;
        claims.push((&f::LEG_WIDTH, wide - missing, "the splay"));
    }
    claims
}

/// Splayed legs that stand out into the kneehole of a desk.
fn legs_in_kneehole(furniture: &Furniture) -> Vec<Problem> {
    let metres = |field| furniture.length(field).as_metres();
    if furniture.styles.base != BaseStyle::SplayedLegs {
        return vec![];
    }
    let foot = metres(&f::LEG_HEIGHT);
    let [_, outwards] = legs::splayed_reach(furniture, foot);
    let stands_out = outwards - metres(&f::LEG_WIDTH) / 2.0 - metres(&f::LEG_INSET);
    if stands_out <= 0.0 {
        return vec![];
    }
    let pedestals = 2.0 * (metres(&f::OVERHANG_SIDE) + metres(&f::PEDESTAL_WIDTH));
    let missing = 2.0 * stands_out + LEAST_ROOM - (metres(&f::TOP_WIDTH) - pedestals);
    let head = metres(&f::HEIGHT) - metres(&f::TOP_THICKNESS);
    let mut found = unmet(
        furniture,
        vec![
            (
                &f::LEG_SPLAY,
                metres(&f::LEG_SPLAY) - missing / 2.0,
                "the space between the pedestals",
            ),
            (&f::APRON_HEIGHT, head - foot, "the leg height"),
        ],
    );
    if metres(&f::MODESTY_FOOT) < foot {
        found.push(too_small(
            furniture,
            &f::MODESTY_FOOT,
            foot - metres(&f::MODESTY_FOOT),
        ));
    }
    found
}

/// A foot is not wider than the leg above it.
pub(super) fn foot_of_leg(furniture: &Furniture) -> Claim {
    (
        &f::LEG_FOOT,
        furniture.length(&f::LEG_WIDTH).as_metres(),
        "the leg width",
    )
}

/// A turned leg of this height needs room for its collar and bead.
pub(super) fn turned(high: f64) -> Claim {
    let radius = (high - LEAST_ROOM) / super::super::legs::TURNED_LEAST;
    (&f::LEG_WIDTH, 2.0 * radius, "the leg height")
}

fn room_for_fronts(unit: &Unit) -> Vec<Problem> {
    let members = Members::of(unit.furniture, unit.has_crown);
    let mut found = Vec::new();
    let (claims, room) = unit.bay_claims(&members);
    if !fits(&claims, room) {
        found.push(Problem::BaysDoNotAddUp {
            upper: unit.upper,
            bays: Length::metres(claims.iter().flatten().sum()),
            room: Length::metres(room.max(0.0)),
        });
        return found;
    }
    for (i, bay) in unit.bays.iter().enumerate() {
        let (claims, room) = unit.row_claims(&members, &bay.rows);
        if !fits(&claims, room) {
            found.push(Problem::RowsDoNotAddUp {
                place: unit.place(i),
                fronts: Length::metres(claims.iter().flatten().sum()),
                room: Length::metres(room.max(0.0)),
                rail: members.has_frame.then(|| unit.furniture.length(&f::FRAME_RAIL)),
            });
        }
    }
    if found.is_empty() {
        found.extend(room_in_openings(unit, &unit.layout()));
    }
    found
}

fn fits(claims: &[Option<f64>], room: f64) -> bool {
    let measured: f64 = claims.iter().flatten().sum();
    let open = claims.iter().filter(|claim| claim.is_none()).count();
    if open == 0 {
        room > 0.0 && (measured - room).abs() <= ROW_SLIP * room
    } else {
        room - measured >= LEAST_ROOM * open as f64
    }
}

/// Openings that the members around them close, and fronts that are too narrow.
fn room_in_openings(unit: &Unit, at: &Layout) -> Vec<Problem> {
    let mut found = Vec::new();
    let mut missing_width: f64 = 0.0;
    for (i, bay) in at.bays.iter().enumerate() {
        for (r, row) in bay.rows.iter().enumerate() {
            let shelves = row.shelves as f64 * (at.members.board + LEAST_ROOM);
            let missing = LEAST_ROOM + shelves - length_of(row.opening);
            if missing > 1e-9 {
                let given = Length::metres(length_of(row.front));
                found.push(Problem::TooSmall {
                    field: FieldId::RowHeight(unit.place(i), r + 1),
                    given,
                    min: given + Length::metres(missing),
                });
            }
            let narrowest_front = row
                .columns
                .iter()
                .map(|x| length_of(*x))
                .fold(f64::INFINITY, f64::min);
            missing_width = missing_width.max((LEAST_ROOM - narrowest_front) * row.columns.len() as f64);
            let half = at.members.column.max(at.members.board) / 2.0;
            let ends = [bay.clear[0].max(bay.between[0]), bay.clear[1].min(bay.between[1])];
            let clear = row
                .between_dividers(ends, half)
                .map(length_of)
                .fold(f64::INFINITY, f64::min);
            missing_width = missing_width.max((LEAST_ROOM - clear) * row.columns.len() as f64);
        }
    }
    if missing_width > 1e-9 {
        found.push(too_small(unit.furniture, width_field(unit), missing_width));
    }
    found
}

/// What must fit on and behind the fronts.
fn within_fronts(unit: &Unit, at: &Layout) -> Vec<Problem> {
    let furniture = unit.furniture;
    let metres = |field| furniture.length(field).as_metres();
    let styles = &furniture.styles;
    let (slabs, framed) = smallest_fronts(unit, at);
    let mut claims: Vec<Claim> = Vec::new();
    let mut found = Vec::new();
    if let Some([wide, high]) = slabs {
        let half = wide.min(high) / 2.0 - LEAST_ROOM / 2.0;
        if styles.front_edge != Edge::Plain {
            let thick = length_of(at.front) - 0.0005;
            claims.push((&f::FRONT_EDGE_SIZE, thick.min(half), "the front thickness"));
        }
        if styles.applied != Edge::Plain {
            let width = half - metres(&f::APPLIED_INSET);
            claims.push((&f::APPLIED_WIDTH, width, "the molding inset"));
        }
        if styles.fronts == FrontStyle::Lipped {
            claims.push((&f::LIP, half, "the smallest front"));
            found.extend(lip_must_cover(unit, at));
        }
    }
    if let Some([wide, high]) = framed {
        claims.extend(door_claims(furniture, wide, high));
    }
    if styles.drawer_boxes == DrawerBoxes::Shown {
        let missing = LEAST_ROOM - least_box_room(unit, at);
        if missing > 0.0 {
            let room = metres(&f::BOX_THICKNESS) - missing / 2.0;
            claims.push((&f::BOX_THICKNESS, room, "the smallest drawer"));
        }
    }
    claims.extend(column_claims(unit, at));
    found.extend(unmet(furniture, claims));
    found
}

type Size = [f64; 2];

/// The smallest width and height among fronts of one board, and among doors of frame and panel.
fn smallest_fronts(unit: &Unit, at: &Layout) -> (Option<Size>, Option<Size>) {
    let smaller = |best: Option<Size>, size: Size| {
        Some(best.map_or(size, |best| [best[0].min(size[0]), best[1].min(size[1])]))
    };
    let (mut slabs, mut framed) = (None, None);
    for row in at.bays.iter().flat_map(|bay| &bay.rows) {
        let Some(column) = row.columns.first() else {
            continue;
        };
        let size = [length_of(*column), length_of(row.front)];
        match row.fill {
            Fill::Open => {}
            Fill::Doors if unit.furniture.styles.doors != DoorStyle::Slab => framed = smaller(framed, size),
            Fill::Doors | Fill::Drawers => slabs = smaller(slabs, size),
        }
    }
    (slabs, framed)
}

fn door_claims(furniture: &Furniture, wide: f64, high: f64) -> Vec<Claim> {
    let metres = |field| furniture.length(field).as_metres();
    let styles = &furniture.styles;
    let recess = metres(&f::PANEL_RECESS);
    let mut claims: Vec<Claim> = vec![
        (&f::DOOR_STILE, (wide - LEAST_ROOM) / 2.0, "the narrowest door"),
        (&f::DOOR_RAIL, (high - LEAST_ROOM) / 2.0, "the shortest door"),
        (
            &f::PANEL_THICKNESS,
            metres(&f::FRONT_THICKNESS) - recess,
            "the panel recess",
        ),
    ];
    let opening = (wide - 2.0 * metres(&f::DOOR_STILE)).min(high - 2.0 * metres(&f::DOOR_RAIL));
    let half = (opening - LEAST_ROOM) / 2.0;
    let sticking = if styles.sticking == Edge::Plain {
        0.0
    } else {
        metres(&f::STICKING_WIDTH)
    };
    if styles.sticking != Edge::Plain {
        claims.push((&f::STICKING_WIDTH, half, "the smallest door"));
    }
    if styles.doors == DoorStyle::RaisedPanel {
        claims.push((&f::PANEL_BEVEL, half - sticking, "the smallest door"));
        claims.push((&f::PANEL_RAISE, recess, "the panel recess"));
    }
    claims
}

/// The part of a lipped front behind the lip must go into its opening.
fn lip_must_cover(unit: &Unit, at: &Layout) -> Option<Problem> {
    let m = &at.members;
    let metres = |field| unit.furniture.length(field).as_metres();
    let (frame, gap, lip) = (metres(&f::FRAME), metres(&f::GAP), metres(&f::LIP));
    let at_end = m.side.max(m.below).max(m.above - m.crown) - frame;
    let between = m.row.max(m.bay).max(m.column) - gap;
    let missing = at_end.max(between / 2.0) - lip;
    (missing > 1e-9).then(|| too_small(unit.furniture, &f::LIP, missing))
}

fn column_claims(unit: &Unit, at: &Layout) -> Vec<Claim> {
    let furniture = unit.furniture;
    let metres = |field| furniture.length(field).as_metres();
    let style = furniture.styles.corner_columns;
    if !at.members.has_frame || style == CornerColumns::None {
        return vec![];
    }
    let stile = at.members.side;
    let overlaid = has_fronts(unit) && furniture.styles.fronts != FrontStyle::Inset;
    let room = if overlaid {
        2.0 * metres(&f::FRAME) - stile
    } else {
        stile
    };
    let mut claims: Vec<Claim> = vec![(&f::COLUMN_DIAMETER, room, "how much of the frame shows")];
    if style == CornerColumns::Fluted {
        let radius = metres(&f::COLUMN_DIAMETER) / 2.0;
        let count = furniture.count(&FLUTES);
        let widest = columns::widest_flute(radius, count);
        claims.push((&f::FLUTE_RADIUS, widest, "the number of flutes"));
    }
    claims
}
