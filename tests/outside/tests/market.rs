//! What price notes tell, against SciPy and NumPy through `scripts/market.py`, on invented notes.
//!
//! Sources of the methods: Hyndman & Fan 1996 (quantiles, type 7), Conover (interval of the median), Theil 1950 and
//! Sen 1968 (slope), Kendall (tau), Kaplan & Meier 1958 (days until gone).

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use serde::Deserialize;
use workshop::market::{Standing, kendall, median_days, median_interval, quartiles, theil_sen};

#[derive(Deserialize)]
struct Fixture {
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    days: Vec<f64>,
    prices: Vec<f64>,
    stood: Vec<u32>,
    gone: Vec<bool>,
    quartiles: [f64; 5],
    interval: [f64; 2],
    coverage: f64,
    slope: [f64; 3],
    tau: [f64; 2],
    pace: Option<u32>,
}

fn near(found: &[f64], wanted: &[f64], case: usize) {
    assert_eq!(found.len(), wanted.len());
    for (found, wanted) in found.iter().zip(wanted) {
        let gap = (found - wanted).abs();
        assert!(
            gap <= 1e-9 * wanted.abs().max(1e-3),
            "case {case}: {found} is not {wanted}"
        );
    }
}

#[test]
fn as_scipy_says() {
    let fixture: Fixture = serde_json::from_str(include_str!("../fixtures/market.json")).unwrap();
    assert_eq!(fixture.cases.len(), 120);
    for (i, case) in fixture.cases.iter().enumerate() {
        let mut sorted = case.prices.clone();
        sorted.sort_by(f64::total_cmp);
        let q = quartiles(&sorted).unwrap();
        near(
            &[q.lowest, q.lower, q.median, q.upper, q.highest],
            &case.quartiles,
            i,
        );
        let interval = median_interval(&sorted).unwrap();
        near(&[interval.low, interval.high], &case.interval, i);
        near(&[interval.coverage], &[case.coverage], i);
        let slope = theil_sen(&case.days, &case.prices).unwrap();
        near(&[slope.slope, slope.low, slope.high], &case.slope, i);
        let tau = kendall(&case.days, &case.prices).unwrap();
        near(&[tau.tau, tau.p], &case.tau, i);
        let mut standing: Vec<Standing> = case
            .stood
            .iter()
            .zip(&case.gone)
            .map(|(&days, &is_gone)| Standing { days, is_gone })
            .collect();
        assert_eq!(median_days(&mut standing), case.pace, "case {i}");
    }
}
