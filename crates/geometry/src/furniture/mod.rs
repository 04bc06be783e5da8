//! Furniture as a maker measures it, and how it becomes placed parts.

pub(crate) mod alteration;
mod base;
pub(crate) mod bay;
mod case;
mod check;
mod chest;
mod columns;
pub mod counts;
mod dimensions;
mod doubt;
mod edition;
pub mod fields;
mod frame;
mod fronts;
mod girth;
mod headboard;
mod kind;
mod layout;
mod legs;
mod notice;
mod openings;
mod piece;
mod planted;
mod problem;
mod spaces;
mod spread;
mod stand_in;
pub mod styles;
mod table;
mod top;
mod unit;
mod wanted;

use units::Length;

pub use bay::{Bay, Fill, MAX_BAYS, MAX_COLUMNS, MAX_ROWS, MAX_SHELVES, Row};
pub use counts::{CountField, Counts};
pub use dimensions::Dimension;
pub use edition::Edition;
pub use fields::{BayPlace, FieldId, LengthField, Measures};
pub use kind::{Construction, Kind};
pub use notice::{Notice, surface_words};
pub use piece::Furniture;
pub use problem::Problem;
pub use spread::PlausibleRange;
pub use stand_in::StandIn;
pub use styles::{Edge, StyleField, StyleOption, Styles};

use crate::assembly::Assembly;
use crate::drawing::View;
use crate::surface::Surface;

impl Furniture {
    /// The measurements that matter for this piece, in the order in which one takes them. Rows, bays and changes
    /// have their own.
    pub fn fields(&self) -> Vec<&'static LengthField> {
        wanted::fields(self)
    }

    /// The choices that matter for this piece.
    pub fn style_fields(&self) -> Vec<&'static StyleField> {
        wanted::styles(self)
    }

    /// What is counted of this piece.
    pub fn count_fields(&self) -> Vec<&'static CountField> {
        wanted::counts(self)
    }

    /// The piece as placed parts with the spaces around them.
    ///
    /// # Errors
    /// Every measurement that is out of its limits or does not fit beside the others.
    pub fn assembly(&self) -> Result<Assembly, Vec<Problem>> {
        let problems = check::problems(self);
        if !problems.is_empty() {
            return Err(problems);
        }
        let built = match self.kind.construction() {
            Construction::Case | Construction::TwoCases | Construction::Pedestals => case::build(self),
            Construction::Table => table::build(self),
            Construction::Chest => chest::build(self),
            Construction::Headboard => headboard::build(self),
            Construction::Frame => frame::build(self),
        };
        alteration::applied(built, &self.changes)
    }

    /// The dimension lines of a drawing of this piece; none in a turned view, where they would not be true.
    ///
    /// # Errors
    /// As for [`Furniture::assembly`].
    pub fn dimensions(&self, view: View) -> Result<Vec<Dimension>, Vec<Problem>> {
        let problems = check::problems(self);
        if problems.is_empty() {
            Ok(dimensions::of(self, view))
        } else {
            Err(problems)
        }
    }

    /// The height of each row of a bay and the clear width of each bay, measured or shared out, by their field.
    ///
    /// # Errors
    /// As for [`Furniture::assembly`].
    pub fn shared_lengths(&self) -> Result<Vec<(FieldId, Length)>, Vec<Problem>> {
        let problems = check::problems(self);
        if !problems.is_empty() {
            return Err(problems);
        }
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
        Ok(list)
    }

    /// What the piece does not have as it was entered: rows that are stretched to fit, holes that are not deducted, or not
    /// wholly, from these surfaces of it.
    ///
    /// # Errors
    /// As for [`Furniture::assembly`].
    pub fn notices(&self, assembly: &Assembly, surfaces: &[Surface]) -> Result<Vec<Notice>, Vec<Problem>> {
        let problems = check::problems(self);
        if !problems.is_empty() {
            return Err(problems);
        }
        let mut found = self.slips();
        found.extend(notice::of_holes(&assembly.holes, surfaces));
        Ok(found)
    }

    fn units(&self) -> Vec<layout::Unit<'_>> {
        match self.kind.construction() {
            Construction::Case | Construction::TwoCases | Construction::Pedestals => case::units(self),
            _ => vec![],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Added, AddedShape, Alteration};

    /// Half columns are only offered with a face frame, and fronts that lie on the frame end beside them.
    #[test]
    fn columns_fit_at_usual_sizes() {
        for kind in Kind::ALL {
            for columns in ["plain", "fluted"] {
                for fronts in ["overlay", "inset"] {
                    let mut piece = Furniture::usual(kind);
                    for (key, option) in [
                        ("face-frame", "frame"),
                        ("corner-columns", columns),
                        ("fronts", fronts),
                    ] {
                        assert!(
                            styles::by_key(key).is_some_and(|field| field.choose(&mut piece.styles, option))
                        );
                    }
                    let offers = piece
                        .style_fields()
                        .iter()
                        .any(|field| field.key == "corner-columns");
                    let built = piece.assembly();
                    let what = format!("{} {columns} {fronts}", kind.key());
                    assert!(built.is_ok(), "{what}: {:?}", built.unwrap_err());
                    let parts = built.unwrap().parts;
                    let count = parts
                        .iter()
                        .filter(|part| part.id.kind == crate::PartKind::Column)
                        .count();
                    assert_eq!(count > 0, offers, "{what}");
                }
            }
        }
    }

    #[test]
    fn columns_of_ones_own_fit_at_usual_sizes() {
        for shape in [AddedShape::Column, AddedShape::HalfColumn] {
            for flutes in 0..=16 {
                let mut piece = Furniture::usual(Kind::Dresser);
                let column = Added {
                    flutes,
                    ..Added::usual(1, shape)
                };
                piece.changes = vec![Alteration::Add(column)];
                assert!(
                    piece.assembly().is_ok(),
                    "{} {flutes}: {:?}",
                    shape.key(),
                    piece.assembly()
                );
            }
        }
    }

    /// Before anything was measured a maker can choose any style and see the piece at once.
    #[test]
    fn every_kind_can_be_built_in_every_style() {
        for kind in Kind::ALL {
            let usual = Furniture::usual(kind);
            assert!(
                usual.assembly().is_ok(),
                "{}: {:?}",
                kind.key(),
                usual.assembly().unwrap_err()
            );
            for field in usual.style_fields() {
                for option in field.options {
                    let mut piece = usual.clone();
                    field.choose(&mut piece.styles, option.key);
                    let built = piece.assembly();
                    assert!(
                        built.is_ok(),
                        "{} {} {}: {:?}",
                        kind.key(),
                        field.key,
                        option.key,
                        built.unwrap_err()
                    );
                    assert!(
                        built.is_ok_and(|piece| piece.overlaps().is_empty()),
                        "{} {}",
                        kind.key(),
                        option.key
                    );
                }
            }
        }
    }
}
