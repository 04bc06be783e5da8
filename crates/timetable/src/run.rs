//! One pass of list scheduling: what the hands do next, again and again.

use crate::hours::{Hours, Opening};
use crate::moment::Moment;
use crate::outcome::{Stuck, outcome};
use crate::plan::{Late, LateFor, Timetable, Work, WorkKind};
use crate::rules::{Haste, Order, Rules};
use crate::step::{Job, Step};
use crate::wait::Scuff;

/// A step that does not begin before a moment.
#[derive(Clone, Copy)]
pub(crate) struct Hold {
    pub(crate) job: usize,
    pub(crate) step: usize,
    pub(crate) from: Moment,
}

/// A job on its way.
struct Line<'a> {
    index: usize,
    job: &'a Job,
    /// When its steps end, up to the next.
    ends: Vec<Moment>,
    /// Before this nothing begins.
    begin: Moment,
    /// When the waits after the steps before the next are over.
    ready: Moment,
    /// Until when the next step keeps the windows of those before it.
    window: Option<Moment>,
    /// Until when none of the steps before is spoilt.
    longest: Option<Moment>,
    scuffed: bool,
    stuck: Option<Stuck>,
}

/// What a job would do next, and when it could.
struct Offer {
    /// Which of the lines.
    line: usize,
    kind: WorkKind,
    start: Moment,
    stretches: Vec<Opening>,
    /// Until when it has to begin, if it still can.
    deadline: Option<Moment>,
}

/// A timetable, with some steps held back.
pub(crate) fn run(jobs: &[Job], hours: &Hours, start: Moment, rules: Rules, holds: &[Hold]) -> Timetable {
    let mut pass = Pass {
        hours,
        rules,
        holds,
        lines: lines(jobs, start, rules.order),
        works: Vec::new(),
        wet: None,
    };
    let done = jobs.iter().flat_map(|job| job.steps.iter().zip(&job.done));
    pass.wet = done.filter_map(|(step, &end)| step.wet_until(end)).max();
    let mut now = start;
    loop {
        pass.go_by_themselves();
        let offers = pass.offers(now);
        let Some(first) = offers.iter().map(|offer| offer.start).min() else {
            break;
        };
        match pass.choose(&offers, first) {
            Some(offer) => {
                now = offer.stretches.last().map_or(first, |stretch| stretch.to);
                pass.take(offer);
            }
            // The hands rest until something else can begin; a step that had to stand back is offered again then.
            None => match offers
                .iter()
                .map(|offer| offer.start)
                .filter(|at| *at > first)
                .min()
            {
                Some(next) => now = next,
                None => break,
            },
        }
    }
    units::sort_few(&mut pass.lines, |one, other| one.index < other.index);
    units::sort_few(&mut pass.works, |one, other| one.start() < other.start());
    let outcomes = pass
        .lines
        .iter()
        .map(|line| outcome(line.job, &line.ends, line.stuck, rules.pace));
    Timetable {
        outcomes: outcomes.collect(),
        works: pass.works,
    }
}

/// The jobs in the order in which they go first.
fn lines(jobs: &[Job], start: Moment, order: Order) -> Vec<Line<'_>> {
    let mut lines: Vec<Line> = jobs
        .iter()
        .enumerate()
        .map(|(index, job)| {
            let begin = job.begin.map_or(start, |begin| begin.max(start));
            let mut line = Line {
                index,
                job,
                ends: Vec::new(),
                begin,
                ready: begin,
                window: None,
                longest: None,
                scuffed: false,
                stuck: None,
            };
            for (_, &end) in job.steps.iter().zip(&job.done) {
                line.step_done(end);
            }
            line
        })
        .collect();
    if order == Order::Due {
        let key = |line: &Line<'_>| (line.job.due.is_none(), line.job.due);
        units::sort_few(&mut lines, |one, other| key(one) < key(other));
    }
    lines
}

