//! Documents survive a save, and damaged files are refused or repaired.

use super::*;
use crate::book::Entered;
use crate::document::{
    Colour, Confidence, Currency, LabelReading, PieceId, Price, Reading, Workshop, label_field,
};
use crate::format::{Loaded, save};
use crate::{
    BookEdit, Case, ChangeKind, Edit, MaterialEdit, Piece, PieceChange, PieceEdit, SchemeEdit, SettingEdit,
    Sign,
};
use coatings::{Basis, Substrate};
use geometry::{
    AddedShape, Along, BayPlace, FieldId, Fill, Kind, MAX_CHANGES, MAX_STEPS, Shape, Towards, counts, fields,
    styles,
};
use proptest::prelude::*;
use std::rc::Rc;
use units::{Decimals, Inches, LengthUnit, System};

fn id() -> PieceId {
    PieceId("a".into())
}

fn edited(kind: Kind, edits: impl IntoIterator<Item = PieceEdit>) -> Workshop {
    let add = Edit::Add { id: id(), kind };
    let edits = edits.into_iter().map(|edit| Edit::Piece(id(), edit));
    let whole = Workshop::default().apply(add).unwrap();
    edits.fold(whole, |workshop, edit| workshop.apply(edit).unwrap())
}

#[track_caller]
fn comes_back(workshop: &Workshop) -> Value {
    let text = save(workshop);
    let loaded = crate::format::load(&text).unwrap();
    assert!(loaded.notices.is_empty(), "{:?}\n{text}", loaded.notices);
    assert_eq!(loaded.workshop, *workshop, "{text}");
    serde_json::from_str(&text).unwrap()
}

fn typed(text: &str) -> Option<Reading> {
    Some(Reading::new(text, LengthUnit::Inch).unwrap())
}

#[test]
fn every_kind_and_every_answer_comes_back() {
    for kind in Kind::ALL {
        comes_back(&edited(kind, []));
    }
    for field in styles::ALL {
        for option in field.options {
            for kind in [Kind::Dresser, Kind::Desk, Kind::Headboard] {
                comes_back(&edited(
                    kind,
                    [PieceEdit::Style {
                        choice: field.key,
                        answer: option.key,
                    }],
                ));
            }
        }
    }
}

#[test]
fn bays_rows_counts_and_zones_come_back() {
    let place = BayPlace { upper: true, bay: 2 };
    let written = comes_back(&edited(
        Kind::Hutch,
        [
            PieceEdit::Bays {
                case: Case::Upper,
                count: 2,
            },
            PieceEdit::Rows { bay: place, count: 2 },
            PieceEdit::Fill {
                bay: place,
                row: 1,
                fill: Fill::Doors,
            },
            PieceEdit::Columns {
                bay: place,
                row: 1,
                columns: 2,
            },
            PieceEdit::Shelves {
                bay: place,
                row: 1,
                shelves: 3,
            },
            PieceEdit::Measure(FieldId::BayWidth(place), typed("20 1/2")),
            PieceEdit::Measure(FieldId::RowHeight(place, 1), typed("11")),
            PieceEdit::Counted(counts::FLUTES.key, Some(7)),
            PieceEdit::NameZone {
                zone: "my-blue".into(),
                name: "Blue".into(),
            },
            PieceEdit::ZonePainted {
                zone: "inside".into(),
                painted: Some(true),
            },
            PieceEdit::Zone("top/top".into(), Some("my-blue".into())),
            PieceEdit::Painted {
                surface: "bottom/top".into(),
                painted: Some(false),
            },
        ],
    ));
    let piece = &written["pieces"][0];
    assert_eq!(piece["upper"][1]["rows"][0]["fill"], "doors");
    assert_eq!(piece["zones"]["inside"], serde_json::json!({"painted": true}));
    assert_eq!(
        piece["surfaces"]["top/top"],
        serde_json::json!({"zone": "my-blue"})
    );
}

fn add(number: usize, shape: AddedShape) -> ChangeKind {
    ChangeKind::Add {
        number,
        shape,
        placed: true,
        flutes: if shape == AddedShape::Column { 12 } else { 0 },
        members: if shape == AddedShape::Moulding {
            vec![Shape::Cove, Shape::Ogee]
        } else {
            vec![]
        },
        points: if shape == AddedShape::Turned { 3 } else { 0 },
    }
}

