//! Rags and pads.

use super::properties::{ALL_OF_IT, BY_HAND, Retention, Tool, ToolKind, micrometres};
use crate::material::FilmClass;
use crate::sourced_range::SourcedRange;

pub(super) const PAD: Tool = Tool {
    key: "pad",
    name: "Rag or pad",
    kind: ToolKind::Pad,
    films: &[
        (FilmClass::Wash, micrometres(50.0, 100.0)),
        (FilmClass::Penetrating, micrometres(50.0, 100.0)),
        (FilmClass::Varnish, micrometres(15.0, 35.0)),
        (FilmClass::Paste, micrometres(25.0, 50.0)),
    ],
    transfer: BY_HAND,
    narrow_transfer: ALL_OF_IT,
    keeps: &[Retention {
        place: "cloth",
        litres: SourcedRange::practice(0.005, 0.020),
    }],
    minutes_per_square_metre: SourcedRange::practice(4.0, 8.0),
    minutes_per_metre_of_edge: SourcedRange::practice(0.2, 0.5),
    narrow_minutes: SourcedRange::practice(1.2, 1.8),
    minutes_to_clean: SourcedRange::practice(1.0, 4.0),
    texture: "No marks, and very thin coats. It takes several to build a film.",
    risk: "Oily rags can catch fire on their own. Dry them flat outdoors or soak them in water in a closed metal can.",
};
