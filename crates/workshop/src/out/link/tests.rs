//! Round trips of pieces through links.

use std::rc::Rc;

use coatings::{Basis, Substrate};
use geometry::{AddedShape, BayPlace, FieldId, Fill, Kind, fields, styles};
use proptest::prelude::*;
use units::{LengthUnit, System};

use super::*;
use crate::document::{Colour, LabelReading, Price, Reading, label_field};
use crate::results::RESULTS;
use crate::{BookEdit, Case, ChangeKind, Edit, MaterialEdit, PieceChange, PieceEdit, SchemeEdit, Sign};

fn id(name: &str) -> PieceId {
    PieceId(name.into())
}

fn typed(text: &str) -> Option<Reading> {
    Reading::new(text, LengthUnit::Inch).ok()
}

/// Edits that touch every entry of a record.
fn edits() -> Vec<PieceEdit> {
    let place = BayPlace { upper: false, bay: 1 };
    let top = || Some("top".to_owned());
    let mut edits = vec![
        PieceEdit::Name("A \u{201c}piece\u{201d}".into()),
        PieceEdit::Name(String::new()),
        PieceEdit::Count(2),
        PieceEdit::Measure(fields::HEIGHT.id(), typed("33 7/8")),
        PieceEdit::Measure(fields::WIDTH.id(), typed("1.2 m")),
        PieceEdit::Bays {
            case: Case::Lower,
            count: 2,
        },
        PieceEdit::Rows { bay: place, count: 3 },
        PieceEdit::Fill {
            bay: place,
            row: 1,
            fill: Fill::Doors,
        },
        PieceEdit::Columns {
            bay: place,
            row: 1,
            columns: 3,
        },
        PieceEdit::Shelves {
            bay: place,
            row: 1,
            shelves: 2,
        },
        PieceEdit::Measure(FieldId::RowHeight(place, 1), typed("7")),
        PieceEdit::AddChange(PieceChange::new(ChangeKind::Remove { part: "back".into() })),
        PieceEdit::AddPart(AddedShape::Moulding),
        PieceEdit::Painted {
            surface: "top/top".into(),
            painted: Some(false),
        },
        PieceEdit::ZonePainted {
            zone: "inside".into(),
            painted: Some(true),
        },
        PieceEdit::NameZone {
            zone: "own-1".into(),
            name: "Stripes".into(),
        },
        PieceEdit::Zone("top/top".into(), Some("own-1".into())),
        PieceEdit::Apart {
            zone: "own-1".into(),
            apart: true,
        },
        PieceEdit::Apart {
            zone: "top".into(),
            apart: true,
        },
        PieceEdit::Finish(top(), SchemeEdit::Colour(Colour([1, 2, 3]))),
        PieceEdit::Finish(top(), SchemeEdit::Remove(0)),
        PieceEdit::Finish(None, SchemeEdit::Add("degreaser".into())),
        PieceEdit::Finish(None, SchemeEdit::Remove(0)),
        PieceEdit::Finish(None, SchemeEdit::Coats(1, 4)),
        PieceEdit::Finish(None, SchemeEdit::Substrate(Substrate::Bare)),
        PieceEdit::Finish(None, SchemeEdit::Species(Some("walnut"))),
        PieceEdit::Finish(None, SchemeEdit::Sign(Sign::Knots, true)),
        PieceEdit::Finish(None, SchemeEdit::Basis(Basis::LabelRate)),
        PieceEdit::Finish(None, SchemeEdit::Material(1, "own-1".into())),
        PieceEdit::Finish(None, SchemeEdit::Tool(1, "hvlp")),
    ];
    for field in styles::ALL {
        let options = field.options.iter();
        edits.extend(options.map(|option| PieceEdit::Style {
            choice: field.key,
            answer: option.key,
        }));
    }
    edits
}

/// A workshop with one piece and two materials of its own.
fn workshop(kind: Kind, system: System, places: &[prop::sample::Index]) -> Workshop {
    let own: Rc<str> = "own-1".into();
    let rate = LabelReading::new(label_field("rate").unwrap(), "350-450", "ft2/gal").ok();
    let start = [
        Edit::Units(system),
        Edit::Add { id: id("a"), kind },
        Edit::AddMaterial(own.clone(), "trim-enamel".into()),
        Edit::AddMaterial("own-2".into(), "clear-wax".into()),
        Edit::Material(own.clone(), MaterialEdit::Name("Left-over green".into())),
        Edit::Material(own.clone(), MaterialEdit::Label("rate", rate)),
        Edit::Material(own, MaterialEdit::Price("us-quart", Price::new("24.50").ok())),
    ];
    let all = edits();
    let edits = places
        .iter()
        .map(|place| Edit::Piece(id("a"), all[place.index(all.len())].clone()));
    start
        .into_iter()
        .chain(edits)
        .fold(Workshop::default(), |workshop, edit| {
            // Edits that do not fit this kind of piece are skipped.
            workshop.apply(edit).unwrap_or(workshop)
        })
}

