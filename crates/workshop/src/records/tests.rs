//! Tests that records are read as far as possible and that changes from two pages are both kept.

use geometry::{Kind, fields};
use serde_json::json;
use units::LengthUnit;

use super::*;
use crate::book::Habits;
use crate::{BookEdit, Edit, PieceEdit, Reading, SettingEdit, invented_workshop};

fn found(workshop: &Workshop) -> Found {
    let mut found = Found::default();
    for (key, text) in Changes::whole(workshop) {
        match key {
            Key::Workshop => found.workshop = Some(Some(text)),
            Key::Piece(id) => found.pieces.push((id.0.to_string(), Some(text))),
        }
    }
    found
}

fn faults(found: &Found) -> (Workshop, Vec<String>, Value) {
    let Saved { workshop, unread, .. } = read(found).unwrap();
    let unread = unread.unwrap_or_default();
    let faults = unread.faults.iter().map(ToString::to_string).collect();
    let beside = unread.beside(&workshop);
    (
        (*workshop).clone(),
        faults,
        beside.beyond.get(UNREAD).cloned().unwrap_or_default(),
    )
}

#[test]
fn what_was_saved_comes_back_without_a_fault() {
    let workshop = Rc::new(invented_workshop());
    let saved = read(&found(&workshop)).unwrap();
    let as_found = Rc::clone(&workshop);
    let unread = None;
    assert_eq!(
        saved,
        Saved {
            workshop,
            as_found,
            unread
        }
    );
    assert_eq!(read(&Found::default()), None);
}

/// A piece saved by an older version, with a half-full quart of primer in its layer.
fn with_an_old_can() -> (Workshop, Found) {
    let mut workshop = invented_workshop();
    workshop.books = Default::default();
    let mut found = found(&workshop);
    let mut piece: Value = serde_json::from_str(found.pieces[0].1.as_ref().unwrap()).unwrap();
    piece["scheme"]["layers"][0]["can"] = json!("us-quart");
    piece["scheme"]["layers"][0]["level"] = json!("half");
    found.pieces[0].1 = Some(piece.to_string());
    (workshop, found)
}

#[test]
fn a_can_of_an_older_record_moves_to_the_shelf_once() {
    let (workshop, found) = with_an_old_can();
    let saved = read(&found).unwrap();
    assert_eq!(*saved.as_found, workshop);
    let cans = |workshop: &Workshop| {
        let shelf = crate::stock::stock(workshop);
        let cans = shelf
            .iter()
            .map(|stock| (stock.can.unwrap().key, stock.level.unwrap().key));
        cans.collect::<Vec<_>>()
    };
    assert_eq!(cans(&saved.workshop), [("us-quart", "half")]);
    // The new records have the can on the shelf and not in the layer, so it stays away once it is deleted.
    let changes = Changes::between(&saved.as_found, &saved.workshop);
    let keys = changes.keys();
    assert_eq!(keys, [Key::Piece(workshop.pieces[0].id.clone()), Key::Workshop]);
    let newest = [found.pieces[0].1.clone(), found.workshop.clone().unwrap()];
    let (texts, is_mixed) = changes.on(&newest);
    assert!(!is_mixed);
    let mut after = found;
    after.pieces[0].1.clone_from(&texts[0]);
    after.workshop = Some(texts[1].clone());
    let again = read(&after).unwrap();
    assert_eq!(cans(&again.workshop), [("us-quart", "half")]);
    assert_eq!(again.as_found, again.workshop);
}

#[test]
fn a_workshop_that_is_missing_or_spoiled_leaves_the_pieces() {
    let whole = found(&invented_workshop());
    let spoiled = [
        None,
        Some(None),
        Some(Some("null")),
        Some(Some("7")),
        Some(Some("[]")),
        Some(Some("{")),
    ];
    for workshop in spoiled {
        let found = Found {
            workshop: workshop.map(|text| text.map(str::to_owned)),
            ..whole.clone()
        };
        let (read, faults, _) = faults(&found);
        assert_eq!(
            read.pieces.len(),
            invented_workshop().pieces.len(),
            "{workshop:?}"
        );
        assert_eq!(faults.len(), 1, "{faults:?}");
        assert!(faults[0].starts_with("Your settings"), "{faults:?}");
    }
}

