//! Needs of whole jobs against a simulation with NumPy that stands apart from the crates.
//!
//! Outside source: `scripts/needs.py`, which has figures, jobs, model and partial derivatives of its own, and wrote
//! `fixtures/needs.json` with a million trials of each job. If a figure of the trade changes in the crate, the first
//! test here fails: change it in the script too and make the fixture anew.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use coatings::{
    Basis, Cause, Contents, Demand, DryFilm, Enough, FilmClass, Job, Layer, Patch, Rgb, Samples,
    SourcedRange, Stage, Substrate, TOOLS, TRIALS, ToolKind, Verdict, ZoneWork, demands, material, together,
    tool, workings,
};
use serde::Deserialize;
use units::{Area, Length, Volume};

#[derive(Deserialize)]
struct Fixture {
    trials: usize,
    figures: Figures,
    jobs: Vec<JobCase>,
    together: Vec<TogetherCase>,
}

type Limits = (f64, f64);

#[derive(Deserialize)]
struct Figures {
    tools: BTreeMap<String, ToolFigures>,
    materials: BTreeMap<String, MaterialFigures>,
    first_coat: BTreeMap<String, Limits>,
    ordinary: Limits,
}

#[derive(Deserialize)]
struct ToolFigures {
    kind: String,
    films_um: BTreeMap<String, Limits>,
    transfer: Limits,
    narrow: Limits,
    keeps_l: BTreeMap<String, Limits>,
}

#[derive(Deserialize)]
struct MaterialFigures {
    stage: String,
    body: String,
    coloured: bool,
    rate: Limits,
    solids: Limits,
}

#[derive(Deserialize)]
struct JobCase {
    name: String,
    zones: Vec<ZoneCase>,
    needs: Vec<NeedCase>,
    dry_films: Vec<DryCase>,
    #[serde(default)]
    cans: Vec<CanCase>,
}

#[derive(Deserialize)]
struct ZoneCase {
    patches: Vec<PatchCase>,
    ground: String,
    basis: String,
    layers: Vec<LayerCase>,
}

#[derive(Deserialize)]
struct PatchCase {
    area: f64,
    narrow: bool,
    steps: Vec<f64>,
}

#[derive(Deserialize)]
struct LayerCase {
    material: String,
    colour: Option<Rgb>,
    coats: u32,
    tool: String,
    narrow_tool: String,
    thinned: f64,
}

#[derive(Deserialize)]
struct Quantiles {
    low: f64,
    likely: f64,
    high: f64,
    low_within: Limits,
    likely_within: Limits,
    high_within: Limits,
    mean: f64,
    sd: f64,
    kurtosis: f64,
}

#[derive(Deserialize)]
struct NeedCase {
    material: String,
    colour: Option<Rgb>,
    #[serde(flatten)]
    spread: Quantiles,
    value: f64,
    u_by_derivatives: f64,
    u_by_differences: f64,
    differences_over_derivatives: f64,
    budget: BTreeMap<String, f64>,
    places: BTreeMap<String, f64>,
    by_zone: Vec<(usize, f64)>,
    enough: Vec<(f64, f64)>,
}

#[derive(Deserialize)]
struct DryCase {
    zone: usize,
    layer: usize,
    narrow: bool,
    um: f64,
    u_um: f64,
    mean_um: f64,
    sd_um: f64,
}

#[derive(Deserialize)]
struct CanCase {
    material: String,
    colour: Option<Rgb>,
    litres: f64,
    confidence: f64,
    probability: f64,
    most_coats: u32,
    zones: Vec<usize>,
    left: f64,
}

#[derive(Deserialize)]
struct TogetherCase {
    jobs: (String, String),
    material: String,
    colour: Option<Rgb>,
    #[serde(flatten)]
    spread: Quantiles,
}

fn fixture() -> Fixture {
    outside::fixture("needs.json").unwrap()
}

impl JobCase {
    fn job(&self) -> Job {
        Job {
            name: self.name.clone(),
            zones: self.zones.iter().map(ZoneCase::work).collect(),
        }
    }
}

