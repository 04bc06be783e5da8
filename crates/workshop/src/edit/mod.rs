//! Edits: every change that a maker can make, and the one function that makes it.

mod alike;
mod books;
mod brush;
mod changes;
mod division;
mod gather;
mod materials;
mod scheme;
mod settings;
mod ticks;
mod zones;

use std::fmt;
use std::rc::Rc;

use coatings::Rgb;
use geometry::{AddedShape, BayPlace, FieldId, Fill, Kind, MAX_COLUMNS, MAX_SHELVES, fields, styles};
use units::System;

pub use books::BookEdit;
pub use brush::BrushTo;
pub(crate) use changes::MAX_FLUTES;
pub use gather::Along;
pub(crate) use materials::MAX_MATERIALS;
pub use materials::MaterialEdit;
pub(crate) use scheme::{MAX_COATS, MAX_LAYERS, MAX_THINNED};
pub use scheme::{SchemeEdit, Sign};
pub use settings::SettingEdit;
pub(crate) use zones::{MAX_ZONES, may_be_key};

use crate::book::{MAX_PICTURES, ValueError};
use crate::document::{ChangeKind, OwnMaterial, Piece, PieceChange, PieceId, Reading, Workshop, material_of};

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
    /// Something changes that is settled for the whole workshop.
    Settings(SettingEdit),
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
    /// A piece is finished as another is; what its own surfaces are like stays.
    CopyFinish {
        /// The piece whose finish is copied.
        from: PieceId,
        /// The piece that gets it.
        to: PieceId,
    },
    /// A piece goes.
    Remove(PieceId),
    /// Another workshop takes the place of this one.
    Replace(Workshop),
    /// The pieces of another workshop come in behind the ones that are here.
    Gather(Workshop),
    /// The invented pieces go, and the remark about them.
    ClearInvented,
    /// A copy of a known material comes in: its key, never used before, and that of the known one.
    AddMaterial(Rc<str>, String),
    /// Something about a material of the maker's own changes.
    Material(Rc<str>, MaterialEdit),
    /// A material of the maker's own goes.
    RemoveMaterial(Rc<str>),
    /// A book of the workshop changes.
    Book(BookEdit),
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
    /// A choice about how it is made: the key of the choice and of the answer.
    Style(&'static str, &'static str),
    /// Something that is counted, by its key; `None` goes back to the usual number.
    Counted(&'static str, Option<u32>),
    /// How many bays the upper or the lower case has.
    Bays(bool, usize),
    /// How many rows a bay has.
    Rows(BayPlace, usize),
    /// A row of a bay comes once more, below itself; rows are counted from 1.
    RepeatRow(BayPlace, usize),
    /// A row goes, from one on; the only one of a bay stays.
    RemoveRow(BayPlace, usize),
    /// What fills a row of a bay.
    Fill(BayPlace, usize, Fill),
    /// How many drawers, doors or compartments a row of a bay has.
    Columns(BayPlace, usize, usize),
    /// How many shelves lie in each compartment of a row of a bay.
    Shelves(BayPlace, usize, usize),
    /// One more change of the piece.
    AddChange(PieceChange),
    /// A part of the maker's own comes in; its number is the next that is free.
    AddPart(AddedShape),
    /// Another change stands in the place of one; readings that it does not have go.
    AlterChange(usize, ChangeKind),
    /// A change is taken back, by its place.
    RemoveChange(usize),
    /// Whether a surface is painted; `None` goes with its zone.
    Painted(String, Option<bool>),
    /// Which zone a surface belongs to, by its key; `None` is the usual one.
    Zone(String, Option<String>),
    /// All of these surfaces, by their names, are left, painted or put into a zone at once.
    Brush(Vec<String>, BrushTo),
    /// Whether a zone is painted, by its key; `None` goes back to the default.
    ZonePainted(String, Option<bool>),
    /// A zone of the maker's own, or a new name for one.
    NameZone(String, String),
    /// A zone of the maker's own goes; its surfaces go back to their usual zones.
    RemoveZone(String),
    /// How the piece is finished changes, or how one of its zones is that has a scheme of its own.
    Finish(Option<String>, SchemeEdit),
    /// A zone is finished in its own way, or as the piece is.
    Apart(String, bool),
    /// Another material takes the place of one, by their keys, wherever the piece plans it: one can serves all zones.
    Exchange(Rc<str>, Rc<str>),
    /// A book of the piece changes.
    Book(BookEdit),
    /// The can in hand of a material in a colour, by its key; `None` is none.
    Can(Rc<str>, Option<Rgb>, Option<&'static str>),
    /// How full that can is, by the key of the level; `None` is full.
    Level(Rc<str>, Option<Rgb>, Option<&'static str>),
}

/// Why an edit was not made.
#[derive(Clone, Debug, PartialEq)]
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
    /// A text that a field of a book does not take.
    Value(ValueError),
    /// A tool that cannot put a material on.
    WrongTool {
        /// The tool.
        tool: &'static str,
        /// The material.
        material: String,
    },
}

impl fmt::Display for EditError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            EditError::NoSuchPiece => {
                f.write_str("That piece is not in the workshop any more. Choose another.")
            }
            EditError::IdTaken => f.write_str("A piece with that name is already there. Try once more."),
            EditError::TooMany { what, most } => write!(f, "Too many {what}. The most is {most}."),
            EditError::WrongTool { tool, material } => {
                write!(
                    f,
                    "{material} does not go on with the {tool}. Choose another tool."
                )
            }
            EditError::Value(error) => error.fmt(f),
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
        let may_bring_pictures = matches!(
            edit,
            Edit::Copy { .. } | Edit::Gather(_) | Edit::Book(_) | Edit::Piece(_, PieceEdit::Book(_))
        );
        match edit {
            Edit::Units(units) => next.units = units,
            Edit::Settings(edit) => next.set(edit)?,
            Edit::Add { id, kind } => {
                let mut piece = Piece::new(id, kind);
                if let Some(finish) = &self.settings.finish {
                    piece.scheme = finish.clone();
                }
                next.insert(self.pieces.len(), piece)?;
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
            Edit::CopyFinish { from, to } => {
                let [from, to] = [self.place(&from)?, self.place(&to)?];
                let mut piece = (*self.pieces[to]).clone();
                piece.finish_like(&self.pieces[from]);
                next.pieces[to] = Rc::new(piece);
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
            Edit::AddMaterial(key, of) => next.add_material(key, &of)?,
            Edit::Material(key, edit) => next.edit_material(&key, edit)?,
            Edit::RemoveMaterial(key) => next.remove_material(&key)?,
            Edit::Book(edit) => next.books.apply(edit, false, self.units)?,
            Edit::Piece(id, edit) => {
                let place = self.place(&id)?;
                let mut piece = (*self.pieces[place]).clone();
                piece.apply(edit, &self.materials, self.units)?;
                next.pieces[place] = Rc::new(piece);
            }
        }
        // A workshop that has more, from before there was a most, keeps them.
        if may_bring_pictures && next.pictures() > MAX_PICTURES.max(self.pictures()) {
            return Err(EditError::TooMany {
                what: "photos",
                most: MAX_PICTURES,
            });
        }
        Ok(next)
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
    #[expect(clippy::too_many_lines, reason = "one arm for each edit")]
    fn apply(&mut self, edit: PieceEdit, own: &[Rc<OwnMaterial>], units: System) -> Result<(), EditError> {
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
            PieceEdit::Style(field, option) => {
                let field = styles::by_key(field).ok_or(EditError::Unknown("choice"))?;
                if !field.choose(&mut self.styles, option) {
                    return Err(EditError::Unknown("answer"));
                }
            }
            PieceEdit::Counted(key, count) => self.counted(key, count)?,
            PieceEdit::Bays(upper, count) => self.set_bays(upper, count)?,
            PieceEdit::Rows(place, count) => self.bay_mut(place)?.set_rows(count)?,
            PieceEdit::RepeatRow(place, row) => self.bay_mut(place)?.repeat_row(row)?,
            PieceEdit::RemoveRow(place, row) => self.bay_mut(place)?.remove_row(row)?,
            PieceEdit::Fill(place, row, fill) => self.row_mut(place, row)?.fill = fill,
            PieceEdit::Columns(place, row, columns) => {
                let columns = most("drawers or doors in a row", columns, MAX_COLUMNS)?.max(1);
                self.row_mut(place, row)?.columns = columns;
            }
            PieceEdit::Shelves(place, row, shelves) => {
                let shelves = most("shelves in a row", shelves, MAX_SHELVES)?;
                self.row_mut(place, row)?.shelves = shelves;
            }
            PieceEdit::AddChange(change) => self.add_change(change)?,
            PieceEdit::AddPart(shape) => self.add_part(shape)?,
            PieceEdit::AlterChange(place, kind) => self.alter_change(place, kind)?,
            PieceEdit::RemoveChange(place) => {
                if place >= self.changes.len() {
                    return Err(EditError::Unknown("change"));
                }
                self.changes.remove(place);
            }
            PieceEdit::Painted(surface, painted) => self.choose(surface, |choice| choice.painted = painted),
            PieceEdit::Zone(surface, zone) => {
                zone.as_deref().map_or(Ok(()), |key| self.check_zone(key))?;
                self.choose(surface, |choice| choice.zone = zone);
            }
            PieceEdit::Brush(surfaces, to) => self.brush(surfaces, &to)?,
            PieceEdit::ZonePainted(key, painted) => {
                self.choose_zone(key, |zone| zone.painted = painted)?;
            }
            PieceEdit::NameZone(key, name) => {
                self.choose_zone(key, |zone| zone.name = shortened(&name))?;
            }
            PieceEdit::RemoveZone(key) => self.remove_zone(&key),
            PieceEdit::Finish(zone, edit) => {
                let before = ticks::coated_with(self, own);
                self.finish(zone, edit, own)?;
                self.strike_ticks(&before, own);
            }
            PieceEdit::Apart(zone, apart) => self.set_apart(zone, apart)?,
            PieceEdit::Exchange(from, to) => {
                material_of(own, &to).ok_or(EditError::Unknown("material"))?;
                for layer in self.layers_of(&from, None) {
                    layer.material = Rc::clone(&to);
                }
            }
            PieceEdit::Book(edit) => self.books.apply(edit, true, units)?,
            PieceEdit::Can(material, colour, key) => {
                let known = |key| coatings::can(key).ok_or(EditError::Unknown("can size"));
                let can = key.map(known).transpose()?.map(|can| can.key);
                self.layers_of(&material, colour).for_each(|layer| {
                    layer.can = can;
                    layer.level = layer.level.filter(|_| can.is_some());
                });
            }
            PieceEdit::Level(material, colour, key) => {
                let known = |key| coatings::can::level(key).map(|level| level.key);
                let level = match key {
                    None => None,
                    Some(key) => Some(known(key).ok_or(EditError::Unknown("level"))?),
                };
                self.layers_of(&material, colour)
                    .filter(|layer| layer.can.is_some())
                    .for_each(|layer| layer.level = level);
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
            FieldId::RowHeight(place, row) => self.row_mut(place, row)?.height = reading,
            FieldId::BayWidth(place) => self.bay_mut(place)?.width = reading,
            FieldId::Change { change, item, key } => self.measure_change(change, item, key, reading)?,
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Colour, Price, Scheme};
    use coatings::{Ground, Wish};
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

    const PLACE: BayPlace = BayPlace { upper: false, bay: 1 };

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
        let second = FieldId::RowHeight(PLACE, 2);
        let piece = edited(PieceEdit::Measure(second, Some(reading.clone()))).unwrap();
        assert_eq!(piece.reading(second), Some(&reading));
        let piece = edited(PieceEdit::Measure(fields::HEIGHT.id(), None)).unwrap();
        assert_eq!(piece.reading(fields::HEIGHT.id()), None);
    }

    #[test]
    fn a_new_row_is_like_the_last_one() {
        let piece = edited(PieceEdit::Rows(PLACE, 4)).unwrap();
        let columns: Vec<usize> = piece.bays[0].rows.iter().map(|row| row.columns).collect();
        assert_eq!(columns, [2, 2, 2, 2]);
        assert_eq!(edited(PieceEdit::Rows(PLACE, 0)).unwrap().bays[0].rows.len(), 1);
        assert_eq!(
            edited(PieceEdit::RepeatRow(PLACE, 2)).unwrap().bays[0].rows.len(),
            4
        );
        assert_eq!(edited(PieceEdit::Bays(false, 3)).unwrap().bays.len(), 3);
    }

    #[test]
    fn a_row_that_goes_lets_those_below_it_move_up() {
        let piece = edited(PieceEdit::Columns(PLACE, 3, 1)).unwrap();
        let columns = |piece: &Piece| -> Vec<usize> {
            let rows = piece.bays[0].rows.iter();
            rows.map(|row| row.columns).collect()
        };
        assert_eq!(columns(&piece), [2, 2, 1]);
        let workshop = Workshop {
            pieces: vec![piece.into()],
            ..Workshop::default()
        };
        let remove = |workshop: &Workshop, row| {
            let edit = Edit::Piece(workshop.pieces[0].id.clone(), PieceEdit::RemoveRow(PLACE, row));
            workshop.apply(edit)
        };
        let two = remove(&workshop, 1).unwrap();
        assert_eq!(columns(&two.pieces[0]), [2, 1]);
        let one = remove(&two, 2).unwrap();
        assert_eq!(columns(&one.pieces[0]), [2]);
        assert_eq!(
            remove(&one, 1),
            Err(EditError::Unknown("row")),
            "the last one stays"
        );
        assert_eq!(remove(&two, 3), Err(EditError::Unknown("row")));
    }

    #[test]
    fn what_does_not_fit_changes_nothing_and_says_why() {
        let too_many = edited(PieceEdit::Rows(PLACE, 10_000)).unwrap_err();
        assert_eq!(too_many.to_string(), "Too many rows. The most is 12.");
        let elsewhere = BayPlace { upper: true, bay: 1 };
        assert_eq!(
            edited(PieceEdit::Rows(elsewhere, 2)),
            Err(EditError::Unknown("bay"))
        );
        assert_eq!(
            edited(PieceEdit::Columns(PLACE, 9, 2)),
            Err(EditError::Unknown("row"))
        );
        assert_eq!(
            edited(PieceEdit::Columns(PLACE, 0, 2)),
            Err(EditError::Unknown("row"))
        );
        assert_eq!(
            edited(PieceEdit::Style("base", "stilts")),
            Err(EditError::Unknown("answer"))
        );
        assert_eq!(
            edited(PieceEdit::RemoveChange(0)),
            Err(EditError::Unknown("change"))
        );
        assert_eq!(
            edited(PieceEdit::Finish(None, SchemeEdit::Add("glitter".into()))),
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

    #[test]
    fn parts_of_ones_own_have_numbers_that_stay() {
        let add = |piece: &mut Piece, shape| {
            piece
                .apply(PieceEdit::AddPart(shape), &[], System::default())
                .unwrap()
        };
        let mut piece = (*one().pieces[0]).clone();
        add(&mut piece, AddedShape::Board);
        add(&mut piece, AddedShape::Moulding);
        piece
            .apply(PieceEdit::RemoveChange(0), &[], System::default())
            .unwrap();
        add(&mut piece, AddedShape::Column);
        let numbers: Vec<usize> = piece
            .changes
            .iter()
            .map(|change| match change.kind {
                ChangeKind::Add { number, .. } => number,
                _ => 0,
            })
            .collect();
        assert_eq!(numbers, [2, 3]);
        let length = FieldId::Change {
            change: 0,
            item: 0,
            key: fields::PART_LENGTH.key,
        };
        let reading = Reading::new("48", LengthUnit::Inch).unwrap();
        piece
            .apply(
                PieceEdit::Measure(length, Some(reading.clone())),
                &[],
                System::default(),
            )
            .unwrap();
        assert_eq!(piece.reading(length), Some(&reading));
        assert!(crate::takeoff(&piece, &[], Default::default()).is_ok());
    }

    #[test]
    fn surfaces_go_into_zones_and_come_back() {
        let mut piece = (*one().pieces[0]).clone();
        let mut apply = |edit| piece.apply(edit, &[], System::default());
        assert_eq!(
            apply(PieceEdit::Zone("top/top".into(), Some("accent".into()))),
            Err(EditError::Unknown("zone"))
        );
        apply(PieceEdit::NameZone("accent".into(), "Second colour".into())).unwrap();
        apply(PieceEdit::Zone("top/top".into(), Some("accent".into()))).unwrap();
        apply(PieceEdit::ZonePainted("top".into(), Some(false))).unwrap();
        let takeoff = crate::takeoff(&piece, &[], Default::default()).unwrap();
        let zone = |key: &str| takeoff.zones.iter().find(|zone| zone.key == key).unwrap();
        assert_eq!(zone("accent").label, "Second colour");
        assert!(zone("accent").areas[0] > units::Area::square_metres(0.5));
        assert!(!zone("top").painted && zone("top").areas[0] == units::Area::ZERO);
        let mut apply = |edit| piece.apply(edit, &[], System::default()).unwrap();
        apply(PieceEdit::RemoveZone("accent".into()));
        apply(PieceEdit::ZonePainted("top".into(), None));
        assert!(piece.choices.is_empty() && piece.zones.is_empty());
    }

    fn finish(edit: SchemeEdit) -> PieceEdit {
        PieceEdit::Finish(None, edit)
    }

    fn with(edits: impl IntoIterator<Item = PieceEdit>) -> Piece {
        let edits = edits.into_iter().map(|edit| Edit::Piece(id("a"), edit));
        let workshop = edits.fold(one(), |workshop, edit| workshop.apply(edit).unwrap());
        (*workshop.pieces[0]).clone()
    }

    fn planned(scheme: &Scheme) -> Vec<(&str, u32, &str)> {
        let layers = scheme.layers.iter();
        layers
            .map(|layer| (&*layer.material, layer.coats, layer.tool))
            .collect()
    }

    #[test]
    fn layers_come_in_at_their_stage_and_take_a_tool_that_can_do_it() {
        let piece = with([
            finish(SchemeEdit::Add("deglosser".into())),
            finish(SchemeEdit::Add("clear-wax".into())),
            finish(SchemeEdit::Tool(3, "foam-roller")),
            finish(SchemeEdit::Remove(4)),
        ]);
        let layers = planned(&piece.scheme);
        assert_eq!(
            layers.iter().map(|layer| layer.0).collect::<Vec<_>>(),
            [
                "degreaser",
                "deglosser",
                "bonding-primer",
                "trim-enamel",
                "clear-wax"
            ]
        );
        assert_eq!(layers[3].2, "foam-roller");
        let error = edited(finish(SchemeEdit::Add("clear-wax".into()))).and_then(|_| {
            one()
                .apply(Edit::Piece(id("a"), finish(SchemeEdit::Tool(10, "hvlp"))))
                .map(|_| ())
        });
        assert_eq!(error, Err(EditError::Unknown("layer")));
        let waxed = with([finish(SchemeEdit::Material(2, "clear-wax".into()))]);
        let tool = coatings::tool(waxed.scheme.layers[2].tool).unwrap();
        assert!(tool.film(coatings::Body::Paste).is_some());
        let mut piece = waxed;
        let sprayed = piece.apply(finish(SchemeEdit::Tool(2, "hvlp")), &[], System::default());
        assert!(matches!(sprayed, Err(EditError::WrongTool { .. })), "{sprayed:?}");
    }

    #[test]
    fn a_zone_set_apart_begins_as_the_piece_and_goes_its_own_way() {
        let of_top = |edit| PieceEdit::Finish(Some("top".into()), edit);
        assert_eq!(
            edited(of_top(SchemeEdit::Remove(1))),
            Err(EditError::Unknown("zone"))
        );
        let piece = with([
            PieceEdit::Apart("top".into(), true),
            of_top(SchemeEdit::Remove(2)),
            finish(SchemeEdit::Coats(2, 3)),
        ]);
        assert_eq!(planned(piece.scheme_of("top")).len(), 3);
        assert_eq!(planned(piece.scheme_of("body"))[2].1, 3);
        let piece = with([
            PieceEdit::Apart("top".into(), true),
            PieceEdit::Apart("top".into(), false),
        ]);
        assert!(piece.zones.is_empty());
    }

    /// What is found on the piece after its top was set apart is found on the top too, until the top is said to be otherwise.
    #[test]
    fn what_is_found_on_the_piece_is_found_on_its_zones() {
        let found = |ground| finish(SchemeEdit::Ground(ground));
        let piece = with([PieceEdit::Apart("top".into(), true), found(Ground::Glossy)]);
        assert_eq!(piece.scheme_of("top").condition.ground, Ground::Glossy);
        let otherwise = PieceEdit::Finish(Some("top".into()), SchemeEdit::Ground(Ground::Bare));
        let piece = with([
            PieceEdit::Apart("top".into(), true),
            otherwise,
            found(Ground::Glossy),
        ]);
        assert_eq!(piece.scheme_of("top").condition.ground, Ground::Bare);
        assert_eq!(piece.scheme.condition.ground, Ground::Glossy);
    }

    /// A degreaser is caustic: it is planned on an old finish, not on bare wood, and again on an old finish.
    #[test]
    fn the_degreaser_goes_with_the_ground() {
        let degreased = |grounds: &[Ground]| {
            let piece = with(grounds.iter().map(|ground| finish(SchemeEdit::Ground(*ground))));
            let layer = piece
                .scheme
                .layers
                .iter()
                .find(|layer| &*layer.material == "degreaser");
            layer.unwrap().coats
        };
        assert_eq!(degreased(&[Ground::Glossy]), 1);
        assert_eq!(degreased(&[Ground::Bare]), 0);
        assert_eq!(
            degreased(&[Ground::Bare, Ground::Porous, Ground::PaintedSound]),
            1
        );
        let bare = with([finish(SchemeEdit::Ground(Ground::Bare))]).scheme;
        assert!(bare.is_as_suggested(&[], &bare.suggestion(&[])));
    }

    #[test]
    fn a_can_is_that_of_the_material_in_its_colour() {
        let red = Colour([200, 0, 0]);
        let enamel: Rc<str> = "trim-enamel".into();
        let piece = with([
            PieceEdit::Apart("top".into(), true),
            PieceEdit::Finish(Some("top".into()), SchemeEdit::Colour(red)),
            PieceEdit::Can(enamel.clone(), Some(red.0), Some("us-8-fl-oz")),
            PieceEdit::Level(enamel, Some(red.0), Some("half")),
        ]);
        let can = |scheme: &Scheme| (scheme.layers[2].can, scheme.layers[2].level);
        assert_eq!(can(piece.scheme_of("top")), (Some("us-8-fl-oz"), Some("half")));
        assert_eq!(can(&piece.scheme), (None, None));
    }

    #[test]
    fn a_stain_begins_with_the_colour_of_one() {
        let red = Colour([200, 0, 0]);
        let painted = || Wish::Painted { light: false };
        let piece = |wishes: &[Wish]| {
            let wishes = wishes.iter().map(|wish| finish(SchemeEdit::Suggested(*wish)));
            with([finish(SchemeEdit::Colour(red))].into_iter().chain(wishes))
                .scheme
                .colour
        };
        assert_eq!(piece(&[painted()]), red);
        assert_eq!(piece(&[Wish::Clear, painted()]), red);
        let stained = piece(&[Wish::StainedClear]);
        assert_ne!(stained, red);
        assert_eq!(piece(&[Wish::StainedClear, Wish::StainedClear]), stained);
        assert_eq!(piece(&[Wish::StainedClear, painted()]), Scheme::usual().colour);
    }

    #[test]
    fn a_can_in_hand_is_of_its_kind_of_material() {
        let mut workshop = Workshop::default();
        let id = PieceId("a".into());
        let colour = Some(Scheme::usual().colour.0);
        let layer = |key: &str| Edit::Piece(id.clone(), finish(SchemeEdit::Material(2, key.into())));
        for edit in [
            Edit::Add {
                id: id.clone(),
                kind: Kind::Nightstand,
            },
            Edit::Piece(
                id.clone(),
                PieceEdit::Can("trim-enamel".into(), colour, Some("us-pint")),
            ),
            Edit::AddMaterial("own-1".into(), "trim-enamel".into()),
            layer("own-1"),
        ] {
            workshop = workshop.apply(edit).unwrap();
        }
        assert_eq!(workshop.pieces[0].scheme.layers[2].can, Some("us-pint"));
        workshop = workshop.apply(layer("chalk-type-paint")).unwrap();
        assert_eq!(workshop.pieces[0].scheme.layers[2].can, None);
    }

    /// A label is that of one can, which serves the top on its own as well.
    #[test]
    fn a_label_is_of_every_zone_that_takes_the_material() {
        let mut workshop = Workshop::default();
        let id = PieceId("a".into());
        let on_piece = |edit| Edit::Piece(id.clone(), edit);
        for edit in [
            Edit::Add {
                id: id.clone(),
                kind: Kind::Nightstand,
            },
            on_piece(PieceEdit::Apart("top".into(), true)),
            Edit::AddMaterial("own-1".into(), "trim-enamel".into()),
            on_piece(PieceEdit::Exchange("trim-enamel".into(), "own-1".into())),
        ] {
            workshop = workshop.apply(edit).unwrap();
        }
        for scheme in workshop.pieces[0].schemes() {
            let of = |key: &str| {
                scheme
                    .layers
                    .iter()
                    .filter(|layer| &*layer.material == key)
                    .count()
            };
            assert_eq!((of("own-1"), of("trim-enamel")), (1, 0));
        }
        let unknown = workshop.apply(on_piece(PieceEdit::Exchange("own-1".into(), "cement".into())));
        assert_eq!(unknown, Err(EditError::Unknown("material")));
    }

    #[test]
    fn a_suggestion_takes_the_place_of_the_layers_and_keeps_their_tools() {
        let piece = with([
            finish(SchemeEdit::Tool(2, "foam-roller")),
            finish(SchemeEdit::Ground(Ground::Bare)),
            finish(SchemeEdit::Sign(Sign::OldRedStain, true)),
            finish(SchemeEdit::Suggested(Wish::Painted { light: true })),
        ]);
        let layers = planned(&piece.scheme);
        assert!(
            layers.iter().any(|layer| layer.0 == "shellac-primer"),
            "{layers:?}"
        );
        assert!(layers.contains(&("trim-enamel", 2, "foam-roller")), "{layers:?}");
        assert!(crate::takeoff(&piece, &[], Default::default()).is_ok());
    }

    /// The maker's own label of the paint and the one clear coat that was wanted are still there.
    #[test]
    fn a_suggestion_keeps_labels_and_numbers_of_coats() {
        let workshop = [
            Edit::AddMaterial("own-1".into(), "trim-enamel".into()),
            Edit::Piece(id("a"), finish(SchemeEdit::Material(2, "own-1".into()))),
            Edit::Piece(id("a"), finish(SchemeEdit::Coats(3, 1))),
            Edit::Piece(id("a"), finish(SchemeEdit::Sign(Sign::Odour, true))),
            Edit::Piece(
                id("a"),
                finish(SchemeEdit::Suggested(Wish::Painted { light: false })),
            ),
        ]
        .into_iter()
        .fold(one(), |workshop, edit| workshop.apply(edit).unwrap());
        let layers = &workshop.pieces[0].scheme.layers;
        let layers: Vec<_> = layers
            .iter()
            .map(|layer| (&*layer.material, layer.coats))
            .collect();
        assert_eq!(
            layers[1..],
            [("shellac-primer", 1), ("own-1", 2), ("water-polyurethane", 1)]
        );
    }

    #[test]
    fn materials_that_come_in_with_keys_of_the_same_row_stay_apart() {
        let workshop = |name: &str, keys: &[&str]| {
            let edits = keys.iter().enumerate().flat_map(|(layer, key)| {
                let key: Rc<str> = (*key).into();
                let plan = finish(SchemeEdit::Material(layer, key.clone()));
                [
                    Edit::AddMaterial(key.clone(), "trim-enamel".into()),
                    Edit::Material(key.clone(), MaterialEdit::Name(format!("{name} {key}"))),
                    Edit::Piece(id("a"), plan),
                ]
            });
            edits.fold(one(), |workshop, edit| workshop.apply(edit).unwrap())
        };
        let ours = workshop("ours", &["own-1"]);
        let both = ours
            .apply(Edit::Gather(workshop("theirs", &["own-1", "own-1-2"])))
            .unwrap();
        let names: Vec<String> = both.pieces[1].scheme.layers[..2]
            .iter()
            .map(|layer| {
                let own = both.materials.iter().find(|own| own.key == layer.material);
                own.unwrap().name.clone()
            })
            .collect();
        assert_eq!(names, ["theirs own-1", "theirs own-1-2"]);
    }

    #[test]
    fn a_material_of_ones_own_is_copied_priced_planned_and_removed() {
        let own: Rc<str> = "own-1".into();
        let plan = Edit::Piece(id("a"), finish(SchemeEdit::Material(2, own.clone())));
        assert_eq!(one().apply(plan.clone()), Err(EditError::Unknown("material")));
        let price = Price::new("19.90").unwrap();
        let edits = [
            Edit::AddMaterial(own.clone(), "trim-enamel".into()),
            Edit::Material(own.clone(), MaterialEdit::Name("Green".into())),
            Edit::Material(own.clone(), MaterialEdit::Price("us-quart", Some(price))),
            plan,
        ];
        let workshop = edits
            .into_iter()
            .fold(one(), |workshop, edit| workshop.apply(edit).unwrap());
        assert_eq!(&*workshop.pieces[0].scheme.layers[2].material, "own-1");
        assert_eq!(workshop.materials[0].offers().len(), 1);
        let again = workshop.apply(Edit::AddMaterial(own.clone(), "trim-enamel".into()));
        assert_eq!(again, Err(EditError::IdTaken));
        // Another workshop's material of the same key is another material.
        let other = workshop
            .apply(Edit::Material(own.clone(), MaterialEdit::Name("Red".into())))
            .unwrap();
        let both = workshop.apply(Edit::Gather(other)).unwrap();
        assert_eq!(both.materials.len(), 2);
        assert_eq!(&*both.pieces[1].scheme.layers[2].material, "own-1-2");
        let without = both.apply(Edit::RemoveMaterial("own-1-2".into())).unwrap();
        assert_eq!(&*without.pieces[1].scheme.layers[2].material, "trim-enamel");
        assert_eq!(&*without.pieces[0].scheme.layers[2].material, "own-1");
    }
}
