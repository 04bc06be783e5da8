//! Format 1 of the save file: drawers in one case of boards. It is read for ever and written no more. What
//! stands in this file never changes: a new format gets a file of its own, and a step from this one to it.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

use super::{map_of, v2};

/// What format 1 saved of a piece. What it saved of a workshop has not changed since.
#[derive(Deserialize)]
pub(super) struct PieceRecord {
    id: String,
    #[serde(default)]
    name: String,
    #[serde(default = "one")]
    count: u64,
    furniture: String,
    #[serde(default)]
    readings: BTreeMap<String, ReadingRecord>,
    #[serde(default)]
    rows: Vec<RowRecord>,
    fronts: Option<String>,
    back: Option<String>,
    base: Option<String>,
    #[serde(default)]
    surfaces: BTreeMap<String, bool>,
    #[serde(default)]
    scheme: SchemeRecord,
    #[serde(flatten)]
    beyond: Map<String, Value>,
}

pub(super) fn one() -> u64 {
    1
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub(super) struct ReadingRecord {
    pub(super) typed: String,
    pub(super) unit: String,
}

#[derive(Deserialize)]
struct RowRecord {
    columns: u64,
    height: Option<ReadingRecord>,
}

#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub(super) struct SchemeRecord {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) colour: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) ground: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) basis: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) primer: Option<StageRecord>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) paint: Option<StageRecord>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) topcoat: Option<StageRecord>,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub(super) struct StageRecord {
    pub(super) material: String,
    pub(super) coats: u64,
    pub(super) tool: String,
    pub(super) can: String,
}

/// Entries that came with format 2; what stands under such a name in a file of format 1 is none of them.
const NEW: [&str; 6] = ["styles", "counts", "bays", "upper", "changes", "zones"];

/// The step to format 2.
impl From<PieceRecord> for v2::PieceRecord {
    fn from(old: PieceRecord) -> Self {
        let styles = [("fronts", old.fronts), ("back", old.back), ("base", old.base)];
        let rows: Vec<_> = old.rows.into_iter().map(Into::into).collect();
        let surfaces = old.surfaces.into_iter().map(|(name, painted)| {
            let painted = Some(painted);
            (name, v2::SurfaceRecord { zone: None, painted })
        });
        let mut beyond = old.beyond;
        for name in NEW {
            beyond.remove(name);
        }
        v2::PieceRecord {
            id: old.id,
            name: old.name,
            count: old.count,
            furniture: old.furniture,
            readings: old.readings,
            styles: map_of(
                styles
                    .into_iter()
                    .filter_map(|(choice, answer)| Some((choice.into(), answer?))),
            ),
            counts: BTreeMap::new(),
            bays: (!rows.is_empty()).then(|| vec![v2::BayRecord { width: None, rows }]),
            upper: vec![],
            changes: vec![],
            zones: BTreeMap::new(),
            surfaces: map_of(surfaces),
            scheme: old.scheme,
            beyond,
        }
    }
}

/// Every row was one of drawers.
impl From<RowRecord> for v2::RowRecord {
    fn from(old: RowRecord) -> Self {
        v2::RowRecord {
            fill: None,
            columns: old.columns,
            shelves: 0,
            height: old.height,
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::document::SurfaceChoice;
    use crate::format::{Loaded, load, save};
    use crate::{invented_workshop, takeoff};
    use geometry::styles;

    /// The invented workshop as format 1 wrote it.
    const WRITTEN: &str = include_str!("v1-invented.json");

    #[test]
    fn what_format_1_wrote_is_the_same_workshop() {
        let Loaded { workshop, notices } = load(WRITTEN).unwrap();
        assert!(notices.is_empty(), "{notices:?}");
        let now = invented_workshop();
        assert_eq!(workshop, now);
        assert_eq!(load(&save(&workshop)).unwrap().workshop, now);
        let painted = workshop
            .pieces
            .iter()
            .map(|piece| takeoff(piece).unwrap().painted.area);
        // Square metres, as the CAD kernel finds them (tests/cad); the general polygon boolean works on a grid of some
        // nanometres, and the version that wrote the file was 2e-9 off as well.
        for (area, kernel) in painted.zip([3.046_929_39, 2.080_721_645]) {
            assert!((area.as_square_metres() - kernel).abs() < 5e-9, "{area:?}");
        }
    }

    #[test]
    fn choices_of_format_1_are_kept() {
        let text = WRITTEN.replace("\"overlay\"", "\"inset\"").replace(
            "\"base\": \"plinth\",",
            "\"base\": \"plinth\", \"surfaces\": {\"top/top\": false}, \"zones\": 7, \"photo\": 1,",
        );
        let Loaded { workshop, notices } = load(&text).unwrap();
        assert!(notices.is_empty(), "{notices:?}");
        let dresser = &workshop.pieces[0];
        let left = SurfaceChoice {
            zone: None,
            painted: Some(false),
        };
        assert_eq!(dresser.choices.get("top/top"), Some(&left));
        assert_eq!(styles::FRONTS.of(&dresser.styles).key, "inset");
        assert_eq!(dresser.beyond.keys().collect::<Vec<_>>(), ["photo"]);
    }
}
