//! Format 3 of the save file: layers, zones with a finish of their own, materials of the maker's own. What stands here never changes once a version was
//! published: a new format gets a file of its own, and a step from this one to it.

mod read;
mod write;

use geometry::Edition;
use serde::ser::SerializeMap;
use serde::{Serialize, Serializer};
use serde_json::Value;

pub(crate) use read::ReadPiece;
pub(super) use read::load;

use super::record::{Entries, Named, Readable, Record, RecordError, records};

/// Readings by the keys of what they measure.
type Readings = Named<ReadingRecord>;

/// Lines of books by the keys of the books; a line that is none is left out alone.
pub(super) type BookRecords = Named<Vec<Readable<LineRecord>>>;

records! {
    /// What is saved of a workshop; its pieces are given in full in a file, by name in the database.
    pub struct WorkshopRecord<P> {
        must kind: String;
        must version: u64;
        kept title: String;
        kept note: String;
        kept units: String;
        spare confidence: Option<Readable<u64>>;
        spare inches: Option<Readable<String>>;
        spare currency: Option<Readable<String>>;
        spare finish: Option<Readable<SchemeRecord>>;
        spare materials: Vec<Readable<MaterialRecord>>;
        spare books: BookRecords;
        /// The pieces in the maker's order.
        pub kept pieces: Vec<P>;
        ..beyond;
    }

    /// What is saved of a piece.
    pub struct PieceRecord {
        pub(super) must id: String;
        pub(super) kept name: String;
        pub(super) kept count: u64 = 1;
        pub(super) must furniture: String;
        /// The last id that an entry was given.
        pub(super) spare ids: u64;
        pub(super) kept edition: EditionNumber = EditionNumber(Edition::First);
        /// The first results, if it is not there.
        pub(super) kept shown: Option<Readable<u64>>;
        pub(super) kept readings: Readings;
        pub(super) kept styles: Named<String>;
        pub(super) spare counts: Named<u64>;
        pub(super) spare bays: Option<Vec<BayRecord>>;
        pub(super) spare upper: Vec<BayRecord>;
        pub(super) spare changes: Vec<Readable<ChangeRecord>>;
        pub(super) spare zones: Named<ZoneRecord>;
        pub(super) spare surfaces: Named<SurfaceRecord>;
        pub(super) kept scheme: SchemeRecord;
        pub(super) spare books: BookRecords;
        ..beyond;
    }

    /// A reading; its text and unit have not changed since format 1.
    pub(super) struct ReadingRecord {
        must typed: String;
        must unit: String;
        /// Only where the text alone would come to another number.
        spare value: Option<Value>;
    }

    pub(super) struct BayRecord {
        pub(super) spare id: u64;
        pub(super) spare width: Option<ReadingRecord>;
        pub(super) kept rows: Vec<RowRecord>;
    }

    pub(super) struct RowRecord {
        pub(super) spare id: u64;
        pub(super) spare fill: Option<String>;
        pub(super) kept columns: u64 = 1;
        pub(super) kept shelves: u64;
        pub(super) spare height: Option<ReadingRecord>;
    }

    /// A change. Its word says which of the other entries it has.
    pub(super) struct ChangeRecord {
        spare id: u64;
        must change: String;
        spare part: Option<String>;
        spare along: Option<String>;
        spare times: Option<u64>;
        spare towards: Option<String>;
        spare surface: Option<String>;
        spare number: Option<u64>;
        spare shape: Option<String>;
        spare placed: Option<bool>;
        spare flutes: u64;
        spare members: Vec<MemberRecord>;
        spare points: Vec<PointRecord>;
        spare readings: Readings;
    }

    pub(super) struct MemberRecord {
        must shape: String;
        spare readings: Readings;
    }

    pub(super) struct PointRecord {
        spare readings: Readings;
    }

    pub(super) struct ZoneRecord {
        spare name: String;
        spare painted: Option<bool>;
        spare scheme: Option<SchemeRecord>;
    }

    /// A scheme without layers has the usual ones of the edition of its piece; one with an empty list has none.
    #[derive(Default)]
    pub(crate) struct SchemeRecord {
        pub(super) spare colour: Option<String>;
        pub(super) spare ground: Option<String>;
        pub(super) spare wood: Option<String>;
        pub(super) spare signs: Vec<String>;
        pub(super) spare basis: Option<String>;
        pub(super) spare layers: Option<Vec<Readable<LayerRecord>>>;
    }

    pub(super) struct LayerRecord {
        pub(super) spare id: u64;
        pub(super) must material: String;
        pub(super) kept coats: u64 = 1;
        pub(super) kept tool: String;
        pub(super) spare narrow: Option<String>;
        pub(super) spare thinned: u64;
        /// Older versions: the can of it that the maker has.
        pub(super) spare can: Option<String>;
        /// Older versions: how full that is.
        pub(super) spare level: Option<String>;
    }

    struct MaterialRecord {
        must id: String;
        must of: String;
        kept name: String;
        spare label: Readings;
        spare prices: Named<String>;
        /// Hundredths of those prices whose text alone would come to others.
        spare values: Named<u64>;
    }

    pub(super) struct SurfaceRecord {
        pub(super) spare zone: Option<String>;
        pub(super) spare painted: Option<bool>;
    }
}

/// The edition of a piece, which is saved by its number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct EditionNumber(pub(super) Edition);

