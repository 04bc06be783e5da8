//! The browser's own database: each piece is a record, and one record says how they hang together.
//!
//! A change is written in one transaction that holds the changed pieces and the record of the workshop; it
//! counts as kept when the transaction is complete, not when the requests are.

use std::rc::Rc;

use idb::{Database, DatabaseEvent, Factory, ObjectStoreParams, TransactionMode, TransactionResult};
use serde::Serialize;
use serde_json::Value;
use units::SortedMap;
use wasm_bindgen::{JsCast, JsValue};
use workshop::format::{Notice, PieceRecord, RecordError, WorkshopRecord, piece_record};
use workshop::{Piece, Workshop};

const DATABASE: &str = "coatwright";
/// The version of the records. An older page must not write into newer ones, so the browser refuses it the database.
const VERSION: u32 = 3;
const PIECES: &str = "pieces";
const WORKSHOPS: &str = "workshops";
/// There is one workshop for now; its record has a name so that there can be more.
const THE_WORKSHOP: &str = "workshop";

/// Why the database did not do as asked, in words for the maker.
#[derive(Clone, Debug, PartialEq)]
pub struct StoreError(pub String);

impl From<idb::Error> for StoreError {
    fn from(error: idb::Error) -> Self {
        let text = error.to_string();
        if text.contains("QuotaExceeded") {
            return StoreError("the browser's storage is full".into());
        }
        if text.contains("VersionError") || text.contains("InvalidState") {
            return StoreError("another tab has a newer version of this page; load this one again".into());
        }
        StoreError(text)
    }
}

impl From<RecordError> for StoreError {
    fn from(error: RecordError) -> Self {
        StoreError(error.to_string())
    }
}

impl From<serde_json::Error> for StoreError {
    fn from(error: serde_json::Error) -> Self {
        StoreError(error.to_string())
    }
}

/// The open database.
pub struct Store {
    database: Database,
}

impl Store {
    /// Opens the database, and makes it if it is not there.
    ///
    /// # Errors
    /// If the browser refuses it, as in some private windows.
    pub async fn open() -> Result<Self, StoreError> {
        Self::open_named(DATABASE).await
    }

    /// Opens a database of another name, for tests.
    ///
    /// # Errors
    /// As for [`Store::open`].
    pub async fn open_named(name: &str) -> Result<Self, StoreError> {
        let mut request = Factory::new()?.open(name, Some(VERSION))?;
        request.on_upgrade_needed(|event| {
            // Where the stores are there already, they stay; any other failure makes the opening fail, which is told
            // there. Records of the version before are read as they are and brought over when they are written.
            if let Ok(database) = event.database() {
                for store in [PIECES, WORKSHOPS] {
                    let _ = database.create_object_store(store, ObjectStoreParams::new());
                }
            }
        });
        let mut database = request.await?;
        // A page of a newer version waits until this one lets go.
        database.on_version_change(|event| {
            if let Some(database) = event
                .target()
                .and_then(|t| t.dyn_into::<web_sys::IdbDatabase>().ok())
            {
                database.close();
            }
        });
        Ok(Store { database })
    }

    /// The workshop as it was last kept, with what could not be read of it; nothing if none was ever kept.
    ///
    /// # Errors
    /// If the browser cannot read.
    pub async fn load(&self) -> Result<Option<(Workshop, Vec<Notice>)>, StoreError> {
        let transaction = self
            .database
            .transaction(&[PIECES, WORKSHOPS], TransactionMode::ReadOnly)?;
        let workshops = transaction.object_store(WORKSHOPS)?;
        let Some(record) = workshops.get(JsValue::from_str(THE_WORKSHOP))?.await? else {
            return Ok(None);
        };
        let values = transaction.object_store(PIECES)?.get_all(None, None)?.await?;
        let record = WorkshopRecord::read(from_js(&record)?)?;
        let mut notices = Vec::new();
        let listed: Vec<String> = record
            .pieces
            .iter()
            .filter_map(|id| Some(id.as_str()?.to_owned()))
            .collect();
        let mut workshop = record.into_workshop(&mut notices);
        let mut pieces: SortedMap<Rc<str>, Rc<Piece>> = SortedMap::new();
        for (index, value) in values.into_iter().enumerate() {
            match from_js(&value).and_then(|value| Ok(piece_record(value)?)) {
                Ok(record) => {
                    let piece = record.into_piece(&workshop.materials, &mut notices);
                    pieces.insert(piece.id.0.clone(), Rc::new(piece));
                }
                Err(StoreError(reason)) => notices.push(Notice::PieceLeftOut {
                    number: index + 1,
                    reason,
                }),
            }
        }
        workshop.pieces = listed
            .iter()
            .filter_map(|id| pieces.remove(id.as_str()))
            .collect();
        // A piece that another tab added while this one wrote its list stands in no list: it comes last.
        workshop.pieces.extend(pieces.into_iter().map(|(_, piece)| piece));
        Ok(Some((workshop, notices)))
    }

    /// Keeps a workshop: writes what differs from `kept`, in one transaction.
    ///
    /// # Errors
    /// If the browser cannot write, for instance because its storage is full. Nothing was changed then.
    pub async fn keep(&self, workshop: &Workshop, kept: &Workshop) -> Result<(), StoreError> {
        let transaction = self
            .database
            .transaction(&[PIECES, WORKSHOPS], TransactionMode::ReadWrite)?;
        let store = transaction.object_store(PIECES)?;
        let mut before = SortedMap::new();
        for piece in &kept.pieces {
            before.insert(&piece.id, piece);
        }
        for piece in &workshop.pieces {
            if before.get(&piece.id).is_none_or(|old| !Rc::ptr_eq(old, piece)) {
                let record = to_js(&PieceRecord::of(piece))?;
                store.put(&record, Some(&JsValue::from_str(&piece.id.0)))?.await?;
            }
        }
        for old in &kept.pieces {
            if workshop.piece(&old.id).is_none() {
                store.delete(JsValue::from_str(&old.id.0))?.await?;
            }
        }
        // Another tab may have changed the settings since: they are written only if they were changed here.
        let record = |of: &Workshop| to_text(&WorkshopRecord::of(of, |piece| piece.id.0.to_string()));
        let now = record(workshop)?;
        if now != record(kept)? {
            transaction
                .object_store(WORKSHOPS)?
                .put(&parsed(&now)?, Some(&JsValue::from_str(THE_WORKSHOP)))?
                .await?;
        }
        match transaction.await? {
            TransactionResult::Committed => Ok(()),
            TransactionResult::Aborted => Err(StoreError("the browser took the change back".into())),
        }
    }
}

/// A record as a plain object, so that a person can read the database in the browser's own tools. It goes by the same
/// text as a save file: the page is lighter for it.
fn to_js(record: &impl Serialize) -> Result<JsValue, StoreError> {
    parsed(&to_text(record)?)
}

fn to_text(record: &impl Serialize) -> Result<String, StoreError> {
    Ok(serde_json::to_string_pretty(record)?)
}

fn parsed(text: &str) -> Result<JsValue, StoreError> {
    js_sys::JSON::parse(text).map_err(|_| StoreError("the browser did not take a record".into()))
}

fn from_js(record: &JsValue) -> Result<Value, StoreError> {
    let text = js_sys::JSON::stringify(record).map_err(|_| StoreError("a record is no record".into()))?;
    Ok(serde_json::from_str(&String::from(text))?)
}
