#!/usr/bin/env python3
"""How much of each coating the invented pieces take, by another way: a Monte Carlo with NumPy.

The chain stands apart from the crates. Painted area: the faces that look at the room in the fixtures of the CAD
kernel (`tests/cad/*.json`). Its uncertainty: the law of propagation (JCGM 100, 5.1.2), with the kernel measuring
the piece again with each measurement a standard uncertainty longer and shorter, and with each guessed size at several
real ones. Volume:

    litres = area x wet film x coats / transfer efficiency + what the tool keeps

with the area normal and everything else rectangular between its limits (JCGM 101). One draw of a film serves all
surfaces and coats.

Zones: the same for the faces of each zone, and for two zones together; errors of one measurement add up with their
signs (JCGM 100, 5.2.2).

    python tests/outside/scripts/quantiles.py    # writes tests/outside/fixtures/quantiles.json

Needs `pip install cadquery-ocp numpy`. The result is committed; nothing in the build needs this script.
"""

import json
import math
import sys
from fractions import Fraction
from itertools import combinations
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

# Figures of the trade: limits, and where they come from. Common practice unless said otherwise. A clear coat flows out
# thinner than what stands in a film, such as primers and paints.
TOOLS = {
    "brush": {
        "film_um": {"primer": (75, 125), "paint": (75, 125), "topcoat": (65, 115)},
        "transfer": (0.95, 1.0),
        "kept_ml": [(5, 15)],
    },
    "foam-roller": {
        "film_um": {"primer": (50, 90), "paint": (50, 90), "topcoat": (45, 80)},
        "transfer": (0.95, 1.0),
        # A 100 mm foam cover, 35 mm across on a 15 mm core, 20 to 40 % of it wet; and the film in the tray.
        "kept_ml": [(16, 31), (10, 20)],
    },
}
# US trade sizes in litres, from 231 cubic inches of 25.4 mm.
GALLON = 231 * 25.4 ** 3 * 1e-6
CANS = {"us-8-fl-oz": GALLON / 16, "us-pint": GALLON / 8, "us-quart": GALLON / 4, "us-gallon": GALLON}

FIXTURES = {"invented-dresser": "dresser-plinth", "invented-nightstands": "nightstand-inset-legs"}

# The stage of each material in the schemes of the invented pieces.
STAGES = {"shellac-primer": "primer", "bonding-primer": "primer", "trim-enamel": "paint",
          "water-polyurethane": "topcoat"}

# The zone of each part by how its name begins; the case is the rest.
ZONES = {"top/": "top", "drawer-front-": "fronts", "leg-": "base", "plinth-": "base"}

# The measurements that a piece has besides width, depth, height and so on, by how it is made.
ALWAYS = ["width", "depth", "height", "board", "top-thickness", "overhang-front", "overhang-side", "front-thickness",
          "gap", "back-thickness"]
BY_MAKE = {"overlay": ["frame"], "inset": [], "recessed": ["back-recess"], "flush": [], "floor": [],
           "plinth": ["plinth-height", "plinth-setback"], "legs": ["leg-height", "leg-width", "leg-inset"]}


def tape_uncertainty(mm):
    """Class II tape with a hook (UK SI 2016/1153 Sch. 1I) read to a sixteenth of an inch, both rectangular."""
    permissible = 0.3 + 0.2 * math.ceil(mm / 1000) + 0.2
    return math.hypot(permissible / math.sqrt(3), 25.4 / 16 / math.sqrt(12))


# Sizes of real pieces where nobody measured, inches: low, high, and the share of pieces that have none (common practice, no
# source). Between low and high none is likelier than another.
REAL = {"board": (0.5, 1, 0), "front-thickness": (0.5, 1, 0), "top-thickness": (0.625, 1.5, 0),
        "overhang-front": (0.25, 2, 0.3), "overhang-side": (0.25, 2, 0.3), "gap": (0.0625, 0.25, 0),
        "frame": (0.25, 1, 0.25), "back-thickness": (0.125, 0.5, 0), "back-recess": (0.125, 1, 0),
        "plinth-height": (2, 6, 0), "plinth-setback": (0.25, 3, 0.3), "leg-height": (3, 10, 0),
        "leg-width": (1.25, 2.75, 0), "leg-inset": (0.25, 2, 0.3)}

# Three points and weights of Gauss and Legendre on the interval from 0 to 1: exact for an area up to the fifth power of a size.
POINTS = [(0.5 - math.sqrt(0.15), 5 / 18), (0.5, 8 / 18), (0.5 + math.sqrt(0.15), 5 / 18)]


def real_sizes(key):
    """What a size is on real pieces, mm, each with its probability."""
    low, high, none = REAL[key]
    there = [((low + (high - low) * at) * 25.4, (1 - none) * weight) for at, weight in POINTS]
    return there + ([(0.0, none)] if none else [])


def what_counts(piece):
    """What the areas of a piece rest on; styles that are written down and those that are usual alike."""
    tape = Tape(piece)
    styles = {key: tape.style(key) for key in STYLES}
    return piece["furniture"], piece["readings"], piece["counts"], piece["bays"], styles


def zone_of(face):
    return next((zone for start, zone in ZONES.items() if face.startswith(start)), "body")


