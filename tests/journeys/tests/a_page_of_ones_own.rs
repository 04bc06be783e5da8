//! A maker has a page of their own that asks the module for scripts: the example in `crates/script/README.md`, served with
//! the strict content policy of the tool. `cargo xtask test --only script` lays it out and runs this.
//!
//! Outside source: the areas of a square frame, worked out here by hand.

use anyhow::{Result, ensure};
use journeys::{Page, Screen, journey_elsewhere};
use serde_json::json;
use thirtyfour::By;
use workshop::format::{Loaded, save};
use workshop::out::report;

/// What one frame has to paint, of this width in inches, 36 high, its members 2 wide and 3/4 thick: square metres.
fn frame(width: f64) -> f64 {
    let (height, member, thickness) = (36.0, 2.0, 0.75);
    let inner = [width - 2.0 * member, height - 2.0 * member];
    let face = width * height - inner[0] * inner[1];
    let edges = 2.0 * thickness * (width + height + inner[0] + inner[1]);
    (face + edges) * 0.0254 * 0.0254
}

#[tokio::test]
async fn a_page_of_ones_own() -> Result<()> {
    journey_elsewhere("a_page_of_ones_own", Screen::Desktop, async |page| {
        answers(page, &format!("{:.4} square metres to paint", frame(24.0))).await?;
        types(page, "33 7/8").await?;
        answers(page, &format!("{:.4} square metres to paint", frame(33.875))).await?;
        types(page, "6O").await?;
        answers(
            page,
            "Width \u{201c}6O\u{201d} can't be read. \u{201c}O\u{201d} is not a unit of length. Use in, \
             ft, mm, cm or m.",
        )
        .await?;
        types(page, "1").await?;
        answers(
            page,
            "Width is 1 in. The minimum is 1 15/16 in. Measure it again.",
        )
        .await?;
        same_numbers(page).await
    })
    .await
}

async fn types(page: &Page, width: &str) -> Result<()> {
    let field = page.driver().find(By::Css("#width")).await?;
    field.clear().await?;
    Ok(field.send_keys(width).await?)
}

async fn answers(page: &Page, expected: &str) -> Result<()> {
    page.reads("#answer", |text| {
        ensure!(text == expected, "it should read `{expected}`");
        Ok(())
    })
    .await
}

/// Numbers are written as JSON so that each has but one text; what this program worked out is read and written once by
/// the browser for that.
const SAME: &str = "
    const [file, expected] = arguments;
    const {takeoff} = await import(new URL('coatwright/coatwright.js', location.href).href);
    const [here, there] = [takeoff(file, {working: true}), JSON.parse(expected)].map(value => JSON.stringify(value));
    return here === there ? here.length : 'what the page works out differs';
";

/// The page works out what this program works out, to the last digit.
async fn same_numbers(page: &Page) -> Result<()> {
    let workshop = workshop::invented_workshop();
    let file = save(&workshop);
    let notices = vec![];
    let expected = serde_json::to_string(&report(&Loaded { workshop, notices }, true))?;
    let script = format!("return (async function() {{ {SAME} }}).apply(null, arguments)");
    let same = page
        .driver()
        .execute(script, vec![json!(file), json!(expected)])
        .await?;
    ensure!(same.json().as_u64() > Some(10_000), "{}", same.json());
    Ok(())
}
