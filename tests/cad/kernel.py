"""The CAD kernel: solids from their descriptions, their general fuse, and what it leaves of each face."""

from math import cos, pi, sqrt

from OCP.Bnd import Bnd_Box
from OCP.BOPAlgo import BOPAlgo_Builder
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.BRepAlgoAPI import BRepAlgoAPI_Common, BRepAlgoAPI_Cut
from OCP.BRepBndLib import BRepBndLib
from OCP.BRepBuilderAPI import (BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakeSolid,
                                BRepBuilderAPI_MakeWire, BRepBuilderAPI_Sewing, BRepBuilderAPI_Transform)
from OCP.BRepFill import BRepFill
from OCP.BRepGProp import BRepGProp, BRepGProp_Face
from OCP.BRepLib import BRepLib
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox, BRepPrimAPI_MakeCone, BRepPrimAPI_MakeRevol
from OCP.BRepTools import BRepTools
from OCP.IntTools import IntTools_FClass2d
from OCP.GeomAbs import GeomAbs_Plane
from OCP.gp import gp_Ax1, gp_Ax2, gp_Circ, gp_Dir, gp_Elips, gp_Pnt, gp_Pnt2d, gp_Trsf, gp_Vec
from OCP.GProp import GProp_GProps
from OCP.ShapeFix import ShapeFix_Face
from OCP.TopAbs import TopAbs_FACE, TopAbs_IN, TopAbs_SHELL, TopAbs_SOLID
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS

from profiles import Line, minus
from solids import OUT, Cone, Flat, Shell, Turned
from spaces import FAR

# How far a face is moved out of its solid to see which space it looks into, millimetres.
STEP = 0.01
# How far a face may reach over the border of a space and still count as within it.
SLACK = 1e-3



def point(at):
    """A point of the kernel."""
    return gp_Pnt(*map(float, at))


def length(vector):
    """The length of a vector."""
    return sqrt(sum(float(value) ** 2 for value in vector))


def area(shape):
    """The area of a shape."""
    properties = GProp_GProps()
    BRepGProp.SurfaceProperties_s(shape, properties)
    return properties.Mass()


def parts_of(shape, kind):
    """The faces, shells or solids of a shape."""
    explorer = TopExp_Explorer(shape, kind)
    while explorer.More():
        yield explorer.Current()
        explorer.Next()


# --- Solids ----------------------------------------------------------------------------------------------------

def edge(curve):
    """The edge of a line or of an arc of a circle or ellipse."""
    if isinstance(curve, Line):
        return BRepBuilderAPI_MakeEdge(point(curve.start), point(curve.end)).Edge()
    if curve.first > curve.last:
        curve = curve.reversed()
    a, b, first, last = curve.a, curve.b, curve.first, curve.last
    assert abs(sum(float(p * q) for p, q in zip(a, b))) < 1e-9 * length(a) * length(b)
    if length(a) < length(b):
        # The kernel wants the longer axis first.
        a, b, first, last = b, tuple(-value for value in a), first - pi / 2, last - pi / 2
    x, y = gp_Dir(*map(float, a)), gp_Dir(*map(float, b))
    axes = gp_Ax2(point(curve.centre), x.Crossed(y), x)
    round_ = abs(length(a) - length(b)) < 1e-9 * length(a)
    conic = gp_Circ(axes, length(a)) if round_ else gp_Elips(axes, length(a), length(b))
    return BRepBuilderAPI_MakeEdge(conic, first, last).Edge()


def flat(loops):
    """A flat face between loops."""
    made = None
    for loop in loops:
        wire = BRepBuilderAPI_MakeWire()
        for curve in loop:
            wire.Add(edge(curve))
        assert wire.IsDone(), "a face has an open outline"
        if made is None:
            made = BRepBuilderAPI_MakeFace(wire.Wire(), True)
        else:
            made.Add(wire.Wire())
        assert made.IsDone(), "a face is not flat"
    if len(loops) == 1:
        return made.Face()
    fix = ShapeFix_Face(made.Face())
    fix.FixOrientation()
    return fix.Face()


def solid_of(shell):
    """A solid from faces that meet at their edges, and its faces by name."""
    sewing = BRepBuilderAPI_Sewing(1e-6)
    given = []
    for face in shell.faces:
        made = flat(face.loops) if isinstance(face, Flat) else BRepFill.Face_s(edge(face.one), edge(face.other))
        sewing.Add(made)
        given.append((face.name, made))
    sewing.Perform()
    assert sewing.NbFreeEdges() == 0 and sewing.NbMultipleEdges() == 0, "a solid has an open edge"
    shells = list(parts_of(sewing.SewedShape(), TopAbs_SHELL))
    assert len(shells) == 1
    solid = BRepBuilderAPI_MakeSolid(TopoDS.Shell(shells[0])).Solid()
    assert BRepLib.OrientClosedSolid_s(solid)
    sewn = [(name, sewing.Modified(face)) for name, face in given]
    named = []
    for face in parts_of(solid, TopAbs_FACE):
        (name,) = [name for name, other in sewn if other.IsSame(face)]
        named.append((name, face))
    assert len(named) == len(given)
    return solid, named


