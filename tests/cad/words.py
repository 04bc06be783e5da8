"""Short ways to write down an invented piece."""

import re


def readings(unit, sizes):
    """`width 34 5/16, depth 17 7/8` as readings of a save file."""
    pairs = sorted(words.strip().split(" ", 1) for words in sizes.split(","))
    assert len(dict(pairs)) == len(pairs), sizes
    return {key: {"typed": typed, "unit": unit} for key, typed in pairs}


def row(fill, columns=1, height=None, shelves=0):
    """A row of a bay; its height as typed."""
    return {"fill": fill, "columns": columns, "shelves": shelves, **({"height": height} if height else {})}


def bay(*rows, width=None):
    """A bay; its width as typed."""
    return {**({"width": width} if width else {}), "rows": list(rows)}


def piece(name, kind, unit, sizes, bays=(), upper=(), styles="", counts=None):
    """A piece, with `styles` such as `fronts inset, back flush`, and all that was typed in one unit."""
    def measured(given, key):
        return {**given, key: {"typed": given[key], "unit": unit}} if key in given else given

    def with_unit(all_bays):
        return [{**measured(each, "width"), "rows": [measured(one, "height") for one in each["rows"]]}
                for each in all_bays]

    return {
        "id": re.sub("[^a-z0-9]+", "-", name.lower()), "name": name, "count": 1, "furniture": kind,
        "readings": readings(unit, sizes),
        "styles": dict(words.split() for words in styles.split(",")) if styles else {}, "counts": counts or {},
        "bays": with_unit(bays), "upper": with_unit(upper),
    }
