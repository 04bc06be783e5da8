//! What holds for every timetable: one pair of hands, working hours, waits, order, no idle hands, honest flags.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

mod common;

use common::{earliest, hours, jobs, open_until, start, step};
use proptest::prelude::*;
use timetable::{Haste, Hours, Job, LateFor, Moment, Order, Rules, Timetable, Work, WorkKind, schedule};

fn rules(haste: Haste) -> Rules {
    Rules {
        haste,
        ..Rules::default()
    }
}

fn hands(timetable: &Timetable) -> Vec<&Work> {
    timetable.works.iter().filter(|work| work.needs_hands()).collect()
}

/// When the wait before a step is over.
fn ready(jobs: &[Job], timetable: &Timetable, work: &Work) -> Moment {
    let before = jobs[work.job].before(work.step).into_iter();
    let over = before.map(|before| {
        let end = timetable.work(work.job, before).unwrap().end().unwrap();
        end.after(i64::from(jobs[work.job].steps[before].wait.least()))
    });
    over.max().unwrap_or_else(start)
}

fn check(jobs: &[Job], hours: &Hours, timetable: &Timetable) {
    let works = hands(timetable);
    for pair in works.windows(2) {
        assert!(pair[0].end() <= pair[1].start(), "hands at two things: {pair:?}");
    }
    for work in &works {
        for stretch in &work.stretches {
            let end = open_until(hours, stretch.from);
            assert!(
                end.is_some_and(|end| stretch.to <= end),
                "outside the hours: {stretch:?}"
            );
        }
        let is_whole = work.kind == WorkKind::Scuff || jobs[work.job].steps[work.step].may_split;
        assert!(is_whole || work.stretches.len() == 1, "split: {work:?}");
    }
    for work in &timetable.works {
        assert!(
            work.start().unwrap() >= ready(jobs, timetable, work),
            "wait cut short: {work:?}"
        );
        if work.kind != WorkKind::Scuff {
            let minutes: i64 = work.stretches.iter().map(|s| s.to.since(s.from)).sum();
            let of = jobs[work.job].steps[work.step].minutes;
            assert_eq!(minutes, i64::from(of.at(timetable::Pace::Likely)));
        }
    }
    for (index, job) in jobs.iter().enumerate() {
        let of_job = timetable
            .works
            .iter()
            .filter(|work| work.job == index && work.kind != WorkKind::Scuff);
        let steps: Vec<usize> = of_job.map(|work| work.step).collect();
        let all: Vec<usize> = (0..job.steps.len()).collect();
        assert_eq!(steps, all, "each step once and in order");
        assert_eq!(timetable.outcomes[index].stuck, None);
    }
}

/// While the hands rest, no step could have begun whose wait is over.
fn check_no_rest(jobs: &[Job], hours: &Hours, timetable: &Timetable) {
    let mut free = start();
    for work in hands(timetable) {
        let busy = work.start().unwrap();
        for other in hands(timetable)
            .iter()
            .filter(|other| other.start().unwrap() >= busy)
        {
            let is_after_scuff = timetable.works.iter().any(|scuff| {
                scuff.kind == WorkKind::Scuff && (scuff.job, scuff.step) == (other.job, other.step)
            });
            // When the step was the next to do is when its scuffing ended, which the chain of works says already.
            if other.kind == WorkKind::Scuff || is_after_scuff {
                continue;
            }
            let from = ready(jobs, timetable, other).max(free);
            if from < busy {
                let step = &jobs[other.job].steps[other.step];
                let could = earliest(hours, step, from).0;
                assert!(could >= busy, "idle from {could} to {busy}, for {other:?}");
            }
        }
        free = work.end().unwrap();
    }
}

/// A step is late just where the waits say so.
fn check_flags(jobs: &[Job], timetable: &Timetable) {
    for work in timetable.works.iter().filter(|work| work.kind != WorkKind::Scuff) {
        let Some(before) = work.step.checked_sub(1) else {
            assert_eq!(work.late, None);
            continue;
        };
        let wait = &jobs[work.job].steps[before].wait;
        let end = timetable.work(work.job, before).unwrap().end().unwrap();
        let since = work.start().unwrap().since(end);
        let over = |limit: Option<u32>| {
            limit
                .map(|limit| since - i64::from(limit))
                .filter(|over| *over > 0)
        };
        let is_scuffed = timetable
            .works
            .iter()
            .any(|scuff| scuff.kind == WorkKind::Scuff && (scuff.job, scuff.step) == (work.job, work.step));
        let found = work.late.map(|late| (late.for_what, late.minutes));
        let window = if is_scuffed {
            LateFor::WindowScuffed
        } else {
            LateFor::Window
        };
        let expected = over(wait.longest())
            .map(|over| (LateFor::Longest, over))
            .or_else(|| over(wait.window()).map(|over| (window, over)));
        assert_eq!(found, expected);
        let can_mend = wait.scuff.is_some() && jobs[work.job].steps[work.step].hands;
        assert_eq!(is_scuffed, can_mend && over(wait.window()).is_some());
    }
}

