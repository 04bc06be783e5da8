//! What is to be done: jobs, each a chain of steps.

use units::Day;

use crate::air::Air;
use crate::climate::{AirCaution, AirLimits, LabelAir, drying_percent, forbidden};
use crate::minutes::{Minutes, Pace};
use crate::moment::Moment;
use crate::stage::Stage;
use crate::wait::{Scuff, Wait};

/// One step of the work on a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What stays the same when the step is planned again; it is told apart by it within its job.
    pub key: String,
    /// What a person reads.
    pub name: String,
    /// How long it takes.
    pub minutes: Minutes,
    /// Whether it needs the maker's hands and the bench. A step that does not runs day and night, beside all others.
    pub hands: bool,
    /// Whether it may be begun before a pause and ended after it. The bench stays with it meanwhile.
    pub may_split: bool,
    /// The wait after it before the steps of the same job that come after it.
    pub wait: Wait,
    /// The steps that it comes after, by their places before its own: it keeps the wait of each. Nothing stands for the one
    /// right before it.
    pub after: Option<Vec<usize>>,
    /// What its material says of when it is dry, ready and cured.
    pub cure: Cure,
    /// The air that its material may be put on in; nothing of a step that puts nothing on.
    pub limits: Option<AirLimits>,
    /// What the air has against it: it is not begun. See [`Job::in_air`].
    pub stopped: Option<AirCaution>,
    /// Whether it raises dust that would settle in a wet coat.
    pub dusty: bool,
    /// For how many minutes after it dust sticks to what it put on; nothing is sanded in the room meanwhile.
    pub wet: u32,
}

/// When a coat has come so far, in minutes from the end of its step; nothing where the label does not say.
///
/// When the next coat may follow is the wait of the step, not this.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Cure {
    /// Dry to the touch.
    pub touch: Option<Minutes>,
    /// Fit for another coat, where one more should be wanted.
    pub recoat: Option<Minutes>,
    /// Ready to use with care, and so to sell.
    pub sell: Option<Minutes>,
    /// Fully cured: ready for cleaning and hard use.
    pub full: Option<Minutes>,
}

/// The work on one piece, one step after another. Where zones are coated with something else, a step may go on while the coat
/// of another zone dries.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// What stays the same when the piece is planned again.
    pub key: String,
    /// What a person reads.
    pub name: String,
    /// The steps in their order.
    pub steps: Vec<Step>,
    /// When the first steps ended that are already done.
    pub done: Vec<Moment>,
    /// Before this nothing begins, such as when the piece is not there yet.
    pub begin: Option<Moment>,
    /// On which day it should be ready.
    pub due: Option<Day>,
}

impl Cure {
    /// The minutes to a stage, if the label gives them.
    pub fn to(&self, stage: Stage) -> Option<Minutes> {
        match stage {
            Stage::Touch => self.touch,
            Stage::Recoat => self.recoat,
            Stage::Sell => self.sell,
            Stage::Cured => self.full,
        }
    }

    /// Whether the stages that are given follow each other, in every guess.
    pub fn is_in_order(&self) -> bool {
        let given: Vec<Minutes> = Stage::ALL.iter().filter_map(|&stage| self.to(stage)).collect();
        let paces = [Pace::Low, Pace::Likely, Pace::High];
        given
            .windows(2)
            .all(|pair| paces.iter().all(|&pace| pair[0].at(pace) <= pair[1].at(pace)))
    }
}

impl Cure {
    /// Every time longer: `percent` of what the label says, never less than that.
    fn slower(self, percent: u32) -> Self {
        let slower = |time: Option<Minutes>| time.map(|minutes| minutes.times(percent.max(100)));
        Cure {
            touch: slower(self.touch),
            recoat: slower(self.recoat),
            sell: slower(self.sell),
            full: slower(self.full),
        }
    }
}

impl Step {
    /// A step of hands-on work that may not be split, without a wait, cure or limits; its key is its name.
    pub fn new(name: &str, minutes: Minutes) -> Self {
        Step {
            key: name.to_string(),
            name: name.to_string(),
            minutes,
            hands: true,
            may_split: false,
            wait: Wait::none(),
            after: None,
            cure: Cure::default(),
            limits: None,
            stopped: None,
            dusty: false,
            wet: 0,
        }
    }

    /// With a wait after it.
    pub fn then(mut self, wait: Wait) -> Self {
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

    /// Until when dust settles in what it put on, if it ends then; nothing of a step that puts on nothing wet.
    pub(crate) fn wet_until(&self, end: Moment) -> Option<Moment> {
        (self.wet > 0).then(|| end.after(i64::from(self.wet)))
    }

    /// Goes on by itself, without hands or bench.
    pub fn by_itself(mut self) -> Self {
        self.hands = false;
        self
    }
}

impl Job {
    /// The steps that a step comes after, by their places; each stands before it.
    pub fn before(&self, step: usize) -> Vec<usize> {
        match self.steps.get(step).and_then(|step| step.after.as_ref()) {
            Some(after) => after.iter().copied().filter(|before| *before < step).collect(),
            None => step.checked_sub(1).into_iter().collect(),
        }
    }

    /// What mends the window that a step misses; of several steps before it the first that says.
    pub(crate) fn scuff_before(&self, step: usize) -> Option<&Scuff> {
        let mut before = self.before(step).into_iter();
        before.find_map(|before| self.steps.get(before)?.wait.scuff.as_ref())
    }

    /// The job in this air, with pieces as warm as `surface`, degrees Celsius: what dries takes longer where it is cold or
    /// damp, and a coat that must not go on in it is stopped.
    pub fn in_air(mut self, air: Air, surface: f64) -> Self {
        let percent = drying_percent(air, LabelAir::USUAL);
        for step in &mut self.steps {
            step.wait = std::mem::take(&mut step.wait).slower(percent);
            step.cure = step.cure.slower(percent);
            step.wet = Minutes::one(step.wet).times(percent).at(Pace::Likely);
            step.stopped = step.limits.and_then(|limits| forbidden(air, surface, limits));
        }
        self
    }

    /// A job of which nothing is done, that may begin at once and has no day to be ready on; its key is its name.
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

    #[test]
    fn stages_follow_each_other() {
        let hour = |hours: u32| Some(Minutes::one(hours * 60));
        let mut cure = Cure {
            touch: hour(1),
            recoat: hour(4),
            sell: None,
            full: hour(24 * 14),
        };
        assert!(cure.is_in_order() && Cure::default().is_in_order());
        cure.touch = hour(5);
        assert!(!cure.is_in_order());
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
                full: Some(Minutes::one(600)),
                ..Cure::default()
            },
            wet: 60,
            ..Step::new("coat", Minutes::one(30)).then(Wait::at_least(120))
        };
        let job = Job::new(
            "chest",
            vec![Step::new("sand", Minutes::one(30)), coat(10.0), coat(15.0)],
        );
        let air = Air {
            celsius: 13.0,
            humidity: 40.0,
        };
        let steps = job.clone().in_air(air, 13.0).steps;
        let stopped: Vec<_> = steps.iter().map(|step| step.stopped).collect();
        assert_eq!(stopped, [None, None, Some(AirCaution::TooCold)]);
        let of = &steps[1];
        assert_eq!((of.wait.least(), of.wet), (240, 120));
        assert_eq!(of.cure.full, Some(Minutes::one(1200)));
        // Work takes as long as ever.
        assert_eq!(of.minutes, Minutes::one(30));
        let usual = Air {
            celsius: 25.0,
            humidity: 50.0,
        };
        assert_eq!(job.clone().in_air(usual, 25.0), job);
    }
}
