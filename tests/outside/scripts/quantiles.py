#!/usr/bin/env python3
"""How much of each coating the invented pieces take, by another way: a Monte Carlo with NumPy.

The chain stands apart from the crates. Painted area: the faces that look at the room in the fixtures of the CAD
kernel (`tests/cad/*.json`). Its uncertainty: the law of propagation (JCGM 100, 5.1.2), with the kernel measuring
the piece again with each measurement a standard uncertainty longer and shorter. Volume:

    litres = area x wet film x coats / transfer efficiency + what the tool keeps

with the area normal and everything else rectangular between its limits (JCGM 101). One draw of a film serves all
surfaces and coats.

    python tests/outside/scripts/quantiles.py    # writes tests/outside/fixtures/quantiles.json

Needs `pip install cadquery-ocp numpy`. The result is committed; nothing in the build needs this script.
"""

import json
import math
import sys
from fractions import Fraction
from pathlib import Path

import numpy

OUTSIDE = Path(__file__).resolve().parent.parent
CAD = OUTSIDE.parent / "cad"
sys.path.insert(0, str(CAD))
from construction import construct, worked_ends  # noqa: E402
from kernel import exposed  # noqa: E402
from pieces import INVENTED, invented  # noqa: E402
from tape import STYLES, Tape, size  # noqa: E402

TRIALS = 4_000_000
SEED = 4711

# Figures of the trade: limits, and where they come from. Common practice unless said otherwise.
TOOLS = {
    "brush": {
        "film_um": (75, 125),
        "transfer": (0.95, 1.0),
        "kept_ml": [(5, 15)],
    },
    "foam-roller": {
        "film_um": (50, 90),
        "transfer": (0.95, 1.0),
        # A 100 mm foam cover, 35 mm across on a 15 mm core, 20 to 40 % of it wet; and the film in the tray.
        "kept_ml": [(16, 31), (10, 20)],
    },
}
# US trade sizes in litres, from 231 cubic inches of 25.4 mm.
GALLON = 231 * 25.4 ** 3 * 1e-6
CANS = {"us-8-fl-oz": GALLON / 16, "us-pint": GALLON / 8, "us-quart": GALLON / 4, "us-gallon": GALLON}

FIXTURES = {"invented-dresser": "dresser-plinth", "invented-nightstands": "nightstand-inset-legs"}

# The measurements that a piece has besides width, depth, height and so on, by how it is made.
ALWAYS = ["width", "depth", "height", "board", "top-thickness", "overhang-front", "overhang-side", "front-thickness",
          "gap", "back-thickness"]
BY_MAKE = {"overlay": ["frame"], "inset": [], "recessed": ["back-recess"], "flush": [], "floor": [],
           "plinth": ["plinth-height", "plinth-setback"], "legs": ["leg-height", "leg-width", "leg-inset"]}


def tape_uncertainty(mm):
    """Class II tape with a hook (UK SI 2016/1153 Sch. 1I) read to a sixteenth of an inch, both rectangular."""
    permissible = 0.3 + 0.2 * math.ceil(mm / 1000) + 0.2
    return math.hypot(permissible / math.sqrt(3), 25.4 / 16 / math.sqrt(12))


def guess_uncertainty(mm):
    """What nobody measured may be a fifth more or less (common practice, no source)."""
    return 0.2 * mm / math.sqrt(3)


def what_counts(piece):
    """What the areas of a piece rest on; styles that are written down and those that are usual alike."""
    tape = Tape(piece)
    styles = {key: tape.style(key) for key in STYLES}
    return piece["furniture"], piece["readings"], piece["counts"], piece["bays"], styles


def outside_area(piece):
    assert not worked_ends(piece), "an edge of the piece counts otherwise than it measures"
    return sum(senses.get("outside", 0.0) for senses in exposed(*construct(piece)).values()) * 1e-6


