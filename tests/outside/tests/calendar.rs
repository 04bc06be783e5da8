//! The calendar file against an outside reader.
//!
//! Outside source: the `icalendar` crate, which unfolds, parses and unescapes by RFC 5545.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use icalendar::{Calendar, CalendarDateTime, Component, DatePerhapsTime};
use timetable::{Event, Hours, Job, Moment, Step, calendar_file, events, schedule};

fn at(text: &str) -> Moment {
    Moment::read(text).unwrap()
}

/// A floating time as the reader understood it.
fn floating(time: Option<DatePerhapsTime>) -> Option<String> {
    match time? {
        DatePerhapsTime::DateTime(CalendarDateTime::Floating(time)) => {
            Some(time.format("%Y-%m-%dT%H:%M").to_string())
        }
        other => Some(format!("not floating: {other:?}")),
    }
}

fn check(events: &[Event]) {
    let file = calendar_file(events, at("2026-05-01T07:30"));
    assert!(
        file.split("\r\n")
            .all(|line| line.len() <= 75 && !line.contains(['\r', '\n']))
    );
    let calendar: Calendar = file.parse().unwrap();
    let read: Vec<&icalendar::Event> = calendar.components.iter().filter_map(|c| c.as_event()).collect();
    assert_eq!(read.len(), events.len());
    for (read, event) in read.iter().zip(events) {
        assert_eq!(read.get_uid(), Some(event.uid.as_str()));
        assert_eq!(read.get_summary(), Some(event.summary.as_str()));
        assert_eq!(floating(read.get_start()), Some(event.start.to_string()));
        let end = (event.end > event.start).then(|| event.end.to_string());
        assert_eq!(floating(read.get_end()), end);
        let stamp = read.get_timestamp().unwrap();
        assert_eq!(stamp.to_rfc3339(), "2026-05-01T07:30:00+00:00");
    }
}

#[test]
fn awkward_names_come_back() {
    let long = "Sideboard with eleven drawers, ".repeat(40);
    let awkward = [
        "Chest, oak; \"tall\"",
        "two\nlines\n\nand more",
        "back\\slash \\n \\, \\;",
        "BEGIN:VEVENT",
        "SUMMARY:x\nEND:VEVENT\nEND:VCALENDAR",
        "Ein Stück für 50 % – naïve",
        "🪑🪑🪑 🎨👩🏽‍🎨 chair 🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑🪑",
        "الخزانة 箪笥 कुर्सी箪笥箪笥箪笥箪笥箪笥箪笥箪笥箪笥箪笥箪笥箪笥箪笥箪笥箪笥箪笥箪笥箪笥",
        "a:b=c^n'd",
        &long,
    ];
    let event = |(index, name): (usize, &&str)| Event {
        uid: format!("{index}@test"),
        summary: name.to_string(),
        start: at("2026-05-03T09:00"),
        end: at("2026-05-03T09:00").after(index as i64 * 700),
    };
    check(&awkward.iter().enumerate().map(event).collect::<Vec<_>>());
}

/// A name of every length folds at every place within its characters.
#[test]
fn every_length_folds() {
    let events: Vec<Event> = (1..160)
        .map(|length| Event {
            uid: format!("{length}@test"),
            summary: format!("{}é🪑,", "x".repeat(length)),
            start: at("2026-05-03T23:30"),
            end: at("2026-05-04T00:15"),
        })
        .collect();
    check(&events);
}

#[test]
fn the_entries_of_a_timetable_come_back() {
    let coat = |name: &str| Step::new(name, 50).then(180);
    let steps = || {
        vec![
            Step::new("sand, 120; 180", 500).split(),
            coat("prime"),
            coat("paint"),
        ]
    };
    let jobs = [
        Job::new("Chest; walnut", steps()),
        Job::new("Chair, old\n\"red\"", steps()),
    ];
    let hours = Hours::new(std::array::from_fn(|_| vec![(540, 720), (780, 1020)]), &[]);
    let timetable = schedule(&jobs, &hours, at("2026-05-01T09:00"));
    let events = events(&jobs, &timetable);
    assert!(events.len() >= 8);
    check(&events);
    let mut names: Vec<&str> = events.iter().map(|event| event.uid.as_str()).collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), events.len(), "each entry has a name of its own");
}
