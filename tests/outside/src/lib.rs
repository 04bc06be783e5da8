//! Checks of the whole against published values and outside tools.
//!
//! This library only reads the fixtures; the checks stand in `tests/`, each file with its outside source at
//! the top. How the fixtures are made is written in `tests/cad/README.md` and in the scripts themselves.

pub mod seen;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::rc::Rc;

use anyhow::{Context, ensure};
use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};
use workshop::Piece;

/// A piece measured by the CAD kernel: what the tape said, and what is left of each face.
#[derive(Clone, Debug, Deserialize)]
pub struct CadFixture {
    /// The name of the fixture, which is also that of its file.
    pub name: String,
    /// The kernel and its version.
    pub kernel: String,
    /// The unit of all areas.
    pub units: String,
    /// The piece as it stands in a save file, without its finish.
    pub piece: Option<Value>,
    /// A single board instead of a piece: its width, depth and height.
    pub block: Option<BTreeMap<String, TypedReading>>,
    /// Every face of every solid.
    pub faces: Vec<CadFace>,
    /// The exposed area of all parts of a kind.
    pub groups: BTreeMap<String, f64>,
    /// The exposed area of the whole piece.
    pub total: f64,
    /// The exposed area of the whole piece as the surface of a mesh that another library made.
    pub mesh_total: Option<f64>,
    /// Faces whose division by sense was worked out by hand as well.
    #[serde(default)]
    pub by_hand: BTreeMap<String, BTreeMap<String, f64>>,
}

/// A tape reading as it was typed.
#[derive(Clone, Debug, Deserialize)]
pub struct TypedReading {
    /// The text.
    pub typed: String,
    /// The unit of a lone number.
    pub unit: String,
}

/// What the kernel leaves of one face of one solid.
#[derive(Clone, Debug, Deserialize)]
pub struct CadFace {
    /// The part and the side, such as `drawer-front-1-1/front`.
    pub face: String,
    /// What nothing lies against.
    pub exposed: f64,
    /// The same, divided by what it looks at.
    pub senses: BTreeMap<String, f64>,
}

impl CadFixture {
    /// The area of the piece that looks at the room, as the kernel divides it.
    pub fn outside_area(&self) -> f64 {
        self.faces
            .iter()
            .filter_map(|face| face.senses.get("outside"))
            .sum()
    }

    /// The piece, read in as a save file is.
    ///
    /// # Errors
    /// If the fixture has no piece, or the reader mends or leaves out anything of it.
    pub fn to_piece(&self) -> anyhow::Result<Rc<Piece>> {
        let piece = self
            .piece
            .as_ref()
            .with_context(|| format!("{} has no piece", self.name))?;
        let file = json!({"kind": workshop::format::KIND, "version": 3, "units": "us", "pieces": [piece]});
        let loaded = workshop::format::load(&file.to_string())?;
        ensure!(loaded.notices.is_empty(), "{}: {:?}", self.name, loaded.notices);
        let first = loaded.workshop.pieces.first();
        first
            .cloned()
            .with_context(|| format!("{}: no piece was read", self.name))
    }
}

/// Every fixture of the CAD kernel, in the order of their names.
///
/// # Errors
/// If the folder or a file cannot be read.
pub fn cad_fixtures() -> anyhow::Result<Vec<CadFixture>> {
    let folder = folder("../cad");
    let entries = std::fs::read_dir(&folder).with_context(|| folder.display().to_string())?;
    let mut paths: Vec<PathBuf> = entries
        .map(|entry| entry.map(|entry| entry.path()))
        .collect::<Result<_, _>>()?;
    paths.retain(|path| path.extension().is_some_and(|extension| extension == "json"));
    paths.sort();
    paths.iter().map(|path| read(path)).collect()
}

/// One fixture of the CAD kernel by its name.
///
/// # Errors
/// If the file cannot be read.
pub fn cad_fixture(name: &str) -> anyhow::Result<CadFixture> {
    read(&folder("../cad").join(name).with_extension("json"))
}

/// A file of `fixtures/` by its name.
///
/// # Errors
/// If the file cannot be read as what is wanted.
pub fn fixture<T: DeserializeOwned>(name: &str) -> anyhow::Result<T> {
    read(&folder("fixtures").join(name))
}

fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(name)
}

fn read<T: DeserializeOwned>(path: &Path) -> anyhow::Result<T> {
    let text = std::fs::read_to_string(path).with_context(|| path.display().to_string())?;
    serde_json::from_str(&text).with_context(|| path.display().to_string())
}
