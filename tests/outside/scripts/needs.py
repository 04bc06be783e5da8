#!/usr/bin/env python3
"""What whole jobs need of each coating, by another way: a Monte Carlo with NumPy that stands apart from the crate.

Model, written down again from the trade (JCGM 101 for the trials, JCGM 100 beside it):

    area     = measured area + sum over causes (step of the cause x standard normal number of the cause)
    by film  : litres = area x (first coat + other coats) x film x 1000 / (transfer x narrow x (1 + thinner))
    by label : litres = area x (first coat + other coats) / rate, and of a sprayer x ordinary / (transfer x narrow)
    to which comes what a tool keeps, once for each material, colour and tool

with every figure rectangular between its limits. One draw of a figure serves all that it is a figure of. Here each
cause of measuring is drawn by itself, and the partial derivatives are worked out by hand, where the crate draws one
number for each area and takes differences.

    python tests/outside/scripts/needs.py                 # writes tests/outside/fixtures/needs.json
    python tests/outside/scripts/needs.py --compare       # would the committed fixture change?
    python tests/outside/scripts/needs.py --time          # the time of NumPy for the job of the bench
    python tests/outside/scripts/needs.py --time --ours target/criterion    # and ours beside it, with the ratio

Needs `pip install numpy`. The result is committed; nothing in the build needs this script.
"""

import argparse
import itertools
import json
import math
from pathlib import Path
from time import perf_counter

import numpy

PATH = Path(__file__).resolve().parent.parent / "fixtures" / "needs.json"
TRIALS = 1_000_000
SEED = 20_261
# The trials of the crate that are held against these, and how many standard deviations are let pass: of some hundred
# comparisons with a right answer, one in a hundred such fixtures would have one beyond four.
TRIALS_OF_OURS = 10_000
DEVIATIONS = 4

# ---------------------------------------------------------------------------------------------------------------------
# Figures, each as its limits. Common practice without a source unless said otherwise.

