//! Tools: film, losses and working times.

mod brush;
mod pad;
mod properties;
mod roller;
mod sprayer;

pub use properties::{Retention, Tool, ToolKind};

/// Every tool that is known.
pub static TOOLS: [Tool; 8] = [
    brush::BRUSH,
    brush::CHIP_BRUSH,
    brush::OVAL_BRUSH,
    roller::FOAM_ROLLER,
    roller::MICROFIBRE_ROLLER,
    sprayer::HVLP,
    sprayer::AIRLESS,
    pad::PAD,
];

/// The tool with this key in saved files.
pub fn tool(key: &str) -> Option<&'static Tool> {
    TOOLS.iter().find(|tool| tool.key == key)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_unique_and_kebab_case_and_old_ones_stay() {
        for (place, one) in TOOLS.iter().enumerate() {
            assert!(TOOLS[..place].iter().all(|other| other.key != one.key));
            assert!(one.key.bytes().all(|b| b.is_ascii_lowercase() || b == b'-'));
            assert_eq!(tool(one.key), Some(one));
        }
        assert!(tool("brush").is_some() && tool("foam-roller").is_some());
    }

    #[test]
    fn every_figure_has_a_range_and_a_source() {
        for tool in &TOOLS {
            let mut figures = vec![
                tool.transfer,
                tool.narrow_transfer,
                tool.minutes_per_square_metre.as_numbers(),
                tool.minutes_per_metre_of_edge.as_numbers(),
                tool.narrow_minutes,
                tool.minutes_to_clean.as_numbers(),
            ];
            figures.extend(tool.films.iter().map(|(_, film)| film.as_numbers()));
            figures.extend(tool.keeps.iter().map(|keeps| keeps.litres.as_numbers()));
            for figure in figures {
                assert!(0.0 < figure.low && figure.low <= figure.high, "{}", tool.key);
                assert!(!figure.source.is_empty());
            }
            assert!(tool.transfer.high <= 1.0 && tool.narrow_transfer.high <= 1.0);
            assert!(tool.narrow_minutes.low >= 1.0, "{}", tool.key);
            assert!(!tool.films.is_empty() && !tool.keeps.is_empty());
            for (place, (body, film)) in tool.films.iter().enumerate() {
                assert!(tool.films[..place].iter().all(|(other, _)| other != body));
                assert!(
                    film.low >= 5e-6 && film.high <= 200e-6,
                    "{}: {body:?} in metres",
                    tool.key
                );
            }
        }
    }

    /// No source says how full a roller cover or a hose is left, so the retention is common practice.
    #[test]
    fn what_tools_keep_is_common_practice() {
        for keeps in TOOLS.iter().flat_map(|tool| tool.keeps) {
            let certainty = keeps.litres.certainty;
            assert_eq!(
                certainty,
                crate::sourced_range::Provenance::Practice,
                "{}",
                keeps.place
            );
        }
    }

    /// The hose is a cylinder; half of it may be pumped back.
    #[test]
    fn a_hose_keeps_what_is_in_it() {
        let litres = |metres: f64| std::f64::consts::FRAC_PI_4 * 0.00635 * 0.00635 * metres * 1000.0;
        let hose = tool("airless").unwrap().keeps[0].litres;
        assert!((litres(7.5) / 2.0 - hose.low).abs() < 0.005);
        assert!((litres(15.0) - hose.high).abs() < 0.005);
    }

    /// A sprayed coat stays on the piece less than a brushed one, and on a leg less still.
    #[test]
    fn sprayers_lose_more_than_hands() {
        for tool in &TOOLS {
            let sprays = tool.kind == ToolKind::Sprayer;
            assert_eq!(sprays, tool.transfer.high < 0.95, "{}", tool.key);
            assert_eq!(sprays, tool.narrow_transfer.high < 1.0, "{}", tool.key);
        }
    }
}
