//! A maker stains the top of a dresser, paints the rest, and brushes over the drawing: what the hand goes over is left, or
//! goes into a zone of its own.
//!
//! Outside source: the faces of the same dresser by the CAD kernel (`tests/cad/dresser-plinth.json`).

use std::collections::BTreeMap;

use anyhow::{Context, Result, ensure};
use coatings::Wish;
use journeys::{Page, Screen, Shown, journey, outside_area};
use serde::Deserialize;
use workshop::{BrushTo, Edit, PieceEdit, PieceId, SchemeEdit, Workshop};

/// A face of the drawing that a hand meets in its middle.
#[derive(Clone, Debug, Deserialize)]
struct Face {
    x: f64,
    y: f64,
    width: f64,
    height: f64,
}

/// All of them, and how high the drawing is.
const FACES: &str = "
    const drawing = document.querySelector('svg.drawing');
    drawing.scrollIntoView({block: 'start', behavior: 'instant'});
    return [...drawing.querySelectorAll('path.face')].map(face => {
        const box = face.getBoundingClientRect();
        const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
        const met = document.elementFromPoint(x, y);
        return {x, y, width: box.width, height: box.height, own: met === face};
    }).filter(({own}) => own);
";

/// Fronts are wider and higher than this, in pixels; edges of boards are not.
const FRONT: f64 = 25.0;

const PLANNED: [&str; 2] = ["#stage-finish", "#wish-stained"];

#[tokio::test]
async fn two_tone() -> Result<()> {
    let all = outside_area("dresser-plinth")?;
    let exposed = exposed("dresser-plinth")?;
    journey("two_tone", Screen::Desktop, async |page| {
        page.look_around().await?;
        let mut work = page.keeps(Work::begun).await?;
        stained_top(page, &mut work).await?;

        page.to("surfaces").await?;
        // From the front.
        page.press("#view-next").await?;
        let fronts = fronts(page).await?;
        page.press("#brush-left").await?;
        let left = [
            "drawer-front-1-1/front",
            "drawer-front-2-1/front",
            "drawer-front-3-1/front",
        ];
        stroke(page, &fronts, 0, 3).await?;
        let before = work.document.clone();
        work.change(brushed(&left, &BrushTo::Left))?;
        work.is_kept(page).await?;
        let gone: f64 = left.iter().map(|face| exposed[*face]).sum();
        area(page, all - gone).await?;
        // One movement of the hand is one step back.
        page.press("#undo").await?;
        area(page, all).await?;
        page.keeps(|document| {
            ensure!(
                *document == before,
                "a stroke was taken back in part: {document:?}"
            );
            Ok(())
        })
        .await?;
        page.press("#redo").await?;
        work.is_kept(page).await?;

        page.press("#add-zone").await?;
        page.choose("#brush-zone", "own-1").await?;
        let moved = ["drawer-front-1-2/front", "drawer-front-2-2/front"];
        stroke(page, &fronts, 1, 2).await?;
        work.change(PieceEdit::NameZone {
            zone: "own-1".into(),
            name: "Group 1".into(),
        })?;
        work.change(brushed(&moved, &BrushTo::Zone("own-1".into())))?;
        work.is_kept(page).await?;
        area(page, all - gone).await?;
        let own: f64 = moved.iter().map(|face| exposed[*face]).sum();
        zone(page, "own-1", own).await?;
        let top: f64 = exposed
            .iter()
            .filter(|(face, _)| face.starts_with("top/"))
            .map(|(_, area)| area)
            .sum();
        zone(page, "top", top).await
    })
    .await
}

/// The piece that is worked on, and the document as it must be.
struct Work {
    document: Workshop,
    piece: PieceId,
}

impl Work {
    fn begun(document: &Workshop) -> Result<Self> {
        let piece = document.pieces.first().context("there is no piece")?;
        Ok(Work {
            document: document.clone(),
            piece: piece.id.clone(),
        })
    }

    fn change(&mut self, edit: PieceEdit) -> Result<()> {
        self.document = self.document.apply(Edit::Piece(self.piece.clone(), edit))?;
        Ok(())
    }

    /// The database holds the document, and the page shows what it comes to.
    async fn is_kept(&self, page: &Page) -> Result<()> {
        page.keeps(|document| {
            let [found, wanted] = [document, &self.document].map(|document| document.piece(&self.piece));
            ensure!(found == wanted, "{found:?} is kept instead of {wanted:?}");
            Ok(())
        })
        .await?;
        page.shows(&self.document, &self.piece).await?;
        Ok(())
    }
}

fn brushed(faces: &[&str], to: &BrushTo) -> PieceEdit {
    PieceEdit::Brush(faces.iter().map(|face| (*face).to_owned()).collect(), to.clone())
}

async fn stained_top(page: &Page, work: &mut Work) -> Result<()> {
    let [sheet, wish] = PLANNED;
    page.press(sheet).await?;
    page.press("#finish-of-top").await?;
    page.press("#on-its-own").await?;
    page.press(wish).await?;
    work.change(PieceEdit::Apart {
        zone: "top".into(),
        apart: true,
    })?;
    work.change(PieceEdit::Finish(
        Some("top".into()),
        SchemeEdit::Suggested(Wish::StainedClear),
    ))?;
    work.is_kept(page).await?;
    page.element("#amount-stain").await?;
    page.element("#amount-paint").await?;
    Ok(())
}

/// The drawer fronts, column by column from the left, each from the top.
async fn fronts(page: &Page) -> Result<[Vec<Face>; 2]> {
    let faces: Vec<Face> = serde_json::from_value(page.ask(FACES).await?)?;
    let mut fronts: Vec<Face> = faces
        .into_iter()
        .filter(|face| face.width.min(face.height) > FRONT)
        .collect();
    fronts.sort_by(|one, other| one.y.total_cmp(&other.y));
    // Between the columns the boards behind them can be seen.
    let at_edge = |edge: f64| -> Vec<Face> {
        let at = fronts.iter().filter(|face| (face.x - edge).abs() < 5.0);
        at.cloned().collect()
    };
    let left = at_edge(fronts.iter().map(|face| face.x).fold(f64::INFINITY, f64::min));
    let right = at_edge(fronts.iter().map(|face| face.x).fold(0.0, f64::max));
    ensure!(
        left.len() == 3 && right.len() == 3,
        "the front shows {left:?} and {right:?}"
    );
    Ok([left, right])
}

/// Goes down over the uppermost fronts of a column.
async fn stroke(page: &Page, fronts: &[Vec<Face>; 2], column: usize, count: usize) -> Result<()> {
    // Where they are now: the page may have scrolled.
    page.ask(FACES).await?;
    let places: Vec<(f64, f64)> = fronts[column]
        .iter()
        .take(count)
        .map(|face| (face.x, face.y))
        .collect();
    page.stroke(&places).await
}

async fn area(page: &Page, expected: f64) -> Result<()> {
    page.reads("#painted-area", |text| {
        Shown::read(text)?.is("the painted area", expected, 1e-6)
    })
    .await
}

async fn zone(page: &Page, key: &str, expected: f64) -> Result<()> {
    page.reads(&format!("#fold-zone-{key} .figure"), |text| {
        Shown::read(text)?.is(key, expected, 1e-6)
    })
    .await
}

/// What the kernel leaves of each face towards the room, in square metres.
fn exposed(name: &str) -> Result<BTreeMap<String, f64>> {
    let faces = outside::cad_fixture(name)?.faces.into_iter();
    Ok(faces
        .filter_map(|face| Some((face.face, *face.senses.get("outside")?)))
        .collect())
}
