//! The wait after a step: the label's least, its recoat window, and what ends the wait for good.

use crate::minutes::{MOST_MINUTES, Minutes};

/// How long the next step waits after a step, in minutes from the end of that step.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wait {
    least: u32,
    window: Option<u32>,
    longest: Option<u32>,
    /// What to do where the window is missed; nothing if the caller names nothing.
    pub scuff: Option<Scuff>,
}

/// Work that makes a surface fit for a coat again after its recoat window: "or sand again".
#[derive(Clone, Debug, PartialEq)]
pub struct Scuff {
    /// What it is called.
    pub name: String,
    /// How long it takes.
    pub minutes: Minutes,
}

impl Wait {
    /// No wait at all.
    pub fn none() -> Self {
        Wait::default()
    }

    /// A least wait in minutes; more than [`MOST_MINUTES`] are that many.
    pub fn at_least(least: u32) -> Self {
        Wait {
            least: least.min(MOST_MINUTES),
            ..Wait::default()
        }
    }

    /// A least wait; the end of the recoat window ("recoat within … or sand again"); the longest wait, after which the
    /// next step is spoilt, as with paint remover that dries. Nothing if they are not in this order, where they are
    /// given, or above [`MOST_MINUTES`].
    pub fn new(least: u32, window: Option<u32>, longest: Option<u32>) -> Option<Self> {
        let end = window.unwrap_or(least);
        let last = longest.unwrap_or(end);
        (least <= end && end <= last && last <= MOST_MINUTES).then_some(Wait {
            least,
            window,
            longest,
            scuff: None,
        })
    }

    /// With a step that is put in where the window is missed.
    pub fn or_scuff(mut self, name: &str, minutes: Minutes) -> Self {
        self.scuff = Some(Scuff {
            name: name.to_string(),
            minutes,
        });
        self
    }

    /// The least wait, longer in the cold or the damp: `percent` of the label's, which is never gone below. The window and
    /// the longest wait stay as on the label, and the least wait ends where the first of them does.
    pub fn slower(mut self, percent: u32) -> Self {
        let longer = (u64::from(self.least) * u64::from(percent.max(100))).div_ceil(100);
        let most = self.window.or(self.longest).unwrap_or(MOST_MINUTES);
        self.least = longer.min(u64::from(most)) as u32;
        self
    }

    /// The label's least wait in minutes.
    pub fn least(&self) -> u32 {
        self.least
    }

    /// Until when the next step may go on without scuffing, in minutes.
    pub fn window(&self) -> Option<u32> {
        self.window
    }

    /// After how many minutes the next step is spoilt.
    pub fn longest(&self) -> Option<u32> {
        self.longest
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_contradicts_itself_is_no_wait() {
        assert!(Wait::new(120, Some(240), Some(300)).is_some());
        assert!(Wait::new(120, None, Some(120)).is_some());
        assert_eq!(Wait::new(120, Some(60), None), None);
        assert_eq!(Wait::new(120, Some(240), Some(200)), None);
        assert_eq!(Wait::new(120, None, Some(100)), None);
        assert_eq!(Wait::new(0, None, Some(MOST_MINUTES + 1)), None);
    }

    #[test]
    fn a_slower_wait_is_never_below_the_label() {
        let wait = Wait::at_least(125);
        assert_eq!(wait.clone().slower(50), wait);
        assert_eq!(wait.slower(150).least(), 188);
        assert_eq!(Wait::new(100, Some(120), None).unwrap().slower(200).least(), 120);
    }
}
