//! A maker who works with the keyboard alone begins a nightstand, measures it, chooses a finish and reads the amounts; a
//! screen reader could say what each step is.
//!
//! Outside sources: the area by the CAD kernel and the volume by a Monte Carlo with NumPy (`fixtures/nightstand.json`); names
//! and roles by the browser's own tree of accessibility.

use anyhow::{Context, Result, ensure};
use journeys::{NIGHTSTAND, Page, Screen, Shown, Spoken, journey, nightstand};
use serde_json::json;
use thirtyfour::Key;

/// More measurements than this has no nightstand.
const MOST_FIELDS: usize = 40;

#[tokio::test]
async fn without_a_pointer() -> Result<()> {
    let expected = nightstand()?;
    journey("without_a_pointer", Screen::Desktop, async |page| {
        page.devtools("Accessibility.enable", json!({})).await?;
        let begin = page.tab_to("#new-nightstand").await?;
        is(&begin, "button", "Nightstand")?;
        page.keys(Key::Enter).await?;
        arrives(page, "#field-width").await?;
        page.keys(Key::Escape).await?;
        page.tab_to("#fold-built").await?;
        page.keys(Key::Enter).await?;
        let inset = page.tab_to("#fronts-inset").await?;
        is(&inset, "button", "Inset")?;
        page.keys(" ").await?;
        page.element("#fronts-inset[aria-pressed=true]").await?;
        back_to(page, "#field-width").await?;
        measure(page).await?;

        back_to(page, "#stage-finish").await?;
        let finish = page.spoken().await?;
        ensure!(finish.name.contains("Finish"), "{finish:?}");
        page.keys(" ").await?;
        let tool = page.tab_to("#tool-paint").await?;
        is(&tool, "combobox", "Tool")?;
        page.keys("Brush").await?;
        page.has_value("#tool-paint", "brush").await?;
        page.reads("#painted-area", |text| {
            Shown::read(text)?.is("the painted area", expected.painted_m2, 0.0)
        })
        .await?;
        page.reads("#amount-paint", |text| {
            Shown::read(text)?.is("the paint", expected.likely, 0.015)
        })
        .await?;
        page.tab_to("#strip").await?;
        page.keys(Key::Enter).await?;
        let can = page.tab_to("#can-paint").await?;
        is(&can, "combobox", "I have")?;
        page.keys("8 fl oz").await?;
        page.has_value("#can-paint", "us-8-fl-oz").await?;
        let verdict = expected.verdict();
        page.element(&format!("#verdict-paint[data-verdict={verdict}]"))
            .await?;
        Ok(())
    })
    .await
}

/// Goes through every measurement with Enter, and types what the tape says.
async fn measure(page: &Page) -> Result<()> {
    let mut left: Vec<(&str, &str)> = NIGHTSTAND.map(|(_, name, typed)| (name, typed)).to_vec();
    for _ in 0..MOST_FIELDS {
        let field = page.spoken().await?;
        if field.role != "textbox" {
            break;
        }
        // The unit stands behind the name.
        let name = field.name.split(" (").next().unwrap_or_default();
        if let Some(place) = left.iter().position(|(of, _)| *of == name) {
            page.keys(left.remove(place).1).await?;
        }
        let before = page.ask("return document.activeElement.id").await?;
        page.enter_key().await?;
        page.eventually(async || {
            let now = page.ask("return document.activeElement.id").await?;
            ensure!(now != before && now != "", "Enter does not go on from {before}");
            Ok(())
        })
        .await?;
    }
    ensure!(left.is_empty(), "these were not asked for: {left:?}");
    Ok(())
}

fn is(spoken: &Spoken, role: &str, name: &str) -> Result<()> {
    ensure!(
        spoken.role == role && spoken.name.starts_with(name),
        "{spoken:?} is said instead of {role} `{name}`"
    );
    Ok(())
}

async fn arrives(page: &Page, selector: &str) -> Result<()> {
    page.eventually(async || {
        ensure!(
            page.is_on(selector).await?,
            "the focus does not come to {selector}"
        );
        Ok(())
    })
    .await
}

/// Goes back with Shift and Tab.
async fn back_to(page: &Page, selector: &str) -> Result<()> {
    for _ in 0..MOST_FIELDS {
        if page.is_on(selector).await? {
            return Ok(());
        }
        page.keys(Key::Shift + Key::Tab).await?;
        page.spoken().await?;
    }
    None.with_context(|| format!("Shift and Tab do not lead back to {selector}"))
}
