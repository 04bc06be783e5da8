//! Tests of the takeoff on the command line.

use super::*;
use crate::repository::Repository;
use geometry::{AddedShape, Kind, styles};
use std::rc::Rc;
use units::System;
use workshop::{
    ChangeKind, Edit, HaveEdit, MaterialEdit, Piece, PieceChange, PieceEdit, PieceId, Price, SchemeEdit,
    SurfaceChoice, Workshop,
};

/// What is printed of a workshop.
fn said(workshop: &Workshop, form: Form) -> String {
    text::of(&Analysis::of(std::rc::Rc::new(workshop.clone())), form)
}

const SHORT: Form = Form {
    json: false,
    faces: false,
    math: false,
};
const FACES: Form = Form { faces: true, ..SHORT };
const MATH: Form = Form { math: true, ..SHORT };
const ALL: Form = Form { math: true, ..FACES };

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
    Piece::new(PieceId(kind.key().into()), kind)
}

fn json(workshop: &Workshop) -> serde_json::Value {
    let loaded = Loaded {
        workshop: workshop.clone(),
        notices: vec![],
    };
    serde_json::to_value(report(&loaded, false)).unwrap()
}

fn workshop_of(pieces: impl IntoIterator<Item = Piece>) -> Workshop {
    Workshop {
        pieces: pieces.into_iter().map(Rc::new).collect(),
        ..Workshop::default()
    }
}

#[test]
fn the_answer_is_short_and_comes_first() {
    let text = said(&invented().workshop, SHORT);
    assert_fits(&text);
    assert!(text.lines().count() <= 20, "{text}");
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines[0], "Six-drawer dresser");
    assert!(
        lines[2].starts_with("Area to coat: 32.8 ft\u{b2}. Within 0."),
        "{text}"
    );
    assert!(
        lines[3].starts_with("Shellac-based stain blocker: Enough. Plan on "),
        "{text}"
    );
    for words in [
        "for 2, 11.2 ft\u{b2} each",
        "#b4552d: You'll run out. Buy 2 \u{d7} 8 fl oz. Plan on 18 fl oz for 2 coats.",
        "Shopping list",
    ] {
        assert!(text.contains(words), "{words} is not in\n{text}");
    }
    assert!(!text.contains("drawer-front-1-2") && !text.contains("amount ="));
}

#[test]
fn a_can_that_is_not_enough_says_how_likely_it_is() {
    let mut workshop = invented().workshop;
    let id = workshop.pieces[0].id.clone();
    let blocker = workshop.pieces[0].scheme.layers[0].material.clone();
    let answer = |workshop: &Workshop| {
        let text = said(workshop, SHORT);
        let line = text.lines().find(|line| line.starts_with("Shellac"));
        line.unwrap().to_owned()
    };
    let have = |can| Edit::Have {
        piece: id.clone(),
        material: blocker.clone(),
        colour: None,
        edit: HaveEdit::Can(can),
    };
    workshop = workshop.apply(have(None)).unwrap();
    assert!(
        answer(&workshop).contains("blocker: Buy 1 quart. "),
        "{}",
        answer(&workshop)
    );
    workshop = workshop.apply(have(Some("us-4-fl-oz"))).unwrap();
    let line = answer(&workshop);
    assert!(line.contains("blocker: You'll run out. Buy "), "{line}");
}

#[test]
fn the_faces_are_named_with_their_groups() {
    let text = said(&invented().workshop, FACES);
    assert_fits(&text);
    for words in [
        "Drawer 1.2 (drawer-front-1-2)",
        "Legs and base",
        "outer edges",
        "1 \u{d7} Shellac-based stain blocker, brush; 2 \u{d7} Acrylic trim enamel, mini foam roller",
    ] {
        let joined = text.replace("\n  ", " ");
        assert!(joined.contains(words), "{words} is not in\n{text}");
    }
}