fn sent(workshop: &Workshop) -> Workshop {
    let text = link_text(&workshop.pieces[0], &workshop.materials).unwrap();
    let Loaded { workshop, notices } = read_link(&text, id("sent")).unwrap();
    assert!(notices.is_empty(), "{notices:?}\n{text}");
    workshop
}

#[test]
fn what_was_paid_and_written_about_a_piece_stays_at_home() {
    let bought = BookEdit::Write("facts", "only".into(), "bought".into(), "20".into());
    let ours = workshop(Kind::Nightstand, System::Metric, &[])
        .apply(Edit::Piece(id("a"), PieceEdit::Book(bought)))
        .unwrap();
    let own = Edit::Piece(
        id("a"),
        PieceEdit::Finish(None, SchemeEdit::Material(2, "own-1".into())),
    );
    let ours = ours.apply(own).unwrap();
    let text = link_text(&ours.pieces[0], &ours.materials).unwrap();
    assert!(
        text.contains("own-1") && !text.contains("24.50") && !text.contains("facts"),
        "{text}"
    );
}

/// Returns the piece with another id, and with new ids for its parts.
fn as_sent(piece: &Piece) -> Piece {
    let sent = Piece {
        id: id("sent"),
        // A link holds no books, so a new piece does not bring its status.
        books: Default::default(),
        ..piece.clone()
    };
    sent.with_new_ids()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn a_piece_comes_back_as_it_was_sent(
        kind in prop::sample::select(Kind::ALL.to_vec()),
        metric in any::<bool>(),
        places in prop::collection::vec(any::<prop::sample::Index>(), 0..20),
    ) {
        let system = if metric { System::Metric } else { System::UsCustomary };
        let workshop = workshop(kind, system, &places);
        let back = sent(&workshop);
        let back_piece = (*back.pieces[0]).clone().with_new_ids();
        prop_assert_eq!(back_piece, as_sent(&workshop.pieces[0]));
        let plans = |key: &str| {
            let mut schemes = workshop.pieces[0].schemes();
            schemes.any(|scheme| scheme.layers.iter().any(|layer| &*layer.material == key))
        };
        let used = workshop.materials.iter().filter(|own| plans(&own.key));
        let unpriced = used.map(|own| Rc::new(OwnMaterial { prices: Default::default(), ..(**own).clone() }));
        prop_assert_eq!(back.materials, unpriced.collect::<Vec<_>>());
    }

    /// Damaged links are refused or repaired, without a panic.
    #[test]
    fn a_spoilt_link_is_refused_or_mended(at in any::<prop::sample::Index>(), sign in "[0-9a-z{}\\[\\]\":, -]") {
        let workshop = invented();
        let mut text: Vec<char> = link_text(&workshop.pieces[0], &[]).unwrap().chars().collect();
        let place = at.index(text.len());
        text[place] = sign.chars().next().unwrap();
        let text: String = text.into_iter().collect();
        if let Ok(Loaded { workshop, .. }) = read_link(&text, id("sent")) {
            prop_assert_eq!(workshop.pieces.len(), 1);
            let again = format::load(&format::save(&workshop)).unwrap();
            prop_assert_eq!(again.workshop, workshop);
        }
    }
}

fn invented() -> Workshop {
    crate::invented_workshop()
}

#[test]
fn what_is_usual_is_not_in_the_link() {
    for kind in Kind::ALL {
        let workshop = workshop(kind, System::UsCustomary, &[]);
        let text = link_text(&workshop.pieces[0], &workshop.materials).unwrap();
        let link: Value = serde_json::from_str(&text).unwrap();
        let piece = serde_json::json!({
            "name": kind.label(), "furniture": kind.key(), "edition": 1, "shown": RESULTS,
        });
        assert_eq!(link, serde_json::json!({"version": 3, "piece": piece}), "{text}");
    }
    let text = link_text(&invented().pieces[0], &[]).unwrap();
    assert!(text.len() < 1_500, "{}: {text}", text.len());
}

#[test]
fn a_piece_that_is_sent_stands_beside_what_is_there() {
    let theirs = Edit::Piece(
        id("a"),
        PieceEdit::Finish(None, SchemeEdit::Material(1, "own-1".into())),
    );
    let theirs = workshop(Kind::Dresser, System::Metric, &[])
        .apply(theirs)
        .unwrap();
    let text = link_text(&theirs.pieces[0], &theirs.materials).unwrap();
    let green = MaterialEdit::Name("Another green".into());
    let ours = workshop(Kind::Desk, System::Metric, &[])
        .apply(Edit::Material("own-1".into(), green))
        .unwrap();
    // Even if the page assigned an id that is taken.
    let sent = read_link(&text, id("a")).unwrap().workshop;
    let both = ours.apply(Edit::Gather(sent)).unwrap();
    assert_eq!(both.pieces[0], ours.pieces[0]);
    assert_eq!(both.materials[..2], ours.materials[..]);
    assert_ne!(both.pieces[1].id, both.pieces[0].id);
    let planned = &both.pieces[1].scheme.layers[1].material;
    let material = both.materials.iter().find(|own| own.key == *planned).unwrap();
    assert_eq!(material.name, "Left-over green");
}

