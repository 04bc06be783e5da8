//! Days, hours and air in words.

use coatings::in_sentence;
use timetable::{AirCaution, LEAST_MARGIN, Moment, Obstacle, Stage, Work};
use units::System;
use workshop::Workshop;
use workshop::book::{Facts, Habits};
use workshop::days::{AirToday, CoatsInAir, Days, USUAL_HOURS};
use workshop::preparing::OldFinish;

use super::calendar::{WEEKDAYS, day, time, weekday_and_day};
use super::number;

/// Says when a piece is ready, or what prevents it. If the old finish contains lead, no date can be given.
pub fn ready(workshop: &Workshop, days: &Days, job: usize) -> String {
    let name = days.jobs.get(job).map_or("", |job| job.name.as_str());
    let key = days.jobs.get(job).map_or("", |job| job.key.as_str());
    let mut pieces = workshop.pieces.iter();
    let piece = pieces.find(|piece| *piece.id.0 == *key);
    if piece.is_some_and(|piece| OldFinish::of(piece) == OldFinish::Lead) {
        return format!("{name}: lead found. No date yet. Ask a lead-certified firm and follow local rules.");
    }
    let Some(outcome) = days.timetable.outcomes.get(job) else {
        return String::new();
    };
    if let Some(stuck) = &outcome.stuck {
        return format!("{name}: {}", stopped(workshop, days, job, stuck));
    }
    let on = |stage: Stage| outcome.at(stage).map(|at| day(at.day()));
    let ready = on(Stage::Sell).map_or_else(
        || "no coat is planned".into(),
        |sell| match on(Stage::Cured) {
            Some(cured) if cured != sell => format!("ready to sell on {sell}, fully cured on {cured}"),
            _ => format!("ready to sell on {sell}"),
        },
    );
    let late = match outcome.days_late {
        Some(1) => ", 1 day late".into(),
        Some(late) if late > 1 => format!(", {late} days late"),
        Some(_) => ", on time".into(),
        None => String::new(),
    };
    let works = days.timetable.works.iter().filter(|work| work.job == job);
    let first = works.filter_map(Work::start).min().map(Moment::day);
    let begin = days.jobs.get(job).and_then(|job| job.begin).map(Moment::day);
    let later = match (begin, first) {
        (Some(begin), Some(first)) if begin < first => format!(
            " Work starts on {}, your next free hours.",
            weekday_and_day(first)
        ),
        _ => String::new(),
    };
    format!("{name}: {ready}{late}.{later}")
}

/// Says what prevents a piece from being finished. If a coat waits for better air, it names the coat and the
/// air it needs.
fn stopped(workshop: &Workshop, days: &Days, job: usize, stuck: &Obstacle) -> String {
    let Obstacle::Air { step, caution } = stuck else {
        return stuck.message().to_owned();
    };
    let step = days.jobs.get(job).and_then(|job| job.steps.get(*step));
    let coat = step.map_or("", |step| step.name.as_str());
    let limits = step.and_then(|step| step.limits);
    match limits.and_then(|limits| limits.coldest) {
        Some(coldest) if *caution == AirCaution::TooCold => {
            let least = temperature(coldest, workshop.units);
            format!("the schedule stops at \u{201c}{coat}\u{201d}. It needs {least} or more.")
        }
        _ => format!(
            "the schedule stops at \u{201c}{coat}\u{201d}. {}",
            caution.message()
        ),
    }
}

/// Formats a temperature in the maker's unit: `50 °F`.
fn temperature(celsius: f64, system: System) -> String {
    match system {
        System::UsCustomary => format!("{:.0} \u{b0}F", celsius * 1.8 + 32.0),
        System::Metric => format!("{celsius:.0} \u{b0}C"),
    }
}

/// Formats the day when a piece is ready: `ready 14 Dec 2026`. Empty if unknown.
pub fn ready_on(days: &Days, job: usize) -> String {
    let outcome = days.timetable.outcomes.get(job);
    let sell = outcome.and_then(|outcome| outcome.at(Stage::Sell));
    sell.map_or_else(String::new, |sell| format!("ready {}", day(sell.day())))
}

/// Describes the default working hours.
pub fn usual_hours() -> String {
    let stretches = USUAL_HOURS.map(|(from, to)| format!("{} to {}", time(from), time(to)));
    format!("Mon to Fri {}.", stretches.join(", "))
}

