//! Edits of several surfaces at once, such as brushing over the faces of a drawing.

use geometry::Zone;

use super::EditError;
use crate::document::{Piece, SurfaceChoice};

/// What to do with the brushed surfaces.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BrushTo {
    /// They are not painted, whatever their zone.
    Left,
    /// They are painted, whatever their zone.
    Painted,
    /// They are painted if their zone is.
    WithZone,
    /// They move to the zone with this key and follow it.
    Zone(String),
    /// They return to their defaults.
    Usual,
}

impl Piece {
    /// Does the same to all of these surfaces, or to none if one of them fails.
    pub(super) fn brush(&mut self, surfaces: Vec<String>, to: &BrushTo) -> Result<(), EditError> {
        if let BrushTo::Zone(key) = to {
            self.check_zone(key)?;
        }
        for surface in surfaces {
            self.choose(surface, |choice| match to {
                BrushTo::Left => choice.painted = Some(false),
                BrushTo::Painted => choice.painted = Some(true),
                BrushTo::WithZone => choice.painted = None,
                BrushTo::Zone(key) => {
                    *choice = SurfaceChoice {
                        zone: Some(key.clone()),
                        painted: None,
                    }
                }
                BrushTo::Usual => *choice = SurfaceChoice::default(),
            });
        }
        Ok(())
    }

    /// # Errors
    /// If the piece has no zone with this key.
    pub(super) fn check_zone(&self, key: &str) -> Result<(), EditError> {
        if Zone::by_key(key).is_none() && !self.zones.contains_key(key) {
            return Err(EditError::Unknown("group"));
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Edit, PieceEdit, PieceId, Workshop};
    use geometry::Kind;
    use units::Area;

    fn brushed(workshop: &Workshop, surfaces: &[&str], to: BrushTo) -> Result<Workshop, EditError> {
        let surfaces = surfaces.iter().map(|name| (*name).to_owned()).collect();
        workshop.apply(Edit::Piece(PieceId("a".into()), PieceEdit::Brush(surfaces, to)))
    }

    fn painted(workshop: &Workshop) -> Area {
        let taken = crate::samples::takeoff(&workshop.pieces[0]);
        taken.unwrap().painted_each
    }

    const FACES: [&str; 2] = ["top/top", "top/front"];

    #[test]
    fn faces_that_are_brushed_over_change_together_and_come_back() {
        let add = Edit::Add {
            id: PieceId("a".into()),
            kind: Kind::Dresser,
        };
        let before = Workshop::default().apply(add).unwrap();
        let left = brushed(&before, &FACES, BrushTo::Left).unwrap();
        let taken = crate::samples::takeoff(&before.pieces[0]).unwrap();
        let faces = taken
            .surfaces
            .iter()
            .filter(|line| FACES.contains(&line.surface.id.to_string().as_str()));
        let area: Area = faces.map(|line| line.surface.net).sum();
        assert!(area > Area::ZERO);
        let gone = (painted(&before) - painted(&left) - area).as_square_metres();
        assert!(gone.abs() < 1e-12, "{gone}");
        assert_eq!(
            painted(&brushed(&left, &FACES, BrushTo::Painted).unwrap()),
            painted(&before)
        );
        assert_eq!(brushed(&left, &FACES, BrushTo::WithZone).unwrap(), before);
        assert_eq!(brushed(&left, &FACES, BrushTo::Usual).unwrap(), before);
        // A skipped surface that moves to a zone follows the zone.
        let apart = brushed(&left, &FACES[..1], BrushTo::Zone("inside".into())).unwrap();
        let choice = |name: &str| apart.pieces[0].choices.get(name).cloned();
        assert_eq!(choice(FACES[0]).unwrap().painted, None);
        assert_eq!(choice(FACES[1]).unwrap().painted, Some(false));
    }

    #[test]
    fn an_unknown_zone_changes_nothing() {
        let add = Edit::Add {
            id: PieceId("a".into()),
            kind: Kind::Dresser,
        };
        let workshop = Workshop::default().apply(add).unwrap();
        let error = brushed(&workshop, &FACES, BrushTo::Zone("accent".into()));
        assert_eq!(error, Err(EditError::Unknown("group")));
        assert_eq!(brushed(&workshop, &[], BrushTo::Left).unwrap(), workshop);
    }
}
