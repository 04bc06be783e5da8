//! A maker writes a recipe down by weight, pours it by the scale, notes the batch, and tops it up to the same shade.
//!
//! Outside source: the doses by hand; drift and colour difference by published pairs and two colour libraries
//! (`tests/outside/tests/colour.rs`).

use anyhow::{Result, ensure};
use journeys::{Page, Screen, journey};

#[tokio::test]
async fn a_batch_to_mix_again() -> Result<()> {
    journey("a_batch_to_mix_again", Screen::Tablet, async |page| {
        page.look_around().await?;
        page.to("finish").await?;
        page.to("mixing").await?;
        page.press("#add-recipes").await?;
        page.type_in("[id^=recipes-][id$=-name]", "Sage").await?;
        for (number, part, weight) in [(1, "white", "70"), (2, "green", "20"), (3, "umber", "10")] {
            page.type_in(&format!("[id^=recipes-][id$=-part-{number}]"), part)
                .await?;
            page.type_in(&format!("[id^=recipes-][id$=-weight-{number}]"), weight)
                .await?;
        }
        // 7 : 2 : 1 of the 500 g that a new recipe begins with.
        pours(page, &["white: 350 g", "green: 100 g", "umber: 50 g"]).await?;
        page.press("[id^=made-]").await?;
        page.element(".batches li").await?;

        // 200 g are left; 300 g more make 500 g again.
        page.type_in("[id^=recipes-][id$=-rest]", "200").await?;
        pours(page, &["white: 210 g", "green: 60 g", "umber: 30 g"]).await?;
        page.keeps(|document| {
            let batch = document
                .books
                .lines("batches")
                .first()
                .map(|line| line.text("made").to_owned());
            ensure!(batch.as_deref() == Some("500 g"), "{batch:?} is kept");
            Ok(())
        })
        .await
    })
    .await
}

async fn pours(page: &Page, expected: &[&str]) -> Result<()> {
    page.eventually(async || {
        let shown = page
            .ask("return [...document.querySelectorAll('.pour b')].map(dose => dose.textContent)")
            .await?;
        let shown: Vec<String> = serde_json::from_value(shown)?;
        ensure!(shown == expected, "{shown:?}, and not {expected:?}");
        Ok(())
    })
    .await
}
