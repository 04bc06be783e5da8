//! Furniture as a maker measures it, and how it becomes placed parts.

mod base;
pub mod bay;
mod case;
pub mod change;
mod check;
mod chest;
mod columns;
pub mod counts;
mod dimensions;
mod edition;
pub mod fields;
mod frame;
mod fronts;
mod headboard;
mod kind;
mod layout;
mod legs;
mod notice;
mod openings;
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
pub use change::Change;
pub use counts::{CountField, Counts};
pub use edition::Edition;
pub use fields::{BayPlace, FieldId, LengthField, Measures};
pub use kind::{Construction, Kind};
pub use notice::{Notice, surface_words};
pub use problem::Problem;
pub use spread::Spread;
pub use stand_in::StandIn;
pub use styles::{Edge, StyleField, StyleOption, Styles};

use crate::assembly::Assembly;
use crate::drawing::{Dimension, View};
use crate::surface::Surface;
use styles::{BaseStyle, CornerColumns, FaceFrame};

/// How wide a half column usually is at most, as a share of the stile that it is planted on (common practice, no source).
const COLUMN_OF_STILE: f64 = 5.0 / 6.0;

/// A piece of furniture as measured.
///
/// # Example
/// ```
/// use geometry::{Furniture, Kind, fields};
/// use units::Length;
/// let mut dresser = Furniture::usual(Kind::Dresser);
/// dresser.measures.set(&fields::WIDTH, Length::inches(60.0));
/// let surfaces = dresser.assembly().unwrap().surfaces();
/// assert!(surfaces.iter().any(|surface| surface.id.to_string() == "drawer-front-1-1/front"));
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Furniture {
    /// What kind of piece it is.
    pub kind: Kind,
    /// What stands in for all that was not measured, chosen or counted.
    pub edition: Edition,
    /// What was measured.
    pub measures: Measures,
    /// How it is made.
    pub styles: Styles,
    /// What was counted.
    pub counts: Counts,
    /// How the front is divided; of a desk, one bay for each pedestal.
    pub bays: Vec<Bay>,
    /// How the front of the upper case is divided, if there is one.
    pub upper: Vec<Bay>,
    /// What the maker altered, in order.
    pub changes: Vec<Change>,
}

impl Furniture {
    /// A new piece of this kind before anything was measured.
    pub fn usual(kind: Kind) -> Self {
        Furniture::of_edition(kind, Edition::LATEST)
    }

    /// A piece of this kind before anything was measured, as an edition has it.
    pub fn of_edition(kind: Kind, edition: Edition) -> Self {
        Furniture {
            kind,
            edition,
            measures: Measures::default(),
            styles: edition.styles(kind),
            counts: Counts::default(),
            bays: edition.bays(kind, false),
            upper: edition.bays(kind, true),
            changes: vec![],
        }
    }

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

    /// The measured length, or the usual one of the kind.
    pub fn length(&self, field: &LengthField) -> Length {
        let measured = self.measures.get(field);
        measured.unwrap_or_else(|| self.edition.length(self, field))
    }

    /// The length that was not measured, in the first edition.
    fn usual_length(&self, field: &LengthField) -> Length {
        match field.key {
            key if key == fields::EDGE_WIDTH.key && self.has_measured_edge() => {
                let [girth, thick] = [&fields::EDGE_GIRTH, &fields::TOP_THICKNESS].map(|f| self.length(f));
                top::likely_width(girth, thick).max(fields::EDGE_WIDTH.min)
            }
            key if key == fields::EDGE_WIDTH.key => self.length(&fields::EDGE_HEIGHT),
            key if key == fields::EDGE_GIRTH.key => {
                let thick = self.length(&fields::TOP_THICKNESS);
                let width = self.measures.get(&fields::EDGE_WIDTH);
                width.map_or(thick, |width| top::round_over_girth(width, thick))
            }
            key if key == fields::FRAME.key => self.kind.usual(field).max(self.frame_beside_columns()),
            key if key == fields::COLUMN_DIAMETER.key => {
                let stile = self.length(&fields::STILE);
                self.kind.usual(field).min(stile * COLUMN_OF_STILE)
            }
            key if key == fields::LEG_WIDTH.key && self.has_bun_feet() => Length::inches(3.0),
            key if key == fields::LEG_HEIGHT.key && self.has_bun_feet() => Length::inches(2.0),
            key if key == fields::PLINTH_SETBACK.key && self.styles.base != BaseStyle::Plinth => {
                Length::metres(0.0)
            }
            _ => self.kind.usual(field),
        }
    }

    /// How far within the outside of the case fronts end that lie on a frame with half columns: beside the columns, which
    /// are planted on the middle of the stiles. Nothing without columns.
    fn frame_beside_columns(&self) -> Length {
        let styles = &self.styles;
        if styles.face_frame == FaceFrame::None || styles.corner_columns == CornerColumns::None {
            return Length::ZERO;
        }
        (self.length(&fields::STILE) + self.length(&fields::COLUMN_DIAMETER)) / 2.0
    }

    fn has_measured_edge(&self) -> bool {
        self.styles.top_edge == Edge::Measured && self.kind.construction() != Construction::Frame
    }

    fn has_bun_feet(&self) -> bool {
        let stands_on_base = matches!(
            self.kind.construction(),
            Construction::Case | Construction::TwoCases | Construction::Pedestals | Construction::Chest
        );
        stands_on_base && self.styles.base == BaseStyle::BunFeet
    }

    /// The number that was counted, or the usual one of the kind.
    pub fn count(&self, field: &CountField) -> u32 {
        self.counts
            .get(field)
            .unwrap_or_else(|| self.edition.count(self.kind, field))
    }

    /// The bays of one of the cases.
    pub fn bays_of(&self, upper: bool) -> &[Bay] {
        if upper { &self.upper } else { &self.bays }
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
        change::applied(built, &self.changes)
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
    use crate::{Added, AddedShape};

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
                piece.changes = vec![Change::Add(column)];
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
