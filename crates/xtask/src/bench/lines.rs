//! What is timed, and what each time is held against.

use super::beside::Program;

/// What a time is held against.
pub(super) enum Against {
    /// A time, in seconds.
    Time(f64),
    /// Another benchmark, and how many times as long it may take.
    Bench(&'static str, f64),
    /// Another program that does the same.
    Program(&'static Program),
}
use Against::{Bench, Time};

/// The benchmarks by the crate and the name of the file in its `benches`.
pub(super) const FILES: [(&str, &str); 4] = [
    ("geometry", "geometry"),
    ("coatings", "needs"),
    ("coatings", "cans"),
    ("workshop", "takeoff"),
];

static NUMPY: Program = Program {
    name: "NumPy",
    script: "tests/outside/scripts/needs.py",
    line: "100,000 trials",
    needs: "numpy",
};

/// It finds the least price, and at that price the least left over, as ours does.
static HIGHS: Program = Program {
    name: "HiGHS",
    script: "tests/outside/scripts/cans.py",
    line: "least price, then least left",
    needs: "numpy scipy",
};

/// Every benchmark. The budgets are those of the design: a tenfold piece may take fifteen times as long, an answer of
/// 100,000 trials 20 ms, and a workshop of a thousand pieces a second to open and a tenth of that to save.
pub(super) const LINES: [(&str, &[Against]); 26] = [
    ("takeoff of ten drawers", &[Time(200e-6)]),
    ("takeoff with 10 changes", &[Bench("takeoff with 0 changes", 2.0)]),
    ("built with 200 boards moved", &[Time(50e-3)]),
    ("built with 150 mouldings", &[Time(50e-3)]),
    ("surfaces of one dresser", &[]),
    (
        "surfaces of ten dressers",
        &[Bench("surfaces of one dresser", 15.0)],
    ),
    (
        "surfaces of a hundred dressers",
        &[Bench("surfaces of ten dressers", 15.0)],
    ),
    ("takeoff of turned legs", &[]),
    ("drawing of one dresser, front", &[]),
    (
        "drawing of ten dressers, front",
        &[Bench("drawing of one dresser, front", 15.0)],
    ),
    ("drawing of one dresser, corner", &[]),
    (
        "drawing of ten dressers, corner",
        &[Bench("drawing of one dresser, corner", 15.0)],
    ),
    ("drawing of turned legs, front", &[]),
    ("drawing of turned legs, corner", &[]),
    ("overlaps of ten drawers", &[]),
    ("overlaps of turned legs", &[]),
    ("edges of ten drawers", &[]),
    ("edges of turned legs", &[]),
    (
        "four zones in four materials, 100,000 trials",
        &[Time(20e-3), Against::Program(&NUMPY)],
    ),
    ("the same, trials of the page", &[]),
    ("is one can enough, and for which zones", &[]),
    ("cans of ten colours, eight sizes", &[Against::Program(&HIGHS)]),
    ("takeoff of the invented dresser, with materials", &[]),
    ("its four ways side by side", &[]),
    ("a thousand pieces read", &[Time(1.0)]),
    ("a thousand pieces written", &[Time(0.1)]),
];
