//! The tools of a compared way: whether the piece already uses them, and the edits that make it use them.

use std::rc::Rc;

use coatings::{Material, Stage};

use crate::document::{LayerPlan, OwnMaterial, Piece, material_of};
use crate::edit::{PieceEdit, SchemeEdit};
use crate::takeoff::WayColumn;

impl WayColumn {
    /// Returns true if the piece gets its coats of this stage with these tools.
    pub fn is_planned(&self, piece: &Piece, own: &[Rc<OwnMaterial>], stage: Stage) -> bool {
        layers(piece, own, stage).all(|(_, _, layer, _)| {
            (layer.tool, layer.narrow_tool.unwrap_or(layer.tool)) == (self.broad.key, self.narrow.key)
        })
    }

    /// Returns the edits that give the piece its coats of this stage with these tools, as far as they can apply
    /// them.
    pub fn edits(&self, piece: &Piece, own: &[Rc<OwnMaterial>], stage: Stage) -> Vec<PieceEdit> {
        let (broad, narrow) = (self.broad, self.narrow);
        let fit = layers(piece, own, stage).filter(|(.., material)| {
            broad.film(material.body).is_some() && narrow.film(material.body).is_some()
        });
        let edits = fit.flat_map(|(zone, place, ..)| {
            [
                SchemeEdit::Tool(place, broad.key),
                SchemeEdit::NarrowTool(place, Some(narrow.key)),
            ]
            .map(|edit| PieceEdit::Finish(zone.clone(), edit))
        });
        edits.collect()
    }
}

/// Returns the layers of a stage: the key of the zone with its own finish, the place, the layer and its material.
fn layers<'a>(
    piece: &'a Piece,
    own: &'a [Rc<OwnMaterial>],
    stage: Stage,
) -> impl Iterator<Item = (Option<String>, usize, &'a LayerPlan, Rc<Material>)> {
    let of_zones = piece.zones.iter();
    let of_zones = of_zones.filter_map(|(key, zone)| Some((Some(key.clone()), zone.scheme.as_ref()?)));
    let schemes = std::iter::once((None, &piece.scheme)).chain(of_zones);
    schemes.flat_map(move |(zone, scheme)| {
        let numbered = scheme.layers.iter().enumerate();
        numbered.filter_map(move |(place, layer)| {
            let material = material_of(own, &layer.material)?;
            (material.stage == stage).then(|| (zone.clone(), place, layer, material))
        })
    })
}
