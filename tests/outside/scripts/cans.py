#!/usr/bin/env python3
"""Which cans are cheapest, by another way: SciPy's mixed-integer solver (HiGHS).

Each instance has a need, a stock and offers of size and price. What the stock lacks is a covering problem in whole
numbers:

    minimise  sum price x n   so that   sum size x n >= need - stock,   n = 0, 1, 2, ...

It is solved twice: for the least price, and at that price for the least left over. HiGHS reckons in floats, so every
count it reports is checked again in whole picolitres, and that no cheaper set exists is asked of it once more with
the price bounded one hundredth lower. Stock is used in its order until it is enough.

    python tests/outside/scripts/cans.py           # writes tests/outside/fixtures/cans.json and cans-bench.json
    python tests/outside/scripts/cans.py --time    # how long HiGHS takes for the problems of cans-bench.json

Needs `pip install numpy scipy`. The result is committed; nothing in the build needs this script.
"""

import json
import random
import statistics
import sys
import time
from pathlib import Path

import numpy
import scipy
from scipy.optimize import Bounds, LinearConstraint, milp

OUTSIDE = Path(__file__).resolve().parent.parent
FIXTURE = OUTSIDE / "fixtures" / "cans.json"
BENCH = OUTSIDE / "fixtures" / "cans-bench.json"
SEED = 4711
INSTANCES = 300

