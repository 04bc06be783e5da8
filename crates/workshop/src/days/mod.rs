//! The schedule: preparation and coating steps of every piece, fitted into the maker's working hours.

mod air;
mod coats;
mod job;

use air::measured;
pub use air::{AirToday, CoatsInAir, air};
use job::job;
pub(crate) use job::step_keys;
use std::rc::Rc;

use timetable::{Hours, Job, Moment, Timetable, schedule};

use crate::book::{Habits, WorkingHours};
use crate::document::{Piece, Workshop};
use crate::work::Work;

/// Default working hours, Monday to Friday, in minutes after midnight.
pub const USUAL_HOURS: [(u32, u32); 2] = [(9 * 60, 12 * 60), (13 * 60, 17 * 60)];
/// The same hours as a maker writes them.
pub const USUAL_HOURS_TEXT: &str = "9am to 12pm, 1pm to 5pm";

/// The schedule of all pieces.
#[derive(Clone, Debug)]
pub struct Days {
    /// A job for each piece that has a takeoff. The job's key is the id of the piece.
    pub jobs: Vec<Job>,
    /// The working hours used for the schedule.
    pub hours: Hours,
    /// True if these are the default hours because the maker entered none.
    pub usual_hours: bool,
    /// The timetable of the steps.
    pub timetable: Timetable,
}

/// Schedules the work on the pieces within the maker's hours, from `from` on. `works` has one entry for each piece, `None` for
/// one that is not scheduled.
///
/// Each wait is the longest in the label's range. Cold or damp air, if measured, makes it longer. Coats that
/// must not go on in that air are not scheduled.
pub(crate) fn days(workshop: &Workshop, works: &[Option<Work>], from: Moment) -> Days {
    let taken = workshop.pieces.iter().zip(works);
    let air = measured(workshop);
    let begin = workshop
        .books
        .one::<Habits>()
        .begin
        .map(|day| Moment::new(day, 0));
    let of_piece = |(piece, work): (&Rc<Piece>, &Option<Work>)| {
        let mut job = job(piece, work.as_ref()?);
        // A piece without a start date of its own starts with the others.
        job.begin = job.begin.or(begin);
        Some(match &air {
            Some(of) => job.in_air(of.air, of.surface),
            None => job,
        })
    };
    let jobs: Vec<Job> = taken.filter_map(of_piece).collect();
    let (hours, usual_hours) = hours(workshop);
    let timetable = schedule(&jobs, &hours, from);
    Days {
        jobs,
        hours,
        usual_hours,
        timetable,
    }
}

/// Returns the hours the maker entered, for each day from Monday on. A day that cannot be read has no hours.
pub fn written_hours(workshop: &Workshop) -> [Vec<(u32, u32)>; 7] {
    let week = workshop.books.one::<Habits>().week();
    week.map(|day| day.map_or_else(Vec::new, |WorkingHours(hours)| hours))
}

