//! A maker lays the work of two pieces out over days of their own and takes it into a calendar.
//!
//! Outside source: `icalendar`, an independent reader of RFC 5545, reads the file; hours are those that were typed.

use anyhow::{Context, Result, ensure};
use icalendar::{Calendar, CalendarComponent, Component, DatePerhapsTime};
use journeys::{Page, Screen, journey};

#[tokio::test]
#[expect(clippy::too_many_lines, reason = "one journey")]
async fn days_of_the_work() -> Result<()> {
    journey("days_of_the_work", Screen::Tablet, async |page| {
        page.look_around().await?;
        page.to("work").await?;
        page.to("schedule").await?;
        page.element("#save-calendar").await?;
        page.press("#fold-hours").await?;
        for day in ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] {
            page.type_in(&format!("#habits-only-{day}"), "6pm to 9:30pm")
                .await?;
        }
        page.begins("#understood", "Mon to Sun 6:00").await?;
        page.kept().await?;
        let steps = page
            .ask("return [...document.querySelectorAll('.works b')].map(step => step.textContent)")
            .await?;
        let steps: Vec<String> = serde_json::from_value(steps)?;
        ensure!(steps.len() > 10, "{steps:?}");
        let text = String::from_utf8(page.save("#save-calendar", "work.ics").await?)?;
        let calendar: Calendar = text.parse().map_err(|fault| anyhow::anyhow!("{fault}"))?;
        let mut of_hands = Vec::new();
        let mut ready = 0;
        for component in calendar.components.iter() {
            let CalendarComponent::Event(event) = component else {
                continue;
            };
            let summary = event.get_summary().context("an entry has no words")?;
            if summary.ends_with("ready to sell") {
                ready += 1;
                continue;
            }
            let (from, to) = (minute(event.get_start())?, minute(event.get_end())?);
            ensure!(
                18 * 60 <= from && from < to && to <= 21 * 60 + 30,
                "{summary}: {from} to {to}"
            );
            of_hands.push(summary.to_owned());
        }
        ensure!(ready == 2, "{ready} pieces are ready");
        for step in &steps {
            ensure!(
                of_hands.iter().any(|entry| entry.contains(step.as_str())),
                "{step} is not in the calendar"
            );
        }

        // The dew point itself is checked against PsychroLib in `tests/outside/tests/dew_point.rs`; here, what follows from it.
        page.press("#fold-air-now").await?;
        page.type_in("#habits-only-temperature", "55 F").await?;
        page.type_in("#habits-only-humidity", "85 %").await?;
        page.begins("#air", "Don\u{2019}t coat now.").await?;
        // Freezing air is dry, and stops every coat: what is laid out ends before the first of them.
        page.type_in("#habits-only-temperature", "35 F").await?;
        page.type_in("#habits-only-humidity", "40 %").await?;
        page.begins("#air", "Don\u{2019}t coat now.").await?;
        coats(page, 0).await?;
        page.type_in("#habits-only-temperature", "77 F").await?;
        page.begins("#air", "You can coat").await?;
        page.gone(".works:not(:has([id*=-coat-]))").await?;

        // The first step is a test for lead: to tick it off is not enough, its result takes it away.
        let all = steps.len() as u64;
        page.press(".works input").await?;
        laid_out(page, all).await?;
        page.press("[id^=lead-negative-]").await?;
        let before = all - 1;
        laid_out(page, before).await?;

        // What is ticked off is not laid out again, and can be taken back.
        page.press(".works input").await?;
        laid_out(page, before - 1).await?;
        page.press("#fold-checked-off").await?;
        page.press("[id^=ticked-]").await?;
        laid_out(page, before).await?;

        // What is ticked off before its turn says so, and can be taken back too.
        let last = page
            .ask("return [...document.querySelectorAll('[id^=tick-]')].at(-1).id")
            .await?;
        let last = format!("#{}", last.as_str().context("no step can be ticked off")?);
        for is_ticked in [true, false] {
            page.press(&last).await?;
            page.eventually(async || {
                let now = page
                    .ask(&format!("return document.querySelector('{last}').checked"))
                    .await?;
                ensure!(now == is_ticked, "{last} is ticked: {now}");
                Ok(())
            })
            .await?;
        }
        laid_out(page, before).await
    })
    .await
}

/// So many coats are to come.
async fn coats(page: &Page, coats: u64) -> Result<()> {
    page.eventually(async || {
        let now = page
            .ask("return document.querySelectorAll('[id^=tick-][id*=-coat-]').length")
            .await?;
        ensure!(now.as_u64() == Some(coats), "{now} of {coats} coats");
        Ok(())
    })
    .await
}

/// So many steps are to come.
async fn laid_out(page: &Page, steps: u64) -> Result<()> {
    page.eventually(async || {
        let now = page
            .ask("return document.querySelectorAll('[id^=tick-]').length")
            .await?;
        ensure!(now.as_u64() == Some(steps), "{now} of {steps} steps");
        Ok(())
    })
    .await
}

/// The minute of the day of a time without a zone.
fn minute(time: Option<DatePerhapsTime>) -> Result<u32> {
    let text = match time.context("an entry has no time")? {
        DatePerhapsTime::DateTime(icalendar::CalendarDateTime::Floating(at)) => at.to_string(),
        other => anyhow::bail!("{other:?} is not the time on the wall"),
    };
    let clock = text.split([' ', 'T']).nth(1).context("no clock")?;
    let mut parts = clock.split(':').map(str::parse::<u32>);
    let mut next = || parts.next().context("no figures")?.context("no number");
    Ok(next()? * 60 + next()?)
}
