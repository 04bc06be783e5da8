//! A maker writes a recipe down by parts, pours it by the scale, notes the batch, tops it up to the same shade and asks
//! for a batch by volume.
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
        page.press("[id^=add-can-]").await?;
        for (number, part, weight) in [(1, "white", "7"), (2, "green", "2"), (3, "umber", "1")] {
            page.type_in(&format!("[id^=recipes-][id$=-part-{number}]"), part)
                .await?;
            page.type_in(&format!("[id^=recipes-][id$=-weight-{number}]"), weight)
                .await?;
        }
        // 7 : 2 : 1 of 500 g, as the scale shows them when each is in.
        page.type_in("[id^=recipes-][id$=-wanted]", "500 g").await?;
        pours(page, &["white to 350 g", "green to 450 g", "umber to 500 g"]).await?;
        page.press("[id^=made-]").await?;
        page.element(".batches li").await?;
        page.begins("#messages", "Batch saved: ").await?;

        // 200 g are left; 300 g more make 500 g again.
        page.press("[id^=fold-mend-]").await?;
        page.type_in("[id^=recipes-][id$=-rest]", "200").await?;
        pours(page, &["white to 210 g", "green to 270 g", "umber to 300 g"]).await?;

        // 24 fl oz are 709.76 mL, 922.7 g at 1.3 kg/L: 645.9, 184.5 and 92.3 g.
        page.type_in("[id^=recipes-][id$=-wanted]", "24 fl oz").await?;
        page.type_in("[id^=recipes-][id$=-rest]", "0").await?;
        let doses = [
            "white to 1 lb 6.8 oz (646 g)",
            "green to 1 lb 13.3 oz (831 g)",
            "umber to 2 lb 0.6 oz (923 g)",
        ];
        pours(page, &doses).await?;
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
            .ask("return [...document.querySelectorAll('.pour b')].map(dose => dose.textContent.replaceAll('\\u00a0', ' '))")
            .await?;
        let shown: Vec<String> = serde_json::from_value(shown)?;
        ensure!(shown == expected, "{shown:?}, and not {expected:?}");
        Ok(())
    })
    .await
}