#[test]
fn one_bad_entry_of_the_workshop_leaves_the_others() {
    let rate = BookEdit::Write("habits", "only".into(), "hourly".into(), "45".into());
    let workshop = invented_workshop().apply(Edit::Book(rate)).unwrap();
    let mut found = found(&workshop);
    let mut record: Value = serde_json::from_str(found.workshop.as_ref().unwrap().as_ref().unwrap()).unwrap();
    record["materials"] = json!(7);
    record["later"] = json!("x");
    found.workshop = Some(Some(record.to_string()));
    let (read, faults, unread) = faults(&found);
    assert_eq!(
        faults,
        ["The workshop\u{2019}s \u{201c}materials\u{201d} can\u{2019}t be read."]
    );
    assert_eq!(read.books, workshop.books);
    assert_eq!(read.beyond["later"], json!("x"));
    // A file can hold all of it, so nothing is lost.
    assert_eq!(unread["workshop"]["materials"], json!(7));

    record["books"] = json!(7);
    record["version"] = json!(99);
    found.workshop = Some(Some(record.to_string()));
    assert_eq!(super::tests::faults(&found).1.len(), 3);
}

#[test]
fn a_piece_that_cannot_be_read_is_named_and_goes_into_the_file() {
    let workshop = invented_workshop();
    for (text, name) in [
        (None, workshop.pieces[0].id.0.to_string()),
        (Some("7".to_owned()), workshop.pieces[0].id.0.to_string()),
        (
            Some("{\"name\": \"Hall chest\", \"furniture\": 7}".to_owned()),
            "Hall chest".to_owned(),
        ),
    ] {
        let mut found = found(&workshop);
        found.pieces[0].1 = text.clone();
        let (read, faults, unread) = faults(&found);
        assert_eq!(read.pieces.len(), workshop.pieces.len() - 1);
        assert_eq!(
            faults,
            [format!("The piece \u{201c}{name}\u{201d} can\u{2019}t be read.")]
        );
        let kept = text
            .map(|text| serde_json::from_str(&text).unwrap())
            .unwrap_or(Value::Null);
        assert_eq!(
            unread.get(&*workshop.pieces[0].id.0).cloned().unwrap_or_default(),
            kept
        );
    }
}

#[test]
fn a_file_of_what_could_not_be_read_opens_and_keeps_it() {
    let mut found = found(&invented_workshop());
    found.pieces[0].1 = Some("{\"name\": \"Hall chest\", \"furniture\": 7}".into());
    let Saved { workshop, unread, .. } = read(&found).unwrap();
    let text = crate::format::save(&unread.unwrap().beside(&workshop));
    let loaded = crate::format::load(&text).unwrap();
    assert_eq!(loaded.workshop.pieces, workshop.pieces);
    assert!(crate::format::save(&loaded.workshop).contains("Hall chest"));
}

#[test]
fn a_reading_that_was_left_out_is_a_fault_too() {
    let mut found = found(&invented_workshop());
    let mut piece: Value = serde_json::from_str(found.pieces[0].1.as_ref().unwrap()).unwrap();
    piece["readings"]["depth"] = json!({"typed": "lots", "unit": "in"});
    found.pieces[0].1 = Some(piece.to_string());
    let (read, faults, unread) = faults(&found);
    assert_eq!(
        (read.pieces.len(), faults.len()),
        (invented_workshop().pieces.len(), 1)
    );
    assert!(unread.to_string().contains("lots"));
}

fn id(name: &str) -> PieceId {
    PieceId(name.into())
}

/// A minimal database for these tests.
#[derive(Default)]
struct Database(Vec<(Key, String)>);

impl Database {
    fn write(&mut self, before: &Workshop, now: &Workshop) -> bool {
        let changes = Changes::between(before, now);
        let keys = changes.keys();
        let newest: Vec<Option<String>> = keys
            .iter()
            .map(|key| Some(self.0.iter().find(|(other, _)| other == key)?.1.clone()))
            .collect();
        let (texts, is_mixed) = changes.on(&newest);
        assert_eq!(texts.len(), keys.len());
        for (key, text) in keys.into_iter().zip(texts) {
            self.0.retain(|(other, _)| *other != key);
            self.0.extend(text.map(|text| (key, text)));
        }
        is_mixed
    }

    fn read(&self) -> Workshop {
        let mut found = Found::default();
        for (key, text) in &self.0 {
            match key {
                Key::Workshop => found.workshop = Some(Some(text.clone())),
                Key::Piece(id) => found.pieces.push((id.0.to_string(), Some(text.clone()))),
            }
        }
        let Saved { workshop, unread, .. } = read(&found).unwrap();
        assert_eq!(unread, None);
        (*workshop).clone()
    }
}

