//! Brushes.

use super::properties::{ALL_OF_IT, BY_HAND, Retention, Tool, ToolKind, micrometres};
use crate::material::FilmClass;
use crate::sourced_range::SourcedRange;

pub(super) const BRUSH: Tool = Tool {
    key: "brush",
    name: "Brush",
    kind: ToolKind::Brush,
    films: &[
        (FilmClass::Wash, micrometres(60.0, 120.0)),
        (FilmClass::Penetrating, micrometres(60.0, 110.0)),
        (FilmClass::Varnish, micrometres(65.0, 115.0)),
        (FilmClass::Paint, micrometres(75.0, 125.0)),
    ],
    transfer: BY_HAND,
    narrow_transfer: ALL_OF_IT,
    keeps: &[Retention {
        place: "bristles",
        litres: SourcedRange::practice(0.005, 0.015),
    }],
    minutes_per_square_metre: SourcedRange::practice(6.0, 12.0),
    minutes_per_metre_of_edge: SourcedRange::practice(0.4, 1.0),
    narrow_minutes: SourcedRange::practice(1.3, 2.0),
    minutes_to_clean: SourcedRange::practice(5.0, 15.0),
    texture: "Reaches every corner. Brush marks show in raking light.",
    risk: "Keep a wet edge, or you get lap marks. Watch for runs at edges.",
};

pub(super) const CHIP_BRUSH: Tool = Tool {
    key: "chip-brush",
    name: "Chip brush",
    kind: ToolKind::Brush,
    films: &[
        (FilmClass::Wash, micrometres(60.0, 130.0)),
        (FilmClass::Penetrating, micrometres(60.0, 120.0)),
        (FilmClass::Varnish, micrometres(60.0, 130.0)),
        (FilmClass::Paint, micrometres(75.0, 140.0)),
    ],
    transfer: BY_HAND,
    narrow_transfer: ALL_OF_IT,
    keeps: &[Retention {
        place: "bristles",
        litres: SourcedRange::practice(0.003, 0.010),
    }],
    minutes_per_square_metre: SourcedRange::practice(6.0, 13.0),
    minutes_per_metre_of_edge: SourcedRange::practice(0.5, 1.2),
    narrow_minutes: SourcedRange::practice(1.3, 2.0),
    minutes_to_clean: SourcedRange::practice(1.0, 3.0),
    texture: "Coarse brush marks. For primers, stains and cleaners. Throw it away after.",
    risk: "Sheds bristles. Pick them out while the coat is wet.",
};

pub(super) const OVAL_BRUSH: Tool = Tool {
    key: "oval-brush",
    name: "Oval brush",
    kind: ToolKind::Brush,
    films: &[
        (FilmClass::Penetrating, micrometres(60.0, 110.0)),
        (FilmClass::Varnish, micrometres(65.0, 120.0)),
        (FilmClass::Paint, micrometres(80.0, 130.0)),
        (FilmClass::Paste, micrometres(25.0, 60.0)),
    ],
    transfer: BY_HAND,
    narrow_transfer: ALL_OF_IT,
    keeps: &[Retention {
        place: "bristles",
        litres: SourcedRange::practice(0.010, 0.025),
    }],
    minutes_per_square_metre: SourcedRange::practice(5.0, 10.0),
    minutes_per_metre_of_edge: SourcedRange::practice(0.4, 1.0),
    narrow_minutes: SourcedRange::practice(1.2, 1.8),
    minutes_to_clean: SourcedRange::practice(8.0, 20.0),
    texture: "Soft brush marks. Works wax and flat paint into carvings.",
    risk: "Don't overload it. It drips on carvings and turned parts.",
};
