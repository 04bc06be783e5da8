#!/usr/bin/env python3
"""Says of every surface of many pieces what it looks at, by rays cast at their finished solids.

The solids come from Coatwright itself (`tests/outside/examples/solids.rs`); what they look at is worked out here from
nothing but them, by the definition in `CONSTRUCTION.md`, "What faces look at".

    cargo run -q --release -p outside --example solids > target/solids.jsonl
    python tests/cad/seen.py target/solids.jsonl            # writes tests/outside/fixtures/seen.json
    python tests/cad/seen.py target/solids.jsonl --compare   # fails if the committed fixture would change
    python tests/cad/seen.py target/solids.jsonl --show NAME # says what each surface of one piece looks at

Needs `pip install trimesh embreex numpy scipy mapbox_earcut`.
"""

import json
import sys
import zlib
from multiprocessing import Pool
from pathlib import Path

import mapbox_earcut
import numpy as np
import trimesh
from scipy import ndimage
from trimesh.ray.ray_pyembree import RayMeshIntersector

HERE = Path(__file__).resolve().parent
FIXTURE = HERE.parent / "outside" / "fixtures" / "seen.json"

LABELS = ("outside", "inside", "wall", "floor", "underneath", "glued")
OUTSIDE, INSIDE, WALL, FLOOR, UNDERNEATH, GLUE = range(6)
COVERED = -1
# Added to the label of a point in a closed gap: a joint connects nothing.
JOINT = 10
# How far off a face its rays begin, and how near a floor or wall is touched; meters.
OFF, TOUCH = 0.001, 0.0006
# Gaps below this are closed; so is a wider one that was measured around the fronts, up to the second.
CLOSED, WIDEST = 0.006, 0.012
# Sight that is only had through a gap below this shows nothing but what the line hits; meters.
SLIT = 0.04
# How far in a gap around a front is still the room's.
INTO_GAP = 0.05
# Air before a wall that belongs to the wall.
BEFORE_WALL = 0.1
BOARDS = {"left-side", "right-side", "bottom", "back", "front", "back-board", "top-rail", "rail", "divider", "partition",
          "shelf", "frame-stile", "frame-mid-stile", "frame-top", "frame-bottom", "frame-rail", "frame-divider"}
FRONTS = ("drawer-front", "tongue", "door", "sticking", "applied")
BASE = ("plinth", "foot", "leg", "apron", "stretcher", "lower-shelf")
# Stand at a wall: cases, chests, headboards and frames. Have no floor: frames.
AT_WALL = {"Case", "TwoCases", "Pedestals", "Chest", "Headboard", "Frame"}
GLUED = {"moulding": ("back", "left", "right"), "half-column": ("back",)}


def fan(count, elevations):
    """Directions around the horizon at these elevations, in degrees."""
    around = np.radians(np.arange(count) * 360.0 / count)
    rows = [np.stack([np.cos(around) * np.cos(e), np.sin(around) * np.cos(e), np.full(count, np.sin(e))], 1)
            for e in np.radians(elevations)]
    return np.concatenate(rows)


# The likeliest first, so that most points are done after a few rays.
FIRST = np.array([[0, -1, 0], [1, 0, 0], [-1, 0, 0], [0, 0, 1], [0, 1, 0], [0, -0.8, 0.6], [0.6, -0.8, 0],
                  [-0.6, -0.8, 0]], float)
UPWARDS = np.concatenate([FIRST, fan(24, [0, 7, 20, 35, 50, 65, 80])])
ROUGHLY = np.concatenate([FIRST, fan(16, [0, 25, 55])])
EVERYWHERE = np.concatenate([np.eye(3), -np.eye(3), fan(4, [-35, 35]), fan(8, [0])[1::2]])


def triangles_of(contours, normal):
    """Triangles of a flat region with holes, and its corners in a plane of its own."""
    first = np.asarray(contours[0][0])
    axis = int(np.argmax(abs(normal)))
    u = np.zeros(3)
    u[(axis + 1) % 3] = 1.0
    u -= normal * (u @ normal)
    u /= np.linalg.norm(u)
    v = np.cross(normal, u)
    flat = [np.stack([(np.asarray(c) - first) @ u, (np.asarray(c) - first) @ v], 1) for c in contours]
    turn = [float(np.sum(c[:, 0] * np.roll(c[:, 1], -1) - c[:, 1] * np.roll(c[:, 0], -1))) for c in flat]
    outer = [n for n, area in enumerate(turn) if area > 0]
    found = []
    for n in outer:
        holes = [m for m, area in enumerate(turn) if area < 0 and within(flat[m][:1], [flat[n]])[0]]
        rings = [flat[n], *(flat[m] for m in holes)]
        corners = np.concatenate(rings)
        places = np.concatenate([np.asarray(contours[m]) for m in (n, *holes)])
        ends = np.cumsum([len(ring) for ring in rings]).astype(np.uint32)
        index = mapbox_earcut.triangulate_float64(corners, ends).reshape(-1, 3)
        found.append(places[index])
    return np.concatenate(found) if found else np.zeros((0, 3, 3)), (first, u, v, flat)


