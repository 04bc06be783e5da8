"""Cases: a unit of sides, back, rails, shelves, fronts and top, standing on its base; hutch and pedestal desk."""

from fractions import Fraction
from math import asin, pi, radians

from bases import base
from fronts import Fronts
from layout import Members, bays, middles
from profiles import Arc, Line, measured_edge, members
from solids import LEVEL, Place, block, mitred, ring, run, worked_board

HALF = Fraction(1, 2)
# A rail reaches 60 mm into the case, or a third of the way to the back where the case is shallow.
RAIL_REACH = Fraction(60)


def top(tape, x, y, z, worked):
    """The top board; its upper arris is worked along some edges."""
    shape = tape.style("top-edge")
    if shape == "measured" and tape["edge-girth"] > z[1] - z[0]:
        profile = [("{}", curve) for curve in measured_edge(tape["edge-girth"], tape["edge-width"], z[1] - z[0])]
        return worked_board(LEVEL, x, y, z, profile, worked)
    if shape in ("square", "measured"):
        return block(x, y, z)
    w, h = tape["edge-width"], tape["edge-height"]
    if shape == "half-round":
        h = z[1] - z[0]
        w = h * HALF
    profile = [("moulded-{}", curve) for curve in members(shape, w, h)]
    return worked_board(LEVEL, x, y, z, profile, worked)


