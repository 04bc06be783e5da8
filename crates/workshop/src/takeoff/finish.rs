//! The finish of a piece as a job: the schemes of its zones over their areas.

use std::rc::Rc;

use coatings::{Job, Layer, Substrate, ZoneWork};
use units::Length;

use super::areas::Areas;
use crate::document::{LayerPlan, OwnMaterial, Piece, Scheme, material_of};
use crate::learning::{Lesson, own_rates};

/// Returns the job of the whole set.
pub(super) fn job(piece: &Piece, own: &[Rc<OwnMaterial>], lessons: &[Lesson], areas: Areas<'_>) -> Job {
    let mut patches = areas.patches.into_iter();
    let zones = areas.zones.iter().map(|key| {
        let scheme = piece.scheme_of(key);
        ZoneWork {
            key: (*key).to_owned(),
            patches: patches.by_ref().take(2).collect(),
            edges: Length::ZERO,
            substrate: match scheme.suggestion(own).wants_bare_wood() {
                // The old finish comes off before the first coat.
                true if scheme.condition.substrate != Substrate::Laminate => Substrate::Bare,
                _ => scheme.condition.substrate,
            },
            basis: scheme.basis,
            layers: layers(scheme, own, lessons),
        }
    });
    Job {
        // The trials are seeded by this name. Identical pieces get the same answer under any name, and the
        // errors of one kind are correlated, like those of a set.
        name: piece.kind.key().into(),
        zones: zones.collect(),
    }
}

fn layers(scheme: &Scheme, own: &[Rc<OwnMaterial>], lessons: &[Lesson]) -> Vec<Layer> {
    let layer = |plan: &LayerPlan| {
        let material = material_of(own, &plan.material)?;
        let tool = coatings::tool(plan.tool)?;
        Some(Layer {
            colour: material.coloured.then_some(scheme.colour.0),
            own_rates: own_rates(lessons, &plan.material, material.basis(scheme.basis)),
            material,
            coats: plan.coats,
            tool,
            narrow_tool: plan.narrow_tool.and_then(coatings::tool).unwrap_or(tool),
            thinned: f64::from(plan.thinned) / 100.0,
        })
    };
    scheme.layers.iter().filter_map(layer).collect()
}
