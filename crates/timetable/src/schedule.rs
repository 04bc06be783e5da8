//! The timetable of all jobs: list scheduling, and steps that are held back for the window after them.

use crate::hours::Hours;
use crate::moment::Moment;
use crate::plan::Timetable;
use crate::rules::{Haste, Rules};
use crate::run::{Hold, run};
use crate::step::Job;

/// To how many later openings a step is put off, one after another, to see whether the next then keeps its window.
const PUT_OFF: usize = 8;
/// How many missed windows are looked at; each costs up to [`PUT_OFF`] timetables.
const LOOKED_AT: usize = 32;

/// Lays the steps of all jobs into the working hours, from a moment on.
///
/// Hands-on steps go one after another, each job's in its order, none before its wait is over and none outside the
/// hours. Whenever the hands are free, the first job in the order of `rules` begins whose next step fits there
/// (list scheduling without delay; Graham 1966), except that a step which would let the window of another job close
/// stands back. With [`Haste::Windows`] the hands also rest for a window, and a coat is put off to a later opening if
/// fewer windows are missed for it. The same input gives the same timetable.
pub fn schedule(jobs: &[Job], hours: &Hours, start: Moment, rules: Rules) -> Timetable {
    let mut holds: Vec<Hold> = Vec::new();
    let mut best = run(jobs, hours, start, rules, &holds);
    if rules.haste == Haste::Busy {
        return best;
    }
    let mut tried: Vec<(usize, usize)> = Vec::new();
    while tried.len() < LOOKED_AT {
        let is_new =
            |work: &&crate::plan::Work| work.late.is_some() && !tried.contains(&(work.job, work.step));
        let Some((job, step)) = best.works.iter().find(is_new).map(|work| (work.job, work.step)) else {
            break;
        };
        tried.push((job, step));
        // Of the steps before it the last is put off.
        let before = jobs.get(job).and_then(|job| job.before(step).into_iter().max());
        let Some((before, mut from)) =
            before.and_then(|before| Some((before, best.work(job, before)?.start()?)))
        else {
            continue;
        };
        for _ in 0..PUT_OFF {
            let Some(later) = hours.next_beginning(from) else {
                break;
            };
            from = later;
            holds.push(Hold {
                job,
                step: before,
                from,
            });
            let other = run(jobs, hours, start, rules, &holds);
            if other.late() < best.late() {
                best = other;
                break;
            }
            holds.pop();
        }
    }
    best
}