BY_HAND = [0.95, 1.0]  # brush and roller: about 0.95 to 1.0 of what leaves the tool
ALL = [1.0, 1.0]
TOOLS = {
    "brush": {
        "kind": "brush", "films_um": {"wash": [60, 120], "penetrating": [60, 110], "varnish": [65, 115],
                                      "paint": [75, 125]},
        "transfer": BY_HAND, "narrow": ALL, "keeps_l": {"bristles": [0.005, 0.015]}},
    "chip-brush": {
        "kind": "brush", "films_um": {"wash": [60, 130], "penetrating": [60, 120], "varnish": [60, 130],
                                      "paint": [75, 140]},
        "transfer": BY_HAND, "narrow": ALL, "keeps_l": {"bristles": [0.003, 0.010]}},
    "oval-brush": {
        "kind": "brush", "films_um": {"penetrating": [60, 110], "varnish": [65, 120], "paint": [80, 130],
                                      "paste": [25, 60]},
        "transfer": BY_HAND, "narrow": ALL, "keeps_l": {"bristles": [0.010, 0.025]}},
    "foam-roller": {
        "kind": "roller", "films_um": {"varnish": [45, 80], "paint": [50, 90]},
        "transfer": BY_HAND, "narrow": ALL,
        # Calculated: a 100 mm foam cover, 35 mm across on a 15 mm core, 20 to 40 % of it wet; the film in the tray.
        "keeps_l": {"sleeve": [0.016, 0.031], "tray": [0.010, 0.020]}},
    "microfibre-roller": {
        "kind": "roller", "films_um": {"paint": [60, 110]},
        "transfer": BY_HAND, "narrow": ALL, "keeps_l": {"sleeve": [0.020, 0.045], "tray": [0.010, 0.020]}},
    "hvlp": {
        "kind": "sprayer", "films_um": {"penetrating": [40, 80], "varnish": [50, 90], "paint": [50, 100]},
        # Calculated: the spread between Products Finishing (50 to 60 %) and a Colorado furniture maker (65 to 80 %).
        "transfer": [0.50, 0.80], "narrow": [0.45, 0.80], "keeps_l": {"cup and hose": [0.015, 0.060]}},
    "airless": {
        "kind": "sprayer", "films_um": {"penetrating": [50, 100], "varnish": [60, 110], "paint": [75, 150]},
        # Calculated: the spread between 40 CFR 60.313 (25 %) and the Colorado furniture maker (50 to 60 %).
        "transfer": [0.25, 0.60], "narrow": [0.30, 0.70],
        # Calculated: 7.5 m of 6.35 mm hose half full to 15 m full.
        "keeps_l": {"hose": [0.12, 0.475], "pump and gun": [0.05, 0.15]}},
    "pad": {
        "kind": "pad", "films_um": {"wash": [50, 100], "penetrating": [50, 100], "varnish": [15, 35],
                                    "paste": [25, 50]},
        "transfer": BY_HAND, "narrow": ALL, "keeps_l": {"cloth": [0.005, 0.020]}},
}
# Rates in m2/L: "38 um" follows from 38 um (1.5 mil) of dry film per coat on wood, MIL-HDBK-1110 s. 4.4.1, at the
# solids beside it; those of varnish are 350 to 550 ft2/gal, "Data on Painting", Building Construction vol. 4.
MATERIALS = {
    "degreaser": {"stage": "clean", "body": "wash", "coloured": False, "rate": [10, 20], "solids": [0, 0]},
    "wipe-on-stain": {"stage": "stain", "body": "penetrating", "coloured": True, "rate": [10, 17],
                      "solids": [0.15, 0.35]},
    "brush-on-stain": {"stage": "stain", "body": "penetrating", "coloured": True, "rate": [6.6, 10.5],
                       "solids": [0.25, 0.40]},  # 38 um
    "bonding-primer": {"stage": "primer", "body": "paint", "coloured": False, "rate": [8.4, 11.8],
                       "solids": [0.32, 0.45]},  # 38 um
    "shellac-primer": {"stage": "primer", "body": "paint", "coloured": False, "rate": [6.6, 9.2],
                       "solids": [0.25, 0.35]},  # 38 um
    "wall-latex": {"stage": "paint", "body": "paint", "coloured": True, "rate": [8.4, 11.8],
                   "solids": [0.32, 0.45]},  # 38 um
    # Solids read: architectural paints 35 to 45 %, coatings-supplier technical note, 2014.
    "trim-enamel": {"stage": "paint", "body": "paint", "coloured": True, "rate": [9.2, 11.8],
                    "solids": [0.35, 0.45]},  # 38 um
    "alkyd-enamel": {"stage": "paint", "body": "paint", "coloured": True, "rate": [11.0, 14.4],
                     "solids": [0.42, 0.55]},  # 38 um
    "casein-paint": {"stage": "paint", "body": "paint", "coloured": True, "rate": [5.2, 9.2],
                     "solids": [0.20, 0.35]},  # 38 um
    "water-polyurethane": {"stage": "topcoat", "body": "varnish", "coloured": False, "rate": [8.6, 13.5],
                           "solids": [0.27, 0.34]},  # varnish
    "oil-polyurethane": {"stage": "topcoat", "body": "varnish", "coloured": False, "rate": [8.6, 13.5],
                         "solids": [0.40, 0.50]},  # varnish
    "clear-wax": {"stage": "topcoat", "body": "paste", "coloured": False, "rate": [20, 40], "solids": [0.25, 0.50]},
    "tung-oil": {"stage": "topcoat", "body": "penetrating", "coloured": False, "rate": [10, 20],
                 "solids": [0.95, 1.0]},
}
# How much of a later coat the first takes, calculated: 550/450 to 450/350 ("Data on Painting"), and 500/400 to
# 400/300 (TM 43-0139 Table 3-2).
FIRST_COAT = {"sealed": ALL, "painted": ALL, "glossy": ALL, "laminate": ALL, "bare": [1.22, 1.29],
              "porous": [1.25, 1.33]}
# What a label's rate contains already: the loss of brush and roller.
ORDINARY = BY_HAND

# ---------------------------------------------------------------------------------------------------------------------
# Jobs


def coats(material, count, tool, narrow=None, thinned=0.0, colour=None):
    return {"material": material, "colour": colour, "coats": count, "tool": tool, "narrow_tool": narrow or tool,
            "thinned": thinned}


def broad(area, *steps):
    return {"area": area, "narrow": False, "steps": list(steps)}


def slim(area, *steps):
    return {"area": area, "narrow": True, "steps": list(steps)}


def zone(patches, layers, ground="sealed", basis="wet-film"):
    return {"patches": patches, "layers": layers, "ground": ground, "basis": basis}


RED, BLUE = [160, 30, 20], [10, 40, 120]
SCHEME = [coats("degreaser", 1, "pad", "brush"), coats("bonding-primer", 1, "foam-roller", "brush"),
          coats("trim-enamel", 2, "foam-roller", "brush"), coats("water-polyurethane", 2, "brush")]


