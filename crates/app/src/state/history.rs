//! What can be taken back, step by step.

use std::rc::Rc;

use workshop::Workshop;

/// How many steps can be taken back.
const STEPS: usize = 200;

/// The documents before and after the present one.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    before: Vec<Rc<Workshop>>,
    after: Vec<Rc<Workshop>>,
    /// What the last step was about, while the maker is still at it.
    at: Option<String>,
}

impl History {
    /// Notes that a document is about to be changed. Changes that follow each other and are about the same thing, such
    /// as the keys of one reading, are one step; `about` names the thing.
    pub fn note(&mut self, now: Rc<Workshop>, about: Option<String>) {
        self.after.clear();
        if about.is_some() && about == self.at {
            return;
        }
        self.at = about;
        self.before.push(now);
        if self.before.len() > STEPS {
            self.before.remove(0);
        }
    }

    /// The maker turns to something else: the next change is a step of its own.
    pub fn part(&mut self) {
        self.at = None;
    }

    /// A step that ended where it began is none.
    pub fn forget_nothing(&mut self, now: &Rc<Workshop>) {
        if self.before.last() == Some(now) {
            self.before.pop();
        }
        self.at = None;
    }

    /// Nothing can be taken back any more.
    pub fn forget(&mut self) {
        *self = History::default();
    }

    /// The document before the present one, which then comes after it.
    pub fn back(&mut self, now: &Rc<Workshop>) -> Option<Rc<Workshop>> {
        self.at = None;
        let found = self.before.pop()?;
        self.after.push(Rc::clone(now));
        Some(found)
    }

    /// The document after the present one, which then comes before it.
    pub fn forth(&mut self, now: &Rc<Workshop>) -> Option<Rc<Workshop>> {
        self.at = None;
        let found = self.after.pop()?;
        self.before.push(Rc::clone(now));
        Some(found)
    }

    /// Whether there is a step to take back.
    pub fn can_go_back(&self) -> bool {
        !self.before.is_empty()
    }

    /// Whether there is a step to make again.
    pub fn can_go_forth(&self) -> bool {
        !self.after.is_empty()
    }
}