# Picolitres. A US gallon is 231 cubic inches of 25.4 mm, 3.785411784 L.
GALLON = 3_785_411_784_000
US = [GALLON // 32, GALLON // 16, GALLON // 8, GALLON // 4, GALLON, GALLON * 5]
ML = 1_000_000_000
METRIC = [ml * ML for ml in (125, 250, 375, 500, 750, 1000, 2500, 5000, 10000)]


def solve(cost, sizes, prices, lack, upper_price):
    """Whole counts that cover `lack` at the least cost; None where there are none. All of it in whole numbers."""
    most = [-(-lack // size) for size in sizes]
    # In units of the need, so that no coefficient is far from 1.
    scale = float(lack)
    rows = [LinearConstraint(numpy.array([[size / scale for size in sizes]]), lb=1.0)]
    if upper_price is not None:
        rows.append(LinearConstraint(numpy.array([prices], dtype=float), ub=upper_price + 0.25))
    result = milp(numpy.array(cost, dtype=float), constraints=rows, integrality=numpy.ones(len(sizes)),
                  bounds=Bounds(0, numpy.array(most, dtype=float)),
                  options={"mip_rel_gap": 0.0, "presolve": True})
    if result.status == 2:
        return None
    assert result.status == 0, result.message
    counts = [round(float(n)) for n in result.x]
    assert numpy.allclose(counts, result.x, atol=1e-5)
    return counts


def total(values, counts):
    return sum(value * count for value, count in zip(values, counts))


def cheapest(need, stock, sizes, prices):
    """Price, and picolitres left over, of the best purchase; how many cans of the stock it takes."""
    held, used = 0, 0
    for can in stock:
        if held >= need:
            break
        held, used = held + can, used + 1
    if held >= need:
        return 0, held - need, used
    lack = need - held
    counts = solve(prices, sizes, prices, lack, None)
    assert total(sizes, counts) >= lack, "too little by exact arithmetic"
    price = total(prices, counts)
    assert price == 0 or solve(prices, sizes, prices, lack, price - 1) is None, "there is a cheaper set"
    counts = solve([size / lack for size in sizes], sizes, prices, lack, price)
    assert total(sizes, counts) >= lack and total(prices, counts) <= price, "too little, or too dear"
    return price, total(sizes, counts) - lack, used


def by_trying(need, sizes, prices):
    """The same by trying every count, for problems small enough; price and picolitres left over."""
    if need <= 0:
        return 0, -need
    if not sizes:
        return None
    best = None
    for count in range(-(-need // sizes[0]) + 1):
        rest = by_trying(need - count * sizes[0], sizes[1:], prices[1:])
        if rest is not None:
            found = (rest[0] + count * prices[0], rest[1])
            best = found if best is None else min(best, found)
    return best


def shop(draw, kind):
    """Sizes and prices: of a real shop, with many ties, mixed trades, odd sizes."""
    count = draw.randint(1, 8)
    if kind == "odd":
        sizes = draw.sample(range(60, 4000), count)
        sizes = [size * ML for size in sizes]
    elif kind == "mixed":
        sizes = draw.sample(US + METRIC, count)
    else:
        trade = draw.choice([US, METRIC])
        sizes = draw.sample(trade, min(count, len(trade)))
    litre = 10 ** 12
    prices = []
    for size in sizes:
        if kind == "ties":
            # The same price by volume, or prices in whole tens: many purchases cost the same.
            even = draw.choice([True, False])
            prices.append(max(1, size * 2000 // litre) if even else max(1000, size * 2000 // litre // 1000 * 1000))
        elif kind == "flat":
            prices.append(draw.choice([500, 1000]))
        else:
            # Larger cans are cheaper by volume, more or less.
            prices.append(round((size / litre) ** 0.8 * draw.uniform(1500, 3000)))
    return sizes, prices


def instance(draw, number):
    kind = ["real", "ties", "mixed", "odd", "flat"][number % 5]
    sizes, prices = shop(draw, kind)
    # As many small needs as large ones; some are exactly a number of cans.
    need = round(10 ** draw.uniform(-1.3, 1.602) * 1000) * ML
    if number % 7 == 0:
        need = total(sizes, [draw.randint(0, 3) for _ in sizes])
    need = min(max(need, 50 * ML), 40_000 * ML)
    shelf = draw.choice([0, 0, 1, 2, 3])
    stock = [draw.choice([draw.randrange(20, 1500) * ML, draw.choice(sizes)]) for _ in range(shelf)]
    return need, stock, sizes, prices


def write():
    draw = random.Random(SEED)
    cases, tried = [], 0
    for number in range(INSTANCES):
        need, stock, sizes, prices = instance(draw, number)
        price, left, used = cheapest(need, stock, sizes, prices)
        lack = need - sum(stock[:used])
        ways = 1
        for size in sizes:
            ways *= max(1, -(-lack // size)) + 1
        if 0 < lack and ways < 20_000:
            assert (price, left) == by_trying(lack, sizes, prices), "two ways, two answers"
            tried += 1
        cases.append({"need": need, "stock": stock, "sizes": sizes, "prices": prices, "price": price, "left": left,
                      "used": used})
    result = {"made_with": f"SciPy {scipy.__version__} (HiGHS), seed {SEED}", "units": "picolitres and hundredths",
              "cases": cases}
    lines = ",\n".join(json.dumps(case, separators=(",", ":")) for case in cases)
    head = json.dumps({key: result[key] for key in ("made_with", "units")})[:-1]
    FIXTURE.write_text(f'{head}, "cases": [\n{lines}\n]}}\n')
    print(f"{len(cases)} cases, {tried} of them tried out as well, {FIXTURE.stat().st_size} bytes")
    write_bench(draw)


def write_bench(draw):
    """Ten colours, each with its need, and eight sizes of a shop; one colour after the other."""
    sizes = METRIC[:8]
    colours = []
    for number in range(10):
        prices = [round((size / 10 ** 12) ** 0.8 * draw.uniform(1800, 2400)) for size in sizes]
        need = round(10 ** (-0.7 + 2.3 * number / 9) * 1000) * ML
        price, left, _ = cheapest(need, [], sizes, prices)
        colours.append({"need": need, "prices": prices, "price": price, "left": left})
    head = json.dumps({"made_with": f"SciPy {scipy.__version__} (HiGHS), seed {SEED}",
                       "units": "picolitres and hundredths", "sizes": sizes})[:-1]
    lines = ",\n".join(json.dumps(colour, separators=(",", ":")) for colour in colours)
    BENCH.write_text(f'{head}, "colours": [\n{lines}\n]}}\n')


def timed():
    problems = json.loads(BENCH.read_text())
    sizes = problems["sizes"]
    price_only, both = [], []
    for _ in range(9):
        start = time.perf_counter()
        for colour in problems["colours"]:
            solve(colour["prices"], sizes, colour["prices"], colour["need"], None)
        price_only.append(time.perf_counter() - start)
        start = time.perf_counter()
        for colour in problems["colours"]:
            prices, need = colour["prices"], colour["need"]
            counts = solve(prices, sizes, prices, need, None)
            solve([size / need for size in sizes], sizes, prices, need, total(prices, counts))
        both.append(time.perf_counter() - start)
    many = f"{len(problems['colours'])} colours, {len(sizes)} sizes"
    print(f"HiGHS, {many}, least price: {statistics.median(price_only) * 1e3:.2f} ms")
    print(f"HiGHS, {many}, least price, then least left: {statistics.median(both) * 1e3:.2f} ms")


if __name__ == "__main__":
    timed() if "--time" in sys.argv[1:] else write()
