//! How much of each material a job needs: samples, causes of uncertainty, and where the material goes.

use std::rc::Rc;

use units::Volume;

use crate::basis::Basis;
use crate::cause::Cause;
use crate::estimate::Estimate;
use crate::job::{Job, Layer, Rgb};
use crate::material::Material;
use crate::model::{Lot, Model};
use crate::propagate::{Linear, of_steps, steps};
use crate::samples::Samples;
use crate::tool::ToolKind;
use crate::trials::Trials;

/// The number of trials of an answer. With this many, the 5 % and 95 % quantiles are stable to about 1 %.
pub const TRIALS: usize = 10_000;

/// The destination of a share of an amount.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// It stays on the piece.
    OnPiece,
    /// It drips.
    InDrips,
    /// It is sprayed past the piece.
    InAir,
    /// A part of the tool keeps it.
    InTool(&'static str),
}

impl Place {
    /// Its name in reports: `on the piece`, `in the air`, or the part of the tool.
    pub fn name(self) -> &'static str {
        match self {
            Place::OnPiece => "on the piece",
            Place::InDrips => "in drips",
            Place::InAir => "in the air",
            Place::InTool(part) => part,
        }
    }
}

/// A share of an amount by destination.
#[derive(Clone, Debug, PartialEq)]
pub struct Share {
    /// Where it goes.
    pub place: Place,
    /// How much, as the best estimate.
    pub volume: Volume,
}

/// The contribution of one cause to the uncertainty of an amount.
#[derive(Clone, Debug, PartialEq)]
pub struct Contribution {
    /// The cause.
    pub cause: Cause,
    /// Its part of the standard uncertainty (JCGM 100, 5.1.3).
    pub standard_uncertainty: Volume,
    /// Its part of the variance, a fraction.
    pub share: f64,
}

/// How much of one material, in one color, a job needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Demand {
    /// The material.
    pub material: Rc<Material>,
    /// Its color, of a material that comes in colors.
    pub colour: Option<Rgb>,
    /// Where it goes: the piece first.
    pub shares: Vec<Share>,
    /// The contributions to its uncertainty, the largest first.
    pub budget: Vec<Contribution>,
    /// What each zone takes of it, as the best estimate, by the number of the zone in the job.
    pub by_zone: Vec<(usize, Volume)>,
    estimate: Linear,
    litres: Vec<f64>,
    samples: Samples,
}

/// What a job needs of each material, in the order in which they first go on.
///
/// # Example
/// ```
/// use std::rc::Rc;
/// use coatings::{Basis, Substrate, Job, Layer, Patch, TRIALS, ZoneWork, material, demands, tool};
/// use units::{Area, Length};
/// let paint = Layer {
///     material: Rc::new(material("trim-enamel").unwrap().clone()),
///     colour: None,
///     coats: 2,
///     tool: tool("brush").unwrap(),
///     narrow_tool: tool("brush").unwrap(),
///     thinned: 0.0,
///     own_rates: Default::default(),
/// };
/// let sides = Patch { area: Area::square_metres(1.2), ..Patch::default() };
/// let body = ZoneWork {
///     key: "body".into(),
///     patches: vec![sides],
///     edges: Length::ZERO,
///     substrate: Substrate::Sealed,
///     basis: Basis::WetFilm,
///     layers: vec![paint],
/// };
/// let demands = demands(&Job { name: "box".into(), zones: vec![body] }, TRIALS);
/// assert!(demands[0].low() < demands[0].likely() && demands[0].likely() < demands[0].high());
/// ```
pub fn demands(job: &Job, trials: usize) -> Vec<Demand> {
    Trials::of(job, trials).demands()
}

impl Trials {
    /// What the job needs of each material, in the order in which they first go on.
    pub fn demands(&self) -> Vec<Demand> {
        let model = &self.model;
        let distributions: Vec<_> = model
            .inputs
            .iter()
            .map(|uncertain| uncertain.input.distribution)
            .collect();
        let stepped = steps(&distributions);
        let stepped: Vec<&[f64]> = stepped.iter().map(Vec::as_slice).collect();
        let areas = model.areas(&stepped);
        let areas: Vec<&[f64]> = areas.iter().map(Vec::as_slice).collect();
        let of_lot = |(lot, litres): (&Lot, Vec<f64>)| {
            let estimate = of_steps(&lot.litres(&stepped, &areas));
            Demand {
                material: Rc::clone(&lot.material),
                colour: lot.colour,
                shares: shares(model, lot),
                budget: budget(model, &estimate),
                by_zone: by_zone(model, lot),
                estimate,
                samples: Samples::of(&litres),
                litres,
            }
        };
        model.lots.iter().zip(self.litres()).map(of_lot).collect()
    }
}

