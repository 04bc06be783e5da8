//! The setting of a piece: floor, wall, gaps and position.

use nalgebra::Isometry3;

/// The setting of a piece: floor, wall, gaps and position.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    /// Whether it stands on the floor: its lowest point then lies on it.
    pub has_floor: bool,
    /// Whether it stands against a wall: its rearmost point then touches it.
    pub has_wall: bool,
    /// Gaps between two parts that are narrower than this are closed, meters.
    pub closed_gap: f64,
    /// The position and rotation of the piece. Its own axes are those of the crate.
    pub at: Isometry3<f64>,
}

/// Gaps narrower than this do not open the inside of a piece to the room, meters: gaps around drawers, and joints that
/// have opened (common practice, no source).
pub(crate) const CLOSED_GAP: f64 = 0.006;

/// The widest measured gap around fronts that is still closed, meters: one sees past a wider one (common practice, no source).
const WIDEST_GAP: f64 = 0.012;

impl Default for Setting {
    fn default() -> Self {
        Setting {
            has_floor: true,
            has_wall: false,
            closed_gap: CLOSED_GAP,
            at: Isometry3::identity(),
        }
    }
}

impl Setting {
    /// On the floor, against a wall.
    pub(crate) fn against_wall() -> Self {
        Setting {
            has_wall: true,
            ..Setting::default()
        }
    }

    /// The same with gaps of this width around fronts, meters. Up to [`WIDEST_GAP`] they count as closed as well.
    pub(crate) fn with_gap(self, gap: f64) -> Self {
        // A measured gap is closed entirely, whatever the rounding.
        let closed_gap = if gap <= WIDEST_GAP {
            CLOSED_GAP.max(1.01 * gap)
        } else {
            CLOSED_GAP
        };
        Setting { closed_gap, ..self }
    }
}
