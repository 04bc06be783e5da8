//! Dates and times in the style of the locale. American unless the device says otherwise.

use std::cell::Cell;

use units::Day;

/// How dates and times are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Style {
    /// True for `Dec 18, 2026`, false for `18 Dec 2026`.
    pub month_first: bool,
    /// True for `1:50 PM`, false for `13:50`.
    pub twelve_hours: bool,
}

const AMERICAN: Style = Style {
    month_first: true,
    twelve_hours: true,
};

thread_local! {
    // The locale does not change while a page is open. It is set once and is not part of the state.
    static HERE: Cell<Style> = const { Cell::new(AMERICAN) };
}

/// Sets the style when the page starts.
pub fn write_dates_as(style: Style) {
    HERE.set(style);
}

const MONTHS: [&str; 12] = [
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
];

/// The weekdays from Monday on, in three letters.
pub const WEEKDAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

/// Formats a day with its month: `Dec 18`.
fn short(of: Day) -> String {
    let (_, month, day) = of.ymd();
    let month = MONTHS.get(month as usize - 1).copied().unwrap_or_default();
    match HERE.get().month_first {
        true => format!("{month} {day}"),
        false => format!("{day} {month}"),
    }
}

/// Formats a day with its month and year, in an order that is never ambiguous: `Dec 18, 2026`.
pub fn day(of: Day) -> String {
    let (year, ..) = of.ymd();
    match HERE.get().month_first {
        true => format!("{}, {year}", short(of)),
        false => format!("{} {year}", short(of)),
    }
}

/// Returns the first three letters of a weekday.
pub fn weekday(of: Day) -> &'static str {
    WEEKDAYS.get(of.weekday()).copied().unwrap_or_default()
}

/// Formats a day with its weekday: `Thu, Nov 26`.
pub fn weekday_and_day(of: Day) -> String {
    format!("{}, {}", weekday(of), short(of))
}

/// Formats a day as a column heading: `Fri 27`. The first day of a month includes the month: `Tue, Dec 1`.
pub fn weekday_and_number(of: Day) -> String {
    match of.ymd() {
        (_, _, 1) => weekday_and_day(of),
        (_, _, number) => format!("{} {number}", weekday(of)),
    }
}

/// Formats a time in minutes after midnight: `1:50 PM`.
pub fn time(minutes: u32) -> String {
    let (hour, minute) = (minutes / 60 % 24, minutes % 60);
    match HERE.get().twelve_hours {
        false => format!("{hour}:{minute:02}"),
        true => {
            let half = if hour < 12 { "AM" } else { "PM" };
            let hour = match hour % 12 {
                0 => 12,
                hour => hour,
            };
            format!("{hour}:{minute:02}\u{a0}{half}")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dates_and_times_are_written_as_here() {
        let first = Day::from_ymd(2026, 12, 1).unwrap();
        let written = || {
            let days = [day(first), weekday_and_day(first), weekday_and_number(first)];
            let times = [0, 9 * 60 + 5, 12 * 60, 13 * 60 + 50].map(time);
            (days, times.map(|time| time.replace('\u{a0}', " ")))
        };
        assert_eq!(
            written(),
            (
                ["Dec 1, 2026", "Tue, Dec 1", "Tue, Dec 1"].map(String::from),
                ["12:00 AM", "9:05 AM", "12:00 PM", "1:50 PM"].map(String::from)
            )
        );
        write_dates_as(Style {
            month_first: false,
            twelve_hours: false,
        });
        assert_eq!(
            written(),
            (
                ["1 Dec 2026", "Tue, 1 Dec", "Tue, 1 Dec"].map(String::from),
                ["0:00", "9:05", "12:00", "13:50"].map(String::from)
            )
        );
        write_dates_as(AMERICAN);
    }
}
