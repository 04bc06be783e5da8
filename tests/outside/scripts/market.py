"""Invented price notes, and what SciPy and NumPy say of them. Writes fixtures/market.json.

Quantiles: NumPy, method "linear", which is type 7 of Hyndman & Fan (1996). Interval of the median: scipy.stats.binom
(Conover). Slope: scipy.stats.theilslopes (Theil 1950, Sen 1968). Tau: scipy.stats.kendalltau. Pace:
scipy.stats.ecdf with CensoredData (Kaplan & Meier 1958).
"""
import json
from pathlib import Path

import numpy as np
from scipy import stats

rng = np.random.default_rng(20260503)
cases = []
for number in range(120):
    n = int(rng.integers(5, 70))
    if number % 2:  # without ties, so that small ones are counted
        days = rng.choice(400, n, replace=False)
        prices = rng.choice(20000, n, replace=False) + 100
    else:
        days = rng.integers(0, 40, n)
        prices = rng.integers(2, 30, n) * 500
    prices = prices + days * int(rng.integers(0, 40)) * (number % 3 == 0)
    stood = rng.integers(1, 60, n)
    gone = rng.random(n) < rng.uniform(0.3, 1.0)
    gone[0] = True
    ordered = np.sort(prices)
    k = 1
    while k + 1 <= n // 2 and 1 - 2 * stats.binom.cdf(k, n, 0.5) >= 0.95:
        k += 1
    slope = stats.theilslopes(prices, days, 0.95)
    tau = stats.kendalltau(days, prices)
    sf = stats.ecdf(stats.CensoredData(uncensored=stood[gone], right=stood[~gone])).sf
    half = [int(q) for q, p in zip(sf.quantiles, sf.probabilities) if p <= 0.5 + 1e-12]
    cases.append({
        "days": days.tolist(), "prices": prices.tolist(), "stood": stood.tolist(), "gone": gone.tolist(),
        "quartiles": np.quantile(prices, [0, 0.25, 0.5, 0.75, 1], method="linear").tolist(),
        "interval": [int(ordered[k - 1]), int(ordered[n - k])],
        "coverage": float(1 - 2 * stats.binom.cdf(k - 1, n, 0.5)),
        "slope": [float(slope[0]), float(slope[2]), float(slope[3])],
        "tau": [float(tau.statistic), float(tau.pvalue)],
        "pace": half[0] if half else None,
    })
out = Path(__file__).resolve().parent.parent / "fixtures" / "market.json"
out.write_text(json.dumps({"cases": cases}, separators=(",", ":")) + "\n")
