//! Parsing of working hours as a maker writes or says them: `9:00-12:30, 13-17`, `6pm to 9pm`, `nine to half
//! past twelve`.

use units::in_digits_with;

/// Returns the working periods of a day, in minutes after midnight and in order. Returns `None` if the text
/// cannot be read.
pub fn read_hours(text: &str) -> Option<Vec<(u32, u32)>> {
    let text = text
        .to_ascii_lowercase()
        .replace(" to ", "\u{2013}")
        .replace(" and ", ",");
    let mut hours: Vec<(u32, u32)> = Vec::new();
    for part in text.split(',').filter(|part| !part.trim().is_empty()) {
        let (from, to) = part.split_once('\u{2013}').or_else(|| part.split_once('-'))?;
        let (from, to) = (of_day(from)?, of_day(to)?);
        let is_plain = matches!((&from, &to), (Clock::Plain(_), Clock::Plain(_)));
        // In `1 to 5pm`, both times are after noon.
        let (from, to) = match (from, to) {
            (Clock::Plain(from), Clock::Half(to)) => {
                let later = from.checked_add(NOON).filter(|from| to > NOON && *from < to);
                (later.unwrap_or(from), to)
            }
            (from, to) => (from.minutes(), to.minutes()),
        };
        let before = hours.last().map_or(0, |(_, before)| *before);
        let (from, to) = match is_plain {
            true => in_the_afternoon(from, to, before),
            false => (from, to),
        };
        let is_after = before <= from;
        if from >= to || !is_after {
            return None;
        }
        hours.push((from, to));
    }
    Some(hours)
}

const NOON: u32 = 12 * 60;

/// Returns hours without am or pm as they are meant: `9-5` ends in the afternoon, and `1-5` is in the afternoon if
/// it follows `9-12`.
fn in_the_afternoon(from: u32, to: u32, before: u32) -> (u32, u32) {
    match () {
        () if from < before && from < to && to < NOON => (from + NOON, to + NOON),
        () if to < from && 0 < to && to < NOON => (from, to + NOON),
        () => (from, to),
    }
}

/// A time of day, in minutes after midnight.
enum Clock {
    /// A time without am or pm.
    Plain(u32),
    /// A time with am or pm.
    Half(u32),
}

impl Clock {
    fn minutes(&self) -> u32 {
        let (Clock::Plain(minutes) | Clock::Half(minutes)) = self;
        *minutes
    }
}

/// Reads a time of day: `18:30`, `6.30 pm`, `9am`, `half past nine`, `six thirty pm`.
fn of_day(text: &str) -> Option<Clock> {
    let text = text.trim();
    let text = match text {
        "noon" => "12",
        "midnight" => "24",
        text => text,
    };
    let (text, past) = match text.strip_prefix("half past ") {
        Some(text) => (text, ":30"),
        None => (text, ""),
    };
    let said = in_digits_with(text, |word| {
        ["am", "pm"]
            .into_iter()
            .find(|known| word.eq_ignore_ascii_case(known))
    });
    let text = match (&said, past) {
        (None, "") => text.to_owned(),
        // For example, `6 30 pm`.
        _ => {
            let said = said.as_deref().unwrap_or(text);
            let (clock, half) = said.split_at(said.find(char::is_alphabetic).unwrap_or(said.len()));
            format!("{}{past}{half}", clock.trim().replacen(' ', ":", 1))
        }
    };
    let text = text.as_str();
    let half = |of: &str, noon: u32| {
        let minutes = minutes(of).filter(|minutes| (60..NOON + 60).contains(minutes))?;
        Some(Clock::Half(minutes % NOON + noon))
    };
    match (text.strip_suffix("am"), text.strip_suffix("pm")) {
        (Some(of), _) => half(of, 0),
        (_, Some(of)) => half(of, NOON),
        _ => minutes(text).map(Clock::Plain),
    }
}

/// Returns the minutes after midnight of `9`, `9:30` or `24:00`.
fn minutes(text: &str) -> Option<u32> {
    let text = text.trim();
    let (hours, minutes) = text.split_once([':', '.']).unwrap_or((text, "0"));
    let figures = |text: &str| {
        let is_plain = (1..=2).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_digit());
        is_plain.then(|| text.parse::<u32>().ok()).flatten()
    };
    let (hours, minutes) = (figures(hours)?, figures(minutes)?);
    let all = hours * 60 + minutes;
    (minutes < 60 && all <= 24 * 60).then_some(all)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hours_are_read() {
        assert_eq!(
            read_hours("9:00-12:30, 13-17"),
            Some(vec![(540, 750), (780, 1020)])
        );
        assert_eq!(read_hours("9-5"), Some(vec![(540, 1020)]));
        assert_eq!(read_hours("8:30-12, 1-5"), Some(vec![(510, 720), (780, 1020)]));
        assert_eq!(read_hours(""), Some(vec![]));
        assert_eq!(read_hours("20:15\u{2013}24"), Some(vec![(1215, 1440)]));
        for (text, of) in [
            ("18:00 to 21:00", (1080, 1260)),
            ("6pm-9pm", (1080, 1260)),
            ("6:30 PM to 9 PM", (1110, 1260)),
            ("9am to 12pm", (540, 720)),
            ("12am-1am", (0, 60)),
            ("10 to 4pm", (600, 960)),
            ("1 to 5pm", (780, 1020)),
            ("nine to five pm", (540, 1020)),
            ("nine to five", (540, 1020)),
            ("12-9", (720, 1260)),
            ("nine to seventeen", (540, 1020)),
            ("six thirty pm to nine pm", (1110, 1260)),
            ("half past nine to noon", (570, 720)),
            ("half past six pm to nine pm", (1110, 1260)),
            ("half past 9 to 12", (570, 720)),
            ("half past 6 pm to 9 pm", (1110, 1260)),
            ("nine-ten", (540, 600)),
        ] {
            assert_eq!(read_hours(text), Some(vec![of]), "{text}");
        }
        assert_eq!(
            read_hours("9 to 12 and 13 to 17"),
            Some(vec![(540, 720), (780, 1020)])
        );
        for none in [
            "13pm-14pm",
            "0am-3am",
            "9",
            "9-12, 11-13",
            "25-26",
            "9:60-10",
            "nine-tin",
            "9-9",
            "1,250",
        ] {
            assert_eq!(read_hours(none), None, "{none}");
        }
    }
}
