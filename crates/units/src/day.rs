//! Days of the calendar, without a clock and without time zones.

use std::fmt;

/// A day of the Gregorian calendar, also before that was in use.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day(i32);

/// Days of four hundred years, after which the calendar repeats.
const CYCLE: i32 = 146_097;
/// From 1 March of the year 0 to 1 January 1970.
const TO_1970: i32 = 719_468;

impl Day {
    /// The day this many days after 1 January 1970, or before it if negative.
    pub fn since_1970(days: i32) -> Self {
        Day(days)
    }

    /// Days since 1 January 1970.
    pub fn days(self) -> i32 {
        self.0
    }

    /// The day of a year from 1 to 9999, a month from 1 to 12, and a day of that month from 1; `None` if there is none.
    pub fn from_ymd(year: i32, month: u32, day: u32) -> Option<Self> {
        if !(1..=9999).contains(&year) || !(1..=12).contains(&month) || day == 0 {
            return None;
        }
        // Years begin in March here, so that a leap day is the last day.
        let (month, day) = (month as i32, day as i32);
        let year_of_march = if month > 2 { year } else { year - 1 };
        let month_of_march = (month + 9) % 12;
        let (cycle, year_of_cycle) = (year_of_march.div_euclid(400), year_of_march.rem_euclid(400));
        let day_of_year = (153 * month_of_march + 2) / 5 + day - 1;
        let day_of_cycle = year_of_cycle * 365 + year_of_cycle / 4 - year_of_cycle / 100 + day_of_year;
        let found = Day(cycle * CYCLE + day_of_cycle - TO_1970);
        // Rejects the 31st of a shorter month.
        (found.ymd() == (year, month as u32, day as u32)).then_some(found)
    }

    /// Year, month from 1, day of the month from 1.
    pub fn ymd(self) -> (i32, u32, u32) {
        let since = self.0 + TO_1970;
        let (cycle, day) = (since.div_euclid(CYCLE), since.rem_euclid(CYCLE));
        let year = (day - day / 1460 + day / 36_524 - day / 146_096) / 365;
        let day_of_year = day - (365 * year + year / 4 - year / 100);
        let month_of_march = (5 * day_of_year + 2) / 153;
        let day_of_month = day_of_year - (153 * month_of_march + 2) / 5 + 1;
        let month = (month_of_march + 2) % 12 + 1;
        let year = cycle * 400 + year + i32::from(month <= 2);
        (year, month as u32, day_of_month as u32)
    }

    /// Reads `2026-05-03` (ISO 8601).
    pub fn read(text: &str) -> Option<Self> {
        let mut parts = text.trim().split('-');
        let mut part = |length: usize| {
            let part = parts.next()?;
            let is_plain = part.len() == length && part.bytes().all(|b| b.is_ascii_digit());
            is_plain.then(|| part.parse::<u32>().ok()).flatten()
        };
        let (year, month, day) = (part(4)?, part(2)?, part(2)?);
        parts.next().is_none().then_some(())?;
        Day::from_ymd(year as i32, month, day)
    }

    /// The day of the week, from 0 for Monday to 6 for Sunday (the order of ISO 8601).
    pub fn weekday(self) -> usize {
        // 1 January 1970 was a Thursday.
        (self.0 + 3).rem_euclid(7) as usize
    }

    /// The day this many days later.
    pub fn after(self, days: i32) -> Self {
        Day(self.0 + days)
    }
}

/// As in ISO 8601: `2026-05-03`.
impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (year, month, day) = self.ymd();
        write!(f, "{year:04}-{month:02}-{day:02}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Days that every calendar agrees on: the epoch, leap days of 2000 and 2024, the day before a year that is none.
    #[test]
    fn known_days() {
        let days = |text| Day::read(text).map(Day::days);
        assert_eq!(days("1970-01-01"), Some(0));
        assert_eq!(days("2000-02-29"), Some(11_016));
        assert_eq!(days("2024-02-29"), Some(19_782));
        assert_eq!(days("1900-02-28").map(|d| d + 1), days("1900-03-01"));
        assert_eq!(Day::read("2026-11-26").map(Day::weekday), Some(3));
        for none in [
            "1900-02-29",
            "2026-02-30",
            "2026-13-01",
            "2026-00-10",
            "26-01-01",
            "2026-1-1",
            "2026-01-01-",
            "",
        ] {
            assert_eq!(days(none), None, "{none}");
        }
    }

    #[test]
    fn every_day_of_a_cycle_comes_back() {
        let first = Day::from_ymd(1999, 1, 1).unwrap();
        for days in 0..CYCLE {
            let day = first.after(days);
            assert_eq!(Day::read(&day.to_string()), Some(day));
            assert_eq!(day.after(1).weekday(), (day.weekday() + 1) % 7);
        }
    }
}
