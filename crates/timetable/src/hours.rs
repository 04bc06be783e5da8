//! When the maker works: hours for each day of the week, and days off.

use units::Day;

use crate::moment::{DAY, Moment};

/// The hours in which hands-on work may be done.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Hours {
    /// From Monday to Sunday: minutes of the day, in order, apart from each other.
    week: [Vec<(u32, u32)>; 7],
    /// In order.
    off: Vec<Day>,
}

/// A stretch in which the workshop is open without a pause.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Opening {
    /// Its first minute.
    pub from: Moment,
    /// The minute after its last.
    pub to: Moment,
}

/// The most stretches of a step. A year of work in openings of one minute is no sensible plan.
const MOST_STRETCHES: usize = 1000;

/// A split step does not begin in the last minutes before the hours end (common practice, no source).
const LEAST_BEGUN: i64 = 20;

/// The most days of hours without a break that count as one opening.
const LONGEST_OPENING: i32 = 7;

impl Hours {
    /// Hours for each day of the week from Monday on, in minutes since midnight up to 24 × 60, and days off.
    ///
    /// Hours that overlap or touch become one; what lies outside the day or ends before it begins is left out.
    pub fn new(week: [Vec<(u32, u32)>; 7], off: &[Day]) -> Self {
        let mut off = off.to_vec();
        units::sort_few(&mut off, |one, other| one < other);
        off.dedup();
        Hours {
            week: week.map(tidy),
            off,
        }
    }

    /// The hours of a day, in minutes since midnight.
    pub fn of(&self, day: Day) -> &[(u32, u32)] {
        if self.off.binary_search(&day).is_ok() {
            return &[];
        }
        &self.week[day.weekday()]
    }

    /// The opening in which a moment lies, from that moment on, or the next one; `None` if there is none any more.
    pub fn next(&self, from: Moment) -> Option<Opening> {
        // Each day off affects at most one of the two-week periods, so one of them is whole.
        let days = 14 * (self.off.len() as i32 + 1) + LONGEST_OPENING;
        let first = from.day();
        (0..days).map(|later| first.after(later)).find_map(|day| {
            let open = self.of(day).iter().find(|(_, to)| Moment::new(day, *to) > from)?;
            Some(Opening {
                from: Moment::new(day, open.0).max(from),
                to: self.end(day, open.1),
            })
        })
    }

    /// When the opening ends that reaches to a minute of a day, also past midnight.
    fn end(&self, day: Day, to: u32) -> Moment {
        let (mut day, mut to) = (day, to);
        for _ in 0..LONGEST_OPENING {
            match self.of(day.after(1)).first() {
                Some(&(0, next)) if i64::from(to) == DAY => (day, to) = (day.after(1), next),
                _ => break,
            }
        }
        Moment::new(day, to)
    }

    /// The earliest stretches from a moment on in which a step can be done: one, or several if it may be split.
    /// Nothing if no opening is long enough, or it would fall into too many stretches.
    pub(crate) fn place(&self, minutes: u32, may_split: bool, from: Moment) -> Option<Vec<Opening>> {
        let minutes = i64::from(minutes);
        // As in `next`: no pattern of openings is new after this.
        let end = from.after(DAY * i64::from(14 * (self.off.len() as i32 + 1) + LONGEST_OPENING));
        let mut stretches = Vec::new();
        let (mut left, mut at) = (minutes, from);
        loop {
            let open = self.next(at)?;
            let length = open.to.since(open.from);
            if left <= length {
                stretches.push(Opening {
                    from: open.from,
                    to: open.from.after(left),
                });
                return Some(stretches);
            }
            if stretches.len() == MOST_STRETCHES {
                return None;
            }
            // The rest of an opening may be too short to get the tools out.
            let is_too_short = stretches.is_empty() && open.from == from && length < LEAST_BEGUN;
            if !may_split && open.from > end {
                return None;
            }
            if may_split && !is_too_short {
                left -= length;
                stretches.push(open);
            }
            at = open.to;
        }
    }
}