fn measure(workshop: &Workshop, field: geometry::FieldId, text: &str) -> Workshop {
    let reading = Reading::new(text, LengthUnit::Inch).unwrap();
    let edit = PieceEdit::Measure(field, Some(reading));
    workshop
        .apply(Edit::Piece(workshop.pieces[0].id.clone(), edit))
        .unwrap()
}

#[test]
fn two_fields_of_one_piece_are_both_saved() {
    let first = invented_workshop();
    let mut database = Database::default();
    assert!(!database.write(&Workshop::default(), &first));
    let wide = measure(&first, fields::WIDTH.id(), "61");
    let deep = measure(&first, fields::DEPTH.id(), "17");
    assert!(!database.write(&first, &wide));
    assert!(database.write(&first, &deep), "the other page is to be told");
    assert_eq!(database.read(), measure(&wide, fields::DEPTH.id(), "17"));
    // A change made before the page has seen the other one.
    let deeper = measure(&deep, fields::DEPTH.id(), "18");
    database.write(&deep, &deeper);
    assert_eq!(database.read(), measure(&wide, fields::DEPTH.id(), "18"));
}

#[test]
fn two_settings_and_two_lines_are_both_saved() {
    let first = invented_workshop();
    let mut database = Database::default();
    database.write(&Workshop::default(), &first);
    let set = |edit| first.apply(edit).unwrap();
    let rate =
        |key: &str, text: &str| Edit::Book(BookEdit::Write("habits", "only".into(), key.into(), text.into()));
    let note = |id: &str| Edit::Book(BookEdit::Add("prices", id.into(), vec![("price", "85".into())]));
    let euro = crate::Currency::new("EUR").unwrap();
    database.write(&first, &set(rate("hourly", "45")));
    database.write(&first, &set(rate("profit", "10")));
    database.write(&first, &set(note("n-1")));
    database.write(&first, &set(note("n-2")));
    database.write(&first, &set(Edit::Settings(SettingEdit::Currency(Some(euro)))));
    database.write(
        &first,
        &set(Edit::Add {
            id: id("new"),
            kind: Kind::Desk,
        }),
    );
    database.write(&first, &set(Edit::Remove(first.pieces[1].id.clone())));
    let read = database.read();
    let habits: Habits = read.books.one();
    assert_eq!((habits.hourly, habits.profit), (Some(4500), Some(1000)));
    let notes: Vec<&str> = read.books.lines("prices").iter().map(|line| &*line.id).collect();
    assert!(notes.contains(&"n-1") && notes.contains(&"n-2"), "{notes:?}");
    assert_eq!(read.settings.currency, Some(euro));
    assert!(read.piece(&id("new")).is_some() && read.piece(&first.pieces[1].id).is_none());
}

#[test]
fn a_record_of_an_older_version_gets_the_change_whole() {
    let old = json!({
        "id": "a", "name": "Hall chest", "furniture": "nightstand",
        "readings": {"width": {"typed": "19 1/4", "unit": "in"}},
        "rows": [{"columns": 1}, {"columns": 2}], "fronts": "inset", "back": "recessed", "base": "legs"
    });
    let mut database = Database::default();
    database.write(
        &Workshop::default(),
        &Workshop::default()
            .apply(Edit::Add {
                id: id("a"),
                kind: Kind::Desk,
            })
            .unwrap(),
    );
    database.0.retain(|(key, _)| *key == Key::Workshop);
    database.0.push((Key::Piece(id("a")), old.to_string()));
    let first = database.read();
    let deep = measure(&first, fields::DEPTH.id(), "17");
    assert!(!database.write(&first, &deep));
    assert_eq!(database.read(), deep);
}

#[test]
fn what_did_not_change_is_not_written() {
    let first = invented_workshop();
    assert!(Changes::between(&first, &first.clone()).keys().is_empty());
    let wide = measure(&first, fields::WIDTH.id(), "61");
    assert_eq!(
        Changes::between(&first, &wide).keys(),
        [Key::Piece(first.pieces[0].id.clone())]
    );
    let nothing = Workshop::default();
    let all = Changes::between(&nothing, &first);
    assert_eq!(all.keys().len(), first.pieces.len() + 1);
    let mut none = first.clone();
    none.pieces.clear();
    assert_eq!(
        Changes::between(&first, &none).keys().len(),
        first.pieces.len() + 1
    );
}
