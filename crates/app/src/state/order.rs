//! The order in which a piece is measured.

use geometry::{BayPlace, Construction, FieldId, LengthField};
use workshop::Piece;

/// Returns every measurement of a piece in order: overall sizes, bays and rows, more measurements, and the
/// maker's changes.
pub fn in_order(piece: &Piece) -> Vec<FieldId> {
    let furniture = piece.furniture();
    let (whole, finer): (Vec<_>, Vec<_>) = furniture
        .fields()
        .into_iter()
        .partition(|field| field.is_of_whole());
    let mut order: Vec<FieldId> = whole.into_iter().map(LengthField::id).collect();
    for upper in [true, false] {
        let bays = piece.bays_of(upper);
        for (i, bay) in bays.iter().enumerate() {
            let place = BayPlace { upper, bay: i + 1 };
            if bays.len() > 1 && has_free_bays(piece.kind.construction()) {
                order.push(FieldId::BayWidth(place));
            }
            order.extend((1..=bay.rows.len()).map(|row| FieldId::RowHeight(place, row)));
        }
    }
    order.extend(finer.into_iter().map(LengthField::id));
    for (change, of) in piece.changes.iter().enumerate() {
        let fields = of.fields();
        order.extend(fields.iter().map(|(item, field, _)| FieldId::Alteration {
            change,
            item: *item,
            key: field.key,
        }));
    }
    order
}

/// Returns true if the maker chooses the number and widths of the bays.
pub fn has_free_bays(construction: Construction) -> bool {
    matches!(construction, Construction::Case | Construction::TwoCases)
}
