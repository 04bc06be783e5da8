//! A maker writes the list of what to buy for one piece only; the other stays in the workshop.

use anyhow::{Result, ensure};
use journeys::{Page, Screen, journey};

#[tokio::test]
async fn a_list_for_one_piece() -> Result<()> {
    journey("a_list_for_one_piece", Screen::Tablet, async |page| {
        page.look_around().await?;
        page.to("shop").await?;
        let both = materials(page).await?;
        page.press("#for input").await?;
        ensure!(
            both.iter().any(|line| line.contains("Six-drawer dresser")),
            "{both:?}"
        );
        page.eventually(async || {
            let now = materials(page).await?;
            ensure!(
                !now.is_empty() && now.iter().all(|line| !line.contains("dresser")),
                "{now:?}"
            );
            Ok(())
        })
        .await?;
        page.press("#for input").await?;
        page.eventually(async || {
            ensure!(materials(page).await? == both, "the list is another one");
            Ok(())
        })
        .await
    })
    .await
}

/// The lines of the list.
async fn materials(page: &Page) -> Result<Vec<String>> {
    let lines = page
        .ask("return [...document.querySelectorAll('#goods > li')].map(line => line.innerText)")
        .await?;
    Ok(serde_json::from_value(lines)?)
}
