//! A row of fronts in the piece.

use geometry::{BayPlace, FieldId, PartId, PartKind};
use workshop::Piece;

/// A row of a bay, counted from 1 at the top.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RowPlace {
    /// The bay.
    pub bay: BayPlace,
    /// The row.
    pub row: usize,
}

impl RowPlace {
    /// Returns the row whose opening a part fills, or `None` for a part of something else.
    pub fn of(piece: &Piece, part: PartId) -> Option<RowPlace> {
        let is_in_row = matches!(part.kind.zone(), geometry::Zone::Fronts | geometry::Zone::Inside)
            || part.kind == PartKind::Shelf;
        let bay = BayPlace {
            upper: part.upper,
            bay: usize::from(part.bay),
        };
        let row = usize::from(part.row);
        let has_row = piece
            .bay(bay)
            .is_some_and(|bay| (1..=bay.rows.len()).contains(&row));
        (is_in_row && has_row).then_some(RowPlace { bay, row })
    }

    /// Returns the measurement of its height.
    pub fn height(self) -> FieldId {
        FieldId::RowHeight(self.bay, self.row)
    }
}
