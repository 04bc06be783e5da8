//! Edits of the division of the front: bays, rows, counts.

use geometry::{BayPlace, Construction, MAX_BAYS, MAX_ROWS, counts};

use super::{Case, EditError};
use crate::document::{Bay, Piece, Row};

impl Piece {
    pub(super) fn bay_mut(&mut self, place: BayPlace) -> Result<&mut Bay, EditError> {
        self.bay_at(place).ok_or(EditError::Unknown("bay"))
    }

    pub(super) fn row_mut(&mut self, place: BayPlace, row: usize) -> Result<&mut Row, EditError> {
        let rows = &mut self.bay_mut(place)?.rows;
        let row = row.checked_sub(1).and_then(|index| rows.get_mut(index));
        row.ok_or(EditError::Unknown("row"))
    }

    /// Sets the number of bays. New bays are like the last one. Only cases can have another number than their
    /// default.
    pub(super) fn set_bays(&mut self, case: Case, count: usize) -> Result<(), EditError> {
        let is_case = matches!(
            self.kind.construction(),
            Construction::Case | Construction::TwoCases
        );
        let bays = match case {
            Case::Lower => &mut self.bays,
            Case::Upper => &mut self.upper,
        };
        let last = bays.last().filter(|_| is_case).ok_or(EditError::Unknown("bay"))?;
        if count > MAX_BAYS {
            return Err(EditError::TooMany {
                what: "bays",
                most: MAX_BAYS,
            });
        }
        let like_last = Bay {
            width: None,
            ..last.clone()
        };
        bays.resize(count.max(1), like_last);
        Ok(())
    }

    pub(super) fn counted(&mut self, key: &str, count: Option<u32>) -> Result<(), EditError> {
        let field = counts::by_key(key).ok_or(EditError::Unknown("count"))?;
        match count {
            Some(count) if count > field.max => Err(EditError::TooMany {
                what: field.label,
                most: field.max as usize,
            }),
            Some(count) => {
                self.counts.set(field, count.max(field.min));
                Ok(())
            }
            None => {
                self.counts.clear(field);
                Ok(())
            }
        }
    }
}

impl Bay {
    /// Sets the number of rows. New rows are like the last one.
    pub(super) fn set_rows(&mut self, count: usize) -> Result<(), EditError> {
        if count > MAX_ROWS {
            return Err(too_many_rows());
        }
        let last = self.rows.last().ok_or(EditError::Unknown("row"))?;
        let like_last = Row {
            height: None,
            ..last.clone()
        };
        self.rows.resize(count.max(1), like_last);
        Ok(())
    }

    /// Duplicates a row, with its height, below itself.
    pub(super) fn repeat_row(&mut self, row: usize) -> Result<(), EditError> {
        if self.rows.len() >= MAX_ROWS {
            return Err(too_many_rows());
        }
        let index = row.checked_sub(1).filter(|index| *index < self.rows.len());
        let index = index.ok_or(EditError::Unknown("row"))?;
        self.rows.insert(index + 1, self.rows[index].clone());
        Ok(())
    }

    /// Deletes a row. The rows below it move up.
    pub(super) fn remove_row(&mut self, row: usize) -> Result<(), EditError> {
        let index = row.checked_sub(1).filter(|index| *index < self.rows.len());
        let index = index.filter(|_| self.rows.len() > 1);
        self.rows.remove(index.ok_or(EditError::Unknown("row"))?);
        Ok(())
    }
}

fn too_many_rows() -> EditError {
    EditError::TooMany {
        what: "rows",
        most: MAX_ROWS,
    }
}