def changed(piece, key, mm):
    copy = json.loads(json.dumps(piece))
    reading = {"typed": f"{float(mm):.9f}", "unit": "mm"}
    if isinstance(key, int):
        copy["bays"][0]["rows"][key]["height"] = reading
    else:
        copy["readings"][key] = reading
    return copy


def area_uncertainty(piece):
    tape = Tape(piece)
    keys = ALWAYS + [key for make in ("fronts", "back", "base") for key in BY_MAKE[tape.style(make)]]
    (bay,) = piece["bays"]
    assert "width" not in bay, "a bay alone takes all there is"
    terms = []
    for key in keys:
        mm = float(tape[key])
        terms.append((key, mm, tape_uncertainty(mm) if key in piece["readings"] else guess_uncertainty(mm)))
    for number, row in enumerate(bay["rows"]):
        if "height" in row:
            mm = float(size(row["height"]))
            terms.append((number, mm, tape_uncertainty(mm)))
    total = 0.0
    for key, mm, u in terms:
        longer, shorter = (outside_area(changed(piece, key, Fraction(mm + sign * u))) for sign in (1, -1))
        total += ((longer - shorter) / 2) ** 2
    return math.sqrt(total)


def litres(random, area, u, tool, coats):
    draw = lambda limits: random.uniform(*limits, TRIALS)
    areas = numpy.maximum(random.normal(area, u, TRIALS), 0.0)
    films = draw(tool["film_um"]) * 1e-3  # litres on a square metre
    kept = sum(draw(limits) for limits in tool["kept_ml"]) * 1e-3
    return areas * films * coats / draw(tool["transfer"]) + kept


def main():
    random = numpy.random.default_rng(SEED)
    pieces = []
    for given in json.loads(INVENTED.read_text())["pieces"]:
        fixture = json.loads((CAD / f"{FIXTURES[given['id']]}.json").read_text())
        piece = invented(given["id"])
        assert what_counts(fixture["piece"]) == what_counts(piece), "the fixture is of other measurements"
        assert given["scheme"]["ground"] == "sealed" and given["scheme"]["basis"] == "wet-film"
        each = sum(face["senses"].get("outside", 0.0) for face in fixture["faces"])
        area = each * given["count"]
        u = area_uncertainty(piece) * given["count"]
        stages = []
        for stage in ("primer", "paint", "topcoat"):
            coats = given["scheme"][stage]
            for tool, figures in TOOLS.items():
                drawn = litres(random, area, u, figures, coats["coats"])
                low, likely, high = (float(v) for v in numpy.quantile(drawn, [0.05, 0.5, 0.95]))
                # The cans of the scheme are far too small or too large; volumes near the likely one tell more.
                volumes = [*CANS.values(), *(round(share * likely, 3) for share in (0.85, 0.95, 1.05, 1.15))]
                enough = [{"litres": volume, "probability": round(float(numpy.mean(drawn <= volume)), 5)}
                          for volume in volumes]
                stages.append({
                    "stage": stage, "tool": tool, "coats": coats["coats"], "can": coats["can"],
                    "low": round(low, 6), "likely": round(likely, 6), "high": round(high, 6),
                    "can_enough": round(float(numpy.mean(drawn <= CANS[coats["can"]])), 5), "enough": enough,
                })
        pieces.append({"id": given["id"], "cad": FIXTURES[given["id"]], "count": given["count"],
                       "painted_m2": round(area, 9), "painted_u_m2": round(u, 9), "stages": stages})
    result = {"made_with": f"NumPy {numpy.__version__}, {TRIALS} trials, seed {SEED}", "units": "m2 and litres",
              "pieces": pieces}
    path = OUTSIDE / "fixtures" / "quantiles.json"
    path.parent.mkdir(exist_ok=True)
    path.write_text(json.dumps(result, indent=1) + "\n")
    for piece in pieces:
        print(piece["id"], piece["painted_m2"], piece["painted_u_m2"])


if __name__ == "__main__":
    main()
