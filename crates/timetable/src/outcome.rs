//! How a job ends: when its coats have dried so far, or what stands in its way.

use crate::climate::AirCaution;
use crate::moment::Moment;
use crate::stage::Stage;
use crate::step::Job;

/// Why a job comes to no end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Obstacle {
    /// There are no working hours.
    NoHours,
    /// No opening is as long as the step, and it may not be split.
    TooLong {
        /// Which of its steps.
        step: usize,
    },
    /// The air is not fit for the next step.
    Air {
        /// Which of its steps.
        step: usize,
        /// What the air has against it.
        caution: AirCaution,
    },
}

/// How a job ends.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outcome {
    /// What stands in its way. The steps before it are in the timetable.
    pub stuck: Option<Obstacle>,
    /// When the last step ends; nothing if the job is stuck or has no steps.
    pub end: Option<Moment>,
    /// When all coats have come so far, for each stage of which a label says something.
    pub stages: Vec<(Stage, Moment)>,
    /// How many days after the day it is due it is ready to sell, or done if no label says when that is; with a minus
    /// if before. Nothing if it has no such day.
    pub days_late: Option<i32>,
}

impl Obstacle {
    /// What a person is told.
    pub fn message(self) -> &'static str {
        match self {
            Obstacle::NoHours => "There are no working hours. Enter hours for a day of the week.",
            Obstacle::TooLong { .. } => {
                "No stretch of working hours is long enough for this step. Enter longer hours, or let it be split."
            }
            Obstacle::Air { caution, .. } => caution.message(),
        }
    }
}

impl Outcome {
    /// When a stage is reached; nothing if no label says.
    pub fn at(&self, stage: Stage) -> Option<Moment> {
        self.stages.iter().find(|(of, _)| *of == stage).map(|(_, at)| *at)
    }
}

/// How a job ends whose steps end at these moments.
pub(crate) fn outcome(job: &Job, ends: &[Moment], stuck: Option<Obstacle>) -> Outcome {
    let Some(&end) = ends.last().filter(|_| stuck.is_none()) else {
        return Outcome {
            stuck,
            ..Outcome::default()
        };
    };
    let reached = |stage: Stage| {
        let each = job.steps.iter().zip(ends);
        let reached = each
            .filter_map(|(step, end)| Some(end.after(i64::from(step.cure.to(stage)?))))
            .max()?;
        // A piece whose hardware is not back on is not ready, however dry it is.
        let at = if stage == Stage::Sell {
            reached.max(end)
        } else {
            reached
        };
        Some((stage, at))
    };
    let stages: Vec<(Stage, Moment)> = Stage::ALL.into_iter().filter_map(reached).collect();
    let ready = stages
        .iter()
        .find(|(stage, _)| *stage == Stage::Sell)
        .map_or(end, |(_, at)| *at);
    Outcome {
        stuck: None,
        end: Some(end),
        days_late: job.due.map(|due| ready.day().days() - due.days()),
        stages,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::step::{Cure, Step};
    use units::Day;

    #[test]
    fn the_slowest_coat_counts_and_so_does_the_last_step() {
        let hours = |hours: u32| Some(hours * 60);
        let coat = |sell, full| Step {
            cure: Cure {
                recoat: hours(1),
                sell,
                full,
            },
            ..Step::new("coat", 30)
        };
        let fit = Step::new("fit the handles", 30);
        let mut job = Job::new(
            "chest",
            vec![coat(hours(48), hours(240)), coat(hours(12), None), fit],
        );
        job.due = Day::read("2026-05-05");
        let ends = ["2026-05-04T12:00", "2026-05-05T12:00", "2026-05-07T09:00"];
        let ends = ends.map(|text| Moment::read(text).unwrap());
        let found = outcome(&job, &ends, None);
        let at = |stage| found.at(stage).map(|at| at.to_string());
        assert_eq!(at(Stage::Recoat).unwrap(), "2026-05-05T13:00");
        assert_eq!(at(Stage::Sell).unwrap(), "2026-05-07T09:00");
        assert_eq!(at(Stage::Cured).unwrap(), "2026-05-14T12:00");
        assert_eq!(found.days_late, Some(2));
    }
}
