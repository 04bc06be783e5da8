//! The outcome of a job: its drying stages, or the obstacle.

use crate::climate::AirCaution;
use crate::moment::Moment;
use crate::stage::Stage;
use crate::step::Job;

/// Why a job cannot be finished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Obstacle {
    /// There are no working hours.
    NoHours,
    /// No opening is as long as the step, and it may not be split.
    TooLong {
        /// The index of the step.
        step: usize,
    },
    /// The air is not fit for the next step.
    Air {
        /// The index of the step.
        step: usize,
        /// The caution about the air.
        caution: AirCaution,
    },
}

/// How a job ends.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outcome {
    /// The obstacle, if any. The steps before it are in the timetable.
    pub stuck: Option<Obstacle>,
    /// When the last step ends; `None` if the job is stuck or has no steps.
    pub end: Option<Moment>,
    /// When all coats reach each stage that a label gives a time for.
    pub stages: Vec<(Stage, Moment)>,
    /// How many days late the piece is ready to sell, or done if no label gives that time. Negative if
    /// early, and `None` without a due day.
    pub days_late: Option<i32>,
}

impl Obstacle {
    /// The message on screen.
    pub fn message(self) -> &'static str {
        match self {
            Obstacle::NoHours => "Enter working hours for at least one weekday.",
            Obstacle::TooLong { .. } => {
                "Enter longer working hours, or split this step. It doesn't fit in any session."
            }
            Obstacle::Air { caution, .. } => caution.message(),
        }
    }
}

impl Outcome {
    /// When a stage is reached; `None` if no label says.
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
        // A dry piece is not ready until its last step, such as hardware, is done.
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
