//! A maker comes back to a piece that an older version of the page kept, and is told once why its numbers are others.
//!
//! Outside source: the sentences of the `workshop` crate.

use anyhow::{Result, ensure};
use journeys::{Screen, journey};
use workshop::results::{RESULTS, news};

/// Makes each record what it was before pieces kept which results were shown.
const AS_OF_OLD: &str = "
    const done = arguments[0];
    const opening = indexedDB.open('coatwright');
    opening.onerror = () => done(false);
    opening.onsuccess = () => {
        const database = opening.result;
        const writing = database.transaction('pieces', 'readwrite');
        const walk = writing.objectStore('pieces').openCursor();
        walk.onsuccess = () => {
            const at = walk.result;
            if (!at) return;
            const piece = at.value;
            delete piece.shown;
            delete piece.edition;
            at.update(piece);
            at.continue();
        };
        writing.oncomplete = () => {
            database.close();
            done(true);
        };
    };
";

#[tokio::test]
async fn other_numbers_are_told_once() -> Result<()> {
    journey("other_numbers_are_told_once", Screen::Desktop, async |page| {
        page.press("#new-bench").await?;
        page.kept().await?;
        let done = page.driver().execute_async(AS_OF_OLD, vec![]).await?;
        ensure!(*done.json() == true, "the records could not be changed");
        let old = page.records().await?.document()?;
        let sentences = news(&old);
        ensure!(!sentences.is_empty(), "there is nothing to tell about {old:?}");

        page.reload().await?;
        page.reads("#messages", |text| {
            for sentence in &sentences {
                ensure!(text.contains(sentence), "{sentence} is missing in {text}");
            }
            Ok(())
        })
        .await?;
        page.keeps(|kept| {
            ensure!(kept.pieces[0].shown == RESULTS, "it is not kept that it was told");
            Ok(())
        })
        .await?;

        page.reload().await?;
        // The piece is on the board by now, and so would be what there is to tell of it.
        page.element("#strip").await?;
        page.gone("#messages li").await
    })
    .await
}
