"""Profiles: the members of the shapes of `CONSTRUCTION.md`, as curves in the plane (in, up).

A curve is straight (`Line`) or a piece of an ellipse (`Arc`). The same two stand for curves in space.
"""

from dataclasses import dataclass
from fractions import Fraction
from math import cos, hypot, pi, sin

HALF = Fraction(1, 2)


def plus(*vectors):
    """The sum of vectors."""
    return tuple(map(sum, zip(*vectors)))


def times(vector, factor):
    """A vector, so many times as long."""
    return tuple(factor * value for value in vector)


def minus(one, other):
    """The vector from `other` to `one`."""
    return tuple(a - b for a, b in zip(one, other))


@dataclass(frozen=True)
class Line:
    """A straight line from one point to another."""

    start: tuple
    end: tuple

    def reversed(self):
        """The same line, the other way."""
        return Line(self.end, self.start)

    def mapped(self, place):
        """The image of the line under an affine map."""
        return Line(place.point(self.start), place.point(self.end))

    def points(self, _steps):
        """The ends of the line."""
        return [self.start, self.end]


@dataclass(frozen=True)
class Arc:
    """Points centre + a cos t + b sin t, with a and b at right angles, for t between two angles."""

    centre: tuple
    a: tuple
    b: tuple
    first: float = 0.0
    last: float = pi / 2

    def reversed(self):
        """The same arc, the other way."""
        return Arc(self.centre, self.a, self.b, self.last, self.first)

    def at(self, angle):
        """The point of an angle; exactly where it is a multiple of a right angle, since others may touch there."""
        turn = angle / (pi / 2)
        c, s = ((1, 0), (0, 1), (-1, 0), (0, -1))[round(turn) % 4] if turn == round(turn) else (cos(angle), sin(angle))
        return plus(self.centre, times(self.a, c), times(self.b, s))

    @property
    def start(self):
        """Where the arc begins."""
        return self.at(self.first)

    @property
    def end(self):
        """Where it ends."""
        return self.at(self.last)

    def mapped(self, place):
        """The image of the arc under an affine map that keeps a and b at right angles."""
        return Arc(place.point(self.centre), place.vector(self.a), place.vector(self.b), self.first, self.last)

    def points(self, steps):
        """Points along the arc, so many steps up to a right angle and more for more."""
        count = max(steps, round(abs(self.last - self.first) / (pi / 2) * steps))
        inner = [self.at(self.first + (self.last - self.first) * n / count) for n in range(1, count)]
        return [self.start, *inner, self.end]

    def halves(self):
        """The two halves of the arc. A quarter that is divided so turns past 45 degrees between them."""
        middle = (self.first + self.last) / 2
        ends = ((self.first, middle), (middle, self.last))
        return [Arc(self.centre, self.a, self.b, one, other) for one, other in ends]


def quarter(start, move, up_first):
    """A quarter of an ellipse in the plane (in, up)."""
    into, up = (move[0], 0), (0, move[1])
    if up_first:
        return Arc(plus(start, into), times(into, -1), up)
    return Arc(plus(start, up), times(up, -1), into)


def members(shape, w, h, crown=False):
    """The members of a shape, from the stated edge (0, 0). For a crown up first and in first change places."""
    straight, up_first, in_first = "straight", "up first", "in first"
    half, bead = (w * HALF, h * HALF), (w * HALF, h * HALF * HALF)
    moves = {
        "chamfer": [(straight, w, h)],
        "roundover": [(up_first, w, h)],
        "cove": [(in_first, w, h)],
        "ovolo": [(straight, w / 5, 0), (up_first, 4 * w / 5, 4 * h / 5), (straight, 0, h / 5)],
        "ogee": [(up_first, *half), (in_first, *half)],
        "reversed-ogee": [(in_first, *half), (up_first, *half)],
        "step": [(straight, w, 0), (straight, 0, h)],
        "bead-and-cove": [(straight, w * HALF, 0), (in_first, -bead[0], bead[1]), (up_first, *bead), (in_first, *half)],
        "half-round": [(in_first, -w, h * HALF), (up_first, w, h * HALF)],
    }[shape]
    assert not crown or shape not in ("bead-and-cove", "half-round"), shape
    at, found = (w if shape == "half-round" else 0, 0), []
    for kind, into, up in moves:
        to = plus(at, (into, up))
        found.append(Line(at, to) if kind == straight else quarter(at, (into, up), (kind == up_first) != crown))
        at = to
    assert at == (w, h)
    return found


def girth(curves, steps=2000):
    """The length of curves in the plane, by many straight lines."""
    points = [point for curve in curves for point in curve.points(steps)]
    return sum(hypot(*minus(one, other)) for one, other in zip(points[1:], points))


def halved(low, high, is_beyond):
    """Where in a span something begins to hold, found by halving it, as an exact fraction."""
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (low, middle) if is_beyond(middle) else (middle, high)
    return Fraction(high)


def measured_edge(strip, w, thick):
    """A worked edge over the whole thickness that is known by the length of a strip of paper and its width."""
    def of_height(h):
        straight = [Line((0, 0), (0, thick - h))] if h < thick else []
        return [*straight, quarter((0, thick - h), (w, h), True)]
    if not girth(of_height(thick)) < strip < w + thick:
        return of_height(thick)
    return of_height(halved(0.0, float(thick), lambda h: girth(of_height(Fraction(h))) < strip))


def likely_width(strip, thick):
    """How far an edge of this girth reaches in if nobody measured it: a round-over of the whole thickness."""
    return halved(0.0, float(strip), lambda w: girth([quarter((0, 0), (Fraction(w), thick), True)]) > strip)


def lying(curves):
    """The members of a moulding in a corner, without those that run along the two boards and so enclose nothing."""
    def along(curve, axis):
        return isinstance(curve, Line) and curve.start[axis] == curve.end[axis]
    while curves and along(curves[0], 1):
        curves = curves[1:]
    while curves and along(curves[-1], 0):
        curves = curves[:-1]
    assert curves, "a step leaves nothing of a moulding"
    return curves
