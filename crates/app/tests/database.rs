//! The browser's database, in a real browser: what is kept comes back.
#![cfg(target_arch = "wasm32")]
#![allow(
    missing_docs,
    clippy::unwrap_used,
    reason = "test names say it, and a test may unwrap"
)]

use std::cell::RefCell;
use std::rc::Rc;

use app::browser::saver::Saver;
use app::browser::store::Store;
use app::state::{Action, Load, SaveStatus};
use geometry::{FieldId, fields};
use idb::{DatabaseEvent, Factory, ObjectStoreParams, TransactionMode};
use serde_json::{Value, json};
use units::LengthUnit;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use workshop::format::PieceRecord;
use workshop::shelf::stock;
use workshop::{BookEdit, Edit, PieceEdit, PieceId, Reading, Workshop, invented_workshop};
use yew::Callback;

wasm_bindgen_test_configure!(run_in_browser);

async fn opened(name: &str) -> Store {
    Store::open(name, || {}).await.unwrap()
}

/// What is saved, all of which can be read.
async fn whole(store: &Store) -> Workshop {
    let saved = store.load().await.unwrap().unwrap();
    assert_eq!(saved.unread, None);
    (*saved.workshop).clone()
}

#[wasm_bindgen_test]
async fn a_workshop_comes_back_as_it_was_kept() {
    let store = opened("test-comes-back").await;
    let workshop = invented_workshop();
    store.save(&workshop, &Workshop::default()).await.unwrap();
    assert_eq!(whole(&opened("test-comes-back").await).await, workshop);
}

#[wasm_bindgen_test]
async fn an_empty_database_holds_no_workshop() {
    let store = opened("test-empty").await;
    assert!(store.load().await.unwrap().is_none());
}

#[wasm_bindgen_test]
async fn a_change_writes_what_changed_and_takes_out_what_went() {
    let store = opened("test-change").await;
    let first = invented_workshop();
    store.save(&first, &Workshop::default()).await.unwrap();
    let id = first.pieces[0].id.clone();
    let renamed = first
        .apply(Edit::Piece(id, PieceEdit::Name("Hall dresser".into())))
        .unwrap();
    let removed = renamed.apply(Edit::Remove(first.pieces[1].id.clone())).unwrap();
    store.save(&removed, &first).await.unwrap();
    assert_eq!(whole(&store).await, removed);
}

#[wasm_bindgen_test]
async fn two_tabs_that_each_add_a_piece_lose_neither() {
    let [one, other] = [opened("test-tabs").await, opened("test-tabs").await];
    let first = invented_workshop();
    one.save(&first, &Workshop::default()).await.unwrap();
    let copy = |name: &str| {
        let of = first.pieces[0].id.clone();
        first
            .apply(Edit::Copy {
                of,
                id: PieceId(name.into()),
            })
            .unwrap()
    };
    one.save(&copy("from-one"), &first).await.unwrap();
    other.save(&copy("from-the-other"), &first).await.unwrap();
    let found = whole(&one).await;
    for name in ["from-one", "from-the-other"] {
        assert!(found.piece(&PieceId(name.into())).is_some(), "{name}");
    }
}

/// Writes records as an older version of the page did.
async fn keep_as_version(version: u32, name: &str, records: &[(&str, &str, Value)]) {
    let mut request = Factory::new().unwrap().open(name, Some(version)).unwrap();
    request.on_upgrade_needed(|event| {
        for store in ["pieces", "workshops"] {
            let database = event.database().unwrap();
            database
                .create_object_store(store, ObjectStoreParams::new())
                .unwrap();
        }
    });
    let database = request.await.unwrap();
    for (store, key, record) in records {
        let transaction = database
            .transaction(&[store], TransactionMode::ReadWrite)
            .unwrap();
        let store = transaction.object_store(store).unwrap();
        let record = js_sys::JSON::parse(&record.to_string()).unwrap();
        store
            .put(&record, Some(&JsValue::from_str(key)))
            .unwrap()
            .await
            .unwrap();
        transaction.await.unwrap();
    }
    database.close();
}

