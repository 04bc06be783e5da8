//! Format 2 of the save file: one scheme for a piece, of primer, paint and topcoat. It is read for ever and written no
//! more. All else that it saved has its place in format 3 as well.

use serde_json::Value;

use super::record::{Record, RecordError};
use super::{v1, v3};

/// Entries that came with later formats; what stands under such a name in a file of format 2 is none of them.
const NEW: [&str; 3] = ["ids", "edition", "shown"];

/// The step to format 3.
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
    use crate::{Workshop, invented_workshop, takeoff};
    use coatings::Substrate;

    /// The invented workshop as format 2 wrote it.
    const WRITTEN: &str = include_str!("../../tests/frozen/saved/file-2.json");
    /// The example that described format 2.
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
        assert!(takeoff(cupboard, &[], Default::default()).is_ok());
        // The bench had no scheme: it has the usual one of format 2, in which nothing was cleaned first.
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
