//! A maker finishes the top of a dresser clear and the rest painted, with the label of the can at hand.
//!
//! Outside source: 400 ft2/gal are 9.817 m2/L (exact foot and US gallon). The rest is what was typed, and what must add up.

use anyhow::{Result, ensure};
use journeys::{Page, Screen, Shown, journey};
use thirtyfour::Key;

#[tokio::test]
async fn a_top_on_its_own() -> Result<()> {
    journey("a_top_on_its_own", Screen::Tablet, async |page| {
        page.press("#look-around").await?;
        let all = litres(page, "#amount-paint").await?;
        page.to("finish").await?;
        page.press("#finish-of-top").await?;
        page.press("#on-its-own").await?;
        page.press("#fold-asks").await?;
        page.press("#wish-clear").await?;
        page.fits_a_finger().await?;
        page.eventually(async || {
            let body = litres(page, "#amount-paint").await?;
            ensure!(body < 0.9 * all, "the top still takes paint: {body} of {all}");
            Ok(())
        })
        .await?;

        page.press("#finish-of-piece").await?;
        page.press("#fold-label-paint").await?;
        label(page).await?;
        page.fits_a_finger().await?;
        // The rate of the can counts at once, and what the tool usually lays on stands beside it.
        page.amounts().await?;
        page.element("#label-paint").await?;
        page.reload().await?;
        page.to("finish").await?;
        page.press("#fold-label-paint").await?;
        page.has_value("#label-own-1-rate", "400").await?;
        page.press("#fold-more-paint").await?;
        page.has_value("#label-own-1-solids", "40").await?;
        page.has_value("#price-own-1-us-quart", "24.50").await?;
        page.amounts().await?;
        page.choose("#can-paint", "").await?;
        page.unfold("how-paint").await?;
        says(page, "#buy-paint", "24.50").await
    })
    .await
}

/// What cannot be on a label is said beside it, and a rate in the wrong unit is asked about.
async fn label(page: &Page) -> Result<()> {
    page.press("#fold-more-paint").await?;
    page.type_in("#label-own-1-solids", "140").await?;
    says(page, "#label-own-1-solids-error", "up to 100%").await?;
    page.enter("#label-own-1-solids").await?;
    page.keys(Key::Control + "a").await?;
    page.keys("40").await?;
    page.gone("#label-own-1-solids-error").await?;
    page.type_in("#label-own-1-rate", "400").await?;
    page.choose("#label-own-1-rate-unit", "m2/L").await?;
    says(page, "#label-own-1-rate-error", "9.82 m\u{b2}/L").await?;
    page.choose("#label-own-1-rate-unit", "ft2/gal").await?;
    page.gone("#label-own-1-rate-error").await?;
    page.type_in("#price-own-1-us-quart", "24.50").await
}

async fn says(page: &Page, selector: &str, words: &str) -> Result<()> {
    page.reads(selector, |text| {
        ensure!(text.contains(words), "`{words}` is not in `{text}`");
        Ok(())
    })
    .await
}

async fn litres(page: &Page, selector: &str) -> Result<f64> {
    Ok(Shown::read(&page.text(selector).await?)?.value)
}
