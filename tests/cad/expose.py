#!/usr/bin/env python3
"""Measures the exposed faces of invented pieces with a CAD kernel and writes them down as fixtures.

The kernel is Open CASCADE Technology through its `cadquery-ocp` bindings. Each piece is built here a second
time, from the written description of the construction in `CONSTRUCTION.md`, in exact fractions of a millimetre. All
solids of a piece go through one general fuse; what is left of each face of each solid is found in the history of
that operation, and a piece of a face that two solids share is no surface any more. Areas are those of the kernel.

    python tests/cad/expose.py [NAME ...]            # writes tests/cad/*.json anew
    python tests/cad/expose.py --compare [NAME ...]  # fails if a committed fixture would change by more than 1e-9 m2

Needs `pip install cadquery-ocp`. Nothing in the build needs this script; the fixtures are committed.
"""

import json
import re
import sys
from importlib.metadata import version
from pathlib import Path

from by_hand import under_the_top
from construction import construct, worked_ends
from kernel import exposed
from pieces import BLOCK, PIECES
from solids import block
from tape import size

HERE = Path(__file__).resolve().parent


def square_metres(value):
    """From square millimetres; never minus nothing."""
    return round(float(value) * 1e-6, 12) + 0.0


def group(face):
    """The kind of the part that a face belongs to."""
    return re.sub(r"(-\d+)*/.*", "", face)


def built(name):
    """What a fixture says of its piece; its parts, its spaces and how many times some faces count."""
    if name == "block":
        spans = [(0, size(BLOCK["block"][key])) for key in ("width", "depth", "height")]
        return BLOCK, {"board-1": block(*spans)}, [], {}
    piece = PIECES[name]
    return {"piece": piece}, *construct(piece), worked_ends(piece)


def fixture(name):
    """The fixture of a piece."""
    given, parts, spaces, factors = built(name)
    found = exposed(parts, spaces)
    assert factors.keys() <= found.keys()
    rows, groups, total = [], {}, 0.0
    for face, senses in found.items():
        factor = float(factors.get(face, 1))
        senses = {sense: value * factor for sense, value in senses.items() if value > 0.01}
        left = sum(senses.values())
        total += left
        groups[group(face)] = groups.get(group(face), 0.0) + left
        rows.append({"face": face, "exposed": square_metres(left),
                     "senses": {sense: square_metres(value) for sense, value in senses.items()}})
    closed = under_the_top(given["piece"]) if "piece" in given else None
    for sense, value in (closed or {}).items():
        assert abs(found["top/bottom"].get(sense, 0.0) - float(value)) < 1e-3, (name, sense)
    by_hand = {"top/bottom": {sense: square_metres(value) for sense, value in closed.items()}} if closed else None
    return {
        "name": name,
        "kernel": f"Open CASCADE Technology, cadquery-ocp {version('cadquery-ocp')}",
        "units": "m2",
        **given,
        "faces": rows,
        "groups": {key: square_metres(value) for key, value in groups.items()},
        "total": square_metres(total),
        **({"by_hand": by_hand} if by_hand else {}),
    }


def text(value, depth=0):
    """JSON with one face, reading or row a line, so that a change can be read."""
    flat = json.dumps(value)
    entries = value.items() if isinstance(value, dict) else value if isinstance(value, list) else ()
    if not entries or len(flat) <= 100 and depth > 1 or isinstance(value, dict) and "face" in value:
        return flat
    inner = []
    for entry in entries:
        key, held = (f"{json.dumps(entry[0])}: ", entry[1]) if isinstance(value, dict) else ("", entry)
        inner.append(" " * (depth + 1) + key + text(held, depth + 1))
    before, after = "{}" if isinstance(value, dict) else "[]"
    return before + "\n" + ",\n".join(inner) + "\n" + " " * depth + after


def numbers(value, place=""):
    """Every number of a fixture with its place, but for what other witnesses wrote there."""
    if isinstance(value, dict):
        for key, inner in value.items():
            if key != "mesh_total":
                yield from numbers(inner, f"{place}/{key}")
    elif isinstance(value, list):
        for key, inner in enumerate(value):
            yield from numbers(inner, f"{place}/{inner.get('face', key) if isinstance(inner, dict) else key}")
    elif isinstance(value, float):
        yield place, value


def main():
    """Writes the fixtures, or compares them."""
    compare = "--compare" in sys.argv[1:]
    names = [name for name in sys.argv[1:] if name != "--compare"] or ["block", *PIECES]
    for name in names:
        value, path = fixture(name), HERE / f"{name}.json"
        before = json.loads(path.read_text()) if path.exists() else None
        if compare:
            assert before and before.get("piece") == value.get("piece"), f"{path.name}: another piece than committed"
            old, new = dict(numbers(before)), dict(numbers(value))
            assert old.keys() == new.keys(), f"{path.name}: other faces than committed"
            worst = max(abs(old[key] - new[key]) for key in new)
            assert worst < 1e-9, f"{path.name}: differs by {worst} m2"
        else:
            value |= {key: before[key] for key in ("mesh_total", "mesh") if before and key in before}
            path.write_text(text(value) + "\n")
        print(f"{path.name}: {len(value['faces'])} faces, {value['total']:.6f} m2", flush=True)


if __name__ == "__main__":
    main()