#[wasm_bindgen_test]
async fn records_of_the_first_version_are_still_read() {
    let workshop = json!({
        "kind": "coatwright-workshop", "version": 1, "title": "Shed", "note": "", "units": "us", "pieces": ["a"]
    });
    let piece = json!({
        "id": "a", "name": "Hall chest", "count": 2, "furniture": "nightstand",
        "readings": {"width": {"typed": "19 1/4", "unit": "in"}},
        "rows": [{"columns": 1, "height": {"typed": "5", "unit": "in"}}, {"columns": 2}],
        "fronts": "inset", "back": "recessed", "base": "legs"
    });
    let records = [("workshops", "workshop", workshop), ("pieces", "a", piece)];
    keep_as_version(1, "test-first-version", &records).await;

    let store = opened("test-first-version").await;
    let found = whole(&store).await;
    let piece = &found.pieces[0];
    assert_eq!((found.title.as_str(), piece.count), ("Shed", 2));
    assert_eq!(
        (
            piece.bays.len(),
            piece.bays[0].rows.len(),
            piece.bays[0].rows[1].columns
        ),
        (1, 2, 2)
    );
    assert_eq!(piece.readings["width"].typed(), "19 1/4");

    let id = piece.id.clone();
    let renamed = found
        .apply(Edit::Piece(id, PieceEdit::Name("Chest".into())))
        .unwrap();
    store.save(&renamed, &found).await.unwrap();
    assert_eq!(whole(&store).await, renamed);
}

/// The invented workshop as version 2 kept it: a record for each piece, and one that lists them.
#[wasm_bindgen_test]
async fn records_of_the_second_version_are_still_read() {
    let mut workshop: Value =
        serde_json::from_str(include_str!("../../workshop/tests/frozen/saved/file-2.json")).unwrap();
    let pieces: Vec<Value> = workshop["pieces"].as_array().unwrap().clone();
    let ids: Vec<&str> = pieces.iter().map(|piece| piece["id"].as_str().unwrap()).collect();
    workshop["pieces"] = json!(ids);
    let mut records = vec![("workshops", "workshop", workshop)];
    records.extend(
        ids.iter()
            .zip(&pieces)
            .map(|(id, piece)| ("pieces", *id, piece.clone())),
    );
    keep_as_version(2, "test-second-version", &records).await;

    let store = opened("test-second-version").await;
    let found = whole(&store).await;
    assert_eq!(found.pieces.len(), pieces.len());
    let whole =
        workshop::format::load(include_str!("../../workshop/tests/frozen/saved/file-2.json")).unwrap();
    assert_eq!(found, whole.workshop);
}

fn measured(workshop: &Workshop, field: FieldId, text: &str) -> Workshop {
    let reading = Reading::new(text, LengthUnit::Inch).unwrap();
    let edit = PieceEdit::Measure(field, Some(reading));
    workshop
        .apply(Edit::Piece(workshop.pieces[0].id.clone(), edit))
        .unwrap()
}

#[wasm_bindgen_test]
async fn two_tabs_that_change_two_fields_of_one_piece_lose_neither() {
    let [one, other] = [opened("test-fields").await, opened("test-fields").await];
    let first = invented_workshop();
    one.save(&first, &Workshop::default()).await.unwrap();
    let wide = measured(&first, fields::WIDTH.id(), "61");
    let deep = measured(&first, fields::DEPTH.id(), "17");
    // At the same moment: neither waits for the other.
    let (wide_saved, deep_saved) = (one.save(&wide, &first), other.save(&deep, &first));
    let mixed = [wide_saved.await.unwrap(), deep_saved.await.unwrap()];
    assert!(
        mixed.contains(&true),
        "one of them is to read what the other one saved"
    );
    assert_eq!(whole(&one).await, measured(&wide, fields::DEPTH.id(), "17"));
}

/// Puts anything into a store, as it is.
async fn put(name: &str, store: &str, key: &str, record: &JsValue) {
    let database = Factory::new()
        .unwrap()
        .open(name, Some(3))
        .unwrap()
        .await
        .unwrap();
    let transaction = database
        .transaction(&[store], TransactionMode::ReadWrite)
        .unwrap();
    let store = transaction.object_store(store).unwrap();
    store
        .put(record, Some(&JsValue::from_str(key)))
        .unwrap()
        .await
        .unwrap();
    transaction.await.unwrap();
    database.close();
}

/// Every record, as text.
async fn everything(name: &str) -> Vec<String> {
    let database = Factory::new()
        .unwrap()
        .open(name, Some(3))
        .unwrap()
        .await
        .unwrap();
    let mut all = Vec::new();
    for store in ["pieces", "workshops"] {
        let transaction = database.transaction(&[store], TransactionMode::ReadOnly).unwrap();
        let store = transaction.object_store(store).unwrap();
        let values = store.get_all(None, None).unwrap().await.unwrap();
        // What is no text is nothing here.
        let text = |value: &JsValue| js_sys::JSON::stringify(value).ok()?.as_string();
        all.extend(values.iter().map(|value| format!("{:?}", text(value))));
    }
    database.close();
    all
}

