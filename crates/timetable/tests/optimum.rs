//! The end of the last step against the best that any order of the steps gives, for small workshops.
//!
//! The bounds are what was measured when the tests were written: they keep the scheduler from getting worse, and do not say
//! that its worst cases are good.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

mod common;

use common::{earliest, hours, jobs, start};
use proptest::strategy::{Just, Strategy, ValueTree};
use proptest::test_runner::TestRunner;
use timetable::{Hours, Job, Moment, Rules, schedule};

/// The earliest end over all orders in which the hands can take the steps up. Each order is laid out as early as it
/// goes; no other timetable of that order ends earlier, because a step that begins earlier never ends later.
fn optimum(
    jobs: &[Job],
    hours: &Hours,
    done: &mut Vec<(usize, Moment)>,
    hands: Moment,
    end: Moment,
    best: &mut Moment,
) {
    if end >= *best {
        return;
    }
    let mut is_complete = true;
    for at in 0..jobs.len() {
        let (next, ready) = done[at];
        let Some(step) = jobs[at].steps.get(next) else {
            continue;
        };
        is_complete = false;
        let (_, to) = if step.hands {
            earliest(hours, step, ready.max(hands))
        } else {
            (
                ready,
                ready.after(i64::from(step.minutes.at(timetable::Pace::Likely))),
            )
        };
        done[at] = (next + 1, to.after(i64::from(step.wait.least())));
        let hands = if step.hands { to } else { hands };
        optimum(jobs, hours, done, hands, end.max(to), best);
        done[at] = (next, ready);
    }
    if is_complete {
        *best = end;
    }
}

/// How many times as long as the best it takes, from the start to the end of the last step, in order.
fn ratios(hours: impl Strategy<Value = Hours>) -> Vec<f64> {
    let mut runner = TestRunner::deterministic();
    let strategy = (jobs(false, 3, 3), hours);
    let mut ratios = Vec::new();
    while ratios.len() < CASES {
        let (jobs, hours) = strategy.new_tree(&mut runner).unwrap().current();
        let Some(found) = schedule(&jobs, &hours, start(), Rules::default()).end() else {
            continue;
        };
        if jobs.len() < 2 {
            continue;
        }
        let mut done = vec![(0, start()); jobs.len()];
        let mut best = found.after(1);
        optimum(&jobs, &hours, &mut done, start(), start(), &mut best);
        assert!(best <= found, "nothing ends before the optimum");
        ratios.push(found.since(start()) as f64 / best.since(start()) as f64);
    }
    ratios.sort_by(f64::total_cmp);
    ratios
}

const CASES: usize = 300;

/// How many are as good as the best, the mean, and the worst.
fn summary(name: &str, ratios: &[f64]) -> (usize, f64, f64) {
    let best = ratios.iter().filter(|ratio| **ratio == 1.0).count();
    let mean = ratios.iter().sum::<f64>() / ratios.len() as f64;
    let worst = ratios[ratios.len() - 1];
    let most = ratios[ratios.len() * 95 / 100];
    println!("{name}: best {best} of {CASES}, mean {mean:.4}, 95 % below {most:.3}, worst {worst:.3}");
    (best, mean, worst)
}

/// Monday to Saturday, 9 to 12 and 13 to 17. Measured: 243 of 300 are as good as the best, the mean is 1.09 times it, 95
/// in a hundred are below 1.84, the worst is 3.5.
#[test]
fn ordinary_weeks_end_near_the_optimum() {
    let day = vec![(540, 720), (780, 1020)];
    let week = std::array::from_fn(|k| if k < 6 { day.clone() } else { Vec::new() });
    let (best, mean, worst) = summary("ordinary weeks", &ratios(Just(Hours::new(week, &[]))));
    assert!(best >= 240 && mean < 1.10 && worst < 3.6);
}

/// Odd hours of made-up weeks, often with a single long day. Measured: 241 of 300, mean 1.10, 95 in a hundred below 1.60,
/// worst 5.9.
#[test]
fn odd_weeks_end_within_reach_of_the_optimum() {
    let (best, mean, worst) = summary("odd weeks", &ratios(hours()));
    assert!(best >= 240 && mean < 1.10 && worst < 6.0);
}