impl ZoneCase {
    fn work(&self) -> ZoneWork {
        let ground = Substrate::ALL
            .into_iter()
            .find(|ground| ground.key() == self.ground);
        let basis = [("wet-film", Basis::WetFilm), ("label-rate", Basis::LabelRate)]
            .into_iter()
            .find(|(name, _)| *name == self.basis);
        ZoneWork {
            key: "zone".into(),
            patches: self.patches.iter().map(PatchCase::patch).collect(),
            edges: Length::ZERO,
            substrate: ground.unwrap(),
            basis: basis.unwrap().1,
            layers: self.layers.iter().map(LayerCase::layer).collect(),
        }
    }
}

impl PatchCase {
    fn patch(&self) -> Patch {
        Patch {
            area: Area::square_metres(self.area),
            narrow: self.narrow,
            steps: self.steps.iter().map(|step| Area::square_metres(*step)).collect(),
        }
    }
}

impl LayerCase {
    fn layer(&self) -> Layer {
        Layer {
            material: Rc::new(material(&self.material).unwrap().clone()),
            colour: self.colour,
            coats: self.coats,
            tool: tool(&self.tool).unwrap(),
            narrow_tool: tool(&self.narrow_tool).unwrap(),
            thinned: self.thinned,
            own_rates: Default::default(),
        }
    }
}

/// Every need of every job, by ours and by NumPy; they must be the same cans in the same order.
fn each_need(trials: usize, mut check: impl FnMut(&str, &JobCase, &Demand, &NeedCase)) {
    let fixture = fixture();
    assert!(fixture.jobs.len() >= 12);
    for case in &fixture.jobs {
        let ours = demands(&case.job(), trials);
        let cans = |need: &Demand| (need.material.key.to_string(), need.colour);
        let theirs = |need: &NeedCase| (need.material.clone(), need.colour);
        let [a, b]: [Vec<_>; 2] = [
            ours.iter().map(cans).collect(),
            case.needs.iter().map(theirs).collect(),
        ];
        assert_eq!(a, b, "{}", case.name);
        for (need, theirs) in ours.iter().zip(&case.needs) {
            let place = format!("{}: {} {:?}", case.name, theirs.material, theirs.colour);
            check(&place, case, need, theirs);
        }
    }
}

#[track_caller]
fn near(place: &str, ours: f64, theirs: f64, share: f64) {
    let off = (ours - theirs).abs();
    assert!(
        off <= share * theirs.abs(),
        "{place}: {ours} is not {theirs} to {share}"
    );
}

/// So many standard deviations are let pass, of ours and of NumPy's trials together: some 600 numbers are compared, and
/// by chance alone one of them would lie farther off in one of 25 choices of seeds. Ours are always the same.
const DEVIATIONS: f64 = 4.0;

/// The standard deviation of the mean of so many trials less that of NumPy's, of results that scatter by 1.
fn unsteady(trials: usize, theirs: usize) -> f64 {
    (1.0 / trials as f64 + 1.0 / theirs as f64).sqrt()
}

/// A quantile of `n` trials is that of a share which scatters by `sqrt(p (1 - p) / n)` (JCGM 101, 7.9): the value with
/// four of these to either side, in NumPy's trials, is the bracket for ours of 10,000.
#[track_caller]
fn has_quantiles(place: &str, at: impl Fn(f64) -> f64, theirs: &Quantiles) {
    for (share, value, within) in [
        (0.05, theirs.low, theirs.low_within),
        (0.5, theirs.likely, theirs.likely_within),
        (0.95, theirs.high, theirs.high_within),
    ] {
        let ours = at(share);
        assert!(within.0 < value && value < within.1, "{place} at {share}");
        assert!(
            within.0 <= ours && ours <= within.1,
            "{place} at {share}: {ours} not in {within:?}"
        );
    }
}

