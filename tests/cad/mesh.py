#!/usr/bin/env python3
"""A second witness: the exposed area of whole pieces as the surface of a mesh, without the CAD kernel.

The parts of a piece, curves broken into short straight lines, are joined with the `manifold3d` library; the surface
of what comes out is all that no part covers. The figure goes into the fixture as `mesh_total`.

    python tests/cad/mesh.py [NAME ...]            # compares with the kernel, writes `mesh_total` into the fixtures
    python tests/cad/mesh.py --compare [NAME ...]  # fails if a committed figure would change, writes nothing

Needs `pip install manifold3d numpy`.
"""

import json
import sys
from importlib.metadata import version
from math import cos, pi, sin

import numpy
from manifold3d import Manifold, Mesh64, OpType, triangulate

from expose import HERE, built, square_metres, text
from pieces import PIECES
from solids import Cone, Flat, Shell, Turned

# Straight lines to a right angle.
STEPS = 48
# Corners are put on a grid, and their coordinates counted in its steps, so that parts that touch share them exactly.
# A 64th of an inch and a tenth of a millimetre are whole numbers of steps.
GRID = 0.003125 / 2 ** 8
# How far the surface of the mesh may differ from the area of the kernel, for the short straight lines.
BOUND = 5e-5


class Points:
    """The corners of a mesh, each once."""

    def __init__(self):
        self.index, self.all = {}, []

    def __getitem__(self, at):
        key = tuple(map(int, at))
        if key not in self.index:
            self.index[key] = len(self.all)
            self.all.append(key)
        return self.index[key]


def on_grid(at):
    """The nearest point of the grid, in its steps."""
    return tuple(round(float(value) / GRID) for value in at)


def outline(loop):
    """The points of a loop, which ends where it began, on the grid."""
    return [on_grid(point) for curve in loop for point in curve.points(STEPS)[:-1]]


def flat_triangles(loops):
    """Triangles of a flat face. Like faces of two parts get like triangles, whichever way either looks."""
    loops = [numpy.array(loop, float) for loop in loops]
    edges = numpy.roll(loops[0], -1, 0) - loops[0]
    normal = numpy.cross(loops[0] - loops[0][0], edges).sum(0)
    axis = int(numpy.argmax(numpy.round(abs(normal) / abs(normal).max(), 6)))
    forward = normal[axis] > 0
    if not forward:
        loops = [loop[::-1] for loop in loops]
    # A loop begins at its lowest corner in some order, so that only its shape matters.
    loops = [numpy.roll(loop, -min(range(len(loop)), key=lambda n: tuple(loop[n])), 0) for loop in loops]
    drop = [(axis + 1) % 3, (axis + 2) % 3]
    found = triangulate([loop[:, drop] for loop in loops])
    corners = numpy.concatenate(loops)
    return [[corners[n] for n in (triangle if forward else triangle[::-1])] for triangle in found]


def shell(part):
    """The mesh of a solid between faces."""
    points, triangles = Points(), []
    for face in part.faces:
        if isinstance(face, Flat):
            corners = flat_triangles([outline(loop) for loop in face.loops])
        else:
            one, other = [list(map(on_grid, curve.points(STEPS))) for curve in (face.one, face.other)]
            corners = []
            for a, b, c, d in zip(one, one[1:], other[1:], other):
                corners += [(a, b, c), (a, c, d)]
        for triangle in corners:
            indices = [points[corner] for corner in triangle]
            if len(set(indices)) == 3:
                triangles.append(indices)
    return solid(points, triangles)


def solid(points, triangles):
    """The solid between triangles, which all look out of it or all into it."""
    triangles = numpy.array(triangles, numpy.uint64)
    corners = numpy.array(points.all, float)
    a, b, c = (corners[triangles[:, n].astype(int)] for n in range(3))
    if (numpy.cross(a, b) * c).sum() < 0:
        triangles = triangles[:, ::-1]
    return Manifold(Mesh64(corners, numpy.ascontiguousarray(triangles)))


