//! Furniture as a maker measures it, and how it becomes placed parts.

pub(crate) mod alteration;
mod base;
pub(crate) mod bay;
mod case;
mod check;
mod checked;
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

pub use bay::{Bay, Fill, MAX_BAYS, MAX_COLUMNS, MAX_ROWS, MAX_SHELVES, Row};
pub use checked::Checked;
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

    /// A maker may measure over the top once, and the overhang as well.
    #[test]
    fn sizes_over_the_top_are_those_of_the_case_and_the_overhang() {
        for kind in [Kind::Dresser, Kind::Hutch, Kind::BlanketBox] {
            let mut case = Furniture::usual(kind);
            let inches = units::Length::inches;
            case.measures.set(&fields::OVERHANG_SIDE, inches(0.75));
            case.measures.set(&fields::OVERHANG_FRONT, inches(1.25));
            case.measures.set(&fields::WIDTH, inches(48.0));
            case.measures.set(&fields::DEPTH, inches(18.0));
            let mut over_top = case.clone();
            assert!(styles::TAPE_OVER.choose(&mut over_top.styles, "top"));
            over_top.measures.set(&fields::WIDTH, inches(49.5));
            over_top.measures.set(&fields::DEPTH, inches(19.25));
            let near = |one: units::Length, other: units::Length| (one - other).as_metres().abs() < 1e-12;
            for field in [&fields::WIDTH, &fields::DEPTH] {
                assert!(near(case.length(field), over_top.length(field)), "{}", field.key);
            }
            let line = |piece: &Furniture| {
                let lines = piece.checked().unwrap().dimensions(crate::View::Front);
                let line = lines
                    .into_iter()
                    .find(|line| line.field == fields::WIDTH.id())
                    .unwrap();
                line.to[0] - line.from[0]
            };
            assert!(
                (line(&over_top) - inches(49.5).as_metres()).abs() < 1e-9,
                "{}",
                kind.key()
            );
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
