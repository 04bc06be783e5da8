//! The timetable of all jobs, by list scheduling for one worker.

use std::cmp::Reverse;

use crate::hours::{Hours, Opening};
use crate::moment::Moment;
use crate::outcome::{Obstacle, outcome};
use crate::plan::{Timetable, Work};
use crate::step::{Job, Step};

/// The progress of a job.
struct Progress<'a> {
    job: &'a Job,
    /// The end times of the steps that are placed.
    ends: Vec<Moment>,
    /// The earliest start of the job.
    begin: Moment,
    /// The earliest start of the next step by its waits.
    ready: Moment,
    stuck: Option<Obstacle>,
    /// The minutes of work and waits from the start of each step to the end of the job.
    chains: Vec<u64>,
}

/// The next step of a job at its earliest start.
struct Candidate {
    /// The index of the job.
    job: usize,
    start: Moment,
    /// How long the chain of work and waits ahead is, minutes; zero where that does not count.
    chain: u64,
    stretches: Vec<Opening>,
}

/// Which of the jobs that could begin at the same moment goes first.
#[derive(Clone, Copy, PartialEq)]
enum Priority {
    /// The one that was given first.
    AsGiven,
    /// The one with the longest chain of work and waits ahead.
    LongestChain,
}

/// Schedules the steps of all jobs within the working hours, from a moment on.
///
/// Each job's steps keep their order. No step begins before its wait is over or outside the hours. Whenever the maker is
/// free, the job goes on whose next step can begin first (list scheduling without delay; Graham 1966). Two priority rules
/// are tried for steps that can begin at the same moment. The plan with fewer days late in all wins, then the one
/// that ends first, then the one in the given order. The same input always gives the same timetable.
pub fn schedule(jobs: &[Job], hours: &Hours, start: Moment) -> Timetable {
    let as_given = plan(jobs, hours, start, Priority::AsGiven);
    if jobs.len() < 2 {
        return as_given;
    }
    let longest_first = plan(jobs, hours, start, Priority::LongestChain);
    let cost = |plan: &Timetable| {
        let late = plan.outcomes.iter().filter_map(|outcome| outcome.days_late);
        let late: i64 = late.map(|days| i64::from(days.max(0))).sum();
        (late, plan.end())
    };
    if cost(&longest_first) < cost(&as_given) {
        longest_first
    } else {
        as_given
    }
}

/// The timetable under one priority rule.
fn plan(jobs: &[Job], hours: &Hours, start: Moment, priority: Priority) -> Timetable {
    let done = jobs.iter().flat_map(|job| job.steps.iter().zip(&job.done));
    let mut pass = Pass {
        hours,
        jobs: jobs.iter().map(|job| Progress::of(job, start)).collect(),
        works: Vec::new(),
        wet: done.filter_map(|(step, &end)| step.wet_until(end)).max(),
        priority,
    };
    let mut now = start;
    while let Some(candidate) = pass.earliest_candidate(now) {
        now = candidate
            .stretches
            .last()
            .map_or(candidate.start, |stretch| stretch.to);
        pass.take(candidate, now);
    }
    units::sort_few(&mut pass.works, |one, other| one.start() < other.start());
    let outcomes = pass
        .jobs
        .iter()
        .map(|progress| outcome(progress.job, &progress.ends, progress.stuck));
    Timetable {
        outcomes: outcomes.collect(),
        works: pass.works,
    }
}

impl<'a> Progress<'a> {
    /// A job that begins at `start` or at its own day, with the steps that are done.
    fn of(job: &'a Job, start: Moment) -> Self {
        let begin = job.begin.map_or(start, |begin| begin.max(start));
        let mut progress = Progress {
            job,
            ends: Vec::new(),
            begin,
            ready: begin,
            stuck: None,
            chains: job.chains(),
        };
        for (_, &end) in job.steps.iter().zip(&job.done) {
            progress.step_done(end);
        }
        progress
    }

    fn next(&self) -> Option<&'a Step> {
        self.job
            .steps
            .get(self.ends.len())
            .filter(|_| self.stuck.is_none())
    }

    /// Records the end of the next step and updates the earliest start of the one after it.
    fn step_done(&mut self, end: Moment) {
        self.ends.push(end);
        let before = self.job.before(self.ends.len());
        let over = |place: &usize| {
            let (step, end) = (self.job.steps.get(*place)?, self.ends.get(*place)?);
            Some(end.after(i64::from(step.wait)))
        };
        let ready = before.iter().filter_map(over).max();
        self.ready = ready.map_or(self.begin, |ready| ready.max(self.begin));
    }
}

struct Pass<'a> {
    hours: &'a Hours,
    jobs: Vec<Progress<'a>>,
    works: Vec<Work>,
    /// When the last wet coat no longer takes dust.
    wet: Option<Moment>,
    priority: Priority,
}

impl Pass<'_> {
    /// The step that can begin first from `now` on. A job that cannot go on is marked as stuck.
    fn earliest_candidate(&mut self, now: Moment) -> Option<Candidate> {
        let mut earliest: Option<Candidate> = None;
        for (place, progress) in self.jobs.iter_mut().enumerate() {
            let Some(step) = progress.next() else { continue };
            match earliest_stretches(step, progress, self.hours, (now, self.wet)) {
                Ok(stretches) => {
                    let start = stretches.first().map_or(now, |stretch| stretch.from);
                    let chain = match self.priority {
                        Priority::AsGiven => 0,
                        Priority::LongestChain => {
                            progress.chains.get(progress.ends.len()).copied().unwrap_or(0)
                        }
                    };
                    let rank = (start, Reverse(chain));
                    if earliest
                        .as_ref()
                        .is_none_or(|first| rank < (first.start, Reverse(first.chain)))
                    {
                        earliest = Some(Candidate {
                            job: place,
                            start,
                            chain,
                            stretches,
                        });
                    }
                }
                Err(stuck) => progress.stuck = Some(stuck),
            }
        }
        earliest
    }

    fn take(&mut self, candidate: Candidate, end: Moment) {
        let Some(progress) = self.jobs.get_mut(candidate.job) else {
            return;
        };
        // `None` is less than any moment.
        self.wet = self.wet.max(progress.next().and_then(|step| step.wet_until(end)));
        self.works.push(Work {
            job: candidate.job,
            step: progress.ends.len(),
            stretches: candidate.stretches,
        });
        progress.step_done(end);
    }
}

/// The earliest stretches of the next step of a job from `now` on. Dusty steps wait until `wet`.
fn earliest_stretches(
    step: &Step,
    progress: &Progress,
    hours: &Hours,
    (now, wet): (Moment, Option<Moment>),
) -> Result<Vec<Opening>, Obstacle> {
    let place = progress.ends.len();
    if let Some(caution) = step.stopped {
        return Err(Obstacle::Air { step: place, caution });
    }
    let ready = progress.ready.max(now);
    let from = match wet {
        Some(wet) if step.dusty => wet.max(ready),
        _ => ready,
    };
    let stretches = hours.place(step.minutes, step.may_split, from);
    stretches.ok_or_else(|| match hours.next(from) {
        None => Obstacle::NoHours,
        Some(_) => Obstacle::TooLong { step: place },
    })
}