/// The amount of each material with a label rate from the maker, calculated from the film of the tools
/// instead. It is a best estimate, shown beside the amount by the label.
pub fn by_tools(job: &Job) -> Vec<(Rc<Material>, Option<Rgb>, Volume)> {
    let stated = |material: &Material, planned: Basis| match material.states_rate() {
        true => Basis::WetFilm,
        false => planned,
    };
    best(&Model::with_basis(job, stated), Material::states_rate)
}

/// The best estimate for each material of a job, without trials, in the order in which they first go on. It is the value of
/// [`Demand::linear`].
pub fn best_estimates(job: &Job) -> Vec<(Rc<Material>, Option<Rgb>, Volume)> {
    best(&Model::of(job), |_| true)
}

fn best(model: &Model, is_wanted: impl Fn(&Material) -> bool) -> Vec<(Rc<Material>, Option<Rgb>, Volume)> {
    let of_lot = |lot: &Lot| {
        let volume: Volume = shares(model, lot).into_iter().map(|share| share.volume).sum();
        (Rc::clone(&lot.material), lot.colour, volume)
    };
    let lots = model.lots.iter().filter(|lot| is_wanted(&lot.material));
    lots.map(of_lot).collect()
}

/// Liters of each term at the best estimates: on the piece, and in all.
fn at_best<'a>(model: &'a Model, lot: &'a Lot) -> impl Iterator<Item = (usize, ToolKind, f64, f64)> + 'a {
    let mean = |input: usize| model.inputs[input].input.distribution.mean();
    lot.terms.iter().map(move |term| {
        let on_piece = term.on_piece(mean, model.patches[term.patch].area);
        (
            term.zone,
            term.tool.kind,
            on_piece,
            on_piece * term.lost_factor(mean),
        )
    })
}

fn shares(model: &Model, lot: &Lot) -> Vec<Share> {
    let (mut piece, mut air, mut drips) = (0.0, 0.0, 0.0);
    for (_, tool, on_piece, all) in at_best(model, lot) {
        piece += on_piece;
        if tool == ToolKind::Sprayer {
            air += all - on_piece;
        } else {
            drips += all - on_piece;
        }
    }
    let mut shares = Vec::with_capacity(3 + lot.kept.len());
    let places = [
        (Place::OnPiece, piece),
        (Place::InDrips, drips),
        (Place::InAir, air),
    ];
    for (place, litres) in places {
        if litres > 0.0 {
            shares.push(Share {
                place,
                volume: Volume::litres(litres),
            });
        }
    }
    for kept in &lot.kept {
        let uncertain = &model.inputs[*kept];
        if let Cause::Kept { place, .. } = uncertain.cause {
            shares.push(Share {
                place: Place::InTool(place),
                volume: Volume::litres(uncertain.input.distribution.mean()),
            });
        }
    }
    shares
}

fn by_zone(model: &Model, lot: &Lot) -> Vec<(usize, Volume)> {
    let mut zones: Vec<(usize, Volume)> = Vec::new();
    for (zone, _, _, litres) in at_best(model, lot) {
        let litres = Volume::litres(litres);
        match zones.iter_mut().find(|(other, _)| *other == zone) {
            Some((_, sum)) => *sum += litres,
            None => zones.push((zone, litres)),
        }
    }
    zones
}

/// All causes with a contribution. Those of measuring count as one.
fn budget(model: &Model, estimate: &Linear) -> Vec<Contribution> {
    let mut budget: Vec<(Cause, f64)> = Vec::new();
    for (uncertain, contribution) in model.inputs.iter().zip(&estimate.contributions) {
        if *contribution == 0.0 {
            continue;
        }
        match budget.iter_mut().find(|(cause, _)| *cause == uncertain.cause) {
            Some((_, square)) => *square += contribution * contribution,
            None => budget.push((uncertain.cause.clone(), contribution * contribution)),
        }
    }
    units::sort_few(&mut budget, |(_, a), (_, b)| a > b);
    let all: f64 = budget.iter().map(|(_, square)| square).sum();
    budget
        .into_iter()
        .map(|(cause, square)| Contribution {
            cause,
            standard_uncertainty: Volume::litres(square.sqrt()),
            share: square / all,
        })
        .collect()
}