def within(points, contours):
    """Whether points of a plane lie within contours, by the rule of even and odd."""
    inside = np.zeros(len(points), bool)
    for contour in contours:
        other = np.roll(contour, -1, 0)
        for (x0, y0), (x1, y1) in zip(contour, other):
            crosses = (y0 > points[:, 1]) != (y1 > points[:, 1])
            if y0 != y1:
                inside ^= crosses & (points[:, 0] < (x1 - x0) * (points[:, 1] - y0) / (y1 - y0) + x0)
    return inside


class Boxes:
    """Upright boxes, and which points lie in one of them."""

    def __init__(self, boxes):
        self.low = np.array([box[0] for box in boxes]).reshape(-1, 3)
        self.high = np.array([box[1] for box in boxes]).reshape(-1, 3)

    def hold(self, points):
        """Whether each point lies in any box."""
        found = np.zeros(len(points), bool)
        if not len(points):
            return found
        near = np.flatnonzero(np.all((self.low < points.max(0)) & (self.high > points.min(0)), 1))
        for low, high in zip(self.low[near], self.high[near]):
            found |= np.all((points > low) & (points < high), 1)
        return found


class Part:
    """A solid with its faces."""

    def __init__(self, given):
        self.name, self.kind = given["name"], given["kind"]
        self.faces = []
        for face in given["faces"]:
            facets = []
            for facet in face["facets"]:
                normal = np.array(facet["normal"])
                triangles, plane = triangles_of(facet["contours"], normal)
                facets.append((normal, triangles, plane))
            self.faces.append((face["side"], face["curved"], facets))
        every = np.concatenate([t for _, _, facets in self.faces for _, t, _ in facets])
        self.triangles = every
        self.low, self.high = every.reshape(-1, 3).min(0), every.reshape(-1, 3).max(0)
        normals = [n for _, _, facets in self.faces for n, _, _ in facets]
        volume = np.prod(self.high - self.low)
        own = np.einsum("ij,ij->i", every[:, 0], np.cross(every[:, 1], every[:, 2])).sum() / 6
        self.is_block = len(normals) == 6 and abs(own - volume) < 1e-9 + 1e-6 * volume
        self.mesh = None

    def ends_near(self, point, normal):
        """Whether the box around the part comes near the plane through a point."""
        corners = np.where(normal > 0, self.low, self.high) @ normal, np.where(normal > 0, self.high, self.low) @ normal
        return corners[0] - 0.012 < point @ normal < corners[1] + 0.012

    def boxes(self):
        """The boxes between which gaps are looked for: a block, or the upright rectangles of any other solid."""
        if self.is_block:
            return [(self.low, self.high)]
        flat = [t.reshape(-1, 3) for _, curved, facets in self.faces for n, t, _ in facets
                if not curved and abs(n).max() > 0.999 and len(t) == 2]
        return [(self.low, self.high), *((corners.min(0), corners.max(0)) for corners in flat)]

    def holds(self, points):
        """Whether points lie in the solid."""
        found = np.all((points > self.low) & (points < self.high), 1)
        if self.is_block or not found.any():
            return found
        if self.mesh is None:
            self.mesh = RayMeshIntersector(soup(self.triangles))
        at = np.flatnonzero(found)
        found[at] = self.mesh.contains_points(points[at])
        return found


def soup(triangles):
    """A mesh of triangles as they come."""
    return trimesh.Trimesh(triangles.reshape(-1, 3), np.arange(3 * len(triangles)).reshape(-1, 3), process=False)


def box_triangles(low, high):
    """The twelve triangles of a box."""
    return trimesh.creation.box(bounds=[low, high]).triangles


