#!/usr/bin/env python3
"""Measures the exposed faces of invented pieces with a CAD kernel and writes them down as fixtures.

The kernel is Open CASCADE Technology through its `cadquery-ocp` bindings. Each piece is built here a second
time, from the written description of the construction in `README.md`, in exact fractions of a millimetre. All
solids of a piece go through one general fuse; what is left of each face of each solid is found in the history of
that operation, and a piece of a face that two solids share is no surface any more. Areas are those of the kernel.

    python tests/cad/expose.py            # writes tests/cad/*.json anew
    python tests/cad/expose.py --compare  # fails if a committed fixture would change by more than 1e-9 m2

Needs `pip install cadquery-ocp`. Nothing in the build needs this script; the fixtures are committed.
"""

import json
import re
import sys
from fractions import Fraction
from importlib.metadata import version
from pathlib import Path

from OCP.BOPAlgo import BOPAlgo_Builder
from OCP.BRepAlgoAPI import BRepAlgoAPI_Common, BRepAlgoAPI_Fuse
from OCP.BRepBuilderAPI import BRepBuilderAPI_Transform
from OCP.BRepGProp import BRepGProp
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox
from OCP.GProp import GProp_GProps
from OCP.gp import gp_Pnt, gp_Trsf, gp_Vec
from OCP.TopAbs import TopAbs_FACE, TopAbs_SOLID
from OCP.TopExp import TopExp_Explorer

HERE = Path(__file__).resolve().parent
INVENTED = HERE.parent.parent / "www" / "invented-workshop.json"

