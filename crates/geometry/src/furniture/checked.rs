//! A piece that passed the check, and what is worked out from it.

use units::Length;

use super::layout::Unit;
use super::{
    BayPlace, Construction, Dimension, FieldId, Fill, Furniture, Notice, Problem, alteration, case, check,
    chest, dimensions, frame, headboard, notice, table,
};
use crate::assembly::Assembly;
use crate::drawing::View;
use crate::surface::Surface;

/// A piece whose measurements are within their limits and fit beside each other.
#[derive(Clone, Copy, Debug)]
pub struct Checked<'a> {
    pub(super) furniture: &'a Furniture,
}

impl Furniture {
    /// Checks the measurements. Check a piece once and take all that is needed from the result.
    ///
    /// # Errors
    /// Every measurement that is out of its limits or does not fit beside the others.
    pub fn checked(&self) -> Result<Checked<'_>, Vec<Problem>> {
        let problems = check::problems(self);
        if problems.is_empty() {
            Ok(Checked { furniture: self })
        } else {
            Err(problems)
        }
    }

    /// The piece as placed parts with the spaces around them: [`Furniture::checked`], then [`Checked::assembly`].
    ///
    /// # Errors
    /// Every measurement that is out of its limits or does not fit beside the others, and every change that cannot be made.
    pub fn assembly(&self) -> Result<Assembly, Vec<Problem>> {
        self.checked()?.assembly()
    }
}

impl<'a> Checked<'a> {
    /// The piece as placed parts with the spaces around them.
    ///
    /// # Errors
    /// Every change that is out of its limits, or the first one that cannot be made.
    pub fn assembly(self) -> Result<Assembly, Vec<Problem>> {
        let furniture = self.furniture;
        let built = match furniture.kind.construction() {
            Construction::Case | Construction::TwoCases | Construction::Pedestals => case::build(furniture),
            Construction::Table => table::build(furniture),
            Construction::Chest => chest::build(furniture),
            Construction::Headboard => headboard::build(furniture),
            Construction::Frame => frame::build(furniture),
        };
        alteration::applied(built, &furniture.changes)
    }

    /// The dimension lines of a drawing of this piece; none in a turned view, where they would not be true.
    pub fn dimensions(self, view: View) -> Vec<Dimension> {
        dimensions::of(self.furniture, view, None)
    }

    /// The same, with the rows of this bay where there is room for the rows of one bay only.
    pub fn dimensions_with_rows_of(self, view: View, place: BayPlace) -> Vec<Dimension> {
        dimensions::of(self.furniture, view, Some(place))
    }

    /// The height of each row and the clear width of each bay, measured or shared out, with its field.
    pub fn shared_lengths(self) -> Vec<(FieldId, Length)> {
        let mut list = Vec::new();
        for unit in self.units() {
            let at = unit.layout();
            for (i, bay) in at.bays.iter().enumerate() {
                let place = unit.place(i);
                let clear = bay.clear[1] - bay.clear[0];
                list.push((FieldId::BayWidth(place), Length::metres(clear)));
                for (r, row) in bay.rows.iter().enumerate() {
                    let span = if row.fill == Fill::Open {
                        row.opening
                    } else {
                        row.front
                    };
                    let height = Length::metres(span[1] - span[0]);
                    list.push((FieldId::RowHeight(place, r + 1), height));
                }
            }
        }
        list
    }

    /// What differs from what was entered: rows that are stretched to fit, and holes that are not, or not fully,
    /// deducted from these surfaces.
    pub fn notices(self, assembly: &Assembly, surfaces: &[Surface]) -> Vec<Notice> {
        let mut found = notice::of_slips(&self.units());
        found.extend(notice::of_holes(&assembly.holes, surfaces));
        found
    }

    pub(super) fn units(self) -> Vec<Unit<'a>> {
        match self.furniture.kind.construction() {
            Construction::Case | Construction::TwoCases | Construction::Pedestals => {
                case::units(self.furniture)
            }
            _ => vec![],
        }
    }
}