/// The mean of `n` results scatters by `sd / sqrt(n)`, their standard deviation by `sd sqrt((kurtosis - 1) / 4 n)`.
#[track_caller]
fn has_moments(place: &str, ours: &Samples, theirs: &Quantiles, unsteady: f64) {
    let off = DEVIATIONS * theirs.sd * unsteady;
    let mean = ours.mean();
    assert!(
        (mean - theirs.mean).abs() <= off,
        "{place}: the mean is {mean}, not {}",
        theirs.mean
    );
    let off = off * ((theirs.kurtosis - 1.0) / 4.0).sqrt();
    let sd = ours.standard_uncertainty();
    assert!(
        (sd - theirs.sd).abs() <= off,
        "{place}: the deviation is {sd}, not {}",
        theirs.sd
    );
}

#[test]
fn quantiles() {
    each_need(TRIALS, |place, _, need, theirs| {
        has_quantiles(place, |share| need.at(share).as_litres(), &theirs.spread);
        assert_eq!(
            (need.at(0.05), need.at(0.5), need.at(0.95)),
            (need.low(), need.likely(), need.high())
        );
    });
}

/// With 200,000 trials of ours, so that the mean of the widest is steady to 0.1 % of itself.
#[test]
fn means_and_deviations() {
    let trials = 200_000;
    let unsteady = unsteady(trials, fixture().trials);
    each_need(trials, |place, _, need, theirs| {
        has_moments(place, &together(&[need]), &theirs.spread, unsteady);
    });
}

/// JCGM 100, 5.1.3 note 2 lets a sensitivity be half the difference over one standard uncertainty to either side. For
/// what is divided by, that is more than the derivative (5.1.2) by 1 / (1 - (u/x)^2), which Python works out by hand:
/// up to 1 % for a label rate, 6 % for the transfer of an airless sprayer, and no more for the whole than for the
/// part that has most. Nothing here is drawn; 1e-7 and 1e-6 are the digits of the fixture.
#[test]
fn linear_law() {
    let mut apart: f64 = 1.0;
    each_need(10, |place, _, need, theirs| {
        let linear = need.linear();
        let u = linear.standard_uncertainty.as_litres();
        near(place, linear.value.as_litres(), theirs.value, 1e-7);
        near(place, u, theirs.u_by_differences, 1e-6);
        let ratio = u / theirs.u_by_derivatives;
        assert!(
            (1.0 - 1e-6..=theirs.differences_over_derivatives + 1e-6).contains(&ratio),
            "{place}: {ratio}"
        );
        apart = apart.max(ratio);
    });
    assert!(apart > 1.01, "{apart}");
}

fn kind(cause: &Cause) -> &'static str {
    match cause {
        Cause::Measuring => "measuring",
        Cause::Film { .. } => "film",
        Cause::LabelRate { .. } | Cause::OwnRate { .. } => "rate",
        Cause::Transfer { .. } => "transfer",
        Cause::Narrow { .. } => "narrow",
        Cause::OrdinaryLoss => "ordinary",
        Cause::FirstCoat { .. } => "first-coat",
        Cause::Kept { .. } => "kept",
    }
}

#[test]
fn budget_by_kind_of_cause() {
    let mut seen = BTreeSet::new();
    each_need(10, |place, _, need, theirs| {
        let mut ours: BTreeMap<&str, f64> = BTreeMap::new();
        for part in &need.budget {
            *ours.entry(kind(&part.cause)).or_default() += part.share;
            let share = part.standard_uncertainty / need.linear().standard_uncertainty;
            near(place, share * share, part.share, 1e-9);
        }
        let sizes: Vec<f64> = need.budget.iter().map(|part| part.share).collect();
        assert!(sizes.is_sorted_by(|a, b| a >= b), "{place}: {sizes:?}");
        for (kind, share) in &theirs.budget {
            let share_of_ours = ours.remove(kind.as_str()).unwrap_or(0.0);
            assert!(
                (share_of_ours - share).abs() < 1e-6,
                "{place}, {kind}: {share_of_ours} {share}"
            );
            seen.insert(kind.clone());
        }
        assert!(ours.is_empty(), "{place}: {ours:?}");
    });
    assert_eq!(seen.len(), 8, "{seen:?}");
}