def round_names(solid):
    """The faces of a round solid by name: level at its ends, the rest goes around."""
    low, high = bounds(solid)
    named = []
    for face in parts_of(solid, TopAbs_FACE):
        below, above = bounds(face)
        level = above[2] - below[2] < SLACK
        ends = {"bottom": low[2], "top": high[2]}
        found = [name for name, z in ends.items() if level and abs(below[2] - z) < SLACK]
        named.append((found[0] if found else "around", face))
    return solid, named


def turned(given):
    """A solid of revolution."""
    x, y = given.centre
    axis = gp_Ax1(point((x, y, 0)), gp_Dir(0, 0, 1))

    class Upright:
        """The plane of the outline."""

        @staticmethod
        def point(at):
            """A point of the outline in space."""
            return (x + at[0], y, at[1])

        @staticmethod
        def vector(at):
            """A direction of the outline in space."""
            return (at[0], 0, at[1])

    curves = [curve.mapped(Upright) for curve in given.outline]
    curves.append(Line(curves[-1].end, curves[0].start))
    solid = BRepPrimAPI_MakeRevol(flat([curves]), axis).Shape()
    return round_names(TopoDS.Solid(next(parts_of(solid, TopAbs_SOLID))))


def cone(given):
    """A slanted cone, made too long and then cut level."""
    way = [float(value) for value in minus(given.head, given.foot)]
    tall = length(way)
    growth = (float(given.head_radius) - float(given.foot_radius)) / tall
    wide = max(float(given.head_radius), float(given.foot_radius))
    beyond = wide if growth <= 0 else min(wide, 0.5 * float(given.foot_radius) / growth)
    foot = point(tuple(float(at) - step * beyond / tall for at, step in zip(given.foot, way)))
    whole = BRepPrimAPI_MakeCone(gp_Ax2(foot, gp_Dir(*way)), float(given.foot_radius) - growth * beyond,
                                 float(given.head_radius) + growth * beyond, tall + 2 * beyond).Shape()
    zone = box((-FAR, -FAR, given.foot[2]), (FAR, FAR, given.head[2]))
    return round_names(TopoDS.Solid(next(parts_of(BRepAlgoAPI_Common(whole, zone).Shape(), TopAbs_SOLID))))


def build(part):
    """The solid of a part and its faces by name."""
    return {Shell: solid_of, Turned: turned, Cone: cone}[type(part)](part)


# --- Where faces lie and look ------------------------------------------------------------------------------------

def box(low, high):
    """A block between two corners."""
    low, high = [[max(-FAR, min(FAR, float(value))) for value in corner] for corner in (low, high)]
    return BRepPrimAPI_MakeBox(gp_Pnt(*low), gp_Pnt(*high)).Shape()


def bounds(shape):
    """The corners of the box around a shape."""
    around = Bnd_Box()
    BRepBndLib.AddOptimal_s(shape, around, True, False)
    low, high = around.CornerMin(), around.CornerMax()
    return (low.X(), low.Y(), low.Z()), (high.X(), high.Y(), high.Z())


def normals(face):
    """Where a face looks, at points within it."""
    surface = BRepGProp_Face(face)
    umin, umax, vmin, vmax = BRepTools.UVBounds_s(face)
    within = IntTools_FClass2d(face, 1e-7)
    found = []
    shares = [0.001, 0.13, 0.37, 0.5, 0.61, 0.83, 0.999]
    for u in (umin + share * (umax - umin) for share in shares):
        for v in (vmin + share * (vmax - vmin) for share in shares):
            if within.Perform(gp_Pnt2d(u, v)) == TopAbs_IN:
                at, normal = gp_Pnt(), gp_Vec()
                surface.Normal(u, v, at, normal)
                if normal.Magnitude() > 1e-12:
                    normal.Normalize()
                    found.append((normal.X(), normal.Y(), normal.Z()))
    assert found, "no point within a face"
    return found


def is_round(side):
    """Whether the page counts a face among the curved ones, which are never divided."""
    return side in ("around", "cut-out") or side.startswith("moulded")


