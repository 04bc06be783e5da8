//! A maker lays leaf on the drawers, buys it, sells the piece and sees what an hour earned.
//!
//! Outside source: by hand. 0.7 by 1.4 m are 0.98 m2; a leaf of 140 mm covers 137 mm by 137 mm at best and 134 mm by
//! 134 mm at worst, and 5 to 20 in 100 tear: 0.98 / 0.018769 * 1.05 is 54.8, 0.98 / 0.017956 * 1.2 is 65.5.

use anyhow::{Result, ensure};
use journeys::{Page, Screen, journey};

/// The most leaves and the fewest.
const LEAVES: [&str; 2] = ["66 leaves", "55"];

#[tokio::test]
async fn leaf_on_a_drawer() -> Result<()> {
    journey("leaf_on_a_drawer", Screen::Tablet, async |page| {
        page.look_around().await?;
        // With another currency than the dollar nothing is guessed.
        page.to("settings").await?;
        page.choose("#currency", "EUR").await?;
        page.to("finish").await?;
        page.unfold("art-fold").await?;
        page.press("#add-art").await?;
        page.choose("[id^=art-][id$=-kind]", "leaf").await?;
        page.type_in("[id^=art-][id$=-place]", "Drawers").await?;
        page.type_in("[id^=art-][id$=-width]", "700 mm").await?;
        page.type_in("[id^=art-][id$=-height]", "1400 mm").await?;
        page.type_in("[id^=art-][id$=-price]", "0.30").await?;
        page.type_in("[id^=art-][id$=-hours]", "2").await?;
        page.to("money").await?;
        page.type_in("#facts-only-bought", "20").await?;
        page.type_in("#facts-only-sold", "200").await?;
        page.type_in("#facts-only-hours", "10").await?;
        // Hours are written down, so that the leaf adds its price alone: 66 of 0.30.
        says(page, "#of-art li", &["Drawers", "19.80"]).await?;
        // 200 less 20 and 19.80 in ten hours; nothing else has a price.
        says(page, "#earned", &["160.20", "16.02"]).await?;
        page.to("shop").await?;
        says(page, "#goods li:has(#basket-leaf)", &LEAVES).await?;
        // The nightstands want one quart of their colour besides; its price is written down where it is bought.
        page.press("#fold-price-trim-enamel").await?;
        page.type_in("#price-trim-enamel-us-quart", "24.50").await?;
        says(page, "#list-price", &["24.50"]).await?;
        page.keeps(|document| {
            let price = document.price_of("trim-enamel", "us-quart");
            let typed = price.as_ref().map(|price| price.typed());
            ensure!(typed == Some("24.50"), "{price:?} is kept");
            Ok(())
        })
        .await?;
        page.kept().await?;
        page.reload().await?;
        page.to("shop").await?;
        says(page, "#goods li:has(#basket-leaf)", &LEAVES).await
    })
    .await
}

/// Waits until an element holds all of these.
async fn says(page: &Page, selector: &str, parts: &[&str]) -> Result<()> {
    page.reads(selector, |text| {
        for part in parts {
            ensure!(text.contains(part), "{part} is not there");
        }
        Ok(())
    })
    .await
}
