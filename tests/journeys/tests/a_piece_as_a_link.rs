//! A maker hands a piece on as a link; another maker, at another device, takes it in.
//!
//! Outside source: a reader of QR codes (`rqrr`) looks at the dots of the screen.

use anyhow::{Context, Result, ensure};
use journeys::{Page, Screen, Sent, Session, Site, Text, journey_at};
use workshop::{Piece, PieceId, Workshop};

#[tokio::test]
async fn a_piece_as_a_link() -> Result<()> {
    let site = Site::built(Sent::Plain)?;
    let address = site.address();
    journey_at("a_piece_as_a_link", Screen::Desktop, address, async |page| {
        page.look_around().await?;
        let ours = page.records().await?.document()?;
        page.to("export").await?;
        page.press("#make-link").await?;
        let link = page.element("#link").await?.value().await?;
        let link = link.context("there is no link")?;
        let start = format!("{}/#piece=", address.trim_end_matches('/'));
        ensure!(link.starts_with(&start), "{link} leads elsewhere");
        let code = photographed(page).await?;
        ensure!(code == link, "the code says {code}, and the link is {link}");

        let other = Session::start(Screen::Tablet, Text::Usual).await?;
        let mut result = taken_in(&other, address, &code, &ours).await;
        if result.is_ok() {
            result = broken(&other, &link).await;
        }
        other.end().await?;
        result
    })
    .await
}

/// What a telephone reads off the screen.
async fn photographed(page: &Page) -> Result<String> {
    let seen = page.photograph("#link-code").await?;
    let (width, height) = (seen.width, seen.height);
    let mut picture =
        rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| seen.grey[y * width + x]);
    let grids = picture.detect_grids();
    let [grid] = grids.as_slice() else {
        anyhow::bail!("{} codes are seen in {width} by {height} dots", grids.len());
    };
    let (_, text) = grid.decode().context("the code cannot be read off the screen")?;
    Ok(text)
}

/// The other maker has a piece of their own, which stays.
async fn taken_in(other: &Session, address: &str, link: &str, ours: &Workshop) -> Result<()> {
    let page = other.page();
    other.open(address).await?;
    page.press("#new-nightstand").await?;
    let before = page
        .keeps(|document| {
            ensure!(document.pieces.len() == 1, "the nightstand is not kept");
            Ok(document.clone())
        })
        .await?;
    other.go("about:blank").await?;
    other.open(link).await?;
    page.element("#gather-file").await?;
    let waiting = page.records().await?.document()?;
    ensure!(waiting == before, "the link took the piece in by itself");
    let found = page.driver().current_url().await?;
    ensure!(
        found.fragment().is_none_or(str::is_empty),
        "the address keeps the piece, and loading it anew would offer it again: {found}"
    );
    page.press("#gather-file").await?;
    page.gone("#gather-file").await?;
    let (given, came) = page
        .keeps(|document| {
            let given = ours.pieces.first().context("nothing was handed on")?;
            ensure!(
                document.pieces.len() == 2,
                "{} pieces are kept",
                document.pieces.len()
            );
            ensure!(
                document.pieces.first() == before.pieces.first(),
                "the nightstand is another one"
            );
            let came = document.pieces.last().context("nothing is kept")?;
            Ok((nameless(given), nameless(came)))
        })
        .await?;
    ensure!(given == came, "{given:?} came in as {came:?}");
    Ok(())
}

/// A piece without its id, which is new wherever it comes in.
fn nameless(piece: &Piece) -> Piece {
    Piece {
        id: PieceId("".into()),
        ..piece.clone()
    }
}

/// What was cut off on the way, or written over, is refused and changes nothing.
async fn broken(other: &Session, link: &str) -> Result<()> {
    let page = other.page();
    let before = page.records().await?;
    let (site, packed) = link.split_once("#piece=").context("this is no link")?;
    let cut = packed.get(..packed.len() / 2).unwrap_or_default();
    for packed in [cut, "AAAA", "*not-a-piece*"] {
        other.go("about:blank").await?;
        other.open(&format!("{site}#piece={packed}")).await?;
        page.reads("#messages", |text| {
            ensure!(text.contains("link"), "nothing says that the link is broken");
            Ok(())
        })
        .await
        .with_context(|| format!("the link with `{}`", packed.get(..20).unwrap_or(packed)))?;
        page.gone("#gather-file").await?;
        ensure!(
            page.records().await? == before,
            "a broken link changed the pieces"
        );
    }
    Ok(())
}