def bench_zone(size, number):
    """The zones of `crates/coatings/benches/needs.rs`."""
    steps = [0.001 * ((cause * number) % 5) for cause in range(8)]
    if number == 4:
        return zone([broad(size / 2, *steps), slim(size / 2, *steps)], SCHEME)
    return zone([broad(size, *steps)], SCHEME)


JOBS = {
    # One zone, one brush; the measuring shows.
    "table top": [zone([broad(0.9, 0.05, -0.02, 0.01)], [coats("trim-enamel", 2, "brush")])],
    # Sprayed broad, brushed legs; thinner counts for the sprayer alone.
    "side table": [zone([broad(0.7, 0.01, 0.004), slim(0.45, 0.02, -0.008)],
                        [coats("bonding-primer", 1, "hvlp", "brush", thinned=0.1),
                         coats("trim-enamel", 2, "hvlp", "brush", thinned=0.1)])],
    # Sprayed all over; errors of measuring that partly cancel between zones.
    "chairs": [zone([broad(0.6, 0.06, 0.02), slim(1.4, 0.15, -0.03)], [coats("alkyd-enamel", 2, "hvlp", thinned=0.15)]),
               zone([broad(0.5, -0.05, 0.02)], [coats("alkyd-enamel", 3, "hvlp")])],
    # Airless, by film, on broad and on narrow; what the hose keeps rivals what the piece takes.
    "wardrobe": [zone([broad(5.2, 0.1), slim(0.6, 0.03)],
                      [coats("shellac-primer", 1, "airless"), coats("wall-latex", 2, "airless", thinned=0.05)])],
    # The same sprayers by the label: ordinary loss comes out, the sprayer's comes in, thinner does not count.
    "wardrobe by label": [zone([broad(5.2, 0.1), slim(0.6, 0.03)],
                               [coats("shellac-primer", 1, "airless"), coats("wall-latex", 2, "hvlp", thinned=0.05)],
                               basis="label-rate")],
    # Two colours and none of one paint are three cans; the cleaner has one colour whatever is said.
    "three colours": [zone([broad(1.2, 0.02, 0.0)], [coats("degreaser", 1, "pad", colour=RED),
                                                      coats("trim-enamel", 2, "foam-roller", colour=RED)]),
                      zone([broad(0.8, 0.0, 0.015)], [coats("degreaser", 1, "pad", colour=BLUE),
                                                       coats("trim-enamel", 2, "foam-roller", colour=BLUE)]),
                      zone([broad(0.3, 0.01, 0.01)], [coats("trim-enamel", 3, "foam-roller")])],
    # Porous: the cleaner does not drink, the primer does, the paint over it does not.
    "old chest": [zone([broad(2.4, 0.05, 0.02), slim(0.2, 0.01, 0.0)],
                       [coats("degreaser", 1, "pad", "chip-brush"), coats("shellac-primer", 2, "chip-brush"),
                        coats("casein-paint", 2, "oval-brush"), coats("clear-wax", 1, "oval-brush", "pad")],
                       ground="porous"),
                  zone([broad(0.5, 0.02, -0.01)], [coats("tung-oil", 3, "pad")], ground="bare")],
    # Bare wood stained and varnished, the top more often than the rest.
    "oak desk": [zone([broad(1.1, 0.01)], [coats("wipe-on-stain", 1, "pad"), coats("oil-polyurethane", 3, "brush")],
                      ground="bare"),
                 zone([broad(2.0, 0.03), slim(0.5, 0.02)],
                      [coats("wipe-on-stain", 1, "pad"), coats("oil-polyurethane", 2, "brush")], ground="bare")],
    # One primer on three grounds, with and without drink, and a paint by label and by film at once.
    "mended hutch": [zone([broad(0.9, 0.02)], [coats("bonding-primer", 2, "microfibre-roller", "brush"),
                                               coats("wall-latex", 1, "microfibre-roller", "brush")], ground="bare"),
                     zone([broad(1.4, 0.03), slim(0.2, 0.01)],
                          [coats("bonding-primer", 1, "microfibre-roller", "brush"),
                           coats("wall-latex", 2, "microfibre-roller", "brush")], ground="glossy"),
                     zone([broad(0.4, 0.01)], [coats("bonding-primer", 1, "brush"), coats("wall-latex", 2, "brush")],
                          ground="porous", basis="label-rate"),
                     zone([broad(0.7, 0.0)], [coats("wall-latex", 2, "hvlp")], ground="laminate",
                          basis="label-rate")],
    # By the label with brush and roller, the first coat thirsty.
    "fence seat": [zone([broad(1.5, 0.04), slim(0.8, 0.05)], [coats("brush-on-stain", 2, "brush")], ground="porous",
                        basis="label-rate"),
                   zone([broad(0.6, 0.02)], [coats("oil-polyurethane", 2, "foam-roller")], ground="painted",
                        basis="label-rate")],
    # One material in two layers of a zone, with two tools: two washes, one can; the first meets the wood.
    "glazed": [zone([broad(1.3, 0.02)], [coats("water-polyurethane", 1, "hvlp"), coats("trim-enamel", 1, "brush"),
                                         coats("water-polyurethane", 2, "foam-roller")], ground="bare")],
    # What asks for nothing: no coats, no area, a tool that cannot put it on, legs that it cannot reach.
    "nothing": [zone([broad(1.0), broad(0.0, 0.01), slim(0.5)],
                     [coats("bonding-primer", 0, "brush"), coats("clear-wax", 2, "hvlp", "pad"),
                      coats("trim-enamel", 1, "brush", "pad")], ground="porous")],
    # Measuring with so large an error that some areas would be less than nothing.
    "guessed": [zone([broad(0.2, 0.1), slim(0.6, -0.05, 0.2)], [coats("wall-latex", 2, "microfibre-roller", "brush")])],
    # Five zones of unlike size and coats, for what a can does of them.
    "five zones": [zone([broad(size, 0.01 * size, 0.005)], [coats("trim-enamel", count, "foam-roller", "brush")],
                        ground=ground)
                   for size, count, ground in [(1.7, 1, "sealed"), (1.1, 2, "bare"), (0.9, 3, "sealed"),
                                               (0.6, 1, "porous"), (0.25, 4, "sealed")]],
    # Three zones of one paint, each with a tool of its own, which keep very different amounts.
    "three tools": [zone([broad(1.0, 0.01)], [coats("trim-enamel", 2, "brush")]),
                    zone([broad(1.3, 0.02)], [coats("trim-enamel", 1, "airless")]),
                    zone([broad(0.8, 0.01)], [coats("trim-enamel", 2, "foam-roller")])],
    "four zones": [bench_zone(size, number) for number, size in enumerate([0.8, 1.6, 1.1, 0.3], 1)],
}
# Pieces that are done together: a paint that they share is as thick on both.
TOGETHER = [("table top", "side table"), ("five zones", "four zones"), ("wardrobe", "wardrobe by label")]
# Enough zones to choose from, and one tool for all of a material.
JUDGED = ["table top", "chairs", "wardrobe", "oak desk", "five zones", "four zones"]
# Here another choice of zones is another choice of tools.
JUDGED_BY_TOOLS = ["three tools"]
CONFIDENCES = [0.75, 0.9]
# Nothing may hang on a hair: what is asked lies so far from the confidence. Four standard deviations of a share of
# 10,000 trials, and of one of a million beside it, are at most 0.0202.
CLEAR = 0.0202

