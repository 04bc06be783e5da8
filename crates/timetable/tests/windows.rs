//! Recoat windows, and a chain worked out by hand.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use timetable::{
    Cure, Haste, Hours, Job, Minutes, Moment, Rules, Stage, Step, Stuck, Wait, WorkKind, schedule,
};

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

fn step(name: &str, minutes: u32, wait: Wait) -> Step {
    Step::new(name, Minutes::one(minutes)).then(wait)
}

fn rules(haste: Haste) -> Rules {
    Rules {
        haste,
        ..Rules::default()
    }
}

/// Every work as "name start", with what it missed.
fn shown(jobs: &[Job], from: &str, haste: Haste) -> Vec<String> {
    let timetable = schedule(jobs, &weekdays(), at(from), rules(haste));
    let show = |work: &timetable::Work| {
        let kind = if work.kind == WorkKind::Scuff {
            "scuff for "
        } else {
            ""
        };
        let name = &jobs[work.job].steps[work.step].name;
        let late = work
            .late
            .map(|late| format!(" {:?} {}", late.for_what, late.minutes));
        let held = if work.held { " held" } else { "" };
        format!(
            "{kind}{name} {}{}{held}",
            work.start().unwrap(),
            late.unwrap_or_default()
        )
    };
    timetable.works.iter().map(show).collect()
}

/// By hand. Friday 1 May 2026: sand 9:00-11:00. Prime takes 90 minutes, so not before lunch: 13:00-14:30, dry at 16:30.
/// The first coat takes 60 and does not fit before 17:00; it goes on on Monday, 9:00-10:00, dry at 14:00. The second
/// 14:00-15:00. Ready to sell 72 hours on, cured 14 days on.
#[test]
fn a_chain_worked_out_by_hand() {
    let mut last = step("second", 60, Wait::none());
    last.cure = Cure {
        touch: Some(Minutes::one(60)),
        recoat: None,
        sell: Some(Minutes::one(72 * 60)),
        full: Some(Minutes::one(14 * 24 * 60)),
    };
    let steps = vec![
        step("sand", 120, Wait::none()),
        step("prime", 90, Wait::at_least(120)),
        step("first", 60, Wait::at_least(240)),
        last,
    ];
    let jobs = [Job::new("chest", steps)];
    assert_eq!(
        shown(&jobs, "2026-05-01T09:00", Haste::Windows),
        [
            "sand 2026-05-01T09:00",
            "prime 2026-05-01T13:00",
            "first 2026-05-04T09:00",
            "second 2026-05-04T14:00"
        ]
    );
    let timetable = schedule(&jobs, &weekdays(), at("2026-05-01T09:00"), Rules::default());
    let outcome = &timetable.outcomes[0];
    assert_eq!(outcome.end, Some(at("2026-05-04T15:00")));
    assert_eq!(outcome.at(Stage::Touch), Some(at("2026-05-04T16:00")));
    assert_eq!(outcome.at(Stage::Sell), Some(at("2026-05-07T15:00")));
    assert_eq!(outcome.at(Stage::Cured), Some(at("2026-05-18T15:00")));
}

fn with_window() -> Vec<Job> {
    let window = Wait::new(120, Some(360), None).unwrap();
    vec![Job::new(
        "chest",
        vec![step("first", 60, window), step("second", 60, Wait::none())],
    )]
}

/// On Friday at 14:00 a first coat would need its second by 21:00, when the workshop is shut: it waits for Monday.
#[test]
fn a_coat_waits_for_an_opening_that_keeps_its_window() {
    assert_eq!(
        shown(&with_window(), "2026-05-01T14:00", Haste::Windows),
        ["first 2026-05-04T09:00 held", "second 2026-05-04T13:00"]
    );
}

