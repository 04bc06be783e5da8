//! A maker compares brush and roller for the invented dresser.
//!
//! Outside source: a Monte Carlo with NumPy (`tests/outside/fixtures/quantiles.json`).

use anyhow::{Result, ensure};
use journeys::{Screen, invented_amounts, journey};

#[tokio::test]
async fn brush_against_roller() -> Result<()> {
    let expected = invented_amounts("invented-dresser")?;
    ensure!(expected.len() == 6, "three stages with two tools");
    journey("brush_against_roller", Screen::Desktop, async |page| {
        page.press("#look-around").await?;
        page.to("tools").await?;
        page.reads("#which-tool", |text| {
            ensure!(text.contains("hour") || text.contains("minute"), "{text}");
            ensure!(
                text.contains("finer texture") && text.ends_with("paint."),
                "{text}"
            );
            Ok(())
        })
        .await?;
        page.press("#fold-all-figures").await?;
        page.element("#compare").await?;
        for likely in &expected {
            let cell = format!("#compare-{}-{}", likely.tool, likely.stage);
            page.reads(&cell, |text| likely.is(text)).await?;
        }
        page.reads("#compare-foam-roller-coats-paint", |text| {
            ensure!(
                text.contains('3'),
                "three coats of the roller reach the film of two with the brush"
            );
            Ok(())
        })
        .await?;

        // The invented dresser is rolled; with the brush it takes what the comparison has said before.
        let [rolled, brushed] = [
            page.text("#compare-foam-roller-paint").await?,
            page.text("#compare-brush-paint").await?,
        ];
        ensure!(rolled != brushed, "both tools take {rolled}");
        let takes = async |expected: &str| {
            page.reads("#amount-paint", |text| {
                ensure!(text == expected, "the comparison says {expected}");
                Ok(())
            })
            .await
        };
        takes(&rolled).await?;
        page.press("#use-brush").await?;
        page.has_value("#tool-paint", "brush").await?;
        takes(&brushed).await?;
        page.reload().await?;
        takes(&brushed).await?;

        page.to("measure").await?;
        page.press("#clear-invented").await?;
        page.element("#new-dresser").await?;
        page.gone("#pieces button").await?;
        page.reload().await?;
        page.element("#new-dresser").await?;
        page.gone("#pieces button").await
    })
    .await
}
