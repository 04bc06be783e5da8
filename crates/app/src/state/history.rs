//! The undo history.

use std::rc::Rc;

use workshop::Workshop;

/// The maximum number of undo steps.
const STEPS: usize = 200;

/// The documents before and after the current one.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    before: Vec<Rc<Workshop>>,
    after: Vec<Rc<Workshop>>,
    /// The subject of the last step, while the maker is still working on it.
    at: Option<String>,
}

impl History {
    /// Records the document before a change. Consecutive changes with the same subject `about`, such as the
    /// keystrokes of one reading, are one step.
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

    /// Ends the current step, so that the next change is a new one.
    pub fn part(&mut self) {
        self.at = None;
    }

    /// Drops the last step if it changed nothing.
    pub fn forget_nothing(&mut self, now: &Rc<Workshop>) {
        if self.before.last() == Some(now) {
            self.before.pop();
        }
        self.at = None;
    }

    /// Clears the history.
    pub fn forget(&mut self) {
        *self = History::default();
    }

    /// Undoes a step: returns the document before the current one.
    pub fn back(&mut self, now: &Rc<Workshop>) -> Option<Rc<Workshop>> {
        self.at = None;
        let found = self.before.pop()?;
        self.after.push(Rc::clone(now));
        Some(found)
    }

    /// Redoes a step: returns the document after the current one.
    pub fn forth(&mut self, now: &Rc<Workshop>) -> Option<Rc<Workshop>> {
        self.at = None;
        let found = self.after.pop()?;
        self.before.push(Rc::clone(now));
        Some(found)
    }

    /// Returns true if there is a step to undo.
    pub fn can_go_back(&self) -> bool {
        !self.before.is_empty()
    }

    /// Returns true if there is a step to redo.
    pub fn can_go_forth(&self) -> bool {
        !self.after.is_empty()
    }
}
