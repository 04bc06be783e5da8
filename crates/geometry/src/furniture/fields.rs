//! Measurements that a maker takes of a piece: their names, their limits, what to do with the tape.
//!
//! The limits stand here once. The check, the hint beside the field, the error and the tests read them.

mod measure;

use units::Length;

pub use measure::{BayPlace, FieldId, LengthField, Measures};

const fn field(
    key: &'static str,
    label: &'static str,
    hint: &'static str,
    min_mm: f64,
    max_mm: f64,
) -> LengthField {
    LengthField {
        key,
        label,
        hint,
        min: Length::millimetres(min_mm),
        max: Length::millimetres(max_mm),
    }
}

/// Width of the carcass.
pub const WIDTH: LengthField = field(
    "width",
    "Width",
    "Side to side, without the top's overhang",
    50.0,
    3000.0,
);
/// Depth of the carcass.
pub const DEPTH: LengthField = field(
    "depth",
    "Depth",
    "Front to back, not counting the drawer fronts",
    50.0,
    3000.0,
);
/// Height of the piece.
pub const HEIGHT: LengthField = field("height", "Height", "Floor to the top surface", 50.0, 3000.0);
/// Thickness of the carcass boards.
pub const BOARD: LengthField = field(
    "board",
    "Board thickness",
    "Thickness of the side boards",
    3.0,
    60.0,
);
/// Thickness of the top.
pub const TOP_THICKNESS: LengthField = field(
    "top-thickness",
    "Top thickness",
    "At the front edge of the top",
    3.0,
    100.0,
);
/// Overhang of the top in front.
pub const OVERHANG_FRONT: LengthField = field(
    "overhang-front",
    "Front overhang",
    "From the side's front edge, not the drawer fronts",
    0.0,
    300.0,
);
/// Overhang of the top at each side.
pub const OVERHANG_SIDE: LengthField = field(
    "overhang-side",
    "Side overhang",
    "Outside of the side to the end of the top",
    0.0,
    300.0,
);
/// Thickness of the drawer fronts.
pub const FRONT_THICKNESS: LengthField = field(
    "front-thickness",
    "Front thickness",
    "Pull a drawer and measure the front board",
    3.0,
    60.0,
);
/// Gap between drawer fronts, or around each inset front.
pub const GAP: LengthField = field(
    "gap",
    "Gap",
    "Between two drawer fronts, or around an inset front",
    0.0,
    60.0,
);
/// Frame that shows around overlay fronts.
pub const FRAME: LengthField = field(
    "frame",
    "Frame showing",
    "Outside of the case to the nearest drawer front",
    0.0,
    60.0,
);
/// Thickness of the back panel.
pub const BACK_THICKNESS: LengthField = field(
    "back-thickness",
    "Back panel",
    "Thickness of the back panel",
    2.0,
    40.0,
);
/// How far the back panel is set in.
pub const BACK_RECESS: LengthField = field(
    "back-recess",
    "Back recess",
    "Side's rear edge to the back panel",
    1.0,
    200.0,
);
/// Height of the plinth.
pub const PLINTH_HEIGHT: LengthField = field(
    "plinth-height",
    "Plinth or foot height",
    "Floor to the underside of the case",
    10.0,
    400.0,
);
/// How far the plinth front is set back.
pub const PLINTH_SETBACK: LengthField = field(
    "plinth-setback",
    "Plinth setback",
    "Front of the case to the front of the plinth",
    0.0,
    300.0,
);
/// Height of the legs.
pub const LEG_HEIGHT: LengthField = field(
    "leg-height",
    "Leg height",
    "Floor to the underside of the case",
    10.0,
    1500.0,
);
/// Width of the square legs.
pub const LEG_WIDTH: LengthField = field(
    "leg-width",
    "Leg width",
    "Across one face, or the thickest part if round",
    10.0,
    300.0,
);
/// How far the legs are set in.
pub const LEG_INSET: LengthField = field(
    "leg-inset",
    "Leg inset",
    "Outside of the case to the leg, front and sides",
    0.0,
    300.0,
);
/// Width of the top: across the top, end to end.
pub const TOP_WIDTH: LengthField = field(
    "top-width",
    "Top width",
    "Across the top, end to end",
    100.0,
    4000.0,
);
/// Depth of the top: across the top, front to back.
pub const TOP_DEPTH: LengthField = field(
    "top-depth",
    "Top depth",
    "Across the top, front to back",
    50.0,
    3000.0,
);
/// Edge profile, height: how far down the edge the profile reaches.
pub const EDGE_HEIGHT: LengthField = field(
    "edge-height",
    "Edge profile height",
    "How far down the edge the profile reaches",
    1.0,
    60.0,
);
/// Edge profile, width: how far into the face the profile reaches.
pub const EDGE_WIDTH: LengthField = field(
    "edge-width",
    "Edge profile width",
    "How far into the face the profile reaches",
    1.0,
    100.0,
);
/// Edge, girth: press a strip of paper around the edge, from the flat of the top to the underside, and measure the strip.
pub const EDGE_GIRTH: LengthField = field(
    "edge-girth",
    "Edge girth",
    "Wrap a paper strip from top face to underside; measure it",
    1.0,
    300.0,
);
/// Front edge profile: how far the profile reaches into the front.
pub const FRONT_EDGE_SIZE: LengthField = field(
    "front-edge-size",
    "Front edge profile size",
    "How far the profile reaches into the front",
    1.0,
    30.0,
);
/// Lip: how far the front reaches over the frame.
pub const LIP: LengthField = field("lip", "Lip", "How far the front overlaps the frame", 2.0, 30.0);
/// Lip thickness: thickness of the part that lies on the frame.
pub const LIP_THICKNESS: LengthField = field(
    "lip-thickness",
    "Lip thickness",
    "Thickness of the part over the frame",
    2.0,
    40.0,
);
/// Door stile: width of the upright members of a door.
pub const DOOR_STILE: LengthField = field(
    "door-stile",
    "Door stile",
    "Width of a door's upright parts",
    10.0,
    300.0,
);
/// Door rail: height of the level members of a door.
pub const DOOR_RAIL: LengthField = field(
    "door-rail",
    "Door rail",
    "Height of a door's crosspieces",
    10.0,
    400.0,
);
/// Panel set back: from the front of the door frame to the panel.
pub const PANEL_RECESS: LengthField = field(
    "panel-recess",
    "Panel recess",
    "Front of the door frame to the panel",
    1.0,
    40.0,
);
/// Panel thickness: thickness of the panel or the glass.
pub const PANEL_THICKNESS: LengthField = field(
    "panel-thickness",
    "Panel thickness",
    "Thickness of the panel or the glass",
    2.0,
    40.0,
);
/// Bevel width: from the frame to the raised field.
pub const PANEL_BEVEL: LengthField = field(
    "panel-bevel",
    "Bevel width",
    "Frame to the raised field",
    5.0,
    150.0,
);
/// Field raised by: how far the field stands before the foot of its bevel.
pub const PANEL_RAISE: LengthField = field(
    "panel-raise",
    "Field rise",
    "How far the field sits above the foot of its bevel",
    1.0,
    40.0,
);
/// Sticking width: the molding between frame and panel, seen from the front.
pub const STICKING_WIDTH: LengthField = field(
    "sticking-width",
    "Sticking width",
    "Molding between frame and panel, seen from the front",
    1.0,
    40.0,
);
/// Frame stile: width of the upright members of the face frame.
pub const STILE: LengthField = field(
    "stile",
    "Frame stile",
    "Width of the face frame's upright parts",
    10.0,
    200.0,
);
/// Frame rail: height of the level members of the face frame.
pub const FRAME_RAIL: LengthField = field(
    "frame-rail",
    "Frame rail",
    "Height of the face frame's crosspieces",
    10.0,
    200.0,
);
/// Frame thickness: thickness of the face frame.
pub const FRAME_THICKNESS: LengthField = field(
    "frame-thickness",
    "Frame thickness",
    "Thickness of the face frame",
    3.0,
    60.0,
);
/// Crown, height: from the foot of the molding to the top.
pub const CROWN_HEIGHT: LengthField = field(
    "crown-height",
    "Crown height",
    "Bottom of the molding to the top",
    5.0,
    300.0,
);
/// Crown, projection: from the case to the outermost edge of the molding.
pub const CROWN_PROJECTION: LengthField = field(
    "crown-projection",
    "Crown projection",
    "Case to the molding's outermost edge",
    2.0,
    300.0,
);
/// Column diameter: across the flat side of a half column.
pub const COLUMN_DIAMETER: LengthField = field(
    "column-diameter",
    "Column diameter",
    "Across the flat side of a half column",
    5.0,
    200.0,
);
/// Flute radius: half the width of one flute.
pub const FLUTE_RADIUS: LengthField = field(
    "flute-radius",
    "Flute radius",
    "Half the width of one flute",
    0.5,
    30.0,
);
/// Leg at the floor: width or diameter of the leg at the floor.
pub const LEG_FOOT: LengthField = field(
    "leg-foot",
    "Leg size at the floor",
    "Width or diameter of the leg at the floor",
    5.0,
    150.0,
);
/// Splay: how far the foot stands further out than the head, front and sides.
pub const LEG_SPLAY: LengthField = field(
    "leg-splay",
    "Splay",
    "How much farther out the foot is than the top",
    0.0,
    300.0,
);
/// Foot width: width of a foot on the floor.
pub const FOOT_WIDTH: LengthField = field(
    "foot-width",
    "Foot width",
    "Width of a foot on the floor",
    10.0,
    600.0,
);
/// Cut-out height: from the floor to the highest point of the opening.
pub const CUTOUT_HEIGHT: LengthField = field(
    "cutout-height",
    "Cutout height",
    "Floor to the top of the opening",
    5.0,
    400.0,
);
/// Apron height: from the underside of the top down.
pub const APRON_HEIGHT: LengthField = field(
    "apron-height",
    "Apron height",
    "From the underside of the top down",
    10.0,
    500.0,
);
/// Apron thickness: thickness of the apron boards.
pub const APRON_THICKNESS: LengthField = field(
    "apron-thickness",
    "Apron thickness",
    "Thickness of the apron boards",
    3.0,
    60.0,
);
/// Apron set back: from the face of the leg to the face of the apron.
pub const APRON_SETBACK: LengthField = field(
    "apron-setback",
    "Apron setback",
    "Face of the leg to the face of the apron",
    0.0,
    100.0,
);
/// Rise of the arch: how far the lower edge rises in the middle.
pub const APRON_RISE: LengthField = field(
    "apron-rise",
    "Arch rise",
    "How far the bottom edge rises in the middle",
    1.0,
    400.0,
);
/// Apron around drawers: height of the apron that shows above and below a drawer.
pub const APRON_RAIL: LengthField = field(
    "apron-rail",
    "Apron around drawers",
    "Apron that shows above and below a drawer",
    5.0,
    200.0,
);
/// Stretcher height: from the floor to the underside of the stretcher.
pub const STRETCHER_HEIGHT: LengthField = field(
    "stretcher-height",
    "Stretcher height",
    "Floor to the underside of the stretcher",
    0.0,
    1500.0,
);
/// Stretcher size: across one face of a square stretcher.
pub const STRETCHER_SIZE: LengthField = field(
    "stretcher-size",
    "Stretcher size",
    "Across one face of a square stretcher",
    5.0,
    100.0,
);
/// Shelf height: from the floor to the upper face of the lower shelf.
pub const SHELF_HEIGHT: LengthField = field(
    "shelf-height",
    "Shelf height",
    "Floor to the top of the lower shelf",
    10.0,
    1500.0,
);
/// Pedestal width: across one pedestal, side to side.
pub const PEDESTAL_WIDTH: LengthField = field(
    "pedestal-width",
    "Pedestal width",
    "Across one pedestal, side to side",
    50.0,
    1500.0,
);
/// Modesty panel from the floor: from the floor to the lower edge of the panel.
pub const MODESTY_FOOT: LengthField = field(
    "modesty-foot",
    "Floor to modesty panel",
    "Floor to the panel's bottom edge",
    0.0,
    1500.0,
);
/// Upper case, depth: from the front edge of its side to the wall.
pub const UPPER_DEPTH: LengthField = field(
    "upper-depth",
    "Upper case depth",
    "Its side's front edge to the wall",
    50.0,
    3000.0,
);
/// Upper case, height: from the counter to its top surface.
pub const UPPER_HEIGHT: LengthField = field(
    "upper-height",
    "Upper case height",
    "Counter to its top surface",
    50.0,
    3000.0,
);
/// Rail height: height of the rails between the posts.
pub const HEADBOARD_RAIL: LengthField = field(
    "headboard-rail",
    "Rail height",
    "Height of the rails between the posts",
    10.0,
    600.0,
);
/// Lower rail from the floor: from the floor to the lower edge of the lower rail.
pub const PANEL_FOOT: LengthField = field(
    "panel-foot",
    "Floor to bottom rail",
    "Floor to the bottom rail's bottom edge",
    0.0,
    2000.0,
);
/// Rail thickness: thickness of the rails.
pub const RAIL_THICKNESS: LengthField = field(
    "rail-thickness",
    "Rail thickness",
    "Thickness of the rails",
    3.0,
    100.0,
);
/// Slat width: across the front of one slat.
pub const SLAT_WIDTH: LengthField = field(
    "slat-width",
    "Slat width",
    "Across the front of one slat",
    5.0,
    300.0,
);
/// Frame member, width: from the outer edge to the opening.
pub const MEMBER_WIDTH: LengthField = field(
    "member-width",
    "Frame member width",
    "Outer edge to the opening",
    5.0,
    400.0,
);
/// Frame member, thickness: from the wall to the front.
pub const MEMBER_THICKNESS: LengthField = field(
    "member-thickness",
    "Frame member thickness",
    "Wall to the front",
    3.0,
    100.0,
);
/// Molding set in: from the edge of the front to the outer edge of the molding.
pub const APPLIED_INSET: LengthField = field(
    "applied-inset",
    "Molding inset",
    "Edge of the front to the outer edge of the molding",
    0.0,
    300.0,
);
/// Molding width: seen from the front.
pub const APPLIED_WIDTH: LengthField = field(
    "applied-width",
    "Molding width",
    "Seen from the front",
    2.0,
    200.0,
);
/// Molding height: how far it stands before the front.
pub const APPLIED_HEIGHT: LengthField = field(
    "applied-height",
    "Molding height",
    "How far it sticks out from the front",
    1.0,
    60.0,
);
/// Drawer box board: thickness of the sides of the drawer box.
pub const BOX_THICKNESS: LengthField = field(
    "box-thickness",
    "Drawer box thickness",
    "Thickness of the sides of the drawer box",
    3.0,
    30.0,
);

