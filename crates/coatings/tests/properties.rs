//! Properties that hold for every job, can, label and recipe, checked on generated ones: laws that need no outside
//! answer.

#![allow(
    clippy::unwrap_used,
    reason = "a test may stop where what was generated is broken"
)]

use std::rc::Rc;

use coatings::can::{Offer, choose};
use coatings::label::Field;
use coatings::mix::{
    By, CALCIUM_CARBONATE, ChalkBatch, Component, Latex, Paint, Recipe, SHEENS, Scale, Thinning, thinner,
};
use coatings::{
    Basis, Contents, Demand, DryFilm, Enough, FilmClass, Job, Label, Layer, Patch, Place, Samples,
    SourcedRange, Substrate, TOOLS, Tool, ToolKind, Verdict, Way, ZoneWork, demands, material, materials,
    minutes, together, tool, workings,
};
use proptest::prelude::*;
use proptest::sample::{Index, select};
use units::{Area, Length, Mass, Volume, read_range};

/// Few, for no law here rests on chance: each trial obeys it.
const TRIALS: usize = 200;
/// What the order of sums and products does to a number.
const NOISE: f64 = 1e-9;

// --- What is generated -----------------------------------------------------------------------------------------

/// Areas from a knob to a wardrobe, and none; with as many causes of measuring as asked for, which make less of them
/// than nothing in no trial.
fn patch(causes: usize) -> impl Strategy<Value = Patch> {
    let area = prop_oneof![9 => 0.01..6.0f64, 1 => Just(0.0)];
    let steps = prop::collection::vec(-0.02..0.02f64, causes);
    (area, any::<bool>(), steps).prop_map(|(area, narrow, steps)| Patch {
        area: Area::square_metres(area),
        narrow,
        steps: steps
            .into_iter()
            .map(|step| Area::square_metres(step * area))
            .collect(),
    })
}

fn layer() -> impl Strategy<Value = Layer> {
    let tools = || select(TOOLS.iter().collect::<Vec<&'static Tool>>());
    let colour = prop_oneof![Just(None), Just(Some([160, 30, 20])), Just(Some([10, 40, 120]))];
    let known = select(materials().collect::<Vec<_>>());
    (known, colour, 0..4u32, tools(), tools(), 0.0..0.3f64).prop_map(
        |(known, colour, coats, tool, narrow_tool, thinned)| Layer {
            material: Rc::new(known.clone()),
            colour,
            coats,
            tool,
            narrow_tool,
            thinned,
            own_rates: Default::default(),
        },
    )
}

fn zone(causes: usize) -> impl Strategy<Value = ZoneWork> {
    (
        prop::collection::vec(patch(causes), 1..4),
        0.0..8.0f64,
        select(Substrate::ALL.to_vec()),
        any::<bool>(),
        prop::collection::vec(layer(), 1..5),
    )
        .prop_map(|(patches, edges, substrate, by_label, layers)| ZoneWork {
            key: "zone".into(),
            patches,
            edges: Length::metres(edges),
            substrate,
            basis: if by_label {
                Basis::LabelRate
            } else {
                Basis::WetFilm
            },
            layers,
        })
}

fn job_of(zones: Vec<ZoneWork>) -> Job {
    Job {
        name: "job".into(),
        zones,
    }
}

fn measured_job() -> impl Strategy<Value = Job> {
    (0..4usize)
        .prop_flat_map(|causes| prop::collection::vec(zone(causes), 1..5))
        .prop_map(job_of)
}

/// Without measuring errors, which depend on the position of a patch in its job.
fn exact_job() -> impl Strategy<Value = Job> {
    prop::collection::vec(zone(0), 1..5).prop_map(job_of)
}

/// Zones of one paint, each with tools of its own: what one can may do or not.
fn one_paint() -> impl Strategy<Value = Job> {
    let able: Vec<&'static Tool> = TOOLS
        .iter()
        .filter(|tool| tool.film(FilmClass::Paint).is_some())
        .collect();
    let coated = (1..4u32, select(able.clone()), select(able), zone(0));
    let zone = coated.prop_map(|(coats, tool, narrow_tool, mut zone)| {
        zone.layers = vec![Layer {
            material: Rc::new(material("trim-enamel").unwrap().clone()),
            colour: None,
            coats,
            tool,
            narrow_tool,
            thinned: 0.0,
            own_rates: Default::default(),
        }];
        zone.patches[0].area = zone.patches[0].area.max(Area::square_metres(0.01));
        zone
    });
    prop::collection::vec(zone, 1..6).prop_map(job_of)
}

static CLEAN_BRUSH: Tool = Tool {
    key: "clean-brush",
    name: "Brush that keeps nothing",
    kind: ToolKind::Brush,
    films: &[(FilmClass::Paint, SourcedRange::own(75e-6, 125e-6))],
    transfer: SourcedRange::own(0.95, 1.0),
    narrow_transfer: SourcedRange::own(1.0, 1.0),
    keeps: &[],
    minutes_per_square_metre: SourcedRange::own(5.0, 10.0),
    minutes_per_metre_of_edge: SourcedRange::own(0.5, 1.0),
    narrow_minutes: SourcedRange::own(1.5, 2.0),
    minutes_to_clean: SourcedRange::own(5.0, 10.0),
    texture: "",
    risk: "",
};

// --- How it is compared ----------------------------------------------------------------------------------------

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= NOISE * a.abs().max(b.abs()).max(1e-3)
}

