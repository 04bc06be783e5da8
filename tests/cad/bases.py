"""What a case stands on."""

from fractions import Fraction
from math import asin, pi

from profiles import Arc, Line, quarter
from solids import Cone, Place, Turned, block, eight_corners, run

HALF = Fraction(1, 2)


def foot_height(tape):
    """How high the base of a case is."""
    style = tape.style("base")
    if style == "floor":
        return Fraction(0)
    return tape["plinth-height" if style in ("plinth", "cut-out-plinth", "bracket-feet") else "leg-height"]


def base(tape, x, y, put, spaces):
    """The parts of the base under a unit, and the hollow in it."""
    style, tall = tape.style("base"), foot_height(tape)
    if style == "floor":
        return
    if style in ("plinth", "cut-out-plinth"):
        hollow = plinth(tape, x, y, tall, put)
        spaces.append(("underneath", *zip(*hollow), None))
    elif style == "bracket-feet":
        bracket_feet(tape, x, y, tall, put)
    else:
        for n, square in enumerate(squares(x, y, tape["leg-width"], tape["leg-inset"]), 1):
            put(f"leg-{n}", leg(style, tape, square, ways(n), (Fraction(0), tall)))


def plinth(tape, x, y, tall, put):
    """Four boards, the front and the sides perhaps with an opening; returns the spans of the hollow between them."""
    board, front = tape["board"], y[0] + tape["plinth-setback"]
    behind = (front + board, y[1] - board)
    z = (Fraction(0), tall)
    if tape.style("base") == "plinth":
        put("plinth-front", block(x, (front, front + board), z))
        put("plinth-side-1", block((x[0], x[0] + board), behind, z))
        put("plinth-side-2", block((x[1] - board, x[1]), behind, z))
    else:
        fw = tape["foot-width"]
        put("plinth-front", cut_out(tape, x, tall, (x[0] + fw, x[1] - fw), (front, front + board), False))
        for n, across in enumerate([(x[0], x[0] + board), (x[1] - board, x[1])], 1):
            put(f"plinth-side-{n}", cut_out(tape, behind, tall, (front + fw, y[1] - fw), across, True))
    put("plinth-back", block(x, (y[1] - board, y[1]), z))
    return (x[0] + board, x[1] - board), behind, z


def cut_out(tape, along, tall, opening, across, is_side):
    """A plinth board with an opening on the floor, its upper corners round."""
    k = tape["cutout-height"]
    assert along[0] < opening[0] and opening[0] + k < opening[1] - k and opening[1] < along[1] and k < tall
    names = ("front", "back") if is_side else ("left", "right")
    rising = quarter((opening[0], 0), (k, k), True)
    falling = quarter((opening[1], 0), (-k, k), True).reversed()
    loop = [("bottom", Line((along[0], 0), rising.start))]
    loop += [("cut-out", curve) for curve in [*rising.halves(), Line(rising.end, falling.start), *falling.halves()]]
    loop += list(zip(("bottom", names[1], "top", names[0]), path([falling.end, (along[1], 0), (along[1], tall),
                                                                 (along[0], tall), (along[0], 0)])))
    return board_along(loop, across, is_side)


def path(points):
    """The lines from point to point."""
    return [Line(one, other) for one, other in zip(points, points[1:])]


def board_along(loop, across, is_side):
    """An upright board: its outline, named, in (x, z) or for one at a side in (y, z), and the span of its thickness."""
    if is_side:
        places = [Place((at, 0, 0), (0, 1, 0), (0, 0, 1)) for at in across]
        return run([loop], *places, ("left", "right"))
    places = [Place((0, at, 0), (1, 0, 0), (0, 0, 1)) for at in across]
    return run([loop], *places, ("front", "back"))