/// Returns every kind of change, with all its measurements.
fn changes() -> Vec<PieceChange> {
    let part = || "drawer-front-1-1".to_owned();
    let along =
        [Along::Width, Along::Depth, Along::Height].map(|along| ChangeKind::Resize { part: part(), along });
    let towards = [Towards::Left, Towards::Up].map(|towards| ChangeKind::Move {
        part: part(),
        towards,
    });
    let others = [
        ChangeKind::Remove {
            part: "drawer-front-1-2".into(),
        },
        ChangeKind::Repeat {
            part: part(),
            times: 4,
            towards: Towards::Down,
        },
        ChangeKind::Hole {
            surface: "top/top".into(),
        },
    ];
    let added = (1..)
        .zip(AddedShape::ALL)
        .map(|(number, shape)| add(number, shape));
    let kinds = along.into_iter().chain(towards).chain(others).chain(added);
    let measured = kinds.map(|kind| {
        let mut change = PieceChange::new(kind);
        for (item, field, usual) in change.fields() {
            let reading = typed(&format!("{}", usual.as_inches())).unwrap();
            change.readings.insert((item, field.key), reading);
        }
        change
    });
    measured.collect()
}

#[test]
fn every_change_comes_back_with_its_measurements() {
    let written = comes_back(&edited(
        Kind::Dresser,
        changes().into_iter().map(PieceEdit::AddChange),
    ));
    let last = written["pieces"][0]["changes"]
        .as_array()
        .unwrap()
        .last()
        .unwrap()
        .clone();
    assert_eq!(
        (last["change"].as_str(), last["shape"].as_str()),
        (Some("add"), Some("half-column"))
    );
}

fn read(value: Value) -> (Piece, Vec<String>) {
    let file = serde_json::json!({"kind": crate::format::KIND, "version": 3, "pieces": [value]});
    let Loaded { workshop, notices } = crate::format::load(&file.to_string()).unwrap();
    let notices = notices.iter().map(ToString::to_string).collect();
    ((*workshop.pieces[0]).clone(), notices)
}

#[test]
fn what_is_not_known_is_said_and_the_rest_kept() {
    let (piece, notices) = read(serde_json::json!({
        "id": "a", "name": "A", "furniture": "desk",
        "styles": {"legs": "cabriole", "apron": "arched", "hinges": "brass"},
        "counts": {"drawers": 70, "knobs": 3},
        "changes": [
            {"change": "paint"},
            {"change": "move", "part": "top", "towards": "sideways"},
            {"change": "remove", "part": "apron-front", "readings": {"part-width": {"typed": "1", "unit": "in"}}},
            {"change": "add", "shape": "board", "number": 0},
            {"change": "add", "shape": "bar", "number": 1},
        ],
        "zones": {"a b": {}, "blue": {"name": "Blue"}},
        "surfaces": {"top/top": {"zone": "red", "painted": false}},
    }));
    assert_eq!(
        notices,
        [
            "A: unknown choice \u{201c}hinges\u{201d}. The default is used.",
            "A: unknown choice \u{201c}cabriole\u{201d} for \u{201c}Legs\u{201d}. The default is used.",
            "A: the number of drawers in the apron was out of range. It is now 6.",
            "A: skipped the unknown measurement \u{201c}knobs\u{201d}.",
            "A: change 1 couldn't be read, so it was skipped.",
            "A: change 2 couldn't be read, so it was skipped.",
            "A: skipped the unknown measurement \u{201c}part-width\u{201d}.",
            "A: the number of an added part was out of range. It is now 1.",
            "A: the number of an added part was out of range. It is now 2.",
            "A: unknown group \u{201c}a b\u{201d}. The default is used.",
            "A: unknown group \u{201c}red\u{201d}. The default is used.",
        ]
    );
    assert_eq!(
        (piece.changes.len(), piece.zones.len(), piece.choices.len()),
        (3, 1, 1)
    );
    assert_eq!(styles::APRON.of(&piece.styles).key, "arched");
}

