//! A maker mixes chalk-type paint by weight, and thins paint for the sprayer.
//!
//! Outside source: by hand. 650 g at 1.3 kg/L are half a litre; with 100 g of calcium carbonate at 2.71 kg/L and 60 g of water
//! that is 597 mL, 20 fl oz. A tenth of a quart is 94.6 mL of water, 3.2 fl oz and 94 g.

use anyhow::{Result, ensure};
use journeys::{Page, Screen, journey};

#[tokio::test]
async fn chalk_and_thinner() -> Result<()> {
    journey("chalk_and_thinner", Screen::Tablet, async |page| {
        page.look_around().await?;
        page.press("#sheet-finish").await?;
        page.press("#mixing").await?;
        page.press("#add-chalk").await?;
        page.type_in("[id^=chalk-][id$=-paint]", "650").await?;
        page.type_in("[id^=chalk-][id$=-density]", "1.3 kg/l").await?;
        page.type_in("[id^=chalk-][id$=-powder]", "100").await?;
        page.type_in("[id^=chalk-][id$=-water]", "60").await?;
        says(
            page,
            "chalk",
            &[
                "Paint: 650 g",
                "Calcium carbonate: 100 g",
                "Water: 60 g",
                "20 fl oz",
            ],
        )
        .await?;
        page.press("#fold-why-not").await?;
        says(page, "mixing-title", &["hydrated lime", "caustic"]).await?;

        page.press("#add-thinning").await?;
        page.choose("[id^=thinning-][id$=-material]", "trim-enamel")
            .await?;
        page.type_in("[id^=thinning-][id$=-paint]", "1 qt").await?;
        says(
            page,
            "thinning",
            &["3.2 fl oz of water, 94 g", "3 coats leave what 2 coats would"],
        )
        .await?;
        page.type_in("[id^=thinning-][id$=-most]", "5 %").await?;
        says(page, "thinning", &["Thinned by 10 %, but the label allows 5 %."]).await?;
        page.kept().await?;
        page.reload().await?;
        page.press("#sheet-finish").await?;
        page.press("#mixing").await?;
        page.has_value("[id^=thinning-][id$=-paint]", "1 qt").await
    })
    .await
}

/// Waits until all of this stands with the first element whose name begins so: in its entry, or in its section.
async fn says(page: &Page, name: &str, expected: &[&str]) -> Result<()> {
    let script = format!(
        "const element = document.querySelector('[id^={name}]'); return element && \
         (element.closest('.entry') || element.closest('section')).textContent"
    );
    page.eventually(async || {
        let text = page.ask(&script).await?;
        let text = text.as_str().unwrap_or_default();
        for part in expected {
            ensure!(text.contains(part), "{part} is not in {text}");
        }
        Ok(())
    })
    .await
}
