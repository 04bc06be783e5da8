//! The measurements, choices and counts that a piece is asked for: only those that matter for how it is made.

use super::bay::Fill;
use super::counts::{self, CountField};
use super::fields::{self as f, LengthField};
use super::styles::{
    self as s, ApronStyle, BackStyle, BaseStyle, CornerColumns, DoorStyle, DrawerBoxes, Edge, FaceFrame,
    FrontStyle, HeadboardStyle, LegStyle, LowerShelf, Stretchers, StyleField,
};
use super::{Construction, Furniture};
use crate::profile::Shape;

type Fields = Vec<&'static LengthField>;

/// The measurements of a piece, in the order in which they are taken.
pub(super) fn fields(furniture: &Furniture) -> Fields {
    match furniture.kind.construction() {
        Construction::Case => case(furniture),
        Construction::TwoCases => {
            let mut list = case(furniture);
            list.splice(3..3, [&f::UPPER_HEIGHT, &f::UPPER_DEPTH]);
            list
        }
        Construction::Pedestals => pedestals(furniture),
        Construction::Table => table(furniture),
        Construction::Chest => chest(furniture),
        Construction::Headboard => headboard(furniture),
        Construction::Frame => frame(furniture),
    }
}

fn has(furniture: &Furniture, fill: Fill) -> bool {
    let bays = furniture.bays.iter().chain(&furniture.upper);
    bays.flat_map(|bay| &bay.rows).any(|row| row.fill == fill)
}

/// Whether any front is one board.
pub(super) fn has_slabs(furniture: &Furniture) -> bool {
    has(furniture, Fill::Drawers) || has(furniture, Fill::Doors) && furniture.styles.doors == DoorStyle::Slab
}

fn case(furniture: &Furniture) -> Fields {
    let mut list = vec![&f::WIDTH, &f::DEPTH, &f::HEIGHT, &f::BOARD];
    list.extend([&f::TOP_THICKNESS, &f::OVERHANG_FRONT, &f::OVERHANG_SIDE]);
    list.extend(top_edge(furniture));
    if furniture.styles.crown != Edge::Plain {
        list.extend([&f::CROWN_HEIGHT, &f::CROWN_PROJECTION]);
    }
    list.extend(fronts(furniture));
    list.extend(back(furniture));
    list.extend(base(furniture));
    list
}

fn pedestals(furniture: &Furniture) -> Fields {
    let mut list = vec![
        &f::TOP_WIDTH,
        &f::TOP_DEPTH,
        &f::HEIGHT,
        &f::PEDESTAL_WIDTH,
        &f::BOARD,
    ];
    list.extend([&f::TOP_THICKNESS, &f::OVERHANG_FRONT, &f::OVERHANG_SIDE]);
    list.extend(top_edge(furniture));
    list.extend(fronts(furniture));
    list.extend([&f::APRON_HEIGHT, &f::APRON_THICKNESS, &f::MODESTY_FOOT]);
    list.extend(back(furniture));
    list.extend(base(furniture));
    list
}

fn top_edge(furniture: &Furniture) -> Fields {
    match furniture.styles.top_edge {
        Edge::Plain | Edge::Shaped(Shape::HalfRound) => vec![],
        Edge::Shaped(_) => vec![&f::EDGE_HEIGHT, &f::EDGE_WIDTH],
        Edge::Measured => vec![&f::EDGE_GIRTH, &f::EDGE_WIDTH],
    }
}

