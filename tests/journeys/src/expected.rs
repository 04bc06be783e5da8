//! What the page must show, worked out elsewhere.

use std::rc::Rc;

use anyhow::{Context, Result, ensure};
use outside::{cad_fixture, fixture};
use serde::Deserialize;
use workshop::Piece;

/// How far a likely volume may be from that of the Monte Carlo, as a share: the page's own trials have a noise
/// of about 1 %.
const SHARE: f64 = 0.015;

#[derive(Deserialize)]
struct Quantiles {
    pieces: Vec<Amounts>,
}

#[derive(Deserialize)]
struct Amounts {
    id: String,
    stages: Vec<Likely>,
}

/// What a stage takes with a tool.
#[derive(Clone, Debug, Deserialize)]
pub struct Likely {
    /// The stage.
    pub stage: String,
    /// The tool.
    pub tool: String,
    /// The likely volume in litres.
    pub likely: f64,
}

impl Likely {
    /// Fails unless a text of the page is this volume.
    ///
    /// # Errors
    /// If it is another one, or none.
    pub fn is(&self, text: &str) -> Result<()> {
        let what = format!("{} with {}", self.stage, self.tool);
        crate::Shown::read(text)
            .context(what.clone())?
            .is(&what, self.likely, SHARE)
    }
}

/// What an invented piece takes for each stage with each tool.
///
/// # Errors
/// If the fixture cannot be read or has no such piece.
pub fn invented_amounts(id: &str) -> Result<Vec<Likely>> {
    let quantiles: Quantiles = fixture("quantiles.json")?;
    let piece = quantiles.pieces.into_iter().find(|piece| piece.id == id);
    Ok(piece.with_context(|| format!("no {id} in the fixture"))?.stages)
}

/// What each stage of the invented dresser takes with the tool that is planned for it.
///
/// # Errors
/// If the fixture cannot be read or lacks a stage.
pub fn dresser_amounts() -> Result<Vec<Likely>> {
    let planned = [
        ("primer", "brush"),
        ("paint", "foam-roller"),
        ("topcoat", "brush"),
    ];
    let mut amounts = invented_amounts("invented-dresser")?;
    amounts.retain(|likely| planned.contains(&(likely.stage.as_str(), likely.tool.as_str())));
    ensure!(amounts.len() == planned.len(), "the fixture lacks a stage");
    Ok(amounts)
}

/// What the tape says of the invented dresser beside its width, depth and height: the field, and the reading.
pub const DRESSER_DETAILS: [(&str, &str); 11] = [
    ("#field-board", "3/4"),
    ("#field-top-thickness", "1"),
    ("#field-overhang-front", "1 1/4"),
    ("#field-overhang-side", "3/4"),
    ("#field-front-thickness", "3/4"),
    ("#field-gap", "1/8"),
    ("#field-frame", "3/8"),
    ("#field-plinth-height", "4 1/4"),
    ("#field-plinth-setback", "2"),
    ("#field-row-1", "7 1/4"),
    ("#field-row-3", "10"),
];

/// What the tape says of the nightstand of [`nightstand`]: the field, what is said of it, and the reading. Every other
/// measurement is as usual.
pub const NIGHTSTAND: [(&str, &str, &str); 7] = [
    ("#field-width", "Width", "19 1/4"),
    ("#field-depth", "Depth", "15"),
    ("#field-height", "Height", "25 1/2"),
    ("#field-board", "Board thickness", "3/4"),
    ("#field-leg-height", "Leg height", "7"),
    ("#field-leg-width", "Leg width", "1 1/2"),
    ("#field-row-1", "Row 1, height", "5"),
];

/// The area of a piece that looks at the room, in square metres, by the CAD kernel.
///
/// # Errors
/// If there is no such fixture.
pub fn outside_area(name: &str) -> Result<f64> {
    Ok(cad_fixture(name)?.outside_area())
}

/// A piece of the CAD kernel's, read in as a save file is, and its area in square metres that looks at the room and takes
/// a finish: all but the panes of glass doors.
///
/// # Errors
/// If there is no such fixture, or it holds no piece.
pub fn cad_piece(name: &str) -> Result<(Rc<Piece>, f64)> {
    let fixture = cad_fixture(name)?;
    let is_glass = |face: &str| face.contains("door-glass");
    let outside = fixture
        .faces
        .iter()
        .filter(|face| !is_glass(&face.face))
        .filter_map(|face| face.senses.get("outside"))
        .sum();
    Ok((fixture.to_piece()?, outside))
}

/// One nightstand, two coats of paint with the brush, and the sample pot: `scripts/nightstand.py`.
#[derive(Clone, Debug, Deserialize)]
pub struct Nightstand {
    /// Square metres that look at the room.
    pub painted_m2: f64,
    /// Litres that it likely takes.
    pub likely: f64,
    /// How probable it is that the pot lasts.
    pub probability: f64,
}

impl Nightstand {
    /// What the page must call that: nine times in ten is enough, every other time tight.
    pub fn verdict(&self) -> &'static str {
        match self.probability {
            p if p >= 0.9 => "enough",
            p if p >= 0.5 => "tight",
            _ => "short",
        }
    }
}

/// The committed result of `scripts/nightstand.py`.
///
/// # Errors
/// If it is not there.
pub fn nightstand() -> Result<Nightstand> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/fixtures/nightstand.json");
    let text = std::fs::read_to_string(path).context(path)?;
    serde_json::from_str(&text).context(path)
}
