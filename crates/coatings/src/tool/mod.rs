//! Tools: how thick a coat they leave and what they keep for themselves.

use crate::figure::{Certainty, Figure};

/// A place in a tool where paint stays.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Keeps {
    /// Where it stays.
    pub place: &'static str,
    /// How much stays there per colour, litres.
    pub litres: Figure,
}

/// A tool for putting a coating on.
#[derive(Clone, Debug, PartialEq)]
pub struct Tool {
    /// Its name in saved files.
    pub key: &'static str,
    /// What the trade calls it.
    pub name: &'static str,
    /// The wet film of one coat, metres.
    pub wet_film: Figure,
    /// The share of what leaves the tool that stays on the piece (transfer efficiency).
    pub transfer: Figure,
    /// What it keeps per colour and wash.
    pub keeps: &'static [Keeps],
    /// What its coat looks like.
    pub texture: &'static str,
}

const NO_NEUTRAL_SOURCE: &str = "no neutral source found";
const COVER_GEOMETRY: &str =
    "100 mm foam cover, 35 mm across on a 15 mm core, a fifth to two fifths of it left wet";

const fn practice(low: f64, high: f64) -> Figure {
    Figure {
        low,
        high,
        source: NO_NEUTRAL_SOURCE,
        certainty: Certainty::Practice,
    }
}

/// Every tool that the tool knows.
pub static TOOLS: [Tool; 2] = [
    Tool {
        key: "brush",
        name: "Brush",
        wet_film: practice(75e-6, 125e-6),
        transfer: practice(0.95, 1.0),
        keeps: &[Keeps {
            place: "bristles",
            litres: practice(0.005, 0.015),
        }],
        texture: "Brush marks show in raking light; reaches every corner.",
    },
    Tool {
        key: "foam-roller",
        name: "Mini foam roller",
        wet_film: practice(50e-6, 90e-6),
        transfer: practice(0.95, 1.0),
        keeps: &[
            Keeps {
                place: "sleeve",
                litres: Figure {
                    low: 0.016,
                    high: 0.031,
                    source: COVER_GEOMETRY,
                    certainty: Certainty::Calculated,
                },
            },
            Keeps {
                place: "tray",
                litres: practice(0.010, 0.020),
            },
        ],
        texture: "A fine even stipple; corners and narrow edges still need a brush.",
    },
];

/// The tool with this name in saved files.
pub fn tool(key: &str) -> Option<&'static Tool> {
    TOOLS.iter().find(|tool| tool.key == key)
}
