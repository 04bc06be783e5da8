//! Boards that can be resized, and their current size.

use geometry::{Along, Alteration};
use units::{Length, System, show_length};
use workshop::{ChangeKind, Piece, PieceChange, Reading};

/// The directions in which a board can be resized, each with its element suffix and its word.
pub const ALONG: [(Along, &str, &str); 3] = [
    (Along::Width, "width", "Width"),
    (Along::Depth, "depth", "Depth"),
    (Along::Height, "height", "Height"),
];

/// Returns the width, depth and height of a part, if it is a plain board that can be resized.
pub fn size(piece: &Piece, part: &str) -> Option<[Length; 3]> {
    let mut furniture = piece.furniture();
    let assembly = furniture.assembly().ok()?;
    let found = assembly.parts.iter().find(|other| other.id.to_string() == part)?;
    let (low, high) = found.bounds();
    furniture.changes.push(Alteration::Resize {
        part: part.to_owned(),
        along: Along::Width,
        to: Length::millimetres(100.0),
    });
    let size = [0, 1, 2].map(|axis| Length::metres(high[axis] - low[axis]));
    furniture.assembly().is_ok().then_some(size)
}

/// Returns a change that resizes a board, starting with its current size.
pub fn resize(part: &str, along: Along, present: Length, system: System) -> PieceChange {
    let mut change = PieceChange::new(ChangeKind::Resize {
        part: part.to_owned(),
        along,
    });
    let shown = show_length(present, system);
    let typed = shown.trim_end_matches(char::is_alphabetic);
    let reading = Reading::new(typed, system.tape_unit()).ok();
    let field = change.fields().first().map(|(item, field, _)| (*item, field.key));
    change.readings.extend(field.zip(reading));
    change
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::{Kind, fields};
    use workshop::PieceId;

    fn piece(kind: Kind) -> Piece {
        Piece::new(PieceId("a".into()), kind)
    }

    #[test]
    fn a_board_has_its_size_and_a_turned_leg_none() {
        let [width, depth, height] = size(&piece(Kind::Dresser), "left-side").unwrap();
        assert_eq!(
            [width, depth].map(|length| show_length(length, System::UsCustomary)),
            ["3/4 in", "18 in"]
        );
        assert!(height.as_inches() > 20.0);
        assert_eq!(size(&piece(Kind::BlanketBox), "leg-1"), None);
        assert_eq!(size(&piece(Kind::Dresser), "leg-1"), None);
    }

    #[test]
    fn a_new_size_begins_with_the_present_one() {
        let change = resize(
            "left-side",
            Along::Height,
            Length::inches(27.125),
            System::UsCustomary,
        );
        let reading = change.reading(0, fields::PART_HEIGHT.key).unwrap();
        assert_eq!(
            (reading.typed(), reading.length()),
            ("27 1/8", Length::inches(27.125))
        );
        let metric = resize(
            "left-side",
            Along::Width,
            Length::millimetres(19.2),
            System::Metric,
        );
        assert_eq!(metric.reading(0, fields::PART_WIDTH.key).unwrap().typed(), "19");
    }
}
