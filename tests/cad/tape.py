"""Tape readings, and what a piece has where nothing was measured: `Usual sizes` of `CONSTRUCTION.md`."""

import re
from fractions import Fraction

from profiles import girth, likely_width, quarter

# Sizes in millimetres.
UNITS = {"in": Fraction(254, 10), "ft": Fraction(3048, 10), "mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000)}

CASES = ("chest-of-drawers", "dresser", "nightstand", "sideboard", "wardrobe", "bookcase", "open-shelf",
         "glazed-cabinet", "hutch")
TABLES = ("desk", "vanity", "console", "side-table", "bench")
KINDS = (*CASES, "pedestal-desk", *TABLES, "blanket-box", "headboard", "frame")


def by_kind(text):
    """`dresser 60 18; ...` as a table of a kind's sizes."""
    return {words[0]: words[1:] for words in map(str.split, text.split(";"))}


CARCASS = by_kind("dresser 60 18 32; nightstand 20 16 26; chest-of-drawers 36 18 48; sideboard 60 18 34;"
                  "wardrobe 40 22 72; bookcase 36 12 60; open-shelf 36 12 60; glazed-cabinet 36 14 60;"
                  "hutch 48 18 34; blanket-box 40 18 20; headboard 60 - 48; frame 24 - 36")
TOPS = by_kind("pedestal-desk 60 28 30; desk 48 24 30; vanity 42 18 30; console 48 14 30; side-table 20 20 24;"
               "bench 42 14 18")

# Inches; common practice, no source.
USUAL = {
    "board": "3/4", "front-thickness": "3/4", "frame-thickness": "3/4", "apron-thickness": "3/4", "apron-rail": "3/4",
    "member-thickness": "3/4", "top-thickness": "1", "overhang-front": "1", "overhang-side": "1",
    "rail-thickness": "1", "stretcher-size": "1", "gap": "1/8", "frame": "1/2", "back-thickness": "1/4",
    "back-recess": "1/2", "plinth-height": "4", "plinth-setback": "2", "leg-inset": "1/2", "leg-foot": "7/8",
    "leg-splay": "1 1/2", "foot-width": "1 1/2", "cutout-height": "2", "stile": "1 1/2", "frame-rail": "1 1/2",
    "crown-height": "2", "crown-projection": "1 1/2", "edge-height": "1/2", "front-edge-size": "1/4", "lip": "3/8",
    "lip-thickness": "3/8", "door-stile": "2 1/4", "door-rail": "2 1/4", "panel-recess": "1/4",
    "panel-thickness": "1/4", "panel-raise": "1/4", "sticking-width": "1/4", "panel-bevel": "1 1/2",
    "applied-inset": "1 1/2", "applied-width": "3/4", "applied-height": "3/8", "box-thickness": "1/2",
    "column-diameter": "1 1/4", "flute-radius": "1/16", "apron-height": "4", "apron-setback": "1/4",
    "apron-rise": "1", "stretcher-height": "4", "shelf-height": "6", "pedestal-width": "15", "modesty-foot": "8",
    "upper-depth": "12", "upper-height": "40", "headboard-rail": "4", "panel-foot": "16", "slat-width": "2",
    "member-width": "3",
}
# The usual option of each style, and the kinds that have another.
STYLES = {
    "fronts": ("overlay", {}), "front-edge": ("square", {}), "face-frame": ("none", {}),
    "back": ("recessed", {"open-shelf": "none"}),
    "base": ("plinth", {"bookcase": "floor", "open-shelf": "floor", "nightstand": "legs", "blanket-box": "bun-feet"}),
    "taper": ("four", {}), "top-edge": ("square", {}), "crown": ("none", {"wardrobe": "ogee"}),
    "doors": ("slab", {"sideboard": "flat-panel", "wardrobe": "flat-panel", "hutch": "flat-panel",
                       "glazed-cabinet": "glazed"}),
    "sticking": ("square", {}), "applied": ("none", {}), "corner-columns": ("none", {}), "drawer-boxes": ("hidden", {}),
    "legs": ("tapered", {"bench": "square"}), "apron": ("straight", {}), "stretchers": ("none", {}),
    "lower-shelf": ("none", {}), "headboard": ("panel", {}), "frame-profile": ("ogee", {}),
}
COUNTS = {"drawers": (1, {"bench": 0}), "slats": (9, {}), "flutes": (5, {})}


def number(text):
    """`33`, `33.5`, `7/8` or `33 7/8` as an exact fraction."""
    return sum((Fraction(word) for word in text.split()), Fraction(0))


def millimetres(typed, unit):
    """A tape reading such as `4' 10 1/2"`, `85.1 cm` or, with the unit of the tape, `33 7/8`."""
    signs = {"'": "ft", '"': "in"}
    found = re.findall(r"""([0-9][0-9./ ]*)\s*('|"|in|ft|mm|cm|m)?""", typed)
    assert found, typed
    return sum(number(value) * UNITS[signs.get(sign, sign) or unit] for value, sign in found)


def size(reading):
    """A reading of a save file in millimetres, or nothing where there is none."""
    return millimetres(reading["typed"], reading["unit"]) if reading else None


def modern(piece):
    """A piece of save format 1 in the words of format 2; a piece of format 2 with all that it may leave out."""
    given = {"styles": {}, "counts": {}, "bays": [], "upper": [], **piece}
    if "rows" in given:
        rows = [{"fill": "drawers", "columns": row["columns"], "shelves": 0,
                 **({"height": row["height"]} if "height" in row else {})} for row in given.pop("rows")]
        given["styles"] = {key: given.pop(key) for key in ("fronts", "back", "base")}
        given["bays"] = [{"rows": rows}]
    order = ("id", "name", "count", "furniture", "readings", "styles", "counts", "bays", "upper")
    assert given.keys() == set(order), given.keys() - set(order)
    return {key: given[key] for key in order}


class Tape:
    """What is known of a piece: sizes in millimetres, styles and counts, each measured or else usual."""

    def __init__(self, piece):
        self.kind = piece["furniture"]
        self.readings, self.styles, self.counts = piece["readings"], piece.get("styles", {}), piece.get("counts", {})
        assert self.kind in KINDS, self.kind
        for given, known in ((self.styles, STYLES), (self.counts, COUNTS)):
            assert given.keys() <= known.keys(), given.keys() - known.keys()

    def __getitem__(self, key):
        return size(self.readings[key]) if key in self.readings else self.usual(key)

    def usual(self, key):
        """The size that a piece has where it was not measured."""
        if key == "edge-width" and self.style("top-edge") == "measured" and self.kind != "frame":
            return max(likely_width(self["edge-girth"], self["top-thickness"]), Fraction(1))
        if key == "edge-width":
            return self["edge-height"]
        if key == "edge-girth":
            width, thick = "edge-width" in self.readings, self["top-thickness"]
            return Fraction(girth([quarter((0, 0), (self["edge-width"], thick), True)])) if width else thick
        if key == "column-diameter":
            return min(number(self.usual_inches(key)) * UNITS["in"], self["stile"] * 5 / 6)
        if key == "frame" and self.style("face-frame") == "frame" and self.style("corner-columns") != "none":
            return max(number(self.usual_inches(key)) * UNITS["in"], (self["stile"] + self["column-diameter"]) / 2)
        return number(self.usual_inches(key)) * UNITS["in"]

    def usual_inches(self, key):
        """The same as it stands in the table."""
        bun = self.style("base") == "bun-feet"
        if key == "leg-width":
            return "2 1/2" if self.kind == "headboard" else "3" if bun else "1 1/2"
        if key == "leg-height":
            return "2" if bun else "6"
        if key in ("width", "depth"):
            return CARCASS[self.kind][("width", "depth").index(key)]
        if key == "height":
            return (CARCASS.get(self.kind) or TOPS[self.kind])[2]
        if key in ("top-width", "top-depth"):
            return TOPS[self.kind][("top-width", "top-depth").index(key)]
        if key == "plinth-setback" and self.style("base") != "plinth":
            return "0"
        return USUAL[key]

    def style(self, key):
        """The option of a style."""
        usual, of_kind = STYLES[key]
        return self.styles.get(key, of_kind.get(self.kind, usual))

    def count(self, key):
        """A count."""
        usual, of_kind = COUNTS[key]
        return self.counts.get(key, of_kind.get(self.kind, usual))
