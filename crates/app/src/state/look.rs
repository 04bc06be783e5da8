//! The view of the drawing.

use geometry::{FieldId, View};
use workshop::Piece;

/// A turning step, in radians.
const STEP: f64 = std::f64::consts::PI / 12.0;
/// The elevation of a turned view, in radians.
const TILT: f64 = 0.42;
/// The number of steps in a full turn.
const AROUND: i8 = 24;

/// The view of the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Look {
    /// The front true to scale, with the top and the right side receding.
    #[default]
    Cabinet,
    /// From the front.
    Front,
    /// From the right.
    Side,
    /// From the left.
    Left,
    /// From behind.
    Back,
    /// From above.
    Above,
    /// From slightly above, turned by a number of 15-degree steps from the front. Step 12 shows the back.
    Corner(i8),
}

impl Look {
    /// Returns the view for the geometry.
    pub fn view(self) -> View {
        match self {
            Look::Cabinet => View::Cabinet,
            Look::Front => View::Front,
            Look::Side => View::Side,
            Look::Left => View::Left,
            Look::Back => View::Turned {
                turn: std::f64::consts::PI,
                tilt: 0.0,
            },
            Look::Above => View::Top,
            Look::Corner(step) => View::Turned {
                turn: f64::from(step) * STEP,
                tilt: TILT,
            },
        }
    }

    /// Returns the view after turning the piece by a number of steps. A flat view becomes a turned one.
    pub fn turned(self, steps: i8) -> Look {
        let from = match self {
            Look::Corner(step) => step,
            Look::Side => AROUND / 4,
            Look::Left => -AROUND / 4,
            Look::Back => AROUND / 2,
            Look::Cabinet | Look::Front | Look::Above => 0,
        };
        let half = AROUND / 2;
        Look::Corner((from + steps % AROUND + half).rem_euclid(AROUND) - half)
    }

    /// Returns the first view that shows where a measurement is taken, starting with this one.
    pub fn at(self, piece: &Piece, field: FieldId) -> Look {
        let furniture = piece.furniture();
        let Ok(checked) = furniture.checked() else {
            return self;
        };
        let shows = |look: &Look| {
            let lines = match field {
                FieldId::RowHeight(place, _) => checked.dimensions_with_rows_of(look.view(), place),
                _ => checked.dimensions(look.view()),
            };
            lines.iter().any(|line| line.field == field)
        };
        let looks = [self, Look::Cabinet, Look::Front, Look::Side, Look::Above];
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
        assert_eq!(Look::Front.at(&piece, fields::DEPTH.id()), Look::Cabinet);
        assert_eq!(Look::Cabinet.at(&piece, fields::FRAME.id()), Look::Front);
        assert_eq!(Look::Above.at(&piece, fields::LEG_INSET.id()), Look::Above);
    }

    #[test]
    fn a_piece_turns_all_the_way_round() {
        assert_eq!(Look::Front.turned(2), Look::Corner(2));
        assert_eq!(Look::Side.turned(1), Look::Corner(7));
        assert_eq!(Look::Corner(11).turned(1), Look::Corner(-12));
        assert_eq!(Look::Corner(-12).turned(-1), Look::Corner(11));
        let round = (0..24).fold(Look::Corner(3), |look, _| look.turned(1));
        assert_eq!(round, Look::Corner(3));
        // From behind, the drawing shows the back, which is not visible from the front.
        assert_eq!(Look::Back.turned(0), Look::Corner(-12));
        let furniture = Piece::new(PieceId("a".into()), Kind::Dresser).furniture();
        let surfaces = furniture.assembly().unwrap().surfaces();
        let sees = |view| {
            let drawing = geometry::Drawing::of(&surfaces, view);
            let mut faces = drawing.faces.iter();
            faces.any(|face| face.surface.part.kind == geometry::PartKind::Back)
        };
        assert!(sees(Look::Back.view()) && sees(Look::Corner(-12).view()) && !sees(View::Front));
    }
}