impl Demand {
    /// The 5 % quantile.
    pub fn low(&self) -> Volume {
        self.at(0.05)
    }

    /// The median.
    pub fn likely(&self) -> Volume {
        self.at(0.5)
    }

    /// The 95 % quantile.
    pub fn high(&self) -> Volume {
        self.at(0.95)
    }

    /// The volume that is enough with this probability.
    pub fn at(&self, probability: f64) -> Volume {
        Volume::litres(self.samples.quantile(probability))
    }

    /// The probability that a volume is enough.
    pub fn probability_enough(&self, volume: Volume) -> f64 {
        self.samples.share_up_to(volume.as_litres())
    }

    /// The best estimate and its standard uncertainty by the linear law (JCGM 100), beside the trials.
    pub fn linear(&self) -> Estimate<Volume> {
        self.estimate.estimate().with(Volume::litres)
    }

    /// The loss: in drips, in the air, in the tools.
    pub fn lost(&self) -> Volume {
        self.shares.iter().skip(1).map(|share| share.volume).sum()
    }

    /// Whether it is the demand for the material and color of a layer.
    pub fn is_of(&self, layer: &Layer) -> bool {
        layer.material.key == self.material.key && layer.can_colour() == self.colour
    }

    /// Whether another demand is for the same material in the same color.
    pub fn is_alike(&self, other: &Demand) -> bool {
        other.material.key == self.material.key && other.colour == self.colour
    }

    /// Liters of each trial.
    pub(crate) fn litres(&self) -> &[f64] {
        &self.litres
    }
}

/// The demand of several jobs together for one material in one color, liters. The same trial of each is
/// added, so an error that they share, such as that of the spreading rate, is shared.
pub fn together(demands: &[&Demand]) -> Samples {
    Samples::of(&litres_together(demands))
}

