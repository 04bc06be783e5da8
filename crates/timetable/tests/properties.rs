//! What holds for every timetable: one pair of hands, working hours, waits, order, no idle hands.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

mod common;

use common::{earliest, hours, jobs, open_until, start, step};
use proptest::prelude::*;
use timetable::{Hours, Job, Moment, Timetable, Work, schedule};

/// When the wait before a step is over.
fn ready(jobs: &[Job], timetable: &Timetable, work: &Work) -> Moment {
    let before = jobs[work.job].before(work.step).into_iter();
    let over = before.map(|before| {
        let end = timetable.work(work.job, before).unwrap().end().unwrap();
        end.after(i64::from(jobs[work.job].steps[before].wait))
    });
    over.max().unwrap_or_else(start)
}

fn check(jobs: &[Job], hours: &Hours, timetable: &Timetable) {
    for pair in timetable.works.windows(2) {
        assert!(pair[0].end() <= pair[1].start(), "hands at two things: {pair:?}");
    }
    for work in &timetable.works {
        for stretch in &work.stretches {
            let end = open_until(hours, stretch.from);
            assert!(
                end.is_some_and(|end| stretch.to <= end),
                "outside the hours: {stretch:?}"
            );
        }
        let step = &jobs[work.job].steps[work.step];
        assert!(step.may_split || work.stretches.len() == 1, "split: {work:?}");
        assert!(
            work.start().unwrap() >= ready(jobs, timetable, work),
            "wait cut short: {work:?}"
        );
        let minutes: i64 = work.stretches.iter().map(|s| s.to.since(s.from)).sum();
        assert_eq!(minutes, i64::from(step.minutes));
    }
    for (index, job) in jobs.iter().enumerate() {
        let of_job = timetable.works.iter().filter(|work| work.job == index);
        let steps: Vec<usize> = of_job.map(|work| work.step).collect();
        let all: Vec<usize> = (0..job.steps.len()).collect();
        assert_eq!(steps, all, "each step once and in order");
        assert_eq!(timetable.outcomes[index].stuck, None);
    }
}

/// While the hands rest, no step could have begun whose wait is over.
fn check_no_rest(jobs: &[Job], hours: &Hours, timetable: &Timetable) {
    let mut free = start();
    for work in &timetable.works {
        let busy = work.start().unwrap();
        let later = timetable
            .works
            .iter()
            .filter(|other| other.start().unwrap() >= busy);
        for other in later {
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

/// Jobs whose steps come after any of those before them.
fn jobs_in_chains(most: usize, steps: usize) -> impl Strategy<Value = Vec<Job>> {
    let step = (step(), any::<u8>());
    let job = proptest::collection::vec(step, 0..=steps).prop_map(|steps| {
        let chained = steps.into_iter().enumerate().map(|(place, (step, after))| {
            step.after((0..place).filter(|before| (after >> before) & 1 == 1).collect())
        });
        Job::new("job", chained.collect())
    });
    proptest::collection::vec(job, 1..=most)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn the_hands_never_rest(jobs in jobs(4, 4), hours in hours()) {
        let timetable = schedule(&jobs, &hours, start());
        check(&jobs, &hours, &timetable);
        check_no_rest(&jobs, &hours, &timetable);
        prop_assert_eq!(&timetable, &schedule(&jobs, &hours, start()));
    }

    /// Steps that come after others than the one right before them keep the wait of each.
    #[test]
    fn the_waits_of_all_steps_before_are_kept(jobs in jobs_in_chains(3, 6), hours in hours()) {
        check(&jobs, &hours, &schedule(&jobs, &hours, start()));
    }

    /// What raises dust stays away from every coat that is still wet; everything else holds as before.
    #[test]
    fn no_dust_beside_a_wet_coat(mut jobs in jobs(4, 4), hours in hours(), kinds in any::<u64>()) {
        let steps = jobs.iter_mut().flat_map(|job| &mut job.steps);
        for (place, step) in steps.enumerate() {
            match (kinds >> (2 * place)) & 3 {
                0 => step.dusty = true,
                1 => step.wet = 150,
                _ => {}
            }
        }
        let timetable = schedule(&jobs, &hours, start());
        check(&jobs, &hours, &timetable);
        let step = |work: &Work| &jobs[work.job].steps[work.step];
        for dusty in timetable.works.iter().filter(|work| step(work).dusty) {
            for wet in timetable.works.iter().filter(|work| step(work).wet > 0) {
                let since = dusty.start().unwrap().since(wet.end().unwrap());
                prop_assert!(since < 0 || since >= i64::from(step(wet).wet), "{dusty:?} {wet:?}");
            }
        }
    }

    /// A job alone: the timetable is the chain laid out step by step.
    #[test]
    fn one_job_alone_is_its_chain(jobs in jobs(1, 6), hours in hours()) {
        let timetable = schedule(&jobs, &hours, start());
        let mut ready = start();
        for (index, step) in jobs[0].steps.iter().enumerate() {
            let (from, to) = earliest(&hours, step, ready);
            let work = timetable.work(0, index).unwrap();
            prop_assert_eq!((work.start(), work.end()), (Some(from), Some(to)));
            ready = to.after(i64::from(step.wait));
        }
    }
}
