//! From where the drawing looks.

use geometry::{FieldId, View};
use workshop::Piece;

/// A step of turning, radians.
const STEP: f64 = std::f64::consts::PI / 12.0;
/// How far from above a turned view looks, radians.
const TILT: f64 = 0.42;
/// The most steps to either side; further round one would look at the back.
const MOST: i8 = 5;

/// From where the drawing looks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Look {
    /// From the front.
    #[default]
    Front,
    /// From the right.
    Side,
    /// From the left.
    Left,
    /// From above.
    Above,
    /// From the front corner, a number of steps around; a step is 15 degrees.
    Corner(i8),
}

impl Look {
    /// The view of the piece.
    pub fn view(self) -> View {
        match self {
            Look::Front => View::Front,
            Look::Side => View::Side,
            Look::Left => View::Left,
            Look::Above => View::Top,
            Look::Corner(step) => View::Turned {
                turn: f64::from(step) * STEP,
                tilt: TILT,
            },
        }
    }

    /// The view after the piece was turned by some steps; a flat view becomes a turned one.
    pub fn turned(self, steps: i8) -> Look {
        let from = match self {
            Look::Corner(step) => step,
            Look::Side => MOST,
            Look::Left => -MOST,
            Look::Front | Look::Above => 0,
        };
        Look::Corner(from.saturating_add(steps).clamp(-MOST, MOST))
    }

    /// Whether the piece can be turned no further to this side.
    pub fn is_at_end(self, steps: i8) -> bool {
        matches!(self, Look::Corner(_)) && self.turned(steps) == self
    }

    /// The look that shows where a measurement is taken: this one if it does, or else the first that does.
    pub fn at(self, piece: &Piece, field: FieldId) -> Look {
        let furniture = piece.furniture();
        let shows = |look: &Look| {
            let lines = furniture.dimensions(look.view()).unwrap_or_default();
            lines.iter().any(|line| line.field == field)
        };
        let looks = [self, Look::Front, Look::Side, Look::Above];
        looks.into_iter().find(shows).unwrap_or(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::{Kind, fields};
    use workshop::PieceId;

    #[test]
    fn a_measurement_is_looked_at_from_where_it_is_taken() {
        let piece = Piece::new(PieceId("a".into()), Kind::Dresser);
        assert_eq!(Look::Front.at(&piece, fields::WIDTH.id()), Look::Front);
        assert_eq!(Look::Front.at(&piece, fields::DEPTH.id()), Look::Side);
        assert_eq!(Look::Above.at(&piece, fields::LEG_INSET.id()), Look::Above);
    }

    #[test]
    fn a_piece_turns_as_far_as_its_front_is_seen() {
        assert_eq!(Look::Front.turned(2), Look::Corner(2));
        assert_eq!(Look::Corner(4).turned(3), Look::Corner(5));
        assert!(Look::Corner(5).is_at_end(1) && !Look::Corner(5).is_at_end(-1));
        assert!(!Look::Front.is_at_end(1));
    }
}
