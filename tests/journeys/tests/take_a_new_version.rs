//! A new version of the page comes while a maker is typing: it waits until it is taken, and the work is still there.

use std::time::Duration;

use anyhow::{Result, ensure};
use journeys::{Page, Screen, Site, journey_at};
use thirtyfour::Key;

const WIDTH: &str = "#field-width";
const OLD: &str = "Coatwright";
const NEW: &str = "Coatwright once more";

/// As long as a page that loads itself anew would take to do so, many times over.
const A_WHILE: Duration = Duration::from_secs(2);

#[tokio::test]
async fn take_a_new_version() -> Result<()> {
    let site = Site::copied()?;
    journey_at(
        "take_a_new_version",
        Screen::Tablet,
        site.address(),
        async |page| {
            page.works_offline().await?;
            page.press("#look-around").await?;
            let typed = page.element(WIDTH).await?.value().await?.unwrap_or_default();
            let pieces = page.pieces().await?;

            let title = |title: &str| format!("<title>{title}</title>");
            site.change("index.html", &title(OLD), &title(NEW))?;
            come_back_to(page).await?;
            page.element("#take-update").await?;
            is_called(page, OLD).await?;

            page.reload().await?;
            is_called(page, OLD).await?;
            page.element("#take-update").await?;
            page.enter(WIDTH).await?;
            page.keys(Key::End + " 1/").await?;
            let half = format!("{typed} 1/");
            page.has_value(WIDTH, &half).await?;
            come_back_to(page).await?;
            tokio::time::sleep(A_WHILE).await;
            page.has_value(WIDTH, &half).await?;
            is_called(page, OLD).await?;
            page.fits_a_finger().await?;

            page.press("#take-update").await?;
            is_called(page, NEW).await?;
            page.kept().await?;
            page.works_offline().await?;
            page.gone("#take-update").await?;
            page.has_value(WIDTH, &typed).await?;
            let left = page.pieces().await?;
            ensure!(left == pieces, "{pieces:?} became {left:?}");
            one_cache_is_left(page).await
        },
    )
    .await
}

/// As if the maker had looked at something else meanwhile.
async fn come_back_to(page: &Page) -> Result<()> {
    let script = "document.dispatchEvent(new Event('visibilitychange'))";
    page.driver().execute(script, vec![]).await?;
    Ok(())
}

async fn is_called(page: &Page, title: &str) -> Result<()> {
    page.eventually(async || {
        let found = page.driver().title().await?;
        ensure!(found == title, "the page is called `{found}` and not `{title}`");
        Ok(())
    })
    .await
}

async fn one_cache_is_left(page: &Page) -> Result<()> {
    page.eventually(async || {
        let script = "return caches.keys().then(names => names.length)";
        let count = page.driver().execute(script, vec![]).await?;
        ensure!(count.json() == 1, "there are {} caches", count.json());
        Ok(())
    })
    .await
}