#[test]
fn nothing_grows_beyond_its_bounds() {
    let many = |what: Value, count: usize| Value::Array(vec![what; count]);
    let points = many(serde_json::json!({}), 100);
    let zones: serde_json::Map<String, Value> = (0..500)
        .map(|n| (format!("z{n}"), serde_json::json!({})))
        .collect();
    let (piece, notices) = read(serde_json::json!({
        "id": "a", "name": "A", "furniture": "dresser",
        "bays": many(serde_json::json!({"rows": many(serde_json::json!({"shelves": 9e9 as u64}), 100)}), 100),
        "changes": many(serde_json::json!({
            "change": "add", "shape": "turned", "number": u64::MAX, "flutes": u64::MAX, "points": points,
        }), 500),
        "zones": zones,
    }));
    assert_eq!(piece.bays.len(), geometry::MAX_BAYS);
    assert_eq!(piece.bays[0].rows.len(), geometry::MAX_ROWS);
    assert_eq!(piece.bays[0].rows[0].shelves, geometry::MAX_SHELVES);
    assert_eq!(
        (piece.changes.len(), piece.zones.len()),
        (MAX_CHANGES, crate::edit::MAX_ZONES)
    );
    assert!(matches!(
        piece.changes[0].kind,
        ChangeKind::Add {
            points: MAX_STEPS,
            ..
        }
    ));
    assert!(!notices.is_empty());
}

/// Returns edits that set every entry of a scheme.
fn scheme_edits() -> Vec<PieceEdit> {
    let top = Some("top".to_owned());
    let enamel: Rc<str> = "own-1".into();
    vec![
        PieceEdit::Finish(None, SchemeEdit::Add("degreaser".into())),
        PieceEdit::Finish(None, SchemeEdit::Substrate(Substrate::Bare)),
        PieceEdit::Finish(None, SchemeEdit::Species(Some("walnut"))),
        PieceEdit::Finish(None, SchemeEdit::Sign(Sign::OldRedStain, true)),
        PieceEdit::Finish(None, SchemeEdit::Sign(Sign::BareSpots, true)),
        PieceEdit::Finish(None, SchemeEdit::Basis(Basis::LabelRate)),
        PieceEdit::Apart {
            zone: "top".into(),
            apart: true,
        },
        PieceEdit::Finish(top.clone(), SchemeEdit::Colour(Colour([1, 2, 3]))),
        PieceEdit::Finish(top.clone(), SchemeEdit::Material(2, enamel.clone())),
        PieceEdit::Finish(top.clone(), SchemeEdit::Tool(2, "hvlp")),
        PieceEdit::Finish(top.clone(), SchemeEdit::NarrowTool(2, Some("chip-brush"))),
        PieceEdit::Finish(top, SchemeEdit::Thinned(2, 10)),
    ]
}

fn own_material() -> Vec<Edit> {
    let key: Rc<str> = "own-1".into();
    let label = |field: &'static str, typed: &str, unit: &str| {
        let reading = LabelReading::new(label_field(field).unwrap(), typed, unit).unwrap();
        Edit::Material(key.clone(), MaterialEdit::Label(field, Some(reading)))
    };
    let price = MaterialEdit::Price("us-quart", Some(Price::new("24,50").unwrap()));
    vec![
        Edit::AddMaterial(key.clone(), "trim-enamel".into()),
        Edit::Material(key.clone(), MaterialEdit::Name("Left-over green".into())),
        label("rate", "350-450", "ft2/gal"),
        label("solids", "38", "%"),
        label("cure", "14", "d"),
        Edit::Material(key.clone(), price),
    ]
}

#[test]
fn schemes_and_materials_of_ones_own_come_back() {
    let mut workshop = edited(Kind::Dresser, []);
    let edits = scheme_edits().into_iter().map(|edit| Edit::Piece(id(), edit));
    for edit in own_material().into_iter().chain(edits) {
        workshop = workshop.apply(edit).unwrap();
    }
    let written = comes_back(&workshop);
    let layer = &written["pieces"][0]["zones"]["top"]["scheme"]["layers"][2];
    assert_eq!(layer["material"], "own-1");
    assert_eq!(
        (&layer["narrow"], &layer["thinned"]),
        (&"chip-brush".into(), &10.into())
    );
    assert_eq!(written["materials"][0]["label"]["rate"]["typed"], "350-450");
    let takeoff = crate::takeoff(&workshop, &workshop.pieces[0], &[]).unwrap();
    assert!(
        takeoff
            .materials
            .iter()
            .any(|line| &*line.need.material.name == "Left-over green")
    );
}

