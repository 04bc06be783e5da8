//! The calculation of each amount. Each value has a unit.

use coatings::{DemandWorking, LayerWorking, Quantity, Working};
use serde::Serialize;

use super::materials::zone_key;
use crate::takeoff::Takeoff;

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct WorkingReport {
    id: String,
    layers: Vec<LayerReport>,
    kept: Vec<QuantityReport>,
    sum_litres: f64,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct LayerReport {
    zone: String,
    layer: usize,
    narrow: bool,
    litres: FormulaReport,
    dry_film: Option<FormulaReport>,
}

#[derive(Clone, Debug, Serialize)]
struct FormulaReport {
    formula: &'static str,
    terms: Vec<QuantityReport>,
    result: QuantityReport,
}

#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "camelCase")]
struct QuantityReport {
    symbol: &'static str,
    meaning: String,
    value: f64,
    standard_uncertainty: f64,
    unit: &'static str,
    source: Option<&'static str>,
    certainty: Option<&'static str>,
}

/// Returns the calculation of every amount in a takeoff.
pub(super) fn workings(takeoff: &Takeoff) -> Vec<WorkingReport> {
    let workings = takeoff.materials.iter().filter_map(|line| {
        let working = takeoff.working_of(line)?;
        Some(WorkingReport::of(takeoff, line.id.clone(), &working))
    });
    workings.collect()
}

impl WorkingReport {
    fn of(takeoff: &Takeoff, id: String, working: &DemandWorking) -> Self {
        WorkingReport {
            id,
            layers: working
                .layers
                .iter()
                .map(|layer| LayerReport::of(takeoff, layer))
                .collect(),
            kept: working.kept.iter().map(QuantityReport::of).collect(),
            sum_litres: working.litres,
        }
    }
}

impl LayerReport {
    fn of(takeoff: &Takeoff, layer: &LayerWorking) -> Self {
        LayerReport {
            zone: zone_key(takeoff, layer.zone),
            layer: layer.layer,
            narrow: layer.narrow,
            litres: FormulaReport::of(&layer.litres),
            dry_film: layer.dry_film.as_ref().map(FormulaReport::of),
        }
    }
}

impl FormulaReport {
    fn of(working: &Working) -> Self {
        FormulaReport {
            formula: working.formula,
            terms: working.terms.iter().map(QuantityReport::of).collect(),
            result: QuantityReport::of(&working.result),
        }
    }
}

impl QuantityReport {
    fn of(quantity: &Quantity) -> Self {
        QuantityReport {
            symbol: quantity.symbol,
            meaning: quantity.meaning.to_string(),
            value: quantity.value,
            standard_uncertainty: quantity.standard_uncertainty,
            unit: quantity.measure.sign(),
            source: quantity.source.map(|(source, _)| source),
            certainty: quantity.source.map(|(_, certainty)| certainty.label()),
        }
    }
}