def looks(way, facing):
    """Whether a face looks within 45 degrees of a direction."""
    return facing is None or sum(a * b for a, b in zip(way, OUT[facing])) >= cos(pi / 4) - 1e-9


def divide_flat(face, spaces):
    """The area of a piece of a flat face by what it looks into: the first space that it fits, else outside."""
    # The face is moved a hair out of its solid, so that one on the boundary of a space shows which way it looks.
    way = normals(face)[0]
    move = gp_Trsf()
    move.SetTranslation(gp_Vec(*(STEP * value for value in way)))
    rest = BRepBuilderAPI_Transform(face, move, True).Shape()
    senses, left = {}, area(rest)
    reach = bounds(rest)

    def see(sense, value):
        senses[sense] = senses.get(sense, 0.0) + value

    for sense, low, high, facing in spaces:
        if any(a >= h - SLACK or b <= l + SLACK for a, b, l, h in zip(*reach, low, high)):
            continue
        if not looks(way, facing):
            continue
        if all(a >= l - SLACK and b <= h + SLACK for a, b, l, h in zip(*reach, low, high)):
            see(sense, left)
            return senses
        zone = box(low, high)
        seen = area(BRepAlgoAPI_Common(rest, zone).Shape())
        if seen > 0:
            see(sense, seen)
            rest = BRepAlgoAPI_Cut(rest, zone).Shape()
            remains = area(rest)
            assert abs(left - seen - remains) < 1e-6 * left + 1e-6, "a face was not divided well"
            left = remains
            if left < 1e-6:
                return senses
            reach = bounds(rest)
    see("outside", left)
    return senses


def divide_round(pieces, spaces):
    """The same of all pieces of a curved face: it looks where more than half of it looks."""
    whole = sum(map(area, pieces))
    for sense, low, high, facing in spaces:
        if facing is not None:
            continue
        zone = box(low, high)
        near = [piece for piece in pieces if not any(
            a >= h - SLACK or b <= l + SLACK for a, b, l, h in zip(*bounds(piece), low, high))]
        if 2 * sum(area(BRepAlgoAPI_Common(piece, zone).Shape()) for piece in near) > whole:
            return {sense: whole}
    return {"outside": whole}


# --- The general fuse --------------------------------------------------------------------------------------------

class Held:
    """The faces of solids as these hold them: what looks out of one solid looks into the other."""

    def __init__(self, solids):
        self.by_hash = {}
        for solid in solids:
            for face in parts_of(solid, TopAbs_FACE):
                self.by_hash.setdefault(hash(face), []).append(face)

    def __getitem__(self, face):
        return [TopoDS.Face(other) for other in self.by_hash.get(hash(face), []) if other.IsSame(face)]


def fuse(parts):
    """The general fuse of all solids, and their faces by name before it."""
    built = {name: build(part) for name, part in parts.items()}
    builder = BOPAlgo_Builder()
    for solid, _ in built.values():
        builder.AddArgument(solid)
    if len(built) == 1:
        # The fuse wants two solids; a solid alone keeps all its faces.
        builder.AddArgument(box((0.7 * FAR,) * 3, (0.8 * FAR,) * 3))
    builder.Perform()
    assert not builder.HasErrors()
    solids = list(parts_of(builder.Shape(), TopAbs_SOLID))
    assert len(solids) == max(2, len(built)), f"{len(built)} solids run into each other: {len(solids)}"
    return builder, built, solids


def exposed(parts, spaces):
    """For each face `part/side`: what is left of it in the general fuse of all solids, by what it looks into."""
    builder, built, solids = fuse(parts)
    # A face that two solids hold lies between them.
    held = Held(solids)
    found = {}
    for name, (_, named) in built.items():
        for side, face in named:
            pieces = list(builder.Modified(face))
            if not pieces and not builder.IsDeleted(face):
                pieces = [face]
            whole = area(face)
            assert abs(sum(map(area, pieces)) - whole) < 1e-6 * whole, (name, side, "pieces must add up to the face")
            left = found.setdefault(f"{name}/{side}", [])
            for piece in pieces:
                holders = held[piece]
                assert len(holders) in (1, 2), (name, side)
                left.extend(holders if len(holders) == 1 else [])
    return {name: by_sense(name, left, spaces) for name, left in found.items()}


def by_sense(name, pieces, spaces):
    """The area of what is left of a face by what it looks into."""
    if is_round(name.rpartition("/")[2]):
        return divide_round(pieces, spaces)
    senses = {}
    for piece in pieces:
        for sense, value in divide_flat(piece, spaces).items():
            senses[sense] = senses.get(sense, 0.0) + value
    return senses
