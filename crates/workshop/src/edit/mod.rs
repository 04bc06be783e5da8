//! Edits: every change that a maker can make, and the one function that makes it.

use std::fmt;
use std::rc::Rc;

use coatings::{Basis, Ground, Stage};
use geometry::{BackStyle, BaseStyle, FieldId, FrontStyle, Kind, MAX_COLUMNS, MAX_ROWS, fields};
use units::System;

use crate::document::{Colour, Piece, PieceId, Reading, Row, Workshop};

/// The most coats of one material.
pub(crate) const MAX_COATS: u32 = 9;
/// The most pieces in a set.
pub(crate) const MAX_COUNT: u32 = 99;
/// The longest name or title, in characters.
pub(crate) const MAX_NAME: usize = 120;
/// The most pieces in a workshop.
pub(crate) const MAX_PIECES: usize = 5000;

/// A change of the document.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// The maker reads and writes other units from now on.
    Units(System),
    /// A new piece, of which nothing is measured yet.
    Add {
        /// Its name in the workshop, never used before.
        id: PieceId,
        /// What kind of piece it is.
        kind: Kind,
    },
    /// A piece with all its measurements once more.
    Copy {
        /// The piece to copy.
        of: PieceId,
        /// The name of the copy, never used before.
        id: PieceId,
    },
    /// A piece goes.
    Remove(PieceId),
    /// Another workshop takes the place of this one.
    Replace(Workshop),
    /// The pieces of another workshop come in behind the ones that are here.
    Gather(Workshop),
    /// The invented pieces go, and the remark about them.
    ClearInvented,
    /// Something about one piece changes.
    Piece(PieceId, PieceEdit),
}

/// A change of one piece.
#[derive(Clone, Debug, PartialEq)]
pub enum PieceEdit {
    /// What the maker calls it.
    Name(String),
    /// How many there are.
    Count(u32),
    /// A measurement, or none any more.
    Measure(FieldId, Option<Reading>),
    /// How many rows of drawers.
    Rows(usize),
    /// How many drawers in a row, which is counted from 1.
    Columns(usize, usize),
    /// How the drawer fronts sit.
    Fronts(FrontStyle),
    /// How the back is fixed.
    Back(BackStyle),
    /// What the carcass stands on.
    Base(BaseStyle),
    /// Whether a surface is painted; `None` goes back to the default.
    Painted(String, Option<bool>),
    /// The colour of the paint.
    Colour(Colour),
    /// What the first coat goes onto.
    Ground(Ground),
    /// What the volumes are worked out from.
    Basis(Basis),
    /// How many coats of a stage.
    Coats(Stage, u32),
    /// The material of a stage, by its key.
    Material(Stage, &'static str),
    /// The tool of a stage, by its key.
    Tool(Stage, &'static str),
    /// The can in question of a stage, by its key.
    Can(Stage, &'static str),
}

/// Why an edit was not made.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum EditError {
    /// The piece is not there any more.
    NoSuchPiece,
    /// The name of a new piece is taken.
    IdTaken,
    /// More than a document may hold.
    TooMany {
        /// Of what.
        what: &'static str,
        /// The most there may be.
        most: usize,
    },
    /// A name or key that the tool does not know.
    Unknown(&'static str),
}

impl fmt::Display for EditError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            EditError::NoSuchPiece => {
                f.write_str("That piece is not in the workshop any more. Choose another.")
            }
            EditError::IdTaken => f.write_str("A piece with that name is already there. Try once more."),
            EditError::TooMany { what, most } => write!(f, "Too many {what}. The most is {most}."),
            EditError::Unknown(what) => write!(f, "This {what} is not known here. Choose one from the list."),
        }
    }
}

impl std::error::Error for EditError {}

