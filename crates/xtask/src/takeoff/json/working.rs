//! How each amount comes about, as JSON; each value has its unit beside it.

use coatings::{LayerWorking, NeedWorking, Quantity, Working};
use serde_json::{Value, json};
use workshop::Takeoff;

/// The working of every amount of a takeoff.
pub fn of(takeoff: &Takeoff) -> Value {
    let workings = takeoff.materials.iter().filter_map(|line| {
        let working = takeoff.working_of(line)?;
        Some(json!({
            "id": line.id,
            "layers": working.layers.iter().map(|of| layer(takeoff, of)).collect::<Vec<_>>(),
            "kept": kept(&working),
            "sum_l": working.litres,
        }))
    });
    workings.collect()
}

fn layer(takeoff: &Takeoff, layer: &LayerWorking) -> Value {
    let zone = takeoff.job.zones.get(layer.zone);
    json!({
        "zone": zone.map(|zone| zone.key.clone()),
        "layer": layer.layer,
        "narrow": layer.narrow,
        "litres": formula(&layer.litres),
        "dry_film": layer.dry_film.as_ref().map(formula),
    })
}

fn kept(working: &NeedWorking) -> Value {
    working.kept.iter().map(quantity).collect()
}

fn formula(working: &Working) -> Value {
    json!({
        "formula": working.formula,
        "terms": working.terms.iter().map(quantity).collect::<Vec<_>>(),
        "result": quantity(&working.result),
    })
}

fn quantity(quantity: &Quantity) -> Value {
    json!({
        "symbol": quantity.symbol,
        "meaning": quantity.meaning,
        "value": quantity.value,
        "standard_uncertainty": quantity.standard_uncertainty,
        "unit": quantity.measure.sign(),
        "source": quantity.source.map(|(source, _)| source),
        "certainty": quantity.source.map(|(_, certainty)| certainty.label()),
    })
}
