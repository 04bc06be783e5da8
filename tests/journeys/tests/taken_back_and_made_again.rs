//! A maker takes back everything, step by step, and makes it again: after each step the database holds what it held there.
//!
//! Outside source: the edits of the `workshop` crate, made in this program; what they come to is what must be kept.

use anyhow::{Context, Result, ensure};
use geometry::{Kind, fields};
use journeys::{Page, Records, Screen, journey};
use thirtyfour::Key;
use units::LengthUnit;
use workshop::{ChangeKind, Edit, PieceChange, PieceEdit, Reading, SchemeEdit};

/// A change that a hand makes, and the edit that it means.
struct Step {
    hand: Hand,
    edit: PieceEdit,
}

enum Hand {
    Type(&'static str, &'static str),
    Press(&'static [&'static str]),
    Choose(&'static str, &'static str),
}

fn steps() -> Result<Vec<Step>> {
    let step = |hand, edit| Step { hand, edit };
    let width = Reading::new("4' 10 1/2\"", LengthUnit::Inch)?;
    let depth = Reading::new("44 cm", LengthUnit::Inch)?;
    let part = || "drawer-front-1-1".to_owned();
    Ok(vec![
        step(
            Hand::Type("#field-width", "4' 10 1/2\""),
            PieceEdit::Measure(fields::WIDTH.id(), Some(width)),
        ),
        step(
            Hand::Type("#field-depth", "44 cm"),
            PieceEdit::Measure(fields::DEPTH.id(), Some(depth)),
        ),
        step(
            Hand::Press(&["#fold-built", "#fronts-inset"]),
            PieceEdit::Style {
                choice: "fronts",
                answer: "inset",
            },
        ),
        step(
            Hand::Press(&[
                "#stage-measure",
                "#change-parts",
                "#part-drawer-front-1-1",
                "#leave-out-part",
            ]),
            PieceEdit::AddChange(PieceChange::new(ChangeKind::Remove { part: part() })),
        ),
        step(
            Hand::Press(&[
                "#stage-finish",
                "#choose-surfaces",
                "#fold-zone-top",
                "#paint-top",
            ]),
            PieceEdit::ZonePainted {
                zone: "top".into(),
                painted: Some(false),
            },
        ),
        step(
            Hand::Press(&["#add-zone"]),
            PieceEdit::NameZone {
                zone: "own-1".into(),
                name: "Group 1".into(),
            },
        ),
        step(
            Hand::Press(&["#stage-finish", "#coats-paint-more"]),
            PieceEdit::Finish(None, SchemeEdit::Coats(2, 3)),
        ),
        step(
            Hand::Choose("#tool-paint", "foam-roller"),
            PieceEdit::Finish(None, SchemeEdit::Tool(2, "foam-roller")),
        ),
        step(
            Hand::Press(&["#remove-topcoat"]),
            PieceEdit::Finish(None, SchemeEdit::Remove(3)),
        ),
    ])
}

#[tokio::test]
async fn taken_back_and_made_again() -> Result<()> {
    journey("taken_back_and_made_again", Screen::Desktop, async |page| {
        page.press(&format!("#new-{}", Kind::Dresser.key())).await?;
        let mut expected = page.keeps(|document| Ok(document.clone())).await?;
        let mut held = vec![page.records().await?];
        let piece = expected.pieces.first().context("no piece was begun")?.id.clone();
        let mut shown = vec![page.shows(&expected, &piece).await?];
        for step in steps()? {
            make(page, &step.hand).await?;
            expected = expected.apply(Edit::Piece(piece.clone(), step.edit.clone()))?;
            page.keeps(|document| {
                ensure!(
                    *document == expected,
                    "after {:?} there is kept {document:?}",
                    step.edit
                );
                Ok(())
            })
            .await?;
            held.push(page.records().await?);
            shown.push(page.shows(&expected, &piece).await?);
        }
        let there = held.iter().zip(&shown).enumerate();
        for (place, (records, amounts)) in there.clone().rev().skip(1) {
            taken(page, "#undo", records, amounts)
                .await
                .with_context(|| format!("back to {place}"))?;
        }
        for (place, (records, amounts)) in there.skip(1) {
            taken(page, "#redo", records, amounts)
                .await
                .with_context(|| format!("on to {place}"))?;
        }
        ensure!(!can_redo(page).await?, "there is still something to make again");
        // What comes after a step back takes the place of what was taken back.
        page.press("#undo").await?;
        page.to("surfaces").await?;
        page.press("#paint-top").await?;
        page.keeps(|document| {
            let zone = document.pieces.first().and_then(|piece| piece.zones.get("top"));
            ensure!(
                zone.is_none_or(|zone| zone.painted.is_none()),
                "the top is still left"
            );
            Ok(())
        })
        .await?;
        ensure!(
            !can_redo(page).await?,
            "what was taken back could come on top of something newer"
        );
        Ok(())
    })
    .await
}

async fn can_redo(page: &Page) -> Result<bool> {
    Ok(page
        .ask("return Boolean(document.querySelector('#redo'))")
        .await?
        == true)
}

async fn make(page: &Page, hand: &Hand) -> Result<()> {
    match hand {
        Hand::Type(field, text) => {
            page.type_in(field, text).await?;
            page.keys(Key::Escape).await
        }
        Hand::Press(selectors) => {
            for selector in *selectors {
                page.press(selector).await?;
            }
            Ok(())
        }
        Hand::Choose(selector, key) => page.choose(selector, key).await,
    }
}

async fn taken(page: &Page, button: &str, records: &Records, amounts: &[String]) -> Result<()> {
    page.press(button).await?;
    page.eventually(async || {
        let found = page.records().await?;
        ensure!(
            found == *records,
            "the database holds {found:?} instead of {records:?}"
        );
        Ok(())
    })
    .await?;
    let all = page
        .ask("return [document.querySelector('#painted-area'), ...document.querySelectorAll('[id^=amount-]')].map(e => e.innerText.trim())")
        .await?;
    ensure!(
        all == serde_json::json!(amounts),
        "the page shows {all} instead of {amounts:?}"
    );
    Ok(())
}

/// The keys for taking back mean the last step, wherever the focus is; the browser would take back what was typed last.
#[tokio::test]
async fn keys_take_back_the_last_step() -> Result<()> {
    journey("keys_take_back_the_last_step", Screen::Desktop, async |page| {
        page.press(&format!("#new-{}", Kind::Dresser.key())).await?;
        page.type_in("#field-width", "40").await?;
        let rows = "#rows-more";
        let count = page.text(".stepper:has(#rows-more) output").await?;
        page.press(rows).await?;
        page.keys(Key::Control + "z").await?;
        page.reads(".stepper:has(#rows-more) output", |text| {
            ensure!(text == count, "{text} rows");
            Ok(())
        })
        .await?;
        page.has_value("#field-width", "40").await?;
        page.begins("#stepped", "Undone: ").await?;
        page.keys(Key::Control + "z").await?;
        page.has_value("#field-width", "").await?;
        page.keys(Key::Control + Key::Shift + "z").await?;
        page.has_value("#field-width", "40").await
    })
    .await
}