/// Repeats the hours of a week as understood, from Monday on: `Mon to Fri 18:00-21:00; Sat 9:00-12:00,
/// 13:00-17:00.` Empty if there are none.
pub fn understood(week: &[Vec<(u32, u32)>; 7]) -> String {
    // Days in a row with the same hours are named together.
    let mut runs: Vec<(usize, usize)> = Vec::new();
    for day in 0..week.len() {
        match runs.last_mut() {
            Some((first, last)) if *last + 1 == day && week[*first] == week[day] => *last = day,
            _ => runs.push((day, day)),
        }
    }
    let of_run = |(first, last): (usize, usize)| {
        let hours: Vec<String> = week[first]
            .iter()
            .map(|(from, to)| format!("{} to {}", time(*from), time(*to)))
            .collect();
        let days = match first == last {
            true => WEEKDAYS[first].to_owned(),
            false => format!("{} to {}", WEEKDAYS[first], WEEKDAYS[last]),
        };
        format!("{days} {}", hours.join(", "))
    };
    let runs = runs.into_iter().filter(|(first, _)| !week[*first].is_empty());
    let days: Vec<String> = runs.map(of_run).collect();
    match days.as_slice() {
        [] => String::new(),
        days => format!("{}.{}", days.join("; "), asked_back(week)),
    }
}

/// Returns the note for a step that was done out of order.
pub fn remarks(is_done: bool) -> &'static str {
    match is_done {
        true => ". Done. It counts once the steps before it are checked off.",
        false => "",
    }
}

/// Hours that start before this may be meant for the evening, so they are queried. In minutes.
const EARLY: u32 = 7 * 60;

/// Returns a question if some hours are early in the morning but were probably meant for the evening.
fn asked_back(week: &[Vec<(u32, u32)>; 7]) -> &'static str {
    let is_early = |(from, to): &(u32, u32)| *from < EARLY && *to <= 12 * 60;
    match week.iter().flatten().any(is_early) {
        true => " In the morning? For the evening, type 6pm-9pm.",
        false => "",
    }
}

/// Formats the time of a moment, rounded to quarter hours, because nobody plans to the minute.
pub fn clock(at: Moment) -> String {
    time(((at.minute() + 7) / 15 * 15).min(23 * 60 + 45))
}

/// Says how long something dries: `Dries 3 h`.
pub fn dry_time(wait: u32) -> String {
    match wait {
        wait if wait < 60 => format!("Dries {wait}\u{a0}min"),
        wait => format!(
            "Dries {}\u{a0}h",
            number(&units::show_number(f64::from(wait) / 60.0))
        ),
    }
}

/// Says how long something dries, and until when: `Dries 3 h, until 17:30`.
pub fn dries(wait: u32, until: Moment, from: Moment) -> String {
    let of = dry_time(wait);
    match until.day() == from.day() {
        true => format!("{of}, until {}", clock(until)),
        false => format!("{of}, until {} on {}", clock(until), day(until.day())),
    }
}

/// Says when the work on a piece starts and is due: `Starts Sat, Dec 5, due Fri, Dec 18`.
pub fn starts(facts: &Facts, habits: &Habits) -> String {
    let begins = facts.begin.or(habits.begin);
    let begins = begins.map_or_else(
        || "Starts today".to_owned(),
        |day| format!("Starts {}", weekday_and_day(day)),
    );
    let due = facts.due.map(|day| format!(", due {}", weekday_and_day(day)));
    format!("{begins}{}", due.unwrap_or_default())
}

/// Says how long a step takes: `55 min`, `2 h 10 min`.
pub fn minutes(of: u32) -> String {
    super::money::hours_and_minutes(of)
}

/// Says when a piece is ready to sell, or that it is not known.
pub fn ready_to_sell(days: &Days, job: usize) -> String {
    let outcome = days.timetable.outcomes.get(job);
    let sell = outcome.and_then(|outcome| outcome.at(Stage::Sell));
    sell.map_or_else(
        || "Schedule".into(),
        |sell| format!("Ready to sell {}", day(sell.day())),
    )
}

/// Less than this is told as a start and a number of minutes, because both ends may be the same quarter hour.
const SHORT: i64 = 30;

/// Formats a period of work: `9:00-10:30`, with the time it continues after a break. A short one is `9:00, 8 min`.
pub fn stretch(work: &Work) -> String {
    if let [only] = work.stretches.as_slice()
        && only.to.since(only.from) < SHORT
    {
        return format!("{}, {}\u{a0}min", clock(only.from), only.to.since(only.from));
    }
    let of = |stretch: &timetable::Opening| format!("{} to {}", clock(stretch.from), clock(stretch.to));
    let mut last = work.start().map(Moment::day);
    let mut text = String::new();
    for stretch in &work.stretches {
        if !text.is_empty() {
            text += ", ";
        }
        let on = stretch.from.day();
        if last != Some(on) {
            text += &day(on);
            text += " ";
            last = Some(on);
        }
        text += &of(stretch);
    }
    text
}