async fn rest(milliseconds: i32) {
    let promise = js_sys::Promise::new(&mut |done, _| {
        let window = web_sys::window().unwrap();
        window
            .set_timeout_with_callback_and_timeout_and_arguments_0(&done, milliseconds)
            .unwrap();
    });
    JsFuture::from(promise).await.unwrap();
}

/// A saver, and what it told last of each kind.
#[derive(Clone, Default)]
struct Heard {
    document: Rc<RefCell<Option<Rc<Workshop>>>>,
    load: Rc<RefCell<Load>>,
    keeping: Rc<RefCell<SaveStatus>>,
}

impl Heard {
    fn start(name: &'static str) -> (Heard, Saver) {
        let heard = Heard::default();
        let ear = heard.clone();
        let tell = Callback::from(move |act| match act {
            Action::Loaded(workshop) => *ear.document.borrow_mut() = Some(workshop),
            Action::Load(load) => *ear.load.borrow_mut() = load,
            Action::SaveStatus(keeping) => *ear.keeping.borrow_mut() = keeping,
            _ => {}
        });
        (heard, Saver::start_with(name, tell))
    }

    async fn until(&self, wanted: impl Fn(&Heard) -> bool) {
        for _ in 0..200 {
            if wanted(self) {
                return;
            }
            rest(20).await;
        }
        let (load, keeping) = (self.load.borrow(), self.keeping.borrow());
        assert!(wanted(self), "{load:?} {keeping:?}");
    }

    fn document(&self) -> Rc<Workshop> {
        self.document.borrow().clone().unwrap()
    }

    fn is_partly(&self) -> bool {
        matches!(*self.load.borrow(), Load::Partly(_))
    }
}

#[wasm_bindgen_test]
async fn what_cannot_be_read_is_never_written_over() {
    let parsed = |text: &str| js_sys::JSON::parse(text).unwrap();
    let spoiled = [
        ("test-undefined", JsValue::UNDEFINED),
        ("test-null", JsValue::NULL),
        ("test-number", JsValue::from(7)),
        ("test-cycle", js_sys::BigInt::from(7).into()),
        (
            "test-books",
            parsed("{\"kind\": \"coatwright-workshop\", \"version\": 3, \"units\": \"us\", \"books\": 7}"),
        ),
    ];
    for (name, record) in spoiled {
        let first = invented_workshop();
        opened(name)
            .await
            .save(&first, &Workshop::default())
            .await
            .unwrap();
        put(name, "workshops", "workshop", &record).await;
        let before = everything(name).await;
        let (heard, saver) = Heard::start(name);
        heard.until(Heard::is_partly).await;
        assert_eq!(heard.document().pieces.len(), first.pieces.len(), "{name}");
        let wide = Rc::new(measured(&heard.document(), fields::WIDTH.id(), "61"));
        saver.keep(&wide);
        rest(500).await;
        assert_eq!(everything(name).await, before, "{name}");
        assert_ne!(*heard.keeping.borrow(), SaveStatus::Saved, "{name}");
        // The maker lets go of it.
        saver.leave_out();
        heard.until(|heard| *heard.load.borrow() == Load::Whole).await;
        assert_eq!(whole(&opened(name).await).await, *wide, "{name}");
    }
}

/// A can in the layer of an older record moves to the shelf and is saved there. Once it is deleted, it does not come back.
#[wasm_bindgen_test]
async fn a_can_of_an_older_record_moves_to_the_shelf_for_good() {
    let name = "test-can";
    let mut first = invented_workshop();
    first.books = Default::default();
    let store = opened(name).await;
    store.save(&first, &Workshop::default()).await.unwrap();
    let id = first.pieces[0].id.clone();
    let mut record: Value = serde_json::to_value(PieceRecord::of(&first.pieces[0])).unwrap();
    record["scheme"]["layers"][0]["can"] = "us-quart".into();
    let record = js_sys::JSON::parse(&record.to_string()).unwrap();
    put(name, "pieces", &id.0, &record).await;
    let (heard, saver) = Heard::start(name);
    let is_saved = |heard: &Heard| *heard.keeping.borrow() == SaveStatus::Saved;
    heard.until(is_saved).await;
    let moved = heard.document();
    assert_eq!(stock(&moved).len(), 1);
    let saved = opened(name).await.load().await.unwrap().unwrap();
    assert_eq!((&saved.workshop, &saved.as_found), (&moved, &moved));
    let strike = BookEdit::Strike("shelf", stock(&moved)[0].id.clone());
    let struck = Rc::new(moved.apply(Edit::Book(strike)).unwrap());
    saver.keep(&struck);
    rest(100).await;
    heard.until(is_saved).await;
    assert_eq!(whole(&opened(name).await).await, *struck);
}

