//! What must fit in tables, boxes, headboards and frames.

use super::super::base;
use super::super::counts::{DRAWERS, SLATS};
use super::super::fields as f;
use super::super::headboard::{HeadboardLayout, clear_between_slats};
use super::super::layout::length_of;
use super::super::styles::{ApronStyle, HeadboardStyle, LegStyle, LowerShelf, Stretchers};
use super::super::table::{TableLayout, openings};
use super::super::{Furniture, Problem};
use super::cases::{self, foot_of_leg, top_edge, turned};
use super::claim::{Claim, LEAST_ROOM, too_small, unmet};

/// Everything that does not fit in a table.
pub(super) fn table(furniture: &Furniture) -> Vec<Problem> {
    let metres = |field| furniture.length(field).as_metres();
    let at = TableLayout::of(furniture);
    let styles = &furniture.styles;
    let (wide, deep) = (length_of(at.x), length_of(at.y));
    if at.under < LEAST_ROOM {
        return vec![too_small(furniture, &f::HEIGHT, LEAST_ROOM - at.under)];
    }
    let mut claims: Vec<Claim> = top_edge(furniture);
    let room = (wide.min(deep) - LEAST_ROOM) / 2.0;
    claims.push((&f::LEG_WIDTH, room, "the overhangs"));
    if styles.legs == LegStyle::Splayed {
        claims.extend(cases::splayed(furniture, at.under, room));
        return unmet(furniture, claims);
    }
    claims.push((&f::APRON_HEIGHT, at.under - LEAST_ROOM, "the height"));
    claims.push((
        &f::APRON_THICKNESS,
        at.leg - metres(&f::APRON_SETBACK),
        "the apron setback",
    ));
    match styles.legs {
        LegStyle::Tapered => claims.push(foot_of_leg(furniture)),
        LegStyle::Turned => claims.extend([foot_of_leg(furniture), turned(at.apron_foot)]),
        LegStyle::Square => claims.extend(below_square_legs(furniture, &at)),
        LegStyle::Splayed => {}
    }
    if styles.apron == ApronStyle::Arched {
        let half = length_of(at.between[0]).min(length_of(at.between[1])) / 2.0;
        let most = (metres(&f::APRON_HEIGHT) - LEAST_ROOM).min(half);
        claims.push((&f::APRON_RISE, most, "the apron height"));
    }
    let mut found = unmet(furniture, claims);
    if found.is_empty() && furniture.count(&DRAWERS) > 0 {
        found.extend(room_for_drawers(furniture, &at));
    }
    found
}

fn below_square_legs(furniture: &Furniture, at: &TableLayout) -> Vec<Claim> {
    let metres = |field| furniture.length(field).as_metres();
    let mut claims: Vec<Claim> = Vec::new();
    if furniture.styles.stretchers != Stretchers::None {
        let size = metres(&f::STRETCHER_SIZE);
        claims.push((&f::STRETCHER_SIZE, at.leg, "the leg width"));
        if furniture.styles.stretchers == Stretchers::H {
            let room = length_of(at.between[1]);
            claims.push((&f::STRETCHER_SIZE, room, "the space between the legs"));
        }
        claims.push((&f::STRETCHER_HEIGHT, at.apron_foot - size, "the apron height"));
    }
    if furniture.styles.lower_shelf == LowerShelf::Shelf {
        claims.push((&f::SHELF_HEIGHT, at.apron_foot, "the apron height"));
        claims.push((&f::BOARD, metres(&f::SHELF_HEIGHT), "the shelf height"));
        let [stretcher, size] = [&f::STRETCHER_HEIGHT, &f::STRETCHER_SIZE].map(metres);
        let has_stretchers = furniture.styles.stretchers != Stretchers::None;
        if has_stretchers && stretcher < metres(&f::SHELF_HEIGHT) {
            let room = metres(&f::SHELF_HEIGHT) - metres(&f::BOARD) - size;
            claims.push((&f::STRETCHER_HEIGHT, room, "the shelf height"));
        }
    }
    claims
}

