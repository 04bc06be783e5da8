//! A maker opens the page once at home and works with it in a shed without a network.
//!
//! The server is ended as a program: to say "offline" to the browser stops the page's own requests, but not those of its
//! service worker.
//!
//! Outside source: the painted area by the CAD kernel (`tests/cad/dresser-plinth.json`).

use std::net::TcpStream;

use anyhow::{Context, Result, ensure};
use journeys::{Page, Screen, Sent, Shown, Site, journey_at, outside_area};

const WIDTH: &str = "#field-width";

#[tokio::test]
async fn without_a_network() -> Result<()> {
    let area = outside_area("dresser-plinth")?;
    let site = Site::built(Sent::Plain)?;
    let address = site.address().to_owned();
    journey_at(
        "without_a_network",
        Screen::Tablet,
        &address.clone(),
        async move |page| {
            page.works_offline().await?;
            drop(site);
            nobody_answers(&address)?;

            page.reload().await?;
            page.press("#look-around").await?;
            painted(page, area).await?;
            page.press("#undo").await?;
            page.press("#new-nightstand").await?;
            page.press("#tape-away").await?;
            page.type_in(WIDTH, "19 1/4").await?;
            page.to("finish").await?;
            page.choose("#tool-paint", "foam-roller").await?;
            let shown = page.texts(&["#painted-area", "#amount-paint"]).await?;

            page.reload().await?;
            nobody_answers(&address)?;
            page.to("measure").await?;
            page.has_value(WIDTH, "19 1/4").await?;
            let again = page.texts(&["#painted-area", "#amount-paint"]).await?;
            ensure!(again == shown, "{shown:?} came back as {again:?}");
            page.works_offline().await
        },
    )
    .await
}

fn nobody_answers(address: &str) -> Result<()> {
    let host = address.trim_start_matches("http://").trim_end_matches('/');
    let host: std::net::SocketAddr = host.parse().context("the address names no port")?;
    ensure!(TcpStream::connect(host).is_err(), "the server still answers");
    Ok(())
}

async fn painted(page: &Page, area: f64) -> Result<()> {
    page.reads("#painted-area", |text| {
        Shown::read(text)?.is("the painted area", area, 0.0)
    })
    .await
}