fn hours(workshop: &Workshop) -> (Hours, bool) {
    let is_usual = workshop.has_usual_hours();
    let usual = |place: usize| match place < 5 {
        true => USUAL_HOURS.to_vec(),
        false => Vec::new(),
    };
    let week = match is_usual {
        true => std::array::from_fn(usual),
        false => written_hours(workshop),
    };
    (Hours::new(week, &[]), is_usual)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::days::air::air;
    use crate::preparing::OldFinish;
    use crate::samples::works;
    use crate::samples::written_down;
    use crate::{BookEdit, Edit, PieceEdit, SchemeEdit, invented_workshop};
    use coatings::Stage;
    use coatings::Wish;
    use timetable::{AirCaution, Step};
    use units::Day;

    #[test]
    fn the_usual_hours_are_written_as_they_are_read() {
        assert_eq!(
            crate::hours::read_hours(USUAL_HOURS_TEXT),
            Some(USUAL_HOURS.to_vec())
        );
    }

    #[test]
    fn one_start_date_is_for_every_piece_without_its_own() {
        let begin = |book: &'static str, text: &str| {
            BookEdit::Write(book, "only".into(), "begin".into(), text.into())
        };
        let workshop = invented_workshop();
        let of_all = workshop.apply(Edit::Book(begin("habits", "2026-06-01"))).unwrap();
        let own = Edit::Piece(
            workshop.pieces[0].id.clone(),
            PieceEdit::Book(begin("facts", "2026-06-08")),
        );
        let both = of_all.apply(own).unwrap();
        let starts = |workshop: &Workshop| {
            laid(workshop)
                .jobs
                .iter()
                .map(|job| job.begin.unwrap().day().to_string())
                .collect::<Vec<_>>()
        };
        assert!(starts(&of_all).iter().all(|day| day == "2026-06-01"));
        assert_eq!(starts(&both)[..2], ["2026-06-08", "2026-06-01"]);
    }

    /// A coat that was checked off in the afternoon dries from then on, not from noon.
    #[test]
    fn drying_starts_when_a_step_was_checked_off() {
        let workshop = written_down(&[("lead", "negative")], &[]);
        let id = workshop.pieces[0].id.clone();
        let first = laid(&workshop).jobs[0].steps[0].clone();
        assert!(first.wait > 0, "{first:?}");
        let done = |values| {
            let add = BookEdit::Add("done", first.key.as_str().into(), values);
            let workshop = workshop
                .apply(Edit::Piece(id.clone(), PieceEdit::Book(add)))
                .unwrap();
            laid(&workshop).jobs[0].done[0].to_string()
        };
        let day = ("day", "2026-05-04".to_owned());
        assert_eq!(done(vec![day.clone()]), "2026-05-04T12:00");
        assert_eq!(done(vec![day, ("minute", "820".into())]), "2026-05-04T13:40");
    }

    fn laid(workshop: &Workshop) -> Days {
        // 2026-05-04 is a Monday.
        days(
            workshop,
            &works(workshop),
            Moment::read("2026-05-04T08:00").unwrap(),
        )
    }

    #[test]
    fn every_coat_has_its_step_and_no_wait_is_shorter_than_the_label() {
        let workshop = invented_workshop();
        let taken = works(&workshop);
        let days = laid(&workshop);
        assert_eq!(days.jobs.len(), workshop.pieces.len());
        for (place, (job, takeoff)) in days.jobs.iter().zip(&taken).enumerate() {
            let takeoff = &takeoff.as_ref().unwrap().takeoff;
            let coats: u32 = takeoff
                .materials
                .iter()
                .filter(|line| line.need.material.stage != Stage::Clean)
                .map(|line| line.coats)
                .sum();
            let of_coats = job
                .steps
                .iter()
                .filter(|step| step.key.starts_with("coat-"))
                .count();
            assert_eq!(of_coats as u32, coats);
            keep_their_waits(&days, place);
            for line in &takeoff.materials {
                let high = (line.need.material.recoat.high * 60.0).round() as u32;
                let mut of = job
                    .steps
                    .iter()
                    .filter(|step| step.key.starts_with(&format!("coat-{}-", line.id)));
                assert!(of.all(|step| step.wait == high));
            }
        }
    }

    /// The navigation counts what is checked off without a schedule.
    #[test]
    fn the_keys_of_the_steps_are_those_of_the_schedule() {
        let workshop = written_down(&[("hardware", "12"), ("lead", "negative")], &[]);
        let (days, taken) = (laid(&workshop), works(&workshop));
        for (job, work) in days.jobs.iter().zip(&taken) {
            let mut keys = step_keys(work.as_ref().unwrap());
            let mut laid: Vec<String> = job.steps.iter().map(|step| step.key.clone()).collect();
            keys.sort();
            laid.sort();
            assert_eq!(keys, laid);
        }
    }

    /// A key that no step has, such as one of an older file, is not counted.
    #[test]
    fn only_steps_of_the_piece_count_as_checked_off() {
        let workshop = invented_workshop();
        let id = workshop.pieces[0].id.clone();
        let checked_off = |workshop: Workshop| {
            let analysis = crate::Analysis::of(Rc::new(workshop));
            let piece = Rc::clone(&analysis.workshop().pieces[0]);
            analysis.checked_off(&piece)
        };
        let before = checked_off(workshop.clone());
        let ticked = |workshop: &Workshop, key: &str| {
            let tick = BookEdit::Add("done", key.into(), vec![("day", "2026-05-03".into())]);
            workshop
                .apply(Edit::Piece(id.clone(), PieceEdit::Book(tick)))
                .unwrap()
        };
        let two = ticked(&ticked(&workshop, "coat-paint-1"), "coat-paint-7-1");
        assert_eq!((before, checked_off(two)), (0, 1));
    }

    /// The schedule has the same work as the account, except that tools are washed after each coat instead of
    /// once.
    #[test]
    fn the_days_have_the_hours_of_the_account() {
        let workshop = invented_workshop();
        let (days, taken) = (laid(&workshop), works(&workshop));
        for ((job, piece), takeoff) in days.jobs.iter().zip(&workshop.pieces).zip(&taken) {
            let of_steps = job.steps.iter().map(|step| step.minutes);
            let laid_out = f64::from(of_steps.sum::<u32>());
            let today = Day::since_1970(20_000);
            let account = crate::money::account(&workshop, piece, takeoff.as_ref().unwrap(), today);
            let reckoned = f64::from(account.costs.minutes);
            assert!(
                laid_out > reckoned - 5.0 && laid_out < reckoned * 1.25,
                "{laid_out} {reckoned}"
            );
        }
    }

    /// Trim enamel takes 14 to 30 days to cure, and the clear coat on it 7 to 21. The piece takes the longer of both from
    /// the last coat on.
    #[test]
    fn a_piece_cures_from_its_last_coat_on() {
        let days = laid(&invented_workshop());
        let mut coats = days.jobs[0].steps.iter().enumerate();
        let (last, step) = coats.rfind(|(_, step)| step.key.starts_with("coat-")).unwrap();
        assert!(step.name.contains("polyurethane"), "{}", step.name);
        let end = days.timetable.work(0, last).unwrap().end().unwrap();
        let waits = |stage| days.timetable.outcomes[0].at(stage).unwrap().since(end) / (24 * 60);
        assert_eq!(
            (waits(timetable::Stage::Sell), waits(timetable::Stage::Cured)),
            (14, 30)
        );
    }

    /// A piece is not ready until its knobs are back on, after every coat can be handled.
    #[test]
    fn knobs_go_back_on_after_all_coats() {
        let days = laid(&written_down(&[("hardware", "12")], &[]));
        let job = &days.jobs[0];
        let last = job
            .steps
            .iter()
            .position(|step| step.key == "hardware-back")
            .unwrap();
        let after: Vec<_> = job.steps[last + 1..].iter().map(|step| &*step.key).collect();
        assert_eq!(after, ["ease-drawers", "price-tag"]);
        let coats = |step: &&Step| step.key.starts_with("coat-");
        assert_eq!(job.before(last).len(), job.steps.iter().filter(coats).count());
        keep_their_waits(&days, 0);
    }

    /// The list, the picture and the calendar all take the sale date from the outcome, so it must be empty.
    #[test]
    fn a_piece_with_lead_has_no_day_to_sell() {
        let day = |test: &str| {
            let days = laid(&written_down(&[("lead", test)], &[]));
            let events = timetable::events(&days.jobs, &days.timetable);
            let told = format!("{}: ready to sell", days.jobs[0].name);
            let is_told = events.iter().any(|event| event.summary == told);
            let sell = days.timetable.outcomes[0].at(timetable::Stage::Sell);
            assert_eq!(is_told, sell.is_some());
            sell
        };
        assert_eq!(day("positive"), None);
        assert!(day("negative").is_some());
    }

    #[track_caller]
    fn keep_their_waits(days: &Days, place: usize) {
        let job = &days.jobs[place];
        for (n, step) in job.steps.iter().enumerate() {
            for before in job.before(n) {
                let work = |step| days.timetable.work(place, step).unwrap();
                let waited = work(n).start().unwrap().since(work(before).end().unwrap());
                let least = i64::from(job.steps[before].wait);
                assert!(waited >= least, "{} after {}", step.name, job.steps[before].name);
            }
        }
    }

    /// The top has its own paint. Its coats go on while those of the body dry, and every coat still waits for
    /// the one under it.
    #[test]
    fn zones_are_coated_beside_each_other() {
        let one = invented_workshop();
        let id = one.pieces[0].id.clone();
        let edit =
            |workshop: &Workshop, edit: PieceEdit| workshop.apply(Edit::Piece(id.clone(), edit)).unwrap();
        let apart = edit(
            &one,
            PieceEdit::Apart {
                zone: "top".into(),
                apart: true,
            },
        );
        let of_top = |change| PieceEdit::Finish(Some("top".into()), change);
        let two = edit(&apart, of_top(SchemeEdit::Suggested(Wish::StainedClear)));
        let (before, after) = (laid(&one), laid(&two));
        keep_their_waits(&after, 0);
        let count = |days: &Days| days.jobs[0].steps.len();
        let end = |days: &Days| days.timetable.outcomes[0].end.unwrap();
        assert!(count(&after) > count(&before));
        // In sequence, the coats would need additional waits.
        let mut jobs = laid(&two).jobs;
        jobs[0].steps.iter_mut().for_each(|step| step.after = None);
        let start = Moment::read("2026-05-04T08:00").unwrap();
        let alone = schedule(&jobs, &after.hours, start);
        assert!(end(&after) < alone.outcomes[0].end.unwrap());
    }

    /// The first clear coat on a stain goes on without sanding. Coats on clear, primer or paint are sanded
    /// first.
    #[test]
    fn a_stain_is_not_sanded() {
        let one = invented_workshop();
        let id = one.pieces[0].id.clone();
        let stained = PieceEdit::Finish(None, SchemeEdit::Suggested(Wish::StainedClear));
        let names = |workshop: &Workshop| -> Vec<(String, bool)> {
            let steps = laid(workshop).jobs.remove(0).steps.into_iter();
            let coats = steps.filter(|step| step.key.starts_with("coat-"));
            coats
                .map(|step| {
                    let is_sanded = step.name.starts_with("Sand lightly");
                    (step.key, is_sanded)
                })
                .collect()
        };
        let of = |names: &[(String, bool)], first: &str| {
            let found = names.iter().position(|(key, _)| key.starts_with(first)).unwrap();
            (names[found].1, names[found + 1].1)
        };
        let stained = names(&one.apply(Edit::Piece(id, stained)).unwrap());
        assert_eq!(of(&stained, "coat-stain"), (false, false), "{stained:?}");
        assert!(stained.last().unwrap().1, "a clear coat on another");
        let painted = names(&one);
        assert_eq!(of(&painted, "coat-primer"), (false, true), "{painted:?}");
    }

    /// The body has two paints, and the top has the same two in reverse order. No single order works for
    /// both, so one zone has to wait.
    #[test]
    fn zones_that_contradict_each_other_are_coated_one_after_another() {
        let mut workshop = invented_workshop();
        let id = workshop.pieces[0].id.clone();
        let top = |change| PieceEdit::Finish(Some("top".into()), change);
        for edit in [
            PieceEdit::Finish(None, SchemeEdit::Add("chalk-type-paint".into())),
            PieceEdit::Apart {
                zone: "top".into(),
                apart: true,
            },
            top(SchemeEdit::Remove(1)),
            top(SchemeEdit::Add("trim-enamel".into())),
        ] {
            workshop = workshop.apply(Edit::Piece(id.clone(), edit)).unwrap();
        }
        let of = |zone: &str| -> Vec<String> {
            let scheme = workshop.pieces[0].scheme_of(zone);
            scheme
                .layers
                .iter()
                .map(|layer| layer.material.to_string())
                .collect()
        };
        let body = [
            "shellac-primer",
            "trim-enamel",
            "chalk-type-paint",
            "water-polyurethane",
        ];
        let turned = [
            "shellac-primer",
            "chalk-type-paint",
            "trim-enamel",
            "water-polyurethane",
        ];
        assert_eq!(
            (of("body"), of("top")),
            (body.map(String::from).into(), turned.map(String::from).into())
        );
        let days = laid(&workshop);
        keep_their_waits(&days, 0);
        let taken = works(&workshop);
        let coats: u32 = taken[0]
            .as_ref()
            .unwrap()
            .takeoff
            .materials
            .iter()
            .map(|line| line.coats)
            .sum();
        let of_coats = days.jobs[0]
            .steps
            .iter()
            .filter(|step| step.key.starts_with("coat-"));
        assert_eq!(of_coats.count() as u32, coats);
    }

    #[test]
    fn the_hands_work_in_the_hours_of_the_maker_only() {
        let off = ["mon", "tue", "wed", "thu", "fri"].map(|day| (day, ""));
        let days = laid(&written_down(&[], &[&[("sat", "10-12")], &off[..]].concat()));
        assert!(!days.usual_hours);
        for work in &days.timetable.works {
            for stretch in &work.stretches {
                // Weekdays are counted from Monday, which is 0.
                assert_eq!(stretch.from.day().weekday(), 5, "{}", stretch.from);
                assert!(stretch.from.minute() >= 600 && stretch.to.minute() <= 720);
            }
        }
        assert!(laid(&invented_workshop()).usual_hours);
    }

    #[test]
    fn what_is_ticked_off_is_not_laid_out_again_and_a_sold_piece_needs_no_day() {
        let workshop = written_down(&[("lead", "negative")], &[]);
        let first = laid(&workshop).jobs[0].steps[0].key.clone();
        let id = workshop.pieces[0].id.clone();
        let tick = BookEdit::Add("done", first.as_str().into(), vec![("day", "2026-05-03".into())]);
        let ticked = workshop.apply(Edit::Piece(id, PieceEdit::Book(tick))).unwrap();
        let days = laid(&ticked);
        assert_eq!(days.jobs[0].done.len(), 1);
        assert!(days.timetable.work(0, 0).is_none());
        let sold = Rc::new(written_down(&[("sold-on", "2026-05-01")], &[]));
        let from = Moment::read("2026-05-04T08:00").unwrap();
        let days = crate::Analysis::of(sold).days(from, None);
        assert_eq!(days.jobs.len(), workshop.pieces.len() - 1);
    }

    /// A lead test that was checked off stays on the list until its result is recorded. After that, sanding
    /// is allowed.
    #[test]
    fn a_ticked_lead_test_asks_for_its_result() {
        let workshop = invented_workshop();
        let id = workshop.pieces[0].id.clone();
        let on_piece = |workshop: &Workshop, edit| {
            workshop
                .apply(Edit::Piece(id.clone(), PieceEdit::Book(edit)))
                .unwrap()
        };
        let tick = BookEdit::Add("done", "lead".into(), vec![("day", "2026-05-03".into())]);
        let ticked = on_piece(&workshop, tick);
        let sand = |workshop: &Workshop| {
            let mut job = laid(workshop).jobs.remove(0);
            let done = job.done.len();
            job.steps.retain(|step| step.key == "sand");
            (done, job.steps.remove(0).name)
        };
        let (done, waits) = sand(&ticked);
        assert_eq!(done, 0);
        assert!(waits.ends_with("(Enter the lead test result first)"), "{waits}");
        let clear = on_piece(&ticked, crate::preparing::result_of_test(false));
        assert!(!sand(&clear).1.contains('('), "{}", sand(&clear).1);
        assert!(laid(&clear).jobs[0].steps.iter().all(|step| step.key != "lead"));
        let found = on_piece(&ticked, crate::preparing::result_of_test(true));
        assert_eq!(OldFinish::of(&found.pieces[0]), OldFinish::Lead);
    }

    /// Sanding that is forbidden is left out of the timetable and the calendar. Sanding that waits for the
    /// test says so.
    #[test]
    fn lead_keeps_the_sander_out_of_the_days() {
        let steps = |lead: &str| {
            let job = laid(&written_down(&[("lead", lead)], &[])).jobs.remove(0);
            job.steps
                .into_iter()
                .map(|step| (step.key, step.name))
                .collect::<Vec<_>>()
        };
        let is_sanding = |(key, _): &&(String, String)| key.starts_with("sand");
        assert_eq!(steps("positive").iter().find(is_sanding), None);
        let makes_dust = |(key, name): &(String, String)| key == "dust" || name.starts_with("Sand");
        assert!(!steps("positive").iter().any(makes_dust) && steps("negative").iter().any(makes_dust));
        assert!(
            steps("none")
                .iter()
                .find(is_sanding)
                .unwrap()
                .1
                .ends_with("(Do the lead test first)")
        );
        assert!(!steps("negative").iter().find(is_sanding).unwrap().1.contains('('));
    }

    /// At 25 °C and 60% humidity, the dew point is 16.7 °C (PsychroLib gives the same in `tests/outside`). A
    /// surface at 18 °C is too close to it.
    #[test]
    fn a_cold_piece_in_damp_air_waits() {
        assert!(air(&invented_workshop()).is_none());
        let damp = written_down(
            &[],
            &[("temperature", "25 C"), ("humidity", "60 %"), ("surface", "18 C")],
        );
        let dew = air(&damp).unwrap().dew.unwrap();
        assert!((dew.dew_point - 16.7).abs() < 0.1 && !dew.condensation.allows());
        assert!(air(&damp).unwrap().forbids());
        let warm = written_down(&[], &[("temperature", "77 F"), ("humidity", "50 %")]);
        let fine = air(&warm).unwrap();
        assert!(fine.dew.as_ref().unwrap().condensation.allows() && fine.cautions.is_empty());
        assert!(!fine.forbids_some() && fine.drying_percent == 100);
    }

    fn in_air(temperature: &str, humidity: &str) -> Workshop {
        written_down(&[], &[("temperature", temperature), ("humidity", humidity)])
    }

    /// 35 °F and 20 °F at 40% are well above the dew point, but no coat goes on because water-based coats
    /// need 50 °F.
    #[test]
    fn freezing_air_stops_every_coat() {
        for temperature in ["35 F", "20 F", "49 F"] {
            let cold = in_air(temperature, "40 %");
            let today = air(&cold).unwrap();
            assert!(today.dew.as_ref().unwrap().condensation.allows(), "{temperature}");
            assert!(today.forbids(), "{temperature}");
            let days = laid(&cold);
            for (place, job) in days.jobs.iter().enumerate() {
                let coat = job.steps.iter().position(|step| step.key.starts_with("coat-"));
                let outcome = &days.timetable.outcomes[place];
                let stopped = timetable::Obstacle::Air {
                    step: coat.unwrap(),
                    caution: AirCaution::TooCold,
                };
                assert_eq!(outcome.stuck, Some(stopped));
                assert_eq!(outcome.at(timetable::Stage::Sell), None);
                assert!(days.timetable.work(place, coat.unwrap()).is_none());
            }
        }
        assert!(!air(&in_air("50 F", "40 %")).unwrap().forbids_some());
        // Without a piece, the default coats are water-based.
        let write = |key: &str, text: &str| BookEdit::Write("habits", "only".into(), key.into(), text.into());
        let mut bare = Workshop::default();
        for (key, text) in [("temperature", "35 F"), ("humidity", "40 %")] {
            bare = bare.apply(Edit::Book(write(key, text))).unwrap();
        }
        assert!(air(&bare).unwrap().forbids());
    }

    /// At 43 °F, an oil-alkyd paint may go on because its limit is 40 °F. The water-based coats may not.
    #[test]
    fn each_binder_has_its_own_least_air() {
        let cold = in_air("43 F", "40 %");
        let id = cold.pieces[0].id.clone();
        let alkyd = PieceEdit::Finish(None, SchemeEdit::Add("alkyd-enamel".into()));
        let today = air(&cold.apply(Edit::Piece(id, alkyd)).unwrap()).unwrap();
        assert!(today.forbids_some() && !today.forbids());
        let open = today.coats.iter().filter(|coats| coats.stopped.is_none());
        let open: Vec<_> = open
            .map(|coats| (&coats.names[..], coats.coldest, coats.warm_after))
            .collect();
        assert_eq!(open, [(&["Alkyd enamel".to_owned()][..], 8.0 / 1.8, 0)]);
        let water = today.coats.iter().find(|coats| coats.warm_after > 0).unwrap();
        assert_eq!((water.coldest, water.warm_after), (10.0, 24));
    }

    /// 13 °C is 10 °C below the air temperature on the label. By rule of thumb, that doubles every wait.
    #[test]
    fn cold_air_makes_every_wait_longer() {
        let cold = laid(&in_air("13 C", "40 %"));
        let usual = laid(&in_air("25 C", "40 %"));
        for (cold, usual) in cold.jobs.iter().zip(&usual.jobs) {
            for (cold, usual) in cold.steps.iter().zip(&usual.steps) {
                assert_eq!(cold.wait, 2 * usual.wait, "{}", cold.name);
            }
        }
        let sell = |days: &Days| days.timetable.outcomes[0].at(timetable::Stage::Sell).unwrap();
        assert!(sell(&cold) > sell(&usual));
        keep_their_waits(&cold, 0);
    }

    /// Nothing is sanded while a wet coat on any piece can pick up dust. That lasts for its shortest recoat
    /// time.
    #[test]
    fn nothing_is_sanded_beside_a_wet_coat() {
        let days = laid(&written_down(&[("lead", "negative")], &[]));
        let mut beside = 0;
        for dusty in &days.timetable.works {
            if !days.jobs[dusty.job].steps[dusty.step].dusty {
                continue;
            }
            for wet in &days.timetable.works {
                let minutes = i64::from(days.jobs[wet.job].steps[wet.step].wet);
                let since = dusty.start().unwrap().since(wet.end().unwrap());
                assert!(since < 0 || since >= minutes, "{dusty:?} beside {wet:?}");
                beside += i64::from(minutes > 0 && wet.job != dusty.job && since >= minutes);
            }
        }
        assert!(beside > 0, "two pieces are worked on beside each other");
        let makes_dust = |key: &str| {
            days.jobs[0]
                .steps
                .iter()
                .find(|step| step.key == key)
                .unwrap()
                .dusty
        };
        assert!(makes_dust("sand") && makes_dust("dust") && !makes_dust("clean"));
    }
}