# ---------------------------------------------------------------------------------------------------------------------
# The model


class Term:
    """One layer on one patch."""

    def __init__(self, job, number, patch, layer_number):
        place = JOBS[job][number]
        layer = place["layers"][layer_number]
        material = MATERIALS[layer["material"]]
        self.zone, self.layer, self.patch, self.job = number, layer_number, patch, job
        self.coats = layer["coats"]
        self.tool = layer["narrow_tool"] if patch["narrow"] else layer["tool"]
        tool = TOOLS[self.tool]
        self.can = (layer["material"], tuple(layer["colour"]) if layer["colour"] and material["coloured"] else None)
        self.works = material["body"] in tool["films_um"] and self.coats > 0 and patch["area"] > 0
        sprayed = tool["kind"] == "sprayer"
        by_film = place["basis"] == "wet-film"
        # Factors above and below the line, as causes.
        self.above, self.below, self.scale = [], [], 1.0
        if by_film:
            self.above.append(("film", layer["material"], self.tool))
            self.scale /= 1.0 + (layer["thinned"] if sprayed else 0.0)
        else:
            self.below.append(("rate", layer["material"]))
        if by_film or sprayed:
            self.below.append(("transfer", self.tool))
            if patch["narrow"] and tool["narrow"] != ALL:
                self.below.append(("narrow", self.tool))
        if not by_film and sprayed:
            self.above.append(("ordinary",))
        staying = [n for n, other in enumerate(place["layers"])
                   if other["coats"] > 0 and MATERIALS[other["material"]]["stage"] != "clean"]
        first = FIRST_COAT[place["ground"]] if staying and staying[0] == layer_number else ALL
        self.first = ("first-coat", place["ground"]) if first != ALL else None
        self.sprayed = sprayed

    def kept(self):
        return [("kept", self.job, *self.can, self.tool, place) for place in TOOLS[self.tool]["keeps_l"]]