impl Workshop {
    /// The document after a change. The document before it stays as it was, for undo.
    ///
    /// # Errors
    /// If the change does not fit the document; nothing is changed then.
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
        match edit {
            Edit::Units(units) => next.units = units,
            Edit::Add { id, kind } => {
                next.insert(self.pieces.len(), Piece::new(id, kind, self.units))?;
            }
            Edit::Copy { of, id } => {
                let place = self.place(&of)?;
                let piece = Piece {
                    id,
                    name: copied_name(&self.pieces[place].name),
                    ..(*self.pieces[place]).clone()
                };
                next.insert(place + 1, piece)?;
            }
            Edit::Remove(id) => {
                next.pieces.remove(self.place(&id)?);
            }
            Edit::Replace(workshop) => next = workshop,
            Edit::Gather(other) => next.gather(other)?,
            Edit::ClearInvented => {
                next.pieces.retain(|piece| !piece.is_invented());
                next.title.clear();
                next.note.clear();
            }
            Edit::Piece(id, edit) => {
                let place = self.place(&id)?;
                let mut piece = (*self.pieces[place]).clone();
                piece.apply(edit)?;
                next.pieces[place] = Rc::new(piece);
            }
        }
        Ok(next)
    }

    fn place(&self, id: &PieceId) -> Result<usize, EditError> {
        self.pieces
            .iter()
            .position(|piece| piece.id == *id)
            .ok_or(EditError::NoSuchPiece)
    }

    /// Takes in pieces; one whose name is taken gets a new one.
    fn gather(&mut self, other: Workshop) -> Result<(), EditError> {
        for piece in other.pieces {
            let base = piece.id.0.clone();
            let names = std::iter::once(base.clone()).chain((2..).map(|n| format!("{base}-{n}").into()));
            let id = names
                .map(PieceId)
                .find(|id| self.piece(id).is_none())
                .ok_or(EditError::IdTaken)?;
            self.insert(
                self.pieces.len(),
                Piece {
                    id,
                    ..(*piece).clone()
                },
            )?;
        }
        Ok(())
    }

    fn insert(&mut self, place: usize, piece: Piece) -> Result<(), EditError> {
        if self.pieces.len() >= MAX_PIECES {
            return Err(EditError::TooMany {
                what: "pieces",
                most: MAX_PIECES,
            });
        }
        if self.piece(&piece.id).is_some() {
            return Err(EditError::IdTaken);
        }
        self.pieces.insert(place, Rc::new(piece));
        Ok(())
    }
}

fn copied_name(name: &str) -> String {
    shortened(&format!("{name}, copy"))
}

/// The first characters of a name, as many as a name may have.
pub(crate) fn shortened(name: &str) -> String {
    name.chars().take(MAX_NAME).collect()
}

impl Piece {
    fn apply(&mut self, edit: PieceEdit) -> Result<(), EditError> {
        let most = |what, given: usize, most: usize| {
            if given > most {
                Err(EditError::TooMany { what, most })
            } else {
                Ok(given)
            }
        };
        match edit {
            PieceEdit::Name(name) => self.name = shortened(&name),
            PieceEdit::Count(count) => {
                most("pieces in a set", count as usize, MAX_COUNT as usize)?;
                self.count = count.max(1);
            }
            PieceEdit::Measure(field, reading) => self.measure(field, reading)?,
            PieceEdit::Rows(rows) => {
                let rows = most("rows of drawers", rows, MAX_ROWS)?.max(1);
                let columns = self.rows.last().map_or(1, |row| row.columns);
                self.rows.resize(
                    rows,
                    Row {
                        columns,
                        height: None,
                    },
                );
            }
            PieceEdit::Columns(row, columns) => {
                let columns = most("drawers in a row", columns, MAX_COLUMNS)?.max(1);
                let row = row.checked_sub(1).and_then(|index| self.rows.get_mut(index));
                row.ok_or(EditError::Unknown("row"))?.columns = columns;
            }
            PieceEdit::Fronts(fronts) => self.fronts = fronts,
            PieceEdit::Back(back) => self.back = back,
            PieceEdit::Base(base) => self.base = base,
            PieceEdit::Painted(surface, None) => {
                self.choices.remove(&surface);
            }
            PieceEdit::Painted(surface, Some(painted)) => {
                self.choices.insert(surface, painted);
            }
            PieceEdit::Colour(colour) => self.scheme.colour = colour,
            PieceEdit::Ground(ground) => self.scheme.ground = ground,
            PieceEdit::Basis(basis) => self.scheme.basis = basis,
            PieceEdit::Coats(stage, coats) => {
                most("coats", coats as usize, MAX_COATS as usize)?;
                self.scheme.of_mut(stage).coats = coats;
            }
            PieceEdit::Material(stage, key) => {
                let fits = coatings::material(key).is_some_and(|material| material.stage == stage);
                self.scheme.of_mut(stage).material =
                    fits.then_some(key).ok_or(EditError::Unknown("material"))?;
            }
            PieceEdit::Tool(stage, key) => {
                let known = coatings::tool(key).map(|tool| tool.key);
                self.scheme.of_mut(stage).tool = known.ok_or(EditError::Unknown("tool"))?;
            }
            PieceEdit::Can(stage, key) => {
                let known = coatings::can(key).map(|can| can.key);
                self.scheme.of_mut(stage).can = known.ok_or(EditError::Unknown("can size"))?;
            }
        }
        Ok(())
    }

