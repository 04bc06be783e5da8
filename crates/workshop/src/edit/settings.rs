//! Edits of the settings of the workshop.

use coatings::Condition;
use units::Inches;

use super::EditError;
use crate::document::{Confidence, Currency, PieceId, Scheme, Workshop};

/// A change to the settings of the workshop.
#[derive(Clone, Debug, PartialEq)]
pub enum SettingEdit {
    /// Sets how sure a can must be to count as enough.
    Confidence(Confidence),
    /// Sets how inches are shown.
    Inches(Inches),
    /// Sets the currency of all prices, or clears it.
    Currency(Option<Currency>),
    /// Sets the default finish for new pieces: that of this piece, or the usual one.
    FinishOf(Option<PieceId>),
}

impl Workshop {
    pub(super) fn set(&mut self, edit: SettingEdit) -> Result<(), EditError> {
        match edit {
            SettingEdit::Confidence(confidence) => self.settings.confidence = confidence,
            SettingEdit::Inches(inches) => self.settings.inches = inches,
            SettingEdit::Currency(currency) => self.settings.currency = currency,
            SettingEdit::FinishOf(None) => self.settings.finish = None,
            SettingEdit::FinishOf(Some(id)) => {
                let piece = self.piece(&id).ok_or(EditError::NoSuchPiece)?;
                self.settings.finish = Some(usual_of(&piece.scheme));
            }
        }
        Ok(())
    }
}

/// Returns the part of a scheme that applies to new pieces. The condition of this surface does not.
fn usual_of(scheme: &Scheme) -> Scheme {
    Scheme {
        condition: Condition::default(),
        ..scheme.clone()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Edit, HaveEdit, Piece, PieceEdit, SchemeEdit};
    use coatings::Substrate;
    use geometry::Kind;
    use std::rc::Rc;

    fn id(name: &str) -> PieceId {
        PieceId(name.into())
    }

    fn add(name: &str) -> Edit {
        Edit::Add {
            id: id(name),
            kind: Kind::Nightstand,
        }
    }

    fn finish(edit: SchemeEdit) -> Edit {
        Edit::Piece(id("a"), PieceEdit::Finish(None, edit))
    }

    fn done(workshop: Workshop, edits: impl IntoIterator<Item = Edit>) -> Workshop {
        edits
            .into_iter()
            .fold(workshop, |workshop, edit| workshop.apply(edit).unwrap())
    }

    #[test]
    fn a_new_piece_begins_with_the_finish_of_the_maker() {
        let own: Rc<str> = "own-1".into();
        let workshop = done(
            Workshop::default(),
            [
                add("a"),
                finish(SchemeEdit::Substrate(Substrate::Bare)),
                finish(SchemeEdit::Coats(2, 3)),
                finish(SchemeEdit::Tool(2, "foam-roller")),
                Edit::AddMaterial(own.clone(), "water-polyurethane".into()),
                finish(SchemeEdit::Material(3, own.clone())),
                Edit::Settings(SettingEdit::FinishOf(Some(id("a")))),
                add("b"),
            ],
        );
        let new = &workshop.pieces[1].scheme;
        assert_eq!((new.layers[2].tool, new.layers[2].coats), ("foam-roller", 3));
        assert_eq!(new.condition, Condition::default());
        assert_eq!(new.layers[3].material, own);
        // A deleted material is not planned for new pieces either.
        let without = done(workshop.clone(), [Edit::RemoveMaterial(own), add("c")]);
        assert_eq!(
            &*without.pieces[2].scheme.layers[3].material,
            "water-polyurethane"
        );
        let back = done(workshop, [Edit::Settings(SettingEdit::FinishOf(None)), add("c")]);
        assert_eq!(
            back.pieces[2].scheme,
            Piece::new(id("c"), Kind::Nightstand).scheme
        );
        let missing = back.apply(Edit::Settings(SettingEdit::FinishOf(Some(id("z")))));
        assert_eq!(missing, Err(EditError::NoSuchPiece));
    }

    #[test]
    fn who_wants_to_be_surer_buys_no_less() {
        let workshop = done(Workshop::default(), [add("a")]);
        let have = workshop.pieces[0].scheme.layers.iter().map(|layer| {
            let material = coatings::material(&layer.material).unwrap();
            let colour = material.coloured.then_some(workshop.pieces[0].scheme.colour.0);
            Edit::Have {
                piece: id("a"),
                material: layer.material.clone(),
                colour,
                edit: HaveEdit::Can(Some("us-4-fl-oz")),
            }
        });
        let with_cans = done(workshop.clone(), have.collect::<Vec<_>>());
        let of = |confidence| {
            let workshop = done(
                workshop.clone(),
                [Edit::Settings(SettingEdit::Confidence(confidence))],
            );
            let taken = crate::takeoff(&workshop, &workshop.pieces[0], &[]).unwrap();
            let needs = taken.materials.iter().map(|line| {
                let buy = crate::takeoff::cans_to_buy(&workshop, line).unwrap();
                buy.need.as_litres()
            });
            let together = crate::takeoff::shopping(&workshop, &crate::samples::takeoffs(&workshop))[0]
                .buy
                .clone()
                .unwrap()
                .need;
            let surer = Edit::Settings(SettingEdit::Confidence(confidence));
            let with_cans = done(with_cans.clone(), [surer]);
            let with_cans = crate::samples::takeoff_in(&with_cans, &with_cans.pieces[0]).unwrap();
            let lines = with_cans.materials.iter();
            let (coats, besides): (Vec<u32>, Vec<f64>) = lines
                .map(|line| line.on_hand.as_ref().unwrap())
                .map(|hand| (hand.enough.most_coats, hand.enough.extra_needed.as_litres()))
                .unzip();
            (needs.sum::<f64>(), together, coats, besides.iter().sum::<f64>())
        };
        let all = Confidence::ALL.map(of);
        for pair in all.windows(2) {
            assert!(pair[0].0 < pair[1].0, "{pair:?}");
            assert!(pair[0].1 < pair[1].1, "{pair:?}");
            assert!(pair[0].2 >= pair[1].2, "{pair:?}");
            assert!(pair[0].3 < pair[1].3, "{pair:?}");
        }
    }

    #[test]
    fn settings_of_another_workshop_do_not_come_with_its_pieces() {
        let euro = Currency::new("EUR").unwrap();
        let other = done(
            Workshop::default(),
            [
                add("a"),
                Edit::Settings(SettingEdit::Currency(Some(euro))),
                Edit::Settings(SettingEdit::Inches(Inches::Decimals)),
            ],
        );
        assert_eq!(other.settings.currency, Some(euro));
        let dollar = Currency::new("USD").unwrap();
        let ours = Edit::Settings(SettingEdit::Currency(Some(dollar)));
        let ours = done(Workshop::default(), [ours]);
        let both = done(ours.clone(), [Edit::Gather(other.clone())]);
        assert_eq!((both.pieces.len(), &both.settings), (1, &ours.settings));
        let replaced = done(Workshop::default(), [Edit::Replace(other.clone())]);
        assert_eq!(replaced.settings, other.settings);
        let none = done(other, [Edit::Settings(SettingEdit::Currency(None))]);
        assert_eq!(none.settings.currency, None);
    }
}
