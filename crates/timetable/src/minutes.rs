//! How long work takes: three guesses, and which of them a timetable is made with.

/// The most minutes that a step, a wait or a cure may have: a year of 366 days.
pub const MOST_MINUTES: u32 = 366 * 24 * 60;

/// Whole minutes: a low, a likely and a high guess, none above [`MOST_MINUTES`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Minutes {
    low: u32,
    likely: u32,
    high: u32,
}

/// Which guess of all times a timetable is made with.
///
/// A timetable of low guesses need not end before one of high guesses: where several jobs share one pair of hands, a
/// shorter step can let another job go first (R. L. Graham, "Bounds on multiprocessing timing anomalies", 1969).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Pace {
    /// Everything takes as little as it may.
    Low,
    /// Everything takes what is likely.
    #[default]
    Likely,
    /// Everything takes as much as it may.
    High,
}

impl Minutes {
    /// Three guesses; nothing if they are not in order or above [`MOST_MINUTES`].
    pub fn new(low: u32, likely: u32, high: u32) -> Option<Self> {
        let fits = low <= likely && likely <= high && high <= MOST_MINUTES;
        fits.then_some(Minutes { low, likely, high })
    }

    /// The same minutes for every guess; more than [`MOST_MINUTES`] are that many.
    pub fn one(minutes: u32) -> Self {
        let minutes = minutes.min(MOST_MINUTES);
        Minutes {
            low: minutes,
            likely: minutes,
            high: minutes,
        }
    }

    /// Every guess at `percent` of itself, rounded up, up to [`MOST_MINUTES`].
    pub(crate) fn times(self, percent: u32) -> Self {
        let times = |minutes: u32| {
            let longer = (u64::from(minutes) * u64::from(percent)).div_ceil(100);
            longer.min(u64::from(MOST_MINUTES)) as u32
        };
        Minutes {
            low: times(self.low),
            likely: times(self.likely),
            high: times(self.high),
        }
    }

    /// The guess that goes with a pace.
    pub fn at(self, pace: Pace) -> u32 {
        match pace {
            Pace::Low => self.low,
            Pace::Likely => self.likely,
            Pace::High => self.high,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn guesses_are_in_order() {
        let guess = Minutes::new(20, 30, 50).unwrap();
        assert_eq!(
            [Pace::Low, Pace::Likely, Pace::High].map(|pace| guess.at(pace)),
            [20, 30, 50]
        );
        assert_eq!(Minutes::new(30, 20, 50), None);
        assert_eq!(Minutes::new(1, 2, MOST_MINUTES + 1), None);
        assert_eq!(Minutes::one(u32::MAX), Minutes::one(MOST_MINUTES));
    }
}
