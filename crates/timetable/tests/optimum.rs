//! The plan against the true optimum: the earliest end of the last step that any order of the steps gives, found by
//! trying every order in small workshops.
//!
//! The cases are the same in every run, and each bound is the worst that is really found. Where the workshop never
//! closes, the ratio to the optimum says how good the plan is. With working hours a plan that just misses an opening
//! ends on the next open day, and the ratio of a short job grows with the night between. So open days count too.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

mod common;

use common::{earliest, hours, jobs, start};
use proptest::prelude::any;
use proptest::strategy::{Just, Strategy, ValueTree};
use proptest::test_runner::TestRunner;
use timetable::{Hours, Job, Moment, schedule};

/// A search through every order in which one person can do the steps. Each order is laid out as early as it goes.
/// No other timetable of that order ends earlier, because a step that begins earlier never ends later.
struct Search<'a> {
    jobs: &'a [Job],
    hours: &'a Hours,
    /// When the steps of each job end that are laid out.
    ends: Vec<Vec<Moment>>,
    /// The earliest end of the last step that is known.
    best: Moment,
}

impl Search<'_> {
    /// Tries all orders of the steps that are left: from `free` on, with wet coats until `wet`.
    fn run(&mut self, free: Moment, wet: Moment) {
        if free >= self.best {
            return;
        }
        let mut is_complete = true;
        for (at, job) in self.jobs.iter().enumerate() {
            let next = self.ends[at].len();
            let Some(step) = job.steps.get(next) else {
                continue;
            };
            is_complete = false;
            let waits = job.before(next).into_iter();
            let over = waits.map(|before| self.ends[at][before].after(i64::from(job.steps[before].wait)));
            let ready = over.fold(free, Moment::max);
            let from = if step.dusty { ready.max(wet) } else { ready };
            let (_, to) = earliest(self.hours, step, from);
            self.ends[at].push(to);
            let is_wet = step.wet > 0;
            self.run(
                to,
                if is_wet {
                    wet.max(to.after(i64::from(step.wet)))
                } else {
                    wet
                },
            );
            self.ends[at].pop();
        }
        if is_complete {
            self.best = free;
        }
    }
}

/// Plans against their optimum.
#[derive(Debug, Default)]
struct Found {
    /// How many plans are optimal.
    optimal: usize,
    /// The mean ratio of the time to the end of the last step to that of the optimum, in thousandths, rounded.
    mean: u64,
    /// The worst ratio, in thousandths, rounded.
    worst: u64,
    /// How many plans end on a later day.
    late: usize,
    /// How many open days later the worst plan ends.
    days: usize,
}

const CASES: usize = 300;

fn found(jobs: impl Strategy<Value = Vec<Job>>, hours: impl Strategy<Value = Hours>) -> Found {
    let mut runner = TestRunner::deterministic();
    let strategy = (jobs, hours);
    let mut found = Found::default();
    let mut ratios = Vec::new();
    while ratios.len() < CASES {
        let (jobs, hours) = strategy.new_tree(&mut runner).unwrap().current();
        let Some(end) = schedule(&jobs, &hours, start()).end().filter(|_| jobs.len() > 1) else {
            continue;
        };
        let mut search = Search {
            jobs: &jobs,
            hours: &hours,
            ends: vec![Vec::new(); jobs.len()],
            best: end.after(1),
        };
        search.run(start(), start());
        let best = search.best;
        assert!(best <= end, "nothing ends before the optimum");
        let later = end.day().days() - best.day().days();
        let open = (1..=later).filter(|day| !hours.of(best.day().after(*day)).is_empty());
        let days = open.count();
        found.optimal += usize::from(best == end);
        found.late += usize::from(days > 0);
        found.days = found.days.max(days);
        ratios.push(end.since(start()) as f64 / best.since(start()) as f64);
    }
    let thousandths = |ratio: f64| (1000.0 * ratio).round() as u64;
    found.mean = thousandths(ratios.iter().sum::<f64>() / CASES as f64);
    found.worst = thousandths(ratios.into_iter().fold(1.0, f64::max));
    found
}

fn check(found: &Found, bound: &Found) {
    println!("{found:?}");
    assert!(found.optimal >= bound.optimal, "{found:?}");
    assert!(
        found.mean <= bound.mean && found.worst <= bound.worst,
        "{found:?}"
    );
    assert!(found.late <= bound.late && found.days <= bound.days, "{found:?}");
}

/// Monday to Saturday, 9 to 12 and 13 to 17.
fn ordinary() -> Hours {
    let day = vec![(540, 720), (780, 1020)];
    let week = std::array::from_fn(|k| if k < 6 { day.clone() } else { Vec::new() });
    Hours::new(week, &[])
}

/// Day and night.
fn always() -> Hours {
    Hours::new(std::array::from_fn(|_| vec![(0, 1440)]), &[])
}

/// Three jobs of up to three steps: some raise dust, some put on a coat that stays wet for a while.
fn dusty_jobs() -> impl Strategy<Value = Vec<Job>> {
    (jobs(3, 3), any::<u64>()).prop_map(|(mut jobs, kinds)| {
        let steps = jobs.iter_mut().flat_map(|job| &mut job.steps);
        for (place, step) in steps.enumerate() {
            match (kinds >> (2 * place)) & 3 {
                0 => step.dusty = true,
                1 => step.wet = 150,
                _ => {}
            }
        }
        jobs
    })
}

#[test]
fn plans_without_closing_hours_are_near_the_optimum() {
    let bound = Found {
        optimal: 251,
        mean: 1012,
        worst: 1212,
        late: 7,
        days: 1,
    };
    check(&found(jobs(3, 3), Just(always())), &bound);
}

#[test]
fn plans_with_dust_are_near_the_optimum() {
    let bound = Found {
        optimal: 253,
        mean: 1013,
        worst: 1331,
        late: 5,
        days: 1,
    };
    check(&found(dusty_jobs(), Just(always())), &bound);
}

#[test]
fn ordinary_weeks_end_near_the_optimum() {
    let bound = Found {
        optimal: 257,
        mean: 1025,
        worst: 2502,
        late: 11,
        days: 1,
    };
    check(&found(jobs(3, 3), Just(ordinary())), &bound);
}

/// Odd hours of made-up weeks, often with a single long day.
#[test]
fn odd_weeks_end_near_the_optimum() {
    let bound = Found {
        optimal: 268,
        mean: 1019,
        worst: 2298,
        late: 8,
        days: 1,
    };
    check(&found(jobs(3, 3), hours()), &bound);
}