#[test]
fn a_piece_of_the_invented_workshop_becomes_the_makers_own() {
    let sent = sent(&invented());
    assert!(!sent.pieces[0].is_invented());
    let both = invented().apply(Edit::Gather(sent)).unwrap();
    let rest = both.apply(Edit::ClearInvented).unwrap();
    assert_eq!(rest.pieces.len(), 1);
}

#[test]
fn what_is_kept_for_a_newer_version_goes_along() {
    let mut piece = (*invented().pieces[0]).clone();
    piece.beyond.insert("later".into(), serde_json::json!({"x": [1]}));
    let text = link_text(&piece, &[]).unwrap();
    let back = read_link(&text, id("sent")).unwrap().workshop;
    assert_eq!((*back.pieces[0]).clone().with_new_ids(), as_sent(&piece));
}

#[test]
fn a_text_that_is_no_piece_is_refused_with_its_reason() {
    let refused = |text: &str| read_link(text, id("sent")).unwrap_err();
    let deep = "[".repeat(10_000);
    let file = format::save(&invented());
    for bad in [
        "",
        "{",
        "7",
        "[]",
        "{}",
        deep.as_str(),
        file.as_str(),
        "{\"version\":3}",
        "{\"version\":3,\"piece\":7}",
        "{\"version\":3,\"piece\":{}}",
        "{\"version\":2,\"piece\":{\"furniture\":\"desk\"}}",
        "{\"version\":3,\"materials\":7,\"piece\":{\"furniture\":\"desk\"}}",
    ] {
        assert_eq!(refused(bad), LinkError::NotAPiece, "{bad}");
    }
    assert_eq!(
        refused("{\"version\":4,\"piece\":{}}"),
        LinkError::Newer { version: 4 }
    );
    assert_eq!(refused(&" ".repeat(MAX_LINK_BYTES + 1)), LinkError::TooLarge);
    let sofa = "{\"version\":3,\"piece\":{\"furniture\":\"sofa\",\"edition\":1}}";
    assert_eq!(read_link(sofa, id("sent")).unwrap().notices.len(), 1);
    let unknown = sofa.replace('1', "99");
    assert_eq!(refused(&unknown), LinkError::NotAPiece);
    for error in [
        LinkError::TooLarge,
        LinkError::NotAPiece,
        LinkError::Newer { version: 4 },
    ] {
        let sentence = error.to_string();
        assert!(sentence.ends_with('.') && sentence.len() > 40, "{sentence}");
    }
}

#[test]
fn the_description_for_people_shows_a_link_that_is_read() {
    let page = include_str!("../../../SAVE-FILE.md");
    let section = page.split("## A piece in a link").nth(1).unwrap();
    let example = section.split("```json\n").nth(1).unwrap();
    let example = example.split("\n```").next().unwrap();
    let Loaded { workshop, notices } = read_link(example, id("sent")).unwrap();
    assert!(notices.is_empty(), "{notices:?}");
    let written = link_text(&workshop.pieces[0], &[]).unwrap();
    let value = |text: &str| serde_json::from_str::<Value>(text).unwrap();
    assert_eq!(value(&written), value(example));
}

/// The first links did not say which default coats they left out, and the defaults have changed since.
#[test]
fn an_older_link_that_leaves_out_its_coats_says_so() {
    let notices = |piece: &str| {
        let text = format!("{{\"version\":3,\"piece\":{{\"furniture\":\"desk\",\"name\":\"Desk\"{piece}}}}}");
        let Loaded { notices, .. } = read_link(&text, id("sent")).unwrap();
        notices.iter().map(ToString::to_string).collect::<Vec<_>>()
    };
    let said =
        ["Desk: check the coats. This older link doesn't list them, so the recommended ones are used."];
    let listed = "\"scheme\":{\"layers\":[]}";
    assert_eq!(notices(""), said);
    assert_eq!(notices(",\"scheme\":{\"colour\":\"#102030\"}"), said);
    assert_eq!(
        notices(&format!(",{listed},\"zones\":{{\"top\":{{\"scheme\":{{}}}}}}")),
        said
    );
    assert_eq!(notices(&format!(",{listed}")), [""; 0]);
    assert_eq!(notices(",\"edition\":1"), [""; 0]);
}

#[test]
fn a_piece_that_is_too_large_is_not_put_into_a_link() {
    let mut piece = (*invented().pieces[0]).clone();
    let long = "x".repeat(MAX_LINK_BYTES);
    piece.beyond.insert("later".into(), long.into());
    assert_eq!(link_text(&piece, &[]), Err(LinkError::TooLarge));
}
