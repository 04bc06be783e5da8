//! The work on one piece, as timetable steps.

use super::air::limits;
use super::coats::{Coat, coats};
use crate::book::{DoneStep, Facts};
use crate::document::Piece;
use crate::preparing::{Held, OldFinish, PrepareStep, When, asks_for_result};
use crate::work::Work;
use coatings::Stage;
use timetable::{Cure, Job, Moment, Step};

/// Builds the steps for a piece: the allowed preparation, then each coat. Sanding between coats is divided
/// evenly among the coats that go onto another coat.
pub(super) fn job(piece: &Piece, work: &Work) -> Job {
    let takeoff = &work.takeoff;
    let of = |when: When| allowed(work, when);
    let sanding: f64 = of(When::Between).map(PrepareStep::likely_minutes).sum();
    let mut steps: Vec<Step> = of(When::Before).map(of_preparing).collect();
    let prepared = steps.len();
    let timed = work.timed_job(piece);
    let coats = coats(takeoff);
    // The surface under the first coat of each zone was sanded during preparation. Stain is not sanded
    // because its color would come off.
    let is_sanded = |under: &usize| {
        matches!(
            coats[*under].line.need.material.stage,
            Stage::Primer | Stage::Paint | Stage::Topcoat
        )
    };
    let onto_a_coat = |coat: &&Coat<'_>| coat.after.iter().any(is_sanded);
    let sanded = coats.iter().filter(onto_a_coat).count();
    let sanding = sanding / (sanded.max(1) as f64);
    for coat in &coats {
        let name = takeoff.name_of(coat.line);
        let mut step = of_coat(
            &timed,
            coat,
            &name,
            if onto_a_coat(&coat) { sanding } else { 0.0 },
        );
        // A coat under another one cures no sooner than in the open, so it cures along with the last one.
        for under in &coat.after {
            step.cure = longest(step.cure, steps[prepared + under].cure);
        }
        let after = match coat.after.as_slice() {
            [] => prepared.checked_sub(1).into_iter().collect(),
            after => after.iter().map(|before| prepared + before).collect(),
        };
        steps.push(step.after(after));
    }
    // These steps run in sequence after all coats.
    let coated = prepared..steps.len();
    for (place, step) in of(When::After).filter(is_work).enumerate() {
        let step = of_preparing(step);
        steps.push(match place {
            0 => step.after(coated.clone().collect()),
            _ => step,
        });
    }
    // While lead is unresolved, no sale date can be given.
    if OldFinish::of(piece) == OldFinish::Lead {
        steps.iter_mut().for_each(|step| step.cure = Cure::default());
    }
    let facts: Facts = piece.books.one();
    let mut job = Job::new(&piece.name, steps);
    job.key = piece.id.0.to_string();
    job.begin = facts.begin.map(|day| Moment::new(day, 0));
    job.due = facts.due;
    job.done = done(piece, &job.steps);
    job
}

/// Returns the longer of two cures, for using and selling a piece.
fn longest(one: Cure, other: Cure) -> Cure {
    Cure {
        recoat: one.recoat,
        sell: one.sell.max(other.sell),
        full: one.full.max(other.full),
    }
}

/// Returns the preparation steps of one time that nothing holds back.
fn allowed(work: &Work, when: When) -> impl Iterator<Item = &PrepareStep> {
    let all = work.steps.iter();
    all.filter(move |step| step.when == when && step.may_be_done())
}

fn is_work(step: &&PrepareStep) -> bool {
    step.minutes.1 > 0.0
}

/// Returns the keys of the steps that [`job`] has, in no particular order.
pub(crate) fn step_keys(work: &Work) -> Vec<String> {
    let before = allowed(work, When::Before).map(|step| step.key.clone());
    let after = allowed(work, When::After).filter(is_work);
    let lines = work.takeoff.materials.iter();
    let coated = lines.filter(|line| line.need.material.stage != Stage::Clean);
    let coats = coated.flat_map(|line| (1..=line.coats).map(|coat| line.coat_key(coat)));
    before
        .chain(coats)
        .chain(after.map(|step| step.key.clone()))
        .collect()
}

/// Returns the finish times of the leading steps that were checked off, never before the previous step. A step
/// without a time, as in older files, is set to noon of its day. A test without a recorded result does not count as done.
pub(super) fn done(piece: &Piece, steps: &[Step]) -> Vec<Moment> {
    let mut last: Option<Moment> = None;
    let ticked = steps
        .iter()
        .take_while(|step| !asks_for_result(&step.key))
        .map_while(|step| {
            let done = piece.books.find::<DoneStep>(&step.key)?;
            Some(Moment::new(done.day?, done.minute.unwrap_or(12 * 60)))
        });
    let in_order = ticked.map(|at| {
        let at = last.map_or(at, |last| last.max(at));
        last = Some(at);
        at
    });
    in_order.collect()
}

pub(super) fn of_preparing(step: &PrepareStep) -> Step {
    let (low, high) = step.minutes;
    let name = match step.held {
        Some(held) => format!("{} ({})", step.title, Held::message(held).trim_end_matches('.')),
        None => step.title.clone(),
    };
    let mut of = Step::new(&name, likely(low, high)).split();
    of.key.clone_from(&step.key);
    of.dusty = step.dusty;
    of.then(whole(step.wait * 60.0))
}

pub(super) fn of_coat(job: &coatings::Job, coat: &Coat<'_>, name: &str, sanding: f64) -> Step {
    let (line, coat) = (coat.line, coat.number);
    let mut job = job.clone();
    for layer in job.zones.iter_mut().flat_map(|zone| &mut zone.layers) {
        layer.coats = u32::from(line.need.is_of(layer) && layer.coats >= coat);
    }
    let time = coatings::minutes(&job);
    let (least, most) = (
        time.value - time.standard_uncertainty,
        time.value + time.standard_uncertainty,
    );
    let material = &line.need.material;
    let mut name = match line.coats {
        1 => name.to_owned(),
        of => format!("{name}, coat {coat} of {of}"),
    };
    if sanding > 0.0 {
        name = format!("Sand lightly, then {}", coatings::in_sentence(&name));
    }
    let mut step = Step::new(&name, likely(least + sanding, most + sanding));
    step.key = line.coat_key(coat);
    step.limits = Some(limits(material));
    step.dusty = sanding > 0.0;
    // Labels do not say when dust stops sticking. A coat that is ready for recoating no longer picks up dust
    // (common practice, no source).
    step.wet = whole(material.recoat.low * 60.0);
    let hours = |hours: f64| whole(hours * 60.0);
    let recoat = material.recoat;
    step.cure = Cure {
        recoat: Some(hours(recoat.high)),
        sell: Some(hours(material.cure.low.max(recoat.high))),
        full: Some(hours(material.cure.high.max(recoat.high))),
    };
    step.then(whole(recoat.high * 60.0))
}

/// Returns the midpoint, rounded to minutes. It is at least 1 because a step cannot take no time.
pub(super) fn likely(low: f64, high: f64) -> u32 {
    whole((low + high) / 2.0).max(1)
}

pub(super) fn whole(minutes: f64) -> u32 {
    minutes.round().clamp(0.0, f64::from(timetable::MOST_MINUTES)) as u32
}