/// Of a part that the maker adds: left to right.
pub const PART_WIDTH: LengthField = field("part-width", "Width", "Left to right", 1.0, 4000.0);
/// Of a part that the maker adds: front to back.
pub const PART_DEPTH: LengthField = field("part-depth", "Depth", "Front to back", 1.0, 3000.0);
/// Of a part that the maker adds: bottom to top.
pub const PART_HEIGHT: LengthField = field("part-height", "Height", "Bottom to top", 1.0, 3000.0);
/// Of a part that the maker adds: end to end.
pub const PART_LENGTH: LengthField = field("part-length", "Length", "End to end", 1.0, 10000.0);
/// Of a part that the maker adds: press a strip of paper around it and measure the strip.
pub const PART_GIRTH: LengthField = field(
    "part-girth",
    "Girth",
    "Wrap a paper strip around it; measure the strip",
    1.0,
    1500.0,
);
/// Of a part that the maker adds: across the thickest place.
pub const PART_DIAMETER: LengthField = field(
    "part-diameter",
    "Diameter",
    "Across the thickest part",
    2.0,
    600.0,
);
/// Of a part that the maker adds: width or diameter at the lower end.
pub const PART_FOOT: LengthField = field(
    "part-foot",
    "Width at the foot",
    "Width or diameter at the lower end",
    2.0,
    600.0,
);
/// How far along an axis a part is put, moved or repeated.
pub const PART_PLACE: LengthField = field(
    "part-place",
    "Distance",
    "To its new place, or from one repeat to the next",
    0.0,
    10_000.0,
);
/// Where a part that the maker adds begins.
pub const PART_RIGHT: LengthField = field(
    "part-right",
    "From the left",
    "Left end of the case or top to the part",
    0.0,
    10_000.0,
);
/// Where a part that the maker adds begins.
pub const PART_BEHIND: LengthField = field(
    "part-behind",
    "From the front",
    "Front of the case or top to the part, or to its back if planted",
    0.0,
    10_000.0,
);
/// Where a part that the maker adds begins.
pub const PART_UP: LengthField = field(
    "part-up",
    "From the floor",
    "Floor to the bottom of the part",
    0.0,
    10_000.0,
);
/// Where a point of a turning lies.
pub const POINT_HEIGHT: LengthField = field(
    "point-height",
    "Point height",
    "Bottom of the part to the point",
    0.0,
    3000.0,
);

