//! The frame of a journey: a look at what went wrong after it.

use anyhow::{Context, Result, ensure};
use thirtyfour::WebDriver;

use crate::page::Page;
use crate::programs::Places;
use crate::session::{Screen, Session, Text};
use crate::site::{Sent, Site};

/// Walks one journey in a fresh browser.
///
/// # Errors
/// If the journey fails, which leaves a screenshot in `target/journeys`, or if the browser logged an error.
pub async fn journey(name: &str, screen: Screen, walk: impl AsyncFnOnce(&Page) -> Result<()>) -> Result<()> {
    journey_in(name, screen, Text::Usual, walk).await
}

/// The same with text of another size.
///
/// # Errors
/// As for [`journey`].
pub async fn journey_in(
    name: &str,
    screen: Screen,
    text: Text,
    walk: impl AsyncFnOnce(&Page) -> Result<()>,
) -> Result<()> {
    let site = Site::built(Sent::Plain)?;
    walk_at(name, (screen, text), Opening::WithDatabase(site.address()), walk).await
}

/// The same on a site that the journey may change or end.
///
/// # Errors
/// As for [`journey`].
pub async fn journey_at(
    name: &str,
    screen: Screen,
    address: &str,
    walk: impl AsyncFnOnce(&Page) -> Result<()>,
) -> Result<()> {
    walk_at(name, (screen, Text::Usual), Opening::WithDatabase(address), walk).await
}

/// The same on a page that is not the tool's own and keeps nothing.
///
/// # Errors
/// As for [`journey`].
pub async fn journey_elsewhere(
    name: &str,
    screen: Screen,
    walk: impl AsyncFnOnce(&Page) -> Result<()>,
) -> Result<()> {
    let site = Site::built(Sent::Plain)?;
    walk_at(name, (screen, Text::Usual), Opening::AsItIs(site.address()), walk).await
}

/// How a page is opened, by its address.
enum Opening<'a> {
    /// And waited for until it has read its database.
    WithDatabase(&'a str),
    /// And not waited for.
    AsItIs(&'a str),
}

async fn walk_at(
    name: &str,
    (screen, text): (Screen, Text),
    opening: Opening<'_>,
    walk: impl AsyncFnOnce(&Page) -> Result<()>,
) -> Result<()> {
    let session = Session::start(screen, text).await?;
    let page = session.page();
    let mut result = match opening {
        Opening::WithDatabase(address) => session.open(address).await,
        Opening::AsItIs(address) => session.go(address).await,
    };
    if result.is_ok() {
        result = walk(page).await;
    }
    if result.is_ok() {
        result = no_errors(page.driver()).await;
    }
    if result.is_err() {
        let folder = Places::find()?.screenshots;
        let path = folder.join(format!("{name}.png"));
        std::fs::create_dir_all(&folder)?;
        let picture = page.driver().screenshot(&path).await;
        result = result.with_context(|| match picture {
            Ok(()) => format!("{name} failed; a screenshot is in {}", path.display()),
            Err(error) => format!("{name} failed, and no screenshot could be taken: {error}"),
        });
        // What the browser said may be the reason.
        if let Err(error) = no_errors(page.driver()).await {
            result = result.with_context(|| error.to_string());
        }
    }
    session.end().await?;
    result
}

async fn no_errors(driver: &WebDriver) -> Result<()> {
    let log = driver.browser_log().await?;
    let severe: Vec<&str> = log
        .iter()
        .filter(|entry| entry.level == "SEVERE")
        .map(|entry| entry.message.as_str())
        .collect();
    ensure!(
        severe.is_empty(),
        "the browser logged errors:\n{}",
        severe.join("\n")
    );
    Ok(())
}
