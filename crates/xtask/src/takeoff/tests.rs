//! Tests of the takeoff on the command line.

use super::*;
use crate::repository::Repository;
use geometry::{AddedShape, Kind, styles};
use std::rc::Rc;
use units::System;
use workshop::{ChangeKind, Piece, PieceChange, PieceId, Workshop};

fn invented() -> Loaded {
    read(&Repository::find().unwrap().at("www/invented-workshop.json")).unwrap()
}

fn assert_fits(text: &str) {
    for line in text.lines() {
        assert!(line.chars().count() <= 110, "{line}");
        assert_eq!(line.trim_end(), line);
    }
}

fn usual(kind: Kind) -> Piece {
    Piece::new(PieceId(kind.key().into()), kind, System::default())
}

fn zones_sum(zones: &serde_json::Value) -> f64 {
    let areas = zones.as_array().unwrap().iter().flat_map(|zone| {
        let lie = zone["painted_by_orientation"].as_object().unwrap();
        lie.values()
            .map(|area| area.as_f64().unwrap())
            .collect::<Vec<_>>()
    });
    areas.sum()
}

fn workshop_of(pieces: impl IntoIterator<Item = Piece>) -> Workshop {
    Workshop {
        pieces: pieces.into_iter().map(Rc::new).collect(),
        ..Workshop::default()
    }
}

#[test]
fn the_table_fits_and_names_what_counts() {
    let text = text::of(&invented().workshop, false);
    assert_fits(&text);
    for words in [
        "Six-drawer dresser",
        "Pair of nightstands",
        "Shellac-based stain blocker",
        "Foam",
        "Drawer 1.2 (drawer-front-1-2)",
        "Legs and base",
        "of arrises",
    ] {
        let found = text.to_lowercase().contains(&words.to_lowercase());
        assert!(found, "{words} is not in\n{text}");
    }
}

#[test]
fn the_table_of_every_kind_fits() {
    for system in [System::UsCustomary, System::Metric] {
        let workshop = Workshop {
            units: system,
            ..workshop_of(Kind::ALL.map(usual))
        };
        assert_fits(&text::of(&workshop, false));
    }
}

#[test]
fn long_names_do_not_make_the_table_wide() {
    let mut piece = usual(Kind::Hutch);
    for (field, answer) in [
        ("doors", "raised-panel"),
        ("sticking", "ogee"),
        ("applied", "ogee"),
    ] {
        assert!(styles::by_key(field).unwrap().choose(&mut piece.styles, answer));
    }
    for (key, inches) in [("panel-bevel", "1/2"), ("applied-inset", "1/2")] {
        let reading = workshop::Reading::new(inches, units::LengthUnit::Inch).unwrap();
        piece
            .readings
            .insert(geometry::fields::by_key(key).unwrap().key, reading);
    }
    piece.bays = vec![piece.bays[0].clone(); 2];
    piece.upper = piece.bays.clone();
    let zone = workshop::ZoneChoice {
        name: "Many words for a zone. ".repeat(5),
        painted: None,
        scheme: None,
    };
    piece.zones.insert("own".into(), zone);
    let choice = workshop::SurfaceChoice {
        zone: Some("own".into()),
        painted: Some(false),
    };
    piece.choices.insert("top/top".into(), choice);
    let text = text::of(&workshop_of([piece]), true);
    assert_fits(&text);
    assert!(
        text.contains("\u{d7} 1.") && text.contains("left, chosen"),
        "{text}"
    );
}

#[test]
fn parts_that_run_into_each_other_are_named() {
    let mut piece = usual(Kind::Bench);
    piece.changes = vec![PieceChange::new(ChangeKind::Add {
        number: 1,
        shape: AddedShape::Board,
        placed: true,
        flutes: 0,
        members: vec![],
        points: 0,
    })];
    let workshop = workshop_of([piece]);
    let text = text::of(&workshop, false);
    let warned = text
        .lines()
        .any(|line| line.starts_with("Warning: ") && line.contains("Added part 1"));
    assert!(warned, "{text}");
    let value = json::of(&workshop, false);
    assert_eq!(value["pieces"][0]["overlaps"][0]["parts"][1], "added-1");
}

#[test]
fn the_json_adds_up() {
    let value = json::of(&invented().workshop, false);
    let pieces = value["pieces"].as_array().unwrap();
    assert_eq!(pieces.len(), 2);
    for piece in pieces {
        let mut painted = 0.0;
        for surface in piece["surfaces"].as_array().unwrap() {
            let area = |value: &serde_json::Value| value.as_f64().unwrap();
            let covers = surface["deductions"].as_array().unwrap();
            let covered: f64 = covers.iter().map(|cover| area(&cover["area_m2"])).sum();
            let net = area(&surface["net_m2"]);
            let left = area(&surface["gross_m2"]) - covered;
            // Noise below the smallest area that is kept is dropped.
            assert!((left - net).abs() < 1e-6, "{surface}");
            painted += if surface["painted"] == true { net } else { 0.0 };
        }
        assert!((painted - piece["painted_each_m2"].as_f64().unwrap()).abs() < 1e-9);
        let of_zones: f64 = zones_sum(&piece["zones"]);
        assert!((of_zones - painted).abs() < 1e-9, "{of_zones} {painted}");
        let all = painted * piece["count"].as_f64().unwrap();
        assert!((all - piece["painted_m2"].as_f64().unwrap()).abs() < 1e-9);
        for stage in piece["materials"].as_array().unwrap() {
            let litres = |key: &str| stage[key].as_f64().unwrap();
            assert!(litres("low_l") <= litres("likely_l") && litres("likely_l") <= litres("high_l"));
        }
        assert_eq!(piece["materials"].as_array().unwrap().len(), 3);
        assert_eq!(piece["ways"].as_array().unwrap().len(), 4);
    }
}

#[test]
fn a_file_that_is_not_read_says_why() {
    let repository = Repository::find().unwrap();
    assert!(read(&repository.at("no-such-file")).is_err());
    let message = read(&repository.at("Cargo.toml")).unwrap_err();
    assert!(
        message.starts_with("This file is damaged or is no workshop file"),
        "{message}"
    );
}

#[test]
fn a_terminal_is_not_told_what_to_do() {
    let Loaded { mut workshop, .. } = invented();
    let mut odd = (*workshop.pieces[0]).clone();
    odd.name = "\u{1b}]0;title\u{7}\u{9b}2J".into();
    workshop.pieces[0] = odd.into();
    let text = text::of(&workshop, false);
    assert!(!text.chars().any(|c| c.is_control() && c != '\n'), "{text:?}");
}

#[test]
fn a_piece_that_cannot_be_does_not_hide_the_others() {
    let Loaded { mut workshop, .. } = invented();
    let mut bad = (*workshop.pieces[0]).clone();
    bad.bays[0].rows.clear();
    workshop.pieces[0] = bad.into();
    let value = json::of(&workshop, false);
    assert_eq!(value["pieces"][0]["problems"].as_array().unwrap().len(), 1);
    assert!(value["pieces"][1]["painted_m2"].as_f64().unwrap() > 1.0);
    let text = text::of(&workshop, false);
    assert!(text.contains("here is no row") && text.contains("Pair of nightstands"));
}
