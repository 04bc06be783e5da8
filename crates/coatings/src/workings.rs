//! The working of what a job needs of each material, and of the dry films.

use crate::cause::UncertainInput;
use crate::dry_film::DryFilm;
use crate::job::{Job, Layer};
use crate::model::{Consumption, Lot, Model, Term};
use crate::tool::ToolKind;
use crate::working::{Measure, Quantity, Working, figure, given};

/// The working of what one layer takes of one area.
#[derive(Clone, Debug, PartialEq)]
pub struct LayerWorking {
    /// The zone, by its number in the job.
    pub zone: usize,
    /// The layer, by its number in the zone.
    pub layer: usize,
    /// Whether it is of narrow parts.
    pub narrow: bool,
    /// How the liters are worked out.
    pub litres: Working,
    /// How the dry film comes about, if there is one.
    pub dry_film: Option<Working>,
}

/// The working of what a job needs of one material.
#[derive(Clone, Debug, PartialEq)]
pub struct DemandWorking {
    /// What each layer takes of each area.
    pub layers: Vec<LayerWorking>,
    /// What each place in the tools keeps.
    pub kept: Vec<Quantity>,
    /// The sum of both, at the best estimates, liters.
    pub litres: f64,
}

const BY_FILM: &str = "area * (first + coats - 1) * film / (spread * transfer * narrow * (1 + thinner))";
const BY_LABEL: &str = "area * (first + coats - 1) / rate";
const BY_LABEL_SPRAYED: &str = "area * (first + coats - 1) / rate * ordinary / (transfer * narrow)";
const DRY_BY_FILM: &str = "film * solids * coats / (1 + thinner)";
const DRY_BY_LABEL: &str = "spread * solids * coats / rate";

/// The workings of all that a job needs, in the order of [`demands`](crate::demands).
pub fn workings(job: &Job) -> Vec<DemandWorking> {
    let model = Model::of(job);
    model.lots.iter().map(|lot| of_lot(job, &model, lot)).collect()
}

fn of_lot(job: &Job, model: &Model, lot: &Lot) -> DemandWorking {
    let layers: Vec<LayerWorking> = lot.terms.iter().map(|term| of_term(job, model, term)).collect();
    let kept: Vec<Quantity> = lot
        .kept
        .iter()
        .map(|place| quantity("kept", &model.inputs[*place], Measure::Litres))
        .collect();
    let litres = layers.iter().map(|layer| layer.litres.result.value);
    DemandWorking {
        litres: litres.sum::<f64>() + kept.iter().map(|kept| kept.value).sum::<f64>(),
        layers,
        kept,
    }
}

fn quantity(symbol: &'static str, uncertain: &UncertainInput, measure: Measure) -> Quantity {
    Quantity {
        symbol,
        meaning: uncertain.cause.label().into(),
        value: uncertain.input.distribution.mean(),
        standard_uncertainty: uncertain.input.distribution.standard_uncertainty(),
        measure,
        source: Some((uncertain.source, uncertain.certainty)),
    }
}

/// A share that stays on the piece. Its cause speaks of what is lost.
fn share(symbol: &'static str, input: &UncertainInput) -> Quantity {
    let meaning = match symbol {
        "transfer" => "share that stays on the piece",
        "narrow" => "share of that on narrow parts",
        _ => "share that stays with a brush or roller, already in the label's rate",
    };
    Quantity {
        meaning: meaning.into(),
        ..quantity(symbol, input, Measure::Share)
    }
}

fn of_term(job: &Job, model: &Model, term: &Term) -> LayerWorking {
    let patch = &model.patches[term.patch];
    let zone = &job.zones[term.zone];
    let layer = &zone.layers[term.layer];
    let input = |place: usize| &model.inputs[place];
    let mut area = given("area", "area of this group", patch.area, Measure::SquareMetres);
    area.standard_uncertainty = patch.standard_uncertainty();
    let first = match term.first_coat {
        Some(factor) => quantity("first", input(factor), Measure::Share),
        None => given(
            "first",
            "first coat takes the same as the others",
            1.0,
            Measure::Share,
        ),
    };
    let coats = given("coats", "coats", f64::from(term.coats), Measure::Count);
    let (formula, wet) = match term.consumption {
        Consumption::Film(film) => (BY_FILM, quantity("film", input(film), Measure::Film)),
        Consumption::Rate(rate) => {
            let sprayed = term.gain.is_some();
            let formula = if sprayed { BY_LABEL_SPRAYED } else { BY_LABEL };
            (formula, quantity("rate", input(rate), Measure::Rate))
        }
    };
    let mut terms = vec![area, first, coats, wet.clone()];
    for (loss, symbol) in term.losses.iter().zip(["transfer", "narrow"]) {
        terms.push(share(symbol, input(*loss)));
    }
    if term.losses.len() == 1 {
        terms.push(given(
            "narrow",
            "no extra loss on broad parts",
            1.0,
            Measure::Share,
        ));
    }
    if let Some(ordinary) = term.gain {
        terms.push(share("ordinary", input(ordinary)));
    }
    if formula == BY_FILM {
        terms.extend([spread(), thinner(term)]);
    }
    let mean = |place: usize| model.inputs[place].input.distribution.mean();
    let litres = term.on_piece(mean, patch.area) * term.lost_factor(mean);
    let narrow = patch.narrow;
    // A sprayer's own rate includes overspray and says nothing about the film.
    let knows_no_film = term.tool.kind == ToolKind::Sprayer && layer.own_rate(term.tool).is_some();
    LayerWorking {
        zone: term.zone,
        layer: term.layer,
        narrow,
        litres: Working::by(
            formula,
            terms,
            given("amount", "amount for this group", litres, Measure::Litres),
        ),
        dry_film: DryFilm::of(layer, zone.basis, narrow)
            .filter(|_| !knows_no_film)
            .map(|film| dry_film(&film, layer, term, &wet)),
    }
}

