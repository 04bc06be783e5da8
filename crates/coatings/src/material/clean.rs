//! Cleaners: what takes off grease and gloss before anything goes on.

use std::borrow::Cow;

use super::figures::{Body, Material, Stage, Thinner};
use super::shared;
use crate::figure::Figure;

pub(super) static MATERIALS: [Material; 2] = [
    Material {
        key: Cow::Borrowed("degreaser"),
        name: Cow::Borrowed("Degreaser"),
        stage: Stage::Clean,
        body: Body::Wash,
        coloured: false,
        label_rate: Figure::practice(10.0, 20.0),
        volume_solids: shared::no_film(),
        density: Figure::memory(1.0, 1.1),
        recoat: Figure::practice(1.0, 4.0),
        cure: Figure::practice(2.0, 24.0),
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
        purpose: "Takes off grease, polish and kitchen dirt before anything else.",
        caution: "Caustic: gloves and eye protection, and rinse it all off. Follow the label.",
    },
    Material {
        key: Cow::Borrowed("deglosser"),
        name: Cow::Borrowed("Liquid deglosser"),
        stage: Stage::Clean,
        body: Body::Wash,
        coloured: false,
        label_rate: Figure::practice(10.0, 20.0),
        volume_solids: shared::no_film(),
        density: Figure::memory(0.85, 1.05),
        recoat: Figure::memory(0.25, 1.0),
        cure: Figure::memory(0.5, 1.0),
        coldest: None,
        thinner: Thinner::None,
        thinning: shared::unthinned(),
        cans: &["us-pint", "us-quart", "us-gallon", "metric-500-ml", "metric-1-l"],
        purpose: "Dulls a glossy old finish so that the next coat holds.",
        caution: "Strong solvent: no flame or spark, ventilate well, gloves. Follow the label.",
    },
];
