//! Figures and words of the tables.

use units::{Area, Length, System, Volume, show_area, show_volume};

use crate::takeoff::plain;

/// The widest line, in characters.
pub(super) const WIDTH: usize = 110;

/// A probability. One from so many trials is never quite 0 or 1.
pub(super) fn percent(probability: f64) -> String {
    match probability * 100.0 {
        p if p < 1.0 => "under 1%".into(),
        p if p > 99.0 => "over 99%".into(),
        p => format!("{p:.0}%"),
    }
}

/// A dash stands for nothing.
pub(super) fn some<T: PartialOrd>(amount: T, nothing: T, shown: impl Fn(T) -> String) -> String {
    if amount > nothing {
        shown(amount)
    } else {
        "-".into()
    }
}

/// A sum of lengths, longer than any tape.
pub(super) fn long(length: Length, system: System) -> String {
    match system {
        System::UsCustomary => format!("{:.1} ft", length.as_inches() / 12.0),
        System::Metric => format!("{:.1} m", length.as_metres()),
    }
}

/// The thickness of a film; a mil is a thousandth of an inch.
pub(super) fn film(film: Length, system: System) -> String {
    match system {
        System::UsCustomary => format!("{:.1} mil", film.as_inches() * 1e3),
        System::Metric => format!("{:.0} \u{b5}m", film.as_millimetres() * 1e3),
    }
}

pub(super) fn area(area: Area, system: System) -> String {
    let (figure, unit) = show_area(area, system);
    format!("{figure} {unit}")
}

pub(super) fn volume(volume: Volume, system: System) -> String {
    let (figure, unit) = show_volume(volume, system);
    format!("{figure} {unit}")
}

/// A name in so many characters at most, without what a terminal might obey.
pub(super) fn short(name: &str, most: usize) -> String {
    let name = plain(name);
    if name.chars().count() <= most {
        return name;
    }
    let start: String = name.chars().take(most - 1).collect();
    format!("{}\u{2026}", start.trim_end())
}

/// A sentence in lines that are not too wide; all but the first, which keeps its own, are set in so far.
pub(super) fn wrapped(text: &str, indent: usize) -> String {
    let start = text.len() - text.trim_start_matches(' ').len();
    let mut lines = " ".repeat(start);
    let mut width = start;
    for (place, word) in text[start..].split(' ').enumerate() {
        let long = word.chars().count();
        if place > 0 && width + 1 + long > WIDTH {
            lines.push('\n');
            lines.extend(std::iter::repeat_n(' ', indent));
            width = indent;
        } else if place > 0 {
            lines.push(' ');
            width += 1;
        }
        lines.push_str(word);
        width += long;
    }
    lines.push('\n');
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sentences_are_wrapped_between_words_and_keep_them_all() {
        let text = format!("  paint: {}", "word ".repeat(60).trim_end());
        let lines = wrapped(&text, 4);
        assert!(lines.lines().all(|line| line.chars().count() <= WIDTH), "{lines}");
        assert!(lines.lines().skip(1).all(|line| line.starts_with("    word")));
        assert_eq!(lines.matches("word").count(), 60);
        assert_eq!(wrapped("  a b", 4), "  a b\n");
    }

    #[test]
    fn films_are_thin() {
        let film_of = |system| film(Length::metres(25.4e-6), system);
        assert_eq!(
            [film_of(System::UsCustomary), film_of(System::Metric)],
            ["1.0 mil", "25 \u{b5}m"]
        );
    }

    #[test]
    fn probabilities_are_never_quite_nothing_or_all() {
        assert_eq!([1.0, 0.625, 0.0].map(percent), ["over 99%", "62%", "under 1%"]);
    }

    #[test]
    fn long_names_are_cut() {
        assert_eq!(short("a long name", 7), "a long\u{2026}");
        assert_eq!(short("short\u{7}", 6), "short ");
    }
}