/// Limits for the height of a row.
pub const ROW_HEIGHT: LengthField = field(
    "row-height",
    "Row height",
    "One front or door, top to bottom; for open shelf, the clear opening",
    10.0,
    2900.0,
);
/// Limits for the width of a bay.
pub const BAY_WIDTH: LengthField = field(
    "bay-width",
    "Column width",
    "Clear width between its uprights",
    10.0,
    2900.0,
);

/// Every measurement of a piece as a whole.
pub const ALL: [&LengthField; 77] = [
    &WIDTH,
    &DEPTH,
    &HEIGHT,
    &BOARD,
    &TOP_THICKNESS,
    &OVERHANG_FRONT,
    &OVERHANG_SIDE,
    &FRONT_THICKNESS,
    &GAP,
    &FRAME,
    &BACK_THICKNESS,
    &BACK_RECESS,
    &PLINTH_HEIGHT,
    &PLINTH_SETBACK,
    &LEG_HEIGHT,
    &LEG_WIDTH,
    &LEG_INSET,
    &TOP_WIDTH,
    &TOP_DEPTH,
    &EDGE_HEIGHT,
    &EDGE_WIDTH,
    &EDGE_GIRTH,
    &FRONT_EDGE_SIZE,
    &LIP,
    &LIP_THICKNESS,
    &DOOR_STILE,
    &DOOR_RAIL,
    &PANEL_RECESS,
    &PANEL_THICKNESS,
    &PANEL_BEVEL,
    &PANEL_RAISE,
    &STICKING_WIDTH,
    &STILE,
    &FRAME_RAIL,
    &FRAME_THICKNESS,
    &CROWN_HEIGHT,
    &CROWN_PROJECTION,
    &COLUMN_DIAMETER,
    &FLUTE_RADIUS,
    &LEG_FOOT,
    &LEG_SPLAY,
    &FOOT_WIDTH,
    &CUTOUT_HEIGHT,
    &APRON_HEIGHT,
    &APRON_THICKNESS,
    &APRON_SETBACK,
    &APRON_RISE,
    &APRON_RAIL,
    &STRETCHER_HEIGHT,
    &STRETCHER_SIZE,
    &SHELF_HEIGHT,
    &PEDESTAL_WIDTH,
    &MODESTY_FOOT,
    &UPPER_DEPTH,
    &UPPER_HEIGHT,
    &HEADBOARD_RAIL,
    &PANEL_FOOT,
    &RAIL_THICKNESS,
    &SLAT_WIDTH,
    &MEMBER_WIDTH,
    &MEMBER_THICKNESS,
    &APPLIED_INSET,
    &APPLIED_WIDTH,
    &APPLIED_HEIGHT,
    &BOX_THICKNESS,
    &PART_WIDTH,
    &PART_DEPTH,
    &PART_HEIGHT,
    &PART_LENGTH,
    &PART_GIRTH,
    &PART_DIAMETER,
    &PART_FOOT,
    &PART_PLACE,
    &PART_RIGHT,
    &PART_BEHIND,
    &PART_UP,
    &POINT_HEIGHT,
];

/// The measurement with this key in saved files.
pub fn by_key(key: &str) -> Option<&'static LengthField> {
    ALL.into_iter().find(|field| field.key == key)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_field_has_its_own_key_and_sound_limits() {
        for field in ALL {
            assert!(field.min < field.max, "{}", field.key);
            assert_eq!(
                ALL.iter().filter(|other| other.key == field.key).count(),
                1,
                "{}",
                field.key
            );
            assert_eq!(by_key(field.key), Some(field));
        }
    }
}
