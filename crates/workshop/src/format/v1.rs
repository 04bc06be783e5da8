//! Format 1 of the save file: drawers in one case of boards. It is always read and no longer written. This
//! file never changes. A new format gets a file of its own, and a conversion from this one.

use super::record::{Named, Readable, records};
use super::v3::{self, ReadingRecord};
use geometry::Edition;

records! {
    /// A piece in format 1. The entries of a workshop have not changed since.
    pub(super) struct PieceRecord {
        must id: String;
        kept name: String;
        kept count: u64 = 1;
        must furniture: String;
        kept readings: Named<ReadingRecord>;
        kept rows: Vec<RowRecord>;
        kept fronts: Option<String>;
        kept back: Option<String>;
        kept base: Option<String>;
        kept surfaces: Named<bool>;
        kept scheme: Option<SchemeRecord>;
        ..beyond;
    }

    struct RowRecord {
        must columns: u64;
        kept height: Option<ReadingRecord>;
    }

    #[derive(Default)]
    pub(super) struct SchemeRecord {
        kept colour: Option<String>;
        kept ground: Option<String>;
        kept basis: Option<String>;
        kept primer: Option<StageRecord>;
        kept paint: Option<StageRecord>;
        kept topcoat: Option<StageRecord>;
    }

    pub(super) struct StageRecord {
        must material: String;
        must coats: u64;
        must tool: String;
        must can: String;
    }
}

/// Entries of later formats. In a file of format 1, these names mean something else.
const NEW: [&str; 10] = [
    "ids", "edition", "shown", "styles", "counts", "bays", "upper", "changes", "zones", "books",
];

/// Converts a piece to format 3.
impl From<PieceRecord> for v3::PieceRecord {
    fn from(old: PieceRecord) -> Self {
        let styles = [("fronts", old.fronts), ("back", old.back), ("base", old.base)];
        let rows: Vec<_> = old.rows.into_iter().map(Into::into).collect();
        let surfaces = old.surfaces.0.into_iter().map(|(name, painted)| {
            let painted = Some(painted);
            (name, v3::SurfaceRecord { zone: None, painted })
        });
        let mut beyond = old.beyond;
        for name in NEW {
            beyond.remove(name);
        }
        v3::PieceRecord {
            id: old.id,
            name: old.name,
            count: old.count,
            furniture: old.furniture,
            ids: 0,
            edition: v3::EditionNumber(Edition::First),
            shown: None,
            readings: old.readings,
            styles: styles
                .into_iter()
                .filter_map(|(choice, answer)| Some((choice.into(), answer?)))
                .collect(),
            counts: Named::default(),
            bays: (!rows.is_empty()).then(|| {
                vec![v3::BayRecord {
                    id: 0,
                    width: None,
                    rows,
                }]
            }),
            upper: vec![],
            changes: vec![],
            zones: Named::default(),
            surfaces: surfaces.collect(),
            scheme: old.scheme.unwrap_or_default().into(),
            books: Named::default(),
            beyond,
        }
    }
}

/// The default coats of formats 1 and 2, all applied with a brush.
const USUAL: [(&str, u64); 3] = [
    ("bonding-primer", 1),
    ("trim-enamel", 2),
    ("water-polyurethane", 2),
];

/// Converts a primer, a paint and a topcoat to three layers. A missing one was the default of that time.
/// Unwritten cans are not on hand, because those formats only asked if a can was enough.
impl From<SchemeRecord> for v3::SchemeRecord {
    fn from(old: SchemeRecord) -> Self {
        let stages = [old.primer, old.paint, old.topcoat].into_iter().zip(USUAL);
        let layers = stages.map(|(stage, (material, coats))| {
            let usual = StageRecord {
                material: material.into(),
                coats,
                tool: "brush".into(),
                can: String::new(),
            };
            let stage = stage.unwrap_or(usual);
            v3::LayerRecord {
                id: 0,
                material: stage.material,
                coats: stage.coats,
                tool: stage.tool,
                narrow: None,
                thinned: 0,
                can: Some(stage.can),
                level: None,
            }
        });
        v3::SchemeRecord {
            colour: old.colour,
            ground: old.ground,
            basis: old.basis,
            layers: Some(layers.map(|layer| Readable(Some(layer))).collect()),
            ..v3::SchemeRecord::default()
        }
    }
}

/// Every row held drawers.
impl From<RowRecord> for v3::RowRecord {
    fn from(old: RowRecord) -> Self {
        v3::RowRecord {
            id: 0,
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
    use crate::samples::takeoff;
    use crate::{Workshop, invented_workshop};
    use geometry::styles;

    /// The sample workshop as format 1 wrote it.
    const WRITTEN: &str = include_str!("../../tests/frozen/saved/file-1.json");

    #[test]
    fn what_format_1_wrote_is_the_same_workshop() {
        let Loaded { workshop, notices } = load(WRITTEN).unwrap();
        assert!(notices.is_empty(), "{notices:?}");
        assert_eq!(load(&save(&workshop)).unwrap().workshop, workshop);
        // The note was reworded since.
        let note = workshop.note.clone();
        let invented = Workshop {
            note,
            ..invented_workshop()
        };
        assert_eq!(workshop.clone().told(), invented);
        let painted = workshop
            .pieces
            .iter()
            .map(|piece| takeoff(piece).unwrap().painted.value);
        // Square meters from the CAD kernel (tests/cad). The general polygon boolean has a grid of a few
        // nanometers, and the version that wrote the file was off by 2e-9 too.
        for (area, kernel) in painted.zip([3.046_929_39, 2.080_721_645]) {
            assert!((area.as_square_metres() - kernel).abs() < 5e-9, "{area:?}");
        }
    }

    #[test]
    fn what_format_1_left_out_is_what_was_usual_in_its_time() {
        let one = |scheme: &str| {
            let text = format!(
                "{{\"kind\": \"coatwright-workshop\", \"version\": 1, \"pieces\": [{{\"id\": \"a\", \"furniture\": \"nightstand\"{scheme}}}]}}"
            );
            let Loaded { workshop, notices } = load(&text).unwrap();
            assert!(notices.is_empty(), "{notices:?}");
            let shelf = crate::stock::stock(&workshop);
            let can = |material: &str| {
                let stock = shelf.iter().find(|stock| *stock.material.key == *material);
                stock.and_then(|stock| Some(stock.can?.key))
            };
            let layers = workshop.pieces[0].scheme.layers.iter();
            let layers = layers.map(|layer| {
                (
                    layer.material.to_string(),
                    layer.coats,
                    layer.tool,
                    can(&layer.material),
                )
            });
            layers.collect::<Vec<_>>()
        };
        let layer = |key: &str, coats, tool, can| (key.to_owned(), coats, tool, can);
        let primer = || layer("bonding-primer", 1, "brush", None);
        let topcoat = || layer("water-polyurethane", 2, "brush", None);
        let usual = [primer(), layer("trim-enamel", 2, "brush", None), topcoat()];
        assert_eq!(one(""), usual);
        assert_eq!(one(", \"scheme\": {}"), usual);
        let paint = ", \"scheme\": {\"paint\": {\"material\": \"chalk-type-paint\", \"coats\": 3, \"tool\": \"foam-roller\", \"can\": \"us-quart\"}}";
        assert!(coatings::material("chalk-type-paint").is_some());
        let painted = layer("chalk-type-paint", 3, "foam-roller", Some("us-quart"));
        assert_eq!(one(paint), [primer(), painted, topcoat()]);
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
