//! A maker gets a dresser ready: no sanding before the test for lead, sheets for the real surface, filler for what was counted,
//! steps ticked off and kept.
//!
//! Outside source: the area by the CAD kernel (`tests/cad/dresser-plinth.json`); filler and sheets by hand from it.

use anyhow::{Result, ensure};
use journeys::{Page, Screen, journey, outside_area};

/// Square feet to square metres, exact.
const SQUARE_FOOT: f64 = 0.3048 * 0.3048;

#[tokio::test]
async fn prepare_a_dresser() -> Result<()> {
    let area = outside_area("dresser-plinth")?;
    journey("prepare_a_dresser", Screen::Tablet, async |page| {
        page.look_around().await?;
        page.to("work").await?;
        page.element("#done-lead").await?;
        page.element(".step.is-now #done-lead").await?;
        // Ticked off without its result, it still stands and asks for it there.
        page.press("#done-lead").await?;
        page.press("[id^=lead-negative-]").await?;
        page.gone("#done-lead").await?;

        page.press("#fold-own-habits").await?;
        page.type_in("#habits-only-sheet-yield", "20").await?;
        let sheets = (area / (20.0 * SQUARE_FOOT)).ceil();
        amount(page, "sand", "180-grit, by hand", &format!("{sheets} sheets")).await?;

        page.to("condition").await?;
        // Eighty holes of 1/4 in by 1/2 in: 80 x pi / 4 x 0.25^2 x 0.5 = 1.96 in3 or 1.09 fl oz; 1.1 to 1.4 times that.
        page.type_in("#facts-only-holes", "80").await?;
        page.press("#fold-pits").await?;
        page.type_in("#facts-only-hole-width", "1/4").await?;
        page.type_in("#facts-only-hole-depth", "1/2").await?;
        page.to("work").await?;
        amount(page, "fill", "Filler", "1.2 to 1.5 fl oz").await?;

        page.press("#done-clean").await?;
        page.begins("#steps-done", "1 of").await?;
        page.keeps(|document| {
            let done = document
                .pieces
                .first()
                .map(|piece| piece.books.lines("done").len());
            // The test for lead and the cleaning.
            ensure!(done == Some(2), "{done:?} steps are kept");
            Ok(())
        })
        .await?;
        page.reload().await?;
        page.to("work").await?;
        page.element("#done-clean:checked").await?;
        Ok(())
    })
    .await
}

/// What a step takes of a thing, as the page says it.
async fn amount(page: &Page, step: &str, what: &str, expected: &str) -> Result<()> {
    let how = format!("#fold-why-{step}");
    page.element(&how).await?;
    if page
        .ask(&format!("return document.querySelector('{how}').ariaExpanded"))
        .await?
        != "true"
    {
        page.press(&how).await?;
    }
    let script = format!(
        "const step = document.getElementById('done-{step}').closest('li');
         const line = [...step.querySelectorAll('.amounts-of dt')].find(dt => dt.textContent.startsWith('{what}'));
         return line?.nextElementSibling.textContent ?? ''"
    );
    page.eventually(async || {
        let shown = page.ask(&script).await?;
        ensure!(
            shown.as_str() == Some(expected),
            "{what}: {shown}, and not {expected}"
        );
        Ok(())
    })
    .await
}
