//! The browser's database, in a real browser: what is kept comes back.
#![cfg(target_arch = "wasm32")]
#![allow(
    missing_docs,
    clippy::unwrap_used,
    reason = "test names say it, and a test may unwrap"
)]

use app::browser::store::Store;
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