fn litres(demand: &Demand, probability: f64) -> f64 {
    demand.at(probability).as_litres()
}

const SHARES: [f64; 7] = [0.0, 0.05, 0.25, 0.5, 0.75, 0.95, 1.0];

fn alike(a: &Demand, b: &Demand) -> bool {
    SHARES
        .iter()
        .all(|share| near(litres(a, *share), litres(b, *share)))
}

fn has_same_needs(a: &[Demand], b: &[Demand]) -> bool {
    let same_can = |a: &Demand, b: &Demand| a.material == b.material && a.colour == b.colour;
    a.len() == b.len() && a.iter().all(|a| b.iter().any(|b| same_can(a, b) && alike(a, b)))
}

fn any_figure() -> impl Strategy<Value = f64> {
    let odd = [
        0.0,
        -0.0,
        -1.0,
        1.0,
        1e-300,
        1e300,
        f64::MIN_POSITIVE,
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
    ];
    prop_oneof![select(odd.to_vec()), any::<f64>(), 0.0..2.0f64, 1.0..500.0f64]
}

fn any_range() -> impl Strategy<Value = Option<(f64, f64)>> {
    prop::option::of((any_figure(), any_figure()))
}

fn any_label() -> impl Strategy<Value = Label> {
    (
        any_range(),
        any_range(),
        any_range(),
        any_range(),
        any_range(),
        any_range(),
        any_range(),
    )
        .prop_map(
            |(rate, volume_solids, density, recoat_hours, cure_hours, thinning, coldest)| Label {
                rate,
                volume_solids,
                density,
                recoat_hours,
                cure_hours,
                thinning,
                coldest,
            },
        )
}

/// The ranges of a label with their fields.
fn stated(label: &Label) -> [(Field, Option<(f64, f64)>); 7] {
    [
        (Field::Rate, label.rate),
        (Field::VolumeSolids, label.volume_solids),
        (Field::Density, label.density),
        (Field::Recoat, label.recoat_hours),
        (Field::Cure, label.cure_hours),
        (Field::Thinning, label.thinning),
        (Field::Coldest, label.coldest),
    ]
}

/// A label is refused with one fault for each field that is wrong, which names it; or it makes a material that can be
/// worked out with.
fn is_judged(label: &Label, of: &coatings::Material, name: &str) -> Result<(), TestCaseError> {
    let own = label.applied(of, name.to_owned(), name.to_owned());
    match label.check(of) {
        Err(faults) => {
            prop_assert!(!faults.is_empty());
            for (place, fault) in faults.iter().enumerate() {
                let text = fault.to_string();
                prop_assert!(text.starts_with(fault.field().label()), "{}", text);
                prop_assert!(
                    stated(label)
                        .iter()
                        .any(|(field, range)| *field == fault.field() && range.is_some())
                );
                prop_assert!(faults[..place].iter().all(|other| other.field() != fault.field()));
            }
            let named = |faults: &[coatings::label::Fault]| -> Vec<Field> {
                faults.iter().map(|fault| fault.field()).collect()
            };
            prop_assert_eq!(own.map_err(|other| named(&other)), Err(named(&faults)));
        }
        Ok(doubts) => {
            for doubt in &doubts {
                prop_assert!(doubt.to_string().starts_with(doubt.field().label()));
            }
            let own = own.unwrap();
            for figure in [
                own.label_rate.as_numbers(),
                own.volume_solids,
                own.density.as_numbers(),
                own.recoat.as_numbers(),
                own.cure.as_numbers(),
                own.thinning,
            ] {
                prop_assert!(figure.low.is_finite() && figure.high.is_finite() && figure.low <= figure.high);
                prop_assert!(figure.low >= 0.0);
            }
            prop_assert!(own.label_rate.low > 0.0 && own.volume_solids.high <= 1.0);
            prop_assert_eq!((&*own.key, &*own.name), (name, name));
        }
    }
    Ok(())
}