def limits(cause):
    """The limits of a figure in litres, square metres, litres per square metre (a film), and shares."""
    kind = cause[0]
    if kind == "film":
        low, high = TOOLS[cause[2]]["films_um"][MATERIALS[cause[1]]["body"]]
        return low / 1000, high / 1000
    if kind == "rate":
        return MATERIALS[cause[1]]["rate"]
    if kind in ("transfer", "narrow"):
        return TOOLS[cause[1]][kind]
    if kind == "ordinary":
        return ORDINARY
    if kind == "first-coat":
        return FIRST_COAT[cause[1]]
    if kind == "kept":
        return TOOLS[cause[4]]["keeps_l"][cause[5]]
    if kind == "solids":
        return MATERIALS[cause[1]]["solids"]
    raise ValueError(cause)


def mean(cause):
    low, high = limits(cause)
    return (low + high) / 2


def u(cause):
    low, high = limits(cause)
    return (high - low) / 2 / math.sqrt(3)


class Draws:
    """Trials of every cause, made when they are first asked for; a cause is drawn once."""

    def __init__(self, seed, trials):
        self.random = numpy.random.default_rng(seed)
        self.trials = trials
        self.drawn = {}

    def of(self, cause):
        if cause not in self.drawn:
            if cause[0] == "measuring":
                self.drawn[cause] = self.random.standard_normal(self.trials)
            else:
                self.drawn[cause] = self.random.uniform(*limits(cause), self.trials)
        return self.drawn[cause]

    def area(self, job, patch):
        area = numpy.full(self.trials, patch["area"])
        for number, step in enumerate(patch["steps"]):
            area += step * self.of(("measuring", job, number))
        return numpy.maximum(area, 0.0)


def terms_of(job):
    """The terms of each can, cans in the order in which they are first needed."""
    cans = {}
    for number, place in enumerate(JOBS[job]):
        for patch in place["patches"]:
            for layer in range(len(place["layers"])):
                term = Term(job, number, patch, layer)
                if term.works:
                    cans.setdefault(term.can, []).append(term)
    return cans


def coat_trials(term, draws):
    litres = draws.area(term.job, term.patch) * term.scale
    for cause in term.above:
        litres = litres * draws.of(cause)
    for cause in term.below:
        litres = litres / draws.of(cause)
    return litres


def term_trials(term, draws, count=None):
    count = term.coats if count is None else count
    first = draws.of(term.first) if term.first else 1.0
    return coat_trials(term, draws) * (first + count - 1)


def kept_causes(terms):
    return list(dict.fromkeys(cause for term in terms for cause in term.kept()))


def trials(terms, draws, count=None):
    litres = sum(term_trials(term, draws, count) for term in terms)
    return litres + sum(draws.of(cause) for cause in kept_causes(terms))


def at_best(term):
    """Litres of a term when every figure is at the middle."""
    litres = term.patch["area"] * term.scale * ((mean(term.first) if term.first else 1.0) + term.coats - 1)
    for cause in term.above:
        litres *= mean(cause)
    for cause in term.below:
        litres /= mean(cause)
    return litres


def linear(terms):
    """The best estimate, and each cause's part of the standard uncertainty: partial derivative x u.

    A litre hangs on each cause as a + b x or as a + b / x. For the latter the derivative at the middle m is -b / m2;
    half the difference over one u to either side (JCGM 100, 5.1.3 note 2) is that / (1 - (u / m)2), exactly. Given
    are both, by derivatives and by differences.
    """
    kept = kept_causes(terms)
    value = sum(at_best(term) for term in terms) + sum(mean(cause) for cause in kept)
    derivatives = {cause: 1.0 for cause in kept}
    measured = {}
    below = set()
    for term in terms:
        litres = at_best(term)
        for cause in term.above:
            derivatives[cause] = derivatives.get(cause, 0.0) + litres / mean(cause)
        for cause in term.below:
            below.add(cause)
            derivatives[cause] = derivatives.get(cause, 0.0) - litres / mean(cause)
        if term.first:
            of_first = litres / (mean(term.first) + term.coats - 1)
            derivatives[term.first] = derivatives.get(term.first, 0.0) + of_first
        for number, step in enumerate(term.patch["steps"]):
            cause = ("measuring", term.job, number)
            measured[cause] = measured.get(cause, 0.0) + litres / term.patch["area"] * step
    by_derivative = {cause: c * u(cause) for cause, c in derivatives.items()} | measured
    by_difference = {
        cause: part / (1 - (u(cause) / mean(cause)) ** 2) if cause in below else part
        for cause, part in by_derivative.items()}
    return value, by_derivative, by_difference