/// What the tools keep, and what goes by or drips; and which zone takes how much of it.
#[test]
fn where_it_goes() {
    each_need(10, |place, _, need, theirs| {
        let mut ours: BTreeMap<&str, f64> = BTreeMap::new();
        for share in &need.shares {
            *ours.entry(share.place.name()).or_default() += share.volume.as_litres();
        }
        for (where_to, litres) in &theirs.places {
            let got = ours.remove(where_to.as_str()).unwrap_or(0.0);
            assert!((got - litres).abs() < 1e-7, "{place}, {where_to}: {got} {litres}");
        }
        assert!(ours.is_empty(), "{place}: {ours:?}");
        let lost: f64 = theirs.places.values().sum::<f64>() - theirs.places["on the piece"];
        assert!((need.lost().as_litres() - lost).abs() < 1e-7, "{place}");
        assert_eq!(need.by_zone.len(), theirs.by_zone.len(), "{place}");
        for ((ours, litres), (zone, wanted)) in need.by_zone.iter().zip(&theirs.by_zone) {
            assert_eq!(ours, zone, "{place}");
            near(place, litres.as_litres(), *wanted, 1e-7);
        }
    });
}

/// The standard deviation of a share is at most half of that of a mean.
#[test]
fn probability_that_a_volume_is_enough() {
    let off = DEVIATIONS * 0.5 * unsteady(TRIALS, fixture().trials);
    each_need(TRIALS, |place, _, need, theirs| {
        for (litres, probability) in &theirs.enough {
            let ours = need.probability_enough(Volume::litres(*litres));
            assert!(
                (ours - probability).abs() <= off,
                "{place}, {litres}: {ours} {probability}"
            );
        }
    });
}

/// The workings say the same as the simulation, which knows nothing of them.
#[test]
fn workings_add_up_to_the_best_estimate() {
    for case in &fixture().jobs {
        let workings = workings(&case.job());
        assert_eq!(workings.len(), case.needs.len(), "{}", case.name);
        for (working, need) in workings.iter().zip(&case.needs) {
            near(&case.name, working.litres, need.value, 1e-7);
            for (zone, litres) in &need.by_zone {
                let layers = working.layers.iter().filter(|layer| layer.zone == *zone);
                let sum: f64 = layers.map(|layer| layer.litres.result.value).sum();
                near(&case.name, sum, *litres, 1e-7);
            }
        }
    }
}

#[test]
fn dry_films() {
    let mut asked = 0;
    let Fixture { jobs, trials, .. } = fixture();
    for case in &jobs {
        let job = case.job();
        let mut theirs = case.dry_films.iter();
        for (zone, work) in job.zones.iter().enumerate() {
            for (layer, on) in work.layers.iter().enumerate() {
                for narrow in [false, true] {
                    let film = DryFilm::of(on, work.basis, narrow);
                    let Some(film) = film.filter(|_| on.coats > 0) else {
                        continue;
                    };
                    let theirs = theirs.next().unwrap();
                    let place = format!("{}, zone {zone}, layer {layer}, narrow {narrow}", case.name);
                    assert_eq!(
                        (theirs.zone, theirs.layer, theirs.narrow),
                        (zone, layer, narrow),
                        "{place}"
                    );
                    let thickness = film.thickness();
                    let (um, u_um) = (um(thickness.value), um(thickness.standard_uncertainty));
                    near(&place, um, theirs.um, 1e-7);
                    near(&place, u_um, theirs.u_um, 1e-6);
                    let relative = u_um / um;
                    let off = DEVIATIONS / (trials as f64).sqrt();
                    let (mean, off_mean) = (theirs.mean_um / um, off * theirs.sd_um / um);
                    if work.basis == Basis::WetFilm {
                        // The mean of a product is the product of the means; its relative variance is a^2 + b^2 + a^2
                        // b^2, of which the last, at most a quarter of the square of the others, is not in the linear
                        // law.
                        assert!((mean - 1.0).abs() <= off_mean, "{place}: {mean}");
                        let sd = theirs.sd_um / u_um;
                        let most = (1.0 + relative * relative / 4.0).sqrt();
                        // No kurtosis here is that of a normal distribution, 3.
                        let off = off * 0.5f64.sqrt();
                        assert!((1.0 - off..=most + off).contains(&sd), "{place}: {sd}");
                    } else {
                        // The mean of 1 / x between m (1 - h) and m (1 + h) is atanh(h) / (h m), and atanh(h) / h - 1
                        // is h^2/3 + h^4/5 + ... < (h^2/3) / (1 - h^2), where h^2/3 is the relative variance of x.
                        let above = relative * relative / (1.0 - 3.0 * relative * relative);
                        assert!(
                            (1.0 - off_mean..=1.0 + above + off_mean).contains(&mean),
                            "{place}: {mean}"
                        );
                    }
                    asked += 1;
                }
            }
        }
        assert_eq!(theirs.count(), 0, "{}", case.name);
    }
    assert!(asked > 30, "{asked}");
}

