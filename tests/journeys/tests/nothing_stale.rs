//! Whatever a maker looks at follows what was changed last: lists of another piece, prices on another sheet, and what a screen
//! reader says. The cursor never gets lost.
//!
//! Outside source: none; what is shown in one place is held against what is kept and what is shown in another.

use anyhow::{Context, Result, ensure};
use journeys::{Page, Screen, Size, journey};
use thirtyfour::Key;

/// Opens one of the invented pieces, by its place in the list, and its amounts.
async fn open(page: &Page, place: usize) -> Result<()> {
    page.open_piece(place).await?;
    page.amounts().await
}

#[tokio::test]
async fn nothing_stale() -> Result<()> {
    journey("nothing_stale", Screen::Desktop, async |page| {
        page.look_around().await?;
        lists(page).await?;
        prices(page).await?;
        said(page).await?;
        cursor(page).await
    })
    .await
}

/// Each piece has its own can in hand. What was chosen from the list of one is not left standing in the list of the next.
async fn lists(page: &Page) -> Result<()> {
    open(page, 1).await?;
    page.choose("#can-paint", "us-gallon").await?;
    open(page, 2).await?;
    page.choose("#can-paint", "").await?;
    page.element("#verdict-paint:not([data-verdict])").await?;
    open(page, 1).await?;
    page.element("#verdict-paint[data-verdict]").await?;
    page.has_value("#can-paint", "us-gallon").await?;
    open(page, 2).await?;
    page.has_value("#can-paint", "").await
}

/// A price that is noted on the list of what to buy is on the sheet of tools as soon as that is seen again.
async fn prices(page: &Page) -> Result<()> {
    open(page, 1).await?;
    page.to("tools").await?;
    page.unfold("all-figures").await?;
    let cans = "#compare-foam-roller-cans-paint";
    let before = page.text(cans).await?;
    page.to("shop").await?;
    page.press("#fold-price-trim-enamel").await?;
    page.type_in("#price-trim-enamel-us-quart", "31").await?;
    page.to("tools").await?;
    page.reads(cans, |text| {
        ensure!(text != before, "the price is not there");
        Ok(())
    })
    .await
}

/// A screen reader is told the new answer, once, and only after the typing stops.
async fn said(page: &Page) -> Result<()> {
    page.to("measure").await?;
    let polite = page
        .ask("return document.querySelectorAll('.strip [aria-live], .strip [role=status]').length")
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

/// Escape ends a measurement, and the cursor stays in the list.
async fn cursor(page: &Page) -> Result<()> {
    let arrives = async |selector: &str| {
        page.eventually(async || {
            ensure!(page.is_on(selector).await?, "the cursor is not in {selector}");
            Ok(())
        })
        .await
        .with_context(|| format!("on the way to {selector}"))
    };
    page.press("[data-field=field-depth] text").await?;
    arrives("#field-depth").await?;
    page.keys(Key::Escape).await?;
    page.gone(".dimension.taken").await?;
    arrives("#field-depth").await?;
    // On a screen that is touched there is the keypad, and the cursor goes back to where it came from.
    page.resize(Size::ALL[0].pixels, true).await?;
    page.press("#stage-measure").await?;
    page.press("[data-field=field-depth] text").await?;
    arrives("#tape-reading").await?;
    page.keys(Key::Escape).await?;
    page.gone("#tape-keys").await?;
    arrives("#drawing").await?;
    page.press("#field-depth").await?;
    page.press("#tape-keyboard").await?;
    arrives("#tape-reading").await?;
    page.keys(Key::Escape).await?;
    page.gone("#tape-keys").await?;
    // A field in the list would open the keypad again.
    arrives("#drawing").await
}
