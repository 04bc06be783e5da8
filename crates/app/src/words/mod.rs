//! Sentences and labels that need a little choosing. Plain labels stand where they are shown.

mod changes;
mod fields;
mod local;
mod standing;
mod surfaces;

use crate::state::Sheet;
use coatings::can::ChoiceError;
use coatings::{Certainty, Enough, Estimate, Figure, Need, Stage, Verdict, in_sentence};
use units::{Area, Length, System, Volume, show_area, show_number, show_volume};
use workshop::{Buy, MaterialLine, Piece, Settings, Takeoff, unmeasured};

pub use changes::{Names, change_of, change_title, towards};
pub use fields::{bay_label, field_element, field_label, place_prefix};
pub use local::{local, write_decimals_with};
pub use standing::{offline, safety};
pub use surfaces::{lying, overlap, run, working};

/// The name of a sheet among the elements of the page.
pub fn sheet(sheet: Sheet) -> &'static str {
    match sheet {
        Sheet::Measure => "measure",
        Sheet::Parts => "parts",
        Sheet::Surfaces => "surfaces",
        Sheet::Finish => "finish",
        Sheet::Tools => "tools",
        Sheet::Card => "card",
    }
}

/// A volume with its unit, as in `8.0 fl oz`.
pub fn volume(volume: Volume, system: System) -> String {
    let (figure, unit) = show_volume(volume, system);
    local(format!("{figure} {unit}"))
}

/// An area with its unit, as in `25.2 ft²`.
pub fn area(area: Area, system: System) -> String {
    let (figure, unit) = show_area(area, system);
    local(format!("{figure} {unit}"))
}

/// The range of an amount: `9.8 to 15 fl oz`, or both with their units where these differ.
pub fn range(need: &Need, system: System) -> String {
    let ((low, unit), (high, of_high)) = (show_volume(need.low(), system), show_volume(need.high(), system));
    local(if unit == of_high {
        format!("{low} to {high} {unit}")
    } else {
        format!("{low} {unit} to {high} {of_high}")
    })
}

/// How sure the area of a piece is, and what makes it unsure.
pub fn sureness(piece: &Piece, takeoff: &Takeoff) -> String {
    let share = takeoff.painted.give_or_take() * 100.0;
    let share = if share < 1.0 {
        local(format!("{share:.1}"))
    } else {
        format!("{share:.0}")
    };
    match unmeasured(piece).len() {
        0 => format!("Give or take {share} %. Everything was measured."),
        1 => format!("Give or take {share} %. One measurement is still a usual value."),
        n => format!("Give or take {share} %. {n} measurements are still usual values."),
    }
}

/// The best estimate of the linear law beside the trials.
pub fn linear(estimate: Estimate<Volume>, system: System) -> String {
    format!(
        "The linear law says {} with a standard uncertainty of {}; the range above comes from trials.",
        volume(estimate.value, system),
        volume(estimate.standard_uncertainty, system)
    )
}

/// The answer on a can in one or two words.
pub fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Enough => "Enough",
        Verdict::Tight => "Tight",
        Verdict::Short => "Not enough",
    }
}

/// The answer on a can as a sentence, with the probability behind it.
pub fn enough(enough: &Enough, system: System) -> String {
    let remainder = if enough.lacking > Volume::ZERO {
        format!("Likely short by {}", volume(enough.lacking, system))
    } else {
        format!("Likely {} left", volume(enough.left, system))
    };
    format!("{remainder}. It lasts {}.", in_a_hundred(enough.probability))
}

/// A probability in whole hundredths, never claiming certainty either way.
fn in_a_hundred(probability: f64) -> String {
    let share = (probability * 100.0).round();
    if share >= 100.0 {
        "more than 99 times in 100".into()
    } else if share < 1.0 {
        "less than once in 100 times".into()
    } else if share == 1.0 {
        "once in 100 times".into()
    } else {
        format!("{share:.0} times in 100")
    }
}

/// Coats in words: `no coat`, `1 coat`, `2 coats`.
pub fn coats(coats: u32) -> String {
    match coats {
        0 => "no coat".into(),
        1 => "1 coat".into(),
        more => format!("{more} coats"),
    }
}

