//! Made-up jobs and hours, and where a step fits, worked out apart from the crate.

use proptest::prelude::*;
use timetable::{Hours, Job, Moment, Step};

pub(crate) fn at(text: &str) -> Moment {
    Moment::read(text).unwrap()
}

/// Friday.
pub(crate) fn start() -> Moment {
    at("2026-05-01T08:00")
}

/// Until when the workshop stays open, if it is open at a moment.
pub(crate) fn open_until(hours: &Hours, moment: Moment) -> Option<Moment> {
    let mut of_day = hours.of(moment.day()).iter();
    let (_, to) = *of_day.find(|(from, to)| (*from..*to).contains(&moment.minute()))?;
    let mut end = Moment::new(moment.day(), to);
    // Hours that go on past midnight are one opening. A week is longer than any step here.
    for _ in 0..7 {
        match hours.of(end.day()).first() {
            Some(&(0, to)) if end.minute() == 0 => end = Moment::new(end.day(), to),
            _ => break,
        }
    }
    Some(end)
}

/// When a step can begin at the earliest, and when it then ends: minute by minute where it matters.
pub(crate) fn earliest(hours: &Hours, step: &Step, from: Moment) -> (Moment, Moment) {
    let minutes = i64::from(step.minutes);
    let mut at = from;
    loop {
        match open_until(hours, at) {
            None => at = at.after(1),
            Some(end) if end.since(at) >= minutes => return (at, at.after(minutes)),
            // A step that is split is not begun for a few minutes; openings as short as that are in no hours here.
            Some(end) if !step.may_split || end.since(at) < 20 => at = end,
            Some(_) => break,
        }
    }
    let (mut left, mut now) = (minutes, at);
    while left > 0 {
        left -= i64::from(open_until(hours, now).is_some());
        now = now.after(1);
    }
    (at, now)
}

pub(crate) fn hours() -> impl Strategy<Value = Hours> {
    let day = prop_oneof![
        3 => Just(vec![(540, 720), (780, 1020)]),
        1 => Just(vec![(480, 900)]),
        1 => Just(vec![(1080, 1320)]),
        1 => Just(Vec::new()),
    ];
    (proptest::collection::vec(day, 6), any::<bool>()).prop_map(|(days, is_off)| {
        let mut week: [Vec<(u32, u32)>; 7] =
            std::array::from_fn(|day| days.get(day).cloned().unwrap_or_default());
        // One day of every week is long enough for each step.
        week[6] = vec![(480, 900)];
        let off = [start().day().after(3)];
        Hours::new(week, if is_off { &off } else { &[] })
    })
}

/// A step of at most four hours, with a wait of at most ten after it.
pub(crate) fn step() -> impl Strategy<Value = Step> {
    (1..240_u32, 0..600_u32, any::<bool>()).prop_map(|(minutes, wait, split)| {
        let mut step = Step::new("step", minutes).then(wait);
        step.may_split = split;
        step
    })
}

pub(crate) fn jobs(most: usize, steps: usize) -> impl Strategy<Value = Vec<Job>> {
    let job = proptest::collection::vec(step(), 0..=steps).prop_map(|steps| Job::new("job", steps));
    proptest::collection::vec(job, 1..=most)
}