def between(boxes, width):
    """Boxes in the gaps between boxes that are narrower than this, along each axis, and whether a front is beside them."""
    low, high = np.array([b[0] for b in boxes]), np.array([b[1] for b in boxes])
    found = []
    for axis in range(3):
        gap = low[None, :, axis] - high[:, None, axis]
        pairs = np.argwhere((gap > TOUCH) & (gap < width))
        for a, b in pairs:
            start, end = np.maximum(low[a], low[b]), np.minimum(high[a], high[b])
            start[axis], end[axis] = high[a][axis], low[b][axis]
            if np.all(end - start > TOUCH):
                found.append((start, end, boxes[a][2] or boxes[b][2]))
    return found


def drawers(parts, rear):
    """What drawers fill behind their fronts, back to the first solid."""
    found = []
    for front in (part for part in parts if part.kind == "drawer-front"):
        behind = [part for part in parts if part.low[1] > front.high[1] - TOUCH
                  and np.all(part.low[[0, 2]] < front.high[[0, 2]]) and np.all(part.high[[0, 2]] > front.low[[0, 2]])]
        cuts = []
        for axis in (0, 2):
            ends = [front.low[axis], front.high[axis]]
            ends += [end for part in behind for end in (part.low[axis], part.high[axis]) if ends[0] < end < ends[1]]
            cuts.append(np.unique(np.round(ends, 6)))
        for x0, x1 in zip(cuts[0], cuts[0][1:]):
            for z0, z1 in zip(cuts[1], cuts[1][1:]):
                x, z = (x0 + x1) / 2, (z0 + z1) / 2
                hit = [part.low[1] for part in behind
                       if part.low[0] < x < part.high[0] and part.low[2] < z < part.high[2]]
                end = min(hit, default=rear)
                if end > front.high[1] + TOUCH:
                    found.append((np.array([x0, front.high[1], z0]), np.array([x1, end, z1])))
    return found