/// What the can would do with the wanted confidence instead: fewer or more coats, or some of the zones.
pub fn instead(line: &MaterialLine, takeoff: &Takeoff) -> String {
    let enough = &line.enough;
    if enough.verdict == Verdict::Enough {
        return match enough.most_coats {
            most if most > line.coats && line.need.material.stage != Stage::Clean => {
                format!("Sure for {}.", coats(most))
            }
            _ => String::new(),
        };
    }
    let zones: Vec<&str> = enough
        .zones
        .iter()
        .map(|zone| takeoff.zone_label(*zone))
        .collect();
    let fewer =
        (enough.most_coats > 0).then(|| format!("Sure for {} on all of it", coats(enough.most_coats)));
    let some = (!zones.is_empty()).then(|| format!("for {} on {}", coats(line.coats), and(&zones)));
    match (fewer, some) {
        (Some(fewer), Some(some)) => format!("{fewer}, or {some}."),
        (Some(fewer), None) => format!("{fewer}."),
        (None, Some(some)) => format!("Sure {some}."),
        (None, None) => String::new(),
    }
}

/// A price in words, given in hundredths of the currency.
pub type Money<'a> = &'a dyn Fn(u64) -> String;

/// Which cans to buy, and what they cost if that is known: `1 × 1 quart, 24.50 in all`.
pub fn cans(buy: &Result<Buy, ChoiceError>, money: Money<'_>) -> String {
    let buy = match buy {
        Ok(buy) => buy,
        Err(error) => return error.to_string(),
    };
    let cans: Vec<String> = buy
        .cans
        .iter()
        .map(|(can, count)| format!("{count} \u{d7} {}", can.label))
        .collect();
    let cans: Vec<&str> = cans.iter().map(String::as_str).collect();
    let price = buy
        .price
        .map_or_else(String::new, |price| format!(", {} in all", money(price)));
    format!("{}{price}", and(&cans))
}

/// Which cans to buy, what for, and what they leave.
pub fn buy(buy: &Result<Buy, ChoiceError>, system: System, settings: &Settings, money: Money<'_>) -> String {
    let cans = cans(buy, money);
    let Ok(buy) = buy else { return cans };
    let sure = settings.confidence.percent();
    format!(
        "{cans}: holds the {} that are enough {sure} times in 100, and leaves {}.",
        volume(buy.need, system),
        volume(buy.purchase.left, system)
    )
}

/// A text with a capital at its head.
pub fn sentence(mut text: String) -> String {
    if let Some(head) = text.get_mut(..1) {
        head.make_ascii_uppercase();
    }
    text
}

/// Words side by side: `sleeve, tray and bristles`.
pub fn and(words: &[&str]) -> String {
    match words.split_last() {
        None => String::new(),
        Some((only, [])) => (*only).into(),
        Some((last, others)) => format!("{} and {last}", others.join(", ")),
    }
}

/// The names of tools within a sentence.
pub fn tools(names: &[&str]) -> String {
    let names: Vec<String> = names.iter().map(|name| in_sentence(name)).collect();
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    and(&names)
}

/// Where a share of an amount goes: `on the piece`, `in the sleeve`.
pub fn place(place: &str) -> String {
    if place.starts_with("on ") || place.starts_with("in ") {
        place.into()
    } else {
        format!("in the {place}")
    }
}

/// Where a figure comes from.
pub fn source(source: &str, certainty: Certainty) -> String {
    match certainty {
        Certainty::Read | Certainty::Calculated => format!("{source} ({})", certainty.label()),
        Certainty::Memory | Certainty::Practice | Certainty::Maker => certainty.label().into(),
    }
}

/// A figure as a range in a unit of which `factor` of its own is one: `8.6 to 11`, or `1.2` where both ends are the same.
pub fn figure(figure: Figure, factor: f64) -> String {
    range_of(figure.low / factor, figure.high / factor)
}

/// Hours as a range: `2 to 4`, `1.5`.
pub fn hours(figure: Figure) -> String {
    let [low, high] = [figure.low, figure.high].map(|hours| local(show_number(hours)));
    if low == high {
        low
    } else {
        format!("{low} to {high}")
    }
}

/// A wet film: mils where inches are read, micrometres elsewhere.
pub fn wet_film(film: Figure, system: System) -> String {
    match system {
        System::UsCustomary => format!("{} mil", figure(film, 25.4e-6)),
        System::Metric => format!("{} \u{b5}m", figure(film, 1e-6)),
    }
}

fn range_of(low: f64, high: f64) -> String {
    let [low, high] = [low, high].map(to_two_digits);
    if low == high {
        low
    } else {
        format!("{low} to {high}")
    }
}

/// Two digits that count, or all those before the point.
fn to_two_digits(value: f64) -> String {
    let decimals = match value {
        v if v >= 9.95 || v == 0.0 => 0,
        v if v >= 0.995 => 1,
        _ => 2,
    };
    local(format!("{value:.decimals$}"))
}

/// A stage in one word.
pub fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::Clean => "Cleaner",
        Stage::Stain => "Stain",
        Stage::Primer => "Primer",
        Stage::Paint => "Paint",
        Stage::Topcoat => "Topcoat",
    }
}