def root_of_squares(parts):
    return math.sqrt(sum(part * part for part in parts.values()))


def budget(parts):
    """The share of each kind of cause in the variance."""
    whole = sum(part * part for part in parts.values())
    kinds = {}
    for cause, part in parts.items():
        kinds[cause[0]] = kinds.get(cause[0], 0.0) + part * part / whole
    return kinds


def places(terms):
    """Where the litres go at the best estimates: what stays on the piece, what is lost, what the tools keep.

    By the label, what a brush drips is within the rate and stays unknown; of a sprayer the share of its transfer
    stays on the piece.
    """
    piece = drips = air = 0.0
    for term in terms:
        litres = at_best(term)
        stays = litres
        for cause in term.below:
            if cause[0] in ("transfer", "narrow"):
                stays *= mean(cause)
        piece += stays
        if term.sprayed:
            air += litres - stays
        else:
            drips += litres - stays
    kept = {}
    for cause in kept_causes(terms):
        kept[cause[5]] = kept.get(cause[5], 0.0) + mean(cause)
    return {"on the piece": piece, "in drips": drips, "in the air": air, **kept}


def by_zone(terms):
    zones = {}
    for term in terms:
        zones[term.zone] = zones.get(term.zone, 0.0) + at_best(term)
    return zones


def probability(litres, volume):
    return float(numpy.mean(litres <= volume))


def rounded(value, digits=8):
    return float(f"{value:.{digits}g}")


def off_by(share):
    """How far a share of the trials of ours may lie from one of these: their standard deviations add in squares."""
    return DEVIATIONS * math.sqrt(share * (1 - share) * (1 / TRIALS_OF_OURS + 1 / TRIALS))


def spread(litres):
    """Quantiles, and between which of these trials those of ours must lie; moments, which say how steady they are."""
    result = {}
    for name, share in [("low", 0.05), ("likely", 0.5), ("high", 0.95)]:
        off = off_by(share)
        below, middle, above = numpy.quantile(litres, [share - off, share, share + off])
        result[name] = rounded(middle, 6)
        result[f"{name}_within"] = [rounded(below, 6), rounded(above, 6)]
    mean, sd = litres.mean(), litres.std(ddof=1)
    kurtosis = numpy.mean(((litres - mean) / sd) ** 4)
    return result | {"mean": rounded(mean, 6), "sd": rounded(sd, 6), "kurtosis": rounded(kurtosis, 4)}


def need(can, terms, draws):
    litres = trials(terms, draws)
    value, by_derivative, by_difference = linear(terms)
    likely = float(numpy.median(litres))
    volumes = [rounded(share * likely, 4) for share in (0.8, 0.9, 1.0, 1.1, 1.25)]
    return {
        "material": can[0], "colour": can[1], **spread(litres),
        "value": rounded(value), "u_by_derivatives": rounded(root_of_squares(by_derivative)),
        "u_by_differences": rounded(root_of_squares(by_difference)),
        "differences_over_derivatives": rounded(
            max(by_difference[cause] / by_derivative[cause] for cause in by_derivative if by_derivative[cause])),
        "budget": {kind: rounded(share) for kind, share in budget(by_difference).items()},
        "places": {place: rounded(volume) for place, volume in places(terms).items()},
        "by_zone": [[number, rounded(volume)] for number, volume in by_zone(terms).items()],
        "enough": [[volume, round(probability(litres, volume), 5)] for volume in volumes],
    }


