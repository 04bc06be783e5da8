//! A maker weighs a can before and after a job; the amounts of the next piece reckon with it.
//!
//! Outside source: the rate by hand, area twice over the litres that left the can less what the tool keeps.

use anyhow::{Result, ensure};
use journeys::{Screen, journey};

#[tokio::test]
async fn what_it_really_took() -> Result<()> {
    journey("what_it_really_took", Screen::Tablet, async |page| {
        page.look_around().await?;
        page.to("work").await?;
        page.element("#done-clean").await?;
        page.unfold("weighing").await?;
        page.press("#weigh-paint").await?;
        // A second touch goes on with the first; the cursor stands where the weight goes.
        page.press("#weigh-paint").await?;
        page.eventually(async || {
            let forms =
                "return [document.querySelectorAll('[id^=observed-]').length, document.activeElement.id]";
            let now = page.ask(forms).await?;
            let is_there = now[0] == 1 && now[1].as_str().is_some_and(|id| id.ends_with("-before"));
            ensure!(is_there, "{now}");
            Ok(())
        })
        .await?;
        page.begins("[id^=observed-]", "Still missing: can weight before.")
            .await?;
        page.amounts().await?;
        let before = width(&page.texts(&["#range-paint"]).await?)?;
        page.press("#close-amounts").await?;
        page.type_in("[id^=weighings-][id$=-before]", "1400").await?;
        page.type_in("[id^=weighings-][id$=-after]", "784").await?;
        // 32.8 ft2 twice are 6.094 m2. 616 g at 1.3 kg/L (1.2 to 1.4) are 0.474 L, of which the roller keeps 0.0385 L in
        // sleeve and tray: 6.094 / 0.4353 is 14.0 m2/L, which is 570 ft2/gal.
        page.reads("[id^=observed-]", |said| {
            let is_told = said.starts_with("You used 16 fl oz. That\u{2019}s 570 ft")
                && said.contains("changes the amount");
            ensure!(is_told, "{said}");
            Ok(())
        })
        .await?;
        // The amount says on what it rests, and is surer.
        page.amounts().await?;
        page.eventually(async || {
            let said = page
                .ask("return document.getElementById('name-paint').textContent")
                .await?;
            let said = said.as_str().unwrap_or_default().to_owned();
            ensure!(said.contains("1 weighed job"), "{said}");
            Ok(())
        })
        .await?;
        page.to("shelf").await?;
        page.begins("#lesson-trim-enamel-foam-roller p", "Typical for the tool: ")
            .await?;
        page.kept().await?;
        page.reload().await?;
        page.to("measure").await?;
        page.amounts().await?;
        let after = width(&page.texts(&["#range-paint"]).await?)?;
        ensure!(after < before, "{after} is no surer than {before}");
        Ok(())
    })
    .await
}

/// The upper end of a range over its lower one: `12 to 20 fl oz` is 1.67.
fn width(texts: &[String]) -> Result<f64> {
    let numbers = texts.iter().flat_map(|text| text.split_whitespace());
    let ends: Vec<f64> = numbers.filter_map(|word| word.parse().ok()).collect();
    ensure!(ends.len() == 2, "{texts:?} is no range");
    Ok(ends[1] / ends[0])
}