class Unit:
    """One carcass with everything in it, from its base to the underside of its top."""

    def __init__(self, tape, given, x, y, z, prefix="", crown=0):
        self.tape, self.x, self.y, self.prefix = tape, x, y, prefix
        self.foot, self.head = z
        self.parts, self.spaces = {}, []
        self.m = Members(tape, crown)
        self.board = tape["board"]
        self.inner = (x[0] + self.board, x[1] - self.board)
        # Where boards behind a face frame begin, where the back begins, and where boards beside a back end.
        self.behind = y[0] + self.m.ft
        back, thick = tape.style("back"), tape["back-thickness"]
        self.b1 = y[1] - (tape["back-recess"] if back == "recessed" else 0)
        self.b0 = y[1] if back == "none" else self.b1 - thick
        self.br = self.b0 if back == "flush" else y[1]
        self.bays = bays(given, self.m, tape, prefix, x, z)
        self.full_top = any(bay.rows[0].in_view for bay in self.bays)
        self.fronts = Fronts(tape, y[0], self.put, self.spaces)
        self.carcass()
        self.between_bays()
        for bay in self.bays:
            self.between_rows(bay)
            for row in bay.rows:
                self.between_columns(bay, row)
                self.shelves(bay, row)
                self.fronts.fill(bay, row)
                if row.fill == "drawers" and tape.style("drawer-boxes") == "shown":
                    self.fronts.box(bay, row, bay.openings(row, self.m.md), self.b0)
        if tape.style("corner-columns") != "none":
            self.columns()
        if crown:
            self.crown()
        self.look_inside()

    def put(self, name, part):
        """Adds a part whose name already has all its prefixes."""
        assert name not in self.parts, name
        self.parts[name] = part

    def own(self, name, part):
        """Adds a part of the unit."""
        self.put(self.prefix + name, part)

    def carcass(self):
        """Sides, bottom, back, and what lies under the top."""
        x, m, board, y0 = self.x, self.m, self.board, self.y[0]
        back, framed = self.tape.style("back"), bool(m.ft)
        upright, deep = (self.foot, self.head), (self.behind, self.br)
        self.own("left-side", block((x[0], self.inner[0]), deep, upright))
        self.own("right-side", block((self.inner[1], x[1]), deep, upright))
        self.own("bottom", block(self.inner, deep, (self.foot + m.eb - board, self.foot + m.eb)))
        if back == "recessed":
            self.own("back", block(self.inner, (self.b0, self.b1), (self.foot + m.eb, self.head)))
        elif back == "flush":
            self.own("back", block(x, (self.b0, self.b1), upright))
        third = (self.b0 - y0) / 3
        self.reach = min(RAIL_REACH, third)
        if self.m.inset:
            self.reach = max(self.reach, self.tape["front-thickness"])
        under = (self.head - m.et, self.head)
        if self.full_top:
            self.own("top-rail-1", block(self.inner, (self.behind, self.b0), under))
        else:
            if not framed:
                self.own("top-rail-1", block(self.inner, (y0, y0 + self.reach), under))
            reach = min(RAIL_REACH, third, self.b0 - y0 - self.reach)
            self.own("top-rail-2", block(self.inner, (self.b0 - reach, self.b0), (self.head - board, self.head)))
        if framed:
            self.face_frame()

    def face_frame(self):
        """The outline of the face frame, and the stiles between bays."""
        x, m, y = self.x, self.m, (self.y[0], self.behind)
        within = (x[0] + m.e, x[1] - m.e)
        self.own("frame-stile-1", block((x[0], within[0]), y, (self.foot, self.head)))
        self.own("frame-stile-2", block((within[1], x[1]), y, (self.foot, self.head)))
        self.own("frame-top", block(within, y, (self.head - m.et, self.head)))
        self.own("frame-bottom", block(within, y, (self.foot, self.foot + m.eb)))
        for n, (one, other) in enumerate(zip(self.bays, self.bays[1:]), 1):
            self.own(f"frame-mid-stile-{n}", block((one.opening[1], other.opening[0]), y,
                                                   (self.foot + m.eb, self.head - m.et)))

    def between_bays(self):
        """The partitions."""
        for n, (one, other) in enumerate(zip(self.bays, self.bays[1:]), 1):
            self.own(f"partition-{n}", block((one.clear[1], other.clear[0]), (self.behind, self.b0),
                                             (self.foot + self.m.eb, self.head - self.m.et)))

    def between_rows(self, bay):
        """Rails, and boards of full depth beside compartments that are open to view."""
        m, y0 = self.m, self.y[0]
        for r, (middle, upper, lower) in enumerate(zip(middles(bay.rows), bay.rows, bay.rows[1:]), 1):
            if m.ft:
                self.put(f"{bay.prefix}frame-rail-{r}", block(bay.opening, (y0, self.behind), around(middle, m.mr)))
            if upper.in_view or lower.in_view:
                thick = self.board if m.ft else m.mr
                self.put(f"{bay.prefix}rail-{r}", block(bay.clear, (self.behind, self.b0), around(middle, thick)))
            elif not m.ft:
                self.put(f"{bay.prefix}rail-{r}", block(bay.clear, (y0, y0 + self.reach), around(middle, m.mr)))

    def board_opening(self, bay, row):
        """The height of a row between carcass boards; where there is none, between members of the face frame."""
        low, high = row.opening
        n, rows = row.number - 1, bay.rows
        slack = (self.m.mr - self.board) * HALF if self.m.ft else 0
        if n > 0 and (rows[n - 1].in_view or row.in_view):
            high += slack
        if n + 1 < len(rows) and (rows[n + 1].in_view or row.in_view):
            low -= slack
        return low, high

    def between_columns(self, bay, row):
        """Dividers, of full depth in an open row."""
        if row.fill == "doors":
            return
        m, y0, opened = self.m, self.y[0], row.fill == "open"
        for c, span in enumerate(bay.dividers(row, m.md), 1):
            place = f"{row.number}-{c}"
            if m.ft:
                self.put(f"{bay.prefix}frame-divider-{place}", block(span, (y0, self.behind), row.opening))
            elif not opened:
                self.put(f"{bay.prefix}divider-{place}", block(span, (y0, y0 + self.reach), row.opening))
        if opened:
            thick = self.board if m.ft else m.md
            for c, span in enumerate(bay.dividers(row, thick), 1):
                self.put(f"{bay.prefix}divider-{row.number}-{c}",
                         block(span, (self.behind, self.b0), self.board_opening(bay, row)))

    def shelves(self, bay, row):
        """The shelves of a row that has no drawers."""
        if row.fill == "drawers" or not row.shelves:
            return
        low, high = self.board_opening(bay, row)
        begin = self.behind
        if row.fill == "open":
            across = bay.openings(row, self.board if self.m.ft else self.m.md, clear=True)
        else:
            across, begin = [bay.clear], max(begin, self.fronts.rear("doors"))
        clear = (high - low - row.shelves * self.board) / (row.shelves + 1)
        k = 0
        for level in range(row.shelves):
            head = high - clear - level * (clear + self.board)
            for x in across:
                k += 1
                self.put(f"{bay.prefix}shelf-{row.number}-{k}", block(x, (begin, self.b0), (head - self.board, head)))

    def columns(self):
        """Half columns before the middles of the outer stiles, plain or fluted."""
        tape, m = self.tape, self.m
        assert m.ft, "corner columns stand on a face frame"
        radius = tape["column-diameter"] * HALF
        flutes = tape.count("flutes") if tape.style("corner-columns") == "fluted" else 0
        loop = fluted(radius, tape["flute-radius"], flutes) if flutes else ring(radius)
        loop = [*loop, ("back", Line((-radius, 0), (radius, 0)))]
        for n, x in enumerate((self.x[0] + m.e * HALF, self.x[1] - m.e * HALF), 1):
            # The second axis of the section looks at the viewer.
            places = [Place((x, self.y[0], z), (1, 0, 0), (0, -1, 0)) for z in (self.foot, self.head - m.c)]
            self.own(f"column-{n}", run([loop], *places, ("bottom", "top")))

    def crown(self):
        """A moulding that grows out of the case on three sides, its section measured outwards."""
        wide, tall = self.tape["crown-projection"], self.tape["crown-height"]
        curves = members(self.tape.style("crown"), wide, tall, crown=True)
        loop = [("moulded", curve.mapped(Place((0, 0), (-1, 0), (0, 1)))) for curve in curves]
        loop += [("top", Line((-wide, tall), (0, tall))), ("inner", Line((0, tall), (0, 0)))]
        made = mitred(LEVEL, self.x, self.y, self.head - tall, loop, ("left", "bottom", "right"), square="top")
        for n, part in enumerate(made.values(), 1):
            self.own(f"crown-{n}", part)

    def look_inside(self):
        """The spaces that the faces of the unit look into."""
        m, y0 = self.m, self.y[0]
        begin = y0 + self.tape["front-thickness"] if m.inset else y0
        if m.inset and m.ft:
            begin = min(begin, self.behind)
        edges = [self.inner[0], *((one.clear[1] + other.clear[0]) * HALF
                                  for one, other in zip(self.bays, self.bays[1:])), self.inner[1]]
        for bay, left, right in zip(self.bays, edges, edges[1:]):
            runs = [[]]
            for row in bay.rows:
                if row.in_view:
                    runs.append([])
                else:
                    runs[-1].append(row)
            for hidden in filter(None, runs):
                low, high = self.board_opening(bay, hidden[-1])[0], self.board_opening(bay, hidden[0])[1]
                if hidden[0].number == 1 and not self.full_top:
                    high = self.head
                self.spaces.append(("inside", (left, begin, low), (right, self.b0, high), None))
        if self.tape.style("back") == "recessed":
            self.spaces.append(("wall", (self.inner[0], self.b1, self.foot + m.eb),
                                (self.inner[1], self.y[1], self.head), None))
        if m.ft:
            self.spaces.append(("underneath", (self.inner[0], self.behind, self.foot),
                                (self.inner[1], self.br, self.foot + m.eb - self.board), None))

    def stand(self):
        """The base under the unit, and what looks down between it and the floor."""
        if self.foot:
            self.spaces.append(("underneath", (self.x[0], self.y[0], 0), (self.x[1], self.y[1], self.foot), "bottom"))
        base(self.tape, self.x, self.y, self.own, self.spaces)


def around(middle, thick):
    """The span of a thickness about its middle."""
    return middle - thick * HALF, middle + thick * HALF


def fluted(radius, small, flutes):
    """The outline of half a column with flutes, from right to left."""
    # Half the angle at the axis of the column over which a flute cuts its surface.
    half = 2 * asin(float(small / radius) / 2)
    loop, angle = [], 0.0
    for k in range(1, flutes + 1):
        middle = radians(180 * (k - 0.5) / flutes)
        assert angle < middle - half, "flutes run into each other"
        loop.append(Arc((0, 0), (radius, 0), (0, radius), angle, middle - half))
        angle = middle + half
        axis = Arc((0, 0), (radius, 0), (0, radius), middle).start
        # From either border of the flute its axis looks back at the column under the same angle.
        turn = pi / 2 - half / 2
        loop.append(Arc(axis, (small, 0), (0, small), middle + pi + turn, middle + pi - turn))
    loop.append(Arc((0, 0), (radius, 0), (0, radius), angle, pi))
    return [("around", curve) for curve in loop]
