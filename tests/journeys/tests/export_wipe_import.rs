//! A maker saves the workshop, loses everything that the browser held, and opens the file: every record is as it was.

use std::fs;

use anyhow::{Context, Result, ensure};
use journeys::{Page, Screen, Sent, Site, journey_at};
use serde_json::json;
use thirtyfour::Key;

#[tokio::test]
async fn export_wipe_import() -> Result<()> {
    let site = Site::built(Sent::Plain)?;
    let address = site.address().to_owned();
    journey_at("export_wipe_import", Screen::Desktop, &address, async |page| {
        page.look_around().await?;
        work(page).await?;
        page.kept().await?;
        let before = page.records().await?;
        ensure!(
            before.pieces.len() == 3,
            "{} pieces are kept",
            before.pieces.len()
        );
        let saved = page.save("#save-file", ".coatwright.json").await?;
        let loaded = workshop::format::load(std::str::from_utf8(&saved)?)?;
        ensure!(
            loaded.notices.is_empty(),
            "the file was mended: {:?}",
            loaded.notices
        );
        ensure!(
            loaded.workshop == before.document()?,
            "the file is not what was kept"
        );

        // What holds the database open goes first.
        page.driver().goto("about:blank").await?;
        let origin = address.trim_end_matches('/');
        page.devtools(
            "Storage.clearDataForOrigin",
            json!({"origin": origin, "storageTypes": "all"}),
        )
        .await?;
        page.driver().goto(&address).await?;
        page.element("#look-around").await?;
        page.gone("#pieces button").await?;

        let file = page.files().join("kept-elsewhere.json");
        fs::write(&file, &saved)?;
        page.to("settings").await?;
        page.open_file(&file).await?;
        page.press("#replace-file").await?;
        page.gone("#replace-file").await?;
        page.eventually(async || {
            let after = page.records().await?;
            ensure!(after == before, "{before:?} came back as {after:?}");
            Ok(())
        })
        .await?;
        page.reload().await?;
        ensure!(
            page.records().await? == before,
            "loading anew changed the records"
        );
        page.to("settings").await?;
        let again = page.save("#save-file", ".coatwright.json").await?;
        ensure!(again == saved, "the file that is saved again is another one");
        Ok(())
    })
    .await
}

/// Work of the maker's own, something of each kind that a file holds.
async fn work(page: &Page) -> Result<()> {
    page.press("#new-piece").await?;
    page.press("#new-sideboard").await?;
    page.type_in("#field-width", "4' 10 1/2\"").await?;
    page.keys(Key::Escape).await?;
    page.to("parts").await?;
    page.element("[id^=part-]").await?;
    page.to("surfaces").await?;
    page.press("#add-zone").await?;
    page.to("finish").await?;
    page.press("#fold-label-paint").await?;
    page.press("#fold-more-paint").await?;
    page.type_in("#label-own-1-solids", "38").await?;
    page.choose("#tool-paint", "brush").await?;
    page.amounts().await?;
    page.choose("#can-paint", "us-8-fl-oz").await?;
    page.to("settings").await?;
    page.press("#confidence-95").await?;
    page.choose("#currency", "EUR").await?;
    page.keeps(|document| {
        let piece = document.pieces.last().context("nothing is kept")?;
        ensure!(document.settings.currency.is_some(), "the currency is not kept");
        ensure!(
            piece.zones.contains_key("own-1") && !document.materials.is_empty(),
            "{piece:?}"
        );
        Ok(())
    })
    .await
}
