//! A maker notes what dressers were sold for nearby, and asks what to pay for one at most.
//!
//! Outside source: the sum by hand; median and interval of the notes by SciPy (`tests/outside/tests/market.rs`).

use anyhow::{Result, ensure};
use journeys::{Screen, journey};
use thirtyfour::Key;

#[tokio::test]
async fn buy_or_leave() -> Result<()> {
    journey("buy_or_leave", Screen::Tablet, async |page| {
        page.look_around().await?;
        page.press("#sheet-money").await?;
        page.begins("#buy-or-leave", "Enter your asking price").await?;
        page.press("#price-notes").await?;
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
        page.press("#to-board").await?;
        page.type_in("#habits-only-hourly", "20").await?;
        page.type_in("#habits-only-profit", "10").await?;
        page.type_in("#facts-only-hours", "2").await?;
        // The middle of the notes is 110: less 2 h at 20 and 10 wanted besides, 60. Materials have no prices yet.
        page.begins("#most", "60.00").await?;
        page.begins(
            "#buy-or-leave",
            "Without materials, which have no price: pay 60.00 or less",
        )
        .await?;
        page.type_in("#facts-only-materials", "12").await?;
        page.begins("#buy-or-leave", "Pay 48.00 or less to sell at 110.00")
            .await?;
        page.type_in("#facts-only-bought", "75").await?;
        page.begins("#buy-or-leave", "Pass at 75.00. To sell at 110.00")
            .await?;
        // The price that pays: 75 + 12 + 40 and the 10 wanted besides.
        page.begins("#wanted", "137.00").await?;
        page.type_in("#facts-only-sold", "130").await?;
        page.begins("#buy-or-leave", "Sold for 130.00. It paid less than you wanted")
            .await?;
        page.keys(Key::Backspace).await?;
        page.keys("7").await?;
        page.begins("#buy-or-leave", "Sold for 137.00. It paid off:")
            .await?;
        page.keeps(|document| {
            let notes = document.books.lines("prices").len();
            ensure!(notes == 5, "{notes} notes are kept");
            Ok(())
        })
        .await
    })
    .await
}
