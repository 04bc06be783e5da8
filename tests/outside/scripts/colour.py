#!/usr/bin/env python3
"""Colours by other libraries: conversions, CIEDE2000, and what the errors of weighing do to a mix.

- The 34 pairs of Table 1 of Sharma, Wu and Dalal, "The CIEDE2000 Color-Difference Formula: Implementation Notes,
  Supplementary Test Data, and Mathematical Observations", Color Research and Application 30 (2005) 21-30. The numbers
  are read out of the test data that colour-science carries; the script stops if what colour-science and scikit-image
  work out for any of them is not what is printed, to its four decimals.
- Random pairs: near each other, far apart, greys, hues on both sides of red, opposite hues. Both libraries must agree.
- Swatches turned into light, tristimulus values and CIELAB by colour-science with the matrix derived from the
  primaries and the white of IEC 61966-2-1, and with the four decimals that the standard prints.
- Mixes by single-constant Kubelka-Munk, written down here once more with numpy, and the quantiles of their drift from
  a million random draws of the errors of weighing, colours and differences by colour-science.

    python tests/outside/scripts/colour.py         # writes tests/outside/fixtures/colour.json

Needs `pip install colour-science scikit-image`. The result is committed; nothing in the build needs this script.
"""

import inspect
import json
import re
import sys
from pathlib import Path

# This file has the name of the library; without its own folder in the path, the library is found.
sys.path.pop(0)

import colour
import numpy
import skimage
from colour.difference.tests import test_delta_e
from skimage.color import deltaE_ciede2000

OUTSIDE = Path(__file__).resolve().parent.parent
FIXTURE = OUTSIDE / "fixtures" / "colour.json"
SEED = 4711
DRAWS = 1_000_000
SURFACE = 0.04

rng = numpy.random.default_rng(SEED)
space = colour.models.RGB_COLOURSPACE_sRGB.copy()
space.use_derived_matrix_RGB_to_XYZ = True
space.use_derived_matrix_XYZ_to_RGB = True
WHITE = space.whitepoint


def opposite(lab):
    """Pairs whose hues are within rounding of 180 degrees; there the formula has a step of its own."""
    lab_1, lab_2 = lab[:, 0], lab[:, 1]
    c_bar = (numpy.hypot(lab_1[:, 1], lab_1[:, 2]) + numpy.hypot(lab_2[:, 1], lab_2[:, 2])) / 2
    g = 0.5 * (1 - numpy.sqrt(c_bar**7 / (c_bar**7 + 25.0**7)))
    h_1 = numpy.degrees(numpy.arctan2(lab_1[:, 2], lab_1[:, 1] * (1 + g)))
    h_2 = numpy.degrees(numpy.arctan2(lab_2[:, 2], lab_2[:, 1] * (1 + g)))
    turn = numpy.abs(h_1 - h_2) % 360
    return numpy.abs(turn - 180) < 1e-6


def sharma():
    text = inspect.getsource(test_delta_e.TestDelta_E_CIE2000.test_delta_E_CIE2000_Sharma2004)
    # The fourteenth pair is commented out there, because NumPy's last bit decides it on some systems.
    text = re.sub(r"(?m)^(\s*)# (?=\[\s*-?\d|-?\d|\])", r"\1", text)
    arrays = {}
    for name, body in re.findall(r"(Lab_1|Lab_2|d_E)\s*=\s*np\.array\(\s*(\[.*?\])\s*,?\s*\)", text, re.S):
        body = re.sub(r"#.*", "", body)
        arrays[name] = numpy.array(json.loads(re.sub(r",\s*\]", "]", body)), dtype=float)
    return arrays["Lab_1"], arrays["Lab_2"], arrays["d_E"]


def near(lab, size):
    return numpy.stack([lab, lab + rng.normal(0, size, lab.shape)], axis=1)


def random_pairs():
    def lab(n):
        return numpy.column_stack([rng.uniform(0, 100, n), rng.uniform(-90, 90, (n, 2))])

    far = numpy.stack([lab(60), lab(60)], axis=1)
    greys = near(lab(40), 0.0)
    greys[:, 0, 1:] = 0.0
    greys[:, 1, 0] += rng.uniform(-5, 5, 40)
    greys[20:, 1, 1:] = 0.0
    almost = near(numpy.column_stack([rng.uniform(0, 100, 30), rng.normal(0, 0.01, (30, 2))]), 0.01)
    angle = rng.normal(0, 0.1, (60, 2))
    chroma = rng.uniform(0.1, 100, (60, 2))
    red = numpy.stack([rng.uniform(0, 100, (60, 2)), chroma * numpy.cos(angle), chroma * numpy.sin(angle)], axis=2)
    hue = rng.uniform(0, 2 * numpy.pi, (60, 1)) + numpy.array([[0, numpy.pi]]) + rng.normal(0, 0.02, (60, 2))
    across = numpy.stack([rng.uniform(0, 100, (60, 2)), chroma * numpy.cos(hue), chroma * numpy.sin(hue)], axis=2)
    blue = near(numpy.column_stack([rng.uniform(10, 60, 40), rng.normal(5, 10, 40), rng.uniform(-90, -30, 40)]), 3)
    return numpy.concatenate([near(lab(60), 0.5), near(lab(40), 3), far, greys, almost, red, across, blue])


def linear(rgb):
    return colour.models.eotf_sRGB(numpy.asarray(rgb) / 255.0)


