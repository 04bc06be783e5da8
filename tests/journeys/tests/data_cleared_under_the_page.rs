//! Someone clears the data of the site, or deletes its database, while the page is open: the work is saved anew.

use anyhow::{Result, ensure};
use journeys::{Page, Screen, Sent, Site, journey_at};
use serde_json::json;

#[tokio::test]
async fn data_cleared_under_the_page() -> Result<()> {
    let site = Site::built(Sent::Plain)?;
    let address = site.address().to_owned();
    journey_at(
        "data_cleared_under_the_page",
        Screen::Desktop,
        &address,
        async |page| {
            page.look_around().await?;
            page.press("#new-piece").await?;
            page.press("#new-desk").await?;
            let document = page
                .keeps(|document| {
                    ensure!(
                        document.pieces.len() == 3,
                        "{} pieces are kept",
                        document.pieces.len()
                    );
                    Ok(document.clone())
                })
                .await?;
            let origin = address.trim_end_matches('/');
            page.devtools(
                "Storage.clearDataForOrigin",
                json!({"origin": origin, "storageTypes": "indexeddb"}),
            )
            .await?;
            all_there(page, &document).await?;
            page.ask("indexedDB.deleteDatabase('coatwright')").await?;
            all_there(page, &document).await?;
            page.reload().await?;
            ensure!(page.pieces().await?.len() == 3, "loading anew lost pieces");
            Ok(())
        },
    )
    .await
}

async fn all_there(page: &Page, document: &workshop::Workshop) -> Result<()> {
    page.eventually(async || {
        let kept = page.records_now().await?.document()?;
        ensure!(kept == *document, "there is kept {kept:?}");
        Ok(())
    })
    .await?;
    page.kept().await
}
