//! The standard shapes of the trade, and their members.

use super::member::{First, Member};

/// A standard shape of the trade.
///
/// The ogee is the cyma recta of the books of architecture (hollow above, full below), the reversed ogee the cyma
/// reversa (full above, hollow below).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shape {
    /// A flat slope.
    Chamfer,
    /// A full quarter of an ellipse, flush with both faces.
    Roundover,
    /// A hollow quarter of an ellipse.
    Cove,
    /// A full quarter between two fillets.
    Ovolo,
    /// Full below, hollow above: cyma recta.
    Ogee,
    /// Hollow below, full above: cyma reversa.
    ReversedOgee,
    /// A right-angled step.
    Step,
    /// A bead below a cove.
    BeadAndCove,
    /// A full half round over the whole thickness.
    HalfRound,
}

impl Shape {
    /// Every shape, in the order in which they are offered.
    pub const ALL: [Self; 9] = [
        Shape::Chamfer,
        Shape::Roundover,
        Shape::Cove,
        Shape::Ovolo,
        Shape::Ogee,
        Shape::ReversedOgee,
        Shape::Step,
        Shape::BeadAndCove,
        Shape::HalfRound,
    ];

    /// The word for it in saved files.
    pub const fn key(self) -> &'static str {
        match self {
            Shape::Chamfer => "chamfer",
            Shape::Roundover => "roundover",
            Shape::Cove => "cove",
            Shape::Ovolo => "ovolo",
            Shape::Ogee => "ogee",
            Shape::ReversedOgee => "reversed-ogee",
            Shape::Step => "step",
            Shape::BeadAndCove => "bead-and-cove",
            Shape::HalfRound => "half-round",
        }
    }

    /// The word for it in the trade: the ogee is the cyma recta, the reversed ogee the cyma reversa.
    pub const fn label(self) -> &'static str {
        match self {
            Shape::Chamfer => "Chamfer",
            Shape::Roundover => "Round-over",
            Shape::Cove => "Cove",
            Shape::Ovolo => "Ovolo",
            Shape::Ogee => "Ogee",
            Shape::ReversedOgee => "Reversed ogee",
            Shape::Step => "Step",
            Shape::BeadAndCove => "Bead and cove",
            Shape::HalfRound => "Half round",
        }
    }

    /// The shape with this key.
    pub fn by_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|shape| shape.key() == key)
    }

    /// Where the shape begins within the stated edge, and its members, as on a worked edge.
    pub(super) fn members(self, width: f64, height: f64) -> (f64, Vec<Member>) {
        let straight = |inward, up| Member::Straight { inward, up };
        let quarter = |first| move |inward, up| Member::Quarter { inward, up, first };
        let (up_first, in_first) = (quarter(First::Up), quarter(First::In));
        let (half_width, half_height) = (width / 2.0, height / 2.0);
        let members = match self {
            Shape::Chamfer => vec![straight(width, height)],
            Shape::Roundover => vec![up_first(width, height)],
            Shape::Cove => vec![in_first(width, height)],
            Shape::Ovolo => vec![
                straight(width / 5.0, 0.0),
                up_first(0.8 * width, 0.8 * height),
                straight(0.0, height / 5.0),
            ],
            Shape::Ogee => vec![
                up_first(half_width, half_height),
                in_first(half_width, half_height),
            ],
            Shape::ReversedOgee => vec![
                in_first(half_width, half_height),
                up_first(half_width, half_height),
            ],
            Shape::Step => vec![straight(width, 0.0), straight(0.0, height)],
            Shape::BeadAndCove => vec![
                straight(half_width, 0.0),
                in_first(-half_width, height / 4.0),
                up_first(half_width, height / 4.0),
                in_first(half_width, half_height),
            ],
            Shape::HalfRound => vec![in_first(-width, half_height), up_first(width, half_height)],
        };
        let start = if self == Shape::HalfRound { width } else { 0.0 };
        (start, members)
    }
}
