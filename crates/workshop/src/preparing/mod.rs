//! What is done to a piece before its first coat, between its coats and after the last: steps in their order, with what each takes of the
//! real surface, and what to mind.
//!
//! The rules are data here: grits in `abrasive.rs`, cleaning in `cleaning.rs`, repairs in `repairs.rs` with the volume of
//! `filler.rs`, dangers in `cautions.rs`.

mod abrasive;
mod cautions;
mod cleaning;
mod curing;
mod filler;
mod found;
mod repairs;
mod sanding;
mod time;

use coatings::Reason;
use geometry::Edges;
use units::{Area, Length, Mass, Volume};

use crate::BookEdit;
use crate::document::{Piece, Workshop};
use crate::takeoff::Takeoff;

pub use abrasive::{Ladder, Sheets, USUAL_YIELD, sheets, whole_sheets};
pub use cautions::{LEAD, NO_LEAD, of_lead};
pub use filler::{OVERFILL, dents, holes};
pub use found::OldFinish;
pub(crate) use repairs::LEAD_KEY;

/// A step besides the coats.
#[derive(Clone, Debug, PartialEq)]
pub struct PrepareStep {
    /// Its name, under which it is ticked off.
    pub key: String,
    /// What is done.
    pub title: String,
    /// How, and why.
    pub how: Vec<Reason>,
    /// What it takes.
    pub amounts: Vec<Amount>,
    /// What to mind.
    pub cautions: Vec<Reason>,
    /// Where it stands among the coats.
    pub when: When,
    /// What keeps it from being done.
    pub held: Option<Held>,
    /// Minutes of work, at least and at most.
    pub minutes: (f64, f64),
    /// Hours after it until the next step.
    pub wait: f64,
    /// Whether it raises dust, so that no coat may be wet beside it.
    pub dusty: bool,
}

/// Where a step stands among the coats.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum When {
    /// Before the first.
    Before,
    /// With them, or between them.
    Between,
    /// After the last.
    After,
}

/// What keeps a step from being done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// It waits until this is done.
    Until(&'static str),
    /// It must not be done at all.
    ForGood(&'static str),
}

impl Held {
    /// What a person is told.
    pub fn message(self) -> &'static str {
        match self {
            Held::Until(why) | Held::ForGood(why) => why,
        }
    }
}

/// What a step takes of one thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Amount {
    /// The thing.
    pub what: String,
    /// How much of it.
    pub much: Much,
    /// How that comes about.
    pub from: &'static str,
    /// The name under which it stands on the list of what to buy; none of what is not bought for it.
    pub good: Option<String>,
}

/// How much; with two values, at least and at most where nothing else is said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Much {
    /// A surface.
    Area(Area),
    /// A run of edges.
    Length(Length),
    /// A liquid or a paste.
    Volume(Volume, Volume),
    /// A mass.
    Mass(Mass, Mass),
    /// Things that are counted.
    Count(u32, u32),
    /// Full sheets of abrasive of this grit, likely and at most; see [`whole_sheets`].
    Sheets(&'static str, f64, f64),
    /// Discs of abrasive, and full sheets for what they do not reach, each likely and at most.
    Discs {
        /// Discs.
        discs: (f64, f64),
        /// Full sheets.
        sheets: (f64, f64),
    },
    /// Hours to wait.
    Hours(f64, f64),
}

/// What the steps are found from.
struct Of<'a> {
    workshop: &'a Workshop,
    piece: &'a Piece,
    takeoff: &'a Takeoff,
    edges: &'a [(String, Edges)],
}

