//! Changes of whole pieces.

use std::f64::consts::PI;

use units::Length;

use super::*;
use crate::furniture::fields::PART_LENGTH;
use crate::furniture::problem::Problem;
use crate::{Drawing, Furniture, Kind, View};

fn net(changes: Vec<Alteration>) -> Result<f64, Vec<Problem>> {
    let mut table = Furniture::usual(Kind::SideTable);
    table.changes = changes;
    let surfaces = table.assembly()?.surfaces();
    Ok(surfaces
        .iter()
        .map(|surface| surface.net.as_square_metres())
        .sum())
}

#[test]
fn a_part_that_stands_alone_adds_its_whole_surface() {
    let before = net(vec![]).unwrap();
    let bar = Added::usual(1, AddedShape::Bar);
    let board = Added::usual(2, AddedShape::Board);
    let column = Added::usual(3, AddedShape::Column);
    let after = net(vec![
        Alteration::Add(bar),
        Alteration::Add(board),
        Alteration::Add(column),
    ])
    .unwrap();
    let bar = 0.1 * 0.6;
    let board = 2.0 * (0.4 * 0.3 + 0.4 * 0.019 + 0.3 * 0.019);
    let column = PI * 0.05 * 0.6 + 2.0 * PI * 0.025 * 0.025;
    assert!(
        (after - before - bar - board - column).abs() < 1e-9,
        "{}",
        after - before
    );
}

#[test]
fn a_fluted_column_has_more_around_it() {
    let plain = Added::usual(1, AddedShape::Column);
    let fluted = Added {
        flutes: 12,
        ..plain.clone()
    };
    let [plain, fluted] = [plain, fluted].map(|added| net(vec![Alteration::Add(added)]).unwrap());
    assert!(fluted > plain, "{fluted} {plain}");
}

#[test]
fn boards_grow_and_shaped_parts_do_not() {
    let resize = |part: &str| Alteration::Resize {
        part: part.into(),
        along: Along::Height,
        to: Length::millimetres(50.0),
    };
    assert!(net(vec![resize("apron-back")]).is_ok());
    let problems = net(vec![resize("leg-1")]).unwrap_err();
    assert!(
        problems[0].to_string().contains("Leg, front left"),
        "{}",
        problems[0]
    );
}

#[test]
fn a_change_of_what_is_gone_says_so() {
    let remove = Alteration::Remove {
        part: "apron-back".into(),
    };
    let problems = net(vec![remove.clone(), remove]).unwrap_err();
    assert_eq!(
        problems[0].to_string(),
        "Change 2 is about \"apron-back\", which this piece no longer has. Delete the change or restore the part."
    );
}

#[test]
fn a_moulding_is_not_longer_than_its_piece() {
    let planted = |inches| {
        let mut moulding = Added::usual(1, AddedShape::Moulding);
        moulding.measures.set(&PART_LENGTH, Length::inches(inches));
        moulding.place = Some([Length::inches(1.0), Length::inches(1.0), Length::inches(20.0)]);
        net(vec![Alteration::Add(moulding)])
    };
    assert!(planted(18.0).is_ok());
    let problem = planted(30.0).unwrap_err()[0].to_string();
    assert!(problem.starts_with("Change 1: length is 762 mm"), "{problem}");
}

#[test]
fn repeats_have_names_of_their_own() {
    let mut table = Furniture::usual(Kind::SideTable);
    table.changes = vec![Alteration::Repeat {
        part: "apron-left".into(),
        times: 3,
        towards: Towards::Right,
        every: Length::millimetres(60.0),
    }];
    let names: Vec<String> = table
        .assembly()
        .unwrap()
        .parts
        .iter()
        .map(|part| part.id.to_string())
        .collect();
    assert!(
        names.contains(&"apron-left~2".into()) && names.contains(&"apron-left~3".into()),
        "{names:?}"
    );
}

#[test]
fn a_hole_is_deducted_and_named() {
    let mut table = Furniture::usual(Kind::SideTable);
    table.changes = vec![Alteration::Hole {
        surface: "top/top".into(),
        width: Length::millimetres(60.0),
        height: Length::millimetres(60.0),
    }];
    let surfaces = table.assembly().unwrap().surfaces();
    let top = surfaces
        .iter()
        .find(|surface| surface.id.to_string() == "top/top")
        .unwrap();
    assert_eq!(top.deductions[0].by.to_string(), "hole-1");
    assert!((top.deductions[0].area.as_square_metres() - 0.0036).abs() < 1e-12);
}

/// A maker may remove every part, and add some that stand alone.
#[test]
fn a_piece_without_parts_in_their_places_has_surfaces_and_drawings() {
    for kind in Kind::ALL {
        let mut piece = Furniture::usual(kind);
        let parts = piece.assembly().unwrap().parts;
        let names = parts.iter().map(|part| part.id.to_string());
        piece.changes = names.map(|part| Alteration::Remove { part }).collect();
        for added in [0, 1] {
            let assembly = piece.assembly().unwrap();
            let surfaces = assembly.surfaces();
            assert_eq!(surfaces.len(), 6 * added, "{}", kind.key());
            assert_eq!(assembly.net_areas().len(), surfaces.len());
            assert_eq!(assembly.overlaps(), []);
            let drawing = Drawing::of(&surfaces, View::Front);
            assert_eq!(drawing.faces.len(), added, "{}", kind.key());
            let board = Added::usual(1, AddedShape::Board);
            piece.changes.push(Alteration::Add(board));
        }
    }
}
