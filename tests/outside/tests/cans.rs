//! The choice of cans against an outside solver.
//!
//! Outside source: HiGHS, the mixed-integer solver of SciPy, through `scripts/cans.py`, which also checks what the
//! solver says in whole numbers and tries the smaller problems out. 300 problems of one to eight sizes: of real
//! shops, with prices that tie, of both trades mixed, of odd sizes; with and without cans on the shelf.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use coatings::can::{Offer, choose};
use serde::Deserialize;
use units::Volume;

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