/// The steps for a piece, in their order, for the whole set; `edges` are those of one piece, by zone.
pub fn prepare(
    workshop: &Workshop,
    piece: &Piece,
    takeoff: &Takeoff,
    edges: &[(String, Edges)],
) -> Vec<PrepareStep> {
    let of = Of {
        workshop,
        piece,
        takeoff,
        edges,
    };
    let mut steps = Vec::new();
    repairs::lead(&of, &mut steps);
    repairs::hardware(&of, &mut steps);
    cleaning::clean(&of, &mut steps);
    cleaning::smell(&of, &mut steps);
    sanding::strip(&of, &mut steps);
    repairs::fill(&of, &mut steps);
    cleaning::degloss(&of, &mut steps);
    sanding::sand(&of, &mut steps);
    repairs::block(&of, &mut steps);
    sanding::between(&of, &mut steps);
    repairs::hardware_back(&of, &mut steps);
    curing::cure(&of, &mut steps);
    for step in steps.iter_mut().filter(|step| step.minutes.1 > 0.0) {
        let (least, most) = time::SET_UP;
        step.minutes = (step.minutes.0 + least, step.minutes.1 + most);
    }
    steps
}

/// Things of which one does for so many square metres, at least and at most (common practice, no source).
fn one_for(area: Area, (least, most): (f64, f64)) -> Much {
    let count = |square_metres: f64| (area.as_square_metres() / square_metres).ceil() as u32;
    Much::Count(count(most), count(least))
}

/// Whether a step, by its key, is a test whose result decides what comes after: to have done it is not enough, and it is
/// there until the result is written down.
pub fn asks_for_result(key: &str) -> bool {
    key == repairs::LEAD_KEY
}

/// The edit that writes the result of such a test down.
pub fn result_of_test(is_lead_found: bool) -> BookEdit {
    let result = if is_lead_found { "positive" } else { "negative" };
    BookEdit::Write("facts", "only".into(), "lead".into(), result.into())
}

impl PrepareStep {
    /// Whether it is a test whose result is not written down yet.
    pub fn asks_for_result(&self) -> bool {
        asks_for_result(&self.key)
    }

    /// Whether it may be done, now or once what it waits for is done.
    pub fn may_be_done(&self) -> bool {
        !matches!(self.held, Some(Held::ForGood(_)))
    }

    /// What it takes, as long as it may be done.
    pub fn taken(&self) -> &[Amount] {
        if self.may_be_done() { &self.amounts } else { &[] }
    }

    /// Minutes of work, in the middle between the least and the most.
    pub fn likely_minutes(&self) -> f64 {
        (self.minutes.0 + self.minutes.1) / 2.0
    }

    fn new(key: impl Into<String>, title: impl Into<String>) -> Self {
        PrepareStep {
            key: key.into(),
            title: title.into(),
            how: Vec::new(),
            amounts: Vec::new(),
            cautions: Vec::new(),
            when: When::Before,
            held: None,
            minutes: (0.0, 0.0),
            wait: 0.0,
            dusty: false,
        }
    }

    fn how(mut self, how: impl IntoIterator<Item = Reason>) -> Self {
        self.how.extend(how);
        self
    }

    fn takes(mut self, what: impl Into<String>, much: Much, from: &'static str) -> Self {
        self.amounts.push(Amount {
            what: what.into(),
            much,
            from,
            good: None,
        });
        self
    }

    /// As [`PrepareStep::takes`], of a thing that is bought, by its name on the list.
    fn buys(
        mut self,
        good: impl Into<String>,
        what: impl Into<String>,
        much: Much,
        from: &'static str,
    ) -> Self {
        self = self.takes(what, much, from);
        if let Some(amount) = self.amounts.last_mut() {
            amount.good = Some(good.into());
        }
        self
    }

    /// It lasts so many minutes, besides what it lasts already.
    fn lasts(mut self, (low, high): (f64, f64)) -> Self {
        self.minutes = (self.minutes.0 + low, self.minutes.1 + high);
        self
    }

    fn when(mut self, when: When) -> Self {
        self.when = when;
        self
    }

    fn held(mut self, held: Option<Held>) -> Self {
        self.held = held;
        self
    }

    fn dusty(mut self) -> Self {
        self.dusty = true;
        self
    }

    fn waits(mut self, hours: f64) -> Self {
        self.wait = hours;
        self
    }

    fn mind(mut self, cautions: impl IntoIterator<Item = Reason>) -> Self {
        self.cautions.extend(cautions);
        self
    }
}

#[cfg(test)]
mod tests;