impl Serialize for EditionNumber {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_u64(self.0.number())
    }
}

impl Record for EditionNumber {
    fn read(value: Value) -> Result<Self, RecordError> {
        let edition = Edition::by_number(u64::read(value)?);
        let edition = edition.ok_or(RecordError::wanted("a known edition"))?;
        Ok(EditionNumber(edition))
    }
}

/// A line: texts by the keys of their fields. A value that is no text is left out alone.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct LineRecord {
    id: String,
    /// The numbers of those texts that alone would come to another number.
    meant: Named<Readable<f64>>,
    values: Named<Readable<String>>,
}

impl Serialize for LineRecord {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("id", &self.id)?;
        if !self.meant.is_empty() {
            map.serialize_entry("values", &self.meant)?;
        }
        for (key, text) in self.values.0.iter() {
            map.serialize_entry(key, text)?;
        }
        map.end()
    }
}

impl Record for LineRecord {
    fn read(value: Value) -> Result<Self, RecordError> {
        let mut entries = Entries::of(value)?;
        let id = entries.need("id")?;
        let beside: Value = entries.take("values")?;
        let values = entries.rest().into_iter();
        let values = values.map(|(key, value)| Ok((key, Readable::read(value)?)));
        let mut values: Named<_> = values.collect::<Result<_, _>>()?;
        let meant = match Named::read(beside.clone()) {
            Ok(meant) => meant,
            // A book that is not known here may have a field of this name.
            Err(_) => {
                if !beside.is_null() {
                    values.0.insert("values".into(), Readable::read(beside)?);
                }
                Named::default()
            }
        };
        Ok(LineRecord { id, meant, values })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{
        Colour, Confidence, Currency, LabelReading, PieceId, Price, Reading, Workshop, label_field,
    };
    use crate::format::{Loaded, save};
    use crate::{
        ChangeKind, Edit, MaterialEdit, Piece, PieceChange, PieceEdit, SchemeEdit, SettingEdit, Sign,
    };
    use coatings::{Basis, Substrate};
    use geometry::{
        AddedShape, Along, BayPlace, FieldId, Fill, Kind, MAX_CHANGES, MAX_STEPS, Shape, Towards, counts,
        fields, styles,
    };
    use proptest::prelude::*;
    use std::rc::Rc;
    use units::{Inches, LengthUnit};

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
                    comes_back(&edited(kind, [PieceEdit::Style(field.key, option.key)]));
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
                PieceEdit::Bays(true, 2),
                PieceEdit::Rows(place, 2),
                PieceEdit::Fill(place, 1, Fill::Doors),
                PieceEdit::Columns(place, 1, 2),
                PieceEdit::Shelves(place, 1, 3),
                PieceEdit::Measure(FieldId::BayWidth(place), typed("20 1/2")),
                PieceEdit::Measure(FieldId::RowHeight(place, 1), typed("11")),
                PieceEdit::Counted(counts::FLUTES.key, Some(7)),
                PieceEdit::NameZone("my-blue".into(), "Blue".into()),
                PieceEdit::ZonePainted("inside".into(), Some(true)),
                PieceEdit::Zone("top/top".into(), Some("my-blue".into())),
                PieceEdit::Painted("bottom/top".into(), Some(false)),
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

    /// Every kind of change, with every measurement that it has.
    fn changes() -> Vec<PieceChange> {
        let part = || "drawer-front-1-1".to_owned();
        let along = [Along::Width, Along::Depth, Along::Height]
            .map(|along| ChangeKind::Resize { part: part(), along });
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

    /// Edits that give a piece every entry of a scheme.
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
            PieceEdit::Apart("top".into(), true),
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
        let takeoff = crate::takeoff(&workshop.pieces[0], &workshop.materials, Default::default()).unwrap();
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
            crate::takeoff(&workshop.pieces[0], &[], Default::default())
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

    /// A workshop with everything that a file can hold.
    fn full() -> Value {
        let edits = changes().into_iter().map(PieceEdit::AddChange);
        let edits = edits.chain([
            PieceEdit::Counted(counts::DRAWERS.key, Some(2)),
            PieceEdit::NameZone("blue".into(), "Blue".into()),
            PieceEdit::Zone("top/top".into(), Some("blue".into())),
            PieceEdit::Measure(fields::HEIGHT.id(), typed("30")),
        ]);
        let mut workshop = edited(Kind::Hutch, edits);
        let finish = scheme_edits().into_iter().map(|edit| Edit::Piece(id(), edit));
        let settings = [
            SettingEdit::Confidence(Confidence::Percent95),
            SettingEdit::Inches(Inches::Decimals),
            SettingEdit::Currency(Currency::new("EUR").ok()),
            SettingEdit::FinishOf(Some(id())),
        ];
        let edits = own_material().into_iter().chain(finish);
        for edit in edits.chain(settings.map(Edit::Settings)) {
            workshop = workshop.apply(edit).unwrap();
        }
        serde_json::from_str(&save(&workshop)).unwrap()
    }

    #[test]
    fn the_full_workshop_can_be_measured_up() {
        let Loaded { workshop, .. } = crate::format::load(&full().to_string()).unwrap();
        assert_eq!(
            crate::takeoff(&workshop.pieces[0], &workshop.materials, Default::default()).err(),
            None
        );
    }

    /// Every place in the value.
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

        /// Whatever stands in a file, the page that opened it still stands.
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
}
