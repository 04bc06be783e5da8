//! The end of the last step against the best that any order of the steps gives, for small workshops.
//!
//! The cases are the same in every run, so the bounds are what is reached. A plan may take some times as long as the best
//! where the best ends within a few hours and the plan just misses that opening: then a closed evening, or a closed Sunday,
//! comes between. So the bound that counts is in days on which the workshop is open.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

mod common;

use common::{earliest, hours, jobs, start};
use proptest::strategy::{Just, Strategy, ValueTree};
use proptest::test_runner::TestRunner;
use timetable::{Hours, Job, Moment, schedule};

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
        let (_, to) = earliest(hours, step, ready.max(hands));
        done[at] = (next + 1, to.after(i64::from(step.wait)));
        optimum(jobs, hours, done, to, end.max(to), best);
        done[at] = (next, ready);
    }
    if is_complete {
        *best = end;
    }
}

/// A plan against the best one.
struct Found {
    /// How many times as long it takes, from the start to the end of the last step.
    ratio: f64,
    /// How many days with working hours later it ends.
    days: usize,
}

const CASES: usize = 300;

/// Plans of made-up jobs, the nearest to the optimum first.
fn plans(hours: impl Strategy<Value = Hours>) -> Vec<Found> {
    let mut runner = TestRunner::deterministic();
    let strategy = (jobs(3, 3), hours);
    let mut plans = Vec::new();
    while plans.len() < CASES {
        let (jobs, hours) = strategy.new_tree(&mut runner).unwrap().current();
        let Some(found) = schedule(&jobs, &hours, start()).end() else {
            continue;
        };
        if jobs.len() < 2 {
            continue;
        }
        let mut done = vec![(0, start()); jobs.len()];
        let mut best = found.after(1);
        optimum(&jobs, &hours, &mut done, start(), start(), &mut best);
        assert!(best <= found, "nothing ends before the optimum");
        let later = found.day().days() - best.day().days();
        let open = (1..=later).filter(|day| !hours.of(best.day().after(*day)).is_empty());
        plans.push(Found {
            ratio: found.since(start()) as f64 / best.since(start()) as f64,
            days: open.count(),
        });
    }
    plans.sort_by(|one, other| one.ratio.total_cmp(&other.ratio));
    plans
}

/// How many are as good as the best, the mean ratio, the worst ratio, how many end a day later, and the most days.
fn summary(name: &str, plans: &[Found]) -> (usize, f64, f64, usize, usize) {
    let best = plans.iter().filter(|plan| plan.ratio == 1.0).count();
    let mean = plans.iter().map(|plan| plan.ratio).sum::<f64>() / plans.len() as f64;
    let worst = plans[plans.len() - 1].ratio;
    let late = plans.iter().filter(|plan| plan.days > 0).count();
    let most = plans.iter().map(|plan| plan.days).max().unwrap_or(0);
    println!("{name}: best {best}, mean {mean:.4}, worst {worst:.4}, {late} on a later day, at most {most}");
    (best, mean, worst, late, most)
}

/// Monday to Saturday, 9 to 12 and 13 to 17.
#[test]
fn ordinary_weeks_end_near_the_optimum() {
    let day = vec![(540, 720), (780, 1020)];
    let week = std::array::from_fn(|k| if k < 6 { day.clone() } else { Vec::new() });
    let (best, mean, worst, late, most) = summary("ordinary weeks", &plans(Just(Hours::new(week, &[]))));
    assert!(best >= 215 && mean < 1.128 && worst < 3.495);
    assert!(late <= 31 && most <= 1);
}

/// Odd hours of made-up weeks, often with a single long day.
#[test]
fn odd_weeks_end_within_reach_of_the_optimum() {
    let (best, mean, worst, late, most) = summary("odd weeks", &plans(hours()));
    assert!(best >= 227 && mean < 1.081 && worst < 3.869);
    assert!(late <= 32 && most <= 1);
}
