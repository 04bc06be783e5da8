"""The invented cases of the fixtures that are more than a stack of plain drawers."""

from words import bay, piece, row

DRAWERS, DOORS, OPEN = "drawers", "doors", "open"

CASES = {
    # --- Open compartments -----------------------------------------------------------------------------------
    "bookcase-two-bays": piece(
        "Bookcase, two bays of unlike width", "bookcase", "in",
        "width 47 5/8, depth 11 3/4, height 58 7/8, board 13/16, top-thickness 15/16, overhang-front 3/8,"
        "overhang-side 5/8, back-thickness 3/16, edge-height 1/2, edge-width 3/8",
        [bay(row(OPEN, 1, "12 3/4", shelves=0), row(OPEN, 2, shelves=2), row(OPEN, shelves=1), width="17 1/8"),
         bay(row(OPEN, 1, shelves=3), row(OPEN, 3, "11 1/4"))],
        styles="back flush, top-edge reversed-ogee"),
    "open-shelf-low": piece(
        "Open shelf without a back", "open-shelf", "mm",
        "width 884, depth 297, height 1246, board 17, top-thickness 21, overhang-front 9, overhang-side 6, frame 7,"
        "gap 3, edge-height 13, edge-width 11",
        [bay(row(OPEN, 1, "318", shelves=1), row(OPEN, 2, shelves=1), row(OPEN, 1, "402"))], styles="top-edge step"),
    "bookcase-framed": piece(
        "Bookcase with a face frame and drawers amid it", "bookcase", "mm",
        "width 1312, depth 334, height 1693, board 18, top-thickness 24, overhang-front 31, overhang-side 29,"
        "frame-thickness 21, stile 44, frame-rail 37, front-thickness 19, back-thickness 6, back-recess 8, gap 2,"
        "plinth-height 83, plinth-setback 24, crown-height 47, crown-projection 33",
        [bay(row(OPEN, 1, "711", shelves=2), row(DRAWERS, 2, "187"), row(OPEN, 2, shelves=1), width="527"),
         bay(row(DRAWERS, 1, "164"), row(OPEN, 1, shelves=2), row(DRAWERS, 3, "206"), row(DRAWERS, 1, "228"))],
        styles="face-frame frame, fronts inset, back recessed, base plinth, crown chamfer, drawer-boxes shown"),
    "chest-framed-thick-fronts": piece(
        "Chest, inset fronts thicker than its face frame", "chest-of-drawers", "mm",
        "width 912, depth 468, height 1036, board 19, top-thickness 23, overhang-front 24, overhang-side 21,"
        "frame-thickness 18, stile 41, frame-rail 22, front-thickness 25, back-thickness 6, back-recess 9, gap 2,"
        "plinth-height 91, plinth-setback 0",
        [bay(row(DRAWERS, 2, "164"), row(DRAWERS, 1), row(DRAWERS, 1, "251"))],
        styles="face-frame frame, fronts inset, back recessed, base plinth"),

    # --- Bays of drawers, doors and open rows -----------------------------------------------------------------
    "sideboard-three-bays": piece(
        "Sideboard, bays of unlike width", "sideboard", "cm",
        "width 164.3, depth 44.7, height 86.9, board 1.9, top-thickness 2.6, overhang-front 2.2, overhang-side 1.7,"
        "front-thickness 1.8, gap 0.3, frame 0.6, back-thickness 0.5, back-recess 1.1, plinth-height 9.4,"
        "plinth-setback 3.5, foot-width 8.7, cutout-height 4.1, box-thickness 1.2, door-stile 5.2, door-rail 6.1,"
        "panel-recess 0.7, panel-thickness 0.5, edge-height 1.4, edge-width 1.6",
        [bay(row(DRAWERS, 1, "13.8"), row(DOORS, 1, shelves=1), width="47.2"),
         bay(row(DRAWERS, 2), row(OPEN, 1, "21.3", shelves=1), row(DRAWERS, 1)),
         bay(row(OPEN, 2), row(DOORS, 2, "38.4", shelves=2), width="51.6")],
        styles="base cut-out-plinth, doors flat-panel, drawer-boxes shown, top-edge ovolo"),
    "sideboard-framed": piece(
        "Sideboard with a face frame, raised panels", "sideboard", "mm",
        "width 1527, depth 463, height 872, board 19, top-thickness 26, overhang-front 23, overhang-side 21,"
        "frame-thickness 22, stile 46, frame-rail 39, front-thickness 20, gap 2.5, back-thickness 7, back-recess 10,"
        "plinth-height 104, plinth-setback 31, foot-width 93, box-thickness 13, door-stile 57, door-rail 63,"
        "panel-recess 8, panel-thickness 7, panel-raise 6, panel-bevel 34, sticking-width 9",
        [bay(row(DRAWERS, 1, "132"), row(DOORS, 1, shelves=1)), bay(row(DRAWERS, 1, "147"), row(DOORS, 2, shelves=2),
                                                                    width="586"),
         bay(row(DRAWERS, 1, "132"), row(DOORS, 1))],
        styles="face-frame frame, fronts inset, base bracket-feet, doors raised-panel, sticking ogee,"
               "drawer-boxes shown"),
    "glazed-columns": piece(
        "Glazed cabinet, face frame and fluted columns", "glazed-cabinet", "in",
        "width 37 3/4, depth 14 5/8, height 61 1/2, board 11/16, top-thickness 1 1/16, overhang-front 1 5/8,"
        "overhang-side 1 3/8, frame-thickness 13/16, stile 1 7/8, frame-rail 1 3/8, front-thickness 3/4, gap 1/8,"
        "back-recess 7/16, crown-height 2 3/16, crown-projection 1 1/4, column-diameter 1 3/8, flute-radius 3/32,"
        "leg-height 5 3/4, leg-width 1 3/4, leg-foot 15/16, leg-inset 3/4, door-stile 2 1/16, door-rail 2 3/8,"
        "panel-recess 5/16, panel-thickness 1/8, sticking-width 3/8",
        [bay(row(DOORS, 2, "40 1/4", shelves=3), row(DRAWERS, 2))],
        styles="face-frame frame, fronts inset, base tapered-legs, taper two, crown cove, corner-columns fluted,"
               "sticking chamfer",
        counts={"flutes": 7}),
    "glazed-overlay": piece(
        "Glazed cabinet, overlay, doors over a drawer", "glazed-cabinet", "mm",
        "width 913, depth 371, height 1547, board 16, top-thickness 20, overhang-front 18, overhang-side 14,"
        "front-thickness 22, gap 2, frame 6, back-thickness 5, leg-height 137, leg-width 43, leg-foot 24,"
        "leg-inset 17, door-stile 49, door-rail 58, panel-recess 9, panel-thickness 4, sticking-width 7",
        [bay(row(DOORS, 2, shelves=2), row(DRAWERS, 1, "183"), row(DOORS, 1, "316", shelves=1))],
        styles="back flush, base tapered-legs, sticking roundover"),
    "wardrobe-ogee": piece(
        "Wardrobe, crown and raised panels", "wardrobe", "in",
        "width 41 5/8, depth 22 3/8, height 73 1/4, board 3/4, top-thickness 7/8, overhang-front 1 7/8,"
        "overhang-side 1 11/16, front-thickness 7/8, gap 3/32, frame 9/16, back-thickness 5/16, plinth-height 4 3/8,"
        "plinth-setback 1/4, foot-width 3 7/8, crown-height 2 5/8, crown-projection 1 13/16, door-stile 2 5/8,"
        "door-rail 3 1/8, panel-recess 5/16, panel-thickness 3/8, panel-raise 3/16, panel-bevel 1 9/16",
        [bay(row(DOORS, 2, shelves=1), row(DRAWERS, 1, "8 3/4"))],
        styles="back flush, base bracket-feet, doors raised-panel"),
    "wardrobe-plain-doors": piece(
        "Wardrobe, inset slab doors and a stepped crown", "wardrobe", "mm",
        "width 1043, depth 571, height 1824, board 19, top-thickness 23, overhang-front 12, overhang-side 16,"
        "front-thickness 21, gap 2, back-recess 13, plinth-height 91, plinth-setback 37, crown-height 54,"
        "crown-projection 28, front-edge-size 5, applied-inset 61, applied-width 24, applied-height 11",
        [bay(row(DOORS, 2, "1306", shelves=2), row(DRAWERS, 2)), bay(row(DRAWERS, 1), row(DOORS, 1), width="318")],
        styles="fronts inset, doors slab, crown step, applied bead-and-cove, front-edge chamfer"),

    # --- Drawers with more to them -----------------------------------------------------------------------------
    "chest-lipped": piece(
        "Chest, lipped fronts on bun feet", "chest-of-drawers", "in",
        "width 35 7/8, depth 18 1/4, height 44 3/8, board 13/16, top-thickness 1 1/16, overhang-front 1 3/16,"
        "overhang-side 7/8, front-thickness 13/16, lip 7/16, lip-thickness 5/16, gap 3/16, frame 1/2,"
        "back-thickness 3/16, back-recess 5/16, leg-width 3 3/8, leg-height 2 1/4, leg-inset 5/16,"
        "front-edge-size 3/16, box-thickness 7/16, edge-height 7/16, edge-width 9/16",
        [bay(row(DRAWERS, 2, "6 1/4"), row(DRAWERS), row(DRAWERS), row(DRAWERS, 1, "10 1/8"))],
        styles="fronts lipped, base bun-feet, front-edge ovolo, top-edge cove, drawer-boxes shown"),
    "dresser-lipped-doors": piece(
        "Dresser, lipped drawers and doors", "dresser", "mm",
        "width 1186, depth 448, height 793, board 18, top-thickness 22, overhang-front 27, overhang-side 13,"
        "front-thickness 20, lip 9, lip-thickness 8, gap 4, frame 11, back-thickness 5, leg-height 128, leg-width 44,"
        "leg-foot 25, leg-inset 9, front-edge-size 6, applied-inset 42, applied-width 17, applied-height 8",
        [bay(row(DRAWERS, 1, "148"), row(DOORS, 2, shelves=1), width="684"), bay(row(DRAWERS), row(DRAWERS))],
        styles="fronts lipped, back flush, base turned-legs, front-edge reversed-ogee, applied half-round"),
    "dresser-applied": piece(
        "Dresser, applied moulding on splayed legs", "dresser", "in",
        "width 57 3/8, depth 17 5/8, height 32 3/4, board 11/16, top-thickness 1, overhang-front 1 1/8,"
        "overhang-side 15/16, front-thickness 13/16, gap 1/8, frame 3/8, back-recess 9/16, leg-height 6 3/8,"
        "leg-width 1 11/16, leg-foot 1, leg-inset 1 7/8, leg-splay 1 5/16, front-edge-size 5/16, applied-inset 1 3/8,"
        "applied-width 11/16, applied-height 7/16, edge-height 5/8, edge-width 1/2",
        [bay(row(DRAWERS, 3, "6 3/4"), row(DRAWERS, 2), row(DRAWERS, 2))],
        styles="base splayed-legs, applied ogee, front-edge cove, top-edge ovolo"),
    "nightstand-open": piece(
        "Nightstand, a drawer over an open row", "nightstand", "in",
        "width 19 7/8, depth 15 3/8, height 26 1/4, board 5/8, top-thickness 13/16, overhang-front 1 1/16,"
        "overhang-side 11/16, front-thickness 11/16, gap 3/32, back-thickness 3/16, leg-height 8 5/8,"
        "leg-width 1 13/16, leg-foot 7/8, leg-inset 7/16, applied-inset 7/8, applied-width 5/8, applied-height 5/16,"
        "edge-girth 1 3/16",
        [bay(row(DRAWERS, 1, "5 5/8"), row(OPEN))],
        styles="fronts inset, base turned-legs, applied ovolo, top-edge measured, drawer-boxes shown"),
    "nightstand-framed": piece(
        "Nightstand with a face frame, overlay", "nightstand", "mm",
        "width 494, depth 401, height 648, board 15, top-thickness 18, overhang-front 33, overhang-side 11,"
        "frame-thickness 19, stile 41, frame-rail 36, front-thickness 17, frame 32, gap 8, back-thickness 4,"
        "back-recess 6, leg-height 149, leg-width 39, leg-inset 8, column-diameter 21, front-edge-size 7",
        [bay(row(DRAWERS, 1, "119"), row(DRAWERS, 2), row(DOORS, 1, "133"))],
        styles="face-frame frame, corner-columns plain, front-edge roundover"),
    "nightstand-chamfer": piece(
        "Nightstand, ogee edges and planted chamfers", "nightstand", "mm",
        "width 476, depth 388, height 612, board 17, front-thickness 18, front-edge-size 8, applied-inset 31, applied-width 19, applied-height 7",
        [bay(row(DRAWERS, 1), row(DRAWERS, 2))], styles="front-edge ogee, applied chamfer"),
    "nightstand-roundover": piece(
        "Nightstand, stepped edges and planted round-overs", "nightstand", "in",
        "width 18 5/8, depth 15 1/8, height 25 7/8, front-thickness 7/8, front-edge-size 5/16, applied-inset 1 1/16, applied-width 9/16, applied-height 7/16",
        [bay(row(DRAWERS, 1), row(DRAWERS, 2))], styles="front-edge step, applied roundover, fronts inset"),
    "nightstand-cove": piece(
        "Nightstand, beaded edges and planted coves", "nightstand", "mm",
        "width 503, depth 417, height 655, front-thickness 21, front-edge-size 9, applied-inset 44, applied-width 16, applied-height 12",
        [bay(row(DRAWERS, 1), row(DRAWERS, 2))], styles="front-edge bead-and-cove, applied cove"),
    "sideboard-beaded": piece(
        "Sideboard, beaded sticking and planted mouldings", "sideboard", "mm",
        "width 1322, depth 431, height 812, front-thickness 22, door-stile 57, door-rail 63, panel-recess 8,"
        "panel-thickness 6, sticking-width 12, applied-inset 26, applied-width 14, applied-height 9",
        [bay(row(DRAWERS, 1, "152"), row(DOORS, 2, shelves=1)), bay(row(DRAWERS, 1), row(DRAWERS, 1))],
        styles="sticking bead-and-cove, applied reversed-ogee"),

    # --- Hutch and pedestal desk -------------------------------------------------------------------------------
    "hutch-framed": piece(
        "Hutch, face frames and plain columns", "hutch", "in",
        "width 48 3/4, depth 18 1/8, height 35 3/8, board 3/4, top-thickness 1 1/8, overhang-front 1 1/4,"
        "overhang-side 1 3/16, upper-depth 11 5/8, upper-height 38 1/2, frame-thickness 7/8, stile 1 13/16,"
        "frame-rail 1 5/8, front-thickness 3/4, gap 3/32, back-thickness 5/16, back-recess 3/8, plinth-height 4 1/8,"
        "plinth-setback 1 5/8, crown-height 1 15/16, crown-projection 1 1/16, column-diameter 1 1/8, door-stile 2 1/8,"
        "door-rail 2 5/16, panel-recess 1/4, panel-thickness 5/16, sticking-width 5/16, box-thickness 9/16,"
        "edge-height 11/16, edge-width 3/8",
        [bay(row(DRAWERS, 2, "6 1/8"), row(DOORS, 2, shelves=1))],
        [bay(row(OPEN, 1, shelves=2), row(DRAWERS, 2, "4 7/8")), bay(row(DOORS, 1, shelves=1), width="14 5/8")],
        styles="face-frame frame, fronts inset, crown roundover, corner-columns plain, sticking cove,"
               "drawer-boxes shown, top-edge ogee"),
    "hutch-plain": piece(
        "Hutch, overlay, glazed above", "hutch", "mm",
        "width 1174, depth 452, height 861, board 18, top-thickness 25, overhang-front 16, overhang-side 19,"
        "upper-depth 287, upper-height 972, front-thickness 20, gap 3, frame 7, back-thickness 6, plinth-height 97,"
        "plinth-setback 42, crown-height 43, crown-projection 15, door-stile 54, door-rail 61, panel-recess 8,"
        "panel-thickness 5, sticking-width 11, edge-girth 38",
        [bay(row(DRAWERS, 3, "141"), row(DRAWERS, 2))],
        [bay(row(DOORS, 2, shelves=2), row(OPEN, 1, "208"))],
        styles="back flush, doors glazed, sticking reversed-ogee, crown ovolo, top-edge measured"),
    "pedestal-desk-legs": piece(
        "Pedestal desk on turned legs", "pedestal-desk", "mm",
        "top-width 1463, top-depth 682, height 758, top-thickness 27, overhang-front 22, overhang-side 18, board 18,"
        "pedestal-width 392, front-thickness 19, gap 3, frame 6, back-thickness 5, back-recess 11, leg-height 121,"
        "leg-width 46, leg-foot 27, leg-inset 12, apron-height 94, apron-thickness 21, modesty-foot 213,"
        "edge-height 16, edge-width 12, box-thickness 14",
        [bay(row(DRAWERS, 1, "96"), row(DRAWERS, 1), row(DRAWERS, 1, "227")),
         bay(row(DRAWERS, 2, "104"), row(DOORS, 1, shelves=1))],
        styles="base turned-legs, top-edge roundover, drawer-boxes shown"),
    "pedestal-desk-framed": piece(
        "Pedestal desk with face frames", "pedestal-desk", "in",
        "top-width 59 1/4, top-depth 27 5/8, height 30 3/8, top-thickness 1 3/16, overhang-front 1 1/2,"
        "overhang-side 1 1/8, board 11/16, pedestal-width 15 7/8, frame-thickness 13/16, stile 1 5/8,"
        "frame-rail 1 1/4, front-thickness 3/4, gap 1/8, plinth-height 3 5/8, plinth-setback 1 1/4, apron-height 3 1/8,"
        "modesty-foot 9 3/8, edge-height 3/4, edge-width 9/16, column-diameter 15/16, flute-radius 1/16",
        [bay(row(DRAWERS, 1, "5 1/2"), row(OPEN, 1, shelves=1)), bay(row(DRAWERS, 1, "5 1/2"), row(DRAWERS))],
        styles="face-frame frame, fronts inset, back flush, top-edge bead-and-cove, corner-columns fluted"),
    "wardrobe-reversed-ogee": piece(
        "Wardrobe, reversed ogee crown, on the floor", "wardrobe", "in",
        "width 39 1/2, depth 21 5/8, height 70 3/4, board 7/8, top-thickness 1 1/4, overhang-front 2 1/16,"
        "overhang-side 1 15/16, front-thickness 13/16, gap 1/8, back-recess 11/16, crown-height 1 7/8,"
        "crown-projection 1 5/8, door-stile 2 9/16, door-rail 2 7/8, sticking-width 7/16, panel-recess 3/16,"
        "panel-raise 1/8, panel-bevel 1 3/8",
        [bay(row(DRAWERS, 3, "7 1/4"), row(DOORS, 3, shelves=1))],
        styles="fronts inset, base floor, crown reversed-ogee, doors raised-panel, sticking ovolo"),
}
