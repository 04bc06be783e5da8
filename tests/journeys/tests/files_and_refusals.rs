//! A maker opens files, good ones and bad ones, and saves the workshop.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use journeys::{Page, Screen, journey};
use workshop::results::news;

const ONE_PIECE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/fixtures/one-piece.json");

const NEWER: &str = r#"{"kind": "coatwright-workshop", "version": 4, "pieces": "in boxes"}"#;

#[tokio::test]
async fn files_and_refusals() -> Result<()> {
    journey("files_and_refusals", Screen::Desktop, async |page| {
        page.press("#look-around").await?;
        let invented = workshop::invented_workshop();
        let names: Vec<String> = invented.pieces.iter().map(|piece| piece.name.clone()).collect();
        has_pieces(page, &names).await?;
        page.to("settings").await?;

        refused(page, "letter.txt", "Dear maker,", "line 1, character 1", &names).await?;
        refused(page, "newer.json", NEWER, "format 4", &names).await?;
        let large = " ".repeat(workshop::format::MAX_BYTES + (1 << 20));
        refused(page, "large.json", &large, "129 MB", &names).await?;

        let text = fs::read_to_string(ONE_PIECE)?;
        let given = workshop::format::load(&text).map_err(|error| anyhow::anyhow!("{error}"))?;
        page.to("settings").await?;
        page.open_file(Path::new(ONE_PIECE)).await?;
        page.element("#replace-file").await?;
        // The file is of the first format, so some of its numbers are others now.
        let sentences = news(&given.workshop);
        ensure!(!sentences.is_empty(), "nothing is new about {text}");
        page.reads("#messages", |text| {
            for sentence in &sentences {
                ensure!(text.contains(sentence), "{sentence} is missing in {text}");
            }
            Ok(())
        })
        .await?;
        page.press("#gather-file").await?;
        let gathered = [names, vec!["Linen chest".to_owned()]].concat();
        has_pieces(page, &gathered).await?;

        page.to("settings").await?;
        let text = String::from_utf8(page.save("#save-file", ".coatwright.json").await?)?;
        let loaded = workshop::format::load(&text).map_err(|error| anyhow::anyhow!("{error}"))?;
        ensure!(
            loaded.notices.is_empty(),
            "the saved file was mended: {:?}",
            loaded.notices
        );
        let [ours @ .., chest] = loaded.workshop.pieces.as_slice() else {
            anyhow::bail!("the saved file is empty");
        };
        ensure!(
            ours == invented.pieces.as_slice(),
            "the invented pieces were saved otherwise"
        );
        let given = given.workshop.told();
        let given = given.pieces.first().context("the fixture is empty")?;
        ensure!(
            chest == given,
            "{chest:?} was saved, but {given:?} was in the file"
        );
        page.reload().await?;
        has_pieces(page, &gathered).await
    })
    .await
}

async fn has_pieces(page: &Page, expected: &[String]) -> Result<()> {
    page.eventually(async || {
        let names = page.pieces().await?;
        ensure!(names == expected, "the pieces are {names:?} and not {expected:?}");
        Ok(())
    })
    .await
}

/// A file that is not taken says why and changes nothing.
async fn refused(page: &Page, name: &str, content: &str, reason: &str, pieces: &[String]) -> Result<()> {
    let path = page.files().join(name);
    fs::write(&path, content)?;
    page.to("settings").await?;
    page.open_file(&path).await.context(name.to_owned())?;
    page.reads("#messages", |text| {
        ensure!(text.contains(reason), "{name} should be refused for `{reason}`");
        Ok(())
    })
    .await?;
    page.gone("#gather-file").await?;
    let left = page.pieces().await?;
    ensure!(left == pieces, "{name} changed the pieces to {left:?}");
    fs::remove_file(path)?;
    Ok(())
}