#[wasm_bindgen_test]
async fn a_missing_record_is_not_an_empty_workshop() {
    let name = "test-missing";
    let first = invented_workshop();
    let store = opened(name).await;
    store.save(&first, &Workshop::default()).await.unwrap();
    let database = Factory::new()
        .unwrap()
        .open(name, Some(3))
        .unwrap()
        .await
        .unwrap();
    let transaction = database
        .transaction(&["workshops"], TransactionMode::ReadWrite)
        .unwrap();
    transaction
        .object_store("workshops")
        .unwrap()
        .clear()
        .unwrap()
        .await
        .unwrap();
    transaction.await.unwrap();
    database.close();
    let saved = store.load().await.unwrap().unwrap();
    assert_eq!(saved.workshop.pieces.len(), first.pieces.len());
    assert!(saved.unread.is_some());
}

#[wasm_bindgen_test]
async fn a_read_that_fails_is_tried_again_and_nothing_is_lost() {
    let name = "test-fails";
    let first = invented_workshop();
    opened(name)
        .await
        .save(&first, &Workshop::default())
        .await
        .unwrap();
    let before = everything(name).await;
    let fail = "const of = IDBObjectStore.prototype; const real = of.getAllKeys;
        of.getAllKeys = function () { throw new DOMException('it does not answer', 'UnknownError'); };
        globalThis.mend = () => { of.getAllKeys = real; }";
    js_sys::eval(fail).unwrap();
    let (heard, saver) = Heard::start(name);
    heard
        .until(|heard| matches!(&*heard.load.borrow(), Load::Failed(reason) if reason.contains("does not answer")))
        .await;
    // The maker goes on with something new all the same.
    let begun = Edit::Add {
        id: PieceId("begun".into()),
        kind: geometry::Kind::Desk,
    };
    saver.keep(&Rc::new(Workshop::default().apply(begun).unwrap()));
    rest(500).await;
    js_sys::eval("mend()").unwrap();
    assert_eq!(everything(name).await, before);
    saver.try_again();
    heard
        .until(|heard| *heard.keeping.borrow() == SaveStatus::Saved)
        .await;
    rest(500).await;
    let found = whole(&opened(name).await).await;
    assert_eq!(found.pieces[..first.pieces.len()], first.pieces[..]);
    assert_eq!(found.pieces.len(), first.pieces.len() + 1);
    assert_eq!(heard.document().pieces.len(), found.pieces.len());
}

#[wasm_bindgen_test]
async fn one_record_that_the_browser_cannot_give_leaves_the_others() {
    let name = "test-one-record";
    let first = invented_workshop();
    opened(name)
        .await
        .save(&first, &Workshop::default())
        .await
        .unwrap();
    let spoiled = first.pieces[0].id.0.to_string();
    let fail = format!(
        "const of = IDBObjectStore.prototype; const [all, one] = [of.getAll, of.get];
        const no = () => {{ throw new DOMException('large value', 'UnknownError'); }};
        of.getAll = no;
        of.get = function (key) {{ return key === '{spoiled}' ? no() : one.call(this, key); }};
        globalThis.mend = () => {{ of.getAll = all; of.get = one; }}"
    );
    js_sys::eval(&fail).unwrap();
    let saved = opened(name).await.load().await;
    js_sys::eval("mend()").unwrap();
    let saved = saved.unwrap().unwrap();
    assert_eq!(saved.workshop.pieces[..], first.pieces[1..]);
    assert_eq!(saved.unread.unwrap().faults.len(), 1);
}

#[wasm_bindgen_test]
async fn a_database_that_is_deleted_under_the_page_is_written_anew() {
    let name = "test-deleted";
    let first = invented_workshop();
    opened(name)
        .await
        .save(&first, &Workshop::default())
        .await
        .unwrap();
    let (heard, _keeper) = Heard::start(name);
    heard
        .until(|heard| *heard.keeping.borrow() == SaveStatus::Saved)
        .await;
    Factory::new().unwrap().delete(name).unwrap().await.unwrap();
    heard
        .until(|heard| *heard.keeping.borrow() == SaveStatus::Writing)
        .await;
    heard
        .until(|heard| *heard.keeping.borrow() == SaveStatus::Saved)
        .await;
    assert_eq!(whole(&opened(name).await).await, first);
}
