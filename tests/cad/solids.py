"""Solids as lists of named faces, exact: what the kernel and the mesh are both made from.

A face is flat, bounded by loops of curves, or ruled between two like curves. Every solid here is turned so that all
its faces look out of it, or all into it; which of the two is left to those who build it.
"""

from dataclasses import dataclass
from math import pi

from profiles import Arc, Line, plus, times

OUT = {"front": (0, -1, 0), "back": (0, 1, 0), "left": (-1, 0, 0), "right": (1, 0, 0), "top": (0, 0, 1),
       "bottom": (0, 0, -1)}
NAMES = {vector: name for name, vector in OUT.items()}


@dataclass(frozen=True)
class Flat:
    """A flat face: its outline, then its holes, each a loop of curves."""

    name: str
    loops: tuple


@dataclass(frozen=True)
class Ruled:
    """A face of straight lines from one curve to another like it; it looks along `one` times the way across."""

    name: str
    one: object
    other: object


@dataclass(frozen=True)
class Shell:
    """A solid between faces."""

    faces: tuple


@dataclass(frozen=True)
class Turned:
    """A solid of revolution about an upright axis. The outline has curves in (radius, height), from the axis to it."""

    centre: tuple
    outline: tuple


@dataclass(frozen=True)
class Cone:
    """A cone about the line from one point to another, with its radii there, cut level at both."""

    foot: tuple
    head: tuple
    foot_radius: object
    head_radius: object


@dataclass(frozen=True)
class Place:
    """An affine map of the plane into space."""

    origin: tuple
    u: tuple
    v: tuple

    def vector(self, at):
        """The image of a vector."""
        return plus(times(self.u, at[0]), times(self.v, at[1]))

    def point(self, at):
        """The image of a point."""
        return plus(self.origin, self.vector(at))


@dataclass(frozen=True)
class Axes:
    """Directions to the right, up and out of a plane: the space in which a board lies that is worked on one face."""

    right: tuple
    up: tuple
    out: tuple

    def point(self, right, up, out):
        """A point in space."""
        return plus(times(self.right, right), times(self.up, up), times(self.out, out))

    def sides(self):
        """The four directions around the plane: below, right, above, left."""
        return [times(self.up, -1), self.right, self.up, times(self.right, -1)]

    def corners(self, right, up):
        """The corners of a rectangle, each where one of the `sides` ends and the next begins."""
        return [(right[1], up[0]), (right[1], up[1]), (right[0], up[1]), (right[0], up[0])]


UPRIGHT = Axes((1, 0, 0), (0, 0, 1), (0, -1, 0))
LEVEL = Axes((1, 0, 0), (0, 1, 0), (0, 0, 1))


def polygon(points):
    """The lines around a polygon."""
    return [Line(one, other) for one, other in zip(points, [*points[1:], points[0]])]


def side(name, one, other):
    """The face between two like curves; of two lines that lie in one plane it is flat."""
    if isinstance(one, Arc):
        return Ruled(name, one, other)
    points = [one.start, one.end, other.end, other.start]
    points = [point for n, point in enumerate(points) if point != points[n - 1]]
    return Flat(name, (tuple(polygon(points)),))


def block(x, y, z):
    """The box of three spans."""
    assert x[0] < x[1] and y[0] < y[1] and z[0] < z[1], f"no box: {x}, {y}, {z}"
    faces = []
    for name, out in OUT.items():
        spans = [span if not way else (span[way > 0],) for span, way in zip((x, y, z), out)]
        axis = [way != 0 for way in out].index(True)
        p, q = spans[(axis + 1) % 3], spans[(axis + 2) % 3]
        around = [(p[0], q[0]), (p[1], q[0]), (p[1], q[1]), (p[0], q[1])][::sum(out)]
        points = []
        for first, second in around:
            point = [spans[axis][0]] * 3
            point[(axis + 1) % 3], point[(axis + 2) % 3] = first, second
            points.append(tuple(point))
        faces.append(Flat(name, (tuple(polygon(points)),)))
    return Shell(tuple(faces))


def eight_corners(low, high):
    """A solid between two level rectangles, each (x, y, z): its upright sides may be slanted."""
    def corners(rectangle):
        (x, y, z) = rectangle
        return [(x[0], y[0], z), (x[1], y[0], z), (x[1], y[1], z), (x[0], y[1], z)]
    below, above = corners(low), corners(high)
    faces = [Flat("top", (tuple(polygon(above)),)), Flat("bottom", (tuple(polygon(below[::-1])),))]
    for n, name in enumerate(("front", "right", "back", "left")):
        m = (n + 1) % 4
        faces.append(Flat(name, (tuple(polygon([below[n], below[m], above[m], above[n]])),)))
    return Shell(tuple(faces))


