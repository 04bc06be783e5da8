//! A calendar file (RFC 5545, "iCalendar"), which every calendar program reads.

use crate::moment::Moment;
use crate::text_line::{add_line, escaped};

/// An entry of a calendar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// A stable id, so that a calendar recognizes the entry in a new file.
    pub uid: String,
    /// The first line that a person reads.
    pub summary: String,
    /// When it begins, on the clock of wherever the calendar is read ("floating" time; RFC 5545, 3.3.5).
    pub start: Moment,
    /// When it ends. An event without length gets no end in the file, because the format requires a later
    /// one (3.8.2.2).
    pub end: Moment,
}

/// A calendar file with these events.
///
/// `stamp` is when it is made, in UTC, as the format asks for (RFC 5545, 3.8.7.2). Years are taken to be from 1 to 9999.
pub fn calendar_file(events: &[Event], stamp: Moment) -> String {
    let mut file = String::new();
    let mut line = |text: &str| add_line(&mut file, text);
    line("BEGIN:VCALENDAR");
    line("VERSION:2.0");
    line("PRODID:-//Coatwright//Timetable//EN");
    line("CALSCALE:GREGORIAN");
    for event in events {
        line("BEGIN:VEVENT");
        line(&format!("UID:{}", escaped(&event.uid)));
        line(&format!("DTSTAMP:{}Z", date_time(stamp)));
        line(&format!("DTSTART:{}", date_time(event.start)));
        if event.end > event.start {
            line(&format!("DTEND:{}", date_time(event.end)));
        }
        line(&format!("SUMMARY:{}", escaped(&event.summary)));
        line("END:VEVENT");
    }
    line("END:VCALENDAR");
    file
}

/// `20260503T140500` (RFC 5545, 3.3.5).
fn date_time(at: Moment) -> String {
    let ((year, month, day), minute) = (at.day().ymd(), at.minute());
    format!(
        "{year:04}{month:02}{day:02}T{:02}{:02}00",
        minute / 60,
        minute % 60
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> Moment {
        Moment::read(text).unwrap()
    }

    #[test]
    fn a_file_has_the_lines_that_the_format_asks_for() {
        let event = |end| Event {
            uid: "chest.prime@timetable".to_string(),
            summary: "Chest, oak: prime".to_string(),
            start: at("2026-05-03T09:00"),
            end: at(end),
        };
        let events = [event("2026-05-03T10:30"), event("2026-05-03T09:00")];
        let file = calendar_file(&events, at("2026-05-01T23:59"));
        let expected = [
            "BEGIN:VCALENDAR",
            "VERSION:2.0",
            "PRODID:-//Coatwright//Timetable//EN",
            "CALSCALE:GREGORIAN",
            "BEGIN:VEVENT",
            "UID:chest.prime@timetable",
            "DTSTAMP:20260501T235900Z",
            "DTSTART:20260503T090000",
            "DTEND:20260503T103000",
            "SUMMARY:Chest\\, oak: prime",
            "END:VEVENT",
            "BEGIN:VEVENT",
            "UID:chest.prime@timetable",
            "DTSTAMP:20260501T235900Z",
            "DTSTART:20260503T090000",
            "SUMMARY:Chest\\, oak: prime",
            "END:VEVENT",
            "END:VCALENDAR",
            "",
        ];
        assert_eq!(file, expected.join("\r\n"));
    }
}
