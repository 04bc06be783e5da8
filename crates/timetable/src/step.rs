//! The work to schedule: jobs, each a chain of steps.

use units::Day;

use crate::air::Air;
use crate::climate::{AirCaution, AirLimits, LabelAir, drying_percent, forbidden};
use crate::minutes::scaled;
use crate::moment::Moment;
use crate::stage::Stage;

/// One step of the work on a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// A stable id, unique within its job.
    pub key: String,
    /// Its name on screen.
    pub name: String,
    /// How many minutes of work it takes.
    pub minutes: u32,
    /// Whether it may be split over a pause.
    pub may_split: bool,
    /// The least wait before the steps that depend on it, minutes.
    pub wait: u32,
    /// The indices of the steps that it depends on; it keeps the wait of each. `None` means the previous
    /// step.
    pub after: Option<Vec<usize>>,
    /// The drying times of its material.
    pub cure: Cure,
    /// The air limits of its material; `None` for a step without a coat.
    pub limits: Option<AirLimits>,
    /// Why the air does not allow it; the step is not scheduled then. See [`Job::in_air`].
    pub stopped: Option<AirCaution>,
    /// Whether it raises dust that would settle in a wet coat.
    pub dusty: bool,
    /// How long dust sticks to its coat, minutes. Nothing is sanded in the room meanwhile.
    pub wet: u32,
}

/// The drying times of a coat, in minutes from the end of its step; `None` where the label does not say.
///
/// The wait of the step, not this, decides when the next coat may follow.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Cure {
    /// Fit for another coat, where one more should be wanted.
    pub recoat: Option<u32>,
    /// Ready to use with care, and so to sell.
    pub sell: Option<u32>,
    /// Fully cured: ready for cleaning and hard use.
    pub full: Option<u32>,
}

/// The work on one piece. Zones with another finish can be coated while the coat of one zone dries.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// A stable id.
    pub key: String,
    /// Its name on screen.
    pub name: String,
    /// The steps in their order.
    pub steps: Vec<Step>,
    /// The end times of the steps that are done.
    pub done: Vec<Moment>,
    /// Before this nothing begins, such as when the piece is not there yet.
    pub begin: Option<Moment>,
    /// On which day it should be ready.
    pub due: Option<Day>,
}

impl Cure {
    /// The minutes to a stage, if the label gives them.
    pub fn to(&self, stage: Stage) -> Option<u32> {
        match stage {
            Stage::Recoat => self.recoat,
            Stage::Sell => self.sell,
            Stage::Cured => self.full,
        }
    }
}

impl Cure {
    /// All times scaled to `percent`, but never shortened.
    fn slower(self, percent: u32) -> Self {
        let slower = |time: Option<u32>| time.map(|minutes| scaled(minutes, percent.max(100)));
        Cure {
            recoat: slower(self.recoat),
            sell: slower(self.sell),
            full: slower(self.full),
        }
    }
}

impl Step {
    /// A step that may not be split, without a wait, cure or limits; its key is its name.
    pub fn new(name: &str, minutes: u32) -> Self {
        Step {
            key: name.to_string(),
            name: name.to_string(),
            minutes,
            may_split: false,
            wait: 0,
            after: None,
            cure: Cure::default(),
            limits: None,
            stopped: None,
            dusty: false,
            wet: 0,
        }
    }

    /// With a least wait after it, minutes.
    pub fn then(mut self, wait: u32) -> Self {
        self.wait = wait;
        self
    }

    /// May be split over a pause.
    pub fn split(mut self) -> Self {
        self.may_split = true;
        self
    }

    /// Comes after these steps of its job, and not after the one right before it.
    pub fn after(mut self, steps: Vec<usize>) -> Self {
        self.after = Some(steps);
        self
    }

    /// When dust no longer sticks to its coat, if the step ends then; `None` without a wet coat.
    pub(crate) fn wet_until(&self, end: Moment) -> Option<Moment> {
        (self.wet > 0).then(|| end.after(i64::from(self.wet)))
    }
}

