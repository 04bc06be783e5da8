"""Tables, blanket boxes, headboards and frames."""

from fractions import Fraction
from math import acos

from bases import base, foot_height, leg, path, squares, tapered, ways
from case import top
from profiles import Arc, Line, members
from solids import UPRIGHT, Place, block, mitred, polygon, run
from spaces import FAR, floor, wall

HALF = Fraction(1, 2)
ALL_AROUND = ("front", "right", "back", "left")


def table(tape):
    """A top on four legs, with aprons and what may lie between the legs."""
    parts, spaces = {}, [floor()]
    wide, deep, tall = tape["top-width"], tape["top-depth"], tape["height"]
    under = tall - tape["top-thickness"]
    parts["top"] = top(tape, (0, wide), (0, deep), (under, tall), ALL_AROUND)
    os, of = tape["overhang-side"], tape["overhang-front"]
    x, y = (os, wide - os), (of, deep - of)
    z = (under - tape["apron-height"], under)
    style = tape.style("legs")
    for n, square in enumerate(squares(x, y, tape["leg-width"], 0), 1):
        if style == "square":
            parts[f"leg-{n}"] = block(*square, (Fraction(0), under))
        elif style == "splayed":
            parts[f"leg-{n}"] = leg("splayed-legs", tape, square, ways(n), (Fraction(0), under))
        else:
            parts[f"leg-head-{n}"] = block(*square, z)
            below = (Fraction(0), z[0])
            parts[f"leg-{n}"] = tapered(tape, square, ways(n), below) if style == "tapered" else \
                leg("turned-legs", tape, square, ways(n), below)
    if style != "splayed":
        hollow = aprons(tape, x, y, z, parts)
        spaces.append(("underneath", *zip(*hollow, z), None))
        inner = hollow[1][0]
        rear = inner - tape["apron-thickness"] + tape["front-thickness"]
        if rear < inner:
            along = (x[0] + tape["leg-width"], x[1] - tape["leg-width"])
            spaces += [("underneath", *zip(wide, (rear, inner), high), None) for wide, high in openings(tape, along, z)]
    if tape.style("stretchers") != "none":
        assert style == "square", "stretchers want square legs"
        stretchers(tape, x, y, parts)
    if tape.style("lower-shelf") == "shelf":
        assert style == "square", "a lower shelf wants square legs"
        leg_width, head = tape["leg-width"], tape["shelf-height"]
        parts["lower-shelf"] = block((x[0] + leg_width, x[1] - leg_width), y, (head - tape["board"], head))
    return parts, spaces


def aprons(tape, x, y, z, parts):
    """The boards under the top, between the legs; returns the spans between their inner faces."""
    leg_width, thick, back = tape["leg-width"], tape["apron-thickness"], tape["apron-setback"]
    assert back + thick <= leg_width, "aprons would run into each other"
    along_x, along_y = [(span[0] + leg_width, span[1] - leg_width) for span in (x, y)]

    def outer(span):
        return [(span[0] + back, span[0] + back + thick), (span[1] - back - thick, span[1] - back)]

    holes = openings(tape, along_x, z)
    across_y, across_x = outer(y), outer(x)
    parts["apron-front"] = apron(tape, along_x, z, across_y[0], False, holes)
    parts["apron-back"] = apron(tape, along_x, z, across_y[1], False)
    parts["apron-left"] = apron(tape, along_y, z, across_x[0], True)
    parts["apron-right"] = apron(tape, along_y, z, across_x[1], True)
    front, gap = across_y[0][0], tape["gap"]
    for c, (wide, high) in enumerate(holes, 1):
        parts[f"drawer-front-1-{c}"] = block((wide[0] + gap, wide[1] - gap), (front, front + tape["front-thickness"]),
                                             (high[0] + gap, high[1] - gap))
    return (across_x[0][1], across_x[1][0]), (across_y[0][1], across_y[1][0])


def openings(tape, along, z):
    """The openings for the drawers of a table in its front apron, as (x, z)."""
    count, m = tape.count("drawers"), tape["apron-rail"]
    if not count:
        return []
    rise = tape["apron-rise"] if tape.style("apron") == "arched" else 0
    high = (z[0] + rise + m, z[1] - m)
    wide = (along[1] - along[0] - m * (count + 1)) / count
    return [((left, left + wide), high) for left in (along[0] + m + n * (wide + m) for n in range(count))]


def apron(tape, along, z, across, is_side, holes=()):
    """An apron, its underside straight or arched, perhaps with openings."""
    ends = ("front", "back") if is_side else ("left", "right")
    if tape.style("apron") == "arched":
        # The circle through the two lower corners and the point `rise` above the middle between them.
        half, rise = (along[1] - along[0]) * HALF, tape["apron-rise"]
        radius = (half ** 2 + rise ** 2) / (2 * rise)
        centre = ((along[0] + along[1]) * HALF, z[0] + rise - radius)
        turn = acos(float(1 - rise / radius))
        # Measured from straight up, from left to right.
        loop = [("cut-out", Arc(centre, (0, radius), (radius, 0), -turn, turn))]
    else:
        loop = [("bottom", Line((along[0], z[0]), (along[1], z[0])))]
    corners = [(along[1], z[0]), (along[1], z[1]), (along[0], z[1]), (along[0], z[0])]
    loop += zip((ends[1], "top", ends[0]), path(corners))
    loops = [loop]
    for wide, high in holes:
        hole = polygon([(wide[0], high[0]), (wide[0], high[1]), (wide[1], high[1]), (wide[1], high[0])])
        loops.append([("opening", line) for line in hole])
    if is_side:
        return run(loops, *[Place((at, 0, 0), (0, 1, 0), (0, 0, 1)) for at in across], ("left", "right"))
    return run(loops, *[Place((0, at, 0), (1, 0, 0), (0, 0, 1)) for at in across], ("front", "back"))


