//! A maker types what a field does not take, and the answers rest on what it had before, or are not shown. Money is read as
//! it is written where the page is open.
//!
//! Outside source: none is needed; what is looked at is that answers stay, go and come back.

use anyhow::{Context, Result, ensure};
use journeys::{Page, Screen, journey};
use thirtyfour::prelude::*;
use workshop::book::Facts;

/// Notes whether the answers wait, and whether they are ever away while somebody types.
const WATCH: &str = "
    window.seen = {waited: false, away: false};
    const look = () => {
        const answers = document.querySelector('#strip');
        window.seen.waited ||= answers?.getAttribute('aria-busy') === 'true';
        window.seen.away ||= !document.querySelector('#painted-area');
    };
    new MutationObserver(look).observe(document.body, {subtree: true, childList: true, attributes: true});
";

const WIDTH: &str = "#field-width";
const ASKING: &str = "#facts-only-asking";
const PLACE: &str = "#field-change-1-part-right";

#[tokio::test]
async fn what_is_refused() -> Result<()> {
    journey("what_is_refused", Screen::Desktop, async |page| {
        page.press("#new-nightstand").await?;
        the_first_figure_blanks_nothing(page).await?;
        a_size_that_is_none(page).await?;
        money(page).await?;
        a_place_below_nothing(page).await
    })
    .await
}

/// Goes into a field, types over what stands there, and waits until it stands there.
async fn over(page: &Page, field: &str, text: &str) -> Result<()> {
    page.enter(field).await?;
    page.keys(Key::Control + "a").await?;
    page.keys(text).await?;
    page.has_value(field, text).await
}

/// Two inches fit no nightstand: the answer waits for the second figure.
async fn the_first_figure_blanks_nothing(page: &Page) -> Result<()> {
    page.ask(WATCH).await?;
    page.enter(WIDTH).await?;
    page.keys("26").await?;
    page.has_value(WIDTH, "26").await?;
    page.tab_key().await?;
    page.element("#strip[aria-busy=false] #painted-area").await?;
    let seen = page.ask("return window.seen").await?;
    ensure!(seen["waited"] == true, "the answers did not wait: {seen}");
    ensure!(seen["away"] == false, "the area was away while somebody typed");
    page.gone("#field-width-error").await
}

/// The last good size stays in force and that is said; a field that never had one leaves no area.
async fn a_size_that_is_none(page: &Page) -> Result<()> {
    let area = page.text("#painted-area").await?;
    over(page, WIDTH, "abc").await?;
    page.tab_key().await?;
    page.element("#field-width-error").await?;
    page.reads(".strip .refused", |text| {
        ensure!(
            text.contains("26 in") && text.contains("abc"),
            "this says not what is used"
        );
        Ok(())
    })
    .await?;
    page.reads("#painted-area", |text| {
        ensure!(text == area, "it was {area}");
        Ok(())
    })
    .await?;
    over(page, WIDTH, "26").await?;
    page.tab_key().await?;
    page.gone(".strip .refused").await?;
    over(page, "#field-depth", "3/0").await?;
    page.tab_key().await?;
    page.element(".against[role=alert]").await?;
    page.gone("#painted-area").await?;
    over(page, "#field-depth", "16").await?;
    page.tab_key().await?;
    page.element("#painted-area").await?;
    Ok(())
}

async fn money(page: &Page) -> Result<()> {
    page.to("money").await?;
    for (text, hundredths) in [("1,250", 125_000), ("1.250,00", 125_000), ("$55", 5500)] {
        over(page, ASKING, text).await?;
        page.tab_key().await?;
        page.keeps(|document| {
            let piece = document.pieces.first().context("the piece is gone")?;
            let asking = piece.books.one::<Facts>().asking;
            ensure!(asking == Some(hundredths), "{text} is kept as {asking:?}");
            Ok(())
        })
        .await?;
        page.has_value(ASKING, text).await?;
        page.gone("#facts-only-asking-error").await?;
    }
    page.begins("#buy-or-leave", "").await?;
    let verdict = page.text("#buy-or-leave").await?;
    over(page, ASKING, "abc").await?;
    page.tab_key().await?;
    page.element("#facts-only-asking-error").await?;
    page.reads(".money .refused", |text| {
        ensure!(
            text.contains("$55") && text.contains("abc"),
            "this says not what is used"
        );
        Ok(())
    })
    .await?;
    page.reads("#buy-or-leave", |text| {
        ensure!(text == verdict, "it was {verdict}");
        Ok(())
    })
    .await?;
    over(page, "#facts-only-hours", "a while").await?;
    page.tab_key().await?;
    page.gone("#buy-or-leave").await?;
    over(page, "#facts-only-hours", "two and a half").await?;
    page.tab_key().await?;
    page.has_value("#facts-only-hours", "2 1/2 h").await?;
    page.element("#buy-or-leave").await?;
    over(page, ASKING, "60").await?;
    page.tab_key().await?;
    page.gone(".money .refused").await
}

async fn a_place_below_nothing(page: &Page) -> Result<()> {
    page.to("parts").await?;
    page.press("#add-board").await?;
    page.press("#place-1-on").await?;
    over(page, PLACE, "-20").await?;
    // Who types no further for a while is told without leaving the field.
    page.element(&format!("{PLACE}-error")).await?;
    page.gone("#painted-area").await?;
    over(page, PLACE, "2").await?;
    page.tab_key().await?;
    page.gone(&format!("{PLACE}-error")).await?;
    page.element("#painted-area").await?;
    Ok(())
}
