//! A chain worked out by hand, what is done already, and what cannot be done.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use timetable::{Cure, Hours, Job, Moment, Obstacle, Stage, Step, schedule};

fn at(text: &str) -> Moment {
    Moment::read(text).unwrap()
}

/// Monday to Friday, 9 to 12 and 13 to 17.
fn weekdays() -> Hours {
    let day = vec![(540, 720), (780, 1020)];
    Hours::new(
        std::array::from_fn(|k| if k < 5 { day.clone() } else { Vec::new() }),
        &[],
    )
}

fn step(name: &str, minutes: u32, wait: u32) -> Step {
    Step::new(name, minutes).then(wait)
}

/// Every work as "name start".
fn shown(jobs: &[Job], from: &str) -> Vec<String> {
    let timetable = schedule(jobs, &weekdays(), at(from));
    let show = |work: &timetable::Work| {
        let name = &jobs[work.job].steps[work.step].name;
        format!("{name} {}", work.start().unwrap())
    };
    timetable.works.iter().map(show).collect()
}

/// By hand. Friday 1 May 2026: sand 9:00-11:00. Prime takes 90 minutes, so not before lunch: 13:00-14:30, dry at 16:30.
/// The first coat takes 60 and does not fit before 17:00; it goes on on Monday, 9:00-10:00, dry at 14:00. The second
/// 14:00-15:00. Ready to sell 72 hours on, cured 14 days on.
#[test]
fn a_chain_worked_out_by_hand() {
    let mut last = step("second", 60, 0);
    last.cure = Cure {
        recoat: Some(60),
        sell: Some(72 * 60),
        full: Some(14 * 24 * 60),
    };
    let steps = vec![
        step("sand", 120, 0),
        step("prime", 90, 120),
        step("first", 60, 240),
        last,
    ];
    let jobs = [Job::new("chest", steps)];
    assert_eq!(
        shown(&jobs, "2026-05-01T09:00"),
        [
            "sand 2026-05-01T09:00",
            "prime 2026-05-01T13:00",
            "first 2026-05-04T09:00",
            "second 2026-05-04T14:00"
        ]
    );
    let timetable = schedule(&jobs, &weekdays(), at("2026-05-01T09:00"));
    let outcome = &timetable.outcomes[0];
    assert_eq!(outcome.end, Some(at("2026-05-04T15:00")));
    assert_eq!(outcome.at(Stage::Recoat), Some(at("2026-05-04T16:00")));
    assert_eq!(outcome.at(Stage::Sell), Some(at("2026-05-07T15:00")));
    assert_eq!(outcome.at(Stage::Cured), Some(at("2026-05-18T15:00")));
}

#[test]
fn what_is_done_counts() {
    let mut jobs = [Job::new(
        "chest",
        vec![step("first", 60, 120), step("second", 60, 0)],
    )];
    jobs[0].done = vec![at("2026-05-01T10:00")];
    assert_eq!(shown(&jobs, "2026-05-01T11:00"), ["second 2026-05-01T13:00"]);
    jobs[0].done = vec![at("2026-04-30T16:00")];
    assert_eq!(shown(&jobs, "2026-05-01T11:00"), ["second 2026-05-01T11:00"]);
}

/// By hand: in the given order the chest ends on Monday and the table on Wednesday at 11:00. With the coat first, the
/// table ends on Tuesday at 11:00 and the chest on Tuesday at 17:00. That is sooner, but late if the chest is due on
/// Monday.
#[test]
fn the_longest_chain_goes_first_unless_a_job_would_be_late() {
    let sanding = Job::new("chest", vec![step("sand", 180, 0), step("sand again", 240, 0)]);
    let coats = Job::new("table", vec![step("coat", 60, 24 * 60), step("second", 60, 0)]);
    let mut jobs = [sanding, coats];
    let from = "2026-05-04T09:00";
    let first = shown(&jobs, from)[0].clone();
    assert_eq!(first, "coat 2026-05-04T09:00");
    jobs[0].due = Some(at(from).day());
    assert_eq!(shown(&jobs, from)[0], "sand 2026-05-04T09:00");
}

#[test]
fn what_cannot_be_done_says_why() {
    let long = vec![step("a", 60, 0), step("b", 241, 0)];
    let jobs = [Job::new("chest", long), Job::new("table", vec![step("c", 60, 0)])];
    let timetable = schedule(&jobs, &weekdays(), at("2026-05-01T09:00"));
    assert_eq!(timetable.outcomes[0].stuck, Some(Obstacle::TooLong { step: 1 }));
    assert_eq!(timetable.works.len(), 2);
    assert_eq!(timetable.outcomes[1].end, Some(at("2026-05-01T11:00")));
    let never = schedule(&jobs, &Hours::default(), at("2026-05-01T09:00"));
    assert!(never.outcomes.iter().all(|o| o.stuck == Some(Obstacle::NoHours)));
}
