//! Rollers.

use super::properties::{ALL_OF_IT, BY_HAND, Retention, Tool, ToolKind, micrometres};
use crate::material::FilmClass;
use crate::sourced_range::SourcedRange;

const COVER_GEOMETRY: &str =
    "100 mm foam cover, 35 mm across on a 15 mm core, a fifth to two fifths of it left wet";

const TRAY: Retention = Retention {
    place: "tray",
    litres: SourcedRange::practice(0.010, 0.020),
};

pub(super) const FOAM_ROLLER: Tool = Tool {
    key: "foam-roller",
    name: "Mini foam roller",
    kind: ToolKind::Roller,
    films: &[
        (FilmClass::Varnish, micrometres(45.0, 80.0)),
        (FilmClass::Paint, micrometres(50.0, 90.0)),
    ],
    transfer: BY_HAND,
    narrow_transfer: ALL_OF_IT,
    keeps: &[
        Retention {
            place: "sleeve",
            litres: SourcedRange::assumed(0.016, 0.031, COVER_GEOMETRY),
        },
        TRAY,
    ],
    minutes_per_square_metre: SourcedRange::practice(3.0, 6.0),
    minutes_per_metre_of_edge: SourcedRange::practice(0.4, 1.0),
    narrow_minutes: SourcedRange::practice(1.5, 2.5),
    minutes_to_clean: SourcedRange::practice(3.0, 10.0),
    texture: "A fine, even stipple. Corners and narrow edges still need a brush.",
    risk: "Roll slowly, or it bubbles. Coats are thin: you may need one more.",
};

pub(super) const MICROFIBRE_ROLLER: Tool = Tool {
    key: "microfibre-roller",
    name: "Mini microfiber roller",
    kind: ToolKind::Roller,
    films: &[(FilmClass::Paint, micrometres(60.0, 110.0))],
    transfer: BY_HAND,
    narrow_transfer: ALL_OF_IT,
    keeps: &[
        Retention {
            place: "sleeve",
            litres: SourcedRange::practice(0.020, 0.045),
        },
        TRAY,
    ],
    minutes_per_square_metre: SourcedRange::practice(2.5, 5.0),
    minutes_per_metre_of_edge: SourcedRange::practice(0.4, 1.0),
    narrow_minutes: SourcedRange::practice(1.5, 2.5),
    minutes_to_clean: SourcedRange::practice(5.0, 15.0),
    texture: "A soft stipple, coarser than foam. Corners and narrow edges still need a brush.",
    risk: "Wash the sleeve first, or it sheds lint. Overloading leaves a deep stipple.",
};
