//! The timetable: when each step is done.

use crate::hours::Opening;
use crate::moment::Moment;
use crate::outcome::Outcome;

/// When each step of all jobs is done.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Timetable {
    /// The work, by when it begins.
    pub works: Vec<Work>,
    /// How each job ends, in the order in which the jobs were given.
    pub outcomes: Vec<Outcome>,
}

/// One step at its time.
#[derive(Clone, Debug, PartialEq)]
pub struct Work {
    /// The index of the job.
    pub job: usize,
    /// The index of the step.
    pub step: usize,
    /// One stretch, or several where the step is split over pauses.
    pub stretches: Vec<Opening>,
}

impl Work {
    /// When it begins.
    pub fn start(&self) -> Option<Moment> {
        self.stretches.first().map(|stretch| stretch.from)
    }

    /// When it ends.
    pub fn end(&self) -> Option<Moment> {
        self.stretches.last().map(|stretch| stretch.to)
    }
}

impl Timetable {
    /// The work of a step.
    pub fn work(&self, job: usize, step: usize) -> Option<&Work> {
        self.works
            .iter()
            .find(|work| work.job == job && work.step == step)
    }

    /// When the last work ends.
    pub fn end(&self) -> Option<Moment> {
        self.works.iter().filter_map(Work::end).max()
    }
}
