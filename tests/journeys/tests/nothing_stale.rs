//! Whatever a maker looks at follows what was changed last: lists of another piece, prices on another sheet, and what a screen
//! reader says. The cursor never gets lost.
//!
//! Outside source: none; what is shown in one place is held against what is kept and what is shown in another.

use anyhow::{Context, Result, ensure};
use journeys::{Page, Screen, journey};
use thirtyfour::Key;

/// Opens one of the invented pieces, by its place in the strip.
async fn open(page: &Page, place: usize) -> Result<()> {
    page.press(&format!("#pieces button:nth-of-type({place})")).await
}

#[tokio::test]
async fn nothing_stale() -> Result<()> {
    journey("nothing_stale", Screen::Desktop, async |page| {
        page.look_around().await?;
        lists(page).await?;
        prices(page).await?;
        said(page).await?;
        cursor(page).await?;
        scrolls(page).await
    })
    .await
}

/// Each piece has its own can in hand. What was chosen from the list of one is not left standing in the list of the next.
async fn lists(page: &Page) -> Result<()> {
    open(page, 1).await?;
    page.choose("#can-paint", "us-gallon").await?;
    open(page, 2).await?;
    page.choose("#can-paint", "").await?;
    page.gone("#verdict-paint").await?;
    open(page, 1).await?;
    page.element("#verdict-paint").await?;
    page.has_value("#can-paint", "us-gallon").await?;
    open(page, 2).await?;
    page.has_value("#can-paint", "").await
}

/// A price that is noted on the list of what to buy is on the sheet of tools as soon as that is seen again.
async fn prices(page: &Page) -> Result<()> {
    open(page, 1).await?;
    page.press("#sheet-tools").await?;
    let cans = "#compare-foam-roller-cans-paint";
    let before = page.text(cans).await?;
    page.press("#together").await?;
    page.press("#fold-price-trim-enamel").await?;
    page.type_in("#price-trim-enamel-us-quart", "31").await?;
    page.press("#to-board").await?;
    page.reads(cans, |text| {
        ensure!(text != before, "the price is not there");
        Ok(())
    })
    .await
}

/// A screen reader is told the new answer, once, and only after the typing stops.
async fn said(page: &Page) -> Result<()> {
    page.press("#sheet-measure").await?;
    let polite = page
        .ask("return document.querySelectorAll('.answers [aria-live], .answers [role=status]').length")
        .await?;
    ensure!(polite == 0, "{polite} other places tell the amounts too");
    is_said(page).await?;
    page.ask(WATCH).await?;
    page.type_in("#field-width", "70").await?;
    is_said(page).await?;
    let rest = page.ask("return window.said - window.typed").await?;
    let rest = rest.as_f64().context("nothing was said or typed")?;
    ensure!(rest > 1400.0, "it is said {rest} ms after the last key");
    Ok(())
}

/// Notes when something is typed, and when something is said.
const WATCH: &str = "
    const note = what => () => { window[what] = performance.now() };
    new MutationObserver(note('said'))
        .observe(document.querySelector('#spoken'), { childList: true, characterData: true, subtree: true });
    document.querySelector('#field-width').addEventListener('input', note('typed'));
";

/// The area that is shown is said.
async fn is_said(page: &Page) -> Result<()> {
    page.eventually(async || {
        let area = page.text("#painted-area").await?;
        let said = page
            .ask("return document.querySelector('#spoken').textContent")
            .await?;
        let said = said.as_str().unwrap_or_default();
        ensure!(said.contains(&area), "`{said}` is said and {area} shown");
        Ok(())
    })
    .await
}

/// Escape puts the tape away and leads back to where the cursor came from; the way to the amounts leads the cursor there.
async fn cursor(page: &Page) -> Result<()> {
    let arrives = async |selector: &str| {
        page.eventually(async || {
            ensure!(page.is_on(selector).await?, "the cursor is not in {selector}");
            Ok(())
        })
        .await
        .with_context(|| format!("on the way to {selector}"))
    };
    page.press(".dimension").await?;
    arrives("#tape-reading").await?;
    page.keys(Key::Escape).await?;
    page.gone("#tape-keys").await?;
    arrives("#drawing").await?;
    page.press("#field-depth").await?;
    page.press("#tape-keyboard").await?;
    arrives("#tape-reading").await?;
    page.keys(Key::Escape).await?;
    page.gone("#tape-keys").await?;
    arrives("#field-depth").await?;
    page.press(".dimension").await?;
    page.press("#tape-away").await?;
    page.gone("#tape-keys").await?;
    arrives("#drawing").await?;
    page.ask("document.querySelector('.in-short').click()").await?;
    arrives("#answers").await
}

/// Where the amounts scroll beside the tape keys, the keyboard can scroll them too.
async fn scrolls(page: &Page) -> Result<()> {
    page.resize(LOW, false).await?;
    page.press(".dimension").await?;
    page.element("#tape-keys").await?;
    page.settled().await?;
    let over = page
        .ask("const a = document.querySelector('#answers'); return a.scrollHeight - a.clientHeight")
        .await?;
    ensure!(over.as_f64() > Some(0.0), "nothing scrolls: {over}");
    let found = page.findings().await?;
    let found: Vec<String> = found.iter().map(ToString::to_string).collect();
    ensure!(found.is_empty(), "{found:?}");
    Ok(())
}

/// A low window.
const LOW: (u32, u32) = (1180, 560);
