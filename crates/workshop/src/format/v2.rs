//! Format 2 of the save file: one scheme for a piece, with primer, paint and topcoat. It is always read and
//! no longer written. All its other entries are also in format 3.

use serde_json::Value;

use super::record::{Record, RecordError};
use super::{v1, v3};

/// Entries of later formats. In a file of format 2, these names mean something else.
const NEW: [&str; 3] = ["ids", "edition", "shown"];

/// Converts a piece to format 3.
pub(super) fn piece(mut value: Value) -> Result<v3::PieceRecord, RecordError> {
    let mut scheme = None;
    if let Some(entries) = value.as_object_mut() {
        scheme = entries.remove("scheme");
        for name in NEW {
            entries.remove(name);
        }
    }
    let mut piece = v3::PieceRecord::read(value)?;
    let scheme = scheme.map(v1::SchemeRecord::read).transpose()?;
    piece.scheme = scheme.unwrap_or_default().into();
    Ok(piece)
}

#[cfg(test)]
mod tests {
    use crate::document::Colour;
    use crate::format::{Loaded, load, save};
    use crate::samples::takeoff;
    use crate::{Workshop, invented_workshop};
    use coatings::Substrate;

    /// The sample workshop as format 2 wrote it.
    const WRITTEN: &str = include_str!("../../tests/frozen/saved/file-2.json");
    /// The example from the description of format 2.
    const EXAMPLE: &str = include_str!("../../tests/frozen/saved/file-2-example.json");

    #[test]
    fn what_format_2_wrote_is_the_same_workshop() {
        let Loaded { workshop, notices } = load(WRITTEN).unwrap();
        assert!(notices.is_empty(), "{notices:?}");
        assert_eq!(load(&save(&workshop)).unwrap().workshop, workshop);
        // The note was reworded since.
        let note = workshop.note.clone();
        let invented = Workshop {
            note,
            ..invented_workshop()
        };
        assert_eq!(workshop.told(), invented);
    }

    #[test]
    fn the_scheme_of_format_2_is_kept() {
        let Loaded { workshop, notices } = load(EXAMPLE).unwrap();
        assert!(notices.is_empty(), "{notices:?}");
        let cupboard = &workshop.pieces[0];
        let scheme = &cupboard.scheme;
        assert_eq!(
            (scheme.colour, scheme.condition.substrate),
            (Colour([0x4a, 0x6b, 0x61]), Substrate::Porous)
        );
        let shelf = crate::stock::stock(&workshop);
        let can = |layer: &crate::document::LayerPlan| {
            let mut cans = shelf
                .iter()
                .filter(|stock| *stock.material.key == *layer.material);
            cans.find_map(|stock| Some(stock.can?.key))
        };
        let layers: Vec<_> = scheme
            .layers
            .iter()
            .map(|layer| (&*layer.material, layer.coats, layer.tool, can(layer)))
            .collect();
        assert_eq!(
            layers,
            [
                ("bonding-primer", 1, "brush", Some("us-quart")),
                ("trim-enamel", 2, "foam-roller", Some("us-8-fl-oz")),
                ("water-polyurethane", 0, "brush", Some("us-quart")),
            ]
        );
        assert_eq!(cupboard.zones["blue"].name, "Blue");
        assert!(takeoff(cupboard).is_ok());
        // The bench had no scheme, so it gets the default of format 2, without a cleaner.
        let bench = workshop.pieces[1].scheme.layers.iter();
        let bench = bench.map(|layer| (&*layer.material, layer.coats, layer.tool));
        assert!(bench.eq([
            ("bonding-primer", 1, "brush"),
            ("trim-enamel", 2, "brush"),
            ("water-polyurethane", 2, "brush"),
        ]));
        assert_eq!(shelf.len(), 3);
    }

    #[test]
    fn an_unknown_word_of_format_2_is_said() {
        let text = EXAMPLE.replace("\"trim-enamel\"", "\"glitter\"");
        let Loaded { notices, .. } = load(&text).unwrap();
        assert_eq!(notices.len(), 1, "{notices:?}");
        assert!(notices[0].to_string().contains("glitter"), "{notices:?}");
    }
}
