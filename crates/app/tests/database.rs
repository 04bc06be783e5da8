//! The browser's database, in a real browser: what is kept comes back.
#![cfg(target_arch = "wasm32")]
#![allow(
    missing_docs,
    clippy::unwrap_used,
    reason = "test names say it, and a test may unwrap"
)]

use app::browser::store::Store;
use idb::{DatabaseEvent, Factory, ObjectStoreParams, TransactionMode};
use serde_json::{Value, json};
use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use workshop::{Edit, PieceEdit, PieceId, Workshop, invented_workshop};

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
async fn a_workshop_comes_back_as_it_was_kept() {
    let store = Store::open_named("test-comes-back").await.unwrap();
    let workshop = invented_workshop();
    store.keep(&workshop, &Workshop::default()).await.unwrap();
    let again = Store::open_named("test-comes-back").await.unwrap();
    let (found, notices) = again.load().await.unwrap().unwrap();
    assert_eq!(found, workshop);
    assert!(notices.is_empty());
}

#[wasm_bindgen_test]
async fn an_empty_database_holds_no_workshop() {
    let store = Store::open_named("test-empty").await.unwrap();
    assert!(store.load().await.unwrap().is_none());
}

#[wasm_bindgen_test]
async fn a_change_writes_what_changed_and_takes_out_what_went() {
    let store = Store::open_named("test-change").await.unwrap();
    let first = invented_workshop();
    store.keep(&first, &Workshop::default()).await.unwrap();
    let id = first.pieces[0].id.clone();
    let renamed = first
        .apply(Edit::Piece(id, PieceEdit::Name("Hall dresser".into())))
        .unwrap();
    let removed = renamed.apply(Edit::Remove(first.pieces[1].id.clone())).unwrap();
    store.keep(&removed, &first).await.unwrap();
    assert_eq!(store.load().await.unwrap().unwrap().0, removed);
}

#[wasm_bindgen_test]
async fn two_tabs_that_each_add_a_piece_lose_neither() {
    let [one, other] = [
        Store::open_named("test-tabs").await.unwrap(),
        Store::open_named("test-tabs").await.unwrap(),
    ];
    let first = invented_workshop();
    one.keep(&first, &Workshop::default()).await.unwrap();
    let copy = |name: &str| {
        let of = first.pieces[0].id.clone();
        first
            .apply(Edit::Copy {
                of,
                id: PieceId(name.into()),
            })
            .unwrap()
    };
    one.keep(&copy("from-one"), &first).await.unwrap();
    other.keep(&copy("from-the-other"), &first).await.unwrap();
    let found = one.load().await.unwrap().unwrap().0;
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

    let store = Store::open_named("test-first-version").await.unwrap();
    let (found, notices) = store.load().await.unwrap().unwrap();
    assert!(notices.is_empty(), "{notices:?}");
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
    store.keep(&renamed, &found).await.unwrap();
    assert_eq!(store.load().await.unwrap().unwrap().0, renamed);
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

    let store = Store::open_named("test-second-version").await.unwrap();
    let (found, notices) = store.load().await.unwrap().unwrap();
    assert!(notices.is_empty(), "{notices:?}");
    assert_eq!(found.pieces.len(), pieces.len());
    let whole =
        workshop::format::load(include_str!("../../workshop/tests/frozen/saved/file-2.json")).unwrap();
    assert_eq!(found, whole.workshop);
}
