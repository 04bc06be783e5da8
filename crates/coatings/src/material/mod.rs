//! Coating materials by their generic kind, with the figures that a label would carry.
//!
//! The figures are starting points for a maker who has no label at hand; a label always knows better.

use crate::figure::{Certainty, Figure};

/// What a coating does in a finish.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stage {
    /// Under the paint: it binds, seals and blocks.
    Primer,
    /// The colour.
    Paint,
    /// The clear coat over it.
    Topcoat,
}

impl Stage {
    /// Every stage in the order in which they go on.
    pub const ALL: [Stage; 3] = [Stage::Primer, Stage::Paint, Stage::Topcoat];

    /// What a maker calls it.
    pub fn label(self) -> &'static str {
        match self {
            Stage::Primer => "Primer",
            Stage::Paint => "Paint",
            Stage::Topcoat => "Clear topcoat",
        }
    }
}

/// A generic coating material.
#[derive(Clone, Debug, PartialEq)]
pub struct Material {
    /// Its name in saved files.
    pub key: &'static str,
    /// What the trade calls it.
    pub name: &'static str,
    /// What it does in a finish.
    pub stage: Stage,
    /// The spreading rate that a label states, m2/L. It contains ordinary brush and roller loss.
    pub label_rate: Figure,
    /// Volume solids (non-volatile matter by volume), a fraction.
    pub volume_solids: Figure,
    /// Density, kg/L.
    pub density: Figure,
    /// What to mind when using it; short, and second to the label.
    pub caution: &'static str,
}

const FILM_SOURCE: &str = "38 um (1.5 mil) dry film per coat on wood, MIL-HDBK-1110 / UFC 3-190-06 s. 4.4.1, at the volume solids given beside it, as sure as those are";
const VARNISH_SOURCE: &str =
    "350 to 550 ft2/gal for varnish, \"Data on Painting\", Building Construction vol. 4";
const FROM_MEMORY: &str = "generic data for this kind of material";

const fn calculated(low: f64, high: f64) -> Figure {
    Figure {
        low,
        high,
        source: FILM_SOURCE,
        certainty: Certainty::Calculated,
    }
}

const fn varnish_rate() -> Figure {
    Figure {
        low: 8.6,
        high: 13.5,
        source: VARNISH_SOURCE,
        certainty: Certainty::Read,
    }
}

const fn memory(low: f64, high: f64) -> Figure {
    Figure {
        low,
        high,
        source: FROM_MEMORY,
        certainty: Certainty::Memory,
    }
}

const WATER_BASED: &str = "Ventilate. Keep from freezing. Follow the label.";
const SOLVENT: &str = "Flammable vapour: no flame or spark, ventilate well, gloves. Follow the label.";
const DRYING_OIL: &str = "Flammable vapour, and rags heat up by themselves: dry them flat outdoors or drown them in a closed metal can. Follow the label.";

/// Every material that the tool knows.
pub static MATERIALS: [Material; 7] = [
    Material {
        key: "bonding-primer",
        name: "Water-based bonding primer",
        stage: Stage::Primer,
        label_rate: calculated(8.4, 11.8),
        volume_solids: memory(0.32, 0.45),
        density: memory(1.2, 1.4),
        caution: WATER_BASED,
    },
    Material {
        key: "shellac-primer",
        name: "Shellac-based stain blocker",
        stage: Stage::Primer,
        label_rate: calculated(6.6, 9.2),
        volume_solids: memory(0.25, 0.35),
        density: memory(1.1, 1.3),
        caution: "Alcohol vapour burns: no flame or spark, ventilate well, gloves. Follow the label.",
    },
    Material {
        key: "wall-latex",
        name: "Latex wall paint",
        stage: Stage::Paint,
        label_rate: calculated(8.4, 11.8),
        volume_solids: memory(0.32, 0.45),
        density: memory(1.2, 1.4),
        caution: WATER_BASED,
    },
    Material {
        key: "trim-enamel",
        name: "Acrylic trim enamel",
        stage: Stage::Paint,
        label_rate: calculated(9.2, 11.8),
        volume_solids: Figure {
            low: 0.35,
            high: 0.45,
            source: "architectural paints, coatings-supplier technical note, 2014",
            certainty: Certainty::Read,
        },
        density: memory(1.2, 1.4),
        caution: WATER_BASED,
    },
    Material {
        key: "alkyd-enamel",
        name: "Alkyd enamel",
        stage: Stage::Paint,
        label_rate: calculated(11.0, 14.4),
        volume_solids: memory(0.42, 0.55),
        density: memory(1.0, 1.3),
        caution: SOLVENT,
    },
    Material {
        key: "water-polyurethane",
        name: "Water-based polyurethane",
        stage: Stage::Topcoat,
        label_rate: varnish_rate(),
        volume_solids: memory(0.27, 0.34),
        density: memory(1.0, 1.06),
        caution: WATER_BASED,
    },
    Material {
        key: "oil-polyurethane",
        name: "Oil-based polyurethane",
        stage: Stage::Topcoat,
        label_rate: varnish_rate(),
        volume_solids: memory(0.40, 0.50),
        density: memory(0.88, 0.95),
        caution: DRYING_OIL,
    },
];

/// The material with this name in saved files.
pub fn material(key: &str) -> Option<&'static Material> {
    MATERIALS.iter().find(|material| material.key == key)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::film;
    use units::Length;

    #[test]
    fn every_figure_has_a_range_and_a_source() {
        for material in &MATERIALS {
            for figure in [material.label_rate, material.volume_solids, material.density] {
                assert!(0.0 < figure.low && figure.low <= figure.high, "{}", material.key);
                assert!(!figure.source.is_empty());
            }
            assert_eq!(super::material(material.key), Some(material));
        }
    }

    /// The rates that are said to follow from 38 um of dry film do follow from it.
    #[test]
    fn calculated_rates_follow_from_film_and_solids() {
        let film = Length::inches(0.0015);
        for material in MATERIALS
            .iter()
            .filter(|m| m.label_rate.certainty == Certainty::Calculated)
        {
            let rate = |solids| film::theoretical_rate(solids, film);
            let (rates, solids) = (material.label_rate, material.volume_solids);
            assert!(
                (rate(solids.low) - rates.low).abs() < 0.06,
                "{}: {}",
                material.key,
                rate(solids.low)
            );
            assert!(
                (rate(solids.high) - rates.high).abs() < 0.06,
                "{}: {}",
                material.key,
                rate(solids.high)
            );
        }
    }
}
