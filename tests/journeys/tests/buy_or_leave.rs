//! A maker notes what dressers were sold for nearby, and asks what to pay for one at most.
//!
//! Outside source: the sum by hand; median and interval of the notes by SciPy (`tests/outside/tests/market.rs`).

use anyhow::{Result, ensure};
use journeys::{Page, Screen, journey};
use thirtyfour::Key;

#[tokio::test]
async fn buy_or_leave() -> Result<()> {
    journey("buy_or_leave", Screen::Tablet, async |page| {
        page.look_around().await?;
        // With another currency than the dollar nothing is guessed.
        page.to("settings").await?;
        page.choose("#currency", "EUR").await?;
        page.to("verdict").await?;
        page.gone("#rests-on:not(:empty)").await?;
        page.to("prices").await?;
        for (count, price) in ["90", "130", "110", "100", "120"].iter().enumerate() {
            page.press("#add-prices").await?;
            page.eventually(async || {
                let lines = page
                    .ask("return document.querySelectorAll('[id^=strike-prices]').length")
                    .await?;
                ensure!(lines.as_u64() == Some(count as u64 + 1), "{lines} notes");
                Ok(())
            })
            .await?;
            // The newest stands first.
            page.choose("[id^=prices-][id$=-is]", "sold").await?;
            page.type_in("[id^=prices-][id$=-price]", price).await?;
        }
        page.to("verdict").await?;
        page.type_in("#habits-only-hourly", "20").await?;
        page.unfold("verdict-more").await?;
        page.type_in("#habits-only-profit", "10").await?;
        page.type_in("#facts-only-hours", "2").await?;
        // The middle of the notes is 110: less 2 h at 20 and 10 wanted besides, 60. Materials have no prices yet.
        says(page, "#most", &["60"]).await?;
        page.element("#rests-on:not(:empty)").await?;
        page.type_in("#facts-only-materials", "12").await?;
        says(page, "#most", &["48"]).await?;
        let buy = page.text("#buy-or-leave").await?;
        page.type_in("#facts-only-bought", "75").await?;
        says(page, "#most", &["75", "48"]).await?;
        ensure!(page.text("#buy-or-leave").await? != buy, "75 is still a buy");
        // The price that pays: 75 + 12 + 40 and the 10 wanted besides.
        page.to("money").await?;
        says(page, "#wanted", &["137"]).await?;
        // Sold for 130 it leaves 43 for two hours; for 137 it leaves 50.
        page.type_in("#facts-only-sold", "130").await?;
        says(page, "#buy-or-leave", &["130", "43", "21.50"]).await?;
        page.keys(Key::Backspace).await?;
        page.keys("7").await?;
        says(page, "#buy-or-leave", &["137", "50", "25"]).await?;
        page.keeps(|document| {
            let notes = document.books.lines("prices").len();
            ensure!(notes == 5, "{notes} notes are kept");
            Ok(())
        })
        .await
    })
    .await
}

/// Waits until an element holds all of these numbers.
async fn says(page: &Page, selector: &str, numbers: &[&str]) -> Result<()> {
    page.reads(selector, |text| {
        for number in numbers {
            ensure!(text.contains(number), "{number} is not there");
        }
        Ok(())
    })
    .await
}
