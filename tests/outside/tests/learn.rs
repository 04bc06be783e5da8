//! What weighed jobs teach about a spreading rate, against numerical integration.
//!
//! Outside source: the model of Gelman et al., Bayesian Data Analysis, 3rd ed., s. 3.3 (from memory), integrated over a
//! grid with NumPy and SciPy by `scripts/learn.py`; the crate has the closed form.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use coatings::SourcedRange;
use coatings::learn::{Learned, Observed, learn};
use serde::Deserialize;

#[derive(Deserialize)]
struct Fixture {
    cases: Vec<Case>,
}

/// Rates in m2/L; a job is its rate and the standard uncertainty of that as a share.
#[derive(Deserialize)]
struct Case {
    label: (f64, f64),
    jobs: Vec<(f64, f64)>,
    /// Where the next job falls in 95 of 100.
    next: (f64, f64),
    /// Where the mean lies in 95 of 100.
    mean: (f64, f64),
    /// The first with the uncertainty of each job added to the scatter, in place of a weight.
    exact: (f64, f64),
}

fn cases() -> Vec<(Case, Learned)> {
    let fixture: Fixture = serde_json::from_str(include_str!("../fixtures/learn.json")).unwrap();
    let learned = |case: Case| {
        let jobs = case
            .jobs
            .iter()
            .map(|(rate, uncertainty)| Observed::of_rate(*rate, *uncertainty).unwrap());
        let learned = learn(
            SourcedRange::own(case.label.0, case.label.1),
            &jobs.collect::<Vec<_>>(),
        );
        (case, learned)
    };
    fixture.cases.into_iter().map(learned).collect()
}

/// How far two ranges are apart at their farther end, as a share.
fn apart((low, high): (f64, f64), other: (f64, f64)) -> f64 {
    (low / other.0 - 1.0).abs().max((high / other.1 - 1.0).abs())
}

/// The grid leaves out the far ends of the Student tails, which are heaviest after one job: 7e-5 there, 2e-5 or less for
/// ranges of the next job after two.
#[test]
fn the_closed_form_is_the_integral() {
    for (case, learned) in cases() {
        let figure = learned.range();
        let next = apart((figure.low, figure.high), case.next);
        let mean = apart(learned.mean_between(), case.mean);
        println!("{} jobs: {next:.1e} {mean:.1e}", case.jobs.len());
        assert!(next < 1e-4 && mean < 1e-4, "{:?}: {next} {mean}", case.label);
    }
}

/// The ends are 1.6 % apart at most; the crate says so.
#[test]
fn a_weight_stands_in_for_the_uncertainty_of_a_job() {
    let off = cases().into_iter().map(|(case, learned)| {
        let figure = learned.range();
        apart((figure.low, figure.high), case.exact)
    });
    let worst = off.fold(0.0, f64::max);
    println!("worst {worst:.4}");
    assert!(worst < 0.02, "{worst}");
}
