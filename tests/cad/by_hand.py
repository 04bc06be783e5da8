"""The underside of the top of a plain case of drawers by a closed form, without the kernel."""

from bases import foot_height
from layout import Members, rows
from tape import CASES, STYLES, Tape


def under_the_top(piece):
    """The areas of `top/bottom` by sense, square millimetres; nothing for a piece that is more than plain drawers."""
    tape = Tape(piece)
    others = STYLES.keys() - {"fronts", "back", "base"}
    plain = tape.kind in CASES and all(tape.style(key) == STYLES[key][0] for key in others) \
        and len(piece["bays"]) == 1 and all(row["fill"] == "drawers" for row in piece["bays"][0]["rows"])
    if not plain:
        return None
    wide, deep, board, thick = tape["width"], tape["depth"], tape["board"], tape["front-thickness"]
    recess = tape["back-recess"] if tape.style("back") == "recessed" else 0
    back = deep - recess - tape["back-thickness"]
    reach = min(60, back / 3)
    # Overlay fronts without a frame reach up to the underside; their thickness is then not exposed.
    covered = 0
    if tape.style("fronts") == "overlay" and tape["frame"] == 0:
        first = rows(piece["bays"][0]["rows"], Members(tape, 0), tape, (0, wide),
                     (foot_height(tape), tape["height"] - tape["top-thickness"]))[0]
        covered = sum(right - left for left, right in first.columns) * min(thick, tape["overhang-front"])
    top = (wide + 2 * tape["overhang-side"]) * (deep + tape["overhang-front"])
    clear = wide - 2 * board
    return {"outside": top - wide * deep - covered, "inside": clear * (back - 2 * reach), "wall": clear * recess}
