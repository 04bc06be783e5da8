//! Cleaners: what takes off grease and gloss before anything goes on.

use std::borrow::Cow;

use super::properties::{FilmClass, Material, Stage, Thinner};
use super::shared;
use crate::sourced_range::SourcedRange;

pub(super) static MATERIALS: [Material; 2] = [
    Material {
        key: Cow::Borrowed("degreaser"),
        name: Cow::Borrowed("Degreaser"),
        stage: Stage::Clean,
        body: FilmClass::Wash,
        coloured: false,
        label_rate: SourcedRange::practice(10.0, 20.0),
        volume_solids: shared::no_film(),
        density: SourcedRange::memory(1.0, 1.1),
        recoat: SourcedRange::practice(1.0, 4.0),
        cure: SourcedRange::practice(2.0, 24.0),
        coldest: None,
        thinner: Thinner::Water,
        thinning: shared::unthinned(),
        cans: &[
            "us-pint",
            "us-quart",
            "us-gallon",
            "metric-500-ml",
            "metric-1-l",
            "metric-5-l",
        ],
        purpose: "Removes grease, polish and kitchen dirt. Use it first.",
        caution: "Caustic. Wear gloves and eye protection, and rinse it all off. Follow the label.",
    },
    Material {
        key: Cow::Borrowed("deglosser"),
        name: Cow::Borrowed("Liquid deglosser"),
        stage: Stage::Clean,
        body: FilmClass::Wash,
        coloured: false,
        label_rate: SourcedRange::practice(10.0, 20.0),
        volume_solids: shared::no_film(),
        density: SourcedRange::memory(0.85, 1.05),
        recoat: SourcedRange::memory(0.25, 1.0),
        cure: SourcedRange::memory(0.5, 1.0),
        coldest: None,
        thinner: Thinner::None,
        thinning: shared::unthinned(),
        cans: &["us-pint", "us-quart", "us-gallon", "metric-500-ml", "metric-1-l"],
        purpose: "Dulls a glossy old finish so the next coat sticks.",
        caution: "Strong solvent. No flame or spark. Ventilate well and wear gloves. Follow the label.",
    },
];
