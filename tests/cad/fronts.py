"""Drawer fronts, doors, what is applied to them, and the boxes behind drawers."""

from fractions import Fraction

from profiles import Line, lying, members, quarter
from solids import UPRIGHT, block, mitred, worked_board

HALF = Fraction(1, 2)
# How much smaller than its opening a drawer box is, and how far from the back it ends, millimetres.
BESIDE, BELOW, ABOVE, BEHIND = 13, 6, 19, 20


class Fronts:
    """The style of all fronts of a unit, whose front edges lie at y0."""

    def __init__(self, tape, y0, put, spaces):
        self.tape, self.y0, self.put, self.spaces = tape, y0, put, spaces
        self.inset = tape.style("fronts") == "inset"
        self.lipped = tape.style("fronts") == "lipped"
        self.thick = tape["front-thickness"]
        lip = tape["lip-thickness"] if self.lipped else self.thick
        assert not self.lipped or lip < self.thick
        self.span = (y0, y0 + self.thick) if self.inset else (y0 - lip, y0)
        # A tongue fills the opening behind the lip.
        self.tongue = (y0, y0 - lip + self.thick)
        self.door_span = (y0 - self.thick, y0) if self.lipped else self.span

    def rear(self, fill):
        """How far the fronts of a row reach towards the wall."""
        if self.lipped and (fill == "drawers" or self.tape.style("doors") == "slab"):
            return self.tongue[1]
        return self.door_span[1]

    def fill(self, bay, row):
        """The fronts of a row."""
        for c, x in enumerate(row.columns, 1):
            place, z = f"{row.number}-{c}", (row.foot, row.head)
            if row.fill == "drawers":
                self.slab(f"{bay.prefix}drawer-front-{place}", f"{bay.prefix}tongue-{place}", x, z)
            elif row.fill == "doors" and self.tape.style("doors") == "slab":
                self.slab(f"{bay.prefix}door-{place}", f"{bay.prefix}door-tongue-{place}", x, z)
            elif row.fill == "doors":
                self.framed_door(bay.prefix, place, x, z)
                continue
            if row.fill != "open" and self.tape.style("applied") != "none":
                self.applied(bay.prefix, place, x, z)

    def slab(self, name, tongue, x, z):
        """A front in one piece, perhaps with a tongue behind it."""
        shape, lip = self.tape.style("front-edge"), self.tape["lip"]
        if shape == "square":
            self.put(name, block(x, self.span, z))
        else:
            by = self.tape["front-edge-size"]
            profile = [("moulded-{}", curve) for curve in members(shape, by, by)]
            out = (-self.span[1], -self.span[0])
            self.put(name, worked_board(UPRIGHT, x, z, out, profile, ("bottom", "right", "top", "left")))
        if self.lipped:
            self.put(tongue, block((x[0] + lip, x[1] - lip), self.tongue, (z[0] + lip, z[1] - lip)))

    def applied(self, prefix, place, x, z):
        """A mitred rectangle of moulding on a front; its section is measured from its outer line inwards."""
        w, h, inset = (self.tape[f"applied-{key}"] for key in ("width", "height", "inset"))
        if self.tape.style("applied") == "half-round":
            curves = [quarter((0, 0), (w * HALF, h), True), quarter((w, 0), (-w * HALF, h), True).reversed()]
            loop = [("back", Line((w, 0), (0, 0))), *(("moulded", curve) for curve in curves)]
        else:
            curves = lying([turned_over(curve, w) for curve in members(self.tape.style("applied"), w, h)])
            loop = [*(("moulded", curve) for curve in curves), ("moulded", Line(curves[-1].end, (0, 0))),
                    ("back", Line((0, 0), curves[0].start))]
        rectangle = [(span[0] + inset, span[1] - inset) for span in (x, z)]
        for word, part in mitred(UPRIGHT, *rectangle, -self.span[0], loop).items():
            self.put(f"{prefix}applied-{word}-{place}", part)

    def framed_door(self, prefix, place, x, z):
        """A door of frame and panel, perhaps with sticking between them."""
        tape, y = self.tape, self.door_span
        stile, rail = tape["door-stile"], tape["door-rail"]
        inner_x, inner_z = (x[0] + stile, x[1] - stile), (z[0] + rail, z[1] - rail)
        self.put(f"{prefix}door-stile-left-{place}", block((x[0], inner_x[0]), y, z))
        self.put(f"{prefix}door-stile-right-{place}", block((inner_x[1], x[1]), y, z))
        self.put(f"{prefix}door-rail-top-{place}", block(inner_x, y, (inner_z[1], z[1])))
        self.put(f"{prefix}door-rail-bottom-{place}", block(inner_x, y, (z[0], inner_z[0])))
        recess, wide = tape["panel-recess"], tape["sticking-width"]
        front = y[0] + recess
        rear = front + tape["panel-thickness"]
        assert rear <= y[1], "a panel is thicker than its frame leaves room for"
        glazed, shape = tape.style("doors") == "glazed", tape.style("sticking")
        name = f"{prefix}door-{'glass' if glazed else 'panel'}-{place}"
        if not glazed and rear < y[1]:
            low, high = zip(inner_x, (rear, y[1]), inner_z)
            self.spaces.append(("inside", low, high, None))
        if tape.style("doors") == "raised-panel":
            begin = 0 if shape == "square" else wide
            bevel, rise = tape["panel-bevel"], tape["panel-raise"]
            profile = [("margin", Line((0, 0), (begin, 0)))] if begin else []
            profile.append(("bevel-{}", Line((begin, 0), (begin + bevel, rise))))
            out = (-rear, -front + rise)
            self.put(name, worked_board(UPRIGHT, inner_x, inner_z, out, profile, ("bottom", "right", "top", "left")))
        else:
            self.put(name, block(inner_x, (front, rear), inner_z))
        if shape != "square":
            curves = lying([turned_over(curve, wide) for curve in members(shape, wide, recess)])
            loop = [*(("moulded", curve) for curve in curves), ("outer", Line(curves[-1].end, (0, 0))),
                    ("back", Line((0, 0), curves[0].start))]
            for word, part in mitred(UPRIGHT, inner_x, inner_z, -front, loop).items():
                self.put(f"{prefix}sticking-{word}-{place}", part)

    def box(self, bay, row, openings, b0):
        """The boxes of a row of drawers, each within the opening of its column."""
        k = self.tape["box-thickness"]
        for c, opening in enumerate(openings, 1):
            x = (opening[0] + BESIDE, opening[1] - BESIDE)
            z = (row.opening[0] + BELOW, row.opening[1] - ABOVE)
            y = (self.rear("drawers"), b0 - BEHIND)
            inner, place = (x[0] + k, x[1] - k), f"{row.number}-{c}"
            self.put(f"{bay.prefix}box-left-{place}", block((x[0], inner[0]), y, z))
            self.put(f"{bay.prefix}box-right-{place}", block((inner[1], x[1]), y, z))
            self.put(f"{bay.prefix}box-back-{place}", block(inner, (y[1] - k, y[1]), z))
            self.put(f"{bay.prefix}box-bottom-{place}", block(inner, (y[0], y[1] - k), (z[0], z[0] + k)))


class TurnedOver:
    """The map from a way into the wood, from the inner foot outwards, to one from the outer line inwards."""

    def __init__(self, width):
        self.width = width

    def point(self, at):
        """The image of a point."""
        return (self.width - at[0], at[1])

    def vector(self, at):
        """The image of a vector."""
        return (-at[0], at[1])


def turned_over(curve, width):
    """A member of a profile measured from the outer line of its moulding inwards."""
    return curve.mapped(TurnedOver(width))
