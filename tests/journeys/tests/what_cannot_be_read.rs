//! What was saved is damaged, or the browser does not give it: nothing is written over it, and the maker decides.
//!
//! Outside source: the edits of the `workshop` crate, made in this program.

use anyhow::{Context, Result, ensure};
use geometry::fields;
use journeys::{Page, Records, Screen, journey};
use serde_json::{Value, json};
use thirtyfour::Key;
use units::LengthUnit;
use workshop::{Edit, PieceEdit, Reading};

/// Longer than a change waits before it is written.
const WRITTEN: std::time::Duration = std::time::Duration::from_millis(700);

#[tokio::test]
async fn what_cannot_be_read() -> Result<()> {
    journey("what_cannot_be_read", Screen::Desktop, async |page| {
        page.look_around().await?;
        page.kept().await?;
        let good = page.records().await?;
        let spoiled = spoil(page, &good).await?;
        tried_again(page, &good, &spoiled).await.context("try again")?;
        let good = page.records().await?;
        spoil(page, &good).await?;
        let_go(page, &good).await.context("let go of it")?;
        failing(page).await.context("a read that fails")?;
        waiting(page).await.context("an opening that takes long")
    })
    .await
}

/// Spoils the record of the workshop and that of the first piece, and loads the page anew.
async fn spoil(page: &Page, good: &Records) -> Result<Records> {
    let mut workshop = good.workshop.clone();
    workshop["books"] = json!(7);
    page.put_record("workshops", "workshop", &workshop).await?;
    let (first, _) = good.pieces.first().context("nothing is kept")?;
    page.put_record("pieces", first, &json!({"name": "Spoiled", "furniture": 7}))
        .await?;
    let spoiled = page.records_now().await?;
    page.driver().refresh().await?;
    page.element("#unread").await?;
    page.element("#keeping[data-state='held']").await?;
    ensure!(
        page.pieces().await?.len() == good.pieces.len() - 1,
        "what can be read is not shown"
    );
    Ok(spoiled)
}

/// The first piece that can be read gets another width.
async fn widen(page: &Page) -> Result<()> {
    page.open_piece(1).await?;
    page.to("measure").await?;
    page.enter("#field-width").await?;
    page.keys(Key::Control + "a").await?;
    page.put("61").await?;
    page.has_value("#field-width", "61").await?;
    page.keys(Key::Escape).await?;
    Ok(())
}

/// A change made meanwhile is not written, and comes in beside everything once all can be read again.
async fn tried_again(page: &Page, good: &Records, spoiled: &Records) -> Result<()> {
    widen(page).await?;
    tokio::time::sleep(WRITTEN).await;
    ensure!(
        page.records_now().await? == *spoiled,
        "something was written over"
    );
    page.put_record("workshops", "workshop", &good.workshop).await?;
    let (first, piece) = good.pieces.first().context("nothing is kept")?;
    page.put_record("pieces", first, piece).await?;
    page.press("#try-again").await?;
    page.gone("#unread").await?;
    let document = good.document()?;
    let changed = document.pieces.iter().find(|piece| *piece.id.0 != **first);
    let id = changed.context("there is one piece only")?.id.clone();
    let edit = PieceEdit::Measure(fields::WIDTH.id(), Some(Reading::new("61", LengthUnit::Inch)?));
    let expected = document.apply(Edit::Piece(id, edit))?;
    page.keeps(|kept| {
        ensure!(*kept == expected, "there is kept {kept:?}");
        Ok(())
    })
    .await?;
    page.eventually(async || {
        let names = page.pieces().await?;
        ensure!(names.len() == good.pieces.len(), "shown are {names:?}");
        Ok(())
    })
    .await
}

/// What can be read goes into a file with what cannot; then the maker lets go of that.
async fn let_go(page: &Page, good: &Records) -> Result<()> {
    let saved = page.save("#save-unread", ".coatwright.json").await?;
    let text = std::str::from_utf8(&saved)?;
    ensure!(text.contains("Spoiled"), "the file lacks what cannot be read");
    let loaded = workshop::format::load(text)?;
    ensure!(
        loaded.workshop.pieces.len() == good.pieces.len() - 1,
        "the file lacks a piece"
    );
    page.press("#leave-out").await?;
    page.gone("#unread").await?;
    page.reload().await?;
    page.keeps(|kept| {
        ensure!(kept.pieces == loaded.workshop.pieces, "there is kept {kept:?}");
        Ok(())
    })
    .await
}

async fn before_the_page(page: &Page, script: &str) -> Result<Value> {
    page.devtools("Page.addScriptToEvaluateOnNewDocument", json!({"source": script}))
        .await
}

async fn no_longer(page: &Page, script: &Value) -> Result<()> {
    page.devtools(
        "Page.removeScriptToEvaluateOnNewDocument",
        json!({"identifier": script["identifier"]}),
    )
    .await?;
    Ok(())
}

async fn failing(page: &Page) -> Result<()> {
    let names = page.pieces().await?;
    let before = page.records().await?;
    let script = "
        const real = IDBObjectStore.prototype.getAllKeys;
        IDBObjectStore.prototype.getAllKeys = function (...of) {
            if (!window.mended) throw new DOMException('not now', 'UnknownError');
            return real.apply(this, of);
        };
    ";
    let script = before_the_page(page, script).await?;
    page.driver().refresh().await?;
    page.element("#try-again").await?;
    page.gone("#look-around").await?;
    page.ask("window.mended = true").await?;
    ensure!(page.records_now().await? == before, "something was written");
    page.press("#try-again").await?;
    page.kept().await?;
    ensure!(page.pieces().await? == names, "the pieces did not come back");
    no_longer(page, &script).await
}

async fn waiting(page: &Page) -> Result<()> {
    let names = page.pieces().await?;
    let script = "
        const real = IDBFactory.prototype.open;
        IDBFactory.prototype.open = function (...of) {
            const late = {};
            window.answer = () => {
                const request = real.apply(this, of);
                request.onsuccess = () => {
                    late.result = request.result;
                    late.onsuccess();
                };
            };
            return late;
        };
    ";
    let script = before_the_page(page, script).await?;
    page.driver().refresh().await?;
    page.element("#reload").await?;
    page.ask("window.answer()").await?;
    page.kept().await?;
    ensure!(page.pieces().await? == names, "the pieces did not come");
    no_longer(page, &script).await
}