fn fronts(furniture: &Furniture) -> Fields {
    let styles = &furniture.styles;
    let mut list: Fields = Vec::new();
    if styles.face_frame == FaceFrame::Frame {
        list.extend([&f::FRAME_THICKNESS, &f::STILE, &f::FRAME_RAIL]);
        if styles.corner_columns != CornerColumns::None {
            list.push(&f::COLUMN_DIAMETER);
        }
        if styles.corner_columns == CornerColumns::Fluted {
            list.push(&f::FLUTE_RADIUS);
        }
    }
    let has_doors = has(furniture, Fill::Doors);
    if !has_doors && !has(furniture, Fill::Drawers) {
        return list;
    }
    list.extend([&f::FRONT_THICKNESS, &f::GAP]);
    if styles.fronts != FrontStyle::Inset {
        list.push(&f::FRAME);
    }
    if has_slabs(furniture) {
        if styles.fronts == FrontStyle::Lipped {
            list.extend([&f::LIP, &f::LIP_THICKNESS]);
        }
        if styles.front_edge != Edge::Plain {
            list.push(&f::FRONT_EDGE_SIZE);
        }
        if styles.applied != Edge::Plain {
            list.extend([&f::APPLIED_INSET, &f::APPLIED_WIDTH, &f::APPLIED_HEIGHT]);
        }
    }
    if has_doors && styles.doors != DoorStyle::Slab {
        list.extend([
            &f::DOOR_STILE,
            &f::DOOR_RAIL,
            &f::PANEL_RECESS,
            &f::PANEL_THICKNESS,
        ]);
        if styles.doors == DoorStyle::RaisedPanel {
            list.extend([&f::PANEL_BEVEL, &f::PANEL_RAISE]);
        }
        if styles.sticking != Edge::Plain {
            list.push(&f::STICKING_WIDTH);
        }
    }
    if styles.drawer_boxes == DrawerBoxes::Shown && has(furniture, Fill::Drawers) {
        list.push(&f::BOX_THICKNESS);
    }
    list
}

fn back(furniture: &Furniture) -> Fields {
    match furniture.styles.back {
        BackStyle::None => vec![],
        BackStyle::Flush => vec![&f::BACK_THICKNESS],
        BackStyle::Recessed => vec![&f::BACK_THICKNESS, &f::BACK_RECESS],
    }
}

fn base(furniture: &Furniture) -> Fields {
    match furniture.styles.base {
        BaseStyle::Floor => vec![],
        BaseStyle::Plinth => vec![&f::PLINTH_HEIGHT, &f::PLINTH_SETBACK],
        BaseStyle::CutOutPlinth => {
            vec![
                &f::PLINTH_HEIGHT,
                &f::PLINTH_SETBACK,
                &f::FOOT_WIDTH,
                &f::CUTOUT_HEIGHT,
            ]
        }
        BaseStyle::BracketFeet => vec![&f::PLINTH_HEIGHT, &f::PLINTH_SETBACK, &f::FOOT_WIDTH],
        BaseStyle::Legs | BaseStyle::BunFeet => vec![&f::LEG_HEIGHT, &f::LEG_WIDTH, &f::LEG_INSET],
        BaseStyle::TaperedLegs | BaseStyle::TurnedLegs => {
            vec![&f::LEG_HEIGHT, &f::LEG_WIDTH, &f::LEG_FOOT, &f::LEG_INSET]
        }
        BaseStyle::SplayedLegs => {
            vec![
                &f::LEG_HEIGHT,
                &f::LEG_WIDTH,
                &f::LEG_FOOT,
                &f::LEG_SPLAY,
                &f::LEG_INSET,
            ]
        }
    }
}

fn table(furniture: &Furniture) -> Fields {
    let styles = &furniture.styles;
    let mut list = vec![&f::TOP_WIDTH, &f::TOP_DEPTH, &f::HEIGHT, &f::TOP_THICKNESS];
    list.extend([&f::OVERHANG_FRONT, &f::OVERHANG_SIDE]);
    list.extend(top_edge(furniture));
    list.push(&f::LEG_WIDTH);
    if styles.legs != LegStyle::Square {
        list.push(&f::LEG_FOOT);
    }
    if styles.legs == LegStyle::Splayed {
        list.push(&f::LEG_SPLAY);
        return list;
    }
    list.extend([&f::APRON_HEIGHT, &f::APRON_THICKNESS, &f::APRON_SETBACK]);
    if styles.apron == ApronStyle::Arched {
        list.push(&f::APRON_RISE);
    }
    if furniture.count(&counts::DRAWERS) > 0 {
        list.extend([&f::APRON_RAIL, &f::FRONT_THICKNESS, &f::GAP]);
    }
    if styles.legs == LegStyle::Square {
        if styles.stretchers != Stretchers::None {
            list.extend([&f::STRETCHER_HEIGHT, &f::STRETCHER_SIZE]);
        }
        if styles.lower_shelf == LowerShelf::Shelf {
            list.extend([&f::SHELF_HEIGHT, &f::BOARD]);
        }
    }
    list
}

