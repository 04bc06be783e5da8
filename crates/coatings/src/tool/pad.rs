//! Rags and pads.

use super::figures::{ALL_OF_IT, BY_HAND, Keeps, Tool, ToolKind, micrometres};
use crate::figure::Figure;
use crate::material::Body;

pub(super) const PAD: Tool = Tool {
    key: "pad",
    name: "Rag or pad",
    kind: ToolKind::Pad,
    films: &[
        (Body::Wash, micrometres(50.0, 100.0)),
        (Body::Penetrating, micrometres(50.0, 100.0)),
        (Body::Varnish, micrometres(15.0, 35.0)),
        (Body::Paste, micrometres(25.0, 50.0)),
    ],
    transfer: BY_HAND,
    narrow_transfer: ALL_OF_IT,
    keeps: &[Keeps {
        place: "cloth",
        litres: Figure::practice(0.005, 0.020),
    }],
    minutes_per_square_metre: Figure::practice(4.0, 8.0),
    minutes_per_metre_of_edge: Figure::practice(0.2, 0.5),
    narrow_minutes: Figure::practice(1.2, 1.8),
    minutes_to_clean: Figure::practice(1.0, 4.0),
    texture: "No marks and a very thin coat; several make a film.",
    risk: "Rags with oil heat up by themselves: dry them flat outdoors or drown them in a closed metal can.",
};