/// Hours in order, apart from each other and within a day.
fn tidy(mut hours: Vec<(u32, u32)>) -> Vec<(u32, u32)> {
    units::sort_few(&mut hours, |one, other| one < other);
    let mut tidied: Vec<(u32, u32)> = Vec::new();
    for (from, to) in hours {
        let to = to.min(DAY as u32);
        if from >= to {
            continue;
        }
        match tidied.last_mut() {
            Some(last) if from <= last.1 => last.1 = last.1.max(to),
            _ => tidied.push((from, to)),
        }
    }
    tidied
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> Moment {
        Moment::read(text).unwrap()
    }

    fn weekdays(hours: &[(u32, u32)]) -> [Vec<(u32, u32)>; 7] {
        std::array::from_fn(|day| if day < 5 { hours.to_vec() } else { Vec::new() })
    }

    /// 1 May 2026 is a Friday.
    #[test]
    fn the_next_opening_leaves_out_nights_and_days_off() {
        let off = [Day::read("2026-05-04").unwrap()];
        let hours = Hours::new(weekdays(&[(780, 1020), (540, 720)]), &off);
        let next = |text| {
            hours
                .next(at(text))
                .map(|o| (o.from.to_string(), o.to.to_string()))
        };
        let is = |from: &str, to: &str| Some((from.to_string(), to.to_string()));
        assert_eq!(
            next("2026-05-01T10:00"),
            is("2026-05-01T10:00", "2026-05-01T12:00")
        );
        assert_eq!(
            next("2026-05-01T12:00"),
            is("2026-05-01T13:00", "2026-05-01T17:00")
        );
        assert_eq!(
            next("2026-05-01T17:00"),
            is("2026-05-05T09:00", "2026-05-05T12:00")
        );
        assert_eq!(Hours::default().next(at("2026-05-01T10:00")), None);
    }

    #[test]
    fn a_step_is_not_begun_for_a_few_minutes() {
        let hours = Hours::new(weekdays(&[(1080, 1260)]), &[]);
        let begins = |minutes, from: &str| {
            let stretches = hours.place(minutes, true, at(from)).unwrap();
            (stretches[0].from.to_string(), stretches.len())
        };
        assert_eq!(begins(70, "2026-05-01T20:55"), ("2026-05-04T18:00".into(), 1));
        assert_eq!(begins(70, "2026-05-01T20:30"), ("2026-05-01T20:30".into(), 2));
        assert_eq!(begins(5, "2026-05-01T20:55"), ("2026-05-01T20:55".into(), 1));
    }

    #[test]
    fn a_step_fits_whole_or_is_split() {
        let hours = Hours::new(weekdays(&[(540, 720), (780, 1020)]), &[]);
        let place = |minutes, split| {
            let stretches = hours.place(minutes, split, at("2026-05-01T11:00"))?;
            let show = |o: &Opening| format!("{} {}", o.from, o.to.since(o.from));
            Some(stretches.iter().map(show).collect::<Vec<_>>())
        };
        assert_eq!(place(60, false).unwrap(), ["2026-05-01T11:00 60"]);
        assert_eq!(place(61, false).unwrap(), ["2026-05-01T13:00 61"]);
        assert_eq!(place(241, false), None);
        let split = place(400, true).unwrap();
        assert_eq!(
            split,
            [
                "2026-05-01T11:00 60",
                "2026-05-01T13:00 240",
                "2026-05-04T09:00 100"
            ]
        );
    }

    #[test]
    fn hours_past_midnight_are_one_opening() {
        let mut week = weekdays(&[]);
        week[4] = vec![(1320, 1440)];
        week[5] = vec![(0, 120)];
        let hours = Hours::new(week, &[]);
        let night = hours.place(200, false, at("2026-05-01T08:00")).unwrap();
        assert_eq!(night[0].from, at("2026-05-01T22:00"));
        let always = Hours::new(std::array::from_fn(|_| vec![(0, 2000)]), &[]);
        let open = always.next(at("2026-05-01T08:00")).unwrap();
        assert_eq!(open.to.day().days() - open.from.day().days(), 8);
    }

    /// A long Saturday that is off for many weeks is still found.
    #[test]
    fn days_off_do_not_hide_the_only_day_that_is_long_enough() {
        let mut week = weekdays(&[(540, 600)]);
        week[5] = vec![(540, 1020)];
        let saturday = Day::read("2026-05-02").unwrap();
        let off: Vec<Day> = (0..60).map(|k| saturday.after(7 * k)).collect();
        let hours = Hours::new(week, &off);
        let place = hours.place(400, false, at("2026-05-01T08:00")).unwrap();
        assert_eq!(place[0].from.day(), saturday.after(7 * 60));
    }

    #[test]
    fn untidy_hours_are_put_in_order() {
        let tidied = tidy(vec![
            (600, 700),
            (540, 610),
            (700, 720),
            (800, 800),
            (1400, 3000),
            (1500, 1600),
        ]);
        assert_eq!(tidied, [(540, 720), (1400, 1440)]);
    }
}