def outside_areas(piece):
    """What looks at the room, in m2: of each zone, and of all under no name."""
    assert not worked_ends(piece), "an edge of the piece counts otherwise than it measures"
    areas = {None: 0.0}
    for face, senses in exposed(*construct(piece)).items():
        for key in (None, zone_of(face)):
            areas[key] = areas.get(key, 0.0) + senses.get("outside", 0.0) * 1e-6
    return areas


def changed(piece, key, mm):
    copy = json.loads(json.dumps(piece))
    reading = {"typed": f"{float(mm):.9f}", "unit": "mm"}
    if isinstance(key, int):
        copy["bays"][0]["rows"][key]["height"] = reading
    else:
        copy["readings"][key] = reading
    return copy


def area_steps(piece):
    """How much larger each zone, and all, is for each measurement that is a standard uncertainty larger; of a size that nobody
    measured, a step for each real size, so that their squares add up to the mean square of what the area is off by."""
    tape = Tape(piece)
    keys = ALWAYS + [key for make in ("fronts", "back", "base") for key in BY_MAKE[tape.style(make)]]
    (bay,) = piece["bays"]
    assert "width" not in bay, "a bay alone takes all there is"
    terms, guessed = [], []
    for key in keys:
        if key in piece["readings"]:
            mm = float(tape[key])
            terms.append((key, mm, tape_uncertainty(mm)))
        else:
            guessed.append(key)
    for number, row in enumerate(bay["rows"]):
        if "height" in row:
            mm = float(size(row["height"]))
            terms.append((number, mm, tape_uncertainty(mm)))
    steps = []
    for key, mm, u in terms:
        longer, shorter = (outside_areas(changed(piece, key, Fraction(mm + sign * u))) for sign in (1, -1))
        steps.append({zone: (longer[zone] - shorter[zone]) / 2 for zone in longer})
    now = outside_areas(piece)
    for key in guessed:
        for mm, probability in real_sizes(key):
            real = outside_areas(changed(piece, key, Fraction(mm)))
            steps.append({zone: math.sqrt(probability) * (real[zone] - now[zone]) for zone in now})
    return steps


def uncertainty(steps, *zones):
    """The standard uncertainty of zones together; without a name, of all."""
    return math.sqrt(sum(sum(step[zone] for zone in zones or (None,)) ** 2 for step in steps))


def of_zones(fixture, steps, count):
    """The area of each zone, and how uncertain it is alone and together with each other zone."""
    areas = {}
    for face in fixture["faces"]:
        if "outside" in face["senses"]:
            zone = zone_of(face["face"])
            areas[zone] = areas.get(zone, 0.0) + face["senses"]["outside"]
    zones = sorted(areas)
    together = [(*pair, uncertainty(steps, *pair)) for pair in combinations(zones, 2)]
    return {
        "zones": [{"zone": zone, "painted_m2": round(areas[zone] * count, 9),
                   "painted_u_m2": round(uncertainty(steps, zone) * count, 9)} for zone in zones],
        "pairs": [{"zones": [one, other], "painted_u_m2": round(u * count, 9)} for one, other, u in together],
    }


def litres(random, area, u, tool, stage, coats):
    draw = lambda limits: random.uniform(*limits, TRIALS)
    areas = numpy.maximum(random.normal(area, u, TRIALS), 0.0)
    films = draw(tool["film_um"][stage]) * 1e-3  # litres on a square metre
    kept = sum(draw(limits) for limits in tool["kept_ml"]) * 1e-3
    return areas * films * coats / draw(tool["transfer"]) + kept


def main():
    random = numpy.random.default_rng(SEED)
    pieces = []
    for given in json.loads(INVENTED.read_text())["pieces"]:
        fixture = json.loads((CAD / f"{FIXTURES[given['id']]}.json").read_text())
        piece = invented(given["id"])
        assert what_counts(fixture["piece"]) == what_counts(piece), "the fixture is of other measurements"
        scheme = given["scheme"]
        assert scheme["ground"] == "sealed" and scheme["basis"] == "wet-film"
        assert not given.get("zones"), "a zone has a scheme of its own"
        each = sum(face["senses"].get("outside", 0.0) for face in fixture["faces"])
        area = each * given["count"]
        steps = area_steps(piece)
        u = uncertainty(steps) * given["count"]
        stages = []
        for coats in scheme["layers"]:
            stage = STAGES[coats["material"]]
            assert coats.keys() == {"material", "coats", "tool", "can"}, "a layer is thinned, split or of a part can"
            for tool, figures in TOOLS.items():
                drawn = litres(random, area, u, figures, stage, coats["coats"])
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
                       "painted_m2": round(area, 9), "painted_u_m2": round(u, 9),
                       **of_zones(fixture, steps, given["count"]), "stages": stages})
    result = {"made_with": f"NumPy {numpy.__version__}, {TRIALS} trials, seed {SEED}", "units": "m2 and litres",
              "pieces": pieces}
    path = OUTSIDE / "fixtures" / "quantiles.json"
    path.parent.mkdir(exist_ok=True)
    path.write_text(json.dumps(result, indent=1) + "\n")
    for piece in pieces:
        print(piece["id"], piece["painted_m2"], piece["painted_u_m2"])
        for zone in piece["zones"]:
            print(" ", zone["zone"], zone["painted_m2"], zone["painted_u_m2"])


if __name__ == "__main__":
    main()
