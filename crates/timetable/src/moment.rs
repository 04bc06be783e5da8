//! A minute of a day, in the civil time of one place.

use std::fmt;

use units::Day;

/// Minutes of a day; changes of the clock are ignored.
pub(crate) const DAY: i64 = 24 * 60;

/// A minute of the calendar, without a time zone: what the clock on the workshop's wall shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Moment(i64);

impl Moment {
    /// So many minutes after the midnight with which a day begins. 24 × 60 minutes are the midnight after it.
    pub fn new(day: Day, minute: u32) -> Self {
        Moment(i64::from(day.days()) * DAY + i64::from(minute))
    }

    /// The day it is in; midnight is in the day that begins.
    pub fn day(self) -> Day {
        Day::since_1970(self.0.div_euclid(DAY) as i32)
    }

    /// Minutes since midnight, from 0 to 1439.
    pub fn minute(self) -> u32 {
        self.0.rem_euclid(DAY) as u32
    }

    /// The moment this many minutes later, or earlier if negative.
    pub fn after(self, minutes: i64) -> Self {
        Moment(self.0 + minutes)
    }

    /// Minutes from another moment to this one; negative if the other is later.
    pub fn since(self, other: Moment) -> i64 {
        self.0 - other.0
    }

    /// Reads `2026-05-03T14:05` (ISO 8601), also with a space instead of the `T`.
    pub fn read(text: &str) -> Option<Self> {
        let (day, time) = text.trim().split_once(['T', ' '])?;
        let (hours, minutes) = time.split_once(':')?;
        let two_figures = |text: &str| {
            let is_plain = text.len() == 2 && text.bytes().all(|b| b.is_ascii_digit());
            is_plain.then(|| text.parse::<u32>().ok()).flatten()
        };
        let (hours, minutes) = (two_figures(hours)?, two_figures(minutes)?);
        (hours < 24 && minutes < 60).then_some(())?;
        Some(Moment::new(Day::read(day)?, hours * 60 + minutes))
    }
}

/// As in ISO 8601: `2026-05-03T14:05`.
impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let minute = self.minute();
        write!(f, "{}T{:02}:{:02}", self.day(), minute / 60, minute % 60)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn known_moments() {
        let moment = |text| Moment::read(text);
        assert_eq!(moment("1970-01-01T00:01"), Some(Moment(1)));
        assert_eq!(moment("1969-12-31 23:59"), Some(Moment(-1)));
        let day = Day::read("2026-05-03").unwrap();
        assert_eq!(Moment::new(day, 1440).to_string(), "2026-05-04T00:00");
        for none in [
            "2026-05-03",
            "2026-05-03T24:00",
            "2026-05-03T9:00",
            "2026-05-03T09:60",
            "2026-02-30T09:00",
        ] {
            assert_eq!(moment(none), None, "{none}");
        }
    }

    proptest! {
        /// Years 1 to 9999.
        #[test]
        fn every_moment_comes_back(minutes in -1_035_593_280_i64..4_223_376_000) {
            let moment = Moment(minutes);
            prop_assert_eq!(Moment::read(&moment.to_string()), Some(moment));
            prop_assert_eq!(Moment::new(moment.day(), moment.minute()), moment);
            prop_assert!(moment.minute() < 1440);
        }

        /// The order of moments is that of their texts, and the day after is one day of the week on.
        #[test]
        fn days_and_their_texts_have_one_order(a in -700_000_i32..2_900_000, b in -700_000_i32..2_900_000) {
            let (a, b) = (Day::since_1970(a), Day::since_1970(b));
            prop_assert_eq!(a.cmp(&b), a.to_string().cmp(&b.to_string()));
            prop_assert_eq!(a.after(1).weekday(), (a.weekday() + 1) % 7);
            prop_assert_eq!((b.days() - a.days()).rem_euclid(7) as usize, (b.weekday() + 7 - a.weekday()) % 7);
            let (year, month, day) = a.ymd();
            prop_assert_eq!(Day::from_ymd(year, month, day), Some(a));
        }
    }
}