impl Job {
    /// The indices of the steps that a step depends on. All of them come earlier.
    pub fn before(&self, step: usize) -> Vec<usize> {
        match self.steps.get(step).and_then(|step| step.after.as_ref()) {
            Some(after) => after.iter().copied().filter(|before| *before < step).collect(),
            None => step.checked_sub(1).into_iter().collect(),
        }
    }

    /// The minutes of work and waits from the start of each step to the end of the job, along the longest chain of steps
    /// that wait for each other.
    pub(crate) fn chains(&self) -> Vec<u64> {
        let mut chains: Vec<u64> = self.steps.iter().map(|step| u64::from(step.minutes)).collect();
        for place in (0..self.steps.len()).rev() {
            let ahead = chains.get(place).copied().unwrap_or(0);
            for before in self.before(place) {
                if let (Some(of), Some(chain)) = (self.steps.get(before), chains.get_mut(before)) {
                    *chain = (*chain).max(u64::from(of.minutes) + u64::from(of.wait) + ahead);
                }
            }
        }
        chains
    }

    /// The job in this air, with pieces as warm as `surface`, degrees Celsius: what dries takes longer where it is cold or
    /// damp, and a coat that must not go on in it is stopped.
    pub fn in_air(mut self, air: Air, surface: f64) -> Self {
        let percent = drying_percent(air, LabelAir::USUAL);
        for step in &mut self.steps {
            step.wait = scaled(step.wait, percent.max(100));
            step.cure = step.cure.slower(percent);
            step.wet = scaled(step.wet, percent);
            step.stopped = step.limits.and_then(|limits| forbidden(air, surface, limits));
        }
        self
    }

    /// A job without finished steps, start day or due day; its key is its name.
    pub fn new(name: &str, steps: Vec<Step>) -> Self {
        Job {
            key: name.to_string(),
            name: name.to_string(),
            steps,
            done: Vec::new(),
            begin: None,
            due: None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: the first coat is followed by 240 minutes of wait before the last step, the second by none.
    #[test]
    fn chains_follow_the_longest_waits() {
        let steps = vec![
            Step::new("sand", 30),
            Step::new("coat", 20).then(240),
            Step::new("coat the top", 25).after(vec![0]),
            Step::new("fit", 10).after(vec![1, 2]),
        ];
        assert_eq!(Job::new("chest", steps).chains(), [300, 270, 35, 10]);
        assert_eq!(Job::new("nothing", vec![]).chains(), []);
    }

    /// 13 C: twice as long by the rule of thumb. A coat of 10 C goes on, one of 15 C does not; what is no coat is not stopped.
    #[test]
    fn a_job_in_cold_air_takes_longer_or_stops() {
        let coat = |coldest| Step {
            limits: Some(AirLimits {
                coldest: Some(coldest),
                ..AirLimits::default()
            }),
            cure: Cure {
                full: Some(600),
                ..Cure::default()
            },
            wet: 60,
            ..Step::new("coat", 30).then(120)
        };
        let job = Job::new("chest", vec![Step::new("sand", 30), coat(10.0), coat(15.0)]);
        let air = Air {
            celsius: 13.0,
            humidity: 40.0,
        };
        let steps = job.clone().in_air(air, 13.0).steps;
        let stopped: Vec<_> = steps.iter().map(|step| step.stopped).collect();
        assert_eq!(stopped, [None, None, Some(AirCaution::TooCold)]);
        let of = &steps[1];
        assert_eq!((of.wait, of.wet), (240, 120));
        assert_eq!(of.cure.full, Some(1200));
        // Work takes as long as ever.
        assert_eq!(of.minutes, 30);
        let usual = Air {
            celsius: 25.0,
            humidity: 50.0,
        };
        assert_eq!(job.clone().in_air(usual, 25.0), job);
    }
}
