//! A timetable: what is done when.

use crate::hours::Opening;
use crate::moment::Moment;
use crate::outcome::Outcome;

/// What is done when, for all jobs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Timetable {
    /// The work, by when it begins.
    pub works: Vec<Work>,
    /// How each job ends, in the order in which the jobs were given.
    pub outcomes: Vec<Outcome>,
}

/// What a piece of work is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WorkKind {
    /// A step with the hands on it.
    Hands,
    /// A step that goes on by itself.
    ByItself,
    /// Scuffing before the step, because its recoat window was missed.
    Scuff,
}

/// One step at its time.
#[derive(Clone, Debug, PartialEq)]
pub struct Work {
    /// Which of the jobs.
    pub job: usize,
    /// Which of its steps; of a scuffing, the step that it is done for.
    pub step: usize,
    /// What it is.
    pub kind: WorkKind,
    /// One stretch, or several where the step is split over pauses.
    pub stretches: Vec<Opening>,
    /// What it came too late for.
    pub late: Option<Late>,
    /// Whether it is put off to a later opening of the workshop so that a step after it keeps its window.
    pub held: bool,
}

/// A step that begins too late after the one before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Late {
    /// What was missed.
    pub for_what: LateFor,
    /// By how many minutes.
    pub minutes: i64,
}

/// What a step came too late for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LateFor {
    /// The recoat window was missed; a scuffing was put in before it.
    WindowScuffed,
    /// The recoat window was missed, and the caller named nothing to mend it.
    Window,
    /// The longest wait is over: what the step was to go on is spoilt.
    Longest,
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

    /// Whether the maker's hands are at it.
    pub fn needs_hands(&self) -> bool {
        self.kind != WorkKind::ByItself
    }
}

impl Late {
    /// What a person is told.
    pub fn message(&self) -> &'static str {
        match self.for_what {
            LateFor::WindowScuffed => "The recoat window of the coat before is missed. Scuff it first.",
            LateFor::Window => {
                "The recoat window of the coat before is missed. Look at its label before you go on."
            }
            LateFor::Longest => "This is later than the step before allows. Plan them closer together.",
        }
    }
}

impl Timetable {
    /// How many steps come too late after the one before.
    pub fn late(&self) -> usize {
        self.works.iter().filter(|work| work.late.is_some()).count()
    }

    /// The work of a step, without the scuffing before it.
    pub fn work(&self, job: usize, step: usize) -> Option<&Work> {
        let is_it = |work: &&Work| work.job == job && work.step == step && work.kind != WorkKind::Scuff;
        self.works.iter().find(is_it)
    }

    /// When the last work ends.
    pub fn end(&self) -> Option<Moment> {
        self.works.iter().filter_map(Work::end).max()
    }
}