/// How the dry film of a layer is worked out. `wet` is the film or the rate behind its liters.
fn dry_film(film: &DryFilm, layer: &Layer, term: &Term, wet: &Quantity) -> Working {
    let by_film = wet.measure == Measure::Film;
    let mut terms = vec![
        wet.clone(),
        figure(
            "solids",
            "volume solids",
            layer.material.volume_solids,
            Measure::Share,
        ),
        given("coats", "coats", f64::from(term.coats), Measure::Count),
    ];
    terms.push(if by_film { thinner(term) } else { spread() });
    let thickness = film.thickness();
    let mut result = given(
        "dry",
        "total dry film",
        thickness.value.as_metres(),
        Measure::Film,
    );
    result.standard_uncertainty = thickness.standard_uncertainty.as_metres();
    Working::by(if by_film { DRY_BY_FILM } else { DRY_BY_LABEL }, terms, result)
}

/// What makes a volume of an area and a film, so that a formula holds in the maker's units too: 1604 ft² for each
/// gallon at 1 mil, 1000 m² for each liter at 1 µm.
fn spread() -> Quantity {
    given(
        "spread",
        "area that a film of 1 covers, exact",
        0.001,
        Measure::Spread,
    )
}

fn thinner(term: &Term) -> Quantity {
    given(
        "thinner",
        "thinner added, as a share of the paint",
        term.thinned,
        Measure::Share,
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::basis::Basis;
    use crate::demand::demands;
    use crate::examples::{broad, job, layer, narrow, zone};
    use crate::job::OwnRate;
    use crate::sourced_range::SourcedRange;
    use crate::substrate::Substrate;
    use crate::working::holds;

    #[test]
    fn every_formula_gives_the_result_that_stands_beside_it() {
        let mut job = job(vec![
            zone(
                "body",
                vec![broad(1.5), narrow(0.3)],
                vec![
                    layer("degreaser", 1, "pad"),
                    layer("shellac-primer", 1, "brush"),
                    layer("trim-enamel", 2, "hvlp"),
                    layer("clear-wax", 1, "pad"),
                ],
            ),
            zone(
                "top",
                vec![broad(0.6)],
                vec![
                    layer("brush-on-stain", 1, "brush"),
                    layer("oil-polyurethane", 3, "hvlp"),
                    layer("water-polyurethane", 1, "hvlp"),
                ],
            ),
        ]);
        job.zones[0].substrate = Substrate::Porous;
        job.zones[0].layers[2].thinned = 0.1;
        job.zones[1].basis = Basis::LabelRate;
        let own = |tool| OwnRate {
            tool,
            rate: SourcedRange::own(8.0, 9.0),
            jobs: 3,
        };
        job.zones[0].layers[1].own_rates = [own("brush")].into();
        job.zones[1].layers[1].own_rates = [own("hvlp")].into();
        let workings = workings(&job);
        let demands = demands(&job, 10);
        assert_eq!(workings.len(), demands.len());
        let mut formulas = Vec::new();
        for (working, demand) in workings.iter().zip(&demands) {
            for layer in &working.layers {
                for working in std::iter::once(&layer.litres).chain(&layer.dry_film) {
                    holds(working);
                    formulas.push(working.formula);
                }
            }
            assert!((working.litres / demand.linear().value.as_litres() - 1.0).abs() < 1e-12);
        }
        for formula in [BY_FILM, BY_LABEL, BY_LABEL_SPRAYED, DRY_BY_FILM, DRY_BY_LABEL] {
            assert!(formulas.contains(&formula), "{formula} was not tried");
        }
    }
}