    fn measure(&mut self, field: FieldId, reading: Option<Reading>) -> Result<(), EditError> {
        match field {
            FieldId::Of(key) => {
                let key = fields::by_key(key).ok_or(EditError::Unknown("measurement"))?.key;
                match reading {
                    Some(reading) => self.readings.insert(key, reading),
                    None => self.readings.remove(key),
                };
            }
            FieldId::RowHeight(row) => {
                let row = row.checked_sub(1).and_then(|index| self.rows.get_mut(index));
                row.ok_or(EditError::Unknown("row"))?.height = reading;
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use units::LengthUnit;

    fn id(name: &str) -> PieceId {
        PieceId(name.into())
    }

    fn one() -> Workshop {
        Workshop::default()
            .apply(Edit::Add {
                id: id("a"),
                kind: Kind::Dresser,
            })
            .unwrap()
    }

    fn edited(edit: PieceEdit) -> Result<Piece, EditError> {
        one()
            .apply(Edit::Piece(id("a"), edit))
            .map(|workshop| (*workshop.pieces[0]).clone())
    }

    #[test]
    fn a_measurement_is_kept_as_typed_and_can_be_taken_back() {
        let reading = Reading::new("33 7/8", LengthUnit::Inch).unwrap();
        let piece = edited(PieceEdit::Measure(fields::HEIGHT.id(), Some(reading.clone()))).unwrap();
        assert_eq!(piece.reading(fields::HEIGHT.id()), Some(&reading));
        let piece = edited(PieceEdit::Measure(FieldId::RowHeight(2), Some(reading.clone()))).unwrap();
        assert_eq!(piece.reading(FieldId::RowHeight(2)), Some(&reading));
        let piece = edited(PieceEdit::Measure(fields::HEIGHT.id(), None)).unwrap();
        assert_eq!(piece.reading(fields::HEIGHT.id()), None);
    }

    #[test]
    fn a_new_row_is_like_the_last_one() {
        let piece = edited(PieceEdit::Rows(4)).unwrap();
        assert_eq!(
            piece.rows.iter().map(|row| row.columns).collect::<Vec<_>>(),
            [2, 2, 2, 2]
        );
        assert_eq!(edited(PieceEdit::Rows(0)).unwrap().rows.len(), 1);
    }

    #[test]
    fn what_does_not_fit_changes_nothing_and_says_why() {
        let too_many = edited(PieceEdit::Rows(10_000)).unwrap_err();
        assert_eq!(too_many.to_string(), "Too many rows of drawers. The most is 12.");
        assert_eq!(edited(PieceEdit::Columns(9, 2)), Err(EditError::Unknown("row")));
        assert_eq!(edited(PieceEdit::Columns(0, 2)), Err(EditError::Unknown("row")));
        assert_eq!(
            edited(PieceEdit::Material(Stage::Primer, "trim-enamel")),
            Err(EditError::Unknown("material"))
        );
        assert_eq!(one().apply(Edit::Remove(id("b"))), Err(EditError::NoSuchPiece));
        assert_eq!(
            one().apply(Edit::Add {
                id: id("a"),
                kind: Kind::Dresser
            }),
            Err(EditError::IdTaken)
        );
    }

    #[test]
    fn gathering_keeps_every_piece_under_its_own_name() {
        let twice = one()
            .apply(Edit::Gather(one()))
            .unwrap()
            .apply(Edit::Gather(one()))
            .unwrap();
        let names: Vec<&str> = twice.pieces.iter().map(|piece| &*piece.id.0).collect();
        assert_eq!(names, ["a", "a-2", "a-3"]);
    }

    #[test]
    fn the_invented_workshop_goes_without_taking_a_real_piece() {
        let mixed = crate::invented_workshop().apply(Edit::Gather(one())).unwrap();
        let cleared = mixed.apply(Edit::ClearInvented).unwrap();
        assert_eq!(cleared.pieces, one().pieces);
        assert!(cleared.note.is_empty());
    }

    #[test]
    fn a_copy_stands_beside_its_original_and_has_all_of_it() {
        let two = one()
            .apply(Edit::Copy {
                of: id("a"),
                id: id("b"),
            })
            .unwrap();
        assert_eq!(two.pieces[1].name, "Dresser, copy");
        assert_eq!(
            Piece {
                id: id("a"),
                name: "Dresser".into(),
                ..(*two.pieces[1]).clone()
            },
            *two.pieces[0]
        );
        assert_eq!(two.apply(Edit::Remove(id("a"))).unwrap().pieces.len(), 1);
    }
}
