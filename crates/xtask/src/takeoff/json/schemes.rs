//! The scheme of a piece or a zone, in the words of save files.

use coatings::Basis;
use serde_json::{Value, json};
use workshop::{LayerPlan, Scheme};

pub fn scheme(scheme: &Scheme) -> Value {
    json!({
        "colour": scheme.colour.write(),
        "ground": scheme.condition.ground.key(),
        "basis": match scheme.basis {
            Basis::WetFilm => "wet-film",
            Basis::LabelRate => "label-rate",
        },
        "layers": scheme.layers.iter().map(layer).collect::<Vec<_>>(),
    })
}

fn layer(layer: &LayerPlan) -> Value {
    json!({
        "material": &*layer.material,
        "coats": layer.coats,
        "tool": layer.tool,
        "narrow_tool": layer.narrow_tool,
        "thinned_percent": layer.thinned,
        "can": layer.can,
        "level": layer.level,
    })
}