/// Liters of each trial of several jobs together.
pub(crate) fn litres_together(demands: &[&Demand]) -> Vec<f64> {
    let rows = demands
        .iter()
        .map(|demand| demand.litres.len())
        .min()
        .unwrap_or(0);
    let mut sum = vec![0.0; rows];
    for demand in demands {
        for (sum, litres) in sum.iter_mut().zip(&demand.litres) {
            *sum += litres;
        }
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::area::Patch;
    use crate::basis::Basis;
    use crate::examples::{broad, enamel, job, layer, narrow, zone};
    use crate::job::OwnRate;
    use crate::sourced_range::SourcedRange;
    use crate::substrate::Substrate;
    use crate::tool::tool;
    use units::Area;

    fn one(job: &Job) -> Demand {
        demands(job, TRIALS).remove(0)
    }

    #[track_caller]
    fn close(a: Volume, litres: f64, share: f64) {
        assert!((a.as_litres() / litres - 1.0).abs() < share, "{a:?} {litres}");
    }

    #[test]
    fn the_likely_amount_is_the_formula_with_the_middle_figures() {
        let demand = one(&enamel("brush", 2));
        let by_hand = 2.0 * 2.0 * 0.1 / 0.975 + 0.010;
        close(demand.likely(), by_hand, 0.01);
        close(demand.linear().value, by_hand, 1e-12);
    }

    /// A rate of 250 ft2/gal that the maker entered: by hand, 4 m2 at 6.1356 m2/L and the 10 mL that a brush keeps. By the brush
    /// alone it would be the film of the test above.
    #[test]
    fn the_label_in_the_hand_goes_before_the_tool() {
        let label = crate::Label {
            rate: Some((6.1356, 6.1356)),
            ..crate::Label::default()
        };
        let mut job = enamel("brush", 2);
        let of = Rc::clone(&job.zones[0].layers[0].material);
        let own = label.applied(&of, "own".into(), "Own".into()).unwrap();
        job.zones[0].layers[0].material = Rc::new(own);
        let demand = one(&job);
        close(demand.linear().value, 4.0 / 6.1356 + 0.010, 0.004);
        let (material, colour, by_tool) = by_tools(&job).remove(0);
        assert_eq!((&*material.key, colour), ("own", None));
        close(by_tool, 2.0 * 2.0 * 0.1 / 0.975 + 0.010, 1e-12);
        // Materials without a label rate use the film of the tool.
        assert!(by_tools(&enamel("brush", 2)).is_empty());
        job.zones[0].basis = Basis::LabelRate;
        assert_eq!(one(&job).linear(), demand.linear());
        assert_eq!(by_tools(&job)[0].2, by_tool);
    }

    /// The relative variances of a product add up (JCGM 100, 5.1.6): film 25/100/sqrt(3), transfer 0.025/0.975/sqrt(3).
    #[test]
    fn the_linear_uncertainty_is_that_of_a_product() {
        let demand = one(&enamel("brush", 2));
        let on_piece = 2.0 * 2.0 * 0.1 / 0.975;
        let (film, transfer) = (0.25 / 3f64.sqrt(), 0.025 / 0.975 / 3f64.sqrt());
        let kept = 0.005 / 3f64.sqrt();
        let wanted = libm::hypot(libm::hypot(on_piece * film, on_piece * transfer), kept);
        close(demand.linear().standard_uncertainty, wanted, 1e-3);
        close(
            Volume::litres(demand.samples.standard_uncertainty()),
            wanted,
            0.02,
        );
    }

    #[test]
    fn the_budget_is_whole_and_led_by_the_film() {
        let mut job = enamel("brush", 2);
        job.zones[0].patches[0].steps = vec![Area::square_metres(0.01)];
        let budget = one(&job).budget;
        assert!(matches!(budget[0].cause, Cause::Film { .. }), "{budget:?}");
        assert!((budget.iter().map(|part| part.share).sum::<f64>() - 1.0).abs() < 1e-12);
        assert!(budget.iter().any(|part| part.cause == Cause::Measuring));
    }

    /// By hand: two coats on 2 m2 at 8 m2/L are half a liter, plus what is washed out of the tool. The
    /// maker's rate replaces both film and label, and its range is that of the answer.
    #[test]
    fn own_jobs_take_the_place_of_film_and_label() {
        let with = |basis, low, high| {
            let mut job = enamel("brush", 2);
            job.zones[0].basis = basis;
            let rate = SourcedRange::own(low, high);
            job.zones[0].layers[0].own_rates = [OwnRate {
                tool: "brush",
                rate,
                jobs: 4,
            }]
            .into();
            demands(&job, TRIALS).remove(0)
        };
        let kept: f64 = tool("brush")
            .unwrap()
            .keeps
            .iter()
            .map(|keeps| keeps.litres.middle())
            .sum();
        for basis in [Basis::WetFilm, Basis::LabelRate] {
            let litres = with(basis, 8.0, 8.0).linear().value.as_litres();
            assert!((litres - 0.5 - kept).abs() < 1e-9, "{litres}");
        }
        let width = |demand: &Demand| demand.high() - demand.low();
        assert!(width(&with(Basis::WetFilm, 7.8, 8.2)) < width(&with(Basis::WetFilm, 7.0, 9.0)));
        // The rate holds for this tool only.
        let mut rolled = enamel("foam-roller", 2);
        let before = demands(&rolled, 10);
        let rate = SourcedRange::own(8.0, 8.0);
        rolled.zones[0].layers[0].own_rates = [OwnRate {
            tool: "brush",
            rate,
            jobs: 4,
        }]
        .into();
        assert_eq!(demands(&rolled, 10)[0].likely(), before[0].likely());
    }

    #[test]
    fn a_label_rate_is_charged_no_loss_of_brush_or_roller() {
        let mut job = enamel("brush", 1);
        job.zones[0].basis = Basis::LabelRate;
        let rate = job.zones[0].layers[0].material.label_rate.middle();
        close(one(&job).linear().value, 2.0 / rate + 0.010, 1e-12);
    }

    /// Practical rate = theoretical rate x transfer efficiency: the ordinary loss of the label is removed,
    /// and the loss of the sprayer is added.
    #[test]
    fn a_sprayer_loses_more_than_a_label_says() {
        let mut job = enamel("hvlp", 1);
        job.zones[0].basis = Basis::LabelRate;
        let rate = job.zones[0].layers[0].material.label_rate.middle();
        let demand = one(&job);
        close(demand.linear().value, 2.0 / rate * 0.975 / 0.65 + 0.0375, 1e-9);
        assert!(demand.shares.iter().any(|share| share.place == Place::InAir));
    }

    #[test]
    fn narrow_parts_cost_a_sprayer_more_and_a_brush_nothing() {
        let on = |patch: Patch, tool: &str| {
            let job = job(vec![zone(
                "legs",
                vec![patch],
                vec![layer("trim-enamel", 1, tool)],
            )]);
            one(&job).linear().value
        };
        assert_eq!(on(narrow(1.0), "brush"), on(broad(1.0), "brush"));
        assert!(on(narrow(1.0), "hvlp") > on(broad(1.0), "hvlp"));
    }

    #[test]
    fn a_thirsty_ground_takes_more_of_the_first_coat_that_stays() {
        let layers = || vec![layer("degreaser", 1, "pad"), layer("trim-enamel", 3, "brush")];
        let sealed = job(vec![zone("body", vec![broad(2.0)], layers())]);
        let mut porous = sealed.clone();
        porous.zones[0].substrate = Substrate::Porous;
        let [a, b] = [sealed, porous].map(|job| demands(&job, 10).remove(1).by_zone[0].1);
        assert!((b / a - (1.29 + 2.0) / 3.0).abs() < 1e-9);
    }

    #[test]
    fn thinner_is_no_paint() {
        let plain = enamel("hvlp", 1);
        let mut thinned = plain.clone();
        thinned.zones[0].layers[0].thinned = 0.1;
        let [a, b] = [plain, thinned].map(|job| one(&job).by_zone[0].1);
        assert!((a / b - 1.1).abs() < 1e-12);
    }

    #[test]
    fn no_coats_and_no_area_need_nothing() {
        assert!(demands(&enamel("brush", 0), TRIALS).is_empty());
        let none = job(vec![zone(
            "body",
            vec![broad(0.0)],
            vec![layer("trim-enamel", 2, "brush")],
        )]);
        assert!(demands(&none, TRIALS).is_empty());
    }

    #[test]
    fn what_is_kept_is_kept_once_for_each_colour_and_tool() {
        let kept = |job: &Job| -> f64 {
            let demands = demands(job, 10);
            let places = demands.iter().flat_map(|demand| {
                let in_tool = |share: &&Share| !matches!(share.place, Place::OnPiece | Place::InDrips);
                demand.shares.iter().filter(in_tool)
            });
            places.map(|share| share.volume.as_millilitres()).sum()
        };
        assert!((kept(&enamel("foam-roller", 1)) - 38.5).abs() < 1e-9);
        assert!((kept(&enamel("foam-roller", 3)) - 38.5).abs() < 1e-9);
        let mut two = enamel("foam-roller", 1);
        two.zones.push(two.zones[0].clone());
        assert!((kept(&two) - 38.5).abs() < 1e-9);
        two.zones[1].layers[0].colour = Some([1, 2, 3]);
        assert!((kept(&two) - 77.0).abs() < 1e-9);
        assert_eq!(demands(&two, 10).len(), 2);
    }

    /// Two zones in one paint are as uncertain as one of the same size, because they share the film.
    #[test]
    fn a_shared_cause_is_not_averaged_away() {
        let whole = one(&enamel("brush", 2));
        let paint = || vec![layer("trim-enamel", 2, "brush")];
        let halves = one(&job(vec![
            zone("a", vec![broad(1.0)], paint()),
            zone("b", vec![broad(1.0)], paint()),
        ]));
        assert!((halves.high() / whole.high() - 1.0).abs() < 1e-9);
        let pieces = together(&[&whole, &whole]);
        assert!((pieces.quantile(0.95) - 2.0 * whole.high().as_litres()).abs() < 1e-9);
    }

    #[test]
    fn errors_of_measuring_that_cancel_each_other_cancel() {
        let opposed = |step: f64| Patch {
            steps: vec![Area::square_metres(step)],
            ..broad(1.0)
        };
        let paint = || vec![layer("trim-enamel", 1, "brush")];
        let job = job(vec![
            zone("a", vec![opposed(0.2)], paint()),
            zone("b", vec![opposed(-0.2)], paint()),
        ]);
        let demand = one(&job);
        let of_measuring = demand.budget.iter().find(|part| part.cause == Cause::Measuring);
        assert!(
            of_measuring.is_none_or(|part| part.share < 1e-20),
            "{of_measuring:?}"
        );
    }

    #[test]
    fn where_it_goes_adds_up_to_what_is_needed() {
        for tool in ["brush", "foam-roller", "hvlp", "airless"] {
            let demand = one(&enamel(tool, 2));
            let all: Volume = demand.shares.iter().map(|share| share.volume).sum();
            close(all, demand.linear().value.as_litres(), 1e-12);
            assert_eq!(best_estimates(&enamel(tool, 2))[0].2, all);
        }
    }
}