/// Minutes with their doubled standard uncertainty, in hours from two hours on.
pub fn minutes(minutes: Estimate<f64>) -> String {
    let (value, either_way) = (minutes.value, minutes.standard_uncertainty * 2.0);
    if value < 120.0 {
        format!("{value:.0} \u{b1} {either_way:.0} min")
    } else {
        local(format!("{:.1} \u{b1} {:.1} h", value / 60.0, either_way / 60.0))
    }
}

/// A dry film with its doubled standard uncertainty: mils where inches are read, micrometres elsewhere.
pub fn film(film: Estimate<Length>, system: System) -> String {
    match system {
        System::UsCustomary => {
            let mils = |length: Length| length.as_inches() * 1000.0;
            let (film, either_way) = (mils(film.value), mils(film.standard_uncertainty) * 2.0);
            local(format!("{film:.1} \u{b1} {either_way:.1} mil"))
        }
        System::Metric => {
            let micrometres = |length: Length| length.as_millimetres() * 1000.0;
            let (film, either_way) = (
                micrometres(film.value),
                micrometres(film.standard_uncertainty) * 2.0,
            );
            format!("{film:.0} \u{b1} {either_way:.0} \u{b5}m")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::Kind;
    use workshop::{Confidence, PieceId, takeoff};

    #[test]
    fn nothing_is_ever_certain() {
        let half = Volume::litres(0.5);
        let short = Enough {
            verdict: Verdict::Short,
            probability: 0.2,
            left: Volume::ZERO,
            lacking: half,
            most_coats: 1,
            zones: vec![],
        };
        let sentence = "Likely short by 500 mL. It lasts 20 times in 100.";
        assert_eq!(enough(&short, System::Metric), sentence);
        assert_eq!(in_a_hundred(0.9999), "more than 99 times in 100");
        assert_eq!(in_a_hundred(0.001), "less than once in 100 times");
        assert_eq!(in_a_hundred(0.011), "once in 100 times");
        assert_eq!(in_a_hundred(0.874), "87 times in 100");
    }

    #[test]
    fn words_stand_side_by_side() {
        assert_eq!(and(&["tray"]), "tray");
        assert_eq!(and(&["sleeve", "tray", "bristles"]), "sleeve, tray and bristles");
        assert_eq!(
            tools(&["Mini foam roller", "HVLP sprayer"]),
            "mini foam roller and HVLP sprayer"
        );
        assert_eq!(
            (place("tray"), place("in the air")),
            ("in the tray".into(), "in the air".into())
        );
    }

    #[test]
    fn figures_are_ranges_with_two_digits() {
        let film = Figure::practice(75e-6, 125e-6);
        assert_eq!(wet_film(film, System::Metric), "75 to 125 \u{b5}m");
        assert_eq!(wet_film(film, System::UsCustomary), "3.0 to 4.9 mil");
        assert_eq!(figure(Figure::practice(0.38, 0.38), 0.01), "38");
    }

    #[test]
    fn long_work_is_told_in_hours() {
        let estimate = |value, standard_uncertainty| Estimate {
            value,
            standard_uncertainty,
        };
        assert_eq!(minutes(estimate(95.0, 12.0)), "95 \u{b1} 24 min");
        assert_eq!(minutes(estimate(150.0, 15.0)), "2.5 \u{b1} 0.5 h");
    }

    /// A pint of enamel does not do a dresser twice; it does it once, or part of it twice.
    #[test]
    fn a_can_that_is_short_says_what_it_would_do() {
        let piece = Piece::new(PieceId("a".into()), Kind::Dresser, System::UsCustomary);
        let enough = |verdict, most_coats, zones| {
            let mut takeoff = takeoff(&piece, &[], Confidence::default()).unwrap();
            takeoff.materials[1].enough = Enough {
                verdict,
                probability: 0.5,
                left: Volume::ZERO,
                lacking: Volume::ZERO,
                most_coats,
                zones,
            };
            instead(&takeoff.materials[1], &takeoff)
        };
        let labels = takeoff(&piece, &[], Confidence::default()).unwrap().zones;
        let first = &labels[0].label;
        assert_eq!(
            enough(Verdict::Short, 1, vec![0]),
            format!("Sure for 1 coat on all of it, or for 2 coats on {first}.")
        );
        assert_eq!(
            enough(Verdict::Short, 0, vec![0]),
            format!("Sure for 2 coats on {first}.")
        );
        assert_eq!(enough(Verdict::Short, 0, vec![]), "");
        assert_eq!(enough(Verdict::Enough, 3, vec![0]), "Sure for 3 coats.");
        assert_eq!(enough(Verdict::Enough, 2, vec![0]), "");
    }
}
