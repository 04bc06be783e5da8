#!/usr/bin/env python3
"""Is the sample pot enough for one nightstand, two coats with the brush? A Monte Carlo with NumPy.

The area is that of the CAD kernel (`tests/cad/nightstand-inset-legs.json`). Its uncertainty is half of what
`tests/outside/scripts/quantiles.py` found for the pair. The volume is

    litres = area x wet film x coats / transfer efficiency + what the brush keeps

with the area normal and everything else rectangular between the limits of `quantiles.py` (JCGM 101).

    python tests/journeys/scripts/nightstand.py    # writes tests/journeys/fixtures/nightstand.json

Needs `pip install numpy`. The result is committed; nothing in the build needs this script.
"""

import json
from pathlib import Path

import numpy

JOURNEYS = Path(__file__).resolve().parent.parent
TESTS = JOURNEYS.parent

TRIALS = 4_000_000
SEED = 4712
COATS = 2
FILM_UM = (75, 125)
TRANSFER = (0.95, 1.0)
KEPT_ML = (5, 15)
# 8 US fluid ounces in litres, from 231 cubic inches of 25.4 mm.
POT = 231 * 25.4 ** 3 * 1e-6 / 16


def main():
    kernel = json.loads((TESTS / "cad" / "nightstand-inset-legs.json").read_text())
    area = sum(face["senses"].get("outside", 0.0) for face in kernel["faces"])
    pairs = json.loads((TESTS / "outside" / "fixtures" / "quantiles.json").read_text())["pieces"]
    pair = next(piece for piece in pairs if piece["cad"] == kernel["name"])
    assert abs(pair["painted_m2"] - pair["count"] * area) < 1e-6, "the fixtures are of different pieces"
    u = pair["painted_u_m2"] / pair["count"]

    random = numpy.random.default_rng(SEED)
    areas = numpy.maximum(random.normal(area, u, TRIALS), 0.0)
    films = random.uniform(*FILM_UM, TRIALS) * 1e-3  # litres on a square metre
    kept = random.uniform(*KEPT_ML, TRIALS) * 1e-3
    litres = areas * films * COATS / random.uniform(*TRANSFER, TRIALS) + kept

    result = {
        "made_with": f"NumPy {numpy.__version__}, {TRIALS} trials, seed {SEED}",
        "units": "m2 and litres",
        "painted_m2": round(area, 9),
        "likely": round(float(numpy.quantile(litres, 0.5)), 6),
        "probability": round(float(numpy.mean(litres <= POT)), 5),
    }
    path = JOURNEYS / "fixtures" / "nightstand.json"
    path.write_text(json.dumps(result, indent=1) + "\n")
    print(path.read_text())


if __name__ == "__main__":
    main()