def lab_of(light):
    return colour.XYZ_to_Lab(light @ space.matrix_RGB_to_XYZ.T, WHITE)


def strength(rgb):
    film = SURFACE + (1 - SURFACE) * linear(rgb)
    return (1 - film) ** 2 / (2 * film)


def blend(strengths, amounts):
    """Amounts have one row for each draw."""
    ratio = amounts @ strengths / amounts.sum(axis=1, keepdims=True)
    return (1 + ratio - numpy.sqrt(ratio**2 + 2 * ratio) - SURFACE) / (1 - SURFACE)


def poured(amounts, step, accuracy, tared):
    n = len(amounts)

    def rounding(k):
        return rng.uniform(-step / 2, step / 2, (DRAWS, k))

    if tared:
        errors = rounding(n) - rounding(n)
    else:
        errors = numpy.diff(rounding(n + 1), axis=1)
    return numpy.maximum(amounts + errors + amounts * rng.uniform(-accuracy, accuracy, (DRAWS, n)), 0)


def mixes():
    named = [
        ([[245, 240, 228], [70, 110, 70], [75, 55, 40]], [350.0, 100.0, 50.0]),
        ([[250, 250, 250], [20, 20, 20]], [450.0, 2.0]),
        ([[255, 255, 255], [0, 0, 0]], [500.0, 25.0]),
        ([[240, 235, 220], [200, 150, 40], [30, 30, 30]], [200.0, 60.0, 20.0]),
        ([[30, 60, 120], [240, 240, 240], [200, 40, 40]], [100.0, 300.0, 5.0]),
    ]
    for n in (2, 2, 3, 3, 4, 4, 5, 6, 8, 12):
        amounts = numpy.sort(rng.exponential(100, n))[::-1] + 3
        named.append((rng.integers(0, 256, (n, 3)).tolist(), [round(float(a), 1) for a in amounts]))
    result = []
    for place, (colours, amounts) in enumerate(named):
        step, accuracy = [(1.0, 0.0), (1.0, 0.01), (0.1, 0.005)][place % 3]
        tared = place % 2 == 1
        strengths = numpy.array([strength(rgb) for rgb in colours])
        exact = numpy.array([amounts])
        intended = blend(strengths, exact)[0]
        drift = colour.difference.delta_E_CIE2000(
            lab_of(intended), lab_of(blend(strengths, poured(numpy.array(amounts), step, accuracy, tared))))
        result.append({
            "colours": colours, "amounts": amounts, "step": step, "accuracy": accuracy, "tared": tared,
            "intended": intended.tolist(),
            "median": float(numpy.quantile(drift, 0.5)), "high": float(numpy.quantile(drift, 0.95)),
        })
    return result


def main():
    lab_1, lab_2, printed = sharma()
    assert lab_1.shape == lab_2.shape == (34, 3) and printed.shape == (34,), (lab_1.shape, printed.shape)
    pairs = numpy.stack([lab_1, lab_2], axis=1)
    by_skimage = deltaE_ciede2000(lab_1, lab_2)
    by_colour = colour.difference.delta_E_CIE2000(lab_1, lab_2)
    assert numpy.all(numpy.abs(by_skimage - printed) <= 5.1e-5), by_skimage - printed
    sure = ~opposite(pairs)
    assert numpy.all(numpy.abs(by_colour - printed)[sure] <= 5.1e-5)

    random = random_pairs()
    random = random[~opposite(random)]
    theirs = colour.difference.delta_E_CIE2000(random[:, 0], random[:, 1])
    other = deltaE_ciede2000(random[:, 0], random[:, 1])
    apart = numpy.abs(theirs - other).max()
    assert apart < 1e-9, apart

    swatches = [[0, 0, 0], [255, 255, 255], [128, 128, 128], [255, 0, 0], [0, 255, 0], [0, 0, 255], [1, 2, 3],
                [10, 11, 12]] + rng.integers(0, 256, (120, 3)).tolist()
    light = linear(swatches)
    iec = colour.models.RGB_COLOURSPACE_sRGB.copy()
    fixture = {
        "made_with": f"colour-science {colour.__version__}, scikit-image {skimage.__version__}, "
                     f"numpy {numpy.__version__}",
        "published_source": "Sharma, Wu and Dalal, Color Research and Application 30 (2005) 21-30, Table 1",
        "published": [{"one": a.tolist(), "other": b.tolist(), "difference": float(d)}
                      for (a, b), d in zip(pairs, printed)],
        "random": [{"one": a.tolist(), "other": b.tolist(), "difference": float(d)}
                   for (a, b), d in zip(random, theirs)],
        "swatches": [{"rgb": rgb, "linear": li.tolist(), "xyz": xyz.tolist(), "lab": lab.tolist(),
                      "xyz_four_decimals": four.tolist()}
                     for rgb, li, xyz, lab, four in zip(
                         swatches, light, light @ space.matrix_RGB_to_XYZ.T, lab_of(light),
                         light @ iec.matrix_RGB_to_XYZ.T)],
        "mixes": mixes(),
    }
    FIXTURE.write_text(json.dumps(fixture, indent=1) + "\n")
    print(f"{len(printed)} published pairs, {len(random)} random ones (libraries apart by {apart:.1e}), "
          f"{len(swatches)} swatches, {len(fixture['mixes'])} mixes")


if __name__ == "__main__":
    main()
