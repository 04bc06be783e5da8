//! A maker weighs a can, sees what it is good for, and buys less.
//!
//! Outside source: what is left by hand, mass over density.

use anyhow::{Result, ensure};
use journeys::{Screen, journey};

/// What stands under the only sheets that there are.
const SAID_OF_SHEETS: &str = "return document.querySelector('[id^=stores-][id$=-grit]').closest('.entry').querySelector('.left').textContent";

#[tokio::test]
async fn a_can_on_the_shelf() -> Result<()> {
    journey("a_can_on_the_shelf", Screen::Tablet, async |page| {
        page.look_around().await?;
        page.to("shop").await?;
        page.element("#shopping li").await?;
        page.to("shelf").await?;
        page.press("#add-shelf").await?;
        page.choose("[id^=shelf-][id$=-material]", "water-polyurethane")
            .await?;
        page.type_in("[id^=shelf-][id$=-weight]", "4120").await?;
        page.begins(".shelf .left", "Weigh an empty can").await?;
        page.type_in("[id^=shelf-][id$=-tare]", "120").await?;
        page.type_in("[id^=shelf-][id$=-density]", "1.04 kg/l").await?;
        // 4000 g at 1.04 kg/L are 3.846 L: 4.1 qt.
        page.begins(".shelf .left", "4.1 qt left").await?;
        page.begins(".good-for li", "Six-drawer dresser: Enough").await?;
        // A quart of paint counts for no piece until its colour is said, which is one touch: the colours of the pieces are there.
        page.press("#add-shelf").await?;
        page.choose("[id^=shelf-][id$=-material]", "trim-enamel").await?;
        page.choose("[id^=shelf-][id$=-can]", "us-quart").await?;
        page.begins(".shelf .left", "32 fl oz left. Choose its color")
            .await?;
        page.press("[id^=shelf-][id$=-colour-46685f]").await?;
        page.begins(".good-for li", "Six-drawer dresser: Enough").await?;
        // One sheet of P180 is there; what both pieces take stands on the sheet Prepare of each, at most.
        page.press("#add-stores").await?;
        page.choose("[id^=stores-][id$=-kind]", "sheets").await?;
        page.choose("[id^=stores-][id$=-grit]", "P180").await?;
        page.type_in("[id^=stores-][id$=-count]", "1").await?;
        page.eventually(async || {
            let said = page.ask(SAID_OF_SHEETS).await?;
            let said = said.as_str().unwrap_or_default();
            ensure!(
                said.starts_with("All pieces take ") && said.contains("Buy "),
                "{said}"
            );
            Ok(())
        })
        .await?;
        page.to("shop").await?;
        page.eventually(async || {
            let list = page
                .ask("return document.querySelector('.shop').textContent")
                .await?;
            let list = list.as_str().unwrap_or_default();
            ensure!(list.contains("4.1 qt, weighed"), "{list}");
            Ok(())
        })
        .await
    })
    .await
}