def dry_films(job, draws):
    """What each layer leaves when it is dry: film x solids x coats / (1 + thinner), or solids x coats / rate."""
    films = []
    for number, place in enumerate(JOBS[job]):
        for layer_number, layer in enumerate(place["layers"]):
            for narrow in (False, True):
                patch = {"narrow": narrow, "area": 1.0, "steps": []}
                term = Term(job, number, patch, layer_number)
                # What goes into the wood, an oil as well as a stain, leaves no film on it.
                if not term.works or MATERIALS[layer["material"]]["body"] in ("wash", "penetrating"):
                    continue
                solids = ("solids", layer["material"])
                if place["basis"] == "wet-film":
                    wet = term.above[0]
                    one = draws.of(wet) * draws.of(solids) * term.scale * 1000
                    best = mean(wet) * mean(solids) * term.scale * 1000
                    relative = u(wet) / mean(wet)
                    differs = relative
                else:
                    rate = term.below[0]
                    one = draws.of(solids) / draws.of(rate) * 1000
                    best = mean(solids) / mean(rate) * 1000
                    relative = u(rate) / mean(rate)
                    differs = relative / (1 - relative ** 2)
                films.append({
                    "zone": number, "layer": layer_number, "narrow": narrow,
                    "um": rounded(best * term.coats),
                    "u_um": rounded(best * term.coats * math.hypot(differs, u(solids) / mean(solids))),
                    "mean_um": rounded(one.mean() * term.coats, 6), "sd_um": rounded(one.std(ddof=1) * term.coats, 6),
                })
    return films


def judged(can, terms, draws):
    """What cans of several sizes do, by trying every choice of zones; what hangs on a hair is left out."""
    zones = by_zone(terms)
    of = {number: [term for term in terms if term.zone == number] for number in zones}
    choices = []
    for size in range(1, len(zones) + 1):
        for choice in itertools.combinations(sorted(zones), size):
            chosen = [term for number in choice for term in of[number]]
            choices.append((sum(zones[number] for number in choice), choice, numpy.sort(trials(chosen, draws))))
    choices.sort(key=lambda choice: -choice[0])
    coats_trials = [numpy.sort(trials(terms, draws, count)) for count in range(1, 11)]
    whole = numpy.sort(trials(terms, draws))
    chance = lambda litres, volume: numpy.searchsorted(litres, volume, side="right") / len(litres)
    result = []
    likely = float(numpy.median(whole))
    for share in (0.12, 0.3, 0.45, 0.6, 0.72, 0.84, 0.95, 1.05, 1.2, 1.6, 2.5):
        for confidence in CONFIDENCES:
            volume = rounded(share * likely, 4)
            clear = abs(chance(whole, volume) - 0.5) >= CLEAR
            best = ()
            for position, (work, choice, litres) in enumerate(choices):
                p = chance(litres, volume)
                if abs(p - confidence) < CLEAR:
                    clear = False
                if p >= confidence:
                    best = choice
                    following = choices[position + 1][0] if position + 1 < len(choices) else 0.0
                    clear = clear and work - following > 1e-4 * work
                    break
            ps = [chance(litres, volume) for litres in coats_trials]
            most = next((number for number, p in enumerate(ps) if p < confidence), len(ps))
            clear = clear and all(abs(p - confidence) >= CLEAR for p in ps[max(most - 1, 0):most + 1])
            if clear:
                result.append({
                    "material": can[0], "colour": can[1], "litres": volume, "confidence": confidence,
                    "probability": round(float(chance(whole, volume)), 5), "most_coats": min(most, 9),
                    "zones": list(best), "left": rounded(volume - likely, 6),
                })
    return result


def figures():
    return {
        "tools": TOOLS, "materials": MATERIALS, "first_coat": FIRST_COAT, "ordinary": ORDINARY,
    }


def fixture():
    jobs = []
    for seed, job in enumerate(JOBS):
        draws = Draws([SEED, seed], TRIALS)
        cans = terms_of(job)
        entry = {"name": job, "zones": JOBS[job], "needs": [need(can, terms, draws) for can, terms in cans.items()],
                 "dry_films": dry_films(job, draws)}
        if job in JUDGED + JUDGED_BY_TOOLS:
            entry["cans"] = [case for can, terms in cans.items() for case in judged(can, terms, draws)]
        jobs.append(entry)
        print(f"{job:<20} {len(entry['needs'])} needs, {len(entry.get('cans', []))} cans", flush=True)
    both = []
    for seed, (a, b) in enumerate(TOGETHER):
        draws = Draws([SEED, 1000 + seed], TRIALS)
        a_cans, b_cans = terms_of(a), terms_of(b)
        for can in a_cans:
            if can in b_cans:
                litres = trials(a_cans[can], draws) + trials(b_cans[can], draws)
                both.append({"jobs": [a, b], "material": can[0], "colour": can[1], **spread(litres)})
    return {"made_with": f"NumPy {numpy.__version__}, seed {SEED}", "trials": TRIALS,
            "units": "m2, litres, um of film", "figures": figures(), "jobs": jobs, "together": both}


