//! A maker asks whether a sample pot paints one nightstand.
//!
//! Outside sources: the area by the CAD kernel, the probability by a Monte Carlo with NumPy; both stand in
//! `fixtures/nightstand.json`, which `scripts/nightstand.py` writes.

use anyhow::{Context, Result, ensure};
use journeys::{NIGHTSTAND, Nightstand, Page, Screen, Shown, journey, nightstand};

/// The page states whole hundredths of its own 10,000 trials, which have half a hundredth of noise themselves.
const HUNDREDTHS: f64 = 2.0;

#[tokio::test]
async fn one_sample_can_for_a_nightstand() -> Result<()> {
    let expected = nightstand()?;
    journey("one_sample_can_for_a_nightstand", Screen::Tablet, async |page| {
        page.press("#new-nightstand").await?;
        page.press("#tape-away").await?;
        page.unfold("built").await?;
        page.press("#fronts-inset").await?;
        for (field, _, typed) in NIGHTSTAND {
            page.measure(field, typed).await?;
        }
        page.fits_a_finger().await?;
        page.to("finish").await?;
        page.choose("#tool-paint", "brush").await?;
        page.amounts().await?;
        page.choose("#can-paint", "us-8-fl-oz").await?;
        page.fits_a_finger().await?;
        answer(page, &expected).await?;
        page.reload().await?;
        page.has_value("#can-paint", "us-8-fl-oz").await?;
        answer(page, &expected).await
    })
    .await
}

async fn answer(page: &Page, expected: &Nightstand) -> Result<()> {
    page.reads("#painted-area", |text| {
        Shown::read(text)?.is("the painted area", expected.painted_m2, 0.0)
    })
    .await?;
    page.reads("#amount-paint", |text| {
        Shown::read(text)?.is("the paint", expected.likely, 0.015)
    })
    .await?;
    page.reads("#answer-paint", |text| {
        let stated = hundredths(text)?;
        let off = (stated - 100.0 * expected.probability).abs();
        ensure!(
            off <= HUNDREDTHS,
            "expected is {:.1} times in 100",
            100.0 * expected.probability
        );
        Ok(())
    })
    .await?;
    let verdict = expected.verdict();
    page.element(&format!("#verdict-paint[data-verdict={verdict}]"))
        .await?;
    Ok(())
}

/// The number before the percent sign.
fn hundredths(sentence: &str) -> Result<f64> {
    let (before, _) = sentence.split_once('%').context("there is no percent")?;
    let number = before.rsplit(' ').next().unwrap_or_default();
    number.parse().with_context(|| format!("`{number}` is no number"))
}