#[test]
fn settings_are_written_as_they_are_described() {
    let file = full();
    let [confidence, inches, currency] =
        ["confidence", "inches", "currency"].map(|entry| file[entry].clone());
    assert_eq!(
        (confidence, inches, currency),
        (95.into(), "decimals".into(), "EUR".into())
    );
    let finish = &file["finish"];
    assert_eq!(finish["basis"], "label-rate");
    assert_eq!(finish["ground"], Substrate::default().key());
    let Loaded { workshop, notices } = crate::format::load(&file.to_string()).unwrap();
    assert!(notices.is_empty(), "{notices:?}");
    comes_back(&workshop);
}

#[test]
fn an_empty_scheme_stays_empty() {
    let remove = || PieceEdit::Finish(None, SchemeEdit::Remove(0));
    let workshop = edited(Kind::Dresser, [remove(), remove(), remove(), remove()]);
    let written = comes_back(&workshop);
    assert_eq!(written["pieces"][0]["scheme"]["layers"], serde_json::json!([]));
    assert!(
        crate::samples::takeoff(&workshop.pieces[0])
            .unwrap()
            .materials
            .is_empty()
    );
}

#[test]
fn what_is_not_known_of_a_scheme_or_a_material_is_said_and_the_rest_kept() {
    let file = serde_json::json!({
        "kind": crate::format::KIND, "version": 3,
        "materials": [
            {"id": "own-1", "of": "glitter"},
            7,
            {"id": "own-2", "of": "trim-enamel", "name": "Green",
             "label": {"rate": {"typed": "lots", "unit": "m2/L"}, "sheen": {"typed": "3", "unit": "%"}},
             "prices": {"us-quart": "-3", "bucket": "1"}},
        ],
        "pieces": [{"id": "a", "name": "A", "furniture": "desk", "scheme": {
            "ground": "swamp", "wood": "plastic", "signs": ["ghosts", "knots"],
            "layers": [{"material": "own-1"}, {"material": "own-2", "tool": "broom", "coats": 70}, 5],
        }}],
    });
    let Loaded { workshop, notices } = crate::format::load(&file.to_string()).unwrap();
    let notices: Vec<String> = notices.iter().map(ToString::to_string).collect();
    assert_eq!(notices.len(), 13, "{notices:#?}");
    assert_eq!(notices[0], "Your material 1 couldn't be read, so it was skipped.");
    assert!(
        notices
            .iter()
            .any(|notice| notice.starts_with("Green: ") && notice.contains("\u{201c}lots\u{201d}"))
    );
    let scheme = &workshop.pieces[0].scheme;
    assert_eq!(scheme.layers.len(), 1);
    assert_eq!((scheme.layers[0].coats, scheme.layers[0].tool), (9, "brush"));
    assert!(scheme.condition.knots);
}

/// Returns edits that set every entry of a piece besides its finish.
fn piece_edits() -> Vec<PieceEdit> {
    let (lower, upper) = (
        BayPlace { upper: false, bay: 1 },
        BayPlace { upper: true, bay: 2 },
    );
    let asking = Entered {
        text: "1,250".into(),
        decimals: Decimals::Point,
    };
    let edits = changes().into_iter().map(PieceEdit::AddChange);
    let others = [
        PieceEdit::Name("Hall hutch".into()),
        PieceEdit::Count(3),
        PieceEdit::Style {
            choice: "base",
            answer: "legs",
        },
        PieceEdit::Rows { bay: lower, count: 3 },
        PieceEdit::Columns {
            bay: lower,
            row: 1,
            columns: 3,
        },
        PieceEdit::Bays {
            case: Case::Upper,
            count: 2,
        },
        PieceEdit::Fill {
            bay: upper,
            row: 1,
            fill: Fill::Doors,
        },
        PieceEdit::Shelves {
            bay: upper,
            row: 1,
            shelves: 3,
        },
        PieceEdit::Measure(FieldId::BayWidth(upper), typed("15")),
        PieceEdit::Measure(FieldId::RowHeight(lower, 1), typed("6")),
        PieceEdit::Counted(counts::DRAWERS.key, Some(2)),
        PieceEdit::NameZone {
            zone: "blue".into(),
            name: "Blue".into(),
        },
        PieceEdit::ZonePainted {
            zone: "inside".into(),
            painted: Some(true),
        },
        PieceEdit::Zone("top/top".into(), Some("blue".into())),
        PieceEdit::Painted {
            surface: "bottom/top".into(),
            painted: Some(false),
        },
        PieceEdit::Measure(
            fields::HEIGHT.id(),
            Reading::typed_with("1,850", LengthUnit::Millimetre, Decimals::Point).ok(),
        ),
        PieceEdit::Book(BookEdit::Write("facts", "only".into(), "asking".into(), asking)),
    ];
    edits.chain(others).collect()
}