# Sizes in millimetres.
UNITS = {"in": Fraction(254, 10), "ft": Fraction(3048, 10), "mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000)}

# What a piece has where nothing was measured, in inches; common practice, no source (see README.md).
USUAL = {
    "width": {"dresser": "60", "nightstand": "20", "chest-of-drawers": "36"},
    "depth": {"dresser": "18", "nightstand": "16", "chest-of-drawers": "18"},
    "height": {"dresser": "32", "nightstand": "26", "chest-of-drawers": "48"},
    "board": "3/4", "top-thickness": "1", "overhang-front": "1", "overhang-side": "1", "front-thickness": "3/4",
    "gap": "1/8", "frame": "1/2", "back-thickness": "1/4", "back-recess": "1/2", "plinth-height": "4",
    "plinth-setback": "2", "leg-height": "6", "leg-width": "1 1/2", "leg-inset": "1/2",
}
# A rail reaches 60 mm into the case, or a third of the way to the back where the case is shallow.
RAIL_REACH = Fraction(60)
# How far a face is moved out of its solid to see which space it looks into, millimetres.
STEP = 0.01
FAR = 1.0e5


# --- Tape readings ---------------------------------------------------------------------------------------------

def number(text):
    """`33`, `33.5`, `7/8` or `33 7/8` as an exact fraction."""
    return sum((Fraction(word) for word in text.split()), Fraction(0))


def millimetres(typed, unit):
    """A tape reading such as `4' 10 1/2"`, `85.1 cm` or, with the unit of the tape, `33 7/8`."""
    signs = {"'": "ft", '"': "in"}
    found = re.findall(r"""([0-9][0-9./ ]*)\s*('|"|in|ft|mm|cm|m)?""", typed)
    assert found, typed
    return sum(number(value) * UNITS[signs.get(sign, sign) or unit] for value, sign in found)


# --- Construction ----------------------------------------------------------------------------------------------

class Tape:
    """The measurements of a piece, in millimetres."""

    def __init__(self, piece):
        self.kind = piece["furniture"]
        self.readings = piece["readings"]

    def __getitem__(self, key):
        if key in self.readings:
            reading = self.readings[key]
            return millimetres(reading["typed"], reading["unit"])
        usual = USUAL[key]
        return millimetres(usual if isinstance(usual, str) else usual[self.kind], "in")


def drawers(piece, tape, floor, ceiling):
    """The rectangles of all fronts as rows of (left, right, foot, head), and the heights of the boards between."""
    inset = piece["fronts"] == "inset"
    board, gap = tape["board"], tape["gap"]
    margin = board + gap if inset else tape["frame"]
    apart = board + 2 * gap if inset else gap
    heights = [millimetres(row["height"]["typed"], row["height"]["unit"]) if "height" in row else None
               for row in piece["rows"]]
    free = (ceiling - margin) - (floor + margin) - apart * (len(heights) - 1)
    known = sum(height for height in heights if height is not None)
    unknown = heights.count(None)
    if unknown:
        heights = [(free - known) / unknown if height is None else height for height in heights]
    else:
        # A tape's slip is shared by all rows in proportion.
        assert abs(known - free) * 50 <= free, "the rows do not add up"
        heights = [height * free / known for height in heights]
    rows = []
    head = ceiling - margin
    for row, height in zip(piece["rows"], heights):
        each = (tape["width"] - 2 * margin - apart * (row["columns"] - 1)) / row["columns"]
        lefts = [margin + n * (each + apart) for n in range(row["columns"])]
        rows.append([(left, left + each, head - height, head) for left in lefts])
        head -= height + apart
    assert head + apart == floor + margin
    middles = [(upper[0][2] + lower[0][3]) / 2 for upper, lower in zip(rows, rows[1:])]
    return rows, middles


def case(piece):
    """The solids of a case by name, each as (low corner, high corner), and the spaces that its faces look into."""
    tape = Tape(piece)
    wide, deep, tall, board = tape["width"], tape["depth"], tape["height"], tape["board"]
    ceiling = tall - tape["top-thickness"]
    floor = {"floor": lambda: Fraction(0), "plinth": lambda: tape["plinth-height"],
             "legs": lambda: tape["leg-height"]}[piece["base"]]()
    recessed = piece["back"] == "recessed"
    inset = piece["fronts"] == "inset"
    inner = (board, wide - board)
    back_rear = deep - (tape["back-recess"] if recessed else 0)
    back_face = back_rear - tape["back-thickness"]
    board_end = deep if recessed else back_face
    thick = tape["front-thickness"]
    fronts_y = (0, thick) if inset else (-thick, 0)
    reach = min(RAIL_REACH, back_face / 3)
    # In a case this shallow the rails in front reach further than the one behind; no fixture needs it yet.
    assert not inset or thick <= reach, f"{piece['fronts']} fronts of {thick} mm reach past the rails"
    rows, middles = drawers(piece, tape, floor, ceiling)

    solids = {}

    def put(name, x, y, z):
        solids[name] = tuple(zip(x, y, z))

    put("top", (-tape["overhang-side"], wide + tape["overhang-side"]), (-tape["overhang-front"], deep), (ceiling, tall))
    put("left-side", (0, board), (0, board_end), (floor, ceiling))
    put("right-side", (wide - board, wide), (0, board_end), (floor, ceiling))
    put("bottom", inner, (0, board_end), (floor, floor + board))
    if recessed:
        put("back", inner, (back_face, back_rear), (floor + board, ceiling))
    else:
        put("back", (0, wide), (back_face, back_rear), (floor, ceiling))
    put("top-rail-1", inner, (0, reach), (ceiling - board, ceiling))
    put("top-rail-2", inner, (back_face - reach, back_face), (ceiling - board, ceiling))
    for n, middle in enumerate(middles, 1):
        put(f"rail-{n}", inner, (0, reach), (middle - board / 2, middle + board / 2))
    shelves = [ceiling - board / 2, *middles, floor + board / 2]
    for r, row in enumerate(rows, 1):
        clear = (shelves[r] + board / 2, shelves[r - 1] - board / 2)
        for c, (left, right, foot, head) in enumerate(row, 1):
            put(f"drawer-front-{r}-{c}", (left, right), fronts_y, (foot, head))
            if c < len(row):
                middle = (right + row[c][0]) / 2
                put(f"divider-{r}-{c}", (middle - board / 2, middle + board / 2), (0, reach), clear)
    hollow = None
    if piece["base"] == "plinth":
        start = tape["plinth-setback"]
        hollow = (start + board, deep - board)
        put("plinth-front", (0, wide), (start, start + board), (0, floor))
        put("plinth-back", (0, wide), (deep - board, deep), (0, floor))
        put("plinth-side-1", (0, board), hollow, (0, floor))
        put("plinth-side-2", (wide - board, wide), hollow, (0, floor))
    if piece["base"] == "legs":
        leg, set_in = tape["leg-width"], tape["leg-inset"]
        near, far = (set_in, set_in + leg), lambda length: (length - set_in - leg, length - set_in)
        for n, (x, y) in enumerate([(near, near), (far(wide), near), (near, far(deep)), (far(wide), far(deep))], 1):
            put(f"leg-{n}", x, y, (0, floor))

    opening = thick if inset else 0
    spaces = [
        ("floor", (-FAR, -FAR, -FAR), (FAR, FAR, 0), None),
        ("wall", (-FAR, deep, -FAR), (FAR, FAR, FAR), None),
        ("inside", (board, opening, floor + board), (wide - board, back_face, ceiling), None),
    ]
    if recessed:
        spaces.append(("wall", (board, back_rear, floor + board), (wide - board, deep, ceiling), None))
    if floor > 0:
        spaces.append(("underneath", (0, 0, 0), (wide, deep, floor), {"bottom"}))
    if hollow:
        spaces.append(("underneath", (board, hollow[0], 0), (wide - board, hollow[1], floor), OUT.keys() - {"bottom"}))

    # The underside of the top, by hand: what hangs over, what the drawers' room sees, what the wall sees.
    # Overlay fronts without a frame reach up to the underside; their thickness is then not exposed.
    under_fronts = 0
    if not inset and tape["frame"] == 0:
        under_fronts = sum(right - left for left, right, _, _ in rows[0]) * min(thick, tape["overhang-front"])
    width_of_top, depth_of_top = wide + 2 * tape["overhang-side"], deep + tape["overhang-front"]
    clear = wide - 2 * board
    by_hand = {
        "outside": width_of_top * depth_of_top - wide * deep - under_fronts,
        "inside": clear * (back_face - 2 * reach),
        "wall": clear * tape["back-recess"] if recessed else 0,
    }
    return solids, spaces, by_hand


# --- The kernel ------------------------------------------------------------------------------------------------

def box(low, high):
    return BRepPrimAPI_MakeBox(gp_Pnt(*map(float, low)), gp_Pnt(*map(float, high))).Shape()


def area(shape):
    properties = GProp_GProps()
    BRepGProp.SurfaceProperties_s(shape, properties)
    return properties.Mass()


def centre(shape):
    properties = GProp_GProps()
    BRepGProp.SurfaceProperties_s(shape, properties)
    return properties.CentreOfMass().Coord()


def parts_of(shape, kind):
    explorer = TopExp_Explorer(shape, kind)
    while explorer.More():
        yield explorer.Current()
        explorer.Next()


OUT = {"front": (0, -1, 0), "back": (0, 1, 0), "left": (-1, 0, 0), "right": (1, 0, 0), "top": (0, 0, 1),
       "bottom": (0, 0, -1)}


def side_of(face, low, high):
    """Which side of its block a face is, from where its centre lies."""
    at = centre(face)
    gaps = {}
    for side, out in OUT.items():
        axis = next(i for i in range(3) if out[i])
        gaps[side] = abs(at[axis] - float((high if out[axis] > 0 else low)[axis]))
    return min(gaps, key=gaps.get)


def common_area(face, side, low, high):
    """The area of a face from which one looks into a block: of the face moved a hair out of its solid."""
    low = [max(float(v), -FAR) for v in low]
    high = [min(float(v), FAR) for v in high]
    step = gp_Trsf()
    step.SetTranslation(gp_Vec(*(STEP * v for v in OUT[side])))
    moved = BRepBuilderAPI_Transform(face, step, True).Shape()
    return area(BRepAlgoAPI_Common(moved, box(low, high)).Shape())


def exposed(solids, spaces):
    """For each face `part/side`: what is left of it in the general fuse of all solids, in all and by sense."""
    shapes = {name: box(*corners) for name, corners in solids.items()}
    if len(shapes) == 1:
        # The fuse wants two solids; a solid alone keeps all its faces.
        shapes = {**shapes, "far-away": box((2 * FAR, 2 * FAR, 2 * FAR), (3 * FAR, 3 * FAR, 3 * FAR))}
    fuse = BOPAlgo_Builder()
    for shape in shapes.values():
        fuse.AddArgument(shape)
    fuse.Perform()
    assert not fuse.HasErrors()
    # Every face of every solid of the result: a face that two solids hold lies between them.
    fused_solids = list(parts_of(fuse.Shape(), TopAbs_SOLID))
    assert len(fused_solids) == len(shapes), "solids run into each other"
    held = [face for solid in fused_solids for face in parts_of(solid, TopAbs_FACE)]

    def holders(face):
        """How many solids hold a face, whichever way it is turned in them."""
        return sum(other.IsSame(face) for other in held)

    faces = {}
    for name in solids:
        for face in parts_of(shapes[name], TopAbs_FACE):
            side = side_of(face, *solids[name])
            pieces = list(fuse.Modified(face))
            if not pieces and not fuse.IsDeleted(face):
                pieces = [face]
            left = [piece for piece in pieces if holders(piece) == 1]
            assert all(holders(piece) in (1, 2) for piece in pieces)
            assert abs(sum(map(area, pieces)) - area(face)) < 1e-6 * area(face), "pieces of a face must add up to it"
            senses = {}
            for piece in left:
                rest = area(piece)
                for sense, low, high, facing in spaces:
                    if facing is None or side in facing:
                        seen = common_area(piece, side, low, high)
                        senses[sense] = senses.get(sense, 0.0) + seen
                        rest -= seen
                assert rest > -1e-3, "spaces overlap"
                senses["outside"] = senses.get("outside", 0.0) + rest
            faces[f"{name}/{side}"] = (sum(map(area, left)), senses)
    return faces, [shapes[name] for name in solids]


def fused_total(shapes):
    """The surface of the one solid that all become: a second witness, without the history."""
    result = shapes[0]
    for shape in shapes[1:]:
        result = BRepAlgoAPI_Fuse(result, shape).Shape()
    return area(result)


# --- Fixtures --------------------------------------------------------------------------------------------------

def square_metres(value):
    return round(float(value) * 1e-6, 12) + 0.0


def group(face):
    return re.sub(r"(-\d+)*/.*", "", face)


def fixture(name, piece, solids, spaces, by_hand):
    faces, shapes = exposed(solids, spaces)
    total = sum(left for left, _ in faces.values())
    assert abs(total - fused_total(shapes)) < 1e-6 * total, "the two ways through the kernel disagree"
    if by_hand:
        for sense, value in by_hand.items():
            assert abs(faces["top/bottom"][1].get(sense, 0.0) - float(value)) < 1e-3, (name, sense)
    groups = {}
    for face, (left, _) in faces.items():
        groups[group(face)] = groups.get(group(face), 0.0) + left
    rows = []
    for face, (left, senses) in faces.items():
        seen = {sense: square_metres(value) for sense, value in senses.items() if value > 0.01}
        rows.append({"face": face, "exposed": square_metres(left), "senses": seen})
    return {
        "name": name,
        "kernel": f"Open CASCADE Technology, cadquery-ocp {version('cadquery-ocp')}",
        "units": "m2",
        **piece,
        "faces": rows,
        "groups": {key: square_metres(value) for key, value in groups.items()},
        "total": square_metres(total),
        **({"by_hand": {"top/bottom": {k: square_metres(v) for k, v in by_hand.items()}}} if by_hand else {}),
    }


def readings(unit, **typed):
    return {key.replace("_", "-"): {"typed": text, "unit": unit} for key, text in sorted(typed.items())}


def row(columns, unit=None, height=None):
    return {"columns": columns, **({"height": {"typed": height, "unit": unit}} if height else {})}


def invented(identity):
    """A piece of the invented workshop that comes with the page; its finish does not matter here."""
    pieces = json.loads(INVENTED.read_text())["pieces"]
    piece = next(piece for piece in pieces if piece["id"] == identity)
    return {key: value for key, value in piece.items() if key != "scheme"}


def piece(identity, name, kind, tape, rows, fronts, back, base):
    return {"id": identity, "name": name, "count": 1, "furniture": kind, "readings": tape, "rows": rows,
            "fronts": fronts, "back": back, "base": base}


PIECES = {
    "dresser-plinth": invented("invented-dresser"),
    "nightstand-inset-legs": invented("invented-nightstands"),
    "chest-floor-flush": piece(
        "chest", "Chest of drawers, to the floor", "chest-of-drawers",
        readings("mm", width="790", depth="430", height="1140", board="18", top_thickness="22",
                 overhang_front="24", overhang_side="12", front_thickness="19", gap="3", frame="8",
                 back_thickness="5"),
        [row(2, "mm", "165"), row(1), row(1), row(1, "mm", "255"), row(1)], "overlay", "flush", "floor"),
    "nightstand-overlay-legs": piece(
        "stand", "Nightstand on legs", "nightstand",
        readings("mm", width="462", depth="38.5 cm", height="61 cm", board="16", top_thickness="19",
                 overhang_front="8", overhang_side="15", front_thickness="17", gap="2.5", frame="5",
                 back_thickness="4", back_recess="9", leg_height="142", leg_width="36", leg_inset="11"),
        [row(1, "mm", "118"), row(1)], "overlay", "recessed", "legs"),
    # The fronts come to 28 5/8 in of 29 in: a slip of 1.3 %, which all rows share.
    "chest-slipped-rows": piece(
        "slipped", "Chest, rows that slip", "chest-of-drawers",
        readings("in", width="34 5/16", depth="17 7/8", height="38 1/4", board="13/16", top_thickness="7/8",
                 overhang_front="1 1/8", overhang_side="9/16", front_thickness="11/16", gap="1/8", frame="7/16",
                 back_thickness="3/16", back_recess="3/8", plinth_height="7 1/8", plinth_setback="0"),
        [row(2, "in", "5 3/8"), row(1, "in", "6 1/2"), row(1, "in", "7 5/8"), row(1, "in", "9 1/8")],
        "overlay", "recessed", "plinth"),
    # Nothing between the fronts and no frame: fronts lie against each other and against the top.
    "dresser-touching": piece(
        "touching", "Dresser, fronts that touch", "dresser",
        readings("mm", width="1210", depth="455", height="760", board="20", top_thickness="25",
                 overhang_front="15", overhang_side="0", front_thickness="20", gap="0", frame="0",
                 back_thickness="6", leg_height="110", leg_width="45", leg_inset="0"),
        [row(3), row(2), row(2)], "overlay", "flush", "legs"),
    "dresser-inset-plinth": piece(
        "inset", "Dresser, inset fronts", "dresser",
        readings("cm", width="1.38 m", depth="46.2", height="81.5", board="2.1", top_thickness="28 mm",
                 overhang_front="3", overhang_side="2.4", front_thickness="1.9", gap="0.2",
                 back_thickness="0.6", back_recess="1.2", plinth_height="8.5", plinth_setback="4"),
        [row(3, "cm", "14.5"), row(2), row(2)], "inset", "recessed", "plinth"),
}

# One board, 33 7/8 in by 17 1/2 in by 3/4 in.
BLOCK = {"block": readings("in", width="33 7/8", depth="17 1/2", height="3/4")}


def all_fixtures():
    size = [millimetres(BLOCK["block"][key]["typed"], "in") for key in ("width", "depth", "height")]
    yield fixture("block", BLOCK, {"board-1": ((0, 0, 0), tuple(size))}, [], None)
    for name, given in PIECES.items():
        solids, spaces, by_hand = case(given)
        yield fixture(name, {"piece": given}, solids, spaces, by_hand)


def write(value):
    """One face a line, so that a change can be read."""
    text = json.dumps(value, indent=1)
    return re.sub(r"\{\s*(\"(?:face|typed)\"[^{}]*(?:\{[^{}]*\}[^{}]*)?)\}",
                  lambda m: "{" + re.sub(r"(?<=\{) | (?=\})", "", re.sub(r"\s*\n\s*", " ", m.group(1)).strip()) + "}",
                  text) + "\n"


def numbers(value, path=""):
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from numbers(inner, f"{path}/{key}")
    elif isinstance(value, list):
        for key, inner in enumerate(value):
            yield from numbers(inner, f"{path}/{key}")
    elif isinstance(value, float):
        yield path, value


def main():
    compare = "--compare" in sys.argv[1:]
    for value in all_fixtures():
        path = HERE / f"{value['name']}.json"
        if compare:
            before, now = dict(numbers(json.loads(path.read_text()))), dict(numbers(value))
            assert before.keys() == now.keys(), f"{path.name}: other faces than committed"
            worst = max(abs(before[key] - now[key]) for key in now)
            assert worst < 1e-9, f"{path.name}: differs by {worst} m2"
        else:
            path.write_text(write(value))
        print(f"{path.name}: {len(value['faces'])} faces, {value['total']:.6f} m2")


if __name__ == "__main__":
    main()
