//! The takeoff of a whole workshop for programs. The command line prints it as JSON, and the script module
//! returns it.
//!
//! The name of each value ends in its unit: meters, square meters, liters or minutes. A finish uses the words
//! of the save file. `crates/script/module/coatwright.d.ts` documents each entry.

mod materials;
mod piece;
mod surfaces;
mod ways;
mod working;

use std::rc::Rc;

use geometry::Problem;
use serde::Serialize;

use crate::Analysis;
use crate::document::{Colour, Workshop};
use crate::format::Loaded;
use crate::takeoff::Shopping;
use materials::ToBuy;
pub use materials::verdict_word;
use piece::PieceReport;

/// The takeoff of every piece, and what to buy for all of them. It is only serialized.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Report {
    title: String,
    currency: Option<String>,
    confidence_percent: u32,
    pieces: Vec<PieceReport>,
    together: Vec<Together>,
    mended: Vec<String>,
}

/// The amount of one material for all pieces.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct Together {
    material: String,
    name: String,
    colour: Option<String>,
    pieces: Vec<String>,
    likely_litres: f64,
    to_buy: ToBuy,
}

/// Returns the takeoff of every piece in a file and the repairs made when it was loaded. With `working`, each
/// amount includes its calculation.
pub fn report(loaded: &Loaded, working: bool) -> Report {
    let analysis = Analysis::of(Rc::new(loaded.workshop.clone()));
    let workshop = analysis.workshop();
    Report {
        title: workshop.title.clone(),
        currency: workshop.settings.currency.map(|currency| currency.code().into()),
        confidence_percent: workshop.settings.confidence.percent(),
        pieces: (workshop.pieces.iter())
            .map(|piece| PieceReport::of(&analysis, piece, working))
            .collect(),
        together: analysis.shopping(&[]).iter().map(Together::of).collect(),
        mended: loaded.notices.iter().map(ToString::to_string).collect(),
    }
}

impl Together {
    fn of(line: &Shopping) -> Self {
        Together {
            material: line.material.key.to_string(),
            name: line.material.name.to_string(),
            colour: line.colour.map(|colour| Colour(colour).write()),
            pieces: line.pieces.clone(),
            likely_litres: line.likely.as_litres(),
            to_buy: ToBuy::of(&line.buy),
        }
    }
}

/// Returns why a piece has no takeoff, in sentences with lengths in the maker's units.
fn messages(workshop: &Workshop, problems: &[Problem]) -> Vec<String> {
    let show = |length| units::show_length(length, workshop.units);
    problems.iter().map(|problem| problem.message(show)).collect()
}

#[cfg(test)]
mod tests;
