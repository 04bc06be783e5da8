//! What the browser's own database holds.

use anyhow::{Context, Result, ensure};
use serde::Deserialize;
use serde_json::Value;
use workshop::Workshop;
use workshop::records::{Found, read};

use crate::page::Page;

/// Reads every record of both stores, past the page.
const READ: &str = "
    const done = arguments[0];
    const opening = indexedDB.open('coatwright');
    opening.onerror = () => done({fault: String(opening.error)});
    opening.onsuccess = () => {
        const database = opening.result;
        if (!database.objectStoreNames.length) {
            database.close();
            return done({fault: 'there is no record yet'});
        }
        const reading = database.transaction(['pieces', 'workshops']);
        const pieces = reading.objectStore('pieces');
        const [keys, values] = [pieces.getAllKeys(), pieces.getAll()];
        const workshop = reading.objectStore('workshops').get('workshop');
        reading.oncomplete = () => {
            database.close();
            const each = keys.result.map((key, i) => [key, values.result[i]]);
            done({pieces: each, workshop: workshop.result ?? null});
        };
    };
";

/// Puts a value into a store in the place of a record, past the page.
const PUT: &str = "
    const [store, key, record, done] = arguments;
    const opening = indexedDB.open('coatwright');
    opening.onsuccess = () => {
        const database = opening.result;
        const writing = database.transaction(store, 'readwrite');
        writing.objectStore(store).put(record, key);
        writing.oncomplete = () => {
            database.close();
            done();
        };
    };
";

/// The records of the database as plain values.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct Records {
    /// Each piece with its key, in the order of the keys.
    pub pieces: Vec<(String, Value)>,
    /// How the pieces hang together.
    pub workshop: Value,
}

impl Records {
    /// The document that they are.
    ///
    /// # Errors
    /// If a record cannot be read, or something of it had to be mended, or a piece is missing or in no list.
    pub fn document(&self) -> Result<Workshop> {
        let pieces = self.pieces.iter();
        let found = Found {
            workshop: Some(Some(self.workshop.to_string())),
            pieces: pieces
                .map(|(id, piece)| (id.clone(), Some(piece.to_string())))
                .collect(),
        };
        let saved = read(&found).context("nothing is kept")?;
        ensure!(
            saved.unread.is_none(),
            "the records were mended: {:?}",
            saved.unread
        );
        let ids: Vec<&str> = saved.workshop.pieces.iter().map(|piece| &*piece.id.0).collect();
        ensure!(
            self.workshop["pieces"] == Value::from(ids.as_slice()),
            "kept are {ids:?}, and the list is another one: {}",
            self.workshop["pieces"]
        );
        Ok((*saved.workshop).clone())
    }
}

impl Page {
    /// The records of the database, once everything is kept.
    ///
    /// # Errors
    /// If the browser does not read them.
    pub async fn records(&self) -> Result<Records> {
        self.kept().await?;
        self.records_now().await
    }

    /// Puts a value in the place of a record, past the page, which does not hear of it.
    ///
    /// # Errors
    /// If the browser does not write it.
    pub async fn put_record(&self, store: &str, key: &str, record: &Value) -> Result<()> {
        let of = vec![store.into(), key.into(), record.clone()];
        self.driver().execute_async(PUT, of).await?;
        Ok(())
    }

    /// The records of the database as they are now.
    ///
    /// # Errors
    /// If the browser does not read them.
    pub async fn records_now(&self) -> Result<Records> {
        let found = self.driver().execute_async(READ, vec![]).await?;
        serde_json::from_value(found.json().clone()).with_context(|| found.json().to_string())
    }

    /// Waits until the records are a document as wanted.
    ///
    /// # Errors
    /// What was last wrong with it.
    pub async fn keeps<T>(&self, wanted: impl Fn(&Workshop) -> Result<T>) -> Result<T> {
        self.eventually(async || wanted(&self.records().await?.document()?))
            .await
    }
}