#[test]
fn the_table_of_every_kind_fits() {
    for system in [System::UsCustomary, System::Metric] {
        let workshop = Workshop {
            units: system,
            ..workshop_of(Kind::ALL.map(usual))
        };
        assert_fits(&said(&workshop, ALL));
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
    let text = said(&workshop_of([piece]), ALL);
    assert_fits(&text);
    assert!(
        text.contains("\u{d7} 1.") && text.contains("  no, chosen"),
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
    let text = said(&workshop, SHORT);
    let warned = text
        .lines()
        .any(|line| line.starts_with("Warning: ") && line.contains("Added part 1"));
    assert!(warned, "{text}");
    let value = json(&workshop);
    assert_eq!(value["pieces"][0]["overlaps"][0]["parts"][1], "added-1");
}

#[test]
fn what_does_not_count_is_named() {
    let mut piece = usual(Kind::Bench);
    let left = SurfaceChoice {
        zone: None,
        painted: Some(false),
    };
    piece.choices.insert("top/moulded-front".into(), left);
    let workshop = workshop_of([piece]);
    let text = said(&workshop, SHORT);
    assert_fits(&text);
    let warned = |line: &str| line.starts_with("Warning: ") && line.contains("top, molded front");
    assert!(text.lines().any(warned), "{text}");
    let notices = &json(&workshop)["pieces"][0]["notices"];
    assert_eq!(notices.as_array().map(Vec::len), Some(1), "{notices}");
}

#[test]
fn a_file_that_is_not_read_says_why() {
    let repository = Repository::find().unwrap();
    assert!(read(&repository.at("no-such-file")).is_err());
    let message = read(&repository.at("Cargo.toml")).unwrap_err();
    assert!(
        message.starts_with("Choose another file. This one is damaged"),
        "{message}"
    );
}

#[test]
fn a_terminal_is_not_told_what_to_do() {
    let Loaded { mut workshop, .. } = invented();
    let mut odd = (*workshop.pieces[0]).clone();
    odd.name = "\u{1b}]0;title\u{7}\u{9b}2J".into();
    workshop.pieces[0] = odd.into();
    let text = said(&workshop, SHORT);
    assert!(!text.chars().any(|c| c.is_control() && c != '\n'), "{text:?}");
}

#[test]
fn a_piece_that_cannot_be_does_not_hide_the_others() {
    let Loaded { mut workshop, .. } = invented();
    let mut bad = (*workshop.pieces[0]).clone();
    bad.bays[0].rows.clear();
    workshop.pieces[0] = bad.into();
    let value = json(&workshop);
    assert_eq!(value["pieces"][0]["problems"].as_array().unwrap().len(), 1);
    assert!(value["pieces"][1]["paintedSquareMetres"].as_f64().unwrap() > 1.0);
    let text = said(&workshop, SHORT);
    assert!(text.contains("add a row") && text.contains("Pair of nightstands"));
}

/// The invented workshop with a paint of the maker's own on the dresser, at these prices.
fn with_prices(prices: &[(&'static str, &str)]) -> Workshop {
    let mut edits = vec![Edit::AddMaterial("own-1".into(), "trim-enamel".into())];
    edits.extend(prices.iter().map(|(can, typed)| {
        let price = Price::new(typed).unwrap();
        Edit::Material("own-1".into(), MaterialEdit::Price(can, Some(price)))
    }));
    let workshop = invented().workshop;
    let mut layers = workshop.pieces[0].scheme.layers.iter();
    let place = layers.position(|layer| *layer.material == *"trim-enamel");
    let material = SchemeEdit::Material(place.unwrap(), "own-1".into());
    let dresser = workshop.pieces[0].id.clone();
    let colour = workshop.pieces[0].scheme.colour.0;
    edits.extend([
        Edit::Piece(dresser.clone(), PieceEdit::Finish(None, material)),
        Edit::Have {
            piece: dresser,
            material: "own-1".into(),
            colour: Some(colour),
            edit: HaveEdit::Can(None),
        },
    ]);
    edits
        .into_iter()
        .fold(workshop, |workshop, edit| workshop.apply(edit).unwrap())
}

fn paint_to_buy(workshop: &Workshop) -> serde_json::Value {
    json(workshop)["pieces"][0]["materials"][1]["toBuy"].clone()
}

/// About 19 fl oz are wanted: a quart, or two pints that are cheaper by the price of the shop.
#[test]
fn the_cheapest_cans_are_bought_where_prices_are_known() {
    let cans = |prices: &[(&'static str, &str)]| {
        let buy = paint_to_buy(&with_prices(prices));
        let cans = buy["cans"].as_array().unwrap().iter();
        let cans: Vec<String> = cans
            .map(|can| format!("{} {}", can["count"], can["can"].as_str().unwrap()))
            .collect();
        (cans, buy["priceHundredths"].as_u64())
    };
    let dear = cans(&[("us-quart", "30"), ("us-pint", "12.50")]);
    assert_eq!(dear, (vec!["2 us-pint".to_owned()], Some(2500)));
    let cheap = cans(&[("us-quart", "24"), ("us-pint", "12.50")]);
    assert_eq!(cheap, (vec!["1 us-quart".to_owned()], Some(2400)));
    assert_eq!(cans(&[]).1, None);
    let text = said(&with_prices(&[("us-quart", "24")]), SHORT);
    let priced = |line: &str| line.contains("Buy 1 quart, 24.00.");
    assert!(text.lines().any(priced), "{text}");
}

#[test]
fn the_math_shows_formulas_units_and_sources() {
    let text = said(&invented().workshop, MATH);
    assert_fits(&text);
    for words in ["amount = area *", "m\u{b2}", "(common practice, no source)"] {
        assert!(text.contains(words), "{words}");
    }
    assert!(!said(&invented().workshop, SHORT).contains("amount = area"));
}

#[test]
fn the_finish_of_each_group_is_told() {
    let workshop = invented().workshop;
    let id = workshop.pieces[0].id.clone();
    let red = SchemeEdit::Colour(workshop::Colour([200, 0, 0]));
    let workshop = [
        PieceEdit::Apart {
            zone: "fronts".into(),
            apart: true,
        },
        PieceEdit::Finish(Some("fronts".into()), red),
    ]
    .into_iter()
    .fold(workshop, |workshop, edit| {
        workshop.apply(Edit::Piece(id.clone(), edit)).unwrap()
    });
    let text = said(&workshop, FACES);
    for words in [
        "Top, Body, Legs and base, ",
        "\nDrawers and doors, ",
        "color #c80000",
    ] {
        assert!(text.contains(words), "{words} is not in\n{text}");
    }
    let zones = json(&workshop)["pieces"][0]["zones"].clone();
    let own = zones.as_array().unwrap().iter();
    let own: Vec<_> = own.filter(|zone| !zone["ownScheme"].is_null()).collect();
    assert_eq!(own.len(), 1);
    assert_eq!(own[0]["ownScheme"]["colour"], "#c80000");
}
