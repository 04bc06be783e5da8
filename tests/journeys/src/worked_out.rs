//! What the page must show of a document: the crate works it out in this program.

use anyhow::{Context, Result, anyhow};
use workshop::learning::lessons;
use workshop::{PieceId, Takeoff, Workshop, takeoff};

use crate::page::Page;
use crate::shown::Shown;

/// The page and this program run the same trials; only the mathematics of the machine may differ.
const SHARE: f64 = 1e-9;

/// The takeoff of a piece.
///
/// # Errors
/// If it is not there, or its measurements do not fit.
pub fn worked_out(document: &Workshop, piece: &PieceId) -> Result<Takeoff> {
    let piece = document
        .piece(piece)
        .with_context(|| format!("there is no piece {piece:?}"))?;
    takeoff(document, piece, &lessons(document)).map_err(|faults| anyhow!("{faults:?}"))
}

impl Page {
    /// Waits until the page shows the area of a piece and the amount of each material as the crate works them out, and
    /// no other material. Gives back all of that as it is shown.
    ///
    /// # Errors
    /// What was last wrong.
    pub async fn shows(&self, document: &Workshop, piece: &PieceId) -> Result<Vec<String>> {
        let taken = worked_out(document, piece)?;
        self.eventually(async || {
            let shown = self
                .ask(
                    "return [...document.querySelectorAll('#painted-area, [id^=amount-]')]
                        .map(element => [element.id, element.innerText.trim()])",
                )
                .await?;
            let shown: Vec<(String, String)> = serde_json::from_value(shown)?;
            let area = ("painted-area".to_owned(), taken.painted.value.as_square_metres());
            // The strip shows what is coated, and leaves out what cleans.
            let lines = taken
                .materials
                .iter()
                .filter(|line| line.need.material.stage.key() != "clean")
                .map(|line| (format!("amount-{}", line.id), line.need.likely().as_litres()));
            let expected: Vec<(String, f64)> = std::iter::once(area).chain(lines).collect();
            anyhow::ensure!(
                shown.len() == expected.len(),
                "shown is {shown:?}, and expected {expected:?}"
            );
            for ((id, text), (of, value)) in shown.iter().zip(&expected) {
                anyhow::ensure!(id == of, "{id} stands in the place of {of}");
                Shown::read(text)?.is(id, *value, SHARE)?;
            }
            Ok(shown.into_iter().map(|(_, text)| text).collect())
        })
        .await
    }
}
