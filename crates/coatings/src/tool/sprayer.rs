//! Sprayers.

use super::properties::{Retention, Tool, ToolKind, micrometres};
use crate::material::FilmClass;
use crate::sourced_range::SourcedRange;

const HVLP_TRANSFER: &str =
    "from 50 % (Products Finishing, 50 to 60 %) to 80 % (Colorado bedroom-furniture maker, 65 to 80 %)";
const AIRLESS_TRANSFER: &str = "from 25 % (40 CFR 60.313 as in Wis. NR 440.48 Table 1) to 60 % (Colorado bedroom-furniture maker, 50 to 60 %)";
const HOSE_GEOMETRY: &str =
    "7.5 to 15 m of hose with a bore of 6.35 mm (1/4 in), from half pumped back to left full";

pub(super) const HVLP: Tool = Tool {
    key: "hvlp",
    name: "HVLP sprayer",
    kind: ToolKind::Sprayer,
    films: &[
        (FilmClass::Penetrating, micrometres(40.0, 80.0)),
        (FilmClass::Varnish, micrometres(50.0, 90.0)),
        (FilmClass::Paint, micrometres(50.0, 100.0)),
    ],
    transfer: SourcedRange::calculated(0.50, 0.80, HVLP_TRANSFER),
    narrow_transfer: SourcedRange::practice(0.45, 0.80),
    keeps: &[Retention {
        place: "cup and hose",
        litres: SourcedRange::practice(0.015, 0.060),
    }],
    minutes_per_square_metre: SourcedRange::practice(1.5, 4.0),
    minutes_per_metre_of_edge: SourcedRange::practice(0.1, 0.3),
    narrow_minutes: SourcedRange::practice(1.2, 2.0),
    minutes_to_clean: SourcedRange::practice(15.0, 30.0),
    texture: "Smooth, with no tool marks.",
    risk: "Overspray and fumes. Mask nearby things, exhaust the air and wear a respirator. Too thick gives orange peel; too wet runs.",
};

pub(super) const AIRLESS: Tool = Tool {
    key: "airless",
    name: "Airless sprayer",
    kind: ToolKind::Sprayer,
    films: &[
        (FilmClass::Penetrating, micrometres(50.0, 100.0)),
        (FilmClass::Varnish, micrometres(60.0, 110.0)),
        (FilmClass::Paint, micrometres(75.0, 150.0)),
    ],
    transfer: SourcedRange::calculated(0.25, 0.60, AIRLESS_TRANSFER),
    narrow_transfer: SourcedRange::practice(0.30, 0.70),
    keeps: &[
        Retention {
            place: "hose",
            litres: SourcedRange::assumed(0.12, 0.475, HOSE_GEOMETRY),
        },
        Retention {
            place: "pump and gun",
            litres: SourcedRange::practice(0.05, 0.15),
        },
    ],
    minutes_per_square_metre: SourcedRange::practice(0.7, 2.0),
    minutes_per_metre_of_edge: SourcedRange::practice(0.1, 0.2),
    narrow_minutes: SourcedRange::practice(1.2, 2.0),
    minutes_to_clean: SourcedRange::practice(20.0, 45.0),
    texture: "Smooth and heavy, a little coarser than HVLP.",
    risk: "The jet can pierce skin. Keep the guard on, lock the trigger and relieve the pressure. Small parts run fast.",
};