def bracket_feet(tape, x, y, tall, put):
    """Six boards: two feet in front, and two at each side."""
    board, fw = tape["board"], tape["foot-width"]
    front = y[0] + tape["plinth-setback"]

    def foot(outer, way, begin, is_side):
        """A foot whose outline is measured from `outer` in the direction `way`, and that begins at `begin`."""
        round_ = quarter((outer + way * fw, 0), (way * tall, tall), True)
        ends = ("front", "back") if is_side else ("left", "right")
        loop = [("bottom", Line((begin, 0), round_.start))]
        loop += [("cut-out", curve) for curve in round_.halves()]
        loop += zip(("top", ends[way < 0]), path([round_.end, (begin, tall), (begin, 0)]))
        return loop

    for n, (outer, way) in enumerate([(x[0], 1), (x[1], -1)], 1):
        put(f"foot-front-{n}", board_along(foot(outer, way, outer, False), (front, front + board), False))
    left, right = (x[0], x[0] + board), (x[1] - board, x[1])
    for n, across in enumerate((left, right), 1):
        put(f"foot-side-{n}", board_along(foot(front, 1, front + board, True), across, True))
    for n, across in enumerate((left, right), 3):
        put(f"foot-side-{n}", board_along(foot(y[1], -1, y[1], True), across, True))


# --- Legs --------------------------------------------------------------------------------------------------------

def squares(x, y, wide, set_in):
    """The squares of four legs: front left, front right, back left, back right."""
    def ends(span):
        return ((span[0] + set_in, span[0] + set_in + wide), (span[1] - set_in - wide, span[1] - set_in))
    return [(across, deep) for deep in ends(y) for across in ends(x)]


def ways(n):
    """The direction of a leg from the middle of the piece."""
    return (-1 if n in (1, 3) else 1), (-1 if n in (1, 2) else 1)


def leg(style, tape, square, way, z):
    """A leg on the floor whose upper end fills a square, or the circle in it."""
    if style == "legs":
        return block(*square, z)
    middle = tuple((span[0] + span[1]) * HALF for span in square)
    if style == "tapered-legs":
        return tapered(tape, square, way, z)
    if style == "turned-legs":
        return Turned(middle, tuple(turned_outline(tape["leg-width"] * HALF, tape["leg-foot"] * HALF, z[1])))
    if style == "bun-feet":
        return Turned(middle, tuple(bun_outline(tape["leg-width"] * HALF, z[1])))
    assert style == "splayed-legs", style
    splay = tape["leg-splay"]
    foot = tuple(at + toward * splay for at, toward in zip(middle, way))
    return Cone((*foot, z[0]), (*middle, z[1]), tape["leg-foot"] * HALF, tape["leg-width"] * HALF)


def tapered(tape, square, way, z):
    """A leg that narrows towards the floor, on all four sides or on the two that look at the piece."""
    below = []
    for span, toward in zip(square, way):
        shrink = (span[1] - span[0]) - tape["leg-foot"]
        if tape.style("taper") == "four":
            below.append((span[0] + shrink * HALF, span[1] - shrink * HALF))
        else:
            below.append((span[0], span[1] - shrink) if toward < 0 else (span[0] + shrink, span[1]))
    return eight_corners((*below, z[0]), (*square, z[1]))


def turned_outline(big, small, head):
    """The outline of a turned leg: a cylinder, a bead between two rings, and a cone, in (radius, height)."""
    neck, bead = big * 3 / 5, big / 5
    under, middle, ring = head - big * HALF, head - big * HALF - bead, head - big * HALF - 2 * bead
    assert ring > 0, "a turned leg is too short"
    upper = Arc((neck, middle), (0, bead), (bead, 0))
    lower = Arc((neck, middle), (bead, 0), (0, -bead))
    return [Line((0, head), (big, head)), Line((big, head), (big, under)), Line((big, under), (neck, under)), upper,
            *lower.halves(), Line((neck, ring), (big, ring)), Line((big, ring), (small, 0)), Line((small, 0), (0, 0))]


def bun_outline(radius, tall):
    """The outline of a bun foot: the zone of a ball, divided where it turns past 45 degrees."""
    middle = tall * HALF
    assert middle < radius, "a bun foot is higher than its ball"
    end = asin(float(middle / radius))
    angles = [end, *(angle for angle in (pi / 4, -pi / 4) if abs(angle) < end), -end]
    arcs = [Arc((0, middle), (radius, 0), (0, radius), one, other) for one, other in zip(angles, angles[1:])]
    return [Line((0, tall), arcs[0].start), *arcs, Line(arcs[-1].end, (0, 0))]