fn chest(furniture: &Furniture) -> Fields {
    let mut list = vec![&f::WIDTH, &f::DEPTH, &f::HEIGHT, &f::BOARD];
    list.extend([&f::TOP_THICKNESS, &f::OVERHANG_FRONT, &f::OVERHANG_SIDE]);
    list.extend(top_edge(furniture));
    list.extend(base(furniture));
    list
}

fn headboard(furniture: &Furniture) -> Fields {
    let mut list = vec![
        &f::WIDTH,
        &f::HEIGHT,
        &f::LEG_WIDTH,
        &f::HEADBOARD_RAIL,
        &f::RAIL_THICKNESS,
    ];
    list.extend([&f::PANEL_FOOT, &f::PANEL_THICKNESS]);
    if furniture.styles.headboard == HeadboardStyle::Slats {
        list.push(&f::SLAT_WIDTH);
    }
    list
}

fn frame(furniture: &Furniture) -> Fields {
    let mut list = vec![&f::WIDTH, &f::HEIGHT, &f::MEMBER_WIDTH, &f::MEMBER_THICKNESS];
    if furniture.styles.frame_profile != Edge::Plain {
        list.extend([&f::EDGE_HEIGHT, &f::EDGE_WIDTH]);
    }
    list
}

/// The choices of a piece.
pub(super) fn styles(furniture: &Furniture) -> Vec<&'static StyleField> {
    match furniture.kind.construction() {
        Construction::Case | Construction::TwoCases | Construction::Pedestals => case_styles(furniture),
        Construction::Table => table_styles(furniture),
        Construction::Chest => with_taper(vec![&s::TOP_EDGE, &s::BASE], furniture),
        Construction::Headboard => vec![&s::HEADBOARD],
        Construction::Frame => vec![&s::FRAME_PROFILE],
    }
}

fn case_styles(furniture: &Furniture) -> Vec<&'static StyleField> {
    let mut list = vec![&s::BASE, &s::TOP_EDGE];
    if furniture.kind.construction() != Construction::Pedestals {
        list.push(&s::CROWN);
    }
    list.push(&s::FACE_FRAME);
    let has_doors = has(furniture, Fill::Doors);
    if has_doors || has(furniture, Fill::Drawers) {
        list.push(&s::FRONTS);
    }
    if has_doors {
        list.push(&s::DOORS);
    }
    if has_slabs(furniture) {
        list.extend([&s::FRONT_EDGE, &s::APPLIED]);
    }
    if has(furniture, Fill::Drawers) {
        list.push(&s::DRAWER_BOXES);
    }
    list.push(&s::BACK);
    // Choices that depend on another one come last, so that nothing moves under a finger.
    list = with_taper(list, furniture);
    if furniture.styles.face_frame == FaceFrame::Frame {
        list.push(&s::CORNER_COLUMNS);
    }
    if has_doors && furniture.styles.doors != DoorStyle::Slab {
        list.push(&s::STICKING);
    }
    list
}

fn with_taper(mut list: Vec<&'static StyleField>, furniture: &Furniture) -> Vec<&'static StyleField> {
    if furniture.styles.base == BaseStyle::TaperedLegs {
        list.push(&s::TAPER);
    }
    list
}

fn table_styles(furniture: &Furniture) -> Vec<&'static StyleField> {
    let mut list = vec![&s::LEGS];
    match furniture.styles.legs {
        LegStyle::Tapered => list.push(&s::TAPER),
        LegStyle::Square => list.extend([&s::STRETCHERS, &s::LOWER_SHELF]),
        LegStyle::Turned | LegStyle::Splayed => {}
    }
    if furniture.styles.legs != LegStyle::Splayed {
        list.push(&s::APRON);
    }
    list.push(&s::TOP_EDGE);
    list
}

/// What is counted of a piece.
pub(super) fn counts(furniture: &Furniture) -> Vec<&'static CountField> {
    let styles = &furniture.styles;
    match furniture.kind.construction() {
        Construction::Table if styles.legs != LegStyle::Splayed => vec![&counts::DRAWERS],
        Construction::Headboard if styles.headboard == HeadboardStyle::Slats => vec![&counts::SLATS],
        Construction::Case | Construction::TwoCases | Construction::Pedestals
            if styles.face_frame == FaceFrame::Frame && styles.corner_columns == CornerColumns::Fluted =>
        {
            vec![&counts::FLUTES]
        }
        _ => vec![],
    }
}
