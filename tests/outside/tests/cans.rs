//! The choice of cans against an outside solver.
//!
//! Outside source: HiGHS, the mixed-integer solver of SciPy, through `scripts/cans.py`, which also checks what the
//! solver says in whole numbers and tries the smaller problems out. 300 problems of one to eight sizes: of real
//! shops, with prices that tie, of both trades mixed, of odd sizes; with and without cans on the shelf.
//!
//! What is in a can: worked out from the US gallon of 231 cubic inches (NIST Handbook 44, App. C; from memory) and the
//! inch of 25.4 mm (16 CFR 500.19, read).

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use coatings::can::{Offer, can, can_sizes, choose};
use serde::Deserialize;
use units::{System, Volume};

/// Sizes in picolitres, prices in hundredths.
#[derive(Deserialize)]
struct Fixture {
    cases: Vec<Case>,
}

#[derive(Debug, Deserialize)]
struct Case {
    need: u64,
    stock: Vec<u64>,
    sizes: Vec<u64>,
    prices: Vec<u64>,
    price: u64,
    left: u64,
    used: usize,
}

/// The problems that the benchmark and the solver are timed with.
#[derive(Deserialize)]
struct Bench {
    sizes: Vec<u64>,
    colours: Vec<Colour>,
}

#[derive(Deserialize)]
struct Colour {
    need: u64,
    prices: Vec<u64>,
    price: u64,
    left: u64,
}

fn volume(picolitres: u64) -> Volume {
    Volume::litres(picolitres as f64 / 1e12)
}

fn check(case: &Case) {
    let offers: Vec<Offer> = case
        .sizes
        .iter()
        .zip(&case.prices)
        .map(|(&size, &price)| Offer {
            size: volume(size),
            price,
        })
        .collect();
    let stock: Vec<Volume> = case.stock.iter().map(|&can| volume(can)).collect();
    let ours = choose(volume(case.need), &stock, &offers).unwrap();
    assert!(ours.proven, "{case:?}");
    assert_eq!(ours.price, case.price, "{case:?} {ours:?}");
    let left = (ours.left.as_litres() * 1e12).round() as u64;
    assert_eq!(left, case.left, "{case:?} {ours:?}");
    assert_eq!(ours.used_from_stock, case.used, "{case:?}");
    let counts = || ours.counts.iter().map(|&count| u64::from(count));
    let price: u64 = counts()
        .zip(&case.prices)
        .map(|(count, price)| count * price)
        .sum();
    let bought: u64 = counts().zip(&case.sizes).map(|(count, size)| count * size).sum();
    let held: u64 = case.stock.iter().take(case.used).sum();
    assert_eq!(
        (price, held + bought - case.need),
        (case.price, case.left),
        "{case:?}"
    );
}

#[test]
fn price_and_leftover_are_those_of_the_solver() {
    let fixture: Fixture = outside::fixture("cans.json").unwrap();
    assert!(
        fixture.cases.len() >= 240,
        "only {} problems",
        fixture.cases.len()
    );
    fixture.cases.iter().for_each(check);
}

#[test]
fn the_problems_that_are_timed_have_the_same_answers() {
    let bench: Bench = outside::fixture("cans-bench.json").unwrap();
    assert_eq!((bench.colours.len(), bench.sizes.len()), (10, 8));
    for colour in bench.colours {
        check(&Case {
            need: colour.need,
            stock: Vec::new(),
            sizes: bench.sizes.clone(),
            prices: colour.prices,
            price: colour.price,
            left: colour.left,
            used: 0,
        });
    }
}

/// Calculated: 231 x 2.54^3 mL are 3785.411784 mL, a quart is 946.352946 mL, a pint 473.176473 mL, eight fluid ounces
/// 236.5882365 mL. 16 CFR 500.19 prints the pint as 473.177 mL, which these digits do not round to.
#[test]
fn what_is_in_a_can() {
    let millilitres = |key| can(key).unwrap().volume().as_millilitres();
    for (key, wanted) in [
        ("us-gallon", 3_785.411_784),
        ("us-quart", 946.352_946),
        ("us-pint", 473.176_473),
        ("us-8-fl-oz", 236.588_236_5),
        ("us-4-fl-oz", 4.0 * 29.573_529_562_5),
        ("metric-250-ml", 250.0),
    ] {
        assert!((millilitres(key) - wanted).abs() < 1e-9, "{key}");
    }
    assert!((millilitres("us-gallon") - 231.0 * 2.54 * 2.54 * 2.54).abs() < 1e-9);
    assert_ne!((millilitres("us-pint") * 1e3).round(), 473_177.0);
}

/// Common practice, no source: a need is rounded up to the next can, never down. A hair more than a can is another can.
#[test]
fn a_need_is_never_rounded_down() {
    for size in can_sizes(System::UsCustomary)
        .iter()
        .chain(can_sizes(System::Metric))
    {
        let offers = [Offer {
            size: size.volume(),
            price: 100,
        }];
        for (share, cans) in [(0.01, 1), (1.0, 1), (1.000_001, 2), (2.5, 3)] {
            let bought = choose(size.volume() * share, &[], &offers).unwrap();
            assert_eq!(bought.counts, [cans], "{} x {share}", size.key);
        }
    }
}