def run(loops, start, end, names):
    """A section of named curves, drawn from one place to another. `names` are those of its two ends."""
    faces = [side(name, curve.mapped(start), curve.mapped(end)) for loop in loops for name, curve in loop]
    faces.append(Flat(names[1], tuple(tuple(curve.mapped(end) for _, curve in loop) for loop in loops)))
    faces.append(Flat(names[0], tuple(tuple(curve.mapped(start).reversed() for _, curve in loop[::-1])
                                      for loop in loops)))
    return Shell(tuple(faces))


def worked_board(axes, right, up, out, profile, worked):
    """A board whose face `out` is worked along some of its edges with a profile.

    `profile` is a list of (name, curve) in (in, up) from the stated edge; `{}` in a name is the name of the side.
    Neighbouring worked edges are mitred; towards the others the profile runs out square.
    """
    sides, corners = axes.sides(), axes.corners(right, up)
    height = profile[-1][1].end[1]
    foot = out[1] - height
    names = [NAMES[way] for way in sides]
    assert worked and foot >= out[0] and set(worked) <= set(names)
    edges = []
    for n, corner in enumerate(corners):
        inward = [times(sides[m], -1) for m in (n, (n + 1) % 4) if names[m] in worked]
        if inward:
            place = Place(axes.point(*corner, foot), plus(*inward), axes.out)
            curves = [curve.mapped(place) for _, curve in profile]
            if foot > out[0]:
                curves.insert(0, Line(axes.point(*corner, out[0]), axes.point(*corner, foot)))
        else:
            curves = [Line(axes.point(*corner, out[0]), axes.point(*corner, out[1]))]
        edges.append(curves)
    faces = []
    for n, name in enumerate(names):
        before, after = edges[n - 1], edges[n]
        if name in worked:
            if foot > out[0]:
                faces.append(side(name, after[0], before[0]))
            moulded = zip(profile, before[-len(profile):], after[-len(profile):])
            faces += [side(given.format(name), other, one) for (given, _), one, other in moulded]
        else:
            bottom = Line(before[0].start, after[0].start)
            top = Line(after[-1].end, before[-1].end)
            faces.append(Flat(name, ((bottom, *after, top, *(curve.reversed() for curve in before[::-1])),)))
    for name, points in ((NAMES[axes.out], [edge[-1].end for edge in edges]),
                         (NAMES[times(axes.out, -1)], [edge[0].start for edge in edges][::-1])):
        faces.append(Flat(name, (tuple(polygon(points)),)))
    return Shell(tuple(faces))


def mitred(axes, right, up, out, section, sides=("bottom", "right", "top", "left"), square=None):
    """Mouldings around a rectangle, mitred at its corners: the solids by side, in the order of `sides`.

    The section is a loop of (name, curve) in (in, up): from the line of the rectangle to its middle, and from the
    height `out`. In its names `outer` and `inner` stand for the directions away from the middle and towards it.
    `sides` are in terms of the plane; the ends of those at a side in `square` are not mitred there.
    """
    ways, corners = axes.sides(), axes.corners(right, up)
    order = ("bottom", "right", "top", "left")
    made = {}
    for word in sides:
        n = order.index(word)
        outward, along = ways[n], ways[(n + 1) % 4]
        words = {"outer": NAMES[outward], "inner": NAMES[times(outward, -1)]}
        loop = [(words.get(name, name), curve) for name, curve in section]
        ends = []
        for corner, way, neighbour in ((corners[n - 1], along, n - 1), (corners[n], times(along, -1), n + 1)):
            slant = (0, 0, 0) if order[neighbour % 4] == square else way
            ends.append(Place(axes.point(*corner, out), plus(times(outward, -1), slant), axes.out))
        made[word] = run([loop], ends[0], ends[1], (NAMES[times(along, -1)], NAMES[along]))
    return made


def ring(radius, name="around"):
    """The half circle of a column in a plane whose first axis lies in the wall: from right to left."""
    return [(name, Arc((0, 0), (radius, 0), (0, radius), 0.0, pi / 2)),
            (name, Arc((0, 0), (radius, 0), (0, radius), pi / 2, pi))]