/// From 21:00 on Friday to 9:00 on Monday are 3600 minutes.
#[test]
fn a_missed_window_is_scuffed_or_told() {
    let mut jobs = with_window();
    assert_eq!(
        shown(&jobs, "2026-05-01T14:00", Haste::Busy),
        ["first 2026-05-01T14:00", "second 2026-05-04T09:00 Window 3600"]
    );
    let wait = jobs[0].steps[0].wait.clone();
    jobs[0].steps[0].wait = wait.or_scuff("scuff", Minutes::one(20));
    assert_eq!(
        shown(&jobs, "2026-05-01T14:00", Haste::Busy),
        [
            "first 2026-05-01T14:00",
            "scuff for second 2026-05-04T09:00",
            "second 2026-05-04T09:20 WindowScuffed 3620"
        ]
    );
}

/// A coat that is done already cannot be put off any more.
#[test]
fn what_is_done_counts() {
    let mut jobs = with_window();
    jobs[0].done = vec![at("2026-05-01T10:00")];
    assert_eq!(
        shown(&jobs, "2026-05-01T11:00", Haste::Windows),
        ["second 2026-05-01T13:00"]
    );
    jobs[0].done = vec![at("2026-04-30T16:00")];
    assert_eq!(
        shown(&jobs, "2026-05-01T11:00", Haste::Windows),
        ["second 2026-05-01T11:00 Window 780"]
    );
}

/// Stain is wiped off after 5 to 10 minutes: longer work of the first job would be in the way.
#[test]
fn hands_rest_for_a_wipe_only_if_they_may() {
    let wipe = Wait::new(5, None, Some(10)).unwrap();
    let stain = Job::new(
        "table",
        vec![step("stain", 30, wipe), step("wipe", 15, Wait::none())],
    );
    let mut sand = Job::new("chest", vec![step("sand", 60, Wait::none())]);
    sand.begin = Some(at("2026-05-01T09:20"));
    let jobs = [sand, stain];
    assert_eq!(
        shown(&jobs, "2026-05-01T09:00", Haste::Windows),
        [
            "stain 2026-05-01T09:00",
            "wipe 2026-05-01T09:35",
            "sand 2026-05-01T09:50"
        ]
    );
    assert_eq!(
        shown(&jobs, "2026-05-01T09:00", Haste::Busy),
        [
            "stain 2026-05-01T09:00",
            "sand 2026-05-01T09:30",
            "wipe 2026-05-01T10:30 Longest 50"
        ]
    );
}

/// Both could begin at 10:00. The first in order takes an hour, which would close the window of the other.
#[test]
fn a_window_that_closes_goes_before_the_order() {
    let coat = Wait::new(30, Some(60), None).unwrap();
    let mut table = Job::new(
        "table",
        vec![step("coat", 30, coat), step("again", 30, Wait::none())],
    );
    table.done = vec![at("2026-05-01T09:30")];
    let mut chest = Job::new("chest", vec![step("sand", 60, Wait::none())]);
    chest.begin = Some(at("2026-05-01T10:00"));
    for haste in [Haste::Busy, Haste::Windows] {
        assert_eq!(
            shown(&[chest.clone(), table.clone()], "2026-05-01T10:00", haste),
            ["again 2026-05-01T10:00", "sand 2026-05-01T10:30"]
        );
    }
}

#[test]
fn what_cannot_be_done_says_why() {
    let long = vec![step("a", 60, Wait::none()), step("b", 241, Wait::none())];
    let jobs = [
        Job::new("chest", long),
        Job::new("table", vec![step("c", 60, Wait::none())]),
    ];
    let timetable = schedule(&jobs, &weekdays(), at("2026-05-01T09:00"), Rules::default());
    assert_eq!(timetable.outcomes[0].stuck, Some(Stuck::TooLong { step: 1 }));
    assert_eq!(timetable.works.len(), 2);
    assert_eq!(timetable.outcomes[1].end, Some(at("2026-05-01T11:00")));
    let never = schedule(&jobs, &Hours::default(), at("2026-05-01T09:00"), Rules::default());
    assert!(never.outcomes.iter().all(|o| o.stuck == Some(Stuck::NoHours)));
}