def stretchers(tape, x, y, parts):
    """Square rails between the legs near the floor, all around or as an H."""
    leg_width, q, low = tape["leg-width"], tape["stretcher-size"], tape["stretcher-height"]
    z = (low, low + q)
    along_x, along_y = [(span[0] + leg_width, span[1] - leg_width) for span in (x, y)]

    def about(middle):
        return (middle - q * HALF, middle + q * HALF)

    left, right = [about(at) for at in (x[0] + leg_width * HALF, x[1] - leg_width * HALF)]
    parts["stretcher-left"] = block(left, along_y, z)
    parts["stretcher-right"] = block(right, along_y, z)
    if tape.style("stretchers") == "box":
        parts["stretcher-front"] = block(along_x, about(y[0] + leg_width * HALF), z)
        parts["stretcher-back"] = block(along_x, about(y[1] - leg_width * HALF), z)
    else:
        parts["stretcher-middle"] = block((left[1], right[0]), about((y[0] + y[1]) * HALF), z)


def blanket_box(tape):
    """Four boards and a bottom under a lid."""
    parts, spaces = {}, [floor(), wall(tape["depth"])]
    x, y, board = (Fraction(0), tape["width"]), (Fraction(0), tape["depth"]), tape["board"]
    foot, head = foot_height(tape), tape["height"] - tape["top-thickness"]
    os, of = tape["overhang-side"], tape["overhang-front"]
    within, deep = (x[0] + board, x[1] - board), (y[0] + board, y[1] - board)
    parts["front"] = block(x, (y[0], deep[0]), (foot, head))
    parts["back-board"] = block(x, (deep[1], y[1]), (foot, head))
    parts["left-side"] = block((x[0], within[0]), deep, (foot, head))
    parts["right-side"] = block((within[1], x[1]), deep, (foot, head))
    parts["bottom"] = block(within, deep, (foot, foot + board))
    parts["lid"] = top(tape, (x[0] - os, x[1] + os), (y[0] - of, y[1]), (head, tape["height"]),
                       ("front", "left", "right"))
    spaces.append(("inside", *zip(within, deep, (foot + board, head)), None))
    if foot:
        spaces.append(("underneath", *zip(x, y, (0, foot)), "bottom"))
    base(tape, x, y, parts.__setitem__, spaces)
    return parts, spaces


def headboard(tape):
    """Two posts and two rails, and between them a panel or slats."""
    leg_width, thick, wide = tape["leg-width"], tape["panel-thickness"], tape["width"]
    tall, rail, low = tape["height"], tape["headboard-rail"], tape["panel-foot"]
    across = (leg_width, wide - leg_width)

    def about(size):
        return ((leg_width - size) * HALF, (leg_width + size) * HALF)

    parts = {
        "post-1": block((0, leg_width), (0, leg_width), (0, tall)),
        "post-2": block((across[1], wide), (0, leg_width), (0, tall)),
        "headboard-top": block(across, about(tape["rail-thickness"]), (tall - rail, tall)),
        "headboard-bottom": block(across, about(tape["rail-thickness"]), (low, low + rail)),
    }
    z = (low + rail, tall - rail)
    # What is thinner than the posts has the air behind it before the wall.
    behind = [(across, about(tape["rail-thickness"]), (tall - rail, tall)),
              (across, about(tape["rail-thickness"]), (low, low + rail))]
    if tape.style("headboard") == "panel":
        parts["headboard-panel"] = block(across, about(thick), z)
        behind.append((across, about(thick), z))
    else:
        count, slat = tape.count("slats"), tape["slat-width"]
        clear = (across[1] - across[0] - count * slat) / (count + 1)
        for n in range(count):
            left = across[0] + clear + n * (clear + slat)
            parts[f"slat-{n + 1}"] = block((left, left + slat), about(thick), z)
            behind.append(((left, left + slat), about(thick), z))
    spaces = [floor(), ("wall", (-FAR,) * 3, (FAR,) * 3, "back")]
    spaces += [("wall", (x[0], y[1], z[0]), (x[1], FAR, z[1]), None) for x, y, z in behind]
    return parts, spaces


def frame(tape):
    """Four mitred members; the inner arris of their fronts is worked."""
    wide, thick = tape["member-width"], tape["member-thickness"]
    shape, w, h = tape.style("frame-profile"), tape["edge-width"], tape["edge-height"]
    # The section in (from the outer line inwards, from the back forwards).
    if shape == "square":
        worked, flat, front = [], thick, wide
    else:
        inward = Place((wide, thick - h), (-1, 0), (0, 1))
        worked = [("moulded", curve.mapped(inward)) for curve in members(shape, w, h)]
        flat, front = thick - h, wide - w
    loop = [("back", Line((0, 0), (wide, 0)))]
    if flat > 0:
        loop.append(("inner", Line((wide, 0), (wide, flat))))
    loop += [*worked, ("front", Line((front, thick), (0, thick))), ("outer", Line((0, thick), (0, 0)))]
    made = mitred(UPRIGHT, (0, tape["width"]), (0, tape["height"]), -thick, loop)
    return {f"member-{word}": part for word, part in made.items()}, [wall(thick)]
