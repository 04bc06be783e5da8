//! Labels of measurements, bays and rows, and their element ids.

use geometry::{BayPlace, Construction, FieldId, Kind, StandIn};
use units::Length;
use workshop::Piece;

/// Returns the label of a measurement: `Width`, `Row 2, height`, `Change 1: how far`.
pub fn field_label(kind: Kind, field: FieldId) -> String {
    let of_key = || Piece::field(field).map_or("", |field| field.label);
    match field {
        FieldId::Of(_) => of_key().into(),
        FieldId::RowHeight(place, row) => format!("{}row {row}, height", before(kind, place)),
        FieldId::BayWidth(place) => format!("{}, clear width", bay_label(kind, place)),
        FieldId::Alteration { change, .. } => {
            format!("Change {}: {}", change + 1, of_key().to_ascii_lowercase())
        }
    }
}

/// Says where to hold the tape.
pub fn where_to_hold(piece: &Piece, field: FieldId) -> &'static str {
    let Some(of) = Piece::field(field) else {
        return "";
    };
    match (piece.furniture().beyond_case(of) > Length::ZERO, of.key) {
        (true, "width") => "Overall, from end to end of the top",
        (true, _) => "Overall, front of the top to the wall",
        (false, _) => of.hint,
    }
}

/// Returns the label for a length that was not measured.
pub fn stand_in(of: StandIn) -> &'static str {
    match of {
        StandIn::Usual => "guess",
        StandIn::Rest => "rest",
        StandIn::SharedOut => "equal",
    }
}

/// Returns the prefix for the label of a row. Empty in the first bay.
fn before(kind: Kind, place: BayPlace) -> String {
    if place.upper || place.bay > 1 || kind.construction() == Construction::Pedestals {
        format!("{}, ", bay_label(kind, place))
    } else {
        String::new()
    }
}

/// Returns the label of a bay: `Column 2`, `Upper case, column 1`, `Left pedestal`.
pub fn bay_label(kind: Kind, place: BayPlace) -> String {
    match (kind.construction(), place.upper, place.bay) {
        (Construction::Pedestals, _, 1) => "Left pedestal".into(),
        (Construction::Pedestals, ..) => "Right pedestal".into(),
        (_, true, bay) => format!("Upper case, column {bay}"),
        (_, false, bay) => format!("Column {bay}"),
    }
}

/// Returns the prefix for element ids in a bay. It is empty in the first bay, `b2-` in the second and
/// `upper-b2-` above it.
pub fn place_prefix(place: BayPlace) -> String {
    let upper = if place.upper { "upper-" } else { "" };
    match place.bay {
        1 => upper.into(),
        bay => format!("{upper}b{bay}-"),
    }
}

/// Returns the element id of a field.
pub fn field_element(field: FieldId) -> String {
    match field {
        FieldId::Of(key) => format!("field-{key}"),
        FieldId::RowHeight(place, row) => format!("field-{}row-{row}", place_prefix(place)),
        FieldId::BayWidth(BayPlace { upper, bay }) => {
            format!("field-{}bay-{bay}", if upper { "upper-" } else { "" })
        }
        FieldId::Alteration { change, item: 0, key } => format!("field-change-{}-{key}", change + 1),
        FieldId::Alteration { change, item, key } => format!("field-change-{}-{item}-{key}", change + 1),
    }
}

/// Capitalizes the first letter.
pub fn sentence(mut text: String) -> String {
    if let Some(head) = text.get_mut(..1) {
        head.make_ascii_uppercase();
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    const SECOND_ABOVE: BayPlace = BayPlace { upper: true, bay: 2 };
    const FIRST: BayPlace = BayPlace { upper: false, bay: 1 };

    #[test]
    fn elements_are_named_by_what_they_measure() {
        let change = |item| FieldId::Alteration {
            change: 2,
            item,
            key: "part-width",
        };
        for (field, name) in [
            (geometry::fields::WIDTH.id(), "field-width"),
            (FieldId::RowHeight(FIRST, 3), "field-row-3"),
            (FieldId::RowHeight(SECOND_ABOVE, 1), "field-upper-b2-row-1"),
            (FieldId::BayWidth(FIRST), "field-bay-1"),
            (FieldId::BayWidth(SECOND_ABOVE), "field-upper-bay-2"),
            (change(0), "field-change-3-part-width"),
            (change(4), "field-change-3-4-part-width"),
        ] {
            assert_eq!(field_element(field), name);
        }
    }

    #[test]
    fn labels_say_where_a_field_is() {
        let row = |kind, place| field_label(kind, FieldId::RowHeight(place, 2));
        assert_eq!(row(Kind::Dresser, FIRST), "row 2, height");
        assert_eq!(
            row(Kind::Hutch, SECOND_ABOVE),
            "Upper case, column 2, row 2, height"
        );
        assert_eq!(row(Kind::PedestalDesk, FIRST), "Left pedestal, row 2, height");
        let width = FieldId::BayWidth(FIRST);
        assert_eq!(field_label(Kind::Sideboard, width), "Column 1, clear width");
    }
}
