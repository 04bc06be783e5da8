//! The edit that copies the finish of one piece to another.

use geometry::Zone;

use crate::document::{Piece, Scheme};

impl Piece {
    /// Copies the finish of another piece: materials, coats, tools, cans and color, for each zone that both
    /// have. The condition of each surface stays, because it is observed and not chosen.
    pub(super) fn finish_like(&mut self, other: &Piece) {
        let alike = |scheme: &Scheme, here: &Scheme| Scheme {
            condition: here.condition,
            ..scheme.clone()
        };
        let has = self.usual_zones();
        for zone in Zone::ALL {
            let key = zone.key();
            let apart = other.zones.get(key).and_then(|zone| zone.scheme.as_ref());
            let apart = apart.filter(|_| has.contains(&zone));
            let scheme = apart.map(|scheme| alike(scheme, self.scheme_of(key)));
            let mut choice = self.zones.remove(key).unwrap_or_default();
            choice.scheme = scheme;
            if choice != Default::default() {
                self.zones.insert(key.into(), choice);
            }
        }
        let here = self.scheme.clone();
        let own = other.zones.iter().filter(|(key, _)| Zone::by_key(key).is_none());
        for (key, zone) in own {
            // Keys of added zones are numbered within a piece, so only the name tells if it is the same zone.
            if let Some(same) = self.zones.get_mut(key).filter(|same| same.name == zone.name) {
                let before = same.scheme.as_ref().unwrap_or(&here);
                same.scheme = zone.scheme.as_ref().map(|scheme| alike(scheme, before));
            }
        }
        self.scheme = alike(&other.scheme, &here);
    }

    /// Returns the built-in zones that have a surface on this piece, or all of them if its measurements do
    /// not fit.
    fn usual_zones(&self) -> Vec<Zone> {
        let Ok(assembly) = self.furniture().assembly() else {
            return Zone::ALL.to_vec();
        };
        let surfaces = assembly.surfaces();
        let zones = surfaces
            .iter()
            .filter(|surface| surface.takes_finish())
            .map(|surface| {
                let choice = self.choices.get(&surface.id.to_string());
                match choice.and_then(|choice| choice.zone.as_deref()) {
                    Some(key) => Zone::by_key(key),
                    None => Some(surface.usual_zone(self.styles.stand)),
                }
            });
        let mut known: Vec<Zone> = Vec::new();
        for zone in zones.flatten() {
            if !known.contains(&zone) {
                known.push(zone);
            }
        }
        known
    }
}

#[cfg(test)]
mod tests {
    use crate::document::{Colour, Piece};
    use crate::{Edit, EditError, PieceEdit, PieceId, SchemeEdit, Workshop};
    use coatings::Substrate;
    use geometry::Kind;

    fn id(name: &str) -> PieceId {
        PieceId(name.into())
    }

    fn edited(name: &str, edits: impl IntoIterator<Item = PieceEdit>, workshop: Workshop) -> Workshop {
        let edits = edits.into_iter().map(|edit| Edit::Piece(id(name), edit));
        edits.fold(workshop, |workshop, edit| workshop.apply(edit).unwrap())
    }

    fn colour(zone: Option<&str>, colour: Colour) -> PieceEdit {
        PieceEdit::Finish(zone.map(Into::into), SchemeEdit::Colour(colour))
    }

    const RED: Colour = Colour([200, 0, 0]);
    const BLUE: Colour = Colour([0, 0, 200]);

    /// Returns a hutch with settings of its own in many places, and a headboard.
    fn two() -> Workshop {
        let add = |name, kind| Edit::Add { id: id(name), kind };
        let both = Workshop::default().apply(add("a", Kind::Hutch)).unwrap();
        let both = both.apply(add("b", Kind::Headboard)).unwrap();
        let own = |name: &str| {
            let name = PieceEdit::NameZone {
                zone: "own-1".into(),
                name: name.into(),
            };
            [
                name,
                PieceEdit::Apart {
                    zone: "own-1".into(),
                    apart: true,
                },
            ]
        };
        let both = edited("a", own("Stripes"), both);
        edited(
            "a",
            [
                colour(None, RED),
                PieceEdit::Finish(None, SchemeEdit::Substrate(Substrate::Bare)),
                PieceEdit::Finish(None, SchemeEdit::Coats(1, 4)),
                PieceEdit::Apart {
                    zone: "body".into(),
                    apart: true,
                },
                colour(Some("body"), BLUE),
                PieceEdit::Apart {
                    zone: "inside".into(),
                    apart: true,
                },
                colour(Some("own-1"), BLUE),
            ],
            both,
        )
    }

    fn copied(workshop: &Workshop) -> Piece {
        let edit = Edit::CopyFinish {
            from: id("a"),
            to: id("b"),
        };
        (*workshop.apply(edit).unwrap().pieces[1]).clone()
    }

    #[test]
    fn what_is_put_on_is_copied_and_what_the_surface_is_like_stays() {
        let ground = PieceEdit::Finish(None, SchemeEdit::Substrate(Substrate::Glossy));
        let workshop = edited("b", [ground], two());
        let piece = copied(&workshop);
        assert_eq!((piece.scheme.colour, piece.scheme.layers[1].coats), (RED, 4));
        assert_eq!(piece.scheme.condition.substrate, Substrate::Glossy);
        assert_eq!(piece.scheme_of("body").colour, BLUE);
        assert_eq!(piece.scheme_of("body").condition.substrate, Substrate::Glossy);
        // A headboard has no inside, and no stripes.
        assert_eq!(piece.zones.keys().collect::<Vec<_>>(), ["body"]);
        assert_eq!(piece.readings, workshop.pieces[1].readings);
    }

    #[test]
    fn a_zone_of_ones_own_is_the_same_by_its_name() {
        let named = |name: &str| PieceEdit::NameZone {
            zone: "own-1".into(),
            name: name.into(),
        };
        let same = edited("b", [named("Stripes")], two());
        assert_eq!(copied(&same).scheme_of("own-1").colour, BLUE);
        let other = edited("b", [named("Legs")], two());
        assert_eq!(copied(&other).zones["own-1"].scheme, None);
    }

    #[test]
    fn a_zone_that_is_not_apart_there_goes_with_the_piece_here() {
        let apart = [
            PieceEdit::Apart {
                zone: "base".into(),
                apart: true,
            },
            PieceEdit::ZonePainted {
                zone: "base".into(),
                painted: Some(false),
            },
        ];
        let piece = copied(&edited("b", apart, two()));
        assert_eq!(piece.zones["base"].scheme, None);
        assert_eq!(piece.zones["base"].painted, Some(false));
    }

    #[test]
    fn both_pieces_must_be_there() {
        let copy = |from, to| {
            two().apply(Edit::CopyFinish {
                from: id(from),
                to: id(to),
            })
        };
        assert_eq!(copy("z", "b"), Err(EditError::NoSuchPiece));
        assert_eq!(copy("a", "z"), Err(EditError::NoSuchPiece));
        assert_eq!(copy("a", "a").unwrap(), two());
    }
}
