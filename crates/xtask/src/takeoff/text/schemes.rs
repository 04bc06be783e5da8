//! The scheme of the piece, and of zones that are finished otherwise.

use coatings::{Basis, tool};
use workshop::{LayerPlan, Piece, Scheme, Takeoff, Workshop, material_of};

use super::show::{short, wrapped};
use super::zones::zone_label;

/// The longest name of a material within a scheme, in characters.
const MATERIAL_NAME: usize = 40;

/// What goes onto the piece, and onto each zone that has a scheme of its own.
pub fn of_zones(workshop: &Workshop, piece: &Piece, takeoff: &Takeoff) -> String {
    let line = |of: &str, scheme| wrapped(&format!("{of}: {}", words(workshop, scheme)), 2);
    let own = takeoff.zones.iter().filter_map(|zone| {
        let scheme = piece.zones.get(&zone.key)?.scheme.as_ref()?;
        let of = format!("Scheme of its own, {}", zone_label(&zone.label));
        Some(line(&of, scheme))
    });
    std::iter::once(line("Scheme of the piece", &piece.scheme))
        .chain(own)
        .collect()
}

fn words(workshop: &Workshop, scheme: &Scheme) -> String {
    let basis = match scheme.basis {
        Basis::WetFilm => "by the tool's film",
        Basis::LabelRate => "by the label's rate",
    };
    let planned = scheme.layers.iter().filter(|layer| layer.coats > 0);
    let layers: Vec<String> = planned.map(|layer| layer_words(workshop, layer)).collect();
    let layers = if layers.is_empty() {
        "nothing".into()
    } else {
        layers.join(", ")
    };
    format!(
        "{layers}; onto: {}; colour {}; {basis}.",
        scheme.condition.ground.label().to_lowercase(),
        scheme.colour.write()
    )
}

fn layer_words(workshop: &Workshop, layer: &LayerPlan) -> String {
    let material = material_of(&workshop.materials, &layer.material);
    let name = material.map_or_else(|| layer.material.to_string(), |known| known.name.to_string());
    let tools = std::iter::once(layer.tool).chain(layer.narrow_tool);
    let tools: Vec<&str> = tools.filter_map(tool).map(|tool| tool.name).collect();
    format!(
        "{} \u{d7} {} ({})",
        layer.coats,
        short(&name, MATERIAL_NAME),
        tools.join(", narrow parts ")
    )
}
