"""Where the fronts of a case lie: bays side by side, rows from the top down, columns in a row."""

from dataclasses import dataclass, field
from fractions import Fraction

from tape import size

HALF = Fraction(1, 2)


@dataclass
class Row:
    """A row of a bay; `opening` is the span from the member below to the member above."""

    number: int
    fill: str
    shelves: int
    columns: list
    foot: Fraction
    head: Fraction
    opening: tuple = ()
    in_view: bool = False


@dataclass
class Bay:
    """A bay: `fronts` is the span of its fronts, `opening` that between members, `clear` that between boards."""

    prefix: str
    fronts: tuple
    opening: tuple
    clear: tuple
    rows: list = field(default_factory=list)

    def dividers(self, row, thick):
        """The spans of the members between the columns of a row."""
        middles = [(one[1] + other[0]) * HALF for one, other in zip(row.columns, row.columns[1:])]
        return [(middle - thick * HALF, middle + thick * HALF) for middle in middles]

    def openings(self, row, thick, clear=False):
        """The spans between the uprights of the bay and the members between its columns."""
        outer = self.clear if clear else self.opening
        edges = [outer[0], *(value for span in self.dividers(row, thick) for value in span), outer[1]]
        return list(zip(edges[::2], edges[1::2]))


class Members:
    """How wide the members of a unit are, and how far its fronts stay away from its outline and each other."""

    def __init__(self, tape, crown):
        board, framed = tape["board"], tape.style("face-frame") == "frame"
        self.inset = tape.style("fronts") == "inset"
        self.gap, self.frame = tape["gap"], tape["frame"]
        self.ft = tape["frame-thickness"] if framed else 0
        self.e = self.mb = tape["stile"] if framed else board
        self.eb = self.mr = self.md = tape["frame-rail"] if framed else board
        self.c = crown
        self.et = self.eb + crown

    def apart(self, member):
        """How far neighbouring fronts lie from each other."""
        return member + 2 * self.gap if self.inset else self.gap

    def beyond(self, member, end):
        """How much further fronts reach than the opening beside a member, at the end of the room or between two."""
        if self.inset:
            return -self.gap
        return member - self.frame if end else (member - self.gap) * HALF


def share(room, apart, taken):
    """What each of several takes of a room: as measured, and equal parts of what is left."""
    free = room - apart * (len(taken) - 1)
    known = sum(value for value in taken if value is not None)
    unknown = taken.count(None)
    if unknown:
        assert known < free, "nothing is left"
        return [(free - known) / unknown if value is None else value for value in taken]
    # A tape's slip is shared in proportion.
    assert abs(known - free) * 50 <= free, f"{float(known)} and {float(free)} are too far apart"
    return [value * free / known for value in taken]


def spans(start, apart, sizes):
    """The spans of several one after another."""
    found = []
    for value in sizes:
        found.append((start, start + value))
        start += value + apart
    return found


def bays(given, members, tape, prefix, x, z):
    """The bays of a unit between x and between the top of its base and the underside of its top, with their rows."""
    m, board = members, tape["board"]
    margin = m.e + m.gap if m.inset else m.frame
    taken = []
    for n, bay in enumerate(given):
        clear = size(bay.get("width"))
        left, right = m.beyond(m.e if n == 0 else m.mb, n == 0), \
            m.beyond(m.e if n == len(given) - 1 else m.mb, n == len(given) - 1)
        taken.append(None if clear is None else clear + left + right)
    room = (x[0] + margin, x[1] - margin)
    fronts = spans(room[0], m.apart(m.mb), share(room[1] - room[0], m.apart(m.mb), taken))
    assert fronts[-1][1] == room[1]
    middles = [(one[1] + other[0]) * HALF for one, other in zip(fronts, fronts[1:])]
    found = []
    for n, (bay, span) in enumerate(zip(given, fronts)):
        ends = []
        for member, outer in ((m.mb, m.e), (board, board)):
            low = x[0] + outer if n == 0 else middles[n - 1] + member * HALF
            high = x[1] - outer if n == len(given) - 1 else middles[n] - member * HALF
            ends.append((low, high))
        name = f"{prefix}b{n + 1}-" if n else prefix
        found.append(Bay(name, span, *ends))
        found[-1].rows = rows(bay["rows"], m, tape, span, z)
    return found


def rows(given, m, tape, x, z):
    """The rows of a bay whose fronts lie between x."""
    foot, head = (z[0] + m.eb + m.gap, z[1] - m.et - m.gap) if m.inset else (z[0] + m.frame, z[1] - m.c - m.frame)
    taken = []
    for n, row in enumerate(given):
        tall = size(row.get("height"))
        if tall is not None and row["fill"] == "open":
            # Measured is the clear opening; above and below it takes room that fronts would cover.
            tall += m.beyond(m.eb if n == 0 else m.mr, n == 0)
            tall += m.beyond(m.eb if n == len(given) - 1 else m.mr, n == len(given) - 1)
        taken.append(tall)
    found = []
    for n, (row, tall) in enumerate(zip(given, share(head - foot, m.apart(m.mr), taken)), 1):
        apart = m.gap if row["fill"] == "doors" else m.apart(m.md)
        wide = (x[1] - x[0] - apart * (row["columns"] - 1)) / row["columns"]
        columns = spans(x[0], apart, [wide] * row["columns"])
        found.append(Row(n, row["fill"], row.get("shelves", 0), columns, head - tall, head))
        found[-1].in_view = row["fill"] == "open" or row["fill"] == "doors" and tape.style("doors") == "glazed"
        head -= tall + m.apart(m.mr)
    assert head + m.apart(m.mr) == foot
    edges = [z[1] - m.et]
    for middle in middles(found):
        edges += [middle + m.mr * HALF, middle - m.mr * HALF]
    edges.append(z[0] + m.eb)
    for row, high, low in zip(found, edges[::2], edges[1::2]):
        row.opening = (low, high)
    return found


def middles(found):
    """The heights of the middles of the gaps between rows."""
    return [(upper.foot + lower.head) * HALF for upper, lower in zip(found, found[1:])]