/// Jobs whose steps come after any of those before them, all with the hands.
fn jobs_in_chains(most: usize, steps: usize) -> impl Strategy<Value = Vec<Job>> {
    let step = (step(true), any::<u8>());
    let job = proptest::collection::vec(step, 0..=steps).prop_map(|steps| {
        let chained = steps.into_iter().enumerate().map(|(place, (mut step, after))| {
            step.hands = true;
            step.after((0..place).filter(|before| (after >> before) & 1 == 1).collect())
        });
        Job::new("job", chained.collect())
    });
    proptest::collection::vec(job, 1..=most)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn without_windows_the_hands_never_rest(jobs in jobs(false, 4, 4), hours in hours(), due in any::<bool>()) {
        let order = if due { Order::Due } else { Order::Given };
        for haste in [Haste::Busy, Haste::Windows] {
            let timetable = schedule(&jobs, &hours, start(), Rules { order, ..rules(haste) });
            check(&jobs, &hours, &timetable);
            check_no_rest(&jobs, &hours, &timetable);
            prop_assert_eq!(timetable.late(), 0);
        }
    }

    #[test]
    fn with_windows_busy_hands_never_rest_either(jobs in jobs(true, 4, 4), hours in hours()) {
        let timetable = schedule(&jobs, &hours, start(), rules(Haste::Busy));
        check(&jobs, &hours, &timetable);
        check_no_rest(&jobs, &hours, &timetable);
        check_flags(&jobs, &timetable);
    }

    #[test]
    fn hands_that_rest_for_windows_keep_everything_else(jobs in jobs(true, 4, 4), hours in hours()) {
        let timetable = schedule(&jobs, &hours, start(), rules(Haste::Windows));
        check(&jobs, &hours, &timetable);
        check_flags(&jobs, &timetable);
        prop_assert_eq!(&timetable, &schedule(&jobs, &hours, start(), rules(Haste::Windows)));
    }

    /// Steps that come after others than the one right before them keep the wait of each.
    #[test]
    fn the_waits_of_all_steps_before_are_kept(jobs in jobs_in_chains(3, 6), hours in hours()) {
        for haste in [Haste::Busy, Haste::Windows] {
            check(&jobs, &hours, &schedule(&jobs, &hours, start(), rules(haste)));
        }
    }

    /// What raises dust stays away from every coat that is still wet; everything else holds as before.
    #[test]
    fn no_dust_beside_a_wet_coat(mut jobs in jobs(false, 4, 4), hours in hours(), kinds in any::<u64>()) {
        let steps = jobs.iter_mut().flat_map(|job| &mut job.steps);
        for (place, step) in steps.enumerate() {
            match (kinds >> (2 * place)) & 3 {
                0 => step.dusty = true,
                1 => step.wet = 150,
                _ => {}
            }
        }
        let timetable = schedule(&jobs, &hours, start(), Rules::default());
        check(&jobs, &hours, &timetable);
        let step = |work: &Work| &jobs[work.job].steps[work.step];
        let hands = hands(&timetable);
        for dusty in hands.iter().filter(|work| step(work).dusty) {
            for wet in hands.iter().filter(|work| step(work).wet > 0) {
                let since = dusty.start().unwrap().since(wet.end().unwrap());
                prop_assert!(since < 0 || since >= i64::from(step(wet).wet), "{dusty:?} {wet:?}");
            }
        }
    }

    /// A job alone: the timetable is the chain laid out step by step.
    #[test]
    fn one_job_alone_is_its_chain(jobs in jobs(false, 1, 6), hours in hours()) {
        let timetable = schedule(&jobs, &hours, start(), Rules::default());
        let mut ready = start();
        for (index, step) in jobs[0].steps.iter().enumerate() {
            let minutes = i64::from(step.minutes.at(timetable::Pace::Likely));
            let (from, to) = if step.hands { earliest(&hours, step, ready) } else { (ready, ready.after(minutes)) };
            let work = timetable.work(0, index).unwrap();
            prop_assert_eq!((work.start(), work.end()), (Some(from), Some(to)));
            ready = to.after(i64::from(step.wait.least()));
        }
    }
}
