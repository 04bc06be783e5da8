//! A Gantt chart of a timetable: rows, bars and days, without a drawing.

use units::Day;

use crate::hours::{Hours, Opening};
use crate::moment::Moment;
use crate::plan::{Timetable, Work};
use crate::stage::Stage;
use crate::step::Job;

/// A Gantt chart over whole days.
#[derive(Clone, Debug, PartialEq)]
pub struct Chart {
    /// The days from left to right, each as wide as the others.
    pub days: Vec<DayColumn>,
    /// A row for each job, in the order in which they were given.
    pub rows: Vec<Row>,
}

/// A day of the chart.
#[derive(Clone, Debug, PartialEq)]
pub struct DayColumn {
    /// Which day.
    pub day: Day,
    /// When the workshop is open, in minutes since midnight.
    pub open: Vec<(u32, u32)>,
}

/// A job of the chart.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The index of the job.
    pub job: usize,
    /// What is done and what dries, by when it begins. Bars of one row do not overlap.
    pub bars: Vec<Bar>,
    /// When its coats reach each stage, also after the last day.
    pub stages: Vec<(Stage, Moment)>,
}

/// A stretch of time of a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bar {
    /// When it begins.
    pub from: Moment,
    /// When it ends.
    pub to: Moment,
    /// Which of the steps; of drying, the step before it.
    pub step: usize,
    /// What it shows.
    pub kind: BarKind,
}

/// What a bar shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BarKind {
    /// Work.
    Work,
    /// The label's least wait.
    Drying,
    /// After the last step, until it is ready to sell.
    Curing,
}

impl Chart {
    /// How far from the left a moment is, from 0 to 1 within the picture.
    pub fn share(&self, at: Moment) -> f64 {
        let Some(first) = self.days.first() else {
            return 0.0;
        };
        let whole = self.days.len() as f64 * 1440.0;
        at.since(Moment::new(first.day, 0)) as f64 / whole
    }
}

/// The chart of a timetable over at most this many days, from the day of its first work to the day after the
/// last. Weeks of curing would make the work too small, so bars beyond that are cut.
pub fn chart(jobs: &[Job], timetable: &Timetable, hours: &Hours, most_days: u32) -> Chart {
    let mut rows: Vec<Row> = (0..jobs.len())
        .map(|job| Row {
            job,
            bars: bars(jobs, timetable, job),
            stages: timetable
                .outcomes
                .get(job)
                .map(|o| o.stages.clone())
                .unwrap_or_default(),
        })
        .collect();
    let all = || rows.iter().flat_map(|row| &row.bars);
    let Some(first) = all().map(|bar| bar.from.day()).min() else {
        return Chart {
            days: Vec::new(),
            rows,
        };
    };
    // A bar that ends at midnight needs no column for the day after.
    let reaches = |bar: &Bar| match bar.kind {
        BarKind::Curing => bar.from.day().after(1),
        _ => bar.to.after(-1).max(bar.from).day(),
    };
    let last = all().map(reaches).max().unwrap_or(first);
    let wide = (i64::from(last.days()) - i64::from(first.days()) + 1).min(i64::from(most_days)) as i32;
    let end = Moment::new(first.after(wide), 0);
    for row in &mut rows {
        row.bars.retain(|bar| bar.from < end);
        for bar in &mut row.bars {
            bar.to = bar.to.min(end);
        }
    }
    let columns = (0..wide).map(|later| {
        let day = first.after(later);
        let open = hours.of(day).to_vec();
        DayColumn { day, open }
    });
    Chart {
        days: columns.collect(),
        rows,
    }
}

fn bars(jobs: &[Job], timetable: &Timetable, index: usize) -> Vec<Bar> {
    let Some(job) = jobs.get(index) else {
        return Vec::new();
    };
    let works: Vec<&Work> = timetable.works.iter().filter(|work| work.job == index).collect();
    let mut bars = Vec::new();
    for (at, work) in works.iter().enumerate() {
        let step = work.step;
        let hands = |&Opening { from, to }: &Opening| Bar {
            from,
            to,
            step,
            kind: BarKind::Work,
        };
        bars.extend(work.stretches.iter().map(hands));
        let (Some(end), Some(of)) = (work.end(), job.steps.get(step)) else {
            continue;
        };
        let is_last = step + 1 == job.steps.len();
        let (to, kind) = if is_last {
            let outcome = timetable.outcomes.get(index);
            let sell = outcome.and_then(|outcome| outcome.at(Stage::Sell));
            (sell.unwrap_or(end), BarKind::Curing)
        } else {
            (end.after(i64::from(of.wait)), BarKind::Drying)
        };
        // Where the next step is done already, a wait is cut at the next work.
        let next = works.get(at + 1).and_then(|next| next.start());
        let to = next.map_or(to, |next| next.min(to));
        if to > end {
            bars.push(Bar {
                from: end,
                to,
                step,
                kind,
            });
        }
    }
    bars
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::schedule::schedule;
    use crate::step::{Cure, Step};

    fn laid_out(most_days: u32) -> Chart {
        let coat = Step::new("coat", 60).then(240);
        let mut last = Step::new("coat 2", 60);
        last.cure = Cure {
            sell: Some(10 * 1440),
            ..Cure::default()
        };
        let jobs = [
            Job::new("chest", vec![coat, last]),
            Job::new("nothing", Vec::new()),
        ];
        let hours = Hours::new(std::array::from_fn(|_| vec![(540, 720)]), &[]);
        let start = Moment::read("2026-05-01T09:00").unwrap();
        let timetable = schedule(&jobs, &hours, start);
        chart(&jobs, &timetable, &hours, most_days)
    }

    #[test]
    fn bars_follow_each_other() {
        let found = laid_out(30);
        let show = |bar: &Bar| format!("{:?} {} {}", bar.kind, bar.from, bar.to.since(bar.from));
        let bars: Vec<String> = found.rows[0].bars.iter().map(show).collect();
        assert_eq!(
            bars,
            [
                "Work 2026-05-01T09:00 60",
                "Drying 2026-05-01T10:00 240",
                "Work 2026-05-02T09:00 60",
                "Curing 2026-05-02T10:00 2280",
            ]
        );
        assert_eq!(found.rows[1].bars, []);
        assert_eq!(found.days.len(), 3);
        assert_eq!(found.days[0].open, [(540, 720)]);
        assert_eq!(found.share(Moment::read("2026-05-02T12:00").unwrap()), 0.5);
    }

    #[test]
    fn what_reaches_beyond_the_last_day_is_cut() {
        let found = laid_out(2);
        assert_eq!(found.days.len(), 2);
        let last = found.rows[0].bars.last().unwrap();
        assert_eq!(last.to, Moment::read("2026-05-03T00:00").unwrap());
        assert_eq!(found.share(last.to), 1.0);
    }
}
