//! A maker holds one can after the other against a nightstand: enough, tight, and not enough, each in plain words and with
//! its probability.
//!
//! Outside source: verdict, probability and remainder by the `workshop` crate in this program; `one_sample_can_for_a_nightstand`
//! holds one of them against NumPy.

use anyhow::{Context, Result, ensure};
use coatings::Verdict;
use coatings::can::LEVELS;
use journeys::{Page, Screen, Shown, journey, worked_out};
use workshop::{Edit, HaveEdit, MaterialLine, Takeoff, Workshop};

const STAGE: &str = "paint";

/// A can in the hand: its size, and how full it is.
type InHand = (&'static str, Option<&'static str>);

#[tokio::test]
async fn three_verdicts() -> Result<()> {
    journey("three_verdicts", Screen::Desktop, async |page| {
        page.press("#new-nightstand").await?;
        let begun = page
            .keeps(|document| {
                ensure!(document.pieces.len() == 1, "nothing is kept");
                Ok(document.clone())
            })
            .await?;
        page.amounts().await?;
        for (verdict, words) in [
            (Verdict::Short, "short"),
            (Verdict::Tight, "tight"),
            (Verdict::Enough, "enough"),
        ] {
            let ((can, level), expected) = with_verdict(&begun, verdict)?;
            page.choose(&format!("#can-{STAGE}"), can).await?;
            page.choose(&format!("#level-{STAGE}"), level.unwrap_or_default())
                .await?;
            let line = line(&expected)?;
            answers(page, line, words)
                .await
                .with_context(|| format!("{can}, {level:?}"))?;
        }
        Ok(())
    })
    .await
}

fn line(taken: &Takeoff) -> Result<&MaterialLine> {
    let mut lines = taken.materials.iter();
    lines
        .find(|line| line.id == STAGE)
        .context("the piece takes no paint")
}

/// A can that gets this verdict by the crate, not at the very edge of it.
fn with_verdict(begun: &Workshop, verdict: Verdict) -> Result<(InHand, Takeoff)> {
    let piece = begun.pieces.first().context("the piece is gone")?.id.clone();
    let taken = worked_out(begun, &piece)?;
    let need = &line(&taken)?.need;
    let have = |edit| Edit::Have {
        piece: piece.clone(),
        material: need.material.key.to_string().into(),
        colour: need.colour,
        edit,
    };
    for can in coatings::can_sizes(begun.units) {
        for level in std::iter::once(None).chain(LEVELS.iter().map(|level| Some(level.key))) {
            let held = begun
                .apply(have(HaveEdit::Can(Some(can.key))))?
                .apply(have(HaveEdit::Level(level)))?;
            let taken = worked_out(&held, &piece)?;
            let enough = &line(&taken)?
                .on_hand
                .as_ref()
                .context("nothing is on hand")?
                .enough;
            if enough.verdict == verdict && (0.02..0.999).contains(&enough.probability) {
                return Ok(((can.key, level), taken));
            }
        }
    }
    anyhow::bail!("no can and level gets the verdict {verdict:?}")
}

async fn answers(page: &Page, line: &MaterialLine, words: &str) -> Result<()> {
    let enough = &line.on_hand.as_ref().context("nothing is on hand")?.enough;
    page.element(&format!("#verdict-{STAGE}[data-verdict={words}]"))
        .await?;
    let chance = format!("{:.0}%", 100.0 * enough.probability);
    page.reads(&format!("#answer-{STAGE}"), |text| {
        let states_chance = enough.verdict == Verdict::Tight;
        ensure!(
            text.contains(&chance) == states_chance,
            "expected is `{chance}`: {states_chance}"
        );
        let rest = text.trim_start_matches("About ");
        let (short, left) = (rest.split_once(" short."), rest.split_once(" left over."));
        let (figure, expected) = match (short, left) {
            (Some((figure, _)), None) => (figure, enough.lacking),
            (None, Some((figure, _))) => (figure, enough.left),
            _ => anyhow::bail!("this says neither what is left nor what is lacking"),
        };
        Shown::read(figure)?.is("the remainder", expected.as_litres(), 1e-9)
    })
    .await?;
    if enough.verdict != Verdict::Enough && enough.most_coats > 0 {
        let coats = format!("Sure to cover {} coat", enough.most_coats);
        page.reads(&format!("#instead-{STAGE}"), |text| {
            ensure!(text.starts_with(&coats), "expected is `{coats}`");
            Ok(())
        })
        .await?;
    }
    Ok(())
}
