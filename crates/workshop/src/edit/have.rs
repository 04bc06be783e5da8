//! Cans on hand, entered with a piece and kept on the shelf.

use std::rc::Rc;

use coatings::Rgb;

use super::EditError;
use crate::book::{Line, Record, ShelfCan, book};
use crate::document::{Colour, Piece, PieceId, Workshop, generic, material_of};
use crate::stock::{OldCan, Stock, stock};

/// What is on hand of a material for a piece.
#[derive(Clone, Debug, PartialEq)]
pub enum HaveEdit {
    /// One can of this size, by its key. `None` removes it.
    Can(Option<&'static str>),
    /// How full the can looks, by the key of the level. `None` is full. It replaces a weight.
    Level(Option<&'static str>),
}

impl Workshop {
    /// Changes what the shelf has of a material in a color, as entered with a piece. Of several cans, only
    /// the first changes.
    pub(super) fn have(
        &mut self,
        piece: &PieceId,
        material: &str,
        colour: Option<Rgb>,
        edit: HaveEdit,
    ) -> Result<(), EditError> {
        let known = material_of(&self.materials, material).ok_or(EditError::Unknown("material"))?;
        self.piece(piece).ok_or(EditError::NoSuchPiece)?;
        let colour = colour.filter(|_| known.coloured);
        // A can with unknown contents counts for no piece, so nobody sees it there.
        let is_it = |stock: &Stock| {
            *stock.material.key == *material && stock.colour == colour && stock.contents.is_ok()
        };
        let alike: Vec<Rc<str>> = stock(self)
            .into_iter()
            .filter(is_it)
            .map(|stock| stock.id)
            .collect();
        match (edit, alike.first()) {
            (HaveEdit::Can(None), _) => {
                self.books
                    .strike_all(ShelfCan::BOOK, |id| alike.iter().any(|known| **known == *id));
            }
            (HaveEdit::Can(Some(key)), first) => {
                coatings::can(key).ok_or(EditError::Unknown("can size"))?;
                match first {
                    // The weight was that of another can.
                    Some(id) => self.shelf_line(id, &[("can", key), ("weight", ""), ("tare", "")])?,
                    None => self.put_on_shelf(piece, material, key, None)?,
                }
            }
            (HaveEdit::Level(_), None) => return Err(EditError::Unknown("can")),
            (HaveEdit::Level(key), Some(id)) => {
                let level = key.unwrap_or_default();
                if key.is_some() {
                    coatings::can::level(level).ok_or(EditError::Unknown("level"))?;
                }
                self.shelf_line(id, &[("level", level), ("weight", ""), ("tare", "")])?;
            }
        }
        Ok(())
    }

    /// Adds a can for a piece to the shelf. It follows the color of the piece.
    fn put_on_shelf(
        &mut self,
        piece: &PieceId,
        material: &str,
        can: &str,
        level: Option<&str>,
    ) -> Result<(), EditError> {
        let base = format!("{}-{material}", piece.0);
        let is_free = |id: &String| self.books.line(ShelfCan::BOOK, id).is_none();
        let ids = std::iter::once(base.clone()).chain((2..).map(|number| format!("{base}-{number}")));
        let id = ids.into_iter().find(is_free).unwrap_or(base);
        let mut line = Line::new(id.into());
        let values = [("material", material), ("can", can), ("of", &piece.0)];
        for (key, text) in values.into_iter().chain(level.map(|level| ("level", level))) {
            line.values.insert(key.into(), text.into());
        }
        let shelf = book(ShelfCan::BOOK).ok_or(EditError::Unknown("book"))?;
        self.books.add(shelf, line)
    }

    /// Sets values of a shelf line. An empty text clears the value.
    fn shelf_line(&mut self, id: &str, values: &[(&str, &str)]) -> Result<(), EditError> {
        let line = self
            .books
            .line(ShelfCan::BOOK, id)
            .ok_or(EditError::Unknown("line"))?;
        let mut line = (**line).clone();
        for (key, text) in values {
            line.meant.remove(*key);
            match text.is_empty() {
                true => line.values.remove(*key),
                false => line.values.insert((*key).into(), (*text).into()),
            };
        }
        let shelf = book(ShelfCan::BOOK).ok_or(EditError::Unknown("book"))?;
        self.books.put(shelf, line)
    }

    /// Moves cans from the layers of a piece, where older versions kept them, to the shelf. A can that may
    /// already be on the shelf is not added again.
    pub(crate) fn take_over(&mut self, cans: Vec<OldCan>) {
        for old in cans {
            let Some(material) = material_of(&self.materials, &old.material) else {
                continue;
            };
            let colour = Some(old.colour.0).filter(|_| material.coloured);
            let is_it = |stock: &Stock| {
                let is_same = *stock.material.key == *old.material && stock.colour == colour;
                is_same && stock.contents.is_ok() && stock.can.is_none_or(|can| can.key == old.can)
            };
            if !stock(self).iter().any(is_it) {
                // A full shelf has no room for another line.
                let _ = self.put_on_shelf(&old.piece, &old.material, old.can, old.level);
            }
        }
    }

    /// After a change to a piece, updates its cans to a replaced material of the same kind, such as the
    /// maker's own label for it.
    pub(super) fn follow(&mut self, piece: &Piece) -> Result<(), EditError> {
        let layers = || piece.schemes().flat_map(|scheme| &scheme.layers);
        let cans: Vec<ShelfCan> = self
            .books
            .all()
            .filter(|can: &ShelfCan| *can.piece == *piece.id.0)
            .collect();
        for can in cans {
            if layers().any(|layer| *layer.material == *can.material) {
                continue;
            }
            let kind = generic(&self.materials, &can.material);
            let other = layers().find(|layer| generic(&self.materials, &layer.material) == kind);
            if let Some(layer) = other {
                let material = Rc::clone(&layer.material);
                self.shelf_line(&can.id, &[("material", &material)])?;
            }
        }
        Ok(())
    }

    /// Before a piece is deleted, fixes the color of its cans.
    pub(super) fn keep_cans_of(&mut self, piece: &PieceId) -> Result<(), EditError> {
        for stock in stock(self)
            .into_iter()
            .filter(|stock| stock.piece.as_deref() == Some(&*piece.0))
        {
            let colour = stock
                .colour
                .map_or_else(String::new, |colour| Colour(colour).write());
            self.shelf_line(&stock.id, &[("colour", &colour), ("of", "")])?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::samples::takeoff_in;
    use crate::{Edit, PieceEdit, SchemeEdit, invented_workshop};

    const ENAMEL: &str = "trim-enamel";

    fn have(workshop: &Workshop, edit: HaveEdit) -> Workshop {
        let piece = &workshop.pieces[0];
        let edit = Edit::Have {
            piece: piece.id.clone(),
            material: ENAMEL.into(),
            colour: Some(piece.scheme.colour.0),
            edit,
        };
        workshop.apply(edit).unwrap()
    }

    #[test]
    fn a_can_of_an_older_layer_is_the_one_on_the_shelf_where_it_may_be() {
        let colour = bare().pieces[0].scheme.colour;
        let with = |shelf: &[(&'static str, &str)]| {
            let values = [("material", ENAMEL), ("colour", &colour.write())];
            let values = values.iter().chain(shelf).copied().collect::<Vec<_>>();
            let add = crate::BookEdit::Add("shelf", "s1".into(), crate::samples::values(&values));
            let mut workshop = bare().apply(Edit::Book(add)).unwrap();
            workshop.take_over(vec![OldCan {
                piece: workshop.pieces[0].id.clone(),
                material: ENAMEL.into(),
                colour,
                can: "us-pint",
                level: None,
            }]);
            stock(&workshop).len()
        };
        assert_eq!(with(&[("can", "us-quart")]), 2);
        assert_eq!(with(&[("can", "us-pint"), ("level", "half")]), 1);
        // Its size is unknown, so it may be the pint. Nothing is known of the last one.
        assert_eq!(with(&[("weight", "500 g"), ("tare", "100 g")]), 1);
        assert_eq!(with(&[]), 2);
    }

    fn bare() -> Workshop {
        let mut workshop = invented_workshop();
        workshop.books = Default::default();
        workshop
    }

    /// Returns the cans of enamel that count for the first piece: the size, and the share left in each.
    fn counted(workshop: &Workshop) -> Vec<(&'static str, f64)> {
        let taken = takeoff_in(workshop, &workshop.pieces[0]).unwrap();
        let is_paint = |line: &&crate::MaterialLine| line.need.colour.is_some();
        let line = taken.materials.iter().find(is_paint).unwrap();
        let cans = line.on_hand.iter().flat_map(|hand| &hand.cans);
        cans.map(|stock| {
            let can = stock.can.unwrap();
            let likely = stock.contents.unwrap().likely();
            (can.key, (likely / can.volume() * 100.0).round() / 100.0)
        })
        .collect()
    }

    #[test]
    fn a_can_that_is_said_beside_a_piece_stands_on_the_shelf() {
        let one = have(&bare(), HaveEdit::Can(Some("us-quart")));
        assert_eq!(counted(&one), [("us-quart", 1.0)]);
        let half = have(&one, HaveEdit::Level(Some("half")));
        assert_eq!(counted(&half), [("us-quart", 0.5)]);
        let pint = have(&half, HaveEdit::Can(Some("us-pint")));
        assert_eq!(counted(&pint), [("us-pint", 0.5)]);
        assert_eq!(stock(&pint).len(), 1);
        assert_eq!(counted(&have(&pint, HaveEdit::Level(None))), [("us-pint", 1.0)]);
        assert_eq!(stock(&have(&pint, HaveEdit::Can(None))), []);
        let id = bare().pieces[0].id.clone();
        for edit in [HaveEdit::Level(Some("half")), HaveEdit::Can(Some("us-thimble"))] {
            let edit = Edit::Have {
                piece: id.clone(),
                material: ENAMEL.into(),
                colour: Some([1, 2, 3]),
                edit,
            };
            assert!(bare().apply(edit).is_err());
        }
    }

    #[test]
    fn a_can_of_which_nothing_is_known_stays_as_it_is() {
        let add = |id: &str| {
            let colour = bare().pieces[0].scheme.colour.write();
            let values = crate::samples::values(&[("material", ENAMEL), ("colour", &colour)]);
            Edit::Book(crate::BookEdit::Add("shelf", id.into(), values))
        };
        let unknown = bare().apply(add("s1")).unwrap();
        let both = have(&unknown, HaveEdit::Can(Some("us-quart")));
        assert_eq!(counted(&both), [("us-quart", 1.0)]);
        assert_eq!(have(&both, HaveEdit::Can(None)).books, unknown.books);
    }

    #[test]
    fn a_weighed_can_takes_a_level_in_place_of_its_weight() {
        let mut workshop = have(&bare(), HaveEdit::Can(Some("us-quart")));
        let id = stock(&workshop)[0].id.clone();
        workshop
            .shelf_line(&id, &[("weight", "780 g"), ("tare", "120 g")])
            .unwrap();
        assert!(stock(&workshop)[0].is_weighed);
        let half = have(&workshop, HaveEdit::Level(Some("half")));
        assert_eq!(counted(&half), [("us-quart", 0.5)]);
    }

    #[test]
    fn a_can_for_a_piece_goes_with_its_color_and_label() {
        let one = have(&bare(), HaveEdit::Can(Some("us-quart")));
        let id = one.pieces[0].id.clone();
        let edit = |workshop: &Workshop, edit| workshop.apply(Edit::Piece(id.clone(), edit)).unwrap();
        let red = edit(
            &one,
            PieceEdit::Finish(None, SchemeEdit::Colour(Colour([200, 0, 0]))),
        );
        assert_eq!(counted(&red), [("us-quart", 1.0)]);
        let own = red
            .apply(Edit::AddMaterial("own-1".into(), ENAMEL.into()))
            .unwrap();
        let own = edit(
            &own,
            PieceEdit::Exchange {
                from: ENAMEL.into(),
                to: "own-1".into(),
            },
        );
        assert_eq!(counted(&own), [("us-quart", 1.0)]);
        // When the piece is deleted, the can keeps the color it had.
        let gone = own.apply(Edit::Remove(id.clone())).unwrap();
        assert_eq!(stock(&gone)[0].colour, Some([200, 0, 0]));
    }
}
