//! The calendar entries of a timetable.

use std::fmt::Write as _;

use crate::calendar::Event;
use crate::plan::{Timetable, Work};
use crate::stage::Stage;
use crate::step::Job;

/// The work as entries of a calendar, one for each stretch, and the moments when pieces are ready to sell.
///
/// An entry's name is made of the keys of job and step and the number of the stretch, so it stays the
/// same when the piece is planned again.
pub fn events(jobs: &[Job], timetable: &Timetable) -> Vec<Event> {
    let works = timetable.works.iter();
    let mut events: Vec<Event> = works
        .filter_map(|work| of_one(jobs.get(work.job)?, work))
        .flatten()
        .collect();
    for (job, outcome) in jobs.iter().zip(&timetable.outcomes) {
        events.extend(outcome.at(Stage::Sell).map(|at| Event {
            uid: uid(&[&job.key], "sell", 1),
            summary: format!("{}: {}", job.name, Stage::Sell.label()),
            start: at,
            end: at,
        }));
    }
    events
}

fn of_one(job: &Job, work: &Work) -> Option<Vec<Event>> {
    let step = job.steps.get(work.step)?;
    let of_stretch = |(index, stretch): (usize, &crate::hours::Opening)| Event {
        uid: uid(&[&job.key, &step.key], "step", index + 1),
        summary: format!("{}: {}", job.name, step.name),
        start: stretch.from,
        end: stretch.to,
    };
    Some(work.stretches.iter().enumerate().map(of_stretch).collect())
}

/// A unique id: letters, digits and hyphens of the keys stay, and all else is written as octets, so that a
/// dot within a key is not mistaken for a separator.
fn uid(keys: &[&str], kind: &str, number: usize) -> String {
    let mut uid = String::new();
    for key in keys {
        for octet in key.bytes() {
            if octet.is_ascii_alphanumeric() || octet == b'-' {
                uid.push(char::from(octet));
            } else {
                // Writing to a string cannot fail.
                let _ = write!(uid, "%{octet:02X}");
            }
        }
        uid.push('.');
    }
    let _ = write!(uid, "{kind}.{number}@timetable.coatwright");
    uid
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::hours::Hours;
    use crate::moment::Moment;
    use crate::schedule::schedule;
    use crate::step::{Cure, Step};

    #[test]
    fn work_becomes_entries() {
        let mut coat = Step::new("coat", 60).then(120);
        coat.cure = Cure {
            sell: Some(1440),
            ..Cure::default()
        };
        let sand = Step::new("sand", 400).split();
        let mut job = Job::new("Chest", vec![sand, coat]);
        job.key = "p.1".to_string();
        let hours = Hours::new(std::array::from_fn(|_| vec![(540, 720), (780, 1020)]), &[]);
        let start = Moment::read("2026-05-01T09:00").unwrap();
        let jobs = [job];
        let timetable = schedule(&jobs, &hours, start);
        let shown: Vec<String> = events(&jobs, &timetable)
            .iter()
            .map(|e| format!("{} {} {} {}", e.uid, e.summary, e.start, e.end.since(e.start)))
            .collect();
        let at = "@timetable.coatwright";
        assert_eq!(
            shown,
            [
                format!("p%2E1.sand.step.1{at} Chest: sand 2026-05-01T09:00 180"),
                format!("p%2E1.sand.step.2{at} Chest: sand 2026-05-01T13:00 220"),
                format!("p%2E1.coat.step.1{at} Chest: coat 2026-05-02T09:00 60"),
                format!("p%2E1.sell.1{at} Chest: ready to sell 2026-05-03T10:00 0"),
            ]
        );
    }

    #[test]
    fn different_keys_give_different_names() {
        assert_ne!(uid(&["a.b", "c"], "step", 1), uid(&["a", "b.c"], "step", 1));
        assert_ne!(uid(&["a%2Eb"], "step", 1), uid(&["a.b"], "step", 1));
    }
}
