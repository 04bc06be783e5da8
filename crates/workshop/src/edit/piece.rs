//! Edits of one piece.

use super::BookEdit;
use super::EditError;
use super::MAX_COUNT;
use super::PieceEdit;
use super::shortened;
use crate::book::{DoneStep, Facts, Record};
use crate::document::{OwnMaterial, Piece, Reading, material_of};
use crate::status::{SALE, Status};
use geometry::{FieldId, MAX_COLUMNS, MAX_SHELVES, fields, styles};
use std::rc::Rc;
use units::System;

impl Piece {
    pub(super) fn apply(
        &mut self,
        edit: PieceEdit,
        own: &[Rc<OwnMaterial>],
        units: System,
    ) -> Result<(), EditError> {
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
                most("identical pieces", count as usize, MAX_COUNT as usize)?;
                self.count = count.max(1);
            }
            PieceEdit::Measure(field, reading) => self.measure(field, reading)?,
            PieceEdit::Style { choice, answer } => {
                let field = styles::by_key(choice).ok_or(EditError::Unknown("choice"))?;
                if !field.choose(&mut self.styles, answer) {
                    return Err(EditError::Unknown("answer"));
                }
            }
            PieceEdit::Counted(key, count) => self.counted(key, count)?,
            PieceEdit::Bays { case, count } => self.set_bays(case, count)?,
            PieceEdit::Rows { bay, count } => self.bay_mut(bay)?.set_rows(count)?,
            PieceEdit::RepeatRow { bay, row } => self.bay_mut(bay)?.repeat_row(row)?,
            PieceEdit::RemoveRow { bay, row } => self.bay_mut(bay)?.remove_row(row)?,
            PieceEdit::Fill { bay, row, fill } => self.row_mut(bay, row)?.fill = fill,
            PieceEdit::Columns { bay, row, columns } => {
                let columns = most("drawers or doors per row", columns, MAX_COLUMNS)?.max(1);
                self.row_mut(bay, row)?.columns = columns;
            }
            PieceEdit::Shelves { bay, row, shelves } => {
                let shelves = most("shelves per row", shelves, MAX_SHELVES)?;
                self.row_mut(bay, row)?.shelves = shelves;
            }
            PieceEdit::AddChange(change) => self.add_change(change)?,
            PieceEdit::AddPart(shape) => self.add_part(shape)?,
            PieceEdit::AlterChange { change, kind } => self.alter_change(change, kind)?,
            PieceEdit::RemoveChange(place) => {
                if place >= self.changes.len() {
                    return Err(EditError::Unknown("change"));
                }
                self.changes.remove(place);
            }
            PieceEdit::Painted { surface, painted } => {
                self.choose(surface, |choice| choice.painted = painted)
            }
            PieceEdit::Zone(surface, zone) => {
                zone.as_deref().map_or(Ok(()), |key| self.check_zone(key))?;
                self.choose(surface, |choice| choice.zone = zone);
            }
            PieceEdit::Brush(surfaces, to) => self.brush(surfaces, &to)?,
            PieceEdit::ZonePainted { zone, painted } => {
                self.choose_zone(zone, |zone| zone.painted = painted)?;
            }
            PieceEdit::NameZone { zone, name } => {
                self.choose_zone(zone, |zone| zone.name = shortened(&name))?;
            }
            PieceEdit::RemoveZone(key) => self.remove_zone(&key),
            PieceEdit::Finish(zone, edit) => self.finish(zone, edit, own)?,
            PieceEdit::Apart { zone, apart } => self.set_apart(zone, apart)?,
            PieceEdit::Exchange { from, to } => {
                material_of(own, &to).ok_or(EditError::Unknown("material"))?;
                for layer in self.layers_of(&from, None) {
                    layer.material = Rc::clone(&to);
                }
            }
            PieceEdit::Book(edit) => {
                let status = self.status_after(&edit);
                self.books.apply(edit, true, units)?;
                if let Some(status) = status {
                    self.books.set_status(status);
                }
            }
        }
        self.give_ids();
        Ok(())
    }

    /// Returns the status that a change of a book brings with it: the first step that is checked off begins
    /// the work, and a sale price or a sale day says that it was sold.
    fn status_after(&self, edit: &BookEdit) -> Option<Status> {
        let status = self.status();
        match edit {
            BookEdit::Add(DoneStep::BOOK, ..) if matches!(status, Status::Looking | Status::Bought) => {
                Some(Status::Working)
            }
            BookEdit::Write(Facts::BOOK, _, key, text) => {
                let is_sale = SALE.contains(&key.as_str()) && !text.text.trim().is_empty();
                // A piece without a status counts as sold by the sale itself.
                let is_written = self.books.one::<Facts>().status.is_some();
                (is_sale && is_written && status != Status::Sold).then_some(Status::Sold)
            }
            _ => None,
        }
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
            FieldId::Alteration { change, item, key } => self.measure_change(change, item, key, reading)?,
        }
        Ok(())
    }
}