/// Says in a word or two whether the air allows coating.
pub fn air_in_brief(air: Option<&AirToday>) -> &'static str {
    match air {
        None => "not measured",
        Some(air) if air.forbids() => "don\u{2019}t coat now",
        Some(air) if air.forbids_some() => "too cold for some coats",
        Some(_) => "you can coat",
    }
}

/// Says whether the air allows coating, then why.
pub fn air(air: Option<&AirToday>, system: System) -> Vec<String> {
    let Some(air) = air else {
        return vec!["Enter temperature and humidity to see whether you can coat.".into()];
    };
    let forbids = air.forbids();
    let mut all = Vec::new();
    all.push(match (forbids, air.forbids_some()) {
        (true, _) => "Don\u{2019}t coat now. The schedule stops at the next coat.".to_owned(),
        (false, true) => "You can coat with some materials.".into(),
        (false, false) => "You can coat.".into(),
    });
    all.extend(air.coats.iter().map(|coats| least_air(coats, system)));
    if let Some(dew) = &air.dew {
        let surface = match air.is_surface_measured {
            true => "the surface",
            false => "the surface, if it\u{2019}s as warm as the air",
        };
        let (point, margin) = (dew.dew_point, dew.margin);
        let below = match system {
            System::UsCustomary => format!(
                "The dew point is {:.0} \u{b0}F, {:.0} \u{b0}F below {surface}. It must be at least {} \u{b0}F below \
                 ({LEAST_MARGIN:.0} \u{b0}C in ISO 8502-4, written for steel; UFC 3-190-06 says 5 \u{b0}F).",
                point * 1.8 + 32.0,
                margin * 1.8,
                number(&format!("{:.1}", LEAST_MARGIN * 1.8))
            ),
            System::Metric => format!(
                "The dew point is {point:.0} \u{b0}C, {margin:.0} \u{b0}C below {surface}. It must be at least \
                 {LEAST_MARGIN:.0} \u{b0}C below (ISO 8502-4, written for steel; UFC 3-190-06 says 5 \u{b0}F)."
            ),
        };
        all.push(format!("{} {}", dew.condensation.message(), below));
    }
    // The drying time does not matter for a coat that must not go on.
    let cautions = air.cautions.iter();
    let cautions = cautions.filter(|caution| caution.forbids() == forbids);
    all.extend(cautions.map(|caution| caution.message().to_owned()));
    if !forbids && air.drying_percent > 100 {
        let times = f64::from(air.drying_percent) / 100.0;
        all.push(format!(
            "The schedule waits {} times the label\u{2019}s longest (common practice, no source).",
            number(&format!("{times:.1}"))
        ));
    }
    all
}

