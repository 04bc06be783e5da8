//! Weighed cans and the rates learned from them, in words.

use coatings::SourcedRange;
use coatings::learn::{Doubt, Learned};
use units::exact::SQUARE_FOOT_PER_GALLON;
use units::{System, Volume};
use workshop::learning::Weighed;

use super::{figure, volume, whole};

/// Formats a range of spreading rates in the maker's units: `8.6 to 11 m²/L`, `350 to 450 ft²/gal`.
fn rate(of: SourcedRange<coatings::unit::SquareMetresPerLitre>, system: System) -> String {
    match system {
        System::Metric => format!("{} m\u{b2}/L", figure(of, 1.0)),
        System::UsCustomary => format!("{} ft\u{b2}/gal", figure(of, SQUARE_FOOT_PER_GALLON)),
    }
}

/// States the rate from one can, or why there is none.
pub fn weighed(weighed: &Weighed, system: System) -> String {
    let seen = match &weighed.observed {
        Ok(seen) => seen,
        Err(fault) => return fault.to_string(),
    };
    let at = SourcedRange::own(seen.rate(), seen.rate());
    let sure = whole(seen.uncertainty() * 200.0);
    let doubts: Vec<String> = weighed.doubts().iter().map(|of| doubt(of, system)).collect();
    let used = weighed
        .used
        .map(|used| format!("You used {}. ", volume(used, system)));
    let held = match weighed.is_questioned() {
        true => " It isn\u{2019}t used until you confirm it.",
        false => "",
    };
    format!(
        "{}That\u{2019}s {}, within {sure}%.{}{held}",
        used.unwrap_or_default(),
        rate(at, system),
        doubts.join("")
    )
}

fn doubt(doubt: &Doubt, system: System) -> String {
    match *doubt {
        Doubt::Far {
            usual: (low, high),
            coats,
            ..
        } => {
            let label = rate(SourcedRange::own(low, high), system);
            let ask = match coats {
                Some(coats) => format!(
                    "{} would fit. How many were there?",
                    super::sentence(super::coats(coats))
                ),
                None => "Check the weights and the area.".into(),
            };
            format!(" That\u{2019}s far from the usual {label}. {ask}")
        }
        _ => format!(" {doubt}"),
    }
}

/// States the rate learned from all jobs, and how much it changed.
pub fn taught(by: &str, learned: &Learned, system: System) -> String {
    let jobs = match learned.jobs() {
        1 => "1 weighed job".to_owned(),
        jobs => format!("{jobs} weighed jobs"),
    };
    let narrower = (learned.narrowed() * 100.0).round();
    let sure = match (narrower, learned.jobs()) {
        (share, _) if share > 0.0 => format!("The range is {share:.0}% narrower"),
        (share, _) if share > -1.0 => "The range is as wide as before".into(),
        (_, 1) => "The range is wider, because this job is far from typical. Weigh a few more".into(),
        _ => "The range is wider, because your jobs differ a lot".into(),
    };
    format!(
        "{by}: {}. With {jobs}: {}. {sure}.",
        rate(learned.before(), system),
        rate(learned.range(), system)
    )
}

/// States how a weighed can changes the amount for the piece.
pub fn changed([without, with]: [Volume; 2], system: System) -> String {
    let (without, with) = (volume(without, system), volume(with, system));
    match without == with {
        true => format!(" The amount for this piece stays {with}."),
        false => format!(" This can changes the amount for this piece from {without} to {with}."),
    }
}

/// Names the weighed jobs that an amount is based on. Empty if it is based on the label or the usual film.
pub fn by_own_jobs(jobs: u32) -> String {
    match jobs {
        0 => String::new(),
        1 => ", from 1 weighed job".into(),
        jobs => format!(", from {jobs} weighed jobs"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use coatings::learn::{Observed, learn};

    /// 400 ft²/gal is 9.817 m²/L, with the exact foot and gallon.
    #[test]
    fn rates_are_told_in_the_units_of_the_maker() {
        let of = SourcedRange::own(9.817, 9.817);
        assert_eq!(rate(of, System::UsCustomary), "400 ft\u{b2}/gal");
        assert_eq!(rate(of, System::Metric), "9.8 m\u{b2}/L");
    }

    #[test]
    fn a_lesson_says_how_much_was_learned() {
        let job = |rate| Observed::of_rate(rate, 0.03).unwrap();
        let label = SourcedRange::own(8.0, 12.0);
        let even = taught("By the label", &learn(label, &[job(9.0); 8]), System::Metric);
        assert!(
            even.contains("8.0 to 12 m\u{b2}/L") && even.contains("8 weighed jobs"),
            "{even}"
        );
        assert!(even.contains("% narrower."), "{even}");
        let odd = taught(
            "By the label",
            &learn(label, &[job(4.0), job(20.0)]),
            System::Metric,
        );
        assert!(odd.contains("wider"), "{odd}");
        assert_eq!(by_own_jobs(0), "");
    }
}
