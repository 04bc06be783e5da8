//! The browser's database. Each piece is a record, and one more record lists the pieces.
//!
//! A change is written in one transaction that first reads the affected records, so that changes from other
//! tabs are kept (`workshop::records`). `store.js` talks to the browser.

use std::cell::Cell;
use std::rc::Rc;

use js_sys::Array;
use units::SortedMap;
use wasm_bindgen::prelude::*;
use workshop::records::{Changes, Found, Key, Saved, read};
use workshop::{PieceId, Workshop};

#[wasm_bindgen(module = "/src/browser/store.js")]
extern "C" {
    #[wasm_bindgen(catch, js_name = open)]
    async fn open_database(name: &str, version: u32, lost: &JsValue) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(js_name = close)]
    fn close_database(database: &JsValue);
    #[wasm_bindgen(catch, js_name = load)]
    async fn load_all(database: &JsValue) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(catch)]
    async fn rewrite(
        database: &JsValue,
        keys: Array,
        written: &Closure<dyn Fn(Array) -> Array>,
    ) -> Result<(), JsValue>;
    #[wasm_bindgen(catch)]
    async fn replace(database: &JsValue, records: Array) -> Result<(), JsValue>;
}

/// The name of the page's database.
pub const DATABASE: &str = "coatwright";
/// The version of the records. An older page must not write to newer ones, so the browser does not let it
/// open the database.
const VERSION: u32 = 3;
const PIECES: &str = "pieces";
const WORKSHOPS: &str = "workshops";
/// For now there is one workshop. Its record has a key so that there can be more later.
const THE_WORKSHOP: &str = "workshop";

/// Why the database operation failed, in words for the maker.
#[derive(Clone, Debug, PartialEq)]
pub struct StoreError {
    /// The reason.
    pub reason: String,
    /// True if the browser closed the database, so that it can be reopened.
    pub is_closed: bool,
}

impl From<JsValue> for StoreError {
    fn from(error: JsValue) -> Self {
        let error = js_sys::Error::from(error);
        let name = String::from(error.name());
        let reason = match name.as_str() {
            "QuotaExceededError" => "the browser\u{2019}s storage is full".into(),
            "VersionError" => "another tab has a newer version of this page. Reload this one".into(),
            _ => format!(
                "the browser says \u{201c}{}\u{201d}",
                String::from(error.message())
            ),
        };
        StoreError {
            reason,
            is_closed: name == "InvalidStateError",
        }
    }
}

/// The open database.
pub struct Store {
    database: JsValue,
    /// The browser calls it as long as the database is open.
    _lost: Closure<dyn Fn()>,
}

impl Drop for Store {
    fn drop(&mut self) {
        close_database(&self.database);
    }
}

impl Store {
    /// Opens or creates the database with this name. `lost` is called when its data is gone or may be gone.
    /// The database is closed in that case.
    ///
    /// # Errors
    /// If the browser refuses it, as in some private windows.
    pub async fn open(name: &str, lost: impl Fn() + 'static) -> Result<Self, StoreError> {
        let lost = Closure::<dyn Fn()>::new(lost);
        let database = open_database(name, VERSION, lost.as_ref()).await?;
        Ok(Store {
            database,
            _lost: lost,
        })
    }

    /// Returns the last saved workshop and what could not be read, or `None` if nothing was ever saved.
    ///
    /// # Errors
    /// If the browser cannot read the data.
    pub async fn load(&self) -> Result<Option<Saved>, StoreError> {
        // The order of the stores in `store.js`.
        let [pieces, workshops] = pair(&load_all(&self.database).await?);
        let mut others = records(&workshops);
        Ok(read(&Found {
            workshop: others.remove(THE_WORKSHOP),
            pieces: records(&pieces).into_iter().collect(),
        }))
    }

    /// Saves a workshop by applying the change from `before` to the newest records. Returns true if someone
    /// else changed one of them, so that the database has more changes than this workshop.
    ///
    /// # Errors
    /// If the browser cannot write, for example because its storage is full. Nothing is changed in that case.
    pub async fn save(&self, workshop: &Workshop, before: &Workshop) -> Result<bool, StoreError> {
        let keys = Changes::between(before, workshop).keys();
        if keys.is_empty() {
            return Ok(false);
        }
        let keys: Array = keys.iter().map(|key| listed(key, [])).collect();
        let is_mixed = Rc::new(Cell::new(false));
        let written = {
            let (workshop, before, is_mixed) = (workshop.clone(), before.clone(), is_mixed.clone());
            Closure::<dyn Fn(Array) -> Array>::new(move |newest: Array| {
                let newest: Vec<Option<String>> = newest.iter().map(|text| text.as_string()).collect();
                let (texts, mixed) = Changes::between(&before, &workshop).on(&newest);
                is_mixed.set(mixed);
                texts.into_iter().map(js_text).collect()
            })
        };
        rewrite(&self.database, keys, &written).await?;
        Ok(is_mixed.get())
    }

    /// Replaces all saved data with a workshop.
    ///
    /// # Errors
    /// Same as [`Store::save`].
    pub async fn save_whole(&self, workshop: &Workshop) -> Result<(), StoreError> {
        let records = Changes::whole(workshop).into_iter();
        let records: Array = records.map(|(key, text)| listed(&key, [text.into()])).collect();
        Ok(replace(&self.database, records).await?)
    }
}

/// Returns a list for `store.js`: the store of a record, its key, and the additional values.
fn listed(key: &Key, more: impl IntoIterator<Item = JsValue>) -> Array {
    let (store, name) = match key {
        Key::Workshop => (WORKSHOPS, THE_WORKSHOP),
        Key::Piece(PieceId(name)) => (PIECES, &**name),
    };
    [store.into(), name.into()].into_iter().chain(more).collect()
}

fn js_text(text: Option<String>) -> JsValue {
    text.map_or(JsValue::UNDEFINED, JsValue::from)
}

fn pair(of: &JsValue) -> [Array; 2] {
    let of = Array::from(of);
    [0, 1].map(|place| Array::from(&of.get(place)))
}

/// Returns the records of a store by key, each with its text if it has one.
fn records(of: &Array) -> SortedMap<String, Option<String>> {
    let [names, texts] = pair(of);
    let names = names.iter().map(|name| name.as_string().unwrap_or_default());
    names.zip(texts.iter().map(|text| text.as_string())).collect()
}