class Piece:
    """The solids of a piece in the room."""

    def __init__(self, given):
        self.name = given["name"]
        self.loose = [(Part(part), part.get("shape")) for part in given["parts"] if part["loose"]]
        self.parts = [Part(part) for part in given["parts"] if not part["loose"]]
        self.low = np.min([part.low for part in self.parts], 0)
        self.high = np.max([part.high for part in self.parts], 0)
        self.wall = self.high[1] if given["construction"] in AT_WALL else None
        self.floor = None if given["construction"] == "Frame" else self.low[2]
        solids = [part for part in self.parts if part.kind != "door-glass"]
        boxes = [(*box, part.kind.startswith(FRONTS)) for part in solids for box in part.boxes()]
        width = max(CLOSED, given["gap"] * 1.01) if given["gap"] <= WIDEST else CLOSED
        # Where gaps cross, a hole is left between what closes them and the solids around it.
        gaps = between(boxes, width)
        gaps += between([*boxes, *gaps], width) if gaps else []
        self.gaps, self.at_fronts = Boxes(gaps), Boxes([gap for gap in gaps if gap[2]])
        own = [part.triangles for part in solids]
        self.bare = RayMeshIntersector(soup(np.concatenate(own)))
        filled = drawers(solids, self.high[1])
        self.filled = Boxes(filled)
        fill = [box_triangles(*box[:2]) for box in gaps + filled]
        above = [part.triangles for part in solids if not part.kind.startswith(BASE)]
        self.above_base = RayMeshIntersector(soup(np.concatenate(above or own)))
        self.closed = RayMeshIntersector(soup(np.concatenate([*own, *fill])))
        slits = between([*boxes, *((*box, False) for box in filled)], SLIT)
        self.slits = Boxes(slits)
        slits = [box_triangles(*slit[:2]) for slit in slits]
        self.wide = RayMeshIntersector(soup(np.concatenate([*own, *fill, *slits])))

    def free(self, points, directions, solids):
        """Whether each ray leaves the piece without hitting these solids, or the wall."""
        free = np.ones(len(points), bool)
        if self.wall is not None:
            with np.errstate(divide="ignore", invalid="ignore"):
                reach = [np.where(directions[:, axis] > 0, (self.high[axis] + 0.01 - points[:, axis]),
                                  (self.low[axis] - 0.01 - points[:, axis])) / directions[:, axis] for axis in (0, 2)]
                reach = np.minimum(*(np.where(np.isfinite(r), r, np.inf) for r in reach))
                to_wall = np.where(directions[:, 1] > 1e-9, (self.wall - points[:, 1]) / directions[:, 1], np.inf)
            free = to_wall > reach
        at = np.flatnonzero(free)
        if len(at):
            free[at] = ~solids.intersects_any(points[at], directions[at])
        return free

    def seen(self, points, rays=UPWARDS, solids=None):
        """Whether an eye, level or above, sees each point of the air past these solids, or all there are."""
        seen = np.zeros(len(points), bool)
        for start in range(0, len(rays), 12):
            some = rays[start:start + 12]
            at = np.flatnonzero(~seen)
            if not len(at):
                break
            hit = self.free(np.repeat(points[at], len(some), 0), np.tile(some, (len(at), 1)),
                            solids or self.closed)
            seen[at] = hit.reshape(len(at), len(some)).any(1)
        return seen

    def distance(self, points, directions, solids):
        """How far it is to the first solid."""
        far = np.full(len(points), np.inf)
        if len(points):
            places, rays, _ = solids.intersects_location(points, directions, multiple_hits=False)
            far[rays] = np.linalg.norm(places - points[rays], axis=1)
        return far

    def towards(self, points, direction, solids):
        """How far it is in one direction."""
        return self.distance(points, np.tile(np.array(direction, float), (len(points), 1)), solids)

    def above_floor(self, points):
        """Whether there is only air down to the floor, or what the piece stands on."""
        if self.floor is None:
            return np.zeros(len(points), bool)
        return np.isinf(self.towards(points, (0, 0, -1), self.above_base))

    def before_wall(self, points):
        """Whether there is only air to the wall, before a solid that is near it."""
        if self.wall is None:
            return np.zeros(len(points), bool)
        to_wall = self.wall - points[:, 1]
        found = (to_wall <= BEFORE_WALL) & np.isinf(self.towards(points, (0, 1, 0), self.bare))
        found[found] = self.towards(points[found], (0, -1, 0), self.bare) + to_wall[found] <= BEFORE_WALL
        return found

    def beside(self, points, fractions):
        """Points of the air that a straight line through no slit connects with each point, as rows of one for each."""
        directions = np.tile(EVERYWHERE, (len(points), 1))
        origins = np.repeat(points, len(EVERYWHERE), 0)
        far = np.minimum(self.distance(origins, directions, self.wide), 1.0)
        return np.stack([origins + directions * (far * f)[:, None] for f in fractions], 1).reshape(len(points), -1, 3)

    def in_room(self, points):
        """Whether the air is seen, or what is seen is connected with it through no slit; nothing spreads where only the floor is
        below."""
        open_to = ~self.filled.hold(points)
        room = np.zeros(len(points), bool)
        room[open_to] = self.seen(points[open_to])
        open_to &= ~room
        open_to[open_to] = ~self.above_floor(points[open_to]) & ~self.before_wall(points[open_to])
        open_to &= ~self.slits.hold(points)
        at = np.flatnonzero(open_to)
        if not len(at):
            return room
        # What a few points are connected with the others beside them are too.
        few = at[np.unique(np.linspace(0, len(at) - 1, 10).astype(int))]
        found = np.zeros(len(few), bool)
        for n, point in enumerate(points[few]):
            near = self.beside(point[None], (0.5, 0.9))[0]
            found[n] = self.opens(near)
            if not found[n]:
                found[n] = self.opens(self.beside(near[::5], (0.6,)).reshape(-1, 3))
        # What is in sight of a point that is open to the room is open to it too.
        for _ in few:
            lines = [(n, m) for n in np.flatnonzero(found) for m in np.flatnonzero(~found)]
            if not lines:
                break
            start, end = points[few[[n for n, _ in lines]]], points[few[[m for _, m in lines]]]
            far = np.linalg.norm(end - start, axis=1)
            reach = self.distance(start, (end - start) / np.maximum(far, 1e-9)[:, None], self.wide)
            linked = [m for (_, m), r, f in zip(lines, reach, far) if r > f]
            if not linked:
                break
            found[linked] = True
        for n in at:
            room[n] = found[int(np.argmin(np.linalg.norm(points[few] - points[n], axis=1)))]
        return room

    def opens(self, points):
        """Whether any of these points of one space is seen from the room."""
        points = points[~self.above_floor(points)]
        points = points[~self.before_wall(points) & ~self.slits.hold(points)]
        return bool(len(points)) and bool(self.seen(points, ROUGHLY, self.wide).any())

    def labels(self, points, normals, kind):
        """What each point of air looks at from a face with this normal, of a part of this kind."""
        room = self.in_room(points)
        below, wall = self.above_floor(points), self.before_wall(points)
        label = np.where(below, UNDERNEATH, INSIDE)
        label[wall] = WALL
        label[room & ~wall] = OUTSIDE
        if kind.startswith(BASE) or kind == "added":
            label[wall] = OUTSIDE
        if kind in BOARDS:
            label[(normals[:, 2] < -0.7) & below] = UNDERNEATH
        return label

    def in_gaps(self, points, normals):
        """What points within closed gaps look at: the room if a gap around a front runs straight to it and not far."""
        label = np.full(len(points), INSIDE)
        axes = np.eye(3)
        at_front = self.at_fronts.hold(points)
        for n, (point, normal) in enumerate(zip(points, normals)):
            runs = [d for d in (*axes, *-axes) if d @ normal > -0.5]
            for way in runs if at_front[n] else ():
                reach = self.distance(point[None], way[None], self.bare)[0]
                steps = np.arange(0.001, min(reach, INTO_GAP), 0.001)
                out = np.flatnonzero(~self.gaps.hold(point + steps[:, None] * way))
                if len(out) and self.in_room((point + (steps[out[0]] + 0.0005) * way)[None])[0]:
                    label[n] = OUTSIDE
                    break
        return label

    def at_points(self, part, points, normals):
        """The label of each point of a face of a part, or that it is covered."""
        label = np.full(len(points), INSIDE)
        off = points + OFF * normals
        covered = np.zeros(len(points), bool)
        least, most = off.min(0), off.max(0)
        for other in self.parts:
            if other is not part and np.all(other.low < most) and np.all(other.high > least):
                covered |= other.holds(off)
        floor = np.zeros(len(points), bool)
        wall = np.zeros(len(points), bool)
        if self.floor is not None:
            floor = (normals[:, 2] < -0.999) & (points[:, 2] < self.floor + TOUCH)
        if self.wall is not None:
            wall = (normals[:, 1] > 0.999) & (points[:, 1] > self.wall - TOUCH)
        gap = self.gaps.hold(off) & ~covered & ~floor & ~wall
        free = ~(covered | floor | wall | gap)
        label[free] = self.labels(off[free], normals[free], part.kind)
        # A few points tell what a gap is.
        at = np.flatnonzero(gap)
        few = at[np.linspace(0, len(at) - 1, min(len(at), 6)).astype(int)] if len(at) else at
        found = self.in_gaps(off[few], normals[few])
        for n in at:
            label[n] = found[int(np.argmin(np.linalg.norm(points[few] - points[n], axis=1)))] + JOINT
        label[floor], label[wall], label[covered] = FLOOR, WALL, COVERED
        return label

    def faces(self):
        """Every face with the shares of what it looks at."""
        for part in self.parts:
            rng = np.random.default_rng(zlib.crc32(f"{part.name}".encode()))
            for side, curved, facets in part.faces:
                yield f"{part.name}/{side}", self.curved(part, facets, rng) if curved else self.flat(part, facets)
        for part, shape in self.loose:
            for side, *_ in part.faces:
                yield f"{part.name}/{side}", {GLUE if side in GLUED.get(shape, ()) else OUTSIDE: 1.0}

    def curved(self, part, facets, rng):
        """A curved face looks where most of it looks."""
        triangles = np.concatenate([t for _, t, _ in facets])
        normals = np.concatenate([np.tile(n, (len(t), 1)) for n, t, _ in facets])
        area = np.linalg.norm(np.cross(triangles[:, 1] - triangles[:, 0], triangles[:, 2] - triangles[:, 0]), axis=1)
        picked = rng.choice(len(area), 60, p=area / area.sum())
        a, b = rng.random((2, 60))
        a, b = np.where(a + b > 1, 1 - a, a), np.where(a + b > 1, 1 - b, b)
        t = triangles[picked]
        points = t[:, 0] + a[:, None] * (t[:, 1] - t[:, 0]) + b[:, None] * (t[:, 2] - t[:, 0])
        label = self.at_points(part, points, normals[picked])
        label = label[label != COVERED] % JOINT
        return {int(np.bincount(label).argmax()): 1.0} if len(label) else {}

    def flat(self, part, facets):
        """A flat face, by points on a grid."""
        sums = {}
        for facet in facets:
            label, cell = self.on_grid(part, facet, 0.03, 100)
            settles = not part.kind.startswith(BASE)
            if settles and (label == OUTSIDE).any() and (label == UNDERNEATH).any():
                # What divides a face into bits must not fall between the points.
                label, cell = self.on_grid(part, facet, 0.01, 4000)
                label = larger_part(label, cell)
            label[label != COVERED] %= JOINT
            for n in np.unique(label[label != COVERED]):
                sums[int(n)] = sums.get(int(n), 0.0) + cell[label == n].sum()
        whole = sum(sums.values())
        return {n: area / whole for n, area in sums.items()}

    def on_grid(self, part, facet, step, most):
        """The labels of points all over a facet, so far apart or so many at most, and the area of each."""
        normal, _, (first, u, v, contours) = facet
        low, high = np.min([c.min(0) for c in contours], 0), np.max([c.max(0) for c in contours], 0)
        step = max(step, np.sqrt(np.prod(high - low) / most))
        # Where a part that is near the facet ends, another answer may begin.
        near = [other for other in self.parts if other is not part and other.ends_near(first, normal)]
        at, wide = [], []
        for n, way in enumerate((u, v)):
            ends = [low[n], high[n]]
            for other in near:
                corners = np.sort(np.array([other.low @ way, other.high @ way]) - first @ way)
                ends += [end for end in corners if low[n] < end < high[n]]
            ends = np.unique(np.round(ends, 5))
            counts = [max(1 if len(ends) > 4 else 3, int(np.ceil(length / step))) for length in np.diff(ends)]
            line = np.concatenate([np.linspace(a, b, count, False) for a, b, count in zip(ends, ends[1:], counts)])
            line = np.append(line, ends[-1])
            at.append((line[1:] + line[:-1]) / 2)
            wide.append(np.diff(line))
        grid = np.stack(np.meshgrid(*at, indexing="ij"), -1).reshape(-1, 2)
        inside = within(grid, contours)
        points = first + grid[:, :1] * u + grid[:, 1:] * v
        label = np.full(len(grid), COVERED)
        label[inside] = self.at_points(part, points[inside], np.tile(normal, (inside.sum(), 1)))
        return label.reshape(len(at[0]), len(at[1])), np.outer(*wide)


