"""Every kind of furniture of `CONSTRUCTION.md`: its parts by name, and the spaces that they look into."""

from fractions import Fraction

from bases import foot_height
from case import Unit, top
from profiles import girth, measured_edge
from solids import block
from spaces import FAR, floor, wall
from tables import blanket_box, frame, headboard, table
from tape import TABLES, Tape

FRONT_AND_ENDS = ("front", "left", "right")


def case(tape, piece):
    """A case, or for a hutch one upon another."""
    wide, deep, tall, thick = tape["width"], tape["depth"], tape["height"], tape["top-thickness"]
    os, of = tape["overhang-side"], tape["overhang-front"]
    has_crown = tape.style("crown") != "none"
    crown = tape["crown-height"] if has_crown else 0
    hutch = tape.kind == "hutch"
    x, y = (Fraction(0), wide), (Fraction(0), deep)
    lower = Unit(tape, piece["bays"], x, y, (foot_height(tape), tall - thick), crown=0 if hutch else crown)
    lower.stand()
    units = [("", lower, tall)]
    if hutch:
        behind, higher = (deep - tape["upper-depth"], deep), tall + tape["upper-height"]
        units.append(("upper-", Unit(tape, piece["upper"], x, behind, (tall, higher - thick), "upper-", crown), higher))
    parts, spaces = {}, [floor(), wall(deep)]
    for prefix, unit, upper in units:
        parts[f"{prefix}top"] = top(tape, (x[0] - os, x[1] + os), (unit.y[0] - of, unit.y[1]), (upper - thick, upper),
                                    FRONT_AND_ENDS)
        parts |= unit.parts
        spaces += unit.spaces
    return parts, spaces


def pedestal_desk(tape, piece):
    """A top on two pedestals, with a board in front and one at the back between them."""
    wide, deep, tall, board = tape["top-width"], tape["top-depth"], tape["height"], tape["board"]
    under = tall - tape["top-thickness"]
    os, of, pedestal = tape["overhang-side"], tape["overhang-front"], tape["pedestal-width"]
    y, z = (of, deep), (foot_height(tape), under)
    between = (os + pedestal, wide - os - pedestal)
    parts = {"top": top(tape, (Fraction(0), wide), (Fraction(0), deep), (under, tall), FRONT_AND_ENDS)}
    spaces = [floor(), wall(deep)]
    assert len(piece["bays"]) == 2, "a desk has two pedestals"
    for prefix, bay, x in zip(("", "b2-"), piece["bays"], ((os, between[0]), (between[1], wide - os))):
        assert "width" not in bay, "a pedestal is as wide as it is"
        unit = Unit(tape, [bay], x, y, z, prefix)
        unit.stand()
        parts |= unit.parts
        spaces += unit.spaces
    behind = of + tape["apron-thickness"]
    parts["apron-front"] = block(between, (of, behind), (under - tape["apron-height"], under))
    parts["modesty"] = block(between, (deep - 2 * board, deep - board), (tape["modesty-foot"], under))
    # Behind the modesty panel is the wall; behind the apron one would have to look up.
    spaces.append(("wall", (between[0], deep - board, tape["modesty-foot"]), (between[1], FAR, under), None))
    for facing in ("bottom", "back"):
        low, high = (between[0], behind, under - tape["apron-height"]), (between[1], deep - 2 * board, under)
        spaces.append(("underneath", low, high, facing))
    return parts, spaces


def construct(piece):
    """The parts of a piece by name, and the spaces that its faces look into."""
    tape = Tape(piece)
    if tape.kind in TABLES:
        return table(tape)
    if tape.kind == "pedestal-desk":
        return pedestal_desk(tape, piece)
    alone = {"blanket-box": blanket_box, "headboard": headboard, "frame": frame}
    return alone[tape.kind](tape) if tape.kind in alone else case(tape, piece)


def worked_ends(piece):
    """How many times the area of each face of a worked edge of style `measured` counts."""
    tape = Tape(piece)
    if tape.style("top-edge") != "measured":
        return {}
    board = "lid" if tape.kind == "blanket-box" else "top"
    ends = ("front", "left", "right", *(("back",) if tape.kind in TABLES else ()))
    strip, thick = tape["edge-girth"], tape["top-thickness"]
    drawn = girth(measured_edge(strip, tape["edge-width"], thick)) if strip > thick else thick
    factor = float(strip) / float(drawn)
    if abs(factor - 1) < 1e-6:
        return {}
    boards = (board, "upper-top") if tape.kind == "hutch" else (board,)
    return {f"{board}/{end}": factor for board in boards for end in ends}
