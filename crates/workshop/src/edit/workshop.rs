//! Edits of the whole document.

use super::Edit;
use super::EditError;
use super::MAX_PIECES;
use super::PieceEdit;
use super::shortened;
use super::ticks::Keys;
use crate::book::{MAX_PICTURES, ShelfCan};
use crate::document::{Piece, PieceId, Workshop};
use crate::status::Status;
use geometry::Kind;
use std::rc::Rc;

impl Workshop {
    /// Returns the document after a change. The old document stays unchanged, for undo.
    ///
    /// # Errors
    /// If the change does not fit the document. Nothing is changed then.
    ///
    /// # Example
    /// ```
    /// use workshop::{Edit, PieceId, Workshop};
    /// use geometry::Kind;
    /// let id = PieceId("p1".into());
    /// let one = Workshop::default().apply(Edit::Add { id: id.clone(), kind: Kind::Nightstand })?;
    /// assert_eq!(one.piece(&id).map(|piece| piece.name.as_str()), Some("Nightstand"));
    /// # Ok::<(), workshop::EditError>(())
    /// ```
    pub fn apply(&self, edit: Edit) -> Result<Workshop, EditError> {
        let mut next = self.clone();
        let keys = Keys::after(&edit);
        let may_bring_pictures = matches!(
            edit,
            Edit::Copy { .. } | Edit::Gather(_) | Edit::Book(_) | Edit::Piece(_, PieceEdit::Book(_))
        );
        match edit {
            Edit::Units(units) => next.units = units,
            Edit::Settings(edit) => next.set(edit)?,
            Edit::Add { id, kind } => {
                let piece = self.new_piece(id, kind);
                next.insert(self.pieces.len(), piece)?;
            }
            Edit::Consider { id, kind } => {
                let mut piece = self.new_piece(id, kind);
                piece.books.set_status(Status::Looking);
                next.insert(self.pieces.len(), piece)?;
            }
            Edit::Copy { of, id } => {
                let place = self.place(&of)?;
                let mut piece = Piece {
                    id,
                    name: copied_name(&self.pieces[place].name),
                    ..(*self.pieces[place]).clone()
                };
                piece.books.begin_again();
                next.insert(place + 1, piece.with_new_ids())?;
            }
            Edit::CopyFinish { from, to } => {
                let [from, to] = [self.place(&from)?, self.place(&to)?];
                let mut piece = (*self.pieces[to]).clone();
                piece.finish_like(&self.pieces[from]);
                piece.give_ids();
                next.pieces[to] = Rc::new(piece);
            }
            Edit::Remove(id) => {
                next.keep_cans_of(&id)?;
                next.pieces.remove(self.place(&id)?);
            }
            Edit::Replace(workshop) => next = workshop,
            Edit::Gather(other) => next.gather(other)?,
            Edit::ClearInvented => {
                let invented = self.pieces.iter().filter(|piece| piece.is_invented());
                let ids: Vec<&PieceId> = invented.map(|piece| &piece.id).collect();
                next.books
                    .strike_if(|can: &ShelfCan| ids.iter().any(|id| *id.0 == *can.piece));
                next.pieces.retain(|piece| !piece.is_invented());
                next.title.clear();
                next.note.clear();
            }
            Edit::AddMaterial(key, of) => next.add_material(key, &of)?,
            Edit::Material(key, edit) => next.edit_material(&key, edit)?,
            Edit::RemoveMaterial(key) => next.remove_material(&key)?,
            Edit::Book(edit) => next.write_habit(edit)?,
            Edit::Hours(days) => next.set_hours(days)?,
            Edit::Have {
                piece,
                material,
                colour,
                edit,
            } => next.have(&piece, &material, colour, edit)?,
            Edit::Piece(id, edit) => {
                let place = self.place(&id)?;
                let mut piece = (*self.pieces[place]).clone();
                piece.apply(edit, &self.materials, self.units)?;
                next.follow(&piece)?;
                next.pieces[place] = Rc::new(piece);
            }
        }
        next.move_ticks(self, keys);
        // A workshop saved before there was a maximum may hold more, and keeps them.
        if may_bring_pictures && next.pictures() > MAX_PICTURES.max(self.pictures()) {
            return Err(EditError::TooMany {
                what: "photos",
                most: MAX_PICTURES,
            });
        }
        Ok(next)
    }

    /// Returns an unmeasured piece with the finish for new pieces.
    fn new_piece(&self, id: PieceId, kind: Kind) -> Piece {
        let mut piece = Piece::new(id, kind);
        if let Some(finish) = &self.settings.finish {
            piece.scheme = finish.clone();
        }
        piece
    }

    fn pictures(&self) -> usize {
        let of_pieces: usize = self.pieces.iter().map(|piece| piece.books.pictures()).sum();
        self.books.pictures() + of_pieces
    }

    fn place(&self, id: &PieceId) -> Result<usize, EditError> {
        self.pieces
            .iter()
            .position(|piece| piece.id == *id)
            .ok_or(EditError::NoSuchPiece)
    }

    pub(super) fn insert(&mut self, place: usize, mut piece: Piece) -> Result<(), EditError> {
        if self.pieces.len() >= MAX_PIECES {
            return Err(EditError::TooMany {
                what: "pieces",
                most: MAX_PIECES,
            });
        }
        if self.piece(&piece.id).is_some() {
            return Err(EditError::IdTaken);
        }
        piece.give_ids();
        self.pieces.insert(place, Rc::new(piece));
        Ok(())
    }
}

fn copied_name(name: &str) -> String {
    shortened(&format!("{name}, copy"))
}
