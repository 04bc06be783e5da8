#!/usr/bin/env python3
"""What weighed jobs teach about a spreading rate, by numerical integration in place of the closed form.

The model of `crates/coatings/src/learn/` (Gelman et al., Bayesian Data Analysis, 3rd ed., s. 3.3) is written down as
densities and integrated over a grid of mean and scatter: where the next job falls in 95 of 100, and where the mean lies.
`exact` does the same with the uncertainty of each job added to the scatter, which the crate replaces by a weight.

    python tests/outside/scripts/learn.py    # writes tests/outside/fixtures/learn.json

Needs `pip install numpy scipy`. The result is committed; nothing in the build needs this script.
"""

import json
from importlib.metadata import version
from pathlib import Path

import numpy as np
from scipy import optimize, stats

FIXTURE = Path(__file__).resolve().parent.parent / "fixtures" / "learn.json"
LABEL_JOBS, LABEL_FREEDOM = 1.0, 4
POINTS = 1201


def grid(middle, scale):
    """Means, scatters squared, and the log of the prior density over both (mean, log of scatter squared)."""
    means = middle + scale * np.linspace(-12, 12, POINTS)
    logs = np.log(scale**2) + np.linspace(-6, 9, POINTS)
    squares = np.exp(logs)
    # Scaled inverse chi-squared; the last term makes it a density of the logarithm.
    prior = stats.invgamma.logpdf(squares, LABEL_FREEDOM / 2, scale=LABEL_FREEDOM * scale**2 / 2) + logs
    prior = prior[None, :] + stats.norm.logpdf(means[:, None], middle, np.sqrt(squares / LABEL_JOBS)[None, :])
    return means, squares, prior


def intervals(low, high, jobs, exact):
    """The next job and the mean, each as its 2.5 and 97.5 % points, in the rate."""
    middle = (np.log(low) + np.log(high)) / 2
    half = (np.log(high) - np.log(low)) / 2
    scale = half / stats.t.ppf(0.975, LABEL_FREEDOM) / np.sqrt(1 + 1 / LABEL_JOBS)
    means, squares, log_density = grid(middle, scale)
    for rate, uncertainty in jobs:
        if exact:
            variance = squares + uncertainty**2
        else:
            variance = squares / (scale**2 / (scale**2 + uncertainty**2))
        log_density = log_density + stats.norm.logpdf(np.log(rate), means[:, None], np.sqrt(variance)[None, :])
    density = np.exp(log_density - log_density.max())
    density /= density.sum()

    def next_below(y):
        return float((density * stats.norm.cdf((y - means[:, None]) / np.sqrt(squares)[None, :])).sum())

    of_mean = density.sum(axis=1).cumsum() - density.sum(axis=1) / 2
    ends = [optimize.brentq(lambda y: next_below(y) - p, means[0], means[-1]) for p in (0.025, 0.975)]
    mean_ends = [float(np.interp(p, of_mean, means)) for p in (0.025, 0.975)]
    return [float(np.exp(end)) for end in ends], [float(np.exp(end)) for end in mean_ends]


def cases():
    chance = np.random.default_rng(20261126)
    for count in (1, 1, 2, 2, 3, 4, 6, 10):
        low = float(chance.uniform(4, 12))
        high = low * float(chance.uniform(1.2, 1.8))
        true = float(np.sqrt(low * high) * chance.uniform(0.85, 1.15))
        jobs = [
            [round(float(true * np.exp(chance.normal(0, 0.06))), 4), round(float(chance.uniform(0.01, 0.08)), 4)]
            for _ in range(count)
        ]
        label = [round(low, 3), round(high, 3)]
        following, mean = intervals(*label, jobs, exact=False)
        exact, _ = intervals(*label, jobs, exact=True)
        yield {"label": label, "jobs": jobs, "next": following, "mean": mean, "exact": exact}


def main():
    lines = ",\n".join("    " + json.dumps(case) for case in cases())
    made = f"NumPy {version('numpy')}, SciPy {version('scipy')}"
    text = f'{{\n  "made_with": "{made}",\n  "cases": [\n{lines}\n  ]\n}}\n'
    FIXTURE.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