fn recipe(shares: &[f64], by: By) -> Recipe {
    let component = |(place, share): (usize, &f64)| Component {
        name: format!("component {place}"),
        share: *share,
    };
    Recipe::new(shares.iter().enumerate().map(component).collect(), by).unwrap()
}

fn grams(masses: &[Mass]) -> Vec<f64> {
    masses.iter().map(|mass| mass.as_grams()).collect()
}

fn all_near(a: &[f64], b: &[f64]) -> bool {
    a.len() == b.len() && a.iter().zip(b).all(|(a, b)| near(*a, *b))
}

fn shares() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(0.01..50.0f64, 1..8)
}

proptest! {
    // --- Needs -------------------------------------------------------------------------------------------------

    #[test]
    fn amounts_are_in_order_and_chances_rise_with_what_there_is(job in measured_job()) {
        for demand in demands(&job, TRIALS) {
            prop_assert!(Volume::ZERO <= demand.low());
            prop_assert!(demand.low() <= demand.likely() && demand.likely() <= demand.high());
            let mut before = 0.0;
            for pair in SHARES.windows(2) {
                prop_assert!(demand.at(pair[0]) <= demand.at(pair[1]));
            }
            for step in 0..=20 {
                let volume = demand.at(1.0) * (0.06 * f64::from(step));
                let chance = demand.probability_enough(volume);
                prop_assert!(before <= chance && chance <= 1.0);
                before = chance;
            }
            prop_assert_eq!(before, 1.0);
            // What is enough with a probability is so, but for the trial that is cut through.
            for share in SHARES {
                let chance = demand.probability_enough(demand.at(share));
                prop_assert!((chance - share).abs() <= 1.0 / TRIALS as f64 + NOISE, "{} {}", chance, share);
            }
        }
    }

    /// For every material and confidence. A first coat counts from the start: it saturates the surface
    /// before the next layer.
    #[test]
    fn one_coat_more_never_needs_less(mut job in measured_job(), zone in any::<Index>(), layer in any::<Index>()) {
        let (zone, mut more) = (zone.index(job.zones.len()), job.clone());
        let layer = layer.index(job.zones[zone].layers.len());
        let coats = job.zones[zone].layers[layer].coats.max(1);
        job.zones[zone].layers[layer].coats = coats;
        more.zones[zone].layers[layer].coats = coats + 1;
        let changed = more.zones[zone].layers[layer].clone();
        for (before, after) in demands(&job, TRIALS).iter().zip(&demands(&more, TRIALS)) {
            prop_assert_eq!(&before.material.key, &after.material.key);
            for share in SHARES {
                prop_assert!(litres(before, share) <= litres(after, share) * (1.0 + NOISE));
            }
            if !before.is_of(&changed) {
                prop_assert!(alike(before, after));
            }
        }
        prop_assert!(minutes(&job).value <= minutes(&more).value);
    }

    #[test]
    fn a_larger_area_never_needs_less(mut job in exact_job(), zone in any::<Index>(), more in 0.0..3.0f64) {
        let (zone, mut larger) = (zone.index(job.zones.len()), job.clone());
        let area = job.zones[zone].patches[0].area.max(Area::square_metres(0.01));
        job.zones[zone].patches[0].area = area;
        larger.zones[zone].patches[0].area = area + Area::square_metres(more);
        for (before, after) in demands(&job, TRIALS).iter().zip(&demands(&larger, TRIALS)) {
            for share in SHARES {
                prop_assert!(litres(before, share) <= litres(after, share) * (1.0 + NOISE));
            }
        }
    }

    /// With a tool that keeps nothing; and its errors of measuring grow with the area.
    #[test]
    fn a_need_of_one_zone_is_proportional_to_its_area(
        mut zone in zone(3),
        coats in 1..4u32,
        by_label in any::<bool>(),
        times in 0.01..100.0f64,
    ) {
        zone.basis = if by_label { Basis::LabelRate } else { Basis::WetFilm };
        zone.layers = vec![Layer {
            material: Rc::new(material("trim-enamel").unwrap().clone()),
            colour: None,
            coats,
            tool: &CLEAN_BRUSH,
            narrow_tool: &CLEAN_BRUSH,
            thinned: 0.0,
            own_rates: Default::default(),
        }];
        let mut other = zone.clone();
        for patch in &mut other.patches {
            patch.area = patch.area * times;
            for step in &mut patch.steps {
                *step = *step * times;
            }
        }
        let [one, other] = [zone, other].map(|zone| demands(&job_of(vec![zone]), TRIALS));
        prop_assert_eq!(one.len(), other.len());
        for (one, other) in one.iter().zip(&other) {
            for share in SHARES {
                let (wanted, got) = (litres(one, share) * times, litres(other, share));
                prop_assert!((got / wanted - 1.0).abs() < 1e-7, "{} {}", wanted, got);
            }
            let (one, other) = (one.linear(), other.linear());
            prop_assert!((other.value / one.value / times - 1.0).abs() < 1e-9);
            let ratio = other.standard_uncertainty / one.standard_uncertainty;
            prop_assert!((ratio / times - 1.0).abs() < 1e-7);
        }
    }

    #[test]
    fn the_order_of_zones_and_their_halves_change_nothing(job in exact_job()) {
        let ours = demands(&job, TRIALS);
        let mut turned = job.clone();
        turned.zones.reverse();
        prop_assert!(has_same_needs(&ours, &demands(&turned, TRIALS)));
        let mut halved = job;
        for zone in &mut halved.zones {
            for patch in &mut zone.patches {
                patch.area = patch.area * 0.5;
            }
            zone.patches.extend(zone.patches.clone());
        }
        prop_assert!(has_same_needs(&ours, &demands(&halved, TRIALS)));
    }

    /// It is one can and one wash, whatever is said.
    #[test]
    fn the_colour_of_what_has_none_changes_nothing(job in measured_job()) {
        let mut other = job.clone();
        for layer in other.zones.iter_mut().flat_map(|zone| &mut zone.layers) {
            if !layer.material.coloured {
                layer.colour = None;
            }
        }
        prop_assert!(has_same_needs(&demands(&job, TRIALS), &demands(&other, TRIALS)));
        prop_assert!(near(minutes(&job).value, minutes(&other).value));
    }

    #[test]
    fn shares_of_the_budget_sum_to_one(job in measured_job()) {
        for demand in demands(&job, 1) {
            let u = demand.linear().standard_uncertainty.as_litres();
            let sum: f64 = demand.budget.iter().map(|part| part.share).sum();
            prop_assert!(demand.budget.is_empty() == (u == 0.0) && (u == 0.0 || near(sum, 1.0)));
            for part in &demand.budget {
                prop_assert!((0.0..=1.0).contains(&part.share));
                prop_assert!(near(part.share.sqrt() * u, part.standard_uncertainty.as_litres()));
            }
            prop_assert!(demand.budget.is_sorted_by(|a, b| a.share >= b.share));
        }
    }

    /// The working, the places where it goes, and the zones: each adds up to the best estimate.
    #[test]
    fn all_accounts_add_up_to_the_best_estimate(job in measured_job()) {
        let demands = demands(&job, 1);
        let workings = workings(&job);
        prop_assert_eq!(demands.len(), workings.len());
        for (demand, working) in demands.iter().zip(&workings) {
            let best = demand.linear().value.as_litres();
            prop_assert!(near(working.litres, best));
            let shares: Volume = demand.shares.iter().map(|share| share.volume).sum();
            prop_assert!(near(shares.as_litres(), best));
            prop_assert!(demand.shares.iter().all(|share| share.volume > Volume::ZERO));
            prop_assert_eq!(demand.shares[0].place, Place::OnPiece);
            let zones: f64 = demand.by_zone.iter().map(|(_, volume)| volume.as_litres()).sum();
            let kept: f64 = working.kept.iter().map(|kept| kept.value).sum();
            prop_assert!(near(zones + kept, best));
        }
    }

    #[test]
    fn what_two_jobs_need_together_is_the_sum_trial_by_trial(a in one_paint(), b in one_paint()) {
        let b = Job { name: "other".into(), ..b };
        let [a, b] = [a, b].map(|job| demands(&job, TRIALS).remove(0));
        let both = together(&[&a, &b]);
        let mean = |demand: &Demand| together(&[demand]).mean();
        prop_assert!(near(both.mean(), mean(&a) + mean(&b)));
        let u = |samples: Samples| samples.standard_uncertainty();
        prop_assert!(u(both.clone()) <= (u(together(&[&a])) + u(together(&[&b]))) * (1.0 + NOISE));
        prop_assert!(both.quantile(0.0) >= a.at(0.0).as_litres() + b.at(0.0).as_litres() - NOISE);
        prop_assert!(both.quantile(1.0) <= a.at(1.0).as_litres() + b.at(1.0).as_litres() + NOISE);
    }

    /// No tool is told to do what it cannot, and no coat of the plan is left out.
    #[test]
    fn another_way_of_doing_it_keeps_what_goes_on(job in exact_job(), key in select(vec!["brush", "hvlp", "pad"])) {
        let other = job.with_tools(Way::With(tool(key).unwrap()));
        let deeper = other.at_equal_film(&job);
        let layers = |job: &Job| -> Vec<Layer> {
            job.zones.iter().flat_map(|zone| zone.layers.clone()).collect()
        };
        for ((planned, other), deeper) in layers(&job).iter().zip(&layers(&other)).zip(&layers(&deeper)) {
            prop_assert_eq!(&planned.material, &other.material);
            prop_assert_eq!(planned.coats, other.coats);
            prop_assert!(deeper.coats >= planned.coats && (planned.coats > 0 || deeper.coats == 0));
            let able = |layer: &Layer| layer.tool.film(layer.material.body).is_some();
            prop_assert!(able(other) || !able(planned));
        }
        prop_assert_eq!(job.with_tools(Way::AsPlanned), job);
    }

    // --- Films -------------------------------------------------------------------------------------------------

    #[test]
    fn dry_films_grow_with_the_coats_and_coats_with_the_confidence(
        layer in layer(),
        by_label in any::<bool>(),
        narrow in any::<bool>(),
    ) {
        let basis = if by_label { Basis::LabelRate } else { Basis::WetFilm };
        let of = |coats| DryFilm::of(&Layer { coats, ..layer.clone() }, basis, narrow);
        if let (Some(one), Some(three)) = (of(1), of(3)) {
            let (one, three) = (one.thickness(), three.thickness());
            prop_assert!(near(three.value / one.value, 3.0));
            prop_assert!(near(three.standard_uncertainty / one.standard_uncertainty, 3.0));
            prop_assert!(one.value > Length::ZERO);
        }
    }

    // --- Cans --------------------------------------------------------------------------------------------------

    #[test]
    fn more_in_the_can_is_never_worse(job in one_paint(), share in 0.05..1.6f64, more in 1.0..2.0f64) {
        let demand = demands(&job, TRIALS).remove(0);
        let judge = |volume: Volume| Enough::judge(&job, &demand, &[Contents::full(volume).unwrap()], 0.9);
        let volume = demand.likely() * share;
        let (small, large) = (judge(volume), judge(volume * more));
        let work = |of: &Enough| -> f64 {
            let done = demand.by_zone.iter().filter(|(zone, _)| of.zones.contains(zone));
            done.map(|(_, litres)| litres.as_litres()).sum()
        };
        prop_assert!(small.probability <= large.probability);
        prop_assert!(small.most_coats <= large.most_coats);
        prop_assert!(work(&small) <= work(&large) * (1.0 + NOISE));
        for one in [&small, &large] {
            prop_assert!(one.left == Volume::ZERO || one.lacking == Volume::ZERO);
            prop_assert_eq!(one.verdict == Verdict::Enough, one.probability >= 0.9);
        }
    }

    /// The zones that a can does are enough by themselves, and none that it does alone is more work than they are:
    /// asked of a job of those zones only, with the tools that they need.
    #[test]
    fn the_zones_of_a_can_are_what_it_does(job in one_paint(), share in 0.05..1.2f64) {
        let demand = demands(&job, TRIALS).remove(0);
        let volume = demand.likely() * share;
        let found = Enough::judge(&job, &demand, &[Contents::full(volume).unwrap()], 0.9).zones;
        let chance = |zones: &[usize]| {
            let only = zones.iter().map(|zone| job.zones[*zone].clone()).collect();
            demands(&job_of(only), TRIALS).remove(0).probability_enough(volume)
        };
        // A trial may turn on the order of a sum.
        let noise = 1.0 / TRIALS as f64;
        if !found.is_empty() {
            prop_assert!(chance(&found) >= 0.9 - noise, "{:?}: {}", found, chance(&found));
        }
        let work = |zone: &usize| demand.by_zone[*zone].1.as_litres();
        let done: f64 = found.iter().map(work).sum();
        for zone in 0..job.zones.len() {
            prop_assert!(chance(&[zone]) < 0.9 + noise || work(&zone) <= done * (1.0 + NOISE), "{} {:?}", zone, found);
        }
    }

    /// More confidence is more liters needed, and these are never fewer liters bought nor a lower price.
    #[test]
    fn dearer_confidence_never_buys_fewer_litres(
        job in one_paint(),
        shop in prop::collection::vec((60..5000u32, 0..9000u64), 1..5),
        shelf in prop::collection::vec(0.0..2.0f64, 0..3),
    ) {
        let demand = demands(&job, TRIALS).remove(0);
        let offers: Vec<Offer> = shop
            .iter()
            .map(|(size, price)| Offer { size: Volume::millilitres(f64::from(*size)), price: *price })
            .collect();
        let shelf: Vec<Volume> = shelf.into_iter().map(Volume::litres).collect();
        let mut before = (0, 0.0);
        for confidence in [0.05, 0.5, 0.75, 0.9, 0.95, 0.99] {
            let bought = choose(demand.at(confidence), &shelf, &offers).unwrap();
            prop_assume!(bought.proven);
            let litres: f64 = offers
                .iter()
                .zip(&bought.counts)
                .map(|(offer, count)| offer.size.as_litres() * f64::from(*count))
                .sum();
            prop_assert!(before.0 <= bought.price && before.1 <= litres + NOISE, "{:?} {:?}", before, bought);
            let held: f64 = shelf[..bought.used_from_stock].iter().map(|can| can.as_litres()).sum();
            prop_assert!(held + litres >= demand.at(confidence).as_litres() - NOISE);
            before = (bought.price, litres);
        }
    }

    // --- Labels ------------------------------------------------------------------------------------------------

    #[test]
    fn any_label_is_judged(label in any_label(), of in select(materials().collect::<Vec<_>>()), name in "\\PC{0,12}") {
        is_judged(&label, of, &name)?;
    }

    /// Any typed text is refused with a reason, or is a range that every field can judge.
    #[test]
    fn any_text_on_a_label_is_judged(
        text in prop_oneof![
            "\\PC{0,12}",
            "[ 0-9.,/to\u{2013}\u{2212}e+-]{0,12}",
            select(vec!["nan", "inf", "-inf", "1e400", "0", "-0", "1/0", "400", "350-450", "450-350", "35 to 40"])
                .prop_map(str::to_owned),
        ],
        of in select(materials().collect::<Vec<_>>()),
    ) {
        match read_range(&text) {
            Err(error) => prop_assert!(!error.to_string().is_empty()),
            Ok(range) => {
                let range = Some(range);
                let label = Label {
                    rate: range,
                    volume_solids: range,
                    density: range,
                    recoat_hours: range,
                    cure_hours: range,
                    thinning: range,
                    coldest: range,
                };
                is_judged(&label, of, &text)?;
            }
        }
    }

    /// A label that can be so changes what it states and nothing else.
    #[test]
    fn what_a_label_states_is_what_is_used(rate in 3.0..20.0f64, wider in 1.0..2.0f64, density in 0.7..1.6f64) {
        let of = material("trim-enamel").unwrap();
        let label = Label {
            rate: Some((rate, rate * wider + 0.1)),
            density: Some((density, density)),
            ..Label::default()
        };
        let own = label.applied(of, "own".into(), "Own".into()).unwrap();
        prop_assert_eq!((own.label_rate.low, own.label_rate.high), label.rate.unwrap());
        prop_assert_eq!((own.density.low, own.density.high), (density, density));
        prop_assert_eq!(own.volume_solids, of.volume_solids);
        prop_assert_eq!((own.recoat, own.cure, own.thinning), (of.recoat, of.cure, of.thinning));
    }

    // --- Mixing ------------------------------------------------------------------------------------------------

    /// And it makes no difference whether the parts of the recipe or the batch are scaled.
    #[test]
    fn a_batch_scaled_twice_is_a_batch_scaled_once(
        shares in shares(),
        total in 1.0..5000.0f64,
        a in 0.01..100.0f64,
        b in 0.01..100.0f64,
    ) {
        let parts = recipe(&shares, By::Weight);
        let batch = |recipe: &Recipe, total| grams(&recipe.batch_by_mass(Mass::grams(total)).unwrap());
        let once = batch(&parts, total * (a * b));
        let twice: Vec<f64> = batch(&parts, total * a).iter().map(|mass| mass * b).collect();
        prop_assert!(all_near(&once, &twice));
        let scaled: Vec<f64> = shares.iter().map(|share| share * a).collect();
        prop_assert!(all_near(&once, &batch(&recipe(&scaled, By::Weight), total * (a * b))));
        prop_assert!(near(once.iter().sum(), total * (a * b)));
        prop_assert!(near(parts.shares().sum(), 1.0));
    }

    #[test]
    fn chalk_paint_scaled_twice_is_scaled_once(
        sheen in select(SHEENS.to_vec()),
        powder in 0.0..600.0f64,
        water in 0.0..0.5f64,
        wanted in 0.05..10.0f64,
        first in 0.05..10.0f64,
        weighed in any::<bool>(),
    ) {
        let latex = Latex::usual(&sheen);
        let paint = if weighed { Paint::Mass(Mass::grams(1300.0)) } else { Paint::Volume(Volume::litres(1.0)) };
        let batch = ChalkBatch { paint, powder: Mass::grams(powder), water: Volume::litres(water) };
        let scaled = |batch: &ChalkBatch, wanted| {
            batch.for_volume(Volume::litres(wanted), &latex, &CALCIUM_CARBONATE).unwrap()
        };
        let amounts = |batch: &ChalkBatch| {
            let paint = match batch.paint {
                Paint::Mass(mass) => mass.as_kilograms(),
                Paint::Volume(volume) => volume.as_litres(),
            };
            [paint, batch.powder.as_kilograms(), batch.water.as_litres()]
        };
        let (once, twice) = (scaled(&batch, wanted), scaled(&scaled(&batch, first), wanted));
        prop_assert!(all_near(&amounts(&once), &amounts(&twice)));
        let mix = |batch: &ChalkBatch| batch.mix(&latex, &CALCIUM_CARBONATE).unwrap();
        let (small, large) = (mix(&batch), mix(&once));
        prop_assert!(near(large.volume.value.as_litres(), wanted));
        prop_assert!(near(small.pvc.value, large.pvc.value));
        prop_assert!(near(small.volume_solids.value, large.volume_solids.value));
        // Powder takes binder's place, and never less than before.
        prop_assert!(small.pvc.value >= latex.pvc.middle() - NOISE && small.pvc.value <= 1.0);
    }

    #[test]
    fn thinner_makes_more_liquid_and_no_solids(
        paint in 0.0..20.0f64,
        solids in 0.05..1.0f64,
        share in 0.0..=1.0f64,
        micrometres in 10.0..300.0f64,
    ) {
        let thinning = Thinning {
            paint: Volume::litres(paint),
            volume_solids: SourcedRange::own(solids, solids),
            share,
            most: None,
            thinner: thinner("water").unwrap(),
        };
        let thinned = thinning.thinned().unwrap();
        prop_assert!(near(thinned.liquid.as_litres() * thinned.volume_solids.value, paint * solids));
        prop_assert!(thinned.liquid >= thinning.paint);
        let wet = Length::millimetres(micrometres / 1000.0);
        let dry = thinning.dry_film(wet).value;
        prop_assert!(near(dry / wet, thinned.volume_solids.value));
        prop_assert!(near(dry.as_metres() * (1.0 + share), wet.as_metres() * solids));
    }

    /// A dose of the smallest mass that a scale weighs truly is within what is wanted, and a lighter one is not.
    #[test]
    fn the_smallest_dose_is_the_smallest(step in 0.01..5.0f64, accuracy in 0.0..0.02f64, wanted in 0.001..0.1f64) {
        let scale = Scale { resolution: Mass::grams(step), accuracy };
        let off = |mass: Mass| 2.0 * (scale.difference(mass, Mass::ZERO) / mass);
        match scale.smallest_difference(wanted) {
            Some(dose) => {
                prop_assert!((off(dose) / wanted - 1.0).abs() < 1e-6);
                prop_assert!(off(dose * 0.99) > wanted);
            }
            None => prop_assert!(off(Mass::kilograms(1e9)) >= wanted),
        }
    }
}