# ---------------------------------------------------------------------------------------------------------------------
# Times

RUNS = 15
TIMED_TRIALS = 100_000
OURS = "four zones in four materials, 100,000 trials"


def loadings():
    """The areas of the bench over independent causes, as few as there are areas."""
    patches = [patch for place in JOBS["four zones"] for patch in place["patches"]]
    steps = numpy.array([patch["steps"] for patch in patches])
    values, vectors = numpy.linalg.eigh(steps @ steps.T)
    return numpy.array([patch["area"] for patch in patches]), vectors * numpy.sqrt(numpy.maximum(values, 0.0))


def answer(random, n, areas, lower):
    """Three quantiles of the litres of each of the four materials, all arithmetic on whole columns."""
    patches = areas[:, None] + lower @ random.standard_normal((len(areas), n))
    numpy.maximum(patches, 0.0, out=patches)
    wide, legs = patches[:4].sum(axis=0), patches[4]
    uniform = lambda cause: random.uniform(*limits(cause), n)
    shares = [0.05, 0.5, 0.95]
    transfers = {tool: uniform(("transfer", tool)) for tool in ("pad", "brush", "foam-roller")}
    result = []
    for layer in SCHEME:
        litres = 0.0
        for area, tool in ((wide, layer["tool"]), (legs, layer["narrow_tool"])):
            if tool == layer["tool"] and area is legs:
                continue
            on = patches.sum(axis=0) if layer["narrow_tool"] == layer["tool"] else area
            litres = litres + on * uniform(("film", layer["material"], tool)) / transfers[tool] * layer["coats"]
            for place in TOOLS[tool]["keeps_l"]:
                litres = litres + uniform(("kept", "four zones", layer["material"], None, tool, place))
        result.append(numpy.quantile(litres, shares))
    return result


def seconds():
    """The shortest time of several runs, and a check that the answer is that of the fixture's model."""
    areas, lower = loadings()
    random = numpy.random.default_rng(SEED)
    times = []
    for _ in range(RUNS):
        begin = perf_counter()
        found = answer(random, TIMED_TRIALS, areas, lower)
        times.append(perf_counter() - begin)
    draws = Draws([SEED, 99], TIMED_TRIALS)
    for (can, terms), quantiles in zip(terms_of("four zones").items(), found):
        wanted = numpy.quantile(trials(terms, draws), [0.05, 0.5, 0.95])
        assert numpy.allclose(quantiles, wanted, rtol=0.01), (can, quantiles, wanted)
    return min(times)


def ours(folder):
    """What criterion measured, seconds: the middle of its estimates of one answer."""
    for found in folder.glob("**/new/benchmark.json"):
        if json.loads(found.read_text())["full_id"] == OURS:
            estimates = json.loads((found.parent / "estimates.json").read_text())
            return estimates["median"]["point_estimate"] * 1e-9
    raise SystemExit(f"{folder} has no bench '{OURS}': run `cargo bench -p coatings` first")


def print_times(folder):
    numpy_seconds = seconds()
    line = f"{OURS}: NumPy {numpy.__version__} {numpy_seconds * 1e3:.2f} ms"
    if folder:
        ours_seconds = ours(folder)
        line += f", ours {ours_seconds * 1e3:.2f} ms, NumPy/ours {numpy_seconds / ours_seconds:.2f}"
    print(line)


def main():
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--compare", action="store_true")
    asked.add_argument("--time", action="store_true")
    asked.add_argument("--ours", type=Path, metavar="FOLDER")
    asked = asked.parse_args()
    if asked.time:
        print_times(asked.ours)
        return
    text = json.dumps(fixture(), indent=1)
    # Lists of numbers on one line: the file is read by people too.
    while (shorter := tighten(text)) != text:
        text = shorter
    text += "\n"
    if asked.compare:
        raise SystemExit(0 if text == PATH.read_text() else "the committed fixture would change")
    PATH.write_text(text)


def tighten(text):
    import re
    return re.sub(r"\[\s+([^\[\]{}]*?)\s+\]", lambda found: "[" + re.sub(r"\s*\n\s*", " ", found[1]) + "]", text)


if __name__ == "__main__":
    main()
