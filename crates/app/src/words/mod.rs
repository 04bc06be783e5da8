//! Sentences and labels that need a little choosing. Plain labels stand where they are shown.

mod changes;
mod fields;
mod surfaces;

use coatings::{Amount, Enough, Stage, Verdict};
use units::{Area, Length, System, Volume, show_area, show_volume};

pub use changes::{Names, change_of, change_title, towards};
pub use fields::{bay_label, field_element, field_label, place_prefix};
pub use surfaces::{lying, overlap, run, working};

/// A volume with its unit, as in `8.0 fl oz`.
pub fn volume(volume: Volume, system: System) -> String {
    let (figure, unit) = show_volume(volume, system);
    format!("{figure} {unit}")
}

/// An area with its unit, as in `25.2 ft²`.
pub fn area(area: Area, system: System) -> String {
    let (figure, unit) = show_area(area, system);
    format!("{figure} {unit}")
}

/// The range of an amount: `between 9.8 fl oz and 15 fl oz`.
pub fn range(amount: &Amount, system: System) -> String {
    format!(
        "between {} and {}",
        volume(amount.low(), system),
        volume(amount.high(), system)
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

/// The end of an element's name for a stage.
pub fn stage_key(stage: Stage) -> &'static str {
    match stage {
        Stage::Primer => "primer",
        Stage::Paint => "paint",
        Stage::Topcoat => "topcoat",
    }
}

/// A dry film with its doubled standard uncertainty: mils where inches are read, micrometres elsewhere.
pub fn film(thickness: Length, uncertainty: Length, system: System) -> String {
    match system {
        System::UsCustomary => {
            let mils = |length: Length| length.as_inches() * 1000.0;
            format!("{:.1} \u{b1} {:.1} mil", mils(thickness), mils(uncertainty) * 2.0)
        }
        System::Metric => {
            let micrometres = |length: Length| length.as_millimetres() * 1000.0;
            format!(
                "{:.0} \u{b1} {:.0} \u{b5}m",
                micrometres(thickness),
                micrometres(uncertainty) * 2.0
            )
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_ever_certain() {
        let half = Volume::litres(0.5);
        let short = Enough {
            verdict: Verdict::Short,
            probability: 0.2,
            left: Volume::ZERO,
            lacking: half,
        };
        let sentence = "Likely short by 500 mL. It lasts 20 times in 100.";
        assert_eq!(enough(&short, System::Metric), sentence);
        assert_eq!(in_a_hundred(0.9999), "more than 99 times in 100");
        assert_eq!(in_a_hundred(0.001), "less than once in 100 times");
        assert_eq!(in_a_hundred(0.011), "once in 100 times");
        assert_eq!(in_a_hundred(0.874), "87 times in 100");
    }
}