fn um(film: Length) -> f64 {
    film.as_millimetres() * 1000.0
}

/// Two pieces in one paint share its film: their sum lies wider than if each were wrong by itself.
#[test]
fn two_pieces_together() {
    let fixture = fixture();
    assert!(fixture.together.len() >= 3);
    for case in &fixture.together {
        let need = |name: &str| {
            let of = fixture.jobs.iter().find(|job| job.name == name).unwrap();
            let all = demands(&of.job(), TRIALS);
            let is_it = |need: &Demand| (&*need.material.key, need.colour) == (&*case.material, case.colour);
            all.into_iter().find(is_it).unwrap()
        };
        let (a, b) = (need(&case.jobs.0), need(&case.jobs.1));
        let spread = together(&[&a, &b]);
        let place = format!("{:?} {}", case.jobs, case.material);
        has_quantiles(&place, |share| spread.quantile(share), &case.spread);
        has_moments(&place, &spread, &case.spread, unsteady(TRIALS, fixture.trials));
    }
}

fn is_need(ours: &Demand, theirs: &NeedCase) -> bool {
    (&*ours.material.key, ours.colour) == (&*theirs.material, theirs.colour)
}

/// Every can of a job against trying each choice of zones by itself. Python leaves out what hangs on a hair.
fn judge_cans(mut cases: impl FnMut(&JobCase) -> bool) -> usize {
    let mut judged = 0;
    let fixture = fixture();
    let off = DEVIATIONS * 0.5 * unsteady(TRIALS, fixture.trials);
    for case in fixture.jobs.iter().filter(|case| cases(case)) {
        let job = case.job();
        let needs = demands(&job, TRIALS);
        for can in &case.cans {
            let is_it = |need: &&Demand| (&*need.material.key, need.colour) == (&*can.material, can.colour);
            let need = needs.iter().find(is_it).unwrap();
            let contents = Contents::full(Volume::litres(can.litres)).unwrap();
            let mut ours = Enough::judge(&job, need, &[contents], can.confidence);
            let place = format!(
                "{}: {} L of {} at {}",
                case.name, can.litres, can.material, can.confidence
            );
            assert!(
                (ours.probability - can.probability).abs() <= off,
                "{place}: {}",
                ours.probability
            );
            let verdict = match can.probability {
                p if p >= can.confidence => Verdict::Enough,
                p if p >= 0.5 => Verdict::Tight,
                _ => Verdict::Short,
            };
            assert_eq!(ours.verdict, verdict, "{place}");
            assert_eq!(ours.most_coats, can.most_coats, "{place}");
            ours.zones.sort_unstable();
            assert_eq!(ours.zones, can.zones, "{place}");
            // What is left of a full can is what it holds less the likely need, which is as steady as that.
            let left = ours.left.as_litres() - ours.lacking.as_litres();
            let theirs = case.needs.iter().find(|theirs| is_need(need, theirs)).unwrap();
            let within = theirs.spread.likely_within;
            assert!(
                within.0 <= can.litres - left && can.litres - left <= within.1,
                "{place}: {left}"
            );
            assert!(
                (can.litres - can.left - theirs.spread.likely).abs() < 1e-5,
                "{place}"
            );
            assert!(
                ours.left.as_litres().min(ours.lacking.as_litres()) == 0.0,
                "{place}"
            );
            judged += 1;
        }
    }
    judged
}

