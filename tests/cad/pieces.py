"""The invented pieces of the fixtures, as in a save file of format 2. This module has all but the new cases."""

import json
from pathlib import Path

from pieces_of_cases import CASES
from tape import modern
from words import bay, piece, readings, row

INVENTED = Path(__file__).resolve().parent.parent.parent / "www" / "invented-workshop.json"


def invented(identity):
    """A piece of the invented workshop that comes with the page; its finish does not matter here."""
    pieces = json.loads(INVENTED.read_text())["pieces"]
    found = next(piece for piece in pieces if piece["id"] == identity)
    return modern({key: value for key, value in found.items() if key != "scheme"})


# One board, 33 7/8 in by 17 1/2 in by 3/4 in.
BLOCK = {"block": readings("in", "width 33 7/8, depth 17 1/2, height 3/4")}

DRAWERS = "drawers"

PIECES = {
    "dresser-plinth": invented("invented-dresser"),
    "nightstand-inset-legs": invented("invented-nightstands"),
    "chest-floor-flush": piece(
        "Chest of drawers, to the floor", "chest-of-drawers", "mm",
        "width 790, depth 430, height 1140, board 18, top-thickness 22, overhang-front 24, overhang-side 12,"
        "front-thickness 19, gap 3, frame 8, back-thickness 5",
        [bay(row(DRAWERS, 2, "165"), row(DRAWERS), row(DRAWERS), row(DRAWERS, 1, "255"), row(DRAWERS))],
        styles="fronts overlay, back flush, base floor"),
    "nightstand-overlay-legs": piece(
        "Nightstand on legs", "nightstand", "mm",
        "width 462, depth 38.5 cm, height 61 cm, board 16, top-thickness 19, overhang-front 8, overhang-side 15,"
        "front-thickness 17, gap 2.5, frame 5, back-thickness 4, back-recess 9, leg-height 142, leg-width 36,"
        "leg-inset 11",
        [bay(row(DRAWERS, 1, "118"), row(DRAWERS))], styles="fronts overlay, back recessed, base legs"),
    # The fronts come to 28 5/8 in of 29 in: a slip of 1.3 %, which all rows share.
    "chest-slipped-rows": piece(
        "Chest, rows that slip", "chest-of-drawers", "in",
        "width 34 5/16, depth 17 7/8, height 38 1/4, board 13/16, top-thickness 7/8, overhang-front 1 1/8,"
        "overhang-side 9/16, front-thickness 11/16, gap 1/8, frame 7/16, back-thickness 3/16, back-recess 3/8,"
        "plinth-height 7 1/8, plinth-setback 0",
        [bay(row(DRAWERS, 2, "5 3/8"), row(DRAWERS, 1, "6 1/2"), row(DRAWERS, 1, "7 5/8"), row(DRAWERS, 1, "9 1/8"))],
        styles="fronts overlay, back recessed, base plinth"),
    # Nothing between the fronts and no frame: fronts lie against each other and against the top.
    "dresser-touching": piece(
        "Dresser, fronts that touch", "dresser", "mm",
        "width 1210, depth 455, height 760, board 20, top-thickness 25, overhang-front 15, overhang-side 0,"
        "front-thickness 20, gap 0, frame 0, back-thickness 6, leg-height 110, leg-width 45, leg-inset 0",
        [bay(row(DRAWERS, 3), row(DRAWERS, 2), row(DRAWERS, 2))], styles="fronts overlay, back flush, base legs"),
    "dresser-inset-plinth": piece(
        "Dresser, inset fronts", "dresser", "cm",
        "width 1.38 m, depth 46.2, height 81.5, board 2.1, top-thickness 28 mm, overhang-front 3, overhang-side 2.4,"
        "front-thickness 1.9, gap 0.2, back-thickness 0.6, back-recess 1.2, plinth-height 8.5, plinth-setback 4",
        [bay(row(DRAWERS, 3, "14.5"), row(DRAWERS, 2), row(DRAWERS, 2))],
        styles="fronts inset, back recessed, base plinth"),

    # --- Tables ----------------------------------------------------------------------------------------------
    "desk-tapered": piece(
        "Writing desk, tapered legs", "desk", "in",
        "top-width 47 3/8, top-depth 23 5/8, height 29 7/8, top-thickness 15/16, overhang-side 1 1/4,"
        "overhang-front 7/8, leg-width 1 11/16, leg-foot 13/16, apron-height 4 5/8, apron-thickness 13/16,"
        "apron-setback 3/16, apron-rail 11/16, gap 3/32, front-thickness 13/16, edge-height 3/8, edge-width 5/8",
        styles="legs tapered, top-edge roundover", counts={"drawers": 2}),
    "vanity-turned": piece(
        "Vanity, turned legs and arched aprons", "vanity", "mm",
        "top-width 1065, top-depth 457, height 764, top-thickness 24, overhang-side 21, overhang-front 17,"
        "leg-width 47, leg-foot 26, apron-height 131, apron-thickness 19, apron-setback 6, apron-rise 34,"
        "apron-rail 17, gap 2, front-thickness 16, edge-height 14, edge-width 9",
        styles="legs turned, apron arched, top-edge cove", counts={"drawers": 3}),
    "console-shelf": piece(
        "Console, square legs, H and shelf", "console", "in",
        "top-width 49 1/4, top-depth 13 3/4, height 31 1/8, top-thickness 7/8, overhang-side 1 3/8,"
        "overhang-front 5/8, leg-width 1 3/4, apron-height 3 7/8, apron-rail 13/16, stretcher-size 15/16,"
        "stretcher-height 3 1/4, shelf-height 7 5/16, board 11/16, edge-girth 1 5/16",
        styles="legs square, stretchers h, lower-shelf shelf, top-edge measured"),
    "side-table-splayed": piece(
        "Side table, splayed legs", "side-table", "mm",
        "top-width 521, top-depth 476, height 588, top-thickness 27, overhang-side 63, overhang-front 54,"
        "leg-width 41, leg-foot 23, leg-splay 58",
        styles="legs splayed, top-edge half-round", counts={"drawers": 0}),
    "side-table-two-tapers": piece(
        "Side table, arched, legs tapered inside", "side-table", "in",
        "top-width 19 5/8, top-depth 21 3/8, height 24 3/4, leg-width 1 9/16, leg-foot 3/4, overhang-side 1 1/8,"
        "overhang-front 1 3/16, apron-height 5 1/8, apron-rise 1 1/4, apron-setback 1/8, edge-height 9/16,"
        "edge-width 7/16",
        styles="legs tapered, taper two, apron arched, top-edge bead-and-cove", counts={"drawers": 1}),
    "bench-stretchers": piece(
        "Bench, box stretchers", "bench", "cm",
        "top-width 107.5, top-depth 35.4, height 45.2, top-thickness 3.2, overhang-side 2.7, overhang-front 1.9,"
        "leg-width 4.6, apron-height 7.8, apron-thickness 2.1, apron-setback 0.8, stretcher-size 2.4,"
        "stretcher-height 11.5, edge-height 0.9, edge-width 1.3",
        styles="legs square, stretchers box, top-edge chamfer"),
    "side-table-square": piece(
        "Side table, square legs alone", "side-table", "in",
        "top-width 18 7/8, top-depth 17 1/4, height 23 3/8, top-thickness 13/16, overhang-side 5/8,"
        "overhang-front 3/4, leg-width 1 7/16, apron-height 4 1/4, apron-thickness 11/16, apron-setback 5/16",
        styles="legs square, stretchers none", counts={"drawers": 0}),

    # --- The rest --------------------------------------------------------------------------------------------
    "blanket-box-bun-feet": piece(
        "Blanket box on bun feet", "blanket-box", "in",
        "width 41 3/8, depth 18 7/8, height 20 5/8, board 13/16, top-thickness 1 1/16, overhang-front 1 1/4,"
        "overhang-side 15/16, leg-width 3 1/4, leg-height 2 1/8, leg-inset 3/8, edge-height 5/8, edge-width 11/16",
        styles="top-edge ogee"),
    "blanket-box-cut-out": piece(
        "Blanket box on a plinth with openings", "blanket-box", "mm",
        "width 1034, depth 487, height 523, board 19, top-thickness 23, overhang-front 14, overhang-side 18,"
        "plinth-height 96, plinth-setback 7, foot-width 112, cutout-height 52, edge-girth 41",
        styles="base cut-out-plinth, top-edge measured"),
    "headboard-panel": piece(
        "Headboard with a panel", "headboard", "in",
        "width 61 5/8, height 47 3/4, leg-width 2 3/8, headboard-rail 4 1/8, rail-thickness 1 1/16, panel-foot 15 3/8,"
        "panel-thickness 5/16"),
    "headboard-slats": piece(
        "Headboard with slats", "headboard", "mm",
        "width 1480, height 1155, leg-width 58, headboard-rail 94, rail-thickness 27, panel-foot 412, slat-width 47,"
        "panel-thickness 14",
        styles="headboard slats", counts={"slats": 11}),
    "frame-ogee": piece(
        "Frame, ogee", "frame", "in",
        "width 25 3/8, height 37 1/8, member-width 3 3/16, member-thickness 15/16, edge-height 9/16, edge-width 7/8"),
    "frame-bead": piece(
        "Frame, bead and cove", "frame", "mm",
        "width 438, height 627, member-width 66, member-thickness 21, edge-height 17, edge-width 18",
        styles="frame-profile bead-and-cove"),
    "frame-step": piece(
        "Frame, step", "frame", "in",
        "width 17 7/8, height 22 1/4, member-width 2 5/16, member-thickness 13/16, edge-height 5/16, edge-width 7/16",
        styles="frame-profile step"),
    "frame-chamfer": piece(
        "Frame, chamfer", "frame", "mm",
        "width 611, height 443, member-width 58, member-thickness 18, edge-height 7, edge-width 23",
        styles="frame-profile chamfer"),
    "frame-roundover": piece(
        "Frame, round-over", "frame", "in",
        "width 21 3/16, height 29 5/8, member-width 2 7/16, member-thickness 7/8, edge-height 5/8, edge-width 1 1/8",
        styles="frame-profile roundover"),
    "frame-cove": piece(
        "Frame, cove", "frame", "cm",
        "width 44.3, height 61.7, member-width 7.2, member-thickness 2.3, edge-height 1.4, edge-width 3.1",
        styles="frame-profile cove"),
    "frame-ovolo": piece(
        "Frame, ovolo", "frame", "mm",
        "width 328, height 517, member-width 47, member-thickness 22, edge-height 13, edge-width 16",
        styles="frame-profile ovolo"),
    "frame-reversed-ogee": piece(
        "Frame, reversed ogee", "frame", "in",
        "width 15 1/2, height 19 3/4, member-width 2 1/16, member-thickness 1, edge-height 11/16, edge-width 3/4",
        styles="frame-profile reversed-ogee"),
    "frame-square": piece(
        "Frame, square", "frame", "cm", "width 52.4, height 70.6, member-width 5.5, member-thickness 1.9",
        styles="frame-profile square"),
    **CASES,
}