def turned(part):
    """The mesh of a solid of revolution, whose outline begins and ends on the axis."""
    outlined, count = [point for curve in part.outline for point in curve.points(STEPS)], 4 * STEPS
    assert outlined[0][0] == outlined[-1][0] == 0
    points, triangles, rings = Points(), [], []
    for radius, z in outlined:
        turns = [2 * pi * n / count for n in range(count)]
        rings.append([points[on_grid((part.centre[0] + radius * cos(turn), part.centre[1] + radius * sin(turn), z))]
                      for turn in turns])
    for upper, lower in zip(rings, rings[1:]):
        for n in range(count):
            m = (n + 1) % count
            triangles += [(upper[n], lower[n], lower[m]), (upper[n], lower[m], upper[m])]
    return solid(points, [triangle for triangle in triangles if len(set(triangle)) == 3])


def cone(part):
    """The mesh of a slanted cone: where straight lines along it meet the two levels."""
    foot, head = (numpy.array([float(value) for value in at]) for at in (part.foot, part.head))
    way = (head - foot) / numpy.linalg.norm(head - foot)
    across = numpy.cross((0.0, 1.0, 0.0), way)
    across /= numpy.linalg.norm(across)
    points, triangles, count = Points(), [], 4 * STEPS
    below, above = [], []
    for n in range(count):
        angle = 2 * pi * n / count
        out = cos(angle) * across + sin(angle) * numpy.cross(way, across)
        low, high = foot + float(part.foot_radius) * out, head + float(part.head_radius) * out
        for found, level in ((below, part.foot[2]), (above, part.head[2])):
            at = low + (high - low) * (float(level) - low[2]) / (high[2] - low[2])
            found.append(points[on_grid((at[0], at[1], level))])
    middles = [points[on_grid(part.foot)], points[on_grid(part.head)]]
    for n in range(count):
        m = (n + 1) % count
        triangles += [(below[n], below[m], above[m]), (below[n], above[m], above[n]),
                      (middles[0], below[m], below[n]), (middles[1], above[n], above[m])]
    return solid(points, triangles)


def mesh(part):
    """The mesh of a part."""
    made = {Shell: shell, Turned: turned, Cone: cone}[type(part)](part)
    assert made.volume() > 0, made.status()
    return made


def joined(parts):
    """The meshes of all parts as one. In another order the library may leave a few inner triangles standing."""
    return Manifold.batch_boolean([mesh(parts[name]) for name in sorted(parts)], OpType.Add)


def total(name):
    """The surface of a piece in square millimetres, or nothing where an edge counts otherwise than it measures."""
    _, parts, _, factors = built(name)
    return None if factors else joined(parts).surface_area() * GRID ** 2


def main():
    """Compares all totals."""
    compare = "--compare" in sys.argv[1:]
    names = [name for name in sys.argv[1:] if name != "--compare"] or ["block", *PIECES]
    print(f"{'piece':<26} {'kernel, m2':>12} {'mesh, m2':>12} {'ratio':>10}")
    for name in names:
        path = HERE / f"{name}.json"
        fixture, area = json.loads(path.read_text()), total(name)
        if area is None:
            continue
        area, kernel = square_metres(area), fixture["total"]
        print(f"{name:<26} {kernel:12.6f} {area:12.6f} {area / kernel:10.7f}", flush=True)
        assert abs(area / kernel - 1) < BOUND, f"{name}: the mesh and the kernel disagree"
        if compare:
            assert abs(fixture["mesh_total"] - area) < 1e-7, f"{name}: differs from the committed figure"
        else:
            fixture["mesh_total"] = area
            fixture["mesh"] = f"manifold3d {version('manifold3d')}, {STEPS} straight lines to a quarter circle"
            path.write_text(text(fixture) + "\n")


if __name__ == "__main__":
    main()
