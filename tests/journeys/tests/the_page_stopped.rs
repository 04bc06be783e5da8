//! Something fails that nobody foresaw: the page says so, claims nothing more, and comes back whole.

use anyhow::{Result, ensure};
use journeys::{Page, Screen, journey};

#[tokio::test]
async fn the_page_stopped() -> Result<()> {
    journey("the_page_stopped", Screen::Tablet, async |page| {
        page.look_around().await?;
        page.kept().await?;
        let before = page.records().await?;
        harmless(page).await?;
        // The page's own code fails in the midst of a change, as a panic would.
        page.ask("window.requestAnimationFrame = undefined").await?;
        page.enter("#field-width").await?;
        page.put("61").await?;
        stopped(page).await?;
        page.ask("return dispatchEvent(new ErrorEvent('error', {message: 'again'}))")
            .await?;
        let boxes = page.ask("return document.querySelectorAll('#stopped').length").await?;
        ensure!(boxes == 1, "it is said {boxes} times");
        page.fits_a_finger().await?;
        // The browser tells of the error too, which is no fault of this journey.
        page.driver().browser_log().await?;
        back(page).await?;
        ensure!(page.records().await? == before, "something was lost");

        page.ask("return dispatchEvent(new PromiseRejectionEvent('unhandledrejection', {promise: Promise.resolve(), reason: new Error('x')}))")
            .await?;
        stopped(page).await?;
        back(page).await?;
        not_opened_again(page).await
    })
    .await
}

/// What is no fault of the page stops nothing.
async fn harmless(page: &Page) -> Result<()> {
    for event in [
        "new ErrorEvent('error', {message: 'ResizeObserver loop completed with undelivered notifications.'})",
        "new ErrorEvent('error', {message: 'x', filename: 'chrome-extension://abc/x.js'})",
        "new PromiseRejectionEvent('unhandledrejection', {promise: Promise.resolve(), reason: new DOMException('', 'AbortError')})",
    ] {
        page.ask(&format!("return dispatchEvent({event})")).await?;
    }
    page.gone("#stopped").await?;
    page.kept().await
}

async fn stopped(page: &Page) -> Result<()> {
    page.element("#stopped[role='alert']").await?;
    let claims = page
        .ask("return [document.querySelector('#keeping').dataset.state, document.querySelector('#keeping').textContent]")
        .await?;
    ensure!(
        claims == serde_json::json!(["stopped", ""]),
        "the page still says {claims}"
    );
    let reached = page.ask("return document.querySelector('#app').inert").await?;
    ensure!(reached == true, "the page that stopped can still be worked");
    Ok(())
}

async fn back(page: &Page) -> Result<()> {
    page.press("#reload-stopped").await?;
    page.gone("#stopped").await?;
    page.kept().await
}

/// A piece whose opening did not come to an end, as when the browser killed the page, waits for the maker.
async fn not_opened_again(page: &Page) -> Result<()> {
    page.open_piece(2).await?;
    page.element("#painted-area").await?;
    let mark = "return localStorage.getItem('coatwright opening')";
    page.eventually(async || {
        ensure!(
            page.ask(mark).await?.is_null(),
            "the mark stays after the piece was opened"
        );
        Ok(())
    })
    .await?;
    page.ask("localStorage.setItem('coatwright opening', localStorage.getItem('coatwright piece'))")
        .await?;
    page.reload().await?;
    page.element("#messages li").await?;
    page.list_pieces().await?;
    page.element("#pieces li:first-child [aria-current]").await?;
    page.gone("#pieces li:nth-child(2) svg").await?;
    page.press("#pieces li:nth-child(2) button").await?;
    page.element("#painted-area").await?;
    page.reload().await?;
    page.list_pieces().await?;
    page.element("#pieces li:nth-child(2) [aria-current]").await?;
    Ok(())
}
