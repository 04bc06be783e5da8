//! The entries of a piece that have ids: bays, rows, changes, layers.

use super::{Bay, EntryId, Piece, Scheme};

impl Piece {
    /// Gives an id to each entry that has none, or has that of another entry, such as a copy.
    pub(crate) fn give_ids(&mut self) {
        let is_usable = |id: u64| (1..=EntryId::MOST).contains(&id);
        let given = self.entries().chain([self.last_id]).map(|id| id.0);
        let mut last = given.filter(|id| is_usable(*id)).max().unwrap_or(0);
        let mut known: Vec<u64> = Vec::new();
        self.each_entry(|id| {
            if !is_usable(id.0) || known.contains(&id.0) {
                last += 1;
                id.0 = last;
            }
            known.push(id.0);
        });
        self.last_id = EntryId(last);
    }

    /// Returns the piece with new ids, for a copy.
    #[must_use]
    pub fn with_new_ids(mut self) -> Self {
        self.each_entry(|id| *id = EntryId::default());
        self.last_id = EntryId::default();
        self.give_ids();
        self
    }

    fn each_entry(&mut self, mut of: impl FnMut(&mut EntryId)) {
        let bays = self.bays.iter_mut().chain(&mut self.upper);
        for Bay { id, rows, .. } in bays {
            of(id);
            rows.iter_mut().for_each(|row| of(&mut row.id));
        }
        self.changes.iter_mut().for_each(|change| of(&mut change.id));
        let of_zones = self.zones.values_mut().filter_map(|zone| zone.scheme.as_mut());
        for Scheme { layers, .. } in std::iter::once(&mut self.scheme).chain(of_zones) {
            layers.iter_mut().for_each(|layer| of(&mut layer.id));
        }
    }

    /// Returns the ids of all entries: bays with their rows, changes, layers.
    pub(crate) fn entries(&self) -> impl Iterator<Item = EntryId> {
        let bays = self.bays.iter().chain(&self.upper);
        let bays = bays.flat_map(|bay| std::iter::once(bay.id).chain(bay.rows.iter().map(|row| row.id)));
        let changes = self.changes.iter().map(|change| change.id);
        let layers = self.schemes().flat_map(|scheme| &scheme.layers);
        bays.chain(changes).chain(layers.map(|layer| layer.id))
    }
}

#[cfg(test)]
mod tests {
    use crate::{Case, ChangeKind, Edit, Piece, PieceChange, PieceEdit, PieceId, SchemeEdit, Workshop};
    use geometry::{BayPlace, Kind};

    fn ids(piece: &Piece) -> Vec<u64> {
        piece.entries().map(|id| id.0).collect()
    }

    fn id() -> PieceId {
        PieceId("a".into())
    }

    fn begun() -> Workshop {
        let add = Edit::Add {
            id: id(),
            kind: Kind::Dresser,
        };
        Workshop::default().apply(add).unwrap()
    }

    fn edited(workshop: &Workshop, edit: PieceEdit) -> Workshop {
        workshop.apply(Edit::Piece(id(), edit)).unwrap()
    }

    #[test]
    fn an_entry_keeps_its_id_and_no_other_gets_it() {
        let bay = BayPlace { upper: false, bay: 1 };
        let rows = |workshop: &Workshop| -> Vec<u64> {
            let rows = workshop.pieces[0].bays[0].rows.iter();
            rows.map(|row| row.id.0).collect()
        };
        let begun = begun();
        let [first, second, third] = rows(&begun).try_into().unwrap();
        let repeated = edited(&begun, PieceEdit::RepeatRow { bay, row: 1 });
        let fresh = rows(&repeated)[1];
        assert_eq!(rows(&repeated), [first, fresh, second, third]);
        let fewer = edited(&repeated, PieceEdit::RemoveRow { bay, row: 2 });
        let again = edited(&fewer, PieceEdit::RepeatRow { bay, row: 3 });
        let newest = rows(&again)[3];
        assert_eq!(rows(&again), [first, second, third, newest]);
        assert!(newest > fresh, "an id is not given twice");
    }

    #[test]
    fn every_entry_has_an_id_of_its_own_after_every_edit() {
        let remove = |part: &str| PieceChange::new(ChangeKind::Remove { part: part.into() });
        let edits = [
            PieceEdit::Bays {
                case: Case::Lower,
                count: 3,
            },
            PieceEdit::AddChange(remove("back")),
            PieceEdit::AddChange(remove("top")),
            PieceEdit::Apart {
                zone: "top".into(),
                apart: true,
            },
            PieceEdit::Finish(Some("top".into()), SchemeEdit::Add("degreaser".into())),
        ];
        let mut workshop = begun();
        for edit in edits {
            workshop = edited(&workshop, edit);
            let mut ids = ids(&workshop.pieces[0]);
            let all = ids.len();
            ids.sort_unstable();
            ids.dedup();
            assert!(ids[0] > 0 && ids.len() == all, "{ids:?}");
        }
        let saved = crate::format::load(&crate::format::save(&workshop))
            .unwrap()
            .workshop;
        assert_eq!(ids(&saved.pieces[0]), ids(&workshop.pieces[0]));
        // The layers of another piece have ids that are taken here.
        let other = Edit::Add {
            id: PieceId("b".into()),
            kind: Kind::Nightstand,
        };
        let copy = Edit::CopyFinish {
            from: PieceId("b".into()),
            to: id(),
        };
        let both = workshop.apply(other).unwrap().apply(copy).unwrap();
        let mut ids = ids(&both.pieces[0]);
        let all = ids.len();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), all);
    }

    #[test]
    fn an_id_that_is_too_large_is_given_anew() {
        let text = r#"{"kind": "coatwright-workshop", "version": 3, "pieces": [{"id": "a", "furniture": "dresser",
            "ids": 18446744073709551615, "bays": [{"id": 18446744073709551615, "rows": [{"id": 7}, {"id": 7}]}]}]}"#;
        let piece = crate::format::load(text).unwrap().workshop.pieces[0].clone();
        assert_eq!(ids(&piece)[..3], [8, 7, 9]);
    }

    #[test]
    fn two_pages_number_the_entries_of_an_old_file_alike() {
        let text = r#"{"kind": "coatwright-workshop", "version": 3, "pieces": [{"id": "a", "furniture": "dresser",
            "bays": [{"rows": [{"columns": 2}, {"columns": 1}]}]}]}"#;
        let [one, other] = [(); 2].map(|()| crate::format::load(text).unwrap().workshop);
        assert_eq!(ids(&one.pieces[0]), ids(&other.pieces[0]));
        assert_eq!(ids(&one.pieces[0])[..3], [1, 2, 3]);
    }
}
