//! A maker prints the job card: one or two sheets of paper, with the amounts of the screen on them and without its buttons.
//!
//! Outside source: the amounts by the `workshop` crate in this program, and the printed file itself (ISO 32000: each page is
//! an object of the type `Page`).

use anyhow::{Context, Result, ensure};
use journeys::{Page, Screen, journey};
use serde_json::{Value, json};
use workshop::out::from_base64url;

/// What a printer would put on paper, by what can be seen.
const ON_PAPER: &str = "
    const seen = [...document.querySelectorAll('body *')].filter(element =>
        element.checkVisibility({visibilityProperty: true}) && element.getClientRects().length);
    return {
        text: document.body.innerText,
        buttons: seen.filter(element => element.matches('button, input, select, summary')).map(element => element.outerHTML.slice(0, 80)),
        drawings: seen.filter(element => element.matches('.job-card svg.drawing')).length,
    };
";

#[tokio::test]
async fn print_a_card() -> Result<()> {
    journey("print_a_card", Screen::Desktop, async |page| {
        page.look_around().await?;
        let document = page.records().await?.document()?;
        let piece = document.pieces.first().context("there is no piece")?;
        let shown = page.shows(&document, &piece.id).await?;
        page.to("card").await?;
        page.element(".job-card").await?;
        is_printed_short(page).await?;

        // As wide as a sheet of A4 at 96 to the inch: narrower than the screen, as paper is.
        let sheet = json!({"width": 794, "height": 1123, "deviceScaleFactor": 1, "mobile": false});
        page.devtools("Emulation.setDeviceMetricsOverride", sheet).await?;
        page.devtools("Emulation.setEmulatedMedia", json!({"media": "print"}))
            .await?;
        let paper = page.ask(ON_PAPER).await?;
        let text = paper["text"].as_str().context("nothing is on the paper")?;
        // The area stands in a sentence, so its figure is what is looked for; words may be parted by another space.
        let squeezed = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
        let text = squeezed(text);
        for amount in &shown {
            ensure!(
                text.contains(&squeezed(amount)),
                "`{amount}` is not on the paper: {text}"
            );
        }
        for layer in &piece.scheme.layers {
            let material = workshop::material_of(&document.materials, &layer.material);
            let name = material.context("a material is not known")?.name.to_string();
            ensure!(text.contains(&name), "{name} is not on the paper");
        }
        for word in [piece.name.as_str(), "Steps", "Notes", "Started", "lead"] {
            ensure!(text.contains(word), "`{word}` is not on the paper");
        }
        ensure!(
            paper["buttons"] == json!([]),
            "there are buttons on the paper: {}",
            paper["buttons"]
        );
        page.devtools("Emulation.setEmulatedMedia", json!({"media": ""}))
            .await?;
        Ok(())
    })
    .await
}

async fn is_printed_short(page: &Page) -> Result<()> {
    let printed = page
        .devtools("Page.printToPDF", json!({"preferCSSPageSize": true}))
        .await?;
    let data = printed.get("data").and_then(Value::as_str);
    let data = data.context("the browser printed nothing")?;
    // RFC 4648: both alphabets differ in two signs and in what fills up the end.
    let data = data.trim_end_matches('=').replace('+', "-").replace('/', "_");
    let file = from_base64url(&data).context("this is not base64")?;
    ensure!(file.starts_with(b"%PDF-"), "this is no printed file");
    let pages = file
        .windows(b"/Type /Page".len() + 1)
        .filter(|window| window.starts_with(b"/Type /Page") && window.last() != Some(&b's'))
        .count();
    ensure!(pages == 1, "the card takes {pages} sheets of paper");
    Ok(())
}