#[test]
fn cans() {
    assert!(judge_cans(|case| case.name != "three tools") > 100);
}

/// A can that does only the zones of one tool does not fill the others.
#[test]
fn cans_for_zones_with_tools_of_their_own() {
    assert!(judge_cans(|case| case.name == "three tools") > 10);
}

#[track_caller]
fn same<U: coatings::unit::Unit>(place: &str, ours: SourcedRange<U>, theirs: Limits, unit: f64) {
    near(place, ours.low, theirs.0 * unit, 1e-12);
    near(place, ours.high, theirs.1 * unit, 1e-12);
}

fn body(body: FilmClass) -> &'static str {
    match body {
        FilmClass::Wash => "wash",
        FilmClass::Penetrating => "penetrating",
        FilmClass::Varnish => "varnish",
        FilmClass::Paint => "paint",
        FilmClass::Paste => "paste",
    }
}

const BODIES: [FilmClass; 5] = [
    FilmClass::Wash,
    FilmClass::Penetrating,
    FilmClass::Varnish,
    FilmClass::Paint,
    FilmClass::Paste,
];

/// A changed figure asks for a new fixture: change it in `scripts/needs.py` as well.
#[test]
fn figures_are_those_of_the_crate() {
    let figures = fixture().figures;
    assert_eq!(figures.tools.len(), TOOLS.len());
    for (key, theirs) in &figures.tools {
        let ours = tool(key).unwrap();
        let kind = match ours.kind {
            ToolKind::Brush => "brush",
            ToolKind::Roller => "roller",
            ToolKind::Sprayer => "sprayer",
            ToolKind::Pad => "pad",
        };
        assert_eq!(kind, theirs.kind, "{key}");
        for of in BODIES {
            match (ours.film(of), theirs.films_um.get(body(of))) {
                (Some(film), Some(limits)) => same(key, film, *limits, 1e-6),
                (None, None) => (),
                (ours, theirs) => panic!("{key} {of:?}: {ours:?} {theirs:?}"),
            }
        }
        same(key, ours.transfer, theirs.transfer, 1.0);
        same(key, ours.narrow_transfer, theirs.narrow, 1.0);
        assert_eq!(ours.keeps.len(), theirs.keeps_l.len(), "{key}");
        for keeps in ours.keeps {
            same(key, keeps.litres, theirs.keeps_l[keeps.place], 1.0);
        }
    }
    for (key, theirs) in &figures.materials {
        let ours = material(key).unwrap();
        let stage = Stage::ALL.into_iter().find(|stage| stage.key() == theirs.stage);
        assert_eq!(Some(ours.stage), stage, "{key}");
        assert_eq!(
            (body(ours.body), ours.coloured),
            (&*theirs.body, theirs.coloured),
            "{key}"
        );
        same(key, ours.label_rate, theirs.rate, 1.0);
        same(key, ours.volume_solids, theirs.solids, 1.0);
    }
    assert_eq!(figures.first_coat.len(), Substrate::ALL.len());
    for ground in Substrate::ALL {
        same(
            ground.key(),
            ground.first_coat(),
            figures.first_coat[ground.key()],
            1.0,
        );
    }
    assert_eq!(ordinary_loss(), figures.ordinary);
}

/// The crate shows the ordinary loss of a label only in a working: its limits from its mean and uncertainty there.
fn ordinary_loss() -> Limits {
    let case = fixture()
        .jobs
        .into_iter()
        .find(|case| case.name == "wardrobe by label")
        .unwrap();
    let workings = workings(&case.job());
    let terms = &workings[0].layers[0].litres.terms;
    let ordinary = terms.iter().find(|term| term.symbol == "ordinary").unwrap();
    let half = ordinary.standard_uncertainty * 3f64.sqrt();
    let digits = |value: f64| (value * 1e9).round() / 1e9;
    (digits(ordinary.value - half), digits(ordinary.value + half))
}