impl<'a> Line<'a> {
    fn next(&self) -> Option<&'a Step> {
        self.job
            .steps
            .get(self.ends.len())
            .filter(|_| self.stuck.is_none())
    }

    /// What mends the window that the next step misses.
    fn scuff(&self) -> Option<&'a Scuff> {
        self.job.scuff_before(self.ends.len()).filter(|_| !self.scuffed)
    }

    /// The next step has ended; the one behind it waits for all that it comes after.
    fn step_done(&mut self, end: Moment) {
        self.ends.push(end);
        let before = self.job.before(self.ends.len());
        let waits = || {
            let of = |place: &usize| Some((&self.job.steps.get(*place)?.wait, *self.ends.get(*place)?));
            before.iter().filter_map(of)
        };
        let after = |end: Moment, minutes: u32| end.after(i64::from(minutes));
        let ready = waits().map(|(wait, end)| after(end, wait.least())).max();
        let window = waits().filter_map(|(wait, end)| Some(after(end, wait.window()?)));
        let longest = waits().filter_map(|(wait, end)| Some(after(end, wait.longest()?)));
        (self.window, self.longest) = (window.min(), longest.min());
        self.ready = ready.map_or(self.begin, |ready| ready.max(self.begin));
        self.scuffed = false;
    }

    /// What the next step misses if it begins at a moment.
    fn late(&self, start: Moment) -> Option<Late> {
        let over = |end: Option<Moment>| end.map(|end| start.since(end)).filter(|minutes| *minutes > 0);
        let window = if self.scuffed {
            LateFor::WindowScuffed
        } else {
            LateFor::Window
        };
        let found = over(self.longest).map(|minutes| (LateFor::Longest, minutes));
        let (for_what, minutes) = found.or_else(|| over(self.window).map(|minutes| (window, minutes)))?;
        Some(Late { for_what, minutes })
    }
}

struct Pass<'a> {
    hours: &'a Hours,
    rules: Rules,
    holds: &'a [Hold],
    lines: Vec<Line<'a>>,
    works: Vec<Work>,
    /// Until when dust would settle in a coat that is on.
    wet: Option<Moment>,
}

