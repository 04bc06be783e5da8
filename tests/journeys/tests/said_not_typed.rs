//! A maker with both hands on the tape says the measurements: the device writes words into the field, all at once or bit by
//! bit.
//!
//! Outside source: the same lengths as figures, read by hand: thirty-three and seven eighths of an inch are 860.425 mm.

use anyhow::{Context, Result, ensure};
use geometry::fields;
use journeys::{Page, Screen, journey};
use serde_json::json;
use thirtyfour::Key;
use workshop::Workshop;

#[tokio::test]
async fn said_not_typed() -> Result<()> {
    journey("said_not_typed", Screen::Tablet, async |page| {
        page.press("#new-dresser").await?;
        page.element("#tape-keys").await?;
        let said = "thirty three and seven eighths";
        page.enter("#tape-reading").await?;
        page.put(said).await?;
        page.has_value("#tape-reading", said).await?;
        is_kept(page, &fields::WIDTH, 33.875).await?;
        page.enter_key().await?;
        page.reads("label[for=tape-reading]", |text| {
            ensure!(text.starts_with("Depth"), "Enter did not go on to the depth");
            Ok(())
        })
        .await?;

        // What is heard grows and is changed while it is spoken, until it is taken.
        for heard in ["eight", "eighteen", "eighteen and a calf", "eighteen and a half"] {
            compose(page, heard).await?;
        }
        page.put("eighteen and a half").await?;
        page.has_value("#tape-reading", "eighteen and a half").await?;
        page.gone("#tape-reading-error").await?;
        is_kept(page, &fields::DEPTH, 18.5).await?;

        // What was heard amiss says so, and the last good reading stays in force.
        page.keys(Key::Control + "a").await?;
        page.put("eighteen and a calf").await?;
        page.element("#tape-reading-error").await?;
        is_kept(page, &fields::DEPTH, 18.5).await?;
        page.keys(Key::Control + "a").await?;
        page.put("one foot six and a quarter").await?;
        page.gone("#tape-reading-error").await?;
        is_kept(page, &fields::DEPTH, 18.25).await
    })
    .await
}

/// A tape that types by itself sends its readings faster than a page is drawn.
#[tokio::test]
async fn readings_come_in_one_burst() -> Result<()> {
    journey("readings_come_in_one_burst", Screen::Tablet, async |page| {
        page.press("#new-dresser").await?;
        page.element("#tape-reading").await?;
        let enter = char::from(Key::Enter);
        page.keys(format!("58{enter}17 1/2{enter}33{enter}")).await?;
        for (field, inches) in [
            (&fields::WIDTH, 58.0),
            (&fields::DEPTH, 17.5),
            (&fields::HEIGHT, 33.0),
        ] {
            is_kept(page, field, inches).await?;
        }
        page.reads("label[for=tape-reading]", |text| {
            ensure!(!text.starts_with("Height"), "Enter did not go on from the height");
            Ok(())
        })
        .await
    })
    .await
}

async fn compose(page: &Page, text: &str) -> Result<()> {
    let end = text.chars().count();
    page.devtools(
        "Input.imeSetComposition",
        json!({"text": text, "selectionStart": end, "selectionEnd": end}),
    )
    .await?;
    Ok(())
}

/// The reading is this many inches, in the database and in the amounts.
async fn is_kept(page: &Page, field: &geometry::LengthField, inches: f64) -> Result<()> {
    let document: Workshop = page
        .keeps(|document| {
            let piece = document.pieces.first().context("nothing is kept")?;
            let reading = piece.reading(field.id()).context("it was not measured")?;
            let millimetres = reading.length().as_millimetres();
            ensure!(
                (millimetres - 25.4 * inches).abs() < 1e-9,
                "`{}` is kept as {millimetres} mm",
                reading.typed()
            );
            Ok(document.clone())
        })
        .await?;
    let piece = document.pieces.first().context("nothing is kept")?;
    page.shows(&document, &piece.id).await?;
    Ok(())
}
