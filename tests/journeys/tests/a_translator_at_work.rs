//! A translator of the browser goes over the page, and the maker goes on measuring: no number is an old one.
//!
//! Outside source: the takeoff of the `workshop` crate, made in this program.

use anyhow::{Context, Result, ensure};
use geometry::{Kind, fields};
use journeys::{Screen, journey};
use thirtyfour::Key;
use units::LengthUnit;
use workshop::{Edit, PieceEdit, Reading};

/// Does what translators do: an element of its own comes in the place of each text. As they do, it leaves alone what is not
/// to be translated (HTML Standard, the `translate` attribute).
const TRANSLATE: &str = "
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const texts = [];
    while (walk.nextNode()) texts.push(walk.currentNode);
    let count = 0;
    for (const text of texts) {
        const of = text.parentElement;
        if (!text.data.trim() || !of || !of.translate || of.closest('script, style, svg')) continue;
        const font = document.createElement('font');
        font.textContent = text.data;
        text.replaceWith(font);
        count += 1;
    }
    return [count, document.querySelector('meta[name=google]')?.content];
";

#[tokio::test]
async fn a_translator_at_work() -> Result<()> {
    journey("a_translator_at_work", Screen::Desktop, async |page| {
        page.press("#new-nightstand").await?;
        page.element("#painted-area").await?;
        let mut document = page
            .keeps(|document| {
                ensure!(document.pieces.len() == 1, "the nightstand is not kept");
                Ok(document.clone())
            })
            .await?;
        let piece = document.pieces.first().context("nothing is kept")?;
        ensure!(piece.kind == Kind::Nightstand, "{piece:?}");
        let id = piece.id.clone();
        for text in ["30", "24 1/2", "41"] {
            let translated = page.ask(TRANSLATE).await?;
            page.enter("#field-width").await?;
            page.keys(Key::Control + "a").await?;
            page.put(text).await?;
            page.has_value("#field-width", text).await?;
            page.keys(Key::Escape).await?;
            let reading = Reading::new(text, LengthUnit::Inch)?;
            let edit = PieceEdit::Measure(fields::WIDTH.id(), Some(reading));
            document = document.apply(Edit::Piece(id.clone(), edit))?;
            let shown = page.shows(&document, &id).await;
            shown.with_context(|| format!("{text}, after {translated} texts were translated"))?;
            ensure!(
                translated == serde_json::json!([0, "notranslate"]),
                "{translated}"
            );
        }
        Ok(())
    })
    .await
}