def larger_part(label, cell):
    """One connected bit that is partly outside and partly underneath is what the larger part of it is."""
    bits, count = ndimage.label((label != COVERED) & (label < JOINT))
    for bit in range(1, count + 1):
        own = bits == bit
        outside, underneath = (cell[own & (label == n)].sum() for n in (OUTSIDE, UNDERNEATH))
        if outside and underneath:
            label[own & ((label == OUTSIDE) | (label == UNDERNEATH))] = OUTSIDE if outside >= underneath else UNDERNEATH
    return label


def told(piece):
    """What each surface looks at: the label, or the shares in hundredths where there are several."""
    found = {}
    for name, shares in piece.faces():
        shares = {LABELS[n]: round(float(share), 2) for n, share in shares.items() if share >= 0.02}
        if len(shares) == 1:
            found[name] = next(iter(shares))
        elif shares:
            found[name] = shares
    return found


def all_told(line):
    """The name and kind of a piece, and what each of its surfaces looks at."""
    given = json.loads(line)
    return given["name"], given["kind"], told(Piece(given))


def main():
    """Writes the fixture, compares it, or shows one piece."""
    path, *rest = sys.argv[1:]
    if rest[:1] == ["--show"]:
        for line in Path(path).open():
            if json.loads(line)["name"] == rest[1]:
                for name, of in all_told(line)[2].items():
                    print(name, of)
        return
    all_found, usual = {}, {}
    with Pool() as pool:
        every = list(pool.imap(all_told, Path(path).open()))
    for name, kind, found in every:
        # A piece that differs from the usual one of its kind says only how.
        base = usual.setdefault(kind, found)
        differs = {name: of for name, of in found.items() if found is base or base.get(name) != of}
        entry = {}
        for label in LABELS:
            names = [name for name, of in differs.items() if of == label]
            if names:
                entry[label] = " ".join(names)
        mixed = {name: of for name, of in differs.items() if isinstance(of, dict)}
        all_found[name] = {"kind": kind, **entry, **({"mixed": mixed} if mixed else {})}
    if "--compare" in rest:
        before = json.loads(FIXTURE.read_text())["pieces"]
        assert before == all_found, "differs from the committed fixture"
        return
    lines = ",\n".join(f"{json.dumps(name)}: {json.dumps(of)}" for name, of in all_found.items())
    versions = f"trimesh {trimesh.__version__} with Embree"
    FIXTURE.write_text(f'{{"rays": {json.dumps(versions)}, "pieces": {{\n{lines}\n}}}}\n')


if __name__ == "__main__":
    main()
