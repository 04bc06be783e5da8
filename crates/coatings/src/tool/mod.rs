//! Tools: how thick a coat they leave, what they lose and keep, and how long they take.

mod brush;
mod pad;
mod roller;
mod sprayer;

use crate::figure::Figure;
use crate::material::Body;

/// A place in a tool where paint stays.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Keeps {
    /// Where it stays.
    pub place: &'static str,
    /// How much stays there per colour, litres.
    pub litres: Figure,
}

/// What sort of tool it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ToolKind {
    /// Bristles.
    Brush,
    /// A sleeve that is loaded from a tray.
    Roller,
    /// It breaks the coating into drops.
    Sprayer,
    /// A cloth or a pad in the hand.
    Pad,
}

/// A tool for putting a coating on.
#[derive(Clone, Debug, PartialEq)]
pub struct Tool {
    /// Its name in saved files.
    pub key: &'static str,
    /// What the trade calls it.
    pub name: &'static str,
    /// What sort of tool it is.
    pub kind: ToolKind,
    /// The wet film of one coat, metres, of each body that it can put on.
    pub films: &'static [(Body, Figure)],
    /// The share of what leaves the tool that stays on a broad surface (transfer efficiency).
    pub transfer: Figure,
    /// The share of that which is left on narrow parts: legs, stretchers, rails. 1 where no more is lost.
    pub narrow_transfer: Figure,
    /// What it keeps per colour and wash.
    pub keeps: &'static [Keeps],
    /// Minutes for a coat on a square metre of broad surface.
    pub minutes_per_square_metre: Figure,
    /// Minutes for a coat along a metre of edge: cutting in, arrises, inner corners.
    pub minutes_per_metre_of_edge: Figure,
    /// How many times as long a square metre of narrow parts takes.
    pub narrow_minutes: Figure,
    /// Minutes to make ready and to clean, per colour.
    pub minutes_to_clean: Figure,
    /// What its coat looks like.
    pub texture: &'static str,
    /// What can go wrong with it.
    pub risk: &'static str,
}

impl Tool {
    /// The wet film of one coat of a material that lies like this, metres; `None` where it cannot put it on.
    ///
    /// # Example
    /// ```
    /// use coatings::{Body, tool};
    /// let airless = tool("airless").unwrap();
    /// assert!(airless.film(Body::Paint).is_some());
    /// assert_eq!(airless.film(Body::Paste), None);
    /// ```
    pub fn film(&self, body: Body) -> Option<Figure> {
        self.films
            .iter()
            .find(|(of, _)| *of == body)
            .map(|(_, film)| *film)
    }
}

/// A wet film between two limits in micrometres.
const fn micrometres(low: f64, high: f64) -> Figure {
    Figure::practice(low * 1e-6, high * 1e-6)
}

/// All of it: nothing more is lost.
const ALL_OF_IT: Figure = Figure::practice(1.0, 1.0);

/// The transfer efficiency of brush, roller and pad: what is lost are drips.
const BY_HAND: Figure = Figure::practice(0.95, 1.0);

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

/// The tool with this name in saved files.
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
                tool.minutes_per_square_metre,
                tool.minutes_per_metre_of_edge,
                tool.narrow_minutes,
                tool.minutes_to_clean,
            ];
            figures.extend(tool.films.iter().map(|(_, film)| *film));
            figures.extend(tool.keeps.iter().map(|keeps| keeps.litres));
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

    /// How full a cover or a hose is left was read nowhere, so what they keep is no surer than common practice.
    #[test]
    fn what_tools_keep_is_common_practice() {
        for keeps in TOOLS.iter().flat_map(|tool| tool.keeps) {
            let certainty = keeps.litres.certainty;
            assert_eq!(certainty, crate::figure::Certainty::Practice, "{}", keeps.place);
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
