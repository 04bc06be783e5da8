//! Hours of work as a maker writes them: `9:00-12:30, 13-17`.

/// The minutes of a day between which somebody works, in order; nothing if the text does not say so.
pub fn read_hours(text: &str) -> Option<Vec<(u32, u32)>> {
    let mut hours: Vec<(u32, u32)> = Vec::new();
    for part in text.split(',').filter(|part| !part.trim().is_empty()) {
        let (from, to) = part.split_once(['-', '\u{2013}'])?;
        let (from, to) = (minutes(from)?, minutes(to)?);
        let is_after = hours.last().is_none_or(|(_, before)| *before <= from);
        if from >= to || !is_after {
            return None;
        }
        hours.push((from, to));
    }
    Some(hours)
}

/// Minutes since midnight of `9`, `9:30` or `24:00`.
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
        assert_eq!(read_hours(""), Some(vec![]));
        assert_eq!(read_hours("20:15\u{2013}24"), Some(vec![(1215, 1440)]));
        for none in ["9", "12-9", "9-12, 11-13", "25-26", "9:60-10", "nine-ten", "9-9"] {
            assert_eq!(read_hours(none), None, "{none}");
        }
    }
}