impl Pass<'_> {
    /// Until when the next step of a job is held back.
    fn hold(&self, line: &Line) -> Option<Moment> {
        let of_step = self
            .holds
            .iter()
            .filter(|hold| hold.job == line.index && hold.step == line.ends.len());
        of_step.map(|hold| hold.from).max()
    }

    /// When the next step of a job may begin at the earliest.
    fn may_begin(&self, line: &Line) -> Moment {
        self.hold(line).map_or(line.ready, |hold| hold.max(line.ready))
    }

    /// Steps without hands begin as soon as they may.
    fn go_by_themselves(&mut self) {
        for at in 0..self.lines.len() {
            while let Some(step) = self.lines[at].next().filter(|step| !step.hands) {
                let from = self.may_begin(&self.lines[at]);
                let to = from.after(i64::from(step.minutes.at(self.rules.pace)));
                self.take(&Offer {
                    line: at,
                    kind: WorkKind::ByItself,
                    start: from,
                    stretches: vec![Opening { from, to }],
                    deadline: None,
                });
            }
        }
    }

    /// What each job would do next with the hands, which are free from `now` on; a job that cannot go on is stuck.
    fn offers(&mut self, now: Moment) -> Vec<Offer> {
        let mut offers = Vec::new();
        for at in 0..self.lines.len() {
            match self.offer(at, now, self.wet) {
                Ok(offer) => offers.extend(offer),
                Err(stuck) => self.lines[at].stuck = Some(stuck),
            }
        }
        offers
    }

    /// What a job would do next from a moment on, where a coat takes dust until `wet`.
    fn offer(&self, at: usize, now: Moment, wet: Option<Moment>) -> Result<Option<Offer>, Stuck> {
        let line = &self.lines[at];
        let Some(step) = line.next() else {
            return Ok(None);
        };
        if let Some(caution) = step.stopped {
            let step = line.ends.len();
            return Err(Stuck::Air { step, caution });
        }
        let may_begin = self.may_begin(line).max(now);
        let clear = wet.map_or(may_begin, |wet| wet.max(may_begin));
        let from = if step.dusty { clear } else { may_begin };
        let stuck = || {
            let is_shut = self.hours.next(from).is_none();
            let step = line.ends.len();
            if is_shut {
                Stuck::NoHours
            } else {
                Stuck::TooLong { step }
            }
        };
        let place = |minutes, may_split, from| self.hours.place(minutes, may_split, from).ok_or_else(stuck);
        let mut stretches = place(step.minutes.at(self.rules.pace), step.may_split, from)?;
        let start_of = |stretches: &[Opening]| stretches.first().map_or(from, |stretch| stretch.from);
        let mut start = start_of(&stretches);
        let mut kind = WorkKind::Hands;
        if let Some(scuff) = line
            .scuff()
            .filter(|_| line.window.is_some_and(|window| start > window))
        {
            kind = WorkKind::Scuff;
            stretches = place(scuff.minutes.at(self.rules.pace), true, clear)?;
            start = start_of(&stretches);
        }
        let window = line.window.filter(|_| !line.scuffed && kind == WorkKind::Hands);
        // `None` is less than any end, so `min` of the options would lose the one that is there.
        let deadline = match (window, line.longest) {
            (Some(window), Some(longest)) => Some(window.min(longest)),
            (window, longest) => window.or(longest),
        };
        Ok(Some(Offer {
            line: at,
            kind,
            start,
            stretches,
            deadline: deadline.filter(|deadline| start <= *deadline),
        }))
    }

    /// Whether an offer would let the window of another job close.
    fn closes_a_window(&self, offer: &Offer, offers: &[Offer]) -> bool {
        let end = offer.stretches.last().map_or(offer.start, |stretch| stretch.to);
        offers.iter().any(|other| {
            let Some(deadline) = other.deadline.filter(|_| other.line != offer.line) else {
                return false;
            };
            // Most offers end before the other could begin, which needs no look at the hours.
            if end <= other.start {
                return false;
            }
            let wet = self.wet_after(offer.line, end, offer.kind);
            let then = self.offer(other.line, end, wet);
            !matches!(then, Ok(Some(then)) if then.kind == other.kind && then.start <= deadline)
        })
    }

    /// Until when dust would settle in a coat, once the next step of a job has ended too.
    fn wet_after(&self, line: usize, end: Moment, kind: WorkKind) -> Option<Moment> {
        let step = self.lines[line].next().filter(|_| kind != WorkKind::Scuff);
        // `None` is less than any moment.
        self.wet.max(step.and_then(|step| step.wet_until(end)))
    }

    /// Which of the offers that could begin at a moment does; none if the hands had better rest.
    fn choose<'o>(&self, offers: &'o [Offer], now: Moment) -> Option<&'o Offer> {
        let mut available = offers.iter().filter(|offer| offer.start == now);
        if let Some(harmless) = available
            .clone()
            .find(|offer| !self.closes_a_window(offer, offers))
        {
            return Some(harmless);
        }
        // One of several windows closes whatever is done: the one that closes first is kept.
        let pressed = available.clone().filter(|offer| offer.deadline.is_some());
        if let Some(first) = pressed.min_by_key(|offer| offer.deadline) {
            return Some(first);
        }
        match self.rules.haste {
            Haste::Busy => available.next(),
            Haste::Windows => None,
        }
    }

    fn take(&mut self, offer: &Offer) {
        let is_held = {
            let line = &self.lines[offer.line];
            self.hold(line).is_some_and(|hold| hold > line.ready)
        };
        let end = offer.stretches.last().map_or(offer.start, |stretch| stretch.to);
        self.wet = self.wet_after(offer.line, end, offer.kind);
        let line = &mut self.lines[offer.line];
        let (step, is_scuff) = (line.ends.len(), offer.kind == WorkKind::Scuff);
        self.works.push(Work {
            job: line.index,
            step,
            kind: offer.kind,
            stretches: offer.stretches.clone(),
            late: if is_scuff { None } else { line.late(offer.start) },
            held: is_held && !is_scuff,
        });
        if is_scuff {
            line.scuffed = true;
            line.ready = line.ready.max(end);
        } else {
            line.step_done(end);
        }
    }
}