/// Returns a workshop in which every entry of the save file is set to something other than its default.
fn full_workshop() -> Workshop {
    let book = |book, values: &[(&'static str, &str)]| {
        BookEdit::Add(book, "line".into(), crate::samples::values(values))
    };
    let workshop = edited(Kind::Hutch, piece_edits());
    let finish = scheme_edits().into_iter().map(|edit| Edit::Piece(id(), edit));
    let price = Price::typed_with("1,250", Decimals::Point).ok();
    let settings = [
        Edit::Units(System::Metric),
        Edit::Settings(SettingEdit::Confidence(Confidence::Percent95)),
        Edit::Settings(SettingEdit::Inches(Inches::Decimals)),
        Edit::Settings(SettingEdit::Currency(Currency::new("EUR").ok())),
        Edit::Settings(SettingEdit::FinishOf(Some(id()))),
        Edit::Material("own-1".into(), MaterialEdit::Price("us-gallon", price)),
        Edit::Book(book(
            "stores",
            &[("kind", "sheets"), ("grit", "P180"), ("count", "2")],
        )),
    ];
    // Without the last id, that of the deleted part would be given again.
    let deleted = [
        PieceEdit::AddPart(AddedShape::Board),
        PieceEdit::RemoveChange(changes().len()),
    ];
    let deleted = deleted.map(|edit| Edit::Piece(id(), edit));
    let edits = own_material().into_iter().chain(finish).chain(settings);
    let edits = edits.chain(deleted);
    let workshop = edits.fold(workshop, |workshop, edit| workshop.apply(edit).unwrap());
    Workshop {
        title: "Barn".into(),
        note: "A note".into(),
        ..workshop
    }
}

fn full() -> Value {
    serde_json::from_str(&save(&full_workshop())).unwrap()
}

/// Where each record is in a file. `*` is any name or number.
const PLACES: [(&str, &[&str]); 14] = [
    ("WorkshopRecord", &[""]),
    ("PieceRecord", &["/pieces/*"]),
    ("ReadingRecord", &["/pieces/*/readings/*", "/materials/*/label/*"]),
    ("BayRecord", &["/pieces/*/bays/*", "/pieces/*/upper/*"]),
    (
        "RowRecord",
        &["/pieces/*/bays/*/rows/*", "/pieces/*/upper/*/rows/*"],
    ),
    ("ChangeRecord", &["/pieces/*/changes/*"]),
    ("MemberRecord", &["/pieces/*/changes/*/members/*"]),
    ("PointRecord", &["/pieces/*/changes/*/points/*"]),
    ("ZoneRecord", &["/pieces/*/zones/*"]),
    (
        "SchemeRecord",
        &["/pieces/*/scheme", "/pieces/*/zones/*/scheme", "/finish"],
    ),
    (
        "LayerRecord",
        &["/pieces/*/scheme/layers/*", "/pieces/*/zones/*/scheme/layers/*"],
    ),
    ("MaterialRecord", &["/materials/*"]),
    ("SurfaceRecord", &["/pieces/*/surfaces/*"]),
    ("LineRecord", &["/books/*/*", "/pieces/*/books/*/*"]),
];

/// Entries that are only read. Older versions wrote them.
const ONLY_READ: [(&str, &str); 2] = [("LayerRecord", "can"), ("LayerRecord", "level")];

fn is_at(place: &str, pattern: &str) -> bool {
    let (mut place, mut pattern) = (place.split('/'), pattern.split('/'));
    pattern
        .by_ref()
        .all(|wanted| place.next().is_some_and(|name| wanted == "*" || wanted == name))
        && place.next().is_none()
}

/// An entry that the writer or the reader forgets would be lost without an error. For each entry of each record,
/// some place in a full file must have it, and must give another document without it.
#[test]
fn every_entry_is_written_and_read() {
    let workshop = full_workshop();
    let file = comes_back(&workshop);
    let mut all = vec![];
    places(&file, "", &mut all);
    let mut lost = vec![];
    let records = RECORDS.iter().chain(&[("LineRecord", &["id", "values"] as &[_])]);
    for (record, entries) in records {
        let known = PLACES.iter().find(|(name, _)| name == record);
        let (_, patterns) = known.unwrap_or_else(|| panic!("{record} has no place in PLACES"));
        let instances = || {
            let mut at = all.iter();
            std::iter::from_fn(move || at.find(|at| patterns.iter().any(|pattern| is_at(at, pattern))))
        };
        for entry in *entries {
            let matters = |at: &String| {
                let mut without = file.clone();
                let of = without.pointer_mut(at).and_then(Value::as_object_mut);
                of.is_some_and(|of| of.remove(*entry).is_some())
                    && !crate::format::load(&without.to_string())
                        .is_ok_and(|loaded| loaded.workshop == workshop)
            };
            // The only edition is also the default.
            let is_exempt = ONLY_READ.contains(&(record, entry))
                || (Edition::ALL.len() == 1 && (*record, *entry) == ("PieceRecord", "edition"));
            if !is_exempt && !instances().any(matters) {
                lost.push(format!("{entry} of {record}"));
            }
        }
    }
    assert!(lost.is_empty(), "not set, not written or not read: {lost:?}");
}

#[test]
fn the_full_workshop_can_be_measured_up() {
    let Loaded { workshop, .. } = crate::format::load(&full().to_string()).unwrap();
    assert_eq!(crate::takeoff(&workshop, &workshop.pieces[0], &[]).err(), None);
}

/// Collects every place in the value.
fn places(value: &Value, at: &str, found: &mut Vec<String>) {
    found.push(at.to_owned());
    match value {
        Value::Array(list) => {
            for (index, inner) in list.iter().enumerate() {
                places(inner, &format!("{at}/{index}"), found);
            }
        }
        Value::Object(map) => {
            for (key, inner) in map {
                let key = key.replace('~', "~0").replace('/', "~1");
                places(inner, &format!("{at}/{key}"), found);
            }
        }
        _ => {}
    }
}

fn odd() -> impl Strategy<Value = Value> {
    prop_oneof![
        Just(serde_json::json!(null)),
        Just(serde_json::json!(true)),
        Just(serde_json::json!([])),
        Just(serde_json::json!({})),
        Just(serde_json::json!([[null], {"": -1}])),
        any::<u64>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        "\\PC{0,20}".prop_map(Value::from),
        prop::sample::select(vec![
            "add", "turned", "doors", "none", "frame", "1e300", "blue", "top", "0", "-5"
        ])
        .prop_map(Value::from),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// A damaged file never stops the page that opens it.
    #[test]
    fn a_spoilt_file_is_refused_or_mended(
        spoils in prop::collection::vec((any::<prop::sample::Index>(), odd()), 1..6),
    ) {
        let mut file = full();
        for (place, odd) in spoils {
            let mut all = vec![];
            places(&file, "", &mut all);
            if let Some(inner) = file.pointer_mut(all[place.index(all.len())].as_str()) {
                *inner = odd;
            }
        }
        if let Ok(Loaded { workshop, .. }) = crate::format::load(&file.to_string()) {
            for piece in &workshop.pieces {
                let _ = piece.furniture().assembly().map(|assembly| assembly.surfaces());
            }
            let again = crate::format::load(&save(&workshop)).unwrap();
            prop_assert!(again.notices.is_empty(), "{:?}", again.notices);
            prop_assert_eq!(again.workshop, workshop);
        }
    }
}
