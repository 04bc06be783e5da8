//! The finish of a piece as a job: the schemes of its zones over their areas.

use coatings::{Job, Layer, Substrate, ZoneWork};
use units::Length;

use super::Stores;
use super::areas::Areas;
use crate::document::{LayerPlan, Piece, Scheme, material_of};
use crate::learning::own_rates;

/// The job that the whole set is.
pub(super) fn job(piece: &Piece, stores: Stores<'_>, areas: Areas<'_>) -> Job {
    let mut patches = areas.patches.into_iter();
    let zones = areas.zones.iter().map(|key| {
        let scheme = piece.scheme_of(key);
        ZoneWork {
            key: (*key).to_owned(),
            patches: patches.by_ref().take(2).collect(),
            edges: Length::ZERO,
            substrate: match scheme.suggestion(stores.materials).wants_bare_wood() {
                // The first coat goes onto what is under the old finish.
                true if scheme.condition.substrate != Substrate::Laminate => Substrate::Bare,
                _ => scheme.condition.substrate,
            },
            basis: scheme.basis,
            layers: layers(scheme, stores),
        }
    });
    Job {
        // Pieces that are alike get the same answer, whatever they are called. The errors of one kind hang together, like
        // those of a set.
        name: piece.kind.key().into(),
        zones: zones.collect(),
    }
}

fn layers(scheme: &Scheme, stores: Stores<'_>) -> Vec<Layer> {
    let layer = |plan: &LayerPlan| {
        let material = material_of(stores.materials, &plan.material)?;
        let tool = coatings::tool(plan.tool)?;
        Some(Layer {
            colour: material.coloured.then_some(scheme.colour.0),
            own_rates: own_rates(stores.lessons, &plan.material, material.basis(scheme.basis)),
            material,
            coats: plan.coats,
            tool,
            narrow_tool: plan.narrow_tool.and_then(coatings::tool).unwrap_or(tool),
            thinned: f64::from(plan.thinned) / 100.0,
        })
    };
    scheme.layers.iter().filter_map(layer).collect()
}
