//! Stains: color within the wood.

use std::borrow::Cow;

use super::properties::{FilmClass, Material, Stage, Thinner};
use super::shared;
use crate::sourced_range::SourcedRange;

pub(super) static MATERIALS: [Material; 2] = [
    Material {
        key: Cow::Borrowed("wipe-on-stain"),
        name: Cow::Borrowed("Wipe-on oil stain"),
        stage: Stage::Stain,
        body: FilmClass::Penetrating,
        coloured: true,
        label_rate: SourcedRange::practice(10.0, 17.0),
        volume_solids: SourcedRange::memory(0.15, 0.35),
        density: SourcedRange::memory(0.82, 0.95),
        recoat: SourcedRange::memory(8.0, 24.0),
        cure: SourcedRange::memory(24.0, 72.0),
        coldest: Some(shared::OTHER_AIR),
        thinner: Thinner::MineralSpirits,
        thinning: shared::unthinned(),
        cans: shared::HALF_PINT_TO_QUART,
        purpose: "Colors bare wood and shows the grain. Wipe off the excess.",
        caution: shared::DRYING_OIL,
    },
    Material {
        key: Cow::Borrowed("brush-on-stain"),
        name: Cow::Borrowed("Semi-transparent brush-on stain"),
        stage: Stage::Stain,
        body: FilmClass::Penetrating,
        coloured: true,
        label_rate: shared::rate_of_film(6.6, 10.5),
        volume_solids: SourcedRange::memory(0.25, 0.40),
        density: SourcedRange::memory(0.85, 1.05),
        recoat: SourcedRange::memory(4.0, 24.0),
        cure: SourcedRange::memory(72.0, 336.0),
        coldest: Some(shared::OTHER_AIR),
        thinner: Thinner::MineralSpirits,
        thinning: SourcedRange::memory(0.0, 0.10),
        cans: &[
            "us-8-fl-oz",
            "us-quart",
            "us-gallon",
            "metric-250-ml",
            "metric-750-ml",
            "metric-2500-ml",
        ],
        purpose: "Colors bare wood with a thin film that evens it out.",
        caution: shared::DRYING_OIL,
    },
];