/// States the lowest temperature for coats: `Alkyd enamel: 39 °F or more.`
fn least_air(coats: &CoatsInAir, system: System) -> String {
    let names: Vec<String> = coats.names.iter().map(|name| in_sentence(name)).collect();
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    let names = super::and(&names);
    let names = match coats.stopped {
        Some(AirCaution::TooCold) => format!("Too cold for {names}"),
        _ => super::sentence(names),
    };
    let after = match coats.warm_after {
        0 => String::new(),
        hours => format!(", and for {hours} hours after"),
    };
    format!("{names}: {} or more{after}.", temperature(coats.coldest, system))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::rc::Rc;
    use timetable::{Hours, Job, Step, schedule};

    #[test]
    fn lead_names_no_day_and_a_day_off_is_told() {
        let with = |key: &str, text: &str| {
            let invented = workshop::invented_workshop();
            let id = invented.pieces[0].id.clone();
            let write = workshop::BookEdit::Write("facts", "only".into(), key.into(), text.into());
            let edit = workshop::Edit::Piece(id, workshop::PieceEdit::Book(write));
            let workshop = invented.apply(edit).unwrap();
            // 2026-05-04 is a Monday.
            let from = Moment::read("2026-05-04T08:00").unwrap();
            let days = workshop::Analysis::of(Rc::new(workshop.clone())).days(from, None);
            ready(&workshop, &days, 0)
        };
        assert!(with("lead", "positive").contains("lead found"));
        assert!(with("lead", "negative").contains("ready to sell on"));
        let saturday = with("begin", "2026-05-09");
        assert!(saturday.contains("Mon, May 11"), "{saturday}");
        assert!(!with("begin", "2026-05-08").contains("Work starts"));
    }

    #[test]
    fn a_step_before_its_turn_says_so() {
        assert_eq!(remarks(false), "");
        assert!(remarks(true).starts_with(". Done."));
    }

    #[test]
    fn hours_are_told_as_they_were_understood() {
        let mut week: [Vec<(u32, u32)>; 7] = Default::default();
        assert_eq!(understood(&week), "");
        week[1] = vec![(360, 540)];
        assert!(understood(&week).contains("In the morning?"));
        week[1].clear();
        week[0] = vec![(1080, 1260)];
        week[2] = vec![(540, 720), (780, 1020)];
        assert_eq!(
            understood(&week).replace('\u{a0}', " "),
            "Mon 6:00 PM to 9:00 PM; Wed 9:00 AM to 12:00 PM, 1:00 PM to 5:00 PM."
        );
    }

    #[test]
    fn the_air_says_first_whether_a_coat_may_go_on() {
        let say = |humidity: &str, system| {
            let mut workshop = workshop::Workshop::default();
            for (key, text) in [("temperature", "13 C"), ("humidity", humidity)] {
                let write = workshop::BookEdit::Write("habits", "only".into(), key.into(), text.into());
                workshop = workshop.apply(workshop::Edit::Book(write)).unwrap();
            }
            let today = workshop::days::air(&workshop);
            assert_eq!(
                air_in_brief(today.as_ref()).starts_with("don\u{2019}t"),
                humidity == "85 %"
            );
            air(today.as_ref(), system).join(" ")
        };
        let damp = say("85 %", System::UsCustomary);
        assert!(
            damp.starts_with("Don\u{2019}t coat now.") && damp.contains("at least 5.4 \u{b0}F"),
            "{damp}"
        );
        assert!(!damp.contains("The schedule waits"), "{damp}");
        let dry = say("50 %", System::Metric);
        assert!(dry.starts_with("You can coat."), "{dry}");
        // 13 °C is 10 °C below the temperature that labels assume.
        assert!(
            dry.contains("waits 2.0 times") && dry.contains("10 \u{b0}C or more, and for 24 hours after")
        );
        assert!(dry.contains("at least 3 \u{b0}C") && dry.contains("as warm as the air"));
        assert_eq!(air_in_brief(None), "not measured");
    }

    /// At 35 °F and 40% humidity, the panel, its heading and the line for the piece all say that nothing may
    /// go on, and why.
    #[test]
    fn freezing_air_is_a_stop_and_no_warning() {
        let mut workshop = workshop::invented_workshop();
        workshop.units = System::UsCustomary;
        for (key, text) in [("temperature", "35 F"), ("humidity", "40 %")] {
            let write = workshop::BookEdit::Write("habits", "only".into(), key.into(), text.into());
            workshop = workshop.apply(workshop::Edit::Book(write)).unwrap();
        }
        let today = workshop::days::air(&workshop);
        assert!(air_in_brief(today.as_ref()).starts_with("don\u{2019}t"));
        let told = air(today.as_ref(), System::UsCustomary);
        assert!(told[0].starts_with("Don\u{2019}t coat now."), "{told:?}");
        assert!(
            told.iter()
                .any(|line| line.starts_with("Too cold for") && line.contains("50 \u{b0}F or more"))
        );
        let from = Moment::read("2026-05-04T08:00").unwrap();
        let days = workshop::Analysis::of(Rc::new(workshop.clone())).days(from, None);
        let line = ready(&workshop, &days, 0);
        assert!(
            line.contains("the schedule stops at") && line.ends_with("It needs 50 \u{b0}F or more."),
            "{line}"
        );
        assert_eq!(ready_on(&days, 0), "");
    }

    #[test]
    fn a_step_over_a_pause_and_a_night_says_so() {
        let jobs = [Job::new("box", vec![Step::new("sand", 8 * 60).split()])];
        let week = std::array::from_fn(|day| {
            if day < 5 {
                vec![(540, 720), (780, 1020)]
            } else {
                vec![]
            }
        });
        let hours = Hours::new(week, &[]);
        let timetable = schedule(&jobs, &hours, Moment::read("2026-05-04T08:00").unwrap());
        assert_eq!(
            stretch(&timetable.works[0]).replace('\u{a0}', " "),
            "9:00 AM to 12:00 PM, 1:00 PM to 5:00 PM, May 5, 2026 9:00 AM to 10:00 AM"
        );
        let days = Days {
            jobs: jobs.to_vec(),
            hours,
            usual_hours: false,
            timetable,
        };
        let workshop = workshop::Workshop::default();
        assert_eq!(ready(&workshop, &days, 0), "box: no coat is planned.");
        assert_eq!(ready_on(&days, 0), "");
        assert_eq!(usual_hours().matches(" to ").count(), 3);
    }
}
