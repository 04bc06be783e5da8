//! The source of a length that nobody measured.

use units::Length;

use super::{Bay, FieldId, Furniture};

/// The source of a length that nobody measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StandIn {
    /// From the kind of the piece.
    Usual,
    /// It takes the rest of the room.
    Rest,
    /// It shares the rest of the room with others.
    SharedOut,
}

impl Furniture {
    /// The source of the length of a row or a bay while it is not measured; for anything else it is the usual length.
    pub fn stand_in(&self, id: FieldId) -> StandIn {
        let bays = |upper: bool| if upper { &self.upper } else { &self.bays };
        let (lengths, number): (Vec<Option<Length>>, usize) = match id {
            FieldId::RowHeight(place, row) => {
                let bay: Option<&Bay> = place
                    .bay
                    .checked_sub(1)
                    .and_then(|bay| bays(place.upper).get(bay));
                let rows = bay.iter().flat_map(|bay| &bay.rows);
                (rows.map(|row| row.height).collect(), row)
            }
            FieldId::BayWidth(place) => {
                let widths = bays(place.upper).iter().map(|bay| bay.width);
                (widths.collect(), place.bay)
            }
            _ => return StandIn::Usual,
        };
        let own = number.checked_sub(1).and_then(|at| *lengths.get(at)?);
        let open = lengths.iter().filter(|length| length.is_none()).count();
        match (own, open) {
            (Some(_), _) => StandIn::Usual,
            (None, 0 | 1) => StandIn::Rest,
            (None, _) => StandIn::SharedOut,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BayPlace, Kind, fields};

    #[test]
    fn rows_share_what_is_left_until_one_is_left() {
        let mut dresser = Furniture::usual(Kind::Dresser);
        for row in &mut dresser.bays[0].rows {
            row.height = None;
        }
        let place = BayPlace { upper: false, bay: 1 };
        let last = dresser.bays[0].rows.len();
        assert!(last > 1);
        assert_eq!(
            dresser.stand_in(FieldId::RowHeight(place, last)),
            StandIn::SharedOut
        );
        for row in &mut dresser.bays[0].rows[..last - 1] {
            row.height = Some(Length::inches(6.0));
        }
        assert_eq!(dresser.stand_in(FieldId::RowHeight(place, last)), StandIn::Rest);
        assert_eq!(dresser.stand_in(FieldId::RowHeight(place, 1)), StandIn::Usual);
        assert_eq!(dresser.stand_in(FieldId::BayWidth(place)), StandIn::Rest);
        assert_eq!(dresser.stand_in(fields::WIDTH.id()), StandIn::Usual);
    }
}
