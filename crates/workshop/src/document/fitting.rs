//! Pieces without the readings that do not fit.

use geometry::{FieldId, Problem};

use super::Piece;

/// Returns the piece without the readings that do not fit the others, so that it can be drawn while the maker
/// corrects them. If the rows or bays do not fit, all of their readings are removed. Returns `None` if the
/// problem is not a reading.
pub fn as_far_as_it_fits(piece: &Piece) -> Option<Piece> {
    let mut piece = piece.clone();
    // Each round removes at least one reading. A piece without readings fits now or never.
    loop {
        let Err(problems) = piece.furniture().assembly() else {
            return Some(piece);
        };
        let fields: Vec<FieldId> = problems.iter().filter_map(Problem::field).collect();
        let taken = fields.into_iter().filter(|field| piece.forget(*field)).count();
        if taken == 0 && !piece.forget_divisions() {
            return None;
        }
    }
}

impl Piece {
    /// Removes a reading of the whole piece. Returns true if there was one.
    fn forget(&mut self, field: FieldId) -> bool {
        match field {
            FieldId::Of(key) => self.readings.remove(key).is_some(),
            FieldId::RowHeight(place, row) => {
                let bay = self.bay_at(place);
                let row = bay.and_then(|bay| bay.rows.get_mut(row.checked_sub(1)?));
                row.is_some_and(|row| row.height.take().is_some())
            }
            FieldId::BayWidth(place) => self.bay_at(place).is_some_and(|bay| bay.width.take().is_some()),
            FieldId::Alteration { .. } => false,
        }
    }

    /// Removes all readings of rows and bays. Returns true if there were any.
    fn forget_divisions(&mut self) -> bool {
        let mut any = false;
        for bay in self.bays.iter_mut().chain(&mut self.upper) {
            any |= bay.width.take().is_some();
            for row in &mut bay.rows {
                any |= row.height.take().is_some();
            }
        }
        any
    }
}

#[cfg(test)]
mod tests {
    use geometry::{Kind, fields};
    use units::LengthUnit;

    use super::*;
    use crate::document::{PieceId, Reading};

    fn dresser() -> Piece {
        Piece::new(PieceId("a".into()), Kind::Dresser)
    }

    fn inches(text: &str) -> Reading {
        Reading::new(text, LengthUnit::Inch).unwrap()
    }

    #[test]
    fn what_does_not_fit_is_left_out() {
        let mut piece = dresser();
        piece.readings.insert("depth", inches("18"));
        assert_eq!(as_far_as_it_fits(&piece), Some(piece.clone()), "it fits as it is");
        piece.readings.insert("width", inches("0.5"));
        assert!(piece.furniture().assembly().is_err());
        let fits = as_far_as_it_fits(&piece).unwrap();
        assert!(fits.readings.get("width").is_none() && fits.readings.get("depth").is_some());
        assert_eq!(fields::WIDTH.id(), FieldId::Of("width"));
    }

    #[test]
    fn rows_that_are_too_high_are_shared_out() {
        let mut piece = dresser();
        for row in &mut piece.bays[0].rows {
            row.height = Some(inches("40"));
        }
        assert!(piece.furniture().assembly().is_err());
        let fits = as_far_as_it_fits(&piece).unwrap();
        assert!(fits.bays[0].rows.iter().any(|row| row.height.is_none()));
    }
}
