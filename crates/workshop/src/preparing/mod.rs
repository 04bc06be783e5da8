//! Work on a piece before the first coat, between coats and after the last one: the steps in order, the
//! amounts they take for the actual surfaces, and their warnings.
//!
//! The rules are data: grits in `abrasive.rs`, cleaning in `cleaning.rs`, repairs in `repairs.rs`, filler
//! volumes in `filler.rs`, and warnings in `cautions.rs`.

mod abrasive;
mod cautions;
mod cleaning;
mod curing;
mod ending;
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

pub use abrasive::{Ladder, Sheets, USUAL_YIELD, grit_name, sheets, whole_sheets};
pub use cautions::{LEAD, NO_LEAD, of_lead};
pub(crate) use ending::RUNNER_WAX;
pub use filler::{OVERFILL, dents, holes};
pub use found::OldFinish;
pub(crate) use repairs::LEAD_KEY;

/// A step other than a coat.
#[derive(Clone, Debug, PartialEq)]
pub struct PrepareStep {
    /// The step's key, used to check it off.
    pub key: String,
    /// The title.
    pub title: String,
    /// Instructions and reasons.
    pub how: Vec<Reason>,
    /// The amounts it takes.
    pub amounts: Vec<Amount>,
    /// Warnings.
    pub cautions: Vec<Reason>,
    /// When it is done relative to the coats.
    pub when: When,
    /// Why the step must wait or must not be done.
    pub held: Option<Held>,
    /// The minimum and maximum working time, in minutes.
    pub minutes: (f64, f64),
    /// The wait before the next step, in hours.
    pub wait: f64,
    /// True if it raises dust, so that no coat may be wet nearby.
    pub dusty: bool,
}

/// When a step is done relative to the coats.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum When {
    /// Before the first coat.
    Before,
    /// With or between the coats.
    Between,
    /// After the last coat.
    After,
}

/// Why a step cannot be done now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// It must wait until this is done.
    Until(&'static str),
    /// It must not be done at all.
    ForGood(&'static str),
}

impl Held {
    /// Returns the message for the maker.
    pub fn message(self) -> &'static str {
        match self {
            Held::Until(why) | Held::ForGood(why) => why,
        }
    }
}

/// How much of one item a step takes.
#[derive(Clone, Debug, PartialEq)]
pub struct Amount {
    /// The item.
    pub what: String,
    /// How much of it.
    pub much: Much,
    /// How the amount was calculated.
    pub from: &'static str,
    /// The item's key on the shopping list, or `None` if it is not bought for this step.
    pub good: Option<String>,
}

/// An amount. Two values are the minimum and maximum unless noted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Much {
    /// A surface.
    Area(Area),
    /// A length of edges.
    Length(Length),
    /// A liquid or a paste.
    Volume(Volume, Volume),
    /// A mass.
    Mass(Mass, Mass),
    /// Countable items.
    Count(u32, u32),
    /// Full sheets of abrasive of this grit, likely and at most. See [`whole_sheets`].
    Sheets(&'static str, f64, f64),
    /// Abrasive discs, and full sheets where discs do not reach, likely and at most.
    Discs {
        /// Discs.
        discs: (f64, f64),
        /// Full sheets.
        sheets: (f64, f64),
    },
    /// Hours of waiting.
    Hours(f64, f64),
}

/// The inputs from which the steps are derived.
struct Of<'a> {
    workshop: &'a Workshop,
    piece: &'a Piece,
    takeoff: &'a Takeoff,
    edges: &'a [(String, Edges)],
}

/// Returns the steps for the whole set, in order. `edges` are the edges of one piece, by zone.
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
    ending::drawers(&of, &mut steps);
    curing::cure(&of, &mut steps);
    ending::price(&of, &mut steps);
    let is_set_up = |step: &&mut PrepareStep| step.minutes.1 > 0.0 && !ending::is_quick(&step.key);
    for step in steps.iter_mut().filter(is_set_up) {
        let (least, most) = time::SET_UP;
        step.minutes = (step.minutes.0 + least, step.minutes.1 + most);
    }
    steps
}

/// Returns how many items an area takes when one item covers `least` to `most` square meters (common
/// practice, no source).
fn one_for(area: Area, (least, most): (f64, f64)) -> Much {
    let count = |square_metres: f64| (area.as_square_metres() / square_metres).ceil() as u32;
    Much::Count(count(most), count(least))
}

/// Returns true if the step with this key is a test whose result decides the next steps. Such a step stays on
/// the list until the result is recorded.
pub fn asks_for_result(key: &str) -> bool {
    key == repairs::LEAD_KEY
}

/// Returns the edit that records the result of such a test.
pub fn result_of_test(is_lead_found: bool) -> BookEdit {
    let result = if is_lead_found { "positive" } else { "negative" };
    BookEdit::Write("facts", "only".into(), "lead".into(), result.into())
}

impl PrepareStep {
    /// Returns true if this is a test whose result has not been recorded yet.
    pub fn asks_for_result(&self) -> bool {
        asks_for_result(&self.key)
    }

    /// Returns true if the step may be done, either now or after what it waits for.
    pub fn may_be_done(&self) -> bool {
        !matches!(self.held, Some(Held::ForGood(_)))
    }

    /// Returns the amounts, or nothing if the step must not be done.
    pub fn taken(&self) -> &[Amount] {
        if self.may_be_done() { &self.amounts } else { &[] }
    }

    /// Returns the midpoint of the working time, in minutes.
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

    /// Like [`PrepareStep::takes`], for an item that is bought. `good` is its key on the shopping list.
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

    /// Adds working time, in minutes.
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
