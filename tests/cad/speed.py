#!/usr/bin/env python3
"""How long the CAD kernel and the mesh library take to find out what of each piece is covered.

Timed are the making of all solids and their fuse (kernel) or union (mesh), the shortest of a few runs; not timed are
Python's own construction of the parts, and the dividing of faces by what they look into.

    python tests/cad/speed.py [--ours FILE] [NAME ...]

FILE is JSON with the seconds that another program takes, by the name of the piece; the table then has ratios too.
"""

import argparse
import json
from pathlib import Path
from time import perf_counter

from expose import built
from kernel import fuse
from mesh import joined
from pieces import PIECES

RUNS = 3


def seconds(work, parts):
    """The shortest time of a few runs."""
    times = []
    for _ in range(RUNS):
        begin = perf_counter()
        work(parts)
        times.append(perf_counter() - begin)
    return min(times)


def surface(parts):
    """The mesh library puts work off until it is asked for something."""
    return joined(parts).surface_area()


def main():
    """Prints the table."""
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--ours", type=Path, metavar="FILE")
    asked.add_argument("names", nargs="*", metavar="NAME")
    asked = asked.parse_args()
    ours = json.loads(asked.ours.read_text()) if asked.ours and asked.ours.exists() else {}
    more = f" {'ours, s':>10} {'kernel/ours':>12} {'mesh/ours':>10}" if ours else ""
    print(f"{'piece':<26} {'parts':>5} {'kernel, s':>10} {'mesh, s':>10}{more}")
    for name in asked.names or ["block", *PIECES]:
        _, parts, _, _ = built(name)
        kernel, mesh = seconds(fuse, parts), seconds(surface, parts)
        line = f"{name:<26} {len(parts):5} {kernel:10.4f} {mesh:10.4f}"
        if name in ours:
            line += f" {ours[name]:10.6f} {kernel / ours[name]:12.1f} {mesh / ours[name]:10.1f}"
        print(line, flush=True)


if __name__ == "__main__":
    main()