fn room_for_drawers(furniture: &Furniture, at: &TableLayout) -> Vec<Problem> {
    let metres = |field| furniture.length(field).as_metres();
    let (spans, height) = openings(furniture, at);
    let width = spans.first().map_or(0.0, |span| length_of(*span));
    let least = LEAST_ROOM + 2.0 * metres(&f::GAP);
    let missing = least - width.min(length_of(height));
    let mut found = Vec::new();
    if missing > 1e-9 {
        let room = metres(&f::APRON_RAIL) - missing / 2.0;
        found.extend(unmet(furniture, vec![(&f::APRON_RAIL, room, "the drawers")]));
    }
    let deep = at.aprons[1][0] - at.aprons[0][0] - LEAST_ROOM;
    found.extend(unmet(furniture, vec![(&f::FRONT_THICKNESS, deep, "the depth")]));
    found
}

/// Everything that does not fit in a blanket box.
pub(super) fn chest(furniture: &Furniture) -> Vec<Problem> {
    let metres = |field| furniture.length(field).as_metres();
    let (wide, deep, board) = (metres(&f::WIDTH), metres(&f::DEPTH), metres(&f::BOARD));
    let high = metres(&f::HEIGHT) - metres(&f::TOP_THICKNESS) - base::height(furniture);
    let least = board + LEAST_ROOM;
    if high < least {
        return vec![too_small(furniture, &f::HEIGHT, least - high)];
    }
    let mut claims: Vec<Claim> = top_edge(furniture);
    claims.push((
        &f::BOARD,
        (wide.min(deep) - LEAST_ROOM) / 2.0,
        "the width and depth",
    ));
    claims.extend(cases::base(furniture, [wide, deep]));
    unmet(furniture, claims)
}

/// Everything that does not fit in a headboard.
pub(super) fn headboard(furniture: &Furniture) -> Vec<Problem> {
    let metres = |field| furniture.length(field).as_metres();
    let at = HeadboardLayout::of(furniture);
    let missing = LEAST_ROOM - length_of(at.field());
    if missing > 1e-9 {
        return vec![too_small(furniture, &f::HEIGHT, missing)];
    }
    let mut claims: Vec<Claim> = vec![
        (&f::LEG_WIDTH, (metres(&f::WIDTH) - LEAST_ROOM) / 2.0, "the width"),
        (&f::RAIL_THICKNESS, at.post, "the leg width"),
        (
            &f::PANEL_THICKNESS,
            metres(&f::RAIL_THICKNESS),
            "the rail thickness",
        ),
    ];
    if furniture.styles.headboard == HeadboardStyle::Slats {
        let missing = 0.001 - clear_between_slats(furniture, &at);
        if missing > 0.0 {
            let count = f64::from(furniture.count(&SLATS));
            let room = metres(&f::SLAT_WIDTH) - missing * (count + 1.0) / count;
            claims.push((&f::SLAT_WIDTH, room, "the number of slats"));
        }
    }
    unmet(furniture, claims)
}

/// Everything that does not fit in a frame.
pub(super) fn frame(furniture: &Furniture) -> Vec<Problem> {
    let metres = |field| furniture.length(field).as_metres();
    let opening = metres(&f::WIDTH).min(metres(&f::HEIGHT));
    let mut claims: Vec<Claim> = vec![(
        &f::MEMBER_WIDTH,
        (opening - LEAST_ROOM) / 2.0,
        "the width and height",
    )];
    if furniture.styles.frame_profile.shape().is_some() {
        claims.push((
            &f::EDGE_HEIGHT,
            metres(&f::MEMBER_THICKNESS),
            "the frame member thickness",
        ));
        claims.push((
            &f::EDGE_WIDTH,
            metres(&f::MEMBER_WIDTH) - 0.001,
            "the frame member width",
        ));
    }
    unmet(furniture, claims)
}
